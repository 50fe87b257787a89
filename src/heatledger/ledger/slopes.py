"""How much the result of a formula moves for a small move of each input.

The partial derivatives are generated from the formula's own expression, once, when first asked for:
straight code forwards for the values, then backwards for the slopes. Branches stay branches, so a
side that was not taken is never worked out.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from heatledger.ledger.formulas import Formula
from heatledger.ledger.symbols import Const, Node, walk

Slopes = Callable[..., tuple[Any, ...]]

_CACHE: dict[int, Slopes] = {}
_INDENT = "    "


def slopes_of(formula: Formula) -> Slopes:
    """A function of the formula's SI arguments that returns one slope a parameter.

    A parameter of many parts takes the list of parts and returns one slope, equal for all of them.
    """
    found = _CACHE.get(id(formula))
    if found is None:
        found = _CACHE[id(formula)] = _Writer(formula).function()
    return found


class _Writer:
    """Writes the forward and the backward pass of one expression."""

    def __init__(self, formula: Formula) -> None:
        self.formula = formula
        self.lines: list[str] = []
        self.depth = 1
        self.names: dict[int, str] = {}
        self.defined: set[int] = set()
        self.fresh = 0

    def function(self) -> Slopes:
        names = [each.name for each in self.formula.parameters]
        root = self.formula.expression
        self.forward(root)
        for name in names:
            self.emit(f"s_{name} = 0.0")
        self.backward(root, "1.0")
        self.emit(f"return ({''.join(f's_{each}, ' for each in names)})")
        code = f"def slopes({', '.join(names)}):\n" + "\n".join(self.lines) + "\n"
        space: dict[str, Any] = {"sqrt": math.sqrt, "log": math.log, "exp": math.exp, "added": _added}
        exec(compile(code, f"<slopes of {self.formula.name}>", "exec"), space)
        made: Slopes = space["slopes"]
        return made

    def emit(self, line: str) -> None:
        self.lines.append(_INDENT * self.depth + line)

    def forward(self, node: Node) -> str:
        """Emit the value of a node, unless it is there already; the name or number it is known by."""
        if node.op in ("input", "parts"):
            return str(node.detail)
        if node.op == "number" or isinstance(node, Const):
            return f"({_value(node, [])})"
        name = self.names.setdefault(id(node), f"_v{len(self.names)}")
        if id(node) not in self.defined:
            if node.op == "where":
                self.forward_where(node, name)
            else:
                inner = [self.forward(each) for each in node.args]
                self.emit(f"{name} = {_value(node, inner)}")
            self.defined.add(id(node))
        return name

    def forward_where(self, node: Node, name: str) -> None:
        test = self.forward(node.args[0])
        for word, branch in ((f"if {test}:", node.args[1]), ("else:", node.args[2])):
            self.emit(word)
            self.depth += 1
            before = set(self.defined)  # what a branch works out has a value only inside it
            self.emit(f"{name} = {self.forward(branch)}")
            self.defined = before
            self.depth -= 1

    def known_as(self, node: Node) -> str:
        """What the forward pass calls a node."""
        return self.names.get(id(node)) or self.forward(node)

    def backward(self, node: Node, slope: str) -> None:
        """Emit the slopes of the inputs below a node; ``slope`` is that of the result by this node."""
        if node.op in ("input", "parts"):
            self.emit(f"s_{node.detail} += {slope}")
            return
        if node.op == "where":
            for word, branch in (
                (f"if {self.known_as(node.args[0])}:", node.args[1]),
                ("else:", node.args[2]),
            ):
                self.emit(word)
                self.depth += 1
                self.emit("pass")
                if _moves(branch):
                    self.backward(branch, slope)
                self.depth -= 1
            return
        inner = [self.known_as(each) for each in node.args]
        for child, own in zip(node.args, _slopes(node, inner, self.known_as(node)), strict=True):
            if not _moves(child):
                continue
            product = _times(slope, own)
            if child.args:
                self.fresh += 1
                self.emit(f"_a{self.fresh} = {product}")
                product = f"_a{self.fresh}"
            self.backward(child, product)


def _moves(node: Node) -> bool:
    """True when an input stands below a node."""
    return any(each.op in ("input", "parts") for each in walk(node))


def _times(slope: str, own: str) -> str:
    if slope == "1.0":
        return f"({own})"
    return {"1.0": slope, "-1.0": f"-{slope}"}.get(own, f"{slope} * ({own})")


def _added(parts: Any) -> float:
    result = 0.0
    for each in parts:
        result = result + each
    return result


def _value(node: Node, inner: list[str]) -> str:
    if isinstance(node, Const):
        return repr(node.si)
    simple = {"add": "+", "sub": "-", "mul": "*", "div": "/", "power": "**"}
    if node.op in simple:
        return f"{inner[0]} {simple[node.op]} {inner[1]}"
    if node.op in ("input", "parts"):
        return str(node.detail)
    if node.op == "number":
        return repr(float(node.detail))
    if node.op == "compare":
        return f"{inner[0]} {node.detail} {inner[1]}"
    one = inner[0]
    return {
        "neg": f"-{one}",
        "pow": f"{one} ** {node.detail}",
        "sqrt": f"sqrt({one})",
        "log": f"log({one})",
        "exp": f"exp({one})",
        "absolute": one,
        "total": f"added({one})",
        "mean": f"({one} + {inner[-1]}) / 2",
        "larger": f"({one} if {one} >= {inner[-1]} else {inner[-1]})",
        "smaller": f"({one} if {one} <= {inner[-1]} else {inner[-1]})",
        "read_between": _between(inner) if node.op == "read_between" else "",
    }[node.op]


def _between(n: list[str]) -> str:
    x, x0, x1, y0, y1 = n
    return f"{y0} + ({y1} - {y0}) * (({x} - {x0}) / ({x1} - {x0}))"


def _slopes(node: Node, n: list[str], own: str) -> list[str]:
    op = node.op
    if op == "read_between":
        x, x0, x1, y0, y1 = n
        rise, run = f"({y1} - {y0})", f"({x1} - {x0})"
        return [
            f"{rise} / {run}",
            f"{rise} * ({x} - {x1}) / {run} ** 2",
            f"-{rise} * ({x} - {x0}) / {run} ** 2",
            f"1 - ({x} - {x0}) / {run}",
            f"({x} - {x0}) / {run}",
        ]
    rules: dict[str, Callable[[], list[str]]] = {
        "add": lambda: ["1.0", "1.0"],
        "sub": lambda: ["1.0", "-1.0"],
        "mul": lambda: [n[1], n[0]],
        "div": lambda: [f"1 / {n[1]}", f"-{n[0]} / {n[1]} ** 2"],
        "neg": lambda: ["-1.0"],
        "pow": lambda: [f"{node.detail} * {n[0]} ** {node.detail - 1}"],
        "power": lambda: [f"{n[1]} * {n[0]} ** ({n[1]} - 1)", f"{own} * log({n[0]})"],
        "sqrt": lambda: [f"0.5 / {own}"],
        "log": lambda: [f"1 / {n[0]}"],
        "exp": lambda: [own],
        "absolute": lambda: ["1.0"],
        "total": lambda: ["1.0"],
        "mean": lambda: ["0.5", "0.5"],
        "larger": lambda: [f"1.0 if {n[0]} >= {n[1]} else 0.0", f"0.0 if {n[0]} >= {n[1]} else 1.0"],
        "smaller": lambda: [f"1.0 if {n[0]} <= {n[1]} else 0.0", f"0.0 if {n[0]} <= {n[1]} else 1.0"],
    }
    return rules[op]()

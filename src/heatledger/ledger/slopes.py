"""How a slope is carried back from a figure to the figures that went into it.

The code is generated from the formula's own expression, once, when first asked for: a value is worked
out only where a slope needs it, and branches stay branches, so a side that was not taken is never
worked out.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Sequence
from typing import Any

from heatledger.ledger.formulas import Formula
from heatledger.ledger.symbols import Const, Node, walk

Carrier = Callable[[tuple[Any, ...], float, dict[int, float]], None]

_CARRIERS: dict[Formula, Carrier] = {}
_INDENT = "    "


def carrier_of(formula: Formula) -> Carrier:
    """A function of the inputs of a figure, the slope of the target by it, and the slopes found so far.

    It adds to the slope of each input, by ``id``; each of many parts gets the same. Raises the
    arithmetic's own error where a slope has no value.
    """
    found = _CARRIERS.get(formula)
    if found is None:
        found = _CARRIERS[formula] = _Writer(formula).function()
    return found


class _Writer:
    """Writes the backward pass of one expression, and the values it needs on its way."""

    def __init__(self, formula: Formula) -> None:
        self.formula = formula
        self.lines: list[str] = []
        self.depth = 1
        self.names: dict[int, str] = {}
        self.defined: set[int] = set()
        self.fresh = 0

    def function(self) -> Carrier:
        """The compiled function."""
        self.backward(self.formula.expression, "own")
        body = "\n".join(self.lines)
        first = [
            "known = slopes.get",
            f"{''.join(f'f_{each.name}, ' for each in self.formula.parameters)} = inputs",
        ]
        for each in self.formula.parameters:
            if re.search(rf"\bp_{each.name}\b", body):
                value = f"[one._si for one in f_{each.name}]" if each.many else f"f_{each.name}._si"
                first.append(f"p_{each.name} = {value}")
        code = (
            "def carry(inputs, own, slopes):\n"
            + "\n".join(_INDENT + each for each in first)
            + "\n"
            + body
            + "\n"
        )
        space: dict[str, Any] = {"sqrt": math.sqrt, "log": math.log, "exp": math.exp, "added": _added}
        exec(compile(code, f"<slopes of {self.formula.name}>", "exec"), space)
        made: Carrier = space["carry"]
        return made

    def emit(self, line: str) -> None:
        """Add a line at the depth of the branch it stands in."""
        self.lines.append(_INDENT * self.depth + line)

    def value(self, node: Node) -> str:
        """The name or number a node is known by; its value is worked out here if it is not there yet."""
        if node.op in ("input", "parts"):
            return f"p_{node.detail}"
        if node.op == "number" or isinstance(node, Const):
            return f"({_value(node, [])})"
        name = self.names.setdefault(id(node), f"_v{len(self.names)}")
        if id(node) not in self.defined:
            if node.op == "where":
                for branch in self.branches(node):
                    self.emit(f"{name} = {self.value(branch)}")
            else:
                inner = [self.value(each) for each in node.args]
                self.emit(f"{name} = {_value(node, inner)}")
            self.defined.add(id(node))
        return name

    def branches(self, node: Node) -> Iterator[Node]:
        """Each side of a branch, while lines are added to it; what is worked out there stays there."""
        test = self.value(node.args[0])
        for word, branch in ((f"if {test}:", node.args[1]), ("else:", node.args[2])):
            self.emit(word)
            self.depth += 1
            before = set(self.defined)
            yield branch
            self.defined = before
            self.depth -= 1

    def backward(self, node: Node, slope: str) -> None:
        """Emit what a node adds to the slopes of the inputs below it; ``slope`` is its own."""
        if not _moves(node):  # a branch of a ``where`` may well be a number
            return
        if node.op == "input":
            self.emit(f"key = id(f_{node.detail})")
            self.emit(f"slopes[key] = known(key, 0.0) + {slope}")
        elif node.op == "parts":
            self.emit(f"for part in f_{node.detail}:")
            self.emit(f"{_INDENT}key = id(part)")
            self.emit(f"{_INDENT}slopes[key] = known(key, 0.0) + {slope}")
        elif node.op == "where":
            for branch in self.branches(node):
                self.emit("pass")
                self.backward(branch, slope)
        else:
            for child, own in zip(node.args, _slopes(node, _Values(self, node.args), self), strict=True):
                if not _moves(child):
                    continue
                product = _times(slope, own)
                if child.args:
                    self.fresh += 1
                    self.emit(f"_a{self.fresh} = {product}")
                    product = f"_a{self.fresh}"
                self.backward(child, product)


class _Values(Sequence[str]):
    """What the arguments of a node are known by, each worked out when it is asked for."""

    def __init__(self, writer: _Writer, nodes: tuple[Node, ...]) -> None:
        self.writer, self.nodes = writer, nodes

    def __len__(self) -> int:
        return len(self.nodes)

    def __getitem__(self, i: Any) -> Any:
        return self.writer.value(self.nodes[i])


def _moves(node: Node) -> bool:
    """True when an input stands below a node."""
    return any(each.op in ("input", "parts") for each in walk(node))


def _times(slope: str, own: str) -> str:
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


def _slopes(node: Node, n: Sequence[str], writer: _Writer) -> list[str]:
    """The slope of a node by each of its arguments; values are asked for only where they are needed."""
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
        "power": lambda: [f"{n[1]} * {n[0]} ** ({n[1]} - 1)", f"{writer.value(node)} * log({n[0]})"],
        "sqrt": lambda: [f"0.5 / {writer.value(node)}"],
        "log": lambda: [f"1 / {n[0]}"],
        "exp": lambda: [writer.value(node)],
        "absolute": lambda: ["1.0"],
        "total": lambda: ["1.0"],
        "mean": lambda: ["0.5", "0.5"],
        "larger": lambda: [f"1.0 if {n[0]} >= {n[1]} else 0.0", f"0.0 if {n[0]} >= {n[1]} else 1.0"],
        "smaller": lambda: [f"1.0 if {n[0]} <= {n[1]} else 0.0", f"0.0 if {n[0]} <= {n[1]} else 1.0"],
    }
    return rules[op]()

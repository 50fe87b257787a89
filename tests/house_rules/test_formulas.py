"""A formula explains itself, is proven somewhere, and hides no number."""

from __future__ import annotations

import ast
import doctest
import sys
from importlib import import_module
from pathlib import Path

import pytest

from heatledger.ledger.formulas import FORMULAS, Formula
from heatledger.ledger.sources import bibliography
from heatledger.ledger.symbols import LARGEST_BARE_NUMBER
from tests.house_rules.tree import PACKAGE, ending, functions, is_formula, listing, named, names_used, tree

PHYSICS = ending(".py", under="src/heatledger/physics/")
for _path in PHYSICS:
    import_module("heatledger." + _path.relative_to(PACKAGE).with_suffix("").as_posix().replace("/", "."))
IN_PHYSICS = [each for each in FORMULAS.values() if each.module.startswith("heatledger.physics.")]


def test_there_are_formulas_to_look_at() -> None:
    written = sum(is_formula(each) for path in PHYSICS for each in functions(path))
    assert written == len(IN_PHYSICS) > 0, "two formulas share one name, so one hides the other"


@pytest.mark.parametrize("each", IN_PHYSICS, ids=lambda each: each.name)
def test_a_formula_explains_itself(each: Formula) -> None:
    for part in ("Valid for:", "Leaves out:", ">>>"):
        assert part in each.doc, f"{each.name}: the docstring has no {part!r}"
    assert each.plain_line.endswith("."), f"{each.name}: the first line is a sentence"
    key = each.citation.key
    assert not key or key in bibliography(), f"{each.name}: no source called {key!r}"
    unknown = set(each.valid) - {one.name for one in each.parameters}
    assert not unknown, f"{each.name}: a range is given for {unknown}, which it does not take"
    for name, (low, high) in each.valid.items():
        assert low < high, f"{each.name}: the range of {name} runs backwards"


@pytest.mark.parametrize("each", IN_PHYSICS, ids=lambda each: each.name)
def test_the_example_of_a_formula_is_true(each: Formula) -> None:
    space = vars(sys.modules[each.module])
    examples = doctest.DocTestParser().get_doctest(each.doc, dict(space), each.name, each.module, 0)
    said: list[str] = []
    result = doctest.DocTestRunner(verbose=False).run(examples, out=said.append)
    assert result.attempted, f"{each.name}: no example to run"
    assert not result.failed, "".join(said)


def test_every_formula_is_used_or_proven() -> None:
    """In a step, a study or another formula of the design; else in a test against a source or a law."""
    at_work: set[str] = set()
    modules = {each.stem for each in PHYSICS}
    for folder in ("src/heatledger/", "tests/published/", "tests/physics/"):
        for path in ending(".py", under=folder):
            at_work |= names_used(path, modules)
    idle = [f"{each.module}: {each.name}" for each in IN_PHYSICS if each.name not in at_work]
    assert not idle, listing(
        idle, "Use it in a step, prove it in tests/published or tests/physics, or drop it."
    )


def bare_numbers(function: ast.FunctionDef | ast.AsyncFunctionDef) -> list[ast.Constant]:
    """Numbers in a function's body that are neither whole and small nor part of const(...)."""
    inside_const = {
        id(node)
        for call in ast.walk(function)
        if isinstance(call, ast.Call) and getattr(call.func, "id", "") == "const"
        for node in ast.walk(call)
    }
    return [
        node
        for statement in function.body
        for node in ast.walk(statement)
        if isinstance(node, ast.Constant)
        and isinstance(node.value, int | float)
        and not isinstance(node.value, bool)
        and id(node) not in inside_const
        and not (isinstance(node.value, int) and abs(node.value) <= LARGEST_BARE_NUMBER)
    ]


def test_no_number_in_physics_stands_bare() -> None:
    faults = [
        f"{named(path)}:{number.lineno} {each.name}: {number.value}"
        for path in PHYSICS
        for each in functions(path)
        for number in bare_numbers(each)
    ]
    faults += [
        f"{named(path)}:{line} {value}" for path in PHYSICS for line, value in bare_at_module_level(path)
    ]
    assert not faults, listing(faults, "It hides a unit or a source: make it a const at module level.")


def bare_at_module_level(path: Path) -> list[tuple[int, float]]:
    """Numbers assigned to a module's names without const(...)."""
    found = []
    for node in tree(path).body:
        value = node.value if isinstance(node, ast.Assign | ast.AnnAssign) else None
        if isinstance(value, ast.UnaryOp):
            value = value.operand
        number = value.value if isinstance(value, ast.Constant) else None
        if isinstance(number, int | float) and not isinstance(number, bool):
            found.append((node.lineno, number))
    return found


def test_the_rule_on_numbers_sees_a_bare_one() -> None:
    code = "def f(a):\n    return 1.08 * a + const(9.81, 'm/s²', s) + 2 * a\n"
    function = ast.parse(code).body[0]
    assert isinstance(function, ast.FunctionDef)
    assert [each.value for each in bare_numbers(function)] == [1.08]

"""How much room a working takes, without composing it: what a page needs to know before it sets anything.

The answer is that of the composed working, held equal by a test, at a part of its cost. It rests on the
figure and the reader's preset alone, so it is kept with the figure: a design that takes figures over from an
earlier one finds their outlines again.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import isnan
from weakref import ref

from heatledger.ledger.choosing import Choice
from heatledger.ledger.compose import total_penciled
from heatledger.ledger.display import Display
from heatledger.ledger.figures import Figure, Leaf, Placed
from heatledger.ledger.formulas import Formula
from heatledger.ledger.layout import Setting
from heatledger.ledger.pencil import answer_places, pencil
from heatledger.ledger.presets import Preset
from heatledger.ledger.recording import safe_value
from heatledger.ledger.solving import Solved
from heatledger.ledger.terms import Term
from heatledger.ledger.workings import Working


@dataclass(frozen=True)
class Outline:
    """The kind of a working, its rows and inner steps, whether it can be done by hand, and its two sides."""

    kind: str
    rows: int = 0
    steps: int = 0
    by_hand: bool = False
    sides: tuple[Outline, ...] = ()


def outline_in(made: Working) -> Outline:
    """The outline of a working that has been composed."""
    sides = tuple(outline_in(each) for each in made.sides)
    return Outline(made.kind, len(made.rows), len(made.steps), made.by_hand is not None, sides)


_KEPT: dict[tuple[int, str], tuple[ref[Figure], Outline]] = {}


def outline_of(figure: Figure, preset: Preset) -> Outline:
    """The outline of a figure's working for one reader, found once as long as the figure is in use."""
    figure = figure.original if isinstance(figure, Placed) else figure
    key = id(figure), preset.name
    kept = _KEPT.get(key)
    if kept is not None and kept[0]() is figure:
        return kept[1]
    made = _outline(figure, preset)

    def forget(gone: ref[Figure]) -> None:
        held = _KEPT.get(key)
        if held is not None and held[0] is gone:
            del _KEPT[key]

    _KEPT[key] = ref(figure, forget), made
    return made


def _outline(figure: Figure, preset: Preset) -> Outline:
    origin = figure.origin
    if figure.is_missing:
        return Outline("waiting")
    if isinstance(origin, Formula):
        return _of_formula(figure, origin, preset)
    if isinstance(origin, Solved):
        left, right = origin.solution.sides()[origin.unknown]
        return Outline("found", sides=(outline_of(left, preset), outline_of(right, preset)))
    if isinstance(origin, Choice):
        return Outline("choice")
    return Outline("entry" if isinstance(origin, Leaf) else "count")


def _of_formula(figure: Figure, formula: Formula, preset: Preset) -> Outline:
    tree = Display(formula, figure.inputs, preset).tree()
    total, by_hand = tree.op == "total", _has_a_short_way(figure, formula)
    kind = "total" if total else "formula"
    plain = _plain_rows(tree)
    if plain:
        return Outline(kind, plain, 0, by_hand)
    shown = preset.shown(formula.dimension)
    exact = shown.unit.from_si(float(figure), formula.dimension.absolute)
    places = answer_places(exact, shown.start(exact))
    penciled = total_penciled(tree, exact, places) if total else pencil(tree, exact, places)
    setting = Setting(penciled, tree, preset)
    rows, _ = setting.rows(tree)
    return Outline(kind, len(rows), len(setting.steps), by_hand)


def _plain_rows(tree: Term) -> int:
    """Rows of a product or a sum of plain numbers, which need no step; 0 where it takes setting to know."""
    if tree.op == "value":
        return 1
    if tree.op not in ("chain", "total") or any(each.op != "value" for each in tree.args):
        return 0
    divides_first = tree.op == "chain" and bool(tree.detail) and tree.detail[0] == "div"
    return len(tree.args) + divides_first


def _has_a_short_way(figure: Figure, formula: Formula) -> bool:
    if formula.by_hand is None:
        return False
    short = formula.by_hand.formula
    given = dict(zip((each.name for each in formula.parameters), figure.inputs, strict=True))
    return not isnan(safe_value(short, tuple(given[each.name]._si for each in short.parameters)))

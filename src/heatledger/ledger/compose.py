"""From a figure to its working: the arithmetic of its formula, or the story of its origin."""

from __future__ import annotations

from dataclasses import replace
from math import isnan
from typing import Any

from heatledger.ledger.beside import left_over, losers_of, together_with
from heatledger.ledger.choosing import Choice
from heatledger.ledger.display import Display
from heatledger.ledger.figures import (
    NO_NAMES,
    Counting,
    Figure,
    Leaf,
    LeafKind,
    Names,
    Placed,
    flat,
    waits_for,
)
from heatledger.ledger.formulas import Formula
from heatledger.ledger.in_words import formula_in_words
from heatledger.ledger.input_lines import input_line, inputs_of, read_rows, where_written
from heatledger.ledger.layout import Setting
from heatledger.ledger.pencil import Penciled, answer_places, pencil
from heatledger.ledger.presets import Preset
from heatledger.ledger.recording import safe_value
from heatledger.ledger.solving import Solved
from heatledger.ledger.sources import Citation
from heatledger.ledger.symbols import Const, walk
from heatledger.ledger.terms import Term, rounded
from heatledger.ledger.workings import Beside, ByHandLine, Working
from heatledger.ledger.writing import nearest_words, plain_number, unit_text, written


def working_of(figure: Figure, preset: Preset, names: Names | None = None) -> Working:
    """The working of a figure for one reader.

    ``names`` tells what figures are called and where they stand; a figure found in a design brings
    its own.
    """
    if isinstance(figure, Placed):
        names, figure = names or figure.names, figure.original
    names = names or NO_NAMES
    origin = figure.origin
    if figure.is_missing:
        return _waiting(figure, preset, names)
    if isinstance(origin, Formula):
        return _formula(figure, origin, preset, names)
    if isinstance(origin, Leaf):
        return _entry(figure, origin, preset, names)
    if isinstance(origin, Choice):
        return _choice(figure, origin, preset, names)
    if isinstance(origin, Solved):
        return _found(figure, origin, preset, names)
    assert isinstance(origin, Counting)
    number, unit = _answer(figure, preset)
    return Working("count", figure, names.title(figure), f"How many: {origin.name}", answer=number, unit=unit,
                   notes=origin.things, inputs=())  # fmt: skip


def _answer(figure: Figure, preset: Preset) -> tuple[str, str]:
    shown = preset.shown(figure.dimension)
    exact = shown.unit.from_si(float(figure), figure.dimension.absolute)
    origin = figure.origin
    if isinstance(origin, Leaf) and origin.unit == shown.unit.text and origin.places is not None:
        return written(origin.typed_value, origin.places, shown.unit, preset), unit_text(shown.unit)
    places = answer_places(exact, shown.start(exact))
    keeps = figure.dimension.absolute
    return written(rounded(exact, places), places, shown.unit, preset, keeps), unit_text(shown.unit)


def _formula(figure: Figure, formula: Formula, preset: Preset, names: Names) -> Working:
    display = Display(formula, figure.inputs, preset)
    tree = display.tree()
    shown = preset.shown(formula.dimension)
    exact = shown.unit.from_si(float(figure), formula.dimension.absolute)
    total = tree.op == "total"
    places = answer_places(exact, shown.start(exact))
    penciled = total_penciled(tree, exact, places) if total else pencil(tree, exact, places)
    setting = Setting(penciled, tree, preset)
    rows, line = setting.rows(tree)
    if total and tree.args:
        rows = tuple(
            _named_part(row, each, names, figure) for row, each in zip(rows, flat(figure.inputs), strict=True)
        )
    return Working(
        "total" if total else "formula", figure, names.title(figure), formula.plain_line,
        formula_in_words(formula), tuple(setting.steps), rows, line,
        written(penciled.answer, penciled.answer_places, shown.unit, preset, _keeps(penciled, formula)),
        unit_text(shown.unit),
        less_than=not penciled.figures_left, is_total=total,
        remark=_remark(tree, penciled, preset),
        sources=_sources(formula), by_hand=_by_hand(figure, formula, preset),
        inputs=inputs_of(figure, preset, names), between=read_rows(figure, formula, preset, names),
    )  # fmt: skip


def _keeps(penciled: Penciled, formula: Formula) -> bool:
    """Whether zeros at the end of an answer stand, since they say how well it is found.

    14.5 × 9 comes out at 130.5 with nothing left over, and is written so, as inputs are.
    """
    return formula.dimension.absolute or not penciled.comes_out_even


def total_penciled(tree: Term, exact: float, places: int) -> Penciled:
    """Parts stand as printed elsewhere; the total is rounded from its true value."""
    used = {id(each): each.places if each.places is not None else places for each in tree.args}
    printed = {
        id(each): each.exact if each.typed else rounded(each.exact, used[id(each)]) for each in tree.args
    }
    return Penciled(printed, used, rounded(exact, places), places, True)


def _remark(tree: Term, penciled: Penciled, preset: Preset) -> str:
    if tree.op == "total":
        return _rounded_parts(tree, penciled, preset)
    if not penciled.told_apart:
        return "worked out unrounded: printed numbers cannot tell its inputs apart"
    return nearest_words(penciled.answer, penciled.answer_places, tree.unit, preset)


def _rounded_parts(tree: Term, penciled: Penciled, preset: Preset) -> str:
    places = max([penciled.answer_places, *(penciled.places[id(each)] for each in tree.args)])
    adds_to = rounded(sum(penciled.printed[id(each)] for each in tree.args), places)
    if adds_to == penciled.answer:
        return ""
    return f"rounded parts add to {written(adds_to, max(places, 0), tree.unit, preset)}"


def _named_part(row: Any, part: Figure, names: Names, whole: Figure) -> Any:
    return replace(row, words=names.title(part), figure=part)


def _sources(formula: Formula) -> tuple[tuple[str, Citation], ...]:
    found: list[tuple[str, Citation]] = [("", formula.citation)]
    for node in walk(formula.expression):
        if isinstance(node, Const) and (node.name, node.citation) not in found:
            found.append(
                (node.name or f"{plain_number(node.value)} {unit_text(node.unit)}".strip(), node.citation)
            )
    return tuple(found)


def _by_hand(figure: Figure, formula: Formula, preset: Preset) -> ByHandLine | None:
    if formula.by_hand is None:
        return None
    short = formula.by_hand.formula
    given = dict(zip((each.name for each in formula.parameters), figure.inputs, strict=True))
    arguments = tuple(given[each.name] for each in short.parameters)
    value = safe_value(short, tuple(each._si for each in arguments))
    if isnan(value):  # the short way has no answer here
        return None
    tree = Display(short, arguments, preset).tree()
    shown = preset.shown(short.dimension)
    exact = shown.unit.from_si(value, short.dimension.absolute)
    penciled = pencil(tree, exact, answer_places(exact, shown.start(exact)))
    number = written(penciled.answer, penciled.answer_places, shown.unit, preset, _keeps(penciled, short))
    return ByHandLine(
        Setting(penciled, tree, preset).expression(tree, whole=True), number, unit_text(shown.unit),
        formula.by_hand.neglects, not penciled.figures_left,
        nearest_words(penciled.answer, penciled.answer_places, shown.unit, preset),
    )  # fmt: skip


def _entry(figure: Figure, origin: Leaf, preset: Preset, names: Names) -> Working:
    number, unit = _answer(figure, preset)
    plain = {
        LeafKind.JOB: "An entry of the job",
        LeafKind.CATALOG: "A row of the catalog",
        LeafKind.SOURCE: "A value of a source",
    }[origin.kind]
    notes = [f'typed: "{origin.typed}"'] if origin.typed else []
    notes.append(f"where: {where_written(figure, origin, names)}")
    if origin.known:
        notes.append(f"how well it is known: {origin.known}")
    if origin.half_range_words:
        notes.append(f"taken as off by at most {origin.half_range_words}")
    if origin.replaces:
        notes.append(f"in place of {origin.replaces}")
    notes += [f"beside it: {each}" for each in origin.beside]
    sources = (("", origin.citation),) if origin.citation else ()
    return Working("entry", figure, names.title(figure), plain, answer=number, unit=unit, sources=sources,
                   notes=tuple(notes))  # fmt: skip


def _choice(figure: Figure, choice: Choice, preset: Preset, names: Names) -> Working:
    number, unit = _answer(figure, preset)
    losers = losers_of(choice, preset, names)
    notes = (
        f"{choice.rule}: {names.thing(choice.winner)}",
        f"because {choice.because}",
        *(f"beside it {each.words}: {each.shown}".removesuffix(": ") for each in losers),
    )
    words = ("taken", "looked up by")
    inputs = tuple(
        input_line(said, each, preset, names) for said, each in zip(words, flat(figure.inputs), strict=False)
    )
    return Working(
        "choice", figure, names.title(figure), "Chosen", answer=number, unit=unit, notes=notes, inputs=inputs,
        beside=losers,
    )  # fmt: skip


def _found(figure: Figure, solved: Solved, preset: Preset, names: Names) -> Working:
    number, unit = _answer(figure, preset)
    solution = solved.solution
    left, right = solution.sides()[solved.unknown]
    together = together_with(solved, preset, names)
    return Working(
        "found", figure, names.title(figure), f"Found together: {solution.words}", answer=number, unit=unit,
        notes=(solution.outcome.words,),
        found_together=tuple(f"{each.words} {each.shown}" for each in together),
        beside=together, left_over=left_over(left, right, preset),
        sides=(working_of(left, preset, names), working_of(right, preset, names)),
        inputs=tuple(input_line(names.title(each), each, preset, names) for each in solution.inputs),
    )  # fmt: skip


def _waiting(figure: Figure, preset: Preset, names: Names) -> Working:
    missing, origin = waits_for(figure), figure.origin
    formula = formula_in_words(origin) if isinstance(origin, Formula) else ()
    waiting = tuple(f"{each.origin.words}: {each.origin.path}" for each in missing)
    if isinstance(origin, Leaf) and origin.kind is LeafKind.JOB:
        plain = "An entry that has not been given yet"
    else:
        plain = "No value yet"
    if missing:
        return Working("waiting", figure, names.title(figure), plain, formula, waiting=waiting,
                       beside=tuple(Beside(each.origin.words, "", each) for each in missing))  # fmt: skip
    return Working("waiting", figure, names.title(figure), _no_answer(figure), formula,
                   notes=_why_no_answer(figure, names), inputs=inputs_of(figure, preset, names))  # fmt: skip


def _no_answer(figure: Figure) -> str:
    if isinstance(figure.origin, Solved):
        return f"Not found: {figure.origin.solution.words}"
    if any(each.is_missing for each in flat(figure.inputs)):
        return "No value: it comes from one that has none"
    return "No value: the arithmetic has no answer with these inputs"


def _why_no_answer(figure: Figure, names: Names) -> tuple[str, ...]:
    if isinstance(figure.origin, Solved):
        return (figure.origin.solution.outcome.words,)
    empty = [each for each in flat(figure.inputs) if each.is_missing]
    return tuple(f"it comes from a figure without a value: {names.title(each)}" for each in empty)

"""The inputs of a working as lines: each with its value, what it is, and where it was written."""

from __future__ import annotations

from heatledger.ledger.choosing import Choice
from heatledger.ledger.figures import Figure, Leaf, LeafKind, Names, flat
from heatledger.ledger.formulas import Formula, words_of
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_half_range
from heatledger.ledger.symbols import walk
from heatledger.ledger.workings import InputLine


def inputs_of(figure: Figure, preset: Preset, names: Names) -> tuple[InputLine, ...]:
    """Every input of a figure, named as its formula names it."""
    if isinstance(figure.origin, Formula):
        named = _named(figure.origin, figure)
    else:
        named = [(names.title(each), each) for each in flat(figure.inputs)]
    return tuple(input_line(words, each, preset, names) for words, each in named)


def _named(formula: Formula, figure: Figure) -> list[tuple[str, Figure]]:
    pairs: list[tuple[str, Figure]] = []
    for parameter, given in zip(formula.parameters, figure.inputs, strict=True):
        if not parameter.many:
            pairs.append((parameter.words, given))
        elif formula.expression.op != "total":
            pairs += [(parameter.words, each) for each in given]
    return pairs


def input_line(words: str, figure: Figure, preset: Preset, names: Names) -> InputLine:
    """One input: an entry by what was typed and where, a result by its title and its path."""
    origin = figure.origin
    known = ""
    if isinstance(origin, Leaf):
        known = origin.known or (origin.citation.standing.value if origin.citation else "")
        typed = f'"{origin.typed}"' if origin.typed else ""
        text = ", ".join(each for each in (typed, where_written(figure, origin, names)) if each)
        known = ", ".join(each for each in (known, show_half_range(figure, preset)) if each)
    elif isinstance(origin, Choice):
        text = f"{origin.rule}, {names.thing(origin.winner)}"
    else:
        title, path = names.title(figure), names.path(figure)
        text = f"{title} ({path})" if path else title
    return InputLine(show(figure, preset), words, text, known, figure)


def where_written(figure: Figure, origin: Leaf, names: Names) -> str:
    """Where an entry stands: its line of the job, or its row of the catalog and what it was taken for."""
    place = names.place(figure)
    first, *steps = origin.path.split("/")
    if origin.kind is not LeafKind.CATALOG or first != "catalog" or len(steps) < 2:
        return place
    row = f"catalog {words_of(steps[0])}, row {steps[1]}"
    return row if place == origin.path else f"{row}, for {place}"


def read_rows(
    figure: Figure, formula: Formula, preset: Preset, names: Names
) -> tuple[tuple[InputLine, InputLine], ...]:
    """The rows on both sides of a value that is read between them, where each is a cell of a table."""
    given = dict(zip((each.name for each in formula.parameters), figure.inputs, strict=True))
    words = {each.name: each.words for each in formula.parameters}
    for node in walk(formula.expression):
        cells = node.args[1:] if node.op == "read_between" else ()
        if cells and all(each.op == "input" for each in cells):
            lines = [
                input_line(words[each.detail], given[each.detail], preset, names) for each in cells
            ]  # fmt: skip
            return ((lines[0], lines[2]), (lines[1], lines[3]))
    return ()

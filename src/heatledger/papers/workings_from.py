"""The ledger's working turned into the block that paper sets: same tokens, keys in place of paths."""

from __future__ import annotations

from heatledger.ledger.compose import working_of
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.layout import text_of
from heatledger.ledger.presets import Preset
from heatledger.ledger.sources import Citation
from heatledger.ledger.workings import Row, Token, Working
from heatledger.papers import workings_data as paper
from heatledger.papers.addresses import Addresses

_KINDS: dict[str, paper.TokenKind] = {
    "number": "number", "unit": "unit", "op": "op", "word": "word", "open": "op", "close": "op", "root": "word",
    "letter": "word",
}  # fmt: skip


def block(figure: Figure, addresses: Addresses, units: Preset) -> paper.Working:
    """The working of a figure as paper takes it."""
    names = addresses.design.names
    made = working_of(figure, units, names)
    rows = tuple(_row(each, addresses) for each in made.rows)
    if made.line:
        rows = (paper.ColumnRow("", "", "", text_of(made.line)),)
    return paper.Working(
        key=addresses.key(figure),
        title=made.title,
        column=rows,
        answer=paper.Answer(made.answer, made.unit, "less than this" if made.less_than else ""),
        plain_line=made.plain,
        formula=tokens(made.formula),
        steps=tuple(paper.Step(each.letter, tokens(each.expression), each.number, each.unit) for each in made.steps),
        is_total=made.is_total,
        remark=made.remark,
        sources=tuple(source(each, words) for words, each in made.sources),
        by_hand=_by_hand(made),
        goes_into=_goes_into(figure, addresses),
        waits_for="; ".join(made.waiting),
    )


def tokens(given: tuple[Token, ...]) -> tuple[paper.Token, ...]:
    """Tokens of the ledger as those of paper; what stands after ^ is raised."""
    made: list[paper.Token] = []
    raised = False
    for each in given:
        if each.kind == "op" and each.text == "^":
            raised = True
            continue
        kind = "power" if raised and each.kind == "number" else _KINDS[each.kind]
        raised = False
        made.append(paper.Token(kind, each.text))
    return tuple(made)


def source(citation: Citation, words: str = "") -> paper.SourceUse:
    """A use of a source with its standing."""
    said = str(citation) if citation.key or citation.place else ""
    text = f"{words}: {said}" if words and said else words or said
    return paper.SourceUse(text or citation.standing.value, citation.standing.value)


def known_of(figure: Figure | None) -> paper.Known:
    """How well an entry is known; empty for what was found."""
    origin = figure.origin if figure is not None else None
    known = origin.known if isinstance(origin, Leaf) else ""
    return known if known in ("measured", "from plans", "told", "assumed") else ""  # type: ignore[return-value]


def _row(row: Row, addresses: Addresses) -> paper.ColumnRow:
    words = f"= {text_of(row.expression)}" if row.expression else row.words
    if row.carried:
        words += f", shown as {row.carried}"
    return paper.ColumnRow(row.op, row.number, row.unit, words, addresses.key(row.figure), known_of(row.figure))


def _by_hand(made: Working) -> str:
    if made.by_hand is None:
        return ""
    hand = made.by_hand
    return f"{text_of(hand.expression)} = {hand.number} {hand.unit}; leaves out {hand.neglects}."


def _goes_into(figure: Figure, addresses: Addresses) -> tuple[paper.GoesInto, ...]:
    names = addresses.design.names
    uses = [each for each in names.uses(figure) if addresses.key(each)]
    return tuple(paper.GoesInto(addresses.key(each), names.title(each)) for each in uses[:3])

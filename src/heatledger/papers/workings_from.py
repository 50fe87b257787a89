"""The ledger's working turned into what paper sets: same tokens, keys in place of paths."""

from __future__ import annotations

from heatledger.drawings.naming import as_part, title_of
from heatledger.ledger.choosing import Choice
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.outline import outline_in
from heatledger.ledger.show import show
from heatledger.ledger.solving import Solved
from heatledger.ledger.sources import Citation
from heatledger.ledger.workings import Row, Token, Working
from heatledger.papers import workings_data as paper
from heatledger.papers.addresses import Addresses, Group, fits_a_line

MOST_USES = 4
_KINDS: dict[str, paper.TokenKind] = {
    "number": "number", "unit": "unit", "op": "op", "sign": "sign", "word": "word", "letter": "word",
    "open": "open", "close": "close", "root": "root",
}  # fmt: skip


def group_of(group: Group, found: Addresses, printed: frozenset[str] | None = None) -> paper.WorkingGroup:
    """The workings under one heading: blocks first, then small arithmetic.

    ``printed`` holds the addresses of a paper that carries only some of the workings; None for all.
    """
    return paper.WorkingGroup(
        group.title,
        tuple(block(each, found, group.owner, printed) for each in group.blocks),
        tuple(small_line(each, found, group) for each in group.lines),
        group.line,
    )


def groups_of(group: Group, found: Addresses, set_out: set[int]) -> list[paper.WorkingGroup]:
    """The same where all workings stand on one paper: a formula is set in a column once in its stage.

    After that its workings are running lines. ``set_out`` keeps the formulas that stood in a column. The
    order of the addresses is kept, so a heading may go on as one without a title.
    """
    parts: list[tuple[list[paper.Working], list[paper.Line]]] = [([], [])]
    for figure in group.blocks:
        made = found.working(figure)
        if made.kind == "formula" and id(figure.origin) in set_out and fits_a_line(outline_in(made)):
            parts[-1][1].append(small_line(figure, found, group))
            continue
        set_out.add(id(figure.origin))
        if parts[-1][1]:
            parts.append(([], []))
        parts[-1][0].append(block(figure, found, group.owner))
    parts[-1][1].extend(small_line(each, found, group) for each in group.lines)
    return [
        paper.WorkingGroup(
            "" if number else group.title, tuple(blocks), tuple(lines), "" if number else group.line
        )
        for number, (blocks, lines) in enumerate(parts)
    ]


def block(
    figure: Figure, found: Addresses, owner: str = "", printed: frozenset[str] | None = None
) -> paper.Working:
    """The working of a figure as paper takes it, under a heading about ``owner``."""
    made = found.working(figure)
    rows = tuple(_row(each, found, made, owner) for each in made.rows)
    title, what = _title(figure, found, owner)
    return paper.Working(
        key=found.key(figure),
        title=title,
        what=what,
        column=rows,
        answer=paper.Answer(made.answer, made.unit, "less than this" if made.less_than else ""),
        plain_line=made.plain if made.kind not in ("formula", "total") else "",
        formula=() if made.kind in ("total", "waiting") else tokens(made.formula),
        steps=_steps(made),
        line=tokens(made.line),
        sides=_sides(made, found, owner),
        notes=_notes(figure, made, found),
        is_total=made.is_total,
        remark=made.remark,
        sources=() if made.kind == "total" else tuple(source(each, words) for words, each in made.sources),
        by_hand=_by_hand(made),
        comes_from=() if made.sides else _comes_from(made, rows, found),
        goes_into=_goes_into(figure, found, printed),
        waits_for=_waits_for(made),
    )


def small_line(figure: Figure, found: Addresses, group: Group) -> paper.Line:
    """A small working as one running line."""
    made = found.working(figure)
    title, what = group.titles.get(found.kind(figure)) or _title(figure, found, group.owner)
    run: list[paper.Token] = []
    for each in made.rows:
        run += _operand(each)
        if each.expression:
            run += [paper.Token("open", "("), *tokens(each.expression), paper.Token("close", ")")]
        if each.carried:
            run.append(paper.Token("aside", f"(shown as {each.carried})"))
        key = found.key(each.figure)
        run += [paper.Token("key", key)] if key else []
    run += tokens(made.line)
    if not made.sides and not any(each.kind == "key" for each in run):
        run += [paper.Token("key", key) for key in _keys([each.figure for each in made.inputs], found)]
    return paper.Line(
        found.key(figure), title, tuple(run), made.answer, made.unit, what, _remark(figure, made, found),
        tuple(dict.fromkeys(each.standing.value for _, each in made.sources)) if made.kind != "total" else (),
        _waits_for(made), _steps(made), _sides(made, found, group.owner),
    )  # fmt: skip


def _title(figure: Figure, found: Addresses, owner: str) -> tuple[str, str]:
    """The thing and what of it, as its step names them, else as the design does."""
    return found.titles.get(found.kind(figure)) or title_of(figure, found.design, owner)


def _steps(made: Working) -> tuple[paper.Step, ...]:
    """The inner steps of a working, each on a line of its own."""
    return tuple(
        paper.Step(each.letter, tokens(each.expression), each.number, each.unit) for each in made.steps
    )


def _operand(row: Row) -> list[paper.Token]:
    """A row of a column as a piece of a line; a negative number after an operator stands in brackets."""
    amount = [paper.Token("number", row.number)]
    if row.unit:
        amount.append(paper.Token("unit", row.unit))
    if row.op and row.number.startswith("−"):
        amount = [paper.Token("open", "("), *amount, paper.Token("close", ")")]
    return [paper.Token("op", row.op), *amount] if row.op else amount


def tokens(given: tuple[Token, ...]) -> tuple[paper.Token, ...]:
    """Tokens of the ledger as those of paper; what stands after ^ is raised, with its brackets."""
    made: list[paper.Token] = []
    raised, depth = False, 0
    for each in given:
        if each.kind == "op" and each.text == "^":
            raised = True
            continue
        made.append(paper.Token("power" if raised else _KINDS[each.kind], each.text))
        depth += {"open": 1, "close": -1}.get(each.kind, 0) if raised else 0
        raised = raised and depth > 0
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


def _row(row: Row, found: Addresses, made: Working, owner: str) -> paper.ColumnRow:
    words = "" if row.expression else row.words
    if made.kind == "total" and row.figure is not None:
        thing, what = found.titles.get(found.kind(row.figure), ("", ""))
        words = thing or what or as_part(row.figure, found.design, owner)
    if row.carried:
        words += f", shown as {row.carried}"
    return paper.ColumnRow(
        row.op, row.number, row.unit, words, found.key(row.figure), known_of(row.figure),
        expression=tokens(row.expression),
    )  # fmt: skip


def _sides(made: Working, found: Addresses, owner: str) -> tuple[paper.Side, ...]:
    """Both sides of a balance as columns of their own."""
    return tuple(
        paper.Side(
            side.title,
            tuple(_row(each, found, side, owner) for each in side.rows),
            paper.Answer(side.answer, side.unit),
            _steps(side),
            tokens(side.line),
        )
        for side in made.sides
    )


def _notes(figure: Figure, made: Working, found: Addresses) -> tuple[str, ...]:
    choice = figure.origin
    if made.kind == "choice" and isinstance(choice, Choice):
        lost = [
            _called(name, found) + (f" ({show(each, found.units)})" if isinstance(each, Figure) else "")
            for name, each in choice.losers
        ]
        beside = (f"Not taken: {', '.join(lost)}.",) if lost else ()
        rule, taken = f"{choice.rule[:1].upper()}{choice.rule[1:]}", _called(choice.winner, found)
        return (f"{rule}: {taken}, because {choice.because}.", *beside)
    if made.kind == "count":
        return (f"Counted: {', '.join(made.notes)}.",) if made.notes else ()
    others = found_beside(figure, found)
    return (f"Found together with {', '.join(others)}.", *made.notes) if others else made.notes


def _called(name: str, found: Addresses) -> str:
    """What a choice was made among: an emitter, a circuit or a room by its name, else the words as given."""
    job = found.design.job
    for things in (job.system.emitters, job.system.circuits, job.rooms):
        if name in things:
            return str(things[name].name)
    return name


def found_beside(figure: Figure, found: Addresses) -> list[str]:
    """The addresses of what was found together with a figure, in their order; a name where there is none."""
    origin = figure.origin
    if not isinstance(origin, Solved) or figure.is_missing:
        return []
    others = {name: each for name, each in origin.solution.figures.items() if name != origin.unknown}
    return [found.key(each) or f"{name} {show(each, found.units)}" for name, each in others.items()]


def _remark(figure: Figure, made: Working, found: Addresses) -> str:
    """What is said after a line: for one of several figures found together, where they all are named."""
    beside = found_beside(figure, found) if made.sides else []
    return f"found together with {min(beside, key=_place)}" if beside else made.remark


def _place(key: str) -> tuple[int, int]:
    sheet, _, line = key.partition("·")
    return (int(sheet), int(line)) if sheet.isdigit() and line.isdigit() else (0, 0)


def _by_hand(made: Working) -> paper.ByHand | None:
    hand = made.by_hand
    if hand is None:
        return None
    about = ", ".join(each for each in ("less than this" if hand.less_than else "", hand.remark) if each)
    words = f"; leaves out {hand.neglects}."
    said = f" ({about}){words}" if about else words
    return paper.ByHand(tokens(hand.expression), hand.number, hand.unit, said)


def _keys(figures: list[Figure], found: Addresses) -> list[str]:
    return list(dict.fromkeys(key for each in figures if (key := found.key(each))))


def _comes_from(
    made: Working, rows: tuple[paper.ColumnRow, ...], found: Addresses
) -> tuple[paper.LedTo, ...]:
    """The inputs that no row of the column leads to."""
    led = {each.key for each in rows}
    words: dict[str, list[Figure]] = {}
    for each in made.inputs:
        if found.key(each.figure) not in led:
            words.setdefault(each.words, []).append(each.figure)
    lines = (paper.LedTo(said, tuple(_keys(figures, found))) for said, figures in words.items())
    return tuple(each for each in lines if each.keys)


def _goes_into(figure: Figure, found: Addresses, printed: frozenset[str] | None) -> paper.LedTo | None:
    keys = [each for each in found.goes_into(figure) if printed is None or each in printed]
    more = len(keys) - MOST_USES
    return (
        paper.LedTo("into", tuple(keys[:MOST_USES]), f"and {more} more" if more > 0 else "") if keys else None
    )


def _waits_for(made: Working) -> str:
    if made.waiting:
        return "; ".join(made.waiting)
    return made.plain if made.kind == "waiting" else ""

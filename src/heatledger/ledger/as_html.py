"""A working as a fragment of HTML for the right page, in the order in which it is read.

Callout and name, the formula in words, its units, the arithmetic in columns, in the margin where it
comes from, then down to the tape, the band, by hand, what it goes into. The fragment is made of the same
tokens as the text; every figure in it is a button of the form called ``open``.
"""

from __future__ import annotations

from html import escape

from heatledger.ledger.figures import NO_NAMES, Figure, Names, Placed
from heatledger.ledger.html_extras import NO_EXTRAS, Extras, band, callout, trail, uses
from heatledger.ledger.html_parts import amount, figure_button, line, line_type, path_of, sign
from heatledger.ledger.html_sources import margin
from heatledger.ledger.workings import Beside, InputLine, Row, Working

PRODUCT = {"×", "÷"}
BESIDE = "beside it "


def as_html(
    made: Working, names: Names | None = None, level: int = 3, extras: Extras = NO_EXTRAS, side: bool = False
) -> str:
    """One working as an HTML fragment; ``level`` is that of its heading.

    ``names`` tells by which path a figure opens. ``side`` is one side of a balance, which is no total of
    its own and repeats no sources.
    """
    names = names or (made.figure.names if isinstance(made.figure, Placed) else NO_NAMES)
    path = path_of(made.figure, names)
    parts = [
        _head(made, level, extras),
        f'<p class="formula">{line(made.formula)}</p>' if made.formula else "",
        _unit_line(made.rows, made.unit),
        f'<div class="body"><div>{_arithmetic(made, names, level, side)}</div>{margin(made.sources)}</div>',
        *(_side(label, each, names, level) for label, each in zip(("One side", "Other side"), made.sides,
                                                                  strict=False)),
        _left_over(made),
        _notes(made, names),
        _inputs(made.inputs, names, min(level + 1, 6)),
        band(extras),
        _by_hand(made),
        uses(extras),
        trail(extras),
    ]  # fmt: skip
    at = f' data-path="{escape(path)}"' if path else ""
    body = "\n".join(each for each in parts if each)
    tag = "div" if side else "section"
    return f'<{tag} class="working {escape(made.kind)}"{at}>\n{body}\n</{tag}>'


def _head(made: Working, level: int, extras: Extras) -> str:
    plain = extras.plain or made.plain
    title = f"<h{level}>{escape(made.title or 'Figure')}</h{level}>"
    return f'<header>{callout(extras)}<div>{title}<p class="plain">{escape(plain)}</p></div></header>'


def _side(label: str, made: Working, names: Names, level: int) -> str:
    inner = as_html(made, names, min(level + 1, 6), side=True)
    return f'<div class="side"><p class="which">{label}</p>{inner}</div>'


def _unit_line(rows: tuple[Row, ...], unit: str) -> str:
    """The units of a product, multiplied out: ft² × Btu/(h·ft²·°F) × °F = Btu/h."""
    units = [each for each in rows if each.unit]
    if len(units) < 2 or not unit or not {each.op for each in rows[1:]} <= PRODUCT or len(rows) < 2:
        return ""
    first = "1 ÷ " if units[0].op == "÷" else ""
    rest = "".join(f" {each.op} {escape(each.unit)}" for each in units[1:])
    return f'<p class="units" aria-hidden="true">{first}{escape(units[0].unit)}{rest} = {escape(unit)}</p>'


def _arithmetic(made: Working, names: Names, level: int, side: bool) -> str:
    if made.kind == "waiting":
        return _waiting(made, names)
    steps = "".join(
        f'<li><span class="letter">{escape(each.letter)}</span> {sign("=")} {line(each.expression)} '
        f"{sign('=')} {amount(each.number, each.unit)}</li>"
        for each in made.steps
    )
    listed = f'<ol class="steps">{steps}</ol>' if steps else ""
    return listed + _between(made, names) + _column(made, names, side)


def _between(made: Working, names: Names) -> str:
    """The two rows of a table that a value is read between, so that it can be checked against them."""
    if not made.between:
        return ""
    at, holds = made.between[0]
    rows = "".join(
        "<tr>"
        + "".join(f"<td>{_button(each.shown, each.figure, each.words, names)}</td>" for each in pair)
        + f'<td class="note">{escape(pair[1].origin)}</td></tr>'
        for pair in made.between
    )
    head = "".join(
        f'<th scope="col">{escape(each.words.removeprefix("lower "))}</th>' for each in (at, holds)
    )
    return (
        f'<table class="between"><caption>Read between two rows</caption><thead><tr>{head}'
        f'<th scope="col">row</th></tr></thead><tbody>{rows}</tbody></table>'
    )


def _column(made: Working, names: Names, side: bool) -> str:
    rows = "".join(_row(each, names) for each in made.rows)
    if made.line:
        rows += f'<tr class="line"><td colspan="4">{line(made.line)}</td></tr>'
    less = "less than " if made.less_than else ""
    ruled = " ruled" if rows else ""
    under = "sum" if side else "sum total"
    answer = (
        f'<tr class="answer"><td class="op{ruled}"></td>'
        f'<td class="v ans{ruled}">{less}<strong>{escape(made.answer)}</strong></td>'
        f'<td class="u">{escape(made.unit)}</td><td class="note">{escape(made.remark)}</td></tr>'
    )
    caption = f'<caption class="vh">{escape(made.title)}, worked out</caption>'
    return f'<table class="{under}">{caption}<tbody>{rows}</tbody><tfoot>{answer}</tfoot></table>'


def _row(row: Row, names: Names) -> str:
    number = escape(row.number)
    if row.figure is not None:
        number = _button(row.number, row.figure, row.words, names, row.unit)
    if row.expression:
        note = f"{sign('=')} {line(row.expression)}"
    else:
        note = escape(row.words + (f", shown as {row.carried}" if row.carried else ""))
    return (
        f'<tr><td class="op">{sign(row.op) if row.op else ""}</td><td class="v">{number}</td>'
        f'<td class="u">{escape(row.unit)}</td><td class="note">{note}</td></tr>'
    )


def _button(shown: str, figure: Figure | None, words: str, names: Names, unit: str = "") -> str:
    what = f"{unit}, {words}" if unit and words else unit or words
    return figure_button(shown, path_of(figure, names), what, line_type(figure))


def _waiting(made: Working, names: Names) -> str:
    named = zip(made.waiting, made.beside, strict=True)
    items = "".join(f"<li>waits for {_button(text, each.figure, '', names)}</li>" for text, each in named)
    return f'<ul class="waiting">{items}</ul>' if items else ""


def _left_over(made: Working) -> str:
    if not made.left_over:
        return ""
    return f'<p class="left-over">One side less the other leaves {escape(made.left_over)}.</p>'


def _notes(made: Working, names: Names) -> str:
    notes = [escape(each) for each in made.notes]
    if made.kind == "choice":
        said = [each for each in made.notes if not each.startswith(BESIDE)]
        notes = [escape(each) for each in said] + [_lost(each, names) for each in made.beside]
    items = "".join(
        f'<li class="lost">{each}</li>' if each.startswith(BESIDE) else f"<li>{each}</li>" for each in notes
    )
    if made.found_together:
        together = ", ".join(f"{escape(each.words)} {_amount_of(each, names)}" for each in made.beside)
        items = f"<li>Found together with {together}</li>{items}"
    return f'<ul class="notes">{items}</ul>' if items else ""


def _lost(each: Beside, names: Names) -> str:
    """One that was not chosen: what it is, and its size."""
    return f"{BESIDE}{escape(each.words)}" + (f": {_amount_of(each, names)}" if each.shown else "")


def _amount_of(each: Beside, names: Names) -> str:
    return _button(each.shown, each.figure, each.words, names)


def _by_hand(made: Working) -> str:
    hand = made.by_hand
    if not hand:
        return ""
    less = "less than " if hand.less_than else ""
    remark = f" ({escape(hand.remark)})" if hand.remark else ""
    return (
        f'<p class="hand"><b>By hand</b> {line(hand.expression)} {sign("=")} {less}'
        f"{amount(hand.number, hand.unit)}{remark}; leaves out {escape(hand.neglects)}.</p>"
    )


def _inputs(inputs: tuple[InputLine, ...], names: Names, level: int) -> str:
    items = []
    for each in inputs:
        shown = _button(each.shown, each.figure, each.words, names)
        known = f"; {escape(each.known)}" if each.known else ""
        path = path_of(each.figure, names)
        origin = each.origin.removesuffix(f"({path})").strip() if path else each.origin
        told = f' <span class="q2">{escape(origin)}{known}</span>' if origin != each.words or known else ""
        items.append(f"<li><span>{shown}</span><span>{escape(each.words)}{told}</span></li>")
    if not items:
        return ""
    return f'<div class="leaves"><h{level}>Down to the tape</h{level}><ul>{"".join(items)}</ul></div>'

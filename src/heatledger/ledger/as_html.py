"""A working as a fragment of HTML: a table for the column, a button at each figure that opens.

The fragment is made of the same tokens as the text; the page that holds it brings its own style. All
text is escaped. A reader with a screen reader hears operator, number, unit and words of each row.
"""

from __future__ import annotations

from html import escape

from heatledger.ledger.as_data import Data, as_data
from heatledger.ledger.figures import Names
from heatledger.ledger.workings import Working

SPOKEN = {"+": "plus", "−": "minus", "×": "times", "÷": "divided by"}
TIGHT_BEFORE = {"close", "unit"}
SPACED = "+−×÷<>≤≥"


def as_html(made: Working, names: Names | None = None, level: int = 3) -> str:
    """One working as an HTML fragment; ``level`` is that of its heading."""
    return _section(as_data(made, names), level)


def _section(data: Data, level: int) -> str:
    parts = [
        f"<h{level}>{escape(data['title'] or 'Figure')}</h{level}>",
        f'<p class="plain">{escape(data["plain"])}</p>',
    ]
    if data["formula"]:
        parts.append(f'<p class="formula">{_line(data["formula"])}</p>')
    parts += [_steps(data), _column(data)]
    if data["sides"]:
        labels = ("One side", "Other side")
        parts += [
            f'<div class="side"><p>{label}</p>{_section(each, min(level + 1, 6))}</div>'
            for label, each in zip(labels, data["sides"], strict=False)
        ]
    parts += [_by_hand(data), _notes(data), _inputs(data), _sources(data)]
    path = f' data-path="{escape(data["path"])}"' if data["path"] else ""
    body = "\n".join(each for each in parts if each)
    return f'<section class="working {escape(data["kind"])}"{path}>\n{body}\n</section>'


def _line(tokens: list[dict[str, str]]) -> str:
    """A line of tokens; numbers keep their units beside them."""
    out = ""
    for each in tokens:
        kind, text = each["kind"], each["text"]
        piece = (
            f'<span class="{kind}">{escape(text)}</span>'
            if kind in ("number", "unit", "letter")
            else escape(text)
        )
        if kind == "op" and text in SPACED:
            out = f"{out.rstrip()} {piece} "
        elif kind == "unit":
            out += f"&nbsp;{piece}"
        elif kind == "word":
            tight = text[0] in ",:"
            gap = "" if tight or not out or out[-1] in "(√^ " else " "
            out = f"{out.rstrip() if tight else out}{gap}{piece} "
        elif kind == "close" or text == "^":
            out = out.rstrip() + piece
        else:
            out += piece
    return out.strip()


def _steps(data: Data) -> str:
    items = [
        f'<li><span class="letter">{escape(each["letter"])}</span> = {_line(each["expression"])} = '
        f"{_amount(each['number'], each['unit'])}</li>"
        for each in data["steps"]
    ]
    return f'<ol class="steps">{"".join(items)}</ol>' if items else ""


def _amount(number: str, unit: str) -> str:
    inner = f'<span class="number">{escape(number)}</span>'
    return f'{inner}&nbsp;<span class="unit">{escape(unit)}</span>' if unit else inner


def _column(data: Data) -> str:
    if data["kind"] == "waiting":
        items = "".join(f"<li>waits for {escape(each)}</li>" for each in data["waiting"])
        return f'<ul class="waiting">{items}</ul>' if items else ""
    rows = "".join(_row(each) for each in data["rows"])
    if data["line"]:
        rows += f'<tr class="line"><td colspan="4">{_line(data["line"])}</td></tr>'
    less = "less than " if data["less_than"] else ""
    answer = (
        f'<tr class="answer"><td class="op"></td>'
        f'<td class="number">{less}<strong>{escape(data["answer"])}</strong></td>'
        f'<td class="unit">{escape(data["unit"])}</td><td class="note">{escape(data["remark"])}</td></tr>'
    )
    kind = "total" if data["is_total"] else "column"
    caption = f'<caption class="unseen">{escape(data["title"])}, worked out</caption>'
    return f'<table class="{kind}">{caption}<tbody>{rows}</tbody><tfoot>{answer}</tfoot></table>'


def _row(row: Data) -> str:
    op = f'<span aria-label="{SPOKEN[row["op"]]}">{row["op"]}</span>' if row["op"] else ""
    number = escape(row["number"])
    if row["path"]:
        number = f'<button type="button" data-path="{escape(row["path"])}">{number}</button>'
    if row["expression"]:
        note = f"= {_line(row['expression'])}"
    else:
        carried = f", shown as {row['carried']}" if row["carried"] else ""
        note = escape(row["words"] + carried)
    return (
        f'<tr><td class="op">{op}</td><td class="number">{number}</td>'
        f'<td class="unit">{escape(row["unit"])}</td><td class="note">{note}</td></tr>'
    )


def _by_hand(data: Data) -> str:
    hand = data["by_hand"]
    if not hand:
        return ""
    less = "less than " if hand["less_than"] else ""
    remark = f" ({escape(hand['remark'])})" if hand["remark"] else ""
    return (
        f'<p class="by-hand">By hand: {_line(hand["expression"])} = {less}'
        f"{_amount(hand['number'], hand['unit'])}{remark}; leaves out {escape(hand['neglects'])}</p>"
    )


def _notes(data: Data) -> str:
    notes = [escape(each) for each in data["notes"]]
    if data["found_together"]:
        notes.insert(0, f"Found together with {escape(', '.join(data['found_together']))}")
    return f'<ul class="notes">{"".join(f"<li>{each}</li>" for each in notes)}</ul>' if notes else ""


def _inputs(data: Data) -> str:
    items = []
    for each in data["inputs"]:
        shown = escape(each["shown"])
        if each["path"]:
            shown = f'<button type="button" data-path="{escape(each["path"])}">{shown}</button>'
        known = f"; {escape(each['known'])}" if each["known"] else ""
        items.append(f"<dt>{escape(each['words'])}</dt><dd>{shown} {escape(each['origin'])}{known}</dd>")
    return f'<dl class="inputs">{"".join(items)}</dl>' if items else ""


def _sources(data: Data) -> str:
    items = []
    for each in data["sources"]:
        words = f"{escape(each['words'])}: " if each["words"] else ""
        standing = f'<span class="standing">{escape(each["standing"])}</span>'
        items.append(f"<li>{words}{escape(each['text'])}, {standing}</li>")
    return f'<ul class="sources">{"".join(items)}</ul>' if items else ""

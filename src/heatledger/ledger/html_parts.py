"""The small pieces of a working in HTML: lines of tokens, amounts, figures that open, marks of a source.

Every text is escaped, and nothing carries a style of its own. An operator is drawn as its sign and
heard as its word.
"""

from __future__ import annotations

from html import escape

from heatledger.ledger.figures import Figure, Leaf, LeafKind, Names
from heatledger.ledger.sources import Standing
from heatledger.ledger.workings import Token, Tokens

SPOKEN = {
    "+": "plus", "−": "minus", "×": "times", "÷": "divided by", "<": "is less than", ">": "is more than",
    "≤": "is at most", "≥": "is at least", "=": "is",
}  # fmt: skip
RAISED = "to the power"
LINES = {"measured": "solid", "from plans": "plan", "told": "plan", "assumed": "guess"}
"""The line under an entry, by how well it is known: measured solid, from plans dashed, assumed dotted."""

_BOX = '<path d="M1 1h9v9H1z" fill="none" stroke="currentColor" stroke-width="1.25"/>'
_MARKS = {
    Standing.SEEN: '<path d="M.75.75h9.5v9.5H.75z" fill="currentColor"/>',
    Standing.SECOND_HAND: _BOX + '<path d="M3.5 3.5h4v4h-4z" fill="currentColor"/>',
    Standing.MEMORY: _BOX,
    Standing.PRACTICE: _BOX + '<path d="M1 10V1l9 9z" fill="currentColor"/>',
    Standing.DERIVED: _BOX + '<path d="M3 4h5M3 7h5" stroke="currentColor" stroke-width="1.25"/>',
    Standing.JUDGMENT: _BOX + '<path d="M1 1h4.5v9H1z" fill="currentColor"/>',
    Standing.YOURS: _BOX + '<circle cx="5.5" cy="5.5" r="1.6" fill="currentColor"/>',
    Standing.INVENTED: _BOX.replace("/>", ' stroke-dasharray="2 1.6"/>'),
}


def standing_mark(standing: Standing) -> str:
    """The small square of a standing; the word stands beside it, so it is not heard twice."""
    return f'<svg class="std" viewBox="0 0 11 11" aria-hidden="true">{_MARKS[standing]}</svg>'


def sign(text: str) -> str:
    """An operator as its sign, heard as its word."""
    return f'<span aria-hidden="true">{escape(text)}</span><span class="vh">{SPOKEN.get(text, text)}</span>'


def amount(number: str, unit: str) -> str:
    """A number with its unit, never parted."""
    inner = f'<span class="number">{escape(number)}</span>'
    return f'{inner}&nbsp;<span class="unit">{escape(unit)}</span>' if unit else inner


def line(tokens: Tokens) -> str:
    """A line of tokens; what stands after ^ is raised, and what was not taken is quieter."""
    out, raised, depth, lost = "", False, 0, False
    for each in tokens:
        if each.lost is not lost:
            out = f'{out}<span class="lost">' if each.lost else f"{out.rstrip()}</span> "
            lost = each.lost
        if each.kind == "op" and each.text == "^":
            out = f'{out.rstrip()}<span class="vh"> {RAISED} </span><sup>'
            raised, depth = True, 0
            continue
        out = _with(out, each)
        if raised:
            depth += {"open": 1, "close": -1}.get(each.kind, 0)
            if depth <= 0 and each.kind != "sign":
                out, raised = f"{out.rstrip()}</sup>", False
    return out.strip() + ("</span>" if lost else "")


def _with(out: str, each: Token) -> str:
    """The line so far with one token more."""
    kind, text = each.kind, each.text
    if kind == "op":
        return f"{out.rstrip()} {sign(text)} "
    if kind == "unit":
        return f'{out}&nbsp;<span class="unit">{escape(text)}</span>'
    if kind == "word":
        tight = text[0] in ",:"
        gap = "" if tight or not out or out[-1] in "(√ " or out.endswith(("<sup>", '"lost">')) else " "
        return f"{out.rstrip() if tight else out}{gap}{escape(text)} "
    if kind == "close":
        return out.rstrip() + ")"
    if kind in ("number", "letter"):
        return f'{out}<span class="{kind}">{escape(text)}</span>'
    return out + escape(text)


def figure_button(shown: str, path: str, what: str, css: str = "") -> str:
    """A figure as a button that opens its working; plain where it has no path."""
    kinds = f"fig {css}".strip()
    if not path:
        return f'<span class="{css}">{escape(shown)}</span>' if css else escape(shown)
    return (
        f'<button type="submit" form="open" name="open" value="{escape(path)}" class="{kinds}" '
        f'aria-label="{escape(said(shown, what))}, open its working">{escape(shown)}</button>'
    )


def said(shown: str, what: str) -> str:
    """A value and what it is, as it is heard."""
    return ", ".join(each for each in (shown, what) if each)


def line_type(figure: Figure | None) -> str:
    """The class of the line under an entry of the job; empty for what is found."""
    origin = figure.origin if figure is not None else None
    if not isinstance(origin, Leaf) or origin.kind is not LeafKind.JOB:
        return ""
    return f"given {LINES.get(origin.known, 'plan')}"


def path_of(figure: Figure | None, names: Names) -> str:
    """The path that opens a figure; empty where there is none."""
    return names.path(figure) if figure is not None else ""

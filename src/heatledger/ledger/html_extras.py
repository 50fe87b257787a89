"""What a page adds to a working: its callout, its band, what it goes into, and the way that led to it."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape

from heatledger.ledger.html_parts import figure_button


@dataclass(frozen=True)
class Opens:
    """A figure that can be opened beside a working: its value, what it is, and its path."""

    shown: str
    words: str
    path: str


@dataclass(frozen=True)
class Swinging:
    """One input that moves the figure: what it is, its value and how it is known, and how far it moves it.

    ``share`` is the swing as a part of the largest, for the length of its bar.
    """

    words: str
    given: str
    swing: str
    share: float
    path: str = ""
    line: str = ""


@dataclass(frozen=True)
class Extras:
    """All of it is left out when empty.

    ``callout``: sheet and line (0: it follows). ``plain``: a line in place of that of the formula.
    ``band``: a drawing as SVG, with ``likely`` in words. ``matters``: what moves the figure most, ``smaller``
    the count of the rest. ``uses``: what is built on it; ``more_uses`` behind those.
    ``trail``: what was open before.
    """

    callout: tuple[int, int] | None = None
    plain: str = ""
    band: str = ""
    likely: str = ""
    matters: tuple[Swinging, ...] = ()
    smaller: str = ""
    uses: tuple[Opens, ...] = ()
    more_uses: tuple[Opens, ...] = ()
    other_uses: int = 0
    trail: tuple[Opens, ...] = ()


NO_EXTRAS = Extras()


def callout(extras: Extras) -> str:
    """The detail mark: a circle cut by a line, line over sheet; the sheet alone where the line is 0."""
    if extras.callout is None:
        return ""
    sheet, number = extras.callout
    if not number:
        words = f'role="img" aria-label="Sheet {sheet}"'
        return f'<span class="call" data-line="follows" {words}><b></b><i>{sheet}</i></span>'
    return (
        f'<span class="call" role="img" aria-label="Sheet {sheet}, line {number}">'
        f"<b>{number}</b><i>{sheet}</i></span>"
    )


def band(extras: Extras) -> str:
    """The band on its rule, in words, and what matters most to it."""
    if not extras.likely:
        return ""
    rule = f'<div class="rule-of-band">{extras.band}</div>' if extras.band else ""
    found = f'<div class="likely">{rule}<p class="bandtext">{escape(extras.likely)}</p>'
    if extras.matters:
        rest = f'<li class="rest">{escape(extras.smaller)}</li>' if extras.smaller else ""
        rows = "".join(_swing(each) for each in extras.matters)
        found += f'<p class="which">What matters most</p><ul class="matters">{rows}{rest}</ul>'
    return found + "</div>"


def _swing(each: Swinging) -> str:
    """One row: name, value on its line, a bar as long as its share of the largest, the swing."""
    width = round(100 * min(max(each.share, 0.0), 1.0), 1)
    bar = (
        '<svg class="swing" viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">'
        f'<path d="M{50 - width / 2:g} 0h{width:g}v8h-{width:g}z" fill="currentColor"/></svg>'
    )
    given = figure_button(each.given, each.path, each.words, each.line) if each.given else ""
    return (
        f'<li><span>{escape(each.words)}</span><span class="q2">{given}</span>{bar}'
        f'<span class="v">{escape(each.swing)}</span></li>'
    )


def uses(extras: Extras) -> str:
    """The figures built on this one; those behind the first few unfold."""
    if not extras.uses:
        return ""
    made = f'<div class="trail into"><span class="q2">Goes into</span> {_row_of(extras.uses)}'
    if extras.more_uses:
        count = len(extras.more_uses) + extras.other_uses
        rest = f" <span>and {extras.other_uses} others</span>" if extras.other_uses else ""
        made += f"<details><summary>and {count} more</summary>{_row_of(extras.more_uses)}{rest}</details>"
    return made + "</div>"


def trail(extras: Extras) -> str:
    """What was open before, oldest first; each leads back."""
    if not extras.trail:
        return ""
    links = ' <span class="q3" aria-hidden="true">·</span> '.join(
        figure_button(each.words, each.path, each.shown) for each in extras.trail
    )
    return f'<nav class="trail back" aria-label="Opened before"><span class="q2">Back to</span> {links}</nav>'


def _row_of(some: tuple[Opens, ...]) -> str:
    return ' <span class="q3" aria-hidden="true">·</span> '.join(
        f"<span>{figure_button(each.shown, each.path, each.words)} {escape(each.words)}</span>"
        for each in some
    )

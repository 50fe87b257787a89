"""The small marks beside words: what weighs how much, as a shape that a copier keeps."""

from __future__ import annotations

from markupsafe import Markup

_TRIANGLE = '<path d="M7 1 13.4 12.6H.6z" fill="currentColor"/>'
_DIAMOND = '<path d="M7 .9 13.1 7 7 13.1.9 7z" fill="none" stroke="currentColor" stroke-width="1.8"/>'
_DOT = '<circle cx="7" cy="7" r="3" fill="currentColor"/>'
_RING = '<circle cx="7" cy="7" r="4.6" fill="none" stroke="currentColor" stroke-width="1.8"/>'
_TICK = '<path d="M1.8 7.6 5.4 11 12.2 3" fill="none" stroke="currentColor" stroke-width="2"/>'
_STROKE = '<path d="M7 3.5v7" fill="none" stroke="currentColor" stroke-width="1.4"/>'

SHAPES = {
    "must": _TRIANGLE, "decide": _DIAMOND, "note": _DOT, "settled": _DOT, "begun": _RING, "fine": _TICK,
    "none": _STROKE,
}  # fmt: skip


def mark(shape: str) -> Markup:
    """The shape of a weight or state: must, decide, note, fine, settled, begun or none."""
    return Markup(f'<svg class="mark {shape}" viewBox="0 0 14 14" aria-hidden="true">{SHAPES[shape]}</svg>')

"""Figures as markup: buttons that open a working, the old value struck before one that has changed."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from markupsafe import Markup, escape

from heatledger.drawings.figure_words import enough
from heatledger.ledger.figures import Figure, Placed
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import NOT_KNOWN, show, show_speaking

if TYPE_CHECKING:
    from heatledger.web.page import Page

BLANK = Markup('<span class="blank" role="img" aria-label="not known yet"></span>')
NONE = Markup('<span class="q3">–</span>')
NOT_PLAIN = re.compile(r"[&<>'\"]")


def figure_button(
    page: Page, what: str | Figure | None, places: int | None, unit: bool, css: str, speak: bool, up: bool,
    label: str,
) -> Markup:  # fmt: skip
    """A figure as a button; a thin line where it has no value, a dash where there is none."""
    figure = page.figure(what)
    if figure is None:
        return NONE
    path = page.path(what if isinstance(what, str) else figure)
    if figure.is_missing:
        css = f"{css} waits".strip()
        return Markup(_button(page, path, BLANK, NOT_KNOWN, css, label, figure)) if path else BLANK
    number = figure_text(figure, page.units, places, False, speak, up)
    suffix = "" if in_words(figure, page.units, places) else unit_text(figure, page.units)
    tail = f'<span class="unit">{safe(suffix)}</span>' if unit and suffix else ""
    if not path:
        return Markup(f'<span class="{css}">{safe(number)}</span>{tail}')
    was = _was(page, path, figure, number, places, speak, up)
    spoken = f"{number} {suffix}".strip()
    return Markup(was + _button(page, path, number, spoken, css, label, figure) + tail)


def told_button(page: Page, what: str | Figure, text: str, css: str = "", unit: bool = True) -> Markup:
    """A figure in words of its own, as a button; a thin line where it has no value, plain text where none is.

    ``unit``: whether the reader's unit is heard behind the words."""
    figure, path = page.figure(what), page.path(what)
    if figure is None or not path:
        return Markup(safe(text))
    if figure.is_missing or not text:
        return page.fig(path)
    suffix = unit_text(figure, page.units) if unit and not in_words(figure, page.units, None) else ""
    return Markup(_button(page, path, text, f"{text} {suffix}".strip(), css, "", figure))


def safe(text: str) -> str:
    """A text escaped; most have nothing to escape, which is quicker to see than to do."""
    return text if NOT_PLAIN.search(text) is None or isinstance(text, Markup) else str(escape(text))


def _button(
    page: Page, path: str, shown: str | Markup, spoken: str, css: str, label: str, figure: Figure
) -> str:
    said = label or page.house.names.title(figure)
    # A figure that is open in the design of a what if is not open in the job's own.
    is_open = "true" if path == page.opened and not page.asked.get("laid") else "false"
    css = f" {css}" if css else ""
    # An f-string, since a page holds hundreds of these and Markup.format is ten times slower.
    return (
        f'<button class="fig{css}" form="open" name="open" value="{safe(path)}" aria-expanded="{is_open}" '
        f'aria-label="{safe(spoken)}, {safe(said)}, open its working">{safe(shown)}</button>'
    )


def _was(
    page: Page, path: str, figure: Figure, number: str, places: int | None, speak: bool, up: bool
) -> str:
    """The value before the last change, struck; nothing where it reads the same."""
    old = page.before.results.get(path) if page.before is not None else None
    if old is None or old is figure or old.is_missing or float(old) == float(figure):
        return ""
    text = figure_text(old, page.units, places, False, speak, up)
    return "" if text == number else f'<span class="was"><s>{safe(text)}</s></span> '


def in_words(figure: Figure, units: Preset, places: int | None) -> bool:
    """Whether a figure carries its unit in its number, as 12′ 6″ does."""
    return figure.dimension.name == "length" and units.feet_and_inches and places is None


def unit_text(figure: Figure, units: Preset) -> str:
    """The reader's unit of a figure; empty for a plain number."""
    text = units.shown(figure.dimension).unit.text
    return "" if text == "1" else text


def figure_text(
    figure: Figure | None, units: Preset, places: int | None = None, unit: bool = True, speak: bool = False,
    up: bool = False,
) -> str:  # fmt: skip
    """A figure as the reader sees it, with or without its unit; empty where it has no value."""
    if figure is None or figure.is_missing:
        return ""
    if up:
        shown = enough(figure, units)
    elif speak:
        shown = show_speaking(figure, units)
    else:
        shown = show(figure.original if isinstance(figure, Placed) else figure, units, places=places)
    suffix = unit_text(figure, units)
    return shown if unit or not suffix else shown.removesuffix(suffix).strip()

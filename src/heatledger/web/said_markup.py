"""Sentences with figures in them, as markup: every figure of a sentence opens its working."""

from __future__ import annotations

from markupsafe import Markup, escape

from heatledger.ledger.dimensions import RATIO, TIME
from heatledger.ledger.figures import Figure
from heatledger.ledger.show import show_percent
from heatledger.papers.words import spoken_time
from heatledger.steps.said import SLOT, Said
from heatledger.web.page import Page


def said(page: Page, sentence: Said) -> Markup:
    """A sentence with its figures; a ratio as a percentage, a short time in minutes."""
    texts = sentence.text.split(SLOT)
    out = escape(texts[0])
    for figure, text in zip(sentence.figures, texts[1:], strict=True):
        out += _figure(page, figure) + escape(text)
    return Markup(out)


def _figure(page: Page, figure: Figure) -> Markup:
    if figure.is_missing or figure.dimension not in (RATIO, TIME):
        return page.fig(figure)
    if figure.dimension is RATIO:
        places = 0 if float(figure) * 1000 % 10 < 1 else 1
        return page.told(figure, show_percent(float(figure), places))
    return page.told(figure, spoken_time(figure, page.units), unit=False)

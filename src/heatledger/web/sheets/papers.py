"""The sheet Papers."""

from __future__ import annotations

from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.parts import number_of, questions, working_fragment

TITLE = "Papers"


def left(page: Page) -> list[Fragment]:
    """What is known."""
    return [Fragment("plain", "plain.html", {"title": TITLE})]


def right(page: Page) -> list[Fragment]:
    """What it comes to."""
    return [working_fragment(page), questions(page, number_of(page))]

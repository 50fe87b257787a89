"""Sheet 8: the papers of the job, and the one that is picked as it comes out of the printer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.papers.all_papers import PaperKind
from heatledger.papers.findings_by_sheet import SHEETS, findings_of, is_draft, must_fix, not_checked_of
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page
from heatledger.web.paper_store import SHEET_SIZES, STORE, SURVEY, Told, Wanted, due
from heatledger.web.parts import working_fragment
from heatledger.web.records import record
from heatledger.web.states import SHEETS as SHEETS_OF_JOB

TITLE = "Papers"
CSS = "papers.css"
QUESTIONS = "questions"
A4_SHAPE = {False: (794, 1123), True: (1123, 794)}
LETTER_SHAPE = {False: (816, 1056), True: (1056, 816)}


@dataclass(frozen=True)
class Row:
    """A paper in the list: its name in an address, what it is called and for, its pages, how it stands."""

    name: str
    letter: str
    words: str
    says: str
    pages: int
    draft: bool
    printed: int
    stale: bool


def left(page: Page) -> list[Fragment]:
    """The papers, the sheet they are set on, and what can be taken along."""
    rows = _rows(page)
    picked, sheet = picked_paper(page), sheet_of(page)
    data = {"rows": rows, "picked": picked, "sheet": sheet, "sizes": SHEET_SIZES, "default": page.units.paper}
    return [
        Fragment("papers", "papers_list.html", data | {"waits": _waits(page)}, waits=True),
        Fragment("take", "papers_take.html", {"has_rooms": bool(due_of(page)), "sheet": sheet}),
    ]


def right(page: Page) -> list[Fragment]:
    """The picked paper on the desk; or every question of the job, with what was decided."""
    working = [working_fragment(page)]
    if page.view == QUESTIONS or page.picked.startswith("decisions"):
        deciding = [record(page, page.picked)] if page.picked.startswith("decisions") else []
        return [
            *working,
            *deciding,
            Fragment("questions", "papers_questions.html", _questions(page), waits=True),
        ]
    return [*working, paper_fragment(page)]


def paper_fragment(page: Page) -> Fragment:
    """The pages of the picked paper."""
    return Fragment("paper", "papers_paper.html", paper_data(page))


def due_of(page: Page) -> list[PaperKind]:
    """The papers that the job of a page has something for."""
    return due(page.house)


def picked_paper(page: Page) -> str:
    """The name of the picked paper; the first one where none is picked or the picked one is not due."""
    names = [*(each.name for each in due_of(page)), SURVEY]
    asked = page.picked.removeprefix("papers/")
    return asked if asked in names else names[0]


def sheet_of(page: Page) -> str:
    """The sheet asked for, else that of the reader's units."""
    asked = next(iter(page.asked.get("on", ())), "")
    return asked if asked in SHEET_SIZES else page.units.paper


def wanted_of(page: Page, name: str) -> Wanted | None:
    """A paper of the revision that a page shows; None on a page without a desk."""
    if page.desk is None:
        return None
    return Wanted(page.desk, page.desk.state, page.units, sheet_of(page), name)


def paper_data(page: Page) -> dict[str, Any]:
    """What the picture of a paper is drawn from: its name, and its pages as far as they are known."""
    name = picked_paper(page)
    kind = next((each for each in due_of(page) if each.name == name), None)
    landscape = kind is not None and kind.landscape
    shape = (A4_SHAPE if sheet_of(page) == "a4" else LETTER_SHAPE)[landscape]
    wanted = wanted_of(page, name)
    told = STORE.told(wanted) if wanted is not None else None
    number = page.revision.number
    asked = f"rev={number}&units={page.units.name}&sheet={sheet_of(page)}"
    return {
        "name": name, "words": kind.words if kind is not None else "Survey sheet", "told": told or Told(),
        "pages": told.pages if told is not None and told.pages else (shape,), "known": told is not None,
        "asked": asked, "landscape": landscape,
    }  # fmt: skip


def _rows(page: Page) -> list[Row]:
    draft = page.ready and bool(due_of(page)) and is_draft(page.house)
    found = [(each.name, each.words, each.says) for each in due_of(page)]
    found.append((SURVEY, "Survey sheet", "a blank to take to the house"))
    printed = printed_of(page)
    return [
        Row(name, chr(ord("A") + i), words, says, _pages(page, name), draft and name != SURVEY,
            printed.get(name, 0), name != SURVEY and printed.get(name, 0) != page.revision.number)
        for i, (name, words, says) in enumerate(found)
    ]  # fmt: skip


def _pages(page: Page, name: str) -> int:
    """How many pages a paper has; 0 while it has not been set."""
    wanted = wanted_of(page, name)
    told = STORE.told(wanted) if wanted is not None else None
    return len(told.pages) if told is not None else 0


def printed_of(page: Page) -> dict[str, int]:
    """The revision of which each paper was printed last on this device, by its name."""
    found = {}
    for each in page.printed.split("_"):
        name, _, number = each.partition(".")
        if number.isdigit():
            found[name] = int(number)
    return found


def _waits(page: Page) -> list[str]:
    """What papers wait for, in words, on a job without rooms."""
    if due_of(page):
        return []
    site = page.job.site
    needed = {"the outdoor temperature": site.outdoor, "the indoor temperature": site.indoor}
    lacking = [words for words, figure in needed.items() if figure.is_missing]
    return [*lacking, "the first room"]


def _questions(page: Page) -> dict[str, Any]:
    """Findings by sheet, those open first; what could not be checked."""
    if not page.ready:
        return {"sheets": [], "wait": True, "must": 0, "count": 0, "not_checked": 0}
    names = dict(enumerate((name for _, name in SHEETS_OF_JOB), 1))
    sheets = [
        (number, names[number], sorted(found, key=lambda each: each.decided is not None))
        for number in SHEETS
        if (found := findings_of(page.house, number))
    ]
    open_ones = [each for each in page.house.findings if each.decided is None]
    return {
        "sheets": [
            (number, name, [(each, bool(each.where)) for each in found]) for number, name, found in sheets
        ],
        "wait": False, "must": len(must_fix(page.house)), "count": len(open_ones),
        "not_checked": len(not_checked_of(page.house)),
    }  # fmt: skip

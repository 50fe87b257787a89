"""Fragments that every sheet has: the working, the open questions, what is said above everything."""

from __future__ import annotations

from heatledger.ledger.figures import waits_for
from heatledger.papers.findings_by_sheet import findings_of, not_checked_of
from heatledger.studies.crude import crude_estimate
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page

HOMES = {"emitters": "emitters", "circuits": "piping", "zones": "piping", "plant": "boiler-room",
         "bills": "boiler-room", "controls": "controls"}  # fmt: skip
"""The sheet where the entries of a part of the job are typed, where it is not House."""
WHOLE = ("site", "air", "plant", "controls")
"""Parts of the job that are one thing by themselves."""


def working_fragment(page: Page) -> Fragment:
    """The working of the open figure."""
    return Fragment("working", "working.html")


def questions(page: Page, *sheets: int, where: str = "", id: str = "questions") -> Fragment:
    """The findings of some sheets, must fix first; all of them where none is named.

    ``where`` keeps those of one thing of the job, such as ``rooms/kitchen``.
    """
    if not page.ready:
        return Fragment(id, "questions.html", {"findings": [], "not_checked": [], "wait": True}, waits=True)
    found = [
        each for each in findings_of(page.house, *sheets)
        if not where or each.where == where or each.where.startswith(f"{where}/")
    ]  # fmt: skip
    left = [] if where else not_checked_of(page.house, *sheets)
    return Fragment(id, "questions.html", {"findings": found, "not_checked": left, "wait": False}, waits=True)


def waiting_for(page: Page, path: str) -> list[Fragment]:
    """What a figure without a value waits for, each as a link to its entry."""
    figure = page.figure(path)
    if figure is None or not figure.is_missing:
        return []
    leaves = [each for each in waits_for(figure) if getattr(each.origin, "path", "")]
    names = page.house.names
    waits = [(page.url(**entry_at_home(each.origin.path)) + f"#entry={each.origin.path}", names.title(each))
             for each in leaves]  # fmt: skip
    return [Fragment("waits", "waits.html", {"waits": waits, "title": names.title(figure)}, css="lead")]


def entry_at_home(path: str) -> dict[str, str]:
    """The sheet where an entry of the job is typed, and the thing to be picked there; nothing is open."""
    head = path.partition("/")[0]
    thing = path.rpartition("/")[0].removesuffix("/air")
    if path in ("plant/supply", "plant/drop"):
        return {"sheet": "emitters", "pick": "", "open": ""}
    return {
        "sheet": HOMES.get(head, "house"),
        "pick": thing if "/" in thing or head in WHOLE else "",
        "open": "",
    }


def crude(page: Page) -> list[Fragment]:
    """The crude estimate of a job without rooms, said to be crude; none where it says too little for one."""
    made = crude_estimate(page.job)
    return [] if made is None else [Fragment("crude", "crude.html", {"made": made}, css="lead")]

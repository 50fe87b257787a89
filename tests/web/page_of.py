"""A page of a job without a server, and one job that has a thing of every kind."""

from __future__ import annotations

import re
from datetime import UTC, datetime
from functools import cache
from typing import Any

from heatledger import design
from heatledger.book.records import Revision, WrongEntry
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.presets import PRESETS
from heatledger.steps.design import Design
from heatledger.web.demo import demo_text
from heatledger.web.fragments import Fragment
from heatledger.web.page import Page

NOW = datetime(2026, 12, 6, tzinfo=UTC)
MORE = """
neighbors:
  east: {name: Flat to the east, temperature: 60 °F}
bills:
  winter: {name: Gas of last winter, fuel: natural gas, energy: 1003 therms, degree_days: 6480 °F}
ranges: {length: {measured: 2 %}}
decisions: {no-fan-test@air: {is: keep the guess, because: no fan this month, by: J. Ondry}}
codes: {adopted: local code, licence: none, authority: the town}
glycol: {share: 30 %}
"""


def made_page(job: Job, units: str = "us", **more: Any) -> Page:
    """A page of a job on the sheet House, as a reader sees it who has just opened it."""
    revision = Revision(
        job_id="demo",
        number=1,
        parent=None,
        text=job.source.text,
        said="Begun",
        by="J. Ondry",
        at=NOW,
        version="0",
    )
    given = {"wrong": {}} | more
    return Page(id="demo", house=designed(job), before=None, units=PRESETS[units], revision=revision, **given)


def designed(job: Job) -> Design:
    """The design of a job, made once for the jobs that many tests look at."""
    kept = _DESIGNS.get(id(job))
    if kept is None or kept.job is not job:
        kept = _DESIGNS[id(job)] = design(job)
    return kept


_DESIGNS: dict[int, Design] = {}


@cache
def demo() -> Job:
    """The demo house."""
    return read_job(demo_text("ferrow-house"))


@cache
def full() -> Job:
    """The demo house with a thing of every kind that a job may have."""
    text = demo_text("ferrow-house")
    text = re.sub(r"(?ms)^bills:\n.*?(?=^\S)", "", text)
    return read_job(text + MORE)


def wrong_entry(path: str, typed: str, what: str = "It cannot be read.") -> dict[str, WrongEntry]:
    """One entry that waits to be mended."""
    return {path: WrongEntry(path, typed, what, "Write it again.", "J. Ondry", NOW)}


def by_id(fragments: list[Fragment]) -> dict[str, Fragment]:
    """Fragments by their ids, which stand once on a page."""
    assert len({each.id for each in fragments}) == len(fragments)
    return {each.id: each for each in fragments}

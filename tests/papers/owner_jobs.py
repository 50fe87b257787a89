"""Jobs for the owner's and the inspector's papers: the demos with their review, and what a job may lack."""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from functools import cache

from pypdf import PdfReader

from heatledger.drawings.shapes import Drawing
from heatledger.job.load import read_job
from heatledger.ledger.presets import PRESETS
from heatledger.papers import blocks as b
from heatledger.papers.paper import paper_pdf
from heatledger.papers.printing import Printing
from heatledger.steps.design import Design, design
from tests.papers.demo_papers import ONE_ROOM, text_of

LEAST = "format: 1\nunits: US\nlevels: {ground: {}}\nrooms:\n  main: {level: ground}\n"


def without(text: str, *sections: str) -> str:
    """The job without some of its sections at the top."""
    for each in sections:
        text = re.sub(rf"(?ms)^{each}:.*?(?=^\S)", "", text + "\nend:").removesuffix("\nend:")
    return text


@cache
def made(name: str) -> Design:
    """The design of a demo, with what its review says."""
    return design(read_job(text_of(name), f"{name}.yaml"))


@cache
def printing(name: str, units: str = "") -> Printing:
    found = made(name)
    shown = PRESETS[units] if units else found.job.units
    return Printing(found.told_in(shown), shown)


@cache
def lacks(what: str, units: str = "metric") -> Printing:
    """A job that lacks something, for one reader."""
    found = design(read_job(scant()[what], "job.yaml"))
    shown = PRESETS[units]
    return Printing(found.told_in(shown), shown)


def scant() -> dict[str, str]:
    """Jobs that lack something, by what they lack."""
    house, street = text_of("lerch-cottage"), text_of("tamm-street")
    heat = without(house, "emitters", "zones", "circuits", "plant", "controls", "readings", "what-ifs")
    return {
        "nearly everything": LEAST,
        "all but the heat loss": ONE_ROOM,
        "all of the heating": heat,
        "a boiler": re.sub(r"(?ms)^  boiler:.*?(?=^  \w)", "", house),
        "the outdoor temperature": re.sub(r"(?m)^  outdoor: .*$", "", house),
        "the air": re.sub(r"(?m)^    air: .*$", "", street),
        "the output of the boiler": re.sub(r"(?m)^    (input|output): .*$", "", street),
        "radiators": without(street, "emitters"),
        "the degree-days": re.sub(r"(?m)^    degree_days: .*$", "", street),
    }


@cache
def pdf_text(build: Callable[[Printing], b.Paper], shown: Printing, sheet: str = "letter") -> str:
    """All that a paper prints, its spaces made one."""
    pdf = paper_pdf(build(shown), sheet)
    return pages(pdf)


def pages(pdf: bytes) -> str:
    """The text of a PDF, its spaces made one."""
    text = " ".join(each.extract_text() for each in PdfReader(io.BytesIO(pdf)).pages)
    return " ".join(text.split())


def runs(thing: object) -> Iterator[b.Run]:
    """Every piece of a text in a paper, in its order."""
    if isinstance(thing, b.Run):
        yield thing
    elif isinstance(thing, tuple):
        for each in thing:
            yield from runs(each)
    elif is_dataclass(thing) and not isinstance(thing, Drawing):
        for each in fields(thing):
            yield from runs(getattr(thing, each.name))


def said(text: b.Text) -> str:
    """A text as it is read."""
    if isinstance(text, str):
        return text
    return "".join(each if isinstance(each, str) else each.text for each in text)


def questions(paper: b.Paper) -> tuple[b.Question, ...]:
    """The questions of a paper with their answers."""
    (found,) = [each for each in paper.blocks if isinstance(each, b.Questions)]
    return found.questions

"""The sheet What if: the job and its what-ifs side by side, and what the picked ones come to."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from markupsafe import Markup

from heatledger.drawings.cause_bar import cause_bar
from heatledger.drawings.figure_words import bare, without_unit
from heatledger.drawings.hatches import CAUSE_NAMES, CAUSES
from heatledger.drawings.shapes import Drawing
from heatledger.ledger.dimensions import HEAT_RATE
from heatledger.ledger.findings import Finding
from heatledger.ledger.show import show
from heatledger.steps.design import Design
from heatledger.web.charts import chip, svg
from heatledger.web.fragments import Fragment
from heatledger.web.laid import TRIED, Column, column_at, columns, laid, letters_of, subject
from heatledger.web.page import Page
from heatledger.web.what_if_paths import path_choices
from heatledger.web.what_if_rows import (
    change_shown,
    column_page,
    laid_figure,
    laid_key,
    open_findings,
    shown_rows,
)

TITLE = "What if"
CSS = "what-if.css"
DIFFERS = "differs"
BAR = 330.0
MOST_FINDINGS = 6


def left(page: Page) -> list[Fragment]:
    """What-ifs side by side, and where the heat goes in each."""
    if not page.ready:
        return [_waiting("side-by-side"), _waiting("causes")]
    found = columns(page)
    if len(found) == 1:
        return [Fragment("side-by-side", "what_if_none.html", waits=True)]
    rows = shown_rows(page, found)
    differs = page.view == DIFFERS
    data = {
        "columns": found, "rows": [each for each in rows if each.differs or not differs], "differs": differs,
        "carried": carried(page), "chosen": page.asked.get("with", ()), "among": _among(found),
        "sets": [[change_shown(page, one) for one in each.changes] for each in found],
        "subject": subject(page, found),
    }  # fmt: skip
    return [
        Fragment("side-by-side", "what_if_columns.html", data, waits=True),
        Fragment("causes", "what_if_causes.html", _causes(page, found), waits=True),
    ]


def right(page: Page) -> list[Fragment]:
    """The what-if that is spoken of: what it sets, what it takes off, what it settles; then the forms."""
    if not page.ready:
        return [_waiting("laid", "lead"), working(page), _waiting("settles"), _waiting("keeping")]
    found = columns(page)
    here = subject(page, found)
    parts = []
    if here is not None:
        parts.append(Fragment("laid", "what_if_laid.html", _laid(page, found, here), "lead", waits=True))
    parts.append(working(page))
    if here is not None and here.house is not None:
        parts.append(Fragment("settles", "what_if_settles.html", _settles(page, here), waits=True))
    parts.append(Fragment("keeping", "what_if_form.html", _form(page, here), waits=True))
    return parts


def working(page: Page) -> Fragment:
    """The working of the open figure in the design of its own column, with what it is as the job stands."""
    key = laid_key(page)
    if key and page.opened and not page.ready:
        return _waiting("working")
    column = column_at(page, key) if key and page.opened else None
    if column is None or column.house is None:
        return Fragment("working", "working.html")
    mine = replace(column_page(page, column), opened=page.opened)
    was, now = page.text(page.opened), mine.text(page.opened)
    data = {"working": mine.working, "column": column, "was": was, "now": now}
    return Fragment("working", "what_if_working.html", data)


def carried(page: Page, *without: str) -> list[tuple[str, str]]:
    """What an address of this sheet asks for, to be carried along by a form."""
    asked = {"pick": (page.picked,), "view": (page.view,), **page.asked}
    return [
        (key, value) for key, values in asked.items() for value in values
        if value and key in ("pick", "view", "with", "try") and key not in without
    ]  # fmt: skip


def _waiting(id: str, css: str = "") -> Fragment:
    return Fragment(id, "what_if_wait.html", css=css, waits=True)


def _among(found: list[Column]) -> list[Column]:
    return [each for each in found if len(each.ids) == 1]


def _causes(page: Page, found: list[Column]) -> dict[str, Any]:
    bars = _bars(page, found)
    rows = []
    for i, each in enumerate(found):
        if each.key in bars:
            load = laid_figure(page, each, i, "house/loss", 0, label=f"Design load, {each.letter}")
            rows.append((each, bars[each.key], load))
    there = {cause for each in found if each.house is not None for cause in each.house.losses.house.causes}
    names = [(each, CAUSE_NAMES[each]) for each in CAUSES if each in there]
    return {"rows": rows, "causes": names, "chip": chip, "unit": page.units.shown(HEAT_RATE).unit.text}


def _bars(page: Page, found: list[Column]) -> dict[str, Markup]:
    """A hatched bar for each column by its key, all on one scale; drawn once for a revision."""
    shown = {each.key: each.house for each in found if each.house is not None}
    kept: dict[tuple[str, ...], dict[str, Markup]] = page.house.__dict__.setdefault("_bars", {})
    tried = next(iter(page.asked.get("try", ())), "")
    key = (*shown, tried)
    if key not in kept:
        amounts = {id: _amounts(house) for id, house in shown.items()}
        largest = max((sum(max(one, 0.0) for one in each.values()) for each in amounts.values()), default=0.0)
        letters = {each.key: each.letter for each in found}
        kept[key] = {
            id: svg(_bar(page, letters[id], house, amounts[id], largest), f"causes-{i}")
            for i, (id, house) in enumerate(shown.items())
        }
    return kept[key]


def _bar(page: Page, letter: str, house: Design, amounts: dict[str, float], largest: float) -> Drawing:
    texts = {key: bare(one.loss, page.units, 0) for key, one in house.losses.house.causes.items()}
    return cause_bar(letter, amounts, texts, largest, width=BAR, height=11.5)


def _amounts(house: Design) -> dict[str, float]:
    causes = house.losses.house.causes
    return {key: 0.0 if each.loss.is_missing else float(each.loss) for key, each in causes.items()}


@dataclass(frozen=True)
class Step:
    """One line of the subtraction: a what-if and what it takes off the design load, with its sign."""

    sign: str
    text: str
    words: str


def _laid(page: Page, found: list[Column], here: Column) -> dict[str, Any]:
    index = found.index(here)
    letters = letters_of([each for each in page.job.what_ifs if each not in page.job.laid])
    groups: list[tuple[str, str, Any]] = []
    if here.key == TRIED:
        groups.append(("Tried", here.name, [change_shown(page, each) for each in here.changes]))
    for id in here.ids:
        changes = [change_shown(page, each) for each in page.job.what_ifs[id].changes]
        groups.append((letters[id], page.job.what_ifs[id].name or id, changes))
    total = Markup("")
    if here.house is not None:
        total = laid_figure(page, here, index, "house/loss", 0, label="Design load")
    return {
        "here": here, "groups": groups, "steps": _steps(page, here, letters), "total": total,
        "unit": page.units.shown(HEAT_RATE).unit.text, "base": page.fig("house/loss", places=0, unit=False),
        "asked": next(iter(page.asked.get("try", ())), ""), "saved": _saved_name(page, here),
        "likely": column_page(page, here).band("house/loss") if here.house is not None else "",
    }  # fmt: skip


def _steps(page: Page, here: Column, letters: dict[str, str]) -> list[Step]:
    """What each what-if takes off, laid in order; the last one comes to the total."""
    if here.house is None:
        return []
    if here.key == TRIED:
        return [_step(page, page.house, here.house, "as tried")]
    steps, before = [], page.house
    for i, id in enumerate(here.ids):
        after, _ = laid(page, here.ids[: i + 1])
        if after is None:
            return []
        steps.append(_step(page, before, after, f"{letters[id]}, {page.job.what_ifs[id].name or id}"))
        before = after
    return steps


def _step(page: Page, before: Design, after: Design, words: str) -> Step:
    one, other = before.losses.house.loss, after.losses.house.loss
    if one.is_missing or other.is_missing:
        return Step("", "", words)
    less = float(one) - float(other)
    shown = show(abs(less), page.units, HEAT_RATE, places=0)
    return Step("−" if less >= 0 else "+", without_unit(shown, one, page.units), words)


def _saved_name(page: Page, here: Column) -> str:
    return here.name.rstrip(".")[:80] if here.key == TRIED else ""


def _settles(page: Page, here: Column) -> dict[str, Any]:
    """What comes up with the what-if, what it settles, and how much stays open."""
    assert here.house is not None
    now = {_key(each): each for each in open_findings(here.house)}
    before = {_key(each): each for each in open_findings(page.house)}
    return {
        "here": here,
        "new": [each for key, each in now.items() if key not in before][:MOST_FINDINGS],
        "gone": [each for key, each in before.items() if key not in now][:MOST_FINDINGS],
        "stay": sum(key in before for key in now),
    }


def _key(finding: Finding) -> str:
    return f"{finding.id}@{finding.where}"


def _form(page: Page, here: Column | None) -> dict[str, Any]:
    typed = {key: next(iter(page.asked.get(key, ())), "") for key in ("name", "path", "value", "to")}
    own = here.ids[0] if here is not None and len(here.ids) == 1 else ""
    changes = page.job.what_ifs[own].changes if own else ()
    return {
        "typed": typed, "fault": " ".join(page.asked.get("fault", ())), "own": own,
        "paths": path_choices(page.job),
        "changes": [(i, change_shown(page, each), each.kind) for i, each in enumerate(changes)],
        "names": {id: each.name or id for id, each in page.job.what_ifs.items()},
        "again": carried(page),
    }  # fmt: skip

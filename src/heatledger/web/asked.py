"""What a request asks for: the reader, the job, the page."""

from __future__ import annotations

from typing import Any

from fastapi import Request

from heatledger.job.model import Job
from heatledger.ledger.presets import PRESETS, Preset
from heatledger.web.desks import Desk, State
from heatledger.web.page import Page

NAMELESS = "someone"


def who(request: Request) -> str:
    """The name given once on this device; empty until it is given."""
    from urllib.parse import unquote

    return unquote(request.cookies.get("who", "")).strip()[:60]


def units_of(request: Request, job: Job | None = None) -> Preset:
    """The reader's units: as chosen on this device, else those of the job."""
    asked = request.query_params.get("units") or request.cookies.get("units", "")
    chosen = PRESETS.get(asked.lower())
    return chosen or (job.units if job is not None else PRESETS["us"])


def desk_of(request: Request, id: str) -> Desk:
    """The desk of a job; raises NoSuchJob."""
    desk: Desk = request.app.state.desks.open(id)
    return desk


def page_of(
    request: Request, id: str, sheet: str, state: State | None = None, ready: bool = True, **more: Any
) -> Page:
    """The page that a request asks for."""
    desk = desk_of(request, id)
    state = state or desk.fresh()
    asked = request.query_params
    units = units_of(request, state.job)
    given = {
        "opened": asked.get("open", ""), "picked": asked.get("pick", ""), "view": asked.get("view", ""),
        "trail": tuple(each for each in asked.get("trail", "").split(",") if each),
    } | more  # fmt: skip
    return Page(
        id=id, house=state.in_units(units), before=state.before, units=units, revision=state.revision,
        wrong=dict(desk.wrong), sheet=sheet, who=who(request), ready=ready,
        can_undo=desk.book.can_undo(id), can_redo=desk.book.can_redo(id), **given,
    )  # fmt: skip

"""What a request asks for: the reader, the job, the page."""

from __future__ import annotations

from typing import Any
from urllib.parse import unquote

from fastapi import Request
from fastapi.datastructures import QueryParams

from heatledger.job.model import Job
from heatledger.ledger.presets import PRESETS, Preset
from heatledger.web.admission import VISITOR, mark_of, visitor_of
from heatledger.web.desks import Desk, State
from heatledger.web.page import Page

NAMELESS = "someone"
OWN = frozenset(("open", "pick", "view", "trail", "units", "sheet", "token"))
"""What an address asks for that a page has a place of its own for."""


def who(request: Request) -> str:
    """The name given once on this device; empty until it is given."""
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
    request: Request, id: str, sheet: str, state: State | None = None, ready: bool = True,
    query: str | None = None, **more: Any,
) -> Page:  # fmt: skip
    """The page that a request asks for; ``query`` is that of the page where the request is a change of it."""
    desk = desk_of(request, id)
    state = state or desk.fresh()
    asked = request.query_params if query is None else QueryParams(query.removeprefix("?"))
    units = units_of(request, state.job)
    given = {
        "opened": asked.get("open", ""), "picked": asked.get("pick", ""), "view": asked.get("view", ""),
        "trail": tuple(each for each in asked.get("trail", "").split(",") if each),
        "asked": {key: tuple(asked.getlist(key)) for key in asked if key not in OWN},
    } | more  # fmt: skip
    return Page(
        id=id, house=state.in_units(units), before=state.before, units=units, revision=state.revision,
        wrong=dict(desk.wrong), sheet=sheet, who=who(request), ready=ready, desk=desk,
        can_undo=state.revision.parent is not None, can_redo=desk.book.can_redo(id),
        printed=request.cookies.get("printed", ""), **_visited(request), **given,
    )  # fmt: skip


def _visited(request: Request) -> dict[str, Any]:
    """Whether a paired device asks, and what its forms carry."""
    if VISITOR not in request.scope:
        return {}
    return {"paired": visitor_of(request).kind == "paired", "mark_of_forms": mark_of(request)}

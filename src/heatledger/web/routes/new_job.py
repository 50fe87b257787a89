"""Beginning a job: from three numbers, a first room, a boiler to be replaced, or a copy of a demo."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fastapi import APIRouter, Request
from fastapi.concurrency import run_in_threadpool
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.book.opening import Book
from heatledger.job.begin import SIDES
from heatledger.ledger.presets import Preset
from heatledger.web import new_job_forms as forms
from heatledger.web.asked import units_of, who
from heatledger.web.behind import work_out
from heatledger.web.demo import DEMOS, add_demo, demo_text
from heatledger.web.drawing import draw
from heatledger.web.new_job import Begun, from_boiler, from_numbers, from_room
from heatledger.web.unit_words import short_words

router = APIRouter()
WAYS = ("numbers", "room", "replacement", "demo")
SAID = {
    "numbers": "Begun from three numbers", "room": "Begun with its first room",
    "replacement": "Begun for a boiler to be replaced",
}  # fmt: skip
STARTS_AT = {"numbers": "heat-loss", "room": "house", "replacement": "house"}


@router.get("/new-job", response_class=HTMLResponse)
def ways(request: Request, way: str = "numbers") -> Response:
    """The four ways, one of them open."""
    return page(request, way if way in WAYS else "numbers", {}, {})


@router.post("/new-job", response_class=HTMLResponse)
async def begin(request: Request) -> Response:
    """Begin the job that was asked for, or say at each field what is to be mended."""
    form = await request.form()
    typed = {key: value for key, value in form.multi_items() if isinstance(value, str)}
    sides = [str(each) for each in form.getlist("side") if each in SIDES]
    return await run_in_threadpool(_begin, request, typed, sides)


def _begin(request: Request, typed: dict[str, str], sides: list[str]) -> Response:
    way = typed.get("way", "")
    book: Book = request.app.state.book
    if way == "demo":
        demo = typed.get("demo", "")
        if demo not in DEMOS:
            return page(request, way, typed, {"demo": "Choose one of them."}, status=422)
        return RedirectResponse(f"/jobs/{add_demo(book, demo, who(request))}/house", 303)
    units = units_of(request)
    made = _made(way, typed, sides, units)
    if made is None or made.job is None:
        faults = made.faults if made else {}
        return page(request, way if made else "numbers", typed, faults, sides, 422)
    job = made.job
    revision = book.add_job(made.text, job.name, job.address, SAID[way], who(request))
    work_out(request, [revision.job_id])
    pick = f"?pick=rooms/{next(iter(job.rooms))}" if way == "room" else ""
    return RedirectResponse(f"/jobs/{revision.job_id}/{STARTS_AT[way]}{pick}", 303)


def _made(way: str, typed: dict[str, str], sides: list[str], units: Preset) -> Begun | None:
    if way == "numbers":
        return from_numbers(typed, units)
    if way == "room":
        return from_room(typed, units, sides, typed.get("attic") == "yes")
    return from_boiler(typed, units) if way == "replacement" else None


def page(
    request: Request, way: str, typed: Mapping[str, str], faults: Mapping[str, str], sides: Any = (),
    status: int = 200,
) -> Response:  # fmt: skip
    """The page of the four ways, with what was typed and what is wrong with it."""
    units = units_of(request)
    made = draw(
        "new_job.html", way=way, typed=typed, faults=faults, sides=sides, all_sides=SIDES, forms=forms,
        units=units, unit_words=short_words(units), demos=demos() if way == "demo" else (),
        emitters=range(1, forms.EMITTERS + 1),
    )  # fmt: skip
    return HTMLResponse(made, status)


def demos() -> list[tuple[str, str, str]]:
    """Key, name and first words of each demo job."""
    found = []
    for key in DEMOS:
        lines = demo_text(key).splitlines()
        name = next(each.partition(":")[2].strip() for each in lines if each.startswith("name:"))
        words = " ".join(each.lstrip("# ").strip() for each in lines[:3] if each.startswith("#"))
        found.append((key, name, words))
    return found

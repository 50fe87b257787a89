"""What-ifs: added, taken away, kept from a mend that was tried, and made the job."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any
from urllib.parse import urlencode

from fastapi import APIRouter, Form, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from heatledger.job import edits
from heatledger.job.edits import EditError
from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.text import Listing, plain, walk
from heatledger.web.adopting import adopted, with_changes
from heatledger.web.asked import desk_of, page_of, units_of, who
from heatledger.web.drawing import drawn, whole
from heatledger.web.entries import with_unit
from heatledger.web.laid import and_words, change_of, mend_at

router = APIRouter()
Text = Annotated[str, Form()]
Many = Annotated[list[str] | None, Form()]
TextEdit = Callable[[str], str]


@router.post("/jobs/{id}/what-ifs", response_class=HTMLResponse)
def add(
    request: Request, id: str, name: Text = "", path: Text = "", value: Text = "", to: Text = ""
) -> Response:
    """A new what-if of one change, or one more change in a what-if that is there."""
    state = desk_of(request, id).fresh()
    job, here = state.job, path.strip().strip("/")
    typed = {"name": name, "path": path, "value": value, "to": to}
    if not here or not value.strip() or not (name.strip() or to in job.what_ifs):
        missing = "Give it a name." if not (name.strip() or to) else "Say what it sets, and to what."
        return _again(request, id, missing, typed)
    change = {"set": here, "to": with_unit(value.strip(), here, units_of(request, job), job.units)}
    if to in job.what_ifs:
        listed = walk(job.source.base, f"what-ifs/{to}/changes")
        count = len(listed.items) if isinstance(listed, Listing) else 0
        changes = [*(plain(listed) if isinstance(listed, Listing) else []), change]
        where, said = f"what-ifs/{to}", f"What if “{job.what_ifs[to].name}”: change {count + 1} added"
        title = job.what_ifs[to].name

        def edit(text: str) -> str:
            return edits.add_thing(
                edits.remove_thing(text, where), where, {"name": title, "changes": changes}
            )
    else:
        new = edits.free_id(job.what_ifs, name)
        where, said = f"what-ifs/{new}", f"What if “{name.strip()}” added"

        def edit(text: str) -> str:
            return edits.add_thing(text, where, {"name": name.strip(), "changes": [change]})

    return _saved(request, id, edit, said, where, typed)


@router.post("/jobs/{id}/what-ifs/keep", response_class=HTMLResponse)
def keep(request: Request, id: str, tried: Annotated[str, Form(alias="try")], name: Text = "") -> Response:
    """A mend that was tried, kept as a what-if."""
    state = desk_of(request, id).fresh()
    mend = mend_at(state.in_units(units_of(request, state.job)), tried)
    if mend is None:
        return _again(request, id, "That way to mend is no longer offered: the job has changed.", {})
    words, changes = mend
    called = name.strip() or words.rstrip(".")[:80]
    where = f"what-ifs/{edits.free_id(state.job.what_ifs, called)}"
    thing = {"name": called, "changes": [dict(each) for each in changes]}
    return _saved(
        request, id, lambda text: edits.add_thing(text, where, thing), f"What if “{called}” added", where, {}
    )


@router.post("/jobs/{id}/what-ifs/remove", response_class=HTMLResponse)
def remove(request: Request, id: str, what: Text, index: Text = "") -> Response:
    """Take a what-if away, or one of its changes."""
    state = desk_of(request, id).fresh()
    if what not in state.job.what_ifs:
        return _again(request, id, "That what if is not there any more.", {})
    name = state.job.what_ifs[what].name
    if index.isdigit():
        where, said = f"what-ifs/{what}/changes/{index}", f"What if “{name}”: a change taken out"
    else:
        where, said = f"what-ifs/{what}", f"What if “{name}” removed"

    def edit(text: str) -> str:
        made = edits.remove_thing(text, where)
        return made if index or len(state.job.what_ifs) > 1 else edits.remove_thing(made, "what-ifs")

    return _saved(request, id, edit, said, f"what-ifs/{what}" if index else "", {})


@router.post("/jobs/{id}/adopt", response_class=HTMLResponse)
def adopt(
    request: Request, id: str, what: Many = None, tried: Annotated[str, Form(alias="try")] = "",
    rev: Annotated[int, Form()] = 0,
) -> Response:  # fmt: skip
    """Make what-ifs, or a mend that was tried, the job: one revision."""
    state = desk_of(request, id).fresh()
    if rev and rev != state.revision.number:
        now = f"“{state.revision.said}”, revision {state.revision.number}"
        fault = f"The job was changed meanwhile: {now}. Look at its figures, then make it the job again."
        return _again(request, id, fault, {})
    if tried:
        mend = mend_at(state.in_units(units_of(request, state.job)), tried)
        if mend is None:
            return _again(request, id, "That way to mend is no longer offered: the job has changed.", {})
        changes = [change_of(each) for each in mend[1]]
        return _saved(request, id, lambda text: with_changes(text, changes), f"Mended: {mend[0]}", "", {})
    ids = [each for each in what or () if each in state.job.what_ifs]
    if not ids:
        return _again(request, id, "Choose a what if first.", {})
    names = and_words([f"“{state.job.what_ifs[each].name}”" for each in ids])
    return _saved(request, id, lambda text: adopted(text, state.job, ids), f"{names} made the job", "", {})


def _saved(
    request: Request, id: str, edit: TextEdit, said: str, pick: str, typed: dict[str, str]
) -> Response:
    """The sheet again after the edit; with every fault and what was typed where it cannot be made."""
    desk = desk_of(request, id)
    state = desk.fresh()
    try:
        text = edit(state.revision.text)
        read_job(text, f"revision {state.revision.number + 1}")
    except EditError as fault:
        return _again(request, id, f"{fault.what} {fault.mend}".strip(), typed)
    except JobErrors as errors:
        words = " ".join(f"{each.message} {each.mend}".strip() for each in errors.errors)
        return _again(request, id, words, typed)
    outcome = desk.edit(edit, "what-ifs", "", who(request), state.revision.number, said)
    if outcome.refused:
        return _again(request, id, outcome.said, typed)
    asked = urlencode({"pick": pick}) if pick else ""
    return RedirectResponse(f"/jobs/{id}/what-if" + (f"?{asked}" if asked else ""), 303)


def _again(request: Request, id: str, fault: str, typed: dict[str, str]) -> Response:
    """The sheet with what is wrong and what was typed, to be mended there."""
    asked: dict[str, Any] = {key: (value,) for key, value in typed.items() if value}
    page = page_of(request, id, "what-if", asked={**asked, "fault": (fault,)})
    parts = drawn(page)
    return HTMLResponse(whole(page, parts, desk_of(request, id).remember(parts)), 422)

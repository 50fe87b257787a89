"""The pages of the door: a code or a passphrase is asked for, a device let in, a refusal said."""

from __future__ import annotations

from html import escape
from typing import Any

from fastapi import APIRouter, Request
from fastapi.concurrency import run_in_threadpool
from fastapi.responses import RedirectResponse, Response

from heatledger.web import asgi
from heatledger.web.admission import SHEET, Door, Visitor, visitor_of
from heatledger.web.pairing import LENGTH, MINUTES, PairingError
from heatledger.web.passphrase import TooSoon
from heatledger.web.refusals import field, form, said

router = APIRouter(include_in_schema=False)
PLAIN = (
    "What is typed and read here travels in plain text through this network. "
    "Use it in a network of your own only."
)
ELSEWHERE = "Everything else is done on the computer that runs Heatledger."
FILES_STAY = "A file of the computer that runs Heatledger can only be named on that computer."
SEND_IT = "Send a file of this device instead; the job file and a backup can be downloaded here."
LONGEST_TYPED = 500


@router.get("/pair")
async def pairing_page(request: Request) -> Response:
    """What the visitor can do here: let a device in, choose a job, go to Startup, or type a code."""
    door, visitor = _door(request), visitor_of(request)
    if visitor.whole:
        return await _letting_in(request, door, visitor)
    if visitor.kind == "paired":
        return await _job_to_choose(request, door, visitor)
    return _asks(
        door, visitor, 200, "Let this device in", "Type what the computer that runs Heatledger shows."
    )


@router.post("/pair")
async def pair(request: Request) -> Response:
    """Let a device in by its code."""
    door, visitor = _door(request), visitor_of(request)
    if not door.settings.share:
        return _not_shared()
    answer = RedirectResponse("/pair", 303)
    try:
        device = door.pairing.enter(await _typed(request, "code"), asgi.client_address(request.scope), answer)
    except PairingError as fault:
        return _asks(door, visitor, 403, fault.what, fault.mend)
    if device.job:
        answer.headers["location"] = startup(device.job)
    return answer


@router.post("/pair/job")
async def choose_job(request: Request) -> Response:
    """Bind a paired device to the job it chose."""
    door, visitor, job = _door(request), visitor_of(request), await _typed(request, "job")
    if visitor.kind != "paired":
        return refused(request.scope, door, visitor)
    if job not in [id for id, _ in await _jobs(request)]:
        return said(404, "There is no such job in the book.", "Go back and choose one of the list.")
    door.pairing.choose(visitor.device, job)
    return RedirectResponse("/pair", 303)


@router.post("/pair/new")
async def new_code(request: Request) -> Response:
    """Make a code, for one job or for the job that the device will choose."""
    door, job = _door(request), await _typed(request, "job")
    if not door.settings.share:
        return _not_shared()
    if job and job not in [id for id, _ in await _jobs(request)]:
        return said(404, "There is no such job in the book.", "Go back and choose one of the list.")
    door.pairing.new_code(job)
    return RedirectResponse("/pair", 303)


@router.post("/pair/out")
async def shut_out(request: Request) -> Response:
    """Take back the pass of a device."""
    number = await _typed(request, "device")
    if number.isdecimal():
        _door(request).pairing.shut_out(int(number))
    return RedirectResponse("/pair", 303)


@router.get("/passphrase")
async def passphrase_page(request: Request) -> Response:
    """Ask for the passphrase."""
    return _asks(
        _door(request),
        visitor_of(request),
        200,
        "Let this device in",
        "Type what the computer that runs Heatledger shows.",
    )


@router.post("/passphrase")
async def give_passphrase(request: Request) -> Response:
    """Let a device in by the passphrase."""
    door, visitor = _door(request), visitor_of(request)
    try:
        right = door.passphrase.is_right(
            await _typed(request, "passphrase"), asgi.client_address(request.scope)
        )
    except TooSoon as fault:
        wait = str(int(fault.seconds) + 1)
        answer = _asks(
            door, visitor, 429, "That was wrong too often.", f"Wait {wait} seconds, then type it again."
        )
        answer.headers["retry-after"] = wait
        return answer
    if not right:
        return _asks(
            door, visitor, 403, "That is not the passphrase.", "Capitals and spaces count. Type it again."
        )
    letting_in = RedirectResponse("/", 303)
    door.passphrase.given.give(asgi.client_address(request.scope), letting_in)
    return letting_in


def startup(job: str) -> str:
    """The address of Startup of a job."""
    return f"/jobs/{job}/{SHEET}"


def refused(scope: asgi.Scope, door: Door, visitor: Visitor) -> Response:
    """What a visitor is told who may not reach what was asked for."""
    whole = not asgi.header(scope, b"hx-request")
    if visitor.kind == "given":
        return said(403, FILES_STAY, SEND_IT, '<p><a href="/">Jobs</a></p>', whole)
    if visitor.kind == "paired" and visitor.job:
        link = f'<p><a href="{escape(startup(visitor.job))}">Go to Startup</a></p>'
        what = "This device may open Startup of one job and write its readings."
        return said(403, what, ELSEWHERE, link, whole)
    if visitor.kind == "paired":
        link = '<p><a href="/pair">Choose the job</a></p>'
        return said(
            403, "This device has no job yet.", "Choose the one whose readings you take.", link, whole
        )
    return _asks(door, visitor, 403, "This device has not been let in.", _ways_in(door), whole)


def wrong_host(scope: asgi.Scope, port: int) -> Response:
    """Asked for under a name that is not this app's."""
    mend = (
        f"Open http://127.0.0.1:{port} on the computer that runs it, "
        "or the address in digits that it shows when it is shared."
    )
    return said(403, "Heatledger does not answer to this address.", mend, whole=_whole(scope))


def from_elsewhere(scope: asgi.Scope) -> Response:
    """A request that another site began, or that does not prove that a page of ours did."""
    return said(
        403, "This did not come from a page of Heatledger, so nothing was changed.",
        "Open the page again and repeat the entry there.", whole=_whole(scope),
    )  # fmt: skip


def too_long(scope: asgi.Scope) -> Response:
    """A body over the limit."""
    return said(
        413, "This is more than Heatledger takes at once, so nothing was changed.",
        "At most 2.5 MB: a job file holds one job as text. Check that it is the right file.",
        whole=_whole(scope), headers={"connection": "close"},
    )  # fmt: skip


def trouble(scope: asgi.Scope) -> Response:
    """A fault that nothing else has caught."""
    return said(
        500, "This page could not be made; the fault is ours.",
        "Your job is safe as of its last revision. Go back to it and try again.", whole=_whole(scope),
    )  # fmt: skip


def _whole(scope: asgi.Scope) -> bool:
    return not asgi.header(scope, b"hx-request")


def _door(request: Request) -> Door:
    found: Door = request.app.state.door
    return found


async def _typed(request: Request, name: str) -> str:
    value = (await request.form()).get(name, "")
    return value[:LONGEST_TYPED] if isinstance(value, str) else ""


async def _jobs(request: Request) -> list[tuple[str, str]]:
    """Id and name of every job that a code can lead to."""
    book: Any = getattr(request.app.state, "book", None)
    if book is None:
        return []
    return [(str(each.id), each.name) for each in await run_in_threadpool(book.jobs)]


def _ways_in(door: Door) -> str:
    ways = ["the one-time code"] if door.settings.share else []
    ways += ["the passphrase"] if door.passphrase.is_set else []
    if not ways:
        return "Heatledger is open on its own computer only; there it can be started to be shared."
    return f"Type {' or '.join(ways)} of the computer that runs Heatledger."


def _asks(door: Door, visitor: Visitor, status: int, what: str, mend: str, whole: bool = True) -> Response:
    """A page with the entries by which a device is let in."""
    forms = ""
    if door.settings.share:
        code = field(
            "code", f"One-time code, {LENGTH} signs", autocomplete="off", autocapitalize="characters",
            spellcheck="false", maxlength="20",
        )  # fmt: skip
        forms += form("/pair", "Let this device in", code, door.mark(visitor))
    if door.passphrase.is_set:
        phrase = field("passphrase", "Passphrase", "password", autocomplete="current-password")
        forms += form("/passphrase", "Open the book", phrase, door.mark(visitor))
    if forms:
        forms += f"<p>{escape(PLAIN)}</p>"
    return said(status, what, mend, forms, whole)


def _not_shared() -> Response:
    return said(
        409, "Heatledger is not shared.",
        "Stop it and start it again with: heatledger app --share", '<p><a href="/">Jobs</a></p>',
    )  # fmt: skip


async def _job_to_choose(request: Request, door: Door, visitor: Visitor) -> Response:
    """A paired device goes to its job; one whose code named none chooses it here, once."""
    if visitor.job:
        return RedirectResponse(startup(visitor.job), 303)
    choose = form("/pair/job", "Go to Startup", _picks(await _jobs(request)), door.mark(visitor))
    return said(200, "Which job is it?", "This device will reach Startup of this job only.", choose)


def _picks(jobs: list[tuple[str, str]], chosen: str = "", none: str = "") -> str:
    rows = [("", none), *jobs] if none else jobs
    options = "".join(
        f'<option value="{escape(id)}"{" selected" if id == chosen else ""}>{escape(name)}</option>'
        for id, name in rows
    )
    return f'<p><label for="job">Job</label> <select id="job" name="job">{options}</select></p>'


async def _letting_in(request: Request, door: Door, visitor: Visitor) -> Response:
    """On this computer: the code in force, a new one, and the devices that are in."""
    if not door.settings.share:
        return _not_shared()
    jobs = await _jobs(request)
    names = dict(jobs)
    more = ""
    code = door.pairing.code()
    if code is not None:
        minutes = door.pairing.minutes_left(code)
        leads = (
            names.get(code.job, "the job chosen on the device")
            if code.job
            else "the job chosen on the device"
        )
        more += (
            f'<p>Code <strong class="big">{code.shown}</strong>, read aloud: {escape(code.spoken)}.</p>\n'
            f"<p>For one device, once, {minutes} more {'minute' if minutes == 1 else 'minutes'}. "
            f"It leads to Startup of {escape(leads)}.</p>\n"
        )
    chosen = request.query_params.get("job", "")
    pick = _picks(jobs, chosen, "Chosen on the device")
    more += form("/pair/new", "Make a new code", pick, door.mark(visitor))
    rows = ""
    for each in door.pairing.devices.holders():
        leads = names.get(each.job, "no job yet")
        label = f"{each.address} since {each.since:%H:%M}: {leads}"
        hidden = f'<p>{escape(label)}</p><input type="hidden" name="device" value="{each.number}">'
        rows += form("/pair/out", "Shut out", hidden, door.mark(visitor))
    more += f"<h2>Devices that are in</h2>\n{rows or '<p>None.</p>'}"
    where = (
        f"Open {door.shared_at} on the device" if door.shared_at else "Open the shared address on the device"
    )
    mend = f"{where} and type a one-time code, good for {MINUTES} minutes."
    back = f'<a href="{escape(startup(chosen))}">Back to Startup</a> ' if chosen in names else ""
    links = f'<p>{back}<a href="/">Jobs</a></p>'
    return said(200, "Let a device in", mend, f"{more}<p>{escape(PLAIN)}</p>\n{links}")

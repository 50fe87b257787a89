"""An inspector's questions on loads, pipes, tests and papers, with the paper on which the proof stands."""

from __future__ import annotations

from heatledger.ledger.figures import Leaf
from heatledger.papers import blocks as b
from heatledger.papers.answers import figure, length, listed, not_reached, said, waiting
from heatledger.papers.printing import Printing
from heatledger.steps.may_run import waits_of
from heatledger.steps.targets import burns
from heatledger.studies.materials import tube_lots
from heatledger.studies.parts import parts_of_house

HERE = "this set"


def proof(where: str) -> b.Text:
    """Where the proof of an answer stands."""
    return said(" ", (b.Run(f"Proof: {where}.", "quiet"),))


def code(printing: Printing) -> b.Text:
    """The adopted code and the authority."""
    codes = printing.design.job.system.codes
    authority = f" Authority: {codes.authority}." if codes.authority else ""
    if not codes.adopted:
        return said(
            not_reached("the adopted code is not named. Where a model code stands behind a finding it is "
            "named there."),
            authority,
        )  # fmt: skip
    return said(
        f"{codes.adopted}.{authority} Local changes are for the authority to name.", proof(f"{HERE}, page 1")
    )


def who(printing: Printing) -> b.Text:
    """Who prepared it, licence, date, revision, version."""
    job, head = printing.design.job, printing.head("")
    named = [
        f"Prepared by {job.prepared_by}" if job.prepared_by else "Preparer not named",
        f"license {job.system.codes.licence}" if job.system.codes.licence else "license blank, to be filled "
        "in",
        f"dated {job.date}" if job.date else "date blank, to be filled in", head.revision,
        f"made with {head.version}",
    ]  # fmt: skip
    text = listed([each for each in named if each])
    return said(text, ".", proof(f"{HERE}, page 1"))


def temperatures(printing: Printing) -> b.Text:
    """Outdoors and indoors, how they are known, and for which place."""
    job, site = printing.design.job, printing.design.losses.site
    if site.outdoor.is_missing or site.indoor.is_missing:
        return waiting(printing, site.outdoor, site.indoor)
    origin = job.site.outdoor.origin
    known = f" ({origin.known})" if isinstance(origin, Leaf) and origin.known else ""
    place = f" for {job.site.place}" if job.site.place else ""
    return said(
        "Outdoors ", figure(printing, site.outdoor), f"{known}{place}, indoors ", figure(printing,
        site.indoor), ". ",
        not_reached("the table and the percentile of the outdoor temperature, unless the entry names them."),
        proof("Heat loss of the house, design conditions"),
    )  # fmt: skip


def areas(printing: Printing) -> b.Text:
    """Sum of the rooms against the stated floor area."""
    job, house = printing.design.job, printing.design.losses.house
    if house.floor_area.is_missing:
        return waiting(printing, house.floor_area)
    held = f" The tape was held {job.measured} the walls." if job.measured else ""
    stated: b.Text = said(" ", not_reached("a stated area to hold it against."))
    if job.heated_floor_area is not None:
        stated = said(" Stated: ", figure(printing, job.heated_floor_area), ".")
    return said(
        "The rooms add up to ", figure(printing, house.floor_area), ".", stated, held,
        proof("Heat loss of the house, room by room, and sheet 1"),
    )  # fmt: skip


def u_factors(printing: Printing) -> b.Text:
    """How many kinds of part, and where each U-value is from."""
    parts = parts_of_house(printing.design)
    missing = [each.name for each in parts if each.factor.is_missing]
    if not parts:
        return not_reached("no wall, window or floor is given.")
    wants = said(" ", not_reached(f"a value for {', '.join(dict.fromkeys(missing))}.")) if missing else ""
    return said(
        f"{len(parts)} kinds of part, each with its U-value and who says it in the table of parts; layers "
        "are worked "
        "out where a part is given by its R-value.", wants, proof(f"{HERE}, what it is built of, and sheet "
        "2"),
    )  # fmt: skip


def air(printing: Printing) -> b.Text:
    """Air changes, how they are known, what they cost."""
    losses = printing.design.losses
    changes = {id(each.air.changes): each.air.changes for each in losses.rooms.values()}
    if all(each.is_missing for each in changes.values()):
        return waiting(printing, *changes.values())
    pieces = []
    for each in changes.values():
        known = each.origin.known if isinstance(each.origin, Leaf) else ""
        pieces.append(said(figure(printing, each), f" ({known})" if known else ""))
    cause = losses.house.causes.get("air")
    costs: b.Text = said(", which takes ", figure(printing, cause.loss)) if cause is not None else ""
    return said(
        "Air changes ", listed(pieces), costs, ". ", not_reached("ventilation by fans and its heat "
        "recovery."),
        proof("Heat loss of the house, sheet 2"),
    )  # fmt: skip


def loads(printing: Printing) -> b.Text:
    """Both totals: the rooms, and the load of the plant."""
    loss, load = printing.design.losses.house.loss, printing.design.boiler_room.plant.load
    if loss.is_missing:
        return waiting(printing, loss)
    return said(
        f"{_rooms(printing)}, together ", figure(printing, loss), "; the plant is sized on ",
        figure(printing, load), ", which adds what the mains lose outside heated rooms and nothing else.",
        proof(f"{HERE}, room by room and from the loss to the plant"),
    )  # fmt: skip


def _rooms(printing: Printing) -> str:
    count = len(printing.design.losses.rooms)
    return f"{count} rooms" if count != 1 else "One room"


def pipes(printing: Printing) -> b.Text:
    """Tube by size and length."""
    lots = [each for each in tube_lots(printing.design) if not each.length.is_missing]
    missing = not_reached("standard, supports and oxygen barrier of each tube, which the installer shows.")
    if not lots:
        return not_reached("nothing is piped yet.")
    pieces = [said(f"{each.tube or 'tube not chosen'} ", length(printing, each.length)) for each in lots]
    return said(listed(pieces), ". ", missing, proof(f"{HERE}, pipes, and Circuit schedule, sheet 4"))


def tests(printing: Printing) -> b.Text:
    """What is due and what was read."""
    due, read = printing.design.startup.startup.test_pressure, printing.design.job.system.readings
    if due.is_missing:
        return waiting(printing, due)
    seen: b.Text = not_reached("the test itself; its record is blank.")
    if read.test_pressure is not None and not read.test_pressure.is_missing:
        by = ", ".join(each for each in (read.by, read.date) if each)
        seen = said("Read: ", figure(printing, read.test_pressure), f" ({by})." if by else ".")
    return said(
        "Piping with water at ", figure(printing, due), " for fifteen minutes, before anything is covered. "
        "", seen,
        proof(f"{HERE}, pressure tests, and Startup"),
    )  # fmt: skip


def on_site(printing: Printing) -> b.Text:
    """Which papers, slips and alarms are there, and what is open."""
    design = printing.design
    boiler = design.job.system.plant.boiler
    open_ = [each for each in design.findings if each.decided is None]
    must = sum(each.weight.value == "must fix" for each in open_)
    decide = sum(each.weight.value == "decide" for each in open_)
    waits = waits_of(design.job) if burns(boiler) else ()
    slip: b.Text = said("Combustion slip: still wanting ", listed(waits), ". ") if waits else ""
    if boiler is not None and burns(boiler) and not waits:
        slip = "Combustion slip: read and recorded. "
    return said(
        "Sequence and settings stand in this set. ", slip, f"Open: {must} must fix, {decide} to decide. ",
        not_reached("a wiring diagram, and the alarms as hung; look at both on site."),
        proof(f"{HERE}, open items, and Review of the design"),
    )  # fmt: skip

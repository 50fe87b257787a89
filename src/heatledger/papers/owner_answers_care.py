"""The owner's questions on safety, hot water, floors, yearly care, and what a contractor leaves behind."""

from __future__ import annotations

from heatledger.papers import blocks as b
from heatledger.papers.answers import figure, listed, not_reached, said
from heatledger.papers.owner_rooms import has_emitters
from heatledger.papers.printing import LOCAL_CODE, Printing
from heatledger.papers.words import floors_word
from heatledger.steps.may_run import waits_of
from heatledger.steps.targets import burns

ALARM = "no-co-alarm"


def carpet(printing: Printing) -> b.Text:
    """Warm floors are not part of a design yet."""
    missing = not_reached("heated floors, and so the covering that one of them can bear.")
    if not has_emitters(printing):
        return missing
    return said(
        "No emitter of this design lies in a floor, so a carpet takes no heat from it. Keep rugs, "
        "curtains and furniture off baseboards and radiators. ", missing,
    )  # fmt: skip


def hot_water(printing: Printing) -> b.Text:
    """Nothing is worked out; the danger is said."""
    return said(
        not_reached("hot water: how much there is in the first hour, and how fast it comes back."),
        " Hot water burns a child in seconds. Storage temperature, mixing valve and tap temperature are "
        f"set by who is licensed for it. {LOCAL_CODE}",
    )  # fmt: skip


def is_it_safe(printing: Printing) -> b.Text:
    """Who measured the fire, what is still not read, and what is known of the alarms."""
    job = printing.design.job
    plant, read = job.system.plant, job.system.readings
    pieces: list[b.Text] = []
    if plant.boiler is None:
        pieces.append("No boiler is given yet, so no fire is measured.")
    elif not burns(plant.boiler):
        pieces.append("The boiler burns nothing, so there is no fire to measure.")
    else:
        waits = waits_of(job)
        by = ", ".join(each for each in (read.by, read.date) if each) or "no name given"
        if waits:
            pieces.append(
                said((b.Run("Not yet.", "bold"), " Still to be read or mended: "), listed(waits), ".")
            )
        else:
            pieces.append(f"Fire, draft and room were read ({by}).")
    found = [each for each in printing.design.findings if each.id == ALARM]
    decided = next((each.decided for each in found if each.decided is not None), None)
    alarm = (
        " Where the carbon monoxide alarms hang is not recorded: they belong outside every sleeping area "
        f"and on every {floors_word(printing.units)}."
    )
    if decided is not None:
        alarm = f" On the carbon monoxide alarms it was decided: {decided.words} ({decided.by})."
    return said(*pieces, alarm, f" {LOCAL_CODE}")


def every_year(printing: Printing) -> b.Text:
    """The yearly work with the values it is held to."""
    room, plant = printing.design.boiler_room.plant, printing.design.job.system.plant
    pieces: list[b.Text] = []
    if burns(plant.boiler):
        pieces.append("combustion and draft read")
    if room.precharge_pressure is not None and not room.precharge_pressure.is_missing:
        pieces.append(said("tank charge ", figure(printing, room.precharge_pressure), ", empty of water"))
    if not room.fill_pressure.is_missing:
        pieces.append(said("cold pressure ", figure(printing, room.fill_pressure)))
    pieces += [
        "relief valve, low-water cutoff and high limit proved",
        "strainers clean",
        "alarms pressed and in date",
    ]
    return said(
        "By who is licensed for it: ", listed(pieces), ". ",
        not_reached("last year's readings beside those of the startup, since no earlier service is "
        "recorded."),
    )  # fmt: skip


def offer(printing: Printing) -> b.Text:
    """What an offer and a handover hold, with the figures of this design to hold it against."""
    design = printing.design
    pieces: list[b.Text] = ["the load of every room"]
    if not design.losses.house.loss.is_missing:
        pieces[0] = said("the load of every room, together ", figure(printing, design.losses.house.loss))
    if has_emitters(printing) and not design.emitters.house.supply.is_missing:
        pieces.append(
            said(
                "a schedule of emitters at ", figure(printing, design.emitters.house.supply), " supply water"
            )
        )
    if not design.boiler_room.plant.load.is_missing:
        pieces.append(
            said(
                "a boiler for ", figure(printing, design.boiler_room.plant.load), " with nothing added on top"
            )
        )
    pieces += [
        "tube sizes and flows by circuit", "safety parts by name and setting", "permits and who is licensed",
        "the startup sheet filled in and signed", "the wall card beside the boiler",
        "manuals and photographs",
    ]  # fmt: skip
    return said("An offer names, and a handover leaves with you: ", listed(pieces), f". {LOCAL_CODE}")

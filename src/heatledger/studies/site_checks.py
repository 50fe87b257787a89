"""What to look at on site before a boiler is replaced, in the order of the walk, each with its reason."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from heatledger.job.model import Job
from heatledger.job.system_model import IRON_BASEBOARD, IRON_RADIATOR
from heatledger.steps.targets import CAUTION_LOCAL, ELECTRIC, OIL, burns

LAGGED_BEFORE = 1980
"""Year before which lagging, gaskets and flue cement may hold asbestos."""
CARBON_MONOXIDE = "Flue gas in a house kills."


@dataclass(frozen=True)
class SiteCheck:
    """One thing to check: ``what`` to do, ``why``, and a ``caution`` where someone could be hurt."""

    id: str
    what: str
    why: str
    caution: str = ""


def site_checks(job: Job) -> Iterator[SiteCheck]:
    """The checks that apply to this job, in the order of the walk."""
    yield from _before(job)
    yield from _boiler(job)
    yield from _flue(job)
    yield from _fuel(job)
    yield from _pipes(job)
    yield from _rooms(job)


def _careful(words: str) -> str:
    return f"{words} {CAUTION_LOCAL}"


def _before(job: Job) -> Iterator[SiteCheck]:
    if job.built is None or job.built < LAGGED_BEFORE:
        yield SiteCheck(
            "asbestos", "Look for old lagging, gaskets and flue cement, and leave them alone.",
            "They may hold asbestos; a sample tells, and trained people take it out.",
            _careful("Do not cut, scrape or sweep it: the dust of asbestos kills years later."),
        )  # fmt: skip
    yield SiteCheck(
        "alarms", "See that carbon monoxide alarms hang outside each sleeping area and on every floor.",
        "They are due before the first fire, and the old boiler may be leaking now.",
        _careful("If an alarm sounds or anyone feels ill: everyone out, and call from outside."),
    )  # fmt: skip


def _boiler(job: Job) -> Iterator[SiteCheck]:
    yield SiteCheck(
        "nameplate", "Photograph the nameplate: input, output, working pressure, fuel, year.",
        "Input sizes the fuel line and the vent, output the heat; the old size is no proof of the load.",
    )  # fmt: skip
    yield SiteCheck(
        "hot-water", "Ask what makes the hot water: a coil in the boiler, a tank on it, or its own heater.",
        "With the old boiler its coil goes too, and hot water needs a place of its own in the new plant.",
    )  # fmt: skip
    yield SiteCheck(
        "height", "Measure from the gauge to the highest pipe or radiator.",
        "The height sets the fill pressure, the charge of the tank and the room under the relief valve.",
    )  # fmt: skip
    yield SiteCheck(
        "tank-and-relief", "Read the size and charge of the tank, and setting, rating and pipe of the "
        "relief valve.",
        "A tank that lost its charge and a valve that weeps look like a bad boiler.",
        _careful("The relief valve throws scalding water; never plug, cap or raise it."),
    )  # fmt: skip


def _flue(job: Job) -> Iterator[SiteCheck]:
    if job.system.plant.boiler is not None and not burns(job.system.plant.boiler):
        return
    yield SiteCheck(
        "chimney", "Look at the flue and the chimney: size, liner, height, and rust or damp at the joints.",
        "A new boiler needs the vent it is listed with; cool flue gas ruins masonry.",
        _careful(f"{CARBON_MONOXIDE} A chimney is opened and joined by a licensed hand."),
    )  # fmt: skip
    yield SiteCheck(
        "water-heater-left", "Find every other appliance on that chimney, and who sizes it anew.",
        "A chimney made for two is too large and cold for the water heater that stays.",
        _careful(CARBON_MONOXIDE),
    )  # fmt: skip
    yield SiteCheck(
        "vent-way", "Find a way out for a new vent and, where it condenses, a drain that cannot freeze.",
        "Ends of vents keep their distance from windows, walks, snow and the neighbor.",
        _careful(CARBON_MONOXIDE),
    )  # fmt: skip
    yield SiteCheck(
        "air-for-the-fire", "Measure the boiler room, and its openings if it has any.",
        "Fire takes air; fans and dryers take it back from the chimney.", _careful(CARBON_MONOXIDE),
    )  # fmt: skip


def _fuel(job: Job) -> Iterator[SiteCheck]:
    boiler = job.system.plant.boiler
    fuel = boiler.fuel if boiler else ""
    if fuel == OIL:
        yield SiteCheck(
            "oil-tank", "Look at the oil tank, its line, filter, vent and fill, and ask how old they are.",
            "A tank at its end costs more than a boiler, and a change of fuel leaves it to be dealt with.",
            _careful("A spill of oil is a danger to the house and its well."),
        )  # fmt: skip
    elif fuel != ELECTRIC:
        yield SiteCheck(
            "gas", "Read the meter and the size and length of the gas pipe, and list all that hangs on it.",
            "Meter and pipe must carry everything at once; the utility is asked before a boiler is bought.",
            _careful("If gas is smelled: out, touch no switch, call from outside. Gas is licensed work."),
        )  # fmt: skip
    yield SiteCheck(
        "electrical", "Look for the switch at the door, a circuit of its own, and room in the panel.",
        "A new boiler has a circulator and controls; an electric one may need a new service.",
        _careful("Wiring is dead and locked out before it is touched, by who is licensed for it."),
    )  # fmt: skip


def _pipes(job: Job) -> Iterator[SiteCheck]:
    yield SiteCheck(
        "pipe-sizes", "Write down the sizes of the mains and the branches, and what they are made of.",
        "Large old pipes move by gravity and want little head; small ones set the flow that can be had.",
    )  # fmt: skip
    yield SiteCheck(
        "water", "Draw a little water into a jar and look at it.",
        "Black water is rust that lands in a new boiler and on the magnet of its circulator.",
        _careful("Water of the system may be hot and may hold antifreeze."),
    )  # fmt: skip
    yield SiteCheck(
        "feed", "Find the fill valve, its backflow preventer, and the shutoffs on both sides.",
        "They keep boiler water out of the kitchen tap.",
        _careful("Boiler water is not for drinking."),
    )  # fmt: skip


def _rooms(job: Job) -> Iterator[SiteCheck]:
    system = job.system
    iron = any(each.kind in (IRON_RADIATOR, IRON_BASEBOARD) for each in system.emitters.values())
    count = "sections, columns and height" if iron or not system.emitters else "length and kind"
    caution = _careful("An iron radiator is heavier than one person can lift; floors must carry it.")
    yield SiteCheck(
        "emitters", f"Count every emitter room by room: {count}.",
        "They decide how cool the water may be, and with it whether a condensing boiler condenses.",
        caution if iron else "",
    )  # fmt: skip
    yield SiteCheck(
        "cold-rooms", "Ask which rooms are cold, which are never used, and what else gives heat.",
        "A stove or closed rooms make the bills read low; a cold room shows where emitter is short.",
    )  # fmt: skip
    yield SiteCheck(
        "shell", "Look into the attic, behind an outlet and at the windows.",
        "The loss rests on these; what was told is worth less than what was seen.",
    )  # fmt: skip
    yield SiteCheck(
        "bills", "Collect a winter of fuel bills with their dates, and one summer month.",
        "They are the other side of the same sum, and show what is wrong in it.",
    )  # fmt: skip

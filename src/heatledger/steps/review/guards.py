"""Findings on what guards people and the boiler. What the job does not show counts as absent."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.job.system_model import IRON_BASEBOARD, IRON_RADIATOR
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import DERIVED, SEEN, cite
from heatledger.ledger.units import UNITS
from heatledger.steps.controls import asked_at
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.plant_look import BOILER, BURST, CARBON_MONOXIDE, boiler_of, cautioned, plant_of
from heatledger.steps.targets import burns

Found = Iterator[Finding | NotChecked]
CONDENSING = "condensing"
SUPPLY = "plant/supply"
JUST = 1e-6
LITTLE = 0.01
"""A hair of a kelvin, so that what a mend types is on the right side of its limit."""
LIMIT, CUTOFF = "plant/high_limit", "plant/low_water_cutoff"
USUAL_LIMIT = UNITS["°F"].to_si(200, True)


@finding(
    "no-low-water-cutoff",
    Weight.DECIDE,
    cite("UNITED", "what an inspector looks for", SEEN),
    fires="A low-water cutoff is not shown. With an input above {0} it must be fixed.",
    why="lists ask for it above 400,000 Btu/h (117 kW), others at any size",
    mend="Show a probe type with manual reset, no valve between it and the boiler.",
    limits=(Limit("no-low-water-cutoff", "400000 Btu/h", d.HEAT_RATE, "input at which it must be fixed"),),
    settled_by_words=False,
)
def _no_low_water_cutoff(look: Look) -> Found:
    boiler = boiler_of(look)
    if boiler is None or plant_of(look).low_water_cutoff:
        return
    large = boiler.input is not None and float(boiler.input) > look.limit
    found = look.found(
        CUTOFF,
        f"A low-water cutoff is not shown; if the water is lost, nothing stops the fire in {boiler.name}.",
        "",
        (
            Mend("Show one, with manual reset and no valve to the boiler.", (set_to(CUTOFF, "yes"),)),
            Mend("Where its maker has built another guard in, name it and decide."),
        ),
        Weight.MUST_FIX if large else Weight.DECIDE,
    )
    yield cautioned(found, "A boiler fired dry can burst or set the house on fire.")


@finding(
    "no-manual-limit",
    Weight.MUST_FIX,
    cite("RI-260", "limits of hot-water boilers", SEEN),
    fires="The high limit is not shown, or is set above {0}.",
    why="one control that both runs and guards the boiler stops nothing when it sticks",
    mend="Wire a limit with manual reset in series with the operating control.",
    limits=(Limit("no-manual-limit", "250 °F", d.TEMPERATURE, "highest setting of the limit"),),
    settled_by_words=False,
)
def _no_manual_limit(look: Look) -> Found:
    boiler, limit = boiler_of(look), plant_of(look).high_limit
    if boiler is None or (limit is not None and not float(limit) > look.limit + 1e-9):
        return
    says = "is not shown" if limit is None else f"is set to {look.say(limit)}"
    found = look.found(
        LIMIT,
        f"The high limit of {boiler.name} {says}; when the operating control sticks it is what stops the "
        "fire.",
        "" if limit is None else limit,
        (
            Mend(
                "Show a limit with manual reset, set as its maker says.",
                (set_to(LIMIT, look.text(USUAL_LIMIT, d.TEMPERATURE)),),
            ),
        ),
    )
    yield cautioned(found, BURST)


@finding(
    "limit-stops-the-burner",
    Weight.DECIDE,
    cite("", "the burner stops half its differential above the supply", DERIVED),
    fires="The hottest water asked for, and half of the differential, come within {0} of the high limit. It "
    "must be fixed where the water asked for is hotter than the limit by itself.",
    why="a limit is a guard: where it ends each cycle it wears out, and locks the house out on the coldest "
    "night",
    mend="Run cooler water, which may ask for larger emitters, or narrow the differential. The limit "
    "stays as its maker says.",
    limits=(Limit("limit-stops-the-burner", "0 °F", d.TEMPERATURE_DIFFERENCE, "room below the limit"),),
)
def _limit_stops_the_burner(look: Look) -> Found:
    boiler, limit, heat = boiler_of(look), plant_of(look).high_limit, look.design.emitters.house
    if boiler is None or limit is None or not look.design.emitters.emitters:
        return
    found = look.design.controls.controls
    asked = [heat.supply, *(asked_at(each) for each in found.reset.values())]
    known = [each for each in asked if not isnan(each)]
    if isnan(limit) or isnan(found.differential) or not known:
        yield look.wants(LIMIT, limit, found.differential, heat.supply)
        return
    hottest = max(known, key=float)
    stops = float(hottest) + float(found.differential) / 2
    if stops < float(limit) - look.limit - JUST:
        return
    coolest = float(limit) - look.limit - float(found.differential) / 2 - LITTLE
    mends = [Mend(look.kind.mend)]
    if hottest is heat.supply and not isnan(heat.lowest_supply) and float(heat.lowest_supply) <= coolest:
        text = look.text(coolest, d.TEMPERATURE, to=-1)
        mends.insert(
            0, Mend(f"Run the water at {text}; every room still has enough.", (set_to(SUPPLY, text),))
        )
    yield look.found(
        LIMIT,
        f"The high limit stands at {look.say(limit)}. Water is asked for at {look.say(hottest)}, and the "
        f"burner stops at {look.say(stops, d.TEMPERATURE)}: the limit will end its cycles.",
        hottest,
        tuple(mends),
        Weight.MUST_FIX if float(hottest) > float(limit) + JUST else Weight.DECIDE,
    )


@finding(
    "no-co-alarm",
    Weight.MUST_FIX,
    cite("R315", "carbon monoxide alarms", SEEN),
    fires="The boiler has a fire. Carbon monoxide alarms stand nowhere in a job, so they count as not shown.",
    why="it is the one fault nobody smells",
    mend="Put alarms outside each sleeping area and on every floor before the first fire; decide with a name "
    "and say where they hang.",
    says_where=True,
)
def _no_co_alarm(look: Look) -> Found:
    boiler = boiler_of(look)
    if boiler is not None and burns(boiler):
        found = look.found(
            BOILER, "Carbon monoxide alarms outside each sleeping area and on every floor are not shown."
        )
        yield cautioned(found, CARBON_MONOXIDE)


@finding(
    "relief-pipe-blocked",
    Weight.DECIDE,
    cite("IMC-1006", "discharge of relief valves", SEEN),
    fires="There is a boiler. Where the pipe of its relief valve ends stands nowhere in a job, so it "
    "counts as "
    "not shown.",
    why="a plugged pipe turns the valve into a plug",
    mend="Full size, rigid, downhill, no valve, cap or thread at its end, open near the floor where it hurts "
    "nobody; look at it and decide with a name.",
)
def _relief_pipe_blocked(look: Look) -> Found:
    if boiler_of(look) is not None:
        found = look.found(
            f"{BOILER}/relief",
            "Where the pipe of the relief valve ends is not shown; when it opens it must open freely and "
            "hurt "
            "nobody.",
        )
        yield cautioned(found, BURST)


@finding(
    "condensate-badly-drained",
    Weight.DECIDE,
    cite("JLC-COND", "condensate drains", SEEN),
    fires="The boiler condenses. The way of its condensate stands nowhere in a job, so it counts as not "
    "shown.",
    why="drains outdoors froze across a whole city in one winter, and iron floor drains rust through",
    mend="An indoor plastic run, its trap filled before the first fire, a neutralizer before any metal; "
    "decide "
    "with a name.",
)
def _condensate_badly_drained(look: Look) -> Found:
    boiler = boiler_of(look)
    if boiler is not None and burns(boiler) and boiler.kind == CONDENSING:
        found = look.found(
            BOILER,
            f"Acid water from {boiler.name} needs a way out that cannot freeze or rust; none is shown.",
        )
        yield cautioned(found, f"A dry trap lets flue gas into the room. {CARBON_MONOXIDE}")


@finding(
    "nothing-catches-dirt",
    Weight.DECIDE,
    cite("HH-ECM", "iron oxide and magnet-rotor circulators", SEEN),
    fires="A condensing boiler is joined to emitters of cast iron.",
    why="black water is iron oxide, and magnets and narrow passages gather it",
    mend="Clean and flush first, and put a magnetic dirt separator in the return.",
)
def _nothing_catches_dirt(look: Look) -> Found:
    boiler = boiler_of(look)
    iron = [
        each.name
        for each in look.house.job.system.emitters.values()
        if each.kind in (IRON_BASEBOARD, IRON_RADIATOR)
    ]
    if boiler is not None and boiler.kind == CONDENSING and iron:
        more = f" and {len(iron) - 1} more" if len(iron) > 1 else ""
        yield look.found(
            BOILER,
            f"Rust of old iron ({iron[0]}{more}) will land in the passages of {boiler.name} and on the "
            "magnet "
            "of its circulator.",
        )

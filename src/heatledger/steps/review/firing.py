"""Findings on the boiler as it runs: short cycles, water too cool or too slow, no condensing."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import isnan

from heatledger.job.system_model import Boiler
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import SECOND_HAND, SEEN, cite
from heatledger.physics import firing
from heatledger.steps.flows import state_flows
from heatledger.steps.plant_water import water_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.plant_look import BOILER, CARBON_MONOXIDE, boiler_of, cautioned, room_of
from heatledger.steps.targets import OIL, burns

Found = Iterator[Finding | NotChecked]
Plain = Callable[..., float]
"""A formula on plain numbers."""
boiler_rise: Plain = firing.boiler_rise
buffer_volume: Plain = firing.buffer_volume
burner_off: Plain = firing.burner_off
burner_on: Plain = firing.burner_on
least_flow: Plain = firing.least_flow
starts_in_an_hour: Plain = firing.starts_in_an_hour
stored_heat: Plain = firing.stored_heat
JUST = 1e-9
MINUTE = 60.0
CONDENSING = "condensing"
STEAM = "Steam in its passages bangs and lifts the relief valve, which scalds."
FULL_FIRE = "where a burner is on or off its full output counts"


@dataclass(frozen=True)
class Alone:
    """One zone that calls alone: its load on the design day, and the water that moves for it."""

    name: str
    where: str
    load: float
    water: float
    parts: tuple[Figure, ...]


def zones_alone(look: Look) -> list[Alone]:
    """Each zone with its load and water, the smallest load first; circuits of no zone make one."""
    job, design = look.house.job, look.design
    found = []
    for zone in dict.fromkeys(each.zone for each in design.circuits.circuits.values()):
        own = {id: each for id, each in design.circuits.circuits.items() if each.zone == zone}
        tubes = [one.volume for each in own.values() for one in (each.common, *each.runs.values())]
        emitters = [job.system.emitters[run] for each in own.values() for run in each.runs]
        waters = [*tubes, *(water_of(each, design.emitters) for each in emitters)]
        named = job.system.zones.get(zone)
        loads = [each.load for each in own.values()]
        found.append(
            Alone(
                named.name if named else "the house",
                f"zones/{zone}" if named else BOILER,
                sum(map(float, loads)),
                sum(map(float, waters)),
                (*loads, *waters),
            )
        )
    return sorted(found, key=lambda each: each.load)


def least_of(look: Look, boiler: Boiler) -> Figure | None:
    """The least a burner can make; its full output where it does not turn down."""
    return room_of(look).output if boiler.least_output is None else boiler.least_output


@finding(
    "boiler-cycles-fast",
    Weight.DECIDE,
    cite("PME-94749", "small zones and short cycles", SEEN),
    fires="In mild weather, at {0} of its design load, the smallest zone calling alone makes the burner "
    "start "
    f"more than {{1}} times an hour by the water that moves; {FULL_FIRE}. Above {{2}} it must be fixed.",
    why="3 gal (11 L) of water and 60 lb (27 kg) of iron, 24,000 for 9,000 Btu/h (7.0 for 2.6 kW), start 8.7 "
    "times an hour",
    mend="Put in a buffer tank, join small zones, or take a burner that turns down further.",
    limits=(
        Limit("boiler-cycles-fast", "25 %", d.RATIO, "load in mild weather"),
        Limit("starts-in-an-hour", "6", d.COUNT, "starts in an hour"),
        Limit("starts-too-many", "10", d.COUNT, "starts in an hour that must be fixed"),
    ),
)
def _boiler_cycles_fast(look: Look) -> Found:
    boiler = boiler_of(look)
    zones = zones_alone(look)
    if boiler is None or not zones:
        return
    smallest, least = zones[0], least_of(look, boiler)
    own = boiler.water
    rise = float(look.design.controls.controls.differential)
    load = look.limit * smallest.load
    if least is None or own is None or isnan(least) or isnan(own) or isnan(load) or isnan(smallest.water):
        wanting = [each for each in (least, own, *smallest.parts) if each is not None and isnan(each)]
        yield look.wants(smallest.where, *wanting, words="" if wanting else "water in the boiler")
        return
    if not 0 < load < float(least):
        return
    stored = stored_heat(water=smallest.water + float(own), iron=0.0, differential=rise)
    on = burner_on(stored=stored, least_output=float(least), load=load)
    off = burner_off(stored=stored, load=load)
    starts = starts_in_an_hour(on=on, off=off)
    if starts > look.limit_at(1) * (1 + JUST):
        buffer = buffer_volume(time=10 * MINUTE, least_output=float(least), load=load, rise=rise)
        more = max(buffer - smallest.water - float(own), 0.0)
        yield look.found(
            smallest.where,
            f"In mild weather with {smallest.name} calling alone the burner runs {on / MINUTE:.1f} minutes "
            "and "
            f"rests {off / MINUTE:.1f}: {starts:.1f} starts an hour, the iron of the boiler not counted.",
            least,
            (
                Mend(f"A buffer of {look.say(more, d.WATER_VOLUME)} keeps it on for 10 minutes."),
                Mend("Join it to another zone, or take a burner that turns down further."),
            ),
            Weight.MUST_FIX if starts > look.limit_at(2) else Weight.DECIDE,
        )


@finding(
    "micro-zone",
    Weight.DECIDE,
    cite("PME-94749", "small zones and short cycles", SEEN),
    fires="There are two zones or more, and in mild weather, at {0} of its design load, the smallest takes "
    f"less than the least the boiler can make; {FULL_FIRE}.",
    why="a towel rail or one panel is often below 5 to 10 % of its source",
    mend="Add it to a neighbor zone, put in a buffer tank, or let it run only with others.",
    limits=(Limit("micro-zone", "25 %", d.RATIO, "load in mild weather"),),
)
def _micro_zone(look: Look) -> Found:
    boiler, zones = boiler_of(look), zones_alone(look)
    if boiler is None or len(zones) < 2:
        return
    least, smallest = least_of(look, boiler), zones[0]
    load = look.limit * smallest.load
    if least is None or isnan(least) or isnan(load):
        yield look.wants(smallest.where, least, *smallest.parts)
    elif 0 < load < float(least) * (1 - JUST):
        yield look.found(
            smallest.where,
            f"{smallest.name} takes {look.say(load, d.HEAT_RATE)} in mild weather; the boiler cannot make "
            "less "
            f"than {look.say(least)}.",
            least,
        )


@finding(
    "condensing-never-condenses",
    Weight.DECIDE,
    cite("ETH-BOILER", "efficiency by return temperature", SECOND_HAND),
    fires="A condensing boiler without outdoor reset has water above {0} coming back on the design day, "
    "and so "
    "all winter.",
    why="160 °F (71 °C) back gives 85.9 %, 120 °F (49 °C) 88.9 %, 100 °F (38 °C) 93.2 %",
    mend="Let the supply follow the weather, from the emitters.",
    limits=(Limit("condensing-never-condenses", "120 °F", d.TEMPERATURE, "water that comes back"),),
)
def _condensing_never_condenses(look: Look) -> Found:
    boiler, room = boiler_of(look), room_of(look)
    if boiler is None or boiler.kind != CONDENSING or look.house.job.system.controls.outdoor_reset:
        return
    back = room.return_design
    if isnan(back):
        yield look.wants(BOILER, back)
    elif float(back) > look.limit + JUST:
        yield look.found(
            BOILER,
            f"Without outdoor reset {look.say(back)} comes back all winter; a condensing boiler was paid for "
            "and does not condense.",
            back,
            (
                Mend("Let the supply follow the weather.", (set_to("controls/outdoor_reset", "yes"),)),
                Mend("Put in more emitter in the rooms that ask for the hottest water."),
            ),
        )


@finding(
    "cold-water-to-iron-boiler",
    Weight.MUST_FIX,
    cite("PM-104550", "flue gas that condenses in a boiler", SEEN),
    fires="Water that comes back on the design day to a boiler that may not condense is cooler than its own "
    "limit; where none is typed, than {0} with gas and {1} with oil.",
    why="the condensate of flue gas, near pH 4, eats iron, steel, copper and mortar",
    mend="Put in a thermostatic valve, or a pump or mixing valve that senses the inlet.",
    limits=(
        Limit("cold-water-to-iron-boiler", "130 °F", d.TEMPERATURE, "return to a gas boiler"),
        Limit("cold-water-to-oil-boiler", "140 °F", d.TEMPERATURE, "return to an oil boiler"),
    ),
)
def _cold_water_to_iron_boiler(look: Look) -> Found:
    boiler, back = boiler_of(look), room_of(look).return_design
    if boiler is None or not burns(boiler) or boiler.kind == CONDENSING:
        return
    limit = look.limit_at(1) if boiler.fuel == OIL else look.limit
    if boiler.return_limit is not None:
        limit = float(boiler.return_limit)
    if isnan(back) or isnan(limit):
        yield look.wants(BOILER, back, limit)
    elif float(back) < limit - JUST:
        found = look.found(
            BOILER,
            f"Water comes back at {look.say(back)}, below {look.say(limit, d.TEMPERATURE)}; flue gas will "
            "rain "
            f"inside {boiler.name} until its flue and sections rot.",
            back,
            (
                Mend("Put in a thermostatic return valve, or a pump or mixing valve that senses the inlet."),
                Mend("Take a condensing boiler.", (set_to(f"{BOILER}/kind", CONDENSING),)),
            ),
        )
        yield cautioned(found, f"Rotted flues leak. {CARBON_MONOXIDE}")


@finding(
    "boiler-water-too-slow",
    Weight.MUST_FIX,
    cite("PM-88051", "flow through compact boilers", SEEN),
    fires="With every zone calling, or the smallest alone, the flow is below the least the boiler allows; "
    "where none is typed, full fire with all calling lifts the water by more than {0} ({1} in a condensing "
    "boiler).",
    why="80,000 Btu/h at 3 gpm is 53 °F (23 kW, 0.19 L/s, 30 K)",
    mend="Give the boiler a circulator of its own behind closely spaced tees, or lower the fire.",
    limits=(
        Limit("boiler-water-too-slow", "35 °F", d.TEMPERATURE_DIFFERENCE, "rise at full fire"),
        Limit("condensing-water-too-slow", "40 °F", d.TEMPERATURE_DIFFERENCE, "rise, condensing"),
    ),
)
def _boiler_water_too_slow(look: Look) -> Found:
    boiler, room, design = boiler_of(look), room_of(look), look.design
    flows = [
        each.flow if each.actual_flow is None else each.actual_flow
        for each in design.circuits.circuits.values()
    ]
    if boiler is None or room.output is None or not flows:
        return
    flow, fire = sum(map(float, flows)), float(room.output)
    carries = float(design.emitters.house.water_heat)
    most = look.limit_at(1) if boiler.kind == CONDENSING else look.limit
    if isnan(flow) or isnan(fire) or isnan(carries):
        yield look.wants(BOILER, *flows, room.output, design.emitters.house.water_heat)
        return
    rise = boiler_rise(fire=fire, flow=flow, water_heat=carries)
    needed = least_flow(fire=fire, water_heat=carries, largest_rise=most)
    if boiler.least_flow is not None:
        needed = float(boiler.least_flow)
    if flow < needed * (1 - JUST):
        found = look.found(
            BOILER,
            f"At full fire {boiler.name} lifts its water by {look.say(rise, d.TEMPERATURE_DIFFERENCE)} at "
            f"{look.say(flow, d.VOLUME_FLOW)}; it needs {look.say(needed, d.VOLUME_FLOW)}.",
            room.output,
        )
        yield cautioned(found, STEAM)
    elif boiler.least_flow is not None:
        yield from _alone_too_slow(look, boiler.name, needed)


def _alone_too_slow(look: Look, name: str, needed: float) -> Found:
    """The smallest zone calling alone, at the flow its circulator settles at."""
    design, zones = look.design, dict.fromkeys(each.zone for each in look.design.circuits.circuits.values())
    if len(zones) < 2:
        return
    least = {
        zone: sum(float(each.flow) for each in design.circuits.circuits.values() if each.zone == zone)
        for zone in zones
        if zone
    }
    zone = min(least, key=lambda each: least[each])
    flows = state_flows(design.job, design.emitters, design.circuits, frozenset((zone,)))
    flow = sum(map(float, flows.circulators.values()))
    if flows.solved and 0 < flow < needed * (1 - JUST):
        found = look.found(
            f"zones/{zone}",
            f"With {design.job.system.zones[zone].name} calling alone {look.say(flow, d.VOLUME_FLOW)} passes "
            f"{name}; it needs {look.say(needed, d.VOLUME_FLOW)}.",
        )
        yield cautioned(found, STEAM)

"""Findings on pressure: fill, tank and relief valve."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.plant_look import (
    BOILER,
    BURST,
    SCALD,
    TANK,
    boiler_of,
    cautioned,
    plant_of,
    room_of,
)

Found = Iterator[Finding | NotChecked]
JUST = 1.0
"""A pascal: less is no difference on any gauge."""
ROOM = 1.02
FILL = "plant/fill"


def _filled_to(look: Look, pressure: float, to: int = 0) -> tuple[dict[str, object], ...]:
    """Changes that fill to a pressure, the tank charged to the same; rounded up with ``to`` 1."""
    text = look.text(pressure, d.PRESSURE, to=to)
    changes = [dict(set_to(FILL, text))]
    if plant_of(look).tank is not None:
        changes.append(dict(set_to(f"{TANK}/precharge", text)))
    return tuple(changes)


@finding(
    "top-of-house-dry",
    Weight.MUST_FIX,
    cite("FILL-JMP", "margin over the height", SEEN),
    fires="Filled cold, less than {0} is left at the highest pipe.",
    why="12 psi is used up at 27.7 ft (8.4 m), with nothing left to vent",
    mend="Fill to the height and its margin, and charge the tank to the same.",
    limits=(Limit("top-of-house-dry", "4 psi", d.PRESSURE, "pressure at the highest pipe"),),
)
def _top_of_house_dry(look: Look) -> Found:
    room, plant = room_of(look), plant_of(look)
    if boiler_of(look) is None and plant.fill is None:
        return
    if isnan(room.top_cold):
        yield look.wants(FILL, room.top_cold)
    elif float(room.top_cold) < look.limit - JUST:
        yield look.found(
            FILL,
            f"{look.say(room.fill_pressure)} at the gauge leaves {look.say(room.top_cold)} at the highest "
            "pipe; air will gather there.",
            room.top_cold,
            (
                Mend(
                    f"Fill to {look.say(room.needed_fill)}, and charge the tank to the same.",
                    _filled_to(look, float(room.needed_fill), 1),
                ),
            ),
        )


@finding(
    "fill-near-relief",
    Weight.DECIDE,
    cite("", "room for water to grow", JUDGMENT),
    fires="Less than {0} of any tank can fill between the fill pressure and the highest pressure at it; must "
    "fix where the fill is as high as that.",
    why="the higher the fill under the same valve, the larger the tank for the same water",
    mend="Fill no higher than the height asks, or take parts and a valve of a higher rating.",
    limits=(Limit("fill-near-relief", "15 %", d.RATIO, "acceptance factor"),),
)
def _fill_near_relief(look: Look) -> Found:
    room = room_of(look)
    if boiler_of(look) is None:
        return
    if isnan(room.acceptance_factor):
        yield look.wants(FILL, room.acceptance_factor)
    elif float(room.acceptance_factor) < look.limit - 1e-9:
        lower = float(room.needed_fill)
        factor = (float(room.highest_pressure) - lower) / (
            float(room.highest_pressure) + float(look.house.losses.site.pressure)
        )
        over = float(room.fill_pressure) >= float(room.highest_pressure)
        opens = " Do not fill to it: the valve would open. Look at the height that was typed." if over else ""
        mends = [Mend("Take parts and a relief valve of a higher rating, as their makers allow.")]
        if factor > look.limit * ROOM and lower < float(room.fill_pressure):
            words = f"Fill to {look.say(room.needed_fill)}, which the height asks for."
            mends.insert(0, Mend(words, _filled_to(look, lower, 1)))
        yield look.found(
            FILL,
            f"Filled to {look.say(room.fill_pressure)} under a valve of {look.say(room.relief_pressure)}, "
            "only "
            f"{look.say(max(float(room.acceptance_factor), 0.0), d.RATIO)} of a tank takes water.{opens}",
            room.acceptance_factor,
            tuple(mends),
            Weight.MUST_FIX if opens else None,
        )


@finding(
    "expansion-tank-small",
    Weight.MUST_FIX,
    cite("ASHRAE-TANK", "equation 14, diaphragm tank", SEEN),
    fires="The tank is smaller than {0} of the volume needed, or accepts less than the water that expands.",
    why="water from 40 to 180 °F (4 to 82 °C) grows by 3.0 %",
    mend="Take a tank of the size needed, or make the hottest water less hot.",
    limits=(Limit("expansion-tank-small", "100 %", d.RATIO, "tank against the size needed"),),
)
def _expansion_tank_small(look: Look) -> Found:
    room, tank = room_of(look), plant_of(look).tank
    if tank is None or (tank.volume is None and tank.acceptance is None):
        if boiler_of(look) is not None:
            yield look.wants(TANK, words="volume of the tank")
        return
    if isnan(room.tank_volume) or isnan(room.expanded):
        yield look.wants(TANK, room.tank_volume, room.expanded)
        return
    small = tank.volume is not None and float(tank.volume) < look.limit * float(room.tank_volume) * (1 - 1e-9)
    full = tank.acceptance is not None and float(tank.acceptance) < look.limit * float(room.expanded) * (
        1 - 1e-9
    )
    if not small and not full:
        return
    changes = []
    if small:
        text = look.text(float(room.tank_volume), d.WATER_VOLUME, to=1)
        changes.append(set_to(f"{TANK}/volume", text))
    if full:
        text = look.text(float(room.expanded), d.WATER_VOLUME, 3, to=1)
        changes.append(set_to(f"{TANK}/acceptance", text))
    takes = tank.acceptance if full and tank.acceptance is not None else tank.volume
    needs = room.expanded if full and not small else room.tank_volume
    assert takes is not None
    found = look.found(
        TANK,
        f"Water grows by {look.say(room.expanded)} on its way to {look.say(room.hottest)}; "
        f"{look.say(needs)} of {'acceptance' if needs is room.expanded else 'tank'} is needed and "
        f"{look.say(takes)} is there, and the relief valve takes the rest.",
        room.expanded,
        (
            Mend(f"Take a tank of {look.say(room.tank_volume)} or more.", tuple(changes)),
            Mend("Make the hottest water less hot, where the emitters allow."),
        ),
    )
    yield cautioned(found, SCALD)


@finding(
    "tank-charge-wrong",
    Weight.MUST_FIX,
    cite("FILL-AX", "the tank is charged to the fill", SEEN),
    fires="The precharge of the tank differs from the cold fill pressure by more than {0}.",
    why="charged to 12 and filled to 20 psi (83 and 138 kPa), a tank of 4.4 gal (17 L) takes 0.4 instead "
    "of 1.4 gal (1.5 instead of 5.3 L) to 25 psi (172 kPa)",
    mend="Pump it to the fill pressure with its water side open.",
    limits=(Limit("tank-charge-wrong", "1 psi", d.PRESSURE, "charge against fill"),),
)
def _tank_charge_wrong(look: Look) -> Found:
    room, tank = room_of(look), plant_of(look).tank
    if tank is None or tank.precharge is None:
        return
    if isnan(room.fill_pressure) or isnan(tank.precharge):
        yield look.wants(f"{TANK}/precharge", room.fill_pressure, tank.precharge)
    elif abs(float(tank.precharge) - float(room.fill_pressure)) > look.limit + JUST:
        text = look.text(float(room.fill_pressure), d.PRESSURE)
        yield look.found(
            f"{TANK}/precharge",
            f"The air of the tank is set to {look.say(tank.precharge)} for a fill of "
            f"{look.say(room.fill_pressure)}; part of its room is gone before the first fire.",
            room.fill_pressure,
            (
                Mend(
                    f"Pump it to {look.say(room.fill_pressure)} with its water side open.",
                    (set_to(f"{TANK}/precharge", text),),
                ),
            ),
        )


@finding(
    "hot-pressure-near-relief",
    Weight.MUST_FIX,
    cite("PRV-DIAG", "hot gauge readings", SEEN),
    fires="Hot, the gauge stands less than {0} below the setting of the relief valve.",
    why="12 psi cold is 18 to 22 psi hot in a sound system (83 and 124 to 152 kPa)",
    mend="Take a larger tank, or fill lower where the height allows.",
    limits=(Limit("hot-pressure-near-relief", "5 psi", d.PRESSURE, "room below the relief valve"),),
    settled_by_words=False,
)
def _hot_pressure_near_relief(look: Look) -> Found:
    room, tank = room_of(look), plant_of(look).tank
    if tank is None or tank.volume is None:
        return
    if isnan(room.hot_pressure) or isnan(room.tank_volume):
        yield look.wants(TANK, room.hot_pressure, room.tank_volume)
    elif float(room.hot_pressure) > float(room.relief_pressure) - look.limit + JUST:
        needed = max(float(room.tank_volume), float(tank.volume))
        larger = look.text(needed, d.WATER_VOLUME, to=1)
        charge = look.text(float(room.fill_pressure), d.PRESSURE)
        changes = (set_to(f"{TANK}/volume", larger), set_to(f"{TANK}/precharge", charge))
        larger_tank = Mend(f"Take a tank of {larger} charged to {charge}.", changes)
        hot = min(float(room.hot_pressure), float(room.relief_pressure))
        beyond = "over" if float(room.hot_pressure) >= float(room.relief_pressure) else "at"
        found = look.found(
            TANK,
            f"Hot, the system stands {beyond} {look.say(hot, d.PRESSURE)} under a valve of "
            f"{look.say(room.relief_pressure)}; it will weep.",
            room.hot_pressure,
            (
                *((larger_tank,) if needed < float(room.water_volume) else ()),
                Mend("Fill lower, where the height of the house allows."),
            ),
        )
        yield cautioned(found, SCALD)


@finding(
    "relief-too-small",
    Weight.MUST_FIX,
    cite("NY-4-5.3", "capacity of safety valves", SEEN),
    fires="The relief valve passes less than {0} of what the boiler can make, or its capacity is not shown.",
    why="a valve passes 1 lb of steam an hour for each 1,000 Btu/h (1.55 kg/h for each kW)",
    mend="Take a valve that passes the whole output, or two.",
    limits=(Limit("relief-too-small", "100 %", d.RATIO, "capacity against output"),),
    settled_by_words=False,
)
def _relief_too_small(look: Look) -> Found:
    boiler, needed = boiler_of(look), room_of(look).relief_needed
    if boiler is None:
        return
    has = boiler.relief_capacity
    if isnan(needed):
        yield look.wants(f"{BOILER}/relief_capacity", needed)
        return
    if has is not None and not float(has) < look.limit * float(needed) * (1 - 1e-9):
        return
    passes = "is not shown" if has is None else f"is {look.say(has)}"
    text = look.text(float(needed) * max(look.limit, 1), d.HEAT_RATE, to=1)
    found = look.found(
        f"{BOILER}/relief_capacity",
        f"What the relief valve of {boiler.name} passes {passes}; the boiler can make {look.say(needed)}.",
        needed,
        (
            Mend(
                f"Take a valve stamped for {look.say(needed)} or more.",
                (set_to(f"{BOILER}/relief_capacity", text),),
            ),
        ),
    )
    yield cautioned(found, BURST)


@finding(
    "relief-set-too-high",
    Weight.MUST_FIX,
    cite("IMC-1006", "setting of relief valves", SEEN),
    fires="The relief valve opens more than {0} above the pressure that the boiler allows, or its setting is "
    "not shown.",
    why="30 psi (207 kPa) is usual on a house boiler",
    mend="Take a valve set no higher than the weakest part allows.",
    limits=(Limit("relief-set-too-high", "0 psi", d.PRESSURE, "setting over the pressure allowed"),),
    settled_by_words=False,
)
def _relief_set_too_high(look: Look) -> Found:
    boiler = boiler_of(look)
    if boiler is None:
        return
    where, setting, allowed = f"{BOILER}/relief", boiler.relief, boiler.highest_pressure
    if setting is None:
        text = look.text(float(room_of(look).relief_pressure if allowed is None else allowed), d.PRESSURE)
        found = look.found(
            where,
            f"The setting of the relief valve of {boiler.name} is not shown.",
            room_of(look).relief_pressure,
            (Mend(f"Show the valve, set to {text} or as its maker says.", (set_to(where, text),)),),
        )
        yield cautioned(found, BURST)
    elif allowed is None:
        yield look.wants(where, words="highest pressure allowed of the boiler")
    elif float(setting) > float(allowed) + look.limit + JUST:
        found = look.found(
            where,
            f"The relief valve opens at {look.say(setting)}; {boiler.name} is good for {look.say(allowed)}.",
            allowed,
            (
                Mend(
                    f"Take a valve set to {look.say(allowed)}.",
                    (set_to(where, look.text(float(allowed), d.PRESSURE)),),
                ),
            ),
        )
        yield cautioned(found, BURST)

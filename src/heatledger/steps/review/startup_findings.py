"""Findings on readings of water and pressure at startup, held to their targets."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, PRACTICE, SEEN, cite
from heatledger.steps.may_run import is_filled
from heatledger.steps.review.control_findings import with_caution
from heatledger.steps.review.kinds import Limit, Look, finding

Found = Iterator[Finding | NotChecked]
SAME = 1e-6
BURST = "Pressure throws fittings: stand clear, test with water, relief on the test rig."
SCALD = "The relief valve discharges scalding water and steam."
DRY = "A boiler that is shut off from its feed and unguarded can fire dry."


@finding(
    "test-pressure-low",
    Weight.MUST_FIX,
    cite("IRC-554", "water test of piping", SEEN),
    fires="The piping was tested below the larger of 1.5 times the highest pressure and 100 psi (690 kPa).",
    why="a joint that is going to fail should fail while it is in sight",
    mend="Test again before anything is covered.",
    settled_by_words=False,
)
def _test_pressure_low(look: Look) -> Found:
    read, due = look.house.job.system.readings.test_pressure, look.design.startup.startup.test_pressure
    if read is None:
        return
    if isnan(due):
        yield look.wants("readings/test_pressure", due)
    elif float(read) < float(due) * (1 - SAME):
        yield with_caution(
            look.found(
                "readings/test_pressure",
                f"The piping was tested at {look.say(read)}; {look.say(due)} was due for fifteen minutes.",
                due,
            ),
            BURST,
        )


@finding(
    "tank-charge-unread",
    Weight.MUST_FIX,
    cite("FILL-AX", "precharge is read with the water side open", SEEN),
    fires="The system was filled and the charge of its tank was not read, or is more than {0} off.",
    why="read on a full system it only repeats the pressure of the water",
    mend="Shut the tank off, drain it, set its air and write it down.",
    limits=(Limit("tank-charge-unread", "0.5 psi", d.PRESSURE, "charge off its target", "read there"),),
)
def _tank_charge(look: Look) -> Found:
    system, due = look.house.job.system, look.design.boiler_room.plant.precharge_pressure
    read = system.readings
    if system.plant.tank is None or due is None:
        return
    if read.precharge is None and not is_filled(read):
        return
    if read.precharge is None:
        asked = "" if isnan(due) else f"; {look.say(due)} is due"
        yield look.found("readings/precharge", f"No reading of the tank's charge is on file{asked}.")
    elif isnan(due):
        yield look.wants("readings/precharge", due)
    elif abs(float(read.precharge) - float(due)) > look.limit * (1 + SAME):
        yield look.found(
            "readings/precharge",
            f"The tank's charge reads {look.say(read.precharge)} where {look.say(due)} is due.",
            due,
        )


@finding(
    "cold-gauge-off",
    Weight.NOTE,
    cite("FILL-HH", "fill pressure by the height of the house", SEEN),
    fires="The cold gauge is more than {0} off the fill pressure; below it, this must be fixed.",
    why="the top of the house needs pressure to hold its water and let air out",
    mend="Set the feed valve, and the tank to match.",
    limits=(Limit("cold-gauge-off", "1 psi", d.PRESSURE, "cold gauge off the fill"),),
)
def _cold_gauge(look: Look) -> Found:
    read, due = look.house.job.system.readings.cold_pressure, look.design.startup.startup.cold_pressure
    if read is None:
        return
    if isnan(due):
        yield look.wants("readings/cold_pressure", due)
    elif abs(off := float(read) - float(due)) > look.limit * (1 + SAME):
        yield look.found(
            "readings/cold_pressure",
            f"The gauge stands at {look.say(read)} cold; {look.say(due)} was to be filled.",
            due,
            weight=Weight.MUST_FIX if off < 0 else Weight.NOTE,
        )


@finding(
    "hot-gauge-high",
    Weight.MUST_FIX,
    cite("PRV-DIAG", "hot gauge readings and dripping relief valves", SEEN),
    fires="The hot gauge comes within {0} of the relief valve's setting.",
    why="a tank that does its work keeps the hot pressure well below the valve",
    mend="Look at the tank's charge, then at the tank, then at a feed valve that creeps.",
    limits=(Limit("hot-gauge-high", "5 psi", d.PRESSURE, "hot pressure below relief", "common practice"),),
    settled_by_words=False,
)
def _hot_gauge(look: Look) -> Found:
    plant, read = look.design.boiler_room.plant, look.house.job.system.readings
    boiler, hot = look.house.job.system.plant.boiler, read.hot_pressure
    if hot is None:
        return
    own = boiler.relief if boiler is not None and boiler.relief is not None else plant.relief_pressure
    if isnan(own):
        yield look.wants("readings/hot_pressure", own)
    elif float(hot) > float(own) - look.limit + SAME * look.limit:
        worked_out = not isnan(plant.hot_pressure)
        due = f"; {look.say(plant.hot_pressure)} was worked out" if worked_out else ""
        cold = f" from {look.say(read.cold_pressure)}" if read.cold_pressure is not None else ""
        yield with_caution(
            look.found(
                "readings/hot_pressure",
                f"The gauge climbs{cold} to {look.say(hot)}, near the relief valve at {look.say(own)}{due}.",
                own if isnan(plant.hot_pressure) else plant.hot_pressure,
            ),
            SCALD,
        )


@finding(
    "drop-measured-off",
    Weight.DECIDE,
    cite("", "drops in steady weather and water", JUDGMENT),
    fires="The drop that was read is off by more than {0} and by more than {1}: below that of settled water, "
    "or above that of full fire.",
    why="heat over drop is flow: a drop that is off says that the flow is",
    mend="Look at the circulator's speed, then for dirt, air and a closed valve.",
    limits=(
        Limit("drop-measured-off", "20 %", d.RATIO, "drop off its target"),
        Limit("drop-measured-off-degrees", "5 °F", d.TEMPERATURE_DIFFERENCE, "drop off its target"),
    ),
)
def _drop_off(look: Look) -> Found:
    found = look.design.startup.startup
    read, due = found.compared.drop, found.compared.drop_due
    if read is None or due is None:
        return
    if isnan(due):
        yield look.wants("readings/return", due)
        return
    if found.fire_drop is not None and float(found.settled_drop) < float(read) < float(found.fire_drop):
        return  # the water warms, or the burner comes and goes: any drop between the two fits
    off = abs(float(read) - float(due))
    if off > look.limit * float(due) * (1 + SAME) and off > look.limit_at(1) * (1 + SAME):
        state = "at full fire" if found.compared.warming else "once the water has settled"
        yield look.found(
            "readings/return",
            f"The water drops by {look.say(read)} where {look.say(due)} is due {state}.",
            due,
        )


@finding(
    "flow-measured-off",
    Weight.DECIDE,
    cite("", "balancing of flows", PRACTICE),
    fires="The flow that was read is off its target by more than {0}.",
    why="half the flow still gives most of the heat, so set it from the worst circuit",
    mend="Balance from the hardest circuit on, then look at the circulator again.",
    limits=(Limit("flow-measured-off", "10 %", d.RATIO, "flow off its target", "common practice"),),
)
def _flow_off(look: Look) -> Found:
    read, due = look.house.job.system.readings.flow, look.design.startup.startup.flow
    if read is None:
        return
    if isnan(due):
        yield look.wants("readings/flow", due)
    elif abs(float(read) - float(due)) > look.limit * float(due) * (1 + SAME):
        yield look.found(
            "readings/flow", f"The meter reads {look.say(read)}; {look.say(due)} is due in this state.", due
        )


@finding(
    "supply-off-the-curve",
    Weight.DECIDE,
    cite("SWS-531044", "tuning of outdoor reset", SEEN),
    fires="The supply that was read is more than {0} off what the control is to ask for in this weather.",
    why="sensor, curve or mixing valve is not what it should be",
    mend="Compare the sensor with a thermometer, then put the curve in again.",
    limits=(Limit("supply-off-the-curve", "3 °F", d.TEMPERATURE_DIFFERENCE, "supply off the table"),),
)
def _supply_off(look: Look) -> Found:
    read, found = look.house.job.system.readings, look.design.startup.startup
    if read.supply is None or read.outdoor is None:
        return
    if look.house.job.system.controls.outdoor_reset is None:
        yield look.wants("readings/supply", words="whether the supply follows the weather")
        return
    if isnan(found.supply_due):
        yield look.wants("readings/supply", found.supply_due)
    elif abs(float(read.supply) - float(found.supply_due)) > look.limit + SAME:
        yield look.found(
            "readings/supply",
            f"At {look.say(read.outdoor)} outdoors {look.say(found.supply_due)} is due, and the pipe has "
            f"{look.say(read.supply)}.",
            found.supply_due,
        )


@finding(
    "feed-valve-left-to-chance",
    Weight.DECIDE,
    cite("HH-FILL", "feed valve open or shut", SEEN),
    fires="The system was filled, and nobody has decided whether its water feed stays open or shut.",
    why="open, it feeds a leak without end; shut, vented air lowers the pressure until the top stops",
    mend="Decide it in the job, with a reason and a name, and write it at the valve.",
)
def _feed_valve(look: Look) -> Found:
    system = look.house.job.system
    if system.plant.boiler is None or system.readings.cold_pressure is None:
        return
    yield with_caution(
        look.found(
            "plant",
            "Nobody has said whether the water feed stays open or shut; each way has its own trouble.",
            "",
            (
                Mend(
                    "Open under watch for some weeks, then shut and tagged, with a proved low-water cutoff."
                ),
                Mend("Open, with a meter and a leak alarm."),
            ),
        ),
        DRY,
    )

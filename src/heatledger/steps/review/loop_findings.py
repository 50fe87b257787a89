"""Findings on water that passes emitters: loops, drops, and flows that are too small."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from heatledger.job.system_model import FIN_TUBE, IRON_BASEBOARD, IRON_RADIATOR
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, MEMORY, PRACTICE, SEEN, cite
from heatledger.physics.emitters import least_flow_of_element
from heatledger.steps.review.emitter_look import (
    SAME,
    each_emitter,
    each_loop,
    known,
    length_to,
    passed_at,
    share_of,
)
from heatledger.steps.review.kinds import Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
HEAVY = (IRON_RADIATOR, IRON_BASEBOARD)


@finding(
    "loop-drop-large",
    Weight.DECIDE,
    cite("", "drop of a series loop", PRACTICE),
    fires="Water falls by more than {0} round a series loop at the flow that results; above {1} the loop "
    "must be mended.",
    why="the last rooms live on what the others leave",
    mend="Split the loop, move more water where its speed allows, or size the tail for cool water.",
    limits=(
        Limit("loop-drop-large", "20 °F", d.TEMPERATURE_DIFFERENCE, "drop round the loop"),
        Limit("loop-drop-far-too-large", "40 °F", d.TEMPERATURE_DIFFERENCE, "drop to be mended"),
    ),
)
def _loop_drop_large(look: Look) -> Found:
    for circuit, passed in each_loop(look):
        found = look.design.circuits.circuits.get(circuit.id)
        actual = None if found is None else found.actual_drop
        at_design = float(passed[0].inlet) - float(passed[-1].outlet)
        drop = float(actual) if actual is not None and known(actual) else at_design
        if not known(drop):
            yield look.wants(f"circuits/{circuit.id}", passed[-1].outlet)
        elif drop > look.limit + SAME:
            changes: tuple[Mapping[str, Any], ...] = ()
            if drop == at_design and circuit.flow is None:
                changes = (_drop_of(look, circuit.id, 0.8 * look.limit / drop),)
            yield look.found(
                f"circuits/{circuit.id}",
                f"Water falls by {look.say(drop, d.TEMPERATURE_DIFFERENCE)} round {circuit.name}; the last "
                f"room lives on {look.say(float(passed[0].inlet) - drop, d.TEMPERATURE)}.",
                actual if actual is not None and known(actual) else passed[-1].outlet,
                (
                    Mend("Move more water, if its speed allows.", changes),
                    Mend("Split the loop in two, or size its tail for cool water."),
                ),
                Weight.MUST_FIX if drop > look.limit_at(1) + SAME else None,
            )


def _drop_of(look: Look, circuit: str, factor: float) -> Mapping[str, Any]:
    """A change that gives a circuit a part of its design drop; the drop of all where it stands in none."""
    system = look.house.job.system
    own = system.circuits[circuit].drop if circuit else None
    drop = float(look.design.emitters.house.drop if own is None else own) * factor
    path = f"circuits/{circuit}/drop" if circuit else "plant/drop"
    return set_to(path, look.text(drop, d.TEMPERATURE_DIFFERENCE, 1))


@finding(
    "first-of-loop-takes-all",
    Weight.DECIDE,
    cite("DX-LOOP", "an owner's diary of a badly laid loop", SEEN),
    fires="The first emitter of a series loop gives more than {0} of its load, and the last less than {1}.",
    why="what the first takes, the last does not get",
    mend="Cut the first to its load, turn the loop around, or split it.",
    limits=(
        Limit("first-of-loop-takes-all", "150 %", d.RATIO, "first of a loop, output over load"),
        Limit("last-of-loop-goes-short", "100 %", d.RATIO, "last of a loop, output over load"),
    ),
)
def _first_of_loop_takes_all(look: Look) -> Found:
    for circuit, passed in each_loop(look):
        first, last = share_of(passed[0]), share_of(passed[-1])
        if len(passed) < 2 or not known(first, last):
            continue
        if first > look.limit + SAME and last < look.limit_at(1) - SAME:
            id = next(iter(circuit.runs))
            needed = passed[0].needed_length
            changes = length_to(look, id, needed) if needed is not None and known(needed) else ()
            yield look.found(
                f"circuits/{circuit.id}",
                f"{passed[0].name} takes {look.say(first, d.RATIO)} of its load, and {passed[-1].name} gets "
                f"{look.say(last, d.RATIO)} of what is left to do.",
                passed[-1].output,
                (Mend("Cut the first to its load.", changes), Mend("Turn the loop around, or split it.")),
            )


@finding(
    "radiator-starved",
    Weight.NOTE,
    cite("DZI-2021", "outputs of radiators at low flow", SEEN),
    fires="Water leaves an emitter less than {0} as far above the room as it came in, or, where its rating "
    "names a flow, it gets less than {1} of that. The flow that results counts where it is known.",
    why="measured outputs strayed by up to 22 % at low flow",
    mend="Open the balancing valve or take a smaller drop; or accept it and measure.",
    limits=(
        Limit("radiator-starved", "50 %", d.RATIO, "outlet over inlet, above the room"),
        Limit("radiator-flow-small", "30 %", d.RATIO, "flow over that of the rating"),
    ),
)
def _radiator_starved(look: Look) -> Found:
    really = passed_at(look)
    for id, emitter, found in each_emitter(look):
        flow, water = really.get(id, (found.flow, found))
        if not known(water.inlet, water.outlet, flow) or float(flow) <= 0:
            continue
        air = float(look.house.job.rooms[emitter.room].indoor)
        above = float(water.inlet) - air
        left = (float(water.outlet) - air) / above if above > 0 else 1.0
        rated = emitter.rated_flow
        part = 1.0 if rated is None or not known(rated) else float(flow) / float(rated)
        if left < look.limit - SAME:
            said = f"runs so slowly that water leaves it at {look.say(water.outlet)}"
        elif rated is not None and part < look.limit_at(1) - SAME:
            said = f"gets {look.say(flow)}, {look.say(part, d.RATIO)} of the {look.say(rated)} it is rated at"
        else:
            continue
        # The drop of the design changes nothing where the circulator's curve says what flows.
        changes: tuple[Mapping[str, Any], ...] = ()
        if id not in really:
            factor = min(1.0, 0.6 * (1 - look.limit) / max(1 - left, SAME), 0.95 * part / look.limit_at(1))
            changes = _smaller_drop(look, id, factor)
        yield look.found(
            f"emitters/{id}",
            f"{emitter.name} {said}; ratings are not good there.",
            water.outlet if left < look.limit - SAME else flow,
            (
                Mend(
                    "Take a smaller drop." if changes else "Give it more water: valves, tube, circulator.",
                    changes,
                ),
                Mend("Accept it, and measure what it gives."),
            ),
        )


def _smaller_drop(look: Look, id: str, factor: float) -> tuple[Mapping[str, Any], ...]:
    for circuit in look.house.job.system.circuits.values():
        if id in circuit.runs:
            return () if circuit.flow is not None else (_drop_of(look, circuit.id, factor),)
    return (_drop_of(look, "", factor),)


@finding(
    "baseboard-flow-smooth",
    Weight.NOTE,
    cite("", "film inside a finned tube at low flow", JUDGMENT),
    fires="The flow through a fin-tube baseboard is less than {0} of the one at which water still swirls.",
    why="smooth flow gives 4 to 80 % less heat than the flow factor says, which is held there",
    mend="Move more water through it, or size it on the low side.",
    limits=(Limit("baseboard-flow-smooth", "100 %", d.RATIO, "flow over the least"),),
)
def _baseboard_flow_smooth(look: Look) -> Found:
    viscosity = look.design.emitters.house.viscosity
    for id, emitter, found in each_emitter(look):
        if emitter.kind != FIN_TUBE or not known(found.flow, viscosity) or float(found.flow) <= 0:
            continue
        least = float(least_flow_of_element(viscosity=viscosity))
        if float(found.flow) < look.limit * least - SAME * least:
            factor = 0.95 * float(found.flow) / (look.limit * least)
            yield look.found(
                f"emitters/{id}",
                f"Only {look.say(found.flow)} runs through {emitter.name}; under "
                f"{look.say(least, d.VOLUME_FLOW)} it flows smoothly and gives less than its table says.",
                found.flow,
                (
                    Mend("Take a smaller drop.", _smaller_drop(look, id, factor)),
                    Mend("Put it in a loop with others, or size it on the low side."),
                ),
            )


@finding(
    "four-gpm-column",
    Weight.NOTE,
    cite("IBR", "notes on the 1 and 4 gpm columns", MEMORY),
    fires="An emitter is rated at a flow of {0} or more, and less than that runs through it.",
    why="the 1 and 4 gpm (0.06 and 0.25 L/s) columns of a rating differ by 5.7 %; the flow factor takes "
    "it off here",
    mend="Take the rating of the 1 gpm (0.06 L/s) column.",
    limits=(Limit("four-gpm-column", "4 gpm", d.VOLUME_FLOW, "flow of the rating"),),
)
def _four_gpm_column(look: Look) -> Found:
    for id, emitter, found in each_emitter(look):
        rated = emitter.rated_flow
        if rated is None or not known(rated, found.flow) or float(rated) < look.limit * (1 - SAME):
            continue
        if float(found.flow) < float(rated) * (1 - SAME):
            yield look.found(
                f"emitters/{id}",
                f"The rating of {emitter.name} is for {look.say(rated)}; {look.say(found.flow)} runs through "
                f"it, which gives {look.say(found.flow_factor)} of it.",
                found.flow_factor,
            )


@finding(
    "iron-and-fin-on-one-stat",
    Weight.DECIDE,
    cite("IRON-MIX", "steel and cast iron in one zone", SEEN),
    fires="Cast iron and light emitters stand in one zone.",
    why="iron gives its heat over most of an hour, fin tube and panels in minutes",
    mend="Make them zones of their own, or run the pump all the time on water that follows the weather.",
)
def _iron_and_fin_on_one_stat(look: Look) -> Found:
    system = look.house.job.system
    for id, zone in system.zones.items():
        ids = [each for circuit in system.circuits.values() if circuit.zone == id for each in circuit.runs]
        here = [system.emitters[each] for each in ids if each in system.emitters]
        heavy = [each for each in here if each.kind in HEAVY]
        light = [each for each in here if each.kind not in HEAVY]
        if heavy and light:
            yield look.found(
                f"zones/{id}",
                f"{zone.name} mixes {heavy[0].name} with {light[0].name}; the light ones go cold while the "
                "heavy ones still give.",
            )

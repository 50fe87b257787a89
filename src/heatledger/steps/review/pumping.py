"""Findings on circulators: what they give against what is asked, and what happens as zones come and go."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.formulas import formula_of
from heatledger.ledger.sources import PRACTICE, SEEN, cite
from heatledger.physics.friction import pressure_of_head
from heatledger.physics.pumps import pump_head
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.piping_look import circuits_of, duties_of

Found = Iterator[Finding | NotChecked]
JUST = 1e-9
_PUMP, _PRESSURE = formula_of(pump_head).body, formula_of(pressure_of_head).body
TANK = "plant/tank"


def _at(id: str) -> str:
    return f"plant/circulators/{id}"


@finding(
    "longest-run-starved",
    Weight.DECIDE,
    cite("", "flow of the circuit that is farthest", PRACTICE),
    fires="With all zones calling a circuit gets less than {0} of its flow; below {1} it must be fixed.",
    why="the circulator is spent on the rest of the piping",
    mend="Enlarge the piping that costs most, take a larger circulator, or a wider drop and larger emitters.",
    limits=(
        Limit("longest-run-starved", "90 %", d.RATIO, "flow of a circuit"),
        Limit("longest-run-far-starved", "75 %", d.RATIO, "flow that must be fixed"),
    ),
)
def _longest_run_starved(look: Look) -> Found:
    for id, circuit in circuits_of(look).items():
        got = circuit.actual_flow
        if got is None:
            continue
        if isnan(got) or isnan(circuit.flow):
            yield look.wants(f"circuits/{id}", got, circuit.flow)
        elif float(got) < look.limit * float(circuit.flow) * (1 - JUST):
            pump = look.house.job.system.plant.circulators[circuit.circulator]
            yield look.found(
                f"circuits/{id}",
                f"{circuit.name} gets {look.say(got)} of {look.say(circuit.flow)} from {pump.name}.",
                got,
                weight=Weight.MUST_FIX
                if float(got) < look.limit_at(1) * float(circuit.flow)
                else Weight.DECIDE,
            )


@finding(
    "pump-too-big",
    Weight.DECIDE,
    cite("", "heat follows flow weakly, power follows head and flow", PRACTICE),
    fires="With all zones calling a circulator moves more than {0} of its design flow, or gives more than "
    "{1} of the head needed at that flow.",
    why="heat follows flow only weakly, power follows head and flow",
    mend="Run it at a lower speed, or take a smaller one.",
    limits=(
        Limit("pump-too-big", "130 %", d.RATIO, "flow"),
        Limit("pump-head-too-big", "130 %", d.RATIO, "head at the design flow"),
    ),
)
def _pump_too_big(look: Look) -> Found:
    for id, duty in duties_of(look).items():
        got, need = duty.actual_flow, duty.needed_flow
        if got is None or isnan(got) or isnan(need) or isnan(duty.needed_head):
            yield look.wants(_at(id), got, need, duty.needed_head)
            continue
        given = _head_at(look, id, float(need))
        over = given > look.limit_at(1) * float(duty.needed_head) * (1 + JUST)
        if float(got) > look.limit * float(need) * (1 + JUST) or over:
            yield look.found(
                _at(id),
                f"{duty.name} moves {look.say(got)} where {look.say(need)} will do; at that flow it gives "
                f"{look.say(given, d.HEAD)} for {look.say(duty.needed_head)}.",
                got,
                (Mend("Run it at a lower speed, or take a smaller one."), Mend("Keep it, and say why.")),
            )


def _head_at(look: Look, id: str, flow: float) -> float:
    """Head of a circulator at a flow, as a plain number."""
    pump = look.house.job.system.plant.circulators[id]
    points = (pump.shutoff, pump.middle_head, pump.middle_flow, duties_of(look)[id].curve_exponent)
    return float(_PUMP(flow, *map(float, points)))


def _runout(look: Look, id: str) -> float:
    """Flow at which the curve of a circulator comes down to no head."""
    pump = look.house.job.system.plant.circulators[id]
    rise = float(pump.shutoff) / (float(pump.shutoff) - float(pump.middle_head))
    return float(float(pump.middle_flow) * rise ** (1 / float(duties_of(look)[id].curve_exponent)))


@finding(
    "pump-off-its-curve",
    Weight.DECIDE,
    cite("", "the ends of a curve are untrue", PRACTICE),
    fires="With all zones calling a circulator works beyond the last point of its curve, or at less than {0} "
    "or more than {1} of the flow at which its head is gone.",
    why="curves are untrue and motors noisy at their ends",
    mend="Take a circulator whose curve has this flow in its middle.",
    limits=(
        Limit("pump-at-shutoff", "10 %", d.RATIO, "least part of the runout"),
        Limit("pump-at-runout", "85 %", d.RATIO, "largest part of the runout"),
    ),
)
def _pump_off_its_curve(look: Look) -> Found:
    for id, duty in duties_of(look).items():
        got, head = duty.actual_flow, duty.actual_head
        if got is None or head is None or isnan(got):
            yield look.wants(_at(id), got)
            continue
        last = float(look.house.job.system.plant.circulators[id].high_flow)
        part = float(got) / _runout(look, id)
        inside = look.limit * (1 - JUST) <= part <= look.limit_at(1) * (1 + JUST)
        if float(got) > last * (1 + JUST) or not inside:
            yield look.found(
                _at(id),
                f"{duty.name} works at {look.say(got)} and {look.say(head)}, at the edge of its curve.",
                got,
            )


@finding(
    "pump-toward-tank",
    Weight.DECIDE,
    cite("IAPMO-RPA", "the tank is the point of no pressure change", SEEN),
    fires="The expansion tank joins on the discharge of the circulator. Where less than {0} is left at the "
    "highest pipe when it runs, it must be fixed.",
    why="the tank point never changes its pressure, so the head of the circulator comes off the suction side",
    mend="Move the tank to the suction of the circulator.",
    limits=(Limit("pump-toward-tank", "4 psi", d.PRESSURE, "pressure at the highest pipe"),),
)
def _pump_toward_tank(look: Look) -> Found:
    tank = look.house.job.system.plant.tank
    if tank is None or tank.placed != "pump discharge":
        return
    heads = [
        duty.needed_head if duty.actual_head is None or isnan(duty.actual_head) else duty.actual_head
        for duty in duties_of(look).values()
    ]
    to_suction = (set_to(f"{TANK}/placed", "pump suction"),)
    mends = (
        Mend("Move the tank to the suction of the circulator.", to_suction),
        Mend("Move the circulator to the other side of the tank."),
    )
    if not heads or any(map(isnan, heads)):
        words = "The circulator pushes toward its tank, so its head comes off the suction side."
        yield look.found(TANK, words, mends=mends)
        return
    density = look.design.emitters.house.density
    most = max(heads, key=float)
    lost = float(_PRESSURE(float(density), float(most)))
    top = float(look.design.boiler_room.plant.top_cold) - lost
    yield look.found(
        TANK,
        f"The circulator pushes toward its tank, so its {look.say(most)} comes off the suction side: "
        f"{look.say(lost, d.PRESSURE)} less there"
        + ("." if isnan(top) else f", {look.say(top, d.PRESSURE)} at the highest pipe."),
        most,
        mends,
        Weight.MUST_FIX if top < look.limit else Weight.DECIDE,
    )

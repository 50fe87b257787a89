"""Findings on what happens as zones come and go, and on circulators that share their way."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, NotChecked, Weight
from heatledger.ledger.formulas import formula_of
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.physics.friction import flow_total, pressure_of_head
from heatledger.steps.flows import Flows, state_flows
from heatledger.steps.networks import heads_of_plant
from heatledger.steps.review.kinds import Limit, Look, finding
from heatledger.steps.review.piping_look import circuits_of, duties_of
from heatledger.steps.rubbing import Water

Found = Iterator[Finding | NotChecked]
JUST = 1e-9
BOILER = "plant/boiler"
_PRESSURE = formula_of(pressure_of_head).body


def _alone(look: Look) -> Iterator[tuple[str, Flows]]:
    """Each zone that has a circuit, and the flows when it calls alone."""
    zones = dict.fromkeys(each.zone for each in circuits_of(look).values() if each.zone)
    if len(zones) < 2:
        return
    design = look.design
    for zone in zones:
        yield zone, state_flows(design.job, design.emitters, design.circuits, frozenset([zone]))


@finding(
    "one-zone-alone-fast",
    Weight.DECIDE,
    cite("PM-85221", "as the zone valve closes", SEEN),
    fires="With only one zone open, water moves faster than {0} in a tube of its circuit.",
    why="each valve that shuts leaves its head to the rest",
    mend="Take a circulator with a flat curve or one that holds its pressure.",
    limits=(Limit("one-zone-alone-fast", "4 ft/s", d.VELOCITY, "speed with one zone open"),),
)
def _one_zone_alone_fast(look: Look) -> Found:
    for zone, flows in _alone(look):
        worst: tuple[float, str] | None = None
        for id, flow in flows.circuits.items():
            found = circuits_of(look)[id]
            ways = [(flow, found.common)] if found.common.tube else []
            ways += [(flows.runs[key], run) for key, run in found.runs.items()]
            for own, piece in ways:
                speed = float(own) * float(piece.velocity) / float(piece.flow) if float(piece.flow) else 0.0
                if found.zone == zone and (worst is None or speed > worst[0]):
                    worst = speed, id
        if not flows.solved:
            yield look.wants(f"zones/{zone}", *flows.circuits.values())
        elif worst is not None and worst[0] > look.limit * (1 + JUST):
            speed, id = worst
            yield look.found(
                f"circuits/{id}",
                f"With only {look.house.job.system.zones[zone].name} open, {look.say(flows.circuits[id])} go "
                f"through {circuits_of(look)[id].name} at {look.say(speed, d.VELOCITY)}.",
                flows.circuits[id],
            )


@finding(
    "one-zone-starves-boiler",
    Weight.DECIDE,
    cite("PM-88051", "flow through compact boilers", SEEN),
    fires="With only one zone open, the flow is below the least the boiler allows.",
    why="a boiler that must have a flow gets that of whatever zone is open",
    mend="Give the boiler a circulator of its own behind closely spaced tees, or keep one circuit open.",
)
def _one_zone_starves_boiler(look: Look) -> Found:
    boiler = look.house.job.system.plant.boiler
    if boiler is None or boiler.least_flow is None:
        return
    for zone, flows in _alone(look):
        whole = sum(map(float, flows.circulators.values()))
        if not flows.solved:
            yield look.wants(f"zones/{zone}", *flows.circulators.values())
        elif whole < float(boiler.least_flow) * (1 - JUST):
            yield look.found(
                f"zones/{zone}",
                f"With only {look.house.job.system.zones[zone].name} open, {look.say(whole, d.VOLUME_FLOW)} "
                f"go through {boiler.name}; it must have {look.say(boiler.least_flow)}.",
                boiler.least_flow,
            )


@finding(
    "valve-closes-with-bang",
    Weight.DECIDE,
    cite("MP-BANG", "curve shape and valve noise", SEEN),
    fires="The head of the circulator at no flow is more than {0} across the last zone valve that shuts.",
    why="steep circulators give most head as the last valves shut",
    mend="Take a circulator with a flatter curve, or a valve that closes off against it.",
    limits=(Limit("valve-closes-with-bang", "5 psi", d.PRESSURE, "pressure a valve closes against"),),
)
def _valve_closes_with_bang(look: Look) -> Found:
    density = look.design.emitters.house.density
    for id in duties_of(look):
        pump = look.house.job.system.plant.circulators[id]
        valves = [
            each.name
            for each in circuits_of(look).values()
            if each.circulator == id and each.common.valve is not None
        ]
        if not valves:
            continue
        against = float(_PRESSURE(float(density), float(pump.shutoff)))
        if isnan(against):
            yield look.wants(f"plant/circulators/{id}", density, pump.shutoff)
        elif against > look.limit * (1 + JUST):
            yield look.found(
                f"plant/circulators/{id}",
                f"The last zone valve must close against {look.say(against, d.PRESSURE)} of {pump.name}; it "
                "will bang or leak by.",
                pump.shutoff,
            )


@finding(
    "pumps-in-duel",
    Weight.MUST_FIX,
    cite("PM-DUEL", "large and small circulators on one way", SEEN),
    fires="Circulators that run together share mains and a boiler that take, at the flow that results, more "
    "than {0} of the head of the smallest. It must be fixed where a circuit then gets less than {1} of its "
    "design flow.",
    why="a large circulator and a tight boiler starve the small zones",
    mend="Enlarge what they share, separate them with closely spaced tees, or take matched circulators.",
    limits=(
        Limit("pumps-share-head", "30 %", d.RATIO, "shared head over that of the smallest"),
        Limit("pumps-in-duel", "80 %", d.RATIO, "flow of a circuit"),
    ),
)
def _pumps_in_duel(look: Look) -> Found:
    duties = duties_of(look)
    if len(duties) < 2:
        return
    shared = _shared_heads(look)
    head = sum(map(float, shared))
    heads = {id: float(look.house.job.system.plant.circulators[id].shutoff) for id in duties}
    small = min(heads, key=heads.__getitem__)
    got = {
        id: float(each.actual_flow) / float(each.flow)
        for id, each in circuits_of(look).items()
        if each.actual_flow is not None and float(each.flow) > 0
    }
    worst = min(got, key=got.__getitem__, default="")
    if isnan(head) or not worst or isnan(got[worst]):
        yield look.wants("plant/circulators", *shared, words="flows that settle")
    elif head > look.limit * heads[small] * (1 + JUST) or got[worst] < look.limit_at(1) * (1 - JUST):
        found = circuits_of(look)[worst]
        assert found.actual_flow is not None
        starved = got[worst] < look.limit_at(1) * (1 - JUST)
        gets = f"{look.say(found.actual_flow)} of {look.say(found.flow)}"
        yield look.found(
            f"plant/circulators/{small}",
            f"With all of them on, the circulators share {look.say(head, d.HEAD)} of mains and boiler; "
            + (f"{found.name} gets {gets}." if starved else "each feels the others come and go."),
            found.actual_flow,
            weight=Weight.MUST_FIX if starved else Weight.DECIDE,
        )


def _shared_heads(look: Look) -> list[Figure]:
    """Heads of mains and boiler at the flow that results with all circulators on."""
    design, whole = look.design, [each.actual_flow for each in duties_of(look).values()]
    plant, viscosity = design.circuits.plant, design.emitters.house.viscosity
    own = [each for each in whole if each is not None and not isnan(each)]
    if len(own) < len(whole):
        in_mains = None if plant.mains is None else plant.mains.head
        return [each for each in (in_mains, plant.boiler_head) if each is not None]
    flow = flow_total(flows=own)
    return heads_of_plant(plant.mains, design.job.system.plant.boiler, flow, Water(viscosity))


@finding(
    "twenty-degree-habit",
    Weight.NOTE,
    cite("", "the drop follows flow and water temperature, nothing else", JUDGMENT),
    fires="The drop that results differs from the design drop by more than {0}.",
    why="the drop follows flow and water temperature, nothing else",
    mend="Accept it and read the emitters at the water that results, or trim the flow.",
    limits=(Limit("twenty-degree-habit", "30 %", d.RATIO, "difference of the drops"),),
)
def _twenty_degree_habit(look: Look) -> Found:
    for id, circuit in circuits_of(look).items():
        real = circuit.actual_drop
        if real is None:
            continue
        if isnan(real) or isnan(circuit.drop):
            yield look.wants(f"circuits/{id}", real, circuit.drop)
        elif abs(float(real) / float(circuit.drop) - 1) > look.limit * (1 + JUST):
            yield look.found(
                f"circuits/{id}",
                f"{circuit.name} is drawn for a drop of {look.say(circuit.drop)}; this circulator on this "
                f"piping gives {look.say(real)}.",
                real,
            )

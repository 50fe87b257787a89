"""Findings on the runs of a circuit: their length, and what shares the water out."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import isnan

from heatledger.catalog.tubes import TubeRow
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import DERIVED, JUDGMENT, SEEN, cite
from heatledger.steps.networks import is_series
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.piping_look import (
    Piece,
    circuits_of,
    friction_in,
    head_start,
    larger_tube,
    pieces,
)

Found = Iterator[Finding | NotChecked]
JUST = 1e-9
MORE_FITTINGS = 1.2
"""Room that is left for fittings, which stand for more length in a larger tube."""
LONGEST = {"3/8": "200 ft", "1/2": "300 ft", "5/8": "400 ft", "3/4": "500 ft"}


@finding(
    "run-too-long",
    Weight.DECIDE,
    cite("RET-PEX", "lengths of circuits by size", SEEN),
    fires="A home run is longer than {1} in 3/8 in., {2} in 1/2 in., {3} in 5/8 in. or {4} in 3/4 in. tube, "
    "or costs more than {0} of head.",
    why="head goes with the length and nearly with the square of the flow",
    mend="Split it, or take a larger tube.",
    limits=(
        Limit("run-costs-much", "8 ft", d.HEAD, "head of a home run"),
        *(
            Limit(f"run-too-long-{size.replace('/', '-')}", text, d.LENGTH, f"length in {size} in.")
            for size, text in LONGEST.items()
        ),
    ),
)
def _run_too_long(look: Look) -> Found:
    sizes = list(LONGEST)
    for each in pieces(look):
        circuit = look.house.job.system.circuits.get(each.circuit)
        if circuit is None or is_series(circuit.kind, circuit.runs) or "/runs/" not in each.path:
            continue
        size = each.pipe.tube.size if each.pipe.tube else ""
        most = look.limit_at(1 + sizes.index(size)) if size in sizes else float("inf")
        if isnan(each.laid.head) or isnan(each.laid.length):
            yield look.wants(each.path, each.laid.head, each.laid.length)
        elif float(each.laid.length) > most * (1 + JUST) or float(each.laid.head) > look.limit * (1 + JUST):
            yield look.found(
                each.path,
                f"{head_start(each.words)} is {look.say(each.laid.length)} of {each.laid.tube} and costs "
                f"{look.say(each.laid.head)}.",
                each.laid.head,
                (larger_tube(each, _short_enough(look, each)), Mend("Split it.")),
            )


def _short_enough(look: Look, piece: Piece) -> Callable[[TubeRow], bool]:
    """Whether a run may be as long in another tube, and costs little enough in it."""
    sizes, own = list(LONGEST), float(piece.laid.friction)

    def fits(row: TubeRow) -> bool:
        most = look.limit_at(1 + sizes.index(row.size)) if row.size in sizes else float("inf")
        head = float(piece.laid.head) * friction_in(look, piece, row) / own if own else 0.0
        return float(piece.laid.length) <= most and head * MORE_FITTINGS <= look.limit

    return fits


@finding(
    "loops-unequal-no-valves",
    Weight.DECIDE,
    cite("", "flow goes about as the 0.57 power of the inverse of the length", DERIVED),
    fires="Home runs of one manifold differ by more than {0} in length and have no balancing valves.",
    why="the short one takes the water of the long one",
    mend="Put a balancing valve on each run, or make the runs alike.",
    limits=(Limit("loops-unequal-no-valves", "25 %", d.RATIO, "difference in length"),),
)
def _loops_unequal_no_valves(look: Look) -> Found:
    for id, circuit in circuits_of(look).items():
        entry = look.house.job.system.circuits[id]
        if is_series(circuit.kind, circuit.runs) or entry.balanced or len(circuit.runs) < 2:
            continue
        lengths = {key: float(each.length) for key, each in circuit.runs.items()}
        if any(map(isnan, lengths.values())):
            yield look.wants(f"circuits/{id}", *(each.length for each in circuit.runs.values()))
            continue
        short, long = min(lengths, key=lengths.__getitem__), max(lengths, key=lengths.__getitem__)
        if any(each.valve is not None for each in circuit.runs.values()):
            continue
        if lengths[long] > lengths[short] * (1 + look.limit) * (1 + JUST):
            emitters = look.house.job.system.emitters
            yield look.found(
                f"circuits/{id}",
                f"The run to {emitters[short].name} is {look.say(circuit.runs[short].length)}, that to "
                f"{emitters[long].name} {look.say(circuit.runs[long].length)}: the short one will hog the "
                "manifold.",
                circuit.runs[long].length,
                (
                    Mend("Put a balancing valve on each run.", (set_to(f"circuits/{id}/balanced", True),)),
                    Mend("Make the runs alike."),
                ),
            )


@finding(
    "nothing-to-balance-with",
    Weight.DECIDE,
    cite("PM-102919", "water takes the short way", SEEN),
    fires="Without balancing valves a home run gets less than {0} of its design flow. Where its room then "
    "gets less than {1} of its heat, it must be fixed.",
    why="water takes the short way",
    mend="Put a balancing valve on each run and set it.",
    limits=(
        Limit("nothing-to-balance-with", "80 %", d.RATIO, "flow of a run"),
        Limit("unbalanced-and-cold", "90 %", d.RATIO, "heat of a room"),
    ),
)
def _nothing_to_balance_with(look: Look) -> Found:
    for id, circuit in circuits_of(look).items():
        entry = look.house.job.system.circuits[id]
        if is_series(circuit.kind, circuit.runs) or entry.balanced or len(circuit.runs) < 2:
            continue
        shares = {}
        for key, each in circuit.runs.items():
            if each.actual_flow is not None and float(each.flow) > 0:
                shares[key] = float(each.actual_flow) / float(each.flow)
        worst = min(shares, key=shares.__getitem__, default="")
        if not worst or isnan(shares[worst]) or shares[worst] >= look.limit * (1 - JUST):
            continue
        run, emitter = circuit.runs[worst], look.design.emitters.emitters[worst]
        assert run.actual_flow is not None
        room = look.design.emitters.rooms.get(emitter.room)
        short = room is not None and float(room.given_share) < look.limit_at(1)
        yield look.found(
            f"circuits/{id}",
            f"{emitter.name} gets {look.say(run.actual_flow)} of {look.say(run.flow)}, and no valve can "
            "share the water out.",
            run.actual_flow,
            (Mend("Put a balancing valve on each run.", (set_to(f"circuits/{id}/balanced", True),)),),
            Weight.MUST_FIX if short else Weight.DECIDE,
        )


@finding(
    "zone-valve-takes-much",
    Weight.NOTE,
    cite("", "a valve that costs most of the head sets the flow by itself", JUDGMENT),
    fires="The zone valve takes more than {0} of the head of its circuit.",
    why="a valve that is much smaller than its pipe is paid for in head",
    mend="Take a zone valve with a larger flow coefficient.",
    limits=(Limit("zone-valve-takes-much", "50 %", d.RATIO, "zone valve over circuit"),),
)
def _zone_valve_takes_much(look: Look) -> Found:
    for id, circuit in circuits_of(look).items():
        own = circuit.common.valve_head
        if own is None:
            continue
        if isnan(own) or isnan(circuit.head):
            yield look.wants(f"circuits/{id}", own, circuit.head)
        elif float(own) > look.limit * float(circuit.head) * (1 + JUST):
            yield look.found(
                f"circuits/{id}",
                f"The zone valve of {circuit.name} costs {look.say(own)} of {look.say(circuit.head)}.",
                own,
            )

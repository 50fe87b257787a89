"""Findings on what has no answer: figures that are asked for together, and heads that cannot be."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, waits_for
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.solving import Solution, Solved
from heatledger.ledger.sources import DERIVED, JUDGMENT, cite
from heatledger.steps.review.kinds import Limit, Look, finding
from heatledger.steps.review.piping_look import circuits_of, head_start, pieces

Found = Iterator[Finding | NotChecked]


@finding(
    "no-common-answer",
    Weight.MUST_FIX,
    cite("", "balance of heads, and of heat", DERIVED),
    fires="Figures that are found together have no common answer, though nothing that goes in is missing.",
    why="a set of entries that cannot hold at once leaves every figure behind it without a value",
    mend="Look at the entry that the working of the figure names, and at those beside it.",
)
def _no_common_answer(look: Look) -> Found:
    seen: set[int] = set()
    for where, figure, what, mends in _asked_together(look):
        solution = _solution_of(figure)
        if figure is None or solution is None or id(solution) in seen:
            continue
        seen.add(id(solution))
        if not solution.outcome.solved and not waits_for(figure):
            yield look.found(where, f"{what} {solution.outcome.words}", mends=mends)


def _asked_together(look: Look) -> Iterator[tuple[str, Figure | None, str, tuple[Mend, ...]]]:
    """What is found together: its place, one of its figures, words, and ways to mend it."""
    names = {each.circulator for each in circuits_of(look).values() if each.actual_flow is not None}
    common = "These circulators and pipes have no common answer."
    mends = [
        Mend("Look at the curve of each circulator, and at pipes or valves far too small for their flow.")
    ]
    if len(names) > 1:
        mends.insert(
            0,
            Mend(
                "A strong circulator pushes water backward through a weak one: take circulators alike, or "
                "larger mains, or closely spaced tees."
            ),
        )
    for id, circuit in circuits_of(look).items():
        for figure in (circuit.actual_flow, *(each.actual_flow for each in circuit.runs.values())):
            yield f"circuits/{id}", figure, common, tuple(mends)
    for id, target in look.design.startup.startup.circuits.items():
        state = "With the zones that call, these circulators and pipes have no common answer."
        yield f"circuits/{id}", target.flow, state, tuple(mends)
    for id, space in look.house.losses.unheated.items():
        yield (
            f"unheated/{id}", space.temperature, "These unheated spaces have no common temperatures.",
            (Mend("Look at what the space loses heat by: its surfaces and its air."),),
        )  # fmt: skip


def _solution_of(figure: Figure | None) -> Solution | None:
    """The search that a figure comes from, also where it is a sum of what was found."""
    while figure is not None:
        if isinstance(figure.origin, Solved):
            return figure.origin.solution
        first = figure.inputs[0] if figure.inputs else None
        figure = first if isinstance(first, Figure) else None
    return None


@finding(
    "head-past-belief",
    Weight.MUST_FIX,
    cite("", "heads of house piping are a few feet", JUDGMENT),
    fires="A pipe or valve costs more than {0} of head at its design flow.",
    why="a figure like that comes of a slip in an entry, most often in a flow coefficient or a length",
    mend="Look at the flow coefficient of the valve, the tube, the length and the flow once more.",
    limits=(Limit("head-past-belief", "1000 ft", d.HEAD, "head of one piece"),),
)
def _head_past_belief(look: Look) -> Found:
    for each in pieces(look):
        if isnan(each.laid.head) or not float(each.laid.head) > look.limit:
            continue
        own = each.laid.valve_head
        by_valve = own is not None and float(own) > look.limit
        whose = head_start(each.words)
        if by_valve:
            circuit = circuits_of(look).get(each.circuit)
            of_zone = circuit is not None and each.laid is circuit.common
            whose = (
                f"The zone valve of {circuit.name}" if circuit and of_zone else f"The valve of {each.words}"
            )
        yield look.found(
            each.path,
            f"{whose} would cost more than {look.limit_shown()} of head at {look.say(each.laid.flow)}; that "
            "cannot be.",
        )

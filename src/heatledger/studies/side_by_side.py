"""The what-ifs of a job side by side: what each would make of the load, the water and the boiler."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.job.errors import JobErrors
from heatledger.ledger.figures import Figure
from heatledger.steps.design import Design, design


@dataclass(frozen=True, eq=False)
class Side:
    """One what-if laid over the job by itself.

    ``loss`` is the loss of the house, ``less`` how much less that is than today (W, negative when it is
    more), ``supply`` the lowest supply that serves every room and ``set_by`` the room that sets it;
    ``cooler`` is how far the supply falls by it (K). All of them are None where it cannot be laid, and
    ``cannot`` says why.
    """

    id: str
    name: str
    design: Design | None
    loss: Figure | None = None
    less: float | None = None
    supply: Figure | None = None
    cooler: float | None = None
    set_by: str = ""
    cannot: str = ""


def side_by_side(base: Design) -> list[Side]:
    """Every what-if of the job that is not laid yet, each over the job as it stands, in the job's order.

    What a what-if does not touch is taken over from ``base``; the figures are those that a design of
    the changed job has.
    """
    waiting = [id for id in base.job.what_ifs if id not in base.job.laid]
    return [_side(id, base) for id in waiting]


def _side(id: str, base: Design) -> Side:
    name = base.job.what_ifs[id].name or id
    try:
        changed = design(base.job.with_what_ifs(id), base)
    except JobErrors as fault:
        first = fault.errors[0].message if fault.errors else "it does not go with this job"
        return Side(id, name, None, cannot=first)
    loss, was = changed.losses.house.loss, base.losses.house.loss
    supply, stood = changed.emitters.house.lowest_supply, base.emitters.house.lowest_supply
    room = changed.job.rooms.get(changed.emitters.house.set_by)
    return Side(
        id, name, changed, loss, _fall(was, loss), supply, _fall(stood, supply),
        "" if room is None else str(room.name),
    )  # fmt: skip


def _fall(was: Figure, now: Figure) -> float | None:
    """How far a figure falls (SI); None where either is missing."""
    return None if was.is_missing or now.is_missing else float(was) - float(now)

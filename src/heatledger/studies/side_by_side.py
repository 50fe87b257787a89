"""The what-ifs of a job side by side: what each would make of the load and the water."""

from __future__ import annotations

from dataclasses import dataclass
from weakref import WeakKeyDictionary

from heatledger.job.errors import JobErrors
from heatledger.ledger.figures import Figure
from heatledger.steps.design import Design
from heatledger.steps.emitters import Emitters, RoomHeat

ALL_OF_IT = 0.995
"""A share from here on rounds to all of what is needed."""


@dataclass(frozen=True, eq=False)
class Side:
    """One what-if laid over the job by itself.

    ``loss`` is the loss of the house, ``less`` how much less that is than today (W, negative when it is
    more). ``supply`` is the lowest supply that serves every room and ``set_by`` the room that sets it;
    ``short`` are the ids of the rooms that get less than they need at the supply of that design. Where it
    cannot be laid the figures are None, and ``cannot`` says why.
    """

    id: str
    name: str
    loss: Figure | None = None
    less: float | None = None
    supply: Figure | None = None
    set_by: str = ""
    short: tuple[str, ...] = ()
    cannot: str = ""


_KEPT: WeakKeyDictionary[Design, list[Side]] = WeakKeyDictionary()


def side_by_side(base: Design) -> list[Side]:
    """Every what-if of the job that is not laid yet, each over the job as it stands, in the job's order.

    What a what-if does not touch is taken over from ``base``; the figures are those that a design of
    the changed job has. They are worked out once for a design.
    """
    if base not in _KEPT:
        waiting = [id for id in base.job.what_ifs if id not in base.job.laid]
        _KEPT[base] = [_side(id, base) for id in waiting]
    return _KEPT[base]


def is_short(room: RoomHeat) -> bool:
    """Whether a room gets less than it needs, by more than rounding; False while that is not known."""
    return not room.given_share.is_missing and float(room.given_share) < ALL_OF_IT


def carried(heat: Emitters) -> int:
    """How many rooms get what they need at the supply of the design."""
    known = [each for each in heat.rooms.values() if not each.given_share.is_missing]
    return sum(not is_short(each) for each in known)


def _side(id: str, base: Design) -> Side:
    name = base.job.what_ifs[id].name or id
    try:
        changed = base.with_what_if(id)
    except JobErrors as fault:
        return Side(id, name, cannot=fault.errors[0].message)
    heat, loss, was = changed.emitters, changed.losses.house.loss, base.losses.house.loss
    room = changed.job.rooms.get(heat.house.set_by)
    short = [key for key, each in heat.rooms.items() if is_short(each)]
    less = None if was.is_missing or loss.is_missing else float(was) - float(loss)
    return Side(
        id, name, loss, less, heat.house.lowest_supply, "" if room is None else str(room.name), tuple(short)
    )

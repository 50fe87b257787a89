"""A design laid out for the checks: every part that loses heat, with the entries it rests on.

Tests of findings are made on plain numbers taken out of the figures; none of them goes back into a
working.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from heatledger.job.model import Construction, Opening, Room, Surface, Unheated
from heatledger.ledger.choosing import Choice
from heatledger.ledger.figures import Figure, Leaf
from heatledger.steps.losses import RoomLoss
from heatledger.steps.surfaces import OpeningLoss, SurfaceLoss

if TYPE_CHECKING:
    from heatledger.steps.design import Design

GUESSED = "assumed"


@dataclass(frozen=True)
class Part:
    """A surface or opening of a heated room, and what it loses."""

    path: str
    room: Room
    surface: Surface
    opening: Opening | None
    lost: SurfaceLoss | OpeningLoss

    @property
    def construction(self) -> Construction:
        """What it is made of."""
        return self.opening.construction if self.opening else self.surface.construction

    @property
    def name(self) -> str:
        """Its name and that of its room."""
        return f"{self.opening.name if self.opening else self.surface.name}, {self.room.name}"

    @property
    def loss(self) -> float:
        """Heat lost, W."""
        return float(self.lost.loss)


@dataclass(frozen=True)
class Guess:
    """An entry that a part of the loss goes with, and that part in W. ``share`` is its half-range over it."""

    words: str
    path: str
    known: str
    share: float
    loss: float
    entry: float


class House:
    """What the checks ask of a design, each worked out once."""

    def __init__(self, design: Design) -> None:
        self.design = design
        self.job = design.job
        self.losses = design.losses

    @cached_property
    def outdoor(self) -> float:
        """Outdoor design temperature, K."""
        return float(self.losses.site.outdoor)

    @cached_property
    def loss(self) -> float:
        """Loss of the house, W."""
        return float(self.losses.house.loss)

    @property
    def rooms(self) -> Iterator[tuple[Room, RoomLoss]]:
        """The heated rooms with their losses."""
        for id, room in self.job.rooms.items():
            yield room, self.losses.rooms[id]

    @cached_property
    def spaces(self) -> list[tuple[str, Room | Unheated]]:
        """Rooms and unheated spaces by path."""
        rooms: list[tuple[str, Room | Unheated]] = [
            (f"rooms/{id}", each) for id, each in self.job.rooms.items()
        ]
        return rooms + [(f"unheated/{id}", each) for id, each in self.job.unheated.items()]

    @cached_property
    def parts(self) -> list[Part]:
        """Every surface and opening of the rooms. A partition stands in both of its rooms."""
        found = []
        for id, room in self.job.rooms.items():
            for key, surface in room.surfaces.items():
                lost = self.losses.rooms[id].surfaces[key]
                path = f"rooms/{id}/surfaces/{key}"
                found.append(Part(path, room, surface, None, lost))
                for name, opening in surface.openings.items():
                    found.append(Part(f"{path}/openings/{name}", room, surface, opening, lost.openings[name]))
        return found

    @cached_property
    def own_parts(self) -> list[Part]:
        """Parts that are given in the room they are found in, so that none comes twice."""
        return [each for each in self.parts if not each.surface.from_other]

    @cached_property
    def air_loss(self) -> float:
        """Loss by air, W."""
        return sum(float(each.air.loss) for each in self.losses.rooms.values())

    @cached_property
    def air_guessed(self) -> float:
        """Loss by air whose rate nobody tested or told, W."""
        return sum(float(each.air.loss) for each in self.losses.rooms.values() if is_guess(each.air.changes))

    @cached_property
    def mean_changes(self) -> float:
        """Air changes of the whole house: those of the rooms by their volumes, 1/s."""
        rooms = self.losses.rooms.values()
        volume = sum(float(each.air.volume) for each in rooms)
        flow = sum(float(each.air.volume) * float(each.air.changes) for each in rooms)
        return flow / volume if volume else float("nan")

    @cached_property
    def rates(self) -> dict[str, float]:
        """Air changes that were given in the job, by their path."""
        found = [each.air.changes for each in self.losses.rooms.values()]
        return {path_of(each): each for each in found if path_of(each) and not is_by_sides(each)}

    @cached_property
    def is_air_tested(self) -> bool:
        """True when the air of every room was measured."""
        known = [known_of(each.air.changes) for each in self.losses.rooms.values()]
        return bool(known) and all(each == "measured" for each in known)

    @cached_property
    def guesses(self) -> list[Guess]:
        """The entries that the loss goes with in proportion, the largest part of the loss first."""
        found: dict[str, list[float]] = {}
        about: dict[str, tuple[str, str, float, float]] = {}
        for part in self.parts:
            if part.surface.beyond.kind != "room":
                figure = factor_of(part.construction)
                path = f"constructions/{part.construction.id}"
                about[path] = (part.construction.name, known_of(figure), _share(figure), figure)
                found.setdefault(path, []).append(part.loss)
        for each in self.losses.rooms.values():
            rate = each.air.changes
            # Rooms that share one entry, or one row of a table, move together.
            path = path_of(rate)
            words = f"air changes, {each.name}" if path.startswith("rooms/") else "air changes"
            if is_by_sides(rate):
                words = f"air changes by exposed sides, {typed_of(rate)[0]:g} an hour"
            about[path] = (words, known_of(rate), _share(rate), rate)
            found.setdefault(path, []).append(float(each.air.loss))
        made = [
            Guess(words, path, known, half, sum(found[path]), figure)
            for path, (words, known, half, figure) in about.items()
        ]
        return sorted(made, key=lambda each: -abs(each.loss))

    def area_of(self, part: Part) -> float:
        """Area of an opening with its count, or the net area of a surface."""
        lost = part.lost
        if isinstance(lost, OpeningLoss):
            return lost.total_area
        return float("nan") if lost.net_area is None else lost.net_area


def factor_of(construction: Construction) -> Figure:
    """The one value a construction is described by."""
    for each in (construction.u_value, construction.r_value, construction.f_factor):
        if each is not None:
            return each
    raise AssertionError("a construction has one of three values, perhaps a missing one")


def u_of(construction: Construction) -> float:
    """U-value as a plain number, W/(m²·K); NaN for a slab edge or a missing value."""
    if construction.u_value is not None:
        return float(construction.u_value)
    if construction.r_value is not None and float(construction.r_value):
        return 1 / float(construction.r_value)
    return float("nan")


def leaf_of(figure: float) -> Leaf | None:
    """Origin of a figure that was entered or looked up in a table, or None."""
    if isinstance(figure, Figure) and isinstance(figure.origin, Choice):
        figure = figure.inputs[0]
    origin = figure.origin if isinstance(figure, Figure) else None
    return origin if isinstance(origin, Leaf) else None


def is_guess(figure: float) -> bool:
    """True for an entry that is assumed, as is a rate taken by the number of exposed sides."""
    return known_of(figure) == GUESSED


def is_by_sides(rate: float) -> bool:
    """True for a rate that was taken by the number of exposed sides."""
    return path_of(rate).startswith("catalog/")


def path_of(figure: float) -> str:
    """Path of an entry, or empty."""
    origin = leaf_of(figure)
    return origin.path if origin else ""


def typed_of(figure: float) -> tuple[float, str]:
    """The number an entry was typed with, and its unit."""
    origin = leaf_of(figure)
    return (origin.typed_value, origin.unit) if origin else (float("nan"), "")


def known_of(figure: float) -> str:
    """How well an entry is known, or empty."""
    origin = leaf_of(figure)
    return origin.known if origin else ""


def _share(figure: float) -> float:
    """Half-range of an entry as a share of it."""
    origin = leaf_of(figure)
    return origin.half_range / abs(float(figure)) if origin and float(figure) else 0.0


def is_called(words: tuple[str, ...], *names: str) -> bool:
    """True when one of the words stands in a name or id."""
    said = " ".join(names).lower()
    return any(each in said for each in words)

"""Ten thousand samples replayed through the heat loss of twenty rooms, against bare numpy.

The rooms have walls, windows, air and an attic above them, and a choice is made in each.

Both do the same operations in the same order; what is left is what the ledger adds by running them
from the figures.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

import numpy
from timing import Row, side_by_side

from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.replay import Program, replay
from heatledger.physics.air import air_loss
from heatledger.physics.envelope import conductance, heat_loss, loss_to_space, net_area, transmission_loss
from heatledger.physics.spaces import heat_toward, space_temperature

ROOMS, SAMPLES = 20, 10_000
WALLS, WINDOWS = 3, 2


def entry(path: str, value: float, dimension: d.Dimension) -> Figure:
    """A leaf of an invented job."""
    return leaf(value, dimension, Leaf(LeafKind.JOB, path, path))


@dataclass
class Room:
    """The entries of one room: walls with windows in them, a ceiling under the attic, and air."""

    indoor: Figure
    walls: list[Figure]
    windows: list[Figure]
    ceiling: Figure
    volume: Figure
    changes: Figure


@dataclass
class House:
    """The figures of an invented house."""

    outdoor: Figure
    wall_u: list[Figure]
    window_u: Figure
    ceiling_u: Figure
    roof: list[Figure]
    least_changes: Figure
    air_heat: Figure
    rooms: list[Room]
    loss: Figure

    def moving(self) -> list[Figure]:
        """The leaves that are sampled."""
        sampled = [self.outdoor, *self.wall_u, self.window_u, self.ceiling_u, *self.roof]
        return [*sampled, *(each.indoor for each in self.rooms), *(each.changes for each in self.rooms)]


def room(i: int) -> Room:
    """The entries of room ``i``."""
    return Room(
        entry(f"indoor{i}", 293.0 + i / 10, d.TEMPERATURE),
        [entry(f"wall{i}-{j}", 9.0 + i + 2 * j, d.AREA) for j in range(WALLS)],
        [entry(f"window{i}-{j}", 1.2 + 0.1 * j, d.AREA) for j in range(WINDOWS)],
        entry(f"ceiling{i}", 12.0 + i, d.AREA),
        entry(f"volume{i}", 30.0 + i, d.VOLUME),
        entry(f"changes{i}", (0.4 + i / 50) / 3600, d.AIR_CHANGES),
    )


def house() -> House:
    """Twenty rooms under an attic that finds its own temperature; the larger air change is taken."""
    outdoor, air_heat = entry("outdoor", 255.0, d.TEMPERATURE), entry("air", 1206.0, d.VOLUME_HEAT)
    wall_u = [entry(f"u{j}", 0.2 + 0.3 * j, d.TRANSMITTANCE) for j in range(WALLS)]
    window_u, ceiling_u = entry("window u", 2.8, d.TRANSMITTANCE), entry("ceiling u", 0.25, d.TRANSMITTANCE)
    roof = [entry(f"roof{j}", 180.0 + 90.0 * j, d.CONDUCTANCE) for j in range(3)]
    least, rooms = entry("least", 0.3 / 3600, d.AIR_CHANGES), [room(i) for i in range(ROOMS)]
    to_attic = [conductance(each.ceiling, ceiling_u) for each in rooms]
    heats = [heat_toward(c, each.indoor, outdoor) for c, each in zip(to_attic, rooms, strict=True)]
    attic = space_temperature(outdoor, heats, [*to_attic, *roof])
    losses = []
    for each in rooms:
        parts = []
        for j, gross in enumerate(each.walls):
            net = net_area(gross, each.windows[j]) if j < WINDOWS else gross
            parts.append(transmission_loss(net, wall_u[j], each.indoor, outdoor))
        parts += [transmission_loss(one, window_u, each.indoor, outdoor) for one in each.windows]
        parts.append(loss_to_space(each.ceiling, ceiling_u, each.indoor, attic))
        changes = choose({"room": each.changes, "least": least}, largest, because="no room has less")
        parts.append(air_loss(each.volume, changes, air_heat, each.indoor, outdoor))
        losses.append(heat_loss(parts))
    return House(outdoor, wall_u, window_u, ceiling_u, roof, least, air_heat, rooms, heat_loss(losses))


def bare(made: House, sampled: list[Any]) -> Any:
    """The same operations in the same order, written out by hand."""
    queue = iter(sampled)
    outdoor, wall_u = next(queue), [next(queue) for _ in range(WALLS)]
    window_u, ceiling_u, roof = next(queue), next(queue), [next(queue) for _ in range(3)]
    indoor, changes = ([next(queue) for _ in range(ROOMS)] for _ in range(2))
    air_heat = float(made.air_heat)
    to_attic = [float(each.ceiling) * ceiling_u for each in made.rooms]
    heats = added(c * (t - outdoor) for c, t in zip(to_attic, indoor, strict=True))
    attic = outdoor + heats / added([*to_attic, *roof])

    def parts(i: int) -> Iterator[Any]:
        one = made.rooms[i]
        for j, gross in enumerate(one.walls):
            net = float(gross) - float(one.windows[j]) if j < WINDOWS else float(gross)
            yield net * wall_u[j] * (indoor[i] - outdoor)
        for window in one.windows:
            yield float(window) * window_u * (indoor[i] - outdoor)
        yield float(one.ceiling) * ceiling_u * (indoor[i] - attic)
        yield float(one.volume) * changes[i] * air_heat * (indoor[i] - outdoor)

    return added(added(parts(i)) for i in range(ROOMS))


def added(parts: Iterable[Any]) -> Any:
    """A sum that is written over as it grows."""
    whole: Any = 0.0
    for i, each in enumerate(parts):
        whole = whole + each if i == 0 else whole.__iadd__(each)
    return whole


def rows() -> Iterator[Row]:
    """The ratio with the program made once, as a study does, and with the making of it."""
    made = house()
    random = numpy.random.default_rng(7)
    sampled = [float(each) * random.uniform(0.9, 1.1, SAMPLES) for each in made.moving()]
    program = Program([made.loss], made.moving())
    assert numpy.allclose(program.run(sampled)[0], bare(made, sampled), rtol=1e-12, atol=0.0)
    ours, theirs = side_by_side(lambda: program.run(sampled), lambda: bare(made, sampled), 3, 9)
    yield Row("replay: 10,000 samples, 20 rooms", ours, "bare numpy", theirs, 1.5)
    leaf_values = dict(zip(made.moving(), sampled, strict=True))
    ours, theirs = side_by_side(lambda: replay([made.loss], leaf_values), lambda: bare(made, sampled), 3, 5)
    yield Row("replay: the same, and finding the way", ours, "bare numpy", theirs)


def main() -> int:
    """Print every line."""
    for each in rows():
        print(f"{each.what:45} {each.ours * 1e3:8.2f} ms  {each.ratio:6.2f} of {each.against}")
    return 0


if __name__ == "__main__":
    sys.exit(main())

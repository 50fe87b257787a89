"""Ten thousand samples replayed through the heat loss of twenty rooms, against bare numpy.

Both do the same operations in the same order; what is left is what the ledger adds by running them
from the figures.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy
from timing import Row, side_by_side

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.replay import Program, replay
from heatledger.physics.air import air_loss
from heatledger.physics.envelope import heat_loss, transmission_loss

ROOMS, SURFACES, SAMPLES = 20, 5, 10_000


def entry(path: str, value: float, dimension: d.Dimension) -> Figure:
    """A leaf of an invented job."""
    return leaf(value, dimension, Leaf(LeafKind.JOB, path, path))


@dataclass
class House:
    """The figures of an invented house."""

    outdoor: Figure
    indoor: list[Figure]
    u_values: list[Figure]
    areas: list[list[Figure]]
    volumes: list[Figure]
    changes: list[Figure]
    air_heat: Figure
    loss: Figure

    def moving(self) -> list[Figure]:
        """The leaves that are sampled."""
        return [self.outdoor, *self.indoor, *self.u_values, *self.changes]


def house() -> House:
    """Twenty rooms of five surfaces and air."""
    outdoor, air_heat = entry("outdoor", 255.0, d.TEMPERATURE), entry("air", 1206.0, d.VOLUME_HEAT)
    u_values = [entry(f"u{i}", 0.2 + 0.3 * i, d.TRANSMITTANCE) for i in range(SURFACES)]
    indoor = [entry(f"indoor{i}", 293.0 + i / 10, d.TEMPERATURE) for i in range(ROOMS)]
    areas = [[entry(f"area{i}-{j}", 6.0 + i + 2 * j, d.AREA) for j in range(SURFACES)] for i in range(ROOMS)]
    volumes = [entry(f"volume{i}", 30.0 + i, d.VOLUME) for i in range(ROOMS)]
    changes = [entry(f"changes{i}", (0.3 + i / 50) / 3600, d.AIR_CHANGES) for i in range(ROOMS)]
    rooms = []
    for i in range(ROOMS):
        parts = [transmission_loss(areas[i][j], u_values[j], indoor[i], outdoor) for j in range(SURFACES)]
        rooms.append(heat_loss([*parts, air_loss(volumes[i], changes[i], air_heat, indoor[i], outdoor)]))
    return House(outdoor, indoor, u_values, areas, volumes, changes, air_heat, heat_loss(rooms))


def bare(made: House, sampled: list[Any]) -> Any:
    """The same operations in the same order, written out by hand."""
    outdoor, indoor = sampled[0], sampled[1 : 1 + ROOMS]
    u_values, changes = sampled[1 + ROOMS : 1 + ROOMS + SURFACES], sampled[1 + ROOMS + SURFACES :]
    areas = [[float(each) for each in row] for row in made.areas]
    volumes, air_heat = [float(each) for each in made.volumes], float(made.air_heat)
    loss: Any = 0.0
    for i in range(ROOMS):
        room: Any = 0.0
        for j in range(SURFACES):
            part = areas[i][j] * u_values[j] * (indoor[i] - outdoor)
            room = room + part if j == 0 else room.__iadd__(part)
        room += volumes[i] * changes[i] * air_heat * (indoor[i] - outdoor)
        loss = loss + room if i == 0 else loss.__iadd__(room)
    return loss


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

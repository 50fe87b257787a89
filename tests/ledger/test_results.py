"""A step's result takes figures of the right kind and nothing else, and every figure has one path."""

from __future__ import annotations

from dataclasses import FrozenInstanceError

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Area, HeatRate, Temperature
from heatledger.ledger.figures import LedgerError
from heatledger.ledger.results import result, walk_results
from tests.ledger.drawing import found


@result
class Wall:
    """A wall."""

    name: str
    area: Area
    loss: HeatRate
    spare: HeatRate | None = None


@result
class Room:
    """A room with walls."""

    walls: dict[str, Wall]
    by_cause: dict[str, HeatRate]
    temperature: Temperature


@result
class Rooms:
    """Rooms that stand at the path of their house."""

    __path__ = ""
    rooms: dict[str, Room]


@result
class House:
    """A house."""

    rooms: Rooms
    loss: HeatRate


AREA, LOSS, WARM = found(9.0, d.AREA), found(300.0, d.HEAT_RATE), found(293.0, d.TEMPERATURE)


def test_every_figure_has_its_path() -> None:
    wall = Wall("north wall", AREA, LOSS)
    house = House(Rooms({"kitchen": Room({"north-wall": wall}, {"air": LOSS}, WARM)}), LOSS)
    assert dict(walk_results(house)) == {
        "rooms/kitchen/walls/north-wall/area": AREA,
        "rooms/kitchen/walls/north-wall/loss": LOSS,
        "rooms/kitchen/by_cause/air": LOSS,
        "rooms/kitchen/temperature": WARM,
        "loss": LOSS,
    }


def test_a_plain_float_is_refused() -> None:
    with pytest.raises(LedgerError, match=r"Wall.loss is 300.0, not a figure: a number from nowhere"):
        Wall("north wall", AREA, 300.0)


def test_another_dimension_is_refused() -> None:
    with pytest.raises(LedgerError, match=r"Wall.area takes a figure of kind area, not heat rate"):
        Wall("north wall", LOSS, LOSS)


def test_none_is_taken_only_where_it_may_stand() -> None:
    assert Wall("north wall", AREA, LOSS).spare is None
    with pytest.raises(LedgerError, match="None"):
        Wall("north wall", AREA, None)  # type: ignore[arg-type]
    with pytest.raises(LedgerError, match=r"Wall.spare is 5.0"):
        Wall("north wall", AREA, LOSS, 5.0)


def test_a_dictionary_of_figures_is_looked_into() -> None:
    with pytest.raises(LedgerError, match=r"Room.by_cause takes a figure of kind heat rate, not area"):
        Room({}, {"air": LOSS, "walls": AREA}, WARM)
    with pytest.raises(LedgerError, match=r"Room.by_cause is 4.0"):
        Room({}, {"air": 4.0}, WARM)


def test_a_result_is_frozen_and_has_no_room_for_more() -> None:
    wall = Wall("north wall", AREA, LOSS)
    with pytest.raises(FrozenInstanceError):
        wall.loss = LOSS  # type: ignore[misc]
    assert not hasattr(wall, "__dict__")


def test_a_result_keeps_its_own_check() -> None:
    @result
    class Checked:
        """A result that checks itself."""

        loss: HeatRate

        def __post_init__(self) -> None:
            if float(self.loss) < 0:
                raise ValueError("below zero")

    assert Checked(LOSS).loss is LOSS
    with pytest.raises(ValueError, match="below zero"):
        Checked(found(-1.0, d.HEAT_RATE))

"""Claim: room by room, surface by surface, we get the losses of DIY-UK; a warmer neighbor gives a gain."""

import pytest

from heatledger.ledger.sources import SEEN
from heatledger.physics.envelope import heat_loss, loss_to_space
from tests.published.checks import at, check, into, si

# Area in ft², U in Btu/(h·ft²·°F), difference in °F, loss as printed in Btu/h.
DINING = [
    (72, 0.18, 40, 518), (40, 0.51, 40, 816), (136, 0.38, 5, 258), (238, 0.29, 5, 345),
    (238, 0.12, 40, 1142), (112, 0.39, 0, 0), (112, 0.39, 5, 218), (24, 0.39, 10, 94),
]  # fmt: skip
LOUNGE = [
    (72, 0.18, 40, 518), (40, 0.51, 40, 816), (120, 0.38, 5, 228), (210, 0.29, 5, 305),
    (210, 0.12, 40, 1008), (112, 0.39, 0, 0), (120, 0.39, 10, 468),
]  # fmt: skip
KITCHEN = [
    (32, 0.18, 35, 202), (16, 0.51, 35, 286), (95.75, 0.18, 35, 603), (16.25, 0.42, 35, 239),
    (84, 0.25, -7, -147), (84, 0.12, 35, 353), (112, 0.39, -5, -218), (48, 0.39, 5, 94),
]  # fmt: skip


def losses(rows, indoor):
    return [
        loss_to_space(
            area=si(area, "ft²"), u_value=si(u, "Btu/(h·ft²·°F)"), indoor=at(indoor, "°F"),
            beyond=at(indoor - difference, "°F"),
        )
        for area, u, difference, _ in rows
    ]  # fmt: skip


def compare(room, rows, indoor):
    check(
        claim=f"Losses of the surfaces of the {room}, neighbors among them", source="DIY-UK", place=room,
        standing=SEEN, unit="Btu/h", expected=[each[3] for each in rows],
        got=[into(each, "Btu/h") for each in losses(rows, indoor)], tolerance=1, why="parts are rounded",
    )  # fmt: skip


def test_dining_room():
    compare("dining room", DINING, 70)


def test_lounge():
    compare("lounge", LOUNGE, 70)


def test_kitchen():
    compare("kitchen", KITCHEN, 65)


def test_sums_are_our_own_and_no_check():
    """The source prints no sums; those of its printed parts are within 2 Btu/h of ours."""
    for rows, indoor, of_parts in ((DINING, 70, 3391), (LOUNGE, 70, 3343), (KITCHEN, 65, 1412)):
        assert into(heat_loss(parts=losses(rows, indoor)), "Btu/h") == pytest.approx(of_parts, abs=2)

"""Claim: room by room, surface by surface, we get the losses of DIY-UK; a warmer neighbor gives a gain."""

import pytest

from heatledger.job.load import read_job
from heatledger.ledger.sources import SEEN
from heatledger.physics.envelope import heat_loss, loss_to_space
from heatledger.steps.design import design
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


# Where each part of a room leads, in the order of its rows; the source gives no openings but windows and a
# back door, and no temperature of a hall or a room above but by its difference.
PLACES = {
    "dining": ("back-wall", "back-wall/openings/window", "party-wall", "ceiling", "floor", "to-lounge",
               "kitchen.to-dining", "to-hall"),
    "lounge": ("front-wall", "front-wall/openings/window", "party-wall", "ceiling", "floor",
               "dining.to-lounge", "to-hall"),
    "kitchen": ("back-wall", "back-wall/openings/window", "side-wall", "side-wall/openings/back-door",
                "ceiling", "floor", "to-dining", "to-hall"),
}  # fmt: skip
ROOMS = {"dining": (DINING, 70), "lounge": (LOUNGE, 70), "kitchen": (KITCHEN, 65)}
JOB = """
format: 1
units: US
invented: yes
site: {outdoor: 30 °F, indoor: 70 °F, elevation: 0 ft}
constructions:
  outside: {kind: wall, u_value: U-0.18}
  glass: {kind: window, u_value: U-0.51}
  door: {kind: door, u_value: U-0.42}
  party: {kind: wall, u_value: U-0.38}
  inner: {kind: wall, u_value: U-0.39}
  ceiling: {kind: ceiling, u_value: U-0.29}
  kitchen-ceiling: {kind: ceiling, u_value: U-0.25}
  floor: {kind: floor, u_value: U-0.12}
levels: {ground: {wall_height: 8 ft, ceiling_height: 8 ft}}
air: {changes: 0 ACH}
neighbors: {next-door: {temperature: 65 °F}, bedrooms: {temperature: 65 °F}, bathroom: {temperature: 72 °F},
  hall: {temperature: 60 °F}}
rooms:
  dining:
    {level: ground, floor_area: 238 ft2, surfaces: {
      back-wall: {construction: outside, area: 112 ft2, beyond: outdoors,
        openings: {window: {construction: glass, area: 40 ft2}}},
      party-wall: {construction: party, area: 136 ft2, beyond: neighbors/next-door},
      ceiling: {construction: ceiling, area: 238 ft2, beyond: neighbors/bedrooms},
      floor: {construction: floor, area: 238 ft2, beyond: outdoors},
      to-lounge: {construction: inner, area: 112 ft2, beyond: rooms/lounge},
      to-hall: {construction: inner, area: 24 ft2, beyond: neighbors/hall}}}
  lounge:
    {level: ground, floor_area: 210 ft2, surfaces: {
      front-wall: {construction: outside, area: 112 ft2, beyond: outdoors,
        openings: {window: {construction: glass, area: 40 ft2}}},
      party-wall: {construction: party, area: 120 ft2, beyond: neighbors/next-door},
      ceiling: {construction: ceiling, area: 210 ft2, beyond: neighbors/bedrooms},
      floor: {construction: floor, area: 210 ft2, beyond: outdoors},
      to-hall: {construction: inner, area: 120 ft2, beyond: neighbors/hall}}}
  kitchen:
    {level: ground, floor_area: 84 ft2, indoor: 65 °F, surfaces: {
      back-wall: {construction: outside, area: 48 ft2, beyond: outdoors,
        openings: {window: {construction: glass, area: 16 ft2}}},
      side-wall: {construction: outside, area: 112 ft2, beyond: outdoors,
        openings: {back-door: {construction: door, area: 16.25 ft2}}},
      ceiling: {construction: kitchen-ceiling, area: 84 ft2, beyond: neighbors/bathroom},
      floor: {construction: floor, area: 84 ft2, beyond: outdoors},
      to-dining: {construction: inner, area: 112 ft2, beyond: rooms/dining},
      to-hall: {construction: inner, area: 48 ft2, beyond: neighbors/hall}}}
"""


def test_the_three_rooms_as_one_job():
    """From the text of a job to the losses, with a partition given once and found in both rooms."""
    done = design(read_job(JOB))
    for room, (rows, _) in ROOMS.items():
        got = [done[f"rooms/{room}/surfaces/{place}/loss"] for place in PLACES[room]]
        check(
            claim=f"One job of three rooms, from its text: {room}",
            source="DIY-UK", place=room, standing=SEEN, unit="Btu/h",
            expected=[each[3] for each in rows], got=[into(each, "Btu/h") for each in got], tolerance=1,
            why="parts are rounded",
        )  # fmt: skip
        whole = into(done[f"rooms/{room}/loss"], "Btu/h")
        assert whole == pytest.approx(sum(each[3] for each in rows), abs=2)


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

"""Whole houses and spaces worked out apart from this program, held to it part by part."""

from __future__ import annotations

from functools import cache

import pytest

from heatledger.ledger.units import UNITS
from heatledger.steps.design import Design, design
from tests.losses.plain import BTU_H, EASY_AIR, METRIC_AIR, flat, job_of, wall

SLAB_HOUSE = {
    "living": ("20' × 16'", "36'", "48 ft2", "20 ft2", (1278.20, 1680.0, 490.0, 672.0, 1360.8, 1612.8)),
    "kitchen": ("20' × 16'", "36'", "30 ft2", "20 ft2", (1382.78, 1050.0, 490.0, 672.0, 1360.8, 1612.8)),
    "bed-1": ("20' × 12'", "32'", "24 ft2", "", (1347.92, 840.0, 0.0, 504.0, 1209.6, 1209.6)),
    "bed-2": ("20' × 12'", "32'", "24 ft2", "", (1347.92, 840.0, 0.0, 504.0, 1209.6, 1209.6)),
}
CAUSES = ("walls", "windows", "doors", "ceiling", "floor", "air")


def air_share(done: Design, easy: float) -> float:
    """Heat of air here over the round figure of the case."""
    return float(done.losses.site.air_heat) / easy


@cache
def slab_house() -> Design:
    rooms = {}
    for id, (size, outside, window, door, _) in SLAB_HOUSE.items():
        openings = {"window": window, **({"door": door} if door else {})}
        area = "320 ft2" if "16" in size else "240 ft2"
        surfaces = {
            "wall": wall(outside, **openings), "ceiling": flat(area, "ceiling"),
            "edge": {"construction": "edge", "length": outside},
        }  # fmt: skip
        rooms[id] = {"level": "main", "size": size, "surfaces": surfaces}
    return design(job_of(
        "US",
        site={"outdoor": "0 °F", "indoor": "70 °F", "elevation": "0 ft"},
        constructions={
            "wall": {"kind": "wall", "u_value": "U-0.083"}, "window": {"kind": "window", "u_value": "U-0.50"},
            "door": {"kind": "door", "u_value": "U-0.35"}, "ceiling": {"kind": "ceiling",
            "u_value": "U-0.030"},
            "edge": {"kind": "slab edge", "f_factor": "0.54 Btu/(h·ft·°F)"},
        },
        levels={"main": {"wall_height": "8 ft", "ceiling_height": "8 ft"}},
        air={"changes": "0.5 ACH"}, rooms=rooms,
    ))  # fmt: skip


@pytest.mark.parametrize("room", SLAB_HOUSE)
def test_a_house_room_by_room(room: str) -> None:
    done = slab_house()
    *expected, air = SLAB_HOUSE[room][4]
    air *= air_share(done, EASY_AIR)
    lost = done.losses.rooms[room]
    for cause, value in zip(CAUSES, [*expected, air], strict=True):
        got = float(lost.causes[cause].loss) / BTU_H if cause in lost.causes else 0.0
        assert got == pytest.approx(value, abs=0.005), cause
    assert float(lost.loss) / BTU_H == pytest.approx(sum(expected) + air, abs=0.01)


def test_a_house_as_a_whole() -> None:
    done = slab_house()
    extra = 5644.8 * (air_share(done, EASY_AIR) - 1)
    house = done.losses.house
    assert float(house.loss) / BTU_H == pytest.approx(23884.42 + extra, abs=0.02)
    coefficient = UNITS["Btu/(h·°F)"].from_si(float(house.coefficient))
    assert coefficient == pytest.approx(341.206 + extra / 70, abs=0.0005)
    assert UNITS["Btu/(h·ft²)"].from_si(float(house.per_area)) == pytest.approx(
        21.325 + extra / 1120, abs=0.001
    )
    assert max(house.causes, key=lambda each: float(house.causes[each].loss)) == "air"


def test_air_by_hand_is_the_round_figure() -> None:
    from heatledger.physics.air import air_loss_by_hand

    lost = slab_house().losses.rooms["living"]
    by_hand = air_loss_by_hand(
        volume=float(lost.air.volume), changes=float(lost.air.changes), indoor=float(lost.indoor),
        outdoor=float(slab_house().losses.site.outdoor),
    )  # fmt: skip
    assert float(by_hand) / BTU_H == pytest.approx(1612.8, abs=0.01)


MIXED = {
    # floor m², indoor °C, outside, garage, party m; window, door m²; then walls, windows, garage and door,
    # party, ceiling, slab, air and partitions in W
    "living": (30, 20, 6, 0, 5, 6, 0, (81.0, 216.0, 0.0, 62.5, 135.0, 180.0, 153.0, 0.0)),
    "kitchen": (20, 20, 9, 0, 0, 3, 0, (175.5, 108.0, 0.0, 0.0, 90.0, 270.0, 102.0, 54.0)),
    "bedroom": (12, 18, 4, 0, 3, 2, 0, (67.2, 67.2, 0.0, 30.0, 50.4, 112.0, 57.12, -117.0)),
    "bath": (7.5, 24, 2.5, 0, 0, 0.8, 0, (55.59, 32.64, 0.0, 0.0, 38.25, 85.0, 43.35, 234.0)),
    "hall": (10.5, 16, 3.5, 3, 0, 0, 2, (52.65, 0.0, 150.8, 0.0, 40.95, 169.0, 46.41, -171.0)),
}
PARTITIONS = (
    ("living", "bedroom", 4), ("living", "bath", 2), ("living", "kitchen", 5), ("kitchen", "bath", 0.5),
    ("kitchen", "hall", 3.5), ("bedroom", "bath", 3), ("bath", "hall", 3),
)  # fmt: skip


@cache
def mixed_house() -> Design:
    rooms = {}
    for id, (floor, indoor, outside, garage, party, window, door, _) in MIXED.items():
        openings = {"window": f"{window} m2" if window else "", "door": f"{door} m2" if door else ""}
        given = {key: area for key, area in openings.items() if area}
        surfaces = {"outside": wall(f"{outside} m", **given)}
        if garage:
            surfaces["garage"] = wall(f"{garage} m", "garage")
        if party:
            surfaces["party"] = wall(f"{party} m", "party", "neighbors/next")
        surfaces["ceiling"] = flat(f"{floor} m2", "ceiling")
        surfaces["edge"] = {"construction": "edge", "length": f"{outside + garage} m"}
        for one, other, length in PARTITIONS:
            if one == id:
                surfaces[f"to-{other}"] = wall(f"{length} m", "partition", f"rooms/{other}")
        rooms[id] = {
            "level": "main",
            "floor_area": f"{floor} m2",
            "indoor": f"{indoor} °C",
            "surfaces": surfaces,
        }
    kinds = {"wall": 0.30, "garage": 0.40, "party": 0.5, "partition": 1.8}
    made = {each: {"kind": "wall", "u_value": f"{u} W/(m²·K)"} for each, u in kinds.items()}
    made["window"] = {"kind": "window", "u_value": "1.2 W/(m²·K)"}
    made["door"] = {"kind": "door", "u_value": "1.4 W/(m²·K)"}
    made["ceiling"] = {"kind": "ceiling", "u_value": "0.15 W/(m²·K)"}
    made["edge"] = {"kind": "slab edge", "f_factor": "1.0 W/(m·K)"}
    return design(job_of(
        "metric", site={"outdoor": "-10 °C", "indoor": "20 °C", "elevation": "0 m"}, constructions=made,
        levels={"main": {"wall_height": "2.5 m", "ceiling_height": "2.5 m"}},
        neighbors={"next": {"temperature": "10 °C"}}, air={"changes": "0.2 ACH"}, rooms=rooms,
    ))  # fmt: skip


@pytest.mark.parametrize("room", MIXED)
def test_rooms_at_different_temperatures(room: str) -> None:
    done = mixed_house()
    lost = done.losses.rooms[room]
    found = {id: float(each.loss) for id, each in lost.surfaces.items()}
    opened = {key: float(one.loss) for each in lost.surfaces.values() for key, one in each.openings.items()}
    own = {"outside", "garage", "party", "ceiling", "edge"}
    got = (
        found["outside"], opened.get("window", 0.0), found.get("garage", 0.0) + opened.get("door", 0.0),
        found.get("party", 0.0), found["ceiling"], found["edge"],
        float(lost.air.loss) * METRIC_AIR / float(lost.air.heat),
        sum(each for id, each in found.items() if id not in own),
    )  # fmt: skip
    assert got == pytest.approx(MIXED[room][7], abs=0.005)


def test_heat_between_rooms_cancels_in_the_house() -> None:
    done = mixed_house()
    between = [
        float(each.loss) for room in done.losses.rooms.values() for each in room.surfaces.values()
        if each.beyond.kind == "room"
    ]  # fmt: skip
    assert len(between) == 2 * len(PARTITIONS)
    assert sum(between) == pytest.approx(0.0, abs=1e-9)
    # Every room warms its own air, so a cool room's is a little heavier.
    air = sum(MIXED[id][7][6] * float(each.air.heat) / METRIC_AIR for id, each in done.losses.rooms.items())
    assert float(done.losses.house.loss) == pytest.approx(2860.26 - 188.70 - 401.88 + air, abs=0.01)


def test_a_basement_that_is_heated() -> None:
    surfaces = {
        "walls": {"construction": "buried", "length": "36 m", "bottom": "1.8 m"},
        "floor": {"construction": "floor", "width": "8 m", "depth": "1.8 m"},
    }
    done = design(job_of(
        "metric",
        site={"outdoor": "-15 °C", "indoor": "20 °C", "elevation": "0 m", "ground_temperature": "10 °C",
              "ground_amplitude": "10 K", "soil_conductivity": "1.4 W/(m·K)"},
        constructions={"buried": {"kind": "below-grade wall", "r_value": "0.259 m²·K/W"},
                       "floor": {"kind": "below-grade floor", "r_value": "0.259 m²·K/W"}},
        levels={"down": {"wall_height": "2.5 m", "ceiling_height": "2.3 m"}}, air={"changes": "0 ACH"},
        rooms={"basement": {"level": "down", "size": "10 m × 8 m", "surfaces": surfaces}},
    ))  # fmt: skip
    lost = done.losses.rooms["basement"]
    assert float(lost.surfaces["walls"].u_value) == pytest.approx(1.076694, abs=1e-6)
    assert float(lost.surfaces["floor"].u_value) == pytest.approx(0.1779433, abs=1e-7)
    assert float(lost.surfaces["walls"].loss) == pytest.approx(1395.40, abs=0.005)
    assert float(lost.surfaces["floor"].loss) == pytest.approx(284.71, abs=0.005)
    assert float(lost.loss) == pytest.approx(1680.10, abs=0.01)


def test_a_crawlspace_finds_its_own_temperature() -> None:
    """The case takes 0.018 for air and a given U below grade, so the ground stands in as a neighbor."""
    site = {"outdoor": "0 °F", "indoor": "70 °F", "elevation": "0 ft"}
    heat = float(slab_house().losses.site.air_heat) / EASY_AIR
    done = design(job_of(
        "US", site=site,
        constructions={"floor": {"kind": "floor", "u_value": "U-0.05"}, "above": {"kind": "wall",
        "u_value": "U-0.30"},
                       "below": {"kind": "wall", "u_value": "U-0.20"}},
        levels={"main": {"wall_height": "8 ft", "ceiling_height": "8 ft"}}, air={"changes": "0.5 ACH"},
        neighbors={"earth": {"temperature": "28 °F"}},
        rooms={"room": {"level": "main", "size": "40' × 28'", "surfaces": {
            "floor": flat("1120 ft2", "floor", "unheated/crawl")}}},
        unheated={"crawl": {"volume": "3360 ft3", "air": {"changes": f"{0.5 / heat:.12f} ACH"}, "surfaces": {
            "above": flat("204 ft2", "above"), "below": flat("204 ft2", "below", "neighbors/earth")}}},
    ))  # fmt: skip
    fahrenheit = UNITS["°F"].from_si(float(done.losses.unheated["crawl"].temperature), True)
    assert fahrenheit == pytest.approx(26.89333, abs=1e-5)
    floor = float(done.losses.rooms["room"].surfaces["floor"].loss) / BTU_H
    assert floor == pytest.approx(2413.974, abs=0.001)


def test_an_attic_finds_its_own_temperature() -> None:
    flow = 0.040 * 1230.0  # 40 L/s of air at 1.23 kJ/(m³·K)
    heat = float(mixed_house().losses.site.air_heat)
    done = design(job_of(
        "metric", site={"outdoor": "-20 °C", "indoor": "20 °C", "elevation": "0 m"},
        constructions={"ceiling": {"kind": "ceiling", "u_value": "0.15 W/(m²·K)"},
                       "roof": {"kind": "ceiling", "u_value": "2.5 W/(m²·K)"}},
        levels={"main": {"wall_height": "2.5 m", "ceiling_height": "2.5 m"}}, air={"changes": "0.5 ACH"},
        rooms={"room": {"level": "main", "size": "10 m × 10 m", "surfaces": {
            "ceiling": flat("100 m2", "ceiling", "unheated/attic")}}},
        unheated={"attic": {"volume": "100 m3", "air": {"changes": f"{flow / heat * 36:.12f} "
                                                                   "ACH"}, "surfaces": {
            "roof": flat("130 m2", "roof")}}},
    ))  # fmt: skip
    assert float(done.losses.unheated["attic"].temperature) - 273.15 == pytest.approx(-18.45838, abs=1e-5)
    assert float(done.losses.rooms["room"].surfaces["ceiling"].loss) == pytest.approx(576.876, abs=0.001)


@pytest.mark.parametrize(("factor", "loss"), [("0.73", 6949.6), ("0.54", 5140.8)])
def test_a_slab_by_its_edge(factor: str, loss: float) -> None:
    done = design(job_of(
        "US", site={"outdoor": "0 °F", "indoor": "70 °F", "elevation": "0 ft"}, air={"changes": "0 ACH"},
        constructions={"edge": {"kind": "slab edge", "f_factor": f"{factor} Btu/(h·ft·°F)"}},
        levels={"main": {"wall_height": "8 ft", "ceiling_height": "8 ft"}},
        rooms={"room": {"level": "main", "size": "40' × 28'", "surfaces": {
            "edge": {"construction": "edge", "length": "136 ft"}}}},
    ))  # fmt: skip
    assert float(done["house/loss"]) / BTU_H == pytest.approx(loss, abs=0.05)


@pytest.mark.parametrize(("elevation", "loss"), [("0 ft", 1010.88), ("5280 ft", 832.324)])
def test_air_of_a_room_at_two_heights(elevation: str, loss: float) -> None:
    """The case takes 0.018 at sea level; the ratio of the two heights is that of the air pressures."""
    done = design(job_of(
        "US", site={"outdoor": "5 °F", "indoor": "70 °F", "elevation": elevation}, air={"changes": "0.6 ACH"},
        constructions={}, levels={"main": {"wall_height": "8 ft", "ceiling_height": "8 ft"}},
        rooms={"room": {"level": "main", "size": "15' × 12'"}},
    ))  # fmt: skip
    assert float(done["house/loss"]) / BTU_H == pytest.approx(
        loss * air_share(slab_house(), EASY_AIR), rel=1e-5
    )

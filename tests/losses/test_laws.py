"""What must hold for every house: sums, directions, and that nothing depends on how it was written down."""

from __future__ import annotations

from collections.abc import Mapping
from math import isclose
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.ledger.figures import Leaf, LeafKind, ancestors
from heatledger.ledger.results import walk_results
from heatledger.steps.design import Design, design, entries
from tests.losses.houses import TEXTS, house
from tests.losses.plain import flat, job_of

FEW = settings(max_examples=25)
LENGTHS = st.floats(1.5, 12.0).map(lambda each: round(each, 3))
U_VALUES = st.floats(0.1, 2.5).map(lambda each: round(each, 3))
WARMTH = st.floats(5.0, 26.0).map(lambda each: round(each, 2))
Numbers = Mapping[str, Any]


@st.composite
def numbers(draw: st.DrawFn) -> Numbers:
    """The numbers of a house of one to four rooms in a row, over a cellar, beside a shed and a neighbor."""
    rooms = [
        {"width": draw(LENGTHS), "indoor": draw(WARMTH), "window": draw(st.floats(0.1, 2.0)), "air": draw(st.floats(0, 2))}
        for _ in range(draw(st.integers(1, 4)))
    ]
    return {
        "rooms": rooms, "deep": draw(LENGTHS), "high": draw(st.floats(2.2, 3.5)), "wall": draw(U_VALUES),
        "window": draw(U_VALUES), "floor": draw(U_VALUES), "shed": draw(st.floats(0.2, 3)),
        "outdoor": draw(st.floats(-30, 4)), "elevation": draw(st.floats(0, 2500)), "soil": draw(st.floats(0.6, 2.5)),
        "sheds": draw(st.booleans()),
    }  # fmt: skip


UNIT_TEXTS = {
    # what a number is: metric unit; inch-pound unit and how many of it one metric unit is
    "length": ("m", "ft", 1 / 0.3048), "area": ("m2", "ft2", 1 / 0.3048**2), "volume": ("m3", "ft3", 1 / 0.3048**3),
    "u": ("W/(m²·K)", "Btu/(h·ft²·°F)", 1 / 5.678263341113488),
    "r": ("m²·K/W", "h·ft²·°F/Btu", 5.678263341113488),
    "f": ("W/(m·K)", "Btu/(h·ft·°F)", 1 / 1.7307346663713912), "heat": ("W", "Btu/h", 3.412141633127942),
    "swing": ("K", "°F", 1.8),
}  # fmt: skip


def build(made: Numbers, metric: bool = True, split: bool = False) -> Design:
    """The house of some numbers, written in either system, and perhaps with its walls in two pieces."""

    def q(value: float, kind: str) -> str:
        unit, other, factor = UNIT_TEXTS[kind]
        return f"{value:.15g} {unit}" if metric else f"{value * factor:.15g} {other}"

    def t(celsius: float) -> str:
        return f"{celsius:.15g} °C" if metric else f"{celsius * 1.8 + 32:.15g} °F"

    deep, rooms = made["deep"], {}
    for i, room in enumerate(made["rooms"]):
        pieces = (0.4, 0.6) if split else (1.0,)
        surfaces: dict[str, Any] = {}
        for n, piece in enumerate(pieces):
            wall = {"construction": "wall", "length": q(room["width"] * piece, "length"), "beyond": "outdoors"}
            if n == len(pieces) - 1:
                glass = {"construction": "window", "area": q(room["window"] * room["width"] * 0.5, "area")}
                wall["openings"] = {"w": glass}
            surfaces[f"south-{n}"] = wall
        surfaces["floor"] = flat(q(room["width"] * deep, "area"), "floor", "unheated/cellar")
        if i:
            surfaces["partition"] = {"construction": "wall", "length": q(deep, "length"), "beyond": f"rooms/r{i - 1}"}
        else:
            end = "unheated/shed" if made["sheds"] else "neighbors/next"
            surfaces["end"] = {"construction": "wall", "length": q(deep, "length"), "beyond": end}
        rooms[f"r{i}"] = {
            "level": "main", "floor_area": q(room["width"] * deep, "area"), "indoor": t(room["indoor"]),
            "air": {"changes": f"{room['air']:.15g} ACH"}, "surfaces": surfaces,
        }  # fmt: skip
    cellar = {
        "walls": {"construction": "buried", "length": q(4 * deep, "length"), "bottom": q(1.8, "length")},
        "ground": {"construction": "slab", "area": q(deep * deep, "area"), "width": q(deep, "length"),
                   "depth": q(1.8, "length")},
        "above": flat(q(deep, "area"), "wall"),
    }  # fmt: skip
    unheated = {"cellar": {"volume": q(2 * deep * deep, "volume"), "heat": q(150, "heat"), "air": {"changes": "0.2 ACH"},
                           "surfaces": cellar}}
    if made["sheds"]:
        cellar["to-shed"] = flat(q(3.0, "area"), "wall", "unheated/shed")
        shed = {"boards": flat(q(20, "area"), "boards")}
        unheated["shed"] = {"volume": q(40, "volume"), "air": {"changes": "3 ACH"}, "surfaces": shed}
    kinds = {"wall": ("wall", made["wall"]), "window": ("window", made["window"]), "floor": ("floor", made["floor"]),
             "boards": ("wall", made["shed"])}
    constructions: dict[str, Any] = {
        id: {"kind": kind, "u_value": q(u_value, "u")} for id, (kind, u_value) in kinds.items()
    }
    constructions["buried"] = {"kind": "below-grade wall", "r_value": q(0.5, "r")}
    constructions["slab"] = {"kind": "below-grade floor", "r_value": q(0.3, "r")}
    return design(job_of(
        "metric" if metric else "US",
        site={"outdoor": t(made["outdoor"]), "indoor": t(20), "elevation": q(made["elevation"], "length"),
              "ground_temperature": t(10), "ground_amplitude": q(6, "swing"),
              "soil_conductivity": q(made["soil"], "f")},
        constructions=constructions, neighbors={"next": {"temperature": t(12)}},
        levels={"main": {"wall_height": q(made["high"], "length"), "ceiling_height": q(made["high"], "length")}},
        rooms=rooms, unheated=unheated,
    ))  # fmt: skip


def near(one: float, other: float, share: float = 1e-9) -> bool:
    return isclose(float(one), float(other), rel_tol=share, abs_tol=1e-6)


def with_one(made: Numbers, **changed: Any) -> Numbers:
    return {**made, **changed}


@FEW
@given(numbers())
def test_rooms_levels_and_causes_sum_to_the_house(made: Numbers) -> None:
    losses = build(made).losses
    whole = float(losses.house.loss)
    assert near(sum(float(each.loss) for each in losses.rooms.values()), whole)
    assert near(sum(float(each.loss) for each in losses.levels.values()), whole)
    assert near(sum(float(each.loss) for each in losses.house.causes.values()), whole)
    for room in losses.rooms.values():
        parts = [float(each.loss) for each in room.surfaces.values()]
        parts += [float(one.loss) for each in room.surfaces.values() for one in each.openings.values()]
        assert near(sum(parts) + float(room.air.loss), room.loss)


@FEW
@given(numbers())
def test_what_passes_between_rooms_cancels(made: Numbers) -> None:
    losses = build(made).losses
    between = [
        float(each.loss) for room in losses.rooms.values() for each in room.surfaces.values() if each.beyond.kind == "room"
    ]
    assert near(sum(between), 0.0)
    others = sum(
        float(each.loss) + sum(float(one.loss) for one in each.openings.values())
        for room in losses.rooms.values() for each in room.surfaces.values() if each.beyond.kind != "room"
    )  # fmt: skip
    assert near(others + sum(float(each.air.loss) for each in losses.rooms.values()), losses.house.loss)


@FEW
@given(numbers(), st.floats(1.01, 2.0))
def test_more_u_value_area_air_or_difference_is_more_loss(made: Numbers, more: float) -> None:
    warm = [{**each, "indoor": 20.0} for each in made["rooms"]]
    base = with_one(made, rooms=warm)
    loss = float(build(base).losses.house.loss)
    higher = [
        with_one(base, wall=base["wall"] * more), with_one(base, window=base["window"] * more),
        with_one(base, outdoor=base["outdoor"] - 5 * more), with_one(base, high=base["high"] * more),
        with_one(base, rooms=[{**each, "air": each["air"] + 0.1 * more} for each in warm]),
    ]  # fmt: skip
    # A window lets more through than the wall it takes the place of, or less.
    if base["window"] > base["wall"] + 0.01:
        higher.append(with_one(base, rooms=[{**each, "window": each["window"] * more} for each in warm]))
    for each in higher:
        assert float(build(each).losses.house.loss) >= loss - 1e-9


@FEW
@given(numbers())
def test_a_wall_in_two_pieces_loses_the_same(made: Numbers) -> None:
    one, two = build(made).losses, build(made, split=True).losses
    assert near(one.house.loss, two.house.loss)
    for id, room in one.rooms.items():
        assert near(room.loss, two.rooms[id].loss)


@FEW
@given(numbers())
def test_both_systems_of_units_give_one_answer(made: Numbers) -> None:
    metric, inch_pound = build(made).results, build(made, metric=False).results
    assert metric.keys() == inch_pound.keys()
    for path, figure in metric.items():
        assert near(figure, inch_pound[path]), path


def balance(done: Design, id: str) -> tuple[float, float]:
    """Heat that stays in an unheated space, which must be none, and the size of what passes through it."""
    space, losses = done.losses.unheated[id], done.losses
    own, flows = float(space.temperature), []
    for each in space.surfaces.values():
        there = {
            "outdoors": losses.site.outdoor, "ground": losses.site.ground,
            "room": losses.rooms[each.beyond.id].indoor if each.beyond.kind == "room" else 0.0,
            "neighbor": done.job.neighbors[each.beyond.id].temperature if each.beyond.kind == "neighbor" else 0.0,
            "unheated": losses.unheated[each.beyond.id].temperature if each.beyond.kind == "unheated" else 0.0,
        }[each.beyond.kind]  # fmt: skip
        flows.append(float(each.conductance) * (float(there) - own))
    if space.air is not None:
        flows.append(float(space.air.conductance) * (float(losses.site.outdoor) - own))
    if space.heat is not None:
        flows.append(float(space.heat))
    return sum(flows), sum(abs(each) for each in flows)


@FEW
@given(numbers())
def test_unheated_spaces_keep_no_heat(made: Numbers) -> None:
    """Also two that touch, which are found together."""
    done = build(made)
    for id in done.losses.unheated:
        stays, passes = balance(done, id)
        assert abs(stays) <= 1e-9 * passes


@FEW
@given(numbers())
def test_what_a_room_gives_a_space_is_what_the_space_takes(made: Numbers) -> None:
    done = build(made)
    cellar = done.losses.unheated["cellar"]
    for id, room in done.losses.rooms.items():
        taken = float(cellar.surfaces[f"{id}-floor"].conductance) * (float(room.indoor) - float(cellar.temperature))
        assert near(room.surfaces["floor"].loss, taken)


@pytest.mark.parametrize("name", TEXTS)
def test_every_figure_ends_in_the_job_the_catalog_or_a_source(name: str) -> None:
    done = design(house(name))
    given_paths = {each.origin.path for each in entries(done.job) if isinstance(each.origin, Leaf)}
    for figure in ancestors(*done.results.values()):
        origin = figure.origin
        if not isinstance(origin, Leaf):
            assert figure.inputs
        elif origin.kind is LeafKind.JOB:
            assert origin.path in given_paths
            assert origin.typed
        else:
            assert origin.kind in (LeafKind.CATALOG, LeafKind.SOURCE)
            assert origin.citation is not None


@pytest.mark.parametrize("name", TEXTS)
def test_no_path_is_defined_twice(name: str) -> None:
    done = design(house(name))
    paths = [path for path, _ in walk_results(done.losses)]
    assert len(paths) == len(set(paths))
    for figure in entries(done.job):
        if isinstance(figure.origin, Leaf) and figure.origin.path in done.results:
            assert done.results[figure.origin.path] is figure

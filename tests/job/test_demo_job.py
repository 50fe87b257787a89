"""The demo house is the one that was drawn: its areas are worked out here from the tape once more."""

from __future__ import annotations

from math import isclose

import pytest

from heatledger.job.load import read_job
from heatledger.job.missing import missing_entries
from heatledger.job.model import Job, Opening, Room, Surface
from heatledger.ledger.figures import Figure, LeafKind, leaves
from tests.job.samples import EXAMPLES, example

FT2 = 0.3048**2

# Room: floor, gross wall, windows, doors (ft²), ceiling above, floor below. By hand from the plan.
AREAS = {
    "living": (14.5 * 13.5, 28 * 9, 51, 0, False, True),
    "dining": (12 * 13.5, 25.5 * 9, 36, 0, False, True),
    "kitchen": (12 * 11, 23 * 9, 22, 0, False, True),
    "study": (14.5 * 11, 25.5 * 9, 24, 0, False, True),
    "hall": (6.5 * 24.5, 13 * 9 + 13 * 8, 24, 41, True, True),
    "bedroom-1": (14.5 * 13.5, 28 * 8, 34.5, 0, True, False),
    "bedroom-2": (12 * 13.5, 25.5 * 8, 24, 0, True, False),
    "bedroom-3": (14.5 * 11, 25.5 * 8, 24, 0, True, False),
    "bathroom": (12 * 11, 23 * 8, 6, 0, True, False),
}


@pytest.fixture(scope="module")
def ferrow() -> Job:
    return read_job(example("ferrow-house"), "ferrow-house.yaml")


def given(figure: Figure | None) -> Figure:
    assert figure is not None
    return figure


def gross(surface: Surface) -> float:
    if surface.area is not None:
        return float(surface.area) / FT2
    other = surface.height if surface.construction.kind == "wall" else surface.width
    return float(given(surface.length)) * float(given(other)) / FT2


def glass(opening: Opening) -> float:
    return float(opening.count) * float(given(opening.width)) * float(given(opening.height)) / FT2


def walls_of(room: Room, kind: str) -> float:
    return sum(gross(each) for each in room.surfaces.values() if each.construction.kind == kind)


@pytest.mark.parametrize("room", AREAS)
def test_areas_of_each_room(ferrow: Job, room: str) -> None:
    floor, wall, windows, doors, ceiling, below = AREAS[room]
    here = ferrow.rooms[room]
    openings = [each for surface in here.surfaces.values() for each in surface.openings.values()]
    assert here.length is not None
    assert here.width is not None
    assert isclose(float(here.length) * float(here.width) / FT2, floor)
    assert isclose(walls_of(here, "wall"), wall)
    for kind, area in (("window", windows), ("door", doors)):
        assert isclose(sum(glass(each) for each in openings if each.construction.kind == kind), area)
    assert isclose(walls_of(here, "ceiling"), floor if ceiling else 0)
    assert isclose(walls_of(here, "floor"), floor if below else 0)


def test_the_house_as_a_whole(ferrow: Job) -> None:
    assert ferrow.invented
    assert ferrow.units.name == "US"
    assert ferrow.built == 1926
    assert len(ferrow.rooms) == len(AREAS)
    # The plans count the hall on both floors; as a room it is one, 16 ft high.
    assert isclose(sum(each[0] for each in AREAS.values()) + 6.5 * 24.5, 1617)
    assert isclose(float(given(ferrow.heated_floor_area)) / FT2, 1617)
    assert list(ferrow.unheated) == ["basement", "attic", "garage"]
    assert list(ferrow.what_ifs) == ["low-e", "tight-air", "attic-r49", "cooler-water", "longer-kitchen"]
    assert isclose(float(ferrow.expectations["fuel-bills"].about), 37100 * 0.29307107, rel_tol=1e-6)
    assert float(ferrow.expectations["fuel-bills"].within) == 0.1


def test_a_value_knows_its_line_and_the_words_typed(ferrow: Job) -> None:
    figure = ferrow.rooms["kitchen"].surfaces["north-wall"].length
    assert figure is not None
    assert figure.origin.path == "rooms/kitchen/surfaces/north-wall/length"
    assert figure.origin.typed == "12' 0\""
    assert figure.origin.words == "length"
    row = ferrow.source.text.splitlines()[ferrow.source.line_of(figure.origin.path) - 1]
    assert row.strip() == "length: 12' 0\""
    width = ferrow.rooms["kitchen"].surfaces["north-wall"].openings["w6"].width
    assert width is not None
    assert "w6:" in ferrow.source.text.splitlines()[ferrow.source.line_of(width.origin.path) - 1]


def test_a_wall_takes_the_height_of_its_level(ferrow: Job) -> None:
    wall = ferrow.rooms["kitchen"].surfaces["north-wall"]
    assert wall.height is ferrow.levels["ground"].wall_height
    assert ferrow.rooms["study"].indoor is ferrow.site.indoor
    assert ferrow.rooms["study"].ceiling_height is ferrow.levels["ground"].ceiling_height


def test_a_catalog_row_comes_with_its_source(ferrow: Job) -> None:
    figure = ferrow.constructions["wall-2x4"].u_value
    assert figure is not None
    assert figure.origin.kind is LeafKind.CATALOG
    assert figure.origin.typed == "0.0915"
    assert figure.origin.citation is not None
    assert figure.origin.known == "told"
    assert figure.origin.half_range == pytest.approx(0.12 * float(figure))


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_example_is_whole(name: str) -> None:
    job = read_job(example(name))
    assert job.invented
    assert missing_entries(job) == []
    assert all(isinstance(each, Figure) for each in leaves(job.site.outdoor))


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_what_if_of_an_example_can_be_laid(name: str) -> None:
    job = read_job(example(name))
    for each in job.what_ifs:
        assert job.with_what_ifs(each).laid == (each,)
    assert job.with_what_ifs(*job.what_ifs).laid == tuple(job.what_ifs)

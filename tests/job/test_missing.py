"""What is missing is no error: the job is read, and tells what it waits for."""

from __future__ import annotations

import pytest

from heatledger.job.load import read_job
from heatledger.job.missing import missing_entries
from tests.job.samples import small


def paths(text_changes: tuple[tuple[str, str], ...], add: str = "") -> list[str]:
    return [each.path for each in missing_entries(small(*text_changes, add=add))]


def test_a_whole_job_misses_nothing() -> None:
    assert missing_entries(small()) == []


@pytest.mark.parametrize(
    ("old", "new", "path"),
    [
        ("length: 12'", "length:", "rooms/kitchen/surfaces/north-wall/length"),
        ("length: 12'", "length: {known: told}", "rooms/kitchen/surfaces/north-wall/length"),
        ("u_value: U-0.09", "name: Wall", "constructions/wall/u_value"),
        ("outdoor: 0 °F, ", "", "site/outdoor"),
        ("indoor: 70 °F, ", "", "site/indoor"),
        (", elevation: 40 ft", "", "site/elevation"),
        ("air: {changes: 0.5 ACH}\n", "", "air/changes"),
        ("wall_height: 9 ft, ", "", "levels/ground/wall_height"),
        ("    floor_area: 100 ft2\n", "", "rooms/hall/floor_area"),
        ("size: 2' × 4'", "width: 2'", "rooms/kitchen/surfaces/north-wall/openings/w1/height"),
    ],
)
def test_each_gap_is_named_by_its_path(old: str, new: str, path: str) -> None:
    assert paths(((old, new),)) == [path]


def test_ground_is_asked_for_only_below_grade() -> None:
    space = (
        "unheated:\n  cellar:\n    volume: 900 ft3\n    air: {changes: 0.1 ACH}\n    surfaces:\n"
        "      floor: {construction: deep, area: 90 ft2, width: 9 ft, depth: 6 ft}\n"
    )
    deep = ("constructions:\n", "constructions:\n  deep: {kind: below-grade floor, r_value: R-1.47}\n")
    assert paths((deep,), add=space) == [
        "site/ground_temperature", "site/ground_amplitude", "site/soil_conductivity",
    ]  # fmt: skip


def test_a_figure_without_a_value_stands_in_its_place() -> None:
    job = small(("length: 12'", "length:"))
    length = job.rooms["kitchen"].surfaces["north-wall"].length
    assert length is not None
    assert length.is_missing
    assert length.origin.words == "length"


def test_the_smallest_job_there_is() -> None:
    job = read_job("format: 1\nunits: metric\n")
    assert [each.path for each in missing_entries(job)] == [
        "rooms", "site/outdoor", "site/indoor", "site/elevation",
    ]  # fmt: skip

"""Claim: every figure of the demo jobs has a title a person of the trade reads: words and names, no ids."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from functools import cache
from importlib import resources

import pytest

from heatledger.job.load import load_job
from heatledger.ledger.figures import Leaf, LeafKind, ancestors
from heatledger.ledger.presets import METRIC
from heatledger.steps.design import Design, design
from heatledger.steps.names import title_at
from heatledger.steps.titles import TITLES, weather_of

DEMOS = ("ferrow-house", "lerch-cottage", "tamm-street")


@cache
def demo(name: str) -> Design:
    text = resources.files("heatledger").joinpath("examples", f"{name}.yaml").read_text("utf-8")
    return design(load_job(text))


def ids_of(house: Design) -> set[str]:
    """Ids of the job that nobody would say aloud: with a hyphen or a digit in them."""
    job, system = house.job, house.job.system
    things = [
        job.rooms, job.unheated, job.neighbors, job.levels, job.constructions, system.emitters, system.zones,
        system.circuits, system.plant.circulators, system.bills,
    ]  # fmt: skip
    return {id for each in things for id in each if "-" in id or any(sign.isdigit() for sign in id)}


def titles(house: Design) -> Iterator[tuple[str, str]]:
    """Path and title of every figure, inner ones too."""
    for path, figure in house.figures.items():
        yield path, house.names.title(figure)
    for figure in ancestors(*house.results.values()):
        yield house.names.path(figure) or "inside", house.names.title(figure)


@pytest.mark.parametrize("name", DEMOS)
def test_every_title_is_words(name: str) -> None:
    house = demo(name)
    ids = ids_of(house)
    faults = set()
    for path, title in titles(house):
        raw = [each for each in ids if re.search(rf"(?<![\w-]){re.escape(each)}(?![\w-])", title)]
        if not title or "_" in title or "/" in re.sub(r"\d/\d", "", title) or raw or title[:1].islower():
            faults.add(f"{path}: {title!r}")
    assert not faults, "\n".join(sorted(faults))


@pytest.mark.parametrize("name", DEMOS)
def test_no_title_says_a_thing_twice(name: str) -> None:
    faults = {
        f"{path}: {title}"
        for path, title in titles(demo(name))
        if len(parts := title.split(", ")) != len(set(parts))
    }
    assert not faults, "\n".join(sorted(faults))


@pytest.mark.parametrize("name", DEMOS)
def test_two_figures_of_a_design_are_not_called_the_same(name: str) -> None:
    house = demo(name)
    by_title: dict[str, set[str]] = defaultdict(set)
    for figure in house.figures.values():
        origin = figure.origin
        if not isinstance(origin, Leaf) or origin.kind is LeafKind.JOB:
            by_title[house.names.title(figure)].add(house.names.path(figure))
    twice = {title: sorted(paths) for title, paths in by_title.items() if len(paths) > 1}
    assert not twice


def test_every_title_of_the_table_stands_somewhere() -> None:
    """A kind of place that no design has would be a slip of spelling."""
    fields = {path.rpartition("/")[2] for name in DEMOS for path in demo(name).figures}
    only_when_read = set(TITLES["startup/compared"]) | {"needed_rated"}
    assert {each for kind in TITLES.values() for each in kind} - fields <= only_when_read


@pytest.mark.parametrize(
    ("path", "title"),
    [
        ("emitters/kitchen-base/output", "Heat given, Kitchen baseboard, Kitchen"),
        ("emitters/bedroom-1-base/inlet", "Inlet, Bedroom 1 baseboard, Bedroom 1"),
        ("circuits/ground/actual_drop", "Temperature drop that results, Ground floor manifold"),
        ("circuits/ground/runs/study-base/head",
         "Head at the design flow, Ground floor manifold, Run of Study baseboard"),
        ("circuits/upper/fittings/90-ell", "Count of 90° ells, Upper floor loop"),
        ("plant/circulators/p1/actual_head", "Head that results, Boiler room, Circulator"),
        ("plant/volumes/tubes-ground/volume", "Water held, Boiler room, Tubes of Ground floor manifold"),
        ("plant/tank_volume", "Tank volume needed, Boiler room"),
        ("controls/reset/at-10-f/supply", "Supply needed, Controls, At 10 °F outdoors"),
        ("startup/supply_due", "Supply due, Startup"),
        ("startup/circuits/upper/drop", "Temperature drop due, Startup, Upper floor loop"),
        ("bills/last-winter/coefficient", "Loss per degree from fuel bills, Gas of last winter"),
    ],
)  # fmt: skip
def test_titles_say_what_and_whose(path: str, title: str) -> None:
    house = demo("ferrow-house")
    assert title_at(path, house.figures[path], house.job) == title


def test_a_point_of_the_reset_line_is_called_in_the_units_of_the_reader() -> None:
    house = demo("ferrow-house")
    assert weather_of("at-minus-10-f", house.job) == "At −10 °F outdoors"
    metric = demo("lerch-cottage")
    assert metric.job.units is METRIC
    assert weather_of("at-minus-5-c", metric.job) == "At −5 °C outdoors"
    assert weather_of("at-10-f", metric.job) == "At −12.2 °C outdoors"
    assert weather_of("design-day", metric.job) == "Design day"


@pytest.mark.parametrize(
    ("path", "title"),
    [
        ("circuits/ground/runs/dining-base/relative_roughness", "Roughness over bore, 1/2 in PEX"),
        ("circuits/upper/runs/bedroom-3-base/velocity",
         "Velocity at the design flow, Upper floor loop, 3/4 in copper, type M"),
        ("emitters/bedroom-2-base/flow", "Design flow, Upper floor loop"),
        ("emitters/study-base/flow", "Design flow, Study baseboard, Study"),
        ("circuits/ground/runs/study-base/velocity",
         "Velocity at the design flow, Ground floor manifold, Run of Study baseboard"),
    ],
)  # fmt: skip
def test_what_several_pieces_share_is_not_called_after_one_of_them(path: str, title: str) -> None:
    house = demo("ferrow-house")
    assert house.names.title(house.results[path]) == title


@pytest.mark.parametrize("name", DEMOS)
def test_no_piece_of_piping_opens_to_the_name_of_another(name: str) -> None:
    house = demo(name)
    names = {id: each.name for id, each in house.job.system.emitters.items()}
    for path, figure in house.results.items():
        steps = path.split("/")
        if steps[0] != "circuits" or len(steps) < 5 or steps[2] != "runs":
            continue
        others = {each for id, each in names.items() if id != steps[3] and each != names[steps[3]]}
        assert not [each for each in others if each in house.names.title(figure)], path

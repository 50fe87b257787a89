"""How figures, names and entries read on the paper."""

from __future__ import annotations

import pytest

from heatledger.drawings.figure_words import bare
from heatledger.drawings.matters_chart import matters_note
from heatledger.drawings.naming import as_part, headed, title_of
from heatledger.ledger.dimensions import LENGTH
from heatledger.ledger.figures import Leaf, LeafKind, leaf, missing
from heatledger.ledger.presets import METRIC, US
from heatledger.papers.references import by_standing
from heatledger.papers.tables import same_text
from heatledger.papers.words import height_above_sea, whole
from heatledger.papers.workings_data import SourceUse
from tests.papers.demo_papers import house, paper


@pytest.mark.parametrize(
    ("typed", "printed", "same"),
    [
        ("14' 6\"", "14′ 6″", True),
        ("6 ft", "6′ 0″", True),
        ("6'", "6′ 0″", True),
        ("U-0.35", "0.35 Btu/(h·ft²·°F)", True),
        ("U-0.3", "0.35 Btu/(h·ft²·°F)", False),
        ("R-11", "1.9 m²·K/W", False),
        ("-2F", "−2 °F", False),
        ("809 Btu/h", "809 Btu/h", True),
        ("6 ft", "1.83 m", False),
    ],
)
def test_what_was_typed_is_told_where_it_differs(typed: str, printed: str, same: bool) -> None:
    assert same_text(typed, printed) is same


def test_an_elevation_is_said_in_whole_feet_or_meters() -> None:
    height = leaf(12.192, LENGTH, Leaf(LeafKind.JOB, "site/elevation", "elevation", "40 ft"))
    assert height_above_sea(height, US) == "40 ft"
    assert height_above_sea(height, METRIC) == "12 m"
    assert height_above_sea(missing(LENGTH, "site/elevation", "elevation"), US) == ""


def test_headlines_are_whole_and_tables_line_up() -> None:
    area = house("ferrow-house").losses.house.floor_area
    assert whole(area, US) == "1,458 ft²"
    assert bare(area, US, 1) == "1,457.8"
    assert whole(missing(LENGTH, "a", "a"), US) == ""


def test_a_name_is_not_said_twice_under_its_own_heading() -> None:
    made = house("ferrow-house")
    living = made.losses.rooms["living"]
    wall = living.surfaces["south-wall"]
    assert title_of(wall.loss, made, "Living room") == ("South wall", "transmission loss")
    assert headed(wall.loss, made) == "Living room, South wall: transmission loss"
    assert headed(living.loss, made, "Living room") == "Heat loss"
    assert as_part(wall.loss, made, "Living room") == "South wall"
    assert as_part(living.loss, made, "House") == "Living room"
    assert headed(made.losses.site.design_difference, made) == "Temperature difference"


def test_a_surface_of_an_unheated_space_names_the_room_behind_it() -> None:
    made = house("ferrow-house")
    basement = made.losses.unheated["basement"]
    floor = next(each for each in basement.surfaces.values() if each.beyond.id == "living")
    assert headed(floor.conductance, made, "Basement") == "Floor, Living room: conductance"


def test_what_matters_is_named_without_the_site() -> None:
    names = [each.name for each in paper("ferrow-house").matters]
    assert "Mean ground temperature" in names
    assert not any("Site" in each for each in names)
    assert matters_note(()) == ""


def test_the_metric_paper_parts_thousands_with_a_space() -> None:
    band = paper("lerch-cottage", "metric").answer.band
    assert band is not None and band.group == "\u202f"


def test_uses_of_a_source_stand_under_their_standing() -> None:
    read, recalled = "read there", "from memory"
    uses = [SourceUse("eq 1", read), SourceUse("table 2", recalled), SourceUse("eq 5", read)]
    assert by_standing(uses) == (SourceUse("eq 1; eq 5", "read there"), SourceUse("table 2", "from memory"))

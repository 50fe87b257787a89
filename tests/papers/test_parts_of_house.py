"""The table of parts says whose each U-value is: the job's, a row's of the catalog, a formula's."""

from __future__ import annotations

import pytest

from heatledger.ledger.presets import METRIC, US, Preset
from heatledger.ledger.sources import DERIVED, SEEN, YOURS
from heatledger.papers.from_design import heat_loss_paper
from heatledger.papers.heat_loss_data import Entry, HeatLossPaper, PartLine
from heatledger.studies.parts import parts_of_house
from tests.papers.demo_papers import ONE_ROOM, designed, house

GROUND = """  outdoor: 5 °F
  ground_temperature: 50 °F
  ground_amplitude: 20 °F
  soil_conductivity: 0.8 Btu/(h·ft·°F)
"""


def paper_of(wall: str, surface: str = "", units: Preset = US) -> HeatLossPaper:
    """The paper of one room whose wall is ``wall``, with one more surface."""
    text = ONE_ROOM.replace("{name: Wall, kind: wall, u_value: U-0.06}", wall)
    text = text.replace(
        "site: {outdoor: 5 °F, indoor: 70 °F, elevation: 900 ft}",
        f"site:\n{GROUND}  indoor: 70 °F\n  elevation: 900 ft",
    )
    made = designed(text.rstrip() + f"\n      {surface}\n" if surface else text)
    return heat_loss_paper(made, units)


def part(made: HeatLossPaper, name: str) -> PartLine:
    return next(each for each in made.parts if each.name == name)


def entry(made: HeatLossPaper, name: str) -> Entry:
    return next(each for group in made.tape for each in group.entries if each.name == name)


@pytest.mark.parametrize(
    ("wall", "said"),
    [
        ("{name: Brick, kind: wall, r_value: R-2.5, known: assumed}", "given in the job as R-2.5, assumed"),
        ("{name: Brick, kind: wall, r_value: 2.5}", "given in the job as R 2.5 h·ft²·°F/Btu, told"),
        ("{name: Brick, kind: wall, u_value: U-.41, known: told}", "given in the job, told"),
        ("{name: Brick, kind: wall, u_value: 0.41, known: measured}", "given in the job, measured"),
        ("{name: Brick, kind: wall, u_value: 2.0 W/m2K}", "given in the job as 2.0 W/m2K, told"),
    ],
)
def test_a_value_of_the_job_is_the_users_own(wall: str, said: str) -> None:
    source = part(paper_of(wall.replace("}", ", known: told}") if "known" not in wall else wall, ""), "Brick")
    assert source.source.text == said
    assert source.source.standing == YOURS.value


def test_a_row_of_the_catalog_is_named_with_its_source_and_standing() -> None:
    wall = "{name: Outside wall, kind: wall, catalog: frame-wall-2x4-r-11}"
    here, abroad = (part(paper_of(wall, units=each), "Outside wall").source for each in (US, METRIC))
    assert here.text.startswith("2x4 wood frame, R-11: HOF-ch27")
    assert abroad.text.startswith("2x4 wood frame, R-11, 0.0915 Btu/(h·ft²·°F): HOF-ch27")
    assert here.standing == DERIVED.value


def test_the_edge_of_a_slab_is_sourced_by_its_own_f_factor() -> None:
    slab = """
  own: {name: Own edge, kind: slab edge, f_factor: 0.54, known: told}
  row: {name: Edge of the catalog, kind: slab edge, catalog: %s}"""
    from heatledger.catalog.loader import load_table

    key, row = next(iter(load_table("slab_edges").rows.items()))
    wall = "{name: Brick, kind: wall, u_value: 0.3}" + slab % key
    edges = (
        "a: {construction: own, length: 20 ft, beyond: outdoors}\n"
        "      b: {construction: row, length: 10 ft, beyond: outdoors}"
    )
    made = paper_of(wall, edges)
    own, read = part(made, "Own edge").source, part(made, "Edge of the catalog").source
    assert own.text == "given in the job as F 0.54 Btu/(h·ft·°F), told"
    assert own.standing == YOURS.value
    assert read.text.startswith(f"{row.name}, F {row.typed['f_factor']} ")
    assert read.text.endswith(str(row.citation))
    assert read.standing == row.citation.standing.value


def test_below_grade_the_formula_is_told_with_the_r_value_it_starts_from() -> None:
    wall = "{name: Stone, kind: below-grade wall, r_value: R-1.5, known: assumed}"
    made = paper_of(
        "{name: Brick, kind: wall, u_value: 0.3}\n  stone: " + wall,
        "s: {construction: stone, length: 20 ft, top: 0 ft, bottom: 5 ft, beyond: ground}",
    )
    source = part(made, "Stone").source
    assert source.text == "HOF-ch18, eqs 37-39; R-value: given in the job as R-1.5, assumed"
    assert source.standing == SEEN.value
    assert "Mean ground" in [each.name for each in made.conditions]
    assert "Mean ground" not in [each.name for each in paper_of("{kind: wall, u_value: 0.3}").conditions]


def test_one_construction_stands_together_and_is_sourced_once() -> None:
    parts = parts_of_house(house("ferrow-house"))
    names = [(each.cause, each.name) for each in parts]
    assert [each for i, each in enumerate(names) if each in names[:i] and each != names[i - 1]] == []
    made = heat_loss_paper(house("ferrow-house"), US)
    twice = [b for a, b in zip(made.parts, made.parts[1:], strict=False) if a.name == b.name]
    assert twice
    assert {each.source.text for each in twice} == {"as above"}


def test_a_reason_of_the_job_is_not_taken_for_a_neighbor_in_the_table() -> None:
    wall = (
        "{name: Outside wall, kind: wall,"
        " catalog: {is: frame-wall-2x4-r-11, known: told, because: code office}}"
    )
    details = entry(paper_of(wall), "Outside wall: U-value").details
    assert details[0] == "row: 2x4 wood frame, R-11, 0.0915 Btu/(h·ft²·°F)"
    assert "because: code office" in details
    near = [each for each in details if each.startswith("beside it ")]
    assert near == ["beside it 2x4 wood frame, empty cavity 0.2535", "beside it 2x4 wood frame, R-13 0.0844"]


def test_a_reason_for_an_entry_typed_in_the_job_is_told() -> None:
    wall = "{name: Brick, kind: wall, u_value: {is: 0.3, known: told, because: old drawing}}"
    assert "because: old drawing" in entry(paper_of(wall), "Brick: U-value").details

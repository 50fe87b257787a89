"""Claim: every table of the catalog is sound, and its derived values are what their layers give."""

import os
import subprocess
import sys
from importlib import resources
from pathlib import Path

import pytest
from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError

from heatledger.catalog.faults import KINDS, QUANTITIES
from heatledger.catalog.loader import (
    CONSTRUCTION_TABLES,
    air_changes_rows,
    constructions,
    load_table,
    row_for_sides,
    row_leaf,
    text_of_table,
)
from heatledger.catalog.plain import plain_table
from heatledger.ledger.dimensions import AIR_CHANGES, EDGE_LOSS, RESISTANCE, TRANSMITTANCE
from heatledger.ledger.figures import LeafKind
from heatledger.ledger.sources import DERIVED, JUDGMENT, MEMORY, SEEN
from heatledger.ledger.units import UNITS
from heatledger.physics.constructions import parallel_path_u
from heatledger.physics.envelope import u_from_r

SRC = {"PYTHONPATH": str(Path(__file__).parents[2] / "src")}
TABLES = sorted(
    each.name.removesuffix(".yaml")
    for each in resources.files("heatledger.catalog").iterdir()
    if each.name.endswith(".yaml")
)


@pytest.mark.parametrize("name", TABLES)
def test_every_table_loads(name):
    table = load_table(name)
    assert table.rows
    assert table.title
    assert table.columns
    for row in table.rows.values():
        assert row.name
        assert row.citation.place
        assert set(row.typed) == set(table.columns)


@pytest.mark.parametrize("name", TABLES)
def test_the_fast_reader_reads_what_the_full_one_reads(name):
    text = text_of_table(name)
    quick = plain_table(text)
    assert quick is not None, "a table of plain lines, please: it is read twenty times as fast"
    assert quick == YAML(typ="base", pure=True).load(text)


@pytest.mark.parametrize(
    "sample", sorted((Path(__file__).parent / "broken").glob("*.yaml")), ids=lambda each: each.stem
)
def test_the_fast_reader_is_right_or_gives_up(sample):
    text = sample.read_text("utf-8")
    quick = plain_table(text)
    assert quick is None or quick == YAML(typ="base", pure=True).load(text)


@pytest.mark.parametrize(
    "text",
    [
        "a: &x 1", "a: *x", "a: !t 1", "a: |\n  b", "a: 'b'", "- a", "a:\n - b", "a: {b: 1",
        "a: {b: 1} c", "a: {b: [1, 2}", "a: {b: 1, b: 2}", "a: 1\na: 2", "a: 1\n  b: 2", "  a: 1\n b: 2",
        "a: b: c", "a", "a: {b: 'c'}", 'a: "b\\n"', "a: {b: c: d}", "a: {b,c: 1}", "a: {b: {c: 1, }", "",
        "# nothing", "a:\tb", "a: {b: 1}\n  c: 2", "? a", "a: % b", "a: {b: 1} # {",
    ],
)  # fmt: skip
def test_the_fast_reader_knows_what_it_does_not_know(text):
    quick = plain_table(text)
    try:
        full = YAML(typ="base", pure=True).load(text)
    except YAMLError:
        full = None
    assert quick is None or quick == full


def test_every_table_of_constructions_is_merged():
    of_a_kind = {name for name in TABLES if load_table(name).kind}
    assert of_a_kind == set(CONSTRUCTION_TABLES)
    assert {each.kind for each in constructions().values()} == set(KINDS)
    for row in constructions().values():
        assert UNITS[row.unit].exponents == QUANTITIES[row.quantity][0].exponents


@pytest.mark.parametrize(
    ("key", "value", "unit", "standing"),
    [
        ("frame-wall-2x4-r-11", 0.0915, "Btu/(h·ft²·°F)", DERIVED),
        ("attic-r-30", 0.0332, "Btu/(h·ft²·°F)", DERIVED),
        ("attic-r-49", 0.0203, "Btu/(h·ft²·°F)", DERIVED),
        ("window-double-clear-wood-operable", 2.87, "W/(m²·K)", SEEN),
        ("window-double-low-e-high-solar-wood-fixed", 2.24, "W/(m²·K)", SEEN),
        ("window-double-clear-fiberglass-operable", 2.53, "W/(m²·K)", DERIVED),
        ("door-wood-solid", 2.3, "W/(m²·K)", SEEN),
        ("door-wood-default", 0.50, "Btu/(h·ft²·°F)", MEMORY),
        ("concrete-wall-8-in-bare", 0.694, "Btu/(h·ft²·°F)", DERIVED),
        ("concrete-below-grade-bare", 0.259, "m²·K/W", SEEN),
        ("slab-block-8-in-bare", 1.17, "W/(m·K)", SEEN),
        ("slab-bare", 0.73, "Btu/(h·ft·°F)", SEEN),
        ("slab-full-r-10", 0.36, "Btu/(h·ft·°F)", MEMORY),
    ],
)
def test_a_row_keeps_its_value_unit_and_standing(key, value, unit, standing):
    row = constructions()[key]
    assert (float(row.typed), row.unit, row.citation.standing) == (value, unit, standing)


def test_a_leaf_says_where_it_comes_from():
    row = constructions()["slab-2-ft-flat-r-5"]
    figure = row_leaf(row)
    origin = figure.origin
    assert figure.dimension is EDGE_LOSS
    assert float(figure) == pytest.approx(0.70 * 1.730735, rel=1e-6)
    assert (origin.kind, origin.path) == (
        LeafKind.CATALOG,
        "catalog/code_slab_edges/slab-2-ft-flat-r-5/f-factor",
    )
    assert (origin.typed, origin.places, origin.words) == ("0.70", 2, "F-factor")
    assert origin.citation.key == "WAC-A106"
    assert [each.rpartition(" ")[2] for each in origin.beside] == ["0.73", "0.70"]
    assert row_leaf(row, "F-factor of the slab").origin.words == "F-factor of the slab"
    assert row_leaf(constructions()["concrete-below-grade-bare"]).dimension is RESISTANCE
    assert row_leaf(constructions()["attic-r-30"]).dimension is TRANSMITTANCE


@pytest.mark.parametrize(("sides", "changes"), [(0, 0.5), (1, 1.0), (2, 1.5), (3, 2.0), (4, 2.0)])
def test_air_changes_by_sides(sides, changes):
    figure = air_changes_rows()[row_for_sides(sides)]
    assert figure.dimension is AIR_CHANGES
    assert float(figure) * 3600 == pytest.approx(changes)
    assert figure.origin.citation.standing is MEMORY


def test_an_entrance_hall_and_a_room_without_sense():
    assert float(air_changes_rows()["entrance-hall"]) * 3600 == pytest.approx(2.0)
    with pytest.raises(ValueError, match="-1 exposed sides"):
        row_for_sides(-1)


def test_soil_from_low_to_high():
    soil = load_table("soil")
    assert float(soil.rows["clay"].typed["high"]) == 1.56
    assert soil.rows["iso-rock"].citation.standing is MEMORY


FRAME = 0.17 + 0.62 + 0.62 + 0.45 + 0.68
WALLS = {
    "frame-wall-2x4-empty": (0.91, 3.5, 0, 0.25),
    "frame-wall-2x4-r-11": (11, 3.5, 0, 0.25),
    "frame-wall-2x4-r-13": (13, 3.5, 0, 0.25),
    "frame-wall-2x4-r-15": (15, 3.5, 0, 0.25),
    "frame-wall-2x4-r-13-plus-5": (13, 3.5, 5, 0.25),
    "frame-wall-2x6-r-19": (18, 5.5, 0, 0.25),
    "frame-wall-2x6-r-21": (21, 5.5, 0, 0.25),
    "frame-wall-2x6-24-in-r-21": (21, 5.5, 0, 0.22),
    "frame-wall-2x6-r-21-plus-5": (21, 5.5, 5, 0.25),
    "frame-wall-2x6-r-21-plus-10": (21, 5.5, 10, 0.25),
}


@pytest.mark.parametrize("key", WALLS)
def test_walls_are_what_their_layers_give(key):
    cavity, depth, continuous, framing = WALLS[key]
    others = FRAME + continuous
    u = parallel_path_u(cavity_path=others + cavity, framing_path=others + depth * 1.25, framing=framing)
    assert float(constructions()[key].typed) == pytest.approx(u, abs=6e-5)


@pytest.mark.parametrize("insulation", [0, 11, 19, 30, 38, 49, 60])
def test_attics_are_what_their_layers_give(insulation):
    others, joist = 0.61 + 0.45 + 0.17, 5.5
    above = max(0.0, insulation - joist * 3.2)
    u = parallel_path_u(
        cavity_path=others + insulation, framing_path=others + joist * 1.25 + above, framing=0.07
    )
    key = f"attic-r-{insulation}" if insulation else "attic-bare"
    assert float(constructions()[key].typed) == pytest.approx(u, abs=6e-5)


def test_other_derived_walls_and_floors():
    rows = constructions()
    films = 0.17 + 0.68
    concrete = u_from_r(r_value=films + UNITS["h·ft²·°F/Btu"].from_si(0.2032 / 1.95))
    assert float(rows["concrete-wall-8-in-bare"].typed) == pytest.approx(concrete, abs=6e-4)
    block = u_from_r(r_value=films + UNITS["h·ft²·°F/Btu"].from_si(0.20))
    assert float(rows["block-wall-8-in-bare"].typed) == pytest.approx(block, abs=6e-4)
    sides = 2 * (0.68 + 0.45)
    partition = parallel_path_u(cavity_path=sides + 0.91, framing_path=sides + 3.5 * 1.25, framing=0.25)
    assert float(rows["partition-2x4-bare"].typed) == pytest.approx(partition, abs=6e-5)
    deck = 2 * 0.92 + 1.08 + 0.68
    floor = parallel_path_u(cavity_path=deck, framing_path=deck + 9.25 * 1.25, framing=0.10)
    assert float(rows["floor-wood-joist-bare"].typed) == pytest.approx(floor, abs=6e-5)


@pytest.mark.parametrize(
    ("glazing", "cells"),
    [
        ("single-clear", "1.28 1.08 0.91 0.89 0.81 1.13 1.07 0.98 0.98 0.94"),
        ("double-clear", "0.81 0.60 0.53 0.51 0.45 0.64 0.57 0.50 0.50 0.48"),
        ("triple-clear", "0.67 0.46 0.40 0.39 0.34 0.49 0.42 0.36 0.35 0.34"),
        ("double-low-e-low-solar", "0.67 0.47 0.41 0.39 0.33 0.48 0.42 0.36 0.35 0.33"),
        ("double-low-e-high-solar", "0.71 0.51 0.44 0.42 0.36 0.53 0.46 0.40 0.39 0.38"),
        ("triple-low-e-low-solar", "0.57 0.36 0.31 0.30 0.26 0.38 0.31 0.25 0.25 0.23"),
        ("triple-low-e-high-solar", "0.62 0.42 0.36 0.35 0.30 0.43 0.37 0.31 0.30 0.29"),
    ],
)
def test_windows_in_inch_pound_units(glazing, cells):
    """Computed: the printed metric table turned into Btu/(h·ft²·°F) by another hand."""
    frames = ("aluminum", "aluminum-break", "clad-wood", "wood", "fiberglass")
    keys = [f"window-{glazing}-{frame}-{way}" for way in ("operable", "fixed") for frame in frames]
    for key, cell in zip(keys, cells.split(), strict=True):
        got = UNITS["Btu/(h·ft²·°F)"].from_si(float(row_leaf(constructions()[key])))
        assert got == pytest.approx(float(cell), abs=0.0051), key


def test_no_row_is_a_judgment_without_saying_so():
    for row in constructions().values():
        assert row.citation.key or row.citation.standing in (DERIVED, JUDGMENT), row.key


def test_importing_the_catalog_loads_no_yaml_reader():
    code = "import sys, heatledger.catalog.loader; sys.exit('ruamel.yaml' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False, env=os.environ | SRC).returncode == 0

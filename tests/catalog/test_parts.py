"""Claim: parts are found by the names the trade has for them, and every number says where it comes from."""

import math
import os
import subprocess
import sys
from pathlib import Path

import pytest

from heatledger.catalog.listing import RATINGS, listing
from heatledger.catalog.loader import load_table
from heatledger.catalog.parts import (
    EMITTER_TABLES,
    FAMILIES,
    FITTING_KINDS,
    efficiency_rows,
    emitter_row,
    emitter_rows,
    family_of,
    fitting_lengths,
    heat_content_of,
    nearest_tubes,
    tube,
    tubes,
    tubes_of,
)
from heatledger.job.system_model import EMITTER_KINDS, FUELS
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import LeafKind
from heatledger.ledger.sources import DERIVED, INVENTED, JUDGMENT, MEMORY, SECOND_HAND, SEEN
from heatledger.ledger.units import UNITS

SRC = {"PYTHONPATH": str(Path(__file__).parents[2] / "src")}
INCH, FOOT = 0.0254, 0.3048


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("copper-m-3/4", "copper-m-3/4"),
        ("copper-m-3-4", "copper-m-3/4"),
        ("3/4 in copper M", "copper-m-3/4"),
        ('3/4" type M copper tube', "copper-m-3/4"),
        ("1 in copper type L", "copper-l-1"),
        ("1 1/4 in copper k", "copper-k-1-1/4"),
        ("1/2 in PEX", "pex-1/2"),
        ("PEX 1/2″", "pex-1/2"),
        ("1-1/4 in PEX", "pex-1-1/4"),
        ("16x2 PEX", "pex-16x2"),
        ("PEX 16 × 2.0 mm", "pex-16x2"),
        ("pex-16x2-2", "pex-16x2.2"),
        ("copper-28x1.5", "copper-28x1.5"),
        ("28 x 1,5 mm copper", "copper-28x1.5"),
        ("1-1/2 in steel schedule 40", "steel-40-1-1/2"),
        ("sch. 40 black iron 3/4 in", "steel-40-3/4"),
        ("3/4 in PEX-AL-PEX", "pex-al-pex-3/4"),
        ("1/2 in PEX ASTM F876", "pex-1/2"),
    ],
)
def test_a_tube_by_the_name_the_trade_has_for_it(text, key):
    row = tube(text)
    assert row is not None
    assert row.key == key


@pytest.mark.parametrize(
    ("text", "offered"),
    [
        ("3/4 in copper", ["copper-k-3/4", "copper-l-3/4", "copper-m-3/4"]),
        ("7/8 in copper m", ["copper-m-3/8", "copper-m-3/4", "copper-m-1/2"]),
        ("pexx-1/2", ["pex-1/2"]),
        ("17x3 PEX", ["pex-17x2"]),
        ("coper-m-3/4", ["copper-m-3/4"]),
    ],
)
def test_what_is_no_tube_gets_the_nearest_ones(text, offered):
    assert tube(text) is None
    assert set(offered) <= set(nearest_tubes(text)[: len(offered) + 1])


def test_a_text_without_sense_names_no_tube():
    for text in ("", "warm", "3/4", "copper", "x2 pex"):
        assert tube(text) is None, text
        assert len(nearest_tubes(text)) <= 6


def test_a_family_without_a_size():
    assert [family_of(each) for each in ("copper M", "pex", "PEX", "steel", "copper-l", "PEX-AL-PEX")] == [
        "copper-m", "pex", "pex", "steel-40", "copper-l", "pex-al-pex",
    ]  # fmt: skip
    assert [family_of(each) for each in ("copper", "3/4 in copper m", "lead", "")] == [""] * 4


def test_every_tube_is_found_by_its_key_and_by_its_name():
    every = tubes()
    assert len(every) == sum(len(tubes_of(each)) for each in FAMILIES)
    for key, row in every.items():
        assert tube(key) is row
        assert tube(row.name) is row
        assert row.family in FAMILIES


@pytest.mark.parametrize("family", FAMILIES)
def test_a_bore_is_the_outside_less_twice_the_wall(family):
    table = load_table(FAMILIES[family].table)
    for key, row in table.rows.items():
        outside, wall, bore = (float(row.typed[each]) for each in ("outside", "wall", "bore"))
        assert bore == pytest.approx(outside - 2 * wall, abs=1e-9), key


@pytest.mark.parametrize(
    ("key", "bore", "roughness", "standing"),
    [
        ("copper-k-2", 1.959 * INCH, 1.5e-6, SEEN),
        ("copper-l-1/2", 0.545 * INCH, 1.5e-6, SEEN),
        ("copper-m-3/4", 0.811 * INCH, 1.5e-6, MEMORY),
        ("steel-40-1", 1.049 * INCH, 4.572e-5, SEEN),
        ("pex-1/2", 0.485 * INCH, 7e-6, SEEN),
        ("pex-1-1/2", 1.263 * INCH, 7e-6, MEMORY),
        ("pex-al-pex-1/2", 0.0127, 7e-6, MEMORY),
        ("copper-35x1.5", 0.032, 1.5e-6, SECOND_HAND),
        ("pex-16x2", 0.012, 7e-6, MEMORY),
        ("pex-25x2.3", 0.0204, 7e-6, SECOND_HAND),
    ],
)
def test_a_tube_keeps_its_bore_roughness_and_standing(key, bore, roughness, standing):
    row = tube(key)
    assert float(row.bore) == pytest.approx(bore, rel=1e-9)
    assert float(row.roughness) == pytest.approx(roughness, rel=1e-9)
    assert row.bore.origin.citation.standing is standing
    assert row.bore.dimension is row.outside.dimension is row.roughness.dimension is d.BORE


def test_a_leaf_of_a_tube_says_where_it_comes_from():
    bore = tube("copper-m-3/4").bore
    origin = bore.origin
    assert (origin.kind, origin.path) == (LeafKind.CATALOG, "catalog/tubes_copper_m/copper-m-3-4/bore")
    assert (origin.typed, origin.unit) == ("0.811", "in")
    assert origin.beside == ("1/2 in copper, type M 0.569", "1 in copper, type M 1.055")
    outside = tube("steel-40-1").outside.origin.citation
    assert (outside.key, outside.standing) == ("ASME-B36.10", MEMORY)


@pytest.mark.parametrize(
    ("key", "kind", "feet", "standing"),
    [
        ("copper-m-1/2", "90-ell", 0.5, SEEN),
        ("copper-l-2", "tee-branch", 7, SEEN),
        ("copper-m-3/4", "45-ell", 0.5, MEMORY),
        ("copper-k-1", "ball-valve", 0.5, MEMORY),
        ("pex-1/2", "90-ell", 9.4, SEEN),
        ("pex-3/4", "coupling", 0.6, SEEN),
        ("steel-40-1", "90-ell", 2.62, SEEN),
        ("steel-40-1", "tee-branch", 5.24, SEEN),
        ("steel-40-2", "45-ell", 2.41, DERIVED),
        ("copper-15x1", "90-ell", 0.5, JUDGMENT),
        ("copper-22x1", "90-ell", 1, JUDGMENT),
        ("copper-28x1.5", "tee-branch", 3, JUDGMENT),
        ("pex-16x2", "tee-run", 2.2, JUDGMENT),
    ],
)
def test_fittings_by_the_length_that_resists_as_much(key, kind, feet, standing):
    figure = fitting_lengths(tube(key))[kind]
    assert float(figure) == pytest.approx(feet * FOOT, rel=1e-9)
    assert figure.dimension is d.LENGTH
    assert figure.origin.citation.standing is standing


def test_a_size_that_a_table_has_not_takes_the_nearest_and_says_so():
    taken = fitting_lengths(tube("copper-18x1"))["90-ell"].origin
    assert "row of 1/2 in, the nearest bore to 18x1 copper" in taken.citation.place
    assert taken.path == "catalog/fittings_copper/90-ell/1-2"
    own = fitting_lengths(tube("copper-m-3/4"))["90-ell"].origin
    assert "nearest" not in own.citation.place
    assert own.beside == ("90 degree elbow 1/2 in 0.5", "90 degree elbow 1 in 1")


def test_only_kinds_that_a_table_has():
    assert set(fitting_lengths(tube("copper-m-3/4"))) == set(FITTING_KINDS)
    assert "45-ell" not in fitting_lengths(tube("pex-1/2"))
    assert "check-valve" not in fitting_lengths(tube("steel-40-1"))
    for row in tubes().values():
        assert {"90-ell", "tee-run", "tee-branch", "ball-valve"} <= set(fitting_lengths(row)), row.key


def test_derived_lengths_of_steel_are_their_bores():
    for row in tubes_of("steel-40").values():
        lengths = fitting_lengths(row)
        for kind, bores in {"45-ell": 14, "tee-run": 30, "ball-valve": 3}.items():
            assert float(lengths[kind]) == pytest.approx(bores * float(row.bore), abs=0.0051 * FOOT)


def test_every_emitter_has_a_rating_of_its_kind():
    every = emitter_rows()
    assert {row.kind for row in every.values()} == set(EMITTER_KINDS) == set(EMITTER_TABLES.values())
    for key, row in every.items():
        assert emitter_row(key) is row
        rated = [each is not None for each in (row.rating, row.output, row.section_edr)]
        assert rated.count(True) == 1, key
        assert row.exponent is not None
        assert row.heating_effect is not None
        assert row.rated_air is not None
        assert (row.rated_water is None) == (row.rated_supply is not None)
    assert emitter_row("fin-tube-golden") is None
    assert emitter_row("") is None


def test_a_made_up_emitter_says_so():
    plain = emitter_row("fin-tube-plain")
    assert plain.rating.origin.citation.standing is INVENTED
    assert plain.exponent.origin.citation.key == "WBMAN"
    assert plain.heating_effect.origin.citation.standing is SECOND_HAND
    assert plain.flow_exponent.origin.citation.standing is MEMORY
    assert float(plain.rating) == pytest.approx(950 * 0.9615193, rel=1e-6)
    bore = float(tube("copper-m-3/4").bore)
    assert float(plain.water_per) == pytest.approx(math.pi / 4 * bore**2, rel=1e-3)
    panel = emitter_row("panel-22-600-800")
    assert panel.output.origin.citation.standing is INVENTED
    assert float(panel.water) == pytest.approx(5.8e-6 * float(panel.output), abs=5.1e-5)
    assert panel.water.origin.citation.key == ""


@pytest.mark.parametrize(
    ("key", "edr"),
    [
        ("column-1-26", 2), ("column-2-32", 10 / 3), ("column-3-38", 5), ("column-3-45", 6),
        ("column-4-38", 8), ("window-column-20", 5), ("tube-3-20", 1.75), ("tube-4-38", 4.25),
        ("tube-5-20", 8 / 3), ("tube-6-23", 3.5), ("tube-7-26", 4.75), ("wall-7-b", 7),
    ],
)  # fmt: skip
def test_square_feet_of_a_section(key, edr):
    row = emitter_row(key)
    assert UNITS["ft²"].from_si(float(row.section_edr)) == pytest.approx(edr, abs=5e-5)
    assert row.section_edr.origin.citation.key == "EDR-SEC"
    assert UNITS["Btu/(h·ft²)"].from_si(float(row.emission)) == pytest.approx(240)
    share = 0.10 if key.startswith("tube") else 0.14
    assert UNITS["gal"].from_si(float(row.section_water)) == pytest.approx(share * edr, abs=5.1e-4)
    assert row.section_water.origin.citation.standing is JUDGMENT


def test_heat_of_fuels():
    oil, gas = heat_content_of("oil"), heat_content_of("natural gas")
    assert UNITS["Btu/gal"].from_si(float(oil)) == pytest.approx(138500)
    assert UNITS["Btu/ft³"].from_si(float(gas)) == pytest.approx(1037)
    assert gas.origin.citation.standing is SECOND_HAND
    assert UNITS["Btu/gal"].from_si(float(heat_content_of("propane"))) == pytest.approx(91452)
    assert heat_content_of("electricity") is None
    assert {heat_content_of(each) is None for each in FUELS} == {True, False}
    with pytest.raises(KeyError):
        heat_content_of("peat")


def test_efficiency_falls_as_the_return_warms():
    rows = list(efficiency_rows().values())
    back = [UNITS["°F"].from_si(float(each["return"]), True) for each in rows]
    assert back == pytest.approx([70, 80, 90, 100, 110, 120, 130, 140, 160])
    assert [float(each["efficiency"]) for each in rows] == pytest.approx(
        [0.962, 0.955, 0.947, 0.932, 0.912, 0.889, 0.873, 0.863, 0.859]
    )
    assert rows[0]["return"].dimension is d.TEMPERATURE


def test_the_listing_names_every_part():
    keys = {row.key for row in listing()}
    assert set(tubes()) <= keys
    assert set(emitter_rows()) <= keys
    assert set(FITTING_KINDS) <= keys
    assert {"frame-wall-2x4-r-11", "oil", "return-130", "square-foot"} <= keys
    assert set(EMITTER_TABLES) <= set(RATINGS)
    said = {row.key: row.value for row in listing()}
    assert said["fin-tube-plain"] == "950 Btu/(h·ft) at 215 °F water, 65 °F air and 1 gpm"
    assert said["panel-22-600-800"].startswith("1340 W at 75/65/20 °C")
    assert said["copper-m-3/4"] == "bore 0.811 in, outside 0.875 in"


def test_importing_the_parts_reads_no_table():
    code = "import sys, heatledger.catalog.parts; sys.exit('ruamel.yaml' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False, env=os.environ | SRC).returncode == 0

"""Emitters: what is typed lies over the row of the catalog, and that over what is usual for the kind."""

from __future__ import annotations

import pytest

from heatledger.job.rated_points import USUAL
from heatledger.job.system_model import EMITTER_KINDS, Emitter
from heatledger.ledger.figures import Figure, Leaf, LeafKind
from heatledger.ledger.sources import JUDGMENT, MEMORY, SECOND_HAND, Standing
from tests.job.samples import heated, si, small

BTU_H, FT, F = 0.29307107, 0.3048, 1 / 1.8


def emitter(entry: str) -> Emitter:
    return small(add=f"emitters:\n  one: {{room: kitchen, {entry}}}\n").system.emitters["one"]


def fahrenheit(figure: Figure | None) -> float:
    assert figure is not None
    return float(figure) * 1.8 - 459.67


def standing(figure: Figure | None) -> Standing:
    assert figure is not None
    origin = figure.origin
    assert isinstance(origin, Leaf)
    assert origin.kind is LeafKind.SOURCE
    assert origin.citation is not None
    return origin.citation.standing


def test_a_typed_fin_tube_has_the_rating_basis_of_its_trade() -> None:
    one = emitter("kind: fin-tube baseboard, rating: 580 Btu/(h·ft), length: 14 ft")
    assert si(one.rating) == pytest.approx(580 * BTU_H / FT)
    assert si(one.length) == pytest.approx(14 * FT)
    assert fahrenheit(one.rated_water) == pytest.approx(215)
    assert fahrenheit(one.rated_air) == pytest.approx(65)
    assert si(one.rated_flow) == pytest.approx(0.003785411784 / 60)
    assert (float(one.exponent), si(one.flow_exponent)) == (1.4, 0.04)
    assert float(one.heating_effect) == 1.15
    assert standing(one.heating_effect) is SECOND_HAND
    assert standing(one.rated_air) is MEMORY
    assert one.output is one.rated_supply is one.rated_return is one.water is one.edr is None


def test_a_typed_panel_has_supply_and_return_and_no_mean() -> None:
    one = emitter("kind: panel radiator, output: 1800 W")
    assert si(one.output) == 1800
    celsius = [si(each) - 273.15 for each in (one.rated_supply, one.rated_return, one.rated_air)]
    assert celsius == pytest.approx([75, 65, 20])
    assert float(one.exponent) == 1.3
    assert float(one.heating_effect) == 1
    assert one.rated_water is one.rated_flow is one.flow_exponent is one.rating is None


def test_typed_radiation_of_iron_takes_240_for_each_square_foot() -> None:
    one = emitter("kind: cast-iron radiator, edr: 35 ft2")
    assert si(one.rating) == pytest.approx(240 * BTU_H / FT**2)
    assert fahrenheit(one.rated_water) == pytest.approx(215)
    assert fahrenheit(one.rated_air) == pytest.approx(70)
    assert si(one.edr) == pytest.approx(35 * FT**2)
    assert standing(one.exponent) is JUDGMENT


def test_sections_take_their_row() -> None:
    one = heated().system.emitters["hall-iron"]
    assert one.edr is None
    assert si(one.sections) == 7
    assert si(one.section_edr) == pytest.approx(5 * FT**2)
    assert one.section_edr is not None
    assert one.section_edr.origin.kind is LeafKind.CATALOG
    assert si(one.rating) == pytest.approx(240 * BTU_H / FT**2)
    assert si(one.water_per) > 0


def test_a_row_gives_the_kind_and_its_whole_point() -> None:
    one = emitter("catalog: fin-tube-plain")
    assert one.kind == "fin-tube baseboard"
    for each in (one.rating, one.rated_water, one.rated_air, one.exponent, one.heating_effect, one.water_per):
        assert each is not None
        assert each.origin.path.startswith("catalog/fin_tube/fin-tube-plain/")
    assert one.length is None


def test_what_is_typed_lies_over_the_row() -> None:
    plain = emitter("catalog: panel-22-600-800")
    own = emitter(
        "catalog: panel-22-600-800, output: 1500 W, exponent: 1.33, rated_water: 70 °C, water: 2 gal"
    )
    assert si(own.output) == 1500
    assert float(own.exponent) == 1.33
    assert own.rated_water is not None
    assert own.rated_supply is own.rated_return is None
    assert own.rated_air is plain.rated_air
    assert plain.rated_supply is not None
    assert plain.water is not None
    assert own.water is not plain.water


def test_an_output_typed_takes_the_place_of_a_rating_of_the_row() -> None:
    one = emitter("catalog: fin-tube-plain, output: 5800 Btu/h")
    assert one.rating is None
    assert si(one.output) == pytest.approx(5800 * BTU_H)


def test_the_jobs_word_on_a_row_goes_to_what_it_gives() -> None:
    one = emitter("catalog: {is: fin-tube-plain, known: assumed, because: looks like it}")
    assert one.rating is not None
    assert one.rating.origin.known == "assumed"
    assert one.rating.origin.half_range == pytest.approx(0.15 * float(one.rating))
    assert "looks like it" in one.rating.origin.beside
    assert one.exponent.origin.half_range == 0


@pytest.mark.parametrize(
    ("entry", "field", "path"),
    [
        ("kind: fin-tube baseboard", "rating", "rating"),
        ("kind: panel radiator", "output", "output"),
        ("kind: cast-iron radiator", "edr", "edr"),
        ("kind: cast-iron radiator, sections: 7", "edr", "edr"),
        ("catalog: column-3-38", "sections", "sections"),
        ("kind: panel radiator, output: 900 W, rated_supply: 75 °C", "rated_return", "rated_return"),
        ("kind: fin-tube baseboard, rating: 580, length: ", "length", "length"),
    ],
)
def test_what_is_not_given_is_a_figure_without_a_value(entry: str, field: str, path: str) -> None:
    figure = getattr(emitter(entry), field)
    assert figure.is_missing
    assert figure.origin.path == f"emitters/one/{path}"


def test_an_output_alone_is_enough_for_iron() -> None:
    one = emitter("kind: cast-iron radiator, output: 2400 Btu/h")
    assert one.rating is one.edr is one.sections is None


def test_every_kind_has_what_its_output_is_reckoned_from() -> None:
    assert set(USUAL) == set(EMITTER_KINDS)
    for kind, rows in USUAL.items():
        assert {"rated_air", "exponent", "heating_effect"} <= set(rows), kind
        assert ("rated_water" in rows) != ("rated_supply" in rows), kind
        assert ("flow_exponent" in rows) == ("rated_flow" in rows) == kind.endswith("baseboard"), kind

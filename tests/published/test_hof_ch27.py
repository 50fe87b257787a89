"""Claim: layers and framed assemblies add up as in HOF-ch27; witness: its examples 1 to 3.

Left out: the result of example 3 for studs at 600 mm, which its own layers do not give.
"""

from heatledger.ledger.sources import SEEN
from heatledger.physics.constructions import isothermal_layer, layer_resistance, layers_total, parallel_path_u
from heatledger.physics.envelope import u_from_r
from tests.published.checks import check, into, si

R, U = "m²·K/W", "W/(m²·K)"
ONE, TWO, THREE = "Example 1, insulated panel", "Example 2, flat roof", "Example 3, wood wall"
WITHIN = "the source rounds its layers"
TWO_SETS = "the source gives two sets of numbers; those of its text are taken"


def foam():
    return layer_resistance(thickness=si(150, "mm"), conductivity=0.035)


def panel():
    return [0.107, 0.011, 0.07, foam(), 0.079]


def test_foam():
    check(
        claim="R-value of 150 mm of foam", source="HOF-ch27", place=ONE, standing=SEEN, unit=R,
        expected=4.29, got=foam(), tolerance=0.05, why=TWO_SETS,
    )  # fmt: skip


def test_panel():
    check(
        claim="R-value of the panel without films", source="HOF-ch27", place=ONE, standing=SEEN, unit=R,
        expected=4.56, got=layers_total(layers=panel()), tolerance=0.05, why=TWO_SETS,
    )  # fmt: skip


def test_panel_with_films():
    check(
        claim="R-value of the panel with both films", source="HOF-ch27", place=ONE, standing=SEEN, unit=R,
        expected=4.70, got=layers_total(layers=[0.030, *panel(), 0.120]), tolerance=0.05, why=TWO_SETS,
    )  # fmt: skip


def test_panel_u():
    u = u_from_r(r_value=layers_total(layers=[0.030, *panel(), 0.120]))
    check(
        claim="U-value of the panel", source="HOF-ch27", place=ONE, standing=SEEN, unit=U, expected=0.21,
        got=u, tolerance=0.005, why="half a unit of the last digit printed",
    )  # fmt: skip


ROOF = [0.16, 0.09, 4.97, 0.52, 0.06, 0.04]


def test_roof():
    check(
        claim="R-value of the flat roof", source="HOF-ch27", place=TWO, standing=SEEN, unit=R, expected=5.83,
        got=layers_total(layers=ROOF), tolerance=0.0101,
        why="one unit of the last digit: the layers are rounded",
    )  # fmt: skip


def test_roof_u():
    check(
        claim="U-value of the flat roof", source="HOF-ch27", place=TWO, standing=SEEN, unit=U, expected=0.17,
        got=u_from_r(r_value=layers_total(layers=ROOF)), tolerance=0.005,
        why="half a unit of the last digit printed",
    )  # fmt: skip


OTHER = [0.03, 0.12, 0.11, 0.70, 0.08]
BATT, STUD, FRAMING = 2.30, 0.77, 0.25


def through(layer):
    return layers_total(layers=[*OTHER, layer])


def parallel():
    return parallel_path_u(cavity_path=through(BATT), framing_path=through(STUD), framing=FRAMING)


def framed_layer():
    return isothermal_layer(cavity=BATT, framing_layer=STUD, framing=FRAMING)


def test_cavity_path():
    check(
        claim="R-value through the cavity of the wood wall", source="HOF-ch27", place=THREE, standing=SEEN,
        unit=R, expected=3.31, got=through(BATT), tolerance=0.05, why=WITHIN,
    )  # fmt: skip


def test_framing_path():
    check(
        claim="R-value through a stud of the wood wall", source="HOF-ch27", place=THREE, standing=SEEN,
        unit=R, expected=1.81, got=through(STUD), tolerance=0.05, why=WITHIN,
    )  # fmt: skip


def test_parallel_u():
    check(
        claim="U-value of the wood wall by parallel paths", source="HOF-ch27", place=THREE, standing=SEEN,
        unit=U, expected=0.36, got=parallel(), tolerance=0.004, why=WITHIN,
    )  # fmt: skip


def test_parallel_r():
    check(
        claim="R-value of the wood wall by parallel paths", source="HOF-ch27", place=THREE, standing=SEEN,
        unit=R, expected=2.78, got=1 / parallel(), tolerance=0.05,
        why="the source takes 1 over its rounded 0.36",
    )  # fmt: skip


def test_framed_layer():
    check(
        claim="R-value of the framed layer by isothermal planes", source="HOF-ch27", place=THREE,
        standing=SEEN, unit=R, expected=1.54, got=framed_layer(), tolerance=0.005,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_isothermal_r():
    check(
        claim="R-value of the wood wall by isothermal planes", source="HOF-ch27", place=THREE, standing=SEEN,
        unit=R, expected=2.58, got=through(framed_layer()), tolerance=0.005,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_isothermal_u():
    check(
        claim="U-value of the wood wall by isothermal planes", source="HOF-ch27", place=THREE, standing=SEEN,
        unit=U, expected=0.388, got=u_from_r(r_value=through(framed_layer())), tolerance=0.0005,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_slab_edge_in_both_unit_systems():
    check(
        claim="Loss of a bare slab edge in inch-pound units", source="HOF-ch27", place="on small slabs",
        standing=SEEN, unit="Btu/(h·ft·°F)", expected=0.81, got=into(1.4, "Btu/(h·ft·°F)"), tolerance=0.03,
        why="half a unit of the last digit of 1.4 W/(m·K)",
    )  # fmt: skip

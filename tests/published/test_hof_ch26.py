"""Claim: films, layers and air spaces are as HOF-ch26 tabulates them."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.constructions import effective_emittance, layer_resistance, thin_air_space
from heatledger.physics.envelope import u_from_r
from tests.published.checks import at, check, into, si

# Table 10: conductance of a film in W/(m²·K), its resistance in m²·K/W, half its last digit.
FILMS = [
    (9.26, 0.11, 0.005), (9.09, 0.11, 0.005), (8.29, 0.12, 0.005), (7.50, 0.13, 0.005),
    (6.13, 0.16, 0.005), (34.0, 0.030, 0.0006), (22.7, 0.044, 0.0006),
]  # fmt: skip


def test_films():
    check(
        claim="Conductance of surface films from their R-values", source="HOF-ch26", place="Table 10",
        standing=SEEN, unit="W/(m²·K)", expected=[h for h, _, _ in FILMS],
        got=[u_from_r(r_value=r) for _, r, _ in FILMS],
        tolerance=[round(h * half / r, 2) for h, r, half in FILMS],
        why="half a unit of the last digit of the R-value",
    )  # fmt: skip


def test_emittance():
    check(
        claim="Effective emittance of an air space, ordinary faces and one bright foil", source="HOF-ch26",
        place="notes of Table 3", standing=SEEN, expected=[0.82, 0.05],
        got=[effective_emittance(one_side=0.9, other_side=each) for each in (0.9, 0.05)],
        tolerance=0.005, why="half a unit of the last digit printed",
    )  # fmt: skip


def test_thin_air_spaces():
    # 13 mm, heat flow level and downward: mean temperature, R at emittance 0.82 and at 0.05.
    rows = [(10, 0.16, 0.43), (10, 0.16, 0.45), (-17.8, 0.20, 0.48), (10, 0.16, 0.45), (-17.8, 0.20, 0.50)]
    expected = [each for _, plain, foil in rows for each in (plain, foil)]
    got = [
        thin_air_space(thickness=si(13, "mm"), emittance=emittance, middle=at(middle, "°C"))
        for middle, _, _ in rows
        for emittance in (0.82, 0.05)
    ]
    check(
        claim="R-values of air spaces of 13 mm, ordinary faces and one foil", source="HOF-ch26",
        place="Table 3, 13 mm, level and downward", standing=SEEN, unit="m²·K/W", expected=expected, got=got,
        tolerance=[round(0.08 * each + 0.005, 4) for each in expected],
        why="8 %: the form for still air is stated for spaces thinner than 13 mm; and half the last digit",
    )  # fmt: skip


def test_gypsum_board():
    r = layer_resistance(thickness=si(0.5, "in"), conductivity=0.16)
    check(
        claim="R-value of gypsum board of 1/2 in from its conductivity", source="HOF-ch26", place="Table 1",
        standing=SEEN, unit="m²·K/W", expected=0.079, got=r, tolerance=0.0005,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_both_unit_systems():
    unit = "h·ft²·°F/Btu"
    check(
        claim="R-values of hollow siding and gypsum board in inch-pound units", source="HOF-ch26",
        place="Table 1", standing=SEEN, unit=unit, expected=[0.62, 0.45],
        got=[into(0.11, unit), into(0.079, unit)], tolerance=[0.03, 0.005],
        why="half a unit of the last digit of the metric value",
    )  # fmt: skip

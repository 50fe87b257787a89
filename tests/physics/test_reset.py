"""Claim: reset gives the water that carries the load of milder weather. Computed cases and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.energy import balance_temperature
from heatledger.physics.reset import (
    line_over_curve,
    return_of_share,
    share_of_load,
    supply_at_least,
    supply_by_line,
    supply_by_log_mean,
    supply_by_mean,
)


def c(value):
    return value + 273.15


def f(value):
    return UNITS["°F"].to_si(value, True)


def in_f(value):
    return UNITS["°F"].from_si(value, True)


RADIATOR = (
    (-12, 1.00000, 55.0000, 45.0000, 55.0000, 45.0000),
    (-5, 0.78125, 48.7177, 40.9052, 48.6928, 40.8803),
    (0, 0.62500, 44.0231, 37.7731, 43.9851, 37.7351),
    (5, 0.46875, 39.0931, 34.4056, 39.0471, 34.3596),
    (10, 0.31250, 33.8240, 30.6990, 33.7766, 30.6516),
    (15, 0.15625, 27.9755, 26.4130, 27.9369, 26.3744),
)
"""Outdoors, share, supply and return by the mean, the same by the log mean; 55/45/20 at -12 °C, n 1.3."""


@pytest.mark.parametrize(("outdoor", "share", "supply", "back", "supply_log", "back_log"), RADIATOR)
def test_a_radiator_by_both_means(outdoor, share, supply, back, supply_log, back_log):
    """Computed apart from this program."""
    x = share_of_load(balance=c(20), outdoor=c(outdoor), design_outdoor=c(-12))
    assert x == pytest.approx(share)
    by_mean = supply_by_mean(room=c(20), excess=30, drop=10, share=x, exponent=1.3)
    assert by_mean == pytest.approx(c(supply), abs=2e-4)
    assert return_of_share(supply=by_mean, drop=10, share=x) == pytest.approx(c(back), abs=2e-4)
    # 10 K over the logarithm of 35/25.
    log_mean = 29.720133736
    by_log = supply_by_log_mean(room=c(20), excess=log_mean, drop=10, share=x, exponent=1.3)
    assert by_log == pytest.approx(c(supply_log), abs=2e-4)
    assert return_of_share(supply=by_log, drop=10, share=x) == pytest.approx(c(back_log), abs=2e-4)


@pytest.mark.parametrize(
    ("outdoor", "supply", "back"),
    [(20, 155.7791, 141.4934), (32, 140.0668, 129.2097), (47, 118.4438, 111.8724), (60, 96.3377, 93.4806)],
)
def test_baseboard(outdoor, supply, back):
    """Computed: 180/160 °F, room 70 °F, design day 0 °F, n 1.4, by the mean."""
    x = share_of_load(balance=f(70), outdoor=f(outdoor), design_outdoor=f(0))
    got = supply_by_mean(room=f(70), excess=100 / 1.8, drop=20 / 1.8, share=x, exponent=1.4)
    assert in_f(got) == pytest.approx(supply, abs=1e-3)
    assert in_f(return_of_share(supply=got, drop=20 / 1.8, share=x)) == pytest.approx(back, abs=1e-3)


def test_half_a_load():
    """Computed: 160/140 °F, room 70 °F, design day 0 °F, n 1.3, 35 °F outdoors."""
    x = share_of_load(balance=f(70), outdoor=f(35), design_outdoor=f(0))
    assert x == pytest.approx(0.5)
    got = supply_by_mean(room=f(70), excess=80 / 1.8, drop=20 / 1.8, share=x, exponent=1.3)
    assert in_f(got) == pytest.approx(121.9, abs=0.1)
    assert in_f(return_of_share(supply=got, drop=20 / 1.8, share=x)) == pytest.approx(111.9, abs=0.1)


@pytest.mark.parametrize(
    ("outdoor", "supply", "back"),
    [(273.15, 314.968, 304.059), (263.55, 332.4227, 312.7864), (285.15, 293.15, 293.15)],
)
def test_a_library_of_building_models(outdoor, supply, back):
    """Its set points for 60/40 °C at -10 °C, room 20 °C, 8 K of gains, an exponent of 1."""
    balance = balance_temperature(indoor=c(20), gains=8.0, coefficient=1.0)
    x = share_of_load(balance=balance, outdoor=outdoor, design_outdoor=c(-10))
    got = supply_by_mean(room=c(20), excess=30, drop=20, share=x, exponent=1.0)
    assert got == pytest.approx(supply, abs=1e-3)
    assert return_of_share(supply=got, drop=20, share=x) == pytest.approx(back, abs=1e-3)


def test_where_heat_starts():
    """Computed: 45,000 Btu/h over 70 °F, 2,500 Btu/h of gains, indoors 68 °F."""
    coefficient = UNITS["Btu/h"].to_si(45_000) / (70 / 1.8)
    gains = UNITS["Btu/h"].to_si(2_500)
    base = balance_temperature(indoor=f(68), gains=gains, coefficient=coefficient)
    assert in_f(base) == pytest.approx(64.1, abs=0.1)


def test_a_straight_line_sags_below_the_curve():
    """Computed: 55/45/20 °C radiators at 0 °C need 44.0 °C; the line to 20 °C at 20 °C gives 41.9 °C."""
    line = supply_by_line(c(0), c(-12), c(55), c(20), c(20))
    needed = supply_by_mean(room=c(20), excess=30, drop=10, share=0.625, exponent=1.3)
    assert line == pytest.approx(c(41.875))
    assert line_over_curve(line=line, needed=needed) == pytest.approx(-2.148, abs=1e-3)
    assert supply_at_least(supply=line, least=c(45)) == c(45)


SHARES, EXPONENTS = st.floats(0.0, 1.2), st.floats(1.0, 1.5)


@given(share=SHARES, exponent=EXPONENTS, excess=st.floats(20, 60), drop=st.floats(1, 20))
def test_the_emitter_gives_its_share(share, exponent, excess, drop):
    """At the supply found, the log mean excess to the power n is the share of that of the design day."""
    import math

    supply = supply_by_log_mean(room=293.15, excess=excess, drop=drop, share=share, exponent=exponent)
    a, b = supply - 293.15, return_of_share(supply=supply, drop=drop, share=share) - 293.15
    if share < 1e-3:
        assert 0 <= a < excess / 50
        return
    mean = (a - b) / math.log(a / b)
    assert (mean / excess) ** exponent == pytest.approx(share, rel=1e-6)


@given(share=st.floats(0.01, 1.0), exponent=EXPONENTS)
def test_the_two_means_agree_when_the_drop_is_small(share, exponent):
    pair = [each(293.15, 40.0, 0.1, share, exponent) for each in (supply_by_mean, supply_by_log_mean)]
    assert pair[0] == pytest.approx(pair[1], abs=2e-3)


@given(outdoor=st.floats(240, 300))
def test_a_share_is_never_below_none(outdoor):
    share = share_of_load(balance=291.483, outdoor=outdoor, design_outdoor=255.372)
    assert share >= 0
    assert (share == 0) == (outdoor >= 291.483)

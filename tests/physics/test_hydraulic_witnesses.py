"""Claim: friction is as other programs print it. They are witnesses, no published sources."""

import pytest

from heatledger.physics.friction import pressure_of_head
from tests.physics.hydraulics import friction_of, si

# Bore m, length m, speed m/s, pressure lost Pa, as a simulation of pipe networks prints them.
SIMULATED = [
    (0.075, 10000, 0.188869669, 72500.93), (0.15, 20, 0.189319956, 60.738),
    (0.075, 5000, 0.126969620, 17832.59), (0.5, 8400, 0.0156256998, 68.177),
]  # fmt: skip


@pytest.mark.parametrize(("bore", "length", "speed", "pascals"), SIMULATED)
def test_pipes_of_a_simulated_network(bore, length, speed, pascals):
    flow = speed * 3.141592653589793 * bore**2 / 4
    density = 998.20609
    rubs = friction_of(flow, bore, 1e-4, 1.001605325647912e-3 / density)[3]
    # Their law has 3.71 where ours has 3.7, which moves the factor by 0.02 % here.
    assert pressure_of_head(density=density, head=rubs * length) == pytest.approx(pascals, rel=3e-4)


def test_a_long_water_main():
    _, number, factor, rubs = friction_of(
        si(4, "ft³/h") * 3600, si(20, "in"), si(0.0005, "ft"), si(1.2291e-5, "ft²/s")
    )
    assert number == pytest.approx(248625, rel=2e-3)
    assert factor == pytest.approx(0.0173, abs=5e-5)
    # It takes gravity as 32.2 ft/s², so its head is 0.08 % less.
    assert rubs * si(10560, "ft") * 9.80665 / si(32.2, "ft/s²") == pytest.approx(si(5.72, "ft"), rel=2e-3)

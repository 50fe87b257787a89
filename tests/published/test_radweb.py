"""Claim: a radiator rated at 80/60/20 runs at 70/50/20 as RADWEB says; witness: its example."""

import pytest

from heatledger.ledger.sources import SEEN
from heatledger.physics.along_emitter import exact_mean_excess
from heatledger.physics.radiators import log_mean_excess, output_at_excess
from tests.published.checks import at, check

PLACE = "example, 1000 W at 80/60/20 °C"


def by(mean, supply, back, **more):
    return mean(supply=at(supply, "°C"), return_=at(back, "°C"), air=at(20, "°C"), **more)


def test_the_logarithmic_mean():
    check(
        claim="Logarithmic mean excess at 80/60/20 °C", source="RADWEB", place=PLACE, standing=SEEN,
        unit="K", expected=49.32, got=by(log_mean_excess, 80, 60), tolerance=0.01,
        why="the source cuts off, 49.326",
    )  # fmt: skip


def test_the_output():
    found = output_at_excess(
        rated=1000.0,
        excess=by(log_mean_excess, 70, 50),
        rated_excess=by(log_mean_excess, 80, 60),
        exponent=1.33,
    )
    check(
        claim="1000 W at 80/60/20 °C run at 70/50/20 °C, exponent 1.33", source="RADWEB", place=PLACE,
        standing=SEEN, unit="W", expected=736, got=found, tolerance=1,
        why="the source rounds its mean excess",
    )  # fmt: skip
    assert found == pytest.approx(735.49, abs=0.005)


def test_the_output_by_the_exact_mean():
    exact = [by(exact_mean_excess, *each, exponent=1.33) for each in ((70, 50), (80, 60))]
    check(
        claim="The same radiator by the exact mean excess", source="RADWEB", place=PLACE, standing=SEEN,
        unit="W", expected=736, got=output_at_excess(
            rated=1000.0, excess=exact[0], rated_excess=exact[1], exponent=1.33
        ), tolerance=3,
        why="the source takes the logarithmic mean; the outlet is 0.6 of the inlet above the room",
    )  # fmt: skip

"""Findings hold what they stand on, and a formula used outside its range is found by itself."""

from __future__ import annotations

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import AirFlow, HeatRate, Length, Pressure, TemperatureDifference
from heatledger.ledger.figures import missing
from heatledger.ledger.findings import Decided, Finding, Mend, NotChecked, Weight, outside_ranges
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import total
from heatledger.ledger.symbols import const
from tests.ledger.awkward import HERE
from tests.ledger.drawing import found

PER_METRE = const(12, "Pa/m", HERE, "pressure per metre")


@formula(HERE, valid={"height": (0.0, 30.0)})
def column_pressure(height: Length, rise: TemperatureDifference) -> Pressure:
    """Holds for low buildings only."""
    return PER_METRE * height + 0 * PER_METRE * height * (rise / rise)


@formula(HERE, valid={"parts": (0.0, 100.0)})
def sum_of_flows(parts: Parts[AirFlow]) -> AirFlow:
    """Holds for flows that are no gains."""
    return total(parts)


RISE = found(20.0, d.TEMPERATURE_DIFFERENCE)


@pytest.mark.parametrize(("height", "outside"), [(-0.1, True), (0.0, False), (30.0, False), (30.1, True)])
def test_a_range_holds_its_ends(height: float, outside: bool) -> None:
    figure = column_pressure(found(height, d.LENGTH), RISE)
    expected = [(figure, "height", height, 0.0, 30.0)] if outside else []
    assert outside_ranges([figure]) == expected


def test_every_part_is_looked_at() -> None:
    figure = sum_of_flows([found(1.0, d.AIR_FLOW), found(-2.0, d.AIR_FLOW), found(101.0, d.AIR_FLOW)])
    assert [each[2] for each in outside_ranges([figure])] == [-2.0, 101.0]


def test_what_is_missing_is_not_outside() -> None:
    figure = column_pressure(missing(d.LENGTH, "site/height", "height"), RISE)
    assert outside_ranges([figure, RISE]) == []


def test_a_finding_carries_what_mends_it() -> None:
    why: HeatRate = found(900.0, d.HEAT_RATE)
    mend = Mend("insulate the wall", ({"set": "constructions/wall/u", "to": "U-0.06"},))
    finding = Finding("wall-loses-most", "rooms/kitchen", "One wall loses half of the room's heat.", why,
                      (mend,), HERE, Weight.DECIDE, caution="Mind what is in the wall.")  # fmt: skip
    assert finding.mends[0].changes[0]["to"] == "U-0.06"
    assert finding.weight.value == "decide"
    assert finding.decided is None
    assert [each.value for each in Weight] == ["must fix", "decide", "note"]


def test_a_decision_says_who_and_why() -> None:
    decided = Decided("stays", "the owner wants the stone", "J. Example")
    assert (decided.words, decided.because, decided.by) == (
        "stays",
        "the owner wants the stone",
        "J. Example",
    )


def test_what_could_not_be_checked_says_for_want_of_what() -> None:
    assert NotChecked("air-too-high", "rooms/bath", "volume of the bath").for_want_of == "volume of the bath"

"""What has no common answer is said, once; heads that cannot be are a slip, and are not printed."""

from __future__ import annotations

import pytest

from heatledger.ledger.findings import Finding, Weight
from heatledger.ledger.outcomes import Outcome
from heatledger.steps.review import KINDS
from heatledger.steps.review.house import House
from heatledger.steps.review.kinds import Look
from tests.steps.heated import designed

FERROW = "ferrow-house"
DUEL = (
    {"add": "plant/circulators/p2", "to": {
        "shutoff": "2 ft", "middle_flow": "4 gpm", "middle_head": "1.5 ft", "high_flow": "7 gpm",
        "high_head": "0.5 ft"}},
    {"set": "plant/circulators/p1/shutoff", "to": "30 ft"},
    {"set": "plant/circulators/p1/middle_head", "to": "28 ft"},
    {"set": "plant/circulators/p1/high_head", "to": "20 ft"},
    {"set": "circuits/upper/circulator", "to": "p2"},
    {"set": "circuits/ground/circulator", "to": "p1"},
)  # fmt: skip


def of_kind(id: str, *changes: dict[str, object]) -> list[Finding]:
    return [each for each in designed(FERROW, *changes).findings if each.id == id]


def test_a_circulator_that_is_overpowered_is_said_once() -> None:
    (found,) = of_kind("no-common-answer", *DUEL)
    assert found.weight is Weight.MUST_FIX
    assert found.what.startswith("These circulators and pipes have no common answer.")
    assert "nan" not in found.what and len(found.mends) == 2


@pytest.mark.parametrize("name", ["ferrow-house", "lerch-cottage", "tamm-street"])
def test_what_has_an_answer_is_silent(name: str) -> None:
    house = House(designed(name))
    for id in ("no-common-answer", "head-past-belief"):
        assert Look(house, KINDS[id]).run() == []


def test_a_missing_entry_is_not_called_unsolved() -> None:
    assert not of_kind("no-common-answer", {"set": "circuits/upper/length", "to": ""})


def test_a_valve_that_is_all_but_closed_is_a_slip_and_its_head_is_not_printed() -> None:
    changed = {"set": "circuits/upper/zone_valve", "to": "0.0001 Cv"}
    (found,) = of_kind("head-past-belief", changed)
    assert found.weight is Weight.MUST_FIX and "1,000 ft" in found.what
    assert "zone-valve-takes-much" in found.explains
    assert not of_kind("zone-valve-takes-much", changed)
    assert not of_kind("head-past-belief", {"set": "circuits/upper/zone_valve", "to": "0.1 Cv"})


def test_a_search_without_a_value_says_so_in_words() -> None:
    said = Outcome(False, 3, float("nan"), "flow of the loop").words
    assert "nan" not in said and "flow of the loop" in said

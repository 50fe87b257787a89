"""Each finding on piping and circulators stands where it should, is silent beside it, and mends itself."""

from __future__ import annotations

from functools import cache

import pytest

from heatledger.job.model import Job
from heatledger.ledger.findings import Finding, NotChecked, Weight
from heatledger.steps.review import KINDS, piping, pumping, pumps_and_zones, review, runs
from heatledger.steps.review.house import House
from heatledger.steps.review.kinds import Look
from tests.review.piping_cases import CASES, PipingCase, job_with, plain, pump, second, to
from tests.steps.heated import complete

MODULES = {each.__name__ for each in (piping, runs, pumping, pumps_and_zones)}
OURS = {id: kind for id, kind in KINDS.items() if kind.check.__module__ in MODULES}


def found_on(job: Job) -> tuple[list[Finding], list[NotChecked]]:
    found, not_checked = review(complete(job))
    return [each for each in found if each.id in OURS], [each for each in not_checked if each.id in OURS]


def at(job: Job, id: str, where: str) -> Finding | None:
    """The finding at a place, also where another would explain it."""
    found = Look(House(complete(job)), KINDS[id]).run()
    return next((each for each in found if isinstance(each, Finding) and each.where == where), None)


@cache
def standing(case: PipingCase) -> Finding:
    found = at(case.job(True), case.id, case.where)
    assert found is not None, f"{case.id} does not stand at {case.where}"
    return found


def named(case: PipingCase) -> str:
    return case.id


def test_every_kind_has_a_case() -> None:
    assert {each.id for each in CASES} == set(OURS)
    assert len(OURS) >= 16


@pytest.mark.parametrize("case", CASES, ids=named)
def test_it_stands_and_is_silent_just_beside(case: PipingCase) -> None:
    found = standing(case)
    assert at(case.job(False), case.id, case.where) is None
    assert found.what.endswith(".") and len(found.what) < 260
    assert "nan" not in found.what and "not known" not in found.what
    assert found.why != "" and found.mends


@pytest.mark.parametrize("case", CASES, ids=named)
def test_what_it_offers_mends_it(case: PipingCase) -> None:
    found = standing(case)
    for mend in found.mends:
        if mend.changes:
            assert at(case.job(True).with_changes(mend.changes), case.id, case.where) is None, mend


@pytest.mark.parametrize("case", CASES, ids=named)
def test_the_limit_used_is_said(case: PipingCase) -> None:
    said = standing(case).threshold
    assert all(each.words in said for each in OURS[case.id].limits)


def test_weights_go_with_what_is_at_stake() -> None:
    short, starved = (
        at(job_with(pump(*each)), "longest-run-starved", "circuits/loop")
        for each in ((1.9, 1.5, 0.5), (1.2, 1.0, 0.4))
    )
    assert short is not None and short.weight is Weight.DECIDE
    assert starved is not None and starved.weight is Weight.MUST_FIX
    discharge = to("plant/tank/placed", "pump discharge")
    low = at(job_with([*discharge, *to("plant/height", "25 ft")]), "pump-toward-tank", "plant/tank")
    assert low is not None and low.weight is Weight.MUST_FIX


def test_a_house_whose_piping_lacks_a_length_is_not_checked_and_says_so() -> None:
    job = plain().with_changes([{"remove": "circuits/loop/runs/b-b/length"}])
    found, not_checked = found_on(job)
    assert "longest-run-starved" not in {each.id for each in found}
    assert any(
        each.id == "longest-run-starved" and "Length of tube, Loop" in each.for_want_of
        for each in not_checked
    )


def test_a_weak_second_circulator_is_no_duel() -> None:
    assert at(job_with(second(2.2)), "pumps-in-duel", "plant/circulators/p1") is None

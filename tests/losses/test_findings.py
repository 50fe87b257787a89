"""Each finding stands where it should, is silent beside it, and is mended by what it offers."""

from __future__ import annotations

from collections import Counter

import pytest

from heatledger.job.model import Job
from heatledger.ledger.findings import Finding, Weight
from heatledger.steps.design import design
from heatledger.steps.review import KINDS, review
from tests.losses.cases import Case
from tests.losses.houses import NOTES, TEXTS, house
from tests.losses.slip_cases import ALL_CASES as CASES
from tests.review.emitter_cases import CASES as EMITTERS
from tests.review.piping_cases import CASES as PIPING
from tests.review.plant_cases import CASES as PLANT
from tests.review.system_cases import CASES as SYSTEM

BEHIND = {each.id for some in (EMITTERS, PIPING, PLANT, SYSTEM) for each in some} | {
    "no-common-answer", "head-past-belief",
}  # fmt: skip
"""Kinds of the steps behind the heat loss, whose cases and thresholds are tried in ``tests/review``."""
ORDER = {Weight.NOTE: 0, Weight.DECIDE: 1, Weight.MUST_FIX: 2}


def named(case: Case) -> str:
    return f"{case.id} at {case.where}"


def stands(job: Job, id: str, where: str) -> Finding | None:
    """The finding at a place; the one that explains it where it is folded; None when it is silent."""
    found = review(design(job))[0]
    own = [each for each in found if each.id == id and each.where == where]
    return own[0] if own else next((each for each in found if id in each.explains), None)


def test_every_kind_has_a_case() -> None:
    """Kinds of the heat loss have theirs here; those of the steps behind it in ``tests/review``."""
    assert len(KINDS) >= 30
    here = {each.id for each in CASES}
    assert set(KINDS) == here | BEHIND
    assert not here & BEHIND, "a kind is tried in one place"


@pytest.mark.parametrize("case", CASES, ids=named)
def test_it_stands_and_is_silent_just_beside(case: Case) -> None:
    found = stands(case.job(True), case.id, case.where)
    assert found is not None
    assert stands(case.job(False), case.id, case.where) is None


@pytest.mark.parametrize("case", [each for each in CASES if each.limit], ids=named)
def test_its_threshold_is_named_and_can_be_changed(case: Case) -> None:
    found = stands(case.job(True), case.id, case.where)
    assert found is not None
    kind = KINDS[found.id]
    assert kind.limits
    assert all(each.words in found.threshold for each in kind.limits)
    assert stands(case.job(True, case.limit), case.id, case.where) is None


def test_every_first_threshold_is_tried() -> None:
    tried = {each.id for each in CASES if each.limit}
    assert {id for id, kind in KINDS.items() if kind.limits and id not in BEHIND} == tried


@pytest.mark.parametrize("case", CASES, ids=named)
def test_what_it_offers_mends_it(case: Case) -> None:
    job = case.job(True)
    for found in review(design(job))[0]:
        for mend in found.mends:
            if not mend.changes:
                continue
            after = stands(job.with_changes(mend.changes), found.id, found.where)
            assert after is None or ORDER[after.weight] < ORDER[found.weight], (found.id, mend)


@pytest.mark.parametrize("case", CASES, ids=named)
def test_it_says_what_why_and_how(case: Case) -> None:
    found = stands(case.job(True), case.id, case.where)
    assert found is not None
    assert found.what.endswith(".")
    assert len(found.what) < 260
    assert found.why != ""
    assert found.mends
    assert "nan" not in found.what
    assert found.citation.key or found.citation.standing.value in ("judgment", "common practice", "derived")


@pytest.mark.parametrize("name", TEXTS)
def test_a_sound_house_is_left_in_peace(name: str) -> None:
    found = review(design(house(name)))[0]
    assert {each.id for each in found if each.weight is not Weight.NOTE} == set()
    assert {each.id for each in found} == NOTES.get(name, set())


def test_no_finding_stands_on_every_house() -> None:
    count = Counter(each.id for name in TEXTS for each in review(design(house(name)))[0])
    assert all(times < len(TEXTS) for times in count.values())


def test_sound_houses_are_of_many_kinds() -> None:
    jobs = [house(each) for each in TEXTS]
    assert len(jobs) == 10
    assert {each.units.name for each in jobs} == {"US", "metric", "Canadian"}
    assert max(len(each.rooms) for each in jobs) == 20
    assert min(len(each.rooms) for each in jobs) == 1
    assert any(each.neighbors for each in jobs)
    assert any(each.unheated for each in jobs)

"""Each finding on emitters stands where it should, is silent beside it, and is mended by what it offers."""

from __future__ import annotations

import pytest

from heatledger.job.model import Job
from heatledger.ledger.dimensions import MASS
from heatledger.ledger.findings import Finding, Weight
from heatledger.steps.design import design
from heatledger.steps.review import KINDS, review
from heatledger.steps.review.house import House
from heatledger.steps.review.order import reach_of
from heatledger.steps.targets import CAUTION_LOCAL
from tests.losses.houses import house
from tests.review.emitter_cases import CASES, EmitterCase, length, to
from tests.review.emitter_house import emitter_house

ORDER = {Weight.NOTE: 0, Weight.DECIDE: 1, Weight.MUST_FIX: 2}
OURS = {each.id for each in CASES}
HURTS = {"hot-panel-in-reach", "heavy-iron-on-joists"}


def named(case: EmitterCase) -> str:
    return f"{case.id} at {case.where}"


def stands(job: Job, id: str, where: str) -> Finding | None:
    """The finding at a place, or one that explains it; None when it is silent."""
    done = design(job)
    house = House(done)
    found = review(done)[0]
    own = [each for each in found if each.id == id and each.where == where]
    folding = [each for each in found if id in each.explains]
    covers = (each for each in folding if reach_of(where, house) <= reach_of(each.where, house))
    return own[0] if own else next(covers, None)


def test_every_kind_on_emitters_has_a_case() -> None:
    homes = ("emitter_findings", "emitter_walls", "loop_findings", "radiator_findings")
    kinds = {id for id, each in KINDS.items() if each.check.__module__.rpartition(".")[2] in homes}
    assert kinds == OURS
    assert len(kinds) >= 12


@pytest.mark.parametrize("case", CASES, ids=named)
def test_it_stands_and_is_silent_just_beside(case: EmitterCase) -> None:
    assert stands(case.job(True), case.id, case.where) is not None
    assert stands(case.job(False), case.id, case.where) is None


@pytest.mark.parametrize("case", [each for each in CASES if each.limit], ids=named)
def test_its_threshold_is_named_and_can_be_changed(case: EmitterCase) -> None:
    found = stands(case.job(True), case.id, case.where)
    assert found is not None
    kind = KINDS[found.id]
    assert kind.limits
    assert all(each.words in found.threshold for each in kind.limits)
    assert stands(case.job(True, case.limit), case.id, case.where) is None


def test_every_first_threshold_is_tried() -> None:
    weighed = {id for id in OURS if any(each.dimension is MASS for each in KINDS[id].limits)}
    assert weighed == {"heavy-iron-on-joists"}, "a job gives no weights as limits"
    assert {id for id in OURS - weighed if KINDS[id].limits} == {each.id for each in CASES if each.limit}


@pytest.mark.parametrize("case", CASES, ids=named)
def test_what_it_offers_mends_it(case: EmitterCase) -> None:
    job = case.job(True)
    for found in review(design(job))[0]:
        for mend in found.mends:
            if found.id not in OURS or not mend.changes:
                continue
            after = stands(job.with_changes(mend.changes), found.id, found.where)
            assert after is None or ORDER[after.weight] < ORDER[found.weight], (found.id, mend)


@pytest.mark.parametrize("case", CASES, ids=named)
def test_it_says_what_why_and_how(case: EmitterCase) -> None:
    found = stands(case.job(True), case.id, case.where)
    assert found is not None
    assert found.what.endswith(".")
    assert len(found.what) < 260
    assert "nan" not in found.what
    assert found.why != ""
    assert found.mends
    if found.id == case.id:
        assert bool(found.caution) is (case.id in HURTS)
        assert not found.caution or found.caution.endswith(CAUTION_LOCAL)


def test_a_sound_house_of_emitters_has_only_hot_iron() -> None:
    found, not_checked = review(design(emitter_house()))
    assert {each.id for each in found} & OURS == {"hot-panel-in-reach"}
    assert {each.id for each in not_checked} & OURS == set()


@pytest.mark.parametrize("name", ["ranch", "brick", "flat"])
def test_a_house_without_emitters_is_left_in_peace(name: str) -> None:
    found, not_checked = review(design(house(name)))
    assert {each.id for each in found} & OURS == set()
    assert {each.id for each in not_checked} & OURS == set()


@pytest.mark.parametrize(
    ("changes", "id", "where", "weight"),
    [
        (length("a-b", 9), "room-left-cold", "rooms/a", Weight.MUST_FIX),
        (length("a-b", 11), "room-left-cold", "rooms/a", Weight.DECIDE),
        (length("b-b", 28), "room-driven-hot", "rooms/b", Weight.DECIDE),
        (length("b-b", 22), "room-driven-hot", "rooms/b", Weight.NOTE),
        (to("circuits/loop/drop", "50 °F"), "loop-drop-large", "circuits/loop", Weight.MUST_FIX),
    ],
)
def test_the_farther_off_the_heavier(changes, id, where, weight) -> None:
    found = stands(emitter_house(changes), id, where)
    assert found is not None
    assert found.weight is weight


def test_a_room_with_the_thermostat_is_never_said_to_be_driven_hot() -> None:
    found = review(design(emitter_house(length("a-b", 25))))[0]
    assert not [each for each in found if each.id == "room-driven-hot" and each.where == "rooms/a"]


def test_no_supply_reaches_a_radiator_that_is_far_too_small() -> None:
    changes = [*to("emitters/e-p/output", "100 W"), *to("circuits/panels/drop", "80 °F")]
    found = stands(emitter_house(changes), "supply-beyond-reach", "rooms/e")
    assert found is not None


def test_one_kind_in_many_rooms_is_mended_together() -> None:
    changes = [change for id, feet in (("a-b", 10), ("b-b", 13), ("c-b", 9)) for change in length(id, feet)]
    changes += to("emitters/d-p/output", "1300 W")
    job = emitter_house(changes)
    found = next(each for each in review(design(job))[0] if each.id == "room-left-cold")
    hotter = next(each for each in found.mends if "Run the water" in each.words)
    after = review(design(job.with_changes(hotter.changes)))[0]
    assert "room-left-cold" not in {each.id for each in after}


def test_what_is_wanting_is_named() -> None:
    job = emitter_house([{"remove": "emitters/d-p/output"}, {"remove": "rooms/a/free_wall"}])
    wants = {each.id: each.for_want_of for each in review(design(job))[1]}
    assert "utput" in wants["room-left-cold"]
    assert wants["baseboard-past-free-wall"] == "free wall"

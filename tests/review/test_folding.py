"""What hides what in the heating: a cause folds what follows from it, in the rooms that it touches."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from heatledger.job.model import Job
from heatledger.ledger.findings import Finding, Weight
from heatledger.steps.design import design
from heatledger.steps.review import KINDS, review
from heatledger.steps.review.house import House
from heatledger.steps.review.kinds import Look
from heatledger.steps.review.order import folded, reach_of
from tests.review.emitter_cases import CASES as EMITTERS
from tests.review.emitter_cases import EmitterCase
from tests.review.emitter_house import emitter_house
from tests.review.piping_cases import CASES as PIPING
from tests.review.piping_cases import PipingCase
from tests.review.plant_cases import CASES as PLANT
from tests.review.plant_cases import PlantCase
from tests.steps.heated import complete


def put(path: str, value: Any) -> dict[str, Any]:
    return {"set": path, "to": value}


def where_all_stand(job: Job, *ids: str) -> tuple[House, list[Finding]]:
    """The findings of these kinds before anything is folded."""
    looked = House(design(job))
    found = [
        each for id in ids for each in KINDS[id].check(Look(looked, KINDS[id])) if isinstance(each, Finding)
    ]
    return looked, found


def test_a_loop_that_drops_too_far_explains_its_cold_rooms_and_those_of_no_other() -> None:
    changes = [put("circuits/loop/drop", "50 °F"), put("emitters/d-p/output", "1400 W")]
    found = review(design(emitter_house(changes)))[0]
    loop = next(each for each in found if each.id == "loop-drop-large")
    assert (loop.where, loop.weight) == ("circuits/loop", Weight.MUST_FIX)
    assert "room-left-cold" in loop.explains
    cold = {each.where for each in found if each.id == "room-left-cold"}
    assert "rooms/d" in cold
    assert not cold & {"rooms/a", "rooms/b", "rooms/c"}


def test_what_must_be_fixed_is_not_hidden_by_what_need_not_be() -> None:
    job = emitter_house([put("circuits/loop/drop", "50 °F")])
    looked, found = where_all_stand(job, "loop-drop-large", "room-left-cold")
    loop = next(each for each in found if each.id == "loop-drop-large")
    cold = [each for each in found if each.id == "room-left-cold" and each.weight is Weight.MUST_FIX]
    assert cold
    under = {each.where for each in cold if reach_of(each.where, looked) <= reach_of(loop.where, looked)}
    left = folded([loop, *cold], looked)
    assert under and left[0].explains == ("room-left-cold",)
    assert not under & {each.where for each in left}
    lighter = replace(loop, weight=Weight.DECIDE)
    assert [each.where for each in folded([lighter, *cold], looked)] == [each.where for each in [loop, *cold]]


def test_a_wall_too_short_for_its_baseboard_explains_the_cold_room() -> None:
    job = emitter_house([put("emitters/a-b/length", "11 ft"), put("rooms/a/free_wall", "10 ft")])
    found = {each.id: each for each in review(design(job))[0]}
    assert "room-left-cold" in found["baseboard-past-free-wall"].explains
    assert "room-left-cold" not in found


@pytest.mark.parametrize(
    ("where", "rooms"),
    [
        ("emitters/d-p", "d"), ("circuits/loop", "abc"), ("circuits/loop/runs/b-b", "abc"),
        ("zones/steel", "de"),
        ("plant/boiler", "abcdef"), ("controls/setback", "abcdef"), ("readings/outdoor", "abcdef"),
        ("bills/winter", "abcdef"), ("zones", "abcdef"), ("plant/circulators/p1", "abcdef"),
    ],
)  # fmt: skip
def test_a_place_of_the_heating_touches_the_rooms_it_heats(where: str, rooms: str) -> None:
    assert reach_of(where, House(design(emitter_house()))) == {f"rooms/{each}" for each in rooms}


def test_a_circulator_touches_the_rooms_it_drives() -> None:
    pumps = {id: {"name": id} for id in ("p1", "p2")}
    changes = [{"add": f"plant/circulators/{id}", "to": each} for id, each in pumps.items()]
    changes += [put(f"circuits/{id}/circulator", pump) for id, pump in
                (("loop", "p1"), ("panels", "p2"), ("iron", "p2"))]  # fmt: skip
    looked = House(design(emitter_house(changes)))
    assert reach_of("plant/circulators/p1", looked) == {"rooms/a", "rooms/b", "rooms/c"}
    assert reach_of("plant/circulators/p2", looked) == {"rooms/d", "rooms/e", "rooms/f"}


SYSTEM = {
    "boiler-too-big": {"sized-from-old-boiler", "boiler-cycles-fast", "micro-zone"},
    "supply-beyond-reach": {"one-room-sets-supply", "room-left-cold"},
    "baseboard-past-free-wall": {"room-left-cold", "one-room-sets-supply"},
    "iron-sized-for-steam": {"room-left-cold"},
    "pump-toward-tank": {"top-of-house-dry"},
    "pump-too-big": {"pipe-too-fast", "twenty-degree-habit", "valve-closes-with-bang", "one-zone-alone-fast"},
}


def cases_that_hide() -> list[EmitterCase | PipingCase | PlantCase]:
    """Cases of the heating on which a cause stands, or what it hides."""
    some = {*SYSTEM, *SYSTEM["pump-too-big"]}
    return [each for each in (*EMITTERS, *PIPING, *PLANT) if each.id in some]


def test_causes_in_the_heating_hide_what_follows_from_them() -> None:
    hidden: dict[str, set[str]] = {}
    for case in cases_that_hide():
        done = complete(case.job(True))
        found = review(done)[0]
        for each in found:
            if each.id in SYSTEM:
                assert set(each.explains) <= SYSTEM[each.id]
                hidden.setdefault(each.id, set()).update(each.explains)
    assert {cause for cause, under in hidden.items() if under} >= {
        "iron-sized-for-steam", "supply-beyond-reach", "pump-too-big", "boiler-too-big",
    }  # fmt: skip
    assert hidden["pump-too-big"] == SYSTEM["pump-too-big"]

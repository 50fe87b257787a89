"""A room that needs no heat: its run is shut, and everything around it keeps its figures."""

from __future__ import annotations

from math import isnan

import pytest

from tests.steps.heated import designed

COLD_HALL = {"set": "rooms/hall/indoor", "to": "0 °F"}


def test_a_run_without_load_is_shut_and_the_others_still_flow() -> None:
    made = designed("ferrow-house", COLD_HALL)
    ground = made.circuits.circuits["ground"]
    assert float(made.emitters.emitters["hall-base"].load) == 0
    assert float(ground.runs["hall-base"].balancing) == 0
    assert float(ground.runs["hall-base"].actual_flow) == 0
    for id, run in ground.runs.items():
        assert id == "hall-base" or float(run.actual_flow) > 0
    whole = sum(float(each.actual_flow) for each in made.circuits.circuits.values())
    assert whole == pytest.approx(float(made.startup.startup.flow))


def test_nothing_loses_its_value_where_a_room_needs_none() -> None:
    made, plain = designed("ferrow-house", COLD_HALL), designed("ferrow-house")
    lost = [
        path
        for path, each in made.results.items()
        if isnan(each) and not (path in plain.results and isnan(plain.results[path]))
    ]
    assert lost == []
    assert float(made["emitters/hall-base/needed_length"]) == 0


def test_an_open_manifold_is_not_shut() -> None:
    made = designed("ferrow-house", COLD_HALL, {"set": "circuits/ground/balanced", "to": "no"})
    run = made.circuits.circuits["ground"].runs["hall-base"]
    assert run.balancing is None and float(run.actual_flow) > 0


def test_a_loop_of_no_load_at_all_still_has_an_answer() -> None:
    colder = [{"set": f"rooms/{each}/indoor", "to": "0 °F"}
              for each in ("bathroom", "bedroom-1", "bedroom-2", "bedroom-3")]  # fmt: skip
    made = designed("ferrow-house", *colder)
    assert float(made.circuits.circuits["upper"].actual_flow) > 0

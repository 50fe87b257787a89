"""Claim: flows, heads, tubes and the flows that result follow from the entries, and nothing is lost."""

import math
from dataclasses import replace

import pytest

from heatledger.ledger.choosing import Choice
from heatledger.ledger.results import walk_results
from heatledger.ledger.solving import Solved
from heatledger.steps.circuits import circuits
from heatledger.steps.emitters import emitters
from heatledger.steps.flows import state_flows
from heatledger.steps.losses import heat_losses
from tests.physics.hydraulics import PLASTIC, si
from tests.steps.heads_by_hand import boiler_at, pump_at, tube_at, valve_at
from tests.steps.heated_houses import LOADS, PUMP, TWO_CIRCUITS, house_text, panels, read, steps_of

HEAT, PIPING = steps_of(read(TWO_CIRCUITS))
LOOP, PANELS = PIPING.circuits["loop"], PIPING.circuits["panels"]
PUMP_DUTY = PIPING.plant.circulators["p1"]


def test_design_flows():
    water = float(HEAT.house.water_heat)
    assert float(LOOP.flow) == pytest.approx(si(15000, "Btu/h") / water / si(20, "°F"), rel=1e-6)
    assert float(PANELS.flow) == pytest.approx(sum(float(each.flow) for each in PANELS.runs.values()))
    assert float(PIPING.plant.flow) == pytest.approx(float(LOOP.flow) + float(PANELS.flow))
    assert all(each.flow is LOOP.flow for each in LOOP.runs.values())


def test_a_loop_adds_the_heads_of_all_its_pieces():
    flow, bore = float(LOOP.flow), si(0.811, "in")
    # 40 ft and 8 elbows of 1 ft, 60 ft between the emitters, 36 ft of finned tube, and the zone valve.
    head = tube_at(HEAT, flow, bore, si(40 + 8 + 60 + 36, "ft")) + valve_at(flow, 3.5)
    assert float(LOOP.head) == pytest.approx(head, rel=1e-6)
    assert LOOP.index_run == ""
    assert float(LOOP.runs["b-b"].emitter_length) == pytest.approx(si(12, "ft"))


def test_home_runs_need_the_head_of_the_longest():
    d, e = PANELS.runs["d-p"], PANELS.runs["e-p"]
    assert PANELS.index_run == "d-p" and float(d.head) > float(e.head)
    assert float(PANELS.head) == pytest.approx(float(PANELS.common.head) + float(d.head))
    assert d.emitter_length is None and d.balancing is None
    # Set as said, the short run costs as much as the long one at its design flow.
    valve = (float(e.flow) / float(e.balancing)) ** 2 / (999.09 * 9.80665)
    assert float(e.head) + valve == pytest.approx(float(d.head))


def test_the_circulator_is_asked_for_the_worst_circuit():
    whole = float(PIPING.plant.flow)
    shared = tube_at(HEAT, whole, si(1.055, "in"), si(30 + 4 * 1, "ft")) + boiler_at(whole)
    worst = max(float(LOOP.head), float(PANELS.head))
    assert float(PUMP_DUTY.needed_head) == pytest.approx(shared + worst, rel=1e-6)
    assert PUMP_DUTY.index_circuit == "loop"


def test_pressure_round_each_circuit_closes_and_tees_keep_their_flow():
    whole = float(PUMP_DUTY.actual_flow)
    assert whole == pytest.approx(float(LOOP.actual_flow) + float(PANELS.actual_flow))
    assert float(PUMP_DUTY.actual_head) == pytest.approx(pump_at(whole))
    left = pump_at(whole) - boiler_at(whole) - tube_at(HEAT, whole, si(1.055, "in"), si(34, "ft"))
    loop = float(LOOP.actual_flow)
    assert left == pytest.approx(tube_at(HEAT, loop, si(0.811, "in"), si(144, "ft")) + valve_at(loop, 3.5))
    common = tube_at(HEAT, float(PANELS.actual_flow), si(0.811, "in"), si(10, "ft"))
    for run in PANELS.runs.values():
        own = float(run.actual_flow)
        head = tube_at(HEAT, own, float(run.bore), float(run.length) + float(run.fittings_length), PLASTIC)
        if run.balancing is not None:
            head += (own / float(run.balancing)) ** 2 / (999.09 * 9.80665)
        assert left == pytest.approx(common + head)


def test_heat_given_is_heat_carried():
    for each in (LOOP, PANELS):
        carried = float(each.actual_flow) * float(HEAT.house.water_heat)
        assert float(each.actual_output) == pytest.approx(carried * float(each.actual_drop))
        fall = float(HEAT.house.supply) - float(each.actual_return)
        assert fall == pytest.approx(float(each.actual_drop))


def test_the_smallest_tube_within_the_limits_is_taken():
    run = PANELS.runs["e-p"]
    assert run.tube == "3/8 in PEX" and isinstance(run.bore.origin, Choice)
    assert [name for name, _ in run.bore.origin.losers][:1] == ["1/2 in PEX"]
    assert float(run.friction) <= si(4, "ft/100 ft") and float(run.velocity) <= si(4, "ft/s")


def test_a_limit_of_the_job_moves_the_choice():
    _, piping = steps_of(replace(read(TWO_CIRCUITS), limits={"pipe-too-fast": "0.8 ft/s"}))
    assert piping.circuits["panels"].runs["e-p"].tube == "1/2 in PEX"


def test_where_no_tube_is_large_enough_the_largest_is_taken():
    slow = replace(read(TWO_CIRCUITS), limits={"pipe-too-fast": "0.001 ft/s"})
    run = steps_of(slow)[1].circuits["panels"].runs["e-p"]
    assert run.tube == "1-1/2 in PEX" and "no size" in run.bore.origin.because


def test_runs_take_the_tube_of_their_circuit():
    text = house_text(LOADS, panels("abcde"), """
all: {kind: home-run manifold, tube: pex-1/2,
  runs: {a-p: {length: 60 ft, fittings: {90-ell: 1}}, b-p: {length: 50 ft}, c-p: {length: 40 ft},
    d-p: {length: 60 ft}, e-p: {tube: pex-3/8, length: 60 ft}}}
""", "  supply: 170 °F\n" + PUMP)  # fmt: skip
    found = steps_of(read(text))[1].circuits["all"]
    assert found.runs["a-p"].tube == "1/2 in PEX" and found.runs["e-p"].tube == "3/8 in PEX"
    assert float(found.runs["a-p"].fittings_length) == pytest.approx(si(9.4, "ft"))
    # No common tube is spoken of, so there is none, and the circuit does not wait for one.
    assert found.common.tube == "" and float(found.common.head) == 0 and float(found.actual_flow) > 0


def test_without_a_circulator_nothing_is_settled():
    _, piping = steps_of(read(TWO_CIRCUITS.replace(PUMP, "")))
    assert piping.plant.circulators == {}
    for each in piping.circuits.values():
        assert each.actual_flow is each.actual_drop is each.actual_output is each.actual_return is None
        assert float(each.head) > 0


def test_a_job_without_circuits_has_none():
    text = house_text(LOADS, panels("abcde"), "{}", "  supply: 170 °F\n" + PUMP)
    job = read(text.replace("circuits:\n  {}\n", ""))
    piping = circuits(job, emitters(job, heat_losses(job)))
    assert piping.circuits == {} and piping.plant.mains is None and dict(walk_results(piping)) == {}


def test_what_is_missing_is_waited_for_and_nothing_fails():
    job = read(TWO_CIRCUITS.replace("a-b: {length: 20 ft}", "a-b: {}"))
    piping = steps_of(job)[1]
    assert piping.circuits["loop"].head.is_missing and piping.circuits["loop"].actual_flow.is_missing
    assert not piping.circuits["panels"].head.is_missing
    assert state_flows(job, steps_of(job)[0], piping, frozenset()).solved is False


def test_a_circulator_that_lacks_a_point_waits():
    job = read(TWO_CIRCUITS.replace("shutoff: 20 ft, ", ""))
    piping = steps_of(job)[1]
    assert piping.circuits["loop"].actual_flow.is_missing and piping.circuits["loop"].actual_output.is_missing
    assert math.isnan(float(piping.plant.circulators["p1"].actual_flow))


def test_flows_are_found_together_and_said_so():
    origin = PANELS.runs["d-p"].actual_flow.origin
    assert isinstance(origin, Solved) and origin.solution.outcome.solved
    sides = origin.solution.sides()
    assert len(sides) == 3
    assert all(float(one) == pytest.approx(float(other), rel=1e-10) for one, other in sides.values())


def test_the_same_entries_give_the_same_figures():
    job = read(TWO_CIRCUITS)
    heat = emitters(job, heat_losses(job))
    first = circuits(job, heat)
    again = circuits(job, heat, first)
    before, after = dict(walk_results(first)), dict(walk_results(again))
    assert list(before) == list(after)
    for path, figure in after.items():
        assert float(figure) == float(before[path])
    same = ("loop/head", "loop/actual_flow", "loop/actual_output", "panels/runs/e-p/balancing")
    for path in same[1:]:
        assert after[f"circuits/{path}"] is before[f"circuits/{path}"]


def test_a_changed_length_changes_what_it_must():
    job = read(TWO_CIRCUITS)
    heat = emitters(job, heat_losses(job))
    first = circuits(job, heat)
    other = job.with_changes([{"set": "circuits/loop/length", "to": "80 ft"}])
    heat = emitters(other, heat_losses(other))
    kept, fresh = circuits(other, heat, first), circuits(other, heat)
    after, whole = dict(walk_results(kept)), dict(walk_results(fresh))
    for path, figure in whole.items():
        assert float(after[path]) == pytest.approx(float(figure), rel=1e-9), path
    assert float(kept.circuits["loop"].actual_flow) < float(first.circuits["loop"].actual_flow)

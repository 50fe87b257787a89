"""Claim: flows, heads, tubes and the flows that result follow from the entries, and nothing is lost."""

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from heatledger.job.load import read_job
from heatledger.ledger.choosing import Choice
from heatledger.ledger.results import walk_results
from heatledger.ledger.solving import Solved
from heatledger.steps.circuits import circuits
from heatledger.steps.emitters import emitters
from heatledger.steps.flows import state_flows
from heatledger.steps.losses import heat_losses
from tests.physics.hydraulics import COPPER, PLASTIC, friction_of, si
from tests.steps.heated_houses import (
    BOILER,
    LOADS,
    MAINS,
    PUMP,
    TWO_CIRCUITS,
    baseboards,
    house_text,
    panels,
    read,
    steps_of,
)

HEAT, PIPING = steps_of(read(TWO_CIRCUITS))
LOOP, PANELS = PIPING.circuits["loop"], PIPING.circuits["panels"]
PUMP_DUTY = PIPING.plant.circulators["p1"]
CV = si(1, "gpm") / math.sqrt(si(1, "psi"))


def pump_at(flow):
    """The head of the circulator of these houses."""
    c = math.log(14 / 4) / math.log(2)
    return si(20, "ft") - si(4, "ft") * (flow / si(10, "gpm")) ** c


def boiler_at(flow):
    part = flow / si(8, "gpm")
    return si(4, "ft") * part ** (2 if part > 1 else 1.75)


def valve_at(flow, cv):
    return (flow / (cv * CV)) ** 2 / (999.09 * 9.80665)


def tube_at(flow, bore, length, roughness=COPPER, heat=HEAT):
    return friction_of(flow, bore, roughness, float(heat.house.viscosity))[3] * length


def test_design_flows():
    water = float(HEAT.house.water_heat)
    assert float(LOOP.flow) == pytest.approx(si(15000, "Btu/h") / water / si(20, "°F"), rel=1e-6)
    assert float(PANELS.flow) == pytest.approx(sum(float(each.flow) for each in PANELS.runs.values()))
    assert float(PIPING.plant.flow) == pytest.approx(float(LOOP.flow) + float(PANELS.flow))
    assert all(each.flow is LOOP.flow for each in LOOP.runs.values())


def test_a_loop_adds_the_heads_of_all_its_pieces():
    flow, bore = float(LOOP.flow), si(0.811, "in")
    # 40 ft and 8 elbows of 1 ft, 60 ft between the emitters, 36 ft of finned tube, and the zone valve.
    head = tube_at(flow, bore, si(40 + 8 + 60 + 36, "ft")) + valve_at(flow, 3.5)
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
    shared = tube_at(whole, si(1.055, "in"), si(30 + 4 * 1, "ft")) + boiler_at(whole)
    worst = max(float(LOOP.head), float(PANELS.head))
    assert float(PUMP_DUTY.needed_head) == pytest.approx(shared + worst, rel=1e-6)
    assert PUMP_DUTY.index_circuit == "loop"


def test_pressure_round_each_circuit_closes_and_tees_keep_their_flow():
    whole = float(PUMP_DUTY.actual_flow)
    assert whole == pytest.approx(float(LOOP.actual_flow) + float(PANELS.actual_flow))
    assert float(PUMP_DUTY.actual_head) == pytest.approx(pump_at(whole))
    left = pump_at(whole) - boiler_at(whole) - tube_at(whole, si(1.055, "in"), si(34, "ft"))
    loop = float(LOOP.actual_flow)
    assert left == pytest.approx(tube_at(loop, si(0.811, "in"), si(144, "ft")) + valve_at(loop, 3.5))
    common = tube_at(float(PANELS.actual_flow), si(0.811, "in"), si(10, "ft"))
    for run in PANELS.runs.values():
        own = float(run.actual_flow)
        head = tube_at(own, float(run.bore), float(run.length) + float(run.fittings_length), PLASTIC)
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
    text = TWO_CIRCUITS + "limits: {pipe-too-fast: 0.8 ft/s}\n"
    _, piping = steps_of(read(text))
    assert piping.circuits["panels"].runs["e-p"].tube == "1/2 in PEX"


def test_where_no_tube_is_large_enough_the_largest_is_taken():
    text = TWO_CIRCUITS + "limits: {pipe-too-fast: 0.001 ft/s}\n"
    run = steps_of(read(text))[1].circuits["panels"].runs["e-p"]
    assert run.tube == "2 in PEX" and "no size" in run.bore.origin.because


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


def test_two_circulators_share_the_mains_and_the_boiler():
    second = "p2: {shutoff: 10 ft, middle_flow: 5 gpm, middle_head: 8 ft, high_flow: 10 gpm, high_head: 3 ft}"
    pumps = f"{PUMP.rstrip()}\n    {second}\n"
    text = TWO_CIRCUITS.replace(PUMP, pumps).replace(
        "loop: {kind: series loop,", "loop: {kind: series loop, circulator: p1,"
    )
    text = text.replace(
        "panels: {kind: home-run manifold,", "panels: {kind: home-run manifold, circulator: p2,"
    )
    job = read(text)
    heat, piping = steps_of(job)
    p1, p2 = (piping.plant.circulators[each] for each in ("p1", "p2"))
    whole = float(p1.actual_flow) + float(p2.actual_flow)
    assert float(piping.plant.mains.actual_flow) == pytest.approx(whole)
    left = pump_at(float(p1.actual_flow)) - boiler_at(whole)
    left -= tube_at(whole, si(1.055, "in"), si(34, "ft"))
    flow = float(piping.circuits["loop"].actual_flow)
    assert left == pytest.approx(tube_at(flow, si(0.811, "in"), si(144, "ft")) + valve_at(flow, 3.5))
    alone = state_flows(job, heat, piping, frozenset())
    assert set(alone.circulators) == {"p1", "p2"}


ZONED = house_text(
    LOADS,
    baseboards("abc") + "\n" + panels("de"),
    """
loop: {kind: series loop, zone: one, tube: copper-m-3/4, length: 40 ft, zone_valve: 3.5 Cv,
  runs: {a-b: {length: 20 ft}, b-b: {length: 15 ft}, c-b: {length: 25 ft}}}
panels: {kind: home-run manifold, zone: two, tube: copper-m-3/4, length: 10 ft,
  runs: {d-p: {tube: pex-1/2, length: 60 ft}, e-p: {tube: pex-1/2, length: 30 ft}}}
""",
    "  supply: 180 °F\n" + MAINS + BOILER + PUMP,
    "zones: {one: {thermostat: a}, two: {thermostat: d}}\n",
)


def test_flows_of_one_zone():
    job = read(ZONED)
    heat, piping = steps_of(job)
    both = state_flows(job, heat, piping)
    assert both.circuits["loop"] is piping.circuits["loop"].actual_flow
    assert both.runs["d-p"] is piping.circuits["panels"].runs["d-p"].actual_flow
    one = state_flows(job, heat, piping, frozenset(["one"]))
    assert set(one.circuits) == {"loop"} and set(one.runs) == {"a-b", "b-b", "c-b"} and one.solved
    assert float(one.circulators["p1"]) == pytest.approx(float(one.circuits["loop"]))
    # With the other zone shut there is more head for this one, and less flow in all.
    assert float(both.circuits["loop"]) < float(one.circuits["loop"]) < float(both.circulators["p1"])
    assert state_flows(job, heat, piping, frozenset(["none"])).circuits == {}


def test_the_benchmark_house_settles():
    from benchmarks.twenty_rooms import job_text

    _, piping = steps_of(read_job(job_text(), "twenty.yaml"))
    assert not any(figure.is_missing for _, figure in walk_results(piping))


LENGTH = st.floats(10, 200).map(lambda each: round(each, 1))
CVS = st.floats(0.5, 12).map(lambda each: round(each, 2))


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.lists(LENGTH, min_size=1, max_size=6), LENGTH, CVS, st.floats(3, 30), st.floats(1.5, 30),
    st.sampled_from(["pex-3/8", "pex-1/2", "pex-3/4"]), st.booleans(), st.integers(300, 9000),
)  # fmt: skip
def test_any_network_balances(lengths, common, cv, shutoff, high_flow, tube, balanced, load):
    ids = [f"r{each}" for each in range(len(lengths))]
    runs = ", ".join(
        f"{id}-p: {{tube: {tube}, length: {each} ft}}" for id, each in zip(ids, lengths, strict=True)
    )
    text = house_text(
        {**dict.fromkeys(ids, load), "z": 3000},
        panels([*ids, "z"]),
        f"home: {{kind: home-run manifold, tube: copper-m-3/4, length: {common} ft, zone_valve: {cv} Cv, "
        f"balanced: {'yes' if balanced else 'no'}, runs: {{{runs}}}}}\n"
        f"loop: {{kind: series loop, tube: copper-m-3/4, length: {common} ft, "
        "runs: {z-p: {length: 5 ft}}}\n",
        f"  supply: 170 °F\n{MAINS}{BOILER}  circulators:\n    p1: {{shutoff: {shutoff:.2f} ft, "
        f"middle_flow: {high_flow / 2:.3f} gpm, middle_head: {shutoff * 0.8:.3f} ft, "
        f"high_flow: {high_flow:.3f} gpm, high_head: {shutoff * 0.3:.3f} ft}}\n",
    )
    heat, piping = steps_of(read(text))
    home, loop, duty = piping.circuits["home"], piping.circuits["loop"], piping.plant.circulators["p1"]
    # What enters a tee leaves it.
    assert float(home.actual_flow) == pytest.approx(sum(float(r.actual_flow) for r in home.runs.values()))
    assert float(duty.actual_flow) == pytest.approx(float(home.actual_flow) + float(loop.actual_flow))
    # The head that is left for the circuits is what each way costs.
    whole, nu = float(duty.actual_flow), float(heat.house.viscosity)
    left = float(duty.actual_head) - boiler_at(whole)
    left -= tube_at(whole, si(1.055, "in"), si(34, "ft"), COPPER, heat)

    def cost(piece, roughness):
        own = float(piece.actual_flow)
        metres = float(piece.length) + float(piece.fittings_length)
        head = friction_of(own, float(piece.bore), roughness, nu)[3] * metres
        for each in (piece.valve, piece.balancing):
            if each is not None:
                head += (own / float(each)) ** 2 / (999.09 * 9.80665)
        return head

    for run in home.runs.values():
        assert left == pytest.approx(cost(home.common, COPPER) + cost(run, PLASTIC), rel=1e-7)
    own = cost(loop.common, COPPER) + sum(cost(run, COPPER) for run in loop.runs.values())
    assert left == pytest.approx(own, rel=1e-7)
    # Heat of a loop is the sum of what its emitters give.
    for each in (home, loop):
        fall = float(heat.house.supply) - float(each.actual_return)
        carried = float(each.actual_flow) * float(heat.house.water_heat) * fall
        assert float(each.actual_output) == pytest.approx(carried, rel=1e-9)

"""Claim: flows of any network balance: tees keep their flow, and the pressure round each way closes."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from heatledger.job.load import read_job
from heatledger.ledger.results import walk_results
from heatledger.steps.flows import state_flows
from tests.physics.hydraulics import COPPER, PLASTIC, friction_of, si
from tests.steps.heads_by_hand import boiler_at, pump_at, tube_at, valve_at
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
    left -= tube_at(heat, whole, si(1.055, "in"), si(34, "ft"))
    flow = float(piping.circuits["loop"].actual_flow)
    assert left == pytest.approx(tube_at(heat, flow, si(0.811, "in"), si(144, "ft")) + valve_at(flow, 3.5))
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
    left -= tube_at(heat, whole, si(1.055, "in"), si(34, "ft"))

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

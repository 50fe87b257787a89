"""The emitter step: loads shared, water that cools on its way, lengths found, the lowest supply."""

from __future__ import annotations

from math import isnan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf, waits_for
from heatledger.ledger.results import walk_results
from heatledger.ledger.units import UNITS
from heatledger.steps.emitter_chains import chain_to, chains, outlet_chain, required_supply, supply_for_share
from heatledger.steps.emitters import Emitters, emitters, loads_of_emitters
from heatledger.steps.losses import heat_losses
from tests.steps.heated_houses import LOADS, TWO_CIRCUITS, baseboards, house_text, read

BTUH = UNITS["Btu/h"].to_si(1.0)
FOOT = UNITS["ft"].to_si(1.0)
LOOP = "loop: {kind: series loop, runs: {a-b: {}, b-b: {}, c-b: {}}}"
SUPPLY = "  supply: 180 °F\n"


def in_f(figure: float) -> float:
    return UNITS["°F"].from_si(float(figure), True)


def heat_of(text: str, since: Emitters | None = None) -> Emitters:
    job = read(text)
    return emitters(job, heat_losses(job), since)


def ratio(value: float) -> Figure:
    return leaf(value, d.RATIO, Leaf(LeafKind.SOURCE, "tests/share", "share", str(value), "1", value))


def three(supply: str = SUPPLY, feet: float = 12, circuit: str = LOOP, more: str = "") -> str:
    loads = {"a": 5000, "b": 6000, "c": 4000}
    return house_text(loads, baseboards("abc", feet) + more, circuit, supply or "  drop: 20 °F\n")


def test_a_loop_as_worked_out_by_hand():
    """Loads 5,000, 6,000 and 4,000 Btu/h, 12 ft each of 600 Btu/h at 180/65 °F and 1 gpm with 15 % in it."""
    job = read(three())
    heat = emitters(job, heat_losses(job))
    found = list(heat.emitters.values())
    assert [float(each.load) / BTUH for each in found] == pytest.approx([5000, 6000, 4000])
    assert [float(each.rated) / BTUH for each in found] == pytest.approx([12 * 600 / 1.15] * 3)
    gpm = float(found[0].flow) / UNITS["gpm"].to_si(1)
    assert gpm == pytest.approx(
        15000 / (20 * float(heat.house.water_heat) / UNITS["Btu/(h·gpm·°F)"].to_si(1))
    )
    assert [in_f(each.inlet) for each in found[1:]] == [in_f(each.outlet) for each in found[:-1]]
    water, capacity = 180.0, float(heat.house.water_heat) * float(found[0].flow) / BTUH / 1.8
    for each in found:
        steps = 20000
        for _ in range(steps):
            water -= 12 * 600 / 1.15 * gpm**0.04 * ((water - 70) / 115) ** 1.4 / steps / capacity
        assert in_f(each.outlet) == pytest.approx(water, abs=2e-3)


def test_heat_given_is_what_the_water_loses():
    heat = heat_of(TWO_CIRCUITS)
    for each in heat.emitters.values():
        lost = float(each.flow) * float(heat.house.water_heat) * (float(each.inlet) - float(each.outlet))
        assert float(each.output) == pytest.approx(lost, rel=1e-9)
    assert float(heat.house.given) == pytest.approx(
        sum(float(each.output) for each in heat.emitters.values())
    )


def test_length_needed_gives_the_load():
    heat = heat_of(three())
    needed = heat.emitters["a-b"].needed_length
    assert needed is not None
    again = heat_of(three(feet=float(needed) / FOOT))
    assert float(again.emitters["a-b"].output) == pytest.approx(float(again.emitters["a-b"].load), rel=1e-5)


@settings(max_examples=25, deadline=None)
@given(st.integers(3, 30), st.integers(120, 200))
def test_the_lowest_supply_gives_just_the_load(feet, supply):
    """At the lowest supply of an emitter it gives its load, all before it as they are."""
    job = read(three(f"  supply: {supply} °F\n", feet))
    heat = emitters(job, heat_losses(job))
    for id, each in heat.emitters.items():
        if each.lowest_supply.is_missing:  # no supply brings enough water so far
            continue
        passed = outlet_chain(job, heat, chain_to(job, id), each.lowest_supply)[id]
        assert float(passed.output) == pytest.approx(float(each.load), rel=1e-7)


def test_without_a_supply_the_lowest_one_is_taken():
    heat = heat_of(three(supply=""))
    assert heat.house.supply == heat.house.supply
    assert float(heat.house.supply) == float(heat.house.lowest_supply)
    assert heat.house.set_by == max(heat.rooms, key=lambda room: float(heat.rooms[room].lowest_supply))
    short = min(float(each.given_share) for each in heat.rooms.values())
    assert short == pytest.approx(1, rel=1e-7), "the room that sets it gets just what it needs"
    assert heat.house.next_lowest is not None
    assert float(heat.house.next_lowest) < float(heat.house.lowest_supply)


def test_a_length_that_is_open_is_suggested_and_used():
    text = three().replace("length: 12 ft}", "}").replace(",}", "}").replace(", }", "}")
    heat = heat_of(text)
    for each in heat.emitters.values():
        assert each.suggested
        assert each.length is not None
        assert each.needed_length is not None
        halves = float(each.length) / FOOT * 2
        assert halves == pytest.approx(round(halves))
        assert float(each.needed_length) <= float(each.length) < float(each.needed_length) + FOOT / 2
        assert float(each.output) >= float(each.load)
        assert float(each.lowest_supply) <= float(heat.house.supply)
    metric = heat_of(text.replace("units: US", "units: metric")).emitters["a-b"]
    assert metric.length is not None
    assert float(metric.length) * 10 == pytest.approx(round(float(metric.length) * 10))


def test_a_length_stays_open_without_a_supply():
    heat = heat_of(three(supply="").replace("length: 12 ft}", "}").replace(", }", "}"))
    assert heat.house.supply.is_missing
    assert heat.emitters["a-b"].length is None
    assert heat.emitters["a-b"].output.is_missing
    words = {each.origin.path for each in waits_for(heat.emitters["a-b"].output)}
    assert "emitters/a-b/length" in words


def test_a_panel_without_output_shows_what_to_look_for():
    loads = {"a": 5000}
    one = house_text(loads, "p: {room: a, kind: panel radiator}", "{}", SUPPLY)
    open_one = heat_of(one).emitters["p"]
    assert open_one.output.is_missing
    assert open_one.needed_rated is not None
    watts = float(open_one.needed_rated)
    chosen = heat_of(one.replace("radiator}", f"radiator, output: {watts:.6f} W}}")).emitters["p"]
    assert float(chosen.output) == pytest.approx(float(chosen.load), rel=1e-6)


def test_emitters_behind_an_open_one_are_sized():
    text = three(circuit="loop: {kind: series loop, runs: {p: {}, a-b: {}, b-b: {}, c-b: {}}}").replace(
        "circuits:", "  p: {room: a, kind: panel radiator}\ncircuits:"
    )
    heat = heat_of(text)
    assert not heat.emitters["c-b"].inlet.is_missing
    assert heat.rooms["a"].given.is_missing


def test_a_room_is_shared_by_output_at_one_excess():
    text = house_text(
        {"a": 6000},
        "one: {room: a, kind: panel radiator, output: 1000 W}\n"
        "two: {room: a, kind: panel radiator, output: 1267.46 W, rated_supply: 90 °C, rated_return: 70 °C}",
        "{}",
        SUPPLY,
    )
    heat = heat_of(text)
    one, two = heat.emitters["one"], heat.emitters["two"]
    assert float(one.load) == pytest.approx(float(two.load), rel=0.01), "60 K and 50 K are one radiator"
    assert float(one.load) + float(two.load) == pytest.approx(float(heat.rooms["a"].needed))


def test_one_room_with_ten_radiators():
    rows = "\n".join(f"r{i}: {{room: a, kind: cast-iron radiator, edr: {20 + i} ft2}}" for i in range(10))
    heat = heat_of(house_text({"a": 40000}, rows, "{}", "  drop: 20 °F\n"))
    assert sum(float(each.load) for each in heat.emitters.values()) == pytest.approx(40000 * BTUH)
    assert heat.house.set_by == "a"
    assert heat.house.next_lowest is None
    assert float(heat.rooms["a"].given_share) == pytest.approx(1, rel=1e-4)
    assert 120 < in_f(heat.house.lowest_supply) < 200


def test_a_room_that_gains_needs_nothing():
    text = three().replace("indoor: 70 °F", "indoor: 70 °F")
    text = text.replace("  a: {level: ground,", "  a: {indoor: -5 °F, level: ground,")
    heat = heat_of(text)
    assert float(heat.rooms["a"].needed) == 0
    assert float(heat.rooms["a"].given_share) == 1
    assert float(heat.emitters["a-b"].lowest_supply) == float(UNITS["°F"].to_si(-5, True))
    assert not heat.house.lowest_supply.is_missing


def test_a_home_run_of_a_room_that_gains_has_no_flow():
    text = three(circuit="{}").replace("  a: {level: ground,", "  a: {indoor: -5 °F, level: ground,")
    each = heat_of(text).emitters["a-b"]
    assert float(each.flow) == 0
    assert float(each.output) == 0


def test_emitters_of_no_circuit_are_home_runs():
    heat = heat_of(three(circuit="{}"))
    for each in heat.emitters.values():
        assert float(each.inlet) == float(heat.house.supply)
        drop = float(each.load) / float(each.capacity)
        assert drop == pytest.approx(20 / 1.8)


def test_flow_and_drop_of_a_circuit_win():
    given_flow = heat_of(three(circuit=LOOP.replace("loop, ", "loop, flow: 2.5 gpm, ")))
    assert {float(each.flow) for each in given_flow.emitters.values()} == {UNITS["gpm"].to_si(2.5)}
    half = heat_of(three(circuit=LOOP.replace("loop, ", "loop, drop: 10 °F, ")))
    usual = heat_of(three())
    assert float(half.emitters["a-b"].flow) == pytest.approx(2 * float(usual.emitters["a-b"].flow))
    runs = LOOP.replace("series loop, ", "home-run manifold, flow: 3 gpm, ")
    shared = heat_of(three(circuit=runs)).emitters
    assert sum(float(each.flow) for each in shared.values()) == pytest.approx(UNITS["gpm"].to_si(3))
    assert float(shared["b-b"].flow) / float(shared["c-b"].flow) == pytest.approx(1.5)


def test_thin_air_and_other_rooms_are_counted():
    high = heat_of(three().replace("elevation: 0 ft", "elevation: 5280 ft")).emitters["a-b"]
    assert float(high.altitude_factor) == pytest.approx(0.8395, abs=1e-4)
    assert float(high.rated_here) == pytest.approx(
        float(high.rated) * float(high.flow_factor) * float(high.altitude_factor)
    )


def test_a_share_of_the_load_on_the_same_loop():
    job = read(TWO_CIRCUITS)
    heat = emitters(job, heat_losses(job))
    whole = supply_for_share(job, heat, ratio(1.0))
    assert float(whole) == pytest.approx(float(heat.house.lowest_supply), rel=1e-9)
    half = [required_supply(job, heat, id, ratio(0.5)) for id in heat.emitters]
    assert float(supply_for_share(job, heat, ratio(0.5))) == max(float(each) for each in half)
    for id, each in zip(heat.emitters, half, strict=True):
        passed = outlet_chain(job, heat, chain_to(job, id), each)[id]
        assert float(passed.output) == pytest.approx(float(heat.emitters[id].load) / 2, rel=1e-7)


def test_other_flows_and_another_room_temperature():
    job = read(TWO_CIRCUITS)
    heat = emitters(job, heat_losses(job))
    loop = chain_to(job, "c-b")
    assert loop == ("a-b", "b-b", "c-b")
    same = outlet_chain(job, heat, loop, heat.house.supply, {id: heat.emitters[id].flow for id in loop})
    for id in loop:
        assert float(same[id].outlet) == pytest.approx(float(heat.emitters[id].outlet), rel=1e-12)
    warm = outlet_chain(job, heat, loop, heat.house.supply, air=job.rooms["a"].indoor)
    assert warm["a-b"].output == warm["a-b"].output
    assert [each for _, each in chains(job)] == [loop, ("d-p",), ("e-p",)]


def test_nothing_given_waits_and_never_fails():
    text = house_text(LOADS, "a-b: {room: a, kind: fin-tube baseboard, catalog: ''}", "{}", "  drop: 20 °F\n")
    heat = heat_of(text.replace(", catalog: ''", ""))
    assert heat.emitters["a-b"].output.is_missing
    assert heat.rooms["b"].lowest_supply.is_missing
    assert float(heat.rooms["b"].given) == 0, "a room without an emitter gets nothing"
    empty = heat_of(text.split("emitters:")[0])
    assert empty.emitters == {}
    assert empty.house.given.is_missing
    assert empty.house.set_by == ""
    assert all(each.given.is_missing for each in empty.rooms.values())
    no_rooms = read("format: 1\nname: Invented\nunits: US\nsite: {outdoor: 0 °F, indoor: 70 °F}\n")
    assert emitters(no_rooms, heat_losses(no_rooms)).rooms == {}


def test_a_missing_loss_waits():
    heat = heat_of(three().replace("kind: wall, u_value: 0.1", "kind: wall"))
    assert isnan(heat.rooms["a"].needed)
    assert heat.emitters["a-b"].output.is_missing


def test_loads_by_themselves():
    job = read(TWO_CIRCUITS)
    losses = heat_losses(job)
    alone = loads_of_emitters(job, losses)
    assert {id: float(each) for id, each in alone.items()} == {
        id: float(each.load) for id, each in emitters(job, losses).emitters.items()
    }


def test_what_did_not_change_is_taken_over():
    job = read(TWO_CIRCUITS)
    losses = heat_losses(job)
    first = emitters(job, losses)
    again = emitters(job, losses, first)
    assert all(again.emitters[id] is each for id, each in first.emitters.items())
    assert again.house is first.house
    longer = job.with_changes([{"set": "emitters/c-b/length", "to": "14 ft"}])
    changed = emitters(longer, losses, first)
    assert changed.emitters["d-p"] is first.emitters["d-p"]
    assert changed.emitters["a-b"] is not first.emitters["a-b"], "its loop is worked out again as a whole"
    anew = emitters(longer, losses)
    one, two = dict(walk_results(changed)), dict(walk_results(anew))
    assert list(one) == list(two)
    assert all(float(one[path]) == float(two[path]) for path in one)
    assert changed.house.set_by == anew.house.set_by

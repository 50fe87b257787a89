"""Zones, circuits, the boiler room, controls, bills, readings and codes, as they are read."""

from __future__ import annotations

import pytest

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.missing import missing_entries
from heatledger.job.model import Job
from tests.job.samples import SMALL, heated, si, small

FT, GPM, F = 0.3048, 0.003785411784 / 60, 1 / 1.8


def paths(job: Job) -> list[str]:
    return [each.path for each in missing_entries(job)]


def test_a_job_without_a_system_has_an_empty_one_and_misses_nothing() -> None:
    job = small()
    system = job.system
    assert system.emitters == system.zones == system.circuits == system.bills == {}
    assert system.plant.boiler is system.plant.tank is system.plant.mains is system.controls.setback is None
    assert system.plant.circulators == {}
    assert system.readings.calling == ()
    assert missing_entries(job) == []


def test_the_whole_system_misses_nothing() -> None:
    assert paths(heated()) == []


def test_a_circuit_and_its_runs_in_the_order_of_the_water() -> None:
    circuits = heated().system.circuits
    loop, spokes = circuits["loop"], circuits["spokes"]
    assert (loop.name, loop.kind, loop.zone, loop.circulator) == (
        "Ground loop",
        "series loop",
        "ground",
        "p1",
    )
    assert (spokes.zone, spokes.circulator, spokes.balanced) == ("", "p1", True)
    assert list(spokes.runs) == ["hall-panel", "hall-iron"]
    assert float(loop.common.length) == pytest.approx(27 * FT)
    assert loop.common.valve is not None
    assert loop.common.valve.origin.path == "circuits/loop/zone_valve"
    assert loop.common.tube is not None
    assert (loop.common.tube.key, loop.common.tube.family) == ("copper-m-3/4", "copper-m")
    assert float(loop.common.tube.bore) == pytest.approx(0.811 * 0.0254)


def test_a_run_of_a_series_loop_is_of_the_tube_of_the_loop_and_a_home_run_is_not() -> None:
    circuits = heated().system.circuits
    assert circuits["loop"].runs["kitchen-wall"].tube == circuits["loop"].common.tube
    panel, iron = circuits["spokes"].runs.values()
    assert panel.tube is not None
    assert panel.tube.key == "pex-1/2"
    assert (iron.tube, iron.family) == (None, "pex")
    bare = heated(("tube: pex, length", "length")).system.circuits["spokes"].runs["hall-iron"]
    assert (bare.tube, bare.family) == (None, "")


def test_fittings_are_counted_and_have_the_length_of_their_tube() -> None:
    common = heated().system.circuits["loop"].common
    ell = common.fittings["90-ell"]
    assert float(ell.count) == 4
    assert ell.name == "90 degree elbow"
    assert float(ell.equivalent_length) > 0
    waiting = heated(("{tube: pex, length: 70 ft}", "{tube: pex, length: 70 ft, fittings: {90-ell: 3}}"))
    one = waiting.system.circuits["spokes"].runs["hall-iron"].fittings["90-ell"]
    assert one.equivalent_length.is_missing
    assert paths(waiting) == []


def test_a_length_of_nothing_is_a_length() -> None:
    loop = heated(("length: 27 ft", "length: 0 ft")).system.circuits["loop"]
    assert float(loop.common.length) == 0


def test_the_boiler_room() -> None:
    plant = heated().system.plant
    assert plant.boiler is not None
    assert plant.boiler.output is None
    assert si(plant.boiler.efficiency) == pytest.approx(0.94)
    assert plant.low_water_cutoff is True
    assert plant.tank is not None
    assert plant.tank.placed == "pump suction"
    assert plant.mains is not None
    assert si(plant.mains.insulation) == pytest.approx(0.75 * 0.0254)
    pump = plant.circulators["p1"]
    assert float(pump.high_flow) == pytest.approx(20 * GPM)
    assert float(pump.shutoff) == pytest.approx(20 * FT)


def test_mains_run_through_a_space_that_is_there() -> None:
    space = "unheated:\n  basement: {volume: 900 ft3, air: {changes: 0.1 ACH}}\n"
    job = heated(("insulation: 3/4 in", "through: unheated/basement"), add=space)
    assert job.system.plant.mains is not None
    assert job.system.plant.mains.through == "unheated/basement"


def test_mains_run_through_the_space_of_a_neighbor() -> None:
    space = "neighbors:\n  crawl: {name: Crawlspace, temperature: 45 °F}\n"
    job = heated(("insulation: 3/4 in", "through: neighbors/crawl"), add=space)
    assert job.system.plant.mains is not None
    assert job.system.plant.mains.through == "neighbors/crawl"
    with pytest.raises(JobErrors) as caught:
        heated(("insulation: 3/4 in", "through: neighbors/craw"), add=space)
    assert [(each.code, each.path) for each in caught.value.errors] == [
        ("unknown-neighbor", "plant/mains/through")
    ]
    assert "`crawl`" in caught.value.errors[0].mend


def test_a_plain_steel_tank_has_no_charge() -> None:
    unsaid, plain = heated().system.plant.tank, heated((" precharge: 12 psi,", " kind: plain steel,"))
    assert unsaid is not None
    assert (unsaid.kind, unsaid.is_plain) == ("", False)
    tank = plain.system.plant.tank
    assert tank is not None
    assert tank.is_plain
    assert paths(plain) == []
    with pytest.raises(JobErrors) as caught:
        heated(("precharge: 12 psi", "precharge: 12 psi, kind: plain steel"))
    (error,) = caught.value.errors
    assert (error.code, error.path) == ("value-not-for-kind", "plant/tank/precharge")
    assert "kind: diaphragm" in error.mend


def test_two_numbers_that_commas_cut_alike_are_told_of_one_by_one() -> None:
    """Both leave the rest `000 Btu/h`, which is no key given twice."""
    with pytest.raises(JobErrors) as caught:
        heated(("input: 50000 Btu/h, efficiency: 94 %", "input: 225,000 Btu/h, output: 182,000 Btu/h"))
    found = caught.value.errors
    assert [(each.code, each.path) for each in found] == [
        ("stray-comma", "plant/boiler/input"), ("stray-comma", "plant/boiler/output"),
    ]  # fmt: skip
    assert "`input: 225000 Btu/h`" in found[0].mend
    assert "`output: 182000 Btu/h`" in found[1].mend


def test_three_alike_and_one_cut_twice_are_told_of_one_by_one() -> None:
    with pytest.raises(JobErrors) as caught:
        heated((
            "input: 50000 Btu/h, efficiency: 94 %",
            "input: 1,225,000 Btu/h, output: 182,000 Btu/h, relief_capacity: 300,000 Btu/h",
        ))  # fmt: skip
    assert [each.path.rpartition("/")[2] for each in caught.value.errors] == [
        "input", "output", "relief_capacity"
    ]  # fmt: skip
    assert {each.code for each in caught.value.errors} == {"stray-comma"}


def test_a_key_that_is_really_given_twice_is_told_so() -> None:
    with pytest.raises(JobErrors) as caught:
        heated(("relief: 30 psi}", "relief: 30 psi, relief: 30 psi}"))
    assert [each.code for each in caught.value.errors] == ["duplicate-key"]


def test_a_supply_that_is_not_given_comes_first_and_says_what_stands_in() -> None:
    job = heated(("  supply: 160 °F\n", ""), ("water: 2.6 gal", "water: "))
    first, *rest = missing_entries(job)
    assert first.path == "plant/supply"
    assert "lowest that serves every room is used" in first.words
    assert "return" in first.words
    assert [each.path for each in rest] == ["plant/boiler/water"]
    alone = small(add="plant: {height: 19 ft}\n")
    assert missing_entries(alone) == []


def test_bills_readings_and_codes() -> None:
    system = heated().system
    bill = system.bills["winter"]
    assert bill.energy is bill.gas is None
    assert float(bill.efficiency) == pytest.approx(0.8)
    assert bill.heat_content is not None
    assert bill.heat_content.origin.typed == "138500"
    read = system.readings
    assert si(read.return_) == pytest.approx((124 + 459.67) / 1.8)
    assert read.calling == ("ground",)
    assert si(read.combustion.draft) < 0
    assert si(read.combustion.oxygen) == pytest.approx(0.045)
    assert read.combustion.spillage == "none"
    assert (system.codes.adopted, system.codes.licence) == ("to be asked", "")


def test_zones_that_call_are_parted_by_commas() -> None:
    two = heated(("zones:\n", "zones:\n  upper: {}\n"), ("calling: ground", "calling: ground , upper,ground"))
    assert two.system.readings.calling == ("ground", "upper")
    assert two.system.zones["upper"].name == "Upper"


@pytest.mark.parametrize(
    ("old", "new", "path"),
    [
        ("length: 27 ft", "length:", "circuits/loop/length"),
        ("    length: 27 ft\n", "", "circuits/loop/length"),
        ("{length: 20 ft, ", "{", "circuits/loop/runs/kitchen-wall/length"),
        ("90-ell: 4", "90-ell: ", "circuits/loop/fittings/90-ell"),
        ("  height: 19 ft\n", "", "plant/height"),
        ("supply: 160 °F", "supply:", "plant/supply"),
        ("efficiency: 94 %, ", "", "plant/boiler/output"),
        ("kind: condensing, ", "", "plant/boiler/kind"),
        ("fuel: natural gas, ", "", "plant/boiler/fuel"),
        ("shutoff: 20 ft, ", "", "plant/circulators/p1/shutoff"),
        ("volume: 4.4 gal", "volume: ", "plant/tank/volume"),
        ("mildest_supply: 90 °F", "mildest_supply: ", "controls/mildest_supply"),
        ("volume: 820 gal, ", "", "bills/winter/energy"),
        ("degree_days: 6480 °F, ", "", "bills/winter/degree_days"),
        ("output: 1800 W, ", "", "emitters/hall-panel/output"),
    ],
)
def test_each_gap_of_the_system_is_named_by_its_path(old: str, new: str, path: str) -> None:
    assert paths(heated((old, new))) == [path]


def test_readings_that_are_not_taken_yet_are_no_gap() -> None:
    job = heated(("  outdoor: 18 °F\n  return", "  outdoor:\n  return"), ("oxygen: 4.5 %", "oxygen: "))
    assert paths(job) == []


@pytest.mark.parametrize(
    "section", ["emitters", "zones", "circuits", "plant", "controls", "bills", "readings"]
)
def test_a_section_without_anything_in_it_can_be_read(section: str) -> None:
    job = read_job(SMALL + f"{section}:\n")
    assert getattr(job.system, section) == getattr(small().system, section)
    assert set(paths(job)) <= {"plant/height"}


def test_half_ranges_of_the_system_go_by_what_a_value_is() -> None:
    system = heated().system
    length = system.circuits["loop"].common.length
    assert length.origin.half_range_words == "15 %, judgment for tube-length told"
    assert system.bills["winter"].degree_days.origin.half_range == pytest.approx(0.05 * 6480 * F)
    assert system.plant.supply is not None
    assert system.plant.supply.origin.half_range == 0
    own = heated(add="ranges:\n  tube-length: {told: 20 %}\n  pressure: {told: 2 psi}\n").system
    assert own.circuits["loop"].common.length.origin.half_range == pytest.approx(0.2 * 27 * FT)

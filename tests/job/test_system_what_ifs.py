"""What-ifs reach into the heating system, and the file stays as it was."""

from __future__ import annotations

from typing import Any

import pytest

from heatledger.job.errors import JobErrors
from heatledger.job.model import Job
from tests.job.samples import codes, heated, small

FT = 0.3048


def changed(*changes: dict[str, Any]) -> Job:
    return heated().with_changes(changes)


@pytest.mark.parametrize(
    ("path", "to", "place", "value"),
    [
        ("plant/supply", "180 °F", lambda system: system.plant.supply, (180 + 459.67) / 1.8),
        ("emitters/kitchen-wall/length", "14 ft",
         lambda system: system.emitters["kitchen-wall"].length, 14 * FT),
        ("circuits/loop/runs/kitchen-wall/length", "30 ft",
         lambda system: system.circuits["loop"].runs["kitchen-wall"].length, 30 * FT),
        ("circuits/loop/fittings/90-ell", "6",
         lambda system: system.circuits["loop"].common.fittings["90-ell"].count, 6),
        ("plant/boiler/efficiency", "86 %", lambda system: system.plant.boiler.efficiency, 0.86),
        ("plant/circulators/p1/shutoff", "25 ft",
         lambda system: system.plant.circulators["p1"].shutoff, 25 * FT),
        ("controls/setback", "4 °F", lambda system: system.controls.setback, 4 / 1.8),
        ("bills/winter/efficiency", "75 %", lambda system: system.bills["winter"].efficiency, 0.75),
        ("readings/outdoor", "5 °F", lambda system: system.readings.outdoor, (5 + 459.67) / 1.8),
    ],
)  # fmt: skip
def test_a_value_is_set(path: str, to: str, place: Any, value: float) -> None:
    job = heated()
    after = job.with_changes([{"set": path, "to": to}])
    figure = place(after.system)
    assert float(figure) == pytest.approx(value)
    assert figure.origin.path == path
    assert "from the what-if change" in figure.origin.beside
    before = place(job.system)
    assert before is None or figure.origin.replaces == before.origin.typed


def test_things_are_added_and_removed_by_their_id() -> None:
    after = changed(
        {"remove": "circuits/spokes/runs/hall-panel"},
        {"remove": "emitters/hall-panel"},
        {"add": "emitters/hall-wall", "to": {"room": "hall", "catalog": "fin-tube-plain"}},
        {"add": "circuits/loop/runs/hall-wall", "to": {"length": "12 ft"}},
    ).system
    assert list(after.circuits["spokes"].runs) == ["hall-iron"]
    assert list(after.circuits["loop"].runs) == ["kitchen-wall", "hall-wall"]
    assert "hall-panel" not in after.emitters


@pytest.mark.parametrize(
    "path", ["plant/supply", "plant/boiler/input", "controls/setback", "readings/outdoor"]
)
def test_a_section_that_is_not_there_begins_with_its_first_value(path: str) -> None:
    to = {"plant/boiler/input": "40000 Btu/h", "controls/setback": "4 °F"}.get(path, "150 °F")
    job = small().with_changes([{"set": path, "to": to}])
    section = getattr(job.system, path.split("/")[0])
    if path == "plant/boiler/input":
        section = section.boiler
    assert getattr(section, path.rpartition("/")[2]) is not None


@pytest.mark.parametrize(
    "path",
    [
        "emitters/none/length", "circuits/loop/runs/none/length", "plant/boilers/input",
        "plant/circulators/p9/power", "plant/boiler/inputs",
    ],
)  # fmt: skip
def test_what_is_not_there_cannot_be_set(path: str) -> None:
    with pytest.raises(JobErrors) as caught:
        changed({"set": path, "to": "1 ft"})
    assert codes(caught.value) == ["what-if-target"]


def test_one_way_to_say_a_thing_takes_the_other_away() -> None:
    after = changed({"set": "emitters/kitchen-wall/output", "to": "5800 Btu/h"}).system
    assert after.emitters["kitchen-wall"].rating is None
    fuel = changed({"set": "bills/winter/energy", "to": "1100 therms"}).system.bills["winter"]
    assert fuel.volume is fuel.heat_content is None
    assert fuel.energy is not None
    panel = changed({"set": "emitters/hall-panel/rated_water", "to": "70 °C"}).system.emitters["hall-panel"]
    assert panel.rated_water is not None
    assert panel.rated_supply is None


def test_another_row_of_the_catalog() -> None:
    after = changed({"set": "emitters/hall-iron/catalog", "to": "column-3-26"}).system.emitters["hall-iron"]
    assert after.section_edr is not None
    assert float(after.section_edr) == pytest.approx(3.75 * FT**2)
    assert after.section_edr.origin.replaces == "column-3-38"


@pytest.mark.parametrize(
    ("gone", "named"),
    [("zones/ground", "circuits/loop/zone"), ("emitters/kitchen-wall", "circuits/loop/runs/kitchen-wall")],
)
def test_a_name_that_a_what_if_removed_is_told_of_as_such(gone: str, named: str) -> None:
    job = heated(("  calling: ground\n", ""), add=f"what-ifs:\n  less: {{changes: [{{remove: {gone}}}]}}\n")
    with pytest.raises(JobErrors) as caught:
        job.with_what_ifs("less")
    (error,) = caught.value.errors
    assert f"The what-if `less` removes `{gone}`" in error.message
    assert named in error.message


def test_the_codes_are_out_of_reach() -> None:
    with pytest.raises(JobErrors) as caught:
        heated(add="what-ifs:\n  one: {changes: [{set: codes/adopted, to: other}]}\n")
    assert codes(caught.value) == ["what-if-out-of-reach"]

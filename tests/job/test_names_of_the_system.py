"""What the figures of the heating system are called, from the place where they stand."""

from __future__ import annotations

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import missing
from heatledger.steps.names import things_at, title_at
from tests.job.samples import heated

JOB = heated(("kind: condensing", "kind: condensing, name: Old boiler"))


@pytest.mark.parametrize(
    ("path", "things", "rest"),
    [
        ("emitters/kitchen-wall/output", ["Baseboard under the window", "Kitchen"], ["output"]),
        ("rooms/kitchen/needed", ["Kitchen"], ["needed"]),
        ("circuits/loop/head", ["Ground loop"], ["head"]),
        ("circuits/loop/common/velocity", ["Ground loop", "Common piping"], ["velocity"]),
        (
            "circuits/loop/runs/kitchen-wall/head",
            ["Ground loop", "Run of Baseboard under the window"],
            ["head"],
        ),
        ("circuits/loop/length", ["Ground loop"], ["length"]),
        ("plant/load", ["Boiler room"], ["load"]),
        ("plant/boiler/output", ["Boiler room", "Old boiler"], ["output"]),
        ("plant/tank/volume", ["Boiler room", "Expansion tank"], ["volume"]),
        ("plant/mains/head", ["Boiler room", "Mains"], ["head"]),
        ("plant/circulators/p1/needed_flow", ["Boiler room", "P1"], ["needed_flow"]),
        ("plant/factors/pickup/value", ["Boiler room"], ["factors", "pickup", "value"]),
        ("controls/reset/at-10-f/supply", ["Controls", "At 10 °F outdoors"], ["supply"]),
        ("startup/circuits/loop/flow", ["Startup", "Ground loop"], ["flow"]),
        ("startup/emitters/hall-panel/output", ["Startup", "Hall panel", "Hall"], ["output"]),
        ("readings/combustion/oxygen", ["Readings", "Combustion"], ["oxygen"]),
        ("bills/winter/heat", ["Winter"], ["heat"]),
        ("zones/ground/flow", ["Ground floor"], ["flow"]),
        ("house/loss", ["House"], ["loss"]),
    ],
)
def test_the_things_a_path_passes_through(path: str, things: list[str], rest: list[str]) -> None:
    assert things_at(path, JOB) == (things, rest)


def test_a_title_says_what_it_is_and_of_what() -> None:
    figure = missing(d.HEAT_RATE, "emitters/kitchen-wall/output", "output")
    assert title_at("emitters/kitchen-wall/output", figure, JOB) == (
        "Output, Baseboard under the window, Kitchen"
    )
    length = JOB.system.circuits["loop"].runs["kitchen-wall"].length
    assert title_at("circuits/loop/runs/kitchen-wall/length", length, JOB) == (
        "Length of tube, Ground loop, Run of Baseboard under the window"
    )


def test_a_thing_that_is_gone_is_called_by_its_id() -> None:
    things = things_at("circuits/old-loop/runs/old-panel/head", JOB)
    assert things == (["old loop", "Run of old panel"], ["head"])

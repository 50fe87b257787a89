"""Claim: what is printed fits 80 columns, whatever the units, the size of the numbers and what is missing."""

from __future__ import annotations

import re
from dataclasses import replace
from importlib import resources
from pathlib import Path

import pytest
from click.testing import CliRunner

from heatledger.cli.group import commands
from heatledger.cli.sheet import design_sheet
from heatledger.cli.summary import summary_lines
from heatledger.cli.unfold import unfolded
from heatledger.job.load import load_job
from heatledger.ledger.presets import METRIC, PRESETS, US, Preset
from heatledger.steps.design import Design, design

EXAMPLES = resources.files("heatledger").joinpath("examples")
DEMOS = ("ferrow-house", "lerch-cottage", "tamm-street")
WIDTH = 80
SCREEN = 32
LOST = {
    "as it is": ("", ""),
    "no outdoor": (r"\n  outdoor: .*", ""),
    "no supply": (r"\n  supply: .*", ""),
    "no drop": (r"\n  drop: .*", ""),
    "no height": (r"\n  height: .*", ""),
    "no curve": (r"\n      middle_head: .*", ""),
    "no output": (r"\n    output: .*", ""),
    "no degree days": (r"\n    degree_days: .*", ""),
    "arctic": (r"\n  outdoor: [^#\n]*", "\n  outdoor: -50 °F "),
    "a sieve": (r"changes: 0.\d+ ACH|exposed_sides: 2", "changes: 90 ACH"),
    "long names": (
        r"name: (Kitchen|Living room|Circulator|Whole house)",
        r"name: \\1 of the old mill by the river",
    ),
}


def made(name: str, lost: str = "as it is") -> Design:
    text = EXAMPLES.joinpath(f"{name}.yaml").read_text("utf-8")
    pattern, put = LOST[lost]
    return design(load_job(re.sub(pattern, put, text) if pattern else text))


CASES = [(name, "as it is") for name in DEMOS] + [
    ("ferrow-house", lost) for lost in LOST if lost != "as it is"
]


@pytest.mark.parametrize(("name", "lost"), CASES)
def test_the_sheet_fits_whatever_is_lost(name: str, lost: str) -> None:
    house = made(name, lost)
    for units in PRESETS.values() if lost == "as it is" else [METRIC if len(lost) % 2 else US]:
        told = replace(house, job=replace(house.job, units=units))
        for sheet in (design_sheet(told, units), "\n".join(summary_lines(told, units))):
            wide = [each for each in sheet.splitlines() if len(each) > WIDTH]
            assert not wide, wide
            assert "nan" not in sheet.split() and "None" not in sheet


@pytest.mark.parametrize("units", [US, METRIC], ids=["US", "metric"])
def test_numbers_of_the_emitters_stand_in_columns(units: Preset) -> None:
    for lost in ("as it is", "no outdoor", "arctic"):
        house = made("ferrow-house", lost)
        lines = design_sheet(house, units).splitlines()
        start = next(i for i, line in enumerate(lines) if "from supply" in line) + 1
        for line in lines[start : start + len(house.job.rooms)]:
            ends = line[31], line[41], line[54]
            assert all(each.isdigit() or each in "?FC" for each in ends), line
            assert line[32] == line[42] == " " and line[55:58] == "   ", line


def test_a_cold_place_shows_its_whole_reset_line() -> None:
    house = made("ferrow-house", "arctic")
    shown = design_sheet(house, US)
    points = [each for each in house.controls.controls.reset.values() if not each.supply.is_missing]
    rows = [line for line in shown.splitlines() if line.startswith("Outdoors, °F")]
    assert len(points) > 7
    assert sum(len(line.split()) - 2 for line in rows) == len(points)


def test_the_sheet_names_bills_and_load_where_they_meet_or_do_not() -> None:
    assert "Load and bills meet at" in design_sheet(made("tamm-street"), US)
    text = EXAMPLES.joinpath("tamm-street.yaml").read_text("utf-8").replace("1,090 gal", "300 gal")
    assert "do not meet" in design_sheet(design(load_job(text)), US)


def test_the_demo_stays_under_a_screen(tmp_path: Path) -> None:
    done = CliRunner().invoke(commands, ["demo", "--to", str(tmp_path)])
    assert done.exit_code == 0, done.output
    lines = done.stdout.splitlines()
    assert len(lines) <= SCREEN
    for name in ("Ferrow house", "Lerch cottage", "Tamm Street, new boiler"):
        assert name in lines
    for job in DEMOS:
        assert (tmp_path / f"{job}.yaml").exists()
    assert len(list(tmp_path.glob("*.pdf"))) > 25
    for each in re.findall(r"^  heatledger (why|design) (.*)$", done.stdout, re.MULTILINE):
        asked = CliRunner().invoke(commands, [each[0], *each[1].split()])
        assert asked.exit_code == 0, asked.output


def test_every_figure_of_the_heating_opens() -> None:
    """Titles fold, so only a path or a file name that cannot be parted may be wide."""
    house = made("ferrow-house")
    places = ("emitters/hall-base", "circuits/upper", "plant", "controls/reset/at-10-f", "startup", "bills")
    for path in house:
        if path.startswith(places):
            for line in unfolded(house[path], US, 0).splitlines():
                assert len(line) <= WIDTH or line.strip().startswith("("), f"{path}: {line}"


def test_a_figure_that_stands_at_two_places_says_so(tmp_path: Path) -> None:
    job = tmp_path / "ferrow-house.yaml"
    job.write_text(EXAMPLES.joinpath("ferrow-house.yaml").read_text("utf-8"), "utf-8")
    asked = CliRunner().invoke(commands, ["why", str(job), "startup/cold_pressure"])
    assert asked.stdout.startswith("The same figure as plant/needed_fill:")
    own = CliRunner().invoke(commands, ["why", str(job), "plant/needed_fill"])
    assert own.stdout.startswith("Fill pressure needed, Boiler room")
    assert asked.stdout.endswith(own.stdout)

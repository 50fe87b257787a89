"""Claim: every command answers in plain words, on the right stream, with the right exit code."""

from __future__ import annotations

import json
from importlib import resources
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from heatledger.cli.group import COMMANDS, commands

EXAMPLES = resources.files("heatledger").joinpath("examples")
FERROW = resources.files("heatledger").joinpath("examples", "ferrow-house.yaml").read_text("utf-8")


@pytest.fixture
def ferrow(tmp_path: Path) -> Path:
    target = tmp_path / "ferrow-house.yaml"
    target.write_text(FERROW, "utf-8")
    return target


def run(*words: object) -> Result:
    result = CliRunner().invoke(commands, [str(each) for each in words], prog_name="heatledger")
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    assert "Traceback" not in result.output
    return result


def test_help_names_every_command() -> None:
    result = run("--help")
    assert result.exit_code == 0
    assert all(name in result.output for name in COMMANDS)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help(name: str) -> None:
    result = run(name, "--help")
    assert result.exit_code == 0
    assert "Usage: heatledger" in result.output


def test_design_prints_rooms_causes_and_the_house(ferrow: Path) -> None:
    result = run("design", ferrow)
    assert result.exit_code == 0
    lines = result.stdout.splitlines()
    house = next(line for line in lines if line.startswith("House"))
    rooms = [line for line in lines if line.startswith("  ") and line.split()[-1].replace(".", "").isdigit()]
    assert len(rooms) >= 9
    total = int(house.split()[-2].replace(",", ""))
    level_rows = [line for line in lines[: lines.index(house)] if line.startswith(("Ground", "Upper"))]
    assert abs(sum(int(line.split()[-2].replace(",", "")) for line in level_rows) - total) <= 1
    assert "a difference of 72 °F" in result.stdout
    assert "nine in ten results fall here" in result.stdout
    assert "Local code and licensed practice decide" in result.stdout
    assert all(len(line) <= 80 for line in lines)


def test_what_ifs_are_laid_in_order_and_change_the_answer(ferrow: Path) -> None:
    def house(*words: object) -> float:
        return float(
            json.loads(run("design", ferrow, "--json", *words).stdout)["figures"]["house/loss"]["si"]
        )

    plain, glass = house(), house("--what-if", "low-e")
    both = house("--what-if", "low-e", "--what-if", "tight-air")
    assert plain > glass > both


def test_an_unknown_what_if_is_said_with_those_there_are(ferrow: Path) -> None:
    result = run("design", ferrow, "--what-if", "lowe")
    assert result.exit_code == 1
    assert "low-e" in result.output


def test_json_holds_si_shown_text_and_path(ferrow: Path) -> None:
    data = json.loads(run("design", ferrow, "--json").stdout)
    loss = data["figures"]["rooms/kitchen/loss"]
    assert loss["dimension"] == "heat rate"
    assert loss["shown"].endswith("Btu/h")
    assert loss["si"] == pytest.approx(
        float(loss["shown"].split()[0].replace(",", "")) * 0.29307107, abs=0.15
    )
    assert data["figures"]["air/changes"]["typed"] == "0.50 ACH"
    assert data["figures"]["air/changes"]["known"] == "assumed"
    low, high = (data["house_loss_band"][key] for key in ("low_si", "high_si"))
    assert low < data["figures"]["house/loss"]["si"] < high
    assert {"id", "weight", "what", "source", "standing"} <= set(data["findings"][0])


def test_json_holds_the_heating(ferrow: Path) -> None:
    data = json.loads(run("design", ferrow, "--json").stdout)
    figures, heating = data["figures"], data["heating"]
    for path in ("emitters/kitchen-base/output", "circuits/ground/actual_flow", "plant/tank_volume",
                 "bills/last-winter/like_for_like", "controls/reset/design-day/supply",
                 "startup/supply_due"):  # fmt: skip
        assert figures[path]["si"] is not None, path
        assert figures[path]["title"][:1].isupper()
    assert figures["house/lowest_supply"]["si"] == figures["rooms/kitchen/lowest_supply"]["si"]
    assert heating["supply_set_by"] == "kitchen"
    assert heating["index_runs"]["upper"] is None
    assert heating["index_runs"]["ground"] in ("hall-base", "study-base", "living-base", "dining-base")
    product = 1.0
    for each in heating["factors"]:
        product *= figures[each["path"]]["si"]
    assert product == pytest.approx(figures["plant/product"]["si"])
    assert heating["may_run"] is False and "draft" in heating["waits_for"]
    low, high = (heating["load_meets_bills"][each] for each in ("low_si", "high_si"))
    assert low < figures["plant/load"]["si"] < high


def test_both_unit_systems_hold_the_same_house(ferrow: Path) -> None:
    us = json.loads(run("design", ferrow, "--json", "--units", "us").stdout)["figures"]
    metric = json.loads(run("design", ferrow, "--json", "--units", "metric").stdout)["figures"]
    assert {path: each["si"] for path, each in us.items()} == {
        path: each["si"] for path, each in metric.items()
    }
    assert metric["house/loss"]["shown"].endswith(" W")


def test_why_shows_column_arithmetic_and_opens_to_the_tape(ferrow: Path) -> None:
    path = "rooms/kitchen/surfaces/north-wall/loss"
    shallow = run("why", ferrow, path).stdout
    assert "× 0.0915 Btu/(h·ft²·°F)" in shallow
    deep = run("why", ferrow, path, "--to-the-tape").stdout
    assert 'typed: "12\' 0"' in deep
    assert "ferrow-house.yaml:" in deep
    assert deep.startswith(shallow.splitlines()[0])
    one = run("why", ferrow, path, "--levels", "1").stdout
    assert len(shallow) < len(one) < len(deep)


def test_a_missed_path_offers_the_nearest(ferrow: Path) -> None:
    result = run("why", ferrow, "rooms/kitchn/loss")
    assert result.exit_code == 2
    assert "rooms/kitchen/loss" in result.stderr
    assert result.stdout == ""


def test_why_lists_paths(ferrow: Path) -> None:
    result = run("why", ferrow, "rooms/kitchen", "--list")
    assert result.exit_code == 0
    paths = [line.split()[0] for line in result.stdout.splitlines()]
    assert "rooms/kitchen/loss" in paths
    assert all(path.startswith("rooms/kitchen") for path in paths)
    assert run("why", ferrow).stdout.count("\n") > len(paths)


def test_check_ends_with_one_when_something_is_wrong(ferrow: Path) -> None:
    ferrow.write_text(FERROW.replace("elevation: 40 ft", "elevation: 40 °F"), "utf-8")
    result = run("check", ferrow)
    assert result.exit_code == 1
    assert "site/elevation" in result.output


def test_check_names_what_is_missing(ferrow: Path) -> None:
    ferrow.write_text(
        FERROW.replace("  outdoor: -2 °F           # chosen; the place is invented\n", ""), "utf-8"
    )
    result = run("check", ferrow)
    assert result.exit_code == 1
    assert "site/outdoor" in result.stdout
    design = run("design", ferrow)
    assert design.exit_code == 0
    assert "?" in design.stdout


def test_a_file_that_is_not_there(tmp_path: Path, ferrow: Path) -> None:
    result = run("design", tmp_path / "ferow-house.yaml")
    assert result.exit_code == 2
    assert "ferrow-house.yaml" in result.stderr


def test_a_mistyped_command_offers_the_nearest() -> None:
    result = run("desing")
    assert result.exit_code == 2
    assert "Did you mean 'design'?" in result.output


def test_new_writes_a_job_that_designs_and_leaves_a_file_alone(tmp_path: Path) -> None:
    for units in ("us", "metric", "canadian"):
        target = tmp_path / f"{units}.yaml"
        assert run("new", target, "--units", units).exit_code == 0
        assert run("design", target).exit_code == 0
        before = target.read_text("utf-8")
        assert run("new", target).exit_code == 2
        assert target.read_text("utf-8") == before


def test_schema_is_json() -> None:
    schema = json.loads(run("schema").stdout)
    assert schema["type"] == "object"
    assert {"format", "site", "rooms", "constructions"} <= set(schema["properties"])


def test_papers_are_written_where_asked(tmp_path: Path, ferrow: Path) -> None:
    result = run("papers", ferrow, "--to", tmp_path / "papers")
    assert result.exit_code == 0
    written = [Path(line) for line in result.stdout.splitlines()]
    begins = {".pdf": b"%PDF", ".xlsx": b"PK"}
    assert {each.suffix for each in written} == {".pdf", ".xlsx", ".csv"}
    assert all(each.read_bytes().startswith(begins.get(each.suffix, b"")) for each in written)
    assert set((tmp_path / "papers").iterdir()) == set(written)


def test_papers_into_a_file_say_so(tmp_path: Path, ferrow: Path) -> None:
    (tmp_path / "taken").write_text("x")
    result = run("papers", ferrow, "--to", tmp_path / "taken")
    assert result.exit_code == 2
    assert "could not be written" in result.stderr


def test_a_survey_sheet_is_written_without_a_job(tmp_path: Path) -> None:
    target = tmp_path / "survey.pdf"
    result = run("survey", "--units", "metric", "--paper", "letter", "--to", target)
    assert result.exit_code == 0
    assert target.read_bytes().startswith(b"%PDF")
    assert str(target) in result.stdout
    away = run("survey", "--to", tmp_path / "nowhere" / "survey.pdf")
    assert away.exit_code == 2
    assert "could not be written" in away.stderr


def test_findings_speak_in_the_units_asked_for(ferrow: Path) -> None:
    shown = run("design", ferrow, "--units", "metric").stdout
    assert "°F" not in shown.replace("R-30", "") and "Btu" not in shown

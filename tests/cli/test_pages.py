"""Claim: the pages that lead on from the first house run as written, each piece laid into the same job."""

from __future__ import annotations

import io
import re
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from ruamel.yaml import YAML

from heatledger.cli.group import commands
from tests.cli.test_recipes import blocks, laid_over

DOCS = Path(__file__).parents[2] / "docs"
BLOCK = re.compile(r"^```(yaml|console)\n(.*?)^```$", re.MULTILINE | re.DOTALL)


def read(text: str) -> Any:
    return YAML(typ="base", pure=True).load(text)


def written(job: Any, target: Path) -> None:
    out, writer = io.StringIO(), YAML(typ="safe", pure=True)
    writer.sort_base_mapping_type_on_output = False  # the order of runs is that of the water
    writer.dump(job, out)
    target.write_text(out.getvalue(), "utf-8")


def one_line(text: str) -> str:
    return " ".join(text.split())


def follow(page: str, job: Any, target: Path) -> int:
    """Do what the page says, in its order; how many commands it ran."""
    ran = 0
    for kind, text in BLOCK.findall((DOCS / page).read_text("utf-8")):
        if kind == "yaml":
            job = laid_over(job, read(text))
            written(job, target)
            continue
        command, *shown = text.strip().splitlines()
        done = CliRunner().invoke(commands, command.removeprefix("$ heatledger ").split())
        assert done.exit_code == 0, f"{command}\n{done.output}"
        said = {one_line(each) for each in done.output.splitlines()}
        missing = [each for each in map(one_line, shown) if each != "..." and each not in said]
        assert not missing, f"{command} does not print {missing}; it prints\n{done.output}"
        ran += 1
    return ran


def test_the_first_house_is_heated_as_the_page_says(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (job,) = blocks("learn/first-house.md")
    assert follow("learn/heated-house.md", job, tmp_path / "two-rooms.yaml") >= 8
    papers = {each.suffix for each in (tmp_path / "papers").iterdir()}
    assert papers == {".pdf", ".csv", ".xlsx"}


@pytest.mark.parametrize("page", ["do/replace-a-boiler.md", "do/size-emitters.md"])
def test_the_recipes_run_as_written(page: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert follow(page, {}, tmp_path / "my-house.yaml") >= 3


def test_the_first_start_goes_on_from_the_heated_house(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    job: Any = {}
    for each in [*blocks("learn/first-house.md"), *blocks("learn/heated-house.md")]:
        job = laid_over(job, each)
    target = tmp_path / "two-rooms.yaml"
    written(job, target)
    assert follow("do/startup.md", job, target) >= 2

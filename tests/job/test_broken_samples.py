"""Each broken sample gives exactly its code, and every code has a sample."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from heatledger.job.errors import CODES, MOST, JobErrors
from heatledger.job.load import load_job
from tests.job.samples import BROKEN, codes, sample_index

INDEX = sample_index()
MADE_HERE = {"file-not-found", "file-unreadable", "too-large"}
"""Codes whose sample cannot be kept as a file."""


def refused(name: str, lay: list[str]) -> JobErrors:
    with pytest.raises(JobErrors) as caught:
        load_job(BROKEN / name).with_what_ifs(*lay)
    return caught.value


@pytest.mark.parametrize("name", INDEX)
def test_each_sample_gives_its_code_alone(name: str) -> None:
    entry = INDEX[name]
    errors = refused(name, entry.get("lay", []))
    assert codes(errors) == [entry["code"]]
    assert name.startswith(str(entry["code"]))


@pytest.mark.parametrize("name", INDEX)
def test_each_message_says_what_and_where(name: str) -> None:
    (error,) = refused(name, INDEX[name].get("lay", [])).errors
    assert error.line > 0 or error.code == "unknown-what-if"
    assert len(error.message) > 15
    assert error.message.endswith((".", "?"))
    said = f"{error.message} {error.mend}".lower()
    assert not re.search(r"\b(illegal|invalid|exception|traceback|none type|nonetype)\b", said)
    assert "\n" not in said


def test_every_code_has_a_sample() -> None:
    assert {str(each["code"]) for each in INDEX.values()} | MADE_HERE == set(CODES)
    assert len(INDEX) >= 60
    on_disk = {each.name for each in BROKEN.glob("*.yaml")} - {"index.yaml"}
    assert on_disk == set(INDEX)


def test_a_line_is_the_line_of_the_fault() -> None:
    lines = (BROKEN / "unknown-construction.yaml").read_text("utf-8").splitlines()
    (error,) = refused("unknown-construction.yaml", []).errors
    assert lines[error.line - 1].strip() == "construction: wal"
    assert error.path == "rooms/kitchen/surfaces/north-wall/construction"
    assert "`wall`" in error.mend


def test_a_large_file_is_refused_without_reading_it(tmp_path: Path) -> None:
    path = tmp_path / "large.yaml"
    with path.open("wb") as file:
        file.write(b"format: 1\n")
        file.truncate(100_000_000)
    with pytest.raises(JobErrors) as caught:
        load_job(path)
    assert codes(caught.value) == ["too-large"]
    assert not caught.value.has_no_file


def test_a_large_text_is_refused() -> None:
    with pytest.raises(JobErrors) as caught:
        load_job("format: 1\n" + "# a\n" * 600_000)
    assert codes(caught.value) == ["too-large"]


def test_an_absent_file_offers_its_neighbors(tmp_path: Path) -> None:
    (tmp_path / "kiln-lane.yaml").write_text("format: 1\n", "utf-8")
    with pytest.raises(JobErrors) as caught:
        load_job(tmp_path / "kiln-lnae.yaml")
    assert codes(caught.value) == ["file-not-found"]
    assert caught.value.has_no_file
    assert "kiln-lane.yaml" in str(caught.value)


def test_a_folder_is_no_job(tmp_path: Path) -> None:
    with pytest.raises(JobErrors) as caught:
        load_job(tmp_path)
    assert codes(caught.value) == ["file-unreadable"]


def test_all_that_is_wrong_comes_at_once_in_the_order_of_the_file() -> None:
    text = (BROKEN / "unknown-level.yaml").read_text("utf-8")
    text = text.replace("outdoor: -2 °F", "outdoor: -2 ft").replace("beyond: rooms/hall", "beyond: rooms/hal")
    with pytest.raises(JobErrors) as caught:
        load_job(text)
    assert codes(caught.value) == ["wrong-unit", "unknown-level", "unknown-room"]
    assert str(caught.value).startswith("the job: 3 errors\n")


def test_a_file_of_another_kind_is_not_told_a_thousand_times() -> None:
    with pytest.raises(JobErrors) as caught:
        load_job("".join(f"entry-{i}: some value\n" for i in range(3000)))
    assert len(caught.value.errors) == MOST
    with pytest.raises(JobErrors) as caught:
        load_job("a: |\n  b\n" + "a: 1\n" * 3000)
    assert len(caught.value.errors) == MOST


def test_a_newer_file_is_told_so_and_not_picked_apart() -> None:
    with pytest.raises(JobErrors) as caught:
        load_job("format: 7\nhouse: {}\nfloors: {}\n")
    assert codes(caught.value) == ["format-newer"]

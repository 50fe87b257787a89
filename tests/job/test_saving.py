"""An edit changes the letters of one value; comments and layout stay."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.parsing import tree_of
from heatledger.job.save import SaveError, with_entry
from heatledger.job.text import Scalar, plain, walk
from tests.job.samples import SMALL, example

FERROW = example("ferrow-house")


def changed_rows(before: str, after: str) -> list[tuple[str, str]]:
    pairs = zip(before.splitlines(), after.splitlines(), strict=True)
    return [(old, new) for old, new in pairs if old != new]


def test_a_value_is_replaced_and_its_comment_stays() -> None:
    after = with_entry(FERROW, "site/outdoor", "-5 °F")
    assert changed_rows(FERROW, after) == [
        ("  outdoor: -2 °F           # chosen; the place is invented",
         "  outdoor: -5 °F           # chosen; the place is invented"),
    ]  # fmt: skip


def test_a_value_in_braces_is_replaced() -> None:
    after = with_entry(FERROW, "constructions/attic-r30/u_value", "U-0.030")
    ((old, new),) = changed_rows(FERROW, after)
    assert new == old.replace("U-0.0332", "U-0.030")


def test_behind_is_stands_the_value() -> None:
    after = with_entry(FERROW, "constructions/old-window/u_value", "U-0.49")
    ((old, new),) = changed_rows(FERROW, after)
    assert new == old.replace("U-0.51", "U-0.49")


def test_what_yaml_would_misread_is_put_in_quotes() -> None:
    after = with_entry(FERROW, "name", "Ferrow: the old house # 2")
    assert read_job(after).name == "Ferrow: the old house # 2"
    assert len(changed_rows(FERROW, after)) == 1
    comma = with_entry(SMALL, "rooms/kitchen/surfaces/inner-wall/area", "1,500 ft2")
    assert plain(tree_of(comma))["rooms"]["kitchen"]["surfaces"]["inner-wall"]["area"] == "1,500 ft2"


def test_an_entry_that_is_not_there_is_added_to_its_mapping() -> None:
    after = with_entry(SMALL, "rooms/kitchen/indoor", "68 °F")
    added = [row for row in after.splitlines() if row not in SMALL.splitlines()]
    assert added == ["    indoor: 68 °F"]
    assert float(read_job(after).rooms["kitchen"].indoor) == pytest.approx(293.15)
    in_braces = with_entry(SMALL, "constructions/wall/name", "North")
    assert "  wall: {kind: wall, u_value: U-0.09, name: North}" in in_braces.splitlines()
    top = with_entry(SMALL, "notes", "measured twice")
    assert top.endswith("notes: measured twice\n")


def test_an_empty_entry_is_filled_and_a_value_is_emptied() -> None:
    text = SMALL.replace("length: 12'", "length:          # to be measured")
    filled = with_entry(text, "rooms/kitchen/surfaces/north-wall/length", "12' 2\"")
    assert "length: 12' 2\"          # to be measured" in filled
    emptied = with_entry(SMALL, "rooms/kitchen/surfaces/north-wall/length", "")
    length = read_job(emptied).rooms["kitchen"].surfaces["north-wall"].length
    assert length is not None
    assert length.is_missing


def test_a_text_over_several_lines_is_replaced_whole() -> None:
    text = SMALL + "notes: |\n  first line\n  second line\nname: After\n"
    after = with_entry(text, "notes", "one line")
    assert read_job(after).notes == "one line"
    assert read_job(after).name == "After"


def test_marks_in_front_and_line_ends_stay() -> None:
    text = "\ufeff" + SMALL.replace("\n", "\r\n")
    after = with_entry(text, "site/outdoor", "-5 °F")
    assert after == text.replace("outdoor: 0 °F", "outdoor: -5 °F")


@pytest.mark.parametrize(
    "path", ["rooms/kitchen", "rooms/attic/size", "units/first", "rooms/kitchen/size/a/b"]
)
def test_what_has_no_place_is_refused(path: str) -> None:
    with pytest.raises(SaveError):
        with_entry(SMALL, path, "1 ft")


def test_a_text_that_is_no_job_is_refused() -> None:
    with pytest.raises(JobErrors):
        with_entry("a: [", "a", "1")


PATHS = [
    "name",
    "site/outdoor",
    "rooms/kitchen/size",
    "rooms/kitchen/surfaces/inner-wall/area",
    "constructions/wall/kind",
]


@given(
    st.sampled_from(PATHS), st.text(st.characters(codec="utf-8", exclude_categories=("C", "Z")), max_size=20)
)
@settings(max_examples=150, deadline=None)
def test_whatever_is_written_is_read_back(path: str, new: str) -> None:
    try:
        after = with_entry(SMALL, path, new)
    except SaveError:
        return
    node = walk(tree_of(after), path)
    assert isinstance(node, Scalar)
    assert node.text == new

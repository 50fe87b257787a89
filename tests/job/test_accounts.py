"""What an edit changed is said by names, in one line and entry by entry."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.job.accounts import as_shown, inputs_changed, line_of_change, said_of
from heatledger.job.edits import (
    add_thing,
    copy_thing,
    move_thing,
    remove_thing,
    set_detail,
    set_entry,
    set_known,
)
from heatledger.job.load import read_job
from heatledger.job.parsing import tree_of
from heatledger.job.text import Scalar, walk
from tests.job.samples import SMALL, SYSTEM, example
from tests.job.test_random_edits import TEXTS, paths

FERROW = example("ferrow-house")
WALL = "rooms/kitchen/surfaces/north-wall"


def said(before: str, after: str) -> str:
    return said_of(read_job(before), read_job(after))


@pytest.mark.parametrize(
    ("path", "typed", "line"),
    [
        (f"{WALL}/length", "12' 6\"", "Kitchen, north wall: length 12′ 6″, was 12′"),
        (f"{WALL}/openings/w1/size", "2' × 3'", "Kitchen, north wall, W1: size 2′ × 3′, was 2′ × 4′"),
        ("site/outdoor", "-5 °F", "Site: outdoor −5 °F, was 0 °F"),
        ("air/changes", "0.4 ACH", "Air of all rooms: air changes 0.4 ACH, was 0.5 ACH"),
        ("constructions/wall/u_value", "", "Wall: U-value cleared, was U-0.09"),
        ("plant/boiler/efficiency", "92 %", "Boiler room, boiler: efficiency 92 %, was 94 %"),
        ("rooms/hall/indoor", "60 °F", "Hall: indoor 60 °F"),
        ("rooms/hall/size", "10' × 10'", "Hall: size 10′ × 10′, was floor area 100 ft2"),
        ("emitters/kitchen-wall/name", "Long one", "Baseboard under the window is now called Long one"),
        ("circuits/loop/fittings/90-ell", "6", "Ground loop, fittings: 90-ell 6, was 4"),
        ("notes", "a " * 60, "Notes: " + "a " * 29 + "a…"),
        ("built", "1931", "Year built: 1931"),
    ],
)
def test_one_value_is_told_by_names(path: str, typed: str, line: str) -> None:
    text = SMALL + SYSTEM
    assert said(text, set_entry(text, path, typed)) == line


def test_things_are_told_whole() -> None:
    text = SMALL + SYSTEM
    assert said(text, copy_thing(text, "rooms/hall", "den", "Den")) == "Den added"
    assert said(copy_thing(text, "rooms/hall", "den", "Den"), text) == "Den removed"
    surface = {"construction": "wall", "length": "3 ft", "beyond": "outdoors"}
    assert said(text, add_thing(text, "rooms/hall/surfaces/end", surface)) == "Hall, end added"
    assert said(text, remove_thing(text, "plant/tank")) == "Boiler room, expansion tank removed"
    assert said(text, move_thing(text, "rooms/hall", 0)) == "Heated rooms: order changed"
    assert said(text, add_thing(text, "what-ifs/tight", {"name": "Tight", "changes": [
        {"set": "air/changes", "to": "0.3 ACH"}]})) == "What-if Tight added"  # fmt: skip
    decided = add_thing(text, "decisions/floor-areas-disagree", {"is": "fine", "because": "attic"})
    assert said(text, decided) == "Decision on floor-areas-disagree added"
    assert said(SMALL, SMALL + SYSTEM) == "11 entries added"


def test_what_is_said_beside_a_value_is_told() -> None:
    told = set_known(SMALL, f"{WALL}/length", "measured")
    assert said(SMALL, told) == "Kitchen, north wall: length, how well it is known measured"
    assert said(told, SMALL) == "Kitchen, north wall: length, how well it is known cleared, was measured"
    why = set_detail(SMALL, f"{WALL}/length", "because", "tape")
    assert said(SMALL, why) == "Kitchen, north wall: length, reason tape"
    assert said(SMALL, set_known(SMALL, "rooms/hall", "told")) == "Hall: how well it is known told"
    assert said(SMALL, set_known(SMALL, "rooms", "told")) == "Heated rooms: how well it is known told"


def test_several_entries_are_counted() -> None:
    after = set_entry(set_entry(SMALL, f"{WALL}/length", "13'"), "site/outdoor", "5 °F")
    assert said(SMALL, after) == "2 entries changed"
    after = set_entry(set_entry(SMALL, "site/indoor", "68 °F"), "site/outdoor", "5 °F")
    assert said(SMALL, after) == "Site: 2 entries changed"
    assert said(SMALL, SMALL + "# a word\n") == "Comments or layout changed"
    assert said(SMALL, SMALL) == "Nothing changed"


def test_the_entries_stand_with_their_paths_and_texts() -> None:
    text = remove_thing(set_entry(FERROW, "site/outdoor", "-5 °F"), "rooms/kitchen/surfaces/east-wall")
    changes = inputs_changed(tree_of(FERROW), tree_of(text))
    assert [(each.path, each.before, each.after, each.kind) for each in changes] == [
        ("site/outdoor", "-2 °F", "-5 °F", "changed"),
        ("rooms/kitchen/surfaces/east-wall", "Kitchen, east wall", "", "removed"),
    ]
    listed = remove_thing(FERROW, "what-ifs/longer-kitchen/changes/0")
    (change,) = inputs_changed(tree_of(FERROW), tree_of(listed))
    assert (change.path, change.before, change.after) == (
        "what-ifs/longer-kitchen/changes",
        "2 lines",
        "1 line",
    )


@given(st.sampled_from(TEXTS), st.data())
@settings(max_examples=50, deadline=None)
def test_whatever_is_set_is_the_one_entry_told(text: str, data: st.DataObject) -> None:
    path = data.draw(st.sampled_from(paths(tree_of(text), Scalar)))
    node = walk(tree_of(text), path)
    assert isinstance(node, Scalar)
    after = set_entry(text, path, "something else")
    (change,) = inputs_changed(tree_of(text), tree_of(after))
    if "changes/" in path:
        assert change.path == path[: path.index("/changes/")] + "/changes"
        return
    assert (change.path, change.before, change.after) == (path, node.text, "something else")
    assert change.kind == "changed"
    assert line_of_change(change).count("something else") >= 1


def test_texts_are_shown_in_the_signs_of_print() -> None:
    assert as_shown("12' 6\" × 9'") == "12′ 6″ × 9′"
    assert as_shown("-5 °F") == "−5 °F"
    assert as_shown("frame-wall-2x4") == "frame-wall-2x4"
    assert as_shown("two\nlines") == "two lines"

"""Things of a job are added, copied, moved and taken away; the comments of all others stay."""

from __future__ import annotations

import pytest

from heatledger.job.edits import (
    EditError,
    add_thing,
    copy_thing,
    free_id,
    move_thing,
    remove_thing,
    set_entry,
    set_known,
    unset,
)
from heatledger.job.load import read_job
from heatledger.job.parsing import tree_of
from heatledger.job.text import plain
from tests.job.samples import SMALL, added_rows, example

FERROW = example("ferrow-house")


def test_a_thing_is_added_as_its_neighbors_are_written() -> None:
    room = {"name": "Den", "level": "ground", "size": "9' × 9'", "habitable": True, "surfaces": {
        "west-wall": {
            "construction": "wall", "length": {"is": "9'", "known": "measured"}, "beyond": "outdoors",
        },
    }}  # fmt: skip
    after = add_thing(SMALL, "rooms/den", room)
    assert after == SMALL + (
        "  den:\n    name: Den\n    level: ground\n    size: 9' × 9'\n    habitable: yes\n    surfaces:\n"
        "      west-wall: {construction: wall, length: {is: 9', known: measured}, beyond: outdoors}\n"
    )
    glass = add_thing(SMALL, "constructions/glass", {"kind": "window", "u_value": "U-0.3"})
    assert added_rows(SMALL, glass) == ["  glass: {kind: window, u_value: U-0.3}"]
    level = add_thing(SMALL, "rooms/kitchen/surfaces/north-wall/openings/w2", {"construction": "window"})
    assert added_rows(SMALL, level) == ["          w2: {construction: window}"]
    assert (
        read_job(add_thing(SMALL, "zones/up", {"name": "Up, and out"})).system.zones["up"].name
        == "Up, and out"
    )


def test_a_thing_goes_into_braces_where_its_parent_is_in_braces() -> None:
    text = SMALL.replace(
        "inner-wall: {", "inner-wall: {openings: {d: {construction: window, size: 2' × 3'}}, "
    )
    path = "rooms/kitchen/surfaces/inner-wall/openings"
    after = add_thing(text, f"{path}/e", {"construction": "window", "size": "1' × 1'"})
    assert "d: {construction: window, size: 2' × 3'}, e: {construction: window, size: 1' × 1'}}, " in after
    assert remove_thing(after, f"{path}/e") == text
    assert remove_thing(after, f"{path}/d").count("openings: {e: {") == 1


def test_a_thing_that_is_there_or_has_no_home_is_refused() -> None:
    for path in ("rooms/kitchen", "rooms/attic/surfaces/wall", "rooms/Big Room", "name/x"):
        with pytest.raises(EditError):
            add_thing(SMALL, path, {"level": "ground"})


def test_a_thing_goes_with_its_comments_and_no_others() -> None:
    text = SMALL.replace(
        "  hall:\n", "  # about the kitchen?\n\n  # about the hall\n  hall:   # here\n    # in it\n"
    )
    text += "    # behind it\n# about the zones\nzones:\n  a: {name: A}\n"
    after = remove_thing(text, "rooms/hall")
    gone = [row for row in text.splitlines() if row not in after.splitlines()]
    assert gone == ["  # about the hall", "  hall:   # here", "    # in it", "    floor_area: 100 ft2",
                    "    # behind it"]  # fmt: skip
    assert "# about the zones\nzones:\n" in after


def test_the_last_thing_leaves_its_section_open() -> None:
    text = SMALL + "zones:   # two later\n  a: {name: A}\n"
    after = remove_thing(text, "zones/a")
    assert after == SMALL + "zones:   # two later\n"
    assert add_thing(after, "zones/a", {"name": "A"}) == text
    assert unset(SMALL, "air/changes") == SMALL.replace("{changes: 0.5 ACH}", "{}")


BRACES = "format: 1\na: {b: 1,  # about b\n    c: 2,  # about c\n    # above d\n    d: 3}\n"


@pytest.mark.parametrize(
    ("path", "left"),
    [("a/b", "a: {c: 2,  # about c\n    # above d\n    d: 3}\n"),
     ("a/c", "a: {b: 1,  # about b\n    # above d\n    d: 3}\n"),
     ("a/d", "a: {b: 1,  # about b\n    c: 2  # about c\n    # above d\n    }\n")],
)  # fmt: skip
def test_comments_in_braces_stay_with_their_neighbors(path: str, left: str) -> None:
    assert unset(BRACES, path) == "format: 1\n" + left


def test_a_copy_stands_behind_its_original() -> None:
    text = SMALL.replace("    size: 12' × 11'\n", "    size: 12' × 11'  # by tape\n")
    after = copy_thing(text, "rooms/kitchen", "pantry", "Pantry")
    rows = text.splitlines()
    first, last = rows.index("  kitchen:"), rows.index("  hall:")
    copy = ["  pantry:", "    name: Pantry", *rows[first + 1 : last]]
    assert after.splitlines() == [*rows[:last], *copy, *rows[last:]]
    small = copy_thing(SMALL, "constructions/wall", "wall-2", "Other wall")
    assert added_rows(SMALL, small) == ["  wall-2: {kind: wall, u_value: U-0.09, name: Other wall}"]
    assert list(read_job(small).constructions) == ["wall", "wall-2", "window"]
    named = copy_thing(FERROW, "constructions/old-window", "new-window", "New window: large")
    assert read_job(named).constructions["new-window"].name == "New window: large"
    for new_id in ("hall", "No Id"):
        with pytest.raises(EditError):
            copy_thing(SMALL, "rooms/kitchen", new_id, "X")


def test_a_thing_moves_with_its_comments() -> None:
    text = SMALL.replace("  hall:\n", "\n  # about the hall\n  hall:\n") + "    # tail\n# end\n"
    after = move_thing(text, "rooms/hall", 0)
    assert list(read_job(after).rooms) == ["hall", "kitchen"]
    assert (
        "rooms:\n  # about the hall\n  hall:\n    level: ground\n    floor_area: 100 ft2\n    # tail\n\n"
        in after
    )
    assert after.endswith("beyond: rooms/hall}\n# end\n")
    assert move_thing(after, "rooms/hall", 9) == text
    known = set_known(SMALL, "rooms", "told")
    assert "rooms:\n  known: told\n  hall:" in move_thing(known, "rooms/hall", 0)
    assert "{u_value: U-0.09, kind: wall}" in move_thing(SMALL, "constructions/wall/u_value", 0)


def test_lists_are_edited_by_the_place_in_them() -> None:
    path = "what-ifs/longer-kitchen/changes"
    less = remove_thing(FERROW, f"{path}/0")
    assert "changes: [{set: rooms/kitchen/free_wall, to: 12 ft}]" in less
    swapped = move_thing(FERROW, f"{path}/1", 0)
    assert [each.path for each in read_job(swapped).what_ifs["longer-kitchen"].changes] == [
        "rooms/kitchen/free_wall", "emitters/kitchen-base/length",
    ]  # fmt: skip
    more = add_thing(less, f"{path}/1", {"remove": "rooms/kitchen/free_wall"})
    assert "to: 12 ft}, {remove: rooms/kitchen/free_wall}]" in more
    rows = SMALL + "what-ifs:\n  w:\n    changes:\n      # first\n      - {set: air/changes, to: 1 ACH}\n"
    grown = add_thing(rows, "what-ifs/w/changes/1", {"set": "site/indoor", "to": "60 °F"})
    assert grown == rows + "      - {set: site/indoor, to: 60 °F}\n"
    assert remove_thing(grown, "what-ifs/w/changes/1") == rows
    assert set_entry(rows, "what-ifs/w/changes/0/to", "2 ACH") == rows.replace("to: 1 ACH", "to: 2 ACH")
    with pytest.raises(EditError):
        add_thing(FERROW, f"{path}/7", {"remove": "air"})


def test_a_decision_on_one_place_keeps_its_slashes() -> None:
    path = "decisions/openings-over-wall@rooms/kitchen"
    after = add_thing(SMALL, path, {"is": "keep it", "because": "seen", "by": "A. Weir"})
    assert read_job(after).decisions["openings-over-wall@rooms/kitchen"].text == "keep it"
    assert "is: let it be" in set_entry(after, f"{path}/is", "let it be")
    assert plain(tree_of(remove_thing(after, path)))["decisions"] == ""


def test_an_id_is_made_from_a_name() -> None:
    assert free_id((), "Bedroom 4") == "bedroom-4"
    assert free_id(("bedroom", "bedroom-2"), "Bedroom") == "bedroom-3"
    assert free_id({"bedroom-4": 1}, "Bedroom 4") == "bedroom-5"
    assert free_id((), "Küche, oben") == "kuche-oben"
    assert free_id(("new",), "→") == "new-2"

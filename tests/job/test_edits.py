"""An edit changes the letters of one thing; comments, order and layout of all else stay."""

from __future__ import annotations

import pytest

from heatledger.job.edits import EditError, add_thing, remove_thing, set_detail, set_entry, set_known
from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.parsing import tree_of
from heatledger.job.text import plain, walk
from tests.job.samples import SMALL, SYSTEM, added_rows, example

FERROW = example("ferrow-house")


def changed_rows(before: str, after: str) -> list[tuple[str, str]]:
    pairs = zip(before.splitlines(), after.splitlines(), strict=True)
    return [(old, new) for old, new in pairs if old != new]


# one value


def test_a_value_is_replaced_and_its_comment_stays() -> None:
    after = set_entry(FERROW, "site/outdoor", "-5 °F")
    assert changed_rows(FERROW, after) == [
        ("  outdoor: -2 °F           # chosen; the place is invented",
         "  outdoor: -5 °F           # chosen; the place is invented"),
    ]  # fmt: skip


def test_a_value_in_braces_is_replaced() -> None:
    after = set_entry(FERROW, "constructions/attic-r30/u_value", "U-0.030")
    ((old, new),) = changed_rows(FERROW, after)
    assert new == old.replace("U-0.0332", "U-0.030")


def test_behind_is_stands_the_value() -> None:
    after = set_entry(FERROW, "constructions/old-window/u_value", "U-0.49")
    ((old, new),) = changed_rows(FERROW, after)
    assert new == old.replace("U-0.51", "U-0.49")


def test_what_yaml_would_misread_is_put_in_quotes() -> None:
    after = set_entry(FERROW, "name", "Ferrow: the old house # 2")
    assert read_job(after).name == "Ferrow: the old house # 2"
    assert len(changed_rows(FERROW, after)) == 1
    comma = set_entry(SMALL, "rooms/kitchen/surfaces/inner-wall/area", "1,500 ft2")
    assert plain(tree_of(comma))["rooms"]["kitchen"]["surfaces"]["inner-wall"]["area"] == "1,500 ft2"
    assert read_job(set_entry(FERROW, "notes", 'first\nsecond: it\'s "so"')).notes == (
        'first\nsecond: it\'s "so"'
    )


def test_a_new_entry_takes_the_place_it_has_in_the_form() -> None:
    after = set_entry(SMALL, "rooms/kitchen/indoor", "68 °F")
    assert added_rows(SMALL, after) == ["    indoor: 68 °F"]
    assert "    size: 12' × 11'\n    indoor: 68 °F\n    surfaces:" in after
    assert float(read_job(after).rooms["kitchen"].indoor) == pytest.approx(293.15)
    named = set_entry(SMALL, "rooms/kitchen/name", "Kitchen")
    assert "  kitchen:\n    name: Kitchen\n    level: ground\n" in named
    in_braces = set_entry(SMALL, "constructions/wall/name", "North")
    assert "  wall: {kind: wall, u_value: U-0.09, name: North}" in in_braces.splitlines()
    top = set_entry(SMALL, "notes", "measured twice")
    assert top.startswith("format: 1\nnotes: measured twice\nunits: US\n")


def test_parents_that_are_not_there_are_made() -> None:
    after = set_entry(SMALL, "plant/boiler/fuel", "natural gas")
    assert added_rows(SMALL, after) == ["plant:", "  boiler:", "    fuel: natural gas"]
    twice = set_entry(after, "plant/tank/volume", "4.4 gal")
    assert added_rows(after, twice) == ["  tank:", "    volume: 4.4 gal"]
    own = set_entry(SMALL, "rooms/hall/air/changes", "1 ACH")
    assert added_rows(SMALL, own) == ["    air:", "      changes: 1 ACH"]
    in_braces = set_entry(SMALL + SYSTEM, "readings/combustion/stack", "300 °F")
    assert "spillage: none, stack: 300 °F}" in in_braces


def test_parents_with_nothing_behind_them_are_filled() -> None:
    text = SMALL + "plant:   # to be seen\n  # down the stairs\nnotes: x\n"
    after = set_entry(text, "plant/supply", "150 °F")
    assert added_rows(text, after) == ["  supply: 150 °F"]
    assert "  # down the stairs\n  supply: 150 °F\nnotes: x\n" in after


def test_a_rival_way_to_say_the_same_gives_way() -> None:
    wall = "rooms/kitchen/surfaces/inner-wall"
    after = set_entry(SMALL, f"{wall}/size", "11' × 9'")
    assert "inner-wall: {construction: wall, size: 11' × 9', beyond: rooms/hall}" in after
    floor = set_entry(SMALL, "rooms/kitchen/floor_area", "130 ft2")
    assert changed_rows(SMALL, floor) == [("    size: 12' × 11'", "    floor_area: 130 ft2")]
    told = SMALL.replace("area: 100 ft2", "area:\n      is: 100 ft2\n      known: told")
    assert plain(tree_of(set_entry(told, "rooms/hall/size", "10' × 10'")))["rooms"]["hall"] == {
        "level": "ground", "size": "10' × 10'",
    }  # fmt: skip


def test_an_empty_entry_is_filled_and_a_value_is_emptied() -> None:
    text = SMALL.replace("length: 12'", "length:          # to be measured")
    filled = set_entry(text, "rooms/kitchen/surfaces/north-wall/length", "12' 2\"")
    assert "length: 12' 2\"          # to be measured" in filled
    emptied = set_entry(SMALL, "rooms/kitchen/surfaces/north-wall/length", "")
    length = read_job(emptied).rooms["kitchen"].surfaces["north-wall"].length
    assert length is not None
    assert length.is_missing
    braces = set_entry(SMALL, "air/changes", "")
    assert "air: {changes: }" in braces
    assert set_entry(braces, "air/changes", "0.5 ACH") == SMALL
    assert set_entry(SMALL, "rooms/hall/indoor", "") == SMALL


def test_behind_nothing_in_braces_more_can_follow() -> None:
    text = set_entry(SMALL, "constructions/wall/u_value", "")
    after = set_entry(text, "constructions/wall/name", "North")
    assert plain(tree_of(after))["constructions"]["wall"] == {"kind": "wall", "u_value": "", "name": "North"}


def test_a_text_over_several_lines_is_replaced_whole() -> None:
    text = SMALL + "notes: |\n  first line\n\n  second line\n\n# after\nname: After\n"
    after = set_entry(text, "notes", "one line")
    assert after == SMALL + "notes: one line\n\n# after\nname: After\n"


def test_marks_in_front_and_line_ends_stay() -> None:
    text = "\ufeff" + SMALL.replace("\n", "\r\n")
    assert set_entry(text, "site/outdoor", "-5 °F") == text.replace("outdoor: 0 °F", "outdoor: -5 °F")
    more = add_thing(text, "zones/upper", {"name": "Upper floor", "thermostat": "hall"})
    assert more.replace("\r\n", "").count("\n") == 0
    assert remove_thing(more, "zones") == text
    ends = SMALL.removesuffix("\n")
    assert set_entry(ends, "rooms/hall/indoor", "60 °F") == f"{ends}\n    indoor: 60 °F"


@pytest.mark.parametrize(
    "path",
    ["rooms/kitchen", "rooms/attic/size", "units/first", "rooms/kitchen/size/a/b", "", "rooms//size", "site",
     "rooms", "rooms/kitchen/nothing/x", "rooms/kitchen/surfaces/no-wall/length"],
)  # fmt: skip
def test_what_has_no_place_is_refused(path: str) -> None:
    with pytest.raises(EditError) as caught:
        set_entry(SMALL, path, "1 ft")
    assert caught.value.path == path
    assert caught.value.what.endswith(".")


def test_what_cannot_be_written_is_refused() -> None:
    with pytest.raises(EditError):
        set_entry(SMALL, "notes", "a mark \x7f")


def test_a_text_that_is_no_job_is_refused() -> None:
    with pytest.raises(JobErrors):
        set_entry("a: [", "a", "1")


# what is said beside a value


def test_how_well_a_value_is_known_is_said_and_taken_back() -> None:
    path = "rooms/kitchen/surfaces/north-wall/length"
    after = set_known(SMALL, path, "measured")
    assert changed_rows(SMALL, after) == [
        ("        length: 12'", "        length: {is: 12', known: measured}")
    ]
    assert set_entry(after, path, "13'") == after.replace("12'", "13'", 1).replace(
        "13' × 11'", "12' × 11'"
    ) or ("length: {is: 13', known: measured}" in set_entry(after, path, "13'"))
    more = set_detail(after, path, "because", "tape, twice")
    assert "length: {is: 12', known: measured, because: 'tape, twice'}" in more
    less = set_known(more, path, "")
    assert "length: {is: 12', because: 'tape, twice'}" in less
    assert set_detail(less, path, "because", "") == SMALL


def test_rows_of_is_and_known_stay_rows() -> None:
    text = SMALL.replace(
        "floor_area: 100 ft2", "floor_area:\n      is: 100 ft2   # the agent\n      known: told"
    )
    path = "rooms/hall/floor_area"
    assert set_known(text, path, "measured") == text.replace("known: told", "known: measured")
    assert set_detail(text, path, "within", "5 %").endswith("known: told\n      within: 5 %\n")
    assert plain(tree_of(set_known(text, path, "")))["rooms"]["hall"]["floor_area"] == "100 ft2"


def test_a_thing_says_how_well_all_of_it_is_known() -> None:
    after = set_known(SMALL, "rooms/kitchen", "measured")
    assert added_rows(SMALL, after) == ["    known: measured"]
    assert set_known(after, "rooms/kitchen", "told") == after.replace("known: measured", "known: told")
    assert set_known(after, "rooms/kitchen", "") == SMALL
    section = set_known(SMALL, "rooms", "from plans")
    assert "rooms:\n  known: from plans\n  kitchen:" in section
    assert set_known(set_known(SMALL, "", "told"), "", "") == SMALL


@pytest.mark.parametrize(
    ("path", "key"), [("rooms/kitchen/indoor", "known"), ("rooms/kitchen", "because"), ("units", "color")]
)
def test_what_cannot_be_said_there_is_refused(path: str, key: str) -> None:
    with pytest.raises(EditError):
        set_detail(SMALL, path, key, "measured")


@pytest.mark.parametrize("step", ["²", "9" * 5000, "-1", "x"])
def test_a_step_that_is_no_place_in_a_list_is_told(step: str) -> None:
    text = "format: 1\nwhat-ifs:\n  a: {name: A, changes: [{set: name, to: B}]}\n"
    with pytest.raises(EditError):
        set_entry(text, f"what-ifs/a/changes/{step}/to", "C")
    assert walk(tree_of(text), f"what-ifs/a/changes/{step}") is None

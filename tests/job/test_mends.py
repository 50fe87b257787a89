"""An error about a plain slip says what to write, in the words of the trade, and never only a wrong thing."""

from __future__ import annotations

import pytest

from heatledger.job.errors import JobError, JobErrors
from heatledger.job.reading import offer
from heatledger.job.shapes import JOB
from heatledger.job.trade_words import WORDS, rows_like
from tests.job.samples import SMALL, shapes_below, small

WALL = "u_value: U-0.09"
WINDOW = "size: 2' × 4'"


def refused(old: str, new: str, *more: tuple[str, str], add: str = "", lay: tuple[str, ...] = ()) -> JobError:
    with pytest.raises(JobErrors) as caught:
        small((old, new), *more, add=add).with_what_ifs(*lay)
    (error,) = caught.value.errors
    return error


@pytest.mark.parametrize(("old", "new", "keys"), [
    (WALL, "u_factor: 0.09", "`u_value`"), (WALL, "U: 0.09", "`u_value`"),
    (WALL, "uvalue: 0.09", "`u_value`"),
    (WALL, "r: 11", "`r_value`"), (WALL, "R-value: 11", "`r_value`"),
    (WALL, "insulation: R-11", "`catalog` or `r_value`"),
    ("outdoor: 0 °F", "temp: 0 °F", "`outdoor` or `indoor`"),
    ("floor_area: 100 ft2", "area: 100 ft2", "`floor_area`"),
    ("floor_area: 100 ft2", "height: 8 ft", "`ceiling_height`"),
    ("floor_area: 100 ft2", "ceiling: 8 ft", "`ceiling_height`"),
    ("floor_area: 100 ft2", "temperature: 60 °F", "`indoor`"),
    ("air: {changes: 0.5 ACH}", "air: {ach: 0.5}", "`changes`"),
])  # fmt: skip
def test_a_word_of_the_trade_is_told_its_key(old: str, new: str, keys: str) -> None:
    error = refused(old, new)
    assert (error.code, error.mend) == ("unknown-key", f"Did you mean {keys}?")


def test_a_what_if_is_told_the_key_too() -> None:
    what_if = "what-ifs:\n  one: {changes: [{set: constructions/wall/u_factor, to: U-0.05}]}\n"
    assert refused(WALL, WALL, add=what_if).mend == "Did you mean `u_value`?"


def test_the_table_of_words_leads_to_keys_that_are_there() -> None:
    shapes = shapes_below(JOB, {})
    for name, words in WORDS.items():
        for word, keys in words.items():
            assert word.isalpha() and word not in shapes[name].by_key, (name, word)
            assert set(keys) <= set(shapes[name].by_key), (name, word)


def test_a_row_is_found_by_its_words() -> None:
    for typed in ("2x4-r-11", "2x4 R11", "r11-frame-2x4"):
        mend = refused(WALL, f"catalog: {typed}").mend
        assert mend == "Did you mean `frame-wall-2x4-r-11`? `heatledger catalog wall` lists them all."
    assert rows_like("2x4-r-13", "wall") == ["frame-wall-2x4-r-13", "frame-wall-2x4-r-13-plus-5"]
    assert len(rows_like("window")) == 5
    assert rows_like("zork") == []
    assert refused(WALL, "catalog: zork").mend == "`heatledger catalog wall` lists them all."


def test_no_mend_lists_more_than_five() -> None:
    assert offer("zzz", ["a", "b", "c", "d", "e"]) == "It can be: a, b, c, d, e."
    assert offer("zzz", ["a", "b", "c", "d", "e", "f", "g"]) == "It can be: a, b, c, d, e, and 2 more."


def test_an_error_is_broken_into_lines_but_not_inside_what_is_copied() -> None:
    copied = "`rooms/kitchen/surfaces/north-wall and more words`"
    error = JobError(
        "unknown-room", "", 3, f"{'word ' * 13}{copied} {'word ' * 9}end.", "Write  u_value: U-1"
    )
    lines = str(error).splitlines()
    assert len(lines) == 5
    assert all(len(each) <= 80 for each in lines)
    assert copied in lines[2]
    assert lines[-1] == "  Write  u_value: U-1"


def test_a_decimal_comma_is_offered_as_a_decimal_first() -> None:
    mend = refused(WALL, "u_value: 2,9 W/m2K").mend
    assert 0 < mend.index("`u_value: 2.9 W/m2K`") < mend.index("`u_value: 29 W/m2K`")
    mend = refused("area: 99 ft2", "area: 1,500 ft2").mend
    assert 0 < mend.index("`area: 1500 ft2`") < mend.index("`area: 1.500 ft2`")
    three = refused("area: 99 ft2", "area: 1,234,500 ft2")
    assert three.path.endswith("inner-wall/area")
    assert three.mend == "Leave the commas out: `area: 1234500 ft2`"


def test_an_r_value_as_a_u_value_is_an_assembly_or_a_batt() -> None:
    error = refused(WALL, "u_value: R-19")
    assert error.code == "wrong-unit"
    assert error.mend.startswith("If it is the whole assembly, write `r_value: R-19` ")
    assert "`frame-wall-2x6-r-19`" in error.mend
    assert "0.05" not in error.message + error.mend
    metric = refused(WALL, "u_value: R-19", ("units: US", "units: metric")).mend
    assert "`r_value: RSI 19` or `r_value: 19 h·ft²·°F/Btu`" in metric
    assert "catalog" in refused(WALL, "u_value: R-7").mend


@pytest.mark.parametrize(("typed", "code", "offered"), [
    ("36x60", "two-readings", "`36\" x 60\"` or `36' x 60'`"),
    ("3-0 x 6-8", "unreadable", "`3' 0\" x 6' 8\"`"),
    ("3068", "size-needs-two", "`3' 0\" x 6' 8\"`"),
])  # fmt: skip
def test_sizes_of_openings_as_the_trade_writes_them(typed: str, code: str, offered: str) -> None:
    error = refused(WINDOW, f"size: {typed}")
    assert (error.code, error.mend) == (code, f"Write {offered}.")


def test_a_room_may_be_longer_than_a_window() -> None:
    job = small(("size: 12' × 11'", "size: 36 x 60"))
    length = job.rooms["kitchen"].length
    assert length is not None
    assert float(length) == pytest.approx(36 * 0.3048)
    assert refused("size: 12' × 11'", "size: 144 x 132").code == "two-readings"


def test_a_name_that_a_what_if_removed_is_told_with_both() -> None:
    assert "beyond: rooms/hall" in SMALL
    what_ifs = (
        "what-ifs:\n  no-hall: {changes: [{remove: rooms/hall}]}\n"
        "  shed: {changes: [{add: rooms/kitchen/surfaces/s, "
        "to: {construction: wall, area: 9 ft2, beyond: rooms/hall}}]}\n"
    )
    error = refused(WALL, WALL, add=what_ifs, lay=("no-hall",))
    place = "rooms/kitchen/surfaces/inner-wall"
    assert error.code == "unknown-room"
    assert error.message == (
        f"The what-if `no-hall` removes `rooms/hall`, which the job still names in `{place}/beyond`."
    )
    assert error.mend == f"Let `no-hall` also set or remove `{place}`."
    with pytest.raises(JobErrors) as caught:
        small(add=what_ifs).with_what_ifs("no-hall", "shed")
    assert "`no-hall` removes `rooms/hall`, which the what-if `shed` names" in caught.value.errors[1].message

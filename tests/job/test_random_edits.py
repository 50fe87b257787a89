"""Whatever is edited, the tree becomes what was asked for, and every other row and comment stays."""

from __future__ import annotations

import re
from collections import Counter
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from heatledger.job.edits import (
    EditError,
    add_thing,
    copy_thing,
    move_thing,
    remove_thing,
    set_detail,
    set_entry,
)
from heatledger.job.parsing import tree_of
from heatledger.job.starter import starter_job
from heatledger.job.text import Listing, Mapping, Node, Scalar, plain, walk
from heatledger.ledger.presets import CANADIAN, METRIC, US
from tests.job.samples import SMALL, SYSTEM, example

TEXTS = [
    *(example(each) for each in ("ferrow-house", "lerch-cottage", "tamm-street")),
    *(starter_job(each) for each in (US, METRIC, CANADIAN)),
    SMALL + SYSTEM,
    ("\ufeff" + SMALL + SYSTEM).replace("\n", "\r\n"),
]
VALUES = st.one_of(
    st.sampled_from([
        "12' 6\"", "70 °F", "1,500 ft2", "a: b", "x # y", "yes", "- 5 °F", "'", '"', "[x", "{x}", "3' × 4'",
        " spaced ",
        "two\nrows", "it's", "*", "&a", "|", "U-0.30", "# no comment", "a, b}", "é", "?", ": z", "~", "%",
    ]),
    st.text(st.characters(codec="utf-8", exclude_categories=("C",)), min_size=1, max_size=12),
)  # fmt: skip
COMMENT = re.compile(r"(?:^|(?<=\s))#.*$", re.MULTILINE)
QUICK = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def paths(node: Node, kind: type, here: str = "") -> list[str]:
    """Paths of everything of a kind below a node."""
    found = [here] if here and isinstance(node, kind) else []
    inside = node.entries if isinstance(node, Mapping) else {}
    for key, each in inside.items():
        if "/" not in key and key != "is":
            found += paths(each, kind, f"{here}/{key}" if here else key)
    if isinstance(node, Listing):
        for i, each in enumerate(node.items):
            found += paths(each, kind, f"{here}/{i}")
    return found


def things(text: str) -> list[str]:
    """Paths of things by id that stand among others."""
    tree = tree_of(text)
    homes = (
        "rooms",
        "constructions",
        "emitters",
        "zones",
        "levels",
        "surfaces",
        "openings",
        "runs",
        "unheated",
    )
    return [each for each in paths(tree, Mapping) if each.split("/")[-2:-1] and each.split("/")[-2] in homes]


def at(whole: Any, path: str) -> Any:
    for step in path.split("/"):
        whole = whole[int(step)] if isinstance(whole, list) else whole[step]
    return whole


def comments(text: str) -> Counter[str]:
    return Counter(each.strip() for each in COMMENT.findall(text))


@given(st.sampled_from(TEXTS), st.data(), VALUES)
@QUICK
def test_a_value_set_and_set_back_leaves_the_text_as_it_was(text: str, data: st.DataObject, new: str) -> None:
    path = data.draw(st.sampled_from(paths(tree_of(text), Scalar)))
    node = walk(tree_of(text), path)
    assert isinstance(node, Scalar)
    whole = plain(tree_of(text))
    after = set_entry(text, path, new)
    parent, _, last = path.rpartition("/")
    (at(whole, parent) if parent else whole)[int(last) if last.isdigit() and "changes" in path else last] = (
        new
    )
    assert plain(tree_of(after)) == whole
    rows = zip(text.split("\n"), after.split("\n"), strict=True)
    assert len([1 for old, now in rows if old != now]) <= 1
    if not node.style and not node.is_empty:
        assert set_entry(after, path, node.text) == text


@given(st.sampled_from(TEXTS), st.data(), st.sampled_from(["known", "within", "because"]))
@QUICK
def test_a_word_beside_a_value_comes_and_goes(text: str, data: st.DataObject, key: str) -> None:
    path = data.draw(st.sampled_from(paths(tree_of(text), Scalar)))
    node = walk(tree_of(text), path)
    if path.rpartition("/")[2] in ("known", "within", "because") or not isinstance(node, Scalar):
        return
    if "changes" in path or node.style or node.is_empty:
        return
    after = set_detail(text, path, key, "told, twice")
    assert at(plain(tree_of(after)), path) == {"is": node.text, key: "told, twice"}
    assert comments(after) == comments(text)
    assert set_detail(after, path, key, "") == text


@given(st.sampled_from(TEXTS), st.data())
@QUICK
def test_what_is_removed_takes_no_other_comment_along(text: str, data: st.DataObject) -> None:
    path = data.draw(st.sampled_from(things(text) + paths(tree_of(text), Scalar)))
    if path in ("format", "units"):
        return
    whole = plain(tree_of(text))
    after = remove_thing(text, path)
    parent, _, last = path.rpartition("/")
    home = at(whole, parent) if parent else whole
    del home[int(last) if isinstance(home, list) else last]
    now = plain(tree_of(after))
    if not home:
        assert at(now, parent) in ("", {}, [])
        return
    assert now == whole
    rows = iter(text.split("\n"))
    # Rows that stay whole stay in their order.
    kept = [row for row in after.split("\n") if row in text.split("\n")]
    assert all(any(row == each for each in rows) for row in kept)
    node = walk(tree_of(text), path)
    lost = comments(text) - comments(after)
    assert sum(lost.values()) <= sum(comments(block_of(text, path)).values())
    assert node is not None


def block_of(text: str, path: str) -> str:
    """The rows of an entry with what is indented deeper, and the comments in front, worked out by rows."""
    rows = text.split("\n")
    tree = tree_of(text)
    parent, _, last = path.rpartition("/")
    home = walk(tree, parent) if parent else tree
    if not isinstance(home, Mapping):
        return text
    first = home.key_lines[last] - 1
    indent = len(rows[first]) - len(rows[first].lstrip(" "))
    end = first + 1
    while end < len(rows) and (not rows[end].strip() or len(rows[end]) - len(rows[end].lstrip(" ")) > indent):
        end += 1
    while first and rows[first - 1].lstrip(" ").startswith("#"):
        first -= 1
    return "\n".join(rows[first:end])


@given(st.sampled_from(TEXTS), st.data(), st.integers(0, 6))
@QUICK
def test_what_moves_keeps_every_row_and_moves_back(text: str, data: st.DataObject, to: int) -> None:
    path = data.draw(st.sampled_from(things(text)))
    parent, _, last = path.rpartition("/")
    after = move_thing(text, path, to)
    before = [each for each in at(plain(tree_of(text)), parent) if each != "known"]
    now = [each for each in at(plain(tree_of(after)), parent) if each != "known"]
    assert plain(tree_of(after)) == plain(tree_of(text))
    assert now.index(last) == min(to, len(before) - 1)
    assert [each for each in now if each != last] == [each for each in before if each != last]
    assert comments(after) == comments(text)
    assert move_thing(after, path, before.index(last)) == text


@given(st.sampled_from(TEXTS), st.data(), st.sampled_from(["", "Copy", "One: more, # 2"]))
@QUICK
def test_what_is_copied_and_taken_away_again_leaves_the_text(
    text: str, data: st.DataObject, name: str
) -> None:
    path = data.draw(st.sampled_from(things(text)))
    parent, _, last = path.rpartition("/")
    whole = plain(tree_of(text))
    after = copy_thing(text, path, "a-copy", name)
    now = plain(tree_of(after))
    keys = list(at(now, parent))
    assert keys[keys.index(last) + 1] == "a-copy"
    copy = at(now, parent).pop("a-copy")
    assert now == whole
    assert copy.pop("name", "") == name
    original = dict(at(whole, path))
    original.pop("name", None)
    assert copy == original
    assert not comments(text) - comments(after)
    assert remove_thing(after, f"{parent}/a-copy") == text


SIMPLE = st.dictionaries(st.sampled_from(["name", "a", "b-c", "d2"]), VALUES, max_size=3)
NESTED = st.recursive(
    SIMPLE,
    lambda inner: st.dictionaries(st.sampled_from(["x", "y"]), inner | VALUES, max_size=3),
    max_leaves=6,
)


@given(st.sampled_from(TEXTS), st.data(), NESTED)
@QUICK
def test_what_is_added_and_taken_away_again_leaves_the_text(text: str, data: st.DataObject, new: Any) -> None:
    parent = data.draw(st.sampled_from(things(text))).rpartition("/")[0]
    path = f"{parent}/added"
    after = add_thing(text, path, new)
    now = plain(tree_of(after))
    assert at(now, parent).pop("added") == new
    assert now == plain(tree_of(text))
    assert comments(text) == comments(after) or "#" in repr(new)
    assert remove_thing(after, path) == text
    with pytest.raises(EditError) as caught:
        add_thing(after, path, new)
    assert caught.value.path == path


PATHS = ["name", "site/outdoor", "rooms/kitchen/size", "rooms/kitchen/surfaces/inner-wall/area",
         "constructions/wall/kind"]  # fmt: skip


@given(st.sampled_from(PATHS), st.text(st.characters(codec="utf-8", exclude_categories=("C",)), max_size=20))
@settings(max_examples=100, deadline=None)
def test_whatever_is_written_is_read_back(path: str, new: str) -> None:
    node = walk(tree_of(set_entry(SMALL, path, new)), path)
    if node is None:
        assert new == ""
        return
    assert isinstance(node, Scalar)
    assert node.text == new

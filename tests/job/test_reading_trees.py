"""The fast reader and the full one see the same tree, and scalars stay as typed."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.job.edit_writing import written
from heatledger.job.errors import JobErrors
from heatledger.job.parsing import tree_of
from heatledger.job.quick import quick_tree
from heatledger.job.starter import starter_job
from heatledger.job.text import Listing, Mapping, Node, Scalar, line_of, plain, scalars, walk
from heatledger.job.yaml_events import full_tree
from heatledger.ledger.presets import CANADIAN, METRIC, US
from tests.job.samples import EXAMPLES, SMALL, example

TEXTS = [
    SMALL,
    *(example(each) for each in EXAMPLES),
    *(starter_job(each) for each in (US, METRIC, CANADIAN)),
]


@pytest.mark.parametrize("text", TEXTS, ids=range(len(TEXTS)))
def test_the_fast_reader_reads_what_people_write(text: str) -> None:
    quick = quick_tree(text)
    assert quick is not None
    assert quick == full_tree(text)
    windows = text.replace("\n", "\r\n")
    assert quick_tree(windows) == full_tree(windows)


WORDS = st.sampled_from(["1", "12' 6\"", "-2 °F", "two words", "a, b", "x: y", "x # y", "", "'", "{", "it's"])
LAID_OUT = st.recursive(WORDS, lambda inner: st.lists(inner, max_size=3)
                        | st.dictionaries(st.sampled_from(["a", "b-c", "d_e", "1"]), inner, max_size=3),
                        max_leaves=12)  # fmt: skip
GAPS = st.sampled_from([" ", "\n        ", "  # note\n         ", "\n\n     # [note\n        "])


def in_braces(value: object, gap: Callable[[], str]) -> str:
    """A value with rows broken wherever that is allowed."""
    if isinstance(value, dict):
        inside = [f"{key}: {in_braces(each, gap)}" for key, each in value.items()]
        return "{" + f",{gap()}".join(inside) + "}"
    if isinstance(value, list):
        return "[" + f",{gap()}".join(in_braces(each, gap) for each in value) + "]"
    return written(str(value), True) or "''"


@given(LAID_OUT, st.data(), st.sampled_from(["a: ", "a:\n    ", "- ", "a:\n    - ", "a:\n    - b: "]))
@settings(max_examples=100, deadline=None)
def test_braces_over_several_rows_are_read_fast_and_alike(
    value: object, data: st.DataObject, head: str
) -> None:
    text = f"top:\n  {head}{in_braces(value, lambda: data.draw(GAPS))}   # end\nlast: 1\n"
    for each in (text, text.replace("\n", "\r\n")):
        quick = quick_tree(each)
        assert quick is not None or isinstance(value, str)
        assert quick is None or quick == full_tree(each)


PIECES = st.sampled_from([
    "a: 1", "b: two words", "c:", "d: {e: 1, f: [2, 3]}", "g: - x",
    "h: 12' 6\"  # tape", "- item", "i: -2 °F",
    "j: {k: -1}", "l: 'quoted'", "m: a: b", "n: {o}", "# note", "", "p: [{q: r}, s]",
    "t: |", "u: a#b", "v: {}",
    "w: []", "x: {y: 1,500 ft2}", "z : 1", "a/b@c: 2", "k:  3 ", "é: 4", "1: 5", "&n o: 1", "q: ---", "---",
    "y: :z", "e: {f: }", "r: {s: {t: u}, v: w}  # end", "o: x, y", "f: 10 %", "*a: 1", "s: [a, b,]",
    "d: {a: 1,b: 2}", "b: x  # it's", "b: \"x # y\"", "f: [a: b]",
    "c:   # note", "...", "a: [x]y", "n: {a: 1} b",
    "m: {a: 1,", "  b: 2,  # note", "c: [d,", "  e]", "}", "}}", "]", "{a: 1}", "[b]",
    "r: \"a \\\" b\"", "'x'",
    "s: 'it''s'", "t: \"two: a\"  # b", "{k: 'a, b', l: }", "- a: 1", "- {b: 2}", "- 'c'", "-", "- - d",
    "# ]",
    "u: {v: {", "w: x}}", "y: {", "y: {z", "m: \"a\" b", "m: \"a\"# b", "a: \"\\x41\"", "l: {m: \"\", n: ''}",
])  # fmt: skip
ROWS = st.lists(st.tuples(st.integers(0, 3), PIECES), min_size=1, max_size=8)


@given(ROWS, st.sampled_from(["\n", "\r\n"]))
@settings(max_examples=400, deadline=None)
def test_where_the_fast_reader_answers_it_agrees_with_the_full_one(
    rows: list[tuple[int, str]], end: str
) -> None:
    text = end.join("  " * indent + piece for indent, piece in rows)
    quick = quick_tree(text)
    if quick is not None:
        assert quick == full_tree(text)


@pytest.mark.parametrize(
    "typed", ["1_000", "0x10", "no", "1e3", "12:30", "~", "007", "2026-12-06", ".5", "12' 6\"", "1,500 ft2"]
)
def test_scalars_stay_as_typed(typed: str) -> None:
    tree = tree_of(f"a: {typed}\n")
    assert plain(tree) == {"a": typed}


@pytest.mark.parametrize("text", TEXTS, ids=range(len(TEXTS)))
def test_each_span_holds_the_text_it_stands_for(text: str) -> None:
    for each in scalars(tree_of(text)):
        assert text[each.start : each.end] == each.text


def test_spans_hold_under_windows_line_ends() -> None:
    text = SMALL.replace("\n", "\r\n")
    for each in scalars(tree_of(text)):
        assert text[each.start : each.end] == each.text


def test_a_path_leads_to_its_line() -> None:
    tree = tree_of(SMALL)
    rows = SMALL.splitlines()
    assert rows[line_of(tree, "rooms/kitchen/surfaces/north-wall/length") - 1].strip() == "length: 12'"
    assert rows[line_of(tree, "rooms/kitchen/width") - 1].strip() == "size: 12' × 11'"
    assert rows[line_of(tree, "rooms/hall/indoor") - 1].strip() == "hall:"
    assert line_of(tree, "nothing") == 1


def depth(node: Node) -> int:
    inside = (
        list(node.entries.values())
        if isinstance(node, Mapping)
        else node.items
        if isinstance(node, Listing)
        else []
    )
    return 1 + max((depth(each) for each in inside), default=0)


@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "a:\n"])
def test_nesting_without_end_is_refused(opening: str) -> None:
    if opening == "a:\n":
        text = "".join("  " * i + "a:\n" for i in range(500))
    else:
        text = "a: " + opening * 50_000 if opening != "- " else "- " * 5_000
    with pytest.raises(JobErrors) as caught:
        tree_of(text)
    assert caught.value.errors[0].code in ("too-deep", "not-yaml")


def test_a_walk_off_the_tree_gives_nothing() -> None:
    tree = tree_of(SMALL)
    assert walk(tree, "rooms/kitchen/nowhere") is None
    assert walk(tree, "name/first") is None
    assert isinstance(walk(tree, "units"), Scalar)
    assert depth(tree) < 10

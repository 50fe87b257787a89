"""A job read again after an edit is the job read from nothing: designs, errors and lines are the same."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields, is_dataclass
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from heatledger.job import reparse
from heatledger.job.again import read_again, same_typed
from heatledger.job.edits import (
    EditError,
    add_thing,
    copy_thing,
    move_thing,
    remove_thing,
    set_entry,
    set_known,
)
from heatledger.job.errors import JobError, JobErrors
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.job.parsing import tree_of
from heatledger.job.reparse import Parsed, parsed
from heatledger.job.text import Mapping, Scalar
from heatledger.ledger.figures import Figure
from heatledger.steps.design import design
from tests.job.samples import SMALL, SYSTEM, example
from tests.job.test_random_edits import paths, things

TEXTS = [
    *(example(each) for each in ("ferrow-house", "lerch-cottage", "tamm-street")),
    SMALL + SYSTEM,
    ("\ufeff" + SMALL + SYSTEM).replace("\n", "\r\n"),
    example("ferrow-house")
    .replace("rooms:\n", "rooms:\n  # two\n\n", 1)
    .replace("site:\n", "site: # s\n", 1),
]
TYPED = ["12' 6\"", "70 °F", "0.4 ACH", "U-0.2", "R-9", "20 ft", "9' × 8'", "2", "measured", "assumed",
         "yes", "outdoors", "kitchen", "wall", "rooms/kitchen", "metric", "bad value", "1,5", "",
         "ground"]  # fmt: skip
CALM = settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def alike(one: Any, other: Any, where: str = "job") -> None:
    """Every part of two jobs is equal; figures are the very same, what-ifs have the same lines."""
    assert type(one) is type(other), where
    if isinstance(one, Figure):
        assert one is other, where
    elif is_dataclass(one) and not isinstance(one, type):
        for each in fields(one):
            alike(getattr(one, each.name), getattr(other, each.name), f"{where}.{each.name}")
    elif isinstance(one, dict):
        assert list(one) == list(other), where
        for key, each in one.items():
            alike(each, other[key], f"{where}.{key}")
    elif isinstance(one, list | tuple):
        assert len(one) == len(other), where
        for i, each in enumerate(one):
            alike(each, other[i], f"{where}.{i}")
    else:
        assert one == other, where


def read(text: str, since: Job | None = None) -> Job | list[Any]:
    """The job, or the errors of the text."""
    try:
        return read_job(text, "house.yaml") if since is None else read_again(text, since)
    except JobErrors as why:
        return [why.file_name, *why.errors]


def edited(text: str, data: st.DataObject) -> str:
    """The text after one random edit."""
    tree = tree_of(text)
    kind = data.draw(
        st.sampled_from(["set", "set", "set", "known", "remove", "copy", "move", "add", "comment"])
    )
    try:
        if kind == "set":
            path = data.draw(st.sampled_from(paths(tree, Scalar)))
            return set_entry(text, path, data.draw(st.sampled_from(TYPED)))
        if kind == "known":
            homes = [*paths(tree, Mapping), "", *paths(tree, Scalar)]
            return set_known(
                text, data.draw(st.sampled_from(homes)), data.draw(st.sampled_from(["told", ""]))
            )
        if kind == "comment":
            rows = text.split("\n")
            at = data.draw(st.integers(0, len(rows)))
            return "\n".join([*rows[:at], "# a word", *rows[at:]])
        path = data.draw(st.sampled_from(things(text)))
        if kind == "remove":
            return remove_thing(text, path)
        if kind == "copy":
            return copy_thing(text, path, "one-more", "One more")
        if kind == "move":
            return move_thing(text, path, data.draw(st.integers(0, 5)))
        home = path.rpartition("/")[0]
        return add_thing(text, f"{home}/new", {"name": "New", "kind": "wall", "u_value": "U-0.1"})
    except EditError:
        return text


@given(st.sampled_from(TEXTS), st.data())
@CALM
def test_jobs_errors_and_designs_are_the_same(text: str, data: st.DataObject) -> None:
    reparse.forget()
    job = read_job(text, "house.yaml")
    house = design(job)
    for _ in range(2):
        text = edited(text, data)
        new, again = read(text), read(text, job)
        alike(again, new)
        if isinstance(new, list) or isinstance(again, list):
            return
        assert again.source.line_of("rooms") == new.source.line_of("rooms")
        first, second = design(new), design(again, since=house)
        assert {key: repr(float(each)) for key, each in first.figures.items()} == {
            key: repr(float(each)) for key, each in second.figures.items()
        }
        job, house = again, second


@given(st.sampled_from(TEXTS), st.data())
@settings(max_examples=120, deadline=None)
def test_a_tree_read_beside_another_is_the_tree_read_from_nothing(text: str, data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(text)))
    stop = min(len(text), start + data.draw(st.integers(0, 12)))
    pieces = [
        "",
        "x",
        "# c\n",
        "\n",
        "    a: 1\n",
        "{",
        "}",
        "'",
        ": ",
        "\n  b:\n",
        "|",
        "- ",
        " ",
        "\t",
        "1, 2",
    ]
    after = text[:start] + data.draw(st.sampled_from(pieces)) + text[stop:]
    base = Parsed(text, tree_of(text))
    reparse.forget()
    assert tree_or_errors(lambda: parsed(after, base).tree) == tree_or_errors(lambda: tree_of(after))
    assert base.tree == tree_of(text)


def tree_or_errors(make: Callable[[], Mapping]) -> Mapping | list[JobError]:
    """The tree of a text, or what is wrong with it."""
    try:
        return make()
    except JobErrors as why:
        return list(why.errors)


def test_what_stands_on_unchanged_text_is_taken_over() -> None:
    job = read_job(SMALL + SYSTEM)
    text = set_entry(SMALL + SYSTEM, "rooms/kitchen/surfaces/north-wall/length", "13 ft")
    again = read_again(text, job)
    assert again.constructions["wall"] is job.constructions["wall"]
    assert again.system.emitters["hall-iron"] is job.system.emitters["hall-iron"]
    assert again.system.circuits["loop"] is job.system.circuits["loop"]
    assert again.rooms["kitchen"] is not job.rooms["kitchen"]
    # The hall is given its wall by the kitchen; that wall has not changed.
    assert again.rooms["hall"] == job.rooms["hall"]
    warmer = read_again(set_entry(SMALL + SYSTEM, "site/indoor", "72 °F"), job)
    assert warmer.rooms["kitchen"] is not job.rooms["kitchen"]
    assert warmer.system.plant is job.system.plant
    metric = read_again(set_entry(SMALL + SYSTEM, "units", "metric"), job)
    assert metric.constructions["wall"] is not job.constructions["wall"]


def test_a_room_whose_neighbor_is_gone_is_told_of() -> None:
    job = read_job(SMALL)
    with pytest.raises(JobErrors) as caught:
        read_again(remove_thing(SMALL, "rooms/hall"), job)
    assert [each.code for each in caught.value.errors] == ["unknown-room"]


@pytest.mark.parametrize("word", ["wall", "bore", "rows", "name"])
def test_a_word_of_a_table_is_no_tube(word: str) -> None:
    path = "circuits/spokes/runs/hall-iron/tube"
    with pytest.raises(JobErrors) as caught:
        read_job(set_entry(SMALL + SYSTEM, path, word))
    assert [(each.code, each.path) for each in caught.value.errors] == [("unknown-tube", path)]


def test_a_job_under_a_what_if_is_read_again_without_it() -> None:
    text = example("ferrow-house")
    under = read_job(text, "house.yaml").with_what_ifs("low-e", "tight-air")
    again = read_again(set_entry(text, "site/outdoor", "-4 °F"), under)
    alike(again, read_job(set_entry(text, "site/outdoor", "-4 °F"), "house.yaml"))
    assert again.laid == ()


def test_a_quoted_nothing_is_not_nothing() -> None:
    tree = tree_of("a: ''\nb:\nc: x\n")
    assert not same_typed(tree.entries["a"], tree.entries["b"])
    assert same_typed(tree, tree_of("# more\na: \"\"\nb:   # c\nc: 'x'\n"))
    assert not same_typed(tree, tree_of("b:\na: ''\nc: x\n"))


def test_rows_that_break_in_another_way_are_counted_alike() -> None:
    """The full reader counts a lone carriage return as a line; taking it out moves all below."""
    text = SMALL.replace("    level: ground\n", "    level: ground\r # c\n", 1)
    assert text != SMALL
    reparse.forget()
    base = Parsed(text, tree_of(text))
    after = text.replace("ground\r # c", "ground", 1)
    assert parsed(after, base).tree == tree_of(after)

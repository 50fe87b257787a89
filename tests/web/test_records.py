"""The record of a thing: every key that the job file allows is there, and nothing typed becomes markup."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.catalog.tubes import FITTING_KINDS
from heatledger.job.edits import set_entry
from heatledger.job.fields import Field, Shape
from heatledger.job.load import read_job
from heatledger.job.shapes import CHANGE, DECISION, JOB, RESERVED
from heatledger.job.text import Mapping, Node, walk
from heatledger.job.what_ifs import shape_at
from heatledger.web.drawing import fragment
from heatledger.web.record_lists import decision_of
from heatledger.web.records import SINGLE, acts_of, record
from tests.web.page_of import demo, full, made_page, wrong_entry

PAGE = made_page(full())


def html_of(path: str) -> str:
    """The record of a path of the full job as markup."""
    return str(fragment(record(PAGE, path), PAGE))


def things(node: Node, shape: Shape, path: str = "") -> Iterator[tuple[str, Shape]]:
    """Every thing of a job with the shape of its keys, from the whole job down."""
    yield path, shape
    entries = node.entries if isinstance(node, Mapping) else {}
    for each in shape.fields:
        here, inner = f"{path}/{each.key}".strip("/"), entries.get(each.key)
        if each.shape is None or each.kind == "any":
            continue
        if each.kind == "shape":
            yield from things(inner or Mapping(), each.shape, here)
        elif isinstance(inner, Mapping):
            for id, one in inner.entries.items():
                if id != "known":
                    yield from things(one, each.shape, f"{here}/{id}")


def shapes(shape: Shape) -> Iterator[Shape]:
    """Every shape that a job is made of."""
    yield shape
    for each in shape.fields:
        if each.shape is not None and each.kind != "any":
            yield from shapes(each.shape)


LEVEL = "format: 1\nunits: US\nlevels:\n  one: {name: One, ceiling_height: 8 ft}\n"
EVERYTHING = list(things(full().source.base, JOB))
ONE_OF_EACH = {shape.name + path.partition("/")[0]: (path, shape) for path, shape in reversed(EVERYTHING)}


def test_the_full_job_has_a_thing_of_every_shape() -> None:
    assert {shape.name for shape in shapes(JOB)} == {shape.name for _, shape in EVERYTHING}


@pytest.mark.parametrize(
    ("path", "shape"), ONE_OF_EACH.values(), ids=[path or "job" for path, _ in ONE_OF_EACH.values()]
)
def test_every_key_has_an_entry_an_editor_or_a_way_to_it(path: str, shape: Shape) -> None:
    html = html_of(path)
    entries = set(re.findall(r'data-entry="([^"]*)"', html))
    for each in shape.fields:
        here = f"{path}/{each.key}".strip("/")
        anchor = here.replace("/", "-")
        if each.kind in SINGLE:
            assert here in entries, here
        elif not path:
            there = each.key not in RESERVED or walk(full().source.base, here) is not None
            assert (f"pick={each.key}&" in html or f'pick={each.key}"' in html) is there, here
        elif each.kind == "map":
            assert f'id="map-{anchor}"' in html, here
        elif each.kind in ("any", "list"):
            assert f'id="list-{anchor}"' in html, here
        else:
            assert f'id="part-{anchor}"' in html, here


@pytest.mark.parametrize("key", [each.key for each in JOB.fields if each.kind not in SINGLE])
def test_every_part_of_the_job_has_a_record_of_its_own(key: str) -> None:
    html = html_of(key)
    assert "Not in the job" not in html
    if key not in RESERVED:
        assert "data-entry" in html or "data-make" in html or "pick=decisions" in html


def test_a_decision_gives_its_three_entries_and_a_finding_can_be_decided() -> None:
    html = html_of("decisions/no-fan-test@air")
    for key in DECISION.by_key:
        assert f'data-entry="decisions/no-fan-test@air/{key}"' in html
    assert "keep the guess" in html and "Take it back" in html
    new = html_of("decisions/floor-areas-disagree")
    assert all(f'name="f:{key}"' in new for key in DECISION.by_key) and "Decide this" in new
    hard = next(each for each in PAGE.house.findings if each.caution and each.decided is None)
    asked = html_of(f"decisions/{hard.id}@{hard.where}" if hard.where else f"decisions/{hard.id}")
    assert "needs a name" in asked
    found = PAGE.house.findings[0]
    assert any(found.what == words for _, words in decision_of(PAGE, "").open)


def test_the_changes_of_a_what_if_are_rows_with_an_entry_for_what_they_set() -> None:
    html = html_of("what-ifs/longer-kitchen")
    for i in range(2):
        for key in ("set", "to"):
            assert f'data-entry="what-ifs/longer-kitchen/changes/{i}/{key}"' in html
    assert set(CHANGE.by_key) == {"set", "add", "remove", "to"}
    assert all(f'<option value="{verb}">' in html for verb in ("set", "add", "remove"))


def test_fittings_offer_the_kinds_that_are_not_counted_yet() -> None:
    html = html_of("circuits/upper/runs/bathroom-base")
    assert 'data-entry="circuits/upper/runs/bathroom-base/fittings/90-ell"' in html
    offered = set(re.findall(r'<option value="([a-z0-9-]+)">', html))
    assert offered >= set(FITTING_KINDS) - {"90-ell"} and "90-ell" not in offered


def test_half_ranges_have_an_entry_for_each_way_to_know() -> None:
    html = html_of("ranges")
    for known in ("measured", "from plans", "told", "assumed"):
        assert f'data-entry="ranges/length/{known}"' in html
    assert 'value="2 %"' in html and 'placeholder="5 %"' in html


def test_an_entry_that_another_one_rules_out_is_folded() -> None:
    html = html_of("constructions/old-window")
    open_part = html.partition("More that may be given")[0]
    assert 'data-entry="constructions/old-window/u_value"' in open_part
    assert 'data-entry="constructions/old-window/r_value"' not in open_part


def test_a_thing_can_be_copied_ordered_and_removed() -> None:
    html = html_of("rooms/kitchen")
    for do in ("copy", "move", "remove"):
        assert re.search(rf'data-do="{do}" data-path="rooms/kitchen"', html), do
    first = acts_of(PAGE, "rooms/living")
    assert first is not None and first.at == 0 and first.among == len(full().rooms)
    assert acts_of(PAGE, "site") is None
    ledger = html_of("rooms")
    assert all(f'data-path="rooms/{id}"' in ledger for id in full().rooms) and "Add a room" in ledger


def test_what_is_not_there_is_said_with_a_way_back() -> None:
    html = html_of("rooms/nowhere/surfaces/wall")
    assert "Not in the job" in html and "nowhere" in html
    assert "pick=rooms" in html


def test_a_wrong_entry_stands_open_with_its_sentence() -> None:
    page = made_page(demo(), wrong=wrong_entry("rooms/living/indoor", "warm", "“warm” is no temperature."))
    html = str(fragment(record(page, "rooms/living"), page))
    open_part = html.partition("More that may be given")[0]
    assert 'value="warm"' in open_part and "is no temperature" in open_part
    assert 'id="record-fault-rooms-living-indoor"' in open_part


WINDOW = "rooms/living/surfaces/west-wall/openings/w2"


@pytest.mark.parametrize(
    ("path", "at"),
    [
        ("rooms/living/name", "rooms/living"),
        ("constructions/old-window/name", WINDOW),
        ("rooms/living/name", "emitters"),
        ("name", ""),
        ("what-ifs/low-e/name", "what-ifs"),
    ],
)
def test_a_name_is_never_markup(path: str, at: str) -> None:
    name = '<script>alert(1)</script>"x'
    page = made_page(read_job(set_entry(full().source.text, path, name)))
    html = str(fragment(record(page, at), page))
    assert "<script" not in html and "&lt;script&gt;alert(1)" in html


STEPS = [
    *JOB.by_key, "living", "surfaces", "south-wall", "openings", "w1", "ground", "runs", "0", "changes",
    "low-e", "fittings", "boiler", "a@b", "<b>", "", "known", "..", "90-ell",
]  # fmt: skip


@settings(max_examples=40, deadline=None)
@given(st.lists(st.sampled_from(STEPS), max_size=5))
def test_any_path_gives_a_record_or_says_that_there_is_none(steps: list[str]) -> None:
    html = html_of("/".join(steps))
    assert html.startswith("<section") and "<b>" not in html
    assert "<h2" in html


@settings(max_examples=15, deadline=None)
@given(
    st.text(
        st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Co", "Cn")), min_size=1, max_size=30
    )
)
def test_whatever_is_typed_as_a_name_comes_back_as_text(name: str) -> None:
    typed = name.strip()
    if not typed:
        return
    text = set_entry(LEVEL, "levels/one/name", typed)
    page = replace(PAGE, house=made_page(read_job(text)).house)
    html = str(fragment(record(page, "levels/one"), page))
    shown = re.findall(r'data-entry="levels/one/name"[^>]*? value="([^"]*)"', html)
    assert len(shown) == 1 and "<" not in shown[0]


def test_every_field_kind_is_one_that_a_record_knows() -> None:
    kinds = {each.kind for shape in shapes(JOB) for each in shape.fields}
    assert kinds <= {*SINGLE, "shape", "map", "list", "any"}
    assert isinstance(shape_at("limits"), Field)

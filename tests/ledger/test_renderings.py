"""Terminal, screen and paper are drawn from one working and hold the same tokens."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from html import unescape
from html.parser import HTMLParser
from random import Random
from typing import Any

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.as_data import as_data
from heatledger.ledger.as_html import as_html
from heatledger.ledger.as_text import as_text, working
from heatledger.ledger.choosing import choose, count, largest
from heatledger.ledger.compose import working_of
from heatledger.ledger.figures import Figure, Leaf, LeafKind, Names, leaf, missing, placed
from heatledger.ledger.presets import CANADIAN, METRIC, US
from heatledger.ledger.sources import INVENTED, cite
from heatledger.ledger.workings import Working, tokens_of
from tests.ledger import awkward, blind
from tests.ledger.drawing import arguments_for, awkward_formulas, found, typed
from tests.ledger.test_awkward import solved_pair

VOID = {"br", "hr"}
CLOSED = {"path", "circle"}
"""Tags of a drawing that close themselves."""


class Reader(HTMLParser):
    """Reads a fragment: its text, and whether every tag is closed."""

    def __init__(self, fragment: str) -> None:
        super().__init__()
        self.text, self.open, self.seen, self.paths = "", [], [], []  # type: ignore[var-annotated]
        self.heard, self.unseen, self.names = "", 0, []  # type: ignore[var-annotated]
        self.feed(fragment)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.names += given
        if tag == "sup":  # what is raised stands after ^ in the tokens
            self.text += "^"
        if tag not in VOID | CLOSED:
            self.open.append((tag, given.get("class") == "vh", given.get("aria-hidden") == "true"))
        self.seen.append(tag)
        if tag == "button":
            assert (given["form"], given["name"], given["type"]) == ("open", "open", "submit")
            assert given["aria-label"].endswith(", open its working")  # type: ignore[union-attr]
            self.paths.append(given["value"])

    def handle_endtag(self, tag: str) -> None:
        if tag not in CLOSED:
            assert self.open.pop()[0] == tag

    def handle_data(self, data: str) -> None:
        """What is seen goes to ``text``, what a screen reader says to ``heard``."""
        if not any(only_heard for _, only_heard, _ in self.open):
            self.text += data
        if not any(only_seen for _, _, only_seen in self.open):
            self.heard += data


def texts_in(data: Any) -> Iterator[str]:
    """Every text of nested data, in order."""
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for each in data.values():
            yield from texts_in(each)
    elif isinstance(data, list):
        for each in data:
            yield from texts_in(each)


def in_order(tokens: list[str], text: str) -> bool:
    """Whether the tokens stand in the text one after the other."""
    at = 0
    for each in tokens:
        at = text.find(each, at)
        if at < 0:
            return False
        at += len(each)
    return True


def samples() -> list[tuple[Figure, Working, Names | None]]:
    """Workings of every kind."""
    made: list[tuple[Figure, Working, Names | None]] = []
    for function in awkward_formulas():
        for preset in (US, METRIC, CANADIAN):
            arguments = arguments_for(function.formula, Random(f"render {function.__name__}"), preset)  # type: ignore[attr-defined]
            figure = function(*arguments)
            made.append((figure, working_of(figure, preset), None))
    load = found(3000.0, d.HEAT_RATE)
    origin = Leaf(
        LeafKind.CATALOG, "doors/<steel>", "area & more", "5 m²", "m²", 5.0, 0,
        citation=cite("", "a <door>", INVENTED), beside=("wood: 4 m²",),
    )  # fmt: skip
    entry = leaf(5.0, d.AREA, origin)
    solved = solved_pair(Random(3), US).figures["basement"]
    others = [
        entry, choose({"a": load, "b": found(9.0, d.HEAT_RATE)}, largest, because="a > b"),
        count(["bath", "kitchen"], "rooms"), solved, missing(d.AREA, "rooms/bath/area", "area"),
        awkward.log_mean(*[found(4.0, d.TEMPERATURE_DIFFERENCE)] * 2),
    ]  # fmt: skip
    return [*made, *((each, working_of(each, US), None) for each in others)]


SAMPLES = samples()


def test_text_holds_the_tokens_in_order() -> None:
    for _, sheet, _ in SAMPLES:
        text = re.sub(r"\n +", " ", as_text(sheet))
        assert in_order(tokens_of(sheet), text.replace("- ", "")), as_text(sheet)


def test_html_holds_the_tokens_in_order() -> None:
    for _, sheet, _ in SAMPLES:
        reader = Reader(as_html(sheet))
        assert in_order(tokens_of(sheet), reader.text), as_html(sheet)
        assert reader.open == []


def test_data_holds_the_tokens_in_order() -> None:
    for _, sheet, _ in SAMPLES:
        data = as_data(sheet)
        again = json.loads(json.dumps(data))
        assert again == data
        whole = " ".join(
            text
            for key in ("steps", "rows", "line", "answer", "unit", "sides", "by_hand")
            for text in texts_in(data[key])
        )
        assert in_order(tokens_of(sheet), whole), data


def line_of(tokens: list[dict[str, str]]) -> str:
    """The text of a line of data: operators and words apart, units behind their numbers."""
    out = ""
    for each in tokens:
        gap = {"op": " " if each["text"] != "^" else "", "word": " ", "unit": " "}.get(each["kind"], "")
        after = gap if each["kind"] in ("op", "word") else ""
        out += gap + each["text"] + after
    return re.sub(r" +", " ", out).replace(" :", ":").strip()


def page_of(data: dict[str, Any]) -> str:
    """A page set from data alone, as a paper would."""
    steps = [
        f"    {s['letter']} = {line_of(s['expression'])} = {s['number']} {s['unit']}".rstrip()
        for s in data["steps"]
    ]
    rows = [
        f"      {r['op'] or ' '} {r['number']} {r['unit']}".rstrip()
        + (f"  = {line_of(r['expression'])}" if r["expression"] else "")
        for r in data["rows"]
    ]
    line = [f"      {line_of(data['line'])}"] if data["line"] else []
    less = "less than " if data["less_than"] else ""
    answer = f"      {less}{data['answer']} {data['unit']}".rstrip() + f"  {data['remark']}".rstrip()
    total = ["      ====="] if data["is_total"] else []
    return "\n".join(
        [data["title"], "", *steps, *([""] if steps else []), *rows, *line, "      -----", answer, *total]
    )


def test_a_page_set_from_data_can_be_redone() -> None:
    for _, sheet, _ in SAMPLES:
        if sheet.kind in ("formula", "total"):
            assert blind.redo(page_of(as_data(sheet))) == blind.redo(as_text(sheet))


def cells_of(fragment: str) -> list[list[str]]:
    """Texts of the cells of every row of the column, answer last."""
    rows = re.findall(r"<tr[^>]*>(.*?)</tr>", fragment)
    return [
        [Reader(cell).text.replace("\xa0", " ") for cell in re.findall(r"<td[^>]*>(.*?)</td>", row)]
        for row in rows
    ]


def test_the_table_on_the_screen_is_the_column_of_the_data() -> None:
    for _, sheet, _ in SAMPLES:
        if sheet.kind not in ("formula", "total"):
            continue
        data = as_data(sheet)
        cells = cells_of(as_html(sheet))
        less = "less than " if data["less_than"] else ""
        assert cells[-1] == ["", less + data["answer"], data["unit"], data["remark"]]
        column = [each for each in cells[:-1] if len(each) == 4]
        assert [each[:3] for each in column] == [[r["op"], r["number"], r["unit"]] for r in data["rows"]]
        for cell, row in zip(column, data["rows"], strict=True):
            if row["expression"]:
                assert cell[3] == f"= {line_of(row['expression'])}"


def test_the_three_say_the_same() -> None:
    for _, sheet, _ in SAMPLES:
        text = " ".join(as_text(sheet).split())
        page = " ".join(unescape(Reader(as_html(sheet)).text).replace("\xa0", " ").split())
        for part in (sheet.title, sheet.plain, *sheet.notes, *(str(each) for _, each in sheet.sources)):
            wanted = " ".join(part.split())
            assert wanted in text
            assert wanted in page
        for _, citation in sheet.sources:
            assert citation.standing.value in text
            assert f'<span class="standing">{citation.standing.value}</span>' in as_html(sheet)


def test_tokens_of_sides_are_kept_too() -> None:
    sheet = next(sheet for _, sheet, _ in SAMPLES if sheet.kind == "found")
    inner = [token for side in sheet.sides for token in tokens_of(side)]
    assert inner
    assert in_order(tokens_of(sheet), " ".join(tokens_of(sheet)))
    assert all(each in tokens_of(sheet) for each in inner)


def test_nothing_a_user_typed_becomes_a_tag() -> None:
    nasty = '<script>alert("x")</script>'
    entry = leaf(3.0, d.HEAT_RATE, Leaf(LeafKind.JOB, f'site/"{nasty}', nasty, nasty, "W", 3.0, 0))
    for figure in (entry, awkward.heat_left_over(entry, entry), awkward.all_parts([entry])):
        fragment = as_html(working_of(figure, METRIC))
        assert "script" not in Reader(fragment).seen
        assert nasty not in fragment


class OneRoom(Names):
    """A design that knows where its figures stand."""

    def __init__(self, paths: dict[Figure, str]) -> None:
        self.paths = paths

    def path(self, figure: Figure) -> str:
        return self.paths.get(figure, super().path(figure))


def test_figures_open_by_their_path() -> None:
    given, lost = typed(900, 0, US, d.HEAT_RATE, "given"), found(200.0, d.HEAT_RATE)
    result = awkward.heat_left_over(given, lost)
    names = OneRoom({lost: "rooms/kitchen/loss", result: "rooms/kitchen/left-over"})
    sheet = working_of(placed(result, names), US)
    reader = Reader(as_html(sheet, names))
    assert reader.paths == ["site/given", "rooms/kitchen/loss"] * 2
    assert 'data-path="rooms/kitchen/left-over"' in as_html(sheet, names)
    assert [each["path"] for each in as_data(sheet, names)["rows"]] == ["site/given", "rooms/kitchen/loss"]


def test_a_column_is_a_table_that_can_be_heard() -> None:
    fragment = as_html(
        working_of(awkward.heat_left_over(typed(9, 0, US, d.HEAT_RATE), typed(2, 0, US, d.HEAT_RATE)), US)
    )
    assert "<caption" in fragment
    assert "minus" in Reader(fragment).heard
    assert "−" not in Reader(fragment).heard


def test_deep_opens_each_thing_once() -> None:
    given, part = typed(900, 0, US, d.HEAT_RATE, "given"), typed(0.5, 1, US, d.RATIO, "part")
    share = awkward.heat_left_over(given, typed(100, 0, US, d.HEAT_RATE, "lost"))
    whole = awkward.all_parts([share, share, given])
    text = working(whole, US, deep=True)
    assert text.count("\nHeat left over\n") == 1
    assert text.count('typed: "900 Btu/h"') == 1
    assert part.origin.words not in text.splitlines()
    for block in re.split(r"\n\n(?=\S)", text):
        if "-----" in block:
            blind.redo(block)


@pytest.mark.parametrize("preset", [US, METRIC, CANADIAN], ids=lambda each: each.name)
def test_no_line_is_too_long(preset: Any) -> None:
    for _, sheet, _ in SAMPLES:
        assert max(map(len, as_text(sheet).splitlines())) <= 80, as_text(sheet)
    path, words, known = "rooms/" + "a-very-long-name-" * 3, "a very long name " * 6, "told by somebody " * 6
    long = leaf(9.0, d.AREA, Leaf(LeafKind.JOB, path, words, "12 ft 6 1/2 in", known=known))
    text = working(awkward.larger_flow(found(0.1, d.AIR_FLOW), long, found(1.0, d.VELOCITY)), preset)
    assert max(map(len, text.splitlines())) <= 80, text

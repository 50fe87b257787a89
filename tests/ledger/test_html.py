"""A working on the right page: what is seen, what is heard, and what opens."""

from __future__ import annotations

import re

from heatledger.ledger import dimensions as d
from heatledger.ledger.as_html import as_html
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.compose import working_of
from heatledger.ledger.figures import placed
from heatledger.ledger.html_extras import Extras, Opens, Swinging
from heatledger.ledger.html_parts import standing_mark
from heatledger.ledger.presets import METRIC, US
from heatledger.ledger.sources import Standing
from tests.ledger import awkward
from tests.ledger.drawing import found, typed
from tests.ledger.test_renderings import SAMPLES, OneRoom, Reader, in_order


def test_what_is_drawn_as_a_sign_is_heard_as_a_word() -> None:
    for _, sheet, _ in SAMPLES:
        reader = Reader(as_html(sheet))
        for drawn, spoken in (("×", "times"), ("÷", "divided by"), ("^", "to the power")):
            if drawn in [each.text for each in sheet.line]:
                assert spoken in reader.heard
        assert "style" not in reader.names and "style" not in reader.seen
        assert not any(each.startswith("on") for each in reader.names)


def test_the_one_that_was_not_taken_is_quieter() -> None:
    figure = awkward.larger_flow(found(0.1, d.AIR_FLOW), found(9.0, d.AREA), found(1.0, d.VELOCITY))
    tokens = [each for step in working_of(figure, METRIC).steps for each in step.expression]
    tokens += working_of(figure, METRIC).line
    lost = [each.text for each in tokens if each.lost]
    assert lost and any(not each.lost for each in tokens if each.kind == "number")
    quiet = re.findall(r'<span class="lost">(.*?)</span> ', as_html(working_of(figure, METRIC)) + " ")
    assert quiet and all(each in Reader(" ".join(quiet)).text for each in lost if each.isdigit())


def test_a_choice_shows_what_lost_and_its_size() -> None:
    big, small = found(3000.0, d.HEAT_RATE), found(9.0, d.HEAT_RATE)
    chosen = choose({"a": big, "b": small}, largest, because="a > b")
    names = OneRoom({small: "rooms/b/loss", big: "rooms/a/loss"})
    sheet = working_of(placed(chosen, names), US)
    assert [(each.words, each.figure) for each in sheet.beside] == [("b", small)]
    fragment = as_html(sheet, names)
    assert '<li class="lost">beside it b: <button' in fragment
    assert Reader(fragment).paths == ["rooms/b/loss", "rooms/a/loss"]


def test_a_balance_says_what_is_left_over() -> None:
    sheet = next(sheet for _, sheet, _ in SAMPLES if sheet.kind == "found")
    assert f"leaves {sheet.left_over}." in as_html(sheet)
    assert re.match(r"0(\.0+)? ", sheet.left_over)


def test_every_standing_has_its_own_mark() -> None:
    marks = {each: standing_mark(each) for each in Standing}
    assert len(set(marks.values())) == len(Standing)


def test_extras_stand_where_they_belong() -> None:
    given = typed(900, 0, US, d.HEAT_RATE, "given")
    sheet = working_of(awkward.heat_left_over(given, found(200.0, d.HEAT_RATE)), US)
    extras = Extras(
        callout=(2, 8), plain="A <plain> line", band="<svg></svg>", likely="Likely 1 to 2.",
        matters=(Swinging("Air", "0.5 ACH", "± 3", 1.0, "air/changes", "given guess"),),
        smaller="and 4 smaller",
        uses=(Opens("5 W", "House & home", "house/loss"),), more_uses=(Opens("6 W", "More", "more/loss"),),
        trail=(Opens("open it again", "Before", "before/loss"),),
    )  # fmt: skip
    reader = Reader(as_html(sheet, extras=extras))
    order = [
        "A <plain> line",
        "Likely 1 to 2.",
        "Air",
        "and 4 smaller",
        "Goes into",
        "House & home",
        "Back to",
    ]
    assert in_order(order, reader.text)
    assert reader.paths[-4:] == ["air/changes", "house/loss", "more/loss", "before/loss"]
    assert 'aria-label="Sheet 2, line 8"' in as_html(sheet, extras=extras)
    assert "Goes into" not in as_html(sheet)

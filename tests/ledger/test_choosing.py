"""What is chosen, looked up or counted keeps what was not taken in sight."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.as_text import working
from heatledger.ledger.choosing import choose, count, first_that, largest, look_up, smallest
from heatledger.ledger.figures import Figure, LedgerError, leaves
from heatledger.ledger.presets import US
from tests.ledger import awkward
from tests.ledger.drawing import typed

SMALL, LARGE = (typed(each, 0, US, d.HEAT_RATE, f"load {each}") for each in (12000, 34000))


def test_the_largest_and_the_smallest() -> None:
    loads = {"front": SMALL, "back": LARGE}
    assert float(choose(loads, largest, because="the worst decides")) == float(LARGE)
    assert float(choose(loads, smallest, because="the least decides")) == float(SMALL)


def test_a_choice_shows_rule_reason_and_losers() -> None:
    chosen = choose({"front": SMALL, "back": LARGE}, largest, because="the worst decides")
    text = working(chosen, US)
    for words in (
        "34,000 Btu/h",
        "the largest: back",
        "because the worst decides",
        "beside it front: 12,000 Btu/h",
    ):
        assert words in text
    assert leaves(chosen) == [LARGE]


@dataclass(frozen=True)
class Tube:
    """A tube with two quantities."""

    name: str
    flow: Figure
    head: Figure


def test_every_figure_of_a_chosen_thing_carries_the_choice() -> None:
    tubes = {
        size: Tube(size, typed(flow, 1, US, d.VOLUME_FLOW), typed(head, 1, US, d.HEAD))
        for size, flow, head in [("1/2 in", 1.5, 9.0), ("3/4 in", 4.0, 3.0), ("1 in", 8.0, 1.0)]
    }
    taken = choose(
        tubes, first_that(lambda tube: float(tube.flow) > 2e-4, "large enough"), because="it carries the flow"
    )
    assert taken.name == "3/4 in"
    for figure in (taken.flow, taken.head):
        assert [name for name, _ in figure.origin.losers] == ["1/2 in", "1 in"]
        assert "large enough: 3/4 in" in working(figure, US)


def test_no_candidate_that_fits_is_an_error() -> None:
    with pytest.raises(LedgerError, match="no candidate is large enough: front, back"):
        choose({"front": SMALL, "back": LARGE}, first_that(lambda _: False, "large enough"), because="")
    with pytest.raises(LedgerError, match="nothing to choose from"):
        choose({}, largest, because="")


ROWS = {f"R-{n}": {"u": typed(1 / n, 4, US, d.TRANSMITTANCE, f"R-{n}")} for n in (11, 13, 19, 21)}


def test_a_row_shows_its_neighbors() -> None:
    figure = look_up(ROWS, "R-19", because="that is what is in the wall")["u"]
    text = working(figure, US)
    assert "looked up: R-19" in text
    assert "beside it R-13: 0.0769 Btu/(h·ft²·°F)" in text
    assert "beside it R-21" in text
    assert "R-11" not in text


def test_a_row_that_is_not_there_names_the_nearest() -> None:
    with pytest.raises(LedgerError, match="no row 'R-18' in the table; the nearest are R-21, R-19"):
        look_up(ROWS, "R-18", because="")
    with pytest.raises(LedgerError, match="there are R-11, R-13"):
        look_up(ROWS, "stone", because="")


def test_a_count_lists_what_it_counted() -> None:
    text = working(count(["bath", "kitchen", "hall"], "heated rooms"), US)
    for words in ("How many: heated rooms", "3", "bath", "kitchen", "hall"):
        assert words in text


def test_a_working_calls_what_was_chosen_by_its_name() -> None:
    chosen = choose({"front": SMALL, "back": LARGE}, largest, because="the worst decides")
    text = working(awkward.heat_left_over(chosen, SMALL), US)
    assert "given: the largest, back" in text

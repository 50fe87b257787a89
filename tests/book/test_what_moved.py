"""Claim: a revision read by another version tells which figures moved, and the ones at which that begins."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from importlib import resources

import pytest

from heatledger import METRIC, US, __version__, design, load_job
from heatledger.book.book import Book
from heatledger.book.figures import kept_of
from heatledger.book.moved import moved
from heatledger.book.records import Kept
from heatledger.ledger.figures import ancestors
from heatledger.steps.design import Design
from tests.book.helping import begun


@cache
def house() -> Design:
    return design(
        load_job(resources.files("heatledger").joinpath("examples", "ferrow-house.yaml").read_text("utf-8"))
    )


def with_loss_of(path: str, factor: float) -> Kept:
    """What an earlier version would have kept, had it found ``factor`` times the figure at ``path``."""
    kept = kept_of(house(), {})
    figures, moving = dict(kept.figures), {id(house().figures[path])}
    for figure in ancestors(*house().results.values()):
        if any(
            id(each) in moving
            for group in figure.inputs
            for each in (group if type(group) is tuple else (group,))
        ):
            moving.add(id(figure))
    for at, figure in house().figures.items():
        if id(figure) in moving:
            si, kind = figures[at]
            figures[at] = (si * factor + 1e-3, kind)
    return replace(kept, version="0.0.9", figures=figures)


@pytest.fixture(params=["room", "leaf"])
def begins_at(request: pytest.FixtureRequest) -> str:
    """A figure that others build on: one that is worked out, and one that was typed."""
    figures = house().figures
    if request.param == "leaf":
        return "site/outdoor"
    return next(
        path
        for path in figures
        if path.startswith("rooms/") and path.endswith("/loss") and path.count("/") == 2
    )


def test_nothing_moves_in_the_version_that_made_it() -> None:
    found = moved(kept_of(house(), {}), house(), US)
    assert (found.lines, found.gone, found.new) == ((), (), ())
    assert found.version_then == found.version_now == __version__


def test_what_moved_is_traced_to_where_it_begins(begins_at: str) -> None:
    found = moved(with_loss_of(begins_at, 1.1), house(), US)
    lines = {each.path: each for each in found.lines}
    assert begins_at in lines and "house/loss" in lines
    assert found.version_then == "0.0.9"
    own = house().names.path(house().figures[begins_at])
    assert lines[begins_at].begins == (own,)
    assert "begins here" in lines[begins_at].why
    for each in found.lines:
        assert each.begins == (own,), each.path
        assert each.before != each.after
    title = house().names.title(house()[begins_at])
    assert lines["house/loss"].why == f"Follows from {title}."
    shares = [each.share for each in found.lines]
    assert shares == sorted(shares, reverse=True)


def test_figures_are_told_in_the_units_of_the_reader(begins_at: str) -> None:
    kept = with_loss_of(begins_at, 1.1)
    line = {
        units: {each.path: each for each in moved(kept, house(), units).lines}["house/loss"]
        for units in (US, METRIC)
    }
    assert line[US].after.endswith("Btu/h") and line[US].before.endswith("Btu/h")
    assert line[METRIC].after.endswith("W") and line[METRIC].before.endswith("W")


def test_noise_in_the_last_digits_is_no_movement() -> None:
    kept = kept_of(house(), {})
    noisy = {path: (si * (1 + 1e-10), kind) for path, (si, kind) in kept.figures.items()}
    assert moved(replace(kept, figures=noisy), house(), US).lines == ()


def test_figures_that_came_or_went_are_named() -> None:
    kept = kept_of(house(), {})
    figures = {path: each for path, each in kept.figures.items() if path != "house/loss"}
    found = moved(replace(kept, figures=figures | {"house/old-way": (1.0, "heat rate")}), house(), US)
    assert (found.new, found.gone, found.lines) == (("house/loss",), ("house/old-way",), ())


def test_a_figure_that_was_missing_or_of_another_kind_has_moved() -> None:
    kept = kept_of(house(), {})
    was_missing = kept.figures | {"house/loss": (float("nan"), "heat rate")}
    (line,) = (
        each
        for each in moved(replace(kept, figures=was_missing), house(), US).lines
        if each.path == "house/loss"
    )
    assert (line.before, line.share) == ("not known yet", float("inf"))
    other_kind = kept.figures | {"house/loss": (1.0, "a kind of long ago")}
    (line,) = (
        each
        for each in moved(replace(kept, figures=other_kind), house(), US).lines
        if each.path == "house/loss"
    )
    assert line.before == "none"


def test_figures_survive_the_book(book: Book) -> None:
    made = begun(book)
    book.keep(made.job_id, 1, kept_of(house(), {"rooms": 1}))
    found = book.kept(made.job_id, 1)
    assert found is not None
    assert len(found.figures) == len(house().figures)
    assert moved(found, house(), US).lines == ()

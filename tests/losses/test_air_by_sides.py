"""Air by the number of exposed sides is looked up in a table, and all of it stays in sight."""

from __future__ import annotations

import pytest

from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.as_text import working
from heatledger.ledger.choosing import Choice
from heatledger.ledger.figures import Figure, ancestors, leaves
from heatledger.ledger.presets import US
from heatledger.ledger.replay import carry_back, replay
from heatledger.ledger.sources import MEMORY
from heatledger.steps.design import design
from heatledger.studies.uncertainty import band
from tests.job.samples import example


def job_by_sides(sides: str = "2", more: str = "") -> Job:
    job = read_job(example("ferrow-house") + more)
    return job.with_changes([{"set": "rooms/living/air/exposed_sides", "to": sides}])


def rate_of(job: Job) -> Figure:
    air = job.rooms["living"].air
    assert air is not None
    return air.changes


@pytest.mark.parametrize(("sides", "changes"), [("0", 0.5), ("1", 1.0), ("2", 1.5), ("3", 2.0), ("4", 2.0)])
def test_it_is_looked_up_when_the_job_is_read(sides: str, changes: float) -> None:
    rate = rate_of(job_by_sides(sides))
    assert float(rate) * 3600 == pytest.approx(changes)
    assert isinstance(rate.origin, Choice)
    row, typed = rate.inputs
    assert row.origin.citation.standing is MEMORY
    assert (typed.origin.path, typed.origin.typed) == ("rooms/living/air/exposed_sides", sides)


def test_the_number_typed_is_among_what_the_house_rests_on() -> None:
    done = design(job_by_sides())
    assert "rooms/living/air/exposed_sides" in {each.origin.path for each in leaves(done.losses.house.loss)}
    assert any(isinstance(each.origin, Choice) for each in ancestors(done.losses.house.loss))


def test_its_working_shows_the_row_its_neighbors_the_number_and_the_standing() -> None:
    done = design(job_by_sides())
    shown = working(done["rooms/living/air/changes"], US, deep=True)
    for each in ("two-sides", "one-side", "three-sides", '"2"', "from memory", "ASHRAE-GUIDE", "± 30 %"):
        assert each in shown, each
    assert done.names.path(done["rooms/living/air/changes"].original) == "rooms/living/air/changes"


def test_a_rate_from_memory_is_not_taken_for_exact() -> None:
    done = design(job_by_sides())
    air = float(done["rooms/living/air/loss"])
    swings = {each.words: each for each in band(done, "rooms/living/loss").swings}
    by_sides = swings["Air changes by exposed sides"]
    assert by_sides.known == "assumed"
    assert by_sides.swing == pytest.approx(0.30 * air)
    own = design(job_by_sides(more="ranges: {air-changes: {assumed: 50 %}}\n"))
    swings = {each.words: each for each in band(own, "rooms/living/loss").swings}
    assert swings["Air changes by exposed sides"].swing == pytest.approx(0.50 * air)


def test_it_moves_with_the_row_and_not_with_the_number() -> None:
    done = design(job_by_sides())
    loss = done.losses.rooms["living"].air.loss
    row, typed = rate_of(done.job).inputs
    slopes = carry_back(loss)
    assert slopes[id(row)] == pytest.approx(float(loss) / float(row))
    assert slopes.get(id(typed), 0.0) == 0.0
    assert replay([loss], {row: 2 * float(row)})[0] == pytest.approx(2 * float(loss))


def test_one_entry_is_one_figure_in_every_reading() -> None:
    first, again, other = job_by_sides(), job_by_sides(), job_by_sides("3")
    assert rate_of(first) is rate_of(again)
    assert rate_of(first) is not rate_of(other)


def test_a_design_reads_no_table(monkeypatch: pytest.MonkeyPatch) -> None:
    from heatledger.catalog import loader

    job = job_by_sides()

    def refuse(*_: object) -> None:
        raise AssertionError("a design opened a table")

    monkeypatch.setattr(loader, "load_table", refuse)
    assert float(design(job)["rooms/living/air/loss"]) > 0


def test_the_house_may_be_taken_by_sides_too() -> None:
    job = read_job(example("ferrow-house")).with_changes([{"set": "air/exposed_sides", "to": "1"}])
    done = design(job)
    assert job.air is not None
    assert all(each.air.changes is job.air.changes for each in done.losses.rooms.values())
    assert done.names.path(job.air.changes) == "air/changes"


def test_air_is_as_warm_as_its_room() -> None:
    """A cooler room holds heavier air: at 50 °F 3.9 % more than at 70 °F, by the ideal gas law."""
    job = read_job(example("ferrow-house"))
    cool = design(job.with_changes([{"set": "rooms/study/indoor", "to": "50 °F"}]))
    assert float(cool["rooms/study/air/density"]) / float(cool["site/air_density"]) == pytest.approx(
        (70 + 459.67) / (50 + 459.67)
    )
    assert cool["rooms/kitchen/air/heat"].original is cool["site/air_heat"].original

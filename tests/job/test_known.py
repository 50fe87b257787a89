"""How well a thing is known comes from the nearest place that says so, and makes its half-range."""

from __future__ import annotations

import pytest

from heatledger.job.known import RANGES, STANDING
from heatledger.job.load import read_job
from heatledger.job.model import KNOWN, Job
from heatledger.job.plans import DIMENSION_OF_RANGE
from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.sources import JUDGMENT
from tests.job.samples import SMALL, small

LENGTH = "        length: 12'\n"


def leaf_of(figure: Figure | None) -> Leaf:
    assert figure is not None
    origin = figure.origin
    assert isinstance(origin, Leaf)
    return origin


def wall(job: Job) -> Leaf:
    return leaf_of(job.rooms["kitchen"].surfaces["north-wall"].length)


def test_what_nothing_is_said_of_was_told() -> None:
    assert wall(small()).known == "told"


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("units: US", "units: US\nknown: measured"),
        ("rooms:\n", "rooms:\n  known: measured\n"),
        ("    size: 12'", "    known: measured\n    size: 12'"),
        ("        construction: wall\n", "        known: measured\n        construction: wall\n"),
        ("        length: 12'\n", "        length: {is: 12', known: measured}\n"),
    ],
)
def test_it_is_inherited_inwards(old: str, new: str) -> None:
    assert wall(small((old, new))).known == "measured"


def test_the_nearest_word_counts() -> None:
    job = small(
        ("units: US", "units: US\nknown: measured"), (LENGTH, "        length: {is: 12', known: assumed}\n")
    )
    assert wall(job).known == "assumed"
    assert leaf_of(job.rooms["kitchen"].length).known == "measured"
    kitchen = small(("    size: 12'", "    known: from plans\n    size: 12'"))
    assert leaf_of(kitchen.rooms["hall"].floor_area).known == "told"


def test_openings_inherit_from_their_wall() -> None:
    job = small(("        construction: wall\n", "        known: assumed\n        construction: wall\n"))
    opening = job.rooms["kitchen"].surfaces["north-wall"].openings["w1"]
    assert leaf_of(opening.width).known == "assumed"


def test_a_construction_does_not_inherit_from_where_it_is_used() -> None:
    job = small(("    size: 12'", "    known: assumed\n    size: 12'"))
    assert leaf_of(job.rooms["kitchen"].surfaces["north-wall"].construction.u_value).known == "told"


@pytest.mark.parametrize(
    ("known", "share"), [("measured", 0.01), ("from plans", 0.02), ("told", 0.05), ("assumed", 0.1)]
)
def test_half_range_of_a_length(known: str, share: float) -> None:
    origin = wall(small((LENGTH, f"        length: {{is: 12', known: {known}}}\n")))
    assert origin.half_range == pytest.approx(share * 12 * 0.3048)
    assert "judgment" in origin.half_range_words


def test_within_beats_the_table() -> None:
    by_share = wall(small((LENGTH, "        length: {is: 12', known: told, within: 3 %}\n")))
    assert by_share.half_range == pytest.approx(0.03 * 12 * 0.3048)
    by_width = wall(small((LENGTH, "        length: {is: 12', known: told, within: 6 in}\n")))
    assert by_width.half_range == pytest.approx(0.1524)
    assert by_width.half_range_words == "6 in, as the job says"


def test_a_reason_stays_with_the_value() -> None:
    assert "sash label" in wall(small((LENGTH, "        length: {is: 12', because: sash label}\n"))).beside


def test_temperatures_that_are_chosen_have_no_half_range() -> None:
    assert leaf_of(small().site.outdoor).half_range == 0
    given = small(("outdoor: 0 °F", "outdoor: {is: 0 °F, within: 2 °F}"))
    assert leaf_of(given.site.outdoor).half_range == pytest.approx(2 / 1.8)


def test_the_ranges_of_a_job_replace_the_table() -> None:
    job = small(add="ranges:\n  length: {told: 7 %}\n  temperature: {assumed: 4 °F}\n")
    assert wall(job).half_range == pytest.approx(0.07 * 12 * 0.3048)
    assert "the job's own" in wall(job).half_range_words
    assert leaf_of(job.rooms["hall"].floor_area).half_range_words.startswith("8 %")


def test_the_table_is_whole_and_marked_as_judgment() -> None:
    assert STANDING.standing is JUDGMENT
    assert set(RANGES) == set(DIMENSION_OF_RANGE)
    for name, row in RANGES.items():
        widths = [row[known].of(1.0) for known in KNOWN]
        assert widths == sorted(widths), name
        assert widths[0] > 0


def test_a_count_is_exact() -> None:
    job = read_job(SMALL.replace("size: 2' × 4'}", "size: 2' × 4', count: 2}"))
    assert leaf_of(job.rooms["kitchen"].surfaces["north-wall"].openings["w1"].count).half_range == 0

"""How long a designer waits: ``design()`` of the demo house, with and without an earlier one, and the band.

The budgets are absolute (36 ms for twenty rooms with all steps, 15 ms after one changed window, 2 ms for
the band, on two shared cores), so each is set against one millisecond.
"""

from __future__ import annotations

from collections.abc import Iterator
from importlib import resources

from timing import Row, best
from twenty_rooms import job_text

from heatledger.job.load import read_job
from heatledger.steps.design import design
from heatledger.studies.uncertainty import band

MILLISECOND = 1e-3


def rows() -> Iterator[Row]:
    """The demo house designed from nothing, after one edit, and its first-order band."""
    text = resources.files("heatledger").joinpath("examples", "ferrow-house.yaml").read_text("utf-8")
    job = read_job(text, "ferrow-house.yaml")
    edited = job.with_changes([{"set": "rooms/kitchen/surfaces/east-wall/length", "to": "6 ft"}])
    house = design(job)
    against = "one millisecond"
    yield Row("design() of the demo house, all steps", best(lambda: design(job)), against, MILLISECOND)
    yield Row(
        "design() after one edit, since", best(lambda: design(edited, since=house)), against, MILLISECOND
    )
    yield Row("design() after one edit, anew", best(lambda: design(edited)), against, MILLISECOND)
    large = read_job(job_text(), "twenty-rooms.yaml")
    window = "rooms/room-3/surfaces/long/openings/w/size"
    changed = large.with_changes([{"set": window, "to": "3' × 6'"}])
    whole = design(large)
    yield Row("design() of twenty rooms, all steps", best(lambda: design(large)), against, MILLISECOND, 36.0)
    yield Row(
        "the same after one changed window, since",
        best(lambda: design(changed, since=whole)),
        against,
        MILLISECOND,
        15.0,
    )
    yield Row("band of the house loss", best(lambda: band(house, "house/loss")), against, MILLISECOND, 2.0)
    yield Row("findings", best(lambda: design(job).findings, 5), against, MILLISECOND)
    yield Row("reading the job file", best(lambda: read_job(text, "x"), 5), against, MILLISECOND)

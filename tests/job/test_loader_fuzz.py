"""Whatever the file holds, a job or errors come out, never anything else."""

from __future__ import annotations

import random
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from heatledger.job.errors import JobErrors
from heatledger.job.load import load_job, read_job
from heatledger.job.missing import missing_entries
from heatledger.job.model import Job
from tests.job.samples import EXAMPLES, SMALL, SYSTEM, example

TEXTS = [SMALL, *(example(each) for each in EXAMPLES), SMALL + SYSTEM]
SCRAPS = [
    "", " ", "\n", "\t", ":", ": ", "{", "}", "[", "]", ",", "- ", "#",
    "&a ", "*a", "!!int ", "'", '"', "|", ">",
    "---\n", "nan", "inf", "-1", "0", "1e999", "1,5", "R-19", "U-0.3", "70 °F", "12' 6\"", "ft", "m2", "%",
    "known: told", "rooms/kitchen", "unheated/attic", "outdoors", "ground", "wall", "{is: 1}",
    "{within: 5 %}",
    "\x00", "\u2028", "é", "∞", "9" * 400, "size: 1 × 1", "<<: ", "? ", "units: metric\n",
]  # fmt: skip


def refused_or(make: Callable[[], Job]) -> Job | None:
    """The job, or None when it was refused in words; whatever else is raised fails the test."""
    try:
        return make()
    except JobErrors as refused:
        errors = refused
    assert errors.errors
    assert str(errors).count("\n") >= len(errors.errors)
    return None


def check(text: str) -> None:
    job = refused_or(lambda: read_job(text))
    if job is None:
        return
    assert all(each.path for each in missing_entries(job))
    for name in job.what_ifs:
        refused_or(lambda name=name: job.with_what_ifs(name))


@given(st.text(max_size=300))
@settings(max_examples=150, deadline=None)
def test_any_text(text: str) -> None:
    check(text)


@given(st.binary(max_size=300))
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_bytes(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "job.yaml"
    path.write_bytes(data)
    with pytest.raises(JobErrors):
        load_job(path)


@given(st.data())
@settings(max_examples=150, deadline=None)
def test_a_job_with_scraps_thrown_in(data: st.DataObject) -> None:
    text = data.draw(st.sampled_from(TEXTS[:1] + TEXTS[2:]))
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(text)))
        gone = data.draw(st.integers(0, 12))
        text = text[:at] + data.draw(st.sampled_from(SCRAPS)) + text[at + gone :]
    check(text)


@given(st.data())
@settings(max_examples=150, deadline=None)
def test_a_job_with_values_exchanged(data: st.DataObject) -> None:
    """The form stays sound, so that the faults reach the innermost checks."""
    rows = data.draw(st.sampled_from(TEXTS)).split("\n")
    with_value = [i for i, row in enumerate(rows) if ": " in row and not row.lstrip().startswith("#")]
    for _ in range(data.draw(st.integers(1, 5))):
        i = data.draw(st.sampled_from(with_value))
        key = rows[i].split(": ", 1)[0]
        value = data.draw(st.sampled_from([*SCRAPS, *(rows[j].split(": ", 1)[1] for j in with_value[:40])]))
        rows[i] = f"{key}: {value}"
    check("\n".join(rows))


@pytest.mark.parametrize("seed", range(20))
def test_a_job_with_lines_gone_or_moved(seed: int) -> None:
    pick = random.Random(seed)
    rows = pick.choice(TEXTS).split("\n")
    for _ in range(pick.randint(1, 6)):
        row = rows.pop(pick.randrange(len(rows)))
        if pick.random() < 0.5:
            rows.insert(pick.randrange(len(rows)), row)
    check("\n".join(rows))

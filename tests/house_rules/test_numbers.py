"""No result of a demo job moves without a word to the reader."""

from __future__ import annotations

import json

from tests.house_rules.keep_numbers import KEPT, kept, moved, names_them, now, numbers_entries
from tests.house_rules.tree import ROOT, listing, text

ENTRIES = numbers_entries(text(ROOT / "CHANGELOG.md"))


def test_the_results_of_the_demo_jobs_are_those_that_were_kept() -> None:
    before, after = kept(), now()
    faults = [
        f"{job}: {path} {before.get(job, {}).get(path)} W became {after.get(job, {}).get(path)} W"
        for job in moved(before, after)
        for path in {**before.get(job, {}), **after.get(job, {})}
        if before.get(job, {}).get(path) != after.get(job, {}).get(path)
    ]
    assert not faults, listing(
        faults,
        "If that is right: a **numbers** entry in CHANGELOG.md that names the job, then\n"
        'python tests/house_rules/keep_numbers.py "some words of that entry"',
    )


def test_the_changelog_tells_of_the_last_move() -> None:
    last = json.loads(text(KEPT))
    assert names_them(last["note"], last["jobs"], ENTRIES)


def test_a_move_is_noticed_and_a_last_digit_is_not() -> None:
    before = {"A": {"house/loss": 100.0}, "B": {"house/loss": 50.0}}
    assert moved(before, {"A": {"house/loss": 100.04}, "B": {"house/loss": 50.0}}) == []
    assert moved(before, {"A": {"house/loss": 100.2}, "B": {"house/loss": 50.0}}) == ["A"]
    assert moved(before, {"A": {"house/loss": 100.0}}) == ["B"]


def test_only_an_entry_that_names_the_job_counts() -> None:
    entries = numbers_entries("# 1\n- **numbers** Basements\n  colder. Birch 25 to 24.\n- **page** Birch.\n")
    assert entries == ["Basements colder. Birch 25 to 24."]
    assert names_them("Basements colder", ["Birch"], entries)
    assert not names_them("Basements colder", ["Maple"], entries)
    assert not names_them("", ["Birch"], entries)

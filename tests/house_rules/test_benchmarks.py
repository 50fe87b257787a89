"""Benchmarks print ratios; none of them is a test, and no test asserts a time."""

from __future__ import annotations

import re
import sys

from tests.house_rules.tree import ROOT, ending, functions, listing, named, text

sys.path.insert(0, str(ROOT / "benchmarks"))
import run
import timing


def test_every_benchmark_yields_rows() -> None:
    faults = [
        named(path)
        for path in ending(".py", under="benchmarks/bench_")
        if "rows" not in {each.name for each in functions(path)}
    ]
    assert not faults, listing(faults, "A benchmark has a function rows() that yields timing.Row.")


def test_the_table_holds_ratios_against_their_budget() -> None:
    rows = [timing.Row("a", 3e-6, "b", 2e-6, 1.4), timing.Row("c", 2e-3, "d", 4e-3)]
    lines = run.table([run.cells(each) for each in rows]).splitlines()
    assert len(lines) == 4
    assert lines[2].split() == ["a", "3", "µs", "b", "2", "µs", "1.50", "1.4", "over"]
    assert lines[3].split() == ["c", "2", "ms", "d", "4", "ms", "0.50"]


def test_side_by_side_times_both() -> None:
    called: list[str] = []
    ours, theirs = timing.side_by_side(lambda: called.append("o"), lambda: called.append("t"), rounds=2)
    assert ours > 0
    assert theirs > 0
    assert called.count("o") == called.count("t") == 3


def test_no_test_asserts_a_time() -> None:
    clock = re.compile(r"\b(perf_counter|process_time|monotonic|timeit)\b")
    faults = [
        named(path)
        for path in ending(".py", under="tests/")
        if path.name != "test_benchmarks.py" and clock.search(text(path))
    ]
    assert not faults, listing(faults, "Time it in benchmarks/ and print a ratio.")

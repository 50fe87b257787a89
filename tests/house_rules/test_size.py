"""A file fits in one head, a function on one screen."""

from __future__ import annotations

from tests.house_rules.tree import ending, functions, listing, named, text

LONGEST_FILE = 300
LONGEST_FUNCTION = 60


def test_no_source_file_is_over_300_lines() -> None:
    long = [
        f"{named(each)}: {lines} lines"
        for each in ending(".py", ".typ", ".js", ".ts", ".css", ".html")
        if (lines := len(text(each).splitlines())) > LONGEST_FILE
    ]
    assert not long, listing(long, f"Split by thing, never into a second heap; at most {LONGEST_FILE} lines.")


def test_no_function_is_over_60_lines() -> None:
    long = [
        f"{named(path)}:{each.lineno} {each.name}: {lines} lines"
        for path in ending(".py")
        for each in functions(path)
        if each.end_lineno and (lines := each.end_lineno - each.lineno + 1) > LONGEST_FUNCTION
    ]
    assert not long, listing(long, f"Name the parts; at most {LONGEST_FUNCTION} lines, docstring and all.")

"""What every test shares: no clock decides whether a property holds, and what is left out is named."""

from __future__ import annotations

import os

import pytest
from hypothesis import HealthCheck, settings

from tests.needed import LEFT_OUT, NEEDS, tool

# Shared machines stall now and then, so no example is failed for being slow. A failing example is
# printed with the lines that bring it back.
settings.register_profile(
    "usual", deadline=None, print_blob=True, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("thorough", settings.get_profile("usual"), max_examples=2000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "usual"))


def pytest_configure(config: pytest.Config) -> None:
    """The marker by which a test says what it needs from the machine."""
    config.addinivalue_line(
        "markers", f"needs(name): left out where the machine lacks it; one of {', '.join(NEEDS)}"
    )


def pytest_runtest_setup(item: pytest.Item) -> None:
    """Leave a test out, or fail it, before anything is set up for it."""
    for mark in item.iter_markers("needs"):
        for name in mark.args:
            tool(name)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Name each test that was left out, under what would have been needed."""
    left_out: dict[str, list[str]] = {}
    for report in terminalreporter.stats.get("skipped", []):
        reason = report.longrepr[2] if isinstance(report.longrepr, tuple) else ""
        words = reason.removeprefix("Skipped: ")
        if words.startswith(LEFT_OUT):
            left_out.setdefault(words.removeprefix(LEFT_OUT), []).append(report.nodeid)
    for reason, tests in sorted(left_out.items()):
        terminalreporter.section(f"{len(tests)} tests left out")
        terminalreporter.line(reason)
        for each in tests:
            terminalreporter.line(f"  {each}")

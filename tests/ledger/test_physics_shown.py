"""Every formula of the trade that a design uses can be redone from the paper alone."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable
from random import Random
from typing import Any

import pytest

import heatledger.physics
from heatledger.ledger.as_html import as_html
from heatledger.ledger.as_text import working
from heatledger.ledger.compose import working_of
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset
from tests.ledger import blind
from tests.ledger.drawing import arguments_for

TIMES = 10


def formulas() -> list[Callable[..., Any]]:
    """Every formula of the physics layer."""
    modules = [
        importlib.import_module(f"heatledger.physics.{each.name}")
        for each in pkgutil.iter_modules(heatledger.physics.__path__)
    ]
    return [
        each
        for module in modules
        for each in vars(module).values()
        if hasattr(each, "formula") and each.__module__ == module.__name__
    ]


@pytest.mark.parametrize("preset", [US, METRIC, CANADIAN], ids=lambda each: each.name)
@pytest.mark.parametrize("function", formulas(), ids=lambda each: each.__name__)
def test_redone_from_the_paper_alone(function: Callable[..., Any], preset: Preset) -> None:
    random = Random(f"{function.__name__} {preset.name}")
    shown = 0
    for _ in range(TIMES):
        figure = function(*arguments_for(function.formula, random, preset))  # type: ignore[attr-defined]
        if figure.is_missing:  # random inputs may have no answer: no conductance at all, for one
            assert "No value" in working(figure, preset)
            continue
        shown += 1
        text = working(figure, preset)
        blind.redo(text)
        assert max(map(len, text.splitlines())) <= 80, text
        assert "<table" in as_html(working_of(figure, preset))
    assert shown

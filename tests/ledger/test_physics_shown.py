"""Every formula of the trade that a design uses can be redone from the paper alone."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable
from math import isfinite
from random import Random
from typing import Any

import pytest

import heatledger.physics
from heatledger.ledger.as_html import as_html
from heatledger.ledger.as_text import working
from heatledger.ledger.compose import working_of
from heatledger.ledger.figures import flat
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset
from heatledger.ledger.replay import carry_back, replay
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


@pytest.mark.parametrize("function", formulas(), ids=lambda each: each.__name__)
def test_its_slopes_are_those_of_the_formula_itself(function: Callable[..., Any]) -> None:
    random = Random(f"{function.__name__} slopes")
    held = 0
    for _ in range(TIMES):
        given = arguments_for(function.formula, random, METRIC)  # type: ignore[attr-defined]
        figure = function(*given)
        if figure.is_missing:
            continue
        slopes = carry_back(figure)
        for each in {id(one): one for one in flat(figure.inputs)}.values():
            step = 1e-5 * (abs(float(each)) + 1e-9)
            above, below, here = (replay([figure], {each: float(each) + by})[0] for by in (step, -step, 0.0))
            one, other = (above - here) / step, (here - below) / step
            if not (isfinite(one) and isfinite(other)) or abs(one - other) > 1e-3 * max(abs(one), abs(other)):
                continue  # a corner of the formula, or no slope to be seen
            mean = (one + other) / 2
            assert slopes.get(id(each), 0.0) == pytest.approx(mean, rel=2e-4, abs=1e-9 * abs(here) / step)
            held += 1
    assert held

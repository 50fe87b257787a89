"""Random figures for the formulas under test: typed, carried in, or read in the other system's unit."""

from __future__ import annotations

import math
from random import Random
from typing import Any

from awkward import NARROWER, RANGES

from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.formulas import Formula
from heatledger.ledger.presets import METRIC, US, Preset


def typed(number: float, places: int, preset: Preset, dimension: Dimension, words: str = "entry") -> Figure:
    """A leaf typed in the preset's unit."""
    unit = preset.shown(dimension).unit
    value = float(f"{number:.{places}f}")
    text = f"{value:.{places}f} {unit.text}".removesuffix(" 1")
    origin = Leaf(LeafKind.JOB, f"site/{words}", words, text, unit.text, value, places)
    return leaf(unit.to_si(value, dimension.absolute), dimension, origin)


def found(value: float, dimension: Dimension) -> Figure:
    """A figure that was found elsewhere, with all its places."""
    entry = leaf(value, dimension, Leaf(LeafKind.JOB, "site/entry", "entry"))
    return choose({"this one": entry}, largest, because="a figure from elsewhere is wanted")


def drawn_value(random: Random, dimension: Dimension, ends: tuple[float, float] | None = None) -> float:
    """An SI value within the range of its dimension; over several sizes where the range is wide."""
    low, high = ends or RANGES[dimension]
    if dimension is d.COUNT:
        return float(random.randint(int(low), int(high)))
    if low > 0 and high / low > 30:
        return math.exp(random.uniform(math.log(low), math.log(high)))
    return random.uniform(low, high)


def drawn(random: Random, value: float, dimension: Dimension, preset: Preset, words: str = "entry") -> Figure:
    """A figure near ``value``: typed in the reader's unit, typed in another, or found."""
    if dimension is d.COUNT:
        return typed(value, 0, preset, dimension, words)
    kind = random.choice(["typed", "other", "found"])
    if kind == "found":
        return found(value, dimension)
    if kind == "other":
        preset = METRIC if preset is not METRIC else US
    unit = preset.shown(dimension).unit
    number = unit.from_si(value, dimension.absolute)
    digits = random.choice([2, 3, 3, 4])
    places = max(0, digits - 1 - math.floor(math.log10(abs(number) or 1.0)))
    return typed(number, places, preset, dimension, words)


def arguments_for(made: Formula, random: Random, preset: Preset) -> list[Any]:
    """Random figures for every parameter of a formula."""
    narrower = NARROWER.get(made.name, {})
    result: list[Any] = []
    for each in made.parameters:
        ends = narrower.get(each.name)
        if each.many:
            n = random.choice([0, 1, 2, 5, 40])
            result.append([drawn(random, drawn_value(random, each.dimension, ends), each.dimension, preset)
                           for _ in range(n)])  # fmt: skip
        else:
            result.append(drawn(random, drawn_value(random, each.dimension, ends), each.dimension, preset, each.words))
    rows = [i for i, each in enumerate(made.parameters) if each.name in ("size", "outdoor")]
    if made.name.startswith("between") and rows:  # what is read between must lie between
        x, x0, x1 = result[:3]
        low, high = sorted([float(x0), float(x1)])
        result[0] = found(random.uniform(low, high), x.dimension)
    return result

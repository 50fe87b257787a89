"""Random figures for the formulas under test: typed, carried in, or read in the other system's unit."""

from __future__ import annotations

import math
from collections.abc import Callable
from random import Random
from typing import Any

from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.formulas import Formula
from heatledger.ledger.presets import METRIC, US, Preset
from tests.ledger import awkward, awkward_more

RANGES: dict[d.Dimension, tuple[float, float]] = {
    d.RATIO: (0.02, 3.0), d.COUNT: (1, 12), d.LENGTH: (0.02, 60.0), d.HEAD: (0.1, 12.0),
    d.AREA: (0.02, 400.0), d.VOLUME: (0.002, 900.0), d.TIME: (600.0, 3e6), d.VELOCITY: (0.02, 15.0),
    d.DENSITY: (0.9, 1000.0), d.PRESSURE: (2e3, 4e5), d.ENERGY: (1e5, 1e10), d.HEAT_RATE: (0.2, 4e4),
    d.HEAT_FLUX: (0.5, 200.0), d.TEMPERATURE: (238.0, 366.0), d.TEMPERATURE_DIFFERENCE: (0.3, 70.0),
    d.TRANSMITTANCE: (0.08, 6.0), d.RESISTANCE: (0.05, 12.0), d.CONDUCTIVITY: (0.02, 2.0),
    d.CONDUCTANCE: (0.5, 500.0), d.VOLUME_FLOW: (5e-6, 2e-3), d.AIR_FLOW: (1e-3, 0.5),
    d.SPECIFIC_HEAT: (1000.0, 4200.0), d.VISCOSITY: (2e-4, 6e-3),
    d.AIR_CHANGES: (2e-5, 6e-4), d.EDGE_LOSS: (0.3, 2.0), d.VOLUME_HEAT: (1000.0, 1250.0),
    d.LEAKAGE_AT_50_PA: (0.05, 1.5), d.MASS_FLOW: (1e-3, 0.3), d.MASS: (0.1, 100.0),
    d.ACCELERATION: (9.0, 10.0),
    d.ABSOLUTE_TEMPERATURE: (250.0, 370.0), d.LAPSE: (1e-3, 0.01), d.GAS_CONSTANT: (280.0, 470.0),
    d.RADIATION: (5e-8, 6e-8),
    d.POWER: (2.0, 300.0), d.HEAT_PER_LENGTH: (50.0, 1500.0), d.HEAT_CONTENT: (2e7, 4e10),
    d.WATER_VOLUME: (1e-4, 0.8), d.BORE: (0.008, 0.06), d.FRICTION: (0.002, 0.2),
    d.CONCENTRATION: (5e-6, 4e-4), d.DRAFT: (2.0, 40.0), d.KINEMATIC_VISCOSITY: (2.4e-7, 1.8e-6),
    d.REYNOLDS: (300.0, 60000.0),
    d.WATER_HEAT: (3.9e6, 4.2e6), d.FLOW_COEFFICIENT: (5e-7, 1e-5), d.EXPANSION: (1e-5, 2e-4),
}  # fmt: skip
"""SI ranges that inputs are drawn from, by dimension."""

NARROWER: dict[str, dict[str, tuple[float, float]]] = {
    "friction_factor": {"reynolds": (300.0, 60000.0)},
    "safe_log_mean": {"first": (10.0, 10.4), "last": (10.0, 10.4)},
    "growth": {"rise": (0.3, 70.0)},
    "water_density": {"temperature": (1.0, 90.0)},
    "vapor_pressure": {"above_ice": (1.0, 60.0)},
    "pipe_loss": {"inside": (0.01, 0.03), "outside": (0.035, 0.1)},
    "water_in_pipe": {"diameter": (0.01, 0.06)},
    "layer_loss": {"thickness": (0.006, 0.4)},
    "nearly_equal": {"supply": (330.0, 330.6), "back": (329.4, 330.0), "density": (950.0, 1000.0)},
    "pump_power": {"density": (950.0, 1000.0)},
    "radiant_exchange": {"emissivity": (0.03, 1.0)},
    "absolute_ratio": {"fill": (1e5, 2e5), "relief": (2.5e5, 4e5)},
    "two_exponentials": {"first": (0.05, 1.0), "last": (1.2, 4.0)},
}
"""Inputs of which the usual range makes no sense for one formula."""


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


def awkward_formulas() -> list[Callable[..., Any]]:
    """Every awkward formula there is."""
    return [
        each
        for module in (awkward, awkward_more)
        for each in vars(module).values()
        if hasattr(each, "formula")
    ]


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
            result.append(
                drawn(random, drawn_value(random, each.dimension, ends), each.dimension, preset, each.words)
            )
    rows = [i for i, each in enumerate(made.parameters) if each.name in ("size", "outdoor")]
    if made.name.startswith("between") and rows:  # what is read between must lie between
        x, x0, x1 = result[:3]
        low, high = sorted([float(x0), float(x1)])
        result[0] = found(random.uniform(low, high), x.dimension)
    return result

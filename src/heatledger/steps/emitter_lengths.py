"""Lengths that baseboard is cut to, and the one to take where the job leaves it open."""

from __future__ import annotations

from math import ceil

from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import look_up
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.presets import METRIC, Preset
from heatledger.ledger.sources import PRACTICE, Citation, cite
from heatledger.ledger.units import UNITS

HALF_FEET = cite("", "elements are cut to the half foot", PRACTICE)
TENTHS = cite("", "elements are cut to the tenth of a meter", PRACTICE)
LONG_ENOUGH = "the shortest that is not shorter than the length needed"
_HAIR = 1e-9


def suggested_length(needed: Figure, units: Preset) -> Figure | None:
    """The shortest length on sale that serves, with the one below it in sight; None where none is known.

    Half feet, or tenths of a meter in a metric job.
    """
    if needed.is_missing:
        return None
    metric = units is METRIC
    unit, parts = ("m", 10) if metric else ("ft", 2)
    steps = max(1, ceil(UNITS[unit].from_si(float(needed)) * parts * (1 - _HAIR)))
    rows = {}
    for number in (steps - 1, steps) if steps > 1 else (steps,):
        figure = _cut(number / parts, unit, TENTHS if metric else HALF_FEET)
        rows[figure.origin.typed] = {"length": figure}
    return look_up(rows, list(rows)[-1], LONG_ENOUGH, by=needed)["length"]


def _cut(value: float, unit: str, citation: Citation) -> Figure:
    typed = f"{value:.1f} {unit}"
    origin = Leaf(
        LeafKind.SOURCE, f"sizes/baseboard/{typed}", "length of element", typed, unit, value, 1,
        citation=citation,
    )  # fmt: skip
    return leaf(UNITS[unit].to_si(value), d.LENGTH, origin)

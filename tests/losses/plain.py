"""Jobs written from numbers, and results in the units of the case they are held to."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.ledger.units import UNITS

BTU_H = UNITS["Btu/h"].factor
EASY_AIR = UNITS["Btu/(ft³·°F)"].to_si(0.018)
METRIC_AIR = 0.34 * 3600
"""0.34 Wh/(m³·K), in J/(m³·K)."""


def flow(value: Any) -> str:
    """A value as YAML in braces."""
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{key}: {flow(each)}" for key, each in value.items()) + "}"
    return str(value)


def job_of(units: str, **parts: Any) -> Job:
    """A job from its parts, each a mapping or a text."""
    lines = ["format: 1", f"units: {units}", *(f"{key}: {flow(each)}" for key, each in parts.items())]
    return read_job("\n".join(lines))


def wall(length: str, made_of: str = "wall", beyond: str = "outdoors", **openings: str) -> dict[str, Any]:
    """A wall as high as its level, with openings by construction and area."""
    surface: dict[str, Any] = {"construction": made_of, "length": length, "beyond": beyond}
    if openings:
        surface["openings"] = {key: {"construction": key, "area": area} for key, area in openings.items()}
    return surface


def flat(area: str, made_of: str, beyond: str = "outdoors") -> dict[str, Any]:
    """A floor or ceiling of an area."""
    return {"construction": made_of, "area": area, "beyond": beyond}

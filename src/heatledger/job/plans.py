"""What the user expects, decided and limited: expectations, decisions, limits, half-ranges."""

from __future__ import annotations

import re

from heatledger.job.errors import JobErrors
from heatledger.job.known import DEFAULT, RANGES, HalfRange
from heatledger.job.model import KNOWN, Decision, Expectation, Job
from heatledger.job.quantities import Reader
from heatledger.job.reading import Typed, offer
from heatledger.job.shapes import DECISION, EXPECTATION
from heatledger.job.text import Mapping, Node, Scalar, plain
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf, missing
from heatledger.ledger.notation import NotationError, Reading, read

PATH = re.compile(r"[a-z0-9][a-z0-9_.-]*(/[a-z0-9][a-z0-9_.-]*)*\Z")
BY_UNIT: tuple[Dimension, ...] = (
    d.HEAT_RATE, d.AREA, d.LENGTH, d.VOLUME, d.TEMPERATURE, d.TEMPERATURE_DIFFERENCE, d.TRANSMITTANCE,
    d.RESISTANCE, d.EDGE_LOSS, d.CONDUCTANCE, d.HEAT_FLUX, d.AIR_CHANGES, d.AIR_FLOW, d.VOLUME_FLOW,
    d.PRESSURE, d.ENERGY, d.VELOCITY, d.FRICTION, d.CONCENTRATION, d.WATER_VOLUME, d.TIME,
    d.FLOW_COEFFICIENT, d.DRAFT, d.POWER, d.MASS,
)  # fmt: skip
"""Kinds tried in turn where only the unit tells what a quantity is."""


def by_unit(reader: Reader, text: str) -> tuple[Reading, Dimension] | None:
    """A quantity whose kind is told by its unit; None when no kind has such a unit."""
    for dimension in BY_UNIT:
        try:
            reading = read(text, dimension, reader.units, bare=False)
        except NotationError:
            continue
        if re.search(r"[A-Za-z°\"']", text):
            return reading, dimension
    return None


def read_expectations(
    reader: Reader, node: Node | None, names: dict[str, dict[str, Node]]
) -> dict[str, Expectation]:
    """The expectations by id."""
    mapping = reader.mapping(node, "expectations", "the expectations")
    found: dict[str, Expectation] = {}
    for key, each in reader.things(node, "expectations", "expectations").items() if mapping.entries else ():
        path = f"expectations/{key}"
        values = reader.fields(EXPECTATION, each, path, DEFAULT)
        lacking = [what for what in ("of", "about") if not values[what]]
        if lacking:
            if not any(error.path.startswith(path) for error in reader.errors):
                reader.error(
                    "expectation-incomplete",
                    path,
                    f"The expectation does not say `{lacking[0]}`.",
                    "Write  of: house/loss  and  about: 37100 Btu/h",
                )
            continue
        check_path(reader, values["of"], f"{path}/of", names)
        about, dimension = _about(reader, values["about"], f"{path}/about")
        within = _within(reader, values["within"], f"{path}/within", dimension)
        found[key] = Expectation(key, values["of"], about, within, values["because"] or "")
    return found


def _about(reader: Reader, text: str, path: str) -> tuple[Figure, Dimension]:
    found = by_unit(reader, text)
    if found is None:
        reader.reading(text, d.HEAT_RATE, path, bare=False)
        return missing(d.HEAT_RATE, path, "value expected"), d.HEAT_RATE
    reading, dimension = found
    typed = Typed(Scalar(text), DEFAULT)
    return reader.leaf(reading, dimension, path, "value expected", typed, "chosen"), dimension


def _within(reader: Reader, text: str | None, path: str, dimension: Dimension) -> Figure:
    given = text or "10 %"
    half = reader.half_given(given, dimension, path)
    kind = d.TEMPERATURE_DIFFERENCE if dimension is d.TEMPERATURE else dimension
    if half is None:
        return missing(kind, path, "how far off it may be")
    if "%" in given:
        share = half.share
        return leaf(
            share,
            d.RATIO,
            Leaf(LeafKind.JOB, path, "how far off it may be", given, "%", share * 100, None, "told"),
        )
    reading = reader.reading(given, kind, path)
    if reading is None:
        return missing(kind, path, "how far off it may be")
    return reader.leaf(reading, kind, path, "how far off it may be", Typed(Scalar(given), DEFAULT), "chosen")


def check_path(reader: Reader, text: str, path: str, names: dict[str, dict[str, Node]]) -> None:
    """Errors for a path that is none, or that names a room or space which is not there."""
    if not PATH.match(text):
        reader.error(
            "path-malformed",
            path,
            f"`{text}` is not a path.",
            "A path is names joined by slashes: rooms/kitchen/loss",
        )
        return
    home, _, rest = text.partition("/")
    one = {"rooms": "room", "unheated": "unheated", "neighbors": "neighbor"}.get(home)
    name = rest.split("/")[0]
    if one and name and name not in names[home]:
        reader.error(f"unknown-{one}", path, f"There is no `{home}/{name}`.", offer(name, names[home]))


def read_decisions(reader: Reader, node: Node | None) -> dict[str, Decision]:
    """The decisions by finding, or finding@path."""
    found: dict[str, Decision] = {}
    for key, each in reader.mapping(node, "decisions", "the decisions").entries.items():
        finding, _, place = key.partition("@")
        here = f"decisions/{key}"
        if not PATH.match(finding) or "/" in finding or ("@" in key and not PATH.match(place)):
            reader.error(
                "path-malformed",
                here,
                f"`{key}` is not a finding, nor a finding and a path.",
                "Write  floor-areas-disagree  or  openings-over-wall@rooms/kitchen",
            )
        values = reader.fields(DECISION, each, here, DEFAULT)
        if isinstance(each, Mapping) and not (values["is"] and values["because"]):
            lacking = "because" if values["is"] else "is"
            reader.error(
                "decision-without-reason",
                here,
                f"The decision does not say `{lacking}`.",
                "Write  {is: what was decided, because: reason, by: name}",
            )
        found[key] = Decision(finding, place, values["is"] or "", values["because"] or "", values["by"] or "")
    return found


def read_limits(reader: Reader, node: Node | None) -> dict[str, str]:
    """Thresholds by finding, as typed: the review knows of what kind each is."""
    found: dict[str, str] = {}
    for key, each in reader.mapping(node, "limits", "the limits").entries.items():
        path = f"limits/{key}"
        text = reader.text(each, path)
        if (
            text
            and "%" not in text
            and not re.fullmatch(r"\d+(\.\d+)?", text)
            and by_unit(reader, text) is None
        ):
            reader.error(
                "limit-unreadable", path, f"`{text}` is not a quantity.", "Write it with its unit: 60 %"
            )
        elif "%" in text:
            reader.percent(text, path, 1000)
        found[key] = text
    return found


def limit_of(job: Job, finding: str, dimension: Dimension) -> Figure | None:
    """The job's own threshold for a finding as a leaf, or None; JobErrors when it is of another kind."""
    text = job.limits.get(finding)
    if not text:
        return None
    reader = Reader(job.source.tree)
    reader.units = job.units
    path, words = f"limits/{finding}", "limit"
    if dimension is d.RATIO and "%" in text:
        share = reader.percent(text, path, 1000)
        value = (
            None
            if share is None
            else leaf(share, d.RATIO, Leaf(LeafKind.JOB, path, words, text, "%", share * 100, None, "chosen"))
        )
    else:
        reading = reader.reading(text, dimension, path)
        typed = Typed(Scalar(text), DEFAULT)
        value = None if reading is None else reader.leaf(reading, dimension, path, words, typed, "chosen")
    if value is None:
        raise JobErrors(reader.errors, job.source.file_name)
    return value


def read_ranges(reader: Reader, node: Node | None) -> dict[str, dict[str, HalfRange]]:
    """The job's own half-ranges by name and known."""
    found: dict[str, dict[str, HalfRange]] = {}
    for name, each in reader.mapping(node, "ranges", "the ranges").entries.items():
        path = f"ranges/{name}"
        if name not in RANGES:
            reader.error("unknown-range", path, f"There is no half-range `{name}`.", offer(name, RANGES))
            continue
        found[name] = {}
        for known, value in reader.mapping(each, path, f"the range {name}").entries.items():
            if known not in KNOWN:
                reader.error(
                    "unknown-known",
                    f"{path}/{known}",
                    f"`{known}` does not say how well it is known.",
                    offer(known, KNOWN),
                )
                continue
            text = reader.text(value, f"{path}/{known}")
            half = reader.half_given(text, DIMENSION_OF_RANGE[name], f"{path}/{known}") if text else None
            if half is not None:
                found[name][known] = half
    return found


DIMENSION_OF_RANGE = {
    "length": d.LENGTH, "area": d.AREA, "volume": d.VOLUME, "u-value": d.TRANSMITTANCE,
    "r-value": d.RESISTANCE, "edge-loss": d.EDGE_LOSS, "soil": d.CONDUCTIVITY,
    "air-changes": d.AIR_CHANGES, "heat": d.HEAT_RATE, "temperature": d.TEMPERATURE,
    "temperature-swing": d.TEMPERATURE_DIFFERENCE, "elevation": d.LENGTH, "rated-output": d.HEAT_RATE,
    "rated-per-length": d.HEAT_PER_LENGTH, "exponent": d.RATIO, "tube-length": d.LENGTH,
    "thickness": d.BORE, "water": d.WATER_VOLUME, "flow": d.VOLUME_FLOW, "head": d.HEAD,
    "pressure": d.PRESSURE, "flow-coefficient": d.FLOW_COEFFICIENT, "power": d.POWER, "plate": d.HEAT_RATE,
    "efficiency": d.RATIO, "fuel-used": d.ENERGY, "gas-used": d.VOLUME, "oil-used": d.WATER_VOLUME,
    "heat-content": d.HEAT_CONTENT, "degree-days": d.TEMPERATURE_DIFFERENCE, "gas-reading": d.CONCENTRATION,
    "oxygen": d.RATIO, "draft": d.DRAFT,
}  # fmt: skip


def raw_ranges(node: Node | None) -> dict[str, dict[str, str]]:
    """The half-ranges as typed."""
    if not isinstance(node, Mapping):
        return {}
    return {key: plain(each) for key, each in node.entries.items() if isinstance(each, Mapping)}

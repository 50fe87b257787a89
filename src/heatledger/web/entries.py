"""One entry of the job on a page: what was typed, how well it is known, and what is wrong with it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from heatledger.job.fields import Field
from heatledger.job.model import Job
from heatledger.job.shapes import JOB
from heatledger.job.text import Mapping, Node, Scalar, walk
from heatledger.job.what_ifs import shape_at
from heatledger.ledger import dimensions as d
from heatledger.ledger.presets import Preset

LINES = {"measured": "", "from plans": "plan", "told": "plan", "assumed": "guess"}
"""The line under an entry, by how well it is known."""
_NUMBER = re.compile(r"[-+−]?\s*[0-9][0-9,.\s/½¼¾⅛⅜⅝⅞]*\Z")
_TIMES = re.compile(r"\s*[x×*]\s*", re.IGNORECASE)


@dataclass(frozen=True)
class Entry:
    """An entry as the page shows it; ``typed`` is as it stands in the job, ``set`` with the trade's signs."""

    path: str
    field: Field | None
    typed: str
    known: str
    given: bool

    @property
    def set(self) -> str:
        """The text with proper signs: 12′ 6″ × 9′ 0″, −2 °F, ft²."""
        return typeset(self.typed) if self.field is None or self.field.kind in _SIGNED else self.typed


_SIGNED = ("quantity", "size", "whole", "percent")


def typeset(text: str) -> str:
    """A quantity with the signs of print; it is read the same."""
    shown = re.sub(r"(?<=[0-9.½¼¾⅛⅜⅝⅞])\s?'", "′", text)
    shown = re.sub(r"(?<=[0-9.½¼¾⅛⅜⅝⅞])\s?\"", "″", shown)
    shown = re.sub(r"(?<![\w.])-(?=[0-9])", "−", shown)
    shown = re.sub(r"(?<=[0-9])\s*([FC])\Z", r" °\1", shown.rstrip())
    shown = re.sub(r"\s*(?<=[0-9\s′″m])[xX*]\s*(?=[0-9])", " × ", shown)
    return re.sub(r"\b(ft|m|in)([23])\b", lambda m: m[1] + {"2": "²", "3": "³"}[m[2]], shown)


def entry_at(job: Job, path: str) -> Entry:
    """The entry at a path of the job, given or not."""
    node = walk(job.source.base, path)
    typed, given = _typed(node)
    return Entry(path, field_at(path), typed, known_at(job.source.base, path), given)


def field_at(path: str) -> Field | None:
    """The field of the job file at a path; None inside what has no fixed form."""
    head, _, last = path.rpartition("/")
    shape = shape_at(head) if head else JOB
    by_key = getattr(shape, "by_key", None)
    found: Field | None = by_key.get(last) if by_key else None
    return found


def known_at(tree: Mapping, path: str) -> str:
    """How well what stands at a path is known: said there, or by what it stands in."""
    known, node = "told", tree
    for step in ("", *path.split("/")):
        inner: Node | None = node.entries.get(step) if step and isinstance(node, Mapping) else node
        if not isinstance(inner, Mapping):
            break
        node = inner
        said = node.entries.get("known")
        if isinstance(said, Scalar) and said.text:
            known = said.text
    return known


def with_unit(typed: str, path: str, units: Preset, own: Preset) -> str:
    """A bare number with the unit of the reader, so that it is stored as it was meant."""
    field = field_at(path)
    if field is None or field.dimension is None or field.kind not in ("quantity", "size"):
        return typed
    unit = _unit_for(field, units)
    if not unit or field.dimension in (d.RATIO, d.COUNT):
        return typed
    sides = _TIMES.split(typed.strip()) if field.kind == "size" else [typed.strip()]
    if not all(_NUMBER.match(each) for each in sides):
        return typed
    return " × ".join(f"{each} {unit}" for each in sides)


def _unit_for(field: Field, units: Preset) -> str:
    if field.dimension is d.TRANSMITTANCE and units.feet_and_inches:
        return "Btu/(h·ft²·°F)"
    return units.shown(field.dimension).unit.text if field.dimension is not None else ""


def _typed(node: Node | None) -> tuple[str, bool]:
    if isinstance(node, Mapping):
        node = node.entries.get("is")
        return (node.text if isinstance(node, Scalar) else "", True)
    return (node.text, True) if isinstance(node, Scalar) else ("", False)

"""The JSON Schema of a job file, for editors that complete and check while one types.

It is made from the same tables the reader uses. It knows the keys, the words to choose from and which
values are quantities; whether a quantity can be read, and all that ties one entry to another, only the
reader knows.
"""

from __future__ import annotations

from typing import Any

from heatledger.job.fields import Field, Shape
from heatledger.job.model import KNOWN
from heatledger.job.plans import PATH
from heatledger.job.shapes import FORMAT, ID_PATTERN, JOB

SCALAR = {"type": ["string", "number", "boolean", "null"]}
_TOP = {"format", "units"}


def job_schema() -> dict[str, Any]:
    """The schema of job files, as a dict that is ready for JSON."""
    parts: dict[str, Any] = {}
    whole = _shape(JOB, parts)
    whole["properties"]["format"] = {"const": FORMAT, "description": "format of the file"}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"Heatledger job, format {FORMAT}",
        "description": "What is known of one house and its heating system, as a design needs it.",
        **whole,
        "required": sorted(_TOP),
        "$defs": parts,
    }


def _shape(shape: Shape, parts: dict[str, Any]) -> dict[str, Any]:
    properties = {each.key: _field(each, parts) for each in shape.fields}
    return {"type": "object", "properties": properties, "additionalProperties": False}


def _part(shape: Shape, parts: dict[str, Any]) -> dict[str, Any]:
    name = shape.name.replace(" ", "-")
    if name not in parts:
        parts[name] = {}
        parts[name] = _shape(shape, parts)
    return {"anyOf": [{"$ref": f"#/$defs/{name}"}, {"type": "null"}]}


def _field(field: Field, parts: dict[str, Any]) -> dict[str, Any]:
    about: dict[str, Any] = {"description": field.words}
    if field.example:
        about["examples"] = [field.example]
    if field.shape is not None and field.kind == "shape":
        return {**about, **_part(field.shape, parts)}
    if field.shape is not None:
        return {**about, **_things(field.shape, parts, by_id=field.kind == "map")}
    if field.kind == "list":
        from heatledger.job.shapes import CHANGE

        return {**about, "type": "array", "items": _part(CHANGE, parts)}
    if field.kind == "any":
        return about
    if field.kind == "yes-no":
        return {**about, "enum": ["yes", "no", True, False]}
    if field.key == "known":
        return {**about, "enum": list(field.choices)}
    if field.kind == "choice":
        plain: list[Any] = list(field.choices) + [int(each) for each in field.choices if each.isdigit()]
        return {**about, "enum": plain}
    if field.dimension is not None or field.key == "catalog":
        about["description"] += f" ({field.dimension})" if field.dimension else ""
        return {**about, **_value(parts)}
    return {**about, **SCALAR}


def _value(parts: dict[str, Any]) -> dict[str, Any]:
    """A value given plain, or with what is said of it."""
    parts.setdefault("value-and-known", {
        "type": "object",
        "properties": {
            "is": {**SCALAR, "description": "the value"},
            "known": {"enum": list(KNOWN), "description": "how well it is known"},
            "within": {**SCALAR, "description": "how far off it may be", "examples": ["8 %"]},
            "because": {**SCALAR, "description": "reason"},
        },
        "additionalProperties": False,
    })  # fmt: skip
    return {"anyOf": [SCALAR, {"$ref": "#/$defs/value-and-known"}]}


def _things(shape: Shape, parts: dict[str, Any], by_id: bool) -> dict[str, Any]:
    pattern = ID_PATTERN if by_id else f"^{PATH.pattern[:-2]}(@.*)?$"
    properties = {"known": {"enum": list(KNOWN)}} if by_id else {}
    return {
        "type": ["object", "null"], "properties": properties,
        "patternProperties": {pattern: _part(shape, parts)}, "additionalProperties": False,
    }  # fmt: skip

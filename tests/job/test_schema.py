"""The schema lists every key the reader takes, and the sound jobs follow it."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from heatledger.job.parsing import tree_of
from heatledger.job.schema import job_schema
from heatledger.job.shapes import CHANGE, JOB, RESERVED
from heatledger.job.starter import starter_job
from heatledger.job.text import Scalar, plain
from heatledger.ledger.presets import METRIC, US
from tests.job.samples import EXAMPLES, SMALL, SYSTEM, example, shapes_below

SCHEMA = job_schema()
TYPES: dict[str, Any] = {
    "object": dict,
    "array": list,
    "string": str,
    "number": (int, float),
    "boolean": bool,
}


def faults(value: Any, schema: dict[str, Any], where: str = "") -> list[str]:
    """Where a value leaves the schema: a small judge of the words this schema uses."""
    if "$ref" in schema:
        return faults(value, SCHEMA["$defs"][schema["$ref"].rpartition("/")[2]], where)
    found: list[str] = []
    if "anyOf" in schema:
        tries = [faults(value, each, where) for each in schema["anyOf"]]
        found += [] if any(not each for each in tries) else min(tries, key=len)
    if "const" in schema and str(value) != str(schema["const"]):
        found.append(f"{where}: not {schema['const']}")
    if "enum" in schema and value not in schema["enum"]:
        found.append(f"{where}: {value} is not in {schema['enum']}")
    types = schema.get("type", [])
    types = [types] if isinstance(types, str) else types
    if types and not any(
        value is None if each == "null" else isinstance(value, TYPES[each]) for each in types
    ):
        found.append(f"{where}: {value!r} is not {types}")
    if isinstance(value, list) and "items" in schema:
        for i, each in enumerate(value):
            found += faults(each, schema["items"], f"{where}/{i}")
    if isinstance(value, dict) and "additionalProperties" in schema:
        found += faults_of_keys(value, schema, where)
    return found


def faults_of_keys(value: dict[str, Any], schema: dict[str, Any], where: str) -> list[str]:
    found = [f"{where}: no {each}" for each in schema.get("required", []) if each not in value]
    for key, each in value.items():
        patterns = [one for name, one in schema.get("patternProperties", {}).items() if re.search(name, key)]
        if key in schema.get("properties", {}):
            found += faults(each, schema["properties"][key], f"{where}/{key}")
        elif patterns:
            found += faults(each, patterns[0], f"{where}/{key}")
        else:
            found.append(f"{where}: unknown {key}")
    return found


def read(text: str) -> Any:
    return plain(tree_of(text))


@pytest.mark.parametrize(
    "text",
    [SMALL, SMALL + SYSTEM, *(example(each) for each in EXAMPLES), starter_job(US), starter_job(METRIC)],
    ids=range(6),
)
def test_sound_jobs_follow_it(text: str) -> None:
    value = read(text)
    value["what-ifs"] = value.get("what-ifs") or {}
    assert faults(value, SCHEMA) == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("level: ground", "levle: ground"), ("kind: wall", "kind: glazing"), ("units: US", "unit: US"),
        ("format: 1", "format: 2"), ("  hall:", "  Hall:"), ("length: 12'", "length: {feet: 12}"),
    ],
)  # fmt: skip
def test_slips_leave_it(old: str, new: str) -> None:
    assert faults(read(SMALL.replace(old, new)), SCHEMA)


def test_it_lists_every_key() -> None:
    for name, shape in shapes_below(JOB, {CHANGE.name: CHANGE}).items():
        part = SCHEMA if shape is JOB else SCHEMA["$defs"][name.replace(" ", "-")]
        assert set(part["properties"]) == set(shape.by_key)
    assert set(RESERVED) < set(SCHEMA["properties"])


def test_every_key_is_described_and_it_is_json() -> None:
    text = json.dumps(SCHEMA)
    assert json.loads(text) == SCHEMA
    for name in ("room", "surface", "construction", "opening", "site"):
        for key, each in SCHEMA["$defs"][name]["properties"].items():
            assert each["description"], (name, key)
    assert isinstance(tree_of(SMALL).entries["units"], Scalar)

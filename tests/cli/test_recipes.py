"""Claim: the pieces of the recipes go into the job of the first page as they are written."""

from __future__ import annotations

import io
import re
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from heatledger.job.load import read_job
from heatledger.job.missing import missing_entries
from heatledger.steps.design import design

DOCS = Path(__file__).parents[2] / "docs"


def blocks(page: str) -> list[Any]:
    text = (DOCS / page).read_text("utf-8")
    reader = YAML(typ="base", pure=True)
    return [reader.load(each) for each in re.findall(r"```yaml\n(.*?)```", text, re.S)]


def laid_over(below: Any, above: Any) -> Any:
    if not isinstance(below, dict) or not isinstance(above, dict):
        return above
    return {**below, **{key: laid_over(below.get(key), each) for key, each in above.items()}}


def test_the_spaces_of_the_recipe_find_their_temperatures() -> None:
    first, *pieces = [blocks("learn/first-house.md")[0], *blocks("do/spaces.md")]
    assert len(pieces) == 3
    for each in pieces:
        first = laid_over(first, each)
    out = io.StringIO()
    YAML(typ="safe", pure=True).dump(first, out)
    job = read_job(out.getvalue(), "recipe.yaml")
    assert not missing_entries(job)
    house = design(job)
    basement, attic = (float(house[f"unheated/{each}/temperature"]) for each in ("basement", "attic"))
    assert float(job.site.outdoor) < basement < float(job.site.indoor)
    assert attic == pytest.approx(float(job.site.outdoor), abs=0.1)  # nothing of the house looks onto it here
    assert float(house["rooms/living-room/surfaces/floor/loss"]) > 0

"""Claim: whoever redoes a printed working of the demo houses comes to the very answer printed.

The printed text is redone by the blind evaluator, which raises when anything is off by more than the
rule allows; here its result must also round to the printed answer, but for a few in a thousand.
"""

from __future__ import annotations

import sys
from importlib import resources
from pathlib import Path

import pytest

from heatledger.job.load import read_job
from heatledger.ledger.as_text import as_text
from heatledger.ledger.compose import working_of
from heatledger.ledger.pencil import rounded
from heatledger.ledger.presets import PRESETS
from heatledger.steps.design import design

sys.path.insert(0, str(Path(__file__).parents[1] / "ledger"))

import blind

MOST_OFF = 0.01
"""Share of workings whose result may round one unit away."""


@pytest.mark.parametrize("reader", PRESETS)
@pytest.mark.parametrize("name", ["ferrow-house.yaml", "lerch-cottage.yaml", "tamm-street.yaml"])
def test_a_pencil_comes_to_the_very_answer(name: str, reader: str) -> None:
    text = resources.files("heatledger").joinpath("examples", name).read_text("utf-8")
    house = design(read_job(text, name))
    redone, off = 0, []
    for path, figure in house.results.items():
        made = working_of(figure, PRESETS[reader], house.names)
        if made.kind != "formula" or made.less_than:
            continue
        result = blind.redo(as_text(made))
        redone += 1
        if rounded(result, len(made.answer.partition(".")[2])) != blind.plain_number(made.answer):
            off.append(path)
    assert redone > 100
    assert len(off) <= MOST_OFF * redone, off

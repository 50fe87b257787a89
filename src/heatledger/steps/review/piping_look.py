"""What the findings on piping and circulators share: every laid piece with its name, and larger tubes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from heatledger.catalog.tubes import FAMILIES, tubes_of
from heatledger.job.system_model import Pipe
from heatledger.ledger.figures import Figure
from heatledger.steps.circuits import CircuitFlow
from heatledger.steps.piping import PipeHead
from heatledger.steps.plant_piping import CirculatorDuty
from heatledger.steps.review.kinds import Look, set_to

MAINS = "plant/mains"


@dataclass(frozen=True)
class Piece:
    """A laid piece: its path, what people call it, and the entry it comes from."""

    path: str
    words: str
    laid: PipeHead
    pipe: Pipe
    circuit: str

    @property
    def flow(self) -> Figure:
        """The flow it really gets, or the design flow where that is not known."""
        actual = self.laid.actual_flow
        return self.laid.flow if actual is None or actual.is_missing else actual

    @property
    def speed(self) -> Figure:
        """The speed that goes with it."""
        actual = self.laid.actual_velocity
        return self.laid.velocity if actual is None or actual.is_missing else actual


def circuits_of(look: Look) -> Mapping[str, CircuitFlow]:
    """The circuits of the design."""
    return look.design.circuits.circuits


def duties_of(look: Look) -> Mapping[str, CirculatorDuty]:
    """The circulators of the design that drive a circuit."""
    return look.design.circuits.plant.circulators


def pieces(look: Look) -> Iterator[Piece]:
    """Every piece of tube there is: mains, common tubes, runs."""
    system, plant = look.house.job.system, look.design.circuits.plant
    if plant.mains is not None and system.plant.mains is not None:
        yield Piece(MAINS, "the mains", plant.mains, system.plant.mains, "")
    for id, found in circuits_of(look).items():
        circuit = system.circuits[id]
        if found.common.tube:
            yield Piece(
                f"circuits/{id}", f"the common tube of {found.name}", found.common, circuit.common, id
            )
        for key, run in found.runs.items():
            words = f"the run to {system.emitters[key].name}"
            yield Piece(f"circuits/{id}/runs/{key}", words, run, circuit.runs[key], id)


def head_start(words: str) -> str:
    """The words as a sentence begins."""
    return words[:1].upper() + words[1:]


def next_size(piece: Piece) -> tuple[Mapping[str, Any], ...]:
    """A change that takes the next larger tube of the family, or none where there is none."""
    family = piece.pipe.family or (piece.pipe.tube.family if piece.pipe.tube else "")
    if family not in FAMILIES:
        return ()
    rows = sorted(tubes_of(family).values(), key=lambda each: float(each.bore))
    bore = float(piece.laid.bore) * (1 + 1e-9)
    larger = next((each for each in rows if float(each.bore) > bore), None)
    return () if larger is None else (set_to(f"{piece.path}/tube", larger.key),)

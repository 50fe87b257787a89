"""What the findings on piping and circulators share: every laid piece with its name, and larger tubes."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from heatledger.catalog.tubes import FAMILIES, TubeRow, tubes_of
from heatledger.job.system_model import Pipe
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Mend
from heatledger.steps.circuits import CircuitFlow
from heatledger.steps.piping import PipeHead
from heatledger.steps.plant_piping import CirculatorDuty
from heatledger.steps.review.kinds import Look, set_to
from heatledger.steps.rubbing import plain_rubbing

MAINS = "plant/mains"
MORE_FLOW = 1.1
"""Room that is left for the flow that goes up with a larger tube."""


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


def larger_tube(piece: Piece, fits: Callable[[TubeRow], bool]) -> Mend:
    """The smallest larger tube of the family that serves; without a change where none does."""
    rows = larger_rows(piece)
    for i, row in enumerate(rows):
        if fits(row):
            words = "Take the next larger tube." if i == 0 else f"Take a larger tube: {row.name}."
            return Mend(words, (set_to(f"{piece.path}/tube", row.key),))
    return Mend("Take a larger tube.")


def larger_rows(piece: Piece) -> list[TubeRow]:
    """The larger tubes of the family of a piece, the smallest first."""
    family = piece.pipe.family or (piece.pipe.tube.family if piece.pipe.tube else "")
    if family not in FAMILIES:
        return []
    bore = float(piece.laid.bore) * (1 + 1e-9)
    found = [each for each in tubes_of(family).values() if float(each.bore) > bore]
    return sorted(found, key=lambda each: float(each.bore))


def slower_than(piece: Piece, limit: float) -> Callable[[TubeRow], bool]:
    """Whether water moves slower in a tube, with room for the flow that a larger tube lets through."""

    def fits(row: TubeRow) -> bool:
        speed = float(piece.speed) * (float(piece.laid.bore) / float(row.bore)) ** 2
        return speed * MORE_FLOW <= limit

    return fits


def rubs_less(look: Look, piece: Piece) -> Callable[[TubeRow], bool]:
    """Whether the design flow costs no more friction in a tube than the finding allows."""

    def fits(row: TubeRow) -> bool:
        return friction_in(look, piece, row) <= look.limit

    return fits


def friction_in(look: Look, piece: Piece, row: TubeRow) -> float:
    """Friction of the design flow of a piece in another tube."""
    bore, viscosity = float(row.bore), float(look.design.emitters.house.viscosity)
    return plain_rubbing(float(piece.laid.flow), bore, float(row.roughness) / bore, viscosity)[1]

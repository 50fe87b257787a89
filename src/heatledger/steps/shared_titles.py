"""What a figure of the piping is called that stands at several places: by what the places have in common.

Pieces of one tube share their roughness over bore, pieces of one loop their flow and all that follows from
it. Such a figure is not called after whichever piece comes first.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from heatledger.ledger.figures import NO_NAMES, Figure
from heatledger.ledger.formulas import words_of
from heatledger.steps.titles import title_of_place

if TYPE_CHECKING:
    from heatledger.steps.circuits import Circuits

OF_PIECES = ("common", "runs")
OF_TUBES = ("bore", "relative_roughness")
"""What a tube has wherever it is laid."""


def places_shared(paths: Sequence[str]) -> list[tuple[str, ...]]:
    """The paths of pieces and emitters among these, in steps, where they belong to more than one of them."""
    steps = [tuple(each.split("/")) for each in paths]
    own = [each for each in steps if _is_piece(each) or (each[0] == "emitters" and len(each) == 3)]
    owners, fields = {_owner(each) for each in own}, {each[-1] for each in own}
    return own if len(owners) > 1 and len(fields) == 1 else []


def _is_piece(steps: Sequence[str]) -> bool:
    return steps[0] == "circuits" and len(steps) > 3 and steps[2] in OF_PIECES


def _owner(steps: Sequence[str]) -> tuple[str, ...]:
    """The piece a path is of; a run of home runs and its emitter are one."""
    if steps[0] == "emitters":
        return ("run", steps[1])
    return ("run", steps[3]) if steps[2] == "runs" else ("common", steps[1])


def shared_title(figure: Figure, paths: Sequence[str], circuits: Circuits) -> str:
    """What a figure is called that more than one piece has; empty where it is one's own."""
    own = places_shared(paths)
    if not own:
        return ""
    said = title_of_place("/".join(own[0])) or NO_NAMES.title(figure) or words_of(own[0][-1])
    pieces = [each for each in own if _is_piece(each)]
    ids = {each[1] for each in pieces}
    if not pieces:
        emitters = {each[1] for each in own}
        ids = {id for id, each in circuits.circuits.items() if emitters <= set(each.runs)}
    things = []
    if len(ids) == 1 and own[0][-1] not in OF_TUBES:
        things.append(circuits.circuits[next(iter(ids))].name)
    if not pieces and not things:
        return ""
    if not any(len(each.split("/")) == 3 and each.startswith("circuits/") for each in paths):
        tubes = {tube for each in pieces if (tube := _tube_of(each, circuits))}
        things += sorted(tubes) if len(tubes) == 1 else []
    return ", ".join([said[:1].upper() + said[1:], *things])


def _tube_of(steps: Sequence[str], circuits: Circuits) -> str:
    circuit = circuits.circuits[steps[1]]
    return circuit.common.tube if steps[2] == "common" else circuit.runs[steps[3]].tube

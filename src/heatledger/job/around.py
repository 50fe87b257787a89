"""What a surface or opening may refer to: constructions, levels, and the names of the spaces."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.job.model import OPENING_KINDS, Construction, Level
from heatledger.job.quantities import Reader
from heatledger.job.reading import offer
from heatledger.job.text import Node
from heatledger.ledger.figures import Figure


@dataclass(frozen=True)
class Around:
    """What a surface may refer to: the names of the job and the space it belongs to."""

    constructions: dict[str, Construction]
    names: dict[str, dict[str, Node]]
    """Ids of rooms, unheated and neighbors."""
    space: str
    """Path of the space, as rooms/kitchen."""
    level: Level | None = None
    floor_area: Figure | None = None


def construction_of(
    reader: Reader, values: dict[str, Any], path: str, around: Around, opening: bool
) -> Construction:
    """The construction a surface or opening names; one without a kind when there is none."""
    nothing = Construction("", "", "", None, None, None, "", {})
    name = values["construction"]
    if not name:
        if values["node"].entries or values["construction"] is None:
            reader.error(
                "no-construction",
                path,
                "It is not said what it is made of.",
                "Write  construction: NAME  with a name from `constructions`.",
            )
        return nothing
    found = around.constructions.get(name)
    if found is None:
        reader.error(
            "unknown-construction",
            f"{path}/construction",
            f"There is no construction `{name}`.",
            offer(name, around.constructions),
        )
        return nothing
    is_opening = found.kind in OPENING_KINDS
    if found.kind and is_opening != opening:
        code = "opening-kind" if opening else "surface-kind"
        what = "an opening" if opening else "a surface"
        mend = (
            "Openings are windows and doors." if opening else "Put it under `openings` of the wall it is in."
        )
        reader.error(code, f"{path}/construction", f"`{name}` is a {found.kind}, which is not {what}.", mend)
        return nothing
    return found

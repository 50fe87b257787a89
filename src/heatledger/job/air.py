"""Air that leaks in: changes as given, or looked up by the number of exposed sides.

The look-up is made here, when the job is read: the row and its neighbors stay with the job, and so does
the number of sides that was typed.
"""

from __future__ import annotations

from dataclasses import replace
from weakref import WeakValueDictionary

from heatledger.catalog.loader import air_changes_rows, row_for_sides
from heatledger.job.known import half_range, range_name
from heatledger.job.model import Air
from heatledger.job.quantities import Reader
from heatledger.job.shapes import AIR
from heatledger.job.text import Node
from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import look_up
from heatledger.ledger.figures import Figure, leaf, missing

MOST_SIDES = 4
RATE_BY_SIDES = "assumed"
"""How well a rate is known that was taken by the number of sides, however well these were counted."""

BY_SIDES = "air changes by exposed sides"

_LOOKED_UP: WeakValueDictionary[tuple[int, int], Figure] = WeakValueDictionary()
"""By the ids of the row and of the sides, which live as long as the figure made from them."""


def read_air(reader: Reader, node: Node | None, path: str, known: str) -> Air | None:
    """The air of a room, a space or the house; None when nothing is said."""
    if node is None:
        return None
    values = reader.fields(AIR, node, path, known)
    changes, sides = values["changes"], values["exposed_sides"]
    if changes is not None and sides is not None:
        reader.error(
            "two-air-rates",
            f"{path}/exposed_sides",
            "The air change is given, and the number of exposed sides to find it from.",
            "Keep one of the two.",
        )
    if sides is not None and float(sides) > MOST_SIDES:
        reader.error(
            "sides-out-of-range",
            f"{path}/exposed_sides",
            f"A room has none to four exposed sides; read was {sides.origin.typed}.",
            "Count the sides with windows or outside doors.",
        )
        sides = None
    if changes is not None:
        return Air(changes, None)
    if sides is None:
        return Air(missing(d.AIR_CHANGES, f"{path}/changes", "air changes"), None)
    if sides.is_missing:
        return Air(missing(d.AIR_CHANGES, f"{path}/exposed_sides", "number of exposed sides"), sides)
    return Air(changes_by_sides(reader, sides), sides)


def changes_by_sides(reader: Reader, sides: Figure) -> Figure:
    """Air changes of the row for a number of sides, with the row's neighbors and the number typed.

    The same row looked up by the same entry is the same figure, also in another reading of the job.
    """
    rows = {key: {"changes": _assumed(reader, each)} for key, each in air_changes_rows().items()}
    key = row_for_sides(int(float(sides)))
    found = _LOOKED_UP.get((id(rows[key]["changes"]), id(sides)))
    if found is None:
        because = f"the number of exposed sides is {sides.origin.typed}"
        found = look_up(rows, key, because, by=sides)["changes"]
        _LOOKED_UP[id(rows[key]["changes"]), id(sides)] = found
    return found


def _assumed(reader: Reader, row: Figure) -> Figure:
    half, words = half_range(range_name(row.dimension), RATE_BY_SIDES, float(row), reader.ranges)
    origin = replace(row.origin, words=BY_SIDES, known=RATE_BY_SIDES, half_range=half, half_range_words=words)
    return leaf(float(row), row.dimension, origin)

"""What is drawn from a design is drawn once for each reader: a design never changes."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from heatledger.ledger.presets import Preset
from heatledger.steps.design import Design

Rest = ParamSpec("Rest")
Made = TypeVar("Made")


def once_a_design(
    make: Callable[Concatenate[Design, Preset, Rest], Made],
) -> Callable[Concatenate[Design, Preset, Rest], Made]:
    """Keep what a function makes of a design and a preset with the design, so that it goes with it.

    Only for a function that makes the same of the same, and whose answer nobody changes.
    """

    @wraps(make)
    def kept(house: Design, units: Preset, *rest: Rest.args, **named: Rest.kwargs) -> Made:
        store = house.__dict__.setdefault("_drawn", {})
        key = (make, units.name, rest, tuple(sorted(named.items())))
        found = store.get(key)
        # A preset is known by itself: two of one name may differ.
        if found is None or found[0] is not units:
            found = store[key] = (units, make(house, units, *rest, **named))
        made: Made = found[1]
        return made

    return kept

"""Which cause a swing acts through, for the hatch of its bar."""

from __future__ import annotations

from collections.abc import Sequence

from heatledger.ledger.replay import carry_back
from heatledger.steps.design import Design
from heatledger.studies.uncertainty import Swing


def causes_of(design: Design, swings: Sequence[Swing]) -> list[str]:
    """The cause of the house's loss that each swing moves most, in the order given; "" for none at all."""
    slopes = {cause: carry_back(each.loss) for cause, each in design.losses.house.causes.items()}
    found = []
    for swing in swings:
        moved = {
            cause: sum(abs(by.get(id(entry), 0.0)) * entry.origin.half_range for entry in swing.entries)
            for cause, by in slopes.items()
        }
        most = max(moved, key=lambda cause: moved[cause], default="")
        found.append(most if most and moved[most] > 0 else "")
    return found

"""What stands beside a figure: the losers of a choice, and what was found together with it."""

from __future__ import annotations

from heatledger.ledger.choosing import Choice
from heatledger.ledger.dimensions import TEMPERATURE_DIFFERENCE
from heatledger.ledger.figures import Figure, Names
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.ledger.solving import Solved
from heatledger.ledger.workings import Beside


def losers_of(choice: Choice, preset: Preset, names: Names) -> tuple[Beside, ...]:
    """What was not chosen, in the order it was offered; a loser without a value by its name alone."""
    return tuple(
        Beside(names.thing(key), show(each, preset), each)
        if isinstance(each, Figure)
        else Beside(names.thing(key), "")
        for key, each in choice.losers
    )


def together_with(solved: Solved, preset: Preset, names: Names) -> tuple[Beside, ...]:
    """The other unknowns of the same search."""
    return tuple(
        Beside(names.thing(key), show(each, preset), each)
        for key, each in solved.solution.figures.items()
        if key != solved.unknown
    )


def left_over(left: Figure, right: Figure, preset: Preset) -> str:
    """What one side of a balance has over the other when the answer is put back, with its unit."""
    kind = TEMPERATURE_DIFFERENCE if left.dimension.absolute else left.dimension
    return show(abs(float(left) - float(right)), preset, kind)

"""A formula computes what it shows: what parts ways with its working is refused at import."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from heatledger.ledger import dimensions as d
from heatledger.ledger.as_text import working
from heatledger.ledger.dimensions import (
    AirFlow,
    Area,
    Conductivity,
    EdgeLoss,
    Head,
    Length,
    Ratio,
    Temperature,
    TemperatureDifference,
    Volume,
    VolumeFlow,
)
from heatledger.ledger.figures import LedgerError
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import absolute, larger, mean, total
from heatledger.ledger.presets import METRIC, US
from heatledger.ledger.symbols import FormulaError, const
from tests.ledger import blind
from tests.ledger.awkward import HERE
from tests.ledger.test_replay import entry

SHARE = const(2.5, "1", HERE, "share")
CHANGING = [2]


def equal_to_ten(area: Area) -> Area:
    """Takes a branch by a test that hardly ever holds."""
    return area * 2 if area == 10.0 else area


def other_than_ten(area: Area) -> Area:
    """Takes the same branch the other way round."""
    return area if area != 10.0 else area * 2


def looks_at_its_input(area: Area) -> Area:
    """Computes another thing for plain numbers."""
    return area * 2 if isinstance(area, float) else area


def looks_at_a_few(share: Ratio) -> Ratio:
    """Computes another thing for some plain numbers."""
    return share + 1 if isinstance(share, float) and share > 0.5 else share


def reads_a_list(area: Area) -> Area:
    """Reads what may change."""
    return area * CHANGING[0]


def helper(area: Any) -> Any:
    """No formula, and with a constant in it."""
    return area * SHARE


def through_a_helper(area: Area) -> Area:
    """Reaches a constant that is not its own."""
    return helper(area)


def head_and_length(head: Head, length: Length) -> Area:
    """Adds a length to a head."""
    return (head + length) * length


def heads_and_length(heads: Parts[Head], length: Length) -> Head:
    """Adds a length to a sum of heads."""
    return total(heads) + length


def water_and_air(water: VolumeFlow, air: AirFlow) -> VolumeFlow:
    """Takes air from water."""
    return water - air


def material_and_edge(conductivity: Conductivity, edge: EdgeLoss) -> EdgeLoss:
    """The larger of two kinds."""
    return larger(edge, conductivity)


def mean_of_two_kinds(head: Head, length: Length) -> Head:
    """The mean of two kinds."""
    return mean(head, length)


def from_zero_as_difference(indoor: Temperature) -> TemperatureDifference:
    """Says a temperature from absolute zero is a difference."""
    return absolute(indoor)


def difference_less_from_zero(rise: TemperatureDifference, indoor: Temperature) -> TemperatureDifference:
    """Takes a temperature from absolute zero from a difference."""
    return rise - absolute(indoor)


def two_from_zero_as_difference(indoor: Temperature, outdoor: Temperature) -> TemperatureDifference:
    """Adds two temperatures from absolute zero."""
    return absolute(indoor) + absolute(outdoor)


REFUSED: dict[Callable[..., Any], str] = {
    equal_to_ten: "== and != on values",
    other_than_ten: "== and != on values",
    looks_at_its_input: "something else than its working would show",
    looks_at_a_few: "something else than its working would show",
    reads_a_list: "CHANGING may change",
    through_a_helper: "it fails on plain numbers",
    head_and_length: "two kinds that are kept apart are added: head is a head, length a length",
    heads_and_length: "two kinds that are kept apart",
    water_and_air: "two kinds that are kept apart",
    material_and_edge: "larger of unlike quantities",
    mean_of_two_kinds: "of unlike quantities",
    from_zero_as_difference: "is a thermodynamic temperature, not a temperature difference",
    difference_less_from_zero: "two kinds that are kept apart",
    two_from_zero_as_difference: "is a thermodynamic temperature",
}


@pytest.mark.parametrize("function", REFUSED, ids=lambda each: each.__name__)
def test_refused_at_import(function: Callable[..., Any]) -> None:
    with pytest.raises(FormulaError, match=REFUSED[function]) as fault:
        formula(HERE)(function)
    assert function.__name__ in str(fault.value)


def test_kinds_that_belong_together_are_added() -> None:
    @formula(HERE)
    def apart(indoor: Temperature, outdoor: Temperature) -> TemperatureDifference:
        """Two temperatures from absolute zero, one less the other."""
        return absolute(indoor) - absolute(outdoor)

    @formula(HERE)
    def warmed(indoor: Temperature, rise: TemperatureDifference, wide: Length, far: Length) -> Area:
        """An absolute temperature and a difference; two lengths."""
        return (absolute(indoor) + rise) / (rise + absolute(indoor)) * (wide + far) * far

    assert apart(300.0, 290.0) == 10.0
    assert warmed(300.0, 10.0, 1.0, 2.0) == 6.0


@formula(HERE)
def of_volume(volume: Volume) -> Volume:
    """Takes what others do not have."""
    return volume * 2


@formula(HERE)
def of_length(area: Length) -> Length:
    """Takes another kind under the same name."""
    return area * 2


@formula(HERE)
def part_of_other(area: Area, other: Area) -> Ratio:
    """Has no answer without the other."""
    return area / other


@pytest.mark.parametrize("short", [of_volume, of_length])
def test_a_short_form_takes_the_parameters_of_its_formula(short: Callable[..., Any]) -> None:
    def fivefold(area: Area) -> Area:
        """Five times an area."""
        return area * 5

    with pytest.raises(LedgerError, match=r"formula fivefold: its short form .* has no such parameter"):
        formula(HERE, by_hand=(short, "all"))(fivefold)


def test_a_short_form_without_an_answer_is_left_out() -> None:
    @formula(HERE, by_hand=(part_of_other, "all"))
    def share_of_both(area: Area, other: Area) -> Ratio:
        """Has an answer without the other."""
        return area / (area + other)

    text = working(share_of_both(entry("area", 3.0, d.AREA), entry("other", 0.0, d.AREA)), METRIC)
    assert "By hand" not in text
    blind.redo(text)
    both = working(share_of_both(entry("area", 3.0, d.AREA), entry("other", 1.5, d.AREA)), US)
    assert "By hand" in both
    blind.redo(both)

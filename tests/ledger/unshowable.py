"""Functions that no formula can be made of, each with what the refusal says."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from heatledger.ledger.dimensions import Area, HeatRate, Length, Ratio, Temperature, TemperatureDifference
from heatledger.ledger.formulas import Parts
from heatledger.ledger.functions import absolute, exp, larger, log, mean, read_between, sqrt, total, where
from tests.ledger import awkward
from tests.ledger.awkward import EMITTER_POWER
from tests.ledger.awkward_more import ONE_KELVIN


def branches(rise: TemperatureDifference) -> TemperatureDifference:
    """Takes a branch by itself."""
    return rise if rise > 5 * ONE_KELVIN else -rise


def both_hold(rise: Ratio, share: Ratio) -> Ratio:
    """Joins two tests."""
    return where(rise < 1 and share < 1, rise, share)


def borrowed_root(area: Area) -> Length:
    """Uses a root that leaves no trace."""
    return math.sqrt(area)


def hidden_number(area: Area, rise: TemperatureDifference) -> HeatRate:
    """Has a U-value hidden in a number."""
    return area * 0.45 * rise


def hidden_large_number(share: Ratio) -> Ratio:
    """Has a number that is no small whole one."""
    return share * 3600


def unlike_sum(area: Area, length: Length) -> Area:
    """Adds a length to an area."""
    return area + length


def two_temperatures(indoor: Temperature, outdoor: Temperature) -> Temperature:
    """Adds two temperatures."""
    return indoor + outdoor


def scaled_temperature(indoor: Temperature) -> Temperature:
    """Doubles a temperature."""
    return indoor * 2


def divided_temperature(indoor: Temperature, outdoor: Temperature) -> Ratio:
    """Divides two temperatures on their scale."""
    return indoor / outdoor


def raised_temperature(indoor: Temperature) -> Ratio:
    """Raises a temperature on its scale."""
    return indoor**2


def negative_temperature(indoor: Temperature) -> Temperature:
    """Turns a temperature over."""
    return -indoor


def root_of_temperature(indoor: Temperature) -> Ratio:
    """Takes the root of a temperature on its scale."""
    return sqrt(indoor)


def difference_less_temperature(rise: TemperatureDifference, indoor: Temperature) -> Temperature:
    """Takes a temperature from a difference."""
    return rise - indoor


def logarithm_of_length(length: Length) -> Ratio:
    """Takes the logarithm of a length."""
    return log(length)


def exponential_of_length(length: Length) -> Ratio:
    """Takes the exponential of a length."""
    return exp(length)


def broken_power_of_length(length: Length) -> Ratio:
    """Raises a length to a broken power."""
    return length**EMITTER_POWER


def power_with_a_unit(share: Ratio, length: Length) -> Ratio:
    """Raises to a power that has a unit."""
    return share**length


def number_to_a_power(share: Ratio) -> Ratio:
    """Raises a number to what goes in."""
    return 2**share


def bare_broken_power(share: Ratio) -> Ratio:
    """Has an exponent without a source."""
    return share**1.4


def parts_in_the_open(parts: Parts[HeatRate]) -> HeatRate:
    """Uses parts without total."""
    return parts * 2  # type: ignore[operator]


def parts_in_a_loop(parts: Parts[HeatRate]) -> HeatRate:
    """Goes through parts itself."""
    return sum(parts)  # type: ignore[call-overload]


def first_of_parts(parts: Parts[HeatRate], rest: HeatRate) -> HeatRate:
    """Adds to parts without total."""
    return rest + parts  # type: ignore[operator]


def total_of_one(heat: HeatRate) -> HeatRate:
    """Adds up what is one figure."""
    return total(heat)


def another_result(area: Area, rise: TemperatureDifference) -> HeatRate:
    """Says it is a heat rate, and is not."""
    return area * rise


def difference_as_temperature(indoor: Temperature, outdoor: Temperature) -> Temperature:
    """Says it is a temperature, and is a difference."""
    return indoor - outdoor


def without_annotation(area, rise: TemperatureDifference) -> HeatRate:  # type: ignore[no-untyped-def]
    """Does not say what goes in."""
    return area * rise


def without_result(area: Area):  # type: ignore[no-untyped-def]
    """Does not say what comes out."""
    return area * 2


def without_dimension(area: float) -> Area:
    """Takes any number."""
    return area


def borrowed_max(first: HeatRate, last: HeatRate) -> HeatRate:
    """Uses max."""
    return max(first, last)


def borrowed_abs(first: HeatRate) -> HeatRate:
    """Uses abs."""
    return abs(first)


def borrowed_round(first: HeatRate) -> HeatRate:
    """Uses round."""
    return round(first)  # type: ignore[call-overload]


def borrowed_floor(first: HeatRate) -> HeatRate:
    """Uses floor division."""
    return first // 2


def a_text(first: HeatRate) -> HeatRate:
    """Has a text in it."""
    return first * "2"  # type: ignore[operator]


def larger_of_unlike(area: Area, length: Length) -> Area:
    """Compares a length to an area."""
    return larger(area, length)


def tested_unlike(area: Area, length: Length) -> Area:
    """Tests a length against an area."""
    return where(area > length, area, area)


def unlike_branches(area: Area, length: Length) -> Area:
    """Has branches of two kinds."""
    return where(area > area, area, length)


def branch_without_test(area: Area, share: Ratio) -> Area:
    """Has no comparison."""
    return where(share, area, area)


def unlike_mean(indoor: Temperature, rise: TemperatureDifference) -> Temperature:
    """Averages a temperature and a difference."""
    return mean(indoor, rise)


def unlike_rows(x: Length, x0: Length, x1: Area, y0: Ratio, y1: Ratio) -> Ratio:
    """Reads between rows of two kinds."""
    return read_between(x, x0, x1, y0, y1)


def absolute_of_difference(rise: TemperatureDifference) -> TemperatureDifference:
    """Counts a difference from absolute zero."""
    return absolute(rise)


def constant_of_a_module(length: Length) -> Length:
    """Takes a constant through its module."""
    return length * awkward.EXPANSION * (5 * ONE_KELVIN)


REFUSED: dict[Callable[..., Any], str] = {
    branches: "cannot be shown: write where",
    both_hold: "'if', 'and', 'or'",
    borrowed_root: "use the ledger's own sqrt",
    hidden_number: "0.45 hides a unit or a source",
    hidden_large_number: "3600 hides a unit or a source",
    unlike_sum: "unlike quantities are added: area and length",
    two_temperatures: "two temperatures are not added",
    scaled_temperature: "is a temperature on its scale",
    divided_temperature: "is a temperature on its scale",
    raised_temperature: "is a temperature on its scale",
    negative_temperature: "has no negative",
    root_of_temperature: "a root of a temperature",
    difference_less_temperature: "not taken from a difference",
    logarithm_of_length: "takes a plain number, not length",
    exponential_of_length: "takes a plain number, not length",
    broken_power_of_length: "a broken power of length",
    power_with_a_unit: "an exponent must be a plain number",
    number_to_a_power: "a number raised to a symbol",
    bare_broken_power: "1.4 hides a unit or a source",
    parts_in_the_open: r"parts are used only by total\(parts\)",
    parts_in_a_loop: r"parts are used only by total\(parts\)",
    first_of_parts: r"parts are used only by total\(parts\)",
    total_of_one: "takes a parameter of many parts",
    another_result: "its expression is not a heat rate",
    difference_as_temperature: "its expression is not a temperature",
    without_annotation: "parameter 'area' has no dimension",
    without_result: "its result has no dimension",
    without_dimension: "parameter 'area' has no dimension",
    borrowed_max: "cannot be shown",
    borrowed_abs: r"abs\(\) cannot be shown",
    borrowed_round: "cannot be shown",
    borrowed_floor: "cannot be shown",
    a_text: "'2' cannot stand in a formula",
    larger_of_unlike: "larger of unlike quantities",
    tested_unlike: "a comparison of unlike quantities",
    unlike_branches: "of unlike quantities",
    branch_without_test: "takes a comparison first",
    unlike_mean: "of unlike quantities",
    unlike_rows: "of unlike quantities",
    constant_of_a_module: "a constant of module awkward is used",
    absolute_of_difference: "takes a temperature on its scale",
}

"""Findings on the result: the house against other houses, and what its loss rests on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import isnan
from typing import Any

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import ancestors, flat
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight, outside_ranges
from heatledger.ledger.sources import JUDGMENT, cite
from heatledger.steps.review.house import GUESSED, Guess, House
from heatledger.steps.review.kinds import Limit, Look, finding, measured

Found = Iterator[Finding | NotChecked]


@finding(
    "loss-coefficient-high",
    Weight.DECIDE,
    cite("", "ordinary houses of all ages", JUDGMENT),
    fires="The house loses more than {0} of heated floor.",
    why="0.70 Btu/(h·ft²·°F) is 49 Btu/(h·ft²) at a span of 70 °F (4.0 W/(m²·K), 155 W/m², 39 K)",
    mend="Sort the surfaces by loss and check the first five, or decide that it is a masonry shell without "
    "insulation.",
    limits=(
        Limit("loss-coefficient-high", "U-0.70", d.TRANSMITTANCE, "loss for each floor area and degree"),
    ),
)
def _loss_coefficient_high(look: Look) -> Found:
    yield from _coefficient(look, above=True)


@finding(
    "loss-coefficient-low",
    Weight.DECIDE,
    cite("", "houses near the passive level", JUDGMENT),
    fires="The house loses less than {0} of heated floor, and its air was not measured.",
    why="0.10 Btu/(h·ft²·°F) is 7 Btu/(h·ft²) at a span of 70 °F (0.57 W/(m²·K), 22 W/m², 39 K); without "
    "an air test that is hope",
    mend="Test the air leakage, and check that no surface is missing.",
    limits=(Limit("loss-coefficient-low", "U-0.10", d.TRANSMITTANCE, "loss for each floor area and degree"),),
)
def _loss_coefficient_low(look: Look) -> Found:
    if not look.house.is_air_tested:
        yield from _coefficient(look, above=False)


def _coefficient(look: Look, above: bool) -> Found:
    house = look.house.losses.house
    if isnan(house.coefficient) or isnan(house.floor_area):
        yield look.wants("house", house.coefficient, house.floor_area)
        return
    each = float(house.coefficient) / float(house.floor_area)
    if above and each > look.limit * (1 + 1e-9):
        yield look.found(
            "house",
            f"The house loses {look.say(house.per_area)} on the design day, far above an ordinary old "
            "house; look for a doubled wall or a wrong U-value.",
            house.per_area,
        )
    elif not above and each < look.limit * (1 - 1e-9):
        yield look.found(
            "house",
            f"The house loses only {look.say(house.per_area)} on the design day, and no air test is on file.",
            house.per_area,
        )


@finding(
    "mostly-guesses",
    Weight.NOTE,
    cite("", "share that rests on guesses", JUDGMENT),
    fires="Parts whose U-value, R-value, F-factor or air changes are assumed (or air taken by exposed "
    "sides) make more than {0} of the loss.",
    why="a band that is wider than the step between two boilers decides the boiler",
    mend="Measure or look up the largest of them.",
    limits=(Limit("mostly-guesses", "50 %", d.RATIO, "share of assumed parts"),),
)
def _mostly_guesses(look: Look) -> Found:
    house = look.house
    if isnan(house.loss):
        yield look.wants("house", house.losses.house.loss)
        return
    guessed = [each for each in house.guesses if each.known == GUESSED]
    share = sum(each.loss for each in guessed) / house.loss if house.loss > 0 else 0.0
    if share > look.limit + 1e-9:
        yield look.found(
            "house",
            f"{look.say(share, d.RATIO)} of the loss rests on assumed values, most of it on "
            f"{'; '.join(each.words for each in guessed[:3])}.",
            house.losses.house.loss,
            (
                Mend(
                    "Measure or look up the largest of them (here with the same values).",
                    as_measured(house, guessed[:3]),
                ),
            ),
        )


def as_measured(house: House, guesses: list[Guess]) -> tuple[Mapping[str, Any], ...]:
    """Changes that mark entries as measured, with the same values: what looking them up could bring."""
    changes: list[Mapping[str, Any]] = []
    for each in guesses:
        made_of = house.job.constructions.get(each.path.removeprefix("constructions/"))
        if made_of is None:
            changes += [measured(each.path, each.entry)] if each.path in house.rates else []
        elif made_of.catalog:
            changes.append(
                {"set": f"{each.path}/catalog", "to": {"is": made_of.catalog, "known": "measured"}}
            )
        else:
            way = next(one for one in ("u_value", "r_value", "f_factor") if getattr(made_of, one) is not None)
            changes.append(measured(f"{each.path}/{way}", each.entry))
    return tuple(changes)


@finding(
    "one-entry-swings",
    Weight.NOTE,
    cite("", "half-ranges of inputs", JUDGMENT),
    fires="One U-value, R-value, F-factor or air change may move the loss of the house by more than {0} "
    "either way, by how well it is known.",
    why="the answer is no better than the one value most of it hangs on",
    mend="Measure it, test it, or look it up before the rest.",
    limits=(Limit("one-entry-swings", "10 %", d.RATIO, "swing of one entry"),),
)
def _one_entry_swings(look: Look) -> Found:
    house = look.house
    for each in house.guesses:
        swing = abs(each.loss) * each.share
        if house.loss > 0 and swing > look.limit * house.loss + 1e-9:
            yield look.found(
                each.path,
                f"{each.words[:1].upper()}{each.words[1:]}: known as {each.known or 'told'}, it may move "
                "the house by "
                f"{look.say(swing, d.HEAT_RATE)} either way, {look.say(swing / house.loss, d.RATIO)} of "
                "the loss.",
                house.losses.house.loss,
                (
                    Mend(
                        "Measure it, test it, or look it up before the rest (here with the same value).",
                        as_measured(house, [each]),
                    ),
                ),
            )


@finding(
    "outside-the-range-of-a-formula",
    Weight.DECIDE,
    cite("", "the range beside each formula", JUDGMENT),
    fires="A figure goes into a formula that is not made for values of its size. Each formula names its "
    "range on its own page.",
    why="outside of it nobody has held the formula to measurements or tables",
    mend="Check the entry, or take the result for a rough one and say so.",
)
def _outside_the_range_of_a_formula(look: Look) -> Found:
    losses = look.house.losses
    every = ancestors(losses.house.loss, *(each.temperature for each in losses.unheated.values()))
    seen: set[int] = set()
    for figure, words, value, low, high in outside_ranges(every):
        given = next(each for each in flat(figure.inputs) if float(each) == value)
        if id(given) in seen:
            continue
        seen.add(id(given))
        names = look.design.names
        lowest, highest = (look.say(each, given.dimension) for each in (low, high))
        made_for = f"up to {highest}" if low == 0 else f"from {lowest} to {highest}"
        yield look.found(
            names.path(given) or names.path(figure) or "house",
            f"{figure.origin.title}: it is made for a {words} {made_for}, and here it is {look.say(given)} "
            f"({names.title(given)}).",
            figure,
        )

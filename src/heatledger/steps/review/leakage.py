"""Findings on outdoor air that leaks in."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, PRACTICE, SEEN, cite
from heatledger.steps.review.house import is_by_sides
from heatledger.steps.review.kinds import Limit, Look, finding, measured, set_to

Found = Iterator[Finding | NotChecked]
ORDINARY = 1980
"""A house built before this year is taken for an ordinary or older one."""


def _as_tested(look: Look) -> Mend:
    """The test that is asked for, tried with the same rates as before."""
    tested = tuple(measured(path, each) for path, each in look.house.rates.items() if not isnan(each))
    return Mend("Test with a blower door and put the result in as measured (here the same figure).", tested)


@finding(
    "blower-door-figure-as-natural",
    Weight.MUST_FIX,
    cite("GBA-N", "natural leakage against the test at 50 Pa", SEEN),
    fires="The air of the whole house changes more than {0}.",
    why="the test figure at 50 Pa and the winter figure differ by about 20 to 1",
    mend="Convert the test figure; as a first step divide it by 20.",
    limits=(Limit("blower-door-figure-as-natural", "2.0 ACH", d.AIR_CHANGES, "air changes of a house"),),
)
def _blower_door_figure_as_natural(look: Look) -> Found:
    mean = look.house.mean_changes
    if isnan(mean):
        rates = [each.air.changes for each in look.house.losses.rooms.values()]
        yield look.wants("air", *(rates or [look.house.losses.house.loss]))
    elif mean > look.limit * (1 + 1e-9):
        changes = tuple(
            set_to(path, look.text(float(each) / 20, d.AIR_CHANGES))
            for path, each in look.house.rates.items()
            if float(each) > look.limit
        )
        yield look.found(
            "air",
            f"{look.say(mean, d.AIR_CHANGES)} for the whole house looks like the figure of a blower door "
            "at 50 Pa, not the winter one.",
            look.house.losses.house.causes["air"].loss,
            (Mend("Take it for the test figure and divide by 20.", changes),) if changes else (),
        )


@finding(
    "air-change-guessed",
    Weight.NOTE,
    cite("", "share at which air decides", JUDGMENT),
    fires="Air whose rate is assumed, or taken by the number of exposed sides, makes more than {0} of the "
    "loss.",
    why="air leakage differs several times over between houses that look alike",
    mend="Test with a blower door, or carry a tight and a loose case as what-ifs.",
    limits=(Limit("air-change-guessed", "25 %", d.RATIO, "share of guessed air"),),
)
def _air_change_guessed(look: Look) -> Found:
    house = look.house
    if isnan(house.loss):
        yield look.wants("air", house.losses.house.loss)
        return
    share = house.air_guessed / house.loss if house.loss else 0.0
    if share > look.limit + 1e-9:
        mends = [Mend("Carry a tight and a loose case as what-ifs.")]
        if _as_tested(look).changes:
            mends.insert(0, _as_tested(look))
        yield look.found(
            "air",
            f"Air leakage is a guess, and it is {look.say(share, d.RATIO)} of the loss; half or double "
            "the guess moves "
            f"the house by {look.say(house.air_guessed / 2, d.HEAT_RATE)} down or "
            f"{look.say(house.air_guessed, d.HEAT_RATE)} up.",
            house.losses.house.causes["air"].loss,
            tuple(mends),
        )


@finding(
    "air-and-glass-not-leading",
    Weight.NOTE,
    cite("AUDEL", "windows and doors lose at least 30 %", PRACTICE),
    fires=f"In a house built before {ORDINARY} whose air was not measured, air and windows make less "
    f"than {{0}} "
    "of the loss.",
    why="published readings: windows and doors at least 30 %, air a third to a half",
    mend="Check the air changes, and the U-values and the number of the windows.",
    limits=(Limit("air-and-glass-not-leading", "40 %", d.RATIO, "share of air and windows"),),
)
def _air_and_glass_not_leading(look: Look) -> Found:
    house = look.house
    if house.is_air_tested:
        return
    if house.job.built is None or isnan(house.loss):
        words = "" if house.job.built else "the year the house was built"
        yield look.wants("house", house.losses.house.loss, words=words)
    elif house.job.built < ORDINARY and house.loss > 0:
        causes = house.losses.house.causes
        share = sum(float(causes[each].share) for each in ("air", "windows") if each in causes)
        if share < look.limit - 1e-9:
            yield look.found(
                "house",
                f"Air and windows make only {look.say(share, d.RATIO)} of the loss; in a house of "
                f"{house.job.built} "
                "they usually lead.",
                causes["air"].loss,
            )


@finding(
    "wind-on-all-sides",
    Weight.DECIDE,
    cite("HOF-ch17", "infiltration of the whole building, shared by volume", SEEN),
    fires="Every room has air changes of its own, and together they come to more than {0} of those given "
    "for the house.",
    why="wind blows in on one side and out on the other, so all rooms never have their worst air at once",
    mend="Size rooms on their own air and the plant on that of the house, or share the air of the house by "
    "volume.",
    limits=(Limit("wind-on-all-sides", "130 %", d.RATIO, "air of the rooms against that of the house"),),
)
def _wind_on_all_sides(look: Look) -> Found:
    given = look.house.job.air.changes if look.house.job.air else None
    own = [room.id for room, _ in look.house.rooms if room.air is not None]
    if given is None or isnan(given) or not own or len(own) < len(look.house.job.rooms):
        return
    if look.house.mean_changes > look.limit * float(given) * (1 + 1e-9):
        shared = tuple({"remove": f"rooms/{id}/air"} for id in own)
        yield look.found(
            "air",
            f"The rooms together change their air {look.say(look.house.mean_changes, d.AIR_CHANGES)}, "
            "the house is given "
            f"{look.say(given)}; the sum carries wind on all sides.",
            look.house.losses.house.causes["air"].loss,
            (
                Mend("Share the air of the house by volume.", shared),
                Mend("Keep the sum for the rooms, not for the plant."),
            ),
        )


@finding(
    "air-by-two-methods",
    Weight.NOTE,
    cite("", "one method for the air of one house", JUDGMENT),
    fires="Some rooms take their air by the number of exposed sides, others by air changes that were given.",
    why="the number of exposed sides gives 0.5 to 2 changes an hour, more than most houses have today",
    mend="Use one of the two in all rooms.",
)
def _air_by_two_methods(look: Look) -> Found:
    rates = [(room, lost.air.changes) for room, lost in look.house.rooms]
    sides = [room.id for room, rate in rates if is_by_sides(rate)]
    given = [rate for _, rate in rates if not is_by_sides(rate)]
    if not sides or not given:
        return
    mends = [Mend("Use one of the two in all rooms.")]
    if not isnan(given[0]):
        to = look.text(float(given[0]), d.AIR_CHANGES)
        mends.insert(
            0,
            Mend(f"Give these rooms {to} too.", tuple(set_to(f"rooms/{id}/air/changes", to) for id in sides)),
        )
    yield look.found(
        "air",
        f"Rooms that take their air by exposed sides: {len(sides)}; by air changes that were given: "
        f"{len(given)}.",
        look.house.losses.house.causes["air"].loss,
        tuple(mends),
    )


@finding(
    "air-tight-on-hope",
    Weight.NOTE,
    cite("", "least air changes without a test", JUDGMENT),
    fires="The air of the whole house changes less than {0}, and it was not measured.",
    why="only a house that was built tight and tested so is known to leak this little",
    mend="Test with a blower door, and put the result in as measured.",
    limits=(Limit("air-tight-on-hope", "0.2 ACH", d.AIR_CHANGES, "least air changes"),),
)
def _air_tight_on_hope(look: Look) -> Found:
    mean = look.house.mean_changes
    if mean < look.limit * (1 - 1e-9) and not look.house.is_air_tested:
        yield look.found(
            "air",
            f"{look.say(mean, d.AIR_CHANGES)} is a very tight house, and no test is on file.",
            "",
            (_as_tested(look),),
        )

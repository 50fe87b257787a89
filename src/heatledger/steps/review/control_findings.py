"""Findings on controls: the reset line, the boiler under it, and what is written down of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import DERIVED, SEEN, cite
from heatledger.steps.controls import ResetPoint, asked_at
from heatledger.steps.review.kinds import KINDS, Limit, Look, finding, set_to
from heatledger.steps.targets import CAUTION_LOCAL, OIL

Found = Iterator[Finding | NotChecked]
COLD_IRON = "Flue gas that condenses eats a boiler and its vent, and lets carbon monoxide into the house."
MILD_DAY = 277.59
"""40 °F in kelvin: the mild day at which a fixed supply is looked at."""
SAME = 1e-6


def with_caution(found: Finding, words: str) -> Finding:
    """The finding with what could hurt someone, and whose word holds."""
    return replace(found, caution=f"{words} {CAUTION_LOCAL}")


def points_of(look: Look) -> list[ResetPoint]:
    """The points of the reset table that have a value, from the design day on."""
    return [each for each in look.design.controls.controls.reset.values() if not isnan(each.supply)]


@finding(
    "no-reset",
    Weight.DECIDE,
    cite("WAC-R403.2", "automatic lowering of boiler water with the load", SEEN),
    fires="The supply is held the same in all weather, and near 40 °F (4 °C) outdoors that is more than {0} "
    "over what the emitters need, and over what keeps the return of a boiler that may not condense at its "
    "limit.",
    why="water that is cooler in mild weather costs less and makes rooms steadier",
    mend="Let the supply follow the weather along the reset table.",
    limits=(Limit("no-reset", "10 °F", d.TEMPERATURE_DIFFERENCE, "supply over need in mild weather"),),
)
def _no_reset(look: Look) -> Found:
    system, points = look.house.job.system, points_of(look)
    if system.plant.boiler is None or system.controls.outdoor_reset:
        return
    supply = look.design.emitters.house.supply
    if system.controls.outdoor_reset is None:
        yield look.wants("controls", words="whether the supply follows the weather")
    elif not points or isnan(supply):
        yield look.wants("controls", supply)
    else:
        mild = min(points, key=lambda each: abs(float(each.outdoor) - MILD_DAY))
        least = least_at(look, mild)
        enough = max(float(mild.supply), least)
        if float(supply) - enough > look.limit + SAME:
            kept = (
                f" and keeps the return at {look.say(return_limit(look), d.TEMPERATURE)}"
                if least > float(mild.supply)
                else ""
            )
            yield look.found(
                "controls",
                f"Water is made at {look.say(supply)} every day, though {look.say(enough, d.TEMPERATURE)} is "
                f"enough{kept} at {look.say(mild.outdoor)} outdoors.",
                mild.supply,
                _to_follow(look, points, float(supply)),
            )


def _to_follow(look: Look, points: list[ResetPoint], supply: float) -> tuple[Mend, ...]:
    """Ways to let the water follow the weather; a boiler that must stay hot gets a floor, or mixing."""
    follow = set_to("controls/outdoor_reset", "yes")
    keep = Mend("Keep it fixed where something else needs hot water, and say so.")
    floor = floor_of(look, points)
    if return_limit(look) <= 0:
        return Mend("Let the supply follow the weather.", (follow,)), keep
    mixing = Mend(
        "Mix the water after the boiler, so that the rooms follow the weather and the boiler stays hot."
    )
    if not floor < supply - SAME:
        return mixing, keep
    text = look.text(floor, d.TEMPERATURE, to=1)
    words = f"Let the supply follow the weather, and never ask for less than {text}."
    return Mend(words, (follow, set_to("controls/least_supply", text))), mixing, keep


def return_limit(look: Look) -> float:
    """The coolest return that the boiler may have, K; 0 where flue gas may condense in it."""
    boiler, kind = look.house.job.system.plant.boiler, KINDS["reset-under-boiler-limit"]
    if boiler is None or boiler.kind != "non-condensing":
        return 0.0
    if boiler.return_limit is not None:
        return float(boiler.return_limit)
    return Look(look.house, kind).limit_at(1 if boiler.fuel == OIL else 0)


def least_at(look: Look, point: ResetPoint) -> float:
    """The supply whose return is just at the boiler's limit at a point, K; 0 without a limit."""
    limit = return_limit(look)
    return limit + float(asked_at(point)) - float(point.return_) if limit > 0 else 0.0


def floor_of(look: Look, points: list[ResetPoint]) -> float:
    """The lowest supply to ask for, so that the return keeps to the boiler's limit in all weather, K."""
    cold = [each for each in points if _by_line(look, each, points[0]) < least_at(look, each) - SAME]
    return max((least_at(look, each) for each in cold), default=0.0)


def _by_line(look: Look, point: ResetPoint, coldest: ResetPoint) -> float:
    """What the control asks for at a point once it follows the weather, K: by the job's line if any."""
    asked = look.house.job.system.controls
    if point.line is not None or asked.coldest_supply is None or asked.mildest_supply is None:
        return float(asked_at(point))
    balance = look.design.controls.controls.balance
    mild = balance if asked.mildest_outdoor is None else asked.mildest_outdoor
    part = (float(point.outdoor) - float(coldest.outdoor)) / (float(mild) - float(coldest.outdoor))
    line = float(asked.coldest_supply) + part * (float(asked.mildest_supply) - float(asked.coldest_supply))
    return max(line, 0.0 if asked.least_supply is None else float(asked.least_supply))


@finding(
    "reset-left-as-shipped",
    Weight.DECIDE,
    cite("VGH", "an owner sets the curve of a condensing boiler", SEEN),
    fires="The supply that the control asks for on the design day is more than {0} over what is needed.",
    why="a control as it comes from the box is set for the weakest emitters there are",
    mend="Set the curve from the emitters and trim it after a cold night.",
    limits=(Limit("reset-left-as-shipped", "15 °F", d.TEMPERATURE_DIFFERENCE, "curve over need"),),
)
def _reset_left_as_shipped(look: Look) -> Found:
    asked, points = look.house.job.system.controls, points_of(look)
    if not asked.outdoor_reset or asked.coldest_supply is None:
        return
    if not points:
        yield look.wants("controls/coldest_supply", look.design.emitters.house.lowest_supply)
        return
    cold, needed = asked.coldest_supply, look.design.emitters.house.lowest_supply
    if isnan(needed):
        needed = points[0].supply
    if float(cold) - float(needed) > look.limit + SAME:
        text = look.text(float(needed), d.TEMPERATURE)
        yield look.found(
            "controls/coldest_supply",
            f"The curve sends {look.say(cold)} on the design day where {look.say(needed)} will do.",
            needed,
            (
                Mend(f"Set it to {look.say(needed)}.", (set_to("controls/coldest_supply", text),)),
                Mend("Keep it where a slower curve was chosen on purpose, and say so."),
            ),
        )


@finding(
    "straight-curve-sags",
    Weight.DECIDE,
    cite("", "a straight line held against the power law of emitters", DERIVED),
    fires="The straight line of the control lies more than {0} below what the emitters need, somewhere.",
    why="output goes with a power of the excess, so in mild weather emitters need more than a line gives",
    mend="Bend the curve, or make its mild end warmer.",
    limits=(Limit("straight-curve-sags", "3.5 °F", d.TEMPERATURE_DIFFERENCE, "line below need"),),
)
def _straight_curve_sags(look: Look) -> Found:
    short = {id: -float(over) for id, over in _over(look).items()}
    points = look.design.controls.controls.reset
    worst = max(short, key=short.__getitem__, default="")
    if not worst or short[worst] <= look.limit + SAME:
        return
    low = [look.say(points[id].outdoor) for id, gap in short.items() if gap > look.limit]
    where = f"at {low[0]}" if len(low) == 1 else f"from {low[0]} to {low[-1]}"
    yield look.found(
        "controls/mildest_supply",
        f"The straight line of the control is short {where} outdoors: up to "
        f"{look.say(short[worst], d.TEMPERATURE_DIFFERENCE)} at {look.say(points[worst].outdoor)}.",
        points[worst].supply,
    )


def _over(look: Look) -> dict[str, Figure]:
    """How far the straight line lies over the need, by point; empty where there is no line."""
    found = {id: each.line_over for id, each in look.design.controls.controls.reset.items()}
    return {id: each for id, each in found.items() if each is not None and not isnan(each)}


@finding(
    "reset-under-boiler-limit",
    Weight.MUST_FIX,
    cite("MEI", "reset stops at 140 °F unless the boiler is decoupled", SEEN),
    fires="A boiler that does not condense is on outdoor reset, and its return falls below its limit: {0} "
    "with gas, {1} with oil, or that of the job.",
    why="flue gas of natural gas condenses below about 130 °F (54 °C)",
    mend="Mix the water after the boiler, or raise the lowest supply.",
    limits=(
        Limit("reset-under-boiler-limit", "130 °F", d.TEMPERATURE, "lowest return with gas", "from memory"),
        Limit(
            "reset-under-boiler-limit-oil", "140 °F", d.TEMPERATURE, "lowest return with oil", "read there"
        ),
    ),
)
def _reset_under_boiler_limit(look: Look) -> Found:
    system = look.house.job.system
    boiler = system.plant.boiler
    if boiler is None or boiler.kind != "non-condensing" or not system.controls.outdoor_reset:
        return
    points = points_of(look)
    if not points:
        yield look.wants("controls", look.design.emitters.house.supply)
        return
    limit, last = return_limit(look), min(points, key=lambda each: float(each.return_))
    if float(last.return_) < limit - SAME:
        text = look.text(floor_of(look, points), d.TEMPERATURE, to=1)
        yield with_caution(
            look.found(
                "controls/outdoor_reset",
                f"At {look.say(last.outdoor)} outdoors reset lets the boiler fall to "
                f"{look.say(asked_at(last))}; its return then is {look.say(last.return_)}, below "
                f"{look.say(limit, d.TEMPERATURE)}.",
                last.return_,
                (
                    Mend(f"Never ask for less than {text}.", (set_to("controls/least_supply", text),)),
                    Mend("Mix the water after the boiler, so that the boiler stays hot."),
                ),
            ),
            COLD_IRON,
        )


@finding(
    "no-sequence-written",
    Weight.MUST_FIX,
    cite("IRC-550", "the installer leaves a control diagram and instructions", SEEN),
    fires="There is a boiler with circuits, and the job does not say its zones, its high limit, or if the "
    "supply follows the weather.",
    why="nobody after you can know what the system is meant to do",
    mend="Give the zones, the high limit and the kind of reset, so that the sequence can be printed.",
)
def _no_sequence(look: Look) -> Found:
    system = look.house.job.system
    if system.plant.boiler is None or not system.circuits:
        return
    lacking = [
        words
        for words, given in (
            ("the zones", bool(system.zones)),
            ("the high limit", system.plant.high_limit is not None),
            ("whether the supply follows the weather", system.controls.outdoor_reset is not None),
        )
        if not given
    ]
    if lacking:
        said = " and ".join([", ".join(lacking[:-1]), lacking[-1]] if len(lacking) > 1 else lacking)
        yield look.found("controls", f"The sequence of operation cannot be written: {said} is not said.")

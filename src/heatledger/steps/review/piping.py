"""Findings on tubes: speed and friction."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import DERIVED, MEMORY, SEEN, cite
from heatledger.physics.friction import friction_factor, laminar_factor
from heatledger.steps.review.kinds import Limit, Look, finding
from heatledger.steps.review.piping_look import (
    MAINS,
    circuits_of,
    head_start,
    larger_tube,
    pieces,
    rubs_less,
    slower_than,
)
from heatledger.steps.tubes import EASY, QUIET

Found = Iterator[Finding | NotChecked]
JUST = 1e-9
SMALL = 2.1 * 0.0254
"""Bore up to which the speed limit of small pipe holds: 2 in. nominal."""


@finding(
    "pipe-too-fast",
    Weight.DECIDE,
    QUIET,
    fires="Water moves faster than {0} in a tube of up to 2 in. (50 mm).",
    why="8 gpm in 3/4 in. copper of type M is 5.0 ft/s (0.50 L/s, 1.5 m/s)",
    mend="Take the next larger tube, a wider drop, or two circuits.",
    limits=(Limit("pipe-too-fast", "4 ft/s", d.VELOCITY, "fastest water near rooms", "common practice"),),
)
def _pipe_too_fast(look: Look) -> Found:
    for each in pieces(look):
        if isnan(each.speed):
            yield look.wants(each.path, each.speed)
        elif float(each.laid.bore) <= SMALL and float(each.speed) > look.limit * (1 + JUST):
            yield look.found(
                each.path,
                f"{head_start(each.words)} in {each.laid.tube} moves {look.say(each.speed)}; it will be "
                "heard, and bends wear.",
                each.speed,
                (
                    larger_tube(each, slower_than(each, look.limit)),
                    Mend("Take a wider drop, or make two circuits of it."),
                ),
            )


@finding(
    "pipe-rubs-much",
    Weight.DECIDE,
    EASY,
    fires="At the design flow a tube costs more than {0} of head.",
    why="the usual range is 1 to 4 ft in 100 ft (1 to 4 m in 100 m)",
    mend="Take the next larger tube.",
    limits=(Limit("pipe-rubs-much", "4 ft/100 ft", d.FRICTION, "friction", "common practice"),),
)
def _pipe_rubs_much(look: Look) -> Found:
    for each in pieces(look):
        if isnan(each.laid.friction):
            yield look.wants(each.path, each.laid.friction)
        elif float(each.laid.friction) > look.limit * (1 + JUST):
            yield look.found(
                each.path,
                f"{head_start(each.words)} in {each.laid.tube} costs {look.say(each.laid.friction)} at "
                f"{look.say(each.laid.flow)}.",
                each.laid.friction,
                (
                    larger_tube(each, rubs_less(look, each)),
                    Mend("Keep it where the circulator has the head, and say so."),
                ),
            )


@finding(
    "air-not-carried-down",
    Weight.NOTE,
    cite("HOF-ch22", "2 ft/s to carry air down", MEMORY),
    fires="The fastest water of a circuit is slower than {0}.",
    why="bubbles rise faster than slow water falls",
    mend="Put a vent at every high point, and purge each circuit at speed.",
    limits=(Limit("air-not-carried-down", "2 ft/s", d.VELOCITY, "speed that takes air along"),),
)
def _air_not_carried_down(look: Look) -> Found:
    for id, circuit in circuits_of(look).items():
        own = [each for each in pieces(look) if each.circuit == id]
        speeds = [float(each.speed) for each in own]
        if any(map(isnan, speeds)):
            yield look.wants(f"circuits/{id}", *(each.speed for each in own))
        elif speeds and max(speeds) < look.limit * (1 - JUST):
            fastest = own[speeds.index(max(speeds))]
            yield look.found(
                f"circuits/{id}",
                f"Nowhere in {circuit.name} does water move faster than {look.say(fastest.speed)}; where it "
                "falls from a high point it leaves its air there.",
                fastest.speed,
            )


@finding(
    "header-too-small",
    Weight.NOTE,
    cite("PM-99580", "about 2 ft/s in headers", SEEN),
    fires="With every zone calling, water moves faster than {0} in the mains that all circuits share. Above "
    "{1} it is to be decided.",
    why="the head of what is shared changes with every zone that comes and goes",
    mend="Take mains one or two sizes larger.",
    limits=(
        Limit("header-too-small", "2 ft/s", d.VELOCITY, "speed in the mains"),
        Limit("header-far-too-small", "4 ft/s", d.VELOCITY, "speed in the mains to decide on"),
    ),
)
def _header_too_small(look: Look) -> Found:
    if len(circuits_of(look)) < 2:
        return
    for each in pieces(look):
        if each.path != MAINS:
            continue
        if isnan(each.speed):
            yield look.wants(MAINS, each.speed)
        elif float(each.speed) > look.limit * (1 + JUST):
            yield look.found(
                MAINS,
                f"The mains run at {look.say(each.speed)} with all circuits open; they will feel each other "
                "come and go.",
                each.speed,
                (larger_tube(each, slower_than(each, look.limit)),),
                Weight.DECIDE if float(each.speed) > look.limit_at(1) else Weight.NOTE,
            )


@finding(
    "between-smooth-and-rough",
    Weight.NOTE,
    cite("", "three lawful answers differ by 2 to 1 at a Reynolds number of 3,135", DERIVED),
    fires="At the design flow the Reynolds number of a tube is between {0} and {1}.",
    why="nature is not single valued there",
    mend="Leave margin on that run, or change its tube or its flow.",
    limits=(
        Limit("smooth-flow-ends", "2000", d.COUNT, "end of smooth flow"),
        Limit("rough-flow-begins", "4000", d.COUNT, "start of rough flow"),
    ),
)
def _between_smooth_and_rough(look: Look) -> Found:
    for each in pieces(look):
        number = float(each.laid.reynolds)
        if isnan(number):
            yield look.wants(each.path, each.laid.reynolds)
        elif look.limit < number < look.limit_at(1):
            own = float(each.laid.friction_factor)
            root = each.laid.friction_factor.inputs[1]
            rough = float(each.laid.relative_roughness)
            most = friction_factor.formula.body(4000.0, float(root), rough)  # type: ignore[attr-defined]
            least = laminar_factor.formula.body(number)  # type: ignore[attr-defined]
            low, high = (float(each.laid.head) * other / own for other in (least, most))
            yield look.found(
                each.path,
                f"{head_start(each.words)} runs between smooth and rough flow; its loss may be "
                f"{look.say(low, d.HEAD)} to {look.say(high, d.HEAD)}.",
                each.laid.reynolds,
            )


@finding(
    "pipe-in-the-frost",
    Weight.MUST_FIX,
    cite("NASHOBA", "heating pipes that froze", SEEN),
    fires="The mains run through a space that falls below {0} on the design day.",
    why="insulation only slows the frost",
    mend="Lay them through heated rooms, or keep the space above freezing.",
    limits=(Limit("pipe-in-the-frost", "32 °F", d.TEMPERATURE, "freezing"),),
)
def _pipe_in_the_frost(look: Look) -> Found:
    for each in pieces(look):
        space = look.house.losses.unheated.get(each.pipe.through.removeprefix("unheated/"))
        if space is None:
            continue
        if isnan(space.temperature):
            yield look.wants(each.path, space.temperature)
        elif float(space.temperature) < look.limit - JUST:
            yield look.found(
                each.path,
                f"{head_start(each.words)} run through {space.name}, which falls to "
                f"{look.say(space.temperature)}; they freeze on the first night nothing calls.",
                space.temperature,
            )

"""Findings on the boiler: its size against the load, its plate, and the height of the site."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import SECOND_HAND, SEEN, cite
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.plant_look import BOILER, CARBON_MONOXIDE, boiler_of, cautioned, resized, room_of
from heatledger.steps.targets import ELECTRIC, burns

Found = Iterator[Finding | NotChecked]
JUST = 1e-9
MILD_DAY, LEAST_MILD = 277.59, 0.5
"""40 °F in kelvin, and the least part of its load that a house is taken to ask for on a mild day."""


@finding(
    "boiler-too-big",
    Weight.DECIDE,
    cite("EXCESSAIR", "sizing rule for boilers", SEEN),
    fires="The boiler gives more than {0} of the load. Above {1} it must be fixed, where the burner does not "
    "turn down to half of the load, or to what it is at 40 °F (4 °C) outdoors.",
    why="the model sizing rule stops at 1.40; a plant ratio above 3 cost 6 to 9 % in a simulation",
    mend="Take the next smaller size, or a burner that turns down further.",
    limits=(
        Limit("boiler-too-big", "140 %", d.RATIO, "output over load"),
        Limit("boiler-far-too-big", "200 %", d.RATIO, "output over load that must be fixed"),
    ),
)
def _boiler_too_big(look: Look) -> Found:
    boiler, room = boiler_of(look), room_of(look)
    if boiler is None or room.ratio is None or room.output is None:
        return
    if isnan(room.ratio):
        yield look.wants(BOILER, room.ratio)
        return
    if float(room.ratio) <= look.limit + JUST:
        return
    least = boiler.least_output
    turns_down = least is not None and float(least) <= float(room.load) * _mild_share(look)
    far = float(room.ratio) > look.limit_at(1) and not turns_down
    smaller = float(room.largest_output) if look.given[0] is None else float(room.load) * look.limit
    words = f"Take a boiler of no more than {look.say(smaller, d.HEAT_RATE)} at this height."
    yield look.found(
        BOILER,
        f"{boiler.name} gives {look.say(room.output)} and the house asks for {look.say(room.load)} on its "
        f"design day: {float(room.ratio):.2f} times.",
        room.ratio,
        (
            Mend(words, resized(look, boiler, smaller, -1)),
            Mend("Keep it with a burner that turns down, or a buffer tank, and say why."),
        ),
        Weight.MUST_FIX if far else Weight.DECIDE,
    )


def _mild_share(look: Look) -> float:
    """Part of the design load on a mild day, at least half."""
    site = look.house.losses.site
    if isnan(site.indoor) or isnan(site.outdoor) or not float(site.outdoor) < MILD_DAY:
        return LEAST_MILD
    span = float(site.indoor) - float(site.outdoor)
    return max(LEAST_MILD, (float(site.indoor) - MILD_DAY) / span)


@finding(
    "boiler-too-small",
    Weight.MUST_FIX,
    cite("HPAC-RATE", "output sizes the boiler", SEEN),
    fires="The boiler gives less than {0} of the loss of the house and of the pipes outside its rooms.",
    why="below the outdoor temperature at which output and load meet, the house cools",
    mend="Take a larger boiler, tighten the house, or add a second source.",
    limits=(Limit("boiler-too-small", "100 %", d.RATIO, "output over load"),),
)
def _boiler_too_small(look: Look) -> Found:
    boiler, room = boiler_of(look), room_of(look)
    if boiler is None or room.ratio is None or room.output is None:
        return
    if isnan(room.ratio):
        yield look.wants(BOILER, room.ratio)
    elif float(room.ratio) < look.limit - JUST and float(room.load) > 0:
        site = look.house.losses.site
        reach = float(site.indoor) - float(room.ratio) * (float(site.indoor) - float(site.outdoor))
        enough = float(room.load) * look.limit
        yield look.found(
            BOILER,
            f"{boiler.name} gives {look.say(room.output)} and must carry {look.say(room.load)}; below "
            f"{look.say(reach, d.TEMPERATURE)} outdoors the house cools.",
            room.ratio,
            (
                Mend(
                    f"Take a boiler of at least {look.say(enough, d.HEAT_RATE)} at this height.",
                    resized(look, boiler, enough, 1),
                ),
                Mend("Tighten and insulate the house first, or add a second source."),
            ),
        )


@finding(
    "input-taken-for-output",
    Weight.MUST_FIX,
    cite("HPAC-RATE", "input sizes gas and vent, output sizes heat", SEEN),
    fires="The output of a boiler with a fire is more than {0} of its input.",
    why="what the burner eats is not what the water gets",
    mend="Take the output from the plate, or the input by its efficiency.",
    limits=(Limit("input-taken-for-output", "99 %", d.RATIO, "output over input"),),
)
def _input_taken_for_output(look: Look) -> Found:
    boiler = boiler_of(look)
    if boiler is None or not burns(boiler) or boiler.input is None or boiler.output is None:
        return
    if float(boiler.output) > look.limit * float(boiler.input) * (1 + JUST):
        mends = [Mend("Read the output on the plate, and type that.")]
        if boiler.efficiency is not None and float(boiler.efficiency) <= look.limit:
            given = look.text(float(boiler.input) * float(boiler.efficiency), d.HEAT_RATE)
            change = set_to(f"{BOILER}/output", given)
            mends.insert(0, Mend(f"Take the input by its efficiency, {given}.", (change,)))
        yield look.found(
            f"{BOILER}/output",
            f"{look.say(boiler.output)} stands as the output, and {look.say(boiler.input)} is what the "
            "burner eats; the water gets less.",
            boiler.output,
            tuple(mends),
        )


@finding(
    "rating-at-sea-level",
    Weight.DECIDE,
    cite("ICM-2015", "rule of the fuel-gas code, E.1.1(d)", SEEN),
    fires="The site of a boiler with a fire lies more than {0} above the sea.",
    why="two readings of the rule take 20 % or 12 % off at 5,000 ft (1,524 m); here the stricter one is used",
    mend="Ask the maker for the derate and the kit for this height.",
    limits=(Limit("rating-at-sea-level", "2000 ft", d.LENGTH, "height above the sea"),),
)
def _rating_at_sea_level(look: Look) -> Found:
    boiler, room, height = boiler_of(look), room_of(look), look.house.job.site.elevation
    if boiler is None or not burns(boiler) or room.altitude_factor is None:
        return
    if isnan(height):
        yield look.wants(BOILER, height)
    elif float(height) > look.limit * (1 + JUST):
        fire, what = (room.output, "output") if room.input is None else (room.input, "input")
        most = f"the {what} of {boiler.name} is less than on its plate"
        if fire is not None and not isnan(fire):
            most = f"the {what} of {boiler.name} is no more than {look.say(fire)}"
        found = look.found(
            BOILER,
            f"At {look.say(height)} {most}; set for the sea it burns dirty.",
            room.altitude_factor,
            (
                Mend(
                    "Ask the maker for the derate and the kit for this height, and write down which was used."
                ),
            ),
        )
        yield cautioned(found, CARBON_MONOXIDE)


@finding(
    "label-efficiency-promised",
    Weight.NOTE,
    cite("ETH-BOILER", "efficiency by return temperature", SECOND_HAND),
    fires="The efficiency typed for a condensing boiler is more than {0} above what it reaches at the water "
    "that comes back on the design day.",
    why="a label is one test schedule, with cool water and no pipes",
    mend="Promise the lower figure, or bring the return down.",
    limits=(Limit("label-efficiency-promised", "2 %", d.RATIO, "label over the efficiency at the return"),),
)
def _label_efficiency_promised(look: Look) -> Found:
    boiler, room = boiler_of(look), room_of(look)
    if boiler is None or boiler.efficiency is None or room.efficiency is None:
        return
    if isnan(room.efficiency) or isnan(room.return_design):
        yield look.wants(f"{BOILER}/efficiency", room.return_design, room.efficiency)
    elif float(boiler.efficiency) - float(room.efficiency) > look.limit + JUST:
        yield look.found(
            f"{BOILER}/efficiency",
            f"{look.say(boiler.efficiency)} is the label; with {look.say(room.return_design)} coming back "
            f"expect {look.say(room.efficiency)} on the design day.",
            room.efficiency,
            (
                Mend("Promise the lower figure, or bring the return down with more emitter."),
                Mend(
                    "Put the figure at this return in its place.",
                    (set_to(f"{BOILER}/efficiency", f"{100 * float(room.efficiency):.1f} %"),),
                ),
            ),
        )


@finding(
    "electric-service-short",
    Weight.MUST_FIX,
    cite("MH-424", "fixed electric heating is a continuous load", SEEN),
    fires="The boiler is electric. The job does not hold the spare capacity of the electrical service.",
    why="a continuous load counts as 125 % of its current",
    mend="Have the electrician work out the service, and decide with a name.",
)
def _electric_service_short(look: Look) -> Found:
    boiler = boiler_of(look)
    if boiler is None or not (boiler.fuel == ELECTRIC or boiler.kind == "electric"):
        return
    size = room_of(look).rated_output
    asks = "its full current" if size is None or isnan(size) else look.say(size)
    found = look.found(
        BOILER,
        f"{boiler.name} draws {asks} from the electrical service, and nothing shows that the service has it "
        "to spare.",
        "" if size is None else size,
    )
    yield cautioned(found, "An overloaded service burns, and boiler wiring kills.")

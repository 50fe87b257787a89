"""Findings on the temperatures that were chosen: outdoors, indoors, in the ground."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.steps.review.house import GUESSED, known_of, path_of, typed_of
from heatledger.steps.review.kinds import KINDS, Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
DWELLING = (288.15, 80 / 1.8 + 459.67 / 1.8)
"""From 15 °C to 80 °F, K: what somebody may mean by the temperature of a dwelling."""


@finding(
    "degrees-crossed",
    Weight.MUST_FIX,
    cite("", "no station is on file to hold it against", JUDGMENT),
    fires="The outdoor design temperature is warmer than {0}, or not below the indoor temperature. Without "
    "a weather station on file, only what cannot be a winter night is seen.",
    why="20 °C typed for 20 °F cancels nearly the whole loss",
    mend="Type the outdoor temperature again, with its unit.",
    limits=(Limit("degrees-crossed", "59 °F", d.TEMPERATURE, "warmest outdoor design"),),
)
def _degrees_crossed(look: Look) -> Found:
    site = look.house.job.site
    if isnan(site.outdoor):
        yield look.wants("site/outdoor", site.outdoor)
    elif float(site.outdoor) > look.limit or float(site.outdoor) >= float(site.indoor):
        number, unit = typed_of(site.outdoor)
        other = {"°C": "°F", "°F": "°C"}.get(unit, "")
        kelvin = {"°F": (number + 459.67) / 1.8, "°C": number + 273.15}.get(other, look.limit + 1)
        mends = [Mend("Type the outdoor temperature again, with its unit.")]
        if kelvin <= look.limit and kelvin < float(site.indoor):
            mends.insert(
                0, Mend(f"Read it as {number:g} {other}.", (set_to("site/outdoor", f"{number:g} {other}"),))
            )
        yield look.found(
            "site/outdoor",
            f"The outdoor design temperature reads as {look.say(site.outdoor)}, which is no winter night; "
            "the degree sign is probably wrong.",
            look.house.losses.site.design_difference,
            tuple(mends),
        )


@finding(
    "outdoor-design-mild",
    Weight.DECIDE,
    cite("", "winter nights of places where houses are heated by water", JUDGMENT),
    fires="The outdoor design temperature is warmer than {0}, and not so warm that degrees look crossed.",
    why="every 1 °F (0.6 K) too warm takes 1.4 % of the loss away at a span of 70 °F (39 K), a lost "
    "minus more",
    mend="Look up the 99 % figure of a weather station or the local code; keep it where winters are mild.",
    limits=(Limit("outdoor-design-mild", "40 °F", d.TEMPERATURE, "warmest usual outdoor design"),),
)
def _outdoor_design_mild(look: Look) -> Found:
    site = look.house.job.site
    crossed = Look(look.house, KINDS["degrees-crossed"]).limit
    if isnan(site.outdoor):
        yield look.wants("site/outdoor", site.outdoor)
    elif look.limit + 1e-6 < float(site.outdoor) <= crossed and float(site.outdoor) < float(site.indoor):
        number, unit = typed_of(site.outdoor)
        mends = [Mend(look.kind.mend)]
        if unit == "°C":
            meant = f"{number:g} °F"
            mends.insert(0, Mend(f"Read it as {meant}.", (set_to("site/outdoor", meant),)))
        yield look.found(
            "site/outdoor",
            f"The outdoor design temperature is {look.say(site.outdoor)}, a mild winter night; a minus or a "
            "figure may be missing.",
            look.house.losses.site.design_difference,
            tuple(mends),
        )


@finding(
    "outdoor-design-guessed",
    Weight.NOTE,
    cite("HOF-ch17", "design conditions", SEEN),
    fires="The outdoor design temperature is marked assumed.",
    why="every 1 °F (0.6 K) is 1.4 % of the loss at a span of 70 °F (39 K)",
    mend="Take the figure of a weather station or of the local code, and mark it told.",
)
def _outdoor_design_guessed(look: Look) -> Found:
    outdoor = look.house.job.site.outdoor
    if not isnan(outdoor) and known_of(outdoor) == GUESSED:
        text = look.text(float(outdoor), d.TEMPERATURE)
        told = Mend(
            "Take the figure of a weather station or of the local code (here the same figure is put in as "
            "told).",
            (set_to("site/outdoor", {"is": text, "known": "told"}),),
        )
        yield look.found(
            "site/outdoor",
            f"The outdoor design temperature of {look.say(outdoor)} is assumed, and every room rests on it.",
            "",
            (told,),
        )


@finding(
    "ground-out-of-line",
    Weight.DECIDE,
    cite("", "range of yearly mean ground temperatures", JUDGMENT),
    fires="The yearly mean ground temperature is warmer than {0}, or the ground in winter comes out colder "
    "than the outdoor design temperature.",
    why="ground follows the yearly mean of the air, with a smaller swing than the air",
    mend="Look up the yearly mean of the air or of well water, and the unit it is printed in.",
    limits=(Limit("ground-out-of-line", "77 °F", d.TEMPERATURE, "warmest mean of the ground"),),
)
def _ground_out_of_line(look: Look) -> Found:
    site, found = look.house.job.site, look.house.losses.site
    below = [
        space
        for _, space in look.house.spaces
        for each in space.surfaces.values()
        if each.beyond.kind == "ground"
    ]
    if not below:
        return
    if isnan(found.ground) or isnan(site.outdoor):
        yield look.wants("site/ground_temperature", found.ground, site.outdoor)
    elif float(site.ground_temperature) > look.limit:
        yield look.found(
            "site/ground_temperature",
            f"The ground is {look.say(site.ground_temperature)} on the mean of the year; degrees look "
            "crossed.",
        )
    elif float(found.ground) < look.house.outdoor:
        # A swing as large as that of the air brings the ground to the coldest the air can be.
        room = float(site.ground_temperature) - look.house.outdoor
        mend = (
            Mend(
                "Take a smaller swing of the ground.",
                (set_to("site/ground_amplitude", look.text(room * 0.5, d.TEMPERATURE_DIFFERENCE)),),
            )
            if room > 0
            else Mend("Look up the mean of the year and its swing.")
        )
        yield look.found(
            "site/ground_amplitude",
            f"In winter the ground comes out at {look.say(found.ground)}, colder than the air outdoors at "
            f"{look.say(site.outdoor)}.",
            found.ground,
            (mend,),
        )


@finding(
    "indoor-below-minimum",
    Weight.DECIDE,
    cite("IRC-303", "heated rooms, where winter design is below 60 °F", SEEN),
    fires="A room that is lived in is kept below {0}. It must be fixed where the job names a code under "
    "`codes`.",
    why="a system sized for 65 °F (18 °C) is 4 % short of 68 °F (20 °C) when it is 0 °F (-18 °C) outdoors",
    mend="Raise the room, or mark it not lived in.",
    limits=(
        Limit("indoor-below-minimum", "68 °F", d.TEMPERATURE, "least indoor temperature", "the rule cited"),
    ),
)
def _indoor_below_minimum(look: Look) -> Found:
    named = bool(look.house.job.system.codes.adopted)
    for room, _ in look.house.rooms:
        path = f"rooms/{room.id}"
        if room.habitable and isnan(room.indoor):
            yield look.wants(path, room.indoor)
        # A hair below is the rounding of a unit, not a colder room.
        elif room.habitable and float(room.indoor) < look.limit - 1e-6:
            raised = Mend(
                f"Keep it at {look.limit_shown()}.",
                (set_to(f"{path}/indoor", look.text(look.limit, d.TEMPERATURE)),),
            )
            apart = Mend("Mark it as a room not lived in.", (set_to(f"{path}/habitable", "no"),))
            yield look.found(
                path,
                f"{room.name} is figured at {look.say(room.indoor)}; the model rule asks for "
                f"{look.limit_shown()} "
                "on the design day.",
                room.indoor,
                (raised, apart),
                Weight.MUST_FIX if named else None,
            )


@finding(
    "indoor-out-of-range",
    Weight.DECIDE,
    cite("", "dwellings are kept at 59 to 75 °F", JUDGMENT),
    fires="A heated room is kept above {0} or below {1}. It must be fixed above {2} or below {3}. Rooms that "
    "take the temperature of the house are told once.",
    why="no table for dwellings asks for this",
    mend="Correct the degrees or the unit, or say why (workshop, pool).",
    limits=(
        Limit("indoor-out-of-range", "80 °F", d.TEMPERATURE, "warmest room"),
        Limit("indoor-out-of-range-low", "45 °F", d.TEMPERATURE, "coldest room"),
        Limit("indoor-out-of-range-hot", "90 °F", d.TEMPERATURE, "warmest that can be meant"),
        Limit("indoor-out-of-range-frost", "32 °F", d.TEMPERATURE, "coldest that can be meant"),
    ),
)
def _indoor_out_of_range(look: Look) -> Found:
    site = look.house.job.site
    odd: dict[str, tuple[Figure, list[str]]] = {}
    for room, _ in look.house.rooms:
        if isnan(room.indoor) or look.limit_at(1) - 1e-6 <= float(room.indoor) <= look.limit + 1e-6:
            continue
        where = "site/indoor" if path_of(room.indoor) == "site/indoor" else f"rooms/{room.id}"
        odd.setdefault(where, (room.indoor, []))[1].append(room.name)
    for where, (indoor, names) in odd.items():
        entry = where if where == "site/indoor" else f"{where}/indoor"
        mends = [*_in_other_degrees(look, entry, indoor), Mend(look.kind.mend)]
        if entry != "site/indoor" and look.limit_at(1) <= float(site.indoor) <= look.limit:
            to = look.text(float(site.indoor), d.TEMPERATURE)
            mends.append(Mend("Keep it as warm as the house.", (set_to(entry, to),)))
        far = float(indoor) > look.limit_at(2) + 1e-6 or float(indoor) < look.limit_at(3) - 1e-6
        who = f"{names[0]} is" if len(names) == 1 else f"{len(names)} rooms are"
        yield look.found(
            where,
            f"{who} to be kept at {look.say(indoor)}; check the degrees and the unit.",
            indoor,
            tuple(mends),
            Weight.MUST_FIX if far else None,
        )


def _in_other_degrees(look: Look, entry: str, indoor: Figure) -> list[Mend]:
    """The same number with the other degree sign, where that is the temperature of a dwelling."""
    number, unit = typed_of(indoor)
    other = {"°C": "°F", "°F": "°C"}.get(unit, "")
    kelvin = {"°F": (number + 459.67) / 1.8, "°C": number + 273.15}.get(other, float("nan"))
    if not DWELLING[0] - 1e-6 <= kelvin <= DWELLING[1] + 1e-6:
        return []
    meant = f"{number:g} {other}"
    shown = look.say(kelvin, d.TEMPERATURE)
    words = f"Read it as {meant}." if shown == meant else f"Read it as {meant}, which is {shown}."
    return [Mend(words, (set_to(entry, meant),))]


@finding(
    "partition-not-given",
    Weight.NOTE,
    cite("HOF-ch17", "heat between rooms at other temperatures", SEEN),
    fires="A room is kept more than {0} warmer or colder than another on its level, and no surface between "
    "this room and any other is given.",
    why="the warm room gives heat through the partition, and the cold one takes it",
    mend="Give the wall between them once, with `beyond: rooms/ID`.",
    limits=(Limit("partition-not-given", "5 °F", d.TEMPERATURE_DIFFERENCE, "difference between rooms"),),
)
def _partition_not_given(look: Look) -> Found:
    rooms = [room for room, _ in look.house.rooms if not isnan(room.indoor)]
    for room in rooms:
        if any(each.beyond.kind == "room" for each in room.surfaces.values()):
            continue
        others = [each for each in rooms if each.level.id == room.level.id and each is not room]
        apart = [each for each in others if abs(float(each.indoor) - float(room.indoor)) > look.limit + 1e-6]
        # The odd one out is told, not each of the rooms it differs from.
        if len(apart) * 2 > len(others):
            yield look.found(
                f"rooms/{room.id}",
                f"{room.name} is kept at {look.say(room.indoor)} and {apart[0].name} at "
                f"{look.say(apart[0].indoor)}, and no partition between them is given.",
                room.indoor,
            )

"""Findings on setback, warm weather and zones."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.job.system_model import Zone
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import DERIVED, JUDGMENT, SEEN, cite
from heatledger.steps.review.emitter_look import known, length_to
from heatledger.steps.review.kinds import Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
SAME = 1e-6
MOST_ZONES = 8
MOST_NAMED = 3
A_LITTLE_OVER = 1.1
"""How far a shortened element may stay over its load, as it is bought by the half foot."""


@finding(
    "deep-setback-on-reset",
    Weight.DECIDE,
    cite("", "recovery on water that follows the weather is slow", JUDGMENT),
    fires="Rooms are let down by more than {0} at night by a condensing boiler on outdoor reset.",
    why="water that just carries the load has nothing over to warm a room up again",
    mend="Let the rooms down less, or let the morning's water be warmer and give up some condensing.",
    limits=(Limit("deep-setback-on-reset", "4 °F", d.TEMPERATURE_DIFFERENCE, "night setback"),),
)
def _deep_setback(look: Look) -> Found:
    system = look.house.job.system
    setback, boiler = system.controls.setback, system.plant.boiler
    if setback is None or boiler is None or boiler.kind != "condensing" or not system.controls.outdoor_reset:
        return
    if float(setback) > look.limit + SAME:
        text = look.text(look.limit, d.TEMPERATURE_DIFFERENCE)
        yield look.found(
            "controls/setback",
            f"Rooms fall by {look.say(setback)} at night, and water on reset brings them back slowly.",
            setback,
            (
                Mend(f"Let them down by {look.limit_shown()}.", (set_to("controls/setback", text),)),
                Mend("Let the morning's water be warmer for a while, and give up some condensing."),
            ),
        )


@finding(
    "setback-never-recovers",
    Weight.DECIDE,
    cite("", "heat that is over for warming rooms up", DERIVED),
    fires="Rooms are let down at night, and on the design day the boiler gives less than {0} of the load.",
    why="only what the boiler gives over the load can bring the rooms back",
    mend="Hold the temperature in bitter weather.",
    limits=(Limit("setback-never-recovers", "110 %", d.RATIO, "output over load"),),
)
def _setback_never_recovers(look: Look) -> Found:
    setback, ratio = look.house.job.system.controls.setback, look.design.boiler_room.plant.ratio
    if setback is None or ratio is None or float(setback) <= 0:
        return
    if isnan(ratio):
        yield look.wants("controls/setback", ratio)
    elif float(ratio) < look.limit - SAME:
        yield look.found(
            "controls/setback",
            f"From a setback of {look.say(setback)} the house does not come back on the design day: the "
            f"boiler gives {look.say(ratio)} of the load.",
            ratio,
            (
                Mend(
                    "Leave the setback out.", (set_to("controls/setback", look.text(0, setback.dimension)),)
                ),
                Mend("Hold the temperature on the coldest nights only, and say so."),
            ),
        )


@finding(
    "setback-freezes-pipes",
    Weight.DECIDE,
    cite("NASHOBA", "frozen heating pipes after a night setback", SEEN),
    fires="Rooms are let down below {0}, the mains run through an unheated space, and the outdoor design "
    "temperature is below {1}.",
    why="water that stands still in a cold place freezes while the thermostat is content",
    mend="Hold the temperature in bitter weather, or move the pipe.",
    limits=(
        Limit("setback-freezes-pipes", "55 °F", d.TEMPERATURE, "room at night"),
        Limit("setback-freezes-pipes-outdoor", "20 °F", d.TEMPERATURE, "outdoor design temperature"),
    ),
)
def _setback_freezes_pipes(look: Look) -> Found:
    job = look.house.job
    setback, mains = job.system.controls.setback, job.system.plant.mains
    if setback is None or mains is None or not mains.through or isnan(job.site.outdoor):
        return
    night = float(job.site.indoor) - float(setback)
    if night < look.limit - SAME and float(job.site.outdoor) < look.limit_at(1) - SAME:
        less = look.text(float(job.site.indoor) - look.limit - 0.06, d.TEMPERATURE_DIFFERENCE)
        yield look.found(
            "controls/setback",
            f"At night the rooms are at {look.say(night, d.TEMPERATURE)}, and the mains run through an "
            f"unheated space with {look.say(job.site.outdoor)} outdoors.",
            setback,
            (
                Mend(f"Let them down by {less} at most.", (set_to("controls/setback", less),)),
                Mend("Run the mains inside the heated rooms, or insulate and warm their space."),
            ),
        )


@finding(
    "nothing-stops-in-summer",
    Weight.NOTE,
    cite("", "start of heat in this house", JUDGMENT),
    fires="There is a boiler with circuits, and no warm-weather shutdown is given.",
    why="on a warm day a stray call still fires the boiler",
    mend="Shut space heat off above the outdoor temperature at which heat starts, never hot water or frost "
    "protection.",
)
def _nothing_stops_in_summer(look: Look) -> Found:
    system, found = look.house.job.system, look.design.controls.controls
    if system.plant.boiler is None or not system.circuits:
        return
    if system.controls.warm_weather_shutdown is None:
        text = look.text(float(found.shutdown), d.TEMPERATURE)
        yield look.found(
            "controls",
            f"On days above {look.say(found.shutdown)} a stray call still fires the boiler.",
            found.shutdown,
            (
                Mend(
                    f"Shut space heat off above {look.say(found.shutdown)}.",
                    (set_to("controls/warm_weather_shutdown", text),),
                ),
            ),
        )


def rooms_of(look: Look, zone: Zone) -> list[str]:
    """The rooms a zone heats, by their ids."""
    system = look.house.job.system
    emitters = [id for each in system.circuits.values() if each.zone == zone.id for id in each.runs]
    return list(dict.fromkeys(system.emitters[id].room for id in emitters if id in system.emitters))


def _glass(look: Look, room: str) -> float:
    """Share of a room's loss that goes through glass."""
    found = look.design.losses.rooms.get(room)
    if found is None or isnan(found.loss) or float(found.loss) <= 0:
        return float("nan")
    part: Figure | None = found.causes["windows"].loss if "windows" in found.causes else None
    return 0.0 if part is None else float(part) / float(found.loss)


@finding(
    "unlike-rooms-one-zone",
    Weight.DECIDE,
    cite("HPAC-ZONE", "what to zone together", SEEN),
    fires="A zone joins rooms of different stories, or rooms whose shares of loss through glass are more "
    "than {0} apart.",
    why="zones are for rooms that move alike; one thermostat serves them all",
    mend="Split the zone, or put a radiator valve in the odd room.",
    limits=(Limit("unlike-rooms-one-zone", "30 %", d.RATIO, "shares of glass apart"),),
)
def _unlike_rooms(look: Look) -> Found:
    job = look.house.job
    for zone in job.system.zones.values():
        rooms = [each for each in rooms_of(look, zone) if each in job.rooms]
        shares = {id: share for id in rooms if not isnan(share := _glass(look, id))}
        levels = {job.rooms[id].level.id: job.rooms[id].level.name for id in rooms}
        apart = max(shares.values(), default=0.0) - min(shares.values(), default=0.0)
        if len(levels) > 1:
            what = f"{zone.name} joins {' and '.join(levels.values())}, where warm air climbs."
        elif apart > look.limit + SAME:
            most, least = max(shares, key=shares.__getitem__), min(shares, key=shares.__getitem__)
            what = (
                f"{job.rooms[most].name} with its glass will rule {job.rooms[least].name} in {zone.name}, or "
                "be ruled by it."
            )
        else:
            continue
        yield look.found(f"zones/{zone.id}", what)


@finding(
    "too-many-zones",
    Weight.NOTE,
    cite("HPAC-ZONE", "more zones are not a better design", SEEN),
    fires="There is more than one zone for each {0} of design load, or more than eight.",
    why="a small zone makes the boiler start often and costs valves",
    mend="Join rooms that live alike.",
    limits=(Limit("too-many-zones", "6000 Btu/h", d.HEAT_RATE, "design load of a zone"),),
)
def _too_many_zones(look: Look) -> Found:
    zones, load = len(look.house.job.system.zones), look.house.loss
    if zones < 2:
        return
    if isnan(load):
        yield look.wants("zones", look.design.losses.house.loss)
    elif load / zones < look.limit * (1 - SAME) or zones > MOST_ZONES:
        share = look.say(load / zones, d.HEAT_RATE)
        yield look.found(
            "zones",
            f"{zones} zones for {look.say(look.design.losses.house.loss)}: each is {share} on average.",
            look.design.losses.house.loss,
        )


@finding(
    "room-behind-thermostat",
    Weight.DECIDE,
    cite("", "the thermostat stops the heat of its whole zone", DERIVED),
    fires="The room of a zone's thermostat gets so much larger a share of its need than another room of the "
    "zone that this one gets less than {0} of its need when the thermostat is content.",
    why="heat stops for all rooms when one of them is warm: each gets its share over that of the "
    "thermostat's room",
    mend="Give the thermostat's room less element or a damper, the others more, or move the thermostat.",
    limits=(Limit("room-behind-thermostat", "90 %", d.RATIO, "share over that of the thermostat's room"),),
)
def _room_behind_thermostat(look: Look) -> Found:
    job, found = look.house.job, look.design.emitters
    for zone in job.system.zones.values():
        own = [id for each in job.system.circuits.values() if each.zone == zone.id for id in each.runs]
        rooms = {id: float(found.rooms[id].given_share) for id in rooms_of(look, zone) if id in found.rooms}
        lead = rooms.get(zone.thermostat)
        if lead is None or len(rooms) < 2:
            continue
        if isnan(lead):
            yield look.wants(f"zones/{zone.id}", found.rooms[zone.thermostat].given_share)
            continue
        # A room that another zone heats too is not at the mercy of this thermostat.
        alone = {
            id: share / lead
            for id, share in rooms.items()
            if lead > 0
            and not isnan(share)
            and float(found.rooms[id].needed) > SAME
            and all(key in own for key, each in found.emitters.items() if each.room == id)
        }
        short = {id: each for id, each in alone.items() if each < look.limit - SAME}
        if short:
            yield look.found(
                f"zones/{zone.id}",
                f"{job.rooms[zone.thermostat].name} has the thermostat of {zone.name} and gets "
                f"{look.say(lead, d.RATIO)} of its need; once it is warm heat stops: "
                f"{_told(look, short)}.",
                found.rooms[zone.thermostat].given_share,
                _for_those_behind(look, zone, rooms),
            )


def _told(look: Look, short: dict[str, float]) -> str:
    """The rooms that get least, each with its part of its need."""
    worst = sorted(short, key=short.__getitem__)
    said = [f"{look.house.job.rooms[id].name} {look.say(short[id], d.RATIO)}" for id in worst[:MOST_NAMED]]
    said[0] = f"{look.house.job.rooms[worst[0]].name} gets {look.say(short[worst[0]], d.RATIO)} of its need"
    more = (
        [f"{len(worst) - MOST_NAMED} more less than {look.limit_shown()}"] if len(worst) > MOST_NAMED else []
    )
    return ", ".join([*said, *more])


def _for_those_behind(look: Look, zone: Zone, rooms: dict[str, float]) -> tuple[Mend, ...]:
    """A shorter element where that is enough, and the thermostat in the room that gets least."""
    job, found = look.house.job, look.design.emitters
    coldest = min((id for id in rooms if not isnan(rooms[id])), key=rooms.__getitem__)
    there = {id: each for id, each in found.emitters.items() if each.room == zone.thermostat}
    key, one = next(iter(there.items()))
    mends = [
        Mend(
            f"Put the thermostat in {job.rooms[coldest].name}; then others may be too warm.",
            (set_to(f"zones/{zone.id}/thermostat", coldest),),
        ),
        Mend(look.kind.mend),
    ]
    if (
        len(there) == 1
        and known(one.needed_length, one.length)
        and rooms[coldest] >= look.limit * A_LITTLE_OVER
    ):
        assert one.needed_length is not None
        changes = length_to(look, key, one.needed_length)
        mends.insert(0, Mend(f"Shorten {one.name} to its load.", changes))
    return tuple(mends)

"""Findings on the fire as it was measured: oxygen, carbon monoxide, draft, spillage."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.job.system_model import Boiler
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import MEMORY, SEEN, cite
from heatledger.steps import targets as t
from heatledger.steps.may_run import has_fired
from heatledger.steps.review.control_findings import with_caution
from heatledger.steps.review.kinds import Limit, Look, finding
from heatledger.steps.targets import burns, is_drafted, oxygen_band

Found = Iterator[Finding | NotChecked]
SAME = 1e-6
POISON = "Carbon monoxide kills without a smell: shut the fire off, air the house."
LEAVE = "Carbon monoxide: leave first, then call from outside."
RICH = "A fire short of air makes carbon monoxide."


def _fired(look: Look) -> Boiler | None:
    """The boiler, where it has a fire in it."""
    boiler = look.house.job.system.plant.boiler
    return boiler if burns(boiler) else None


@finding(
    "fire-never-measured",
    Weight.MUST_FIX,
    cite("HH-CA", "a call for combustion analysis", SEEN),
    fires="The boiler was lit, and oxygen or carbon monoxide in the flue gas was not measured.",
    why="a flame can look right at any carbon monoxide",
    mend="Measure with an analyzer at high and low fire, and leave the slip.",
    settled_by_words=False,
)
def _never_measured(look: Look) -> Found:
    boiler, read = _fired(look), look.house.job.system.readings
    if boiler is None or not has_fired(read):
        return
    fire = read.combustion
    lacking = [
        words
        for words, given in (("oxygen", fire.oxygen), ("carbon monoxide", fire.carbon_monoxide))
        if given is None
    ]
    if lacking:
        yield with_caution(
            look.found(
                "readings/combustion",
                f"A measurement of {' and '.join(lacking)} in the flue gas of {boiler.name} is not shown.",
            ),
            POISON,
        )


@finding(
    "co-in-flue-high",
    Weight.DECIDE,
    cite("ICM-2015", "100 ppm air free", SEEN),
    fires="Carbon monoxide in the flue gas, air free, is above {0}; above {1} the boiler is shut down.",
    why="90 ppm read at 9 % oxygen is 158 ppm without the air that thins it",
    mend="Look at gas pressure, air, nozzle and exchanger; above the second limit shut down and tag.",
    limits=(
        Limit("co-in-flue-high", t.FLUE_CO, d.CONCENTRATION, "carbon monoxide, air free", "read there"),
        Limit("co-in-flue-high-stop", t.FLUE_CO_STOP, d.CONCENTRATION, "to shut down", "from memory"),
    ),
    settled_by_words=False,
)
def _flue_high(look: Look) -> Found:
    fire = look.house.job.system.readings.combustion
    found = look.design.startup.startup.compared.carbon_monoxide
    if fire.carbon_monoxide is None or _fired(look) is None:
        return
    if found is None or isnan(found):
        if not float(fire.carbon_monoxide) > look.limit * (1 + SAME):
            yield look.wants("readings/combustion/carbon_monoxide", found, words="oxygen in the flue gas")
            return
        # Without the air that thins it there is never less of it, so what was read is enough to say so.
        found, free = fire.carbon_monoxide, "as read, and no less air free"
    else:
        free = "air free"
    if float(found) > look.limit * (1 + SAME):
        stop = float(found) > look.limit_at(1) * (1 + SAME)
        shut = Mend("Shut the boiler down and tag it; find and mend the cause before it is lit again.")
        yield with_caution(
            look.found(
                "readings/combustion/carbon_monoxide",
                f"Carbon monoxide in the flue gas is {look.say(found)} {free}; the clean limit is "
                f"{look.limit_shown()}.",
                found,
                (shut,) if stop else (Mend("Look at gas pressure, air, nozzle and exchanger."),),
                Weight.MUST_FIX if stop else None,
            ),
            POISON,
        )


@finding(
    "oxygen-out-of-band",
    Weight.DECIDE,
    cite("OFSW", "oil at 9.2 % oxygen went with 856 ppm of carbon monoxide", SEEN),
    fires="Oxygen in the flue gas is below {0}, or above {1} (power or premix burner, oil) or {2} (gas "
    "that may have a draft hood).",
    why="too little air makes carbon monoxide, too much takes heat up the flue",
    mend="Set oxygen first, then look at carbon monoxide, smoke and draft; the maker's sheet comes first.",
    limits=(
        Limit("oxygen-out-of-band", t.OXYGEN_LEAST, d.RATIO, "least oxygen", "read there"),
        Limit("oxygen-out-of-band-most", t.OXYGEN_MOST, d.RATIO, "most oxygen", "from memory"),
        Limit(
            "oxygen-out-of-band-hood",
            t.OXYGEN_MOST_HOOD,
            d.RATIO,
            "most oxygen with a draft hood",
            "from memory",
        ),
    ),
)
def _oxygen(look: Look) -> Found:
    boiler, oxygen = _fired(look), look.house.job.system.readings.combustion.oxygen
    if boiler is None or oxygen is None:
        return
    low, usual_high = oxygen_band(boiler)
    hooded = float(usual_high) > look.limit_at(1) + SAME and is_drafted(boiler)
    most = look.limit_at(2 if hooded else 1)
    least = look.limit if look.given[0] is not None else float(low)
    if least - SAME <= float(oxygen) <= most + SAME:
        return
    more = float(oxygen) > most
    words = "the fire has too much air" if more else "the fire is short of air"
    yield with_caution(
        look.found(
            "readings/combustion/oxygen",
            f"Oxygen stands at {_percent(oxygen)}, the band is {_percent(least)} to {_percent(most)}; "
            f"{words}.",
            oxygen,
        ),
        RICH,
    )


def _percent(value: float) -> str:
    return f"{100 * float(value):.1f} %"


@finding(
    "flue-gas-spills",
    Weight.MUST_FIX,
    cite("NFPA-54", "spillage after five minutes, fans on", MEMORY),
    fires="Flue gas spills, or the draft of a chimney is weaker than {0}.",
    why="with the house fans on the chimney has to pull against them",
    mend="Stop. Look at the liner, the air for the fire and the fans before it is lit again.",
    limits=(Limit("flue-gas-spills", t.DRAFT_WEAK, d.DRAFT, "weakest draft", "from memory"),),
    settled_by_words=False,
)
def _spills(look: Look) -> Found:
    boiler, fire = _fired(look), look.house.job.system.readings.combustion
    if boiler is None:
        return
    weak = is_drafted(boiler) and fire.draft is not None and float(fire.draft) > look.limit + SAME
    if fire.spillage == "some":
        what = f"Flue gas of {boiler.name} comes into the room."
    elif weak and fire.draft is not None:
        what = f"The draft at {boiler.name} is {look.say(fire.draft)}, weaker than {look.limit_shown()}."
    else:
        return
    where = "spillage" if fire.spillage == "some" else "draft"
    yield with_caution(look.found(f"readings/combustion/{where}", what), POISON)


@finding(
    "room-co-found",
    Weight.MUST_FIX,
    cite("EPA-CO", "carbon monoxide indoors", MEMORY),
    fires="Carbon monoxide in the room is above {0}; above {1} the boiler is stopped and the room aired; "
    "above {2} everyone leaves.",
    why="outdoor air has next to none",
    mend="Fuel off, windows open, out, call from outside; find the source before it is lit again.",
    limits=(
        Limit("room-co-found", t.ROOM_CO, d.CONCENTRATION, "carbon monoxide in the room", "from memory"),
        Limit("room-co-found-stop", t.ROOM_CO_STOP, d.CONCENTRATION, "to stop and air", "from memory"),
        Limit("room-co-found-leave", t.ROOM_CO_LEAVE, d.CONCENTRATION, "to leave", "from memory"),
    ),
    settled_by_words=False,
)
def _room(look: Look) -> Found:
    read = look.house.job.system.readings.combustion.room_carbon_monoxide
    if read is None or not float(read) > look.limit * (1 + SAME):
        return
    do = "look for its source now"
    if float(read) > look.limit_at(2):
        do = "everyone out, and call from outside"
    elif float(read) > look.limit_at(1):
        do = "stop the fire and air the room"
    yield with_caution(
        look.found(
            "readings/combustion/room_carbon_monoxide",
            f"The room of the boiler holds {look.say(read)} of carbon monoxide: {do}.",
            read,
        ),
        LEAVE,
    )

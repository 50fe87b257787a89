"""Findings on how emitters are rated, on old iron, and on what hot or heavy ones can do to people."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from heatledger.job.system_model import BY_LENGTH, IRON_RADIATOR, PANEL, Emitter
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import MEMORY, SECOND_HAND, SEEN, cite
from heatledger.ledger.units import UNITS
from heatledger.physics.radiators import iron_weight, radiation_of_sections
from heatledger.steps.emitters import EmitterHeat
from heatledger.steps.review.emitter_look import (
    HOTTEST,
    SAME,
    each_emitter,
    known,
    name_of,
    share_of,
    supply_to,
)
from heatledger.steps.review.house import is_called
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.plant_look import cautioned

Found = Iterator[Finding | NotChecked]
BARE = (PANEL, IRON_RADIATOR)
BURNS = "Metal with water above {} behind it burns skin within seconds, a child's sooner."
BURNING = UNITS["°F"].to_si(140, True)
FALLS = "Iron that falls crushes, and a floor that is overloaded can break."
WATER = 1000.0
STANDS = ("existing", "old ")
"""Words in the name of iron that is there already."""


@finding(
    "fifteen-percent-credit",
    Weight.DECIDE,
    cite("PM-HEF", "quoting the handbook of systems and equipment, 2016, page 36.3", SECOND_HAND),
    fires="A baseboard is taken with a heating-effect factor of less than {0}.",
    why="printed output of baseboard is what was tested plus 15 %, which no thermometer finds",
    mend="Take 15 % off the printed rating, or keep it where the rating says that it is net.",
    limits=(Limit("fifteen-percent-credit", "115 %", d.RATIO, "factor in the rating"),),
)
def _fifteen_percent_credit(look: Look) -> Found:
    for id, emitter, found in each_emitter(look):
        effect = emitter.heating_effect
        if emitter.kind in BY_LENGTH and known(effect) and float(effect) < look.limit - SAME:
            yield look.found(
                f"emitters/{id}",
                f"{emitter.name} is taken at its printed rating, with {look.say(float(effect) - 1, d.RATIO)} "
                f"off; {name_of(look, emitter.room)} may get less than the sheet says.",
                found.rated,
                (
                    Mend(
                        f"Take {look.limit_shown()} for the factor.",
                        (set_to(f"emitters/{id}/heating_effect", f"{look.limit:g}"),),
                    ),
                    Mend("Keep it where the rating says that it is net."),
                ),
            )


@finding(
    "ratings-on-unlike-basis",
    Weight.NOTE,
    cite("BSE-IE", "ratings at 60 and 50 K", SEEN),
    fires="Two emitters of one kind are rated at excesses that differ by more than {0}.",
    why="60 K against 50 K looks 27 % larger for an exponent of 1.3; here both are brought to one basis",
    mend="Bring all ratings to one basis before they are compared or ordered.",
    limits=(Limit("ratings-on-unlike-basis", "1 °F", d.TEMPERATURE_DIFFERENCE, "excess of two ratings"),),
)
def _ratings_on_unlike_basis(look: Look) -> Found:
    first: dict[str, tuple[str, EmitterHeat]] = {}
    for id, emitter, found in each_emitter(look):
        if not known(found.excess):
            continue
        name, other = first.setdefault(emitter.kind, (emitter.name, found))
        if abs(float(other.excess) - float(found.excess)) > look.limit + SAME:
            yield look.found(
                f"emitters/{id}",
                f"{emitter.name} is rated at {look.say(found.excess)} above the room, {name} at "
                f"{look.say(other.excess)}; side by side they cannot be compared.",
                found.excess,
            )


@finding(
    "iron-sized-for-steam",
    Weight.MUST_FIX,
    cite("EDR-TAB", "emission by average water temperature", SEEN),
    fires="A radiator counted in square feet of radiation would carry its load with steam, and on water "
    "gives less than {0} of it.",
    why="water of 180 °F (82 °C) on average gives 70 % of what steam does, water of 170 °F (77 °C) 62 %",
    mend="Count it anew at the water it gets, add iron, or make the loss of the room smaller.",
    limits=(Limit("iron-sized-for-steam", "97 %", d.RATIO, "output over load"),),
)
def _iron_sized_for_steam(look: Look) -> Found:
    for id, emitter, found in each_emitter(look):
        share = share_of(found)
        if emitter.kind != IRON_RADIATOR or emitter.output is not None or not known(share, found.rated_here):
            continue
        if share < look.limit - SAME and float(found.rated_here) >= float(found.load) * (1 - SAME):
            of_steam = float(found.output) / float(found.rated)
            lowest = look.design.emitters.rooms[emitter.room].lowest_supply
            changes = supply_to(look, float(lowest), HOTTEST) if known(lowest) else ()
            yield look.found(
                f"emitters/{id}",
                f"{emitter.name} is counted for steam; at {look.say(found.mean_water)} its iron gives "
                f"{look.say(of_steam, d.RATIO)} of that, {look.say(share, d.RATIO)} of its load.",
                found.output,
                (
                    Mend("Run hotter water, if the boiler allows.", changes),
                    Mend("Add iron, or make the loss of the room smaller."),
                ),
            )


@finding(
    "hot-panel-in-reach",
    Weight.DECIDE,
    cite("SCALD-AS", "time to a burn by temperature", SEEN),
    fires="Bare radiators stand in the house, and the design supply is above {0}.",
    why="140 °F (60 °C) burns in 3 to 5 seconds; skin of the very young and the old in half the time",
    mend="Run cooler water with larger radiators, cover them, or raise them out of reach.",
    limits=(Limit("hot-panel-in-reach", "140 °F", d.TEMPERATURE, "water in a bare radiator"),),
)
def _hot_panel_in_reach(look: Look) -> Found:
    house = look.design.emitters.house
    bare = [emitter for _, emitter, _ in each_emitter(look) if emitter.kind in BARE]
    if not bare or not known(house.supply) or float(house.supply) <= look.limit + SAME:
        return
    cooler: tuple[Mapping[str, Any], ...] = ()
    if known(house.lowest_supply) and float(house.lowest_supply) <= look.limit + SAME:
        cooler = (set_to("plant/supply", look.text(look.limit, d.TEMPERATURE)),)
    others = f" and {len(bare) - 1} more" if len(bare) > 1 else ""
    yield cautioned(
        look.found(
            "house",
            f"{bare[0].name}{others} can stand at {look.say(house.supply)} within reach of people; who lives "
            "there and could not pull a hand away is not shown.",
            house.supply,
            (
                Mend("Run cooler water.", cooler),
                Mend("Cover or guard radiators where children, old or ill people live."),
            ),
        ),
        BURNS.format(look.say(BURNING, d.TEMPERATURE)),
    )


@finding(
    "heavy-iron-on-joists",
    Weight.NOTE,
    cite("UMC-1004", "weights of iron, from memory", MEMORY),
    fires="A cast-iron radiator weighs more than {0} with its water, and the floor under it is not "
    "shown. All are told in one; a name that says existing or old is left out, as that floor has carried it.",
    why="old iron weighs about 7 lb (3.2 kg) for each square foot of radiation, and its water comes on top",
    mend="Ask a builder, spread its feet across joists, or take a steel panel.",
    limits=(Limit("heavy-iron-on-joists", "300 lb", d.MASS, "radiator full of water"),),
)
def _heavy_iron_on_joists(look: Look) -> Found:
    heavy: dict[str, tuple[float, EmitterHeat]] = {}
    for id, emitter, found in each_emitter(look):
        edr = _radiation(emitter)
        if emitter.kind != IRON_RADIATOR or edr is None or not known(edr) or is_called(STANDS, emitter.name):
            continue
        weight = float(iron_weight(edr=edr)) + (
            WATER * float(emitter.water) if emitter.water is not None else 0.0
        )
        if weight > look.limit * (1 + SAME):
            heavy[id] = weight, found
    if not heavy:
        return
    emitters = look.house.job.system.emitters
    first = max(heavy, key=lambda each: heavy[each][0])
    weight, found = heavy[first]
    more = ""
    if len(heavy) > 1:
        least = look.say(min(each for each, _ in heavy.values()), d.MASS)
        more = f", and {len(heavy) - 1} more weigh{'s' if len(heavy) == 2 else ''} {least} or more"
    yield cautioned(
        look.found(
            f"emitters/{first}",
            f"{emitters[first].name} weighs about {look.say(weight, d.MASS)} full{more}; what "
            "carries the floor under new iron is not shown. Iron that has always stood there is carried.",
            found.rated,
            (
                Mend("Ask a builder about the floor, and spread its feet across joists."),
                Mend(
                    "Take a steel panel.", tuple(_as_panel(look, id, each) for id, (_, each) in heavy.items())
                ),
            ),
        ),
        FALLS,
    )


def _radiation(emitter: Emitter) -> Figure | None:
    """Equivalent direct radiation, as given or by sections."""
    if emitter.edr is None and emitter.sections is not None and emitter.section_edr is not None:
        return radiation_of_sections(sections=emitter.sections, section_edr=emitter.section_edr)
    return emitter.edr


def _as_panel(look: Look, id: str, found: EmitterHeat) -> Mapping[str, Any]:
    """The radiator as a panel of the same output at 50 K."""
    emitter = look.house.job.system.emitters[id]
    output = float(found.rated) * (50 / float(found.excess)) ** float(emitter.exponent)
    new = {
        "name": emitter.name,
        "room": emitter.room,
        "kind": PANEL,
        "output": look.text(output, d.HEAT_RATE),
    }
    return set_to(f"emitters/{id}", {"name": emitter.name, **new})

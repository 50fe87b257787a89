"""What the findings on emitters share: emitters by room, lengths to offer, and the loops they stand in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import ceil, isnan
from typing import Any

from heatledger.job.system_model import BY_LENGTH, PANEL, SERIES, Circuit, Emitter
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import METRIC
from heatledger.ledger.units import UNITS
from heatledger.steps.emitter_chains import Passed, outlet_chain
from heatledger.steps.emitters import EmitterHeat, RoomHeat
from heatledger.steps.networks import is_series
from heatledger.steps.review.kinds import Look, set_to

PANEL_EXCESS, PANEL_EXPONENT = 49.8, 1.3
HOTTEST = UNITS["°F"].to_si(200, True)
"""The hottest water that a mend offers."""
A_LITTLE_MORE = 1.15
LEAST_EXCESS, MOST_OVER = 10.0, 3.0
"""Mean water over the room, K, and rated output over the load, within which a panel is offered."""
ROUNDED = 0.06
"""As far as a typed temperature may lie off the one it stands for, K."""
SAME = 1e-6
"""How near a figure may come to its limit and still keep it."""


def each_emitter(look: Look) -> Iterator[tuple[str, Emitter, EmitterHeat]]:
    """The emitters by id, as given and as found."""
    for id, emitter in look.house.job.system.emitters.items():
        yield id, emitter, look.design.emitters.emitters[id]


def each_room(look: Look) -> Iterator[tuple[str, RoomHeat, dict[str, EmitterHeat]]]:
    """The rooms with their emitters; none while the job has no emitters at all."""
    found = look.design.emitters
    if found.emitters:
        for id, room in found.rooms.items():
            yield id, room, {key: each for key, each in found.emitters.items() if each.room == id}


def each_loop(look: Look) -> Iterator[tuple[Circuit, list[EmitterHeat]]]:
    """The series loops with their emitters in the order of the water."""
    found = look.design.emitters.emitters
    for circuit in look.house.job.system.circuits.values():
        passed = [found[id] for id in circuit.runs if id in found]
        if circuit.kind == SERIES and passed:
            yield circuit, passed


def name_of(look: Look, room: str) -> str:
    """The name of a room."""
    return look.house.job.rooms[room].name


def known(*values: float | None) -> bool:
    """True when every value is there and can be worked with."""
    return all(each is not None and not isnan(each) for each in values)


def share_of(each: EmitterHeat) -> float:
    """What an emitter gives in parts of its load."""
    return float(each.output) / float(each.load) if float(each.load) > 0 else float("nan")


def longer(look: Look, meters: float) -> str:
    """A length as it would be bought: rounded up to the half foot or the tenth of a meter."""
    unit, parts = ("m", 10) if look.units is METRIC else ("ft", 2)
    pieces = max(1, ceil(UNITS[unit].from_si(float(meters)) * parts * (1 - SAME)))
    return f"{pieces / parts:.1f} {unit}"


def length_to(look: Look, id: str, meters: float) -> tuple[Mapping[str, Any], ...]:
    """Changes that give a baseboard another length; none for an emitter that is not sized by length."""
    emitter = look.house.job.system.emitters[id]
    if emitter.kind not in BY_LENGTH or emitter.output is not None:
        return ()
    return (set_to(f"emitters/{id}/length", longer(look, meters)),)


def panel_for(look: Look, room: str, supply: float, part: float = 1.0) -> dict[str, str]:
    """A panel radiator that would carry a part of the load of a room at a supply, rated at 75/65/20 °C.

    Empty where the water is too near the room for it, or it would be out of all measure.
    """
    house, needed = look.design.emitters.house, float(look.design.emitters.rooms[room].needed)
    mean = supply - float(house.drop) / 2 - float(look.house.job.rooms[room].indoor)
    if not mean >= LEAST_EXCESS:
        return {}
    output = part * needed * (PANEL_EXCESS / mean) ** PANEL_EXPONENT
    if not 0 < output <= MOST_OVER * needed:
        return {}
    return {"room": room, "kind": PANEL, "output": look.text(output, d.HEAT_RATE)}


def supply_to(look: Look, kelvin: float, most: float) -> tuple[Mapping[str, Any], ...]:
    """Changes that make the design supply as warm as it is shown; none beyond the most it may have.

    Nor where the burner, half its differential above, would run into the high limit of the job.
    """
    limit, differential = look.house.job.system.plant.high_limit, look.design.controls.controls.differential
    ends = limit is not None and known(limit, differential)
    if ends and limit is not None and kelvin + float(differential) / 2 > float(limit) - ROUNDED:
        return ()
    if kelvin > most + SAME:
        return ()
    return (set_to("plant/supply", look.text(kelvin, d.TEMPERATURE)),)


def passed_at(look: Look) -> dict[str, tuple[Figure, Passed]]:
    """Each emitter whose flow settles: that flow, and the water on its way through; worked out once."""
    kept: dict[str, dict[str, tuple[Figure, Passed]]] = look.design.__dict__
    if "passed_at_flows" in kept:
        return kept["passed_at_flows"]
    design = look.design
    found: dict[str, tuple[Figure, Passed]] = {}
    for circuit in design.circuits.circuits.values():
        flows = {id: each.actual_flow for id, each in circuit.runs.items()}
        own = {id: each for id, each in flows.items() if each is not None and not isnan(each)}
        if len(own) != len(flows):
            continue
        for chain in [list(flows)] if is_series(circuit.kind, circuit.runs) else [[id] for id in flows]:
            through = {id: own[id] for id in chain}
            passed = outlet_chain(design.job, design.emitters, chain, design.emitters.house.supply, through)
            found |= {id: (own[id], each) for id, each in passed.items()}
    kept["passed_at_flows"] = found
    return found


def share_that_results(look: Look, room: str) -> float | None:
    """What a room is given at the flows that result, in parts of its need; None where they are not known."""
    really, needed = passed_at(look), float(look.design.emitters.rooms[room].needed)
    here = [id for id, each in look.design.emitters.emitters.items() if each.room == room]
    if not here or not needed > SAME or any(id not in really for id in here):
        return None
    heat = sum(float(really[id][1].output) for id in here)
    return None if isnan(heat) else heat / needed

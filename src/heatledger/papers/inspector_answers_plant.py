"""An inspector's questions on the plant and its guards, with the paper on which the proof stands."""

from __future__ import annotations

from heatledger.ledger.figures import Figure
from heatledger.papers import blocks as b
from heatledger.papers.answers import figure, listed, not_reached, said, share, waiting
from heatledger.papers.inspector_answers import HERE, proof
from heatledger.papers.owner_plant import times_over
from heatledger.papers.printing import Printing

NO_BOILER = "no boiler is given."


def ratio(printing: Printing) -> b.Text:
    """Output over load with every factor."""
    room = printing.design.boiler_room.plant
    if room.ratio is None:
        return not_reached(NO_BOILER)
    if room.ratio.is_missing:
        return waiting(printing, room.ratio)
    pieces = [said(f"{each.name} ", _factor(printing, each.value)) for each in room.factors.values()]
    return said(
        times_over(printing, room.ratio), " times the load. Factors: ", listed(pieces), "; their product ",
        _factor(printing, room.product), ". No other allowance is in it.", proof(f"{HERE}, from the loss to "
        "the plant"),
    )  # fmt: skip


def _factor(printing: Printing, one: Figure) -> b.Text:
    """A factor with as many decimals as in the table of them."""
    return (b.Run(printing.show(one, 3) or "not known yet", key=printing.found.key(one)),)


def appliance(printing: Printing) -> b.Text:
    """The plate of the boiler; its listing is not known."""
    boiler = printing.design.job.system.plant.boiler
    if boiler is None:
        return not_reached(NO_BOILER)
    pieces: list[b.Text] = [f"{boiler.fuel}, {boiler.kind}"]
    pieces += [
        said(f"{name} ", figure(printing, each))
        for name, each in (("input", boiler.input), ("output", boiler.output))
        if each is not None
    ]
    if boiler.efficiency is not None:
        pieces.append(said("efficiency ", share(printing, boiler.efficiency)))
    return said(
        f"{boiler.name or 'The boiler'}: ", listed(pieces), ". ", not_reached("its listing, a blank in this "
        "set."),
        proof(f"{HERE}, appliance"),
    )  # fmt: skip


def fire_air(printing: Printing) -> b.Text:
    """Air for the fire."""
    return not_reached(
        "air for the fire: volume of the room, openings, and what else draws in it. A blank in this set."
    )


def vent(printing: Printing) -> b.Text:
    """The vent."""
    return not_reached(
        "vent kind, route, slope and terminal, and what stays on the old chimney. Blanks in this set."
    )


def gas(printing: Printing) -> b.Text:
    """The fuel pipe; the input of this boiler is known."""
    boiler, room = printing.design.job.system.plant.boiler, printing.design.boiler_room.plant
    missing = not_reached("fuel pipe and meter with everything burning; other appliances are not in the job.")
    if boiler is None or boiler.input is None or boiler.input.is_missing:
        return missing
    at = "" if room.input is None else said(", ", figure(printing, room.input), " at this height")
    return said("This boiler burns ", figure(printing, boiler.input), " by its plate", at, ". ", missing)


def relief(printing: Printing) -> b.Text:
    """Setting, rating, what it protects, discharge."""
    boiler, room = printing.design.job.system.plant.boiler, printing.design.boiler_room.plant
    if room.relief_pressure.is_missing:
        return waiting(printing, room.relief_pressure)
    rating: b.Text = not_reached("its rating")
    if boiler is not None and boiler.relief_capacity is not None:
        rating = said("it is stamped for ", figure(printing, boiler.relief_capacity))
    weakest: b.Text = not_reached("the highest pressure the boiler bears")
    if boiler is not None and boiler.highest_pressure is not None:
        weakest = said("the boiler bears ", figure(printing, boiler.highest_pressure))
    return said(
        "It opens at ", printing.relief_setting(), " and must pass ", figure(printing,
        room.relief_needed),
        "; ", rating, "; ", weakest, ". Discharge: ", decided(printing, "relief-pipe-blocked") or
        "full size, downhill, no valve, where it hurts nobody; to be looked at on site", ".",
        proof("Boiler room, sheet 5, and safety parts"),
    )  # fmt: skip


def decided(printing: Printing, id: str) -> str:
    """What was decided on a kind of finding, and by whom; empty where nothing was."""
    found = [each.decided for each in printing.design.findings if each.id == id and each.decided is not None]
    return f"{found[0].words} ({found[0].by})" if found else ""


def guards(printing: Printing) -> b.Text:
    """Low-water cutoff, limit, switch, and their proof."""
    plant = printing.design.job.system.plant
    if plant.boiler is None:
        return not_reached(NO_BOILER)
    cutoff = {True: "is shown", False: "was not found", None: "is not said"}[plant.low_water_cutoff]
    limit: b.Text = "is not given"
    if plant.high_limit is not None:
        limit = said("is set at ", figure(printing, plant.high_limit))
    return said(
        f"The low-water cutoff {cutoff}; the high limit ", limit, ". Each is proved by stopping the fire, "
        "step by step "
        "on the startup sheet. ", not_reached("where the emergency switch hangs."),
        proof("Startup, and safety parts in this set"),
    )  # fmt: skip


def drinking_water(printing: Printing) -> b.Text:
    """Backflow."""
    if printing.design.job.system.plant.boiler is None:
        return not_reached(NO_BOILER)
    return said(
        "A backflow preventer stands on the drinking-water side of the fill valve. ",
        not_reached("its class, which the adopted code names. No chemicals are in this design."),
        proof("Boiler room, parts and where they go"),
    )  # fmt: skip


def tank_needed(printing: Printing) -> b.Text:
    """The tank that is needed; else the least for the water that is known; else a blank to fill in."""
    room = printing.design.boiler_room.plant
    if not room.tank_volume.is_missing:
        return said("needed ", figure(printing, room.tank_volume))
    if room.tank_least is not None and not room.tank_least.is_missing:
        return said("needed at least ", figure(printing, room.tank_least), " for the water that is known")
    return said("needed ", printing.to_fill_in(room.tank_volume))


def tank(printing: Printing) -> b.Text:
    """Volume, acceptance, charge."""
    room, own = printing.design.boiler_room.plant, printing.design.job.system.plant.tank
    if room.tank_volume.is_missing:
        least: b.Text = ""
        if room.tank_least is not None and not room.tank_least.is_missing:
            least = said(
                " The water that is known asks for at least ", figure(printing, room.tank_least), "."
            )
        return said(
            waiting(printing, room.tank_volume), least, " Charge ", printing.precharge(), ".",
        )  # fmt: skip
    chosen: b.Text = "none is chosen"
    if own is not None and own.volume is not None:
        chosen = said("chosen ", figure(printing, own.volume))
    accepts: b.Text = ""
    if own is not None and own.acceptance is not None:
        accepts = said(", which takes up ", figure(printing, own.acceptance))
    return said(
        "Needed ", figure(printing, room.tank_volume), ", ", chosen, accepts, "; water to take up ",
        figure(printing, room.expanded), "; charge ", printing.precharge(), ". ",
        not_reached("how it is held."), proof("Boiler room, expansion tank"),
    )  # fmt: skip


def hot_water(printing: Printing) -> b.Text:
    """Hot water is not part of a design."""
    return not_reached("hot water: storage, tempering at source and fixture, relief and expansion.")

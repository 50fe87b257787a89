"""The owner's questions on boiler, water, controls and pressure."""

from __future__ import annotations

from heatledger.papers import blocks as b
from heatledger.papers.answers import figure, listed, not_reached, said, waiting
from heatledger.papers.owner_plant import right_size, times_over, warm_enough
from heatledger.papers.owner_rooms import has_emitters
from heatledger.papers.printing import Printing
from heatledger.papers.reset_table import fixed_line, held_words
from heatledger.steps.controls import asked_at
from heatledger.studies.held_water import held_water

STARTS = "how often it starts in an hour of mild weather."


def boiler_size(printing: Printing) -> b.Text:
    """Output against load."""
    plant = printing.design.job.system.plant
    if plant.boiler is None and printing.design.boiler_room.plant.load.is_missing:
        return waiting(printing, printing.design.boiler_room.plant.load)
    return said(right_size(printing), " ", not_reached(STARTS))


def cooler_water(printing: Printing) -> b.Text:
    """How cool the water may be for what hangs on the wall."""
    house, job = printing.design.emitters.house, printing.design.job
    if not has_emitters(printing):
        return not_reached("what heats the rooms is not given.")
    if house.lowest_supply.is_missing:
        return waiting(printing, house.lowest_supply)
    setter = job.rooms.get(house.set_by)
    carried = "every room" if len(job.rooms) > 1 else "the house"
    text = said(
        f"On the coldest night they carry {carried} with ", (warm_enough(printing, house.lowest_supply,
        True),),
        " supply water.",
    )  # fmt: skip
    if setter is not None and house.next_lowest is not None and not house.next_lowest.is_missing:
        text = said(
            text, f" {setter.name} asks for that; with more emitter there, ",
            (warm_enough(printing, house.next_lowest),), " would do for all the others.",
        )  # fmt: skip
    return said(
        text, " The emitter schedule has it emitter by emitter. ",
        not_reached("whether a heat pump can make such water in that cold, and how much heat it then gives."),
    )  # fmt: skip


def night(printing: Printing) -> b.Text:
    """What is said of turning it down."""
    setback = printing.design.job.system.controls.setback
    missing = not_reached(
        "how many hours it takes to come back, by the weather, and how far is safe from frost."
    )
    if setback is None or setback.is_missing or not float(setback) > 0:
        return said("The job says nothing of turning it down. ", missing)
    room = printing.design.boiler_room.plant
    text = said("The controls allow ", figure(printing, setback), " at night.")
    if room.ratio is not None and not room.ratio.is_missing:
        text = said(
            text, " What the boiler gives beyond the loss is all that warms the house up again: on the "
            "coldest night "
            "it can give ", times_over(printing, room.ratio), " times the load.",
        )  # fmt: skip
    return said(text, " ", missing)


def water_today(printing: Printing) -> b.Text:
    """The supply by the weather."""
    found, asked = printing.design.controls.controls, printing.design.job.system.controls
    water = held_water(printing.design)
    points = [each for each in water.open if not asked_at(each).is_missing]
    if not points and water.held and asked.outdoor_reset:
        return fixed_line(printing)
    if not points:
        return waiting(printing, printing.design.emitters.house.supply)
    if not asked.outdoor_reset:
        word = "The same in all weather: " if asked.outdoor_reset is False else "On the design day "
        supply = printing.design.emitters.house.supply
        rest = "" if asked.outdoor_reset is False else not_reached("whether it follows the weather.")
        return said(word, (warm_enough(printing, supply, True),), " supply. ", rest)
    picked = [points[i] for i in sorted({0, len(points) // 3, 2 * len(points) // 3, len(points) - 1})]
    pieces = [
        said(figure(printing, asked_at(each)), " at ", figure(printing, each.outdoor)) for each in picked
    ]
    card = (
        ", and all points on the boiler room card"
        if printing.design.job.system.plant.boiler is not None
        else ""
    )
    return said(
        "Supply by the weather outdoors: ", listed(pieces), f"{card}. Above ", figure(printing,
        found.shutdown),
        " outdoors there is no heat. ", held_words(printing),
    )  # fmt: skip


def gauge(printing: Printing) -> b.Text:
    """Pressure cold and hot, relief and precharge."""
    room = printing.design.boiler_room.plant
    if room.fill_pressure.is_missing:
        return waiting(printing, room.fill_pressure)
    hot: b.Text = not_reached(
        "the pressure when hot, which waits for the water in boiler, pipes and emitters."
    )
    if not room.hot_pressure.is_missing:
        hot = said("Hot: about ", figure(printing, room.hot_pressure, True), ".")
    return said(
        "Cold: ", figure(printing, room.fill_pressure, True), ". ", hot, " The relief valve opens at ",
        printing.relief_setting(), "; ",
        *_charge(printing),
    )  # fmt: skip


def _charge(printing: Printing) -> tuple[b.Text, ...]:
    charge = printing.design.boiler_room.plant.precharge_pressure
    if charge is None:
        return ("the tank is a plain one, half full of air, and has no charge.",)
    return ("the tank is charged to ", figure(printing, charge), " before filling.")


def drips(printing: Printing) -> b.Text:
    """What a dripping relief pipe says, and what is never done."""
    room = printing.design.boiler_room.plant
    if room.relief_pressure.is_missing:
        return waiting(printing, room.relief_pressure)
    tank: b.Text = "a tank that lost its charge or is too small, or a fill valve that leaks by"
    return said(
        "A pipe that drips beside the boiler is most likely that of the relief valve, which opens at ",
        printing.relief_setting(), ". Likely causes: ", tank, ". Read the gauge cold and hot, "
        "note both, and call. Never cap or plug that pipe: it keeps the boiler from bursting, and what "
        "comes out of it scalds. ",
        not_reached("a leak in a pipe or joint, which only a look on site finds."),
    )  # fmt: skip


def noises(printing: Printing) -> b.Text:
    """Air, and how it is driven out; growth of pipes and valves are not worked out."""
    flow = printing.design.circuits.circuits
    missing = not_reached(
        "ticking from pipes that grow where they are held, and banging of valves that close."
    )
    if not flow:
        return said(missing, " Air cannot be judged before the circuits are given.")
    way = "one run after the other" if any(each.index_run for each in flow.values()) else "circuit by circuit"
    return said(
        f"Gurgling is air. It is driven out {way}, in the order on the boiler room card, until no bubble "
        "comes for a minute. How fast the water runs in every tube, and so whether it carries air along, "
        "stands in the circuit "
        "schedule. Air that comes back is drawn in somewhere: call. ", missing,
    )  # fmt: skip


def failure(printing: Printing) -> b.Text:
    """What stops, what starts again, which spaces are cold even with the heat on."""
    losses, job = printing.design.losses, printing.design.job
    cold = [each for each in losses.unheated.values() if not each.temperature.is_missing]
    pieces = [said(figure(printing, each.temperature), f" in {each.name}") for each in cold]
    beside: b.Text = ""
    if pieces:
        beside = said(
            "On the coldest night, with the heat on, it is ",
            listed(pieces),
            "; without heat it gets colder there. ",
        )
    stop = ""
    if job.system.plant.boiler is not None:
        stop = (
            "Boiler, circulators and valves stop. When power is back the calls start them again; a guard "
            "that has locked out waits for a person, who finds the cause first. "
        )
    return said(stop, beside, not_reached("how many hours it takes until a pipe can freeze."))

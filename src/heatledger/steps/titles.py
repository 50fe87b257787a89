"""What the results of the heating system are called, by the kind of place where they stand.

The title of a formula says what is worked out; here it is said what the answer is for. A place that is
not listed keeps the title of its formula or the words of its entry.
"""

from __future__ import annotations

import re

from heatledger.job.model import Job
from heatledger.ledger.dimensions import TEMPERATURE
from heatledger.ledger.show import show
from heatledger.ledger.units import UNITS

_PIPE = {
    "flow": "design flow", "velocity": "velocity at the design flow", "head": "head at the design flow",
    "reynolds": "Reynolds number", "valve": "flow coefficient of the valve",
    "actual_flow": "flow that results", "actual_velocity": "velocity that results",
    "emitter_length": "length of the emitter's tube",
}  # fmt: skip
_DUE = {
    "flow": "flow due", "drop": "temperature drop due", "output": "heat due", "return_": "return due",
}  # fmt: skip
TITLES = {
    "emitters": {
        "excess": "excess over the room at the rating", "flow": "design flow", "inlet": "inlet",
        "outlet": "outlet", "length": "finned length",
        "lowest_supply": "lowest supply that gives the heat needed",
        "needed_rated": "rated output needed",
    },
    "rooms": {
        "given": "heat given", "needed": "heat needed", "over": "heat given less needed",
        "lowest_supply": "lowest supply that serves the room",
    },
    "house": {
        "given": "heat given", "mean_water": "mean water",
        "lowest_supply": "lowest supply that serves every room",
        "next_lowest": "lowest supply but for the room that sets it",
    },
    "circuits": {
        "load": "load of the circuit", "flow": "design flow", "head": "head of the circuit",
        "actual_flow": "flow that results", "actual_drop": "temperature drop that results",
        "actual_output": "heat given at the flow that results", "actual_return": "return that results",
    },
    "circuits/common": _PIPE,
    "circuits/runs": _PIPE,
    "plant/mains": _PIPE,
    "plant/circulators": {
        "needed_flow": "flow needed", "needed_head": "head needed", "actual_flow": "flow that results",
        "actual_head": "head that results", "hydraulic_power": "power given to the water",
    },
    "plant/boiler": {
        "rated_flow": "flow at which its head is known", "rated_head": "head at that flow",
    },
    "plant": {
        "flow": "design flow", "input": "input at this height", "output": "output at this height",
        "water_volume": "water in the system", "top_cold": "pressure at the top, cold",
        "top_hot": "pressure at the top, hot",
        "output_milder": "output at this height, by the milder reading",
        "hottest": "hottest the water may get", "needed_fill": "fill pressure needed",
        "largest_output": "largest output that is wanted",
        "return_design": "return on the design day", "tank_by_density": "tank volume needed, by densities",
        "tank_by_line": "tank volume needed, by the line of the boiler code",
        "water_known": "water counted so far", "tank_volume": "tank volume needed",
        "top_margin": "margin over boiling at the top",
        "fill_margin": "pressure wanted at the top",
    },
    "plant/volumes": {"volume": "water held"},
    "controls/reset": {
        "supply": "supply needed", "return_": "return that follows", "line": "supply by the line as set",
        "by_mean": "supply needed, by the mean of supply and return",
        "line_over": "line as set over the need",
    },
    "controls": {"balance": "outdoor temperature at which heat starts", "shutdown": "warm-weather shutdown"},
    "startup": {
        "supply_due": "supply due", "fire_drop": "temperature drop at full fire",
        "settled_drop": "temperature drop once the water has settled", **_DUE,
    },
    "startup/circuits": _DUE,
    "startup/emitters": {"output": "heat due", "outlet": "outlet due"},
    "startup/compared": {
        "supply_off": "supply as read less due", "return_off": "return as read less due",
        "drop": "temperature drop as read", "drop_due": "temperature drop to compare with",
        "drop_off": "temperature drop as read less due",
        "output": "heat by the readings", "cold_off": "pressure cold as read less due",
        "hot_off": "pressure hot as read less due", "rise": "rise of pressure as read",
        "precharge_off": "precharge as read less due",
        "carbon_monoxide": "carbon monoxide, free of excess air", "excess_air": "excess air",
    },
}  # fmt: skip
"""By kind of place, then by the last step of the path."""

_THINGS = ("emitters", "circuits", "runs", "rooms", "circulators", "volumes", "reset")
_FITTINGS = {"90-ell": "90° ells", "45-ell": "45° ells", "tee-run": "tees, straight through",
             "tee-branch": "tees, through the branch"}  # fmt: skip
_WEATHER = re.compile(r"at-(minus-)?(\d+)-([fc])")


def title_of_place(path: str) -> str:
    """What stands at a path of the heating system; empty where its formula or its entry says it better."""
    steps, kind, i = path.split("/"), [], 0
    while i < len(steps) - 1:
        kind.append(steps[i])
        i += 2 if steps[i] in _THINGS and i + 2 < len(steps) else 1
    if kind and kind[-1] == "fittings":
        return f"count of {_FITTINGS.get(steps[-1], steps[-1].replace('-', ' ') + 's')}"
    return TITLES.get("/".join(kind), {}).get(steps[-1], "")


def weather_of(id: str, job: Job) -> str:
    """What a point of the reset line is called: its outdoor temperature, in the reader's unit."""
    point = _WEATHER.fullmatch(id)
    if point is None:
        return "Design day"
    number = float(point[2]) * (-1 if point[1] else 1)
    unit = UNITS["°F" if point[3] == "f" else "°C"]
    return f"At {show(unit.to_si(number, True), job.units, TEMPERATURE)} outdoors"


def part_of_water(id: str, job: Job) -> str:
    """What a part of the system's water is called."""
    if id == "boiler" and job.system.plant.boiler is not None:
        return job.system.plant.boiler.name
    if id.startswith("tubes-"):
        circuit = job.system.circuits.get(id.removeprefix("tubes-"))
        return f"Tubes of {circuit.name}" if circuit is not None else "Tubes"
    return id.replace("-", " ").capitalize()

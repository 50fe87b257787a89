"""What the survey sheet asks for, and why each answer matters."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension


@dataclass(frozen=True)
class Ask:
    """One thing to write down: boxes to tick, or a rule with the unit of its kind."""

    what: str
    why: str
    unit: Dimension | None = None
    boxes: tuple[str, ...] = ()


HEIGHTS = (
    Ask("Floor to floor", "outside walls are counted to the next floor", d.LENGTH),
    Ask("Floor to ceiling", "gives the air in a room", d.LENGTH),
    Ask("Basement wall above grade, below grade", "air takes more than earth", d.LENGTH),
    Ask("Highest pipe above the boiler gauge", "sets the fill pressure and the tank", d.LENGTH),
)
BUILT_OF = (
    Ask("Year built, years rebuilt", "says what is likely where nobody can look"),
    Ask("Outside wall: frame or masonry, thickness, fill", "most of the loss; look at a socket, power off"),
    Ask("Attic or roof: kind and depth of fill", "cheapest to mend, often the first thing sold"),
    Ask("Floor, and what is below it", "a cold basement or a crawl space costs heat"),
    Ask("Slab: insulated at its edge?", "the edge loses, not the middle", boxes=("yes", "no", "not known")),
    Ask("Glass and frames", "a label beats a guess by half", boxes=("single", "storm", "double", "low-e")),
)
AIR = (
    Ask("Blower-door test, if there is one", "known air narrows the answer more than any other test",
        d.LEAKAGE_AT_50_PA),
    Ask("Volume that was tested", "a test without its volume says little", d.VOLUME),
    Ask("What leaks", "guides the guess where there is no test",
        boxes=("old sash", "fireplace", "attic hatch", "hood")),
)  # fmt: skip
BILLS = (
    Ask("Fuel", "each has its own heat", boxes=("gas", "oil", "propane", "electric")),
    Ask("Used, with its unit", "the bill weighs the house as a whole"),
    Ask("From day, to day", "degree days must be of the same days"),
    Ask(
        "Also burns for",
        "this part is taken off first",
        boxes=("hot water", "cooking", "drying", "nothing else"),
    ),
    Ask("Other heat: wood, electric", "heat that the bill does not show"),
    Ask("Kept at, day and night", "a cool house burns less than its loss says", d.TEMPERATURE),
)
BOILER = (
    Ask("Plate: maker's kind, year", "age and kind bound the efficiency"),
    Ask("Plate: input, output", "output is held against the loss", d.HEAT_RATE),
    Ask("Vent", "a new boiler may need another", boxes=("chimney", "sealed, two pipes", "one pipe", "none")),
    Ask("Chimney or vent: lined, sound, shared with", "carbon monoxide leaves by it"),
    Ask(
        "Air for burning",
        "a tight room starves a flame",
        boxes=("from outdoors", "from the house", "not seen"),
    ),
    Ask(
        "Low-water cutoff, high limit", "old plants often lack one", boxes=("cutoff", "limit", "neither seen")
    ),
    Ask("Circuits", "says what can be zoned", boxes=("series loop", "home runs", "one pipe", "steam")),
    Ask("Zones, and where each thermostat hangs", "one zone, one valve or circulator"),
)
WATER = (
    Ask("Gauge cold, gauge hot", "a gauge that swings tells of the tank", d.PRESSURE),
    Ask(
        "Relief valve opens at; its pipe ends where",
        "it must reach the floor, open and unplugged",
        d.PRESSURE,
    ),
    Ask("Expansion tank: size, kind, where it joins", "sized and placed wrong, it drips", d.WATER_VOLUME),
    Ask("Water", "glycol changes flow, tank and care", boxes=("plain", "glycol", "black", "not drawn")),
)
SAFETY = (
    "Smell of gas, or a carbon monoxide alarm that sounds: touch no switch, go out, call from outside.",
    "Look for a carbon monoxide alarm outside every sleeping area and on every floor; say so where one is "
    "missing. Soot, rust streaks or wet marks at the vent: do not fire it, call a licensed trade.",
    "White lagging or old tape on pipes, and loose gray fill in an attic, may hold asbestos: do not touch. "
    "Old paint may hold lead. Covers of boilers, gas and electrical parts are opened by licensed trades "
    "only. Step on joists, not on a ceiling. Local code and licensed practice govern.",
)
PHOTOS = (
    "each side of the house", "boiler plate", "boiler, front and vent", "chimney, top and base",
    "gauge and relief pipe", "tank and its joint", "each emitter, once a kind", "window label", "attic fill",
    "wall at a socket", "electric panel", "gas meter and tank",
)  # fmt: skip

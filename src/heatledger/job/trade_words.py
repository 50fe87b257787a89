"""What the trade calls a thing where the job file has another key, and rows of the catalog by their words."""

from __future__ import annotations

import re
from collections import Counter
from difflib import SequenceMatcher

MOST_OFFERED = 5
"""Names offered at most: a longer list is no help at the bench."""

_CONSTRUCTION = {
    "u": ("u_value",), "ufactor": ("u_value",), "uvalue": ("u_value",), "transmittance": ("u_value",),
    "r": ("r_value",), "rvalue": ("r_value",), "rfactor": ("r_value",), "resistance": ("r_value",),
    "f": ("f_factor",), "fvalue": ("f_factor",), "insulation": ("catalog", "r_value"),
    "batt": ("catalog",), "type": ("kind",),
}  # fmt: skip
_SPACE = {
    "ceiling": ("ceiling_height",), "height": ("ceiling_height",), "area": ("floor_area",),
    "floor": ("level",), "story": ("level",), "storey": ("level",), "walls": ("surfaces",),
}  # fmt: skip
_WARMTH = dict.fromkeys(("temp", "temperature", "setpoint", "thermostat"), ("indoor",))
_CHANGES = dict.fromkeys(("ach", "airchanges", "airchange", "infiltration"), ("changes",))
WORDS: dict[str, dict[str, tuple[str, ...]]] = {
    "construction": _CONSTRUCTION,
    "room": {**_SPACE, **_WARMTH, **dict.fromkeys(_CHANGES, ("air",))},
    "unheated space": {**_SPACE, **dict.fromkeys(_CHANGES, ("air",))},
    "site": {
        "temp": ("outdoor", "indoor"), "temperature": ("outdoor", "indoor"), "design": ("outdoor",),
        "outside": ("outdoor",), "outdoortemp": ("outdoor",), "inside": ("indoor",),
        "indoortemp": ("indoor",), "altitude": ("elevation",),
    },
    "level": {
        "ceiling": ("ceiling_height",), "height": ("ceiling_height", "wall_height"), "wall": ("wall_height",),
    },
    "neighbor": dict.fromkeys(("temp", "indoor"), ("temperature",)),
    "air entry": {**_CHANGES, "sides": ("exposed_sides",), "exposed": ("exposed_sides",)},
    "surface": {"windows": ("openings",), "doors": ("openings",), "type": ("construction",)},
    "emitter": {
        "type": ("kind",), "feet": ("length",), "btu": ("rating", "output"), "watts": ("output",),
        "hef": ("heating_effect",), "n": ("exponent",), "row": ("catalog",), "model": ("catalog",),
    },
    "circuit": {
        "type": ("kind",), "pump": ("circulator",), "pipe": ("tube",), "deltat": ("drop",), "gpm": ("flow",),
        "valve": ("zone_valve",), "emitters": ("runs",), "loops": ("runs",),
    },
    "run": {"pipe": ("tube",), "cv": ("valve",), "kv": ("valve",)},
    "piece of mains": {"pipe": ("tube",), "where": ("through",)},
    "boiler": {
        "type": ("kind",), "afue": ("efficiency",), "reliefvalve": ("relief",), "volume": ("water",),
        "btu": ("input", "output"), "pressure": ("highest_pressure",),
    },
    "boiler room": {
        **dict.fromkeys(("pump", "pumps", "circulator"), ("circulators",)), "deltat": ("drop",),
        "expansiontank": ("tank",), "pressure": ("fill",), "pipe": ("mains",),
    },
    "circulator": {"head": ("shutoff",), "watts": ("power",), "curve": ("shutoff", "middle_flow")},
    "set of controls": {
        "wwsd": ("warm_weather_shutdown",), "odr": ("outdoor_reset",), "purge": ("post_purge",),
    },
    "bill": {
        "therms": ("energy",), "gallons": ("volume",), "hdd": ("degree_days",), "afue": ("efficiency",),
        "ccf": ("gas",), "kwh": ("energy",),
    },
    "combustion reading": {"o": ("oxygen",), "co": ("carbon_monoxide",)},
    "opening": {"quantity": ("count",), "number": ("count",), "type": ("construction",)},
}  # fmt: skip
"""By the name of the shape: words of the trade, without marks between them, and the keys they stand for."""


def meant_by(shape: str, word: str) -> tuple[str, ...]:
    """The keys that a word of the trade stands for in a shape; none when it is not such a word."""
    return WORDS.get(shape, {}).get(re.sub(r"[^a-z]", "", word.lower()), ())


def _parts(name: str) -> Counter[str]:
    return Counter(re.findall(r"\d+x\d+|[a-z]+|\d+", name.lower()))


def rows_like(name: str, kind: str = "", whole: bool = False) -> list[str]:
    """Rows of the catalog whose keys hold every part of ``name``, else those that hold the most of them.

    At most five, the nearest first; of one kind where it is given. ``whole`` keeps to rows with all parts.
    """
    from heatledger.catalog.loader import constructions

    wanted = _parts(name[:80])
    keys = [key for key, row in constructions().items() if not kind or row.kind == kind]
    held = {key: (_parts(key) & wanted).total() for key in keys}
    least = wanted.total() if whole else max(held.values(), default=0)
    best = [key for key in keys if held[key] == least > 0]
    near = sorted(best, key=lambda key: -SequenceMatcher(None, name[:80].lower(), key).ratio())
    return near[:MOST_OFFERED]


def mend_of_row(name: str, kind: str) -> str:
    """What to write instead of a name that the catalog does not have."""
    near = rows_like(name, kind) or rows_like(name)
    command = f"`heatledger catalog {kind}`".replace(" `", "`")
    every = f"{command} lists them all."
    return f"Did you mean {or_(near)}? {every}" if near else every


def or_(names: list[str] | tuple[str, ...]) -> str:
    """Names in ticks, joined by commas and "or"; empty for none."""
    if not names:
        return ""
    ticked = [f"`{each}`" for each in names]
    return " or ".join(each for each in (", ".join(ticked[:-1]), ticked[-1]) if each)


def mend_of_resistance(label: str, readable: tuple[str, ...], kind: str) -> str:
    """What to write where an R-value stands as a U-value: an assembly's R, or a framed row for a batt."""
    ways = or_([f"r_value: {each}" for each in readable])
    number = re.search(r"[0-9]+(?:\.[0-9]+)?", label)
    rows = rows_like(f"r-{number.group()}", kind, whole=True)[:2] if number else []
    framed = f"a framed row of the catalog, such as {or_(rows)}" if rows else "a framed row of the catalog"
    return f"If it is the whole assembly, write {ways} instead. If it is the label of a batt, take {framed}."

"""Houses of one to four rooms in a row, from random numbers, written in either system of units."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from hypothesis import strategies as st

from heatledger.steps.design import Design, design
from tests.losses.plain import flat, job_of

LENGTHS = st.floats(1.5, 12.0).map(lambda each: round(each, 3))
U_VALUES = st.floats(0.1, 2.5).map(lambda each: round(each, 3))
WARMTH = st.floats(5.0, 26.0).map(lambda each: round(each, 2))
Numbers = Mapping[str, Any]


@st.composite
def numbers(draw: st.DrawFn) -> Numbers:
    """The numbers of a row of rooms over a cellar, beside a shed that touches the cellar, or a neighbor."""
    rooms = [
        {
            "width": draw(LENGTHS), "indoor": draw(WARMTH), "window": draw(st.floats(0.1, 2.0)),
            "air": draw(st.floats(0, 2)),
        }
        for _ in range(draw(st.integers(1, 4)))
    ]  # fmt: skip
    return {
        "rooms": rooms, "deep": draw(LENGTHS), "high": draw(st.floats(2.2, 3.5)), "wall": draw(U_VALUES),
        "window": draw(U_VALUES), "floor": draw(U_VALUES), "shed": draw(st.floats(0.2, 3)),
        "outdoor": draw(st.floats(-30, 4)), "elevation": draw(st.floats(0, 2500)),
        "soil": draw(st.floats(0.6, 2.5)), "sheds": draw(st.booleans()),
    }  # fmt: skip


UNIT_TEXTS = {
    # what a number is: metric unit; inch-pound unit, and how many of it one metric unit is
    "length": ("m", "ft", 1 / 0.3048), "area": ("m2", "ft2", 1 / 0.3048**2),
    "volume": ("m3", "ft3", 1 / 0.3048**3), "u": ("W/(m²·K)", "Btu/(h·ft²·°F)", 1 / 5.678263341113488),
    "r": ("m²·K/W", "h·ft²·°F/Btu", 5.678263341113488), "f": ("W/(m·K)", "Btu/(h·ft·°F)",
    1 / 1.7307346663713912),
    "heat": ("W", "Btu/h", 3.412141633127942), "swing": ("K", "°F", 1.8),
}  # fmt: skip


@dataclass(frozen=True)
class Writer:
    """Writes the numbers in one system, perhaps with every wall in two pieces."""

    made: Numbers
    metric: bool
    split: bool

    def q(self, value: float, kind: str) -> str:
        unit, other, factor = UNIT_TEXTS[kind]
        return f"{value:.15g} {unit}" if self.metric else f"{value * factor:.15g} {other}"

    def t(self, celsius: float) -> str:
        return f"{celsius:.15g} °C" if self.metric else f"{celsius * 1.8 + 32:.15g} °F"

    def wall(self, length: float, beyond: str) -> dict[str, Any]:
        return {"construction": "wall", "length": self.q(length, "length"), "beyond": beyond}

    def room(self, i: int) -> dict[str, Any]:
        room, deep = self.made["rooms"][i], self.made["deep"]
        surfaces: dict[str, Any] = {}
        for n, piece in enumerate((0.4, 0.6) if self.split else (1.0,)):
            surfaces[f"south-{n}"] = self.wall(room["width"] * piece, "outdoors")
        # The glass is in the last piece, which is large enough for it.
        glass = {"construction": "window", "area": self.q(room["window"] * room["width"] * 0.5, "area")}
        surfaces[f"south-{n}"]["openings"] = {"w": glass}
        floor = self.q(room["width"] * deep, "area")
        surfaces["floor"] = flat(floor, "floor", "unheated/cellar")
        end = "unheated/shed" if self.made["sheds"] else "neighbors/next"
        surfaces["end"] = self.wall(deep, f"rooms/r{i - 1}" if i else end)
        return {
            "level": "main", "floor_area": floor, "indoor": self.t(room["indoor"]),
            "air": {"changes": f"{room['air']:.15g} ACH"}, "surfaces": surfaces,
        }  # fmt: skip

    def unheated(self) -> dict[str, Any]:
        q, deep = self.q, self.made["deep"]
        surfaces: dict[str, Any] = {
            "walls": {"construction": "buried", "length": q(4 * deep, "length"), "bottom": q(1.8, "length")},
            "ground": {"construction": "slab", "area": q(deep * deep, "area"), "width": q(deep, "length"),
                       "depth": q(1.8, "length")},
            "above": flat(q(deep, "area"), "wall"),
        }  # fmt: skip
        spaces: dict[str, Any] = {
            "cellar": {"volume": q(2 * deep * deep, "volume"), "heat": q(150, "heat"),
                       "air": {"changes": "0.2 ACH"}, "surfaces": surfaces}
        }  # fmt: skip
        if self.made["sheds"]:
            surfaces["to-shed"] = flat(q(3.0, "area"), "wall", "unheated/shed")
            boards = {"boards": flat(q(20, "area"), "boards")}
            spaces["shed"] = {"volume": q(40, "volume"), "air": {"changes": "3 ACH"}, "surfaces": boards}
        return spaces

    def constructions(self) -> dict[str, Any]:
        made = self.made
        kinds = {"wall": made["wall"], "window": made["window"], "floor": made["floor"]}
        found: dict[str, Any] = {id: {"kind": id, "u_value": self.q(u, "u")} for id, u in kinds.items()}
        found["boards"] = {"kind": "wall", "u_value": self.q(made["shed"], "u")}
        found["buried"] = {"kind": "below-grade wall", "r_value": self.q(0.5, "r")}
        found["slab"] = {"kind": "below-grade floor", "r_value": self.q(0.3, "r")}
        return found


def build(made: Numbers, metric: bool = True, split: bool = False) -> Design:
    """The house of some numbers, designed."""
    write = Writer(made, metric, split)
    high = write.q(made["high"], "length")
    site = {
        "outdoor": write.t(made["outdoor"]), "indoor": write.t(20),
        "elevation": write.q(made["elevation"], "length"), "ground_temperature": write.t(10),
        "ground_amplitude": write.q(6, "swing"), "soil_conductivity": write.q(made["soil"], "f"),
    }  # fmt: skip
    return design(job_of(
        "metric" if metric else "US", site=site, constructions=write.constructions(),
        neighbors={"next": {"temperature": write.t(12)}},
        levels={"main": {"wall_height": high, "ceiling_height": high}},
        rooms={f"r{i}": write.room(i) for i in range(len(made["rooms"]))}, unheated=write.unheated(),
    ))  # fmt: skip

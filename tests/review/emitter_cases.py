"""Cases of the findings on emitters: changes on which each just stands, and just does not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.job.model import Job
from tests.review.emitter_house import emitter_house

Changes = list[dict[str, Any]]


@dataclass(frozen=True)
class EmitterCase:
    """``fires`` and ``silent`` are laid over the sound house of emitters."""

    id: str
    where: str
    fires: Changes
    silent: Changes
    limit: str = ""
    """A threshold under which the first of the two is silent too."""

    def job(self, fires: bool, limit: str = "") -> Job:
        """The house with the changes laid over it, and perhaps a limit of its own."""
        text = f"\nlimits: {{{self.id}: '{limit}'}}\n" if limit else ""
        return emitter_house(self.fires if fires else self.silent, text)


def to(path: str, value: Any, *more: dict[str, Any]) -> Changes:
    return [{"set": path, "to": value}, *more]


def length(id: str, feet: float) -> Changes:
    return to(f"emitters/{id}/length", f"{feet:g} ft")


def gone(*paths: str) -> Changes:
    return [{"remove": each} for each in paths]


LOOP, PANELS = "circuits/loop", "circuits/panels"
COOL = to("emitters/d-p/rated_return", "40 °C")

CASES = (
    EmitterCase("room-without-emitter", "rooms/e", gone("emitters/e-p", f"{PANELS}/runs/e-p"), []),
    EmitterCase(
        "emitter-without-load", "emitters/e-p", to("rooms/e/indoor", "0 °F"), to("rooms/e/indoor", "1 °F")
    ),
    EmitterCase("room-left-cold", "rooms/a", length("a-b", 11.37), length("a-b", 11.38), "95 %"),
    EmitterCase("room-left-cold", "rooms/d", to("emitters/d-p/output", "1400 W"), []),
    EmitterCase("room-driven-hot", "rooms/b", length("b-b", 21.64), length("b-b", 21.62), "140 %"),
    EmitterCase("supply-beyond-reach", "rooms/c", length("c-b", 7.86), length("c-b", 7.87), "210 °F"),
    EmitterCase("one-room-sets-supply", "rooms/c", length("c-b", 9.85), length("c-b", 9.86), "20 °F"),
    EmitterCase(
        "baseboard-past-free-wall", "rooms/a", to("rooms/a/free_wall", "11.73 ft"),
        to("rooms/a/free_wall", "11.75 ft"), "6 in",
    ),
    EmitterCase("supply-not-given", "plant/supply", gone("plant/supply"), []),
    EmitterCase("length-past-room", "emitters/a-b", length("a-b", 73.6), length("a-b", 73.5), "110 %"),
    EmitterCase("length-past-room", "rooms/a", to("rooms/a/free_wall", "73.6 ft"),
                to("rooms/a/free_wall", "73.5 ft")),
    EmitterCase(
        "cabinet-length-as-fin", "emitters/a-b", to("rooms/a/free_wall", "13.16 ft"),
        to("rooms/a/free_wall", "13.17 ft"), "1 in",
    ),
    EmitterCase("loop-drop-large", LOOP, to(f"{LOOP}/drop", "18.9 °F"), to(f"{LOOP}/drop", "18.8 °F"),
                "25 °F"),
    EmitterCase(
        "first-of-loop-takes-all", LOOP, [*length("a-b", 17.95), *length("c-b", 8)],
        [*length("a-b", 17.93), *length("c-b", 8)], "160 %",
    ),
    EmitterCase("radiator-starved", "emitters/d-p", to(f"{PANELS}/drop", "33.4 °F", *COOL),
                to(f"{PANELS}/drop", "33.3 °F", *COOL), "40 %"),
    EmitterCase("radiator-starved", "emitters/a-b", to(f"{LOOP}/flow", "0.299 gpm"),
                to(f"{LOOP}/flow", "0.301 gpm")),
    EmitterCase("baseboard-flow-smooth", "emitters/a-b", to(f"{LOOP}/flow", "0.239 gpm"),
                to(f"{LOOP}/flow", "0.241 gpm"), "50 %"),
    EmitterCase("baseboard-flow-smooth", "emitters/a-b", to(f"{LOOP}/drop", "128 °F"),
                to(f"{LOOP}/drop", "127 °F")),
    EmitterCase("four-gpm-column", "emitters/a-b", to("emitters/a-b/rated_flow", "4 gpm"),
                to("emitters/a-b/rated_flow", "3.99 gpm"), "5 gpm"),
    EmitterCase("iron-and-fin-on-one-stat", "zones/fins", to("circuits/iron/zone", "fins"),
                to("circuits/iron/zone", "steel")),
    EmitterCase("fifteen-percent-credit", "emitters/a-b", to("emitters/a-b/heating_effect", "1.14"),
                to("emitters/a-b/heating_effect", "1.15"), "110 %"),
    EmitterCase("ratings-on-unlike-basis", "emitters/e-p", to("emitters/e-p/rated_air", "19.44 °C"),
                to("emitters/e-p/rated_air", "19.45 °C"), "2 °F"),
    EmitterCase("iron-sized-for-steam", "emitters/f-i", to("emitters/f-i/edr", "37.6 ft2"),
                to("emitters/f-i/edr", "37.7 ft2"), "90 %"),
    EmitterCase("iron-sized-for-steam", "emitters/f-i", to("emitters/f-i/edr", "20.84 ft2"),
                to("emitters/f-i/edr", "20.83 ft2")),
    EmitterCase("hot-panel-in-reach", "house", to("plant/supply", "140.1 °F"), to("plant/supply", "140 °F"),
                "150 °F"),
    EmitterCase("heavy-iron-on-joists", "emitters/f-i", to("emitters/f-i/edr", "42.9 ft2"),
                to("emitters/f-i/edr", "42.8 ft2")),
    EmitterCase("heavy-iron-on-joists", "emitters/f-i", to("emitters/f-i/water", "0.8 gal"),
                to("emitters/f-i/water", "0.6 gal")),
)  # fmt: skip

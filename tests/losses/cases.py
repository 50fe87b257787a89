"""For every kind of finding a house on which it just stands, and one on which it just does not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.job.load import read_job
from heatledger.job.model import Job
from tests.losses.houses import TEXTS

Changes = list[dict[str, Any]]


@dataclass(frozen=True)
class Case:
    """``fires`` and ``silent`` are laid over a sound house, with text put at the end of its file."""

    id: str
    house: str
    where: str
    fires: Changes
    silent: Changes
    limit: str = ""
    """A threshold under which the first of the two is silent too."""
    text: str = ""
    text_silent: str = ""

    def job(self, fires: bool, limits: str = "") -> Job:
        """The house with the changes laid over it, and perhaps a limit of its own."""
        text = TEXTS[self.house] + (self.text if fires else self.text_silent)
        if limits:
            text += f"\nlimits: {{{self.id}: '{limits}'}}\n"
        job = read_job(text, "case.yaml")
        changes = self.fires if fires else self.silent
        return job.with_changes(changes) if changes else job


def to(path: str, value: Any) -> Changes:
    return [{"set": path, "to": value}]


def add(path: str, value: Any) -> Changes:
    return [{"add": path, "to": value}]


def gone(*paths: str) -> Changes:
    return [{"remove": each} for each in paths]


def each_room(value: str) -> Changes:
    return [
        change for room in ("living", "kitchen", "bedroom-1", "bedroom-2")
        for change in to(f"rooms/{room}/air/changes", value)
    ]  # fmt: skip


def known(path: str, value: str, how: str) -> Changes:
    return to(path, {"is": value, "known": how})


def closet(indoor: str, outside: str = "") -> Changes:
    surfaces = {"wall": {"construction": "wall", "size": "10' × 8'", "beyond": "rooms/living"}}
    if outside:
        surfaces["ceiling"] = {"construction": "ceiling", "area": outside, "beyond": "outdoors"}
    room = {"level": "main", "size": "5' × 5'", "indoor": indoor, "habitable": "no", "surfaces": surfaces}
    return add("rooms/closet", room)


BEDROOM, KITCHEN, CABIN = "rooms/bedroom-1", "rooms/kitchen", "rooms/cabin"
SOUTH = f"{CABIN}/surfaces/south"
EDGE = "0.45 Btu/(h·ft·°F)"
BELOW = "unheated/basement/surfaces/below"
GARAGE_WALL = "rooms/living/surfaces/garage-wall"
SKY = "rooms/living/surfaces/ceiling/openings/sky"
ROW = "frame-wall-2x6-r-21"

CASES = (
    Case("degrees-crossed", "ranch", "site/outdoor", to("site/outdoor", "60 °F"), to("site/outdoor",
         "59 °F"), "61 °F"),
    Case("outdoor-design-guessed", "ranch", "site/outdoor", known("site/outdoor", "4 °F", "assumed"),
         known("site/outdoor", "4 °F", "told")),
    Case("ground-out-of-line", "brick", "site/ground_temperature", to("site/ground_temperature", "78 °F"),
         to("site/ground_temperature", "77 °F"), "80 °F"),
    Case("ground-out-of-line", "brick", "site/ground_amplitude", to("site/ground_amplitude", "49.5 °F"),
         to("site/ground_amplitude", "48.9 °F")),
    Case("indoor-below-minimum", "ranch", BEDROOM, to(f"{BEDROOM}/indoor", "67.9 °F"),
         to(f"{BEDROOM}/indoor", "68 °F"),
         "65 °F"),
    Case("indoor-out-of-range", "ranch", BEDROOM, to(f"{BEDROOM}/indoor", "80.1 °F"), to(f"{BEDROOM}/indoor",
         "80 °F"),
         "85 °F"),
    Case("indoor-out-of-range", "ranch", BEDROOM, to(f"{BEDROOM}/indoor", "44.9 °F"), to(f"{BEDROOM}/indoor",
         "45 °F")),
    Case("partition-not-given", "ranch", BEDROOM, to(f"{BEDROOM}/indoor", "75.1 °F"), to(f"{BEDROOM}/indoor",
         "75 °F"),
         "10 °F"),
    Case("feet-meters-crossed", "ranch", "levels/main/ceiling_height", to("levels/main/ceiling_height",
         "20.1 ft"),
         to("levels/main/ceiling_height", "20 ft"), "30 ft"),
    Case("feet-meters-crossed", "ranch", f"{KITCHEN}/ceiling_height", to(f"{KITCHEN}/ceiling_height",
         "6.4 ft"),
         to(f"{KITCHEN}/ceiling_height", "6.5 ft")),
    Case("wall-lower-than-ceiling", "ranch", "levels/main", to("levels/main/wall_height", "7.9 ft"),
         to("levels/main/wall_height", "8 ft")),
    Case("floor-areas-disagree", "ranch", "heated_floor_area", to("heated_floor_area", "1245 ft2"),
         to("heated_floor_area", "1244 ft2"), "20 %"),
    Case("room-on-two-sheets", "ranch", "rooms/bedroom-2", to("rooms/bedroom-2/name", "Bedroom 1"),
         to("rooms/bedroom-2/name", "Bedroom 3")),
    Case("outline-not-closed", "ranch", "levels/main", to(f"{KITCHEN}/surfaces/south-wall/length", "16.9 ft"),
         to(f"{KITCHEN}/surfaces/south-wall/length", "17.1 ft"), "20 %"),
    Case("floor-or-ceiling-left-out", "ranch", KITCHEN, gone(f"{KITCHEN}/surfaces/ceiling"),
         gone(f"{KITCHEN}/surfaces/ceiling", "rooms/living/surfaces/ceiling"), "100 %"),
    Case("openings-over-wall", "tiny", SOUTH, to(f"{SOUTH}/openings/w/area", "76.9 ft2"),
         to(f"{SOUTH}/openings/w/area", "76.8 ft2"), "70 %"),
    Case("opening-size-odd", "tiny", f"{SOUTH}/openings/w", to(f"{SOUTH}/openings/w/area", "100.1 ft2"),
         to(f"{SOUTH}/openings/w/area", "100 ft2"), "120 ft2"),
    Case("opening-size-odd", "tiny", f"{SOUTH}/openings/w", to(f"{SOUTH}/openings/w/area", "0.79 ft2"),
         to(f"{SOUTH}/openings/w/area", "0.8 ft2")),
    Case("floor-larger-than-room", "tiny", CABIN, to(f"{CABIN}/surfaces/floor/area", "211.3 ft2"),
         to(f"{CABIN}/surfaces/floor/area", "211.2 ft2"), "20 %"),
    Case("rim-joist-left-out", "attic", "levels/one", to("levels/one/wall_height", "8.2 ft"),
         to("levels/one/wall_height", "8.3 ft"), "2 in"),
    Case("rim-joist-left-out", "crawl", "levels/main",
         [*to("levels/main/wall_height", "8 ft"), *gone("unheated/crawl/surfaces/block")],
         to("levels/main/wall_height", "8 ft")),
    Case("basement-wall-as-wall", "brick", "unheated/basement/surfaces/above",
         gone("unheated/basement/surfaces/below"), []),
    Case("ground-methods-mixed", "brick", "unheated/basement/surfaces/edge", [
         *add("constructions/edge", {"kind": "slab edge", "f_factor": EDGE}),
         *add("unheated/basement/surfaces/edge", {"construction": "edge", "length": "20 ft"})], []),
    Case("buffer-space-as-outdoors", "garage", GARAGE_WALL,
         add(GARAGE_WALL, {"construction": "wall", "length": "3 m", "beyond": "outdoors"}),
         add(GARAGE_WALL, {"construction": "wall", "length": "3 m", "beyond": "unheated/garage"})),
    Case("label-r-as-whole-wall", "ranch", "constructions/wall", to("constructions/wall/r_value", "R-13.05"),
         to("constructions/wall/r_value", "R-13.1"), "0.1 %"),
    Case("label-r-as-whole-wall", "ranch", "constructions/wall", to("constructions/wall/u_value", "U-0.0526"),
         to("constructions/wall/u_value", "U-0.0531")),
    Case("old-wall-new-r", "attic", "constructions/wall", known("constructions/wall/r_value", "R-12.1",
         "told"),
         known("constructions/wall/r_value", "R-12", "told"), "R-15"),
    Case("slab-edge-bare", "ranch", "constructions/edge", to("constructions/edge/f_factor",
         "0.61 Btu/(h·ft·°F)"),
         to("constructions/edge/f_factor", "0.60 Btu/(h·ft·°F)"), "0.7 Btu/(h·ft·°F)"),
    Case("surface-cold-inside", "ranch", "constructions/wall", to("constructions/wall/u_value", "U-0.447"),
         to("constructions/wall/u_value", "U-0.445"), "45 °F"),
    Case("center-glass-u", "ranch", "constructions/window", to("constructions/window/u_value", "U-0.300"),
         to("constructions/window/u_value", "U-0.302"), "80 %"),
    Case("skylight-as-window", "ranch", SKY, add(SKY, {"construction": "window", "area": "10 ft2"}), [
         *add("constructions/flat", {"kind": "window", "u_value": "U-0.60"}),
         *add(SKY, {"construction": "flat", "area": "10 ft2"})], "100 %"),
    Case("glass-frosts", "ranch", "constructions/window", to("constructions/window/u_value", "U-0.848"),
         to("constructions/window/u_value", "U-0.845"), "30 °F"),
    Case("space-closed-in", "garage", "unheated/garage",
         [*gone("unheated/garage/surfaces/walls", "unheated/garage/surfaces/edge"),
         *to("unheated/garage/air/changes", "0 ACH")],
         gone("unheated/garage/surfaces/walls", "unheated/garage/surfaces/edge")),
    Case("space-freezes", "brick", "unheated/basement", to("unheated/basement/air/changes", "1.9 ACH"),
         to("unheated/basement/air/changes", "1.8 ACH"), "20 °F"),
    Case("neighbor-may-shut-down", "flat", "rooms/room", to("neighbors/below/temperature", "20 °C"),
         to("neighbors/below/temperature", "11 °C"), "50 %"),
    Case("buffer-space-as-heated", "flat", "neighbors/below",
         [*to("neighbors/below/name", "Cellar"), *to("neighbors/below/temperature", "15.6 °C")],
         [*to("neighbors/below/name", "Cellar"), *to("neighbors/below/temperature", "15.5 °C")], "65 °F"),
    Case("floor-over-cold-space", "garage", "rooms/bedroom/surfaces/floor", to("constructions/floor/u_value",
         "0.300 W/(m²·K)"),
         to("constructions/floor/u_value", "0.298 W/(m²·K)"), "R-15"),
    Case("entry-not-used", "ranch", "neighbors/flat", add("neighbors/flat", {"temperature": "60 °F"}), []),
    Case("blower-door-figure-as-natural", "ranch", "air", to("air/changes", "2.01 ACH"), to("air/changes",
         "2.0 ACH"), "3 ACH"),
    Case("air-change-guessed", "ranch", "air", known("air/changes", "0.46 ACH", "assumed"),
         known("air/changes", "0.44 ACH", "assumed"), "30 %"),
    Case("air-and-glass-not-leading", "attic", "house", known("air/changes", "0.7 ACH", "told"),
         [*known("air/changes", "0.7 ACH", "told"), *to("built", "1980")], "20 %"),
    Case("wind-on-all-sides", "ranch", "air", each_room("0.40 ACH"), each_room("0.39 ACH"), "150 %"),
    Case("air-by-two-methods", "ranch", "air", to("rooms/living/air/exposed_sides", "2"), []),
    Case("air-tight-on-hope", "ranch", "air", known("air/changes", "0.19 ACH", "told"),
         known("air/changes", "0.2 ACH", "told"), "0.1 ACH"),
    Case("room-out-of-line", "twenty", "rooms/room-one-1", to("rooms/room-one-1/air/changes", "4 ACH"),
         to("rooms/room-one-1/air/changes", "2 ACH"), "600 %"),
    Case("room-without-outside", "ranch", "rooms/closet", closet("70 °F"), closet("70 °F", "25 ft2")),
    Case("no-window-in-room", "ranch", BEDROOM, gone(f"{BEDROOM}/surfaces/north-wall/openings"), []),
    Case("room-warmed-by-others", "ranch", "rooms/closet", closet("50 °F", "1 ft2"), closet("70 °F",
         "1 ft2")),
    Case("tall-room-layers", "ranch", "rooms/living", to("rooms/living/ceiling_height", "12.1 ft"),
         to("rooms/living/ceiling_height", "12 ft"), "15 ft"),
    Case("altitude-counts", "ranch", "site/elevation", to("site/elevation", "2001 ft"), to("site/elevation",
         "2000 ft"),
         "3000 ft"),
    Case("loss-coefficient-high", "brick", "house", to("constructions/brick/u_value", "U-0.28"), [],
         "U-0.90"),
    Case("loss-coefficient-low", "twenty", "house",
         [*to("air/changes", "0.05 ACH"), *to("constructions/wall/u_value", "U-0.02")], [], "U-0.05"),
    Case("mostly-guesses", "ranch", "house", [
         *known("constructions/wall/catalog", ROW, "assumed"), *known("constructions/edge/f_factor", EDGE,
         "assumed"),
         *known("constructions/window/u_value", "U-0.39", "assumed")],
         [*known("constructions/wall/catalog", ROW, "assumed"), *known("constructions/edge/f_factor", EDGE,
         "assumed")], "70 %"),
    Case("one-entry-swings", "twenty", "air/changes", known("air/changes", "0.45 ACH", "assumed"),
         known("air/changes", "0.45 ACH", "told"), "15 %"),
    Case("expectation-missed", "attic", "expectations/bills", to("expectations/bills/about", "25,000 Btu/h"),
         to("expectations/bills/about", "25,100 Btu/h")),
    Case("future-work-changes-load", "brick", "what-ifs/wrap", [], [], "60 %",
         "what-ifs: {wrap: {name: Wrapping the house, changes: [{set: constructions/brick/u_value, to: "
         "U-0.05}]}}",
         "what-ifs: {wrap: {name: Wrapping the house, changes: [{set: constructions/brick/u_value, to: "
         "U-0.15}]}}"),
    Case("limit-of-nothing", "ranch", "limits/no-such-thing", [], [], "", "limits: {no-such-thing: 5 %}",
         "limits: {mostly-guesses: 60 %}"),
    Case("code-not-named", "ranch", "codes", to(f"{BEDROOM}/indoor", "66 °F"), to(f"{BEDROOM}/indoor",
         "66 °F"), "",
         "", "codes: {adopted: the code of the town}"),
    Case("no-rooms-yet", "tiny", "rooms", gone(CABIN), []),
    Case("outside-the-range-of-a-formula", "brick", f"{BELOW}/bottom", to(f"{BELOW}/bottom", "9.9 ft"),
         to(f"{BELOW}/bottom", "9.8 ft")),
    Case("section-not-read-yet", "ranch", "hot_water", [], [], "", "hot_water: {tank: 40 gal}",
         "codes: {adopted: the code of the town}"),
    Case("measured-outside", "ranch", "measured", to("measured", "outside"), []),
    Case("decision-without-finding", "ranch", "decisions/openings-over-wall", [], [], "",
         "decisions: {openings-over-wall: {is: kept, because: it was measured}}", ""),
)  # fmt: skip

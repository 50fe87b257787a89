"""Cases of the findings on slips: sizes, depths, gaps in the shell, standings and extremes."""

from __future__ import annotations

from tests.losses.cases import BEDROOM, CASES, Case, add, gone, to

LIVING = "rooms/living"
ROOMS = ("living", "kitchen", "bedroom-1", "bedroom-2")
WEST = f"{LIVING}/surfaces/west-wall"
GLASS = f"{LIVING}/surfaces/south/openings/w"
CEILING = f"{LIVING}/surfaces/ceiling"
BELOW, SLAB = "unheated/basement/surfaces/below", "unheated/basement/surfaces/floor"
SOIL = "site/soil_conductivity"


def each_without(surface: str, *rooms: str) -> list[dict[str, str]]:
    return gone(*(f"rooms/{each}/surfaces/{surface}" for each in rooms))


def within(value: str, half: str) -> list[dict[str, object]]:
    return to("constructions/window/u_value", {"is": value, "within": half})


def outer_walls(south: str) -> list[dict[str, object]]:
    """Bedroom 1 with a wall to outdoors on every side; the last as long as said."""
    wall = {"construction": "wall", "beyond": "outdoors"}
    surfaces = f"{BEDROOM}/surfaces"
    return [
        *add(f"{surfaces}/south-wall", {**wall, "length": south}),
        *add(f"{surfaces}/east-wall", {**wall, "length": "12'"}),
    ]


def den(size: str, habitable: str = "yes") -> list[dict[str, object]]:
    return add("rooms/den", {"level": "main", "size": size, "habitable": habitable})


def sloped(area: str) -> list[dict[str, object]]:
    return [*to("constructions/ceiling/name", "Sloped ceiling"), *to(f"{CEILING}/area", area)]


SLIPS = (
    Case("outdoor-design-mild", "ranch", "site/outdoor", to("site/outdoor", "40.1 °F"), to("site/outdoor",
         "40 °F"), "45 °F"),
    Case("outdoor-design-mild", "metric", "site/outdoor", to("site/outdoor", "10 °C"), to("site/outdoor",
         "4 °C")),
    Case("indoor-out-of-range", "ranch", "site/indoor", to("site/indoor", "20 °F"), to("site/indoor",
         "20 °C")),
    Case("measured-without-test", "ranch", "known", to("air", {"changes": "0.3 ACH"}),
         to("air", {"changes": "0.3 ACH", "known": "told"})),
    Case("measured-without-test", "brick", "known", to("unheated/basement/air", {"changes": "0.15 ACH"}), []),
    Case("half-range-over-value", "ranch", "constructions/window/u_value", within("U-0.39", "U-0.40"),
         within("U-0.39", "U-0.39"), "110 %"),
    Case("half-range-over-value", "ranch", "constructions/wall/catalog",
         to("constructions/wall/catalog", {"is": "frame-wall-2x6-r-21", "within": "U-0.06"}),
         to("constructions/wall/catalog", {"is": "frame-wall-2x6-r-21", "within": "U-0.058"})),
    Case("air-change-none", "ranch", "air", to("air/changes", "0.049 ACH"), to("air/changes", "0.05 ACH"),
         "0.01 ACH"),
    Case("air-change-none", "ranch", LIVING, to(f"{LIVING}/air/changes", "0 ACH"), to(f"{LIVING}/air/changes",
         "0.1 ACH")),
    Case("wall-longer-than-room", "ranch", WEST, to(f"{WEST}/length", "22.1'"), to(f"{WEST}/length", "22'"),
         "120 %"),
    Case("wall-longer-than-room", "ranch", f"{LIVING}/surfaces/edge", to(f"{LIVING}/surfaces/edge/length",
         "80'"), to(f"{LIVING}/surfaces/edge/length", "79'")),
    Case("wall-longer-than-room", "garage", f"{LIVING}/surfaces/south-wall",
         to(f"{LIVING}/surfaces/south-wall/length", "34.8 m"), to(f"{LIVING}/surfaces/south-wall/length",
         "34.7 m")),
    Case("ceiling-larger-than-room", "ranch", LIVING, to(f"{CEILING}/area", "352.1 ft2"),
         to(f"{CEILING}/area", "352 ft2"), "120 %"),
    Case("ceiling-larger-than-room", "ranch", LIVING, sloped("512.1 ft2"), sloped("512 ft2")),
    Case("opening-past-its-wall", "metric", GLASS, to(f"{GLASS}/size", "1.5 m × 2.81 m"),
         to(f"{GLASS}/size", "1.5 m × 2.8 m"), "105 %"),
    Case("opening-past-its-wall", "metric", GLASS,
         [*to(f"{GLASS}/size", "5.1 m × 1.3 m"), *to(f"{GLASS}/count", "1")],
         [*to(f"{GLASS}/size", "5 m × 1.3 m"), *to(f"{GLASS}/count", "1")]),
    Case("wall-height-out-of-line", "ranch", "levels/main", to("levels/main/wall_height", "12.1 ft"),
         to("levels/main/wall_height", "12 ft"), "200 %"),
    Case("room-very-long", "ranch", BEDROOM, to(f"{BEDROOM}/size", "73' × 12'"), to(f"{BEDROOM}/size",
         "72' × 12'"), "7"),
    Case("room-very-long", "ranch", BEDROOM, to(f"{BEDROOM}/size", "12' × 73'"),
         [*to(f"{BEDROOM}/size", "12' × 73'"), *to(f"{BEDROOM}/habitable", "no")]),
    Case("below-grade-too-deep", "brick", BELOW, to(f"{BELOW}/bottom", "12.1 ft"), to(f"{BELOW}/bottom",
         "12 ft"), "15 ft"),
    Case("below-grade-too-deep", "brick", SLAB, to(f"{SLAB}/depth", "66 ft"), to(f"{SLAB}/depth", "66 in")),
    Case("basement-width-odd", "brick", SLAB, to(f"{SLAB}/width", "4.9 ft"), to(f"{SLAB}/width", "5 ft"),
         "4 ft"),
    Case("basement-width-odd", "brick", SLAB, to(f"{SLAB}/width", "27.7 ft"), to(f"{SLAB}/width", "27.5 ft")),
    Case("soil-out-of-table", "brick", SOIL, to(SOIL, "2.51 W/(m·K)"), to(SOIL, "2.5 W/(m·K)"),
         "3 W/(m·K)"),
    Case("soil-out-of-table", "brick", SOIL, to(SOIL, "0.39 W/(m·K)"), to(SOIL, "0.4 W/(m·K)")),
    Case("buried-space-without-ground", "brick", "unheated/basement", gone(BELOW, SLAB), gone(BELOW)),
    Case("better-than-any-table", "ranch", "constructions/wall", to("constructions/wall/u_value", "U-0.0199"),
         to("constructions/wall/u_value", "U-0.02"), "U-0.01"),
    Case("better-than-any-table", "ranch", "constructions/wall", to("constructions/wall/r_value", "R-51"),
         to("constructions/wall/r_value", "R-50")),
    Case("better-than-any-table", "ranch", "constructions/door", to("constructions/door/u_value", "U-0.099"),
         to("constructions/door/u_value", "U-0.10")),
    Case("better-than-any-table", "ranch", "constructions/window", to("constructions/window/u_value",
         "U-0.099"), to("constructions/window/u_value", "U-0.10")),
    Case("better-than-any-table", "ranch", "constructions/ceiling", to("constructions/ceiling/u_value",
         "U-0.0099"), to("constructions/ceiling/u_value", "U-0.010")),
    Case("better-than-any-table", "tiny", "constructions/floor", to("constructions/floor/u_value",
         "U-0.0199"), to("constructions/floor/u_value", "U-0.02")),
    Case("bare-ceiling-to-outdoors", "ranch", "constructions/ceiling", to("constructions/ceiling/u_value",
         "U-0.151"), to("constructions/ceiling/u_value", "U-0.150"), "U-0.20"),
    Case("top-without-ceiling", "ranch", "levels/main", each_without("ceiling", *ROOMS),
         each_without("ceiling", *ROOMS[:3])),
    Case("top-without-ceiling", "attic", "levels/two", each_without("ceiling", "bedroom"), []),
    Case("bottom-without-floor", "ranch", "levels/main", each_without("edge", *ROOMS),
         each_without("edge", *ROOMS[:3])),
    Case("edge-past-walls", "ranch", LIVING, to(f"{LIVING}/surfaces/edge/length", "39.7'"),
         to(f"{LIVING}/surfaces/edge/length", "39.6'"), "120 %"),
    Case("edge-past-walls", "metric", LIVING, gone(f"{LIVING}/surfaces/west"), []),
    Case("inner-room-large", "ranch", "rooms/den", den("12' × 11'"), den("12' × 10'"), "15 %"),
    Case("inner-room-large", "ranch", "rooms/den", den("20' × 20'"), den("20' × 20'", "no")),
    Case("no-window-in-house", "tiny", "house", gone("rooms/cabin/surfaces/south/openings",
         "rooms/cabin/surfaces/east/openings"), gone("rooms/cabin/surfaces/south/openings")),
    Case("room-walled-all-around", "ranch", BEDROOM, outer_walls("17'"), outer_walls("16.8'"), "96 %"),
)  # fmt: skip

ALL_CASES = (*CASES, *SLIPS)

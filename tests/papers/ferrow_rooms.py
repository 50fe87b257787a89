"""The rooms of the invented Ferrow house: their losses as printed, and a working for each figure."""

from __future__ import annotations

import math
from dataclasses import replace

from heatledger.papers import heat_loss_data as data
from heatledger.papers.workings_data import Answer, ColumnRow, GoesInto, SourceUse, Step, Token, Working

CAUSES = ("walls", "windows", "doors", "ceiling", "floor", "air")
DIFFERENCE, WALL_U, ATTIC_U, DOOR_U, FLOOR_U = 72.0, 0.0915, 0.0332, 0.40, 0.25
FLOOR_DIFFERENCE = 24.9936
WINDOW_U = {"low-e": 0.35, "clear": 0.51}
HANDBOOK = "Fundamentals 2021, ch. 17, eq. 33-34"
READ = SourceUse(HANDBOOK, "read there")
WALL_SOURCE = SourceUse("parallel path, whole wall", "derived")
AIR_SOURCES = (
    SourceUse("Fundamentals 2021, ch. 17: one rate for all rooms", "read there"),
    SourceUse("0.075 and 0.24: standard air, 70 °F", "common practice"),
    SourceUse("0.50: older guides, to check", "from memory"),
)
SITE_DENSITY_WORDS = "0.075 | × | ( | 29.92 | ÷ | 29.92 | )"
LEVELS = {"g": "Ground floor", "u": "Upper floor", "h": "Ground floor"}
# name, sides ft (two outside walls), storey, window areas and kind, door area
ROOMS = (
    ("Living room", 14.5, 13.5, "g", ((27.0, "low-e"), (12.0, "clear"), (12.0, "clear")), 0.0),
    ("Dining room", 12.0, 13.5, "g", ((12.0, "clear"),) * 3, 0.0),
    ("Kitchen", 12.0, 11.0, "g", ((10.0, "clear"), (12.0, "clear")), 0.0),
    ("Study", 14.5, 11.0, "g", ((12.0, "clear"),) * 2, 0.0),
    ("Hall and stairs", 6.5, 24.5, "h", ((12.0, "clear"),) * 2, 41.0),
    ("Bedroom 1", 14.5, 13.5, "u", ((22.5, "clear"), (12.0, "clear")), 0.0),
    ("Bedroom 2", 12.0, 13.5, "u", ((12.0, "clear"),) * 2, 0.0),
    ("Bedroom 3", 14.5, 11.0, "u", ((12.0, "clear"),) * 2, 0.0),
    ("Bathroom", 12.0, 11.0, "u", ((6.0, "clear"),), 0.0),
)


Entered = tuple[str, ...]


def whole(value: float) -> int:
    return math.floor(value + 0.5)


def wall_area(room: tuple) -> float:
    """Outside wall less its openings, ft²: floor to floor below, to the ceiling above."""
    _, width, depth, storey, windows, door = room
    sides = 2 * width if storey == "h" else width + depth
    return sides * {"g": 9.0, "u": 8.0, "h": 17.0}[storey] - sum(each for each, _ in windows) - door


def losses(room: tuple) -> tuple[float, ...]:
    """Walls, windows, doors, ceiling, floor, air of one room, Btu/h."""
    _, width, depth, storey, windows, door = room
    area = width * depth
    return (
        wall_area(room) * WALL_U * DIFFERENCE,
        sum(each * WINDOW_U[kind] for each, kind in windows) * DIFFERENCE,
        door * DOOR_U * DIFFERENCE,
        0.0 if storey == "g" else area * ATTIC_U * DIFFERENCE,
        0.0 if storey == "u" else area * FLOOR_U * FLOOR_DIFFERENCE,
        0.075 * 0.24 * area * (16.0 if storey == "h" else 8.0) * 0.5 * DIFFERENCE,
    )


def words(text: str) -> tuple[Token, ...]:
    """Tokens of a formula in words: operators stand between spaces, numbers start with a digit."""
    found = []
    for piece in text.split("|"):
        each = piece.strip()
        kind = "op" if each in "×÷−+()" else "number" if each[0].isdigit() else "word"
        found.append(Token(kind, each))
    return tuple(found)


SITE_DENSITY = Step("density at site pressure", words(SITE_DENSITY_WORDS), "0.075", "lb/ft³")
AIR = "density | × | specific heat | × | flow | × | ( | indoors | − | outdoors | )"


def product(key: str, title: str, rows: tuple, answer: str, formula: str, sources: tuple, **more) -> Working:
    column = tuple(ColumnRow(*each) for each in rows)
    return Working(
        key, title, column, Answer(answer, "Btu/h"), formula=words(formula), sources=sources, **more
    )


TRANSMISSION = "area | × | U-value | × | ( | indoors | − | outdoors | )"
INDOORS_OUTDOORS = ("×", "72", "°F", "70 less −2", "1·2", "assumed")


def plane(key: str, what: str, name: str, area: Entered, u_value: Entered, answer: str, up: tuple) -> Working:
    """Area times U-value times the difference, as a column."""
    below = ("×", "25.0", "°F", "70 less 45.0, found") if what == "Floor" else INDOORS_OUTDOORS
    rows = (("", area[0], "ft²", *area[1:]), ("×", u_value[0], "Btu/(h·ft²·°F)", *u_value[1:]), below)
    sources = (READ, WALL_SOURCE) if what == "Wall" else (READ,)
    units = "ft² × Btu/(h·ft²·°F) × °F = Btu/h" if what == "Wall" else ""
    return product(
        key, f"{what} loss, {name}", rows, answer, TRANSMISSION, sources, unit_line=units, goes_into=up
    )


def windows_working(key: str, room: tuple, answer: str, up: tuple) -> Working:
    rows = tuple(
        ColumnRow(
            "+" if spot > 1 else "",
            f"{whole(each * WINDOW_U[kind] * DIFFERENCE):,}",
            "Btu/h",
            f"W{spot}, {each} ft², {kind}",
            "1·6",
            "from plans",
        )
        for spot, (each, kind) in enumerate(room[4], 1)
    )
    sources = (READ, SourceUse("Fundamentals 2021, ch. 17, Table 2", "read there"))
    return Working(
        key,
        f"Window loss, {room[0]}",
        rows,
        Answer(answer, "Btu/h"),
        formula=words("total of | ( | its windows | )"),
        sources=sources,
        goes_into=up,
    )


def air_working(key: str, room: tuple, answer: str, up: tuple) -> Working:
    area = room[1] * room[2]
    rows = (
        ("", "0.075", "lb/ft³", "density, standard air"),
        ("×", "0.24", "Btu/(lb·°F)", "specific heat of air"),
        ("×", f"{area * 4:,.0f}", "ft³/h", "0.50 changes an hour", "1·4", "assumed"),
        INDOORS_OUTDOORS,
    )
    return product(
        key,
        f"Outdoor air, {room[0]}",
        rows,
        answer,
        AIR,
        AIR_SOURCES,
        plain_line="warming the air that leaks in",
        goes_into=up,
        band="likely ± 30 %",
        by_hand=f"0.018 × {area:,.1f} × 8 × 0.50 × 72 = {answer}; 0.018 leaves out height and moisture",
        steps=(SITE_DENSITY,),
    )


def room_workings(number: int, room: tuple) -> tuple[Working, ...]:
    """The workings of one room: its causes, then its total. Keys are sheet 2, ten lines a room."""
    name, first = room[0], 10 * number
    amount = [f"{whole(each):,}" for each in losses(room)]
    key = [f"2·{first + spot}" for spot in range(1, 7)]
    up = (GoesInto(f"2·{first + 9}", name), GoesInto("2·1", "House"))
    area = f"{room[1] * room[2]:,.1f}"
    walls = (f"{wall_area(room):,.1f}", "outside wall less openings", f"1·{first}", "measured")
    found = [
        plane(key[0], "Wall", name, walls, ("0.0915", "whole wall", "1·5", "assumed"), amount[0], up),
        windows_working(key[1], room, amount[1], up),
        plane(
            key[2], "Door", name, ("41.0", "D1 and D2", "1·7", "measured"), ("0.40", "wood"), amount[2], up
        ),
        plane(key[3], "Ceiling", name, (area, "ceiling"), ("0.0332", "R-30 fill"), amount[3], up),
        plane(key[4], "Floor", name, (area, "floor"), ("0.25", "bare joists"), amount[4], up),
        air_working(key[5], room, amount[5], up),
    ]
    there = [spot for spot in range(6) if amount[spot] != "0"]
    rows = [(amount[spot], CAUSES[spot], key[spot]) for spot in there]
    total = f"{sum(whole(each) for each in losses(room)):,}"
    summed = total_of(f"2·{first + 9}", f"Heat loss, {name}", rows, total, "its causes")
    return (*(found[spot] for spot in there), summed)


def room_line(number: int, room: tuple) -> data.RoomLine:
    name, width, depth, storey, _, _ = room
    parts = losses(room)
    cells = tuple(
        data.Cell(f"{whole(each):,}", f"2·{10 * number + spot}") if each else data.Cell("–")
        for spot, each in enumerate(parts, 1)
    )
    loss = sum(whole(each) for each in parts)
    floor_area = width * depth * (2 if storey == "h" else 1)
    return data.RoomLine(
        name,
        LEVELS[storey],
        cells,
        data.Cell(f"{loss:,}", f"2·{10 * number + 9}"),
        f"{whole(loss / floor_area)}",
        parts,
    )


def house_working(total: str) -> Working:
    rows = [
        (room_line(number, room).loss.text, room[0], f"2·{10 * number + 9}")
        for number, room in enumerate(ROOMS, 1)
    ]
    return replace(
        total_of("2·1", "Design load", rows, total),
        plain_line="what the heating must supply",
        band="likely 33,100 to 39,400",
    )


def totals(printed: list[int], level: dict[str, int]) -> tuple[Working, ...]:
    """What each cause and each level comes to: lines 2 to 9 of sheet 2."""
    found = []
    for spot, cause in enumerate(CAUSES):
        rows = [
            (f"{whole(losses(room)[spot]):,}", room[0], f"2·{10 * number + spot + 1}")
            for number, room in enumerate(ROOMS, 1)
            if losses(room)[spot]
        ]
        found.append(
            total_of(f"2·{spot + 2}", f"{cause.capitalize()}, whole house", rows, f"{printed[spot]:,}")
        )
    for spot, (name, loss) in enumerate(level.items()):
        rows = [
            (room_line(number, room).loss.text, room[0], f"2·{10 * number + 9}")
            for number, room in enumerate(ROOMS, 1)
            if LEVELS[room[3]] == name
        ]
        found.append(total_of(f"2·{spot + 8}", f"Heat loss, {name}", rows, f"{loss:,}"))
    return tuple(found)


def total_of(key: str, title: str, rows: list, answer: str, parts: str = "its rooms") -> Working:
    column = tuple(
        ColumnRow("+" if number else "", figure, "Btu/h", name, link)
        for number, (figure, name, link) in enumerate(rows)
    )
    return Working(
        key,
        title,
        column,
        Answer(answer, "Btu/h"),
        is_total=True,
        formula=words(f"total of | ( | {parts} | )"),
        sources=(SourceUse("sum of its parts", "derived"),),
        remark="Rounded parts.",
    )

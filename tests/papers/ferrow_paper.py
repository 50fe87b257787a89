"""The invented Ferrow house as a filled paper: what an adapter hands over, all figures as printed."""

from __future__ import annotations

from heatledger.papers import heat_loss_data as data
from heatledger.papers.workings_data import SourceUse, WorkingGroup
from tests.papers.ferrow_rooms import (
    CAUSES,
    ROOMS,
    WALL_SOURCE,
    house_working,
    losses,
    room_line,
    room_workings,
    totals,
    wall_area,
    whole,
)

PARTS = (
    ("walls", "Wall above grade, 2×4 with R-11 batt", "1,668.5", "0.0915", "72", "10,993", WALL_SOURCE),
    (
        "windows",
        "Windows, double clear, wood, opening",
        "218.5",
        "0.51",
        "72",
        "8,023",
        SourceUse("Fundamentals 2021, ch. 17, Table 2", "read there"),
    ),
    (
        "windows",
        "Window W1, double low-e, wood, fixed",
        "27.0",
        "0.35",
        "72",
        "680",
        SourceUse("same", "read there"),
    ),
    (
        "doors",
        "Doors D1 and D2, wood",
        "41.0",
        "0.40",
        "72",
        "1,181",
        SourceUse("same, Table 17", "read there"),
    ),
    (
        "ceiling",
        "Ceiling under vented attic, R-30 fill",
        "808.5",
        "0.0332",
        "72",
        "1,933",
        SourceUse("parallel path, joists counted", "derived"),
    ),
    (
        "floor",
        "Floor over basement, bare joists",
        "808.5",
        "0.25",
        "25.0",
        "5,052",
        SourceUse("film, boards and floor covering", "from memory"),
    ),
    (
        "air",
        "Outdoor air, 0.50 changes an hour",
        "6,468",
        "0.018",
        "72",
        "8,383",
        SourceUse("one rate for all rooms; not measured", "from memory"),
    ),
)
MATTERS = (
    ("Air changes", "0.50 an hour, 0.35 to 0.65", 2515, "air", "assumed"),
    ("Walls, whole", "U-0.0915, ± 12 %", 1319, "walls", "assumed"),
    ("Basement", "found 45 °F, 40 to 50", 1011, "floor", ""),
    ("Old windows", "U-0.51, ± 8 %", 696, "windows", "from plans"),
    ("Floor joists", "U-0.25, ± 12 %", 606, "floor", "from plans"),
    ("Tape", "± 1 %", 362, "", "measured"),
    ("Attic depth", "R-30, ± 15 %", 290, "ceiling", "measured"),
)
FINDINGS = (
    data.FindingLine(
        "must fix",
        "Kitchen",
        "two walls are entered and three have an outside face on the plan.",
        "A missing wall of 99 ft² would add about 650 Btu/h.",
        ("enter the north wall",),
        "2·39",
        source=SourceUse("every side of a room is accounted for", "judgement"),
    ),
    data.FindingLine(
        "decide",
        "Air",
        "a blower-door test would take the place of the assumed 0.50 changes an hour.",
        "It moves the load by ± 2,515 Btu/h, more than anything else.",
        ("put in a reading",),
        "2·1",
    ),
    data.FindingLine("note", "House", "no margin is added: sun, people and lights are left out."),
)
CAUTIONS = (
    "This document gives the heat loss of the house and nothing else. The local code and licensed practice "
    "decide what may be built; where they ask for another method, theirs holds.",
    "Gas, vent and electrical work belongs to licensed trades. Keep a working carbon monoxide alarm outside "
    "every sleeping area and on each storey.",
)
ENTRIES = (
    data.EntryGroup(
        "Site",
        (
            data.Entry("1·1", "indoors, all rooms", "70 °F", "70 °F", "assumed", "site/indoor"),
            data.Entry("1·2", "outdoors, 99 %", "−2 °F", "-2F", "assumed", "site/outdoor"),
            data.Entry("1·4", "air changes", "0.50 an hour", "0.5 ACH", "assumed", "air/changes"),
        ),
    ),
    data.EntryGroup(
        "Constructions",
        (
            data.Entry("1·5", "whole wall", "0.0915 Btu/(h·ft²·°F)", "R-11", "assumed", "constructions/wall"),
            data.Entry(
                "1·6", "old windows", "0.51 Btu/(h·ft²·°F)", "U-0.51", "from plans", "constructions/old"
            ),
            data.Entry(
                "1·7", "doors D1 and D2", "41.0 ft²", "41 ft²", "measured", "rooms/hall/surfaces/doors"
            ),
        ),
    ),
)


def room_entries(number: int, room: tuple) -> data.EntryGroup:
    area = f"{wall_area(room):,.1f}"
    entry = data.Entry(
        f"1·{10 * number}",
        "outside walls less openings",
        f"{area} ft²",
        f"{area} ft2",
        "measured",
        f"rooms/{room[0].split()[0].lower()}/surfaces/walls/area, line {40 + 6 * number}",
    )
    return data.EntryGroup(room[0], (entry,))


HEAD = data.Head(
    "Heat loss of the house",
    "Ferrow house",
    "14 Kiln Lane, Harrow Bend",
    "6 December",
    "J. Ondry",
    "heatledger 0.1",
    "revision 12",
    "Draft, not for installation",
    "Invented demo job",
)
ANSWER = data.Answer(
    "We measured the house room by room. On the coldest night we plan for, −2 °F outdoors and 70 °F in every "
    "room, a difference of 72 °F, it loses the heat below, and the heating must supply it.",
    "36,200",
    "2·1",
    (
        "Likely 33,100 to 39,400: if our inputs are off by as much as listed, nine in ten results fall here; "
        "the method’s own error is not in it.",
        "Walls, windows and air lead, the floor comes next. We add nothing on top: the free heat of sun, "
        "people and lights is left out, and is margin enough.",
    ),
    data.Band(33100, 39400, 36245, "36,200, likely 33,100 to 39,400", ((37100, "bills"),)),
)
CONDITIONS = (
    data.Condition("Indoors, all rooms", "70 °F", "chosen", "1·1", "assumed"),
    data.Condition("Outdoors, 99 %", "−2 °F", "invented place", "1·2", "assumed", "invented"),
    data.Condition("Difference (ΔT)", "72 °F"),
    data.Condition("Basement, found", "45.0 °F", "heat balance", "", "", "read there"),
    data.Condition("Heated floor area", "1,617 ft²", "tape, nine rooms", "", "measured"),
)
PARTS_NOTE = (
    "Area × U-value × ΔT = Btu/h. U-value in Btu/(h·ft²·°F). Outside walls 9′ 0″ high on the ground floor "
    "(floor to floor), 8′ 0″ above; air counted to the 8′ 0″ ceilings."
)
REFERENCES = (
    data.Reference(
        "Handbook, Fundamentals, 2021",
        "Residential loads: surfaces, windows, air.",
        (SourceUse("ch. 17, eq. 33-34", "read there"), SourceUse("ch. 17, Table 2", "read there")),
    ),
    data.Reference(
        "Common practice",
        "Density and specific heat of standard air.",
        (SourceUse("0.075 and 0.24", "common practice"),),
    ),
)


def part_lines() -> tuple[data.PartLine, ...]:
    return tuple(
        data.PartLine(
            cause,
            name,
            data.Cell(area),
            data.Cell(u_value),
            difference,
            data.Cell(loss),
            source,
            "ft³/h" if cause == "air" else "",
        )
        for cause, name, area, u_value, difference, loss, source in PARTS
    )


def ferrow_paper() -> data.HeatLossPaper:
    """The whole paper with the printed figures of the invented demo house."""
    lines = tuple(room_line(number, room) for number, room in enumerate(ROOMS, 1))
    printed = [sum(whole(losses(room)[spot]) for room in ROOMS) for spot in range(6)]
    total = sum(printed)
    shares = tuple(f"{whole(100 * each / total)} %" for each in printed)
    cells = tuple(data.Cell(f"{each:,}", f"2·{spot}") for spot, each in enumerate(printed, 2))
    level = dict.fromkeys(("Ground floor", "Upper floor"), 0)
    for each in lines:
        level[each.level] += int(each.loss.text.replace(",", ""))
    house = WorkingGroup("House", (house_working(f"{total:,}"), *totals(printed, level)))
    return data.HeatLossPaper(
        head=HEAD,
        units=data.Units("Btu/h", "ft²", "Btu/(h·ft²·°F)", "°F", "Btu/(h·ft²)"),
        answer=ANSWER,
        conditions=CONDITIONS,
        house=data.HouseView(("70 °F", "70 °F"), "−2 °F", "basement", "45 °F"),
        causes=tuple(
            data.CauseLine(cause, cause.capitalize(), cells[spot], shares[spot], printed[spot])
            for spot, cause in enumerate(CAUSES)
        ),
        rooms=tuple(sorted(lines, key=lambda each: each.level)),
        house_line=data.HouseLine(
            "House", "rounded parts", cells, data.Cell(f"{total:,}", "2·1"), "22", shares, "1,617 ft² heated"
        ),
        cautions=CAUTIONS,
        levels=tuple(
            data.LevelLine(name, data.Cell(f"{loss:,}", f"2·{spot}"))
            for spot, (name, loss) in enumerate(level.items(), 8)
        ),
        matters=tuple(
            data.Matter(name, value, f"± {swing:,}", swing, cause, known)
            for name, value, swing, cause, known in MATTERS
        ),
        matters_note="A blower-door test would narrow ± 3,200 to ± 2,200.",
        findings=FINDINGS,
        parts=part_lines(),
        parts_note=PARTS_NOTE,
        workings=(
            house,
            *(WorkingGroup(room[0], room_workings(number, room)) for number, room in enumerate(ROOMS, 1)),
        ),
        tape=ENTRIES + tuple(room_entries(number, room) for number, room in enumerate(ROOMS, 1)),
        references=REFERENCES,
    )

"""The boiler room of a schematic: from the boiler to where the mains leave, on a fixed block."""

from __future__ import annotations

from heatledger.drawings.lettering import fitted, lines_of
from heatledger.drawings.schematic_view import SchematicView
from heatledger.drawings.shapes import Disc, Path, Shape, Words, box, line
from heatledger.drawings.symbols import FLAME, head, put, symbol

WIDE, HIGH = 208.0, 222.0
"""Size of the block; its supply leaves at ``(WIDE, MAIN)``, its return comes up at ``(RETURN, HIGH)``."""
MAIN, RETURN = 46.0, 62.0
LEFT, RIGHT, TOP, BOTTOM = 34.0, 90.0, 122.0, 172.0
RISER, RELIEF, DRAIN = 78.0, 46.0, 14.0
AIR, PUMP, CLOSE = 112.0, 146.0, 172.0
FILL = 74.0


def plant(view: SchematicView) -> list[Shape]:
    """The block with its upper left corner at the origin."""
    return [*_pipes(), *_supply_signs(view), *_gauges(view), *_return_signs(view), *_names(view)]


def _pipes() -> list[Shape]:
    return [
        Path(((RISER, TOP), (RISER, MAIN), (WIDE, MAIN)), "supply"),
        line(RETURN, HIGH, RETURN, BOTTOM, "return"),
        line(RELIEF, TOP, RELIEF, TOP - 10, "rule"),
        Path(((RELIEF - 6, TOP - 16), (DRAIN, TOP - 16), (DRAIN, 178)), "discharge"),
        line(AIR, MAIN, AIR, FILL + 18, "symbol-line"),
        line(AIR, FILL, WIDE - 20, FILL, "cold"),
        Disc((AIR, FILL), 1.7, "ink"),
    ]


def _supply_signs(view: SchematicView) -> list[Shape]:
    """The boiler with its relief valve, and what stands on the supply main and at the tank."""
    shapes: list[Shape] = [
        box(LEFT, TOP, RIGHT - LEFT, BOTTOM - TOP, "symbol-heavy"),
        *put(FLAME, ((LEFT + RIGHT) / 2, 142), unit=13.0),
        *symbol("relief valve", (RELIEF, TOP - 16)),
        head((DRAIN, 168), (0, 1), "ink", 5.0),
        *symbol("floor drain", (DRAIN, 187)),
        *symbol("shutoff", (RISER + 13, MAIN)),
        *symbol("air separator", (AIR, MAIN)),
        *symbol("shutoff", (CLOSE, MAIN)),
        head((WIDE - 6, MAIN), (1, 0), "flow-supply"),
        *symbol("expansion tank", (AIR, FILL + 33)),
        *symbol("fill valve", (AIR + 22, FILL)),
        *symbol("backflow preventer", (AIR + 45, FILL), 2),
        *symbol("shutoff", (AIR + 67, FILL)),
    ]
    if view.circulator and view.tank_at_suction:
        shapes += symbol("circulator", (PUMP, MAIN))
    return shapes


def _gauges(view: SchematicView) -> list[Shape]:
    """What reads and what stops the burner, on the riser before any valve."""
    letters = [("thermometer", True), ("pressure gauge", True), ("high limit", view.high_limit),
               ("low-water cutoff", view.low_water_cutoff)]  # fmt: skip
    shapes: list[Shape] = []
    for number, name in enumerate(name for name, there in letters if there):
        y = MAIN + 13 + 15 * number
        shapes += [line(RISER, y, RISER - 14, y, "cold"), Disc((RISER, y), 1.7, "ink")]
        shapes += symbol(name, (RISER - 17, y))
    return shapes


def _return_signs(view: SchematicView) -> list[Shape]:
    """The return to the boiler; a circulator that pumps toward the tank stands here."""
    y = HIGH - 10
    shapes: list[Shape] = [line(RETURN, y, RETURN + 12, y, "cold"), Disc((RETURN, y), 1.7, "ink")]
    shapes += [*symbol("thermometer", (RETURN + 17, y)), *symbol("shutoff", (RETURN, BOTTOM + 9), 1)]
    if view.circulator and not view.tank_at_suction:
        return [*shapes, *symbol("circulator", (RETURN, BOTTOM + 24), 3)]
    return [*shapes, head((RETURN, BOTTOM + 20), (0, -1), "flow-return")]


def _names(view: SchematicView) -> list[Shape]:
    pump = (PUMP, MAIN - 11) if view.tank_at_suction else (RETURN + 11, BOTTOM + 27)
    shapes: list[Shape] = [
        Words(((LEFT + RIGHT) / 2, BOTTOM - 5), "Boiler", "bold", "middle"),
        Words((2, 80), "Relief", "small"),
        Words((2, 91), view.relief, "small"),
        Words((AIR, 24), "Air separator", "small", "middle"),
        Words((WIDE - 18, FILL + 3), "CW", "small"),
        Words((AIR + 13, FILL + 32), "Tank", "small"),
        Words((AIR + 13, FILL + 43), view.tank, "small"),
        Words((AIR + 15, FILL + 16), f"Fill {view.fill}".strip(), "small"),
        Words((WIDE - 1, MAIN - 10), view.supply, "said-supply", "end"),
        Words((RETURN + 28, HIGH - 7), view.return_, "said-return"),
        Words(pump, fitted(view.circulator, 56, 9.0), "bold", "middle" if view.tank_at_suction else "start"),
    ]
    note = [text for text in (view.boiler if view.boiler != "Boiler" else "", view.boiler_note) if text]
    texts = [each for text in note for each in lines_of(text, WIDE - RIGHT - 10)]
    shapes += [Words((RIGHT + 6, 140 + 11 * n), text, "small") for n, text in enumerate(texts)]
    return [each for each in shapes if not isinstance(each, Words) or each.text]

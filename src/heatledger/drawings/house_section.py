"""A section through the house with one hatched arrow a cause: the thicker, the more heat goes there."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.drawings.hatches import CAUSES, hatched
from heatledger.drawings.shapes import Drawing, Path, Point, Shape, Words, arrow, box, line

WIDTH, LEFT, RIGHT = 264.0, 88.0, 178.0
APEX, EAVES, GRADE = 18.0, 50.0, 142.0
THICKEST, REACH = 22.0, 34.0
BELOW = {"basement": 38.0, "crawl space": 20.0, "slab": 0.0}


@dataclass(frozen=True)
class Stream:
    """What leaves by one cause: the amount (any one unit) draws, the texts are printed beside it."""

    cause: str
    name: str
    amount: float
    share: str
    figure: str


@dataclass(frozen=True)
class Storeys:
    """What the section shows of the house.

    ``heated``: a text for each storey, top first (its temperature). ``below``: what the lowest floor
    stands on, one of basement, crawl space, slab; ``below_text`` its temperature. ``attic_text`` stands
    under the roof.
    """

    heated: tuple[str, ...]
    outdoors: str
    below: str = "basement"
    below_text: str = ""
    attic_text: str = ""


def house_section(title: str, storeys: Storeys, streams: tuple[Stream, ...], unit: str) -> Drawing:
    """The section with its arrows. A cause that gains or loses nothing has no arrow."""
    if storeys.below not in BELOW:
        raise ValueError(f"a house stands on one of {', '.join(BELOW)}, not {storeys.below!r}")
    largest = max((each.amount for each in streams), default=0.0)
    shapes: list[Shape] = [*_house(storeys), *_texts(storeys)]
    for stream in streams:
        if stream.amount > 0:
            shapes += _stream(stream, stream.amount / largest * THICKEST)
    named = ", ".join(f"{each.name} {each.share}, {each.figure} {unit}" for each in streams if each.share)
    words = f"{named}. Outdoors {storeys.outdoors}." if named else f"Outdoors {storeys.outdoors}."
    floor_loses = any(each.cause == "floor" and each.amount > 0 for each in streams)
    bottom = GRADE + max(BELOW[storeys.below] + 2, 40.0 if floor_loses else 8.0)
    return Drawing(title, words, WIDTH, bottom + 2, tuple(shapes))


def _house(storeys: Storeys) -> list[Shape]:
    middle, deep = (LEFT + RIGHT) / 2, BELOW[storeys.below]
    # Windows stand opposite the arrows for windows and air, the door opposite its own.
    shapes: list[Shape] = [
        Path(((LEFT - 8, EAVES + 4), (middle, APEX), (RIGHT + 8, EAVES + 4)), "built"),
        line(LEFT + 5, EAVES - 1.2, RIGHT - 5, EAVES - 1.2, "insulation"),
        box(LEFT, EAVES + 2, RIGHT - LEFT, GRADE - EAVES - 4, "built"),
    ]
    high = (GRADE - 4 - EAVES) / len(storeys.heated) if storeys.heated else 0.0
    for number in range(1, len(storeys.heated)):
        y = EAVES + 2 + number * high
        shapes.append(line(LEFT, y, RIGHT, y, "built-thin"))
    if deep:
        shapes.append(Path(_cup(deep), "built"))
    else:
        shapes.append(box(LEFT - 1.3, GRADE - 3.3, RIGHT - LEFT + 2.6, 5.5, "solid"))
    shapes += [*_earth(6.0, LEFT - 3), *_earth(RIGHT + 3, WIDTH - 6)]
    shapes.append(box(RIGHT - 2.5, 70 - 10, 5, 20, "opening"))
    shapes.append(box(RIGHT - 2.5, 116 - 8, 5, 16, "opening"))
    shapes.append(box(LEFT - 2.5, GRADE - 34, 5, 31, "opening"))
    return shapes


def _cup(deep: float) -> tuple[Point, ...]:
    low = GRADE + deep
    return ((LEFT, GRADE - 2), (LEFT, low), (RIGHT, low), (RIGHT, GRADE - 2))


def _earth(start: float, end: float) -> list[Shape]:
    shapes: list[Shape] = [line(start, GRADE, end, GRADE, "rule")]
    x = start + 5
    while x < end:
        shapes.append(line(x, GRADE + 0.5, x - 4.5, GRADE + 5, "earth"))
        x += 6.5
    return shapes


def _texts(storeys: Storeys) -> list[Shape]:
    middle = (LEFT + RIGHT) / 2
    shapes: list[Shape] = [Words((4, 12), f"outdoors {storeys.outdoors}", "quiet")]
    high = (GRADE - 4 - EAVES) / max(len(storeys.heated), 1)
    for number, text in enumerate(storeys.heated):
        shapes.append(Words((middle, EAVES + 5 + (number + 0.5) * high), text, "quiet", "middle"))
    deep = BELOW[storeys.below]
    if storeys.below_text and deep:
        shapes.append(Words((RIGHT - 8, GRADE + deep / 2 + 3), storeys.below_text, "quiet", "end"))
    if storeys.attic_text:
        shapes.append(Words((middle + 5, EAVES - 4), storeys.attic_text, "quiet", "end"))
    return shapes


def _stream(stream: Stream, thick: float) -> list[Shape]:
    thick = max(thick, 0.8)
    middle = (LEFT + RIGHT) / 2
    places: dict[str, tuple[Point, Point, Point, str]] = {
        "walls": ((LEFT - 4 - REACH, 78), (-1, 0), (LEFT - 8 - REACH, 70), "end"),
        "doors": ((LEFT - 5 - REACH, 122), (-1, 0), (LEFT - 8 - REACH, 114), "end"),
        "windows": ((RIGHT + 5 + REACH, 70), (1, 0), (RIGHT + 9 + REACH, 62), "start"),
        "air": ((RIGHT + 5 + REACH, 116), (1, 0), (RIGHT + 9 + REACH, 108), "start"),
        "ceiling": ((middle + 16, 4), (0, -1), (middle + 22 + thick / 2 + 2, 12), "start"),
        "floor": ((LEFT + 24, GRADE + 1 + REACH), (0, 1), (LEFT - 8, GRADE + 16), "end"),
    }
    if stream.cause not in CAUSES:
        raise ValueError(f"no place on the section for {stream.cause!r}")
    tip, toward, (x, y), anchor = places[stream.cause]
    length = REACH + {"ceiling": 6.0, "floor": -2.0}.get(stream.cause, 0.0)
    outline = arrow(tip, toward, length, thick, "edge").points
    shapes: list[Shape] = [*hatched(outline, stream.cause)]
    if stream.cause == "ceiling":
        shapes.append(Words((x, y), f"{stream.name} {stream.share}", "bold", anchor))
        shapes.append(Words((x, y + 11), stream.figure, "text", anchor))
        return shapes
    shapes.append(Words((x, y), stream.name, "bold", anchor))
    shapes.append(Words((x, y + 11), stream.share, "bold", anchor))
    shapes.append(Words((x, y + 22), stream.figure, "text", anchor))
    return shapes

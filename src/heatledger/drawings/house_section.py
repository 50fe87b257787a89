"""A section through the house with one hatched arrow a cause: the thicker, the more heat goes there."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.drawings.hatches import CAUSES, hatched
from heatledger.drawings.shapes import Drawing, Path, Point, Shape, Words, arrow, box, line

WIDTH, LEFT, RIGHT = 264.0, 88.0, 178.0
MIDDLE = (LEFT + RIGHT) / 2
APEX, EAVES, FLOOR = 18.0, 52.0, 140.0
HIGH, LOW, PIERS = 38.0, 20.0, 12.0
THICKEST, REACH = 22.0, 34.0
BASES = ("slab", "piers", "")


@dataclass(frozen=True)
class Stream:
    """What leaves by one cause: the amount (any one unit) draws, the texts are printed beside it."""

    cause: str
    name: str
    amount: float
    share: str
    figure: str


@dataclass(frozen=True)
class Layer:
    """One floor of the house: ``text`` is printed in it, ``called`` names it in words.

    ``low`` is a space too low to stand in; ``buried`` stands below grade.
    """

    text: str
    called: str = ""
    heated: bool = True
    low: bool = False
    buried: bool = False


@dataclass(frozen=True)
class Stack:
    """What the section shows of the house.

    ``layers`` stand one on the other, top first; what is buried comes last. ``base`` is what the lowest
    stands on: slab, piers (its floor is open to outdoors), or nothing that is known. ``attic_text`` stands
    under the roof.
    """

    layers: tuple[Layer, ...]
    outdoors: str
    base: str = ""
    attic_text: str = ""


@dataclass(frozen=True)
class _Places:
    """Heights on the sheet: each layer's top and bottom, grade, the lowest heated floor, the lowest line."""

    layers: tuple[tuple[Layer, float, float], ...]
    grade: float
    floor: float
    bottom: float


def house_section(title: str, stack: Stack, streams: tuple[Stream, ...], unit: str) -> Drawing:
    """The section with its arrows. A cause that gains or loses nothing has no arrow and no opening."""
    if stack.base not in BASES:
        raise ValueError(f"a house stands on one of {', '.join(BASES[:2])}, not {stack.base!r}")
    places = _places(stack)
    losing = {each.cause for each in streams if each.amount > 0}
    largest = max((each.amount for each in streams), default=0.0)
    shapes: list[Shape] = [*_house(stack, places, losing), *_texts(stack, places)]
    for stream in streams:
        if stream.amount > 0:
            shapes += _stream(stream, stream.amount / largest * THICKEST, places)
    label = max(places.floor, places.grade) + 42.0 if "floor" in losing else 0.0
    bottom = max(places.bottom + 4, places.grade + 10, label)
    return Drawing(title, _in_words(stack, streams, unit), WIDTH, bottom, tuple(shapes))


def _in_words(stack: Stack, streams: tuple[Stream, ...], unit: str) -> str:
    named = ", ".join(f"{each.name} {each.share}, {each.figure} {unit}" for each in streams if each.share)
    layers = ", ".join(f"{each.called} {each.text}" for each in stack.layers if each.called and each.text)
    said = (named, f"Outdoors {stack.outdoors}", f"From the top: {layers}" if layers else "")
    return " ".join(f"{each}." for each in said if each)


def _places(stack: Stack) -> _Places:
    """Heated floors above grade share the height of the walls; where all are buried, those do."""
    open_above = any(each.heated and not each.buried for each in stack.layers)

    def shares(each: Layer) -> bool:
        return each.heated and not (each.buried and open_above)

    share = (FLOOR - EAVES) / max(sum(shares(each) for each in stack.layers), 1)
    y, placed, floor, grade = EAVES, [], FLOOR, 0.0
    for each in stack.layers:
        high = share if shares(each) else LOW if each.low else HIGH
        if each.buried and not grade:
            grade = max(y, EAVES + 6.0)
        placed.append((each, y, y + high))
        y += high
        floor = y if each.heated else floor
    y = y if placed else FLOOR
    return _Places(tuple(placed), grade or y + (PIERS if stack.base == "piers" else 0.0), floor, y)


def _house(stack: Stack, places: _Places, losing: set[str]) -> list[Shape]:
    low = places.bottom
    shapes: list[Shape] = [
        Path(((LEFT - 8, EAVES + 2), (MIDDLE, APEX), (RIGHT + 8, EAVES + 2)), "built"),
        box(LEFT, EAVES, RIGHT - LEFT, low - EAVES, "built"),
    ]
    if "ceiling" in losing:
        shapes.append(line(LEFT + 5, EAVES - 3.2, RIGHT - 5, EAVES - 3.2, "insulation"))
    shapes += [line(LEFT, top, RIGHT, top, "built-thin") for _, top, _ in places.layers[1:]]
    if stack.base == "slab":
        shapes.append(box(LEFT - 1.3, low - 1.3, RIGHT - LEFT + 2.6, 5.5, "solid"))
    if stack.base == "piers":
        shapes += [line(x, low, x, places.grade, "built-thin") for x in (LEFT + 1, RIGHT - 1)]
    shapes += [*_earth(6.0, LEFT - 3, places.grade), *_earth(RIGHT + 3, WIDTH - 6, places.grade)]
    # Windows stand opposite the arrows for windows and air, the door opposite its own.
    if "windows" in losing:
        shapes += [box(RIGHT - 2.5, 60, 5, 20, "opening"), box(RIGHT - 2.5, 108, 5, 16, "opening")]
    if "doors" in losing:
        shapes.append(box(LEFT - 2.5, FLOOR - 32, 5, 31, "opening"))
    return shapes


def _earth(start: float, end: float, grade: float) -> list[Shape]:
    shapes: list[Shape] = [line(start, grade, end, grade, "rule")]
    x = start + 5
    while x < end:
        shapes.append(line(x, grade + 0.5, x - 4.5, grade + 5, "earth"))
        x += 6.5
    return shapes


def _texts(stack: Stack, places: _Places) -> list[Shape]:
    shapes: list[Shape] = [Words((4, 12), f"outdoors {stack.outdoors}", "quiet")]
    for layer, top, bottom in places.layers:
        y = (top + bottom) / 2 + 3
        if layer.heated:
            shapes.append(Words((MIDDLE, y), layer.text, "quiet", "middle"))
        else:  # the arrow of the floor comes down at the left of it
            shapes.append(Words((RIGHT - 6, y), layer.text, "quiet", "end"))
    if stack.attic_text:
        shapes.append(Words((MIDDLE + 5, EAVES - 6), stack.attic_text, "quiet", "end"))
    return [each for each in shapes if not isinstance(each, Words) or each.text]


def _stream(stream: Stream, thick: float, places: _Places) -> list[Shape]:
    thick = max(thick, 0.8)
    below = max(places.floor, places.grade) + 16
    spots: dict[str, tuple[Point, Point, Point, str]] = {
        "walls": ((LEFT - 4 - REACH, 78), (-1, 0), (LEFT - 8 - REACH, 70), "end"),
        "doors": ((LEFT - 5 - REACH, 122), (-1, 0), (LEFT - 8 - REACH, 114), "end"),
        "windows": ((RIGHT + 5 + REACH, 70), (1, 0), (RIGHT + 9 + REACH, 62), "start"),
        "air": ((RIGHT + 5 + REACH, 116), (1, 0), (RIGHT + 9 + REACH, 108), "start"),
        "ceiling": ((MIDDLE + 16, 4), (0, -1), (MIDDLE + 22 + thick / 2 + 2, 12), "start"),
        "floor": ((LEFT + 24, places.floor + 1 + REACH), (0, 1), (LEFT - 8, below), "end"),
    }
    if stream.cause not in CAUSES:
        raise ValueError(f"no place on the section for {stream.cause!r}")
    tip, toward, (x, y), anchor = spots[stream.cause]
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

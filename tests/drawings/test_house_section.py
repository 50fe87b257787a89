"""The section through the house: one arrow a cause, as thick as its share, and the same in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from heatledger.drawings.hatches import CAUSES
from heatledger.drawings.house_section import BASES, FLOOR, Layer, Stack, Stream, house_section
from heatledger.drawings.shapes import Drawing, Path, Words

AMOUNTS = {
    "walls": 8000.0,
    "windows": 4000.0,
    "doors": 1000.0,
    "ceiling": 2000.0,
    "floor": 3000.0,
    "air": 6000.0,
}
STREAMS = tuple(
    Stream(
        cause, cause.capitalize(), AMOUNTS[cause], f"{AMOUNTS[cause] / 240:.0f} %", f"{AMOUNTS[cause]:,.0f}"
    )
    for cause in CAUSES
)
UP, DOWN = Layer("65 to 70 °F", "Upper floor"), Layer("70 °F", "Ground floor")
BASEMENT = Layer("45 °F", "Basement", heated=False, buried=True)
HOUSE = Stack((UP, DOWN, BASEMENT), "−2 °F", attic_text="20 °F")


def section(streams: tuple[Stream, ...] = STREAMS, house: Stack = HOUSE) -> Drawing:
    return house_section("Where the heat goes", house, streams, "Btu/h")


def shaft(drawing: Drawing, cause: str) -> float:
    """The thickness of an arrow's shaft: the distance of its two ends at the tail."""
    ground = next(each for each in drawing.shapes if each.look == f"ground-{cause}")
    assert isinstance(ground, Path)
    (ax, ay), (bx, by) = ground.points[3], ground.points[4]
    return abs(ax - bx) + abs(ay - by)


def texts(drawing: Drawing) -> list[str]:
    return [each.text for each in drawing.shapes if isinstance(each, Words)]


def test_thickness_is_in_proportion() -> None:
    drawing = section()
    for cause, amount in AMOUNTS.items():
        assert shaft(drawing, cause) == pytest.approx(shaft(drawing, "walls") * amount / 8000)


def test_every_share_and_figure_stands_beside_its_arrow_and_in_the_words() -> None:
    drawing = section()
    beside = " ".join(texts(drawing))
    for stream in STREAMS:
        for piece in (stream.name, stream.share, stream.figure):
            assert piece in beside
            assert piece in drawing.words


def test_temperatures_are_shown() -> None:
    shown = texts(section())
    assert {"65 to 70 °F", "70 °F", "outdoors −2 °F", "45 °F", "20 °F"} <= set(shown)
    assert "From the top: Upper floor 65 to 70 °F, Ground floor 70 °F, Basement 45 °F." in section().words


@pytest.mark.parametrize("amount", [0.0, -500.0])
def test_what_loses_nothing_has_no_arrow(amount: float) -> None:
    streams = tuple(replace(each, amount=amount) if each.cause == "floor" else each for each in STREAMS)
    looks = {each.look for each in section(streams).shapes}
    assert "ground-floor" not in looks
    assert "ground-walls" in looks


def test_a_house_without_figures_is_drawn_without_arrows() -> None:
    streams = tuple(replace(each, amount=0.0, share="", figure="") for each in STREAMS)
    drawing = section(streams)
    assert not [each for each in drawing.shapes if each.look.startswith("ground-")]
    assert drawing.words.startswith("Outdoors −2 °F.")
    assert "opening" not in {each.look for each in drawing.shapes}


def height_of(drawing: Drawing, text: str) -> float:
    return next(each.at[1] for each in drawing.shapes if isinstance(each, Words) and each.text == text)


def grade(drawing: Drawing) -> float:
    """The height of the line of the earth at the left of the house."""
    rules = [each for each in drawing.shapes if isinstance(each, Path) and each.look == "rule"]
    return rules[0].points[0][1]


@pytest.mark.parametrize(
    ("below", "is_in_earth"),
    [
        (BASEMENT, True),
        (Layer("68 °F", "Cellar rooms", buried=True), True),
        (Layer("24 °F", "Crawl space", heated=False, low=True), False),
        (Layer("30 °F", "Garage", heated=False), False),
    ],
)
def test_only_what_is_buried_stands_below_grade(below: Layer, is_in_earth: bool) -> None:
    drawing = section(house=Stack((UP, DOWN, below), "−2 °F"))
    assert (height_of(drawing, below.text) > grade(drawing)) is is_in_earth
    assert height_of(drawing, DOWN.text) < grade(drawing)


def test_a_house_in_the_earth_has_its_rooms_below_grade() -> None:
    drawing = section(house=Stack((Layer("70 °F", buried=True),), "−2 °F"))
    assert height_of(drawing, "70 °F") > grade(drawing)


def test_the_floor_loses_from_the_lowest_heated_floor() -> None:
    rooms = Layer("68 °F", "Cellar rooms", buried=True)
    for layers, deeper in (((DOWN, BASEMENT), False), ((DOWN, rooms), True)):
        drawing = section(house=Stack(layers, "−2 °F"))
        ground = next(each for each in drawing.shapes if each.look == "ground-floor")
        assert isinstance(ground, Path)
        assert (min(y for _, y in ground.points) > FLOOR + 20) is deeper


def test_a_house_stands_on_its_slab_or_on_piers_over_the_ground() -> None:
    looks = {base: section(house=Stack((DOWN,), "−2 °F", base)) for base in BASES}
    assert [base for base, each in looks.items() if any(s.look == "solid" for s in each.shapes)] == ["slab"]
    assert grade(looks["piers"]) > grade(looks[""]) == FLOOR


@pytest.mark.parametrize("below", [(), (BASEMENT,), (Layer("24 °F", heated=False, low=True),)])
@pytest.mark.parametrize("buried", [0, 1, 2])
@pytest.mark.parametrize("above", [0, 1, 4])
def test_all_stays_on_the_sheet(above: int, buried: int, below: tuple[Layer, ...]) -> None:
    layers = (Layer("70 °F"),) * above + (Layer("68 °F", buried=True),) * buried + below
    drawing = section(house=Stack(layers, "−2 °F"))
    for shape in drawing.shapes:
        points = shape.points if isinstance(shape, Path) else [shape.at] if isinstance(shape, Words) else []
        assert all(-1 <= x <= drawing.width + 1 and -1 <= y <= drawing.height - 1 for x, y in points)


def test_an_unknown_ground_is_refused() -> None:
    with pytest.raises(ValueError, match="slab, piers"):
        section(house=replace(HOUSE, base="stilts"))

"""The section through the house: one arrow a cause, as thick as its share, and the same in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from heatledger.drawings.hatches import CAUSES
from heatledger.drawings.house_section import BELOW, Storeys, Stream, house_section
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
HOUSE = Storeys(("70 °F", "70 °F"), "−2 °F", "basement", "45 °F", "20 °F")


def section(streams: tuple[Stream, ...] = STREAMS, house: Storeys = HOUSE) -> Drawing:
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
    assert shown.count("70 °F") == 2
    assert {"outdoors −2 °F", "45 °F", "20 °F"} <= set(shown)


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
    assert drawing.words == "Outdoors −2 °F."


@pytest.mark.parametrize("below", sorted(BELOW))
@pytest.mark.parametrize("storeys", [1, 2, 4])
def test_all_stays_on_the_sheet(below: str, storeys: int) -> None:
    drawing = section(house=Storeys(("70 °F",) * storeys, "−2 °F", below, "45 °F"))
    for shape in drawing.shapes:
        points = shape.points if isinstance(shape, Path) else [shape.at] if isinstance(shape, Words) else []
        assert all(-1 <= x <= drawing.width + 1 and -1 <= y <= drawing.height + 1 for x, y in points)


def test_an_unknown_ground_is_refused() -> None:
    with pytest.raises(ValueError, match="crawl space"):
        section(house=replace(HOUSE, below="stilts"))

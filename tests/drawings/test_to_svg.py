"""Shapes first, SVG last: well formed, with title and words, no variables, the same every time."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from heatledger.drawings.band_rule import band_rule
from heatledger.drawings.cause_bar import cause_bar, cause_swatch, swing_bar
from heatledger.drawings.hatches import CAUSES
from heatledger.drawings.house_section import Layer, Stack, Stream, house_section
from heatledger.drawings.shapes import Drawing, Words, line
from heatledger.drawings.to_svg import ON_SCREEN, to_svg

SPACE = "{http://www.w3.org/2000/svg}"


def drawings() -> list[Drawing]:
    amounts = {cause: 1000.0 + spot for spot, cause in enumerate(CAUSES)}
    streams = tuple(Stream(each, each, amounts[each], "17 %", "1,000") for each in CAUSES)
    return [
        house_section("Where the heat goes", Stack((Layer("21 °C"),), "−8 °C", "slab"), streams, "W"),
        band_rule("Likely range", 9700, 11500, 10600, ((10900, "bills"),)),
        cause_bar("Study", amounts, dict.fromkeys(CAUSES, "1,000"), 7000.0),
        swing_bar("Air", "± 500", "air", 500, 500),
        *(cause_swatch(each) for each in CAUSES),
    ]


@pytest.mark.parametrize("drawing", drawings(), ids=lambda each: each.title)
def test_each_drawing_is_one_sound_svg(drawing: Drawing) -> None:
    text = to_svg(drawing)
    root = ET.fromstring(text)
    assert root.findtext(f"{SPACE}title") == drawing.title
    assert root.findtext(f"{SPACE}desc") == drawing.words
    assert [each.text for each in root.iter(f"{SPACE}text")] == [
        each.text for each in drawing.shapes if isinstance(each, Words)
    ]
    assert "var(" not in text
    assert "pattern" not in text
    assert text == to_svg(drawing)


@pytest.mark.parametrize("drawing", drawings(), ids=lambda each: each.title)
def test_every_color_is_an_attribute(drawing: Drawing) -> None:
    """A page that takes no styles from inside itself shows the drawing all the same."""
    text = to_svg(drawing)
    root = ET.fromstring(text)
    assert not list(root.iter(f"{SPACE}style"))
    assert not [each for each in root.iter() if "style" in each.attrib or "class" in each.attrib]
    parents = {child: parent for parent in root.iter() for child in parent}
    drawn = [each for each in root.iter() if each.tag in (f"{SPACE}path", f"{SPACE}text")]
    assert drawn
    assert all("fill" in each.attrib or "fill" in parents[each].attrib for each in drawn)
    sizes = {each.get("font-size") or parents[each].get("font-size") for each in root.iter(f"{SPACE}text")}
    assert all(each is not None and float(each) * ON_SCREEN >= 12.0 for each in sizes)


def test_a_name_makes_ids_of_its_own() -> None:
    drawing = drawings()[0]
    root = ET.fromstring(to_svg(drawing, id="where-it-goes", scale=ON_SCREEN))
    ids = [each.attrib["id"] for each in root.iter() if "id" in each.attrib]
    assert ids == ["where-it-goes", "where-it-goes-title", "where-it-goes-words"]
    assert root.attrib["aria-labelledby"].split() == ids[1:]
    assert float(root.attrib["width"]) == pytest.approx(drawing.width * ON_SCREEN, abs=0.01)
    assert not [each for each in ET.fromstring(to_svg(drawing)).iter() if "id" in each.attrib]


def test_text_cannot_become_markup() -> None:
    drawing = Drawing("<b>&", '"quoted"</desc>', 10, 10, (Words((0, 0), "<script>&amp;", "small"),))
    root = ET.fromstring(to_svg(drawing))
    assert root.findtext(f"{SPACE}title") == "<b>&"
    assert root.findtext(f"{SPACE}text") == "<script>&amp;"
    assert not list(root.iter(f"{SPACE}script"))


def test_a_class_without_a_look_is_refused() -> None:
    with pytest.raises(ValueError, match="velvet"):
        to_svg(Drawing("t", "w", 1, 1, (line(0, 0, 1, 1, "velvet"),)))

"""The piping schematic: tidy at any size, every part in it, the same content in words."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.drawings.lettering import Box, fitted, fitted_apart, lines_of, text_boxes, text_width
from heatledger.drawings.schematic import schematic
from heatledger.drawings.schematic_legend import lines_used, schematic_legend, signs_used
from heatledger.drawings.schematic_view import HOME_RUN, SERIES, CircuitView, RunView, SchematicView
from heatledger.drawings.shapes import Disc, Drawing, Path, Words
from heatledger.drawings.symbols import SYMBOLS, symbol
from heatledger.drawings.to_svg import LOOKS, to_svg

KINDS = ("fin-tube baseboard", "panel radiator", "cast-iron radiator", "cast-iron baseboard")
NAMES = ("Living room", "Kitchen", "Hall and stairs", "Bath", "Bedroom of the grandparents, upper floor")


def run(number: int, kind: str) -> RunView:
    manifold = kind == HOME_RUN
    flow = f"0.{40 + number} gpm" if manifold else ""
    return RunView(
        NAMES[number % len(NAMES)], KINDS[number % len(KINDS)], flow, f"{50 + number}′ 6″", manifold
    )


def circuit(number: int, runs: int, kind: str, pump: str = "") -> CircuitView:
    made = tuple(run(each, kind) for each in range(runs))
    return CircuitView(f"Zone {number}, upper floor", kind, made, "12.42 gpm", circulator=pump)


def view(*circuits: CircuitView) -> SchematicView:
    return SchematicView(
        "Boiler room and circuits", circuits, "Condensing boiler of the house", "output 143,150 Btu/h",
        "30 psi", "14.4 gal, 12.2 psi", "12.2 psi", "Circulator", "160 °F", "140 °F",
    )  # fmt: skip


def overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def crossed(box: Box, path: Path) -> bool:
    """Whether a pipe (level or upright throughout) runs through a box."""
    ends = [*path.points, path.points[0]] if path.closed else path.points
    for (ax, ay), (bx, by) in pairwise(ends):
        if overlap(box, (min(ax, bx), min(ay, by), max(ax, bx), max(ay, by))):
            return True
    return False


def check_tidy(drawing: Drawing) -> None:
    boxes = text_boxes(drawing)
    for number, (text, box) in enumerate(boxes):
        assert box[0] >= -0.5, text
        assert box[2] <= drawing.width + 0.5, text
        assert box[1] >= 0, text
        assert box[3] <= drawing.height, text
        for other, beside in boxes[number + 1 :]:
            assert not overlap(box, beside), (text, other)
    pipes = [each for each in drawing.shapes if isinstance(each, Path) and each.look in ("supply", "return")]
    for text, box in boxes:
        assert not any(crossed(box, each) for each in pipes), text
    for shape in drawing.shapes:
        points = (
            shape.points if isinstance(shape, Path) else [shape.center] if isinstance(shape, Disc) else []
        )
        assert all(-1 <= x <= drawing.width + 1 and -1 <= y <= drawing.height + 1 for x, y in points)


@settings(max_examples=60, deadline=None)
@given(
    sizes=st.lists(
        st.tuples(st.integers(1, 14), st.sampled_from((SERIES, HOME_RUN))), min_size=1, max_size=10
    ),
    width=st.sampled_from((500.0, 516.0, 712.0)),
    pumps=st.booleans(),
    at_suction=st.booleans(),
)
def test_any_schematic_is_tidy(
    sizes: list[tuple[int, str]], width: float, pumps: bool, at_suction: bool
) -> None:
    made = [circuit(n, runs, kind, f"P{n}" if pumps else "") for n, (runs, kind) in enumerate(sizes)]
    check_tidy(schematic(replace(view(*made), tank_at_suction=at_suction), width))


def test_a_boiler_room_without_circuits_is_drawn() -> None:
    drawing = schematic(view())
    check_tidy(drawing)
    assert "Boiler" in {each.text for each in drawing.shapes if isinstance(each, Words)}


def pipes_of(drawing: Drawing) -> list[tuple[str, tuple[tuple[float, float], tuple[float, float]]]]:
    return [
        (each.look, ends)
        for each in drawing.shapes
        if isinstance(each, Path) and each.look in ("supply", "return")
        for ends in pairwise(each.points)
    ]


@pytest.mark.parametrize("count", [1, 2, 3, 6, 10])
def test_supply_and_return_never_cross_and_keep_right_angles(count: int) -> None:
    kinds = (HOME_RUN, SERIES)
    drawing = schematic(view(*(circuit(n, 1 + n % 4, kinds[n % 2]) for n in range(count))))
    pipes = pipes_of(drawing)
    for _, ((ax, ay), (bx, by)) in pipes:
        assert ax == bx or ay == by
    supply = [ends for look, ends in pipes if look == "supply"]
    back = [ends for look, ends in pipes if look == "return"]
    for (ax, ay), (bx, by) in supply:
        for (cx, cy), (dx, dy) in back:
            apart_x = max(ax, bx) < min(cx, dx) or max(cx, dx) < min(ax, bx)
            apart_y = max(ay, by) < min(cy, dy) or max(cy, dy) < min(ay, by)
            touches_chain_end = {(ax, ay), (bx, by)} & {(cx, cy), (dx, dy)}
            assert apart_x or apart_y or touches_chain_end


def test_every_rung_names_room_flow_and_length() -> None:
    drawing = schematic(view(circuit(1, 4, HOME_RUN)))
    shown = {each.text for each in drawing.shapes if isinstance(each, Words)}
    assert {"Living room", "0.40 gpm", "50′ 6″", "Hall and stairs", "0.42 gpm", "52′ 6″"} <= shown


def test_words_tell_the_parts_in_the_order_of_the_water() -> None:
    words = schematic(view(circuit(1, 2, HOME_RUN), circuit(2, 2, SERIES, "P2"))).words
    order = ["relief valve 30 psi", "low-water cutoff", "air separator", "expansion tank", "circulator",
             "backflow preventer", "home-run manifold", "Living room", "purge drain", "series loop",
             "P2"]  # fmt: skip
    places = [words.find(each) for each in order]
    assert -1 not in places
    assert places == sorted(places)


def test_a_tank_after_the_circulator_is_drawn_and_said_so() -> None:
    after = replace(view(circuit(1, 2, SERIES)), tank_at_suction=False)
    words = schematic(after).words
    assert words.find("circulator Circulator") < words.find("expansion tank")
    assert schematic(after).shapes != schematic(view(circuit(1, 2, SERIES))).shapes


def test_the_legend_names_only_what_is_used() -> None:
    loop = view(CircuitView("Loop", SERIES, (RunView("Room", "panel radiator"),), zone_valve=False))
    assert "zone valve" not in signs_used(loop)
    assert "balancing valve" not in signs_used(loop)
    assert "fin-tube baseboard" not in signs_used(loop)
    assert "manifold-supply" not in lines_used(loop)
    everything = view(circuit(1, 4, HOME_RUN))
    assert {"zone valve", "balancing valve", "cast-iron radiator"} <= set(signs_used(everything))
    assert "manifold-return" in lines_used(everything)
    drawing = schematic_legend(everything)
    check_tidy(drawing)
    assert "purge drain" in {each.text for each in drawing.shapes if isinstance(each, Words)}


def test_supply_and_return_differ_without_color() -> None:
    assert "dasharray" in LOOKS["return"]
    assert "dasharray" not in LOOKS["supply"]
    assert "dasharray" in LOOKS["discharge"]
    assert LOOKS["return"].split("dasharray")[1] != LOOKS["discharge"].split("dasharray")[1]


def test_the_schematic_is_one_sound_svg_with_title_and_words() -> None:
    drawing = schematic(view(circuit(1, 3, HOME_RUN), circuit(2, 3, SERIES)))
    text = to_svg(drawing)
    root = ET.fromstring(text)
    space = "{http://www.w3.org/2000/svg}"
    assert root.findtext(f"{space}title") == "Boiler room and circuits"
    assert root.findtext(f"{space}desc") == drawing.words
    style = root.findtext(f"{space}style") or ""
    assert all(f".{each.get('class')}{{" in style for each in root.iter() if each.get("class"))
    assert text == to_svg(drawing)


def test_names_that_begin_alike_keep_their_ends() -> None:
    names = ["Radiator under the south windows", "Radiator under the west window", "Bath"]
    cut = fitted_apart(names, 80)
    assert cut[2] == "Bath"
    assert cut[0].endswith("south windows")
    assert cut[1].endswith("west window")
    assert all(text_width(each) <= 80 for each in cut)


def test_a_sign_turns_about_its_place() -> None:
    level, upright = symbol("shutoff", (50, 40)), symbol("shutoff", (50, 40), 1)
    assert isinstance(level[0], Path)
    assert isinstance(upright[0], Path)
    assert {round(x) for x, _ in level[0].points} == {44, 50}
    assert {round(y) for _, y in upright[0].points} == {34, 40}
    for name in SYMBOLS:
        turned = symbol(name, (0, 0), 4)
        assert turned == symbol(name, (0, 0))


def test_what_has_no_sign_or_kind_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="chandelier"):
        symbol("chandelier", (0, 0))
    with pytest.raises(ValueError, match="star"):
        CircuitView("x", "star", ())
    with pytest.raises(ValueError, match="width"):
        schematic(view(circuit(1, 2, HOME_RUN)), 150.0)


def test_text_is_cut_to_its_room() -> None:
    assert fitted("Kitchen", 100) == "Kitchen"
    cut = fitted("Bedroom of the grandparents", 60)
    assert cut.endswith("…")
    assert text_width(cut) <= 60
    assert fitted("Kitchen", 1) == ""
    assert lines_of("needed 3.7 gpm at 4.4 ft", 60) == ["needed 3.7", "gpm at 4.4 ft"]
    assert all(text_width(each) <= 40 for each in lines_of("a very long text that needs cutting", 40))


def test_a_name_that_keeps_its_end_begins_with_a_whole_word_where_that_tells_it_apart() -> None:
    names = ["Radiator under the south windows", "Radiator under the west window"]
    cut = fitted_apart(names, 85)
    assert cut == ["…the south windows", "…the west window"]
    alike = ["Radiator of the lower south window", "Radiator of the upper south window"]
    assert len(set(fitted_apart(alike, 80))) == 2

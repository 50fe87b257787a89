"""Every working on the paper shows the tokens of the ledger, and every printed figure leads to one."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from heatledger.ledger.compose import working_of
from heatledger.ledger.figures import Leaf, ancestors
from heatledger.ledger.outline import outline_in
from heatledger.ledger.presets import PRESETS
from heatledger.ledger.workings import Token as Piece
from heatledger.ledger.workings import tokens_of
from heatledger.papers.addresses import Addresses, is_small
from heatledger.papers.from_design import heat_loss_paper
from heatledger.papers.groups_of_steps import walk
from heatledger.papers.heat_loss_data import Cell, HeatLossPaper
from heatledger.papers.workings_data import Line, Side, Token, Working
from heatledger.papers.workings_from import block, group_of, tokens
from tests.papers.demo_papers import HOUSES, ONE_ROOM, addressed, designed, house, paper, text_of
from tests.papers.owner_jobs import made

ARITHMETIC = {"number", "unit", "op", "sign", "root", "power"}
BOTH = pytest.mark.parametrize("name", HOUSES)
ALL_UNITS = pytest.mark.parametrize("units", sorted(PRESETS))


def said(given: tuple[Token, ...]) -> Iterator[str]:
    for each in given:
        if each.kind in ARITHMETIC and each.text not in ("(", ")"):
            yield each.text


def shown(made: Working | Line) -> list[str]:
    """The arithmetic of a block or a line, in the order in which it is printed."""
    if isinstance(made, Line):
        found = [*steps(made), *said(made.tokens), made.answer, made.unit]
    else:
        found = [*column(made), *said(made.line), made.answer.number, made.answer.unit]
    for side in made.sides:
        found += [*column(side), *said(side.line), side.answer.number, side.answer.unit]
    if isinstance(made, Working) and made.by_hand:
        found += [*said(made.by_hand.tokens), made.by_hand.value, made.by_hand.unit]
    return [each for each in found if each]


def steps(made: Working | Side | Line) -> Iterator[str]:
    for step in made.steps:
        yield from (*said(step.tokens), step.value, step.unit)


def column(made: Working | Side) -> Iterator[str]:
    """Inner steps, then the column."""
    yield from steps(made)
    for row in made.column:
        yield from (row.op, row.number, row.unit, *said(row.expression))


def arithmetic_of(working: object) -> list[str]:
    """The tokens that all renderings share; a raised number needs no sign before it."""
    return [each for each in tokens_of(working) if each not in ("^", "(", ")")]  # type: ignore[arg-type]


def answering(made: HeatLossPaper) -> dict[str, Working | Line]:
    return {each.key: each for group in made.workings for each in (*group.workings, *group.lines)}


def answering_in_the_book(found: Addresses) -> dict[str, Working | Line]:
    groups = [group_of(each, found) for each in found.groups]
    return {each.key: each for group in groups for each in (*group.workings, *group.lines)}


@ALL_UNITS
@BOTH
def test_every_figure_can_be_set_with_all_its_tokens(name: str, units: str) -> None:
    found, made = addressed(name, units), house(name)
    for figure in made.figures.values():
        working = working_of(figure, PRESETS[units], made.names)
        assert shown(block(figure, found)) == arithmetic_of(working)


@ALL_UNITS
@BOTH
def test_what_stands_under_an_address_is_its_working(name: str, units: str) -> None:
    found, made = addressed(name, units), house(name)
    by_key = answering_in_the_book(found)
    met = set()
    for figure in ancestors(*made.results.values()):
        key = found.key(figure)
        if key and not isinstance(figure.origin, Leaf):
            met.add(key)
            working = working_of(figure, PRESETS[units], made.names)
            if isinstance(by_key[key], Line):  # by hand stands where its formula is set out
                working = replace(working, by_hand=None)
            assert shown(by_key[key]) == arithmetic_of(working), key
    assert len(met) > 90


@BOTH
def test_addresses_run_on_and_each_stands_once(name: str) -> None:
    keys = paper(name).keys()
    found = [key for key in keys if key.startswith("2·")]
    given = [key for key in keys if key.startswith("1·")]
    assert found == [f"2·{line}" for line in range(1, len(found) + 1)]
    assert given == [f"1·{line}" for line in range(1, len(given) + 1)]


@BOTH
def test_every_printed_figure_leads_somewhere(name: str) -> None:
    made = paper(name)
    keys = set(made.keys())
    cells: list[Cell] = [made.house_line.loss, made.house_line.per_area, *made.house_line.causes]
    cells += [cell for line in made.causes for cell in (line.loss, line.share)]
    cells += [cell for room in made.rooms for cell in (*room.causes, room.loss, room.per_area)]
    cells += [level.loss for level in made.levels]
    cells += [cell for part in made.parts for cell in (part.u_value, part.difference, part.loss)]
    assert {cell.text for cell in cells if cell.key not in keys} <= {"–", " "}
    assert made.answer.key in keys
    assert all(each.key in keys for each in made.conditions)


@BOTH
def test_every_operand_of_a_block_leads_down(name: str) -> None:
    """A row has an address, or says how it comes about, or is a number of the formula itself."""
    made = paper(name)
    keys, leading = set(made.keys()), 0
    for working in (each for group in made.workings for each in group.workings):
        from_below = [key for led in working.comes_from for key in led.keys]
        assert set(from_below) <= keys
        leading += len(from_below)
        for row in working.column:
            assert not row.key or row.key in keys
            leading += bool(row.key)
    assert leading > 100


@BOTH
def test_nothing_is_lost_down_to_the_tape(name: str) -> None:
    made, printed = house(name), paper(name)
    entries = {each.key for group in printed.tape for each in group.entries}
    found = addressed(name, "us")
    asked = [room.loss for room in made.losses.rooms.values()]
    needed = [figure for figure in ancestors(*asked) if isinstance(figure.origin, Leaf)]
    assert {found.key(figure) for figure in needed} <= entries


def test_small_arithmetic_stands_in_lines_after_the_blocks_of_its_room() -> None:
    found = addressed("ferrow-house", "us")
    kitchen = next(each for each in found.groups if each.title == "Kitchen")
    losses = house("ferrow-house").losses.rooms["kitchen"]
    assert found.key(kitchen.blocks[0]) == found.key(losses.loss)
    assert all(is_small(outline_in(found.working(each))) for each in kitchen.lines)
    assert found.key(losses.surfaces["north-wall"].net_area) in {found.key(each) for each in kitchen.lines}
    titles = {each.title for each in found.groups}
    assert {"The house", "Stories", "Basement, unheated", "What it is built of"} <= titles


def test_one_room_is_worked_out_under_its_own_name() -> None:
    made = designed(ONE_ROOM)
    printed = heat_loss_paper(made, made.job.units)
    den = next(group for group in printed.workings if group.title == "Den")
    assert [each.title for each in den.workings][:3] == ["Heat loss", "Wall", "Roof"]
    assert printed.answer.key == den.workings[0].key
    assert not printed.levels


def test_spaces_found_together_show_both_sides_and_their_siblings() -> None:
    roof = "roof: {construction: roof-deck, area: 440 ft2, beyond: "
    text = text_of("ferrow-house").replace(roof + "outdoors}", roof + "unheated/attic}")
    made = designed(text)
    printed = heat_loss_paper(made, made.job.units)
    balances = [each for group in printed.workings for each in group.workings if each.sides]
    assert len(balances) == 2
    keys = set(printed.keys())
    for each in balances:
        into, out = (side.label for side in each.sides)
        assert (into, out) == ("Heat that comes into the space", "Heat that leaves the space")
        assert each.sides[0].answer.number == each.sides[1].answer.number
        assert all(row.key in keys for side in each.sides for row in side.column)
        assert each.notes[0].startswith("Found together with ")
        assert "agree in every figure" in each.notes[1]


def test_what_waits_says_what_for() -> None:
    made = designed(text_of("ferrow-house").replace("  outdoor: -2 °F ", "  # "))
    printed = heat_loss_paper(made, made.job.units)
    assert printed.answer.load == ""
    assert printed.answer.waits_for == "outdoor (site/outdoor)"
    assert printed.house_line.loss.text == ""
    by_key = answering(printed)
    kitchen = by_key[next(room for room in printed.rooms if room.name == "Kitchen").loss.key]
    assert "site/outdoor" in kitchen.waits_for
    assert not any(cell.text.startswith("0") for room in printed.rooms for cell in (*room.causes, room.loss))
    assert [part.area.text for part in printed.parts if part.name == "Wood door"] == ["41.0"]


def test_powers_are_raised_with_what_they_enclose() -> None:
    kinds = ["word", "op", "open", "number", "op", "letter", "close", "op", "number", "op", "number"]
    given = tuple(map(Piece, kinds, ["x", "^", "(", "0.5", "+", "a", ")", "×", "2", "^", "3"]))
    made = tokens(given)
    assert "".join(each.text for each in made if each.kind == "power") == "(0.5+a)3"
    assert [each.text for each in made if each.kind != "power"] == ["x", "×", "2"]


def test_points_of_the_weather_are_named_in_the_readers_degrees() -> None:
    for units, unit in (("us", "°F"), ("metric", "°C")):
        told = made("tamm-street").told_in(PRESETS[units])
        points = {found.names[1] for found in walk(told.controls.controls, told) if found.path[0] == "reset"}
        assert "Design day" in points
        assert len(points) > 3
        assert all(each.endswith(f"{unit} outdoors") for each in points - {"Design day"})

"""Papers to build from: a setting nobody gave is a blank, poison keeps the draft, no line mixes states."""

from __future__ import annotations

import csv
import io
import re
from functools import cache

import pytest
from pypdf import PdfReader

from heatledger.drawings.reset_from import reset_drawing
from heatledger.job.load import read_job
from heatledger.ledger.dimensions import TEMPERATURE, VOLUME_FLOW
from heatledger.ledger.show import show_speaking
from heatledger.papers import blocks as b
from heatledger.papers.boiler_room_paper import boiler_room_paper
from heatledger.papers.emitters_paper import emitters_paper
from heatledger.papers.findings_by_sheet import SHEET_OF_SUBJECT, SUBJECTS, is_draft, must_fix, sheet_of
from heatledger.papers.material_list import beside, material_paper
from heatledger.papers.owners_report import owners_report
from heatledger.papers.paper import paper_pdf
from heatledger.papers.printing import Printing
from heatledger.papers.reset_table import reset_rows
from heatledger.papers.schematic_from import schematic_views
from heatledger.papers.startup_paper import startup_paper
from heatledger.papers.tables import plain
from heatledger.papers.wall_card import wall_card
from heatledger.steps.design import design
from heatledger.steps.review import GROUPS, KINDS
from heatledger.studies.held_water import held_water, return_limit
from tests.papers.demo_papers import text_of
from tests.papers.test_trade_papers import words

FERROW, TAMM = text_of("ferrow-house"), text_of("tamm-street")
CLEAN = (
    "oxygen: 5 %, carbon_monoxide: 20 ppm, draft: -0.03 in. w.c., room_carbon_monoxide: 0 ppm, spillage: none"
)
POISONS = {
    "spillage": CLEAN.replace("spillage: none", "spillage: some"),
    "the flue": CLEAN.replace("20 ppm", "900 ppm"),
    "the room": CLEAN.replace("room_carbon_monoxide: 0 ppm", "room_carbon_monoxide: 60 ppm"),
}
IRON = ("kind: condensing", "kind: non-condensing")
SMALL_LIMIT = ("least_flow: 1.5 gpm", "least_flow: 1.5 gpm\n    return_limit: 110 °F")
NOTHING_GIVEN = (
    ("    relief: 30 psi\n", ""),
    ("  high_limit: 180 °F\n", ""),
    ("  low_water_cutoff: yes\n", ""),
)


@cache
def given(*changes: tuple[str, str], text: str = FERROW) -> Printing:
    """A job with some of its lines said otherwise."""
    for old, new in changes:
        changed = text.replace(old, new, 1)
        assert changed != text, old
        text = changed
    made = design(read_job(text, "job.yaml"))
    return Printing(made, made.job.units)


def read(fire: str) -> tuple[str, str]:
    return ("  calling: ground, upper\n", f"  calling: ground, upper\n  combustion: {{{fire}}}\n")


@pytest.mark.parametrize("found", POISONS)
def test_poison_keeps_the_draft_whatever_was_decided(found: str) -> None:
    made = design(read_job(FERROW.replace(*read(POISONS[found])), "job.yaml"))
    vars(made)["findings"], vars(made)["not_checked"] = [], []
    shown = Printing(made, made.job.units)
    assert is_draft(made)
    assert shown.head("").draft
    owner = words(*owners_report(shown).blocks)
    assert "Nothing stands in the way" not in owner
    assert "no decision lifts that" in owner
    startup = words(*startup_paper(shown).blocks)
    assert "Nothing is open" not in startup
    assert "Readings report poison" in words(startup_paper(shown).blocks[0])


def test_without_poison_and_without_must_fix_it_is_no_draft() -> None:
    made = design(read_job(FERROW.replace(*read(CLEAN)), "job.yaml"))
    vars(made)["findings"], vars(made)["not_checked"] = [], []
    assert not is_draft(made)
    shown = Printing(made, made.job.units)
    assert "Nothing stands in the way" in words(*owners_report(shown).blocks)
    assert "Nothing is open" in words(*startup_paper(shown).blocks)


def test_every_module_of_the_review_has_one_sheet() -> None:
    modules = {each.__name__.rpartition(".")[2] for each in GROUPS}
    speaking = {each.check.__module__.rpartition(".")[2] for each in KINDS.values()}
    assert modules | speaking == set(SHEET_OF_SUBJECT)
    assert sum(map(len, SUBJECTS.values())) == len(SHEET_OF_SUBJECT)


@pytest.mark.parametrize(
    ("id", "sheet"),
    [("flue-gas-spills", 7), ("no-co-alarm", 5), ("boiler-cycles-fast", 5), ("valve-closes-with-bang", 4),
     ("deep-setback-on-reset", 6), ("loop-drop-large", 3), ("bills-disagree", 2)],
)  # fmt: skip
def test_a_finding_stands_on_the_sheet_of_its_step(id: str, sheet: int) -> None:
    assert sheet_of(id) == sheet


def test_startup_lists_every_open_must_fix_of_the_design() -> None:
    shown = given()
    must = must_fix(shown.design)
    assert {sheet_of(each.id) for each in must} - {7}
    said = words(*startup_paper(shown).blocks)
    assert all(plain(each.what) in said for each in must)


@pytest.mark.parametrize("reset", ["no", ""])
def test_without_reset_one_line_stands_for_the_table(reset: str) -> None:
    shown = given(("  outdoor_reset: yes\n", f"  outdoor_reset: {reset}\n" if reset else ""))
    supply = shown.show(shown.design.emitters.house.supply, 0)
    for paper in (wall_card(shown), startup_paper(shown)):
        said = words(*paper.blocks)
        assert re.search(rf"Supply in all weather:\s+{supply}", said)
        assert "Outdoors" not in {each.columns[0].head for each in tables_of(paper)}
        assert "Share of load" not in said


def test_no_supply_is_printed_whose_return_the_boiler_would_not_bear() -> None:
    shown = given(IRON, SMALL_LIMIT)
    water = held_water(shown.design)
    limit = return_limit(shown.design)
    assert limit is not None and water.open and water.held
    assert all(float(each.return_) >= limit for each in water.open)
    assert float(water.held[0].return_) < limit
    least = shown.show(water.open[-1].asked, 0)
    unit = shown.unit(TEMPERATURE)
    printed = {cell_text(row.cells[1]) for row in reset_rows(shown).rows}
    assert not printed & {shown.show(each.asked, 1).removesuffix(unit).strip() for each in water.held}
    for paper in (wall_card(shown), startup_paper(shown)):
        assert f"Held at {least} for the boiler's sake" in words(*paper.blocks)


def test_a_boiler_too_cold_in_any_weather_gets_no_table() -> None:
    shown = given(IRON, ("least_flow: 1.5 gpm", "least_flow: 1.5 gpm\n    return_limit: 158 °F"))
    assert not held_water(shown.design).open
    for paper in (wall_card(shown), startup_paper(shown)):
        said = words(*paper.blocks)
        assert "Mend that first" in said and "Share of load" not in said


def test_a_condensing_boiler_is_held_nowhere() -> None:
    assert held_water(given().design).held == ()


def test_a_setting_nobody_gave_is_a_blank_and_is_not_drawn() -> None:
    shown = given(*NOTHING_GIVEN)
    view = schematic_views(shown)[0]
    assert (view.high_limit, view.low_water_cutoff) == (False, False)
    assert view.relief == f"____ {shown.unit(shown.design.boiler_room.plant.relief_pressure.dimension)}"
    reckoned = shown.show(shown.design.boiler_room.plant.relief_pressure)
    for paper in (wall_card(shown), startup_paper(shown), owners_report(shown)):
        said = words(*paper.blocks)
        assert not re.search(rf"(opens at|relief valve at|opens)\s+{re.escape(reckoned)}", said)
    card = next(each for each in tables_of(wall_card(shown)) if each.columns[0].head == "Usual readings")
    for row in card.rows:
        name = cell_text(row.cells[0])
        if name.startswith(("Relief", "High limit", "Low-water")):
            assert any(isinstance(run, b.Run) and run.blank for run in row.cells[1].text)
    startup = words(*startup_paper(shown).blocks)
    assert all(each in startup for each in ("Relief valve opens at, by its plate", "High limit set at"))
    assert "so not drawn: high limit and low-water cutoff" in words(*boiler_room_paper(shown).blocks)


def test_settings_that_are_given_stand_there() -> None:
    shown = given()
    view = schematic_views(shown)[0]
    assert view.relief == "30 psi" and view.high_limit and view.low_water_cutoff
    assert "Relief valve opens 30 psi" in " ".join(words(*wall_card(shown).blocks).split())


def test_the_card_shows_flow_drop_and_return_of_one_state() -> None:
    shown = given()
    room = shown.design.boiler_room.plant
    (duty,) = shown.design.circuits.plant.circulators.values()
    assert duty.actual_flow is not None
    card = next(each for each in tables_of(wall_card(shown)) if each.columns[0].head == "Usual readings")
    found = {cell_text(row.cells[0]): cell_text(row.cells[1]) for row in card.rows}
    drop = float(room.drop_design)
    assert found["Flow, all calling"] == show_speaking(duty.actual_flow, shown.units, VOLUME_FLOW)
    assert float(found["Temperature drop (ΔT)"].split()[0]) == pytest.approx(drop * 1.8, abs=0.6)
    carried = float(duty.actual_flow) * float(shown.design.emitters.house.water_heat) * drop
    assert carried == pytest.approx(sum(float(each.actual_output) for each in
                                        shown.design.circuits.circuits.values()), rel=0.02)  # fmt: skip


def test_card_startup_and_chart_give_the_same_water() -> None:
    shown = given()
    points = list(shown.design.controls.controls.reset.values())
    unit = shown.unit(TEMPERATURE)
    for point, row in zip(points, reset_rows(shown).rows, strict=True):
        assert cell_text(row.cells[1]) == shown.show(point.asked, 1).removesuffix(unit).strip()
        assert cell_text(row.cells[2]) == shown.show(point.return_, 1).removesuffix(unit).strip()
    card = next(each for each in tables_of(wall_card(shown)) if each.columns[0].head == "Outdoors")
    assert [cell_text(row.cells[1]) for row in card.rows] == [
        shown.show(each.asked, 0).removesuffix(unit).strip() for each in points
    ]
    chart = reset_drawing(shown.design, shown.units)
    assert chart is not None
    assert f"{float(shown.show(points[0].asked, 0).split()[0]):.0f}" in chart.words


@pytest.mark.parametrize("extra", [0, 12])
def test_the_card_tells_how_many_sheets_it_has(extra: int) -> None:
    more = "\n".join(f"  e{n}: {{name: P {n}, room: living, catalog: fin-tube-plain, length: 3 ft}}"
                     for n in range(extra))  # fmt: skip
    runs = "\n".join(f"      e{n}: {{tube: 1/2 in PEX, length: 50 ft}}" for n in range(extra))
    head = "name: More\n    kind: home-run manifold\n    zone: ground\n    tube: 3/4 in copper M"
    loop = f"  more:\n    {head}\n    length: 20 ft\n    runs:\n{runs}\n"
    changes = [("\nzones:\n", f"{more}\n\nzones:\n"), ("\nplant:\n", f"{loop}\nplant:\n")]
    shown = given(*(changes if extra else []))
    paper = wall_card(shown)
    pages = len(PdfReader(io.BytesIO(paper_pdf(paper))).pages)
    assert {2: "Two sheets: hang both", 3: "Three sheets: hang all"}[pages] in words(*paper.blocks)
    later = schematic_views(shown)[1:]
    assert bool(later) is bool(extra)
    for view in later:
        assert view.title.startswith("Further circuits of the same boiler room")
        assert view.boiler == "the same boiler as in part 1"
        assert (view.relief, view.tank, view.fill, view.boiler_note) == ("", "", "", "")


def test_a_replacement_buys_a_boiler_and_its_guards_and_no_radiator() -> None:
    shown = given(text=TAMM)
    said = words(*material_paper(shown).blocks)
    room = shown.design.boiler_room.plant
    assert "the radiators stay" in said
    assert f"output of {shown.show(room.load)} to {shown.show(room.largest_output)}" in said
    assert not any(each.name in said for each in shown.design.job.system.emitters.values())
    assert shown.design.job.system.plant.boiler is not None
    assert shown.design.job.system.plant.boiler.name not in said


def test_the_list_names_the_guards_a_thermostat_a_zone_and_one_quantity_of_boiler() -> None:
    shown = given()
    said = words(*material_paper(shown).blocks)
    for name in ("Low-water cutoff", "High limit", "Relief valve", "Backflow preventer", "Thermostat"):
        assert name in said
    rated = shown.design.boiler_room.plant.rated_output
    assert rated is not None
    assert f"output {shown.show(rated)}" in said
    rows = list(csv.reader(io.StringIO(beside(shown)["csv"].decode("utf-8-sig"))))
    counted = [row for row in rows if len(row) > 4 and row[4] == "pieces" and row[3]]
    assert len(counted) > 5
    assert all(row[3].isdigit() for row in counted)
    (thermostats,) = [row for row in counted if row[1] == "Thermostat"]
    assert int(thermostats[3]) == len(shown.design.job.system.zones)
    valves = [row for row in counted if row[1] == "Balancing valve"]
    assert valves and all(row[6] == "settings on the circuit schedule" for row in valves)


def test_a_length_that_is_only_suggested_is_not_over() -> None:
    whole = next(line for line in FERROW.splitlines() if "room: kitchen" in line and "length" in line)
    shown = given((whole, re.sub(r", length: [^,}]+", "", whole)))
    heat = shown.design.emitters
    assert any(each.suggested for each in heat.emitters.values())
    rows = next(each for each in tables_of(emitters_paper(shown)) if each.columns[0].head == "Room").rows
    kitchen = next(row for row in rows if cell_text(row.cells[0]).startswith("Kitchen"))
    assert cell_text(kitchen.cells[4]) == "length suggested"
    assert kitchen.cells[3] == b.NONE
    assert "would give" in words(emitters_paper(shown).blocks[0])


def test_no_sentence_is_built_round_a_value_that_is_missing() -> None:
    shown = given((
        "    water: 2.6 gal\n", ""), ("  supply: 160 °F\n", ""),
    )  # fmt: skip
    for paper in (startup_paper(shown), emitters_paper(shown), wall_card(shown)):
        assert not re.search(r"(near|With|Drop|for) +not known yet", " ".join(words(*paper.blocks).split()))


def cell_text(cell: b.Cell) -> str:
    text = cell.text if isinstance(cell.text, tuple) else (cell.text,)
    return "".join(each if isinstance(each, str) else each.text for each in text)


def tables_of(paper: b.Paper) -> list[b.Table]:
    """Every table, those in columns with them."""
    found: list[b.Table] = []
    for each in paper.blocks:
        inner = [one for column in each.columns for one in column] if isinstance(each, b.Columns) else [each]
        found += [one for one in inner if isinstance(one, b.Table)]
    return found

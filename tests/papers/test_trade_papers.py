"""The papers of the heating system: said first what comes first, every part in them, clean on any sheet."""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator
from functools import cache
from typing import Any

import pytest
from pypdf import PdfReader

from heatledger.job.load import read_job
from heatledger.ledger.presets import PRESETS
from heatledger.papers import blocks as b
from heatledger.papers import due
from heatledger.papers.boiler_room_paper import boiler_room_paper
from heatledger.papers.circuits_paper import circuits_paper
from heatledger.papers.emitters_paper import emitters_paper
from heatledger.papers.paper import paper_pdf, plain
from heatledger.papers.printing import Printing
from heatledger.papers.schematic_from import schematic_views
from heatledger.papers.startup_paper import startup_paper
from heatledger.papers.wall_card import wall_card
from heatledger.steps.design import Design, design
from tests.papers.demo_papers import ONE_ROOM, text_of

BUILDERS: dict[str, Callable[[Printing], b.Paper]] = {
    "emitters": emitters_paper, "circuits": circuits_paper, "boiler-room": boiler_room_paper,
    "startup": startup_paper, "card": wall_card,
}  # fmt: skip
DEMOS = ("ferrow-house", "lerch-cottage", "tamm-street")
FLUE_READ = """
  combustion: {oxygen: 4 %, carbon_monoxide: 20 ppm, draft: 0.05 in. w.c., stack: 120 °F,
    room_carbon_monoxide: 0 ppm, spillage: none}
"""


@cache
def designed(text: str, name: str = "job") -> Design:
    return design(read_job(text, f"{name}.yaml"))


@cache
def printing(name: str, units: str = "") -> Printing:
    made = designed(text_of(name), name)
    return Printing(made, PRESETS[units] if units else made.job.units)


def of_text(text: str) -> Printing:
    made = designed(text)
    return Printing(made, made.job.units)


def texts(thing: Any) -> Iterator[str]:
    """Every text of a paper, in its order."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, dict):
        for each in thing.values():
            yield from texts(each)
    elif isinstance(thing, list):
        for each in thing:
            yield from texts(each)


def words(*blocks: b.Block) -> str:
    return " ".join(texts(plain(blocks)))


def keys(thing: Any) -> Iterator[str]:
    if isinstance(thing, dict):
        if thing.get("key"):
            yield thing["key"]
        for each in thing.values():
            yield from keys(each)
    elif isinstance(thing, list):
        for each in thing:
            yield from keys(each)


@pytest.mark.parametrize("units", ["us", "metric", "canadian"])
@pytest.mark.parametrize("name", BUILDERS)
def test_each_paper_is_set_cleanly(name: str, units: str) -> None:
    sheet = "letter" if units == "us" else "a4"
    pdf = paper_pdf(BUILDERS[name](printing("ferrow-house", units)), sheet)
    pages = PdfReader(io.BytesIO(pdf)).pages
    wide, high = (float(each) for each in (pages[0].mediabox.width, pages[0].mediabox.height))
    assert (wide > high) is (name == "card")
    assert len(pages) <= {"card": 2, "emitters": 3, "circuits": 4, "boiler-room": 5, "startup": 7}[name]


@pytest.mark.parametrize("demo", DEMOS)
@pytest.mark.parametrize("name", BUILDERS)
def test_every_key_is_an_address_of_the_book(name: str, demo: str) -> None:
    given = printing(demo)
    paper = BUILDERS[name](given)
    known = set(given.found.keys.values())
    led = set(keys(plain(paper.blocks)))
    assert led <= known
    assert led or name == "card" or (name == "circuits" and not due.with_circuits(given.design))


@pytest.mark.parametrize("name", BUILDERS)
def test_a_job_without_a_heating_system_breaks_no_paper(name: str) -> None:
    given = of_text(ONE_ROOM)
    assert not any(each(given.design) for each in (due.with_emitters, due.with_circuits, due.with_plant))
    assert paper_pdf(BUILDERS[name](given))


def test_papers_are_due_with_what_they_are_about() -> None:
    assert due.with_emitters(printing("tamm-street").design)
    assert due.with_boiler(printing("tamm-street").design)
    assert not due.with_circuits(printing("tamm-street").design)
    assert due.with_circuits(printing("ferrow-house").design)


def test_the_emitter_schedule_names_who_sets_the_water_and_what_is_taken_out() -> None:
    given = printing("ferrow-house")
    said = words(*emitters_paper(given).blocks)
    house = given.design.emitters.house
    setter = given.design.job.rooms[house.set_by].name
    assert f"{setter} sets the lowest supply" in said
    assert "heating-effect factor" in said
    for each in given.design.job.rooms.values():
        assert each.name in said
    short = [id for id, room in given.design.emitters.rooms.items() if float(room.over) < 0]
    table = next(each for each in emitters_paper(given).blocks if isinstance(each, b.Table))
    marked = [row for row in table.rows if "short" in " ".join(texts(plain(row)))]
    assert len(marked) == len(short) > 0


def test_a_room_at_its_load_is_not_called_short() -> None:
    table = next(each for each in emitters_paper(printing("tamm-street")).blocks if isinstance(each, b.Table))
    assert not [row for row in table.rows if "short" in " ".join(texts(plain(row)))]


def test_the_circuit_schedule_holds_every_run_and_both_points_of_the_circulator() -> None:
    given = printing("ferrow-house")
    said = words(*circuits_paper(given).blocks)
    for circuit in given.design.circuits.circuits.values():
        assert circuit.name in said
        for id, run in circuit.runs.items():
            assert given.design.job.system.emitters[id].name in said
            assert run.tube in said
    duty = next(iter(given.design.circuits.plant.circulators.values()))
    assert duty.actual_flow is not None
    for figure in (duty.needed_flow, duty.needed_head, duty.actual_flow):
        assert given.show(figure) in said
    assert "smallest of its family" in said


def test_the_boiler_room_lists_every_factor_and_both_tank_methods() -> None:
    given = printing("ferrow-house")
    said = words(*boiler_room_paper(given).blocks)
    room = given.design.boiler_room.plant
    for factor in room.factors.values():
        assert factor.name in said
        assert factor.note in said
    assert given.show(room.product, 3) in said
    assert "Tank by density" in said
    assert "Tank by the line of the boiler code" in said
    for part in room.volumes.values():
        assert part.name in said
    for name in ("Relief valve", "Low-water cutoff", "Backflow preventer", "Purge drain", "Expansion tank"):
        assert name in said
    assert "Never plug" in said
    assert "Local code and licensed practice govern." in said


def test_startup_says_first_not_to_leave_it_running() -> None:
    given = printing("ferrow-house")
    assert not given.design.startup.startup.may_run
    first = startup_paper(given).blocks[0]
    assert isinstance(first, b.Frame)
    said = words(first)
    assert said.find("Do not leave it running.") < said.find("Not read yet")
    for each in given.design.startup.startup.waits_for:
        assert each in said
    assert "carbon monoxide" in said


def test_the_flue_once_read_lifts_the_order_and_keeps_the_caution() -> None:
    text = re.sub(
        r"(\n  calling: ground, upper\n)", rf"\1{FLUE_READ.strip(chr(10))}\n", text_of("ferrow-house")
    )
    given = of_text(text)
    assert given.design.startup.startup.may_run
    first = startup_paper(given).blocks[0]
    assert "Do not leave it running" not in words(first)
    assert "Read the flue again" in words(first)


def test_steps_are_numbered_in_order_with_blanks_for_what_is_read() -> None:
    steps = next(
        each for each in startup_paper(printing("ferrow-house")).blocks if isinstance(each, b.Checklist)
    ).steps
    assert [each.number for each in steps] == [str(number + 1) for number in range(len(steps))]
    titles = [each.title for each in steps]
    assert titles.index("Pressure test") < titles.index("Fill") < titles.index("First fire and warm-up")
    combustion = next(each for each in steps if each.title.startswith("Combustion"))
    assert [each.label for each in combustion.readings][:2] == ["oxygen", "carbon monoxide, air free"]
    idle = [each for each in steps if not each.applies]
    assert idle
    assert all(each.passes == "Not for this job." and not each.readings for each in idle)


def test_every_circuit_and_emitter_has_a_target_and_a_place_to_write() -> None:
    given = printing("ferrow-house")
    tables = [each for each in startup_paper(given).blocks if isinstance(each, b.Table) and each.ruled]
    said = words(*tables)
    targets = given.design.startup.startup
    for each in targets.circuits.values():
        assert each.name in said
    for id in targets.emitters:
        assert given.design.job.system.emitters[id].name in said
    assert all(b.NOTHING in row.cells for table in tables for row in table.rows)


def test_the_card_tells_emergencies_first_and_leads_nowhere() -> None:
    paper = wall_card(printing("ferrow-house"))
    assert paper.landscape
    first = words(paper.blocks[0])
    for said in ("Smell of gas.", "Carbon monoxide alarm.", "Water low, boiler hot.", "To stop it all."):
        assert said in first
    whole = words(*paper.blocks)
    for said in (
        "Usual readings",
        "Purge in this order",
        "If something is off",
        "Who to call",
        "Never bypass",
    ):
        assert said in whole
    assert not set(keys(plain(paper.blocks)))


def test_the_card_of_an_oil_boiler_speaks_of_oil() -> None:
    said = words(*wall_card(printing("tamm-street")).blocks)
    assert "Smell of oil" in said
    assert "Smell of gas" not in said


def test_an_electric_boiler_has_no_flue_to_read() -> None:
    text = text_of("ferrow-house").replace(
        "fuel: natural gas\n    kind: condensing", "fuel: electricity\n    kind: electric"
    )
    given = of_text(text)
    said = words(*startup_paper(given).blocks)
    assert "Fire and flue" not in said
    card = words(*wall_card(given).blocks)
    assert "its breaker" in card
    assert "Combustion" not in card


def test_the_schematic_shows_each_circuit_with_its_kind() -> None:
    view = schematic_views(printing("ferrow-house"))[0]
    assert [each.kind for each in view.circuits] == ["home-run manifold", "series loop"]
    assert [run.room for run in view.circuits[0].runs] == ["Living room", "Dining room", "Kitchen", "Study",
                                                           "Hall and stairs"]  # fmt: skip
    assert all(run.balancing for run in view.circuits[0].runs)
    assert not any(run.flow for run in view.circuits[1].runs)
    assert view.tank_at_suction
    assert view.circulator == "Circulator"


def test_a_tank_at_the_discharge_is_shown_where_it_is() -> None:
    text = text_of("ferrow-house").replace("placed: pump suction", "placed: pump discharge")
    assert not schematic_views(of_text(text))[0].tank_at_suction


def test_too_many_runs_are_drawn_in_parts() -> None:
    text, kind = text_of("ferrow-house"), "room: living, catalog: fin-tube-plain, length: 3 ft"
    more = "\n".join(f"  e{n}: {{name: Panel {n}, {kind}}}" for n in range(12))
    runs = "\n".join(f"      e{n}: {{tube: 1/2 in PEX, length: 50 ft}}" for n in range(12))
    head = "name: More\n    kind: home-run manifold\n    zone: ground\n    tube: 3/4 in copper M"
    loop = f"  more:\n    {head}\n    length: 20 ft\n    runs:\n{runs}\n"
    text = text.replace("\nzones:\n", f"{more}\n\nzones:\n", 1).replace("\nplant:\n", f"{loop}\nplant:\n", 1)
    views = schematic_views(of_text(text))
    assert [len(each.circuits) for each in views] == [2, 1]
    assert [each.title[-11:] for each in views] == ["part 1 of 2", "part 2 of 2"]
    pdf = paper_pdf(boiler_room_paper(of_text(text)))
    assert "part 2 of 2" in "".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages)

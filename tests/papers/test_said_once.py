"""What is printed is said once, in the words of a person, and reads the same on every paper."""

from __future__ import annotations

import json

import pytest

from heatledger.drawings.figure_words import enough
from heatledger.job.load import read_job
from heatledger.ledger.dimensions import RATIO, TEMPERATURE, TIME, Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.findings import Weight
from heatledger.ledger.presets import METRIC, US
from heatledger.ledger.solving import Solved
from heatledger.papers import blocks as b
from heatledger.papers.boiler_room_paper import boiler_room_paper
from heatledger.papers.compile import marks_in, printable_json
from heatledger.papers.emitters_paper import emitters_paper
from heatledger.papers.findings_by_sheet import SHEETS, findings_of
from heatledger.papers.inspector_paper import inspector_paper
from heatledger.papers.owners_report import owners_report
from heatledger.papers.paper import content
from heatledger.papers.printable import made_printable
from heatledger.papers.review_paper import review_paper, sentences
from heatledger.papers.startup_paper import startup_paper
from heatledger.papers.wall_card import wall_card
from heatledger.papers.words import spoken_time, times
from heatledger.papers.workings_data import Line, Working
from heatledger.papers.workings_paper import workings_paper
from heatledger.steps.design import design
from tests.papers.demo_papers import text_of
from tests.papers.owner_jobs import made, pdf_text, printing, runs

DEMOS = pytest.mark.parametrize("name", ["ferrow-house", "lerch-cottage", "tamm-street"])


def figure(value: float, dimension: Dimension) -> Figure:
    return leaf(value, dimension, Leaf(LeafKind.SOURCE, "sample", "sample"))


@pytest.mark.parametrize(("typed", "printed"), [("158.04", "158"), ("158.06", "159"), ("183.8", "184")])
def test_water_that_is_enough_is_rounded_up_from_what_the_tables_print(typed: str, printed: str) -> None:
    kelvins = US.shown(TEMPERATURE).unit.to_si(float(typed), True)
    assert enough(figure(kelvins, TEMPERATURE), US) == f"{printed} °F"


@pytest.mark.parametrize(("seconds", "printed"), [(180.0, "3 min"), (3540.0, "59 min"), (7200.0, "2 h")])
def test_times_are_minutes_below_an_hour(seconds: float, printed: str) -> None:
    assert spoken_time(figure(seconds, TIME), METRIC) == printed


@pytest.mark.parametrize(("ratio", "printed"), [(1.174, "1.17"), (2.0, "2.00"), (12.34, "12.3")])
def test_how_many_times_has_two_decimals(ratio: float, printed: str) -> None:
    assert times(figure(ratio, RATIO), US) == printed


def test_the_sequence_tells_minutes() -> None:
    text = pdf_text(inspector_paper, printing("ferrow-house"))
    assert "runs on for 3 min" in text
    assert " h to carry" not in text


@DEMOS
def test_how_much_over_the_load_reads_the_same_on_every_paper(name: str) -> None:
    shown, room = printing(name), made(name).boiler_room.plant
    assert room.ratio is not None
    key, said_once = shown.found.key(room.ratio), times(room.ratio, US)
    for build in (boiler_room_paper, owners_report):
        told = {each.text for each in runs(build(shown).blocks) if each.key == key}
        assert told == {said_once}


@DEMOS
def test_the_lowest_water_reads_the_same_to_owner_and_crew(name: str) -> None:
    shown, house = printing(name), made(name).emitters.house
    for build in (emitters_paper, owners_report):
        told = {each.text for each in runs(build(shown).blocks) if each.kind == "bold"}
        assert enough(house.lowest_supply, shown.units) in told


@DEMOS
def test_findings_of_a_sheet_stand_by_their_weight(name: str) -> None:
    order = list(Weight)
    for sheet in SHEETS:
        weights = [order.index(each.weight) for each in findings_of(made(name), sheet)]
        assert weights == sorted(weights)


@DEMOS
def test_no_sentence_of_the_cautions_stands_twice(name: str) -> None:
    frames = [each for each in review_paper(printing(name)).blocks if isinstance(each, b.Frame)]
    first = next(each for each in frames if each.title == "Before anything else.")
    whole = [sentence for text in first.texts for sentence in sentences(str(text))]
    assert len(whole) == len(set(whole)) > 1
    assert whole[-1] == "Local code and licensed practice govern."


def everything(name: str) -> dict[str, Working | Line]:
    blocks = b.every_block(workings_paper(printing(name)).blocks)
    groups = [group for each in blocks if isinstance(each, b.Workings) for group in each.groups]
    return {each.key: each for group in groups for each in (*group.workings, *group.lines)}


def test_a_network_is_named_once_and_every_flow_keeps_its_address() -> None:
    shown, by_key = printing("ferrow-house"), everything("ferrow-house")
    flows = [
        run.actual_flow
        for circuit in made("ferrow-house").circuits.circuits.values()
        for run in circuit.runs.values()
        if run.actual_flow is not None and isinstance(run.actual_flow.origin, Solved)
    ]
    found = {shown.found.key(each): by_key[shown.found.key(each)] for each in flows}
    assert len(found) > 4
    set_out = [each for each in found.values() if isinstance(each, Working)]
    assert len(set_out) == 1
    (first,) = set_out
    assert all(key in first.notes[0] for key in found if key != first.key)
    assert "-base" not in first.notes[0]
    for each in found.values():
        assert len(each.sides) == 2
        if isinstance(each, Line):
            assert each.remark == f"found together with {first.key}"


def test_addresses_stand_in_their_order_on_the_workings() -> None:
    by_sheet: dict[str, list[int]] = {}
    for key in everything("ferrow-house"):
        sheet, _, line = key.partition("·")
        by_sheet.setdefault(sheet, []).append(int(line))
    assert all(lines == list(range(1, len(lines) + 1)) for lines in by_sheet.values())


def test_choices_are_told_by_name() -> None:
    told = [note for each in everything("ferrow-house").values() if isinstance(each, Working)
            for note in each.notes]  # fmt: skip
    assert any("Hall baseboard" in note for note in told)
    assert not [note for note in told if "hall-base" in note]


def test_the_card_is_set_larger_than_a_sheet_to_work_from() -> None:
    assert wall_card(printing("ferrow-house")).grow > startup_paper(printing("ferrow-house")).grow


def test_zone_valves_of_one_size_are_one_line() -> None:
    from heatledger.papers.material_lines import material_lines

    (valves,) = [each for each in material_lines(printing("ferrow-house")) if each.item == "Zone valve"]
    assert valves.text == "2"
    assert valves.where == "Ground floor manifold, Upper floor loop"


@pytest.mark.parametrize("odd", ["plain", 'he said "so"', "back\\slash", "two\nlines", "e\u0301 and \u4e00"])
def test_whole_papers_are_made_printable_as_their_texts_are(odd: str) -> None:
    data = {"text": odd, "list": [odd, {"inner": f"7 {odd}"}]}
    assert json.loads(printable_json(data)) == made_printable(data)


def test_marks_are_gathered_wherever_they_stand() -> None:
    data = {"a": [{"standing": "derived"}, {"known": ""}], "b": {"known": "told", "standings": ["judgment"]}}
    assert marks_in(data) == {"derived", "told", "judgment"}
    assert marks_in({"head": {"invented": "Invented demo job"}}) == {"invented"}


def test_what_a_block_is_made_of_is_not_named() -> None:
    job = read_job(text_of("ferrow-house"))
    shown = type(printing("ferrow-house"))(design(job), job.units)
    head, *rest = content(review_paper(shown))["blocks"]
    assert head["block"] == "Paragraph"
    assert all("block" not in line for each in rest for line in each.get("findings", ()))

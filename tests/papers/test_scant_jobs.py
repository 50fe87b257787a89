"""Jobs that say little, and words of findings as print sets them."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest
from pypdf import PdfReader

from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset
from heatledger.ledger.sources import JUDGMENT, cite
from heatledger.papers.compile import PaperError
from heatledger.papers.from_design import cautions, heat_loss_paper
from heatledger.papers.front import UNNAMED
from heatledger.papers.heat_loss import heat_loss_pdf
from heatledger.papers.heat_loss_data import FindingLine
from heatledger.papers.tables import begins_with, not_checked_lines
from heatledger.papers.write import write_papers
from tests.papers.demo_papers import ONE_ROOM, designed, house, paper, text_of

LEAST = """
format: 1
units: US
levels: {ground: {}}
rooms:
  main: {level: ground}
  loft: {level: ground, size: 8' x 10'}
"""


def pages(content: bytes) -> list[str]:
    return [each.extract_text() for each in PdfReader(io.BytesIO(content)).pages]


def test_a_job_without_a_name_or_anything_else_is_printed(tmp_path: Path) -> None:
    written = write_papers(designed(LEAST), tmp_path)
    made = ["owners-report", "inspector", "heat-loss", "review", "workings"]
    assert [each.name for each in written] == [f"house-{name}.pdf" for name in made]
    first = pages(written[made.index("heat-loss")].read_bytes())[0]
    assert UNNAMED in first
    assert "The thicker an arrow" not in first
    head = heat_loss_paper(designed(LEAST), US).head
    assert (head.address, head.date, head.preparer) == ("", "", "")


def test_a_job_without_rooms_is_told_before_anything_is_written(tmp_path: Path) -> None:
    made = designed("format: 1\nunits: US\nname: Bare ground\nlevels: {ground: {}}\n")
    with pytest.raises(PaperError, match="no rooms yet"):
        write_papers(made, tmp_path / "new")
    assert not (tmp_path / "new").exists()


def test_nothing_is_claimed_of_a_margin() -> None:
    said = " ".join(paper("ferrow-house").answer.sentences)
    assert "Nothing is added on top, since sun, people and lights are left out." in said
    assert "margin" not in said


@pytest.mark.parametrize(("preset", "word"), [(US, "story"), (CANADIAN, "story"), (METRIC, "storey")])
def test_a_floor_is_called_as_the_reader_calls_it(preset: Preset, word: str) -> None:
    assert cautions(preset)[1].endswith(f"on every {word}.")
    titles = [each.title for each in heat_loss_paper(house("ferrow-house"), preset).workings]
    assert ("Stories" in titles) is (word == "story")
    assert ("Storeys" in titles) is (word == "storey")


def findings_of(*said: tuple[str, str]) -> tuple[FindingLine, ...]:
    made = designed(ONE_ROOM)
    vars(made)["findings"] = [
        Finding("x", where, what, "Set `air` at the top.", (Mend("Use `air`"),), cite("", "x", JUDGMENT),
                Weight.NOTE)
        for where, what in said
    ]  # fmt: skip
    return heat_loss_paper(made, US).findings


def test_a_sentence_that_names_its_room_has_no_lead() -> None:
    named, led = findings_of(("rooms/den", "Den is cold."), ("rooms/den", "A wall is missing."))
    assert named.where == ""
    assert led.where == "Den"
    assert begins_with("The upper floor has no wall.", ["Upper floor"])
    assert begins_with("Brick: its inner surface is cold.", ["Brick"])
    assert not begins_with("Density is low.", ["Den"])


def test_a_figure_behind_a_finding_is_named_without_its_room() -> None:
    made = designed(ONE_ROOM)
    figure = made.losses.rooms["den"].surfaces["wall"].loss
    vars(made)["findings"] = [
        Finding("x", "rooms/den", "It loses much.", figure, (), cite("", "x", JUDGMENT), Weight.NOTE)
    ]
    assert heat_loss_paper(made, US).findings[0].why == "Wall transmission loss: 1,248 Btu/h."


def test_marks_of_the_screen_are_not_printed() -> None:
    (line,) = findings_of(("", "Inner = indoor - `U` × 0.68."))
    assert line.text == "Inner = indoor − U × 0.68."
    assert line.why == "Set air at the top."
    assert line.mends == ("Use air",)


@pytest.mark.parametrize(("count", "said"), [(1, "1 note"), (5, "5 notes")])
def test_notes_are_counted_in_plain_words(count: int, said: str) -> None:
    made = designed(ONE_ROOM)
    place = cite("", "x", JUDGMENT)
    vars(made)["findings"] = [
        Finding("x", "", f"Number {number}.", "Why.", (), place, Weight.NOTE) for number in range(count)
    ] + [Finding("y", "", "Choose.", "Why.", (), place, Weight.DECIDE)]
    first = " ".join(pages(heat_loss_pdf(heat_loss_paper(made, US)))[0].split())
    assert f"{said} see Open" in first.replace("•", "")


def test_few_things_not_checked_say_why_and_many_are_named() -> None:
    made = designed(ONE_ROOM)
    vars(made)["not_checked"] = [NotChecked("fan-test", "air", "a fan test of room x.")] * 2
    assert not_checked_lines(made.not_checked) == ("fan test: for want of a fan test of room x",)
    vars(made)["not_checked"] = [NotChecked(f"check-{number}", "", "a b") for number in range(9)]
    (line,) = not_checked_lines(made.not_checked)
    assert line.startswith("check 0, check 1, ")
    assert line.endswith("for want of entries that are not given")


def test_the_reader_is_told_of_findings_in_units_of_his_own(tmp_path: Path) -> None:
    made = designed(text_of("ferrow-house"))
    assert made.told_in(made.job.units) is made
    abroad = made.told_in(METRIC)
    said = " ".join(
        f"{each.what} {each.why if isinstance(each.why, str) else ''}" for each in abroad.findings
    )
    assert abroad.losses is made.losses
    assert " m high" in said
    assert "′" not in said
    note = heat_loss_paper(abroad, METRIC).parts_note
    assert "walls 2.743 m" in note
    assert "W/(m²·K)" in note


def test_thousands_of_a_metric_paper_are_never_parted_by_a_comma() -> None:
    made = designed(text_of("ferrow-house")).told_in(METRIC)
    text = " ".join(pages(heat_loss_pdf(heat_loss_paper(made, METRIC), "a4")))
    parted = set(re.findall(r"\d{1,3},\d{3}", text))
    assert {each for each in parted if each not in text_of("ferrow-house")} == set()
    assert "10\u202f604" in text

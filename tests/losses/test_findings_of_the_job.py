"""What the review says of the job itself: sections nobody reads, where the tape was held, ranges left."""

from __future__ import annotations

from heatledger.job.load import read_job
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Weight
from heatledger.ledger.formulas import Formula
from heatledger.steps.design import design
from tests.job.samples import example
from tests.losses.houses import TEXTS, house


def found_in(text: str, *changes: dict[str, object]) -> dict[str, Finding]:
    job = read_job(text)
    return {each.id: each for each in design(job.with_changes(changes) if changes else job).findings}


def test_sections_that_nobody_reads_are_named_once() -> None:
    more = "hot_water: {tank: 40 gal}\noutlines: {ground: one}\nglycol: {}\ncodes: {adopted: the code}\n"
    said = found_in(TEXTS["ranch"] + more)["section-not-read-yet"]
    assert said.weight is Weight.NOTE
    assert said.what == "Kept as they are and not read yet: hot_water and outlines."
    alone = found_in(TEXTS["ranch"] + "glycol: {share: 30 %}\n")["section-not-read-yet"]
    assert alone.what == "Kept as it is and not read yet: glycol."


def test_a_job_measured_outside_is_told_what_that_means() -> None:
    outside = {"set": "measured", "to": "outside"}
    said = found_in(TEXTS["ranch"], outside)["measured-outside"]
    assert said.weight is Weight.NOTE
    assert "4 rooms" in said.what
    # Floor areas that are typed may be those of the inside.
    areas = [{"set": f"rooms/{id}/floor_area", "to": "200 ft2"} for id in house("ranch").rooms]
    assert "measured-outside" not in found_in(TEXTS["ranch"], outside, *areas)


def test_where_the_tape_was_held_changes_no_number() -> None:
    job = read_job(example("ferrow-house"))
    outside = job.with_changes([{"set": "measured", "to": "outside"}])
    assert float(design(outside)["house/loss"]) == float(design(job)["house/loss"])


def test_a_depth_beyond_the_formula_is_named_with_its_range() -> None:
    path = "unheated/basement/surfaces/wall-below-grade/bottom"
    deep = read_job(example("ferrow-house")).with_changes([{"set": path, "to": "12 ft"}])
    said = [each for each in design(deep).findings if each.id == "outside-the-range-of-a-formula"]
    assert [each.where for each in said] == [path]
    assert "U-value of a wall below grade" in said[0].what
    assert "a bottom up to 9′ 10⅛″" in said[0].what
    assert "12′ 0″ (Depth of bottom, Basement, Wall below grade)" in said[0].what
    assert isinstance(said[0].why, Figure)
    assert isinstance(said[0].why.origin, Formula)
    floor = "unheated/basement/surfaces/floor/depth"
    both = design(deep.with_changes([{"set": floor, "to": "12 ft"}])).findings
    assert {each.where for each in both if each.id == "outside-the-range-of-a-formula"} == {path, floor}
    assert "outside-the-range-of-a-formula" not in found_in(example("ferrow-house"))

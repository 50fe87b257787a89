"""A job file from disk: opened, edited, written back with its comments; never overwritten unseen."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.doing import figure, number, settled, type_in
from tests.browser.harness import ROOT, Pages

COMMENT = "# measured again on the porch side, see the sketch"
WALL = "rooms/living/surfaces/south-wall/length"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """The demo job as a file of the user's own, with a comment of the user's own."""
    text = (ROOT / "src/heatledger/examples/ferrow-house.yaml").read_text(encoding="utf-8")
    place = tmp_path / "ferrow.yaml"
    place.write_text(text.replace("name: Ferrow house", f"{COMMENT}\nname: Porch house", 1), encoding="utf-8")
    return place


def open_from_disk(page: Page, file: Path) -> None:
    """Open a file by its folder and name."""
    page.goto("/open-file")
    page.get_by_label("Folder and name").fill(str(file))
    page.get_by_role("button", name="Open").last.click()
    expect(page.get_by_role("link", name="Porch house").first).to_be_visible()


def edit(page: Page, typed: str) -> None:
    """Change the length of a wall on sheet House, and go back to the list."""
    expect(page.locator("#house-table")).to_be_visible()
    type_in(page, WALL, typed, "#left")
    settled(page)
    page.get_by_role("link", name="All jobs").click()


def test_a_file_is_opened_edited_and_written_back_with_its_comment(page: Page, file: Path) -> None:
    before = file.read_text(encoding="utf-8").splitlines()
    open_from_disk(page, file)
    edit(page, "15' 0\"")
    assert file.read_text(encoding="utf-8").splitlines() == before, "written before it was asked for"
    page.get_by_role("button", name="Save back to its file").click()
    expect(page.get_by_role("status").first).to_contain_text("Written to")
    after = file.read_text(encoding="utf-8").splitlines()
    assert COMMENT in after
    changed = [(one, other) for one, other in zip(before, after, strict=True) if one != other]
    assert len(changed) == 1 and "15' 0\"" in changed[0][1]


def test_a_file_changed_behind_the_app_is_not_overwritten(page: Page, file: Path) -> None:
    open_from_disk(page, file)
    edit(page, "15' 0\"")
    theirs = file.read_text(encoding="utf-8").replace("name: Porch house", "name: Porch house, theirs")
    file.write_text(theirs, encoding="utf-8")
    page.reload()
    expect(page.locator(".disk")).to_contain_text("The file was changed on disk")
    expect(page.get_by_role("button", name="Save back to its file")).to_have_count(0)
    page.get_by_role("button", name="Take it in").click()
    expect(page.locator("#left")).to_contain_text("Porch house, theirs")
    assert file.read_text(encoding="utf-8") == theirs


def test_a_file_sent_from_this_device(page: Page, file: Path) -> None:
    page.goto("/open-file")
    page.get_by_label("Job file").set_input_files(file)
    page.get_by_role("button", name="Open").first.click()
    expect(page.get_by_role("link", name="Porch house").first).to_be_visible()
    assert number(figure(page, "house/loss", "#strip").inner_text()) == 36_200


def test_a_file_with_faults_is_opened_to_be_mended(page: Page, pages: Pages, file: Path) -> None:
    pages.allow(page, "422")
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("length: 14' 6\"", "length: long", 1), encoding="utf-8")
    page.goto("/open-file")
    page.get_by_label("Job file").set_input_files(file)
    page.get_by_role("button", name="Open").first.click()
    expect(page.locator(".faults li").first).to_contain_text("Line")
    area = page.locator("textarea")
    assert COMMENT in area.input_value()
    area.fill(area.input_value().replace("length: long", "length: 14' 6\""))
    page.get_by_role("button", name="Try again").click()
    expect(page.get_by_role("link", name="Porch house").first).to_be_visible()


def test_the_job_file_is_taken_along_as_it_was_typed(page: Page, file: Path) -> None:
    open_from_disk(page, file)
    page.locator("#index a", has_text="Papers").click()
    with page.expect_download() as coming:
        page.get_by_role("link", name="The job file, as typed").click()
    assert Path(coming.value.path()).read_text(encoding="utf-8") == file.read_text(encoding="utf-8")

"""The guide cannot fall behind: made pages are current, links lead somewhere, examples and commands run."""

from __future__ import annotations

import doctest
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house_rules.tree import ROOT, ending, listing, named, text

sys.path.insert(0, str(ROOT / "docs"))
import make_docs

FIRST_HOUSE = ROOT / "docs" / "learn" / "first-house.md"
LIBRARY = ROOT / "docs" / "look-up" / "library.md"
LINK = re.compile(r"\[[^\]]+\]\(([^)#\s]+)(#[^)\s]+)?\)")
BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
OPTIONS = doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE | doctest.FAIL_FAST


def blocks(path: Path, kind: str) -> list[str]:
    return [each.group(2) for each in BLOCK.finditer(text(path)) if each.group(1) == kind]


def words_in_code(page: str) -> str:
    """What stands in code on a page: fenced blocks, indented lines, spans."""
    indented = [each for each in page.splitlines() if each.startswith("    ")]
    spans = re.findall(r"`([^`\n]+)`", page)
    return "\n".join([*(each.group(2) for each in BLOCK.finditer(page)), *indented, *spans])


@pytest.fixture
def beside_two_rooms(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with the job of the first page, as its reader would have it."""
    (job,) = blocks(FIRST_HOUSE, "yaml")
    (tmp_path / "two-rooms.yaml").write_text(job, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_pages_made_from_the_code_are_current() -> None:
    old = [
        f"docs/{name}"
        for name, page in make_docs.pages().items()
        if not (ROOT / "docs" / name).exists() or text(ROOT / "docs" / name) != page
    ]
    old += [named(each) for each in make_docs.stale()]
    assert not old, listing(old, "Run: make docs")


def test_every_link_leads_to_a_file() -> None:
    faults = [
        f"{named(page)}: {target}"
        for page in ending(".md")
        for target, _ in LINK.findall(text(page))
        if "://" not in target and not (page.parent / target).exists()
    ]
    assert not faults, listing(faults, "Mend the link, or write the page.")


def test_every_page_of_the_guide_can_be_reached() -> None:
    start = ROOT / "docs" / "index.md"
    reached, waiting = {start}, [start]
    while waiting:
        page = waiting.pop()
        for target, _ in LINK.findall(text(page)):
            there = (page.parent / target).resolve()
            if there.suffix == ".md" and there.exists() and there not in reached:
                reached.add(there)
                waiting.append(there)
    lost = [named(each) for each in ending(".md", under="docs/") if each not in reached]
    assert not lost, listing(lost, "Link it from the index of its folder.")


def test_decisions_are_numbered_and_whole() -> None:
    decisions = sorted((ROOT / "docs" / "decisions").glob("0*.md"))
    assert [int(each.name[:4]) for each in decisions] == list(range(1, len(decisions) + 1))
    for each in decisions:
        page = text(each)
        for part in ("**Context**", "**Decision**", "**Alternatives**", "**Consequences**"):
            assert part in page, f"{each.name} has no {part}"
        assert re.search(r"^\d{4}-\d\d-\d\d · (accepted|replaced by \d+)", page, re.MULTILINE), each.name
        assert len(page.split()) < 420, f"{each.name} is longer than half a page"


def heatledger(*arguments: str) -> subprocess.CompletedProcess[str]:
    """The command as its user would run it, in the folder the test stands in."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONUTF8": "1"}
    command = [sys.executable, "-m", "heatledger", *arguments]
    return subprocess.run(
        command, env=environment, encoding="utf-8", stdout=subprocess.PIPE, stderr=subprocess.STDOUT
    )


def test_pages_name_only_commands_that_exist() -> None:
    listed = heatledger("--help").stdout.partition("Commands:")[2]
    commands = set(re.findall(r"^  ([a-z-]+)  ", listed, re.MULTILINE))
    assert commands, "no command is listed"
    targets = set(re.findall(r"^([a-z]+):", text(ROOT / "Makefile"), re.MULTILINE))
    faults = []
    for page in ending(".md"):
        code = words_in_code(text(page))
        named_here = re.findall(r"(?:^|\$ |\bor )heatledger ([a-z][a-z-]*)", code, re.MULTILINE)
        faults += [f"{named(page)}: heatledger {each}" for each in named_here if each not in commands]
        made = re.findall(r"(?:^|\$ )\s*make ([a-z]+)", code, re.MULTILINE)
        faults += [f"{named(page)}: make {each}" for each in made if each not in targets]
    assert not faults, listing(faults, "There is no such command.")


def commands_of(path: Path) -> list[tuple[str, list[str]]]:
    """Each command of a page's console blocks, with the lines of output shown below it."""
    found: list[tuple[str, list[str]]] = []
    for block in blocks(path, "console"):
        for line in block.splitlines():
            if line.startswith("$ "):
                found.append((line[2:], []))
            elif line.strip() and line.strip() != "..." and found:
                found[-1][1].append(" ".join(line.split()))
    return found


def test_the_first_page_runs_as_written(beside_two_rooms: Path) -> None:
    commands = commands_of(FIRST_HOUSE)
    assert len(commands) >= 5
    for command, shown in commands:
        program, *arguments = command.split()
        assert program == "heatledger"
        done = heatledger(*arguments)
        assert done.returncode == 0, f"{command}:\n{done.stdout}"
        said = {" ".join(each.split()) for each in done.stdout.splitlines()}
        missing = [each for each in shown if each not in said]
        assert not missing, f"{command} does not print {missing}; it prints:\n{done.stdout}"


def test_the_examples_of_the_library_are_true(beside_two_rooms: Path) -> None:
    examples = doctest.DocTestParser().get_doctest(text(LIBRARY), {}, LIBRARY.name, str(LIBRARY), 0)
    said: list[str] = []
    result = doctest.DocTestRunner(verbose=False, optionflags=OPTIONS).run(examples, out=said.append)
    assert not result.failed, "".join(said)
    assert result.attempted > 10

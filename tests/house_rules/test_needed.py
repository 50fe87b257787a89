"""What the tests need from a machine: found where it is, installed where it may be, named where it is not."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests import needed, script_types
from tests.house_rules.tree import ROOT, ending, listing, named, text


@pytest.fixture
def bare_machine(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A machine on which no program is found."""
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.delenv(needed.LEAVE_NOTHING_OUT, raising=False)
    bare = {name: need._replace(folders=()) for name, need in needed.NEEDS.items()}
    monkeypatch.setattr(needed, "NEEDS", bare)
    return tmp_path


def put_program(folder: Path, name: str) -> Path:
    path = folder / name
    path.write_text("#!/bin/sh\n", encoding="utf-8")
    path.chmod(0o755)
    return path


def test_a_missing_thing_leaves_the_test_out_and_says_what_to_install(bare_machine: Path) -> None:
    with pytest.raises(
        pytest.skip.Exception, match=r"left out: there is no Chromium\. .* apt-get install chromium"
    ):
        needed.tool("chromium")


def test_where_nothing_may_be_left_out_it_fails(bare_machine: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(needed.LEAVE_NOTHING_OUT, "1")
    with pytest.raises(pytest.fail.Exception, match="there is no poppler"):
        needed.tool("poppler")
    assert needed.main(["--strict"]) == 1


def test_what_is_there_is_found(bare_machine: Path) -> None:
    there = put_program(bare_machine, "chromium-browser")
    assert needed.tool("chromium") == str(there)
    assert "chromium" not in needed.missing()


def test_of_several_servers_the_newest_is_found(bare_machine: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for version in ("9", "15", "16"):
        folder = bare_machine / version / "bin"
        folder.mkdir(parents=True)
        put_program(folder, "initdb")
    pattern = f"{bare_machine.as_posix().lstrip('/')}/*/bin"
    server = needed.NEEDS["postgresql"]._replace(folders=(pattern,))
    assert Path(server.find()).parts[-3] == "16"


def test_a_machine_without_them_goes_on_and_says_so(
    bare_machine: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert needed.main([]) == 0
    said = capsys.readouterr().err
    assert "Not here: PostgreSQL server. Without it the tests of the book on PostgreSQL cannot run." in said
    assert "apt-get install chromium postgresql poppler-utils make" in said


def test_it_installs_only_as_root_on_a_debian(bare_machine: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    ran: list[list[str]] = []

    def run(command: list[str], **_: object) -> subprocess.CompletedProcess[bytes]:
        ran.append(command)
        return subprocess.CompletedProcess(command, 100, b"E: no network")

    monkeypatch.setattr(subprocess, "run", run)
    monkeypatch.setattr(os, "geteuid", lambda: 0, raising=False)
    assert needed.main(["--install"]) == 0
    assert not ran, "there is no apt-get here"
    put_program(bare_machine, "apt-get")
    assert needed.main([]) == 0
    assert not ran, "nobody asked for it"
    monkeypatch.setattr(os, "geteuid", lambda: 1000, raising=False)
    assert needed.main(["--install"]) == 0
    assert not ran, "this user may not"
    monkeypatch.setattr(os, "geteuid", lambda: 0, raising=False)
    assert needed.main(["--install"]) == 0, "an installation that fails is no fault of the run"
    assert [each[1] for each in ran] == ["update", *["install"] * 4]
    assert [each[-1] for each in ran[1:]] == ["chromium", "postgresql", "poppler-utils", "make"]


def test_a_test_that_is_left_out_is_named_at_the_end(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "tests/browser/test_fonts.py"]
    bare = {**os.environ, "PATH": str(tmp_path), needed.LEAVE_NOTHING_OUT: ""}
    done = subprocess.run(command, cwd=ROOT, env=bare, capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stdout
    assert "2 tests left out" in done.stdout
    assert "  tests/browser/test_fonts.py::test_every_unit_and_sign_is_drawn_with_our_letters" in done.stdout
    strict = bare | {needed.LEAVE_NOTHING_OUT: "1"}
    done = subprocess.run(command, cwd=ROOT, env=strict, capture_output=True, encoding="utf-8")
    assert done.returncode == 1
    assert "there is no Chromium" in done.stdout


def test_every_need_that_a_test_names_is_known() -> None:
    asked = {
        (named(path), name)
        for path in ending(".py", under="tests/")
        for name in re.findall(r'(?:mark\.needs|[^.]\btool)\("(\w+)"\)', text(path))
    }
    assert asked
    faults = [f"{place}: {name}" for place, name in sorted(asked) if name not in needed.NEEDS]
    assert not faults, listing(faults, "Say in tests/needed.py what it is and how to get it.")


def test_nothing_is_left_out_before_a_change_is_taken() -> None:
    gate = text(ROOT / ".ci" / "run")
    assert f"export {needed.LEAVE_NOTHING_OUT}=1" in gate
    assert "tests/needed.py --install --strict" in gate


def test_scripts_are_checked_where_it_can_be_done(
    bare_machine: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (bare_machine / "a.js").write_text("export const a = 1;\n", encoding="utf-8")
    monkeypatch.setattr(script_types, "STATIC", bare_machine)
    monkeypatch.setattr(script_types, "NEEDS", needed.NEEDS)
    assert script_types.main(["--lenient"]) == 0
    assert "were not checked: left out: there is no Node" in capsys.readouterr().err
    assert script_types.main([]) == 1
    monkeypatch.setenv(needed.LEAVE_NOTHING_OUT, "1")
    assert script_types.main(["--lenient"]) == 1


@pytest.mark.needs("npm")
def test_a_wrong_type_in_a_script_is_found(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    if why := script_types.wanting():
        needed.leave_out(why)
    monkeypatch.setattr(script_types, "scripts", lambda: [tmp_path / "a.js"])
    monkeypatch.setattr(script_types, "ROOT", tmp_path)
    script = tmp_path / "a.js"
    doubled = "/** @param {number} a */\nexport const twice = (a) => a * 2;\n"
    script.write_text(doubled, encoding="utf-8")
    assert script_types.main([]) == 0
    script.write_text(f'{doubled}twice("3");\n', encoding="utf-8")
    assert script_types.main([]) != 0


def test_scripts_of_others_are_not_checked(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for place in ("a.js", "parts/b.js", "vendor/c.js"):
        (tmp_path / place).parent.mkdir(exist_ok=True)
        (tmp_path / place).write_text("", encoding="utf-8")
    monkeypatch.setattr(script_types, "STATIC", tmp_path)
    assert [each.name for each in script_types.scripts()] == ["a.js", "b.js"]

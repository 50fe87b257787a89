"""What users install is a wheel, not a tree: built, installed into an empty environment, and run."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import urllib.request
import venv
import zipfile
from pathlib import Path

import pytest

from tests.browser.harness import start_app

ROOT = Path(__file__).resolve().parents[1]
# What a program needs to find itself and the network; nothing that points at this tree.
KEPT = re.compile(r"PATH|SYSTEMROOT|TEMP|TMP|COMSPEC|PATHEXT|(PIP|SSL|HTTPS?|NO)_\w+", re.IGNORECASE)
SCRIPTS = "Scripts" if os.name == "nt" else "bin"

pytestmark = pytest.mark.slow


def run(command: list[str | Path], folder: Path, home: Path) -> str:
    """What the command says, in an environment that knows nothing of this tree; it must succeed."""
    environment = {key: value for key, value in os.environ.items() if KEPT.fullmatch(key)}
    environment |= {"HOME": str(home), "USERPROFILE": str(home)}
    done = subprocess.run(
        [str(each) for each in command], cwd=folder, env=environment,
        capture_output=True, encoding="utf-8", timeout=600,
    )  # fmt: skip
    assert done.returncode == 0, f"{command} failed:\n{done.stdout}\n{done.stderr}"
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", folder, ROOT]
    run(build, folder, folder)
    (made,) = folder.glob("*.whl")
    return made


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The command of an environment that holds the wheel and its runtime packages only."""
    place = tmp_path_factory.mktemp("clean")
    venv.create(place / "env", with_pip=True)
    python = place / "env" / SCRIPTS / ("python.exe" if os.name == "nt" else "python")
    install = [python, "-m", "pip", "install", "--quiet", "-c", ROOT / "constraints.txt", wheel]
    run(install, place, place)
    return place / "env" / SCRIPTS / ("heatledger.exe" if os.name == "nt" else "heatledger")


def test_every_data_file_travels_in_the_wheel(wheel: Path) -> None:
    package = ROOT / "src" / "heatledger"
    here = {
        each.relative_to(package.parent).as_posix()
        for each in package.rglob("*")
        if each.is_file() and "__pycache__" not in each.parts
    }
    with zipfile.ZipFile(wheel) as archive:
        there = {each for each in archive.namelist() if each.startswith("heatledger/")}
    assert here == there
    assert any(each.endswith(".yaml") for each in there)


def test_the_demo_runs_from_the_wheel(installed: Path, tmp_path: Path) -> None:
    said = run([installed, "demo", "--to", tmp_path / "papers"], tmp_path, tmp_path)
    rows = [each for each in said.splitlines() if re.match(r"\W*House\b", each)]
    assert rows, f"no row for the house in:\n{said}"
    numbers = [int(each.replace(",", "")) for each in re.findall(r"\d{1,3}(?:,\d{3})+", rows[0])]
    assert max(numbers, default=0) > 10_000, f"no total in {rows[0]!r}"
    papers = list((tmp_path / "papers").glob("*.pdf"))
    assert papers, "no paper was written"
    for each in papers:
        content = each.read_bytes()
        assert content.startswith(b"%PDF-")
        assert b"%%EOF" in content[-1024:]


def test_the_demo_writes_beside_the_reader_when_no_folder_is_named(installed: Path, tmp_path: Path) -> None:
    run([installed, "demo"], tmp_path, tmp_path)
    assert list((tmp_path / "heatledger-demo").glob("*.pdf"))


def test_help_and_version_run_from_the_wheel(installed: Path, tmp_path: Path) -> None:
    assert "design" in run([installed, "--help"], tmp_path, tmp_path)
    assert re.search(r"\d+\.\d+\.\d+", run([installed, "--version"], tmp_path, tmp_path))


def test_the_app_answers_from_the_wheel_with_all_its_files(installed: Path, tmp_path: Path) -> None:
    app = start_app(tmp_path, program=(str(installed),))
    try:
        with urllib.request.urlopen(app.url, timeout=60) as answer:
            page = answer.read().decode()
        files = re.findall(r'(?:href|src)="(/static/[^"]+)"', page)
        assert len(files) >= 3, page
        for each in files:
            with urllib.request.urlopen(app.url + each, timeout=60) as answer:
                assert answer.status == 200
    finally:
        fault = app.stop()
    assert not fault

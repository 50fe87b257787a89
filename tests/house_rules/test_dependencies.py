"""What is imported is declared, what is declared is imported, and every version is pinned without a host."""

from __future__ import annotations

import ast
import re
import sys
import tomllib
from pathlib import Path

from tests.house_rules.tree import ROOT, ending, listing, named, text, tree

PROJECT = tomllib.loads(text(ROOT / "pyproject.toml"))["project"]
# Where the name to import is not the name to install.
IMPORT_NAMES = {"ruamel.yaml": "ruamel"}
# Packages and folders of this project.
OURS = {"heatledger", "tests", "benchmarks"}
# Run as commands, or by another tool, and imported by nobody.
TOOLS = {"build", "hatchling", "import-linter", "mypy", "pytest-xdist", "ruff"}
# FastAPI imports the first when a form is posted, its test client the second.
BEHIND_OTHERS = {"python-multipart", "httpx2"}
# docs/make_fonts.py runs in an environment of its own, which "make fonts" sets up.
ELSEWHERE = {"fonttools"}


def declared(rows: list[str]) -> set[str]:
    names = {re.split(r"[<>=!~;\[ ]", each, maxsplit=1)[0].lower() for each in rows}
    return {IMPORT_NAMES.get(each, each) for each in names}


def third_party(paths: list[Path]) -> dict[str, str]:
    """Modules from outside that these files import, with one place for each."""
    found: dict[str, str] = {}
    for path in paths:
        for node in ast.walk(tree(path)):
            names = [each.name for each in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom) and node.module and not node.level:
                names = [node.module]
            for each in names:
                top = each.split(".")[0]
                if top not in sys.stdlib_module_names and top not in OURS:
                    found.setdefault(top.lower(), f"{named(path)}:{node.lineno}")
    return found


def test_the_package_imports_exactly_what_it_declares() -> None:
    used = third_party(ending(".py", under="src/"))
    runtime = declared(PROJECT["dependencies"])
    optional = declared(PROJECT["optional-dependencies"]["postgres"])
    faults = [
        f"{used[each]} imports {each}, which is not declared" for each in set(used) - runtime - optional
    ]
    faults += [f"{each} is declared and never imported" for each in runtime - set(used) - BEHIND_OTHERS]
    assert not faults, listing(
        sorted(faults), "Mend [project] dependencies in pyproject.toml, then: make lock"
    )


def test_the_tests_import_only_what_is_declared() -> None:
    paths = [
        *ending(".py", under="tests/"),
        *ending(".py", under="benchmarks/"),
        *ending(".py", under="docs/"),
    ]
    beside = {each.stem for each in paths}
    used = {each: place for each, place in third_party(paths).items() if each not in beside}
    dev = declared(PROJECT["optional-dependencies"]["dev"])
    known = declared(PROJECT["dependencies"]) | declared(PROJECT["optional-dependencies"]["postgres"]) | dev
    faults = [f"{used[each]} imports {each}, which is not declared" for each in set(used) - known - ELSEWHERE]
    faults += [
        f"{each} is declared for the tests and never used" for each in dev - TOOLS - BEHIND_OTHERS - set(used)
    ]
    assert not faults, listing(sorted(faults), "Mend the dev extra in pyproject.toml, then: make lock")


def test_every_declared_package_is_pinned() -> None:
    pinned = {each.split("==")[0].replace("-", "_") for each in text(ROOT / "constraints.txt").splitlines()}
    optional = PROJECT["optional-dependencies"]
    rows = [*PROJECT["dependencies"], *optional["dev"], *optional["postgres"]]
    names = {re.split(r"[<>=!~;\[ ]", each, maxsplit=1)[0].lower() for each in rows}
    missing = sorted(each for each in names if each.replace("-", "_").replace(".", "_") not in pinned)
    assert not missing, listing(missing, "Resolve the versions anew: make lock")


def test_the_pins_are_versions_and_nothing_else() -> None:
    row = re.compile(r"[a-z0-9-]+==[\w.]+( ; [\w\s.'<>=!()]+)?")
    faults = [each for each in text(ROOT / "constraints.txt").splitlines() if not row.fullmatch(each)]
    assert not faults, listing(faults, "No host, no option, no path: make lock writes it right.")

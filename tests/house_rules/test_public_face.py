"""The public names: sorted, documented, loaded late, and hidden by no module."""

from __future__ import annotations

import ast
import os
import re
import subprocess
import sys
from importlib.metadata import version

import pytest

import heatledger
from tests.house_rules.tree import LAYERS, PACKAGE, ROOT, ending, listing, named, text, tree


def test_the_list_of_names_is_sorted_and_true() -> None:
    names = list(heatledger.__all__)
    assert names == sorted(names, key=lambda each: (not each.isupper(), not each[0].isupper(), each))
    assert set(names) == set(heatledger._HOMES)
    for each in names:
        assert getattr(heatledger, each) is not None


def test_no_package_or_module_takes_a_public_name() -> None:
    """``heatledger.design`` must be the function even after ``import heatledger.design`` somewhere."""
    modules = {each.stem for each in PACKAGE.iterdir()}
    assert not modules & set(heatledger.__all__)


def test_no_module_takes_a_name_that_its_package_offers() -> None:
    """``from package import name`` gives the function until the module is loaded, and then the module."""
    faults = []
    for path in ending(".py", under="src/heatledger/"):
        if path.name != "__init__.py":
            continue
        offered = {each.name for each in tree(path).body if isinstance(each, ast.FunctionDef | ast.ClassDef)}
        beside = {each.stem for each in path.parent.iterdir()}
        faults += [f"{named(path)}: {each}" for each in sorted(offered & beside)]
    assert not faults, listing(faults, "Rename the module.")


def test_every_public_name_is_documented() -> None:
    page = text(ROOT / "docs" / "look-up" / "library.md")
    faults = []
    for each in heatledger.__all__:
        value = getattr(heatledger, each)
        if callable(value) and not (value.__doc__ or "").strip():
            faults.append(f"{each} has no docstring")
        if not re.search(rf"\b{each}\b", page):
            faults.append(f"{each} does not stand in docs/look-up/library.md")
    assert not faults, listing(faults, "A reader must be able to use it without reading the code.")


def test_importing_the_package_loads_nothing_heavy() -> None:
    heavy = "numpy ruamel rich typst click heatledger.ledger heatledger.job heatledger.steps"
    code = f"import sys, heatledger; print([m for m in {heavy.split()!r} if m in sys.modules])"
    environment = {**os.environ, "PYTHONPATH": str(PACKAGE.parent)}
    said = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, env=environment, check=True
    )
    assert said.stdout.strip() == "[]"


def test_an_unknown_name_is_an_attribute_error_that_lists_the_known_ones() -> None:
    with pytest.raises(AttributeError, match=r"'desing'.*design"):
        heatledger.__getattr__("desing")


def test_every_layer_says_what_may_live_there_and_what_may_not() -> None:
    faults = []
    for layer in LAYERS:
        words = PACKAGE / layer / "__init__.py"
        if not words.exists() or not re.search("may not", text(words), re.IGNORECASE):
            faults.append(layer)
    assert not faults, listing(faults, "Its __init__ says in a few lines what lives there and what may not.")


def test_the_version_is_written_once() -> None:
    assert version("heatledger") == heatledger.__version__
    assert f"## {heatledger.__version__}" in text(ROOT / "CHANGELOG.md")
    assert not re.search(r'^version *= *"', text(ROOT / "pyproject.toml"), re.MULTILINE)

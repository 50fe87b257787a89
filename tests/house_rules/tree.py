"""The files of the project, and what the house rules read out of them."""

from __future__ import annotations

import ast
import subprocess
from collections.abc import Iterator
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "src" / "heatledger"
LAYERS = ("ledger", "physics", "catalog", "job", "steps", "studies", "drawings", "papers")
IGNORED = {".git", ".venv", "build", "dist", "__pycache__", "heatledger-demo", "node_modules"}


@cache
def files() -> tuple[Path, ...]:
    """Every file that is or will be under version control; in a bare copy, every file that is not made."""
    try:
        listed = subprocess.run(
            ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
            cwd=ROOT, capture_output=True, check=True,
        ).stdout.decode()  # fmt: skip
        found = [ROOT / each for each in listed.split("\0") if each]
    except (OSError, subprocess.CalledProcessError):
        found = [each for each in ROOT.rglob("*") if not IGNORED & set(each.relative_to(ROOT).parts)]
    return tuple(sorted(each for each in found if each.is_file()))


def named(path: Path) -> str:
    """The path as it is shown in a failure."""
    return path.relative_to(ROOT).as_posix()


def ours(path: Path) -> bool:
    """False for a file of others that is kept as it came, in a folder called vendor."""
    return "vendor" not in path.relative_to(ROOT).parts


def ending(*suffixes: str, under: str = "") -> list[Path]:
    """Our own files with one of these endings, below a folder of the project."""
    return [
        each for each in files() if each.suffix in suffixes and named(each).startswith(under) and ours(each)
    ]


@cache
def text(path: Path) -> str:
    """The text of a file; what is no UTF-8 in a sample that is broken on purpose is passed over."""
    return path.read_text(encoding="utf-8", errors="replace")


@cache
def tree(path: Path) -> ast.Module:
    """The parsed module at a path."""
    return ast.parse(text(path), filename=str(path))


def functions(path: Path) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Every function of a module, methods and inner ones too."""
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node


def calls(path: Path, name: str) -> Iterator[ast.Call]:
    """Every call of a function by its plain name."""
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == name:
            yield node


def is_formula(function: ast.FunctionDef | ast.AsyncFunctionDef) -> bool:
    """True for a function decorated with @formula(...)."""
    return any(
        isinstance(each, ast.Call) and isinstance(each.func, ast.Name) and each.func.id == "formula"
        for each in function.decorator_list
    )


def names_used(path: Path, modules: set[str]) -> set[str]:
    """Names a module reads: plain, imported under another name, or behind one of the modules named."""
    found = set()
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load):
            found.add(node.id)
        elif isinstance(node, ast.Attribute) and getattr(node.value, "id", "") in modules:
            found.add(node.attr)
        elif isinstance(node, ast.ImportFrom):
            found |= {each.name for each in node.names if each.asname}
    return found


def listing(faults: list[str], rule: str) -> str:
    """What a failing rule prints: each fault on a line, then the rule and how to keep it."""
    return "\n  ".join(["", *faults]) + f"\n{rule}"

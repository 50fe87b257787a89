"""Nothing half done, nothing of one machine, nothing that runs on one system only."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from tests.house_rules.tree import ending, files, listing, named, ours, text, tree

TEXT = (
    *(".py", ".md", ".yaml", ".yml", ".toml", ".typ", ".txt", ".svg", ".json", ""),
    *(".css", ".js", ".ts", ".html"),
)


def any_of(*words: str) -> str:
    """Alternatives of a pattern; the bar in each word keeps it from standing here itself."""
    return "|".join(re.escape(each.replace("|", "")) for each in words)


UNFINISHED = any_of("TO|DO", "FIX|ME", "XX|X", "HA|CK", "NotImpl|ementedError", "p|db")
LEFTOVER = re.compile(rf"\b(?:{UNFINISHED})\b|\b{any_of('break|point(')}")
FOLDERS = any_of("ro|ot", "t|mp", "wo|rk", "fa|rm", "o|pt")
MACHINE = re.compile(rf"(?<![\w.~>$}}-])/(?:{FOLDERS}|home/\w+|Users/\w+)\b(?!:)|[A-Z]:\\Users")
HOSTS = any_of("py|pi.org", "py|pi.io", "python|hosted.org", "npm|js.org", "proxy.go|lang.org")
HOST = re.compile(rf"{HOSTS}|{any_of('--index-|url=', '--extra-index-|url=', '--find-|links=')}")
TALK = any_of("reference| pack", "the| brief", "the trans|cript")
TALK_OF_MAKING = re.compile(rf"\b(?:issue #?\d|{TALK})\b", re.IGNORECASE)
POSIX_ONLY = {"crypt", "fcntl", "grp", "posix", "pty", "pwd", "resource", "syslog", "termios", "tty"}
POSIX_CALLS = {"fork", "getuid", "geteuid", "mkfifo", "killpg", "setsid", "chown", "SIGALRM", "SIGKILL"}
STANDARD_NAMES = {"math", "json", "io", "types", "typing", "string", "random", "statistics", "select"}


def readable() -> list[Path]:
    """Text that is ours. The licence names what it likes."""
    skipped = ("LICENSE",)
    return [each for each in files() if each.suffix in TEXT and each.name not in skipped and ours(each)]


def lines_with(pattern: re.Pattern[str], paths: list[Path]) -> list[str]:
    return [
        f"{named(path)}:{number} {line.strip()[:90]}"
        for path in paths
        for number, line in enumerate(text(path).splitlines(), 1)
        if pattern.search(line)
    ]


@pytest.mark.parametrize(
    ("pattern", "rule"),
    [
        (LEFTOVER, "Finish it, or leave it out and say so in the changelog."),
        (MACHINE, "A path of one machine: use a path relative to the project, or a temporary folder."),
        (HOST, "No registry is named here: constraints.txt holds versions only."),
        (TALK_OF_MAKING, "Say what the code does; how it came to be made is not for its readers."),
    ],
    ids=["leftovers", "machine paths", "registry hosts", "talk of the making"],
)
def test_nothing_is_left_lying_about(pattern: re.Pattern[str], rule: str) -> None:
    found = lines_with(pattern, readable())
    assert not found, listing(found, rule)


@pytest.mark.parametrize(
    ("pattern", "bad"),
    [
        (LEFTOVER, "# TO|DO later"),
        (LEFTOVER, "raise NotImpl|ementedError"),
        (MACHINE, "see /ro|ot/x"),
        (MACHINE, "'/ho|me/ann/jobs'"),
        (HOST, "https://py|pi.org/simple"),
        (TALK_OF_MAKING, "as iss|ue 3 says"),
        (TALK_OF_MAKING, "see the trans|cript"),
    ],
)
def test_the_patterns_find_what_they_look_for(pattern: re.Pattern[str], bad: str) -> None:
    assert pattern.search(bad.replace("|", ""))


def test_only_the_command_line_prints() -> None:
    found = [
        f"{named(path)}:{node.lineno}"
        for path in ending(".py", under="src/")
        if "cli" not in path.parts
        for node in ast.walk(tree(path))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "print"
    ]
    assert not found, listing(found, "The library returns what it has to say; only cli.py prints it.")


def imported(path: Path) -> list[tuple[int, str]]:
    found = []
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Import):
            found += [(node.lineno, each.name.split(".")[0]) for each in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            found.append((node.lineno, node.module.split(".")[0]))
    return found


def test_the_package_runs_on_every_system() -> None:
    found = [
        f"{named(path)}:{line} imports {module}"
        for path in ending(".py", under="src/")
        for line, module in imported(path)
        if module in POSIX_ONLY
    ]
    found += [
        f"{named(path)}:{node.lineno} uses {node.attr}"
        for path in ending(".py", under="src/")
        for node in ast.walk(tree(path))
        if isinstance(node, ast.Attribute) and node.attr in POSIX_CALLS
    ]
    assert not found, listing(found, "This is missing on Windows: find another way.")


def test_text_files_are_opened_as_utf_8() -> None:
    """Elsewhere the platform's own encoding would be taken, and °F would come out wrong on Windows."""
    found = []
    for path in ending(".py", under="src/"):
        for node in ast.walk(tree(path)):
            if not isinstance(node, ast.Call):
                continue
            name = _called(node)
            if name not in ("read_text", "write_text") and (name != "open" or _is_binary(node)):
                continue
            said = [*node.args, *(each.value for each in node.keywords)]
            words = [each.value for each in said if isinstance(each, ast.Constant)]
            if not {"utf-8", "utf-8-sig"} & {str(each).lower() for each in words}:
                found.append(f"{named(path)}:{node.lineno} {name}(...)")
    assert not found, listing(found, 'Say encoding="utf-8".')


def _called(call: ast.Call) -> str:
    """The name called; empty for a method of the module's own class, and for a desk that is opened."""
    if isinstance(call.func, ast.Attribute):
        owner = getattr(call.func.value, "id", "") or getattr(call.func.value, "attr", "")
        return "" if owner in ("self", "desks") else call.func.attr
    return getattr(call.func, "id", "")


def _is_binary(call: ast.Call) -> bool:
    said = [*call.args, *(each.value for each in call.keywords)]
    words = [each.value for each in said if isinstance(each, ast.Constant) and isinstance(each.value, str)]
    return any("b" in each and set(each) <= set("rwxab+") for each in words)


def test_no_module_takes_the_name_of_a_standard_one() -> None:
    found = [named(each) for each in ending(".py") if each.stem in STANDARD_NAMES]
    assert not found, listing(
        found, "A script run from that folder would load it in place of the standard one."
    )

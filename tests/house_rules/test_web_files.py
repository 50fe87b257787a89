"""Templates, styles and scripts: nothing a strict content policy would refuse, nothing from outside."""

from __future__ import annotations

import ast
import hashlib
import re
import tomllib
from pathlib import Path

import pytest

from tests.house_rules.tree import ROOT, ending, files, listing, named, ours, text, tree

WEB = "src/heatledger/web/"
MARKUP = {
    "style attribute": re.compile(r"""<[^>]*\sstyle\s*=""", re.IGNORECASE),
    "style element": re.compile(r"<style\b", re.IGNORECASE),
    "handler in markup": re.compile(r"""<[^>]*\son[a-z]+\s*=\s*["'{]""", re.IGNORECASE),
    "htmx code in markup": re.compile(r"\shx-(?:on|vals=[\"']js|headers=[\"']js)", re.IGNORECASE),
    "script in markup": re.compile(r"<script\b(?![^>]*\ssrc=)", re.IGNORECASE),
    "scripted address": re.compile(r"""=\s*["']\s*javascript:""", re.IGNORECASE),
}
TEMPLATE = {"unescaped text": re.compile(r"\|\s*safe\b|\{%-?\s*autoescape\s+false")}
SCRIPT = {
    "code from text": re.compile(r"\beval\(|\bnew Function\(|\bdocument\.write"),
    "markup from text": re.compile(r"\.(?:inner|outer)HTML\s*\+?=(?!=)|\binsertAdjacentHTML\b"),
    "style attribute": re.compile(r"""setAttribute\(\s*["']style|\.cssText\b"""),
}
STYLE = {
    "picture in the style": re.compile(r"url\(\s*[\"']?data:", re.IGNORECASE),
    "style of others": re.compile(r"@import\b"),
}
OUTSIDE = {"address outside": re.compile(r"(?:https?:|wss?:|[\"'(=])//(?!www\.w3\.org/)[\w{]", re.IGNORECASE)}
KINDS = {".html": MARKUP | TEMPLATE | OUTSIDE, ".js": SCRIPT | OUTSIDE, ".css": STYLE | OUTSIDE}


def faults_in(words: str, patterns: dict[str, re.Pattern[str]]) -> list[tuple[int, str]]:
    """Line and name of each pattern that is found; tags may run over several lines."""
    return sorted(
        (words.count("\n", 0, found.end()) + 1, name)
        for name, pattern in patterns.items()
        for found in pattern.finditer(words)
    )


@pytest.mark.parametrize("suffix", sorted(KINDS))
def test_pages_keep_to_the_content_policy(suffix: str) -> None:
    faults = [
        f"{named(path)}:{line} {what}"
        for path in ending(suffix, under=WEB)
        for line, what in faults_in(text(path), KINDS[suffix])
    ]
    assert not faults, listing(
        faults, "The browser refuses it, or it leads outside: use a class or a module."
    )


def test_markup_made_in_python_keeps_to_it_too() -> None:
    faults = [
        f"{named(path)}:{node.lineno} {what}"
        for folder in (WEB, "src/heatledger/drawings/")
        for path in ending(".py", under=folder)
        for node in ast.walk(tree(path))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
        for _, what in faults_in(node.value, MARKUP)
    ]
    assert not faults, listing(faults, "The browser refuses it: use a class or a presentation attribute.")


@pytest.mark.parametrize(
    ("suffix", "bad"),
    [
        (".html", '<p\n style="color: red">'),
        (".html", "<style>"),
        (".html", '<button type="button" onclick="go()">'),
        (".html", "<a onfocus='{{ x }}'>"),
        (".html", '<p hx-on:click="go()">'),
        (".html", "<script>go()</script>"),
        (".html", '<a href="javascript:go()">'),
        (".html", "{{ name | safe }}"),
        (".html", '<img src="https://elsewhere.example/a.png">'),
        (".html", '<img src="//elsewhere.example/a.png">'),
        (".js", "node.innerHTML = words"),
        (".js", "eval(words)"),
        (".js", 'node.setAttribute("style", "a")'),
        (".js", "fetch('http://elsewhere.example/')"),
        (".css", "background: url(data:image/png;base64,AA)"),
        (".css", '@import "other.css"'),
        (".css", "src: url(//elsewhere.example/a.woff2)"),
    ],
)
def test_the_patterns_find_what_they_look_for(suffix: str, bad: str) -> None:
    assert faults_in(bad, KINDS[suffix])


@pytest.mark.parametrize(
    ("suffix", "good"),
    [
        (".html", '<script type="module" src="/static/app.js"></script>'),
        (
            ".html",
            '<svg xmlns="http://www.w3.org/2000/svg" font-style="italic"><p data-style="1" data-on="a">',
        ),
        (".html", '<a href="/jobs">once, on = 1</a>'),
        (".js", "// a comment\nif (node.innerHTML === words) { go(); }"),
        (".css", "/* words */ src: url('fonts/a.woff2')"),
    ],
)
def test_the_patterns_let_the_usual_pass(suffix: str, good: str) -> None:
    assert not faults_in(good, KINDS[suffix])


def vendored() -> list[Path]:
    """Files of others, without the notes that are ours."""
    return [each for each in files() if not ours(each) and each.name != "note.toml"]


def test_every_vendored_file_is_the_one_its_note_names() -> None:
    assert len(vendored()) >= 2
    faults = []
    for each in vendored():
        note = each.with_name("note.toml")
        row = tomllib.loads(note.read_text(encoding="utf-8")).get(each.name) if note.exists() else None
        if not row:
            faults.append(f"{named(each)} stands in no note.toml beside it")
        elif hashlib.sha256(each.read_bytes()).hexdigest() != row["sha256"]:
            faults.append(f"{named(each)} is not what {row['package']} {row['version']} brought")
    assert not faults, listing(faults, "Fetch it again: delete it, then make vendor.")


def test_every_vendored_script_comes_with_its_licence() -> None:
    for each in vendored():
        if each.suffix == ".js":
            beside = list(each.parent.glob(f"{each.name.split('.')[0]}*LICENSE*"))
            assert beside, f"{named(each)} has no licence beside it"


def test_only_the_page_checker_is_kept_out_of_what_is_installed() -> None:
    """What the app serves is installed with it, licence and all; the rest stays with the tests."""
    folders = {each.parent.relative_to(ROOT).as_posix() for each in vendored()}
    assert folders == {"src/heatledger/web/static/vendor", "tests/browser/vendor"}

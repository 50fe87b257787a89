"""Writes values as a job file takes them: plain where that reads back the same, else in quotes."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from heatledger.job.edit_errors import EditError
from heatledger.job.errors import JobErrors
from heatledger.job.parsing import STRANGE, tree_of
from heatledger.job.text import plain

WIDEST = 100
"""Letters in a row up to which a thing is written in braces on one line."""
DEEPER = 2
_PROBE_KEY = "k"


def as_texts(value: Any) -> Any:
    """Nested dicts and lists of texts; yes and no for true and false."""
    if isinstance(value, Mapping):
        return {str(key): as_texts(each) for key, each in value.items()}
    if isinstance(value, list | tuple):
        return [as_texts(each) for each in value]
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "" if value is None else str(value)


def written(text: str, in_braces: bool, path: str = "") -> str:
    """One value in the letters that read back as the same text. Raises EditError when there are none."""
    if text == "":
        return ""
    strange = STRANGE.search(text)
    if strange:
        raise EditError(path, f"The character U+{ord(strange[0]):04X} is not text.", "Leave it out.")
    single = "'" + text.replace("'", "''") + "'"
    for letters in (text, single, json.dumps(text, ensure_ascii=False), json.dumps(text)):
        if _reads_back(letters, text, in_braces):
            return letters
    raise EditError(path, f"`{text[:60]}` cannot be written in a job.", "Say it in other words.")


def _reads_back(letters: str, text: str, in_braces: bool) -> bool:
    if "\n" in letters or "\r" in letters:
        return False
    probe = f"{_PROBE_KEY}: {{a: {letters}, b: }}\n" if in_braces else f"{_PROBE_KEY}: {letters}  # c\nb:\n"
    wanted = {_PROBE_KEY: {"a": text, "b": ""}} if in_braces else {_PROBE_KEY: text, "b": ""}
    try:
        return bool(plain(tree_of(probe)) == wanted)
    except JobErrors:
        return False


def in_one_line(value: Any, path: str = "", in_braces: bool = True) -> str:
    """A value on one line: mappings in braces, lists in brackets."""
    if isinstance(value, dict):
        inside = (f"{_key(key, path)}: {in_one_line(each, path)}" for key, each in value.items())
        return "{" + ", ".join(inside) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(item_in_line(each, path, True) for each in value) + "]"
    return written(value, in_braces, path)


def in_rows(
    key: str, value: Any, indent: int, path: str = "", braces: bool = True, inside: bool = True
) -> list[str]:
    """The rows of ``key: value``. What holds single values alone goes into braces when there is room, if
    ``braces`` lets it; ``inside`` is that for what is in it."""
    space = " " * indent
    head = f"{space}{_key(key, path)}:"
    if not isinstance(value, dict | list):
        letters = written(value, False, path)
        return [f"{head} {letters}" if letters else head]
    if not value or (braces and _is_flat(value)):
        row = f"{head} {in_one_line(value, path)}"
        if not value or len(row) <= WIDEST:
            return [row]
    rows = [head]
    if isinstance(value, dict):
        for inner, each in value.items():
            rows += in_rows(inner, each, indent + DEEPER, path, inside, inside)
        return rows
    return rows + [f"{space}{' ' * DEEPER}- {item_in_line(each, path, False)}" for each in value]


def item_in_line(value: Any, path: str, in_braces: bool) -> str:
    """An item of a list on one line; nothing at all is put in quotes, to be told from the end of a list."""
    return in_one_line(value, path, in_braces) or "''"


def _is_flat(value: Any) -> bool:
    """True for single values, and values with a word beside them."""

    def holds_more(one: Any) -> bool:
        return isinstance(one, list) or (
            isinstance(one, dict) and any(isinstance(each, dict | list) for each in one.values())
        )

    return not any(map(holds_more, value.values() if isinstance(value, dict) else value))


def _key(key: str, path: str) -> str:
    """A key as it is written; EditError for one that cannot be a key of a job."""
    try:
        if plain(tree_of(f"{key}: x\n")) == {key: "x"} and plain(tree_of(f"a: {{{key}: x}}\n")) == {
            "a": {key: "x"}
        }:
            return key
    except JobErrors:
        pass
    raise EditError(path, f"`{key[:60]}` cannot be a key of a job.", "Use small letters, digits and hyphens.")

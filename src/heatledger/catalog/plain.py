"""A fast reader for the plain lines that our tables are made of.

It knows ``key: value`` lines, nesting by indent, comments, and braces and brackets, which may run over
several lines. Whatever else it meets, it gives up at once and the full YAML reader takes over, which also
words every error. A test holds the two equal on every table.
"""

from __future__ import annotations

import re
from typing import Any

_LINE = re.compile(r"""( *)([A-Za-z0-9_.-]+|"[^"\\]*"):(?: +(.*))?\Z""")
_BARE = re.compile(r"[^\s?:,\[\]{}#&*!|>'\"%@`-][^:#]*\Z")
_KEY = re.compile(r"""([A-Za-z0-9_.-]+|"[^"\\]*"): +""")
_VALUE = re.compile(r"""[^\s?:,\[\]{}#&*!|>'"%@`-][^:#,\[\]{}]*|"[^"\\]*\"""")
_COMMENT = re.compile(r" +#[^\"']*\Z")


class _GiveUp(Exception):
    """Something the fast reader does not know."""


def plain_table(text: str) -> dict[str, Any] | None:
    """The mapping a text holds, every value as text; None when it holds anything but plain lines."""
    if re.search("[\\t\\r\x85\u2028\u2029]", text):
        return None
    try:
        return _lines(text)
    except _GiveUp:
        return None


def _lines(text: str) -> dict[str, Any]:
    root: dict[str, Any] = {}
    stack: list[tuple[int, dict[str, Any]]] = [(0, root)]
    waiting: tuple[dict[str, Any], str] | None = None
    rows = iter(text.split("\n"))
    for row in rows:
        if not row.strip() or row.lstrip().startswith("#"):
            continue
        found = _LINE.match(_COMMENT.sub("", row).rstrip())
        if waiting is not None and (found is None or len(found[1]) > stack[-1][0]):
            above, name = waiting
            if row.lstrip()[0] in "{[":
                above[name], waiting = _flow(row.strip(), rows), None
                continue
            if found is None:
                raise _GiveUp
            stack.append((len(found[1]), {}))
            above[name] = stack[-1][1]
        if found is None:
            raise _GiveUp
        while len(found[1]) < stack[-1][0]:
            stack.pop()
        mapping, key, rest = stack[-1][1], found[2].strip('"'), found[3]
        if len(found[1]) != stack[-1][0] or key in mapping:
            raise _GiveUp
        waiting = None if rest else (mapping, key)
        mapping[key] = _value(rest, rows) if rest else ""
    if not root:
        raise _GiveUp
    return root


def _value(rest: str, rows: Any) -> Any:
    if rest[0] in "{[":
        return _flow(rest, rows)
    if rest[0] == '"':
        if not _VALUE.fullmatch(rest):
            raise _GiveUp
        return rest[1:-1]
    if not _BARE.match(rest):
        raise _GiveUp
    return rest


def _flow(rest: str, rows: Any) -> Any:
    """A brace or bracket with the lines it runs over; it must end with its line."""
    whole = rest
    while whole.count("{") + whole.count("[") > whole.count("}") + whole.count("]"):
        more = next(rows, "#").strip()
        if not more or "#" in more:
            raise _GiveUp
        whole = f"{whole} {more}"
    value, end = _flow_at(whole, 0)
    if end != len(whole):
        raise _GiveUp
    return value


def _flow_at(text: str, i: int) -> tuple[Any, int]:
    """The value that begins at ``i``, and where it ends."""
    if text[i : i + 1] not in ("{", "["):
        found = _VALUE.match(text, i)
        if found is None:
            raise _GiveUp
        return found[0].rstrip().strip('"'), found.end()
    close, items, pairs = "}" if text[i] == "{" else "]", [], {}
    i = _past_spaces(text, i + 1)
    while text[i : i + 1] != close:
        if close == "}":
            key = _KEY.match(text, i)
            if key is None or key[1].strip('"') in pairs:
                raise _GiveUp
            pairs[key[1].strip('"')], i = _flow_at(text, key.end())
        else:
            item, i = _flow_at(text, i)
            items.append(item)
        i = _past_spaces(text, i)
        if text[i : i + 2] == ", ":
            i = _past_spaces(text, i + 1)
        elif text[i : i + 1] != close:
            raise _GiveUp
    return (pairs if close == "}" else items), i + 1


def _past_spaces(text: str, i: int) -> int:
    while text[i : i + 1] == " ":
        i += 1
    return i

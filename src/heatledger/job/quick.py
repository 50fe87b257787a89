"""A fast reader for the plain lines that nearly every job is made of.

It knows ``key: value`` lines, nesting by indent, comments, and braces or brackets that close on their
own line. Whatever else it meets, it gives up at once and the full YAML reader takes over, which also
words every error. A test holds the two trees equal.
"""

from __future__ import annotations

import re

from heatledger.job.text import DEEPEST, Listing, Mapping, Node, Scalar

_LINE = re.compile(r"( *)([A-Za-z0-9][A-Za-z0-9_.@/-]*):(?: +|\Z)")
# A plain value: no mark of YAML in front, no colon, no hash inside (a hash after a space is cut off before).
_PLAIN = re.compile(r"(?:[^\s\-?:,\[\]{}#&*!|>'\"%@`]|-(?=[^\s]))[^:#]*\Z")
_FLOW_PLAIN = re.compile(r"(?:[^\s\-?:,\[\]{}#&*!|>'\"%@`]|-(?=[^\s,\[\]{}]))[^:#,\[\]{}]*")
_FLOW_KEY = re.compile(r"([A-Za-z0-9][A-Za-z0-9_.@/-]*): +")
_OTHER_BREAKS = re.compile("[\t\r\x85\u2028\u2029]")
_LONGEST_LINE = 1000


class _GiveUp(Exception):
    """Something the fast reader does not know."""


def quick_tree(text: str) -> Mapping | None:
    """The tree of a text, or None when it holds anything but plain lines."""
    if _OTHER_BREAKS.search(text):
        return None
    try:
        return _lines(text)
    except _GiveUp:
        return None


def _lines(text: str) -> Mapping:
    root = Mapping()
    stack: list[tuple[int, Mapping]] = []
    waiting: tuple[Mapping, str, int] | None = None
    """The key that has no value yet: its mapping, its name, its indent."""
    at = 0
    for number, row in enumerate(text.split("\n"), 1):
        start, at = at, at + len(row) + 1
        content = _without_comment(row)
        if not content:
            continue
        found = _LINE.match(content)
        if found is None or len(row) > _LONGEST_LINE:
            raise _GiveUp
        indent, key = len(found[1]), found[2]
        if not stack:
            root.line, root.start = number, start + indent
            stack.append((indent, root))
        elif indent > stack[-1][0]:
            if waiting is None or len(stack) >= DEEPEST:
                raise _GiveUp
            above, name, _ = waiting
            inner = Mapping(number, start + indent)
            above.entries[name] = inner
            stack.append((indent, inner))
        else:
            while stack and indent < stack[-1][0]:
                stack.pop()
            if not stack or indent != stack[-1][0]:
                raise _GiveUp
        mapping = stack[-1][1]
        if key in mapping.entries:
            raise _GiveUp
        mapping.key_lines[key] = number
        mapping.key_starts[key] = start + indent
        colon = found.end(2) + 1
        rest = content[found.end() :]
        if rest:
            mapping.entries[key] = _value(rest, number, start + found.end(), len(stack))
            waiting = None
        else:
            mapping.entries[key] = Scalar("", number, start + colon, start + colon)
            waiting = (mapping, key, indent)
    if not stack:
        raise _GiveUp
    return root


def _without_comment(row: str) -> str:
    """The line without its comment and the spaces behind it."""
    if "#" in row:
        if row.lstrip(" ").startswith("#"):
            return ""
        cut = row.find(" #")
        if cut >= 0:
            if '"' in row[cut:] or "'" in row[cut:]:
                # The hash may stand inside quotes.
                quoted = row[:cut].count('"') % 2 or row[:cut].count("'") % 2
                if quoted:
                    raise _GiveUp
            row = row[:cut]
    return row.rstrip(" ")


def _value(rest: str, number: int, at: int, depth: int) -> Node:
    if rest[0] in "{[":
        node, end = _flow(rest, 0, number, at, depth)
        if end != len(rest):
            raise _GiveUp
        return node
    if not _PLAIN.match(rest):
        raise _GiveUp
    return Scalar(rest, number, at, at + len(rest))


def _flow(rest: str, i: int, number: int, at: int, depth: int) -> tuple[Node, int]:
    """A brace, bracket or plain value that begins at ``i``, and where it ends."""
    if depth >= DEEPEST:
        raise _GiveUp
    if rest[i : i + 1] == "{":
        return _flow_mapping(rest, i, number, at, depth)
    if rest[i : i + 1] == "[":
        return _flow_listing(rest, i, number, at, depth)
    found = _FLOW_PLAIN.match(rest, i)
    if found is None:
        raise _GiveUp
    plain = found[0].rstrip(" ")
    return Scalar(plain, number, at + i, at + i + len(plain)), found.end()


def _flow_mapping(rest: str, i: int, number: int, at: int, depth: int) -> tuple[Node, int]:
    made = Mapping(number, at + i, 0, True)
    i = _skip(rest, i + 1)
    while rest[i : i + 1] != "}":
        found = _FLOW_KEY.match(rest, i)
        if found is None or found[1] in made.entries:
            raise _GiveUp
        made.key_lines[found[1]] = number
        made.key_starts[found[1]] = at + i
        made.entries[found[1]], i = _flow(rest, found.end(), number, at, depth + 1)
        i = _next(rest, i, "}")
    made.end = at + i + 1
    return made, i + 1


def _flow_listing(rest: str, i: int, number: int, at: int, depth: int) -> tuple[Node, int]:
    made = Listing(number)
    i = _skip(rest, i + 1)
    while rest[i : i + 1] != "]":
        if _FLOW_KEY.match(rest, i):
            raise _GiveUp
        node, i = _flow(rest, i, number, at, depth + 1)
        made.items.append(node)
        i = _next(rest, i, "]")
    return made, i + 1


def _skip(rest: str, i: int) -> int:
    while rest[i : i + 1] == " ":
        i += 1
    return i


def _next(rest: str, i: int, close: str) -> int:
    """Past the comma behind an item, or at the closing mark."""
    i = _skip(rest, i)
    if rest[i : i + 1] == close:
        return i
    if rest[i : i + 1] != "," or rest[i + 1 : i + 2] != " ":
        raise _GiveUp
    i = _skip(rest, i + 1)
    if rest[i : i + 1] == close or not rest[i : i + 1]:
        raise _GiveUp
    return i

"""A fast reader for the plain lines that nearly every job is made of.

It knows ``key: value`` lines, lines of a list behind a hyphen, nesting by indent, comments, and braces,
brackets and simple quotes. Whatever else it meets, it gives up at once and the full YAML reader takes
over, which also words every error. A test holds the two trees equal.
"""

from __future__ import annotations

import re

from heatledger.job.quick_braces import GiveUp, braces, quoted
from heatledger.job.text import DEEPEST, Listing, Mapping, Node, Scalar

_LINE = re.compile(r"( *)([A-Za-z0-9][A-Za-z0-9_.@/-]*):(?: +|\Z)")
_KEY = re.compile(r"([A-Za-z0-9][A-Za-z0-9_.@/-]*):(?: +|\Z)")
_ITEM = re.compile(r"( *)- +(?=[^ #])")
# A plain value: no mark of YAML in front, no colon, no hash inside (a hash after a space is cut off before).
_PLAIN = re.compile(r"(?:[^\s\-?:,\[\]{}#&*!|>'\"%@`]|-(?=[^\s]))[^:#]*\Z")
OTHER_BREAKS = re.compile("[\t\x85\u2028\u2029]|\r(?!\n)")
"""Breaks that the full reader may count as lines, and tabs."""
_LONGEST_LINE = 1000


def quick_tree(text: str) -> Mapping | None:
    """The tree of a text, or None when it holds anything but plain lines."""
    if OTHER_BREAKS.search(text):
        return None
    try:
        return _Rows(text).read()
    except GiveUp:
        return None


def quick_rows(text: str, start: int, stop: int, line: int) -> Mapping | None:
    """The tree of the rows from ``start`` to ``stop``, the first of which is line ``line`` of the text.

    None when they hold anything but plain lines, or when the last of them does not end there.
    """
    if OTHER_BREAKS.search(text, start, stop):
        return None
    rows = _Rows(text, start, stop, line - 1)
    try:
        tree = rows.read()
    except GiveUp:
        return None
    return tree if rows.at in (stop, stop + 1) else None


class _Rows:
    """Reads a text row by row, with the mappings and lists that are open."""

    def __init__(self, text: str, at: int = 0, stop: int = -1, number: int = 0) -> None:
        self.text = text
        self.stop = len(text) if stop < 0 else stop
        self.at = at
        """Where the row begins that is read next."""
        self.number = number
        self.root: Mapping | None = None
        self.stack: list[tuple[int, Mapping | Listing]] = []
        self.waiting: tuple[Mapping, str, int] | None = None
        """The key that has no value yet: its mapping, its name, its indent."""

    def read(self) -> Mapping:
        """The tree of the whole text."""
        text, size = self.text, self.stop
        while self.at <= size:
            start = self.at
            stop = text.find("\n", start, size)
            stop = size if stop < 0 else stop
            row = text[start:stop].removesuffix("\r")
            self.number += 1
            self.at = stop + 1
            bare = row.lstrip(" ")
            if not bare or bare[0] == "#":
                continue
            if len(row) > _LONGEST_LINE:
                raise GiveUp
            found = _LINE.match(row)
            if found is not None:
                self.key(row, start, len(found[1]), found[2], found.end())
            elif bare[0] == "-":
                self.item(row, start)
            else:
                self.alone(row, start, len(row) - len(bare))
        if self.root is None:
            raise GiveUp
        return self.root

    def key(self, row: str, start: int, indent: int, key: str, after: int) -> None:
        """A row ``key:`` or ``key: value``; ``after`` is where its value begins in the row."""
        mapping = self.mapping_at(indent, start + indent)
        if key in mapping.entries:
            raise GiveUp
        number = self.number
        mapping.key_lines[key] = number
        mapping.key_starts[key] = start + indent
        if after < len(row) and row[after] != "#":
            mapping.entries[key] = self.value(row, start, after)
            self.waiting = None
        else:
            colon = start + indent + len(key) + 1
            mapping.entries[key] = Scalar("", number, colon, colon)
            self.waiting = (mapping, key, indent)

    def mapping_at(self, indent: int, place: int) -> Mapping:
        """The mapping that a row of this indent belongs to."""
        stack = self.stack
        if not stack:
            if self.root is not None:
                raise GiveUp
            self.root = Mapping(self.number, place)
            stack.append((indent, self.root))
            return self.root
        if indent > stack[-1][0]:
            inner = Mapping(self.number, place)
            self.open(indent, inner)
            return inner
        top = self.close_to(indent)
        if not isinstance(top, Mapping):
            raise GiveUp
        return top

    def open(self, indent: int, node: Mapping | Listing) -> None:
        """Begin a mapping or list as the value of the key that waits for one."""
        if self.waiting is None or len(self.stack) >= DEEPEST:
            raise GiveUp
        above, name, _ = self.waiting
        above.entries[name] = node
        self.waiting = None
        self.stack.append((indent, node))

    def close_to(self, indent: int) -> Mapping | Listing:
        """Close what is indented deeper; what stands open at this very indent."""
        stack = self.stack
        while stack and indent < stack[-1][0]:
            stack.pop()
        if not stack or indent != stack[-1][0]:
            raise GiveUp
        return stack[-1][1]

    def item(self, row: str, start: int) -> None:
        """A row of a list: a value, braces, or the first key of a mapping behind the hyphen."""
        found = _ITEM.match(row)
        if found is None or not self.stack:
            raise GiveUp
        indent, after = len(found[1]), found.end()
        if indent > self.stack[-1][0]:
            self.open(indent, Listing(self.number, start=start + indent))
            listing = self.stack[-1][1]
        else:
            listing = self.close_to(indent)
        if not isinstance(listing, Listing):
            raise GiveUp
        key = _KEY.match(row, after)
        if key is None:
            listing.items.append(self.value(row, start, after))
            self.waiting = None
            return
        if len(self.stack) >= DEEPEST:
            raise GiveUp
        inner = Mapping(self.number, start + after)
        listing.items.append(inner)
        self.stack.append((after, inner))
        self.key(row, start, after, key[1], key.end())

    def alone(self, row: str, start: int, indent: int) -> None:
        """Braces, brackets or quotes in the row below their key."""
        if self.waiting is None or row[indent] not in "{['\"" or indent <= self.waiting[2]:
            raise GiveUp
        above, name, _ = self.waiting
        above.entries[name] = self.value(row, start, indent)
        self.waiting = None

    def value(self, row: str, start: int, i: int) -> Node:
        """The value that begins at ``i`` of a row; braces may end some rows below."""
        first = row[i]
        if first in "{[":
            indent = self.stack[-1][0]
            node, end, number = braces(self.text, start + i, self.number, indent, len(self.stack))
            stop = self.text.find("\n", end)
            stop = len(self.text) if stop < 0 else stop
            _nothing_but_comment(self.text[end:stop].removesuffix("\r"))
            self.number, self.at = number, stop + 1
            return node
        if first in "'\"":
            scalar = quoted(row, i, self.number, start)
            _nothing_but_comment(row[scalar.end - start :])
            return scalar
        cut = row.find(" #", i)
        content = (row if cut < 0 else row[:cut])[i:].rstrip(" ")
        if not _PLAIN.match(content):
            raise GiveUp
        return Scalar(content, self.number, start + i, start + i + len(content))


def _nothing_but_comment(rest: str) -> None:
    if rest.strip(" ") and not rest.lstrip(" ").startswith("#"):
        raise GiveUp
    if rest.startswith("#"):
        raise GiveUp

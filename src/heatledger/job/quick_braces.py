"""Braces, brackets and simple quotes for the fast reader; they may go over several lines."""

from __future__ import annotations

import re

from heatledger.job.text import DEEPEST, Listing, Mapping, Node, Scalar

_PLAIN = re.compile(r"(?:[^\s\-?:,\[\]{}#&*!|>'\"%@`]|-(?=[^\s,\[\]{}]))[^:#,\[\]{}\r\n]*")
_KEY = re.compile(r"([A-Za-z0-9][A-Za-z0-9_.@/-]*): +")
_SINGLE = re.compile(r"'((?:[^'\r\n]|'')*)'")
_DOUBLE = re.compile(r'"((?:[^"\\\r\n]|\\["\\nt])*)"')
_ESCAPE = re.compile(r"\\(.)")
_MEANT = {"n": "\n", "t": "\t"}


class GiveUp(Exception):
    """Something the fast reader does not know."""


def quoted(text: str, i: int, number: int, start: int) -> Scalar:
    """The text in quotes that begins at ``i`` and ends in the same row; ``start`` is added to its span."""
    found = (_SINGLE if text[i] == "'" else _DOUBLE).match(text, i)
    if found is None:
        raise GiveUp
    inside = found[1]
    if text[i] == "'":
        inside = inside.replace("''", "'")
    elif "\\" in inside:
        inside = _ESCAPE.sub(lambda each: _MEANT.get(each[1], each[1]), inside)
    return Scalar(inside, number, start + i, start + found.end(), text[i])


def braces(text: str, i: int, number: int, indent: int, depth: int) -> tuple[Node, int, int]:
    """What the brace or bracket at ``i`` opens, where it ends, and in which line.

    Rows after the first must be indented deeper than ``indent``. Raises GiveUp.
    """
    reader = _Braces(text, i, number, indent)
    node = reader.node(depth)
    return node, reader.i, reader.number


class _Braces:
    """A place in the text that moves on."""

    def __init__(self, text: str, i: int, number: int, indent: int) -> None:
        self.text = text
        self.i = i
        self.number = number
        self.indent = indent

    def node(self, depth: int) -> Node:
        """A mapping, list or single value that begins here."""
        first = self.text[self.i : self.i + 1]
        if first in ("{", "["):
            if depth >= DEEPEST:
                raise GiveUp
            return self.mapping(depth) if first == "{" else self.listing(depth)
        if first in ("'", '"'):
            scalar = quoted(self.text, self.i, self.number, 0)
            self.i = scalar.end
            return scalar
        found = _PLAIN.match(self.text, self.i)
        if found is None:
            raise GiveUp
        plain = found[0].rstrip(" ")
        start, self.i = self.i, found.end()
        return Scalar(plain, self.number, start, start + len(plain))

    def mapping(self, depth: int) -> Mapping:
        made = Mapping(self.number, self.i, 0, True)
        self.i += 1
        self.gap()
        while self.text[self.i : self.i + 1] != "}":
            found = _KEY.match(self.text, self.i)
            if found is None or found[1] in made.entries:
                raise GiveUp
            key = found[1]
            made.key_lines[key] = self.number
            made.key_starts[key] = self.i
            colon, self.i = self.i + len(key) + 1, found.end()
            if self.text[self.i : self.i + 1] in (",", "}"):
                made.entries[key] = Scalar("", self.number, colon, colon)
            else:
                made.entries[key] = self.node(depth + 1)
            self.to_next("}")
        self.i += 1
        made.end = self.i
        return made

    def listing(self, depth: int) -> Listing:
        made = Listing(self.number, start=self.i, flow=True)
        self.i += 1
        self.gap()
        while self.text[self.i : self.i + 1] != "]":
            if _KEY.match(self.text, self.i):
                raise GiveUp
            made.items.append(self.node(depth + 1))
            self.to_next("]")
        self.i += 1
        made.end = self.i
        return made

    def to_next(self, close: str) -> None:
        """Past the comma behind an item, or at the closing mark."""
        self.gap()
        first = self.text[self.i : self.i + 1]
        if first == close:
            return
        if first != "," or self.text[self.i + 1 : self.i + 2] not in (" ", "\r", "\n"):
            raise GiveUp
        self.i += 1
        self.gap()
        if self.text[self.i : self.i + 1] in (close, ""):
            raise GiveUp

    def gap(self) -> None:
        """Past spaces, ends of lines and comments."""
        text, i = self.text, self.i
        while True:
            first = text[i : i + 1]
            if first == " " or first == "\r":
                i += 1
            elif first == "\n":
                self.number += 1
                row = i + 1
                i = row
                while text[i : i + 1] == " ":
                    i += 1
                if text[i : i + 1] not in ("\r", "\n", "#") and i - row <= self.indent:
                    raise GiveUp
            elif first == "#" and text[i - 1] in " \n":
                stop = text.find("\n", i)
                i = len(text) if stop < 0 else stop
            else:
                break
        self.i = i

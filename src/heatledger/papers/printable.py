"""Which characters the papers can print, read from the typefaces they carry.

An archival, tagged PDF refuses a character that no face can draw. User text may hold any character, so what
cannot be drawn is set as an empty square and told to the caller, and the paper is made all the same.
"""

from __future__ import annotations

import struct
import unicodedata
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

FONTS = Path(__file__).with_name("fonts")
TEXT_FACE = "LedgerSans-Regular.ttf"
SQUARE = "\N{WHITE SQUARE}"
SPACES = {"\n": " ", "\t": " ", "\r": " "}


@cache
def characters() -> frozenset[int]:
    """The code points that the text face can draw (the format 4 table of its character map)."""
    data = (FONTS / TEXT_FACE).read_bytes()
    tables = struct.unpack_from(">H", data, 4)[0]
    for number in range(tables):
        tag, _, offset, _ = struct.unpack_from(">4sIII", data, 12 + 16 * number)
        if tag == b"cmap":
            return _segments(data, offset)
    raise ValueError(f"{TEXT_FACE} has no character map")


def _segments(data: bytes, cmap: int) -> frozenset[int]:
    for number in range(struct.unpack_from(">H", data, cmap + 2)[0]):
        at = cmap + struct.unpack_from(">I", data, cmap + 4 + 8 * number + 4)[0]
        if struct.unpack_from(">H", data, at)[0] != 4:
            continue
        count = struct.unpack_from(">H", data, at + 6)[0] // 2
        ends = struct.unpack_from(f">{count}H", data, at + 14)
        starts = struct.unpack_from(f">{count}H", data, at + 16 + 2 * count)
        found = {code for start, end in zip(starts, ends, strict=True) for code in range(start, end + 1)}
        return frozenset(found - {0xFFFF})
    raise ValueError(f"{TEXT_FACE} has no format 4 character map")


@lru_cache(maxsize=4096)
def printable(text: str) -> str:
    """The text with composed accents, plain spaces, and a square for each character without a face."""
    return text if text.isascii() and text.isprintable() else drawn_alone(text)


def drawn_alone(text: str) -> str:
    """As ``printable``, for a long text that comes once."""
    composed = unicodedata.normalize("NFC", text)
    drawn = characters()
    odd = {ord(each): SPACES.get(each, SQUARE) for each in set(composed) if ord(each) not in drawn}
    return composed.translate(odd) if odd else composed


def unprintable(data: Any) -> set[str]:
    """The characters of any text in ``data`` (dicts, lists, texts) that will be set as squares."""
    if isinstance(data, str):
        composed = unicodedata.normalize("NFC", data)
        return {each for each in composed if each not in SPACES and ord(each) not in characters()}
    if isinstance(data, dict):
        return set().union(*(unprintable(each) for each in data.values()))
    if isinstance(data, list | tuple):
        return set().union(*(unprintable(each) for each in data))
    return set()


def made_printable(data: Any) -> Any:
    """The same data with every text made printable; keys of dicts are left alone."""
    if isinstance(data, str):
        return printable(data)
    if isinstance(data, dict):
        return {key: made_printable(each) for key, each in data.items()}
    if isinstance(data, list | tuple):
        return [made_printable(each) for each in data]
    return data

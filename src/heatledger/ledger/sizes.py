"""Sizes of pipe and tube are names, not lengths: 1 1/4 in, DN 25, 16x2 mm.

No dimension of a ``3/4 in`` pipe measures three quarters of an inch, so a size is brought to one
spelling and then looked up; its bore is a cell of a table.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from difflib import get_close_matches
from enum import Enum

from heatledger.ledger.numerals import NotationError, plain, take


class SizeKind(Enum):
    """The ways in which the trade names a size."""

    INCH = "nominal inches"
    DN = "DN"
    WALL = "outside diameter and wall in mm"
    OUTSIDE = "outside diameter in mm"


@dataclass(frozen=True)
class Size:
    """A size by its one canonical name, with the way it is named."""

    name: str
    kind: SizeKind

    def __str__(self) -> str:
        return self.name


_DN = (6, 8, 10, 12, 15, 20, 25, 32, 40, 50, 65, 80, 100, 125, 150, 200, 250, 300)
_NUMBER = r"[0-9]+(?:\.[0-9]+)?"
_BY_WALL = re.compile(rf"({_NUMBER}) ?(?:mm)? ?[x×*] ?({_NUMBER}) ?(?:mm)?", re.IGNORECASE)
_BY_DN = re.compile(r"DN ?-?([0-9]+)", re.IGNORECASE)
_MILLIMETERS = re.compile(rf"(?:OD |⌀ ?|Ø ?)?({_NUMBER}) ?mm(?: OD)?", re.IGNORECASE)
_SUCH_AS = "a size such as 3/4 in, DN 20 or 16x2 mm"
_INCH_WORDS = ("", '"', "in", "in.", "inch", "inches")


def read_size(text: str) -> Size:
    """The size that ``text`` names, in its canonical spelling.

    Reads 1 1/4", 1-1/4 in, 1¼", 1.25 in, NPS 3/4, a bare fraction; DN 25; 16x2 mm; 22 mm. Raises
    NotationError (codes of the notation, and not-a-size, two-readings).
    """
    typed = plain(text)
    by_wall = _BY_WALL.fullmatch(typed)
    if by_wall:
        outside, wall = (float(each) for each in by_wall.groups())
        if not 0 < 2 * wall < outside:
            raise NotationError("not-a-size", f"a tube {outside:g} mm wide cannot have a wall of {wall:g} mm")
        return Size(f"{outside:g}x{wall:g} mm", SizeKind.WALL)
    by_dn = _BY_DN.fullmatch(typed)
    if by_dn:
        return _dn(by_dn.group(1))
    millimeters = _MILLIMETERS.fullmatch(typed)
    if millimeters and float(millimeters.group(1)) > 0:
        return Size(f"{float(millimeters.group(1)):g} mm", SizeKind.OUTSIDE)
    return _inches(re.sub(r"^NPS ?-?", "", typed, flags=re.IGNORECASE), typed)


def _dn(digits: str) -> Size:
    if len(digits) < 5 and int(digits) in _DN:
        return Size(f"DN {int(digits)}", SizeKind.DN)
    by_distance = sorted(_DN, key=lambda each: abs(each - float(digits)))
    offers = tuple(f"DN {each}" for each in by_distance[:2])
    raise NotationError("not-a-size", f"DN {digits} is not one of the DN sizes", offers)


def _inches(body: str, typed: str) -> Size:
    try:
        numeral, words = take(body)
    except NotationError as error:
        offers = tuple(get_close_matches(typed.upper(), [f"DN {each}" for each in _DN], n=2))
        raise NotationError("not-a-size", f"{typed} is not {_SUCH_AS}", offers) from error
    if words.casefold() not in _INCH_WORDS:
        raise NotationError("not-a-size", f"{typed} is not {_SUCH_AS}")
    sixteenths = numeral.value * 16
    if not (sixteenths.is_integer() and 1 <= sixteenths <= 48 * 16):
        raise NotationError("not-a-size", f"{typed} is not a size in inches and sixteenths")
    name = f"{_mixed(int(sixteenths))} in"
    if not words and body == typed and numeral.places is not None:
        offers = (
            name,
            *((f"DN {numeral.value:g}",) if numeral.value in _DN else ()),
            f"{numeral.value:g} mm",
        )
        raise NotationError("two-readings", f"{typed} may be inches, DN or millimeters", offers)
    return Size(name, SizeKind.INCH)


def _mixed(sixteenths: int) -> str:
    """Sixteenths as a whole number and a fraction in lowest terms."""
    whole, top = divmod(sixteenths, 16)
    bottom = 16
    while top and top % 2 == 0:
        top, bottom = top // 2, bottom // 2
    if not top:
        return str(whole)
    return f"{whole} {top}/{bottom}" if whole else f"{top}/{bottom}"

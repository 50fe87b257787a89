"""Numbers as the trade types them: signs, decimals, commas, fractions, exponents.

Reading of a text starts with ``take``, which splits the number in front from the words behind it.
Only the ten plain digits count as digits; what merely looks like a number to a computer (``1_000``,
``nan``, ``inf``) is refused.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import isfinite

LONGEST = 80
"""No quantity is written with more characters than this."""

_FRACTIONS = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
    "⅓": "1/3", "⅔": "2/3",
}  # fmt: skip
_SPACES = "\u00a0\u2007\u2009\u202f"
_GROUPED_BY_SPACE = re.compile(rf"(?<![0-9.,])[0-9]{{1,3}}(?:[{_SPACES}][0-9]{{3}})+(?![0-9])")
# Typeset marks and look-alikes, each with the plain character it stands for.
_PLAIN = str.maketrans({
    "−": "-", "‐": "-", "‑": "-", "–": "-", "⁄": "/", "∕": "/",
    "′": "'", "’": "'", "‘": "'", "ʹ": "'", "´": "'", "″": '"', "”": '"', "“": '"', "ʺ": '"',
    "º": "°", "˚": "°", **dict.fromkeys(_SPACES, " "),
})  # fmt: skip

_MIXED = re.compile(r"(?:([0-9]+)(?:-| +))?([0-9]+) ?/ ?([0-9]+)(?![0-9.,])")
_TOKEN = re.compile(r"[0-9.,]+")
_EXPONENT = re.compile(r"[eE]([+-]?[0-9]+)(?![0-9A-Za-z.,])")
_NO_NUMBERS = ("nan", "inf", "infinity", ".nan", ".inf", "∞")
_COMPUTER_NUMBER = re.compile(r"[0-9.,]+_|0[xXoObB][0-9A-Fa-f]")
_DECIMAL = re.compile(r"[0-9]+\.?[0-9]*|\.[0-9]+")
_GROUPED = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?")


class NotationError(ValueError):
    """A text that cannot be read as the quantity asked for.

    ``code`` names the kind of mistake, ``message`` says what is wrong and what is expected, and
    ``offers`` are texts that can be read, one for each thing that may have been meant.
    """

    def __init__(self, code: str, message: str, offers: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.code = code
        self.message = message
        self.offers = offers


@dataclass(frozen=True)
class Numeral:
    """A number in front of a text: its value, the decimals typed, and whether commas group it.

    ``places`` is None when it was typed as a fraction or with an exponent.
    """

    value: float
    places: int | None
    commas: bool
    text: str


def plain(text: str) -> str:
    """``text`` with typeset marks and spaces turned into plain ones and fractions into 1/2.

    Raises NotationError for a text that is empty or far too long to be a quantity.
    """
    if len(text) > LONGEST:
        raise NotationError("too-long", f"{text[:20]} ... is too long for one number and its unit")
    text = _GROUPED_BY_SPACE.sub(lambda found: re.sub(f"[{_SPACES}]", "", found.group()), text)
    for mark, fraction in _FRACTIONS.items():
        text = text.replace(mark, f" {fraction}")
    text = " ".join(text.translate(_PLAIN).split())
    text = text.replace("''", '"')
    if not text:
        raise NotationError("empty", "nothing is written here: a number and its unit are expected")
    return text


def take(text: str) -> tuple[Numeral, str]:
    """The number in front of a plain ``text`` and the words behind it.

    Raises NotationError (codes not-a-number, comma, not-finite).
    """
    sign, body = (text[0], text[1:].lstrip()) if text[:1] in ("-", "+") else ("", text)
    minus = -1.0 if sign == "-" else 1.0
    mixed = _MIXED.match(body)
    if mixed:
        typed = mixed.group().strip()
        value = _fraction(mixed, text)
        return Numeral(minus * value, None, False, sign + typed), body[mixed.end() :].strip()
    token = _TOKEN.match(body)
    if not token or body.casefold() in _NO_NUMBERS:
        raise _no_number(text)
    typed, rest = token.group(), body[token.end() :]
    if _COMPUTER_NUMBER.match(typed + rest):
        offers = (sign + (typed + rest).replace("_", ""),) if rest[0] == "_" else ()
        raise NotationError("not-a-number", f"{text} is not a number as people write it", offers)
    exponent = _EXPONENT.match(rest)
    power = exponent.group() if exponent else ""
    rest = rest[len(power) :]
    figures = _figures(typed, sign, power + rest)
    value = float(figures + power)
    if not isfinite(value):
        raise NotationError("not-finite", f"{text[:20]} is too large to be a quantity")
    places = None if power else len(figures.partition(".")[2])
    return Numeral(minus * value, places, "," in typed, sign + typed + power), rest.strip()


def _fraction(mixed: re.Match[str], text: str) -> float:
    whole, top, bottom = mixed.groups()
    if float(bottom) == 0:
        raise NotationError("not-a-number", f"{text} divides by zero")
    if whole is not None and float(top) >= float(bottom):
        raise NotationError("not-a-number", f"{text} is not a whole number and a fraction smaller than one")
    value = float(whole or 0) + float(top) / float(bottom)
    if not isfinite(value):
        raise NotationError("not-finite", f"{text[:20]} is too large to be a quantity")
    return value


def _figures(typed: str, sign: str, after: str) -> str:
    """Digits and point of a number, its commas taken out once they stand where they should."""
    if "," in typed and not _GROUPED.fullmatch(typed):
        raise comma_error(sign, typed, after)
    figures = typed.replace(",", "")
    if not _DECIMAL.fullmatch(figures):
        raise NotationError("not-a-number", f"{sign}{typed} is not a number")
    return figures


def comma_error(sign: str, typed: str, after: str) -> NotationError:
    """The error for a comma that can be misread, with every reading it may have been meant for."""
    bare = typed.lstrip("+-")
    meant: list[str] = []
    if "." not in bare and bare.count(",") == 1:
        meant.append(bare.replace(",", "."))
    if bare.rfind(",") > bare.rfind(".") > -1 and bare.count(",") == 1:
        meant.append(bare.replace(".", "").replace(",", "."))
    else:
        meant.append(bare.replace(",", ""))
    meant = list(dict.fromkeys(each.rstrip(".") for each in meant if _DECIMAL.fullmatch(each)))
    tail = f" {after.strip()}" if after.strip() else ""
    offers = tuple(f"{sign}{each}{tail}" for each in meant)
    message = (
        f"the comma in {sign}{bare}{tail} can be misread: a comma stands only between groups of three digits "
        "(34,000) and never with a metric unit; decimals take a point"
    )
    return NotationError("comma", message, offers)


def _no_number(text: str) -> NotationError:
    if text.lstrip("+-").casefold() in _NO_NUMBERS:
        return NotationError("not-finite", f"{text} is no quantity; leave out what is not known yet")
    spoken = re.match(r"(minus|negative|neg\.?|plus) ?(?=[0-9.])", text, re.IGNORECASE)
    offers: tuple[str, ...] = ()
    if spoken:
        sign = "" if spoken[1].casefold() == "plus" else "-"
        offers = (sign + text[spoken.end() :],)
    return NotationError("not-a-number", f"{text} does not start with a number", offers)

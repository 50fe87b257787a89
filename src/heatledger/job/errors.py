"""What can be wrong with a job file: a closed list of codes, and the errors that carry them.

An error says that the file cannot be read as meant: what was read, where, what is expected, and how
to mend it. All errors of a file come together. Each code has a section in ``docs/look-up/errors.md``.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

CODES: dict[str, str] = {
    # the file
    "file-not-found": "There is no file of that name.",
    "file-unreadable": "The file is there but cannot be opened.",
    "too-large": "The file holds more than 2 MB.",
    "wrong-encoding": "The file is not UTF-8 text.",
    "not-text": "A control character stands in the text.",
    "empty-file": "The file holds no job.",
    "not-yaml": "The lines do not follow the rules of YAML.",
    "tab-indent": "A line is indented with a tab.",
    "unclosed-quote": "A value begins with a quote that is never closed.",
    "alias": "The file uses names for repeats (& and *).",
    "tag": "A value carries a YAML tag (!).",
    "second-document": "A second document follows in the same file.",
    "too-deep": "The file nests deeper than any job does.",
    "duplicate-key": "One key is given twice in the same place.",
    "key-not-plain": "A key is not one plain word.",
    # the form of the job
    "no-format": "The line that says which format the file has is not there.",
    "format-newer": "The file was written by a newer version.",
    "format-unknown": "The format is not a number that any version wrote.",
    "no-units": "The job does not say how a bare number is read.",
    "unknown-units": "The name of the units is not one of the three.",
    "unknown-edition": "The edition of the published methods is not kept here.",
    "unknown-key": "A key is not known in this place.",
    "stray-comma": "A comma inside braces cut a number in two.",
    "bad-id": "An id is not made of small letters, digits and hyphens.",
    "not-a-mapping": "Lines of `key: value` are expected here.",
    "not-a-value": "One single value is expected here.",
    "not-a-list": "A list is expected here.",
    # values
    "unreadable": "A quantity is written in a way that is not known.",
    "wrong-unit": "The unit is that of another kind of quantity.",
    "unknown-unit": "The unit is not known here.",
    "two-readings": "The value can be read in two ways.",
    "no-unit": "A number needs a unit here.",
    "comma": "A comma can be read in two ways.",
    "not-a-number": "NaN is no quantity.",
    "infinite": "Infinity is no quantity.",
    "negative": "The quantity cannot be less than zero.",
    "zero": "The quantity cannot be zero.",
    "below-absolute-zero": "No temperature is as low.",
    "size-needs-two": "A size is two lengths.",
    "percent-unreadable": "A percentage is expected.",
    "percent-out-of-range": "The percentage lies outside what makes sense here.",
    "not-whole": "A whole number is expected.",
    "sides-out-of-range": "A room has no to four exposed sides.",
    "not-yes-or-no": "Yes or no is expected.",
    "bad-year": "A year of four digits is expected.",
    "elevation-out-of-range": "Nobody builds at that elevation.",
    "unknown-measured": "A house is measured inside or outside.",
    "unknown-known": "How well it is known is told in one of four words.",
    "within-of-temperature": "A percentage of a temperature means nothing.",
    "unknown-range": "There is no half-range of that name.",
    # constructions
    "no-kind": "A construction, emitter or circuit does not say what it is.",
    "unknown-kind": "The kind is not known.",
    "two-factors": "A construction is given in two ways.",
    "wrong-factor": "This kind of construction is not described by that value.",
    "u-above-air-films": "The U-value is larger than bare air films would let through.",
    "r-below-air-films": "The R-value is smaller than that of bare air films.",
    "unknown-catalog-row": "The catalog has no row of that name.",
    "catalog-kind-differs": "The row of the catalog is for another kind of construction or emitter.",
    # names
    "no-construction": "A surface or opening does not name its construction.",
    "unknown-construction": "The job has no construction of that name.",
    "no-level": "A room does not say on which level it lies.",
    "unknown-level": "The job has no level of that name.",
    "no-beyond": "A surface does not say what is beyond it.",
    "unknown-beyond": "What is beyond is written in a way that is not known.",
    "unknown-room": "The job has no room of that name.",
    "unknown-unheated": "The job has no unheated space of that name.",
    "unknown-neighbor": "The job has no neighbor of that name.",
    "beyond-itself": "A space lies beyond its own surface.",
    # surfaces
    "no-area": "There is no way to the area of a surface or opening.",
    "two-sizes": "Two measures of one thing are given and differ.",
    "measure-not-for-kind": "This kind of surface is not measured that way.",
    "top-below-bottom": "A wall below grade ends above where it begins.",
    "surface-kind": "A window or door stands where a surface is expected.",
    "opening-kind": "A wall, ceiling or floor stands where an opening is expected.",
    "opening-not-here": "This kind of surface has no openings.",
    "opening-below-grade": "A window or door stands in a surface against the ground.",
    "openings-over-surface": "The openings are larger than the surface they are in.",
    "ground-mismatch": "What is beyond does not go with the kind of construction.",
    "shared-surface-differs": "Two spaces give one surface between them differently.",
    "shared-surface-two-ids": "Two spaces give surfaces to each other under different ids.",
    # air
    "two-air-rates": "The air change is given in two ways.",
    # emitters and circuits
    "no-room": "An emitter does not say in which room it stands.",
    "value-not-for-kind": "This kind of emitter is not described by that value.",
    "two-ways": "One thing is given in two ways.",
    "return-above-supply": "A rating has a return that is not below its supply.",
    "unknown-zone": "The job has no zone of that name.",
    "unknown-emitter": "The job has no emitter of that name.",
    "emitter-in-two-circuits": "An emitter has a run in two circuits.",
    "unknown-tube": "The catalog has no tube of that name.",
    "unknown-fitting": "The kind of fitting is not known.",
    # the boiler room
    "unknown-circulator": "The plant has no circulator of that name.",
    "no-circulator": "A circuit does not say which of several circulators drives it.",
    "curve-not-falling": "The points of a circulator do not lie on a curve that falls.",
    "efficiency-over-100": "An efficiency is over 100 %.",
    "unknown-through": "What the mains run through is no unheated space.",
    "unknown-placed": "A tank joins at the suction or the discharge of the pump.",
    # bills and readings
    "no-fuel": "A bill does not say for which fuel.",
    "unknown-fuel": "The fuel is not known.",
    "fuel-not-measured-so": "The use of that fuel is not told by that quantity.",
    "unknown-spillage": "Spillage is none or some.",
    # decisions, expectations, limits
    "decision-without-reason": "A decision gives no text or no reason.",
    "limit-unreadable": "A limit is not a quantity.",
    "expectation-incomplete": "An expectation does not say of what, or how much.",
    "path-malformed": "A path is not made of names joined by slashes.",
    # what-ifs
    "what-if-change": "A change is not one of set, add and remove.",
    "what-if-no-value": "A change does not say what to put in.",
    "what-if-out-of-reach": "A what-if cannot change that part of the job.",
    "what-if-target": "What a what-if changes is not in the job.",
    "what-if-exists": "What a what-if adds is there already.",
    "what-if-conflict": "Two what-ifs set one value differently.",
    "what-if-gone": "One what-if removes what another changes.",
    "unknown-what-if": "The job has no what-if of that name.",
}
"""Every code, with what it means in one sentence."""


MOST = 200
"""Errors after which no more are gathered: a file with so many is another kind of file."""


@dataclass(frozen=True)
class JobError:
    """One thing that is wrong: its code, its place, what was read and how to mend it.

    ``path`` is the place in the job, ``line`` that in the file (0 when it has none).
    """

    code: str
    path: str
    line: int
    message: str
    mend: str = ""

    def __post_init__(self) -> None:
        if self.code not in CODES:
            raise KeyError(f"{self.code!r} is not in the list of codes")

    def __str__(self) -> str:
        where = "  ".join(each for each in (f"line {self.line}" if self.line else "", self.path) if each)
        first = f"{where}  ({self.code})" if where else f"({self.code})"
        return "\n".join([first, *(_wrapped(each) for each in (self.message, self.mend) if each)])


_WIDTH = 80
_TO_COPY = re.compile(r"`[^`]*`|\b[a-z_]+: \S+")
_HELD = "\ue000"


def _wrapped(text: str) -> str:
    """A sentence indented and broken into lines, but never inside what is meant to be copied."""
    held = _TO_COPY.sub(lambda found: found.group().replace(" ", _HELD), text)
    lines = textwrap.wrap(
        held, _WIDTH, initial_indent="  ", subsequent_indent="  ", break_long_words=False,
        break_on_hyphens=False,
    )  # fmt: skip
    return "\n".join(lines).replace(_HELD, " ")


class JobErrors(Exception):
    """Everything that is wrong with a job, in the order of the file."""

    def __init__(self, errors: Sequence[JobError], file_name: str = "") -> None:
        self.errors = tuple(sorted(errors, key=lambda each: each.line))
        self.file_name = file_name
        super().__init__(self.errors, file_name)

    @property
    def has_no_file(self) -> bool:
        """True when the file could not be opened at all, so that nothing in it was looked at."""
        return any(each.code in ("file-not-found", "file-unreadable") for each in self.errors)

    def __str__(self) -> str:
        number = len(self.errors)
        name = self.file_name or "the job"
        first = f"{name}: {number} error{'s' if number != 1 else ''}"
        return "\n".join([first, *(str(each) for each in self.errors)])

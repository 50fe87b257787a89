"""A kind of finding, the list of all kinds, and what its check is given to speak with."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from math import ceil, floor
from typing import TYPE_CHECKING, Any

from heatledger.job.errors import JobErrors
from heatledger.ledger.dimensions import RATIO, Dimension
from heatledger.ledger.figures import Figure, waits_for
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.notation import read
from heatledger.ledger.presets import US, Preset
from heatledger.ledger.show import number_text, show, show_percent
from heatledger.ledger.sources import Citation
from heatledger.steps.review.house import House, leaf_of

if TYPE_CHECKING:
    from heatledger.steps.design import Design

Check = Callable[["Look"], Iterator[Finding | NotChecked]]
KINDS: dict[str, Kind] = {}
"""Every kind by its id, in the order of the trade: entries first, then constructions, air, rooms, house."""

LIMITS_ARE_OURS = "judgment"
_MOST_NAMED = 3


@dataclass(frozen=True)
class Limit:
    """A threshold. ``name`` is its key under ``limits`` of the job, ``words`` what it limits."""

    name: str
    text: str
    dimension: Dimension
    words: str
    standing: str = LIMITS_ARE_OURS


@dataclass(frozen=True)
class Kind:
    """One kind of finding: what makes it stand, why it matters, how to mend it, and on whose word.

    ``settled_by_words`` is false where life hangs on it: while what makes it stand is so, no decision takes a
    "must fix" off the list. ``says_where`` asks of a decision that it names a place in the house.
    """

    id: str
    weight: Weight
    citation: Citation
    fires: str
    why: str
    mend: str
    limits: tuple[Limit, ...]
    check: Check
    settled_by_words: bool = True
    says_where: bool = False


def finding(
    id: str,
    weight: Weight,
    citation: Citation,
    *,
    fires: str,
    why: str,
    mend: str,
    limits: tuple[Limit, ...] = (),
    settled_by_words: bool = True,
    says_where: bool = False,
) -> Callable[[Check], Check]:
    """Put a check on the list of all kinds."""

    def registered(check: Check) -> Check:
        KINDS[id] = Kind(id, weight, citation, fires, why, mend, limits, check, settled_by_words, says_where)
        return check

    return registered


@cache
def usual(limit: Limit) -> float:
    """SI value of a threshold that the job does not set."""
    if limit.dimension is RATIO:
        return float(limit.text.rstrip(" %")) / 100
    return read(limit.text, limit.dimension, US).value


class Look:
    """What a check is given: the house, its own kind with its thresholds, and words for figures."""

    def __init__(self, house: House, kind: Kind) -> None:
        self.house = house
        self.kind = kind
        self.units: Preset = house.job.units

    @property
    def design(self) -> Design:
        """The design that is read."""
        return self.house.design

    def figure(self, path: str) -> Figure | None:
        """The figure at a path; what was found is looked at first, as the entries take longer to gather."""
        found = self.design.results.get(path)
        return self.design.figures.get(path) if found is None else found

    @cached_property
    def given(self) -> tuple[Figure | None, ...]:
        """The thresholds that the job sets, else None. JobErrors when one is of no such kind."""
        return tuple(self.house.job.limit(each.name, each.dimension) for each in self.kind.limits)

    def limit_at(self, i: int) -> float:
        """A threshold in SI: that of the job, else the usual one."""
        own = self.given[i]
        return usual(self.kind.limits[i]) if own is None else float(own)

    @property
    def limit(self) -> float:
        """The first threshold, in SI."""
        return self.limit_at(0)

    def limit_shown(self, i: int = 0) -> str:
        """A threshold in the units of the job."""
        return self.say(self.limit_at(i), self.kind.limits[i].dimension)

    def threshold(self) -> str:
        """The thresholds used, and whose they are."""
        said = []
        for i, each in enumerate(self.kind.limits):
            whose = each.standing if self.given[i] is None else "the job's own"
            said.append(f"{each.words} {self.limit_shown(i)} ({whose})")
        return "; ".join(said)

    def say(self, value: float, dimension: Dimension | None = None) -> str:
        """A figure in the units of the job; a ratio as a percentage."""
        kind = value.dimension if isinstance(value, Figure) else dimension
        if kind is RATIO:
            return show_percent(float(value), 0 if float(value) >= 0.01 else 1)
        return show(value, self.units, None if isinstance(value, Figure) else kind)

    def text(self, value: float, dimension: Dimension, places: int | None = None, to: int = 0) -> str:
        """A value as it would be typed in the job, to be put there by a mend.

        It is rounded to the places shown; up with ``to`` 1 and down with -1, so that a limit is kept.
        """
        shown = self.units.shown(dimension)
        number = shown.unit.from_si(value, dimension.absolute)
        digits = shown.places if places is None else places
        if to:
            step = 10.0**-digits
            number = (ceil if to > 0 else floor)(number / step - to * 1e-9) * step
        said = number_text(number, digits, "")
        return f"{said} {shown.unit.text}".replace("−", "-")

    def found(
        self,
        where: str,
        what: str,
        why: float | str = "",
        mends: tuple[Mend, ...] = (),
        weight: Weight | None = None,
    ) -> Finding:
        """The finding at a place; its general words stand in where none of this case are given."""
        kind = self.kind
        reason = why if isinstance(why, Figure) else str(why) or kind.why
        ways = mends or (Mend(kind.mend),)
        return Finding(
            kind.id, where, what, reason, ways, kind.citation, weight or kind.weight, self.threshold()
        )

    def wants(self, where: str, *figures: float | None, words: str = "") -> NotChecked:
        """That the finding could not be checked here, for want of what the figures wait for."""
        lacking = [each for each in figures if isinstance(each, Figure)]
        waiting = {id(each): each for figure in lacking for each in waits_for(figure)}
        # Names take a while to gather, so they are asked for only where there is something to name.
        said = list(dict.fromkeys(self.design.names.title(each) for each in waiting.values()))
        if words:
            said.append(words)
        more = f" and {len(said) - _MOST_NAMED} more" if len(said) > _MOST_NAMED else ""
        return NotChecked(
            self.kind.id, where, "; ".join(said[:_MOST_NAMED]) + more or "a value that can be worked with"
        )

    def run(self) -> list[Finding | NotChecked]:
        """What the check finds; a limit of the wrong kind is said and not used."""
        try:
            _ = self.given
        except JobErrors as wrong:
            message = wrong.errors[0].message if wrong.errors else "the limit cannot be read"
            return [
                NotChecked(self.kind.id, f"limits/{self.kind.id}", f"a limit of the right kind: {message}")
            ]
        return list(self.kind.check(self))


def set_to(path: str, text: Any) -> Mapping[str, Any]:
    """A change that sets a value."""
    return {"set": path, "to": text}


def measured(path: str, entry: float) -> Mapping[str, Any]:
    """A change that puts an entry in again as it was typed, marked measured."""
    origin = leaf_of(entry)
    return {"set": path, "to": {"is": origin.typed if origin else f"{float(entry):g}", "known": "measured"}}

"""What-ifs laid over the job, alone or together, each as a design of its own beside the job's."""

from __future__ import annotations

from collections.abc import Callable
from collections.abc import Mapping as AnyMapping
from dataclasses import dataclass, replace
from typing import Any

from heatledger.job.errors import JobErrors
from heatledger.job.model import Change
from heatledger.job.text import index_of, node_of
from heatledger.ledger.presets import Preset
from heatledger.steps.design import Design, design
from heatledger.web.page import Page

AS_IT_STANDS = ""
TRIED = "try"
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(frozen=True, eq=False)
class Column:
    """One column: the job (key ""), a what-if (its id), some laid together (ids with commas), or a mend.

    ``house`` is None where it cannot be laid, and ``cannot`` says why. ``changes`` is what it sets, in order.
    """

    key: str
    letter: str
    name: str
    house: Design | None
    ids: tuple[str, ...] = ()
    changes: tuple[Change, ...] = ()
    cannot: str = ""

    @property
    def called(self) -> str:
        """What a sentence calls it: its letters, or "this" for a mend that is tried."""
        return self.letter if self.ids else "this"

    @property
    def short(self) -> str:
        """A few words below its letter."""
        return "a way to mend" if self.key == TRIED else self.name

    @property
    def is_job(self) -> bool:
        """Whether this is the job as it stands."""
        return not self.key


def columns(page: Page) -> list[Column]:
    """The job, each of its what-ifs, those chosen laid together, and a mend that is tried."""
    job = page.job
    ids = [each for each in job.what_ifs if each not in job.laid]
    letters = letters_of(ids)
    found = [Column(AS_IT_STANDS, "As it stands", f"revision {page.revision.number}", page.house)]
    found += [_one(page, id, letters[id]) for id in ids]
    chosen = [each for each in ids if each in page.asked.get("with", ())]
    if len(chosen) > 1:
        found.append(_together(page, tuple(chosen), letters))
    tried = _tried(page)
    return [*found, tried] if tried else found


def column_at(page: Page, key: str) -> Column | None:
    """The column of a key: a what-if, some laid together, or a mend; None where there is none."""
    if key == TRIED:
        return _tried(page)
    ids = tuple(key.split(","))
    if any(each not in page.job.what_ifs or each in page.job.laid for each in ids):
        return None
    letters = letters_of([each for each in page.job.what_ifs if each not in page.job.laid])
    return _one(page, ids[0], letters[ids[0]]) if len(ids) == 1 else _together(page, ids, letters)


def letters_of(ids: list[str]) -> dict[str, str]:
    """A letter for each what-if: A, B, and after Z numbers."""
    return {id: LETTERS[i] if i < len(LETTERS) else str(i + 1) for i, id in enumerate(ids)}


def _one(page: Page, id: str, letter: str) -> Column:
    what_if = page.job.what_ifs[id]
    house, cannot = laid(page, (id,))
    return Column(id, letter, what_if.name or id, house, (id,), what_if.changes, cannot)


def _together(page: Page, ids: tuple[str, ...], letters: dict[str, str]) -> Column:
    house, cannot = laid(page, ids)
    changes = tuple(change for id in ids for change in page.job.what_ifs[id].changes)
    letter = and_words([letters[each] for each in ids])
    return Column(",".join(ids), letter, "laid together", house, ids, changes, cannot)


def _tried(page: Page) -> Column | None:
    asked = next(iter(page.asked.get("try", ())), "")
    mend = mend_at(page.house, asked) if asked else None
    if mend is None:
        return None
    words, given = mend
    house, cannot = _kept(
        page, (TRIED, asked), lambda base: design(base.job.with_changes(given, "try"), since=base)
    )
    changes = tuple(change_of(each) for each in given)
    return Column(TRIED, "Tried", words, house, (), changes, cannot)


def mend_at(house: Design, asked: str) -> tuple[str, tuple[AnyMapping[str, Any], ...]] | None:
    """The words and changes of a mend by ``FINDING@WHERE@INDEX``; None where there is no such."""
    id, _, rest = asked.partition("@")
    where, _, index = rest.rpartition("@")
    for each in house.findings:
        if each.id == id and each.where == where and 0 <= index_of(index) < len(each.mends):
            mend = each.mends[int(index)]
            return (mend.words, mend.changes) if mend.changes else None
    return None


def change_of(given: AnyMapping[str, Any]) -> Change:
    """A change as a mend writes it, in the form a what-if has."""
    verb = next(each for each in ("set", "add", "remove") if each in given)
    return Change(verb, str(given[verb]), node_of(given["to"]) if "to" in given else None)


def laid(page: Page, ids: tuple[str, ...]) -> tuple[Design | None, str]:
    """The design with what-ifs laid in order, or None and why it cannot be; worked out once a revision."""
    if len(ids) == 1:
        return _kept(page, ids, lambda house: house.with_what_if(ids[0]))
    return _kept(page, ids, lambda house: design(house.job.with_what_ifs(*ids), since=house))


def _kept(page: Page, key: tuple[str, ...], laying: Callable[[Design], Design]) -> tuple[Design | None, str]:
    kept: dict[tuple[str, ...], tuple[Design | None, str]] = page.house.__dict__.setdefault("_laid", {})
    if key not in kept:
        try:
            kept[key] = (_told(laying(_base(page)), page.units), "")
        except JobErrors as fault:
            kept[key] = (None, " ".join(f"{each.message} {each.mend}".strip() for each in fault.errors[:3]))
    return kept[key]


def _base(page: Page) -> Design:
    """The design before it was told in a reader's units: what is laid over it serves all readers."""
    state = page.desk.state if page.desk is not None else None
    return state.house if state is not None and state.in_units(page.units) is page.house else page.house


def _told(house: Design, units: Preset) -> Design:
    """A design as a reader is told of it. What the other what-ifs would do to it is not asked again."""
    return replace(house, job=replace(house.job, units=units, what_ifs={}))


def and_words(words: list[str]) -> str:
    """``A, B and C``."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def subject(page: Page, among: list[Column]) -> Column | None:
    """The column that the right page speaks of: where a figure is open, else what was asked for."""
    by_key = {each.key: each for each in among if not each.is_job}
    wanted = next(iter(page.asked.get("laid", ())), "")
    picked = page.picked.removeprefix("what-ifs/") if page.picked.startswith("what-ifs/") else ""
    for key in (wanted, TRIED, picked):
        if key in by_key:
            return by_key[key]
    together = [each for each in by_key.values() if len(each.ids) > 1]
    return next(iter(together or by_key.values()), None)

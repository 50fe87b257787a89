"""Entries that wait beside the job: taken with the edit that makes them right, never laid over another's."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from heatledger.job.again import read_again
from heatledger.job.changes import RIVALS
from heatledger.job.edits import EditError, set_entry
from heatledger.job.errors import JobError, JobErrors
from heatledger.job.model import Job
from heatledger.job.parsing import tree_of
from heatledger.job.text import Node, plain, walk

if TYPE_CHECKING:
    from heatledger.book.records import Revision, WrongEntry

Sentences = tuple[str, str]
"""What is wrong, and how to mend it."""
ANEW = "Type yours again to put it in its place, or leave it as it is now."
"""Said of an entry that another has set meanwhile: it can be read, and only its own writer may put it in."""


@dataclass(frozen=True)
class Reading:
    """A text as read, with the paths of the entries that were taken into it; ``faults`` when it is no job."""

    text: str
    job: Job | None
    taken: tuple[str, ...] = ()
    faults: tuple[JobError, ...] = ()


def read_with_slips(text: str, path: str, slips: Iterable[WrongEntry], since: Job) -> Reading:
    """The job in a text that an edit at ``path`` has made, with the entries that wait where they can be read
    now. Those that another set meanwhile wait for their own writer; one that says in another way what was
    set now is given up."""
    together, taken, said = text, [], _rivals(path)
    given_up: list[str] = []
    for each in slips:
        if each.path in said:
            given_up.append(each.path)
            continue
        if each.path == path or each.mend == ANEW or not each.typed:
            continue
        try:
            together = set_entry(together, each.path, each.typed)
        except (JobErrors, EditError):  # its place is gone, or the text is no job
            continue
        taken.append(each.path)
    if taken:
        try:
            return Reading(together, read_again(together, since), (*taken, *given_up))
        except JobErrors:
            pass
    try:
        return Reading(text, read_again(text, since), tuple(given_up))
    except JobErrors as errors:
        return Reading(text, None, (), tuple(errors.errors))


def clash(now: Revision, job: Job, then: str, path: str) -> Sentences | None:
    """What is wrong when an entry is no longer as it was in the text ``then``, or another that says the same.

    ``now`` is the newest revision, and ``job`` the job in it.
    """
    tree = tree_of(then)
    for each in (path, *_rivals(path)):
        before, after = walk(tree, each), walk(job.source.base, each)
        if _plain(before) != _plain(after):
            break
    else:
        return None
    value = "taken away" if after is None else f"set to {_short(plain(after))}"
    entry = "This entry" if each == path else f"`{each.rpartition('/')[2]}`, which says the same,"
    return f"{entry} was {value} by {now.by or 'another page'} meanwhile, in revision {now.number}.", ANEW


def _rivals(path: str) -> list[str]:
    """The entries beside one that setting it takes away."""
    home, _, last = path.rpartition("/")
    keys = dict.fromkeys(each for group in RIVALS if last in group for each in group if each != last)
    return [f"{home}/{each}" if home else each for each in keys]


def _plain(node: Node | None) -> Any:
    return None if node is None else plain(node)


def _short(value: Any) -> str:
    text = str(value.get("is", "changed") if isinstance(value, dict) else value)
    return f"“{text[:40]}”" if text else "blank"


def told(faults: Iterable[JobError], path: str) -> Sentences:
    """The fault that stands at the entry itself or closest to it, and how many more there are."""
    found = list(faults)

    def far(each: JobError) -> int:
        if each.path == path:
            return 0
        return 1 if path.startswith(each.path) or each.path.startswith(path) else 2

    users = [each for each in found if far(each) == 2 and f"`{path.rpartition('/')[2]}`" in each.message]
    if users and len(users) == len(found):
        return _still_named(path.rpartition("/")[2], users)
    first = min(found, key=far)
    what = first.message if far(first) < 2 else f"{first.path}: {first.message}"
    more = len(found) - 1
    rest = f" The same change is at odds with {more} more." if more else ""
    return what + rest, first.mend


def _still_named(id: str, users: list[JobError]) -> Sentences:
    """What is wrong when a thing is taken away that others still name."""
    # The steps of a path are maps and ids in turn: rooms, living-room, surfaces, north-wall.
    first = ", ".join(each.replace("-", " ") for each in users[0].path.split("/")[1::2])
    more = f" and {len(users) - 1} more" if len(users) > 1 else ""
    return f"“{id}” is still used: by {first}{more}.", "Give them another, then take it out."

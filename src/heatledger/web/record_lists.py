"""Editors of what has no fixed keys: fittings, thresholds, half-ranges, changes of a what-if, decisions."""

from __future__ import annotations

from collections.abc import Mapping as Keyed
from dataclasses import dataclass
from typing import TYPE_CHECKING

from markupsafe import Markup

from heatledger.catalog.tubes import FITTING_KINDS
from heatledger.job.fields import Field
from heatledger.job.known import RANGES
from heatledger.job.model import KNOWN
from heatledger.job.shapes import RESERVED
from heatledger.job.text import Listing, Mapping, Node, Scalar, walk
from heatledger.ledger.findings import Finding, Weight
from heatledger.web.entry_markup import plainly
from heatledger.web.page import Page
from heatledger.web.record_entries import in_words, offering

TITLES = {
    "limits": "Thresholds of findings",
    "ranges": "How far off entries may be",
    "decisions": "Decisions",
    "": "The job",
}
"""What a part of the job is called where the words of its key say too much."""
if TYPE_CHECKING:
    from heatledger.steps.review.kinds import Kind

_INPUT = Markup(
    '<input class="in{}" data-entry="{}" value="{}" data-kept="{}" size="{}" aria-label="{}"'
    ' placeholder="{}" autocomplete="off" spellcheck="false">'
)


@dataclass(frozen=True)
class Item:
    """One row: what it is of, its entries, and the path that is taken away with it."""

    path: str
    words: str
    entries: tuple[Markup, ...]
    note: str = ""


@dataclass(frozen=True)
class Editor:
    """Rows of one kind, and what may be chosen for one more."""

    path: str
    kind: str
    title: str
    head: tuple[str, ...]
    items: tuple[Item, ...]
    choices: tuple[tuple[str, str], ...] = ()

    @property
    def anchor(self) -> str:
        """Its id on the page."""
        return "list-" + self.path.replace("/", "-")


def editor_of(page: Page, path: str, field: Field) -> Editor:
    """The editor of what stands at a path, by its key."""
    words = TITLES.get(field.key, in_words(field.key) if field.key in RESERVED else field.words)
    title = words[:1].upper() + words[1:]
    node = walk(page.job.source.base, path)
    given = node.entries if isinstance(node, Mapping) else {}
    if field.key == "fittings":
        return _fittings(page, path, title, given)
    if field.key == "changes":
        return _changes(page, path, title, node)
    if field.key == "limits":
        return _limits(page, path, title, given)
    if field.key == "ranges":
        return _ranges(page, path, title, given)
    note = "Kept as it stands in the file until a sheet reads it."
    items = tuple(Item(f"{path}/{key}", in_words(key), (_shown(each),)) for key, each in given.items())
    assert field.key in RESERVED or not items
    return Editor(path, "kept", title, (note,), items)


def _fittings(page: Page, path: str, title: str, given: Keyed[str, Node]) -> Editor:
    items = tuple(
        Item(
            f"{path}/{kind}", FITTING_KINDS.get(kind, kind), (page.entry(f"{path}/{kind}", f"count, {kind}"),)
        )
        for kind in given
        if kind != "known"
    )
    left = tuple((kind, words) for kind, words in FITTING_KINDS.items() if kind not in given)
    return Editor(path, "fittings", title, ("Kind", "Count"), items, left)


def _limits(page: Page, path: str, title: str, given: Keyed[str, Node]) -> Editor:
    usual = limits_of_findings()
    items = tuple(
        Item(f"{path}/{name}", usual[name][0] if name in usual else in_words(name),
             (page.entry(f"{path}/{name}", f"threshold, {in_words(name)}"),),
             f"usually {usual[name][1]}" if name in usual else "")
        for name in given
    )  # fmt: skip
    left = tuple(
        (name, f"{words}, usually {text}") for name, (words, text) in usual.items() if name not in given
    )
    return Editor(path, "limits", title, ("Limits", "Threshold of this job"), items, left)


def limits_of_findings() -> dict[str, tuple[str, str]]:
    """What each threshold limits and its usual value, by its name."""
    from heatledger.steps.review import kinds

    return {
        limit.name: (f"{in_words(kind.id)}: {limit.words}", limit.text)
        for kind in kinds.KINDS.values()
        for limit in kind.limits
    }


def _ranges(page: Page, path: str, title: str, given: Keyed[str, Node]) -> Editor:
    items = []
    for name, each in given.items():
        own = each.entries if isinstance(each, Mapping) else {}
        usual = RANGES.get(name, {})
        entries = tuple(
            _input(page, f"{path}/{name}/{known}", _text(own.get(known)), f"half-range of {name}, {known}",
                   usual[known].words if known in usual else "")
            for known in KNOWN
        )  # fmt: skip
        items.append(Item(f"{path}/{name}", in_words(name), entries))
    left = tuple(
        (f"{name}/{known}", f"{in_words(name)}, {known}, usually {half.words}")
        for name, by in RANGES.items()
        if name not in given
        for known, half in by.items()
    )
    return Editor(path, "ranges", title, ("Of", *KNOWN), tuple(items), left)


def _changes(page: Page, path: str, title: str, node: Node | None) -> Editor:
    items = []
    for i, each in enumerate(node.items if isinstance(node, Listing) else ()):
        here = f"{path}/{i}"
        change = each.entries if isinstance(each, Mapping) else {}
        verb = next((one for one in ("set", "add", "remove") if one in change), "set")
        target = page.entry(f"{here}/{verb}", f"path to {verb}", wide=30)
        listed = offering(target, "set")
        to = change.get("to")
        is_value = isinstance(to, Scalar) or (isinstance(to, Mapping) and "is" in to.entries)
        value = Markup("") if verb == "remove" else page.entry(f"{here}/to") if is_value else _shown(to)
        items.append(Item(here, verb, (listed, value)))
    choices = tuple((each, each) for each in ("set", "add", "remove"))
    return Editor(path, "changes", title, ("Does", "Where", "To"), tuple(items), choices)


def _shown(node: Node | None) -> Markup:
    """What stands in the job as text that is only read."""
    return Markup('<span class="q2">{}</span>').format(in_braces(node))


def in_braces(node: Node | None) -> str:
    """A piece of the job in one line."""
    if isinstance(node, Mapping):
        return ", ".join(f"{key}: {in_braces(each)}" for key, each in node.entries.items())
    if isinstance(node, Listing):
        return "; ".join(in_braces(each) for each in node.items)
    return node.text if isinstance(node, Scalar) else ""


def _text(node: Node | None) -> str:
    if isinstance(node, Mapping):
        node = node.entries.get("is")
    return node.text if isinstance(node, Scalar) else ""


def _input(page: Page, path: str, typed: str, words: str, hint: str = "", wide: int = 0) -> Markup:
    wrong = page.wrong.get(path)
    shown = wrong.typed if wrong else typed
    size = wide or min(max(len(shown or hint), 3), 34)
    made = _INPUT.format(" bad" if wrong else "", path, shown, shown, size, words, hint)
    if wrong:
        made += Markup('<span class="fault">{} {}</span>').format(plainly(wrong.what), plainly(wrong.mend))
    return made


@dataclass(frozen=True)
class Deciding:
    """A decision, or what can be decided: its key, its three entries, the finding it answers."""

    key: str
    title: str
    given: bool
    entries: tuple[tuple[str, Markup], ...]
    finding: str
    asks: tuple[str, ...]
    open: tuple[tuple[str, str], ...]
    made: tuple[tuple[str, str], ...]


DECIDED = (("is", "What was decided"), ("because", "Because"), ("by", "By"))


def decision_of(page: Page, key: str) -> Deciding:
    """The decision of a key (a finding, or finding@place); all of them and what is open without one."""
    from heatledger.steps.review import kinds

    node = page.job.source.base.entries.get("decisions")
    every = node.entries if isinstance(node, Mapping) else {}
    own = every.get(key)
    texts = own.entries if isinstance(own, Mapping) else {}
    entries = tuple(
        (words, _input(page, f"decisions/{key}/{name}", _text(texts.get(name)), words.lower(), wide=40))
        for name, words in DECIDED
    )
    found = page.house.findings if page.ready else ()
    open = tuple((key_of(each.id, each.where), each.what) for each in found if each.decided is None)
    kind = kinds.KINDS.get(key.partition("@")[0])
    here = next((each for each in found if key_of(each.id, each.where) == key), None)
    asks = _asks(kind, here)
    made = tuple((each, _text(inner.entries.get("is")) if isinstance(inner, Mapping) else "")
                 for each, inner in every.items())  # fmt: skip
    title = in_words(key.partition("@")[0])
    return Deciding(key, title, own is not None, entries, dict(open).get(key, ""), asks, open, made)


def _asks(kind: Kind | None, here: Finding | None) -> tuple[str, ...]:
    """What a decision must say to settle a finding, and when it settles nothing."""
    said = []
    if kind is not None and kind.weight is Weight.MUST_FIX and not kind.settled_by_words:
        said.append(
            "Words alone do not settle this one: while what makes it stand is so, it stays on the list."
        )
    if kind is not None and kind.says_where:
        said.append("Say in the decision where in the house it is.")
    if here is not None and here.caution:
        said += [here.caution, "Someone could be hurt here: the decision needs a name."]
    return tuple(said)


def key_of(finding: str, where: str) -> str:
    """The key of a decision on one finding at one place."""
    return f"{finding}@{where}" if where else finding

"""Says what an edit has changed: the entries one by one, and all of it in one line."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from heatledger.job.edit_checked import VALUE_KEYS
from heatledger.job.edit_trees import Steps, node_at
from heatledger.job.fields import Field, Shape
from heatledger.job.model import Job
from heatledger.job.reading import in_words
from heatledger.job.shapes import DECISION, JOB
from heatledger.job.text import Listing, Mapping, Node, Scalar, plain

LONGEST = 60
"""Letters of a text that are quoted in a line; notes can be long."""
_BESIDE = {"known": "how well it is known", "within": "how far off it may be", "because": "reason"}
_FEET, _INCHES = re.compile(r"(?<=\d)'"), re.compile(r'(?<=[\d½¼¾])"')
_MINUS = re.compile(r"(?<![\w.])-(?=\.?\d)")
Form = Shape | Field | None


@dataclass(frozen=True)
class InputChange:
    """One entry that changed. ``words`` name it; ``before`` and ``after`` are as typed, empty when not there.

    ``kind``: changed, added or removed (a whole thing), order (the things of a section stand in another).
    """

    path: str
    words: str
    before: str
    after: str
    kind: str = "changed"


def inputs_changed(before: Mapping, after: Mapping) -> list[InputChange]:
    """The entries that differ between two trees, in the order of the later one; a whole thing is one line."""
    return list(_Comparison(before, after).inside(before, after, JOB, ()))


def said_of(before: Job, after: Job) -> str:
    """What has changed between two revisions of a job, in one line."""
    changes = inputs_changed(before.source.base, after.source.base)
    if not changes:
        same = before.source.text == after.source.text
        return "Nothing changed" if same else "Comments or layout changed"
    if len(changes) == 1:
        return line_of_change(changes[0])
    instead = _one_for_another(changes)
    if instead:
        return instead
    homes = {each.words.rpartition(": ")[0] for each in changes}
    kinds = {each.kind for each in changes}
    what = (
        {"added": "added", "removed": "removed"}.get(kinds.pop(), "changed") if len(kinds) == 1 else "changed"
    )
    home = homes.pop() if len(homes) == 1 else ""
    return f"{home}: {len(changes)} entries {what}" if home else f"{len(changes)} entries {what}"


def as_shown(typed: str) -> str:
    """A text as typed, with the signs of print for feet, inches and minus; long ones are cut."""
    line = " ".join(typed.split())
    line = line if len(line) <= LONGEST else line[: LONGEST - 1].rstrip() + "…"
    return _MINUS.sub("−", _INCHES.sub("″", _FEET.sub("′", line)))


def line_of_change(change: InputChange) -> str:
    """One change in one line: Kitchen, north wall: length 12′ 6″, was 12′ 0″."""
    if change.kind == "order":
        return f"{change.words}: order changed"
    if change.kind != "changed":
        return f"{change.words} {change.kind}"
    before, after = as_shown(change.before), as_shown(change.after)
    home, _, what = change.words.rpartition(": ")
    if what == "name shown" and before and after:
        return f"{before} is now called {after}"
    said = f"{what} {after}" if after else f"{what} cleared"
    if not home:
        said = f"{what}: {after}" if after else said
    line = f"{home}: {said}" if home else said
    return f"{line}, was {before}" if before else line


def _one_for_another(changes: list[InputChange]) -> str:
    """The line of an entry that has taken the place of another way to say the same; else empty."""
    given = [each for each in changes if each.after]
    gone = [each for each in changes if not each.after]
    homes = {each.path.rpartition("/")[0] for each in changes}
    if (
        len(given) != 1
        or len(homes) != 1
        or given[0].before
        or any(each.kind != "changed" for each in changes)
    ):
        return ""
    was = " and ".join(f"{each.words.rpartition(': ')[2]} {as_shown(each.before)}" for each in gone)
    return f"{line_of_change(given[0])}, was {was}"


class _Comparison:
    """Two trees; names are taken from the later, and from the earlier where a thing is gone."""

    def __init__(self, before: Mapping, after: Mapping) -> None:
        self.before = before
        self.after = after

    def inside(self, old: Node | None, new: Node | None, form: Form, steps: Steps) -> Iterator[InputChange]:
        """The changes between two mappings of one form."""
        was = old.entries if isinstance(old, Mapping) else {}
        now = new.entries if isinstance(new, Mapping) else {}
        things = _holds_things(form)
        for key in [*now, *(each for each in was if each not in now)]:
            here = (*steps, key)
            yield from self.entry(was.get(key), now.get(key), _form_of(form, key), here, things)
        stayed = [each for each in now if each in was]
        if things and stayed != [each for each in was if each in now]:
            names = [", ".join(self.name((*steps, each)) for each in keys) for keys in (was, now)]
            yield InputChange("/".join(steps), self.words(steps), names[0], names[1], "order")

    def entry(
        self, old: Node | None, new: Node | None, form: Form, steps: Steps, is_thing: bool
    ) -> Iterator[InputChange]:
        """The changes of one entry."""
        if old is new:
            return
        path, key = "/".join(steps), steps[-1]
        holds_more = isinstance(form, Shape) or _holds_things(form)
        if key == "known" and is_thing:
            is_thing = holds_more = False
        one_side = old is None or new is None
        if one_side and (is_thing or isinstance(form, Shape)):
            there = old if new is None else new
            if isinstance(there, Mapping) or is_thing:
                name = self.title(steps)
                before, after = (name, "") if new is None else ("", name)
                yield InputChange(path, name, before, after, "removed" if new is None else "added")
                return
        maps = isinstance(old, Mapping) or isinstance(new, Mapping)
        if maps and (holds_more or not (_is_value(old) or _is_value(new))):
            yield from self.inside(old, new, form, steps)
        elif isinstance(old, Listing) or isinstance(new, Listing):
            if old is None or new is None or plain(old) != plain(new):
                yield InputChange(path, self.words(steps), _count(old), _count(new))
        else:
            yield from self.value(_said(old), _said(new), steps)

    def value(self, old: dict[str, str], new: dict[str, str], steps: Steps) -> Iterator[InputChange]:
        """The changes of a single value and of what is said beside it."""
        if old == new:
            return
        path, words = "/".join(steps), self.words(steps)
        for key in ("is", *_BESIDE):
            before, after = old.get(key, ""), new.get(key, "")
            if before != after:
                beside = "" if key == "is" else f", {_BESIDE[key]}"
                yield InputChange(path if key == "is" else f"{path}/{key}", words + beside, before, after)

    # words

    def name(self, steps: Steps) -> str:
        """The name of a thing, of the later tree where it is there."""
        for tree in (self.after, self.before):
            node = node_at(tree, steps)
            if isinstance(node, Mapping):
                name = node.entries.get("name")
                if isinstance(name, Scalar) and name.text.strip():
                    return name.text.strip()
                break
        return in_words(steps[-1])

    def title(self, steps: Steps) -> str:
        """The names of the things and parts on the way: Kitchen, north wall."""
        found: list[str] = []
        form: Form = JOB
        for i, key in enumerate(steps):
            inner = _form_of(form, key)
            here = steps[: i + 1]
            if _holds_things(form):
                before = (
                    {"what-ifs": "What-if ", "decisions": "Decision on "}.get(steps[0], "") if i == 1 else ""
                )
                name = key if steps[0] == "decisions" else self.name(here)
                found.append(f"{before}{name}" if not found else _small(f"{before}{name}"))
            elif isinstance(inner, Shape) and isinstance(form, Shape):
                words = self.name(here) if key == "boiler" and len(steps) == i + 1 else _field(form, key)
                found.append(_small(words) if found else _large(words))
            elif not _holds_things(inner):
                found.append(_small(key) if found else _large(_field(form, key)))
            form = inner
        return ", ".join(found)

    def words(self, steps: Steps) -> str:
        """What an entry is called, behind the thing it belongs to."""
        form: Form = JOB
        for key in steps[:-1]:
            form = _form_of(form, key)
        if _holds_things(form) and steps[-1] == "known":
            form = None
        what = _field(form, steps[-1])
        home = self.title(steps[:-1]) if steps[:-1] else ""
        if not home:
            # A section of things has no thing in front, only its own words.
            above = _field(JOB, steps[0]) if len(steps) > 1 else ""
            return f"{_large(above)}: {what}" if above else _large(what)
        return f"{home}: {what}"


def _form_of(form: Form, key: str) -> Form:
    """The form of an entry inside another."""
    if isinstance(form, Shape):
        field = form.by_key.get(key)
        return field.shape if field is not None and field.kind == "shape" else field
    if isinstance(form, Field) and _holds_things(form):
        return DECISION if form.key == "decisions" else form.shape
    return None


def _holds_things(form: Form) -> bool:
    return isinstance(form, Field) and (form.kind == "map" or form.key == "decisions")


def _field(form: Form, key: str) -> str:
    field = form.by_key.get(key) if isinstance(form, Shape) else None
    if field is not None:
        return field.words
    return _BESIDE.get(key, key)


def _is_value(node: Node | None) -> bool:
    return isinstance(node, Mapping) and bool(node.entries) and set(node.entries) <= VALUE_KEYS


def _said(node: Node | None) -> dict[str, str]:
    """A single value, and what is said beside it, by key."""
    if isinstance(node, Scalar):
        return {"is": node.text}
    inside = node.entries if isinstance(node, Mapping) else {}
    return {key: each.text for key, each in inside.items() if isinstance(each, Scalar)}


def _count(node: Node | None) -> str:
    if not isinstance(node, Listing):
        return ""
    return "1 line" if len(node.items) == 1 else f"{len(node.items)} lines"


def _small(words: str) -> str:
    """A name inside a line, its first letter small where the second is."""
    return words[:1].lower() + words[1:] if words[1:2].islower() else words


def _large(words: str) -> str:
    return words[:1].upper() + words[1:]

"""Reads a job again after an edit: what stands on unchanged text is taken over from the job before.

A thing is taken over when its own part of the tree is as it was, and so is all it reads beside that: the
units, the half-ranges, how well its section is known, and what it names. All else is read as ever, so the
job is the same as one read from nothing.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from typing import TYPE_CHECKING, Any, TypeVar

from heatledger.job.text import Listing, Mapping, Node, Scalar, plain

if TYPE_CHECKING:
    from heatledger.job.model import Construction, Job, Level, Opening, Room, Site, Surface, Unheated
    from heatledger.job.system_model import Circuit, Emitter, Pipe, Plant

    S = TypeVar("S", Room, Unheated)
    Names = dict[str, dict[str, Node]]

_HOMES = {"room": "rooms", "unheated": "unheated", "neighbor": "neighbors"}
_ALL_READ = ("units", "ranges", "known", "format")
"""Entries of the job that all others are read by."""


def read_again(text: str, since: Job) -> Job:
    """The job in a text that has come from that of an earlier job by an edit.

    It equals ``read_job(text)`` in everything a design reads, and raises JobErrors as that does.
    """
    from heatledger.job.edit_letters import MARK
    from heatledger.job.errors import JobErrors
    from heatledger.job.load import read_tree
    from heatledger.job.model import JobSource
    from heatledger.job.reparse import Parsed, parsed

    name = since.source.file_name
    bare = text.removeprefix(MARK)
    try:
        base = Parsed(since.source.text.removeprefix(MARK), since.source.base)
        found = parsed(text if bare.startswith(MARK) else bare, base)
    except JobErrors as why:
        raise JobErrors(why.errors, name) from None
    source = JobSource(text, name, found.tree, found.tree)
    unlaid = since.source.tree is since.source.base and found.before is since.source.base
    return read_tree(found.tree, source, since, found.steps if unlaid else ())


def same_typed(one: Node | None, other: Node | None) -> bool:
    """True when two parts of a tree were typed alike, in the same order, and changed by the same what-ifs."""
    if one is other:
        return True
    if isinstance(one, Scalar):
        return (
            isinstance(other, Scalar)
            and one.text == other.text
            and one.is_empty == other.is_empty
            and one.by == other.by
            and one.replaced == other.replaced
        )
    if isinstance(one, Mapping):
        if not isinstance(other, Mapping) or len(one.entries) != len(other.entries):
            return False
        for key, before in zip(one.entries, other.entries, strict=True):
            if key != before or not same_typed(one.entries[key], other.entries[key]):
                return False
        return True
    if isinstance(one, Listing) and isinstance(other, Listing):
        return len(one.items) == len(other.items) and all(map(same_typed, one.items, other.items))
    return False


class Again:
    """An earlier job beside the tree that is read now."""

    def __init__(self, since: Job, tree: Mapping, changed: tuple[str, ...] = ()) -> None:
        self.since = since
        self.tree = tree
        self.before = since.source.tree
        self.holds = all(same_typed(_entry(tree, key), _entry(self.before, key)) for key in _ALL_READ)
        """True when what all entries are read by is as it was; without it nothing is taken over."""
        self._known: dict[str, bool] = {}
        self.changed = changed
        """Path of the only entry that can have changed, where that is told."""

    def raw(self, mapping: Mapping) -> dict[str, Any]:
        """The whole job as nested texts; sections typed alike are those of the earlier job."""
        return {key: self._raw(each, key) for key, each in mapping.entries.items()}

    def _raw(self, now: Node, key: str) -> Any:
        before, earlier = _entry(self.before, key), self.since.raw.get(key)
        if before is not None and (self._untouched((key,)) or same_typed(now, before)):
            return earlier
        if not isinstance(now, Mapping) or not isinstance(earlier, dict):
            return plain(now)
        return {
            inner: earlier[inner]
            if inner in earlier and same_typed(each, _entry(before, inner))
            else plain(each)
            for inner, each in now.entries.items()
        }

    def is_same(self, *steps: str) -> bool:
        """True when an entry was typed alike and all above it are known alike."""
        if not self.holds:
            return False
        now: Node | None = self.tree
        before: Node | None = self.before
        for i, step in enumerate(steps):
            if i and not self._known_alike(steps[:i], now, before):
                return False
            now, before = _entry(now, step), _entry(before, step)
        return self._untouched(steps) or same_typed(now, before)

    def _untouched(self, steps: tuple[str, ...]) -> bool:
        """True when it is told that what has changed lies elsewhere."""
        shorter = min(len(steps), len(self.changed))
        return shorter > 0 and steps[:shorter] != self.changed[:shorter]

    def _known_alike(self, steps: tuple[str, ...], now: Node | None, before: Node | None) -> bool:
        path = "/".join(steps)
        found = self._known.get(path)
        if found is None:
            found = self._known[path] = same_typed(_entry(now, "known"), _entry(before, "known"))
        return found

    # what can be taken over, by its kind

    def site(self) -> Site | None:
        """The site."""
        return self.since.site if self.is_same("site") else None

    def construction(self, key: str) -> Construction | None:
        """A construction by its id."""
        found = self.since.constructions.get(key)
        return found if found is not None and self.is_same("constructions", key) else None

    def level(self, key: str) -> Level | None:
        """A level by its id."""
        found = self.since.levels.get(key)
        return found if found is not None and self.is_same("levels", key) else None

    def room(
        self, key: str, made: dict[str, Construction], levels: dict[str, Level], names: Names, site: Site
    ) -> Room | None:
        """The room as it was before others gave it surfaces."""
        found = self.since.rooms.get(key)
        if found is None or not self.is_same("rooms", key):
            return None
        own = _entry(_entry(self.tree, "rooms"), key)
        room = self._space(found, made, levels, names)
        if room is not None and _entry(own, "indoor") is None and room.indoor is not site.indoor:
            return replace(room, indoor=site.indoor)
        return room

    def unheated(
        self, key: str, made: dict[str, Construction], levels: dict[str, Level], names: Names
    ) -> Unheated | None:
        """The unheated space as it was before others gave it surfaces."""
        found = self.since.unheated.get(key)
        if found is None or not self.is_same("unheated", key):
            return None
        return self._space(found, made, levels, names)

    def _space(
        self, found: S, made: dict[str, Construction], levels: dict[str, Level], names: Names
    ) -> S | None:
        if found.level is not None and levels.get(found.level.id) is not found.level:
            return None
        own: dict[str, Surface] = {}
        changed = False
        for key, each in found.surfaces.items():
            if each.from_other:
                changed = True
                continue
            now = _made_of(each, made) if _stands(each, names) else None
            if now is None:
                return None
            own[key] = now
            changed = changed or now is not each
        return replace(found, surfaces=own) if changed else found

    def shared(self, now: dict[str, S], before: dict[str, S]) -> dict[str, S]:
        """The spaces with the surfaces they were given; those that are as before are those from before."""
        return {key: _as_before(each, before.get(key)) for key, each in now.items()}

    def emitter(self, key: str, rooms: Collection[str]) -> Emitter | None:
        """An emitter whose room is there."""
        found = self.since.system.emitters.get(key)
        if found is None or found.room not in rooms or not self.is_same("emitters", key):
            return None
        return found

    def circuit(self, key: str, zones: Collection[str], circulators: Collection[str]) -> Circuit | None:
        """A circuit whose zone and circulators are there."""
        found = self.since.system.circuits.get(key)
        if found is None or (found.zone and found.zone not in zones):
            return None
        # Without a name of its own a circuit is driven by the only circulator there is.
        if list(circulators) != list(self.since.system.plant.circulators):
            return None
        return found if self.is_same("circuits", key) else None

    def run(self, circuit: str, key: str) -> Pipe | None:
        """A run of a circuit in which other entries have changed."""
        found = self.since.system.circuits.get(circuit)
        if found is None or key not in found.runs:
            return None
        here = ("circuits", circuit)
        if not (self.is_same(*here, "kind") and self.is_same(*here, "tube")):
            return None
        return found.runs[key] if self.is_same(*here, "runs", key) else None

    def plant(self, names: Names) -> Plant | None:
        """The boiler room."""
        found = self.since.system.plant
        through = found.mains.through if found.mains is not None else ""
        home, _, name = through.partition("/")
        if name and name not in names[home]:
            return None
        return found if self.is_same("plant") else None


def _entry(node: Node | None, key: str) -> Node | None:
    return node.entries.get(key) if isinstance(node, Mapping) else None


def _stands(surface: Surface, names: Names) -> bool:
    """True when what is beyond a surface is there."""
    beyond = surface.beyond
    return not beyond.id or beyond.id in names[_HOMES[beyond.kind]]


def _made_of(surface: Surface, made: dict[str, Construction]) -> Surface | None:
    """The surface with its constructions as they are now; None when one is gone or of another kind."""
    named: tuple[Surface | Opening, ...] = (surface, *surface.openings.values())
    if all(made.get(each.construction.id) is each.construction for each in named):
        return surface
    for each in named:
        now = made.get(each.construction.id)
        if now is None or now.kind != each.construction.kind:
            return None
    openings = {
        key: replace(each, construction=made[each.construction.id]) for key, each in surface.openings.items()
    }
    return replace(surface, construction=made[surface.construction.id], openings=openings)


def _as_before(now: S, before: S | None) -> S:
    """The space from before where it is the same; one read anew stays, as its order may be another."""
    if before is None or now.raw is not before.raw or list(now.surfaces) != list(before.surfaces):
        return now
    return before if now == before else now

"""Lays what-ifs over a job: set, add and remove on the tree of what was typed, then read again.

Nothing of the file changes. The values a what-if puts in keep their place in the job, and say which
what-if put them there and what stood there before.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from collections.abc import Mapping as AnyMapping
from dataclasses import replace
from typing import Any

from heatledger.job.constructions import WAYS
from heatledger.job.errors import JobError, JobErrors
from heatledger.job.model import Change, Job, WhatIf
from heatledger.job.reading import offer
from heatledger.job.text import Mapping, Node, Scalar, node_of, plain, walk
from heatledger.job.what_ifs import VERBS, fault_of

RIVALS: tuple[tuple[str, ...], ...] = (
    WAYS, ("changes", "exposed_sides"), ("size", "area"), ("size", "length"), ("size", "height"),
    ("size", "width"), ("size", "floor_area"), ("volume", "floor_area"), ("rating", "output"),
    ("output", "edr"), ("rated_water", "rated_supply"), ("rated_water", "rated_return"),
    ("energy", "volume", "gas"),
)  # fmt: skip
"""Ways to say one thing: setting one takes the others away."""


def with_what_ifs(job: Job, ids: Sequence[str]) -> Job:
    """The job with what-ifs of its own laid over it, in order, after those laid already."""
    unknown = [each for each in ids if each not in job.what_ifs]
    if unknown:
        raise JobErrors(
            [
                JobError(
                    "unknown-what-if",
                    f"what-ifs/{each}",
                    0,
                    f"There is no what-if `{each}`.",
                    offer(each, job.what_ifs),
                )
                for each in unknown
            ],
            job.source.file_name,
        )
    new = [job.what_ifs[each] for each in ids]
    return _laid(job, new, {each.id for each in new})


def with_changes(job: Job, changes: Iterable[AnyMapping[str, Any]], name: str = "change") -> Job:
    """The job with changes given as dicts. Where a what-if set the value before, the change wins."""
    made = []
    for each in changes:
        verbs = [verb for verb in VERBS if verb in each]
        if len(verbs) != 1:
            raise JobErrors(
                [JobError("what-if-change", "", 0, f"{dict(each)} is not one of set, add and remove.")]
            )
        to = node_of(each["to"]) if "to" in each else None
        if to is None and verbs[0] != "remove":
            raise JobErrors(
                [JobError("what-if-no-value", each[verbs[0]], 0, f"It is not said what to {verbs[0]}.")]
            )
        made.append(Change(verbs[0], each[verbs[0]], to))
    return _laid(job, [WhatIf(name, name.capitalize(), tuple(made))], set())


def _laid(job: Job, new: list[WhatIf], strict: set[str]) -> Job:
    from heatledger.job.load import read_tree

    source = job.source
    earlier = {each.id for each in source.laid if each.id in job.what_ifs}
    laid = (*source.laid, *new)
    layer = _Layer(source.base, strict | earlier)
    for each in laid:
        layer.lay(each)
    if layer.errors:
        raise JobErrors(layer.errors, source.file_name)
    try:
        return read_tree(layer.tree, replace(source, tree=layer.tree, laid=laid), job)
    except JobErrors as errors:
        told = [_told_of_removal(each, layer) for each in errors.errors]
        raise JobErrors(told, source.file_name) from None


_NAMED_IN = {
    "construction": "constructions/", "level": "levels/", "beyond": "", "room": "rooms/",
    "thermostat": "rooms/", "zone": "zones/", "circulator": "plant/circulators/", "through": "",
}  # fmt: skip
"""Keys that name another thing of the job, with what stands before the name in its path."""


def _gone(error: JobError, layer: _Layer) -> tuple[str, str]:
    """The path of what an error says is not there, and the what-if that named it, if one did."""
    node = walk(layer.tree, error.path)
    last = error.path.rpartition("/")[2]
    if error.code == "unknown-emitter":
        # A run is named after its emitter.
        return f"emitters/{last}", ""
    before = _NAMED_IN.get(last)
    if before is None or not isinstance(node, Scalar) or not error.code.startswith("unknown-"):
        return "", ""
    return f"{before}{node.text.strip()}", node.by


def _told_of_removal(error: JobError, layer: _Layer) -> JobError:
    """An error about a name that is gone, with the what-if that removed it; any other as it is."""
    gone, by = _gone(error, layer)
    what_if, verb = layer.touched.get(gone, ("", ""))
    if verb != "remove":
        return error
    own = f"the what-if `{by}` names" if by else "the job still names"
    message = f"The what-if `{what_if}` removes `{gone}`, which {own} in `{error.path}`."
    place = error.path if error.code == "unknown-emitter" else error.path.rpartition("/")[0]
    mend = f"Let `{what_if}` also set or remove `{place}`."
    if by:
        mend = "Lay them one at a time."
    return replace(error, message=message, mend=mend)


class _Layer:
    """A tree with what-ifs laid over it one by one, and who changed what."""

    def __init__(self, tree: Mapping, strict: set[str]) -> None:
        self.tree = tree
        self.strict = strict
        self.touched: dict[str, tuple[str, str]] = {}
        self.errors: list[JobError] = []

    def lay(self, what_if: WhatIf) -> None:
        """Every change of one what-if, in order."""
        for change in what_if.changes:
            clash = self.clash(change, what_if.id) if what_if.id in self.strict else None
            fault = None if clash else self.fault(change, what_if.id)
            if clash or fault:
                code, message, mend = clash or fault or ("", "", "")
                self.errors.append(JobError(code, change.path, change.line, message, mend))
                continue
            if change.kind == "remove" and walk(self.tree, change.path) is None:
                continue
            same = change.kind != "remove" and self.is_same(change)
            if not same:
                self.apply(change, what_if.id)
            self.touched[change.path] = (what_if.id, change.kind)

    def is_same(self, change: Change) -> bool:
        node = walk(self.tree, change.path)
        return node is not None and change.path in self.touched and plain(node) == plain(change.to)

    def fault(self, change: Change, id: str) -> tuple[str, str, str] | None:
        """A change whose target is not there, or that adds what is there."""
        if change.kind == "remove" and self.touched.get(change.path, ("", ""))[1] == "remove":
            return None
        if change.kind == "add" and self.is_same(change):
            return None
        return fault_of(self.tree, change)

    def clash(self, change: Change, id: str) -> tuple[str, str, str] | None:
        """Another what-if that set the value differently, or took the target away."""
        for path, (other, kind) in self.touched.items():
            if other == id or not _meet(path, change.path):
                continue
            if kind == "remove":
                if change.kind == "remove" or (change.kind == "add" and path == change.path):
                    continue
                return (
                    "what-if-gone",
                    f"The what-if `{id}` changes `{change.path}`, and the what-if `{other}` has removed "
                    f"`{path}`.",
                    "Lay them one at a time.",
                )
            if change.kind == "remove":
                return (
                    "what-if-gone",
                    f"The what-if `{id}` removes `{change.path}`, and the what-if `{other}` has changed "
                    f"`{path}`.",
                    "Lay them one at a time.",
                )
            if self.differs(path, change):
                return (
                    "what-if-conflict",
                    f"The what-ifs `{other}` and `{id}` set `{change.path}` differently.",
                    "Lay them one at a time, or make them agree.",
                )
        return None

    def differs(self, path: str, change: Change) -> bool:
        """True when a change puts something else where another what-if has set a value."""
        if path.startswith(f"{change.path}/"):
            inner = walk(node_of(change.to), path[len(change.path) + 1 :])
            now = walk(self.tree, path)
            return inner is None or now is None or plain(inner) != plain(now)
        now = walk(self.tree, change.path)
        if now is None:
            return path.rpartition("/")[0] == change.path.rpartition("/")[0]
        return bool(plain(now) != plain(change.to))

    def apply(self, change: Change, id: str) -> None:
        """Put the change into the tree; the nodes on the way are copied, the rest is shared."""
        old = walk(self.tree, change.path)
        if change.kind == "remove":
            self.tree = _put(self.tree, change.path.split("/"), None, 0, ())
            return
        head, _, last = change.path.rpartition("/")
        parent = walk(self.tree, head) if head else self.tree
        rivals = [each for group in RIVALS if last in group for each in group if each != last]
        gone = [each for each in rivals if isinstance(parent, Mapping) and each in parent.entries]
        if old is None and gone and isinstance(parent, Mapping):
            old = parent.entries[gone[0]]
        node = _stamped(node_of(change.to), id, old)
        self.tree = _put(self.tree, change.path.split("/"), node, change.line, gone)


def _meet(first: str, second: str) -> bool:
    """True when two paths are one, one is inside the other, or they are two ways to say one thing."""
    if first == second or first.startswith(f"{second}/") or second.startswith(f"{first}/"):
        return True
    head, _, last = first.rpartition("/")
    other_head, _, other = second.rpartition("/")
    return head == other_head and any(last in group and other in group for group in RIVALS)


def _put(tree: Mapping, steps: list[str], node: Node | None, line: int, gone: Iterable[str]) -> Mapping:
    made = replace(tree, entries=dict(tree.entries), key_lines=dict(tree.key_lines))
    first, rest = steps[0], steps[1:]
    if rest:
        inner = made.entries.get(first)
        if not isinstance(inner, Mapping):
            inner = Mapping(line)
            made.key_lines[first] = line
        made.entries[first] = _put(inner, rest, node, line, gone)
        return made
    for each in gone:
        made.entries.pop(each, None)
    if node is None:
        made.entries.pop(first, None)
    else:
        made.entries[first] = node
        made.key_lines[first] = line
    return made


def _stamped(node: Node, by: str, old: Node | None) -> Node:
    """A copy of what a what-if puts in, with its name and with what stood there before."""
    if isinstance(node, Scalar):
        if isinstance(old, Mapping) and isinstance(old.entries.get("is"), Scalar):
            old = old.entries["is"]
        before = old.replaced or old.text if isinstance(old, Scalar) else ""
        return replace(node, by=by, replaced=before)
    if isinstance(node, Mapping):
        is_value = "is" in node.entries
        inside = {
            key: _stamped(
                each, by, (old if is_value and key == "is" and isinstance(old, Scalar) else _inner(old, key))
            )
            for key, each in node.entries.items()
        }
        return replace(node, entries=inside)
    return replace(node, items=[_stamped(each, by, None) for each in node.items])


def _inner(node: Node | None, key: str) -> Node | None:
    return node.entries.get(key) if isinstance(node, Mapping) else None

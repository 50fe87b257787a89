"""Reads the what-ifs of a job: named, ordered lists of changes, each checked for its target."""

from __future__ import annotations

from typing import Any

from heatledger.job.fields import Field, Shape
from heatledger.job.known import DEFAULT
from heatledger.job.model import Change, WhatIf
from heatledger.job.plans import PATH
from heatledger.job.quantities import Reader
from heatledger.job.reading import in_words, offer, offer_key, text_of
from heatledger.job.shapes import CHANGE, JOB, RESERVED, WHAT_IF
from heatledger.job.shared import giver_of
from heatledger.job.text import Listing, Mapping, Node, line_of, walk

IN_REACH = (
    "site", "constructions", "levels", "rooms", "air", "unheated", "neighbors", "heated_floor_area",
    "measured", "built", "emitters", "zones", "circuits", "plant", "controls", "bills", "readings",
    *RESERVED,
)  # fmt: skip
"""Parts of a job that a what-if may change."""
VERBS = ("set", "add", "remove")


def read_what_ifs(reader: Reader, node: Node | None, base: Mapping) -> dict[str, WhatIf]:
    """The what-ifs by id. A target must be in the file (``base``), or be added by one of the what-ifs."""
    mapping = reader.mapping(node, "what-ifs", "the what-ifs")
    found: dict[str, WhatIf] = {}
    for key, each in reader.things(node, "what-ifs", "what-ifs").items() if mapping.entries else ():
        path = f"what-ifs/{key}"
        values = reader.fields(WHAT_IF, each, path, DEFAULT)
        changes = _changes(reader, values["node"].entries.get("changes"), f"{path}/changes")
        name = values["name"] or in_words(key)
        found[key] = WhatIf(key, name, tuple(changes))
    added = [each.path for one in found.values() for each in one.changes if each.kind == "add"]
    for key, one in found.items():
        for change in one.changes:
            inside = any(change.path.startswith(f"{path}/") for path in added)
            if not inside and (change.kind == "add" or change.path not in added):
                check_target(reader, change, key, base)
    return found


def _changes(reader: Reader, node: Node | None, path: str) -> list[Change]:
    if not isinstance(node, Listing):
        reader.error(
            "not-a-list",
            path,
            "A list of changes is expected.",
            "Write  changes: [{set: air/changes, to: 0.35 ACH}]",
        )
        return []
    found = []
    for i, item in enumerate(node.items):
        change = _change(reader, item, f"{path}/{i}")
        if change is not None:
            found.append(change)
    return found


def _change(reader: Reader, node: Node, path: str) -> Change | None:
    before = len(reader.errors)
    values = reader.fields(CHANGE, node, path, DEFAULT)
    mapping: Mapping = values["node"]
    verbs = [each for each in VERBS if each in mapping.entries]
    if len(verbs) != 1:
        if len(reader.errors) == before:
            reader.error(
                "what-if-change",
                path,
                "A change says one of set, add and remove; "
                f"read was {' and '.join(verbs) or 'none of them'}.",
                "Write  {set: air/changes, to: 0.35 ACH}",
            )
        return None
    verb = verbs[0]
    target = text_of(mapping.entries[verb])
    if not PATH.match(target):
        reader.error(
            "path-malformed",
            f"{path}/{verb}",
            f"`{target}` is not a path.",
            "A path is names joined by slashes: constructions/old-window/u_value",
        )
        return None
    to = mapping.entries.get("to")
    if verb != "remove" and to is None:
        reader.error(
            "what-if-no-value", path, f"It is not said what to {verb}.", "Write  to:  and the value."
        )
        return None
    if target.split("/")[0] not in IN_REACH:
        head = target.split("/")[0]
        known = [each for each in JOB.by_key if each in IN_REACH]
        if head in JOB.by_key:
            reader.error(
                "what-if-out-of-reach",
                f"{path}/{verb}",
                f"A what-if cannot change `{head}`.",
                f"It can change {', '.join(known[:7])} and what is in them.",
            )
        else:
            reader.error(
                "what-if-target", f"{path}/{verb}", f"There is no `{head}` in a job.", offer(head, known)
            )
        return None
    return Change(verb, target, to, line_of(reader.tree, path))


def check_target(reader: Reader, change: Change, what_if: str, base: Mapping) -> None:
    """An error when a change on the job alone has no target, or adds what is there."""
    fault = fault_of(base, change)
    if fault is None:
        return
    code, message, mend = fault
    where = f"what-ifs/{what_if}"
    listing = walk(reader.tree, f"{where}/changes")
    for i, item in enumerate(listing.items if isinstance(listing, Listing) else ()):
        if isinstance(item, Mapping) and text_of(item.entries.get(change.kind, Mapping())) == change.path:
            where = f"{where}/changes/{i}/{change.kind}"
            break
    reader.error(code, where, message, mend)


def fault_of(tree: Mapping, change: Change) -> tuple[str, str, str] | None:
    """Code, message and mend when a change has no place in a tree; None when it has."""
    head, _, last = change.path.rpartition("/")
    node = walk(tree, change.path)
    turned = _other_side(tree, change.path)
    if turned:
        return turned
    if change.kind == "remove":
        return None if node is not None else _no_target(tree, change.path)
    parent = walk(tree, head) if head else tree
    shape = shape_at(head)
    if change.kind == "add":
        if node is not None:
            return ("what-if-exists", f"`{change.path}` is there already.", "Use set to change it.")
        if isinstance(parent, Mapping) or (isinstance(shape, Field) and walk(tree, head.rpartition("/")[0])):
            return None
        return _no_target(tree, change.path)
    if node is not None:
        return None
    can_be = isinstance(shape, Shape) and last in shape.by_key
    if can_be and (isinstance(parent, Mapping) or _can_begin(tree, head)):
        return None
    if isinstance(shape, Shape) and isinstance(parent, Mapping):
        return ("what-if-target", f"There is no `{last}` in `{head}`.", offer_key(last, shape))
    return _no_target(tree, change.path)


def _can_begin(tree: Mapping, path: str) -> bool:
    """True for a mapping such as ``air`` or ``plant/boiler`` that is left out of a thing that is there."""
    above, _, last = path.rpartition("/")
    shape = shape_at(above)
    part = shape.by_key.get(last) if isinstance(shape, Shape) else None
    if part is None or part.kind != "shape" or isinstance(walk(tree, path), Listing):
        return False
    return not above or isinstance(walk(tree, above), Mapping) or _can_begin(tree, above)


def _other_side(tree: Mapping, path: str) -> tuple[str, str, str] | None:
    """A change at the side of a surface that got it by itself."""
    steps = path.split("/")
    giver = giver_of(steps[3]) if len(steps) > 3 and steps[2] == "surfaces" else ""
    if not giver or walk(tree, giver) is None:
        return None
    there = "/".join([giver, *steps[4:]])
    words = f"`{'/'.join(steps[:4])}` is the other side of `{giver}`, and is not given itself."
    return ("what-if-target", words, f"Change it where it is given: `{there}`.")


def _no_target(tree: Mapping, path: str) -> tuple[str, str, str]:
    node: Any = tree
    for i, step in enumerate(path.split("/")):
        inner = node.entries.get(step) if isinstance(node, Mapping) else None
        if inner is None:
            place = "/".join(path.split("/")[:i])
            choices = [each for each in node.entries if each != "known"] if isinstance(node, Mapping) else []
            where = f" in `{place}`" if place else ""
            return ("what-if-target", f"There is no `{step}`{where}.", offer(step, choices))
        node = inner
    return ("what-if-target", f"There is no `{path}`.", "")


def shape_at(path: str) -> Shape | Field | None:
    """What stands at a path by the form of the job: a shape, a map of things by id (its field), or None."""
    here: Shape | Field | None = JOB
    for step in path.split("/") if path else ():
        if isinstance(here, Field):
            here = here.shape if here.kind == "map" else None
        elif isinstance(here, Shape):
            inner = here.by_key.get(step)
            here = inner.shape if inner is not None and inner.kind == "shape" else inner
        if here is None:
            return None
    return here

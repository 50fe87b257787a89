"""The entries of a job that a what-if is most likely to change, with their names, to choose from."""

from __future__ import annotations

from collections.abc import Iterator

from heatledger.job.fields import Field, Shape
from heatledger.job.model import Job
from heatledger.job.text import Mapping, Scalar, walk
from heatledger.job.what_ifs import shape_at

PARTS = ("constructions", "air", "plant", "site", "controls", "emitters", "unheated", "neighbors", "levels")
"""In this order. Rooms are left out: their entries would fill the list; one is typed by its path."""
NOT_THESE = ("name", "known", "room", "zone", "level", "kind")
MOST = 160


def path_choices(job: Job) -> list[tuple[str, str]]:
    """Path and words of each entry that is offered; any other can be typed."""
    found = []
    for part in PARTS:
        for path in _values(job.source.base, part):
            found.append((path, _words(job, path)))
            if len(found) == MOST:
                return found
    return found


def _values(tree: Mapping, path: str) -> Iterator[str]:
    node = walk(tree, path)
    if not isinstance(node, Mapping):
        return
    for key, inner in node.entries.items():
        here = f"{path}/{key}"
        if key in NOT_THESE or key in ("surfaces", "openings"):
            continue
        if isinstance(inner, Scalar) or (isinstance(inner, Mapping) and "is" in inner.entries):
            yield here
        else:
            yield from _values(tree, here)


def _words(job: Job, path: str) -> str:
    head, _, last = path.rpartition("/")
    shape = shape_at(head)
    field = shape.by_key.get(last) if isinstance(shape, Shape) else None
    what = field.words if isinstance(field, Field) and field.words else last.replace("_", " ")
    named = walk(job.source.base, f"{head}/name")
    thing = (
        named.text if isinstance(named, Scalar) and named.text else head.rpartition("/")[2].replace("-", " ")
    )
    return f"{thing}: {what}" if thing else what

"""What a field offers while one types: rows of the catalog, tubes, paths. Fetched as the field is entered."""

from __future__ import annotations

from collections.abc import Iterator

from heatledger.catalog.parts import FAMILIES, emitter_rows, tubes_of
from heatledger.job.text import Mapping, Node, Scalar, walk
from heatledger.job.what_ifs import IN_REACH
from heatledger.web.house_view import rows_of_catalog
from heatledger.web.page import Page

Offer = tuple[str, str]
"""What is put into the field, and the words beside it."""
HEADS = ("house/", "levels/", "plant/")
LAST = ("loss", "needed", "given", "flow", "temperature", "per_area")


def offers(page: Page, of: str, path: str) -> list[Offer]:
    """What may stand in a field: ``of`` is its key, ``path`` its place in the job."""
    if of == "rows":
        return [(each.key, f"{each.group}: {each.name}, {each.value}") for each in rows_of_catalog()]
    if of == "tube":
        return [(row.key, row.name) for family in FAMILIES for row in tubes_of(family).values()]
    if of == "catalog":
        return _rows(page, path)
    if of == "through":
        job = page.job
        return [*((f"unheated/{id}", each.name) for id, each in job.unheated.items()),
                *((f"neighbors/{id}", each.name) for id, each in job.neighbors.items())]  # fmt: skip
    if of == "of":
        return [(each, page.title(each)) for each in page.house.results
                if each.startswith(HEADS) or (each.count("/") == 2 and each.endswith(LAST))]  # fmt: skip
    if of == "set":
        tree = page.job.source.base
        return [
            each for head in IN_REACH if head in tree.entries for each in _entries(tree.entries[head], head)
        ]
    return []


def _rows(page: Page, path: str) -> list[Offer]:
    """Rows of the catalog for a construction of its kind, or for an emitter."""
    if path.startswith("emitters"):
        return [(key, row.name) for key, row in emitter_rows().items()]
    made = page.job.constructions.get(path.split("/")[1]) if "/" in path else None
    kinds = (made.kind,) if made is not None and made.kind else ()
    return [(each.key, f"{each.name}, {each.value}") for each in rows_of_catalog(*kinds)]


def _entries(node: Node, path: str) -> Iterator[Offer]:
    """Every entry below a node by its path, with what it is now."""
    if isinstance(node, Scalar):
        yield path, node.text
    elif isinstance(node, Mapping):
        value = walk(node, "is")
        if isinstance(value, Scalar):
            yield path, value.text
            return
        for key, each in node.entries.items():
            if key not in ("name", "known"):
                yield from _entries(each, f"{path}/{key}")

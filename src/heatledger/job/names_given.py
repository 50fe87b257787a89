"""Errors that the sections of the heating system share: names that are not there, one thing said twice."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from heatledger.job.quantities import Reader
from heatledger.job.reading import offer

_WHAT = {"unheated": "unheated space"}


def two_ways(reader: Reader, path: str, first: str, second: str) -> None:
    """An error for two entries that say one thing."""
    reader.error(
        "two-ways",
        f"{path}/{second}",
        f"`{first}` and `{second}` are two ways to say one thing, and both are given.",
        "Keep one of the two.",
    )


def named(reader: Reader, path: str, what: str, name: str, among: Collection[str]) -> bool:
    """True when a thing is there by its name; else an error with the code ``unknown-`` and what it is."""
    if name in among:
        return True
    reader.error(
        f"unknown-{what}",
        path,
        f"There is no {_WHAT.get(what, what)} `{name}` in the job.",
        offer(name, among),
    )
    return False


def unknown_row(reader: Reader, path: str, what: str, key: str, rows: Iterable[str]) -> None:
    """An error for a row that the catalog does not have."""
    reader.error("unknown-catalog-row", path, f"The catalog has no {what} `{key}`.", offer(key, rows))

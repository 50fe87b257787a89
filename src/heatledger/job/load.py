"""From a job file to the job: the one door, where everything that is wrong is said at once."""

from __future__ import annotations

import re
from os import PathLike
from pathlib import Path
from typing import Any

from heatledger.job.again import Again
from heatledger.job.air import read_air
from heatledger.job.constructions import read_constructions
from heatledger.job.errors import JobError, JobErrors
from heatledger.job.files import file_text
from heatledger.job.known import DEFAULT
from heatledger.job.model import Air, Job, JobSource
from heatledger.job.parsing import tree_of
from heatledger.job.plans import raw_ranges, read_decisions, read_expectations, read_limits, read_ranges
from heatledger.job.quantities import Reader
from heatledger.job.reading import offer, text_of
from heatledger.job.shapes import EDITIONS, FORMAT, JOB, RESERVED, UNIT_NAMES
from heatledger.job.shared import share_surfaces
from heatledger.job.spaces import read_levels, read_neighbors, read_rooms, read_site, read_unheated
from heatledger.job.system import read_system
from heatledger.job.text import Mapping, Node, plain
from heatledger.job.what_ifs import read_what_ifs
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import missing
from heatledger.ledger.presets import PRESETS

EARLIEST, LATEST = 1500, 2100


def load_job(source: str | PathLike[str]) -> Job:
    """The job in a file, or in a text of more than one line.

    Raises JobErrors with everything that is wrong. What is missing is no error.
    """
    text = str(source)
    if isinstance(source, str) and "\n" in source:
        return read_job(source)
    path = Path(text)
    return read_job(file_text(path), path.name)


def read_job(text: str, file_name: str = "") -> Job:
    """The job in a text; ``file_name`` is what errors call it. Raises JobErrors."""
    tree = tree_of(text, file_name)
    return read_tree(tree, JobSource(text, file_name, tree, tree))


def read_tree(
    tree: Mapping, source: JobSource, since: Job | None = None, changed: tuple[str, ...] = ()
) -> Job:
    """The job in a tree of what was typed. Raises JobErrors.

    What is as in an earlier job is taken over; ``changed`` is where alone something has changed, if known.
    """
    reader = Reader(tree)
    reader.again = None if since is None else Again(since, tree, changed)
    if _format_is_newer(reader, tree):
        raise JobErrors(reader.errors, source.file_name)
    _read_units(reader, tree)
    entries = tree.entries
    reader.ranges = read_ranges(reader, entries.get("ranges"))
    values = reader.fields(JOB, tree, "", DEFAULT)
    job = _assembled(reader, entries, values, source)
    if reader.errors:
        raise JobErrors(reader.errors, source.file_name)
    return job


def _assembled(reader: Reader, entries: dict[str, Node], values: dict[str, Any], source: JobSource) -> Job:
    known = values["known"]
    names: dict[str, dict[str, Node]] = {}
    for each in ("rooms", "unheated", "neighbors"):
        node = entries.get(each)
        inside = node.entries if isinstance(node, Mapping) else {}
        names[each] = {key: one for key, one in inside.items() if key != "known"}
    site = read_site(reader, entries.get("site"), known)
    made = read_constructions(reader, entries.get("constructions"), known)
    levels = read_levels(reader, entries.get("levels"), known)
    rooms = read_rooms(reader, entries.get("rooms"), known, made, levels, names, site)
    unheated = read_unheated(reader, entries.get("unheated"), known, made, levels, names)
    rooms, unheated = share_surfaces(reader, rooms, unheated)
    if reader.again is not None:
        rooms = reader.again.shared(rooms, reader.again.since.rooms)
        unheated = reader.again.shared(unheated, reader.again.since.unheated)
    what_ifs = read_what_ifs(reader, entries.get("what-ifs"), source.base)
    air = read_air(reader, entries.get("air"), "air", known)
    if air is None and any(each.air is None for each in rooms.values()):
        air = Air(missing(d.AIR_CHANGES, "air/changes", "air changes"), None)
    return Job(
        name=values["name"] or "",
        address=values["address"] or "",
        prepared_by=values["prepared_by"] or "",
        date=values["date"] or "",
        invented=values["invented"] is True,
        notes=values["notes"] or "",
        units=reader.units,
        edition=values["edition"] or EDITIONS[-1],
        measured=values["measured"] or "inside",
        built=_built(reader, values["built"]),
        site=site,
        air=air,
        heated_floor_area=values["heated_floor_area"],
        constructions=made,
        levels=levels,
        rooms=rooms,
        unheated=unheated,
        neighbors=read_neighbors(reader, entries.get("neighbors"), known),
        system=read_system(reader, entries, known, names),
        limits=read_limits(reader, entries.get("limits")),
        ranges=raw_ranges(entries.get("ranges")),
        decisions=read_decisions(reader, entries.get("decisions")),
        expectations=read_expectations(reader, entries.get("expectations"), names),
        what_ifs=what_ifs,
        reserved={each: plain(entries[each]) for each in RESERVED if each in entries},
        laid=tuple(dict.fromkeys(each.id for each in source.laid if each.id in what_ifs)),
        source=source,
        raw=values["raw"],
    )


def _format_is_newer(reader: Reader, tree: Mapping) -> bool:
    node = tree.entries.get("format")
    text = text_of(node) if node is not None else ""
    if node is None:
        reader.errors.append(
            JobError(
                "no-format",
                "format",
                1,
                "The file does not say which format it has.",
                f"Write  format: {FORMAT}  as its first line.",
            )
        )
    elif re.fullmatch(r"[1-9][0-9]{0,3}", text) and int(text) > FORMAT:
        reader.error(
            "format-newer",
            "format",
            f"The file has format {text}; this version reads up to {FORMAT}.",
            "Open it with the version that wrote it, or a later one.",
        )
        return True
    elif text != str(FORMAT):
        reader.error("format-unknown", "format", f"`{text}` is not a format.", f"Write  format: {FORMAT}")
    return False


def _read_units(reader: Reader, tree: Mapping) -> None:
    node = tree.entries.get("units")
    if node is None:
        reader.errors.append(
            JobError(
                "no-units",
                "units",
                tree.line,
                "It is not said how a bare number is read.",
                f"Write  units: {', or '.join(UNIT_NAMES)}",
            )
        )
        return
    reader.units = PRESETS.get(text_of(node).strip().lower(), reader.units)
    if text_of(node).strip() == "":
        reader.error(
            "unknown-units", "units", "It is not said how a bare number is read.", offer("", UNIT_NAMES)
        )


def _built(reader: Reader, text: str | None) -> int | None:
    if not text:
        return None
    if re.fullmatch(r"[0-9]{4}", text) and EARLIEST <= int(text) <= LATEST:
        return int(text)
    reader.error(
        "bad-year", "built", f"`{text}` is not a year in which a house was built.", "Write  built: 1926"
    )
    return None

"""The job as the steps read it: what the user knows, each quantity a leaf figure.

A quantity that was not given but is needed is a figure without a value (``missing``); one that may
be left out is None. Nothing here follows from anything else: that is the work of the steps.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset

if TYPE_CHECKING:
    from heatledger.job.system_model import System
    from heatledger.job.text import Mapping as Tree

Raw = dict[str, Any]
"""Nested dicts of the texts typed."""

OPENING_KINDS = ("window", "door")
SURFACE_KINDS = ("wall", "ceiling", "floor", "below-grade wall", "below-grade floor", "slab edge")
KINDS = (*SURFACE_KINDS[:3], *OPENING_KINDS, *SURFACE_KINDS[3:])
KNOWN = ("measured", "from plans", "told", "assumed")


@dataclass(frozen=True)
class Site:
    """Where the house stands, and the temperatures of the design day."""

    place: str
    outdoor: Figure
    indoor: Figure
    elevation: Figure
    ground_temperature: Figure
    ground_amplitude: Figure
    soil_conductivity: Figure


@dataclass(frozen=True)
class Construction:
    """A whole assembly with its films. One of the three values is set, and may be missing."""

    id: str
    name: str
    kind: str
    u_value: Figure | None
    r_value: Figure | None
    f_factor: Figure | None
    catalog: str
    raw: Raw


@dataclass(frozen=True)
class Level:
    """A story: ``wall_height`` is floor to floor, ``ceiling_height`` floor to ceiling."""

    id: str
    name: str
    wall_height: Figure
    ceiling_height: Figure


@dataclass(frozen=True)
class Air:
    """Air that leaks in: changes an hour, given or looked up by the number of exposed sides.

    ``exposed_sides`` is None where the changes are given.
    """

    changes: Figure
    exposed_sides: Figure | None


@dataclass(frozen=True)
class Beyond:
    """What is on the other side: outdoors, ground, room, unheated or neighbor, with its id."""

    kind: str
    id: str = ""


@dataclass(frozen=True)
class Opening:
    """A window or door; ``area`` or ``width`` and ``height`` are those of one of ``count``."""

    id: str
    name: str
    construction: Construction
    area: Figure | None
    width: Figure | None
    height: Figure | None
    count: Figure
    raw: Raw


@dataclass(frozen=True)
class Surface:
    """A wall, ceiling, floor or slab edge.

    Its gross area is ``area``, else ``length`` times ``height`` (walls), else ``length`` times ``width``
    (ceilings and floors), ``length`` times ``bottom`` less ``top`` (walls below grade). A floor below
    grade with neither is as large as the floor of its room. ``width`` of a floor below grade is the
    shortest of the basement, not a side of it. ``from_other`` is the path of the surface in the space
    that gave it, empty when it is given here.
    """

    id: str
    name: str
    construction: Construction
    beyond: Beyond
    area: Figure | None
    length: Figure | None
    height: Figure | None
    width: Figure | None
    depth: Figure | None
    top: Figure | None
    bottom: Figure | None
    openings: dict[str, Opening]
    from_other: str
    raw: Raw


@dataclass(frozen=True)
class Room:
    """A heated room. Its floor is ``floor_area``, else ``length`` times ``width``."""

    id: str
    name: str
    level: Level
    floor_area: Figure | None
    length: Figure | None
    width: Figure | None
    ceiling_height: Figure
    free_wall: Figure | None
    indoor: Figure
    habitable: bool
    air: Air | None
    surfaces: dict[str, Surface]
    raw: Raw


@dataclass(frozen=True)
class Unheated:
    """A space without heat of its own: basement, attic, garage. ``heat`` is what pipes and the like give."""

    id: str
    name: str
    level: Level | None
    surfaces: dict[str, Surface]
    floor_area: Figure | None
    ceiling_height: Figure | None
    volume: Figure | None
    air: Air
    heat: Figure | None
    raw: Raw


@dataclass(frozen=True)
class Neighbor:
    """A neighbor's dwelling, kept at a temperature."""

    id: str
    name: str
    temperature: Figure


@dataclass(frozen=True)
class Expectation:
    """What the user expects of a figure. ``within`` is a ratio, or of the kind of ``about``."""

    id: str
    of: str
    about: Figure
    within: Figure
    because: str


@dataclass(frozen=True)
class Decision:
    """What the user decided on a finding, everywhere or at one path."""

    finding: str
    path: str
    text: str
    because: str
    by: str


@dataclass(frozen=True)
class Change:
    """One change of a what-if: ``kind`` is set, add or remove."""

    kind: str
    path: str
    to: Any = None
    line: int = 0


@dataclass(frozen=True)
class WhatIf:
    """A named, ordered list of changes."""

    id: str
    name: str
    changes: tuple[Change, ...]


@dataclass(frozen=True)
class JobSource:
    """The file the job was read from, and the tree of what was typed.

    ``base`` is the tree of the file, ``tree`` that with the what-ifs ``laid`` over it.
    """

    text: str
    file_name: str
    tree: Tree = field(repr=False)
    base: Tree = field(repr=False)
    laid: tuple[WhatIf, ...] = ()

    def line_of(self, path: str) -> int:
        """Line of the entry at ``path``, or of the nearest parent that stands in the file."""
        from heatledger.job.text import line_of

        return line_of(self.tree, path)


@dataclass(frozen=True)
class Job:
    """All that the user knows of one house. ``laid`` are the what-ifs of its own that lie over it."""

    name: str
    address: str
    prepared_by: str
    date: str
    invented: bool
    notes: str
    units: Preset
    edition: str
    measured: str
    built: int | None
    site: Site
    air: Air | None
    heated_floor_area: Figure | None
    constructions: dict[str, Construction]
    levels: dict[str, Level]
    rooms: dict[str, Room]
    unheated: dict[str, Unheated]
    neighbors: dict[str, Neighbor]
    system: System
    limits: dict[str, str]
    ranges: dict[str, dict[str, str]]
    decisions: dict[str, Decision]
    expectations: dict[str, Expectation]
    what_ifs: dict[str, WhatIf]
    reserved: dict[str, object]
    laid: tuple[str, ...]
    source: JobSource
    raw: Raw = field(repr=False, default_factory=dict)

    def with_what_ifs(self, *ids: str) -> Job:
        """The job with these what-ifs laid over it in order; JobErrors when they do not go together."""
        from heatledger.job.changes import with_what_ifs

        return with_what_ifs(self, ids)

    def with_changes(self, changes: Iterable[Mapping[str, Any]], name: str = "change") -> Job:
        """The job with changes as a what-if writes them (``{"set": path, "to": "R-30"}``)."""
        from heatledger.job.changes import with_changes

        return with_changes(self, changes, name)

    def limit(self, finding: str, dimension: Dimension) -> Figure | None:
        """The job's own threshold for a finding, or None; JobErrors when it is of another kind."""
        from heatledger.job.plans import limit_of

        return limit_of(self, finding, dimension)

"""What the sheet House shows, in the shape its templates take: rooms by level, the rows of a picked space."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from heatledger.catalog.listing import Listed, listing
from heatledger.job.model import Opening, Room, Surface, Unheated
from heatledger.job.text import walk
from heatledger.ledger.figures import Figure
from heatledger.web.page import Page

Space = Room | Unheated
FIGURES = ("net_area", "edge_length", "u_value", "conductance", "beyond_temperature", "loss")
"""What is found of a surface, by the last step of its path."""


@dataclass(frozen=True)
class Story:
    """A level with its rooms, in the order of the job."""

    id: str
    name: str
    rooms: tuple[Room, ...]


@dataclass(frozen=True)
class Part:
    """A piece of a tape: an entry by its path, or words."""

    path: str = ""
    words: str = ""


@dataclass(frozen=True)
class SpaceRow:
    """A surface or opening of the picked space: its path, its tape, and the paths of its figures."""

    path: str
    name: str
    note: str
    tape: tuple[Part, ...]
    area: Figure | None
    u_value: Figure | None
    beyond: Figure | None
    loss: Figure | None
    inner: bool = False
    given_at: str = ""


@dataclass
class Picked:
    """The picked thing, and the room or unheated space whose table is shown with it."""

    path: str
    space: Space | None
    home: str
    rows: list[SpaceRow] = field(default_factory=list)


def stories(page: Page) -> list[Story]:
    """The rooms by level; those of a level that the job does not name come last."""
    found = []
    seen: set[str] = set()
    for id, level in page.job.levels.items():
        rooms = tuple(each for each in page.job.rooms.values() if each.level.id == id)
        seen |= {each.id for each in rooms}
        if rooms:
            found.append(Story(id, level.name, rooms))
    rest = tuple(each for each in page.job.rooms.values() if each.id not in seen)
    return [*found, Story("", "Without a level", rest)] if rest else found


def picked_of(page: Page) -> Picked:
    """What is picked: the first room where nothing is; the space it belongs to."""
    path = page.picked.strip("/")
    if not path and page.job.rooms:
        path = f"rooms/{next(iter(page.job.rooms))}"
    steps = path.split("/")
    home = "/".join(steps[:2])
    space: Space | None = None
    if steps[0] == "rooms" and len(steps) > 1:
        space = page.job.rooms.get(steps[1])
    elif steps[0] == "unheated" and len(steps) > 1:
        space = page.job.unheated.get(steps[1])
    if space is None and page.job.rooms:
        first = next(iter(page.job.rooms.values()))
        return Picked(path, first, f"rooms/{first.id}", rows_of(page, first, f"rooms/{first.id}"))
    return Picked(path, space, home, rows_of(page, space, home) if space else [])


def rows_of(page: Page, space: Space, home: str) -> list[SpaceRow]:
    """The surfaces of a space, each followed by its windows and doors."""
    found: list[SpaceRow] = []
    for id, each in space.surfaces.items():
        path = f"{home}/surfaces/{id}"
        at = each.from_other or path
        figures = {key: page.figure(f"{path}/{key}") for key in FIGURES}
        area = figures["net_area"] if figures["net_area"] is not None else figures["edge_length"]
        note = "less its openings" if each.openings else ""
        there = figures["beyond_temperature"]
        found.append(
            SpaceRow(
                at, each.name, note, tape_of(page, each, at), area, figures["u_value"], there, _last(figures),
                given_at=each.from_other,
            )
        )  # fmt: skip
        for key, opening in each.openings.items():
            inner, place = f"{path}/openings/{key}", f"{at}/openings/{key}"
            lost = _last({one: page.figure(f"{inner}/{one}") for one in ("loss", "conductance")})
            area, u_value = (page.figure(f"{inner}/{one}") for one in ("total_area", "u_value"))
            tape = tape_of_opening(opening, place)
            found.append(SpaceRow(place, opening.name, "", tape, area, u_value, there, lost, inner=True))
    return found


def _last(figures: Mapping[str, Figure | None]) -> Figure | None:
    """The loss of a surface; how well it conducts where the space has no heat to lose."""
    return figures["loss"] if figures["loss"] is not None else figures["conductance"]


def tape_of(page: Page, each: Surface, path: str) -> tuple[Part, ...]:
    """What was measured of a surface, in the form in which it was given."""
    raw, kind = each.raw, each.construction.kind
    if "size" in raw:
        return (Part(f"{path}/size"),)
    if "area" in raw:
        return (Part(f"{path}/area"),)
    if kind == "below-grade wall":
        return (Part(f"{path}/length"), Part(words="×"), Part(f"{path}/top"), Part(words="to"),
                Part(f"{path}/bottom"), Part(words="deep"))  # fmt: skip
    if kind == "below-grade floor":
        return (Part(words="as the floor"),)
    parts = [Part(f"{path}/length")]
    if kind == "wall":
        typed = "height" in raw
        parts += [Part(words="×"), Part(f"{path}/height") if typed else Part(words=page.text(each.height))]
    elif kind in ("ceiling", "floor"):
        parts = [*parts, Part(words="×"), Part(f"{path}/width")] if "width" in raw else parts
        return tuple(parts) if "length" in raw else (Part(words="as the floor"),)
    return tuple(parts)


def tape_of_opening(each: Opening, path: str) -> tuple[Part, ...]:
    """What was measured of a window or door, its count before it."""
    raw = each.raw
    count = (Part(f"{path}/count"), Part(words="of")) if "count" in raw else ()
    if "area" in raw:
        return (*count, Part(f"{path}/area"))
    if "width" in raw or "height" in raw:
        return (*count, Part(f"{path}/width"), Part(words="×"), Part(f"{path}/height"))
    return (*count, Part(f"{path}/size"))


def air_entry(page: Page, home: str) -> str:
    """The path of the entry that says how often the air of a space changes."""
    own = walk(page.job.source.base, f"{home}/air")
    at = f"{home}/air" if own is not None or home.startswith("unheated/") else "air"
    sides = walk(page.job.source.base, f"{at}/exposed_sides")
    return f"{at}/exposed_sides" if sides is not None else f"{at}/changes"


def built_of(page: Page, spaces: Iterable[Space]) -> list[tuple[str, str, str]]:
    """Id, name and the entry of the constructions that some spaces are built of, in the order of the job."""
    used: set[str] = set()
    for space in spaces:
        for each in space.surfaces.values():
            used.add(each.construction.id)
            used |= {one.construction.id for one in each.openings.values()}
    return [(id, each.name, way_of(page, id)) for id, each in page.job.constructions.items() if id in used]


def way_of(page: Page, id: str) -> str:
    """The key by which a construction is given: a row of the catalog, a U-value, an R-value, an F-factor."""
    for key in ("catalog", "u_value", "r_value", "f_factor"):
        if walk(page.job.source.base, f"constructions/{id}/{key}") is not None:
            return key
    return "f_factor" if page.job.constructions[id].kind == "slab edge" else "u_value"


@dataclass(frozen=True)
class Value:
    """The figure by which a construction conducts, and what it is called: U-value, R-value or F-factor."""

    words: str
    figure: Figure


def value_of(page: Page, id: str) -> Value | None:
    """How a construction conducts, whichever way it is given; None while it is not."""
    made = page.job.constructions[id]
    ways = (("U-value", made.u_value), ("R-value", made.r_value), ("F-factor", made.f_factor))
    return next((Value(words, figure) for words, figure in ways if figure is not None), None)


def rows_of_catalog(*kinds: str) -> list[Listed]:
    """The constructions of the catalog, of some kinds; all of them where none is named."""
    from heatledger.catalog.listing import KINDS

    groups = {each.capitalize() for each in kinds or KINDS}
    return [each for each in _listing() if each.group in groups]


def _listing() -> list[Listed]:
    if not _KEPT:
        _KEPT.extend(listing())
    return _KEPT


_KEPT: list[Listed] = []
"""The catalog does not change while the app runs."""


def choices_of(page: Page, kind: str) -> dict[str, list[tuple[str, str]]]:
    """What something may be built of: constructions of the job of a kind, then rows of the catalog."""
    own = [(id, each.name) for id, each in page.job.constructions.items() if each.kind == kind]
    rows = [(f"catalog/{each.key}", f"{each.name}, {each.value}") for each in rows_of_catalog(kind)]
    return {"Of this job": own, "From the catalog": rows} if own else {"From the catalog": rows}


def spaces_beyond(page: Page) -> list[tuple[str, str]]:
    """What may be beyond a wall, a ceiling or a floor, besides another heated room."""
    job = page.job
    found: list[tuple[str, str]] = [("outdoors", "outdoors")]
    found += [(f"unheated/{id}", each.name) for id, each in job.unheated.items()]
    found += [(f"neighbors/{id}", each.name) for id, each in job.neighbors.items()]
    return found

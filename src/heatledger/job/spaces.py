"""Levels, heated rooms, unheated spaces and neighbors."""

from __future__ import annotations

from heatledger.job.air import read_air
from heatledger.job.around import Around
from heatledger.job.model import Air, Construction, Level, Neighbor, Room, Site, Unheated
from heatledger.job.quantities import Reader
from heatledger.job.reading import in_words, offer
from heatledger.job.shapes import LEVEL, NEIGHBOR, ROOM, SITE, UNHEATED
from heatledger.job.surfaces import read_surfaces
from heatledger.job.text import Node
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, missing

Constructions = dict[str, Construction]
Names = dict[str, dict[str, Node]]

LOWEST_M, HIGHEST_M = -430.0, 6000.0
"""Elevations of the lowest dry land and of the highest dwellings, rounded outwards."""


def read_site(reader: Reader, node: Node | None, known: str) -> Site:
    """The site; what it lacks is missing."""
    earlier = reader.again.site() if reader.again is not None else None
    if earlier is not None:
        return earlier
    values = reader.fields(SITE, node, "site", known)
    found: dict[str, Figure] = {}
    for field in SITE.fields:
        if field.kind == "quantity" and field.dimension is not None:
            value = values[field.key]
            given = isinstance(value, Figure)
            found[field.key] = value if given else missing(field.dimension, f"site/{field.key}", field.words)
    elevation = found["elevation"]
    if not elevation.is_missing and not LOWEST_M <= float(elevation) <= HIGHEST_M:
        reader.error(
            "elevation-out-of-range",
            "site/elevation",
            f"Nobody builds at an elevation of {elevation.origin.typed}.",
            "Check the number and the unit.",
        )
    return Site(values["place"] or "", **found)


def read_levels(reader: Reader, node: Node | None, known: str) -> dict[str, Level]:
    """The stories by id."""
    mapping = reader.mapping(node, "levels", "the levels")
    inherited = reader.known(mapping, "levels", known)
    found: dict[str, Level] = {}
    for key, each in reader.things(node, "levels", "levels").items() if mapping.entries else ():
        earlier = reader.again.level(key) if reader.again is not None else None
        if earlier is not None:
            found[key] = earlier
            continue
        path = f"levels/{key}"
        values = reader.fields(LEVEL, each, path, inherited)
        wall, ceiling = values["wall_height"], values["ceiling_height"]
        found[key] = Level(
            key,
            values["name"] or in_words(key),
            missing(d.LENGTH, f"{path}/wall_height", "wall height") if wall is None else wall,
            missing(d.LENGTH, f"{path}/ceiling_height", "ceiling height") if ceiling is None else ceiling,
        )
    return found


def read_level_of(
    reader: Reader, name: str | None, path: str, levels: dict[str, Level], needed: bool
) -> Level | None:
    """The level a space names; an error when there is none of that name, or none named where it is needed."""
    if not name:
        if needed:
            reader.error(
                "no-level",
                path,
                "It is not said on which level the room lies.",
                f"Write  level: {next(iter(levels), 'ground')}",
            )
        return None
    if name not in levels:
        reader.error("unknown-level", f"{path}/level", f"There is no level `{name}`.", offer(name, levels))
    return levels.get(name)


def read_rooms(
    reader: Reader, node: Node | None, known: str, made: Constructions, levels: dict[str, Level],
    names: Names, site: Site,
) -> dict[str, Room]:  # fmt: skip
    """The heated rooms by id."""
    mapping = reader.mapping(node, "rooms", "the rooms")
    inherited = reader.known(mapping, "rooms", known)
    things = reader.things(node, "rooms", "rooms") if mapping.entries else {}
    found: dict[str, Room] = {}
    for key, each in things.items():
        earlier = reader.again.room(key, made, levels, names, site) if reader.again is not None else None
        found[key] = earlier or _room(reader, key, each, inherited, made, levels, names, site)
    return found


def _room(
    reader: Reader, id: str, node: Node, known: str, made: Constructions, levels: dict[str, Level],
    names: Names, site: Site,
) -> Room:  # fmt: skip
    path = f"rooms/{id}"
    values = reader.fields(ROOM, node, path, known)
    entries = values["node"].entries
    level = read_level_of(reader, values["level"], path, levels, needed=True)
    if level is None:
        level = Level(
            "", "", missing(d.LENGTH, path, "wall height"), missing(d.LENGTH, path, "ceiling height")
        )
    length, width = reader.sides(values["size"], path, ("length", "width"))
    area = values["floor_area"]
    if area is not None and length is not None and width is not None:
        product = float(length) * float(width)
        if abs(product - float(area)) > 0.01 * max(product, float(area)):
            reader.error(
                "two-sizes",
                f"{path}/floor_area",
                "The floor area given and the size do not agree.",
                "Keep the one that was measured.",
            )
        area = None
    elif area is None and length is None:
        area = missing(d.AREA, f"{path}/floor_area", "floor area")
    ceiling, indoor = values["ceiling_height"], values["indoor"]
    around = Around(made, names, path, level, area)
    surfaces = read_surfaces(reader, entries.get("surfaces"), around, values["known"])
    return Room(
        id,
        values["name"] or in_words(id),
        level,
        area,
        length,
        width,
        level.ceiling_height if ceiling is None else ceiling,
        values["free_wall"],
        site.indoor if indoor is None else indoor,
        values["habitable"] is not False,
        read_air(reader, entries.get("air"), f"{path}/air", values["known"]),
        surfaces,
        values["raw"],
    )


def read_unheated(
    reader: Reader, node: Node | None, known: str, made: Constructions, levels: dict[str, Level], names: Names
) -> dict[str, Unheated]:
    """The unheated spaces by id."""
    mapping = reader.mapping(node, "unheated", "the unheated spaces")
    inherited = reader.known(mapping, "unheated", known)
    things = reader.things(node, "unheated", "unheated spaces") if mapping.entries else {}
    found: dict[str, Unheated] = {}
    for key, each in things.items():
        earlier = reader.again.unheated(key, made, levels, names) if reader.again is not None else None
        found[key] = earlier or _unheated(reader, key, each, inherited, made, levels, names)
    return found


def _unheated(
    reader: Reader, id: str, node: Node, known: str, made: Constructions, levels: dict[str, Level],
    names: Names,
) -> Unheated:  # fmt: skip
    path = f"unheated/{id}"
    values = reader.fields(UNHEATED, node, path, known)
    entries = values["node"].entries
    level = read_level_of(reader, values["level"], path, levels, needed=False)
    area, height, volume = values["floor_area"], values["ceiling_height"], values["volume"]
    if height is None and level is not None:
        height = level.ceiling_height
    if volume is None and (area is None or height is None):
        volume = missing(d.VOLUME, f"{path}/volume", "volume")
    if volume is not None and area is not None and values["ceiling_height"] is not None:
        product = float(area) * float(height)
        if abs(product - float(volume)) > 0.01 * max(product, float(volume)):
            reader.error(
                "two-sizes",
                f"{path}/volume",
                "The volume given and floor area times height do not agree.",
                "Keep the one that was measured.",
            )
    air = read_air(reader, entries.get("air"), f"{path}/air", values["known"])
    if air is None:
        air = Air(missing(d.AIR_CHANGES, f"{path}/air/changes", "air changes"), None)
    # A floor below grade without an area of its own is as large as the floor of the space.
    floor = missing(d.AREA, f"{path}/floor_area", "floor area") if area is None else area
    around = Around(made, names, path, level, floor)
    surfaces = read_surfaces(reader, entries.get("surfaces"), around, values["known"])
    return Unheated(
        id,
        values["name"] or in_words(id),
        level,
        surfaces,
        area,
        height,
        volume,
        air,
        values["heat"],
        values["raw"],
    )


def read_neighbors(reader: Reader, node: Node | None, known: str) -> dict[str, Neighbor]:
    """The neighbors' dwellings by id."""
    mapping = reader.mapping(node, "neighbors", "the neighbors")
    inherited = reader.known(mapping, "neighbors", known)
    found: dict[str, Neighbor] = {}
    for key, each in reader.things(node, "neighbors", "neighbors").items() if mapping.entries else ():
        path = f"neighbors/{key}"
        values = reader.fields(NEIGHBOR, each, path, inherited)
        warm = values["temperature"]
        if warm is None:
            warm = missing(d.TEMPERATURE, f"{path}/temperature", "temperature")
        found[key] = Neighbor(key, values["name"] or in_words(key), warm)
    return found

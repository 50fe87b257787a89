"""A surface between two spaces is given once; the other space gets it here.

In the other space it stands under the id of the space that gave it and its own id, joined by a dot
(``unheated/basement/surfaces/kitchen.floor``; from an unheated space ``unheated.garage.wall``). An id that
is typed holds no dot, so no two surfaces ever come under one name, and none changes when a room is added.
Where both give it, both name one id and must agree.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TypeVar

from heatledger.job.model import Beyond, Room, Surface, Unheated
from heatledger.job.quantities import Reader

Space = Room | Unheated
S = TypeVar("S", Room, Unheated)
_HOMES = {"room": "rooms", "unheated": "unheated"}
_ONES = {"rooms": "room", "unheated": "unheated"}
SAME = 0.01


def share_surfaces(
    reader: Reader, rooms: dict[str, Room], unheated: dict[str, Unheated]
) -> tuple[dict[str, Room], dict[str, Unheated]]:
    """Rooms and spaces with the surfaces that others have given them."""
    spaces: dict[str, Space] = {f"rooms/{key}": each for key, each in rooms.items()}
    spaces.update({f"unheated/{key}": each for key, each in unheated.items()})
    given: dict[tuple[str, str], dict[str, Surface]] = {}
    for path, space in spaces.items():
        for key, each in space.surfaces.items():
            if each.beyond.kind in _HOMES:
                other = f"{_HOMES[each.beyond.kind]}/{each.beyond.id}"
                if other in spaces and other != path:
                    given.setdefault((path, other), {})[key] = each
    gained: dict[str, dict[str, Surface]] = {}
    for (path, other), surfaces in given.items():
        back = given.get((other, path))
        if back is None:
            gained.setdefault(other, {}).update(_turned(path, surfaces))
        elif path < other:
            _compare(reader, path, other, surfaces, back)
    return (
        {key: _with(each, gained.get(f"rooms/{key}")) for key, each in rooms.items()},
        {key: _with(each, gained.get(f"unheated/{key}")) for key, each in unheated.items()},
    )


def _with(space: S, gained: dict[str, Surface] | None) -> S:
    return replace(space, surfaces={**space.surfaces, **gained}) if gained else space


def gained_id(path: str, key: str) -> str:
    """Id under which a surface of the space at ``path`` stands in the space on its other side."""
    home, _, owner = path.partition("/")
    return f"{owner}.{key}" if home == "rooms" else f"{home}.{owner}.{key}"


def giver_of(id: str) -> str:
    """Path of the surface that stands under such an id in another space; empty when it is no such id."""
    *home, owner, key = id.split(".") if id.count(".") in (1, 2) else ("", "", "")
    return f"{'/'.join(home) or 'rooms'}/{owner}/surfaces/{key}" if owner else ""


def _turned(path: str, surfaces: dict[str, Surface]) -> dict[str, Surface]:
    """The surfaces as the other space sees them: the same figures, with this space beyond."""
    home, _, owner = path.partition("/")
    found: dict[str, Surface] = {}
    for key, each in surfaces.items():
        name = gained_id(path, key)
        found[name] = replace(
            each, id=name, beyond=Beyond(_ONES[home], owner), from_other=f"{path}/surfaces/{key}"
        )
    return found


def _compare(
    reader: Reader, path: str, other: str, ours: dict[str, Surface], theirs: dict[str, Surface]
) -> None:
    """Errors where both spaces give what is between them and do not give the same."""
    for key in sorted({*ours, *theirs}):
        if key not in ours or key not in theirs:
            here, there = (path, other) if key in ours else (other, path)
            reader.error(
                "shared-surface-two-ids",
                f"{here}/surfaces/{key}",
                f"`{here}` and `{there}` both give surfaces to each other, and `{there}` has no `{key}`.",
                "Give each surface between them once, or under one id in both.",
            )
            continue
        for what in _differences(ours[key], theirs[key]):
            reader.error(
                "shared-surface-differs",
                f"{other}/surfaces/{key}",
                f"`{path}` and `{other}` both give `{key}`, with a different {what}.",
                "Give it once: the other side gets it by itself.",
            )
            break


def _differences(ours: Surface, theirs: Surface) -> list[str]:
    found = [] if ours.construction is theirs.construction else ["construction"]
    first, second = _area(ours), _area(theirs)
    if first is not None and second is not None and abs(first - second) > SAME * max(first, second):
        found.append("area")
    if set(ours.openings) != set(theirs.openings):
        found.append("list of openings")
    return found


def _area(surface: Surface) -> float | None:
    if surface.area is not None:
        return float(surface.area)
    sides = [float(each) for each in (surface.length, surface.height, surface.width) if each is not None]
    return sides[0] * sides[1] if len(sides) == 2 else None

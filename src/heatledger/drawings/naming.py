"""What figures are called under a heading that already says whose they are."""

from __future__ import annotations

from heatledger.ledger.figures import NO_NAMES, Figure, flat
from heatledger.ledger.solving import Solved
from heatledger.steps.design import Design
from heatledger.steps.names import things_at

_NOT_SAID = ("Site",)


def parts_of(figure: Figure, design: Design) -> tuple[str, list[str]]:
    """What a figure is, and the things it belongs to, from the largest."""
    title, path = design.names.title(figure), design.names.path(figure)
    if not path:
        return NO_NAMES.title(figure), []
    if isinstance(figure.origin, Solved) and path:
        return path.rpartition("/")[2].replace("_", " ").capitalize(), things_at(path, design.job)[0]
    things = things_at(path, design.job)[0] if path and not path.startswith("catalog/") else []
    tail = "".join(f", {each}" for each in things)
    if not tail or not title.endswith(tail):
        return title, []
    return title.removesuffix(tail), _with_neighbor(things, path, design)


def _with_neighbor(things: list[str], path: str, design: Design) -> list[str]:
    """A surface of an unheated space by its name; one that leads to a room is told apart by that room."""
    steps = path.split("/")
    if steps[0] == "unheated" and len(steps) > 3 and steps[2] == "surfaces":
        space = design.losses.unheated.get(steps[1])
        boundary = space.surfaces.get(steps[3]) if space else None
        if boundary is not None:
            beyond = boundary.beyond
            room = [str(design.job.rooms[beyond.id].name)] if beyond.kind == "room" else []
            return [things[0], str(boundary.name), *things[2:], *room]
    if steps[0] == "rooms" and len(steps) > 3 and steps[2] == "surfaces":
        room_loss = design.losses.rooms.get(steps[1])
        surface = room_loss.surfaces.get(steps[3]) if room_loss else None
        if surface is not None and surface.beyond.kind == "room":
            toward = str(design.job.rooms[surface.beyond.id].name)
            return [things[0], f"{surface.name} toward {toward}", *things[2:]]
    return things


def placed_parts(figure: Figure, design: Design) -> tuple[str, list[str]]:
    """The same; an inner result without a place of its own takes that of what goes into it.

    A sum belongs to what its parts share, any other to the first of its inputs that has a place of its own.
    """
    kept = design.names.places
    if id(figure) not in kept:
        kept[id(figure)] = (figure, _placed_parts(figure, design))
    return kept[id(figure)][1]


def _placed_parts(figure: Figure, design: Design) -> tuple[str, list[str]]:
    said, things = parts_of(figure, design)
    if things or not figure.inputs or design.names.path(figure):
        return said, things
    below = [placed_parts(each, design)[1] for each in flat(figure.inputs)]
    placed = [each for each in below if each and each[0] not in _NOT_SAID]
    if not placed:
        return said, []
    if not any(isinstance(each, tuple) for each in figure.inputs):
        return said, next((each for each in placed if len(each) > 1), placed[0])
    shared = placed[0]
    for each in placed[1:]:
        shared = [a for a, b in zip(shared, each, strict=False) if a == b]
    return said, shared or placed[0]


def title_of(figure: Figure, design: Design, owner: str = "") -> tuple[str, str]:
    """Under a heading about ``owner``: the thing, and what of it; a figure of the owner is a title alone."""
    said, things = placed_parts(figure, design)
    if things and things[0] in (owner, *_NOT_SAID):
        things = things[1:]
    return (", ".join(things), _within(said)) if things else (said, "")


def headed(figure: Figure, design: Design, owner: str = "") -> str:
    """The same in one text."""
    return ": ".join(each for each in title_of(figure, design, owner) if each)


def as_part(figure: Figure, design: Design, owner: str = "") -> str:
    """What a part is called in a sum about ``owner``: its thing alone where that says enough."""
    said, things = placed_parts(figure, design)
    if things and things[0] in (owner, *_NOT_SAID):
        things = things[1:]
    return ", ".join(things) or said


def _within(said: str) -> str:
    """The words as they stand inside a line; ``U-value`` keeps its letter."""
    return said[:1].lower() + said[1:] if said[1:2].islower() else said

"""Which workings stand under which heading of the book, in the order in which they are read."""

from __future__ import annotations

from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.papers.addresses import Addresses, Group, Stage
from heatledger.papers.groups_of_steps import STEPS, step_stage
from heatledger.papers.words import floors_word
from heatledger.steps.design import Design
from heatledger.steps.losses import RoomLoss
from heatledger.studies.materials import tube_lots
from heatledger.studies.parts import Part, parts_of_house

HEAT_LOSS = "heat-loss"


def book(design: Design, units: Preset) -> Addresses:
    """The addresses of a whole design: one book for all its papers."""
    return addresses(design, units, parts_of_house(design))


def addresses(design: Design, units: Preset, parts: list[Part]) -> Addresses:
    """The same, where the kinds of part are at hand already."""
    loss = Stage(HEAT_LOSS, 2, "Heat loss", heat_loss_groups(design, units, parts))
    steps = [found for each in STEPS if (found := step_stage(each, design)) is not None]
    stages = [loss, *(stage for stage, _ in steps), _materials(design)]
    made = Addresses(design, units, sorted(stages, key=lambda each: each.sheet))
    for stage, titles in steps:
        homed = {made.kind(each) for group in stage.groups for each in (*group.blocks, *group.lines)}
        for figure, title in titles:
            if made.kind(figure) in homed:
                made.titles.setdefault(made.kind(figure), title)
    for group in made.groups:
        if group.only_lines:
            group.titles = {made.kind(figure): title for part in parts for figure, title in part.named()}
    return made


def _materials(design: Design) -> Stage:
    """What is added up for the material list: lengths of tube, on the sheet of the piping."""
    lots = tube_lots(design)
    groups = [Group(each.tube, [each.length, each.to_buy], each.tube, compact=True) for each in lots]
    return Stage("material", 4, "Material list", groups)


def heat_loss_groups(design: Design, units: Preset, parts: list[Part]) -> list[Group]:
    """The house, the stories, each room, each space, what is shared, and what it is built of."""
    losses = design.losses
    house, site = losses.house, losses.site
    rooms = [Group(room.name, room_figures(room), room.name) for room in losses.rooms.values()]
    in_rooms = {id(figure) for group in rooms for figure in group.asked}

    def not_in_rooms(figures: list[Figure]) -> list[Figure]:
        """What is a sum over rooms; a part that stands alone is worked out in its room."""
        return [each for each in figures if id(each) not in in_rooms]

    whole = not_in_rooms([house.loss, *(each.loss for each in house.causes.values())])
    shares = [each.share for each in house.causes.values()]
    floors = not_in_rooms([each.loss for each in losses.levels.values()]) if len(losses.levels) > 1 else []
    built_of = [each for part in parts for each, _ in part.named()]
    spaces = losses.unheated.values()
    return [
        Group("The house", [*whole, *shares, house.per_area], "House"),
        Group(floors_word(units, many=True).capitalize(), floors),
        *rooms,
        *(Group(f"{each.name}, unheated", [each.temperature], each.name) for each in spaces),
        Group("Design day and shared figures", [site.design_difference], shared=True),
        Group("What it is built of", built_of, only_lines=True),
    ]


def room_figures(room: RoomLoss) -> list[Figure]:
    """The figures of a room in the order they are read: total, causes, each surface, air, floor."""
    figures = [room.loss, *(each.loss for each in room.causes.values() if _is_sum(each.loss))]
    for surface in room.surfaces.values():
        figures.append(surface.loss)
        figures += [each.loss for each in surface.openings.values()]
    return [*figures, room.air.loss, room.per_area]


def _is_sum(figure: Figure) -> bool:
    return any(isinstance(each, tuple) for each in figure.inputs)

"""Findings on what walls, floors and edges are made of."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.catalog.loader import constructions
from heatledger.job.model import Construction
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import LeafKind
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import DERIVED, SEEN, cite
from heatledger.ledger.units import UNITS
from heatledger.steps.review.house import Part, factor_of, known_of, leaf_of, typed_of, u_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
R_US = UNITS["h·ft²·°F/Btu"]
LABELS = {
    11: "frame-wall-2x4-r-11",
    13: "frame-wall-2x4-r-13",
    15: "frame-wall-2x4-r-15",
    19: "frame-wall-2x6-r-19",
    21: "frame-wall-2x6-r-21",
}
"""Labels of batts for walls, and the framed wall of the catalog that holds each."""
OLD_HOUSE = 1940
COOL_ROOM = (59 + 459.67) / 1.8
"""A room kept below 59 °F is cold inside whatever it is built of."""
FILM_INSIDE = 0.68
"""Resistance of the air at a wall indoors, h·ft²·°F/Btu (HOF-ch26, Table 10)."""


def used(look: Look) -> list[Construction]:
    """Constructions that some room or space uses."""
    used: dict[str, Construction] = {}
    for _, space in look.house.spaces:
        for surface in space.surfaces.values():
            used[surface.construction.id] = surface.construction
            for opening in surface.openings.values():
                used[opening.construction.id] = opening.construction
    return [each for id, each in look.house.job.constructions.items() if id in used]


def is_typed(construction: Construction) -> bool:
    """True when its value stands in the job and was not taken from the catalog."""
    origin = leaf_of(factor_of(construction))
    return origin is not None and origin.kind is LeafKind.JOB


@finding(
    "label-r-as-whole-wall",
    Weight.DECIDE,
    cite("WAC-1005", "framed walls against the label of the batt", SEEN),
    fires="A wall typed into the job in inch-pound units has a total R-value within {0} of the label of a "
    "batt: R-11, 13, 15, 19 or 21.",
    why="with studs, R-13 in a 2x4 wall is 11.9 as a whole (10 % more loss), R-19 in a 2x6 wall 15.9 (20 % "
    "more)",
    mend="Take the framed wall of the catalog, or count the framing from the drawings.",
    limits=(Limit("label-r-as-whole-wall", "0.5 %", d.RATIO, "nearness to a label"),),
)
def _label_r_as_whole_wall(look: Look) -> Found:
    for each in used(look):
        u_value = u_of(each)
        # Batts are labelled so in inches and pounds only: 0.30 W/(m²·K) is near R-19 by chance.
        inch_pound = "ft" in typed_of(factor_of(each))[1]
        if each.kind != "wall" or isnan(u_value) or not inch_pound or not is_typed(each):
            continue
        r_value = R_US.from_si(1 / u_value)
        label = next((one for one in LABELS if abs(r_value - one) <= look.limit * one + 1e-9), None)
        if label is None:
            continue
        row = constructions()[LABELS[label]]
        whole = 1 / float(row.typed)
        yield look.found(
            f"constructions/{each.id}",
            f"{each.name} carries the label R-{label} of its batt across the studs; with framing it is "
            f"R-{whole:.1f}, "
            f"{100 * (label / whole - 1):.0f} % more loss.",
            factor_of(each),
            (
                Mend(
                    f"Take the framed wall of the catalog: {row.name}.",
                    (set_to(f"constructions/{each.id}/catalog", row.key),),
                ),
                Mend("Count the framing from the drawings."),
            ),
        )


@finding(
    "old-wall-new-r",
    Weight.DECIDE,
    cite("CM-LOSS", "story of a stone house", SEEN),
    fires=f"In a house built before {OLD_HOUSE}, a wall is told or assumed to have more than {{0}}.",
    why="stone taken at R-19 by hearsay is a known way to a boiler that is too small; R-3 in place of R-12 "
    "is four times the loss of the wall",
    mend="Open the wall or probe it before the boiler is sized on it.",
    limits=(Limit("old-wall-new-r", "R-12", d.RESISTANCE, "R-value taken on somebody's word"),),
)
def _old_wall_new_r(look: Look) -> Found:
    built = look.house.job.built
    for each in used(look):
        u_value, value = u_of(each), factor_of(each)
        if each.kind != "wall" or isnan(u_value) or known_of(value) not in ("told", "assumed"):
            continue
        if not u_value * look.limit < 1 - 1e-9:
            continue
        if built is None:
            yield look.wants(f"constructions/{each.id}", words="the year the house was built")
        elif built < OLD_HOUSE:
            empty = set_to(f"constructions/{each.id}/catalog", "frame-wall-2x4-empty")
            yield look.found(
                f"constructions/{each.id}",
                f"{each.name} in a house of {built} stands at {look.say(1 / u_value, d.RESISTANCE)} on "
                "somebody's word.",
                value,
                (Mend(look.kind.mend), Mend("Until then, figure it with an empty cavity.", (empty,))),
            )


@finding(
    "slab-edge-bare",
    Weight.DECIDE,
    cite("HOF-ch18", "Table 24", SEEN),
    fires="The edge of a slab under a heated room passes more than {0}, where the outdoor design "
    "temperature is below 20 °F (-7 °C).",
    why="R-5.4 from the edge to the footing takes a 4 in block wall from 0.84 to 0.49 Btu/(h·ft·°F) (1.45 "
    "to 0.85 W/(m·K))",
    mend="Insulate the edge down to the footing.",
    limits=(Limit("slab-edge-bare", "0.6 Btu/(h·ft·°F)", d.EDGE_LOSS, "loss of the edge"),),
)
def _slab_edge_bare(look: Look) -> Found:
    if not look.house.outdoor < (20 + 459.67) / 1.8 - 1e-6:
        return
    seen: dict[str, float] = {}
    for part in look.house.own_parts:
        factor = part.construction.f_factor
        if factor is not None and float(factor) > look.limit * (1 + 1e-9):
            seen[part.construction.id] = seen.get(part.construction.id, 0.0) + part.loss
    for id, loss in seen.items():
        made_of = look.house.job.constructions[id]
        assert made_of.f_factor is not None
        # The bare and insulated rows of the table differ by a factor of about 0.55.
        better = look.text(min(float(made_of.f_factor) * 0.55, look.limit), d.EDGE_LOSS)
        yield look.found(
            f"constructions/{id}",
            f"{made_of.name} passes {look.say(made_of.f_factor)}, as a bare edge does; "
            f"{look.say(loss, d.HEAT_RATE)} runs out there.",
            made_of.f_factor,
            (
                Mend(
                    "Insulate the edge down to the footing (about R-5).",
                    (set_to(f"constructions/{id}/f_factor", better),),
                ),
            ),
        )


@finding(
    "surface-cold-inside",
    Weight.NOTE,
    cite("HOF-ch26", "Table 10, film of 0.68 indoors", DERIVED),
    fires="By its U-value, a wall, ceiling or floor of a room kept at 59 °F (15 °C) or more is colder "
    "than {0} inside on the design day.",
    why="inner surface = indoor - U-value × 0.68 × (indoor - beyond); damp and mold start in such places",
    mend="Insulate it, and keep furniture off it.",
    limits=(Limit("surface-cold-inside", "50 °F", d.TEMPERATURE, "inner surface"),),
)
def _surface_cold_inside(look: Look) -> Found:
    yield from cold_inside(look, ("wall", "ceiling", "floor"), "its inner surface is {} on the design day")


def cold_inside(look: Look, kinds: tuple[str, ...], words: str) -> Found:
    """The coldest part of each construction, where its inner surface is below the limit."""
    film = R_US.to_si(FILM_INSIDE)
    coldest: dict[str, tuple[float, Part]] = {}
    for part in look.house.own_parts:
        beyond, indoor = part.surface.beyond.kind, float(part.room.indoor)
        if (
            part.construction.kind not in kinds
            or beyond not in ("outdoors", "unheated")
            or indoor < COOL_ROOM
        ):
            continue
        lost = look.house.losses.rooms[part.room.id].surfaces[part.surface.id]
        inner = indoor - min(u_of(part.construction) * film, 1.0) * (indoor - float(lost.beyond_temperature))
        before = coldest.get(part.construction.id)
        if inner < look.limit - 1e-6 and (before is None or inner < before[0]):
            coldest[part.construction.id] = (inner, part)
    for id, (inner, part) in coldest.items():
        made_of = part.construction
        # With a little to spare, so that rounding does not bring it below the limit again.
        share = max((float(part.room.indoor) - look.limit) / (float(part.room.indoor) - inner), 0.1) * 0.95
        to = set_to(f"constructions/{id}/u_value", look.text(u_of(made_of) * share, d.TRANSMITTANCE))
        yield look.found(
            f"constructions/{id}",
            f"{made_of.name}: {words.format(look.say(inner, d.TEMPERATURE))} ({part.name}).",
            "",
            (Mend(look.kind.mend, (to,)),),
        )

"""Findings on U-values that no table holds, and bare ceilings straight to outdoors."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import isnan
from typing import Any

from heatledger.job.errors import JobErrors
from heatledger.job.model import Construction
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.ledger.units import UNITS
from heatledger.steps.review.house import Part, factor_of, is_called, typed_of, u_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.materials import is_typed, used

Found = Iterator[Finding | NotChecked]
BEST = {
    "wall": 0, "below-grade wall": 0, "window": 1, "door": 2, "ceiling": 3, "floor": 4,
    "below-grade floor": 4,
}  # fmt: skip
"""Which of the thresholds holds for each kind."""
INCH_POUND = {"W/(m²·K)": "Btu/(h·ft²·°F)", "m²·K/W": "h·ft²·°F/Btu"}
"""Units of the same kind in inches and pounds, by the metric ones."""
WORST = 6.0
"""No wall of bare air films lets through more, W/(m²·K)."""
ATTIC_ROOF, ATTIC_AIR, ATTIC_HEIGHT = "U-0.50", "5 ACH", 0.9
"""What an attic that nobody described is taken to have: a roof deck, vents, a mean height of 3 ft (0.9 m)."""


@finding(
    "better-than-any-table",
    Weight.DECIDE,
    cite("", "the best rows of the tables on file, and a little more", JUDGMENT),
    fires="A U-value that was typed is less than {0} (a wall, R-50), {1} (a window), {2} (a door), {3} (a "
    "ceiling, R-100) or {4} (a floor).",
    why="U-0.008 in place of U-0.08 (0.045 of 0.45 W/(m²·K)) takes nine tenths of the wall away, and "
    "nothing else shows it",
    mend="Type the value again; keep it where the layers add up to it, and say so.",
    limits=(
        Limit("better-than-any-table", "U-0.02", d.TRANSMITTANCE, "best wall"),
        Limit("better-than-any-table-window", "U-0.10", d.TRANSMITTANCE, "best window"),
        Limit("better-than-any-table-door", "U-0.10", d.TRANSMITTANCE, "best door"),
        Limit("better-than-any-table-ceiling", "U-0.01", d.TRANSMITTANCE, "best ceiling"),
        Limit("better-than-any-table-floor", "U-0.02", d.TRANSMITTANCE, "best floor"),
    ),
)
def _better_than_any_table(look: Look) -> Found:
    for made_of in used(look):
        u_value = u_of(made_of)
        if made_of.kind not in BEST or not is_typed(made_of):
            continue
        if isnan(u_value):
            yield look.wants(f"constructions/{made_of.id}", factor_of(made_of))
            continue
        best = look.limit_at(BEST[made_of.kind])
        if not u_value < best * (1 - 1e-9):
            continue
        mends = [*_other_values(look, made_of, best), Mend(look.kind.mend)]
        by_r = made_of.r_value is not None
        most = look.say(1 / best, d.RESISTANCE) if by_r else look.say(best, d.TRANSMITTANCE)
        yield look.found(
            f"constructions/{made_of.id}",
            f"{made_of.name} stands at {look.say(factor_of(made_of))}; the best {made_of.kind} to be "
            f"expected has {most}, {best / u_value:.2g} times that loss.",
            factor_of(made_of),
            tuple(mends),
        )


def _other_values(look: Look, made_of: Construction, best: float) -> list[Mend]:
    """The value read in inch-pound units where it was read in metric ones, and with its point moved."""
    by_r = made_of.r_value is not None
    path = f"constructions/{made_of.id}/{'r_value' if by_r else 'u_value'}"
    number, unit = typed_of(factor_of(made_of))
    found = []
    if unit in INCH_POUND:
        value = UNITS[INCH_POUND[unit]].to_si(number)
        if best <= (1 / value if by_r else value) <= WORST:
            text = f"{number:g} {INCH_POUND[unit]}"
            found.append(Mend(f"Read it as {text}.", (set_to(path, text),)))
    moved = 10 * u_of(made_of)
    if best <= moved <= WORST:
        text = look.text(1 / moved, d.RESISTANCE) if by_r else look.text(moved, d.TRANSMITTANCE)
        found.append(Mend(f"Take it for a slip of the point: {text}.", (set_to(path, text),)))
    return found


@finding(
    "bare-ceiling-to-outdoors",
    Weight.DECIDE,
    cite("HOF-ch17", "heat balance of an unheated space", SEEN),
    fires="A ceiling of heated rooms has more than {0} and outdoors beyond it.",
    why="an attic over a ceiling without insulation is warmed by it, and stands between indoors and outdoors",
    mend="Give the attic as an unheated space; keep outdoors where the ceiling is the roof itself.",
    limits=(Limit("bare-ceiling-to-outdoors", "U-0.15", d.TRANSMITTANCE, "ceiling with little in it"),),
)
def _bare_ceiling_to_outdoors(look: Look) -> Found:
    bare: dict[str, list[Part]] = {}
    for part in look.house.own_parts:
        kind, beyond = part.construction.kind, part.surface.beyond.kind
        high = u_of(part.construction) > look.limit * (1 + 1e-9)
        if not part.opening and kind == "ceiling" and beyond == "outdoors" and high:
            bare.setdefault(part.construction.id, []).append(part)
    for id, parts in bare.items():
        made_of = look.house.job.constructions[id]
        loss = sum(each.loss for each in parts)
        changes = _attic(look, parts)
        under = _loss_under(look, parts, changes) if changes else None
        said = f"{made_of.name} of {look.say(factor_of(made_of))} has outdoors beyond it"
        if not isnan(loss):
            said += f" and loses {look.say(loss, d.HEAT_RATE)}"
        mends = [Mend(look.kind.mend)]
        if under is not None:
            said += "; under an attic that finds its own temperature it would lose "
            said += look.say(under, d.HEAT_RATE)
            mends.insert(0, Mend(_words(look), changes))
        yield look.found(f"constructions/{id}", f"{said}.", factor_of(made_of), tuple(mends))


def _given_attic(look: Look) -> str:
    """The attic that the job has already, or empty."""
    spaces = look.house.job.unheated.items()
    return next((id for id, each in spaces if is_called(("attic", "loft"), id, each.name)), "")


def _words(look: Look) -> str:
    id = _given_attic(look)
    if id:
        return f"Put the {look.house.job.unheated[id].name.lower()} beyond it."
    return (
        f"Put an attic beyond it, with a roof as large as the ceilings ({ATTIC_ROOF}) and {ATTIC_AIR} of "
        "outdoor air, both assumed."
    )


def _attic(look: Look, parts: list[Part]) -> tuple[Mapping[str, Any], ...]:
    """The changes that put an attic over ceilings; none when an area is missing or a name is taken."""
    job = look.house.job
    id = _given_attic(look) or "attic"
    over = tuple(set_to(f"{each.path}/beyond", f"unheated/{id}") for each in parts)
    if id in job.unheated:
        return over
    area = sum(float(look.house.area_of(each)) for each in parts)
    deck = next(each for each in ("attic-roof", "attic-roof-deck", f"attic-roof-{len(job.constructions)}")
                if each not in job.constructions)  # fmt: skip
    if isnan(area):
        return ()
    roof = {"construction": deck, "area": look.text(area, d.AREA), "beyond": "outdoors"}
    space = {
        "name": "Attic", "known": "assumed", "volume": look.text(area * ATTIC_HEIGHT, d.VOLUME),
        "air": {"changes": ATTIC_AIR}, "surfaces": {"roof": roof},
    }  # fmt: skip
    made = {"name": "Roof over the attic", "kind": "ceiling", "known": "assumed", "u_value": ATTIC_ROOF}
    return ({"add": f"constructions/{deck}", "to": made}, {"add": f"unheated/{id}", "to": space}, *over)


def _loss_under(look: Look, parts: list[Part], changes: tuple[Mapping[str, Any], ...]) -> float | None:
    """What the ceilings would lose with the changes laid, W; None when they cannot be laid."""
    from heatledger.steps.design import design

    try:
        rooms = design(look.house.job.with_changes(changes), since=look.design).losses.rooms
    except JobErrors:
        return None
    under = sum(float(rooms[each.room.id].surfaces[each.surface.id].loss) for each in parts)
    return None if isnan(under) else under

"""Findings on windows and skylights."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from heatledger.catalog.loader import constructions
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import DERIVED, SEEN, cite
from heatledger.ledger.units import UNITS
from heatledger.steps.review.house import factor_of, u_of
from heatledger.steps.review.kinds import Limit, Look, finding, set_to
from heatledger.steps.review.materials import cold_inside, is_typed, used

Found = Iterator[Finding | NotChecked]
PANES = ("single", "double", "triple")
FRAMES = ("aluminum", "wood", "fiberglass")


@cache
def _windows() -> tuple[tuple[str, str, float], ...]:
    """Key, name and U-value in W/(m²·K) of the whole windows of the catalog."""
    return tuple(
        (key, row.name.lower(), UNITS[row.unit].to_si(float(row.typed)))
        for key, row in constructions().items()
        if row.kind == "window" and key.startswith("window-")
    )


def _best(name: str) -> tuple[str, float] | None:
    """The best whole window with the panes, coating and frame that a name speaks of."""
    said = name.lower().replace("low e", "low-e")
    words = [each for each in (*PANES, *FRAMES) if each in said]
    if not any(each in PANES for each in words):
        words = ["triple"]
    if "low-e" in said or "triple" in words:
        words += ["low-e"]
    rows = [(key, u) for key, row, u in _windows() if all(each in row for each in words)]
    if "low-e" not in words:
        rows = [(key, u) for key, u in rows if "low-e" not in key]
    return min(rows, key=lambda each: each[1]) if rows else None


@finding(
    "center-glass-u",
    Weight.DECIDE,
    cite("HOF-ch17", "Table 2", SEEN),
    fires="The U-value of a window is less than {0} of that of the best whole window in the table with the "
    "panes, the coating and the frame that its name speaks of (triple low-e where it speaks of none).",
    why="double low-e glass is 0.30 at its center and 0.39 Btu/(h·ft²·°F) (1.7 and 2.2 W/(m²·K)) with "
    "its frame",
    mend="Take the U-value of the whole window.",
    limits=(Limit("center-glass-u", "85 %", d.RATIO, "U-value against the table"),),
)
def _center_glass_u(look: Look) -> Found:
    for each in used(look):
        u_value = u_of(each)
        best = _best(each.name) if each.kind == "window" and is_typed(each) else None
        if best is not None and u_value < look.limit * best[1] * (1 - 1e-9):
            key, whole = best
            yield look.found(
                f"constructions/{each.id}",
                f"{each.name} has a U-value of {look.say(factor_of(each))}; the best whole window like it is "
                f"{look.say(whole, d.TRANSMITTANCE)}, {100 * (whole / u_value - 1):.0f} % more.",
                factor_of(each),
                (
                    Mend(
                        "Take the whole window of the catalog.",
                        (set_to(f"constructions/{each.id}/catalog", key),),
                    ),
                    Mend("Keep it where the label is that of the whole window, and say so."),
                ),
            )


@finding(
    "skylight-as-window",
    Weight.DECIDE,
    cite("WAC-30314", "default U of skylights", SEEN),
    fires="A window in a ceiling to outdoors is of the same construction as a window in a wall.",
    why="glass that lies flat loses more; state defaults run 0.50 to 0.67 Btu/(h·ft²·°F) (2.8 to 3.8 "
    "W/(m²·K)) for ordinary double glass",
    mend="Give the skylight a construction of its own, with a U-value for skylights.",
    limits=(Limit("skylight-as-window", "120 %", d.RATIO, "U-value against the same glass upright"),),
)
def _skylight_as_window(look: Look) -> Found:
    upright = {
        each.construction.id
        for each in look.house.parts
        if each.opening and each.surface.construction.kind == "wall"
    }
    for part in look.house.own_parts:
        made_of = part.construction
        flat = (
            part.opening
            and part.surface.construction.kind == "ceiling"
            and part.surface.beyond.kind == "outdoors"
            and not made_of.catalog.startswith("skylight")
            and look.limit > 1
        )
        if not flat or made_of.kind != "window" or made_of.id not in upright:
            continue
        path = f"constructions/{made_of.id}-skylight"
        value = look.text(u_of(made_of) * look.limit, d.TRANSMITTANCE)
        changes: tuple[dict[str, object], ...] = (
            {"set": f"{part.path}/construction", "to": f"{made_of.id}-skylight"},
        )
        if f"{made_of.id}-skylight" not in look.house.job.constructions:
            new = {"name": f"{made_of.name}, as a skylight", "kind": "window", "u_value": value}
            changes = ({"add": path, "to": new}, *changes)
        yield look.found(
            part.path,
            f"{part.name} lies flat and loses more than the wall window it was copied from.",
            factor_of(made_of),
            (Mend(f"Give it a construction of its own, here with {value}.", changes),),
        )


@finding(
    "glass-frosts",
    Weight.NOTE,
    cite("HOF-ch26", "Table 10, film of 0.68 indoors", DERIVED),
    fires="By its U-value, a window of a room kept at 59 °F (15 °C) or more is colder than {0} inside on "
    "the design day.",
    why="inner surface = indoor - U-value × 0.68 × (indoor - outdoor); water freezes on it and runs to the "
    "sill",
    mend="Add a storm window or better glass, and keep the air of the room dry.",
    limits=(Limit("glass-frosts", "32 °F", d.TEMPERATURE, "inner surface of glass"),),
)
def _glass_frosts(look: Look) -> Found:
    yield from cold_inside(look, ("window",), "its glass is {} inside on the design day, and will frost")

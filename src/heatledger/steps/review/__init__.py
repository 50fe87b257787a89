"""What a careful senior designer says on reading a design.

Lives here: one function a kind of finding, grouped by what it looks at; a check reads plain numbers out
of the figures of a design and yields findings, or says for want of what it could not look.
May not live here: physics (a result that is shown on paper belongs to a step), findings on things the
job does not hold yet, and any word on safety without its caution. Findings on pipes, boilers, flues and
lagging belong to the steps that lay them out.
Read first: ``kinds.py``, then ``temperatures.py``. The page ``docs/look-up/findings.md`` is made from this.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatledger.ledger.findings import Finding, NotChecked

# The order of these is the order of the trade, in which findings are shown.
from heatledger.steps.review import (  # isort: skip
    temperatures, standing, sizes, slips, shapes, depths, materials, extremes, glass, beyond, leakage, rooms,
    envelope_gaps, whole, plans,
    emitter_findings, emitter_walls, loop_findings, radiator_findings,
    unsolved, piping, runs, pumping, pumps_and_zones,
    boiler, firing, pressure, guards, bill_findings,
    control_findings, zone_findings, startup_findings, fire_findings,
)  # fmt: skip
from heatledger.steps.review.house import House
from heatledger.steps.review.kinds import KINDS, Look
from heatledger.steps.review.order import decided, folded, gathered, ordered

if TYPE_CHECKING:
    from heatledger.steps.design import Design

__all__ = ["KINDS", "review"]
GROUPS = (
    temperatures, standing, sizes, slips, shapes, depths, materials, extremes, glass, beyond, leakage, rooms,
    envelope_gaps, whole, plans,
    emitter_findings, emitter_walls, loop_findings, radiator_findings,
    unsolved, piping, runs, pumping, pumps_and_zones,
    boiler, firing, pressure, guards, bill_findings,
    control_findings, zone_findings, startup_findings, fire_findings,
)  # fmt: skip
"""Modules of the checks, in the order of the trade."""


def review(design: Design) -> tuple[list[Finding], list[NotChecked]]:
    """The findings on a design, must fix first, and what could not be checked.

    A finding that another explains is folded under it; one kind in more than three rooms is said once.
    """
    house = House(design)
    found: list[Finding] = []
    not_checked: list[NotChecked] = []
    for kind in KINDS.values():
        for each in Look(house, kind).run():
            if isinstance(each, Finding):
                found.append(each)
            else:
                not_checked.append(each)
    code = plans.code_from(Look(house, KINDS["code-not-named"]), found)
    found += [code] if code else []
    found += plans.decisions_left(Look(house, KINDS["decision-without-finding"]), found)
    found = gathered(decided(folded(found, house), house), house)
    return ordered(found), _once(not_checked)


def _once(not_checked: list[NotChecked]) -> list[NotChecked]:
    """Each want once a kind, at the first place it was met."""
    seen: dict[tuple[str, str], NotChecked] = {}
    for each in not_checked:
        seen.setdefault((each.id, each.for_want_of), each)
    return list(seen.values())

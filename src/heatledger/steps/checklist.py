"""The startup checklist of this job, in order, and the order in which its circuits are rid of air."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatledger.steps.check_fire import with_the_fire
from heatledger.steps.check_running import handing_over, running
from heatledger.steps.check_water import before_the_fire, purge_order
from heatledger.steps.said import CheckStep

if TYPE_CHECKING:
    from heatledger.steps.design import Design

__all__ = ["CheckStep", "checklist_of", "purge_order"]


def checklist_of(design: Design) -> list[CheckStep]:
    """Every step in the order it is done; those that this job has no use for are marked."""
    return [*before_the_fire(design), *with_the_fire(design), *running(design), *handing_over(design)]

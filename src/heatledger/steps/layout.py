"""What every piece of piping is laid out with: the job, the water, the limits, and what is kept."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from heatledger.job.model import Job
from heatledger.job.system_model import Pipe
from heatledger.ledger.figures import Figure
from heatledger.physics.friction import flow_total, velocity
from heatledger.steps.emitter_reuse import Kept
from heatledger.steps.emitters import Emitters
from heatledger.steps.piping import PipeHead, laid
from heatledger.steps.rubbing import Water
from heatledger.steps.tubes import SizeLimits


@dataclass(frozen=True)
class Layout:
    """What every circuit is laid out with."""

    job: Job
    heat: Emitters
    water: Water
    limits: SizeLimits
    kept: Kept

    def piece(
        self,
        pipe: Pipe,
        path: str,
        family: str,
        flow: Figure,
        emitter_length: Figure | None = None,
        may_be_none: bool = False,
    ) -> PipeHead:
        """A laid piece of piping, that of the earlier run where nothing of it has changed."""
        goes_in: tuple[object, ...] = (pipe, family, flow, emitter_length, self.water.viscosity)
        if pipe.tube is None:
            goes_in = (*goes_in, self.limits)
        make = partial(laid, pipe, path, family, flow, self.water, self.limits, emitter_length, may_be_none)
        return self.kept.part(path, goes_in, make)

    def joined(self, path: str, flows: Sequence[Figure]) -> Figure:
        """The sum of flows that join; one that stands alone is its own sum."""
        if len(flows) == 1:
            return flows[0]
        return self.kept.part(f"{path}/flow", tuple(flows), partial(flow_total, flows=flows))


def speed_in(piece: PipeHead, flow: Figure) -> Figure:
    """Speed of a flow in a laid piece."""
    return velocity(flow=flow, bore=piece.bore)

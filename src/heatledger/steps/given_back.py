"""What the emitters of a circuit give, and what comes back from them, at the flows that really result."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.ledger.figures import Figure
from heatledger.physics.along_emitter import outlet_at_load
from heatledger.physics.emitter_loads import outputs_total
from heatledger.physics.friction import flow_total
from heatledger.physics.water import capacity, drop_of_heat
from heatledger.steps.emitter_chains import outlet_chain
from heatledger.steps.emitters import Emitters

if TYPE_CHECKING:
    from heatledger.steps.circuits import Circuits


@dataclass(frozen=True)
class GivenBack:
    """Output of a circuit at the design supply, its drop and its return."""

    output: Figure
    drop: Figure
    return_: Figure


def drop_that_results(heat: Emitters, circuits: Circuits) -> Figure:
    """Drop of the design day at the flows that circulators give, all circuits together; else by design.

    A circuit that no circulator drives counts with its design flow and its load.
    """
    found = list(circuits.circuits.values())
    if not any(each.actual_flow is not None and not each.actual_flow.is_missing for each in found):
        return heat.house.drop
    if len(found) == 1 and found[0].actual_drop is not None:
        return found[0].actual_drop
    flows = [each.flow if each.actual_flow is None else each.actual_flow for each in found]
    outputs = [each.load if each.actual_output is None else each.actual_output for each in found]
    return drop_of_heat(
        heat=outputs_total(outputs=outputs), flow=flow_total(flows=flows), water_heat=heat.house.water_heat
    )


def given_back(
    job: Job, heat: Emitters, in_series: bool, flow: Figure, flows: Mapping[str, Figure]
) -> GivenBack:
    """Output, drop and return of a circuit at a flow; ``flows`` are those of its runs by emitter."""
    supply = heat.house.supply
    chains = [list(flows)] if in_series else [[id] for id in flows]
    passed = {
        id: each
        for ids in chains
        for id, each in outlet_chain(job, heat, ids, supply, {id: flows[id] for id in ids}).items()
    }
    outputs = [each.output for each in passed.values()]
    output = outputs[0] if len(outputs) == 1 else outputs_total(outputs=outputs)
    carried = heat.house.water_heat
    if in_series and passed:
        return_ = list(passed.values())[-1].outlet
    else:
        return_ = outlet_at_load(inlet=supply, load=output, capacity=capacity(flow=flow, water_heat=carried))
    return GivenBack(output, drop_of_heat(heat=output, flow=flow, water_heat=carried), return_)

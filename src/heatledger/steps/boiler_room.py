"""The boiler room: the load, the boiler against it, the water of the system, its pressures and its tank."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.ledger.dimensions import (
    HEAT_RATE,
    HeatRate,
    Pressure,
    Ratio,
    Temperature,
    TemperatureDifference,
    WaterVolume,
)
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.physics.boilers import largest_output, plant_load, relief_needed, return_at_design
from heatledger.physics.firing import condensing_efficiency
from heatledger.physics.pipes import water_total
from heatledger.steps.given_back import drop_that_results
from heatledger.steps.losses import Losses
from heatledger.steps.plant_output import Factor, chain_of_factors, outputs_of, product_of
from heatledger.steps.plant_pressure import pressures_of, tank_of
from heatledger.steps.plant_water import VolumePart, mains_loss, volume_parts

if TYPE_CHECKING:
    from heatledger.steps.circuits import Circuits
    from heatledger.steps.emitters import Emitters

CONDENSING = "condensing"


@result
class PlantRoom:
    """The boiler room on the design day.

    ``load`` is the loss of the house and what the mains lose outside its rooms, no allowance in it.
    ``input`` and ``output`` are those at the height of the site; ``output_milder`` is the output by the
    milder reading of the rule. ``ratio`` is output over load. ``factors`` are all that stand between the
    loss and the plate, with their ``product``. ``fill_pressure`` is the job's own, else ``needed_fill``.
    ``hottest`` is the highest the controls allow. ``tank_volume`` is the larger of the two methods, by the
    densities of water and by the line of the boiler code where that is valid. ``hot_pressure`` is that
    with the tank as chosen, else with the tank as sized. A plain steel tank has no ``precharge_pressure``,
    and its ``acceptance_factor`` is the share of it that takes water. ``drop_design`` and ``return_design``
    are those at the flow that results where a pump curve gives one, else by the drop of the design.
    ``water_known`` is the water of the parts that are known while others wait, and ``tank_least`` the tank
    that alone asks for; both None where nothing waits.
    """

    mains_loss: HeatRate
    load: HeatRate
    input: HeatRate | None
    altitude_factor: Ratio | None
    rated_output: HeatRate | None
    output: HeatRate | None
    output_milder: HeatRate | None
    net_rating: HeatRate | None
    ratio: Ratio | None
    factors: dict[str, Factor]
    product: Ratio
    largest_output: HeatRate
    drop_design: TemperatureDifference
    return_design: Temperature
    efficiency: Ratio | None
    volumes: dict[str, VolumePart]
    water_volume: WaterVolume
    water_known: WaterVolume | None
    static_pressure: Pressure
    needed_fill: Pressure
    fill_pressure: Pressure
    precharge_pressure: Pressure | None
    relief_pressure: Pressure
    highest_pressure: Pressure
    hottest: Temperature
    filled_at: Temperature
    water_growth: Ratio
    metal_growth: Ratio
    expansion_share: Ratio
    expansion_by_line: Ratio | None
    expanded: WaterVolume
    acceptance_factor: Ratio
    tank_by_density: WaterVolume
    tank_by_line: WaterVolume | None
    tank_volume: WaterVolume
    tank_least: WaterVolume | None
    hot_pressure: Pressure
    top_cold: Pressure
    top_hot: Pressure
    top_margin: Pressure
    relief_needed: HeatRate


@result
class BoilerRoom:
    """Result of the boiler room step."""

    __path__ = ""

    plant: PlantRoom


def boiler_room(job: Job, losses: Losses, heat: Emitters, circuits: Circuits) -> BoilerRoom:
    """The boiler room that follows from the loss, the emitters and the circuits.

    Without a boiler, a tank or circuits it says what can be said, and the rest waits for them by name.
    """
    mains = mains_loss(job, losses, heat, circuits)
    load = plant_load(parts=[losses.house.loss, mains])
    burner = outputs_of(job, load)
    factors = chain_of_factors(job, losses.house.loss, load, burner)
    volumes, known = volume_parts(job, heat, circuits)
    water = water_total(volumes=[each.volume for each in volumes.values()])
    still = pressures_of(job, losses, heat)
    tank = tank_of(job, losses, still, water)
    drop, back = _coming_back(heat, circuits)
    return BoilerRoom(
        PlantRoom(
            mains_loss=mains,
            load=load,
            input=burner.input,
            altitude_factor=burner.altitude,
            rated_output=burner.rated_output,
            output=burner.output,
            output_milder=burner.output_milder,
            net_rating=burner.net,
            ratio=burner.ratio,
            factors=factors,
            product=product_of(factors),
            largest_output=largest_output(load=load),
            drop_design=drop,
            return_design=back,
            efficiency=_efficiency(job, back),
            volumes=volumes,
            water_volume=water,
            water_known=known,
            static_pressure=still.static,
            needed_fill=still.needed_fill,
            fill_pressure=still.fill,
            precharge_pressure=still.precharge,
            relief_pressure=still.relief,
            highest_pressure=still.highest,
            hottest=still.hottest,
            filled_at=still.filled_at,
            water_growth=still.water_growth,
            metal_growth=still.metal_growth,
            expansion_share=still.growth,
            expansion_by_line=still.by_line,
            expanded=tank.expanded,
            acceptance_factor=tank.acceptance,
            tank_by_density=tank.by_density,
            tank_by_line=tank.by_line,
            tank_volume=tank.volume,
            tank_least=None if known is None else tank_of(job, losses, still, known).volume,
            hot_pressure=tank.hot,
            top_cold=still.top_cold,
            top_hot=tank.top_hot,
            top_margin=tank.top_margin,
            relief_needed=relief_needed(output=_fire(job, burner.rated_output)),
        )
    )


def _coming_back(heat: Emitters, circuits: Circuits) -> tuple[Figure, Figure]:
    """Drop and return of the design day at the flow that results."""
    drop = drop_that_results(heat, circuits)
    return drop, return_at_design(supply=heat.house.supply, drop=drop)


def _fire(job: Job, rated_output: Figure | None) -> Figure:
    """Heat the boiler can make: its rated output, else its input."""
    boiler = job.system.plant.boiler
    if rated_output is not None and not rated_output.is_missing:
        return rated_output
    if boiler is not None and boiler.input is not None:
        return boiler.input
    return missing(HEAT_RATE, "plant/boiler/output", "output") if rated_output is None else rated_output


def _efficiency(job: Job, back: Figure) -> Figure | None:
    """Efficiency of a condensing gas boiler at the design return; None for others and outside the table."""
    from heatledger.catalog.parts import efficiency_rows

    boiler = job.system.plant.boiler
    if boiler is None or boiler.kind != CONDENSING or back.is_missing:
        return None
    return efficiency_at(back, list(efficiency_rows().values()))


def efficiency_at(back: Figure, rows: Sequence[Mapping[str, Figure]]) -> Figure | None:
    """Efficiency at a return by the two rows around it; None outside the table.

    The other rows stand on either side of them, so that a figure made again for another return reads those.
    """
    pairs = list(pairwise(rows))
    here = next(
        (i for i, (a, b) in enumerate(pairs) if float(a["return"]) <= float(back) <= float(b["return"])), None
    )
    if here is None:
        return None
    colder, warmer = rows[0]["efficiency"], rows[-1]["efficiency"]
    for low, high in pairs[:here]:
        colder = _between(back, low, high, colder, high["efficiency"])
    for low, high in reversed(pairs[here + 1 :]):
        warmer = _between(back, low, high, low["efficiency"], warmer)
    return _between(back, *pairs[here], colder, warmer)


def _between(
    back: Figure, low: Mapping[str, Figure], high: Mapping[str, Figure], colder: Figure, warmer: Figure
) -> Figure:
    return condensing_efficiency(
        return_water=back, lower_return=low["return"], higher_return=high["return"],
        lower_efficiency=low["efficiency"], higher_efficiency=high["efficiency"], colder=colder,
        warmer=warmer,
    )  # fmt: skip

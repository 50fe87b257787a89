"""Readings of a startup beside what is due, each held to the state it was read in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.ledger.dimensions import Concentration, HeatRate, Pressure, Ratio, TemperatureDifference
from heatledger.ledger.figures import Figure
from heatledger.ledger.results import result
from heatledger.physics.startup import (
    air_free_carbon_monoxide,
    drop_between,
    drop_off,
    excess_air,
    pressure_off,
    pressure_rise,
    return_by_drop,
    settled_drop,
    temperature_off,
)
from heatledger.physics.water import drop_of_heat, heat_carried

if TYPE_CHECKING:
    from heatledger.steps.boiler_room import PlantRoom
    from heatledger.steps.emitters import Emitters


@result
class Compared:
    """Readings beside their targets: how far each lies over it; None where one of the two is missing.

    A drop is held to the drop that fits the state it was read in: ``drop_due`` is that at full fire where
    ``warming``, because the water takes more heat than the emitters, else that of settled water.
    """

    supply_off: TemperatureDifference | None
    return_off: TemperatureDifference | None
    drop: TemperatureDifference | None
    drop_due: TemperatureDifference | None
    drop_off: TemperatureDifference | None
    output: HeatRate | None
    cold_off: Pressure | None
    hot_off: Pressure | None
    rise: Pressure | None
    precharge_off: Pressure | None
    carbon_monoxide: Concentration | None
    excess_air: Ratio | None
    warming: bool


@dataclass(frozen=True)
class Drops:
    """The two drops that may stand across the boiler: at full fire while the water warms, and settled."""

    fire: Figure | None
    settled: Figure

    def fits_full_fire(self, read: Figure | None) -> bool:
        """True where a drop that was read lies nearer to that of full fire than to that of settled water."""
        if read is None or self.fire is None or not float(self.fire) > float(self.settled):
            return False
        return abs(float(read) - float(self.fire)) < abs(float(read) - float(self.settled))


def drops_of(plant: PlantRoom, heat: Emitters, flow: Figure, taken: Figure) -> Drops:
    """Both drops at a flow; ``taken`` is the drop of the heat that the emitters take."""
    if plant.output is None:
        return Drops(None, taken)
    fire = drop_of_heat(heat=plant.output, flow=flow, water_heat=heat.house.water_heat)
    return Drops(fire, taken if fire.is_missing else settled_drop(fire=fire, taken=taken))


def compared_with(
    job: Job, heat: Emitters, plant: PlantRoom, due: Figure, supply: Figure, drops: Drops
) -> Compared:
    """The readings of the job beside what is due: ``supply`` is what was read, else ``due``."""
    read = job.system.readings
    fire = read.combustion
    own = None
    if read.supply is not None and read.return_ is not None:
        own = drop_between(supply=read.supply, return_water=read.return_)
    warming = drops.fits_full_fire(own)
    drop = drops.fire if warming and drops.fire is not None else drops.settled
    back = return_by_drop(supply=supply, drop=drop)
    output = None
    if own is not None and read.flow is not None:
        output = heat_carried(flow=read.flow, water_heat=heat.house.water_heat, drop=own)
    cold, hot = read.cold_pressure, read.hot_pressure
    air_free, excess = None, None
    if fire.oxygen is not None:
        excess = excess_air(oxygen=fire.oxygen)
        if fire.carbon_monoxide is not None:
            air_free = air_free_carbon_monoxide(measured=fire.carbon_monoxide, oxygen=fire.oxygen)
    return Compared(
        supply_off=None if read.supply is None else temperature_off(read=read.supply, due=due),
        return_off=None if read.return_ is None else temperature_off(read=read.return_, due=back),
        drop=own,
        drop_due=None if own is None else drop,
        drop_off=None if own is None else drop_off(read=own, due=drop),
        output=output,
        cold_off=None if cold is None else pressure_off(read=cold, due=plant.fill_pressure),
        hot_off=None if hot is None else pressure_off(read=hot, due=plant.hot_pressure),
        rise=None if cold is None or hot is None else pressure_rise(hot=hot, cold=cold),
        precharge_off=None
        if read.precharge is None or plant.precharge_pressure is None
        else pressure_off(read=read.precharge, due=plant.precharge_pressure),
        carbon_monoxide=air_free,
        excess_air=excess,
        warming=warming,
    )

"""Pressures of the boiler room cold and hot, and the expansion tank between them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.dimensions import EXPANSION, LENGTH, PRESSURE, TEMPERATURE, WATER_VOLUME
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.formulas import formula_of
from heatledger.ledger.sources import DERIVED, JUDGMENT, PRACTICE, SEEN, cite
from heatledger.physics.pressure import (
    fill_pressure,
    precharge_pressure,
    static_pressure,
    top_pressure,
    vapor_margin,
)
from heatledger.physics.psychrometrics import saturation_pressure
from heatledger.physics.tanks import (
    acceptance_factor,
    diaphragm_tank,
    expanded_volume,
    gas_left,
    growth_by_line,
    highest_at_tank,
    hot_pressure,
    metal_growth,
    net_growth,
    plain_share,
    plain_tank,
    tank_by_line,
    water_growth,
)
from heatledger.physics.water import water_density
from heatledger.steps.losses import Losses
from heatledger.steps.usual import usual

if TYPE_CHECKING:
    from heatledger.steps.emitters import Emitters

FILL_MARGIN = cite("FILL-HH", "margin over the height", SEEN)
COLD_WATER = cite("", "coldest water a house is filled with", JUDGMENT)
HOUSE_VALVE = cite("", "usual relief valve of a house boiler", PRACTICE)
OPEN_TO_AIR = cite("", "a plain tank is drained open to the air", DERIVED)
STEEL = cite("ASHRAE-TANK", "growth of steel", SEEN)
HOTTEST_GOVERNS = "pressures and the tank must stand the hottest water that either of them allows"
LARGER_GOVERNS = (
    "water by its densities and the line of the boiler code differ; the larger is on the safe side"
)


@dataclass(frozen=True)
class Still:
    """Still water, cold and hot, before the tank is known; a plain steel tank has no ``precharge``."""

    air: Figure
    static: Figure
    static_hot: Figure
    needed_fill: Figure
    fill: Figure
    precharge: Figure | None
    relief: Figure
    highest: Figure
    hottest: Figure
    filled_at: Figure
    water_growth: Figure
    metal_growth: Figure
    growth: Figure
    by_line: Figure | None
    top_cold: Figure


@dataclass(frozen=True)
class TankSize:
    """The tank by both methods, and what the gauge shows with it when hot."""

    expanded: Figure
    acceptance: Figure
    by_density: Figure
    by_line: Figure | None
    volume: Figure
    hot: Figure
    top_hot: Figure
    top_margin: Figure


def pressures_of(job: Job, losses: Losses, heat: Emitters) -> Still:
    """Fill, precharge, relief and growth of the water, by the job or by common practice."""
    plant = job.system.plant
    height = plant.height
    if height is None:
        height = missing(LENGTH, "plant/height", "height of the highest pipe above the gauge")
    filled_at = plant.fill_water
    if filled_at is None:
        filled_at = usual("plant/fill_water", "water it is filled with", "40 °F", TEMPERATURE, COLD_WATER)
    hottest = _hottest(heat.house.supply, plant.high_limit)
    cold, hot = water_density(temperature=filled_at), water_density(temperature=hottest)
    static = static_pressure(height=height, density=cold)
    margin = usual("plant/fill_margin", "margin at the top", "5 psi", PRESSURE, FILL_MARGIN)
    needed = fill_pressure(static=static, margin=margin)
    fill = needed if plant.fill is None else plant.fill
    relief = plant.boiler.relief if plant.boiler else None
    if relief is None:
        relief = usual("plant/boiler/relief", "relief valve setting", "30 psi", PRESSURE, HOUSE_VALVE)
    of_water = water_growth(cold_density=cold, hot_density=hot)
    steel = usual("plant/metal_growth/steel", "growth of steel", "0.0000065 °F⁻¹", EXPANSION, STEEL)
    of_metal = metal_growth(growth=steel, cold=filled_at, hot=hottest)
    low, high = formula_of(growth_by_line).valid["hot"]
    return Still(
        air=losses.site.pressure,
        static=static,
        static_hot=static_pressure(height=height, density=hot),
        needed_fill=needed,
        fill=fill,
        precharge=None if is_plain(job) else precharge_pressure(fill=fill),
        relief=relief,
        highest=highest_at_tank(relief=relief),
        hottest=hottest,
        filled_at=filled_at,
        water_growth=of_water,
        metal_growth=of_metal,
        growth=net_growth(water=of_water, metal=of_metal),
        by_line=growth_by_line(hot=hottest) if low <= float(hottest) <= high else None,
        top_cold=top_pressure(at_gauge=fill, static=static),
    )


def is_plain(job: Job) -> bool:
    """True where the job's tank is of plain steel, with air over its water."""
    tank = job.system.plant.tank
    return tank is not None and tank.is_plain


def _charge(job: Job, still: Still) -> Figure:
    """Pressure of the gas in the tank before any water: its charge, or the air of the site in a plain one."""
    tank = job.system.plant.tank
    if still.precharge is None:
        return usual(
            "plant/tank/air", "air in a plain tank, over that of the site", "0 psi", PRESSURE, OPEN_TO_AIR
        )
    return still.precharge if tank is None or tank.precharge is None else tank.precharge


def _hottest(supply: Figure, limit: Figure | None) -> Figure:
    """The hottest the water may get: the high limit, and no less than what the design runs with."""
    if limit is None or supply.is_missing:
        return supply if limit is None else limit
    return choose({"high limit": limit, "design supply": supply}, largest, HOTTEST_GOVERNS)


def tank_of(job: Job, losses: Losses, still: Still, water: Figure) -> TankSize:
    """The tank by the density of water and by the line of the boiler code; the larger governs."""
    expanded = expanded_volume(volume=water, growth=still.growth)
    between = {"cold": still.fill, "hot": still.highest, "air": still.air}
    if is_plain(job):
        acceptance = plain_share(**between)
        by_density = plain_tank(expanded=expanded, **between)
    else:
        acceptance = acceptance_factor(**between)
        by_density = diaphragm_tank(expanded=expanded, acceptance=acceptance)
    by_line = None
    if float(acceptance) <= 0:
        by_density = missing(WATER_VOLUME, "plant/fill", "a fill pressure below the highest at the tank")
    volume = by_density
    if still.by_line is not None and not by_density.is_missing:
        by_line = tank_by_line(volume=water, growth=still.by_line, acceptance=acceptance)
        volume = choose(
            {"densities of water": by_density, "line of the boiler code": by_line}, largest, LARGER_GOVERNS
        )
    tank = job.system.plant.tank
    chosen = volume if tank is None or tank.volume is None else tank.volume
    charge = _charge(job, still)
    gas = gas_left(tank=chosen, precharge=charge, fill=still.fill, air=still.air, expanded=expanded)
    hot = hot_pressure(tank=chosen, precharge=charge, air=still.air, gas=gas)
    top = top_pressure(at_gauge=hot, static=still.static_hot)
    vapor = saturation_pressure(temperature=still.hottest)
    return TankSize(
        expanded=expanded,
        acceptance=acceptance,
        by_density=by_density,
        by_line=by_line,
        volume=volume,
        hot=hot,
        top_hot=top,
        top_margin=vapor_margin(pressure=top, air=still.air, vapor=vapor),
    )

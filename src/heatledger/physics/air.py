"""Outdoor air that comes into a house: its density, its heat, its flow."""

from __future__ import annotations

from heatledger.ledger.dimensions import (
    AirChanges,
    AirFlow,
    Area,
    Conductance,
    Density,
    HeatRate,
    Length,
    Pressure,
    Temperature,
    Volume,
    VolumeHeat,
)  # fmt: skip
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import absolute, total
from heatledger.ledger.sources import DERIVED, PRACTICE, SEEN, cite
from heatledger.ledger.symbols import const
from heatledger.physics.constants import ATMOSPHERE, SEA_LEVEL

THINNING = const(2.25577e-5, "1/m", ATMOSPHERE, "thinning of the standard atmosphere")
STEEPNESS = const(5.2559, "1", ATMOSPHERE, "exponent of the standard atmosphere")
DRY_AIR = const(287.042, "J/(kg·K)", ATMOSPHERE, "gas constant of dry air")
AIR_SPECIFIC_HEAT = const(
    0.24, "Btu/(lb·°F)", cite("", "dry air at room temperature", PRACTICE), "specific heat of dry air"
)
EASY_AIR = const(0.018, "Btu/(ft³·°F)", cite("E2-CRACK", "0.24 × 0.075", SEEN), "heat of a cubic foot of air")
AIR_HEAT_LOSS = cite("HOF-ch17", "eq 1", SEEN)
AIR_CHANGE = cite("HOF-ch17", "eqs 6-7", SEEN)


@formula(ATMOSPHERE, title="Air pressure at the site", valid={"elevation": (-5000.0, 11000.0)})
def site_pressure(elevation: Length) -> Pressure:
    """Pressure of the standard atmosphere at a height above sea level.

    Valid for: heights up to 11 km, where the standard atmosphere changes its form.
    Leaves out: weather, which moves it by a few percent.

    >>> round(site_pressure(elevation=1690.0), -1)
    82600.0
    """
    return SEA_LEVEL * (1 - THINNING * elevation) ** STEEPNESS


@formula(ATMOSPHERE, title="Density of dry air")
def dry_air_density(pressure: Pressure, temperature: Temperature) -> Density:
    """Mass of a volume of dry air, by the ideal gas law.

    Valid for: air at ordinary pressures and temperatures.
    Leaves out: moisture, which makes room air about 1 % lighter.

    >>> round(dry_air_density(pressure=101325.0, temperature=294.15), 4)
    1.2001
    """
    return pressure / (DRY_AIR * absolute(temperature))


@formula(cite("", "density × specific heat", DERIVED), title="Heat of air by volume")
def air_volume_heat(density: Density) -> VolumeHeat:
    """Heat that warms a volume of air by one degree.

    Valid for: dry air at room temperature.
    Leaves out: moisture; with room humidity it is about 2 % more.

    >>> round(air_volume_heat(density=1.2), 1)
    1205.8
    """
    return density * AIR_SPECIFIC_HEAT


@formula(cite("", "geometry", DERIVED), title="Volume of air")
def room_volume(floor_area: Area, ceiling_height: Length) -> Volume:
    """Volume of air in a room.

    Valid for: a level ceiling, or its mean height.
    Leaves out: furniture and closets.

    >>> round(room_volume(floor_area=20.0, ceiling_height=2.5), 2)
    50.0
    """
    return floor_area * ceiling_height


@formula(AIR_CHANGE, title="Air flow")
def air_flow(volume: Volume, changes: AirChanges) -> AirFlow:
    """Outdoor air that comes into a room.

    Valid for: air changes of outdoor air, by leakage or ventilation.
    Leaves out: air that moves between rooms.

    >>> round(3600 * air_flow(volume=50.0, changes=0.5 / 3600), 2)
    25.0
    """
    return volume * changes


@formula(cite("", "0.018 of a cubic foot of air", PRACTICE), title="Loss by air, the short way")
def air_loss_by_hand(
    volume: Volume, changes: AirChanges, indoor: Temperature, outdoor: Temperature
) -> HeatRate:
    """Heat to warm the outdoor air, by the trade's 0.018 for a cubic foot of air.

    Valid for: heights up to about 1,000 ft above the sea.
    Leaves out: height above the sea and moisture.

    >>> round(air_loss_by_hand(volume=50.0, changes=0.5 / 3600, indoor=293.15, outdoor=263.15), 1)
    251.5
    """
    return EASY_AIR * volume * changes * (indoor - outdoor)


@formula(AIR_HEAT_LOSS, title="Loss by air", by_hand=(air_loss_by_hand, "height above the sea and moisture"))
def air_loss(
    volume: Volume, changes: AirChanges, air_heat: VolumeHeat, indoor: Temperature, outdoor: Temperature
) -> HeatRate:
    """Heat to warm the outdoor air that comes into a room.

    Valid for: steady flow; heat of air by volume at the pressure of the site.
    Leaves out: heat to moisten the air.

    >>> round(air_loss(volume=50.0, changes=0.5 / 3600, air_heat=1206.0, indoor=293.15, outdoor=263.15), 2)
    251.25
    """
    return volume * changes * air_heat * (indoor - outdoor)


@formula(AIR_HEAT_LOSS, title="Conductance by air")
def air_conductance(volume: Volume, changes: AirChanges, air_heat: VolumeHeat) -> Conductance:
    """Heat that the air coming in takes for each degree between indoors and outdoors.

    Valid for: steady flow.
    Leaves out: heat to moisten the air.

    >>> round(air_conductance(volume=50.0, changes=0.5 / 3600, air_heat=1206.0), 3)
    8.375
    """
    return volume * changes * air_heat


@formula(cite("", "a sum of parts", DERIVED), title="Volume of the rooms")
def volumes_total(volumes: Parts[Volume]) -> Volume:
    """Volumes added up.

    Valid for: rooms that do not overlap.
    Leaves out: nothing; no volumes give 0.

    >>> round(volumes_total(volumes=[30.0, 12.5]), 2)
    42.5
    """
    return total(volumes)

"""The design day: temperatures outdoors and in the ground, and the air at the site."""

from __future__ import annotations

from heatledger.job.model import Job
from heatledger.ledger.dimensions import (
    Conductivity,
    Density,
    Pressure,
    Temperature,
    TemperatureDifference,
    VolumeHeat,
)
from heatledger.ledger.results import result
from heatledger.physics.air import air_volume_heat, dry_air_density, site_pressure
from heatledger.physics.envelope import temperature_difference
from heatledger.physics.ground import ground_design_temperature


@result
class SiteConditions:
    """What the site and the design day give to every room.

    ``air_heat`` is the heat of dry air at indoor temperature and the pressure of the site.
    """

    outdoor: Temperature
    indoor: Temperature
    design_difference: TemperatureDifference
    ground: Temperature
    soil_conductivity: Conductivity
    pressure: Pressure
    air_density: Density
    air_heat: VolumeHeat


def site_conditions(job: Job) -> SiteConditions:
    """The conditions of the design day from the entries of the site."""
    site = job.site
    pressure = site_pressure(elevation=site.elevation)
    density = dry_air_density(pressure=pressure, temperature=site.indoor)
    return SiteConditions(
        outdoor=site.outdoor,
        indoor=site.indoor,
        design_difference=temperature_difference(indoor=site.indoor, outdoor=site.outdoor),
        ground=ground_design_temperature(
            mean_ground=site.ground_temperature, amplitude=site.ground_amplitude
        ),
        soil_conductivity=site.soil_conductivity,
        pressure=pressure,
        air_density=density,
        air_heat=air_volume_heat(density=density),
    )

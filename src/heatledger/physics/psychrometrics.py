"""Moist air: saturation pressure, humidity ratio, density."""

from __future__ import annotations

from heatledger.ledger.dimensions import Density, Pressure, Ratio, Temperature
from heatledger.ledger.formulas import formula
from heatledger.ledger.functions import absolute, exp, log, where
from heatledger.ledger.sources import MEMORY, Citation, cite
from heatledger.ledger.symbols import const
from heatledger.physics.air import DRY_AIR

ICE = cite("HOF-ch01", "saturation over ice", MEMORY)
WATER = cite("HOF-ch01", "saturation over water", MEMORY)
MOIST = cite("HOF-ch01", "moist air as an ideal gas", MEMORY)


def _fitted(value: float, power: int, source: Citation) -> Ratio:
    """A coefficient of a fit on kelvins: ``value`` over kelvin to ``power``."""
    unit = {-1: "K", 0: "1", 1: "1/K", 2: "1/K²", 3: "1/K³", 4: "1/K⁴"}[power]
    return const(value, unit, source, f"coefficient of T to the {power}" if power else "coefficient")


I0, I1, I2, I3, I4, I5 = (
    _fitted(-5674.5359, -1, ICE), _fitted(6.3925247, 0, ICE), _fitted(-9.677843e-3, 1, ICE),
    _fitted(6.2215701e-7, 2, ICE), _fitted(2.0747825e-9, 3, ICE), _fitted(-9.484024e-13, 4, ICE),
)  # fmt: skip
I6 = _fitted(4.1635019, 0, ICE)
W0, W1, W2, W3, W4 = (
    _fitted(-5800.2206, -1, WATER), _fitted(1.3914993, 0, WATER), _fitted(-4.8640239e-2, 1, WATER),
    _fitted(4.1764768e-5, 2, WATER), _fitted(-1.4452093e-8, 3, WATER),
)  # fmt: skip
W5 = _fitted(6.5459673, 0, WATER)
ONE_PASCAL = const(1, "Pa", WATER, "unit of the fit")
ONE_KELVIN = const(1, "K", WATER, "unit of the fit")
TRIPLE_POINT = const(273.16, "K", WATER, "triple point of water")
LIGHTNESS = const(0.621945, "1", MOIST, "molecular mass of water over that of dry air")
SWELLING = const(1.607858, "1", MOIST, "molecular mass of dry air over that of water")


@formula(ICE, title="Saturation pressure over ice")
def saturation_over_ice(temperature: Temperature) -> Pressure:
    """Pressure of water vapor in air that is saturated over ice.

    Valid for: -100 to 0 °C.
    Leaves out: the small enhancement by the air itself.

    >>> round(saturation_over_ice(temperature=263.15), 1)
    259.9
    """
    return ONE_PASCAL * exp(
        I0 / absolute(temperature) + I1 + I2 * absolute(temperature) + I3 * absolute(temperature) ** 2
        + I4 * absolute(temperature) ** 3 + I5 * absolute(temperature) ** 4
        + I6 * log(absolute(temperature) / ONE_KELVIN)
    )  # fmt: skip


@formula(WATER, title="Saturation pressure over water")
def saturation_over_water(temperature: Temperature) -> Pressure:
    """Pressure of water vapor in air that is saturated over water.

    Valid for: 0 to 200 °C.
    Leaves out: the small enhancement by the air itself.

    >>> round(saturation_over_water(temperature=293.15), 0)
    2339.0
    """
    return ONE_PASCAL * exp(
        W0 / absolute(temperature) + W1 + W2 * absolute(temperature) + W3 * absolute(temperature) ** 2
        + W4 * absolute(temperature) ** 3 + W5 * log(absolute(temperature) / ONE_KELVIN)
    )  # fmt: skip


@formula(WATER, title="Saturation pressure", valid={"temperature": (173.15, 473.15)})
def saturation_pressure(temperature: Temperature) -> Pressure:
    """Pressure of water vapor in saturated air, over ice below freezing and over water above.

    Valid for: -100 to 200 °C.
    Leaves out: the small enhancement by the air itself.

    >>> round(saturation_pressure(temperature=294.15), 0)
    2488.0
    """
    return where(
        absolute(temperature) > TRIPLE_POINT,
        saturation_over_water(temperature=temperature),
        saturation_over_ice(temperature=temperature),
    )


@formula(MOIST, title="Humidity ratio")
def humidity_ratio(relative_humidity: Ratio, saturation: Pressure, pressure: Pressure) -> Ratio:
    """Mass of water vapor with each unit of mass of dry air.

    Valid for: ordinary pressures.
    Leaves out: the small departure of moist air from an ideal gas.

    >>> round(humidity_ratio(relative_humidity=0.3, saturation=2338.8, pressure=101325.0), 5)
    0.00434
    """
    return LIGHTNESS * relative_humidity * saturation / (pressure - relative_humidity * saturation)


@formula(MOIST, title="Density of moist air")
def moist_air_density(temperature: Temperature, humidity: Ratio, pressure: Pressure) -> Density:
    """Mass of a volume of moist air, its vapor counted.

    ``humidity`` is the humidity ratio.

    Valid for: ordinary pressures.
    Leaves out: the small departure of moist air from an ideal gas.

    >>> round(moist_air_density(temperature=293.15, humidity=0.00434, pressure=101325.0), 4)
    1.201
    """
    return (1 + humidity) * pressure / (DRY_AIR * absolute(temperature) * (1 + SWELLING * humidity))

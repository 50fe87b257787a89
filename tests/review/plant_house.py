"""A house with a boiler room on which no finding of the boiler room says more than it must; invented."""

from __future__ import annotations

from heatledger.job.load import read_job
from heatledger.job.model import Job
from tests.losses.houses import TEXTS

SYSTEM = """
emitters:
  living: {room: living, kind: panel radiator, output: 6000 Btu/h, rated_supply: 75 °C, rated_return: 65 °C,
    rated_air: 20 °C, exponent: 1.3, heating_effect: 1, water: 2 gal}
  kitchen: {room: kitchen, kind: panel radiator, output: 9000 Btu/h, rated_supply: 75 °C, rated_return: 65 °C,
    rated_air: 20 °C, exponent: 1.3, heating_effect: 1, water: 2 gal}
  bedroom: {room: bedroom-1, kind: panel radiator, output: 4000 Btu/h, rated_supply: 75 °C,
    rated_return: 65 °C, rated_air: 20 °C, exponent: 1.3, heating_effect: 1, water: 2 gal}
  small: {room: bedroom-2, kind: panel radiator, output: 4000 Btu/h, rated_supply: 75 °C,
    rated_return: 65 °C, rated_air: 20 °C, exponent: 1.3, heating_effect: 1, water: 2 gal}
zones:
  all: {name: All rooms, thermostat: living}
circuits:
  main:
    kind: home-run manifold
    zone: all
    tube: copper-m-3/4
    length: 20 ft
    runs:
      living: {tube: pex-1/2, length: 60 ft}
      kitchen: {tube: pex-1/2, length: 40 ft}
      bedroom: {tube: pex-1/2, length: 80 ft}
      small: {tube: pex-1/2, length: 90 ft}
plant:
  supply: 140 °F
  drop: 20 °F
  height: 14 ft
  fill: 12 psi
  fill_water: 50 °F
  high_limit: 200 °F
  low_water_cutoff: yes
  boiler: {name: Boiler, fuel: natural gas, kind: condensing, input: 24000 Btu/h, output: 21300 Btu/h,
    efficiency: 89 %, least_output: 3000 Btu/h, water: 12 gal, highest_pressure: 30 psi, relief: 30 psi,
    relief_capacity: 300000 Btu/h}
  tank: {volume: 4.4 gal, acceptance: 2.5 gal, precharge: 12 psi}
controls: {outdoor_reset: yes, differential: 20 °F}
bills:
  winter: {name: Winter, fuel: natural gas, energy: 560 therms, other_use: 60 therms, efficiency: 80 %,
    degree_days: 6480 °F, base: 65 °F}
"""
PLANT = TEXTS["ranch"] + SYSTEM


def plant_house(text: str = "") -> Job:
    """The house, with text put at the end of its file."""
    return read_job(PLANT + text, "case.yaml")

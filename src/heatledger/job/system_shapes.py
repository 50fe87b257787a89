"""The form of the heating system in a job file: emitters, circuits, plant, controls, bills, readings."""

from __future__ import annotations

from heatledger.job.fields import KNOWN_FIELD, NAME, Field, Shape, map_of, quantity, text
from heatledger.job.system_model import (
    BOILER_KINDS,
    CIRCUIT_KINDS,
    EMITTER_KINDS,
    FUELS,
    TANK_KINDS,
    TANK_PLACES,
)
from heatledger.ledger import dimensions as d

EMITTER = Shape("emitter", (
    NAME, text("room", "room it stands in", "kitchen"),
    Field("kind", "choice", "kind", choices=EMITTER_KINDS, example="fin-tube baseboard"),
    text("catalog", "row of the catalog", "fin-tube-plain"),
    quantity("rating", "rated output per length", d.HEAT_PER_LENGTH, "950 Btu/(h·ft)"),
    quantity("output", "rated output", d.HEAT_RATE, "1800 W", range="rated-output"),
    quantity("rated_water", "mean water of the rating", d.TEMPERATURE, "215 °F", "any", "chosen"),
    quantity("rated_supply", "supply of the rating", d.TEMPERATURE, "75 °C", "any", "chosen"),
    quantity("rated_return", "return of the rating", d.TEMPERATURE, "65 °C", "any", "chosen"),
    quantity("rated_air", "air of the rating", d.TEMPERATURE, "65 °F", "any", "chosen"),
    quantity("rated_flow", "flow of the rating", d.VOLUME_FLOW, "1 gpm", range="chosen"),
    quantity("exponent", "exponent", d.RATIO, "1.4", range="exponent"),
    quantity("flow_exponent", "exponent of flow", d.RATIO, "0.04", "zero", "exponent"),
    quantity("heating_effect", "heating-effect factor", d.RATIO, "1.15"),
    quantity("length", "finned length", d.LENGTH, "14 ft"),
    Field("sections", "whole", "sections", d.COUNT, example="7"),
    quantity("edr", "equivalent direct radiation", d.AREA, "35 ft2"),
    quantity("water", "water in it", d.WATER_VOLUME, "1.2 gal"), KNOWN_FIELD,
))  # fmt: skip
ZONE = Shape("zone", (NAME, text("thermostat", "room of the thermostat", "living"), KNOWN_FIELD))
FITTINGS = Field("fittings", "any", "fittings by kind", example="{90-ell: 4}")
TUBE = text("tube", "tube", "copper-m-3/4")
RUN = Shape("run", (
    TUBE, quantity("length", "length of tube", d.LENGTH, "62 ft", "zero", "tube-length"), FITTINGS,
    quantity("valve", "flow coefficient of its valve", d.FLOW_COEFFICIENT, "1.6 Cv"), KNOWN_FIELD,
))  # fmt: skip
CIRCUIT = Shape("circuit", (
    NAME, Field("kind", "choice", "kind", choices=CIRCUIT_KINDS, example="home-run manifold"),
    text("zone", "zone", "ground"), text("circulator", "circulator", "p1"), TUBE,
    quantity("length", "length of its common tube", d.LENGTH, "27 ft", "zero", "tube-length"), FITTINGS,
    quantity("zone_valve", "flow coefficient of the zone valve", d.FLOW_COEFFICIENT, "3.5 Cv"),
    quantity("flow", "flow chosen", d.VOLUME_FLOW, "2.1 gpm", range="chosen"),
    quantity("drop", "temperature drop chosen", d.TEMPERATURE_DIFFERENCE, "20 °F", range="chosen"),
    Field("balanced", "yes-no", "balancing valves set to the flows needed", example="yes"),
    map_of("runs", "runs by emitter, in the order of the water", RUN), KNOWN_FIELD,
))  # fmt: skip
MAINS = Shape("piece of mains", (
    TUBE, quantity("length", "length of the mains", d.LENGTH, "41' 6\"", "zero", "tube-length"), FITTINGS,
    quantity("insulation", "thickness of insulation", d.BORE, "3/4 in", "zero"),
    text("through", "unheated space or neighbor they run through", "unheated/basement"), KNOWN_FIELD,
))  # fmt: skip
BOILER = Shape("boiler", (
    NAME, Field("fuel", "choice", "fuel", choices=FUELS, example="natural gas"),
    Field("kind", "choice", "kind", choices=BOILER_KINDS, example="condensing"),
    quantity("input", "input", d.HEAT_RATE, "50000 Btu/h", range="plate"),
    quantity("output", "output", d.HEAT_RATE, "43150 Btu/h", range="plate"),
    quantity("efficiency", "efficiency", d.RATIO, "86 %", range="efficiency"),
    quantity("least_output", "lowest output", d.HEAT_RATE, "8800 Btu/h", range="plate"),
    quantity("water", "water in it", d.WATER_VOLUME, "2.6 gal"),
    quantity("highest_pressure", "highest pressure allowed", d.PRESSURE, "30 psi", range="chosen"),
    quantity("relief", "relief valve setting", d.PRESSURE, "30 psi", range="chosen"),
    quantity("relief_capacity", "relief valve capacity", d.HEAT_RATE, "500000 Btu/h", range="chosen"),
    quantity("rated_flow", "flow of its head", d.VOLUME_FLOW, "10 gpm", range="chosen"),
    quantity("rated_head", "head at that flow", d.HEAD, "2 ft", "zero"),
    quantity("least_flow", "lowest flow allowed", d.VOLUME_FLOW, "2 gpm", range="chosen"),
    quantity("return_limit", "lowest return allowed", d.TEMPERATURE, "130 °F", "any", "chosen"), KNOWN_FIELD,
))  # fmt: skip
TANK = Shape("tank", (
    Field("kind", "choice", "kind", choices=TANK_KINDS, example="diaphragm"),
    quantity("volume", "tank volume", d.WATER_VOLUME, "4.4 gal", range="chosen"),
    quantity("acceptance", "acceptance volume", d.WATER_VOLUME, "2.5 gal", range="chosen"),
    quantity("precharge", "precharge", d.PRESSURE, "12 psi", range="chosen"),
    Field("placed", "choice", "where it joins", choices=TANK_PLACES, example="pump suction"), KNOWN_FIELD,
))  # fmt: skip
CIRCULATOR = Shape("circulator", (
    NAME, quantity("shutoff", "head at no flow", d.HEAD, "20 ft"),
    quantity("middle_flow", "middle flow", d.VOLUME_FLOW, "10 gpm", range="chosen"),
    quantity("middle_head", "head at the middle flow", d.HEAD, "16 ft"),
    quantity("high_flow", "high flow", d.VOLUME_FLOW, "20 gpm", range="chosen"),
    quantity("high_head", "head at the high flow", d.HEAD, "6 ft"),
    quantity("power", "electric power", d.POWER, "60 W"), KNOWN_FIELD,
))  # fmt: skip
PLANT = Shape("boiler room", (
    quantity("supply", "design supply", d.TEMPERATURE, "160 °F", "any", "chosen"),
    quantity("drop", "design temperature drop", d.TEMPERATURE_DIFFERENCE, "20 °F", range="chosen"),
    quantity("height", "height of the highest pipe above the gauge", d.LENGTH, "19 ft", "zero"),
    quantity("fill", "fill pressure", d.PRESSURE, "12 psi", range="chosen"),
    quantity("fill_water", "water it is filled with", d.TEMPERATURE, "50 °F", "any", "chosen"),
    quantity("high_limit", "high limit", d.TEMPERATURE, "200 °F", "any", "chosen"),
    Field("low_water_cutoff", "yes-no", "low-water cutoff", example="yes"),
    Field("boiler", "shape", "boiler", shape=BOILER), Field("tank", "shape", "expansion tank", shape=TANK),
    Field("mains", "shape", "mains", shape=MAINS), map_of("circulators", "circulators", CIRCULATOR),
    KNOWN_FIELD,
))  # fmt: skip
CONTROLS = Shape("set of controls", (
    Field("outdoor_reset", "yes-no", "outdoor reset", example="yes"),
    quantity("coldest_supply", "reset supply on the design day", d.TEMPERATURE, "160 °F", "any", "chosen"),
    quantity("mildest_supply", "reset supply at the mild end", d.TEMPERATURE, "90 °F", "any", "chosen"),
    quantity("mildest_outdoor", "outdoor at the mild end", d.TEMPERATURE, "60 °F", "any", "chosen"),
    quantity("least_supply", "lowest supply allowed", d.TEMPERATURE, "90 °F", "any", "chosen"),
    quantity("warm_weather_shutdown", "warm-weather shutdown", d.TEMPERATURE, "65 °F", "any", "chosen"),
    quantity("setback", "night setback", d.TEMPERATURE_DIFFERENCE, "4 °F", "zero", "chosen"),
    quantity("differential", "differential", d.TEMPERATURE_DIFFERENCE, "16 °F", range="chosen"),
    quantity("post_purge", "post-purge", d.TIME, "3 min", "zero", "chosen"), KNOWN_FIELD,
))  # fmt: skip
BILL = Shape("bill", (
    NAME, Field("fuel", "choice", "fuel", choices=FUELS, example="natural gas"),
    quantity("energy", "fuel used", d.ENERGY, "1003 therms"),
    quantity("volume", "fuel used", d.WATER_VOLUME, "820 gal", range="oil-used"),
    quantity("gas", "gas used", d.VOLUME, "98000 ft3", range="gas-used"),
    quantity("heat_content", "heat content", d.HEAT_CONTENT, "138500 Btu/gal"),
    quantity("other_use", "used for other things", d.ENERGY, "150 therms", "zero"),
    quantity("efficiency", "efficiency over the season", d.RATIO, "80 %", range="efficiency"),
    quantity("degree_days", "degree days", d.TEMPERATURE_DIFFERENCE, "6480 °F", range="degree-days"),
    quantity("base", "base of the degree days", d.TEMPERATURE, "65 °F", "any", "chosen"), KNOWN_FIELD,
))  # fmt: skip
COMBUSTION = Shape("combustion reading", (
    quantity("oxygen", "oxygen", d.RATIO, "4.5 %", "zero", "oxygen"),
    quantity("carbon_monoxide", "carbon monoxide in the flue", d.CONCENTRATION, "35 ppm", "zero"),
    quantity("draft", "draft", d.DRAFT, "-0.03 in. w.c.", "any"),
    quantity("stack", "stack temperature", d.TEMPERATURE, "135 °F", "any"),
    quantity("room_carbon_monoxide", "carbon monoxide in the room", d.CONCENTRATION, "0 ppm", "zero"),
    Field("spillage", "choice", "spillage", choices=("none", "some"), example="none"), KNOWN_FIELD,
))  # fmt: skip
READINGS = Shape("set of readings", (
    text("date", "date", "6 December 2026"), text("by", "read by", "J. Ondry"),
    quantity("outdoor", "outdoor", d.TEMPERATURE, "18 °F", "any"),
    quantity("room", "room", d.TEMPERATURE, "68 °F", "any"),
    quantity("supply", "supply", d.TEMPERATURE, "140 °F", "any"),
    quantity("return", "return", d.TEMPERATURE, "124 °F", "any"),
    quantity("flow", "flow", d.VOLUME_FLOW, "3.5 gpm", "zero"),
    text("calling", "zones that call", "ground, upper"),
    quantity("cold_pressure", "pressure cold", d.PRESSURE, "12 psi", "zero"),
    quantity("hot_pressure", "pressure hot", d.PRESSURE, "18 psi", "zero"),
    quantity("precharge", "precharge as read", d.PRESSURE, "12 psi", "zero"),
    quantity("test_pressure", "test pressure", d.PRESSURE, "100 psi", "zero"),
    Field("combustion", "shape", "combustion", shape=COMBUSTION), KNOWN_FIELD,
))  # fmt: skip
CODES = Shape("set of codes", (
    text("adopted", "code and edition adopted"), text("licence", "licence of who prepared it"),
    text("authority", "office that decides"),
))  # fmt: skip

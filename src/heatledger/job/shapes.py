"""The form of a job file: which keys each part takes, and what each of them is.

The reader checks a job against these tables, the schema is made from them, and the guide's list of
keys is held to them. A field says what it is in the words a message or a working uses.
"""

from __future__ import annotations

from heatledger.job.fields import BECAUSE, KNOWN_FIELD, NAME, Field, Shape, map_of, quantity, text
from heatledger.job.model import KINDS
from heatledger.job.system_shapes import BILL, CIRCUIT, CODES, CONTROLS, EMITTER, PLANT, READINGS, ZONE
from heatledger.ledger import dimensions as d

FORMAT = 1
EDITIONS = ("2026",)
UNIT_NAMES = ("US", "metric", "Canadian")
ID_PATTERN = "^[a-z0-9][a-z0-9-]*$"
RESERVED = ("hot_water", "glycol", "heat_sources", "outlines")
"""Sections kept as they are until a step reads them."""


AIR = Shape("air entry", (
    quantity("changes", "air changes", d.AIR_CHANGES, "0.5 ACH", "zero"),
    Field("exposed_sides", "whole", "number of exposed sides", d.COUNT, "zero", example="2"),
    KNOWN_FIELD,
))  # fmt: skip
OPENING = Shape("opening", (
    NAME, text("construction", "construction", "old-window"),
    Field("size", "size", "size", d.LENGTH, example="2' 8\" × 4' 6\""),
    quantity("area", "area", d.AREA, "12 ft2"),
    quantity("width", "width", d.LENGTH, "2' 8\""),
    quantity("height", "height", d.LENGTH, "4' 6\""),
    Field("count", "whole", "count", d.COUNT, example="2"),
    KNOWN_FIELD,
))  # fmt: skip
SURFACE = Shape("surface", (
    NAME, text("construction", "construction", "wall-2x4"),
    Field("beyond", "text", "what is beyond", example="outdoors"),
    Field("size", "size", "size", d.LENGTH, example="12' × 9'"),
    quantity("area", "area", d.AREA, "108 ft2"),
    quantity("length", "length", d.LENGTH, "12' 0\""),
    quantity("height", "height", d.LENGTH, "9' 0\""),
    quantity("width", "width", d.LENGTH, "24' 6\""),
    quantity("depth", "depth of floor", d.LENGTH, "6 ft", "zero"),
    quantity("top", "depth of top", d.LENGTH, "0 ft", "zero"),
    quantity("bottom", "depth of bottom", d.LENGTH, "6 ft"),
    map_of("openings", "windows and doors", OPENING), KNOWN_FIELD,
))  # fmt: skip
CONSTRUCTION = Shape("construction", (
    NAME, Field("kind", "choice", "kind", choices=KINDS, example="wall"),
    text("catalog", "row of the catalog", "frame-wall-2x4-r-11"),
    quantity("u_value", "U-value", d.TRANSMITTANCE, "U-0.30"),
    quantity("r_value", "R-value", d.RESISTANCE, "R-19"),
    quantity("f_factor", "F-factor", d.EDGE_LOSS, "0.73 Btu/(h·ft·°F)"), KNOWN_FIELD,
))  # fmt: skip
LEVEL = Shape("level", (
    NAME, quantity("wall_height", "wall height", d.LENGTH, "9 ft"),
    quantity("ceiling_height", "ceiling height", d.LENGTH, "8 ft"), KNOWN_FIELD,
))  # fmt: skip
ROOM = Shape("room", (
    NAME, text("level", "level", "ground"),
    Field("size", "size", "size", d.LENGTH, example="12' × 11'"),
    quantity("floor_area", "floor area", d.AREA, "132 ft2"),
    quantity("ceiling_height", "ceiling height", d.LENGTH, "8 ft"),
    quantity("free_wall", "free wall", d.LENGTH, "16 ft", "zero"),
    quantity("indoor", "indoor", d.TEMPERATURE, "70 °F", "any", "chosen"),
    Field("habitable", "yes-no", "lived in", example="yes"),
    Field("air", "shape", "air", shape=AIR),
    map_of("surfaces", "surfaces", SURFACE), KNOWN_FIELD,
))  # fmt: skip
UNHEATED = Shape("unheated space", (
    NAME, text("level", "level", "ground"),
    quantity("floor_area", "floor area", d.AREA, "808.5 ft2"),
    quantity("ceiling_height", "ceiling height", d.LENGTH, "7 ft"),
    quantity("volume", "volume", d.VOLUME, "5660 ft3"),
    quantity("heat", "heat from pipes and the like", d.HEAT_RATE, "800 Btu/h", "zero"),
    Field("air", "shape", "air", shape=AIR),
    map_of("surfaces", "surfaces", SURFACE), KNOWN_FIELD,
))  # fmt: skip
NEIGHBOR = Shape("neighbor", (
    NAME, quantity("temperature", "temperature", d.TEMPERATURE, "50 °F", "any"), KNOWN_FIELD,
))  # fmt: skip
SITE = Shape("site", (
    text("place", "place", "Harrow Bend"),
    quantity("outdoor", "outdoor", d.TEMPERATURE, "-2 °F", "any", "chosen"),
    quantity("indoor", "indoor", d.TEMPERATURE, "70 °F", "any", "chosen"),
    quantity("elevation", "elevation", d.LENGTH, "40 ft", "any", "elevation"),
    quantity("ground_temperature", "mean ground temperature", d.TEMPERATURE, "54 °F", "any"),
    quantity("ground_amplitude", "ground amplitude", d.TEMPERATURE_DIFFERENCE, "18 °F", "zero"),
    quantity("soil_conductivity", "soil conductivity", d.CONDUCTIVITY, "0.8 Btu/(h·ft·°F)"), KNOWN_FIELD,
))  # fmt: skip
EXPECTATION = Shape("expectation", (
    text("of", "path of the figure", "house/loss"), text("about", "value expected", "37,100 Btu/h"),
    text("within", "how far off it may be", "10 %"), BECAUSE,
))  # fmt: skip
DECISION = Shape("decision", (
    text("is", "what was decided", "keep the old windows"), BECAUSE, text("by", "name", "J. Ondry"),
))  # fmt: skip
WHAT_IF = Shape("what-if", (
    NAME, Field("changes", "list", "changes", example="{set: air/changes, to: 0.35 ACH}"),
))  # fmt: skip
CHANGE = Shape("change", (
    text("set", "path of the value to set", "air/changes"),
    text("add", "path of the thing to add", "rooms/den"),
    text("remove", "path of the thing to remove", "rooms/den"), Field("to", "any", "what to put there"),
))  # fmt: skip
JOB = Shape("job", (
    Field("format", "text", "format of the file", example="1"),
    text("name", "name of the job", "Ferrow house"), text("address", "address", "14 Kiln Lane"),
    text("prepared_by", "prepared by", "J. Ondry"), text("date", "date", "6 December 2026"),
    Field("invented", "yes-no", "invented for an example", example="yes"), text("notes", "notes"),
    Field("units", "choice", "how a bare number is read", choices=UNIT_NAMES, example="US"),
    Field("edition", "choice", "edition of the methods", choices=EDITIONS, example="2026"),
    Field("measured", "choice", "where the tape was held", choices=("inside", "outside"), example="inside"),
    Field("built", "text", "year built", example="1926"), KNOWN_FIELD,
    Field("site", "shape", "site", shape=SITE),
    quantity("heated_floor_area", "heated floor area as stated", d.AREA, "1617 ft2"),
    map_of("constructions", "constructions", CONSTRUCTION), map_of("levels", "levels", LEVEL),
    map_of("rooms", "heated rooms", ROOM), Field("air", "shape", "air of all rooms", shape=AIR),
    map_of("unheated", "unheated spaces", UNHEATED), map_of("neighbors", "neighbors", NEIGHBOR),
    map_of("emitters", "emitters", EMITTER), map_of("zones", "zones", ZONE),
    map_of("circuits", "circuits", CIRCUIT), Field("plant", "shape", "boiler room", shape=PLANT),
    Field("controls", "shape", "controls", shape=CONTROLS), map_of("bills", "fuel bills", BILL),
    Field("readings", "shape", "readings on site", shape=READINGS),
    Field("codes", "shape", "codes", shape=CODES),
    Field("limits", "any", "thresholds of findings, by finding"),
    Field("ranges", "any", "half-ranges, by kind and known"),
    Field("decisions", "any", "decisions on findings, by finding or finding@path", shape=DECISION),
    map_of("expectations", "expectations", EXPECTATION), map_of("what-ifs", "what-ifs", WHAT_IF),
    *(Field(each, "any", "reserved: kept as it is until a later version reads it") for each in RESERVED),
))  # fmt: skip
"""The whole job file, format 1."""

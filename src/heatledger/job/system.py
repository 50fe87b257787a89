"""The heating system of a job: emitters, zones, circuits, plant, controls, bills, readings, codes."""

from __future__ import annotations

from heatledger.job.circuits import read_circuits, read_zones
from heatledger.job.emitters import read_emitters
from heatledger.job.plant import read_controls, read_plant
from heatledger.job.quantities import Reader
from heatledger.job.site_records import read_bills, read_codes, read_readings
from heatledger.job.system_model import System
from heatledger.job.text import Node


def read_system(
    reader: Reader, entries: dict[str, Node], known: str, names: dict[str, dict[str, Node]]
) -> System:
    """The system by its sections; what is not given is empty.

    ``names`` are the rooms, unheated spaces and neighbors of the job by id, which the sections name.
    """
    emitters = read_emitters(reader, entries.get("emitters"), known, names["rooms"])
    zones = read_zones(reader, entries.get("zones"), known, names["rooms"])
    plant = read_plant(reader, entries.get("plant"), known, names)
    return System(
        emitters=emitters,
        zones=zones,
        circuits=read_circuits(reader, entries.get("circuits"), known, emitters, zones, plant.circulators),
        plant=plant,
        controls=read_controls(reader, entries.get("controls"), known),
        bills=read_bills(reader, entries.get("bills"), known),
        readings=read_readings(reader, entries.get("readings"), known, zones),
        codes=read_codes(reader, entries.get("codes"), known),
    )

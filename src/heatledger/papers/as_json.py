"""A design as data: every figure with its SI value, its shown text and its path.

The form is documented in ``docs/look-up/json.md``.
"""

from __future__ import annotations

from math import isnan
from typing import Any

from heatledger import __version__
from heatledger.ledger.figures import Figure, Leaf, Names
from heatledger.ledger.findings import Finding
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show
from heatledger.steps.design import Design
from heatledger.steps.review import KINDS
from heatledger.studies.replacement import replacement
from heatledger.studies.uncertainty import SENTENCE, band

CAUTION = (
    "Local code and licensed practice decide. Gas, vent, electrical and pressure work belongs to licensed "
    "trades; keep a working carbon monoxide alarm on every story and outside the bedrooms."
)
"""What stands under every text that a design is told in."""


def design_as_data(house: Design, units: Preset) -> dict[str, Any]:
    """Plain dictionaries and lists; a figure without a value has ``si`` null."""
    job, whole = house.job, band(house, "house/loss")
    return {
        "version": __version__,
        "job": {
            "name": job.name,
            "address": job.address,
            "date": job.date,
            "prepared_by": job.prepared_by,
            "invented": job.invented,
            "edition": job.edition,
            "what_ifs": list(job.laid),
        },
        "units": units.name,
        "figures": {path: _figure(figure, units, house.names) for path, figure in house.figures.items()},
        "house_loss_band": {
            "low_si": _number(whole.low),
            "high_si": _number(whole.high),
            "meaning": SENTENCE,
        },
        "heating": _heating(house),
        "findings": [_finding(each, units) for each in house.findings],
        "not_checked": [
            {"id": each.id, "where": each.where, "for_want_of": each.for_want_of}
            for each in house.not_checked
        ],
        "caution": CAUTION,
    }


def _heating(house: Design) -> dict[str, Any]:
    """What the heating results say besides figures: which room, which run, and what the start waits for."""
    start, plant = house.startup.startup, house.boiler_room.plant
    bills = replacement(house) if house.bills.bills else None
    return {
        "supply_set_by": house.emitters.house.set_by or None,
        "suggested": [id for id, each in house.emitters.emitters.items() if each.suggested],
        "index_runs": {id: each.index_run or None for id, each in house.circuits.circuits.items()},
        "factors": [
            {"id": id, "name": each.name, "note": each.note, "path": f"plant/factors/{id}/value"}
            for id, each in plant.factors.items()
        ],
        "load_meets_bills": None
        if bills is None or not bills.meets
        else {"low_si": bills.low, "high_si": bills.high},
        "may_run": start.may_run,
        "waits_for": list(start.waits_for),
    }


def _finding(each: Finding, units: Preset) -> dict[str, Any]:
    return {
        "id": each.id,
        "where": each.where,
        "weight": each.weight.value,
        "what": each.what,
        "reason": KINDS[each.id].why,
        "why": show(each.why, units) if isinstance(each.why, Figure) else each.why,
        "mends": [
            {"words": mend.words, "changes": [dict(one) for one in mend.changes]} for mend in each.mends
        ],
        "source": str(each.citation),
        "standing": each.citation.standing.value,
        "caution": each.caution,
        "decided": None if each.decided is None else each.decided.words,
    }


def _figure(figure: Figure, units: Preset, names: Names) -> dict[str, Any]:
    made: dict[str, Any] = {
        "title": names.title(figure), "si": _number(float(figure)), "dimension": figure.dimension.name,
        "shown": show(figure, units),
    }  # fmt: skip
    if isinstance(figure.origin, Leaf):
        made |= {"typed": figure.origin.typed, "known": figure.origin.known, "from": figure.origin.kind.value}
    else:
        made["from"] = getattr(figure.origin, "name", "")
    return made


def _number(value: float) -> float | None:
    return None if isnan(value) else value

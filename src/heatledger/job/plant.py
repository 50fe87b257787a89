"""The boiler room and the controls."""

from __future__ import annotations

from typing import Any

from heatledger.job.circuits import read_pipe
from heatledger.job.names_given import named
from heatledger.job.quantities import Reader
from heatledger.job.reading import in_words
from heatledger.job.system_model import (
    DIAPHRAGM,
    PLAIN_STEEL,
    Boiler,
    Circulator,
    Controls,
    Pipe,
    Plant,
    Tank,
)
from heatledger.job.system_shapes import BOILER, CIRCULATOR, CONTROLS, MAINS, PLANT, TANK
from heatledger.job.text import Node
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, missing

_POINTS = {
    "shutoff": (d.HEAD, "head at no flow"),
    "middle_flow": (d.VOLUME_FLOW, "middle flow"),
    "middle_head": (d.HEAD, "head at the middle flow"),
    "high_flow": (d.VOLUME_FLOW, "high flow"),
    "high_head": (d.HEAD, "head at the high flow"),
}
"""Figures of a circulator that its curve cannot do without."""
_SPACES = {"unheated": "unheated", "neighbors": "neighbor"}
"""Where mains may run outside the heated rooms, and what one of each is called."""


def read_plant(reader: Reader, node: Node | None, known: str, spaces: dict[str, dict[str, Node]]) -> Plant:
    """The boiler room; its mains may run through the ``unheated`` ones and ``neighbors`` of the spaces."""
    earlier = reader.again.plant(spaces) if reader.again is not None else None
    if earlier is not None:
        return earlier
    values = reader.fields(PLANT, node, "plant", known)
    inherited = values["known"]
    entries = values["node"].entries
    height = values["height"]
    if height is None:
        height = missing(d.LENGTH, "plant/height", "height of the highest pipe above the gauge")
    return Plant(
        supply=values["supply"],
        drop=values["drop"],
        height=height,
        fill=values["fill"],
        fill_water=values["fill_water"],
        high_limit=values["high_limit"],
        low_water_cutoff=values["low_water_cutoff"],
        boiler=_boiler(reader, entries.get("boiler"), inherited),
        tank=_tank(reader, entries.get("tank"), inherited),
        mains=_mains(reader, entries.get("mains"), inherited, spaces),
        circulators=_circulators(reader, entries.get("circulators"), inherited),
    )


def _boiler(reader: Reader, node: Node | None, known: str) -> Boiler | None:
    if node is None:
        return None
    path = "plant/boiler"
    values = reader.fields(BOILER, node, path, known)
    check_efficiency(reader, f"{path}/efficiency", values["efficiency"])
    output = values["output"]
    if output is None and (values["input"] is None or values["efficiency"] is None):
        output = missing(d.HEAT_RATE, f"{path}/output", "output")
    return Boiler(
        name=values["name"] or "Boiler",
        fuel=values["fuel"] or "",
        kind=values["kind"] or "",
        output=output,
        **_figures(values, (
            "input", "efficiency", "least_output", "water", "highest_pressure", "relief", "relief_capacity",
            "rated_flow", "rated_head", "least_flow", "return_limit",
        )),
    )  # fmt: skip


def _figures(values: dict[str, Any], keys: tuple[str, ...]) -> dict[str, Any]:
    return {key: values[key] for key in keys}


def check_efficiency(reader: Reader, path: str, figure: Figure | None) -> None:
    """An error for an efficiency over 100 %."""
    if figure is None or not float(figure) > 1:
        return
    typed = figure.origin.typed
    number = float(figure)
    mend = f"If {typed} is in percent, write  {number:g} %" if number <= 100 and "%" not in typed else ""
    reader.error(
        "efficiency-over-100",
        path,
        f"No boiler gives more heat than its fuel holds; `{typed}` is more than 100 %.",
        mend or "Write the efficiency as the plate gives it, on the higher heating value: 86 %",
    )


def _tank(reader: Reader, node: Node | None, known: str) -> Tank | None:
    if node is None:
        return None
    values = reader.fields(TANK, node, "plant/tank", known)
    kind, charge = values["kind"] or "", values["precharge"]
    if kind == PLAIN_STEEL and charge is not None:
        reader.error(
            "value-not-for-kind",
            "plant/tank/precharge",
            "A plain steel tank has no charge: the air in it is what the filling leaves.",
            f"Leave `precharge` out, or write  kind: {DIAPHRAGM}  if it has an air valve.",
        )
    figures = _figures(values, ("volume", "acceptance", "precharge"))
    return Tank(kind=kind, placed=values["placed"] or "", **figures)


def _mains(reader: Reader, node: Node | None, known: str, spaces: dict[str, dict[str, Node]]) -> Pipe | None:
    if node is None:
        return None
    path = "plant/mains"
    values = reader.fields(MAINS, node, path, known)
    through = values["through"] or ""
    home, _, name = through.partition("/")
    unheated = spaces["unheated"]
    if home in ("unheated", "neighbors") and name:
        named(reader, f"{path}/through", _SPACES[home], name, spaces[home])
    elif through:
        reader.error(
            "unknown-through",
            f"{path}/through",
            f"`{through}` is no unheated space and no neighbor.",
            f"Write  through: unheated/{next(iter(unheated), 'basement')}  or  through: neighbors/"
            f"{next(iter(spaces['neighbors']), 'crawlspace')}  or leave it out where the mains run inside "
            "heated rooms.",
        )
        through = ""
    return read_pipe(reader, path, values, None, "length of the mains", through)


def _circulators(reader: Reader, node: Node | None, known: str) -> dict[str, Circulator]:
    at = "plant/circulators"
    mapping = reader.mapping(node, at, "the circulators")
    inherited = reader.known(mapping, at, known)
    things = reader.things(node, at, "circulators") if mapping.entries else {}
    return {key: _circulator(reader, key, each, inherited) for key, each in things.items()}


def _circulator(reader: Reader, id: str, node: Node, known: str) -> Circulator:
    path = f"plant/circulators/{id}"
    values = reader.fields(CIRCULATOR, node, path, known)
    points = {
        key: missing(dimension, f"{path}/{key}", words) if values[key] is None else values[key]
        for key, (dimension, words) in _POINTS.items()
    }
    for higher, lower in (
        ("shutoff", "middle_head"),
        ("middle_head", "high_head"),
        ("high_flow", "middle_flow"),
    ):
        if float(points[higher]) <= float(points[lower]):
            reader.error(
                "curve-not-falling",
                f"{path}/{higher if higher == 'high_flow' else lower}",
                f"The {_POINTS[higher][1]}, {points[higher].origin.typed}, is not above the "
                f"{_POINTS[lower][1]}, {points[lower].origin.typed}.",
                "Read three points of the curve from left to right: the flow rises and the head falls.",
            )
    return Circulator(id, values["name"] or in_words(id), **points, power=values["power"])


def read_controls(reader: Reader, node: Node | None, known: str) -> Controls:
    """The controls; None for each thing not said."""
    values = reader.fields(CONTROLS, node, "controls", known)
    return Controls(**_figures(values, tuple(each.key for each in CONTROLS.fields if each.key != "known")))

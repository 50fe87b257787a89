"""Zones, circuits with their runs, and pieces of piping."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from heatledger.job.fields import Field
from heatledger.job.names_given import named
from heatledger.job.quantities import Reader
from heatledger.job.reading import in_words, offer
from heatledger.job.system_model import (
    CIRCUIT_KINDS,
    SERIES,
    Circuit,
    Circulator,
    Emitter,
    Fittings,
    Pipe,
    Tube,
    Zone,
)
from heatledger.job.system_shapes import CIRCUIT, RUN, ZONE
from heatledger.job.text import Mapping, Node
from heatledger.job.trade_words import MOST_OFFERED, or_
from heatledger.ledger import dimensions as d
from heatledger.ledger.figures import Figure, missing

if TYPE_CHECKING:
    from heatledger.catalog.tubes import TubeRow

COUNT = Field("count", "whole", "count of fittings", d.COUNT, "zero")
LENGTH_WORDS = "length of tube"


def read_zones(reader: Reader, node: Node | None, known: str, rooms: dict[str, Node]) -> dict[str, Zone]:
    """The zones by id; a thermostat stands in a room of the job."""
    mapping = reader.mapping(node, "zones", "the zones")
    inherited = reader.known(mapping, "zones", known)
    found: dict[str, Zone] = {}
    for key, each in reader.things(node, "zones", "zones").items() if mapping.entries else ():
        path = f"zones/{key}"
        values = reader.fields(ZONE, each, path, inherited)
        room = values["thermostat"] or ""
        if room:
            named(reader, f"{path}/thermostat", "room", room, rooms)
        found[key] = Zone(key, values["name"] or in_words(key), room)
    return found


def read_circuits(
    reader: Reader, node: Node | None, known: str, emitters: dict[str, Emitter], zones: dict[str, Zone],
    circulators: dict[str, Circulator],
) -> dict[str, Circuit]:  # fmt: skip
    """The circuits by id. An emitter is in one circuit at most."""
    mapping = reader.mapping(node, "circuits", "the circuits")
    inherited = reader.known(mapping, "circuits", known)
    things = reader.things(node, "circuits", "circuits") if mapping.entries else {}
    found: dict[str, Circuit] = {}
    for key, each in things.items():
        earlier = reader.again.circuit(key, zones, circulators) if reader.again is not None else None
        found[key] = earlier or _circuit(reader, key, each, inherited, zones, circulators)
    _check_runs(reader, found, emitters)
    return found


def _circuit(
    reader: Reader, id: str, node: Node, known: str, zones: dict[str, Zone],
    circulators: dict[str, Circulator],
) -> Circuit:  # fmt: skip
    path = f"circuits/{id}"
    values = reader.fields(CIRCUIT, node, path, known)
    if values["kind"] is None:
        reader.error(
            "no-kind",
            path,
            f"The circuit `{id}` does not say what kind it is.",
            f"Write  kind: {' or '.join(CIRCUIT_KINDS)}",
        )
    zone = values["zone"] or ""
    if zone:
        named(reader, f"{path}/zone", "zone", zone, zones)
    common = read_pipe(reader, path, values, values["zone_valve"], words="length of its common tube")
    inside: Mapping = values["node"]
    runs = inside.entries.get("runs")
    at = f"{path}/runs"
    loop_tube = values["tube"] or "" if values["kind"] == SERIES else ""
    runs_known = reader.known(reader.mapping(runs, at, "the runs"), at, values["known"])
    return Circuit(
        id=id,
        name=values["name"] or in_words(id),
        kind=values["kind"] or "",
        zone=zone,
        circulator=_circulator(reader, path, values["circulator"] or "", circulators),
        common=common,
        runs={
            key: (reader.again.run(id, key) if reader.again is not None else None)
            or _run(reader, f"{at}/{key}", each, runs_known, loop_tube)
            for key, each in reader.things(runs if isinstance(runs, Mapping) else None, at, "runs").items()
        },
        flow=values["flow"],
        drop=values["drop"],
        balanced=values["balanced"] is True,
    )


def _circulator(reader: Reader, path: str, name: str, circulators: dict[str, Circulator]) -> str:
    """The circulator a circuit names, or the only one there is."""
    if name:
        named(reader, f"{path}/circulator", "circulator", name, circulators)
        return name
    if len(circulators) > 1:
        reader.error(
            "no-circulator",
            path,
            "The plant has more than one circulator, and the circuit does not say which drives it.",
            f"Write  circulator: {' or '.join(circulators)}",
        )
    return next(iter(circulators), "")


def _run(reader: Reader, path: str, node: Node, known: str, loop_tube: str) -> Pipe:
    """A run; in a series loop it is of the tube of the loop where it does not name its own."""
    values = reader.fields(RUN, node, path, known)
    own = values["tube"] or (loop_tube if values["tube"] is None and _is_tube(loop_tube) else "")
    return read_pipe(reader, path, {**values, "tube": own}, values["valve"])


def _is_tube(text: str) -> bool:
    from heatledger.catalog.tubes import family_of, tube

    # What is no tube has been told of at the circuit, once.
    return bool(text) and bool(tube(text) or family_of(text))


def _check_runs(reader: Reader, circuits: dict[str, Circuit], emitters: dict[str, Emitter]) -> None:
    """Errors for runs of emitters that are not there, and for an emitter in two circuits."""
    first: dict[str, str] = {}
    for id, circuit in circuits.items():
        for key in circuit.runs:
            path = f"circuits/{id}/runs/{key}"
            if not named(reader, path, "emitter", key, emitters):
                continue
            if key in first:
                reader.error(
                    "emitter-in-two-circuits",
                    path,
                    f"The emitter `{key}` has a run in the circuit `{first[key]}` as well.",
                    "Keep one of the two runs.",
                )
            first.setdefault(key, id)


def read_pipe(
    reader: Reader, path: str, values: dict[str, Any], valve: Figure | None, words: str = LENGTH_WORDS,
    through: str = "",
) -> Pipe:  # fmt: skip
    """A piece of piping from the values of its mapping: tube, length, fittings and what stands in it."""
    row, family = _tube_row(reader, f"{path}/tube", values["tube"] or "")
    length = values["length"]
    return Pipe(
        tube=None if row is None else _tube(row),
        family=family,
        length=missing(d.LENGTH, f"{path}/length", words) if length is None else length,
        fittings=_fittings(
            reader, f"{path}/fittings", values["node"].entries.get("fittings"), row, values["known"]
        ),
        valve=valve,
        insulation=values.get("insulation"),
        through=through,
    )


def _tube_row(reader: Reader, path: str, text: str) -> tuple[TubeRow | None, str]:
    """The row of a tube by its key, and its family. A family alone leaves the size to the design."""
    if not text:
        return None, ""
    from heatledger.catalog.tubes import FAMILIES, family_of, nearest_tubes, tube

    row = tube(text)
    if row is not None:
        return row, row.family
    family = family_of(text)
    if not family:
        near = nearest_tubes(text)[:MOST_OFFERED] or tuple(FAMILIES)[:MOST_OFFERED]
        like = next((each for each in FAMILIES if near[0].startswith(each)), next(iter(FAMILIES)))
        reader.error(
            "unknown-tube",
            path,
            f"The catalog has no tube `{text}`.",
            f"Did you mean {or_(near)}? A family alone, such as `{like}`, leaves the size to the design.",
        )
    return None, family


def _tube(row: TubeRow) -> Tube:
    return Tube(row.key, row.name, row.family, row.size, row.bore, row.outside, row.roughness)


def _fittings(
    reader: Reader, path: str, node: Node | None, row: TubeRow | None, known: str
) -> dict[str, Fittings]:
    """The fittings by kind. Where the tube is still to be chosen, their length waits for it."""
    mapping = reader.mapping(node, path, "the fittings")
    if not mapping.entries:
        return {}
    from heatledger.catalog.tubes import FITTING_KINDS, fitting_lengths

    lengths = None if row is None else fitting_lengths(row)
    inherited = reader.known(mapping, path, known)
    found: dict[str, Fittings] = {}
    for kind, each in mapping.entries.items():
        here = f"{path}/{kind}"
        if kind == "known":
            continue
        if kind not in (FITTING_KINDS if lengths is None else lengths):
            of = f" of {row.name}" if row is not None and kind in FITTING_KINDS else ""
            mend = offer(kind, FITTING_KINDS if lengths is None else lengths)
            reader.error("unknown-fitting", here, f"There is no fitting `{kind}`{of}.", mend)
            continue
        length = missing(d.LENGTH, f"{path.removesuffix('/fittings')}/tube", "tube")
        if lengths is not None:
            length = lengths[kind]
        found[kind] = Fittings(FITTING_KINDS[kind], reader.quantity(COUNT, each, here, inherited), length)
    return found

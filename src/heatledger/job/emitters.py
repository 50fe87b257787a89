"""Emitters as typed, over their row of the catalog, over what is usual for their kind."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.job.names_given import named, two_ways, unknown_row
from heatledger.job.quantities import Reader
from heatledger.job.rated_points import usual
from heatledger.job.reading import in_words
from heatledger.job.rows import known_row
from heatledger.job.system_model import BY_LENGTH, EMITTER_KINDS, IRON_RADIATOR, Emitter
from heatledger.job.system_shapes import EMITTER
from heatledger.job.text import Node
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, missing

POINT = ("rated_water", "rated_air", "rated_flow", "exponent", "flow_exponent", "heating_effect")
"""Keys that an entry, a row and the usual values of a kind can all give."""
ONLY_FOR = {
    "rating": (BY_LENGTH, "Write  output:  and the heat of the whole piece."),
    "length": (BY_LENGTH, "Leave it out: only baseboard is sized by its finned length."),
    "sections": ((IRON_RADIATOR,), "Leave it out: only cast-iron radiators are counted in sections."),
    "edr": ((IRON_RADIATOR,), "Write  output:  and the heat of the whole piece."),
}
"""Keys that only some kinds take, and what to do for the others."""
RATED = ("rating", "output", "section_edr")
"""Values of a row that may be off in this house; the rest is the point it was rated at."""
OF_ROWS = (
    *RATED, *POINT, "emission", "rated_supply", "rated_return", "water", "water_per", "section_water",
)  # fmt: skip
_WATER_PER = {IRON_RADIATOR: "section_water"}
TWO_WAYS = (
    ("rating", "output"), ("output", "edr"), ("rated_water", "rated_supply"), ("rated_water", "rated_return"),
)  # fmt: skip


@dataclass(frozen=True)
class _Row:
    """What a row of the catalog says of an emitter."""

    kind: str
    values: dict[str, Figure]


def read_emitters(
    reader: Reader, node: Node | None, known: str, rooms: dict[str, Node]
) -> dict[str, Emitter]:
    """The emitters by id; each stands in a room of the job."""
    mapping = reader.mapping(node, "emitters", "the emitters")
    inherited = reader.known(mapping, "emitters", known)
    things = reader.things(node, "emitters", "emitters") if mapping.entries else {}
    found: dict[str, Emitter] = {}
    for key, each in things.items():
        earlier = reader.again.emitter(key, rooms) if reader.again is not None else None
        found[key] = earlier or _emitter(reader, key, each, inherited, rooms)
    return found


def _emitter(reader: Reader, id: str, node: Node, known: str, rooms: dict[str, Node]) -> Emitter:
    path = f"emitters/{id}"
    values = reader.fields(EMITTER, node, path, known)
    row = _row(reader, path, values)
    kind = _kind(reader, path, id, values, row)
    _room(reader, path, values["room"] or "", rooms)
    _check_ways(reader, path, kind, values)
    rating, output = _rated(path, kind, values, row)
    found = {key: _value(path, kind, key, values, row) for key in POINT}
    supply, back = _supply_and_return(reader, path, kind, values, row, found)
    section_edr = _of_row(row, "section_edr")
    edr, sections = values["edr"], values["sections"]
    water = _of_row(row, "water") if values["water"] is None else values["water"]
    if kind == IRON_RADIATOR and output is None and edr is None:
        if section_edr is None:
            edr = missing(d.AREA, f"{path}/edr", "equivalent direct radiation")
        elif sections is None:
            sections = missing(d.COUNT, f"{path}/sections", "sections")
    return Emitter(
        id=id,
        name=values["name"] or in_words(id),
        room=values["room"] or "",
        kind=kind,
        catalog=values["catalog"] or "",
        rating=rating,
        output=output,
        rated_water=found["rated_water"],
        rated_supply=supply,
        rated_return=back,
        rated_air=_needed(found["rated_air"], d.TEMPERATURE, f"{path}/rated_air", "air of the rating"),
        rated_flow=found["rated_flow"],
        exponent=_needed(found["exponent"], d.RATIO, f"{path}/exponent", "exponent"),
        flow_exponent=found["flow_exponent"],
        heating_effect=_needed(
            found["heating_effect"], d.RATIO, f"{path}/heating_effect", "heating-effect factor"
        ),
        length=values["length"],
        sections=sections,
        section_edr=section_edr,
        edr=edr,
        water=water,
        water_per=None if water is not None else _of_row(row, _WATER_PER.get(kind, "water_per")),
    )


def _needed(figure: Figure | None, dimension: Dimension, path: str, words: str) -> Figure:
    return missing(dimension, path, words) if figure is None else figure


def _row(reader: Reader, path: str, values: dict[str, Any]) -> _Row | None:
    """The row of the catalog an entry names; None when it names none, or one that is not there."""
    key = values["catalog"]
    if not key:
        return None
    from heatledger.catalog.parts import emitter_row, emitter_rows

    row = emitter_row(key)
    if row is None:
        unknown_row(reader, f"{path}/catalog", "emitter", key, emitter_rows())
        return None
    typed = reader.typed(values["node"].entries["catalog"], f"{path}/catalog", values["known"])
    found = {key: each for key in OF_ROWS if isinstance(each := getattr(row, key, None), Figure)}
    for each in RATED:
        if typed is not None and each in found:
            found[each] = known_row(reader, found[each], typed, f"{path}/catalog")
    return _Row(row.kind, found)


def _of_row(row: _Row | None, key: str) -> Figure | None:
    return None if row is None else row.values.get(key)


def _kind(reader: Reader, path: str, id: str, values: dict[str, Any], row: _Row | None) -> str:
    kind = values["kind"] or ""
    if row is not None and kind and row.kind != kind:
        reader.error(
            "catalog-kind-differs",
            f"{path}/catalog",
            f"`{values['catalog']}` is the row of a {row.kind}, and the emitter is a {kind}.",
            f"Write  kind: {row.kind}  or choose another row.",
        )
        return ""
    if row is not None:
        return kind or row.kind
    if values["kind"] is None and not values["catalog"]:
        reader.error(
            "no-kind",
            path,
            f"The emitter `{id}` does not say what kind it is.",
            f"Write  kind: {EMITTER_KINDS[0]}  (or {', '.join(EMITTER_KINDS[1:])}).",
        )
    return kind


def _room(reader: Reader, path: str, room: str, rooms: dict[str, Node]) -> None:
    if not room:
        choice = next(iter(rooms), "kitchen")
        reader.error(
            "no-room", path, "It is not said in which room the emitter stands.", f"Write  room: {choice}"
        )
    else:
        named(reader, f"{path}/room", "room", room, rooms)


def _check_ways(reader: Reader, path: str, kind: str, values: dict[str, Any]) -> None:
    """Errors for a value that does not belong to the kind, and for two ways to say one thing."""
    for key, (kinds, mend) in ONLY_FOR.items():
        if kind and values[key] is not None and kind not in kinds:
            reader.error(
                "value-not-for-kind", f"{path}/{key}", f"A {kind} is not described by `{key}`.", mend
            )
    for first, second in TWO_WAYS:
        if values[first] is not None and values[second] is not None:
            two_ways(reader, path, first, second)


def _rated(
    path: str, kind: str, values: dict[str, Any], row: _Row | None
) -> tuple[Figure | None, Figure | None]:
    """Rated output per length (or square foot of radiation) and per piece: one of the two."""
    rating, output = values["rating"], values["output"]
    if rating is not None or output is not None:
        return rating, output if rating is None else None
    rating, output = _of_row(row, "emission" if kind == IRON_RADIATOR else "rating"), _of_row(row, "output")
    if rating is None and output is None:
        rating = usual(kind, "rating", f"{path}/rating")
    if rating is None and output is None:
        if kind in BY_LENGTH:
            return missing(d.HEAT_PER_LENGTH, f"{path}/rating", "rated output per length"), None
        return None, missing(d.HEAT_RATE, f"{path}/output", "rated output")
    return rating, output if rating is None else None


def _value(path: str, kind: str, key: str, values: dict[str, Any], row: _Row | None) -> Figure | None:
    """A value as typed, else of the row, else what is usual for the kind."""
    if values[key] is not None:
        return values[key]
    of_row = _of_row(row, key)
    if of_row is not None:
        return of_row
    if key == "rated_water" and any(_first(values, row, each) for each in ("rated_supply", "rated_return")):
        return None
    return usual(kind, key, f"{path}/{key}")


def _first(values: dict[str, Any], row: _Row | None, key: str) -> bool:
    return values[key] is not None or _of_row(row, key) is not None


def _supply_and_return(
    reader: Reader,
    path: str,
    kind: str,
    values: dict[str, Any],
    row: _Row | None,
    found: dict[str, Figure | None],
) -> tuple[Figure | None, Figure | None]:
    """Supply and return of the rating; both None where it is told by its mean water."""
    supply, back = values["rated_supply"], values["rated_return"]
    if values["rated_water"] is not None:
        return None, None
    if supply is None and back is None:
        supply, back = _of_row(row, "rated_supply"), _of_row(row, "rated_return")
        if supply is None and back is None and found["rated_water"] is None:
            supply = usual(kind, "rated_supply", f"{path}/rated_supply")
            back = usual(kind, "rated_return", f"{path}/rated_return")
        return supply, back
    found["rated_water"] = None
    if supply is None:
        supply = missing(d.TEMPERATURE, f"{path}/rated_supply", "supply of the rating")
    if back is None:
        back = missing(d.TEMPERATURE, f"{path}/rated_return", "return of the rating")
    if float(back) >= float(supply):
        reader.error(
            "return-above-supply",
            f"{path}/rated_return",
            f"The return of the rating, {back.origin.typed}, is not below its supply, {supply.origin.typed}.",
            "A rating at 75/65/20 °C is  rated_supply: 75 °C, rated_return: 65 °C, rated_air: 20 °C",
        )
    return supply, back

"""What an emitter is rated at where neither the job nor a row of the catalog says: leaves of a source."""

from __future__ import annotations

from typing import NamedTuple

from heatledger.job.system_model import FIN_TUBE, IRON_BASEBOARD, IRON_RADIATOR, PANEL
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf
from heatledger.ledger.sources import DERIVED, JUDGMENT, MEMORY, PRACTICE, SECOND_HAND, SEEN, Citation, cite
from heatledger.ledger.units import UNITS


class Usual(NamedTuple):
    """One usual value: the number and its unit as they are printed, and where it comes from."""

    typed: str
    unit: str
    dimension: Dimension
    words: str
    citation: Citation


_IBR = cite("IBR", "rating basis of baseboard and finned tube", MEMORY)
_FLOW = cite("IBR", "output grows with the flow to the power 0.04", MEMORY)
_ONE_GPM = cite("IBR", "the 1 gpm column holds where the flow is not known", MEMORY)
_EFFECT = cite("PM-HEF", "quoting the handbook of systems and equipment, 2016, page 36.3", SECOND_HAND)
_FIN_TUBE_POWER = cite("WBMAN", "page 9, fitted to its factors within 0.006", DERIVED)
_IRON_BASEBOARD_POWER = cite("HSE-ch36", "nonstandard conditions, baseboard radiation", MEMORY)
_PANEL_POWER = cite("HP-RAD", "exponent of panel radiators", SEEN)
_IRON_POWER = cite("", "cast-iron radiators, 1.2 to 1.3 in print; 1.3 taken", JUDGMENT)
_EN_442 = cite("EN-442", "rated at 75/65/20 °C", MEMORY)
_EDR = cite("EDR-TAB", "240 Btu/h for each square foot at 215 °F", SEEN)
_EDR_ROOM = cite("HSE-ch36", "equivalent direct radiation, air of the rating", MEMORY)
_NO_EFFECT = cite("", "radiators are rated without a heating-effect factor", PRACTICE)


def _ratio(typed: str, words: str, citation: Citation) -> Usual:
    return Usual(typed, "1", d.RATIO, words, citation)


def _warm(typed: str, unit: str, words: str, citation: Citation) -> Usual:
    return Usual(typed, unit, d.TEMPERATURE, words, citation)


_BASEBOARD = {
    "rated_water": _warm("215", "°F", "mean water of the rating", _IBR),
    "rated_air": _warm("65", "°F", "air of the rating", _IBR),
    "rated_flow": Usual("1", "gpm", d.VOLUME_FLOW, "flow of the rating", _ONE_GPM),
    "flow_exponent": _ratio("0.04", "exponent of flow", _FLOW),
    "heating_effect": _ratio("1.15", "heating-effect factor", _EFFECT),
}
USUAL: dict[str, dict[str, Usual]] = {
    FIN_TUBE: {**_BASEBOARD, "exponent": _ratio("1.4", "exponent", _FIN_TUBE_POWER)},
    IRON_BASEBOARD: {**_BASEBOARD, "exponent": _ratio("1.31", "exponent", _IRON_BASEBOARD_POWER)},
    PANEL: {
        "rated_supply": _warm("75", "°C", "supply of the rating", _EN_442),
        "rated_return": _warm("65", "°C", "return of the rating", _EN_442),
        "rated_air": _warm("20", "°C", "air of the rating", _EN_442),
        "exponent": _ratio("1.3", "exponent", _PANEL_POWER),
        "heating_effect": _ratio("1", "heating-effect factor", _NO_EFFECT),
    },
    IRON_RADIATOR: {
        "rating": Usual("240", "Btu/(h·ft²)", d.HEAT_FLUX, "rated output of each square foot", _EDR),
        "rated_water": _warm("215", "°F", "mean water of the rating", _EDR),
        "rated_air": _warm("70", "°F", "air of the rating", _EDR_ROOM),
        "exponent": _ratio("1.3", "exponent", _IRON_POWER),
        "heating_effect": _ratio("1", "heating-effect factor", _NO_EFFECT),
    },
}
"""By kind of emitter and key. What is not listed, such as a flow exponent of a radiator, there is none."""


def usual(kind: str, key: str, path: str) -> Figure | None:
    """The usual value of a kind of emitter as a leaf at ``path``; None where the kind has none."""
    found = USUAL.get(kind, {}).get(key)
    if found is None:
        return None
    number = float(found.typed)
    places = len(found.typed.partition(".")[2])
    origin = Leaf(
        LeafKind.SOURCE, path, found.words, f"{found.typed} {found.unit}".removesuffix(" 1"), found.unit,
        number, places, citation=found.citation,
    )  # fmt: skip
    return leaf(UNITS[found.unit].to_si(number, found.dimension.absolute), found.dimension, origin)

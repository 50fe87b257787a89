"""Constants that more than one subject needs, each with one source and one standing."""

from __future__ import annotations

from heatledger.ledger.sources import DERIVED, MEMORY, cite
from heatledger.ledger.symbols import const

ATMOSPHERE = cite("STD-ATM", "pressure by elevation", MEMORY)
GRAVITY = const(9.80665, "m/s²", cite("", "standard gravity, exact by definition", DERIVED), "gravity")
SEA_LEVEL = const(101.325, "kPa", ATMOSPHERE, "pressure at sea level")

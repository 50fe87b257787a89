"""The three presets in words: what each of them turns every screen and paper to."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime

from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.presets import CANADIAN, METRIC, US, Preset
from heatledger.ledger.show import show
from heatledger.web.when import clock, day

_SAMPLES: tuple[tuple[str, float, Dimension], ...] = (
    ("length of a wall", 3.81, d.LENGTH), ("room air", 294.2611, d.TEMPERATURE),
    ("heat", 10622.0, d.HEAT_RATE), ("U-value", 1.7035, d.TRANSMITTANCE),
    ("flow", 2.3343e-4, d.VOLUME_FLOW), ("head", 1.3411, d.HEAD), ("pressure", 82737.0, d.PRESSURE),
)  # fmt: skip
"""The same seven things (SI), to be seen in each preset."""
_DAY = datetime(2001, 12, 6, 14, 5, tzinfo=UTC).replace(tzinfo=None)
_MEANING = {
    "US": "Feet and inches, degrees Fahrenheit, Btu an hour. Papers are printed on Letter.",
    "metric": "Meters, degrees Celsius, watts. Papers are printed on A4, times run to 24 hours.",
    "Canadian": "Feet and inches with degrees Celsius, Btu an hour. Papers are printed on Letter.",
}


@dataclass(frozen=True)
class UnitChoice:
    """A preset: its key, its name, what it means, and the same things as it shows them."""

    key: str
    name: str
    meaning: str
    examples: tuple[tuple[str, str], ...]


def unit_choices() -> list[UnitChoice]:
    """The three presets in the order in which they are offered."""
    return [_choice(each) for each in (US, METRIC, CANADIAN)]


def _choice(units: Preset) -> UnitChoice:
    shown = [(words, show(value, units, kind)) for words, value, kind in _SAMPLES]
    shown.append(("date and time", f"{day(_DAY, units)}, {clock(_DAY, units)}"))
    return UnitChoice(
        units.name.lower(), units.name[0].upper() + units.name[1:], _MEANING[units.name], tuple(shown)
    )


def short_words(units: Preset) -> str:
    """What a preset is called on the switch: ``ft, °F``."""
    return f"{units.shown(d.LENGTH).unit.text}, {units.shown(d.TEMPERATURE).unit.text}"

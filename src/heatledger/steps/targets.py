"""What readings are held to when a boiler is started: each target a figure with its source and standing."""

from __future__ import annotations

from heatledger.job.system_model import Boiler
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure
from heatledger.ledger.sources import JUDGMENT, MEMORY, PRACTICE, SEEN, Citation, cite
from heatledger.steps.usual import usual

CAUTION_LOCAL = "Local code and licensed practice govern."
ELECTRIC, OIL, PROPANE = "electricity", "oil", "propane"

OXYGEN_LEAST, OXYGEN_LEAST_PROPANE = "3 %", "3.5 %"
OXYGEN_MOST, OXYGEN_MOST_HOOD = "6 %", "10 %"
FLUE_CO, FLUE_CO_STOP = "100 ppm", "400 ppm"
ROOM_CO, ROOM_CO_STOP, ROOM_CO_LEAVE = "9 ppm", "35 ppm", "70 ppm"
DRAFT_WEAK, DRAFT_STRONG = "-0.02 in. w.c.", "-0.04 in. w.c."
"""The limits of a fire, as typed: the targets here and the limits of the findings are both made of them."""


def _target(name: str, words: str, text: str, dimension: Dimension, citation: Citation) -> Figure:
    return usual(f"startup/targets/{name}", words, text, dimension, citation)


def burns(boiler: Boiler | None) -> bool:
    """True for a boiler with a fire in it."""
    return boiler is not None and boiler.kind != "electric" and boiler.fuel != ELECTRIC


def is_drafted(boiler: Boiler) -> bool:
    """True for a boiler that may rely on the draft of a chimney."""
    return burns(boiler) and boiler.kind != "condensing"


def oxygen_band(boiler: Boiler) -> tuple[Figure, Figure]:
    """Least and most oxygen in the flue gas; gas without condensing may have a draft hood or not."""
    low = OXYGEN_LEAST_PROPANE if boiler.fuel == PROPANE and boiler.kind == "condensing" else OXYGEN_LEAST
    high = OXYGEN_MOST_HOOD if is_drafted(boiler) and boiler.fuel != OIL else OXYGEN_MOST
    seen = cite("CTECH", "3 to 9 % oxygen in general", SEEN)
    return _target("oxygen-least", "least oxygen in flue gas", low, d.RATIO, seen), _most(high)


def oxygen_most() -> Figure:
    """Most oxygen in the flue gas of a burner that has no draft hood."""
    return _most(OXYGEN_MOST)


def _most(text: str) -> Figure:
    memory = cite("NFPA-54", "combustion by kind of burner", MEMORY)
    return _target("oxygen-most", "most oxygen in flue gas", text, d.RATIO, memory)


def flue_carbon_monoxide() -> Figure:
    """Most carbon monoxide of a clean fire, air free."""
    source = cite("ICM-2015", "100 ppm air free", SEEN)
    return _target("flue-co", "most carbon monoxide in flue gas", FLUE_CO, d.CONCENTRATION, source)


def flue_carbon_monoxide_stop() -> Figure:
    """Carbon monoxide, air free, above which the boiler is shut down."""
    source = cite("ANSI-Z21.13", "limit of a listing", MEMORY)
    words = "carbon monoxide in flue gas that stops the boiler"
    return _target("flue-co-stop", words, FLUE_CO_STOP, d.CONCENTRATION, source)


def room_carbon_monoxide() -> Figure:
    """Carbon monoxide in a room that is looked into."""
    source = cite("EPA-CO", "carbon monoxide indoors", MEMORY)
    return _target("room-co", "carbon monoxide in the room", ROOM_CO, d.CONCENTRATION, source)


def room_carbon_monoxide_stop() -> Figure:
    """Carbon monoxide in a room at which the boiler is stopped and the room aired."""
    source = cite("EPA-CO", "carbon monoxide indoors", MEMORY)
    words = "carbon monoxide in the room that stops the boiler"
    return _target("room-co-stop", words, ROOM_CO_STOP, d.CONCENTRATION, source)


def draft_band() -> tuple[Figure, Figure]:
    """Weakest and strongest draft of a chimney at the boiler."""
    source = cite("NFPA-54", "draft at the boiler", MEMORY)
    return (
        _target("draft-weak", "weakest draft", DRAFT_WEAK, d.DRAFT, source),
        _target("draft-strong", "strongest draft", DRAFT_STRONG, d.DRAFT, source),
    )


def below_relief() -> Figure:
    """How far the hot pressure stays below the relief valve's setting."""
    source = cite("", "room below the relief valve", PRACTICE)
    return _target("below-relief", "hot pressure below relief", "5 psi", d.PRESSURE, source)


def charge_within() -> Figure:
    """How near the tank's charge is to its target."""
    return _target("charge", "charge within", "0.5 psi", d.PRESSURE, cite("FILL-AX", "precharge", SEEN))


def fill_within() -> Figure:
    """How near the cold gauge is to the fill pressure."""
    return _target("fill", "fill within", "1 psi", d.PRESSURE, cite("", "reading of a gauge", JUDGMENT))


def supply_within() -> Figure:
    """How near the supply is to the reset table."""
    source = cite("", "reset table against the pipe", JUDGMENT)
    return _target("supply", "supply within", "3 °F", d.TEMPERATURE_DIFFERENCE, source)


def drop_within() -> tuple[Figure, Figure]:
    """How near a drop is to its target: by share, and in degrees."""
    source = cite("", "temperature drops in steady weather", JUDGMENT)
    return (
        _target("drop-share", "drop within", "20 %", d.RATIO, source),
        _target("drop", "drop within", "5 °F", d.TEMPERATURE_DIFFERENCE, source),
    )


def flow_within() -> Figure:
    """How near a flow is to its target."""
    source = cite("", "balancing of flows", PRACTICE)
    return _target("flow", "flow within", "10 %", d.RATIO, source)


def input_within() -> Figure:
    """How near the clocked input is to the plate."""
    source = cite("NFPA-54", "input by the meter", MEMORY)
    return _target("input", "input within", "2 %", d.RATIO, source)


def purge_velocity() -> Figure:
    """Velocity that carries air down and out."""
    source = cite("HOF-ch22", "2 ft/s to carry air down", MEMORY)
    return _target("purge", "velocity that carries air", "2 ft/s", d.VELOCITY, source)


def flush_velocity() -> Figure:
    """Velocity that carries grit out."""
    source = cite("UFGS-15405", "flushing until clear", SEEN)
    return _target("flush", "velocity that carries grit", "4 ft/s", d.VELOCITY, source)

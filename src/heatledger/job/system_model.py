"""The heating system as the user gives it: emitters, circuits, plant, controls, bills and readings.

As in ``model``, a quantity that is needed and was not given is a figure without a value, and one that may
be left out is None. Rows of the catalog are resolved when the job is read and stay with it.
"""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.ledger.figures import Figure

FIN_TUBE, IRON_BASEBOARD, PANEL, IRON_RADIATOR = (
    "fin-tube baseboard", "cast-iron baseboard", "panel radiator", "cast-iron radiator",
)  # fmt: skip
EMITTER_KINDS = (FIN_TUBE, IRON_BASEBOARD, PANEL, IRON_RADIATOR)
BY_LENGTH = (FIN_TUBE, IRON_BASEBOARD)
"""Kinds that are rated and sized by their length."""
SERIES, HOME_RUN = "series loop", "home-run manifold"
CIRCUIT_KINDS = (SERIES, HOME_RUN)
FUELS = ("natural gas", "propane", "oil", "electricity")
BOILER_KINDS = ("condensing", "non-condensing", "electric")
TANK_PLACES = ("pump suction", "pump discharge")
DIAPHRAGM, PLAIN_STEEL = "diaphragm", "plain steel"
TANK_KINDS = (DIAPHRAGM, PLAIN_STEEL)


@dataclass(frozen=True)
class Emitter:
    """One emitter of a room, and the point it is rated at.

    ``rating`` (per length, or per square foot of radiation) or ``output`` (per piece) is set, as printed;
    ``heating_effect`` is the factor hidden in it. ``rated_water`` is the mean water of the rating;
    ``rated_supply`` and ``rated_return`` are set where the rating names both. ``length`` is the finned
    length, None where the design is to find it. ``edr`` is the equivalent direct radiation of the whole
    radiator, typed or sections times ``section_edr``.
    """

    id: str
    name: str
    room: str
    kind: str
    catalog: str
    rating: Figure | None
    output: Figure | None
    rated_water: Figure | None
    rated_supply: Figure | None
    rated_return: Figure | None
    rated_air: Figure
    rated_flow: Figure | None
    exponent: Figure
    flow_exponent: Figure | None
    heating_effect: Figure
    length: Figure | None
    sections: Figure | None
    section_edr: Figure | None
    edr: Figure | None
    water: Figure | None
    water_per: Figure | None
    """Water in each foot or meter of a baseboard (an area) or in each section; None for a piece."""


@dataclass(frozen=True)
class Tube:
    """One size of tube: ``key`` of its row, its family, bore, outside diameter and roughness."""

    key: str
    name: str
    family: str
    size: str
    bore: Figure
    outside: Figure
    roughness: Figure


@dataclass(frozen=True)
class Fittings:
    """Fittings of one kind on one tube: how many, and the length of tube that resists as much as one."""

    name: str
    count: Figure
    equivalent_length: Figure


@dataclass(frozen=True)
class Pipe:
    """A piece of piping: tube, length, fittings and the flow coefficient of what stands in it.

    ``tube`` is None where the design is to choose it from ``family``. ``insulation`` is its thickness.
    ``through`` is the path of the unheated space or neighbor it runs through, empty inside the heated rooms.
    """

    tube: Tube | None
    family: str
    length: Figure
    fittings: dict[str, Fittings]
    valve: Figure | None
    insulation: Figure | None = None
    through: str = ""


@dataclass(frozen=True)
class Zone:
    """Rooms that call for heat together; ``thermostat`` is the room that decides."""

    id: str
    name: str
    thermostat: str


@dataclass(frozen=True)
class Circuit:
    """A circuit and its runs by emitter, in the order in which water passes them.

    In a series loop the length of a run is the tube from the emitter before to this one; in home runs it
    is the total length, supply and return. ``common`` is the piping of the circuit as a whole, with its
    zone valve. ``flow`` and ``drop`` are set where the user chose them. ``balanced``: every run has a
    balancing valve that is set to give it the flow it needs.
    """

    id: str
    name: str
    kind: str
    zone: str
    circulator: str
    common: Pipe
    runs: dict[str, Pipe]
    flow: Figure | None
    drop: Figure | None
    balanced: bool


@dataclass(frozen=True)
class Circulator:
    """A circulator by three points of its curve: at no flow, and at two flows."""

    id: str
    name: str
    shutoff: Figure
    middle_flow: Figure
    middle_head: Figure
    high_flow: Figure
    high_head: Figure
    power: Figure | None


@dataclass(frozen=True)
class Boiler:
    """The boiler as its plate says. ``output`` may be left to input and ``efficiency``."""

    name: str
    fuel: str
    kind: str
    input: Figure | None
    output: Figure | None
    efficiency: Figure | None
    least_output: Figure | None
    water: Figure | None
    highest_pressure: Figure | None
    relief: Figure | None
    relief_capacity: Figure | None
    rated_flow: Figure | None
    rated_head: Figure | None
    least_flow: Figure | None
    return_limit: Figure | None


@dataclass(frozen=True)
class Tank:
    """The expansion tank as chosen, and where it joins: at the pump's suction or its discharge.

    A tank whose ``kind`` is not said has a diaphragm. A plain steel tank has air over its water, no charge.
    """

    kind: str
    volume: Figure | None
    acceptance: Figure | None
    precharge: Figure | None
    placed: str

    @property
    def is_plain(self) -> bool:
        """True for a steel tank without a diaphragm."""
        return self.kind == PLAIN_STEEL


@dataclass(frozen=True)
class Plant:
    """The boiler room. ``height`` is that of the highest pipe above the gauge."""

    supply: Figure | None
    drop: Figure | None
    height: Figure | None
    fill: Figure | None
    fill_water: Figure | None
    high_limit: Figure | None
    low_water_cutoff: bool | None
    boiler: Boiler | None
    tank: Tank | None
    mains: Pipe | None
    circulators: dict[str, Circulator]


@dataclass(frozen=True)
class Controls:
    """How the heat is controlled; None is what the user has not said."""

    outdoor_reset: bool | None
    coldest_supply: Figure | None
    mildest_supply: Figure | None
    mildest_outdoor: Figure | None
    least_supply: Figure | None
    warm_weather_shutdown: Figure | None
    setback: Figure | None
    differential: Figure | None
    post_purge: Figure | None


@dataclass(frozen=True)
class Bill:
    """Fuel of one winter. One of ``energy``, ``volume`` and ``gas`` is set, or all wait."""

    id: str
    name: str
    fuel: str
    energy: Figure | None
    volume: Figure | None
    gas: Figure | None
    heat_content: Figure | None
    other_use: Figure | None
    efficiency: Figure
    degree_days: Figure
    base: Figure


@dataclass(frozen=True)
class Combustion:
    """What the analyzer and the draft gauge read."""

    oxygen: Figure | None
    carbon_monoxide: Figure | None
    draft: Figure | None
    stack: Figure | None
    room_carbon_monoxide: Figure | None
    spillage: str


@dataclass(frozen=True)
class Readings:
    """Readings on site, each None until it is taken. ``calling`` are ids of zones; empty means all."""

    date: str
    by: str
    outdoor: Figure | None
    room: Figure | None
    supply: Figure | None
    return_: Figure | None
    flow: Figure | None
    calling: tuple[str, ...]
    cold_pressure: Figure | None
    hot_pressure: Figure | None
    precharge: Figure | None
    test_pressure: Figure | None
    combustion: Combustion


@dataclass(frozen=True)
class Codes:
    """Which code the papers are drawn to, who is licensed, and who decides; blank until known."""

    adopted: str
    licence: str
    authority: str


@dataclass(frozen=True)
class System:
    """All that the job says of the heating system."""

    emitters: dict[str, Emitter]
    zones: dict[str, Zone]
    circuits: dict[str, Circuit]
    plant: Plant
    controls: Controls
    bills: dict[str, Bill]
    readings: Readings
    codes: Codes

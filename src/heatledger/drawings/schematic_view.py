"""What a piping schematic shows, as plain texts: no figure of a design reaches a drawing."""

from __future__ import annotations

from dataclasses import dataclass

SERIES, HOME_RUN = "series loop", "home-run manifold"
KINDS = (SERIES, HOME_RUN)


@dataclass(frozen=True)
class RunView:
    """One emitter and its run: room, kind of emitter, and the texts printed beside it.

    ``emitter`` names a sign of ``symbols``. ``length`` is the length of the run as the circuit counts it.
    """

    room: str
    emitter: str = "fin-tube baseboard"
    flow: str = ""
    length: str = ""
    balancing: bool = False


@dataclass(frozen=True)
class CircuitView:
    """A circuit: its kind, its runs in the order of the water, and what stands in its branch.

    ``circulator`` names a circulator of its own; empty where one serves all.
    """

    name: str
    kind: str
    runs: tuple[RunView, ...]
    flow: str = ""
    zone_valve: bool = True
    circulator: str = ""

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(f"a circuit is a {' or a '.join(KINDS)}, not {self.kind!r}")


@dataclass(frozen=True)
class SchematicView:
    """The boiler room and its circuits. A text left empty is not printed.

    ``tank_at_suction`` is False where the tank joins after the circulator. ``circulator`` is the one that
    serves all circuits, empty where each has its own.
    """

    title: str
    circuits: tuple[CircuitView, ...]
    boiler: str = "Boiler"
    boiler_note: str = ""
    relief: str = ""
    tank: str = ""
    fill: str = ""
    circulator: str = ""
    supply: str = ""
    return_: str = ""
    high_limit: bool = True
    low_water_cutoff: bool = True
    tank_at_suction: bool = True


def in_words(view: SchematicView) -> str:
    """The schematic read aloud, in the order of the water."""
    tank = f"expansion tank{_at(view.tank)}"
    circulator = view.circulator and f"circulator {view.circulator}"
    order = (tank, circulator) if view.tank_at_suction else (circulator, tank)
    limits = [name for name, there in (("high limit", view.high_limit),
                                       ("low-water cutoff", view.low_water_cutoff)) if there]  # fmt: skip
    path = [f"{view.boiler} with relief valve{_at(view.relief)}, its discharge to a floor drain through an "
            "air gap, pressure gauge" + "".join(f", {each}" for each in limits),
            "thermometer", "shutoff", "air separator", *(each for each in order if each),
            "shutoff"]  # fmt: skip
    fill = f"Cold water joins at the tank through shutoff, backflow preventer and fill valve{_at(view.fill)}."
    water = " and ".join(
        f"{name} {text}" for name, text in (("supply", view.supply), ("return", view.return_)) if text
    )
    said = [f"Supply water passes, in order: {'; '.join(path)}.", fill]
    said += [f"Water: {water}."] if water else []
    said += [_circuit(each) for each in view.circuits]
    return " ".join([*said, "Return water comes back through a thermometer and a shutoff to the boiler."])


def _at(text: str) -> str:
    return f" {text}" if text else ""


def _circuit(each: CircuitView) -> str:
    branch = [f"circulator {each.circulator}"] if each.circulator else []
    branch += ["zone valve"] if each.zone_valve else []
    runs = ", ".join(
        " ".join(part for part in (run.room, run.emitter, run.flow, run.length) if part) for run in each.runs
    )
    ends = "thermometer, purge drain and shutoff on its return"
    head = f"{each.name}, {each.kind}{_at(each.flow)}"
    return f"{head}: {'; '.join([*branch, runs or 'no runs', ends])}."

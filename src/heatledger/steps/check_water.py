"""Checks before the fire is lit: papers, a look round, tests, water, air."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from heatledger.job.system_model import HOME_RUN
from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.figures import Figure, missing
from heatledger.physics.startup import pressure_of_test, purge_flow
from heatledger.steps.said import CheckStep, Said, plain, say
from heatledger.steps.targets import CAUTION_LOCAL, charge_within, fill_within, flush_velocity, purge_velocity

if TYPE_CHECKING:
    from heatledger.steps.circuits import CircuitFlow
    from heatledger.steps.design import Design

STAND_CLEAR = (
    f"Pressure: stand clear of plugs and fittings under test. Test with water, not air. {CAUTION_LOCAL}"
)
LYE = f"Cleaner burns skin and eyes: goggles and gloves, and none of it near aluminum. {CAUTION_LOCAL}"


def before_the_fire(design: Design) -> Iterator[CheckStep]:
    """Papers, a look round, pressure test, cleaning, water, tank, fill and air, in order."""
    plant, water = design.job.system.plant, bool(design.job.system.circuits)
    room = design.boiler_room.plant
    has_boiler = plant.boiler is not None
    yield CheckStep(
        "papers", "Papers on site",
        say("Lay out the drawings, heat loss, sequence, permits and the makers' manuals."),
        say("All are present and their versions agree."), CAUTION_LOCAL, True,
    )  # fmt: skip
    yield CheckStep(
        "look-round", "Look round",
        say("Look at supports, valve directions, circulator arrows, the side of the tank, the relief pipe."),
        say("As drawn. The relief pipe is full size, has no valve, and ends where it can hurt no one."),
        f"Relief discharge scalds. {CAUTION_LOCAL}", water or has_boiler,
    )  # fmt: skip
    yield CheckStep(
        "pressure-test", "Pressure test",
        say(
            "Shut off boiler, tank and weak gauges. Take the relief valve off and plug its tapping; it goes "
            "back before any fire. Test the piping with water at {} for fifteen minutes.",
            pressure_of_test(highest=room.relief_pressure),
        ),
        say("No fall and no leak. Written down, and only then covered or insulated."), STAND_CLEAR, water,
    )  # fmt: skip
    yield CheckStep(
        "clean", "Clean old piping",
        say("Where old piping stays: a cleaner that suits every metal, as its maker says; then drain."),
        say("The drain runs clear."), LYE, water,
    )  # fmt: skip
    yield CheckStep(
        "flush", "Flush",
        say("Flush each circuit at {} or full force of the main, then clean strainers.", flush_velocity()),
        say("Clear, no grit, strainers clean."), "", water,
    )  # fmt: skip
    yield CheckStep(
        "water-quality", "Water quality",
        say("Test the fill water: hardness, acidity, conductivity."),
        say("Within what the boiler's maker allows; written down."), "", water or has_boiler,
    )  # fmt: skip
    yield from _tank_and_fill(design)
    yield CheckStep(
        "purge", "Purge air",
        say("Purge in the order of the wall card, each circuit by itself, into a bucket."),
        say("One minute without bubbles from each, and the pressure holds."),
        f"Hoses on drinking water need backflow protection and come off after use. {CAUTION_LOCAL}",
        water,
    )  # fmt: skip
    yield CheckStep(
        "glycol", "Antifreeze", say("Read its strength."), say("As ordered."), CAUTION_LOCAL, False
    )


def _tank_and_fill(design: Design) -> Iterator[CheckStep]:
    plant, room = design.job.system.plant, design.boiler_room.plant
    water = bool(design.job.system.circuits) or plant.boiler is not None
    charge = room.precharge_pressure
    if charge is None:
        yield CheckStep(
            "tank-charge", "Air in the plain steel tank",
            say("Shut the tank off, drain it empty and open to the air, shut its drain, and open it again."),
            say("Drained dry, its line open again, and no automatic vent on it: this tank keeps its air."),
            f"Drain it only when cold: the water scalds. {CAUTION_LOCAL}", water,
        )  # fmt: skip
    else:
        yield CheckStep(
            "tank-charge", "Charge of the expansion tank",
            say("Shut the tank off, drain its water side, set its air to {}.", charge),
            say("Reads {} within {}, with no water behind it.", charge, charge_within()),
            CAUTION_LOCAL, water,
        )  # fmt: skip
    yield CheckStep(
        "fill", "Fill", say("Fill cold to {} at the gauge.", room.fill_pressure),
        say("Stands at {} within {} cold.", room.fill_pressure, fill_within()),
        f"Never add water to a hot boiler that has run low. {CAUTION_LOCAL}", water,
    )  # fmt: skip


def purge_order(design: Design) -> list[Said]:
    """The order in which air is driven out, with the flow that carries it, for the wall card."""
    found = design.circuits.circuits
    if not design.job.system.circuits:
        return []
    said = [say("Boiler and mains first: purge valve open, all circuits shut.")]
    for id, circuit in design.job.system.circuits.items():
        flow = found.get(id)
        name = plain(circuit.name)
        if circuit.kind == HOME_RUN:
            said.append(
                say(
                    f"{name}: open one run at a time, from the nearest to the farthest, {{}} through each; "
                    "then open them all, {} through the manifold.",
                    _flow(_bores(flow, True), f"circuits/{id}"),
                    _flow(_bores(flow, False), f"circuits/{id}"),
                )
            )
        else:
            bores = {**_bores(flow, True), **_bores(flow, False)}
            said.append(say(f"{name}: the whole loop at once, {{}}.", _flow(bores, f"circuits/{id}")))
    said.append(say("Then all together, slowly, with the vents open; look at the fill pressure again."))
    return said


def _bores(flow: CircuitFlow | None, runs: bool) -> Mapping[str, Figure]:
    """Bores of the runs, or of the common piping."""
    if flow is None:
        return {}
    return {id: each.bore for id, each in flow.runs.items()} if runs else {"common": flow.common.bore}


def _flow(bores: Mapping[str, Figure], path: str) -> Figure:
    """Flow that carries air in the widest of some tubes."""
    if not bores:
        return missing(d.VOLUME_FLOW, f"{path}/tube", "tube")
    widest = choose(bores, largest, "the widest tube needs the most flow to carry air")
    return purge_flow(bore=widest, velocity=purge_velocity())

"""The lines of a startup that can be written down: what was read, its target, and whether it keeps to it.

A line stands under the step of the checklist at which it is read. Its band follows the same thresholds as
the findings on the reading, and the targets follow what was measured so far.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import isfinite, isnan

from heatledger.ledger.dimensions import RATIO
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding
from heatledger.steps import targets as t
from heatledger.steps.checklist import checklist_of
from heatledger.steps.design import Design
from heatledger.steps.said import Said, say
from heatledger.studies.startup_limits import StartupLimits, is_inside

INSIDE, OUTSIDE, READ, BLANK = "inside", "outside", "read", "blank"


@dataclass(frozen=True, eq=False)
class Line:
    """One reading of a startup.

    ``path`` is its entry in the job, ``step`` the step it is read at. ``held`` is the figure that is held to
    the target: the reading itself, or what follows from it, which ``held_words`` then names. ``low`` and
    ``high`` are the ends of the target in SI, None where there is none. ``state`` is inside or outside of
    the target, read where there is nothing to hold it to, or blank while it is not on file.
    """

    path: str
    step: str
    words: str
    target: Said
    state: str
    held: Figure | None = None
    held_words: str = ""
    low: float | None = None
    high: float | None = None

    @property
    def is_read(self) -> bool:
        """Whether it is on file."""
        return self.state != BLANK

    @property
    def is_outside(self) -> bool:
        """Whether what was read misses its target."""
        return self.state == OUTSIDE


def startup_lines(design: Design) -> list[Line]:
    """The lines of this job in the order in which they are read: those that are due, and all on file."""
    return [each for each in (*_water(design), *_fire(design), *_running(design))
            if each.is_read or is_due(design, each)]  # fmt: skip


def is_due(design: Design, line: Line) -> bool:
    """Whether this job has a use for a line."""
    system, boiler = design.job.system, design.job.system.plant.boiler
    water = bool(system.circuits)
    match line.step:
        case "pressure-test":
            return water
        case "tank-charge":
            return design.boiler_room.plant.precharge_pressure is not None and (water or boiler is not None)
        case "fill":
            return water or boiler is not None
        case "combustion" | "spillage":
            return t.burns(boiler)
        case _:
            return boiler is not None


def stands_first(design: Design, lines: list[Line]) -> Line | None:
    """The first line that keeps the boiler from being left alone: not read yet, or not as it must be."""
    if design.startup.startup.may_run:
        return None
    fire = [each for each in lines if each.step in ("combustion", "spillage")]
    poison = [each for each in fire if each.is_outside]
    open_ = [each for each in fire if not each.is_read and not each.path.endswith("/stack")]
    return next(iter([*poison, *open_]), None)


@dataclass(frozen=True, eq=False)
class OffTarget:
    """A finding on readings that miss their targets, the lines it concerns, and what else says the same."""

    finding: Finding
    lines: tuple[Line, ...]
    agrees: tuple[Finding, ...] = ()


def off_target(findings: list[Finding], lines: list[Line]) -> list[OffTarget]:
    """The findings on readings that are off, in their order; a drop and a meter that agree are one fault."""
    by_path = {each.path: each for each in lines if each.is_outside}
    found = [each for each in findings if each.where in by_path]
    drop = next((each for each in found if each.id == "drop-measured-off"), None)
    flow = next((each for each in found if each.id == "flow-measured-off"), None)
    same = drop is not None and flow is not None and _says_same(by_path[drop.where], by_path[flow.where])
    made = []
    for each in found:
        if same and each is flow:
            continue
        agrees = (flow,) if same and each is drop and flow is not None else ()
        of = tuple(by_path[one.where] for one in (each, *agrees))
        made.append(OffTarget(each, of, agrees))
    return made


def _says_same(drop: Line, flow: Line) -> bool:
    """Whether a drop and a flow tell of one fault: little flow drops far, much flow drops little."""
    if drop.held is None or flow.held is None or drop.high is None or flow.high is None:
        return False
    return (float(drop.held) > drop.high) == (float(flow.held) < flow.high)


def _line(
    path: str, step: str, words: str, read: Figure | None, target: Said, low: float | None = None,
    high: float | None = None, held: Figure | None = None, held_words: str = "",
) -> Line:  # fmt: skip
    """A line with its state; ``held`` where something else than the reading is held to the target."""
    given = read is not None and not read.is_missing
    shown = held if held_words else read
    ends = [each for each in (low, high) if each is not None]
    if not given:
        state = BLANK
    elif not ends or shown is None or not all(map(isfinite, (*ends, float(shown)))):
        state = READ
    else:
        state = INSIDE if is_inside(float(shown), low, high) else OUTSIDE
    usable = all(map(isfinite, ends))
    return Line(
        f"readings/{path}", step, words, target, state, shown if given else None, held_words,
        low if usable else None, high if usable else None,
    )  # fmt: skip


def _water(design: Design) -> Iterator[Line]:
    """Before firing: the test, the tank, the fill."""
    read, due, limits = design.job.system.readings, design.startup.startup, StartupLimits(design.job)
    yield _line("test_pressure", "pressure-test", "tested at", read.test_pressure,
                say("at least {}, for 15 minutes", due.test_pressure),
                low=float(due.test_pressure))  # fmt: skip
    charge, within = design.boiler_room.plant.precharge_pressure, limits.charge
    if charge is None:
        yield _line(
            "precharge", "tank-charge", "charge", read.precharge, say("none: this tank has no charge")
        )
    else:
        yield _line("precharge", "tank-charge", "charge", read.precharge,
                    say("{} within {}", charge, within), *_about(charge, within))  # fmt: skip
    fill, within = due.cold_pressure, limits.fill
    yield _line("cold_pressure", "fill", "pressure cold", read.cold_pressure,
                say("{} within {}", fill, within), *_about(fill, within))  # fmt: skip


def _about(due: Figure, within: Figure) -> tuple[float, float]:
    """The ends of a target that is kept to within something: a share of it, or an amount."""
    off = float(within) * (abs(float(due)) if within.dimension is RATIO else 1.0)
    return float(due) - off, float(due) + off


def _fire(design: Design) -> Iterator[Line]:
    """Combustion, draft, and the room; held to the stricter of the usual limits and the job's own."""
    boiler, fire = design.job.system.plant.boiler, design.job.system.readings.combustion
    limits, clean = StartupLimits(design.job), design.startup.startup.compared.carbon_monoxide
    if boiler is not None and t.burns(boiler):
        low, high = limits.oxygen(boiler)
        yield _line("combustion/oxygen", "combustion", "oxygen", fire.oxygen,
                    say("{} to {}, the maker’s sheet first", low, high), float(low), float(high))  # fmt: skip
    else:
        yield _line("combustion/oxygen", "combustion", "oxygen", fire.oxygen, say("none: no fire here"))
    most, read = limits.flue_co, fire.carbon_monoxide
    free = clean is not None and not isnan(float(clean))
    # As read there is never more of it than air free: over the limit as read is over the limit.
    over = (
        not free
        and read is not None
        and not read.is_missing
        and not is_inside(float(read), None, float(most))
    )
    held, words = (read, "as read, no less air free") if over else (clean, "air free")
    yield _line("combustion/carbon_monoxide", "combustion", "carbon monoxide, as read", read,
                say("air free at most {}", most), None, float(most), held, words)  # fmt: skip
    yield _line("combustion/stack", "combustion", "stack", fire.stack, say("none, write it down"))
    yield _spillage(fire.spillage)
    if boiler is not None and t.is_drafted(boiler):
        weak, strong = limits.draft
        ends = sorted((float(weak), float(strong)))
        yield _line("combustion/draft", "spillage", "draft", fire.draft,
                    say("{} to {} where a chimney draws", weak, strong), ends[0], ends[1])  # fmt: skip
    else:
        yield _line("combustion/draft", "spillage", "draft", fire.draft,
                    say("vent pressure within its listing"))  # fmt: skip
    room = limits.room_co
    yield _line("combustion/room_carbon_monoxide", "spillage", "carbon monoxide in the room",
                fire.room_carbon_monoxide, say("at most {}", room), None, float(room))  # fmt: skip


def _spillage(found: str) -> Line:
    state = BLANK if not found else INSIDE if found == "none" else OUTSIDE
    return Line("readings/combustion/spillage", "spillage", "flue gas that spills", say("none"), state)


def _running(design: Design) -> Iterator[Line]:
    """Supply, return, flow and the hot gauge, in the state that was read."""
    read, due, limits = design.job.system.readings, design.startup.startup, StartupLimits(design.job)
    follows = design.job.system.controls.outdoor_reset is not None and read.outdoor is not None
    if follows:
        yield _line("supply", "boiler-drop", "supply", read.supply,
                    say("{} within {} in this weather", due.supply_due, limits.supply),
                    *_about(due.supply_due, limits.supply))  # fmt: skip
    else:
        words = "{} on the design day; the other targets follow what is read"
        yield _line("supply", "boiler-drop", "supply", read.supply, say(words, due.supply_due))
    yield _return(design, limits)
    yield _line("flow", "boiler-drop", "flow at the meter", read.flow,
                say("{} within {}", due.flow, limits.flow), *_about(due.flow, limits.flow))  # fmt: skip
    plant, boiler = design.boiler_room.plant, design.job.system.plant.boiler
    own = boiler.relief if boiler is not None and boiler.relief is not None else plant.relief_pressure
    most = float(own) - float(limits.below_relief)
    yield _line("hot_pressure", "hot-pressure", "pressure hot", read.hot_pressure,
                say("near {}; at least {} below the relief valve at {}", plant.hot_pressure,
                    limits.below_relief, own), None, most)  # fmt: skip


def _return(design: Design, limits: StartupLimits) -> Line:
    """The return, held by the drop that it makes: anything from settled water to full fire fits."""
    read, due = design.job.system.readings, design.startup.startup
    settled, fire = due.settled_drop, due.fire_drop
    top = fire if fire is not None and float(fire) > float(settled) else settled
    low = float(settled) - limits.drop_off(settled)
    high = float(top) + limits.drop_off(top)
    if top is settled:
        target = say("{}, by a drop (ΔT) of {}", due.return_, settled)
    else:
        target = say("{} settled, ΔT {}; at full fire ΔT {}", due.return_, settled, top)
    if due.compared.drop is None:
        return _line("return", "boiler-drop", "return", read.return_, target, low, high, None, "ΔT")
    return _line("return", "boiler-drop", "return", read.return_, target, low, high, due.compared.drop, "ΔT")


def startup_figures(design: Design) -> dict[str, Figure]:
    """The figures that only the steps and the targets speak of, by their paths."""
    said = [each for step in checklist_of(design) for each in (step.do, step.pass_)]
    said += [each.target for each in startup_lines(design)]
    found = {design.names.path(figure): figure for each in said for figure in each.figures}
    return {path: figure for path, figure in found.items() if path}

"""The one pure function: a job goes in, a design comes out."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterator, Mapping
from difflib import get_close_matches
from functools import cache, cached_property
from typing import Any
from weakref import ref

from heatledger.job.model import Job
from heatledger.ledger.figures import NO_NAMES, Figure, Leaf, LeafKind, Names, Placed, ancestors, flat, placed
from heatledger.ledger.findings import Finding, NotChecked
from heatledger.ledger.presets import Preset
from heatledger.ledger.results import values_at, walk_results
from heatledger.steps.bills import Bills, bills
from heatledger.steps.boiler_room import BoilerRoom, boiler_room
from heatledger.steps.circuits import Circuits, circuits
from heatledger.steps.controls import ControlSettings, controls
from heatledger.steps.emitters import Emitters, emitters
from heatledger.steps.losses import Losses, heat_losses
from heatledger.steps.names import things_at, title_at
from heatledger.steps.reuse import NOTHING, unchanged
from heatledger.steps.shared_titles import shared_title
from heatledger.steps.startup import Startup, startup


class NoSuchFigure(KeyError):
    """There is no figure at a path; ``near`` are the nearest paths."""

    def __init__(self, path: str, near: list[str]) -> None:
        self.path, self.near = path, near
        super().__init__(path)

    def __str__(self) -> str:
        hint = f"; the nearest are {', '.join(self.near)}" if self.near else ""
        return f"no figure at {self.path!r}{hint}"


@dataclasses.dataclass(frozen=True, eq=False)
class Design:
    """What follows from a job: the results of every step, found by path."""

    job: Job
    losses: Losses
    emitters: Emitters
    circuits: Circuits
    bills: Bills
    boiler_room: BoilerRoom
    controls: ControlSettings
    startup: Startup

    @property
    def steps(self) -> tuple[object, ...]:
        """The results of the steps, in the order of the work."""
        return (
            self.losses, self.emitters, self.circuits, self.bills, self.boiler_room, self.controls,
            self.startup,
        )  # fmt: skip

    def __getitem__(self, path: str) -> Placed:
        """The figure at a path such as ``rooms/kitchen/loss``; ``NoSuchFigure`` offers the nearest."""
        wanted = path.strip().strip("/")
        found = self.results.get(wanted)
        figure = self.figures.get(wanted) if found is None else found
        if figure is None:
            raise NoSuchFigure(wanted, self.nearest(wanted))
        return placed(figure, self.names)

    def __contains__(self, path: str) -> bool:
        return path in self.figures

    def __iter__(self) -> Iterator[str]:
        return iter(self.figures)

    def nearest(self, path: str, most: int = 3) -> list[str]:
        """The paths that are spelled most like ``path``."""
        return get_close_matches(path, list(self.figures), n=most, cutoff=0.5)

    @cached_property
    def results(self) -> dict[str, Figure]:
        """Figures that were found, by path."""
        return dict(found for step in self.steps for found in walk_results(step))

    @cached_property
    def given(self) -> dict[str, Figure]:
        """Figures that were given: entries of the job, and what a table gives in their place."""
        found = {each.origin.path: each for each in entries(self.job) if isinstance(each.origin, Leaf)}
        return found | of_tables(self.job)

    @cached_property
    def figures(self) -> dict[str, Figure]:
        """Every figure by path: what was found, and what was given."""
        found = dict(self.results)
        for figure in ancestors(*found.values()):
            if isinstance(figure.origin, Leaf) and figure.origin.path not in found:
                found[figure.origin.path] = figure
        found |= of_tables(self.job)
        for figure in entries(self.job):
            if isinstance(figure.origin, Leaf):
                found.setdefault(figure.origin.path, figure)
        return found

    @cached_property
    def names(self) -> DesignNames:
        """What the figures of this design are called."""
        return DesignNames(self)

    def with_what_if(self, id: str) -> Design:
        """The design with one more what-if of the job laid over it, worked out once; may raise JobErrors."""
        kept: dict[str, Design] = self.__dict__.setdefault("_with_what_ifs", {})
        if id not in kept:
            first: Design | None = self.__dict__.get("_first_told")
            if first is not None:
                kept[id] = first.with_what_if(id).told_in(self.job.units)
            else:
                kept[id] = design(self.job.with_what_ifs(id), since=self)
        return kept[id]

    def told_in(self, units: Preset) -> Design:
        """The same design as a reader of these units is told of it: findings and titles name quantities too.

        No figure is worked out again, nor is a what-if that was laid.
        """
        if units is self.job.units:
            return self
        told = dataclasses.replace(self, job=dataclasses.replace(self.job, units=units))
        told.__dict__["_first_told"] = self.__dict__.get("_first_told", self)
        return told

    @cached_property
    def findings(self) -> list[Finding]:
        """What a careful senior designer would say, must fix first."""
        return self._review[0]

    @cached_property
    def not_checked(self) -> list[NotChecked]:
        """Findings that could not be checked, and for want of what."""
        return self._review[1]

    @cached_property
    def _review(self) -> tuple[list[Finding], list[NotChecked]]:
        from heatledger.steps.review import review

        return review(self)


def design(job: Job, since: Design | None = None) -> Design:
    """The design that follows from a job.

    With ``since``, results that rest on unchanged entries are taken over from an earlier design; the
    answer is the same without it.
    """
    same = NOTHING if since is None else unchanged(job, since.job)
    losses = heat_losses(job, since.losses if since else None, same)
    heat = emitters(job, losses, since.emitters if since else None)
    flows = circuits(job, heat, since.circuits if since else None)
    room = boiler_room(job, losses, heat, flows)
    control = controls(job, losses, heat, flows, room)
    start = startup(job, losses, heat, flows, room, control)
    return Design(job, losses, heat, flows, bills(job, losses), room, control, start)


def of_tables(job: Job) -> dict[str, Figure]:
    """What may come from a table, by its path in the job: constructions, and air by exposed sides."""
    found = {
        f"constructions/{id}/{field}": figure
        for id, each in job.constructions.items()
        for field in ("u_value", "r_value", "f_factor")
        if (figure := getattr(each, field)) is not None
    }
    airs = {"air": job.air} | {f"unheated/{id}/air": each.air for id, each in job.unheated.items()}
    airs |= {f"rooms/{id}/air": each.air for id, each in job.rooms.items()}
    by_sides = {
        path: each for path, each in airs.items() if each is not None and each.exposed_sides is not None
    }
    return found | {f"{path}/changes": each.changes for path, each in by_sides.items()}


def entries(thing: Any) -> Iterator[Figure]:
    """The figures that stand in the model of a job, in order."""
    found: list[Figure] = []
    _gather(thing, found.append)
    return iter(found)


def _gather(thing: Any, add: Callable[[Figure], None]) -> None:
    if isinstance(thing, Figure):
        add(thing)
    elif isinstance(thing, Mapping):
        for each in thing.values():
            _gather(each, add)
    else:
        for each in _values_of(thing.__class__)(thing):
            if each.__class__ is Figure:
                add(each)
            elif each is not None and each.__class__ is not str:
                _gather(each, add)


@cache
def _values_of(kind: type) -> Callable[[Any], tuple[Any, ...]]:
    """What gets the fields of a thing of the model that can hold figures; nothing for a plain value."""
    if not dataclasses.is_dataclass(kind):
        return values_at(())
    names = (each.name for each in dataclasses.fields(kind))
    return values_at(tuple(each for each in names if each not in ("raw", "source", "units", "what_ifs")))


class DesignNames(Names):
    """Titles, paths and uses of the figures of one design."""

    def __init__(self, design: Design) -> None:
        self.job, self._circuits, self._results = design.job, design.circuits, design.results
        # A design holds its names; held back by them, it would stay until garbage is looked for.
        self._design = ref(design)
        self.paths: dict[int, str] = {}
        # What was given has the path of its leaf; only what was found has to be looked up.
        for path, figure in design.results.items():
            origin = figure.origin
            own = origin.path if isinstance(origin, Leaf) and origin.kind is LeafKind.JOB else path
            self.paths.setdefault(id(figure), own)
        self.paths.update((id(figure), path) for path, figure in of_tables(design.job).items())
        self._several: dict[int, list[str]] = {}
        for path, figure in design.results.items():
            if path.startswith(("circuits/", "emitters/")):
                self._several.setdefault(id(figure), []).append(path)
        self._titles: dict[int, str] = {}
        self._held: list[Figure] = []
        self.places: dict[int, tuple[Figure, tuple[str, list[str]]]] = {}
        """What papers have worked out of a figure's place; the figure is kept, so that its id stays."""

    @property
    def design(self) -> Design:
        """The design whose figures these are the names of, made anew where nobody holds it any more."""
        held = self._design()
        return design(self.job) if held is None else held

    @cached_property
    def _uses(self) -> dict[int, list[Figure]]:
        found: dict[int, list[Figure]] = {}
        for figure in ancestors(*self._results.values()):
            if figure.inputs:
                for each in {id(one) for one in flat(figure.inputs)}:
                    found.setdefault(each, []).append(figure)
        return found

    def title(self, figure: Figure) -> str:
        """What a figure is called, with the thing it belongs to.

        An inner result has no place of its own; it is called after the first of its inputs that has one.
        """
        if isinstance(figure, Placed):
            return self._title(figure)
        if id(figure) not in self._titles:
            self._titles[id(figure)] = self._title(figure)
            self._held.append(figure)  # so that its id is not given to another
        return self._titles[id(figure)]

    def _title(self, figure: Figure) -> str:
        path = self.path(figure)
        if not path and figure.inputs:
            parts = figure.inputs[0].__class__ is tuple  # a sum is called after what its parts belong to
            for each in flat(figure.inputs):
                things, _ = things_at(self.path(each), self.job)
                if things:
                    return ", ".join([NO_NAMES.title(figure), *(things[:-1] if parts else things)])
        here = figure.original if isinstance(figure, Placed) else figure
        several = self._several.get(id(here), [])
        typed = isinstance(figure.origin, Leaf) and figure.origin.kind is LeafKind.JOB
        if len(several) > 1 and not typed:
            shared = shared_title(figure, several, self._circuits)
            if shared:
                return shared
        return title_at(path, figure, self.job)

    def path(self, figure: Figure) -> str:
        """Where a figure stands; empty for an inner result that has no place of its own."""
        figure = figure.original if isinstance(figure, Placed) else figure
        return self.paths.get(id(figure), "") or super().path(figure)

    def place(self, figure: Figure) -> str:
        """Where an entry was written: its file and line, or its place in the catalog."""
        origin = figure.origin
        if not isinstance(origin, Leaf) or origin.kind is not LeafKind.JOB:
            return super().place(figure)
        source = self.job.source
        return f"{source.file_name}:{source.line_of(origin.path)} {origin.path}"

    def thing(self, key: str) -> str:
        """The name of what a choice or a search calls by its id; any other key as it is."""
        job = self.job
        among = (job.rooms, job.system.emitters, job.system.circuits, job.system.zones, job.unheated)
        found = next((each[key] for each in among if key in each), None)
        return key if found is None else str(found.name)

    def uses(self, figure: Figure) -> list[Figure]:
        """The figures built directly on this one that have a place of their own."""
        return [each for each in self._uses.get(id(figure), []) if self.path(each)]

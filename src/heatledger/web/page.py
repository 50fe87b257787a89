"""What one answer needs to know, and how figures and entries stand in it.

A page is made for one reader: the job, the units, the sheet, the figure whose working is open, the thing
that is picked. Its methods give markup with every text escaped.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING
from urllib.parse import urlencode

from markupsafe import Markup

from heatledger.book.records import Revision, WrongEntry
from heatledger.job.model import Job
from heatledger.ledger.dimensions import AREA
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Weight
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show_percent, show_range
from heatledger.steps.design import Design
from heatledger.studies.calls import hardest_pump
from heatledger.studies.crude import CRUDE, crude_figures
from heatledger.studies.uncertainty import band
from heatledger.web.entries import Entry, entry_at
from heatledger.web.entry_markup import field_of, list_of
from heatledger.web.figure_markup import BLANK, figure_button, figure_text, told_button, unit_text
from heatledger.web.states import SHEETS, SheetState, begun_states, sheet_states
from heatledger.web.unit_words import short_words

if TYPE_CHECKING:
    from heatledger.web.desks import Desk


@dataclass
class Page:
    """One answer about one job. ``house`` speaks in the reader's units; ``before`` is the design as it was
    before the last change, None when nothing has changed. ``ready`` says whether the findings are to be
    waited for. ``asked`` is what else the address asks for, ``desk`` where the job lies open. ``paired`` is
    for a device that reaches Startup only, ``mark_of_forms`` what a form of it carries, ``printed`` what this
    device has printed of the job."""

    id: str
    house: Design
    before: Design | None
    units: Preset
    revision: Revision
    wrong: dict[str, WrongEntry]
    sheet: str = "house"
    opened: str = ""
    picked: str = ""
    who: str = ""
    trail: tuple[str, ...] = ()
    view: str = ""
    can_undo: bool = False
    can_redo: bool = False
    ready: bool = True
    by_hand: dict[str, str] = field(default_factory=dict)
    asked: dict[str, tuple[str, ...]] = field(default_factory=dict)
    desk: Desk | None = None
    paired: bool = False
    printed: str = ""
    mark_of_forms: str = ""

    @property
    def job(self) -> Job:
        """The job that the design is of."""
        return self.house.job

    @property
    def name(self) -> str:
        """What the job is called."""
        return self.job.name or "House without a name"

    def url(
        self, sheet: str | None = None, open: str | None = None, pick: str | None = None, **more: str
    ) -> str:
        """The address of a sheet of this job with its open figure and picked thing."""
        here = sheet or self.sheet
        same = here == self.sheet
        asked = {
            "open": self.opened if open is None and same else open or "",
            "pick": self.picked if pick is None and same else pick or "",
            "view": self.view if same else "",
        } | more
        query = urlencode({key: value for key, value in asked.items() if value})
        return f"/jobs/{self.id}/{here}" + (f"?{query}" if query else "")

    def figure(self, what: str | Figure | None) -> Figure | None:
        """The figure at a path, or the figure itself; None where there is none."""
        if isinstance(what, str):
            if what.startswith(CRUDE):
                return crude_figures(self.job).get(what)
            found = self.house.results.get(what)
            if found is None:
                found = self.house.given.get(what)
            return found if found is not None else self.house.figures.get(what)
        return what

    def path(self, what: str | Figure) -> str:
        """The path of a figure."""
        return what if isinstance(what, str) else self.house.names.path(what)

    def text(
        self,
        what: str | Figure | None,
        places: int | None = None,
        unit: bool = True,
        speak: bool = False,
        up: bool = False,
    ) -> str:
        """A figure as plain text; empty where it has no value. ``speak`` is the three figures of a headline,
        ``up`` whole degrees that are never too low."""
        figure = self.figure(what)
        return figure_text(figure, self.units, places, unit, speak, up)

    def fig(
        self,
        what: str | Figure | None,
        places: int | None = None,
        unit: bool = True,
        css: str = "",
        speak: bool = False,
        up: bool = False,
        label: str = "",
    ) -> Markup:
        """A figure as a button that opens its working, the old one struck before it where it has changed.

        ``label`` says what it is; without it the figure's own title does. A missing figure is a thin line.
        """
        return figure_button(self, what, places, unit, css, speak, up, label)

    def told(self, what: str | Figure, text: str, css: str = "", unit: bool = True) -> Markup:
        """A figure in words of its own, as a button: 30 % in a column of shares; plain text without one."""
        return told_button(self, what, text, css, unit)

    def band(self, path: str) -> str:
        """The likely range of a figure, "33,100 to 39,400"; empty where it has none."""
        figure = self.figure(path)
        if figure is None or figure.is_missing:
            return ""
        made = band(self.house, path)
        return show_range(made.low, made.high, self.units, figure.dimension, unit=False)

    def unit(self, what: str | Figure) -> str:
        """The unit of a figure's kind, for the head of a column."""
        figure = self.figure(what)
        return unit_text(figure, self.units) if figure is not None else ""

    def percent(self, path: str, places: int = 0) -> Markup:
        """A share as a percentage that opens its working."""
        figure = self.figure(path)
        if figure is None or figure.is_missing:
            return self.fig(path)
        return self.told(path, show_percent(float(figure), places))

    def at(self, path: str) -> Entry:
        """The entry of the job at a path."""
        return entry_at(self.job, path)

    def entry(self, path: str, words: str = "", example: str = "", css: str = "", wide: int = 0) -> Markup:
        """The entry at a path: what was typed, on its line type; its fault below where it cannot be read."""
        return field_of(self.job, self.wrong, path, words, example, css, wide)

    def pick(self, path: str, words: str = "", css: str = "") -> Markup:
        """An entry that is one of a few words, as a list to choose from."""
        return list_of(self.job, self.wrong, path, words, css)

    @property
    def states(self) -> list[SheetState]:
        """Where each sheet stands."""
        made = sheet_states(self.house) if self.ready else begun_states(self.house)
        count = len(self.wrong)
        if count:
            made[0] = SheetState(f"{count} to mend", "must")
        return made

    @property
    def sheets(self) -> list[tuple[str, str]]:
        """Name in an address and name shown of the eight sheets."""
        return list(SHEETS)

    @property
    def blank(self) -> Markup:
        """A thin line, where a figure will be."""
        return BLANK

    @property
    def flow_and_head(self) -> tuple[Figure | None, Figure | None]:
        """The flow of all circulators, and the head of the one that needs most; None where there are none."""
        id = hardest_pump(self.house)
        head = self.house.circuits.plant.circulators[id].needed_head if id else None
        return self.figure("plant/flow"), head

    @property
    def open_counts(self) -> tuple[int, int]:
        """Open questions of the whole job, and how many of them must be fixed."""
        found = [each for each in self.house.findings if each.decided is None]
        return len(found), sum(each.weight is Weight.MUST_FIX for each in found)

    @property
    def unit_words(self) -> str:
        """What the reader's units are called on the switch: ``ft, °F``."""
        return short_words(self.units)

    @property
    def area_unit(self) -> str:
        """The reader's unit of an area, for a column per area."""
        return self.units.shown(AREA).unit.text

    @property
    def revision_words(self) -> str:
        """Which revision this is, for the foot."""
        said = self.revision.said
        made = f"Revision {self.revision.number}: {said if len(said) < 60 else said[:58] + '…'}"
        return f"{made}, {self.revision.by}" if self.revision.by else made

    @property
    def working(self) -> Markup:
        """The working of the open figure."""
        from heatledger.web.addresses import callout_of
        from heatledger.web.workings import working_html

        return working_html(self.house, self.opened, self.units, callout_of(self), self.trail)

    def title(self, path: str) -> str:
        """What the figure at a path is called."""
        figure = self.figure(path)
        return self.house.names.title(figure) if figure is not None else path

"""What every builder of a paper is given: the design, its reader, the one book of addresses, and short ways
from a figure to what a block takes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import cached_property

from heatledger.drawings.figure_words import bare
from heatledger.ledger.dimensions import RATIO, TIME
from heatledger.ledger.figures import Figure
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import show, show_percent
from heatledger.ledger.sources import Citation
from heatledger.papers import blocks as b
from heatledger.papers import tables
from heatledger.papers.addresses import Addresses
from heatledger.papers.findings_by_sheet import findings_of, not_checked_of
from heatledger.papers.from_design import safety
from heatledger.papers.front import head
from heatledger.papers.groups import book
from heatledger.papers.heat_loss_data import FindingLine, Head
from heatledger.papers.references import references
from heatledger.papers.words import spoken_time
from heatledger.papers.workings_from import known_of
from heatledger.steps.design import Design
from heatledger.steps.said import SLOT, Said

LOCAL_CODE = "Local code and licensed practice govern."
WRITE_ON = 40.0
"""Points of a rule to write on inside a sentence."""


class Printing:
    """One printing of a design for one reader; its workings are composed once, for all its papers.

    ``revision`` is what the book calls it, "revision 12"; addresses are those of this revision.
    """

    def __init__(self, design: Design, units: Preset, revision: str = "") -> None:
        self.design, self.units, self.revision = design, units, revision

    @cached_property
    def found(self) -> Addresses:
        """The book of addresses."""
        return book(self.design, self.units)

    def head(self, title: str) -> Head:
        """The head of a paper of this design, with its draft mark."""
        made = head(self.design, title)
        said = ", ".join(each for each in (self.revision, made.revision) if each)
        return replace(made, revision=said)

    def show(self, figure: Figure, places: int | None = None) -> str:
        """A figure as text with its unit; a ratio that has no unit stands as a plain number."""
        if figure.dimension is TIME and places is None and not figure.is_missing:
            return spoken_time(figure, self.units)
        return "" if figure.is_missing else show(figure, self.units, places=places)

    def percent(self, figure: Figure) -> str:
        """A ratio as a percentage; empty when it is missing."""
        return "" if figure.is_missing else show_percent(float(figure))

    def run(self, figure: Figure, bold: bool = False, percent: bool = False) -> b.Run:
        """A figure inside a sentence, with its key; "not known yet" when it has no value."""
        text = self.percent(figure) if percent else self.show(figure)
        kind = "bold" if bold else ""
        return b.Run(text or "not known yet", kind, self.found.key(figure))  # type: ignore[arg-type]

    def cell(
        self, figure: Figure | None, unit: bool = False, strong: bool = False, total: bool = False
    ) -> b.Cell:
        """A figure in a table: with as many decimals as its column, without its unit unless asked for.

        None says that there is none; a figure without a value is a blank.
        """
        if figure is None:
            return b.NONE
        places = self.units.shown(figure.dimension).places
        text = self.show(figure) if unit else bare(figure, self.units, places)
        return b.Cell(text, self.found.key(figure), known_of(figure), strong=strong, total=total)

    def fact(self, name: b.Text, figure: Figure | None, note: b.Text = "") -> b.Fact:
        """A line of a list of facts."""
        if figure is None:
            return b.Fact(name, "–", note=note)
        return b.Fact(name, self.show(figure), self.found.key(figure), note, known_of(figure))

    def spoken(self, said: Said) -> b.Text:
        """A sentence with its figures put in, each with its key; ratios as percentages.

        A figure without a value, and a setting that nobody has given, is a blank to fill in.
        """
        pieces = said.text.split(SLOT)
        runs: list[str | b.Run] = [pieces[0]]
        for figure, after in zip(said.figures, pieces[1:], strict=True):
            runs += [*self._put(figure), after]
        return tuple(each for each in runs if each != "")

    def _put(self, figure: Figure) -> tuple[str | b.Run, ...]:
        unread = figure is self.design.boiler_room.plant.relief_pressure and self.relief is None
        if figure.is_missing or unread:
            return self.to_fill_in(figure)
        return (self.run(figure, percent=figure.dimension is RATIO),)

    def to_fill_in(self, figure: Figure) -> tuple[b.Run, str]:
        """A rule to write on, with the unit of a figure."""
        unit = "%" if figure.dimension is RATIO else self.unit(figure.dimension)
        return b.Run("", blank=WRITE_ON), f" {unit}".rstrip()

    @property
    def relief(self) -> Figure | None:
        """The setting of the relief valve as the job gives it; None for one that is only reckoned with."""
        boiler = self.design.job.system.plant.boiler
        given = boiler.relief if boiler is not None else None
        return None if given is None or given.is_missing else given

    def precharge(self) -> b.Text:
        """The charge of the tank in a sentence; a plain steel tank has none."""
        found = self.design.boiler_room.plant.precharge_pressure
        return "none, a plain steel tank" if found is None else (self.run(found),)

    def relief_setting(self, bold: bool = False) -> b.Text:
        """The setting of the relief valve in a sentence, else a blank: an assumed one is never a fact."""
        reckoned = self.design.boiler_room.plant.relief_pressure
        return self.to_fill_in(reckoned) if self.relief is None else (self.run(reckoned, bold),)

    def findings(self, *sheets: int, none: str = "Nothing is open.") -> b.Findings:
        """What is open on these sheets; on all of them where none is named."""
        return b.Findings(self.finding_lines(*sheets), none)

    def finding_lines(self, *sheets: int) -> tuple[FindingLine, ...]:
        """The findings on these sheets as they are printed."""
        return tuple(
            tables.finding_line(each, self.design, self.found) for each in findings_of(self.design, *sheets)
        )

    def not_checked(self, *sheets: int) -> tuple[str, ...]:
        """What could not be checked on these sheets, and for want of what."""
        return tables.not_checked_lines(not_checked_of(self.design, *sheets))

    def sources(
        self, *stages: str, sheets: Iterable[int] = (), more: Iterable[Citation] = ()
    ) -> b.References:
        """The sources behind the figures of these stages and the findings of these sheets."""
        sheets = tuple(sheets)
        findings = findings_of(self.design, *sheets) if sheets else []
        return b.References(references(self.found.of(*stages), findings, more))

    def caution(self, *more: b.Text) -> b.Frame:
        """The frame on safety that stands on every paper, with what this one adds."""
        return b.Frame("Safety.", (*more, safety(self.units), LOCAL_CODE))

    def unit(self, dimension: object) -> str:
        """The unit of a column."""
        return self.units.shown(dimension).unit.text  # type: ignore[arg-type]

"""The rows in which what-ifs stand side by side, and the figures of a column as buttons."""

from __future__ import annotations

from dataclasses import dataclass, replace

from markupsafe import Markup, escape

from heatledger.job.entry_words import value_words
from heatledger.job.model import Change
from heatledger.job.text import Mapping, Scalar, walk
from heatledger.ledger.figures import Figure
from heatledger.ledger.findings import Finding, Weight
from heatledger.ledger.show import show_percent
from heatledger.steps.design import Design
from heatledger.studies.calls import hardest_pump
from heatledger.studies.side_by_side import is_short
from heatledger.web.entries import typeset
from heatledger.web.laid import Column
from heatledger.web.page import Page

MOST_SHORT = 2
OF_WHAT_IFS = frozenset(("future-work-changes-load",))
"""Kinds of findings that speak of the what-ifs of a job, not of the house."""


@dataclass(frozen=True)
class RowOf:
    """A row: its words, the path of its figure, and how that is shown."""

    words: str
    path: str
    places: int | None = None
    up: bool = False
    strong: bool = False
    unit: bool = True

    def path_in(self, house: Design | None) -> str:
        """Where the figure of this row stands in a design; empty where there is none."""
        if house is None:
            return ""
        return _head(house) if self.path == "head" else self.path


@dataclass(frozen=True)
class Cell:
    """What stands in one column of a row, and whether it is as in the job."""

    html: Markup
    same: bool


@dataclass(frozen=True)
class RowShown:
    """A row as it is shown: its words with the unit, a cell a column."""

    words: str
    cells: tuple[Cell, ...]
    strong: bool = False
    in_words: bool = False

    @property
    def differs(self) -> bool:
        """Whether any column is not as the job."""
        return not all(each.same for each in self.cells)


def _head(house: Design) -> str:
    """Where the largest head that any circulator needs stands; empty where none is known."""
    id = hardest_pump(house)
    return f"plant/circulators/{id}/needed_head" if id else ""


ROWS = (
    RowOf("Design load", "house/loss", places=0, strong=True),
    RowOf("Supply that serves every room", "house/lowest_supply", up=True),
    RowOf("Supply that serves all but one", "house/next_lowest", up=True),
    RowOf("Supply", "house/supply", up=True),
    RowOf("Return", "plant/return_design", places=0),
    RowOf("Total flow", "plant/flow"),
    RowOf("Head", "head"),
    RowOf("Boiler load", "plant/load", places=0),
    RowOf("Boiler output over its load", "plant/ratio", places=2, unit=False),
)


def shown_rows(page: Page, columns: list[Column]) -> list[RowShown]:
    """Every row that any column has something for."""
    found = []
    for row in ROWS:
        figures = [_figure(each.house, row.path_in(each.house)) for each in columns]
        if any(each is not None and not each.is_missing for each in figures):
            found.append(_row(page, columns, row, figures))
    return [*found, _short(columns), _questions(columns)]


def _figure(house: Design | None, path: str) -> Figure | None:
    return house.results.get(path) if house is not None else None


def _row(page: Page, columns: list[Column], row: RowOf, figures: list[Figure | None]) -> RowShown:
    texts = [page.text(each, row.places, unit=False, up=row.up) for each in figures]
    unit = next((page.unit(each) for each in figures if each is not None), "") if row.unit else ""
    cells = []
    for i, column in enumerate(columns):
        label = f"{row.words}, {'as it stands' if column.is_job else column.letter}"
        html = laid_figure(page, column, i, row.path_in(column.house), row.places, row.up, label)
        cells.append(Cell(html, i > 0 and texts[i] == texts[0]))
    return RowShown(f"{row.words}, {unit}" if unit else row.words, tuple(cells), row.strong)


def laid_figure(
    page: Page, column: Column, index: int, path: str, places: int | None = None,
    up: bool = False, label: str = "", unit: bool = False,
) -> Markup:  # fmt: skip
    """A figure of a column as a button that opens its working in that column's own design."""
    if _figure(column.house, path) is None:
        return Markup('<span class="q3">–</span>')
    mine = column_page(page, column)
    html = mine.fig(path, places, unit=unit, up=up, label=label)
    if column.is_job:
        return html
    own = f'form="open-{index}" data-laid="{escape(column.key)}"'
    return Markup(str(html).replace('form="open"', own))


def column_page(page: Page, column: Column) -> Page:
    """The page as a column sees it: its design, and the open figure where it is open in that column."""
    house = column.house if column.house is not None else page.house
    opened = page.opened if laid_key(page) == column.key else ""
    asked = page.asked if column.is_job else {key: each for key, each in page.asked.items() if key != "laid"}
    return replace(
        page, house=house, before=page.before if column.is_job else None, opened=opened, asked=asked
    )


def laid_key(page: Page) -> str:
    """The column in which the open figure is open."""
    return next(iter(page.asked.get("laid", ())), "")


def short_rooms(house: Design) -> list[str]:
    """The rooms that get less than they need at the supply of the design, with how much they lack."""
    found = []
    for id, room in house.emitters.rooms.items():
        if is_short(room):
            lack = show_percent(1.0 - float(room.given_share))
            found.append(f"{house.job.rooms[id].name or id} {lack}")
    return found


def _short(columns: list[Column]) -> RowShown:
    texts = []
    for each in columns:
        rooms = short_rooms(each.house) if each.house is not None else []
        more = f" and {len(rooms) - MOST_SHORT} more" if len(rooms) > MOST_SHORT else ""
        texts.append((", ".join(rooms[:MOST_SHORT]) + more or "none") if each.house is not None else "–")
    return _words("Rooms that are short", texts)


def open_findings(house: Design) -> list[Finding]:
    """What is open on a design, but for what is said of the what-ifs themselves."""
    return [each for each in house.findings if each.decided is None and each.id not in OF_WHAT_IFS]


def _questions(columns: list[Column]) -> RowShown:
    texts = []
    for each in columns:
        found = [] if each.house is None else open_findings(each.house)
        counts = [sum(one.weight is weight for one in found) for weight in Weight]
        texts.append(", ".join(map(str, counts)) if each.house is not None else "–")
    return _words("Must fix, decide, note", texts)


def _words(words: str, texts: list[str]) -> RowShown:
    cells = (Cell(Markup("{}").format(each), i > 0 and each == texts[0]) for i, each in enumerate(texts))
    return RowShown(words, tuple(cells), in_words=True)


@dataclass(frozen=True)
class ChangeShown:
    """A change in words: what it is about, the old value and the new one, how well the new one is known."""

    words: str
    old: str
    new: str
    known: str
    path: str


def change_shown(page: Page, change: Change) -> ChangeShown:
    """A change of a what-if, as it stands beside the job."""
    old = value_words(walk(page.job.source.base, change.path))
    if change.kind == "remove":
        return ChangeShown(title_of(page, change.path), old or "there", "taken away", "", change.path)
    new = value_words(change.to)
    known = ""
    if isinstance(change.to, Mapping):
        said = change.to.entries.get("known")
        known = said.text if isinstance(said, Scalar) else ""
    words = title_of(page, change.path)
    if change.kind == "add" and not old:
        return ChangeShown(words, "", typeset(new) or "added", known, change.path)
    return ChangeShown(words, typeset(old), typeset(new), known, change.path)


def title_of(page: Page, path: str) -> str:
    """What the entry at a path is called: by its figure, else by the thing it belongs to."""
    figure = page.house.figures.get(path)
    if figure is not None:
        title = page.house.names.title(figure)
        if title:
            return title
    steps = path.split("/")
    named = walk(page.job.source.base, f"{'/'.join(steps[:2])}/name") if len(steps) > 1 else None
    thing = named.text if isinstance(named, Scalar) and named.text else " ".join(steps[1:2]).replace("-", " ")
    rest = ", ".join(each.replace("_", " ").replace("-", " ") for each in steps[2:])
    said = f"{thing}, {rest}" if rest and thing else thing or rest or steps[0].replace("_", " ")
    return said[0].upper() + said[1:]

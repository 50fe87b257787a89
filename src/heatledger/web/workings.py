"""The working of one figure for the right page: what the ledger composes, with its band and its uses."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape
from math import isfinite
from typing import Any

from markupsafe import Markup

from heatledger.drawings.band_rule import band_rule
from heatledger.drawings.to_svg import to_svg
from heatledger.ledger.as_html import as_html
from heatledger.ledger.compose import working_of
from heatledger.ledger.dimensions import TEMPERATURE_DIFFERENCE
from heatledger.ledger.figures import Figure
from heatledger.ledger.html_extras import Extras, Opens, Swinging
from heatledger.ledger.html_parts import figure_button, line_type
from heatledger.ledger.presets import Preset
from heatledger.ledger.show import grouping, show, show_range
from heatledger.steps.design import Design, NoSuchFigure
from heatledger.studies.crude import WORDS, crude_figures
from heatledger.studies.uncertainty import SENTENCE, Band, Swing, band_of, half_range_text
from heatledger.web.inner_paths import InnerNames, figure_at

MOST_USES, MOST_FOLDED, MOST_SWINGS = 4, 40, 7
LEVEL = 2
RULE_WIDTH = 420.0


def working_html(
    house: Design,
    path: str,
    units: Preset,
    callout: tuple[int, int] | None = None,
    trail: Sequence[str] = (),
    explain: bool = True,
) -> Markup:
    """The working of the figure at a path: a result, an entry, a row of the catalog, or an inner one.

    ``callout`` is its sheet and line, ``trail`` the paths that were open before, oldest first. ``explain``
    says what a band is and is not; once on a page is enough. A path that leads nowhere gives a sentence
    with the nearest paths.
    """
    path = path.strip().strip("/")
    whole = f"{path}/loss"
    try:
        figure = figure_at(house, whole if path not in house and whole in house else path)
    except NoSuchFigure as fault:
        return _entry_in_words(house, path) or _nowhere(house, path, fault.near, units)
    own = house.names.path(figure)
    opened = own if own and house.figures.get(own) is figure else path
    names = InnerNames(house, figure, opened)
    crude = opened in crude_figures(house.job)
    extras = Extras(
        callout=callout,
        plain=WORDS if crude else "",
        trail=tuple(_back(house, each) for each in trail if each != path),
        **_likely(house, figure, units, explain and not crude),
        **_uses(house, figure, units),
    )
    return Markup(as_html(working_of(figure, units, names), names, LEVEL, extras))


def _back(house: Design, path: str) -> Opens:
    """A figure that was open before: its name is what is shown."""
    try:
        return Opens("open it again", house.names.title(figure_at(house, path)) or path, path)
    except NoSuchFigure:
        return Opens("open it again", path, path)


def _uses(house: Design, figure: Figure, units: Preset) -> dict[str, Any]:
    """What is built on a figure; losses first, since shares and losses per area say less."""
    names = house.names
    found: dict[str, Figure] = {}
    for each in sorted(names.uses(figure), key=lambda each: each.dimension is not figure.dimension):
        place = names.path(each)
        if place and house.figures.get(place) is each:
            found.setdefault(place, each)
    shown = list(found.items())
    opens = [Opens(show(each, units), names.title(each), path) for path, each in shown[:MOST_FOLDED]]
    return {
        "uses": tuple(opens[:MOST_USES]),
        "more_uses": tuple(opens[MOST_USES:]),
        "other_uses": len(shown) - len(opens),
    }


def _likely(house: Design, figure: Figure, units: Preset, explain: bool) -> dict[str, Any]:
    """The band of a figure that is found, on its rule, and what matters most to it."""
    if not figure.inputs or figure.is_missing:
        return {}
    made = band_of(figure, house)
    if not made.swings or not isfinite(made.low) or made.half <= 0:
        return {}
    text = show_range(made.low, made.high, units, figure.dimension)
    rest = len(made.swings) - MOST_SWINGS
    return {
        "band": to_svg(_rule(house, made, units)),
        "likely": f"Likely {text}. {SENTENCE}" if explain else f"Likely {text}.",
        "matters": tuple(_swing(house, each, made, units) for each in made.swings[:MOST_SWINGS]),
        "smaller": f"and {rest} smaller" if rest > 0 else "",
    }


def _rule(house: Design, made: Band, units: Preset) -> Any:
    """The band on a graduated rule in the reader's unit; fuel bills as rings on that of the house."""
    figure = made.figure
    unit = units.shown(figure.dimension).unit
    low, high, at = (
        unit.from_si(each, figure.dimension.absolute) for each in (made.low, made.high, float(figure))
    )
    rings: tuple[tuple[float, str], ...] = ()
    if figure is house.losses.house.loss:
        evidence = [each.like_for_like for each in house.bills.bills.values()]
        rings = tuple((unit.from_si(float(each)), "fuel bills") for each in evidence if isfinite(float(each)))
    words = f"{show(figure, units)}, likely {show_range(made.low, made.high, units, figure.dimension)}"
    group = grouping(unit, units)
    return band_rule("Likely range", low, high, at, rings, width=RULE_WIDTH, words=words, group=group)


def _swing(house: Design, each: Swing, made: Band, units: Preset) -> Swinging:
    """One row of what matters most."""
    dimension = made.figure.dimension
    step = TEMPERATURE_DIFFERENCE if dimension.absolute else dimension
    alone = each.entries[0] if len(each.entries) == 1 else None
    known = ", ".join(filter(None, (half_range_text(each, units), each.known)))
    given = f"{show(alone, units)} {known}" if alone is not None else known
    place = house.names.path(alone) if alone is not None else ""
    opens = place if alone is not None and house.figures.get(place) is alone else ""
    return Swinging(
        each.words, given, f"± {show(each.swing, units, step)}", each.swing / made.swings[0].swing, opens,
        line_type(alone),
    )  # fmt: skip


def _entry_in_words(house: Design, path: str) -> Markup | None:
    """An entry of the job that is no number, with what was typed; None where there is none."""
    found: Any = house.job.raw
    for step in path.split("/"):
        found = found.get(step) if isinstance(found, Mapping) else None
    if isinstance(found, Mapping) and "is" in found:
        found = found["is"]
    if found is None or isinstance(found, Mapping | list):
        return None
    source = house.job.source
    where = f"{source.file_name}:{source.line_of(path)} {path}"
    return Markup(
        '<section class="working entry" data-path="{}"><header><div><h2>{}</h2>'
        '<p class="plain">An entry of the job</p></div></header>'
        '<ul class="notes"><li>typed: "{}"</li><li>where: {}</li></ul></section>'
    ).format(path, path.rpartition("/")[2].replace("_", " ").capitalize(), str(found), where)


def _nowhere(house: Design, path: str, near: list[str], units: Preset) -> Markup:
    """A sentence for a path that leads to no figure, and the nearest ones."""
    found = [(each, house.figures[each]) for each in near if each in house.figures]
    items = "".join(
        f"<li>{figure_button(show(figure, units), each, title)} {escape(title)}</li>"
        for each, figure in found
        for title in [house.names.title(figure)]
    )
    listed = f'<p class="plain">The nearest are:</p><ul class="notes">{items}</ul>' if items else ""
    said = "The job may have changed since. Open the figure on its sheet, or find it by its name."
    return Markup(
        '<section class="working nowhere"><header><div><h2>No such figure</h2></div></header>'
        f'<p role="status">There is no figure at “{escape(path)}” in this revision. {said}</p>'
        f"{listed}</section>"
    )

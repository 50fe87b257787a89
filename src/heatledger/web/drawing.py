"""From a page to its markup: the templates, the fragments of each sheet, and which of them have changed."""

from __future__ import annotations

from functools import cache
from importlib import import_module
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from heatledger import __version__
from heatledger.ledger.html_parts import standing_mark
from heatledger.ledger.sources import Standing
from heatledger.web.charts import picture
from heatledger.web.entry_markup import plainly
from heatledger.web.fragments import Fragment
from heatledger.web.marks import mark
from heatledger.web.page import Page

Parts = dict[str, str]
"""Markup by place: ``page:strip``, ``left:rooms``, ``right:working`` and so on."""
SIDES = ("left", "right")
MODULES = {
    "house": "house", "heat-loss": "heat_loss", "emitters": "emitters", "piping": "piping",
    "boiler-room": "boiler_room", "controls": "controls", "startup": "startup", "papers": "papers",
    "what-if": "what_if", "history": "history",
}  # fmt: skip
"""The module in ``sheets`` that says what stands on each sheet."""


@cache
def templates() -> Environment:
    """The templates; every text is escaped, and a name that is not there is an error."""
    made = Environment(
        loader=PackageLoader("heatledger.web", "templates"), autoescape=True, undefined=StrictUndefined,
        trim_blocks=True, lstrip_blocks=True,
    )  # fmt: skip
    made.globals.update(mark=mark, picture=picture, version=__version__)
    made.filters["plainly"] = plainly
    return made


def draw(template: str, **given: Any) -> Markup:
    """A template filled in."""
    return Markup(templates().get_template(template).render(**given))


def sheet_module(sheet: str) -> Any:
    """The module of a sheet."""
    return import_module(f"heatledger.web.sheets.{MODULES[sheet]}")


def drawn(page: Page, shown: Parts | None = None) -> Parts:
    """Every fragment of a page by its place, in order: strip, index, then left and right.

    Where the page is not ``ready``, what waits for the findings stays as it was ``shown``.
    """
    old = shown or {}
    found: Parts = {"page:strip": str(draw("strip.html", p=page))}
    for id in ("asks", "index"):
        key = f"page:{id}"
        keeps = not page.ready and key in old
        found[key] = old[key] if keeps else str(draw(f"{id}.html", p=page))
    module = sheet_module(page.sheet)
    for side in SIDES:
        for each in getattr(module, side)(page):
            key = f"{side}:{each.id}"
            keeps = each.waits and not page.ready and key in old
            found[key] = old[key] if keeps else str(fragment(each, page))
    found["page:foot"] = foot(page, found)
    return found


def foot(page: Page, parts: Parts) -> str:
    """The foot of the right page: the standings that it shows, and the revision."""
    return str(draw("foot_right.html", p=page, standings=standings_in(parts)))


def standings_in(parts: Parts) -> list[tuple[Markup, str]]:
    """Mark and word of each standing of a source that the right page shows, in their order."""
    right = "".join(parts_of(parts, "right"))
    shown = [each for each in Standing if f'<span class="standing">{each.value}</span>' in right]
    return [(Markup(standing_mark(each)), each.value) for each in shown]


def fragment(each: Fragment, page: Page) -> Markup:
    """One fragment as a section that can be swapped alone."""
    inner = draw(each.template, p=page, **each.data)
    css = f" {each.css}" if each.css else ""
    return Markup('<section class="frag{}" id="{}">{}</section>').format(css, each.id, inner)


def whole(page: Page, parts: Parts, token: str) -> Markup:
    """A whole page of a job from its parts; ``token`` names this drawing."""
    module = sheet_module(page.sheet)
    sides = {side: Markup("\n".join(parts_of(parts, side))) for side in SIDES}
    tops = {id: Markup(parts[f"page:{id}"]) for id in ("strip", "asks", "index", "foot")}
    return draw(
        "job.html", p=page, token=token, title=module.TITLE, css=getattr(module, "CSS", ""), **tops, **sides
    )


def parts_of(parts: Parts, side: str) -> list[str]:
    """The fragments of one side."""
    return [html for key, html in parts.items() if key.startswith(f"{side}:")]


def changed(old: Parts, new: Parts) -> Markup:
    """What must be swapped to come from one drawing of a page to another, each part for its target.

    Where the fragments of a side are not the same ones in the same order, the whole side is swapped.
    """
    out = []
    for side in ("page", *SIDES):
        before = [key for key in old if key.startswith(f"{side}:")]
        after = [key for key in new if key.startswith(f"{side}:")]
        if before == after or side == "page":
            out += [partial(key.partition(":")[2], new[key]) for key in after if old.get(key) != new[key]]
        else:
            inner = Markup("\n".join(new[key] for key in after))
            out.append(Markup(_SIDE).format(side, inner))
    return Markup("\n").join(out)


_SIDE = '<hx-partial hx-target="#{}-parts" hx-swap="innerMorph">{}</hx-partial>'


def partial(id: str, html: str) -> Markup:
    """A part of an answer that goes to the element of this id."""
    return Markup('<hx-partial hx-target="#{}" hx-swap="outerMorph">{}</hx-partial>').format(id, Markup(html))

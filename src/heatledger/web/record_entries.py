"""One entry of a record in the form its kind asks for: a field, a list to choose from, a long text."""

from __future__ import annotations

from markupsafe import Markup

from heatledger.job.fields import Field
from heatledger.job.text import Mapping, Scalar, walk
from heatledger.web.entry_markup import choices_at, fault_id
from heatledger.web.page import Page

REFERENCES = ("construction", "level", "room", "thermostat", "zone", "circulator", "beyond")
"""Keys that name another thing of the job."""
LISTED = ("tube", "catalog", "of", "through")
"""Keys whose field offers names as one types."""
LONG = ("notes",)
PLURAL = {"constructions": "construction", "levels": "level", "rooms": "room", "unheated": "unheated space",
          "neighbors": "neighbor", "surfaces": "surface", "openings": "window or door", "emitters": "emitter",
          "zones": "zone", "circuits": "circuit", "runs": "run", "circulators": "circulator", "bills": "bill",
          "expectations": "expectation", "what-ifs": "what-if"}  # fmt: skip
"""What one thing of each map is called."""


def entry_for(page: Page, path: str, field: Field, words: str = "", place: str = "record") -> Markup:
    """The entry at a path by the kind of its field; ``place`` tells it from the same entry elsewhere."""
    made = _entry(page, path, field, words or field.words)
    if path not in page.wrong:
        return made
    # The same entry may stand on the left page too, and an id stands once on a page.
    return Markup(str(made).replace(f'"{fault_id(path)}"', f'"{place}-{fault_id(path)}"'))


def _entry(page: Page, path: str, field: Field, words: str) -> Markup:
    if field.key in LONG:
        return long_text(page, path, words)
    if field.choices or field.kind == "yes-no":
        return page.pick(path, words)
    if field.key in REFERENCES and choices_at(path, page.job):
        return page.pick(path, words)
    made = page.entry(path, words, css="words" if field.kind == "text" else "")
    if field.key in LISTED:
        return offering(made, field.key)
    return made


def offering(made: Markup, of: str) -> Markup:
    """The field of an entry, offering names of a kind as one types."""
    return Markup('<input data-offer="{}" ').format(of) + Markup(str(made).removeprefix("<input "))


def long_text(page: Page, path: str, words: str) -> Markup:
    """An entry of several lines."""
    wrong, typed = page.wrong.get(path), page.at(path).typed
    shown = wrong.typed if wrong else typed
    return Markup(
        '<textarea class="in area" data-entry="{}" data-kept="{}" aria-label="{}" rows="3">{}</textarea>'
    ).format(path, shown, words, shown)


def words_of(path: str, field: Field) -> str:
    """What stands before an entry."""
    return field.words[:1].upper() + field.words[1:]


def one_of(path: str) -> str:
    """What one thing of the map at a path is called."""
    last = path.rpartition("/")[2]
    return PLURAL.get(last, last.rstrip("s"))


def name_of(page: Page, path: str) -> str:
    """The name of a thing as typed, else its id in words."""
    node = walk(page.job.source.base, path)
    named = node.entries.get("name") if isinstance(node, Mapping) else None
    if isinstance(named, Scalar) and named.text:
        return named.text
    steps = path.split("/")
    if len(steps) == 4 and steps[2] == "runs" and steps[3] in page.job.system.emitters:
        return page.job.system.emitters[steps[3]].name
    return in_words(steps[-1])


def in_words(id: str) -> str:
    """An id as words: ``north-wall`` is North wall."""
    said = id.replace("-", " ").replace("_", " ").strip()
    return said[:1].upper() + said[1:]

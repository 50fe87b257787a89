"""Finding a line by its address, and figures, rooms, entries, questions and papers by their words."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from urllib.parse import quote
from weakref import WeakKeyDictionary

from heatledger.job.text import Listing, Mapping, Node, Scalar
from heatledger.ledger.figures import Leaf
from heatledger.ledger.formulas import words_of
from heatledger.ledger.show import show
from heatledger.papers.findings_by_sheet import SHEETS as FINDING_SHEETS
from heatledger.papers.findings_by_sheet import sheet_of as sheet_of_finding
from heatledger.papers.printing import Printing
from heatledger.steps.design import Design
from heatledger.web.addresses import Callout, last_lines, parsed, path_at, sheet_key, sheet_of
from heatledger.web.page import Page
from heatledger.web.paper_store import SURVEY, due
from heatledger.web.states import SHEETS

MOST = 20
SHARES = {"sheet": 2, "thing": 6, "figure": 8, "entry": 6, "question": 4, "paper": 4}
"""How many of each kind are shown where all kinds have more."""
TITLES = {
    "line": "Lines", "thing": "Rooms and things", "figure": "Figures", "entry": "Entries",
    "question": "Open questions", "paper": "Papers", "sheet": "Sheets",
}  # fmt: skip
SHEET_OF = {
    "emitters": "emitters", "zones": "piping", "circuits": "piping", "plant": "boiler-room",
    "controls": "controls", "readings": "startup", "what-ifs": "what-if", "bills": "heat-loss",
}  # fmt: skip
"""The sheet on which what stands under a head of the job is changed; House for all others."""
SAME = {"pump": "circulator", "pumps": "circulators", "vessel": "tank", "flat": "apartment"}
"""Words of the trade that mean one thing; the second is the one that titles are found by."""
THINGS = ("rooms", "unheated", "neighbors", "levels", "constructions", "emitters", "zones", "circuits")
LONGEST = 80


@dataclass(frozen=True)
class Hit:
    """One thing found: what it is called, what is said beside it, and where it leads."""

    words: str
    note: str
    url: str


@dataclass(frozen=True)
class Answer:
    """What was found, by kind, in words; ``said`` where there is nothing, ``near`` other spellings to try."""

    groups: tuple[tuple[str, tuple[Hit, ...]], ...] = ()
    said: str = ""
    near: tuple[str, ...] = ()


@dataclass(frozen=True)
class Place:
    """Something that can be found: its kind, what it is called, the words it is found by, its path."""

    kind: str
    title: str
    words: tuple[str, ...]
    path: str


def find(page: Page, asked: str, printing: Callable[[], Printing | None]) -> Answer:
    """What a reader means by ``asked``. ``printing`` numbers the lines, which is done only for an address."""
    asked = asked.strip()[:LONGEST]
    if not asked:
        return Answer()
    address = parsed(asked)
    if address is not None:
        return _line(page, address, printing())
    places = [*_index(page.house), *_of_page(page)]
    tokens = _tokens(asked)
    found = _matching(places, tokens)
    if not found:
        near = _respelled(places, tokens)
        return Answer(said=f"Nothing here is called “{asked}”.", near=near)
    return Answer(_grouped(page, found))


def _line(page: Page, address: Callout, printing: Printing | None) -> Answer:
    sheet, line = address
    if printing is None:
        return Answer(said="The lines of this revision are still being numbered. Ask again in a moment.")
    path = path_at(printing, address)
    if path:
        hit = _figure_hit(page, path, f"Sheet {sheet}, line {line}")
        return Answer(((TITLES["line"], (hit,)),))
    last = last_lines(printing).get(sheet, 0)
    if not last:
        return Answer(said=f"Sheet {sheet} has no lines in this revision.")
    if line <= last:
        said = "is an inner step of a working: it has no place of its own and opens inside that working."
        return Answer(said=f"Line {line} of sheet {sheet} {said}")
    return Answer(said=f"Sheet {sheet} has lines 1 to {last} in this revision.", near=(f"{sheet}·{last}",))


def _figure_hit(page: Page, path: str, note: str = "") -> Hit:
    house = page.house
    figure = house.figures[path]
    shown = "no value yet" if figure.is_missing else show(figure, page.units)
    said = ", ".join(each for each in (shown, note) if each)
    return Hit(
        house.names.title(figure), said, page.url(sheet_key_of(house, path), open=path, pick="", view="")
    )


def sheet_key_of(house: Design, path: str) -> str:
    """The sheet on which the figure at a path is opened."""
    figure = house.figures.get(path)
    if figure is None or isinstance(figure.origin, Leaf):
        return SHEET_OF.get(path.partition("/")[0], "house")
    return sheet_key(sheet_of(house, figure) or 1)


_INDICES: WeakKeyDictionary[Design, tuple[Place, ...]] = WeakKeyDictionary()


def _index(house: Design) -> tuple[Place, ...]:
    """All that a design and its job hold to be found; made once for a design."""
    made = _INDICES.get(house)
    if made is None:
        made = _INDICES[house] = (*_things(house), *_figures(house), *_entries(house))
    return made


def _things(house: Design) -> Iterator[Place]:
    base = house.job.source.base.entries
    for home in THINGS:
        node = base.get(home)
        for id, each in (node.entries if isinstance(node, Mapping) else {}).items():
            name = each.entries.get("name") if isinstance(each, Mapping) else None
            title = (
                name.text
                if isinstance(name, Scalar) and name.text
                else words_of(id.replace("-", " ")).capitalize()
            )
            yield Place("thing", title, _tokens(f"{title} {home}"), f"{home}/{id}")


def _figures(house: Design) -> Iterator[Place]:
    names = house.names
    for path, figure in house.results.items():
        title = names.title(figure)
        yield Place("figure", title, _tokens(f"{title} {path}"), path)


def _entries(house: Design) -> Iterator[Place]:
    names, things = house.names, {each.path: each.title for each in _things(house)}
    for path, text in _scalars(house.job.source.base):
        figure = house.figures.get(path)
        title = names.title(figure) if figure is not None else _in_words(path, things)
        yield Place("entry", f"{title}: {text}", _tokens(f"{title} {path} {text}"), path)


def _scalars(node: Node, path: str = "") -> Iterator[tuple[str, str]]:
    """Every value that was typed with its path; how well it is known belongs to it."""
    if isinstance(node, Mapping):
        if "is" in node.entries and isinstance(node.entries["is"], Scalar):
            yield path, node.entries["is"].text
            return
        for key, each in node.entries.items():
            if key not in ("format", "known", "because", "within", "name"):
                yield from _scalars(each, f"{path}/{key}" if path else key)
    elif isinstance(node, Listing):
        for i, each in enumerate(node.items):
            yield from _scalars(each, f"{path}/{i}")
    elif node.text:
        yield path, node.text


def _in_words(path: str, things: dict[str, str]) -> str:
    """The words of a key, and the thing that it belongs to: ``Level, Kitchen``."""
    *before, key = path.split("/")
    words = [words_of(key.replace("-", " ")).capitalize()]
    if before[2:]:
        words.append(words_of(before[-1].replace("-", " ")))
    if before:
        words.append(things.get("/".join(before[:2]), words_of(before[0].replace("-", " "))))
    return ", ".join(words)


def _of_page(page: Page) -> Iterator[Place]:
    """Open questions and papers, which are few."""
    for each in page.house.findings if page.ready else ():
        if each.decided is None:
            sheet = FINDING_SHEETS[sheet_of_finding(each.id)]
            yield Place(
                "question", each.what, _tokens(f"{each.what} {each.id} {sheet}"), f"{each.id}@{each.where}"
            )
    papers = [*((each.name, each.words, each.says) for each in due(page.house)),
              (SURVEY, "Survey sheet", "a blank to take to the house")]  # fmt: skip
    for key, words in (*SHEETS, ("what-if", "What if"), ("history", "History")):
        yield Place("sheet", words, _tokens(f"{words} sheet"), key)
    for name, words, says in papers:
        yield Place("paper", words, _tokens(f"{words} {says} paper print"), name)


def _tokens(text: str) -> tuple[str, ...]:
    plain = unicodedata.normalize("NFKD", text.casefold().replace("’", ""))
    plain = "".join(each for each in plain if not unicodedata.combining(each))
    return tuple(SAME.get(each, each) for each in re.findall(r"[0-9]+(?:[.][0-9]+)?|[a-z0-9]+", plain))


def _matching(places: list[Place], tokens: tuple[str, ...]) -> list[Place]:
    """What has a word that begins so for each word asked for; the closest first."""
    if not tokens:
        return []
    found = []
    for i, each in enumerate(places):
        if all(any(word.startswith(token) for word in each.words) for token in tokens):
            own = _tokens(each.title)
            whole = sum(token not in each.words for token in tokens)
            outside = sum(not any(word.startswith(token) for word in own) for token in tokens)
            far = each.path.count("/") - 2 * each.path.endswith("/loss")
            found.append(((outside, whole, far, len(own), i), each))
    return [each for _, each in sorted(found, key=lambda pair: pair[0])]


def _respelled(places: list[Place], tokens: tuple[str, ...]) -> tuple[str, ...]:
    """What was asked for in words that are there and are spelled most like it."""
    known = sorted({word for each in places for word in each.words if not word.isdigit()})
    choices = [
        [token] if any(word.startswith(token) for word in known) else get_close_matches(token, known, 3, 0.7)
        for token in tokens
    ]
    if not choices or not all(choices):
        return ()
    first = " ".join(each[0] for each in choices)
    others = [
        " ".join(one if each is some else each[0] for each in choices) for some in choices for one in some[1:]
    ]
    made = dict.fromkeys((first, *others))
    return tuple(each for each in made if _matching(places, _tokens(each)))[:3]


def _grouped(page: Page, found: list[Place]) -> tuple[tuple[str, tuple[Hit, ...]], ...]:
    """By kind, at most twenty in all: what one kind leaves of its share goes to the others."""
    by = {kind: [each for each in found if each.kind == kind] for kind in SHARES}
    shown = {kind: some[: SHARES[kind]] for kind, some in by.items()}
    while sum(map(len, shown.values())) > MOST:
        longest = max(shown, key=lambda kind: len(shown[kind]))
        shown[longest] = shown[longest][:-1]
    for kind, some in by.items():
        room = MOST - sum(map(len, shown.values()))
        shown[kind] = some[: len(shown[kind]) + room]
    return tuple(
        (TITLES[kind], tuple(_hit(page, each) for each in some)) for kind, some in shown.items() if some
    )


def _hit(page: Page, each: Place) -> Hit:
    path = each.path
    if each.kind == "figure":
        return _figure_hit(page, path)
    if each.kind == "question":
        sheet = sheet_of_finding(path.partition("@")[0])
        mark = f"#ask-{path.replace('@', '-').replace('/', '-')}"
        return Hit(
            each.title, FINDING_SHEETS[sheet], page.url(sheet_key(sheet), open="", pick="", view="") + mark
        )
    if each.kind == "sheet":
        return Hit(each.title, "", page.url(path, open="", pick="", view=""))
    if each.kind == "paper":
        return Hit(each.title, "", page.url("papers", open="", pick=f"papers/{path}", view=""))
    home, *rest = path.split("/")
    sheet_name = SHEET_OF.get(home, "house")
    if each.kind == "thing":
        return Hit(each.title, home.replace("-", " "), page.url(sheet_name, open="", pick=path, view=""))
    thing = f"{home}/{rest[0]}" if rest else home
    said = dict(SHEETS).get(sheet_name, "What if")
    return Hit(each.title, said, page.url(sheet_name, open="", pick=thing, view="") + f"#entry={quote(path)}")

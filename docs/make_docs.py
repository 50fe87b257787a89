"""Write the pages that are made from the code: formulas, words, sources.

    python docs/make_docs.py            write them, and say which changed

``pages()`` gives every page as text; a test holds the files to it.
"""

from __future__ import annotations

import re
import sys
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules

import heatledger.physics
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.formulas import FORMULAS, Formula, Parameter, words_of
from heatledger.ledger.in_words import formula_in_words
from heatledger.ledger.layout import text_of
from heatledger.ledger.presets import METRIC, US, Preset
from heatledger.ledger.show import number_text
from heatledger.ledger.sources import Citation, bibliography
from heatledger.ledger.symbols import Const, walk

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))

from made_from_job import catalog_page, job_file_page  # noqa: E402

POWERS = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
MADE = "<!-- Made by docs/make_docs.py from the code: change it there, then run make docs. -->\n"


def subjects() -> dict[str, list[Formula]]:
    """The formulas of physics by module, both in the order they are written."""
    names = sorted(each.name for each in iter_modules(heatledger.physics.__path__))
    for each in names:
        import_module(f"heatledger.physics.{each}")
    found: dict[str, list[Formula]] = {each: [] for each in names}
    for formula in FORMULAS.values():
        if formula.module.startswith("heatledger.physics."):
            found[formula.module.rsplit(".", 1)[1]].append(formula)
    return {name: rows for name, rows in found.items() if rows}


def unit(dimension: Dimension, reader: Preset) -> str:
    """The unit a reader sees; a dash for a plain number."""
    text = reader.shown(dimension).unit.text
    return "plain number" if text == "1" else text


def cited(citation: Citation) -> str:
    """Source, place and standing in one line."""
    key = f"[{citation.key}](../sources.md#{citation.key.lower()})" if citation.key else ""
    place = ", ".join(each for each in (key, citation.place) if each)
    return f"{place or 'no source'} ({citation.standing.value})"


def paragraphs(doc: str) -> list[str]:
    """A docstring's paragraphs as single lines, without its example."""
    blocks = [" ".join(each.split()) for each in doc.strip().split("\n\n")]
    return [each for each in blocks if each and not each.startswith(">>>")]


def explained(formula: Formula) -> list[str]:
    """What the docstring says beyond its first line; its two fixed parts as a list."""
    lines: list[str] = []
    for block in paragraphs(formula.doc)[1:]:
        before, valid, rest = block.partition("Valid for:")
        limits, leaves, gaps = rest.partition("Leaves out:")
        if before.strip():
            lines += [before.strip(), ""]
        if valid:
            lines += [f"- **Valid for:** {limits.strip()}"]
        if leaves:
            lines += [f"- **Leaves out:** {gaps.strip()}"]
    return lines


def in_words(formula: Formula) -> str:
    """The formula on one line; whole powers raised, as on paper."""
    line = text_of(formula_in_words(formula))
    return re.sub(r" ?\^(\d+)", lambda power: power[1].translate(POWERS), line)


def constants(formula: Formula) -> list[Const]:
    """The constants of a formula, each once, in the order they are met."""
    met = {id(each): each for each in walk(formula.expression) if isinstance(each, Const)}
    return list(met.values())


def holds(formula: Formula, each: Parameter) -> str:
    """The range a formula holds in for one input, in US units."""
    if each.name not in formula.valid:
        return ""
    shown = US.shown(each.dimension).unit
    low, high = (shown.from_si(end, each.dimension.absolute) for end in formula.valid[each.name])
    ends = " to ".join(number_text(end, 0 if abs(end) >= 100 else 2) for end in (low, high))
    return f"{ends} {'' if shown.text == '1' else shown.text}".strip()


def section(formula: Formula) -> str:
    """One formula's part of its page."""
    lines = [f"## {formula.title}", "", formula.plain_line, ""]
    lines += [f"> {formula.title} = {in_words(formula)}", ""]
    lines += [
        *explained(formula),
        "",
        "| goes in | is a | US | metric | holds for |",
        "|---|---|---|---|---|",
    ]
    for each in formula.parameters:
        words = each.words + (" (any number of them)" if each.many else "")
        us, metric = unit(each.dimension, US), unit(each.dimension, METRIC)
        lines.append(f"| {words} | {each.dimension.name} | {us} | {metric} | {holds(formula, each)} |")
    us, metric = unit(formula.dimension, US), unit(formula.dimension, METRIC)
    lines += [f"| **comes out** | {formula.dimension.name} | {us} | {metric} | |", ""]
    for one in constants(formula):
        value = f"{one.value:g} {one.unit.text}".removesuffix(" 1")
        lines += [f"- {one.name or 'constant'}: {value}. {cited(one.citation)}"]
    if formula.by_hand:
        hand = formula.by_hand
        short = in_words(hand.formula)
        lines += [f"- **By hand:** {short}. It neglects {hand.neglects}. {cited(hand.formula.citation)}"]
    lines += [f"- **Source:** {cited(formula.citation)}", f"- In code: `{formula.module}.{formula.name}`", ""]
    return "\n".join(lines)


def formula_pages() -> dict[str, str]:
    """One page a subject, and their index."""
    index = [MADE, "# Formulas by subject", ""]
    found = {}
    for name, formulas in subjects().items():
        doc = paragraphs(import_module(f"heatledger.physics.{name}").__doc__ or "")
        title = words_of(name).capitalize()
        body = "\n".join(section(each) for each in formulas)
        found[f"look-up/formulas/{name}.md"] = f"{MADE}\n# {title}\n\n" + "\n\n".join(doc) + f"\n\n{body}"
        links = ", ".join(each.title for each in formulas)
        index += [f"- [{title}]({name}.md): {links}"]
    found["look-up/formulas/index.md"] = "\n".join([*index, ""])
    return found


def words_page() -> str:
    """Every word that stands for an input of a formula, what kind of quantity it is, and its units."""
    used: set[tuple[str, str, str, str]] = set()
    for formulas in subjects().values():
        for formula in formulas:
            for each in formula.parameters:
                kind = each.dimension
                used.add((each.words, kind.name, unit(kind, US), unit(kind, METRIC)))
    lines = [
        MADE,
        "# Words",
        "",
        "The words of the workings. Code, screens and papers use the same ones.",
        "",
    ]
    lines += ["| word | is a | US | metric |", "|---|---|---|---|"]
    lines += [f"| {' | '.join(row)} |" for row in sorted(used, key=lambda row: (row[0].lower(), row))]
    return "\n".join([*lines, ""])


def sources_page() -> str:
    """The bibliography, and what the standings mean."""
    lines = [MADE, "# Sources", "", "Every number names a source, the place in it, and its standing:", ""]
    lines += [
        "- **read there**: the place was read for this program;",
        "- **second hand**: read in a work that cites it;",
        "- **from memory**: recalled, and to be checked before a signed document relies on it;",
        "- **common practice**: trade custom without a source;",
        "- **derived**: worked out here from what is cited beside it;",
        "- **judgment**: chosen here because sources are silent or differ; it can be changed;",
        "- **yours**: a row of your own; **invented**: made up for a demo.",
        "",
    ]
    for key, each in sorted(bibliography().items()):
        edition = f", {each.edition}" if each.edition else ""
        use = each.used_for.strip().rstrip(".")
        lines += [f"## {key}", "", f"{each.title}{edition}. Used for: {use}.", ""]
    return "\n".join(lines)


def pages() -> dict[str, str]:
    """Every page that is made, by its path below docs/."""
    return {
        **formula_pages(),
        "look-up/words.md": words_page(),
        "look-up/sources.md": sources_page(),
        "look-up/job-file.md": job_file_page(MADE),
        "look-up/catalog.md": catalog_page(MADE),
    }


def stale() -> list[Path]:
    """Pages of formulas that no module stands behind any more."""
    wanted = set(pages())
    folder = HERE / "look-up" / "formulas"
    return [each for each in folder.glob("*.md") if each.relative_to(HERE).as_posix() not in wanted]


def main() -> int:
    """Write what changed, remove what is stale, and say so."""
    for name, text in pages().items():
        path = HERE / name
        if not path.exists() or path.read_text(encoding="utf-8") != text:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
            print(f"written: docs/{name}")
    for path in stale():
        path.unlink()
        print(f"removed: docs/{path.relative_to(HERE).as_posix()}")
    return 0


if __name__ == "__main__":
    sys.exit(main())

"""From plain data to a PDF: one template, one JSON text, the same bytes every time."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from heatledger.ledger.sources import Standing
from heatledger.papers.printable import FONTS, drawn_alone, made_printable

if TYPE_CHECKING:
    import typst

SHEETS = {"letter": "us-letter", "a4": "a4"}
HERE = Path(__file__).parent
EMPTY = "empty.typ"
KEPT_FOR = 10
"""Papers after which the compiler drops what it kept of one."""
MUCH = 200_000
"""Letters of data from which a paper is worth forgetting."""


class PaperError(Exception):
    """A paper could not be made: what the compiler said, in one text."""


@dataclass(frozen=True)
class Prepared:
    """A paper as the compiler takes it: a template and texts by name. What it was made of may be let go."""

    template: str
    inputs: dict[str, str]


def compile_paper(template: str, data: Mapping[str, Any], paper: str = "letter") -> bytes:
    """The PDF of ``data`` set by ``template`` (a file name in this package).

    ``paper`` is ``letter`` or ``a4``. The result is archival and tagged (PDF/A-3a, PDF/UA-1), carries its
    own typefaces and no date, so that one input gives one run of bytes. Texts reach the template as JSON,
    never as markup. Raises PaperError on any error or warning (a missing face is only a warning).
    """
    return compiled(prepared(template, data, paper))


def prepared(template: str, data: Mapping[str, Any], paper: str = "letter") -> Prepared:
    """The texts that ``template`` takes of ``data``; raises PaperError on a paper size that there is not."""
    if paper not in SHEETS:
        raise PaperError(f"no paper size {paper!r}; choose one of {', '.join(SHEETS)}")
    inputs = {
        "data": printable_json({**data, "sheet_size": SHEETS[paper]}),
        "standings": json.dumps({each.name.lower(): each.value for each in Standing}),
        "answered": json.dumps(data.get("answered")),
        "marks": json.dumps(sorted(marks_in(data))),
        "grow": str(data.get("grow", 1.0)),
    }
    return Prepared(template, inputs)


_ANY_BUT_A_QUOTE = re.compile(r'\\[^"]')


def printable_json(data: dict[str, Any]) -> str:
    """The data as JSON with every text made printable.

    That is done on the whole text at once: no letter joins one across a quote. Where JSON had to write a
    letter out, text by text.
    """
    text = json.dumps(data, ensure_ascii=False)
    if _ANY_BUT_A_QUOTE.search(text):
        return json.dumps(made_printable(data), ensure_ascii=False)
    return drawn_alone(text)


def compiled(paper: Prepared) -> bytes:
    """The PDF of a prepared paper; raises PaperError on any error or warning.

    The compiler takes one paper at a time, always on the same thread, so that it finds again the memory it
    has let go. The next paper may be filled meanwhile.
    """
    return SETTER.submit(_compiled, paper).result()


SETTER = ThreadPoolExecutor(1, "setter")
"""The thread on which all papers are set.

It is there from the start (and begins with its first paper): one made at the first call could be made twice
by two papers that come at once, and the compiler bears no two.
"""


def _compiled(paper: Prepared) -> bytes:
    made = _set(paper, format="pdf", pdf_standards=["a-3a", "ua-1"])
    if not isinstance(made, bytes):
        raise PaperError(f"{paper.template}: the compiler gave no PDF")
    return made


def pictures(paper: Prepared, ppi: float) -> list[bytes]:
    """The pages of a prepared paper as PNG, ``ppi`` dots to the inch; raises PaperError as ``compiled``."""
    return SETTER.submit(_pictures, paper, ppi).result()


def _pictures(paper: Prepared, ppi: float) -> list[bytes]:
    made = _set(paper, format="png", ppi=ppi)
    return made if isinstance(made, list) else [made]


def _set(paper: Prepared, **how: Any) -> Any:
    """What the compiler makes of a paper; on its one thread only."""
    import typst

    compiler, template = _compiler(), paper.template
    large = len(paper.inputs["data"]) > MUCH
    if large:
        _forget(compiler)
    try:
        made, warnings = compiler.compile_with_warnings(
            input=str(HERE / template), sys_inputs=paper.inputs, timestamp=0, **how
        )
    except typst.TypstError as error:
        raise PaperError(f"{template}: {error}") from error
    finally:
        if large:
            _forget(compiler)
    if warnings:
        raise PaperError(f"{template}: " + "; ".join(str(each) for each in warnings))
    return made


@cache
def _compiler() -> typst.Compiler:
    """One compiler for all papers: it reads the typefaces once."""
    import typst  # 12 ms: only when a paper is made

    return typst.Compiler(
        str(HERE / EMPTY), root=str(HERE), font_paths=[str(FONTS)], ignore_system_fonts=True
    )


def _forget(compiler: typst.Compiler) -> None:
    """Let the compiler drop what it keeps of papers: it does so after so many others, if empty ones.

    Without this each paper of forty pages would leave 150 MB behind, and stand on top of those before it.
    """
    for _ in range(KEPT_FOR + 1):
        compiler.compile(input=str(HERE / EMPTY), format="svg")


def marks_in(data: Any) -> set[str]:
    """The standings and line types that a paper bears, for the legend in its foot."""
    found: set[str] = set()
    waiting = [data]
    while waiting:
        each = waiting.pop()
        if isinstance(each, dict):
            found.update(each.get("standings", ()))
            found.update(said for name in ("standing", "known") if (said := each.get(name)))
            if each.get("invented"):
                found.add(Standing.INVENTED.value)
            waiting += [inner for inner in each.values() if isinstance(inner, dict | list)]
        else:
            waiting += [inner for inner in each if isinstance(inner, dict | list)]
    return found


def write_paper(pdf: bytes, folder: str | Path, name: str) -> Path:
    """Write the PDF as ``name``.pdf into ``folder``, which is made if need be; gives the path written."""
    target = Path(folder)
    target.mkdir(parents=True, exist_ok=True)
    path = target / f"{name}.pdf"
    path.write_bytes(pdf)
    return path

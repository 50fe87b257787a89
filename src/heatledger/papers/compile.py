"""From plain data to a PDF: one template, one JSON text, the same bytes every time."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING, Any

from heatledger.ledger.sources import Standing
from heatledger.papers.printable import FONTS, made_printable

if TYPE_CHECKING:
    import typst

SHEETS = {"letter": "us-letter", "a4": "a4"}
HERE = Path(__file__).parent
EMPTY = "empty.typ"
_ONE_AT_A_TIME = Lock()
"""The compiler takes one paper at a time; the next one may be filled meanwhile, on another thread."""
KEPT_FOR = 10
"""Papers after which the compiler drops what it kept of one."""
MUCH = 200_000
"""Letters of data from which a paper is worth forgetting."""


class PaperError(Exception):
    """A paper could not be made: what the compiler said, in one text."""


def compile_paper(template: str, data: Mapping[str, Any], paper: str = "letter") -> bytes:
    """The PDF of ``data`` set by ``template`` (a file name in this package).

    ``paper`` is ``letter`` or ``a4``. The result is archival and tagged (PDF/A-3a, PDF/UA-1), carries its
    own typefaces and no date, so that one input gives one run of bytes. Texts reach the template as JSON,
    never as markup. Raises PaperError on any error or warning (a missing face is only a warning).
    """
    import typst

    if paper not in SHEETS:
        raise PaperError(f"no paper size {paper!r}; choose one of {', '.join(SHEETS)}")
    standings = json.dumps({each.name.lower(): each.value for each in Standing})
    answered, marks = json.dumps(data.get("answered")), json.dumps(sorted(marks_in(data)))
    content = json.dumps({**made_printable(data), "sheet_size": SHEETS[paper]}, ensure_ascii=False)
    with _ONE_AT_A_TIME:
        compiler = _compiler()
        try:
            pdf, warnings = compiler.compile_with_warnings(
                input=str(HERE / template),
                format="pdf",
                sys_inputs={"data": content, "standings": standings, "answered": answered, "marks": marks},
                pdf_standards=["a-3a", "ua-1"],
                timestamp=0,
            )
        except typst.TypstError as error:
            raise PaperError(f"{template}: {error}") from error
        finally:
            if len(content) > MUCH:
                _forget(compiler)
    if warnings:
        raise PaperError(f"{template}: " + "; ".join(str(each) for each in warnings))
    if not isinstance(pdf, bytes):
        raise PaperError(f"{template}: the compiler gave no PDF")
    return pdf


@cache
def _compiler() -> typst.Compiler:
    """One compiler for all papers: it reads the typefaces once."""
    import typst  # 12 ms: only when a paper is made

    return typst.Compiler(
        str(HERE / EMPTY), root=str(HERE), font_paths=[str(FONTS)], ignore_system_fonts=True
    )


def _forget(compiler: typst.Compiler) -> None:
    """Let the compiler drop what it keeps of a large paper: it does so after so many others, if empty ones.

    Without this each paper of forty pages would leave 150 MB behind.
    """
    for _ in range(KEPT_FOR + 1):
        compiler.compile(input=str(HERE / EMPTY), format="svg")


def marks_in(data: Any) -> set[str]:
    """The standings and line types that a paper bears, for the legend in its foot."""
    if isinstance(data, list):
        return set().union(*map(marks_in, data))
    if not isinstance(data, dict):
        return set()
    found = {each for name in ("standing", "known") if isinstance(each := data.get(name), str) and each}
    found |= set(data.get("standings", ()))
    if data.get("invented"):
        found.add(Standing.INVENTED.value)
    return found.union(*map(marks_in, data.values()))


def write_paper(pdf: bytes, folder: str | Path, name: str) -> Path:
    """Write the PDF as ``name``.pdf into ``folder``, which is made if need be; gives the path written."""
    target = Path(folder)
    target.mkdir(parents=True, exist_ok=True)
    path = target / f"{name}.pdf"
    path.write_bytes(pdf)
    return path

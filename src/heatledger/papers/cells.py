"""A table for a spreadsheet, as CSV and as a workbook, in which no text can act as a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from heatledger.papers.heat_loss_data import Head

CellValue = str | float | None
LONGEST = 32_000  # a cell of a workbook holds 32,767 signs
_MADE = datetime(2000, 1, 1, tzinfo=UTC)  # so that one table gives one run of bytes
_ACTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")


@dataclass(frozen=True)
class TableFile:
    """A table with what is said above it. Columns are (head, width in signs); None is a blank cell."""

    name: str
    head: Head
    columns: Sequence[tuple[str, int]]
    rows: Iterable[Sequence[CellValue]]


def safe(text: str) -> str:
    """The text as a cell that cannot be taken for a formula: an apostrophe before what might act."""
    seen = text.lstrip(" \u00a0\u202f\u3000")
    return f"'{text}" if seen.startswith(_ACTS) else text


def csv_of(table: TableFile) -> bytes:
    """The table as CSV in UTF-8 with its mark, which spreadsheets need to read ″ and ° right."""
    out = io.StringIO(newline="")
    rows = csv.writer(out, quoting=csv.QUOTE_MINIMAL, lineterminator="\r\n")
    for said in _said(table.head):
        rows.writerow([safe(said)])
    rows.writerow([safe(words) for words, _ in table.columns])
    for each in table.rows:
        rows.writerow([safe(_plain(one)) if isinstance(one, str) else one for one in each])
    return out.getvalue().encode("utf-8-sig")


def workbook_of(table: TableFile) -> bytes:
    """The table as XLSX; every text is written as text, so that none is read as formula or address."""
    import xlsxwriter  # type: ignore[import-untyped]  # 20 ms: only when a table is made

    out = io.BytesIO()
    options = {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False,
               "strings_to_numbers": False}  # fmt: skip
    book = xlsxwriter.Workbook(out, options)
    book.set_properties({"title": table.head.title, "created": _MADE})
    bold, top = book.add_format({"bold": True}), book.add_format({"bold": True, "bottom": 1})
    page = book.add_worksheet(table.name)
    said = _said(table.head)
    for row, words in enumerate(said):
        page.write_string(row, 0, words[:LONGEST], bold)
    first = len(said)
    for column, (words, width) in enumerate(table.columns):
        page.write_string(first, column, words, top)
        page.set_column(column, column, width)
    for row, cells in enumerate(table.rows, first + 1):
        for column, each in enumerate(cells):
            if isinstance(each, str):
                if text := _plain(each)[:LONGEST]:
                    page.write_string(row, column, text)
            elif each is not None:
                page.write_number(row, column, each)
    page.freeze_panes(first + 1, 0)
    book.close()
    return out.getvalue()


def _said(head: Head) -> list[str]:
    """Who, what, when; a draft says so in its first line."""
    said = (
        head.draft, head.invented, f"{head.title}: {head.job}", head.address, head.date, head.preparer,
        head.revision, head.version,
    )  # fmt: skip
    return [_plain(each) for each in said if each]


def _plain(text: str) -> str:
    """Text without the control signs that no spreadsheet can hold, except those that mark its start."""
    return "".join(each for each in text if each >= " " or each in "\t\r\n")

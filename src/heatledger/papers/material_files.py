"""The material list for a spreadsheet: CSV and XLSX in which no text can act as a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from datetime import UTC, datetime

from heatledger.papers.heat_loss_data import Head
from heatledger.papers.material_plant import PIECES, MaterialLine

COLUMNS = ("Group", "Item", "Size", "Quantity", "Unit", "Where", "Note", "Address")
WIDTHS = (18, 30, 22, 10, 8, 26, 40, 10)
LONGEST = 32_000  # a cell of a workbook holds 32,767 signs
_MADE = datetime(2000, 1, 1, tzinfo=UTC)  # so that one list gives one run of bytes
_ACTS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


def safe(text: str) -> str:
    """The text as a cell that cannot be taken for a formula: an apostrophe before what might act."""
    seen = text.lstrip(" \u00a0\u202f\u3000")
    return f"'{text}" if seen.startswith(_ACTS) else text


def as_csv(head: Head, lines: Iterable[MaterialLine]) -> bytes:
    """The list as CSV in UTF-8 with its mark, which spreadsheets need to read ″ and ° right."""
    out = io.StringIO(newline="")
    rows = csv.writer(out, quoting=csv.QUOTE_MINIMAL, lineterminator="\r\n")
    for said in _head(head):
        rows.writerow([safe(said)])
    rows.writerow(COLUMNS)
    for each in lines:
        rows.writerow([safe(one) if isinstance(one, str) else one for one in _cells(each)])
    return out.getvalue().encode("utf-8-sig")


def as_workbook(head: Head, lines: Iterable[MaterialLine]) -> bytes:
    """The list as XLSX; every text is written as text, so that none is read as formula or address."""
    import xlsxwriter  # type: ignore[import-untyped]  # 20 ms: only when a list is made

    out = io.BytesIO()
    options = {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False,
               "strings_to_numbers": False}  # fmt: skip
    book = xlsxwriter.Workbook(out, options)
    book.set_properties({"title": head.title, "created": _MADE})
    bold, top = book.add_format({"bold": True}), book.add_format({"bold": True, "bottom": 1})
    page = book.add_worksheet("Material list")
    said = _head(head)
    for row, words in enumerate(said):
        page.write_string(row, 0, words[:LONGEST], bold)
    first = len(said)
    for column, (words, width) in enumerate(zip(COLUMNS, WIDTHS, strict=True)):
        page.write_string(first, column, words, top)
        page.set_column(column, column, width)
    for row, line in enumerate(lines, first + 1):
        for column, each in enumerate(_cells(line)):
            if not isinstance(each, str):
                page.write_number(row, column, each)
            elif each:
                page.write_string(row, column, each[:LONGEST])
    page.freeze_panes(first + 1, 0)
    book.close()
    return out.getvalue()


def _head(head: Head) -> list[str]:
    """Who, what, when; a draft says so in its first line."""
    said = (
        head.draft, head.invented, f"{head.title}: {head.job}", head.address, head.date, head.preparer,
        head.revision, head.version,
    )  # fmt: skip
    return [_plain(each) for each in said if each]


def _cells(line: MaterialLine) -> list[str | float]:
    """The cells of a line; pieces are counted in whole numbers."""
    amount: str | float = "" if line.amount is None else line.amount
    if line.unit == PIECES and not isinstance(amount, str) and amount.is_integer():
        amount = int(amount)
    texts = (line.group, line.item, line.size)
    return [*map(_plain, texts), amount, *map(_plain, (line.unit, line.where, line.note, line.key))]


def _plain(text: str) -> str:
    """Text without the control signs that no spreadsheet can hold, except those that mark its start."""
    return "".join(each for each in text if each >= " " or each in "\t\r\n")

"""The material list for a spreadsheet: CSV and XLSX."""

from __future__ import annotations

from collections.abc import Iterable

from heatledger.papers.cells import CellValue, TableFile, csv_of, workbook_of
from heatledger.papers.heat_loss_data import Head
from heatledger.papers.material_plant import PIECES, MaterialLine

COLUMNS = ("Group", "Item", "Size", "Quantity", "Unit", "Where", "Note", "Address")
WIDTHS = (18, 30, 22, 10, 8, 26, 40, 10)


def as_csv(head: Head, lines: Iterable[MaterialLine]) -> bytes:
    """The list as CSV."""
    return csv_of(_table(head, lines))


def as_workbook(head: Head, lines: Iterable[MaterialLine]) -> bytes:
    """The list as XLSX."""
    return workbook_of(_table(head, lines))


def _table(head: Head, lines: Iterable[MaterialLine]) -> TableFile:
    columns = tuple(zip(COLUMNS, WIDTHS, strict=True))
    return TableFile("Material list", head, columns, [_cells(each) for each in lines])


def _cells(line: MaterialLine) -> list[CellValue]:
    """The cells of a line; pieces are counted in whole numbers."""
    amount: CellValue = "" if line.amount is None else line.amount
    if line.unit == PIECES and isinstance(amount, float) and amount.is_integer():
        amount = int(amount)
    return [line.group, line.item, line.size, amount, line.unit, line.where, line.note, line.key]

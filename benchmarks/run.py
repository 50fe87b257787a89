"""Run every benchmark beside this file and print its ratios.

A benchmark is a file ``bench_*.py`` with a function ``rows()`` that yields ``Row``s: something of
ours timed against a floor or a peer in the same run. Only ratios are compared with a budget, since
the times themselves belong to the machine. Nothing here fails a test.

    python benchmarks/run.py [part of a file's name]
"""

from __future__ import annotations

import sys
from importlib import import_module
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))

from timing import Row, shown_amount  # noqa: E402

HEADINGS = ("benchmark", "ours", "against", "its time", "ratio", "budget", "")


def cells(row: Row) -> tuple[str, ...]:
    """A row as the texts of its columns."""
    budget = "" if row.budget is None else f"{row.budget:g}"
    verdict = "" if row.budget is None else ("within" if row.ratio <= row.budget else "over")
    return (
        row.what,
        shown_amount(row.ours, row.unit),
        row.against,
        shown_amount(row.theirs, row.unit),
        f"{row.ratio:.2f}",
        budget,
        verdict,
    )


def table(rows: list[tuple[str, ...]]) -> str:
    """Columns of equal width; numbers stand right."""
    widths = [max(len(row[i]) for row in [HEADINGS, *rows]) for i in range(len(HEADINGS))]
    right = {1, 3, 4, 5}
    lines = [
        "  ".join(cell.rjust(width) if i in right else cell.ljust(width)
                  for i, (cell, width) in enumerate(zip(row, widths, strict=True))).rstrip()
        for row in [HEADINGS, *rows]
    ]  # fmt: skip
    return "\n".join([lines[0], "-" * len(lines[0]), *lines[1:]])


def main(wanted: str = "") -> int:
    """Run the benchmarks whose file name holds ``wanted``; 2 when there is none."""
    names = sorted(each.stem for each in HERE.glob("bench_*.py") if wanted in each.stem)
    if not names:
        print(f"no file benchmarks/bench_*{wanted}*.py", file=sys.stderr)
        return 2
    rows = []
    for name in names:
        print(f"running {name} ...", file=sys.stderr, flush=True)
        rows += [cells(each) for each in import_module(name).rows()]
    print(table(rows))
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:2]))

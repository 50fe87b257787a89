"""What the tests of the book share."""

from __future__ import annotations

import os
import random
import subprocess
import sys
from pathlib import Path

from heatledger.book.book import Book
from heatledger.book.records import Revision

SRC = Path(__file__).resolve().parents[2] / "src"
LARGE = random.Random(4).randbytes(400_000).hex()
"""A text that cannot be packed into much less than 400 KB."""
TEXT = "format: 1\nunits: us\nname: Kiln Lane  # seen on the mailbox\n"


def begun(book: Book, text: str = TEXT, name: str = "Kiln Lane") -> Revision:
    return book.add_job(text, name, "4 Kiln Lane", "Begun", "Ann")


def edited(book: Book, last: Revision, text: str) -> Revision:
    return book.save(
        last.job_id, text, "Kiln Lane", "4 Kiln Lane", f"Edit of {last.number}", "Ben", last.number
    )


def child(program: str, *words: str) -> subprocess.Popen[str]:
    """A Python program in a process of its own, whose lines can be read as it writes them."""
    environment = {**os.environ, "PYTHONPATH": str(SRC), "PYTHONUTF8": "1"}
    return subprocess.Popen(
        [sys.executable, "-c", program, *words], env=environment, encoding="utf-8",
        stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    )  # fmt: skip

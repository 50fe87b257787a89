"""What the commands share: reading a job, the reader's units, and saying what is wrong."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn, TypeVar

import click

from heatledger.job.errors import JobErrors
from heatledger.job.load import load_job
from heatledger.job.model import Job
from heatledger.ledger.presets import PRESETS, Preset

if TYPE_CHECKING:
    from heatledger.steps.design import Design

TO_MEND = 1
WRONG_USE = 2
WIDTH = 80

Command = TypeVar("Command", bound=Callable[..., Any])

job_argument = click.argument("job_file", metavar="JOB", type=click.Path(path_type=Path))
units_option = click.option(
    "--units", type=click.Choice(list(PRESETS), case_sensitive=False), default=None,
    help="How to show quantities; the job's own units when left out.",
)  # fmt: skip
what_if_option = click.option(
    "--what-if", "what_ifs", multiple=True, metavar="ID",
    help="Lay a what-if of the job over it; may be given several times, in order.",
)  # fmt: skip


def read(job_file: Path, what_ifs: tuple[str, ...] = ()) -> Job:
    """The job in a file with its what-ifs laid over it; when it cannot be read, says why and ends."""
    try:
        job = load_job(job_file)
        return job.with_what_ifs(*what_ifs) if what_ifs else job
    except JobErrors as errors:
        say(str(errors))
        if not errors.has_no_file:
            end(TO_MEND)
        near = [each.name for each in _beside(job_file) if each.suffix in (".yaml", ".yml")][:5]
        if near:
            say(f"In that folder there are: {', '.join(near)}.")
        end(WRONG_USE)


def _beside(job_file: Path) -> list[Path]:
    try:
        return sorted(job_file.parent.iterdir())
    except OSError:
        return []


def preset(units: str | None, job: Job) -> Preset:
    """The reader's preset: the one asked for, else the job's."""
    return PRESETS[units.lower()] if units else job.units


def told_in(house: Design, units: Preset) -> Design:
    """The same design as a reader of these units is told of it; findings and titles name quantities too."""
    return house.told_in(units)


def put(text: str) -> None:
    """Print a result."""
    _write(sys.stdout, text)


def say(text: str) -> None:
    """Say something beside the results."""
    _write(sys.stderr, text)


def _write(stream: Any, text: str) -> None:
    """Write a line; signs that the terminal's encoding lacks are spelled plainly."""
    try:
        stream.write(text + "\n")
    except UnicodeEncodeError:
        plain = spelled_plainly(text).encode(stream.encoding or "ascii", "replace")
        stream.write(plain.decode(stream.encoding or "ascii") + "\n")


def spelled_plainly(text: str) -> str:
    """``text`` in plain signs only, with no digit lost: 12' 6 1/2", 10^-5, -2 deg F."""
    text = re.sub(f"[{_RAISED}]+", lambda found: "^" + found.group().translate(_LOWERED), text)
    text = re.sub("([0-9])(?=[½¼¾⅛⅜⅝⅞⅓⅔])", r"\1 ", text)
    return text.translate(_PLAIN)


_RAISED = "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"
_LOWERED = str.maketrans(_RAISED, "-0123456789")
_PLAIN = str.maketrans({
    "−": "-", "×": "x", "÷": "/", "·": "*", "°": " deg ", "′": "'", "″": '"', "▲": "!",
    "◇": "?", "•": "-", "’": "'", "‘": "'", "“": '"', "”": '"', "–": "-",
    "…": "...", "✓": "+", "±": "+/-", "√": "sqrt", "≤": "<=", "≥": ">=", "π": "pi", "Δ": "d", "\u202f": " ",
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3",
    "⅔": "2/3",
})  # fmt: skip


def end(code: int) -> NoReturn:
    """End with an exit code."""
    raise SystemExit(code)

"""``heatledger app``: the book of jobs in a browser, on this computer."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import click

from heatledger.cli.common import TO_MEND, WRONG_USE, end, put, say

VARIABLE = "HEATLEDGER_PASSPHRASE"


@click.command("app")
@click.option("--port", type=click.IntRange(1, 65535), default=None, help="Port; 8420 or the next free one.")
@click.option("--host", metavar="ADDRESS", default=None, help="Address of this computer to listen on.")
@click.option("--share", is_flag=True, help="Pair a tablet with Startup by a one-time code.")
@click.option(
    "--passphrase-file", type=click.Path(path_type=Path), default=None,
    help=f"File whose first line opens the whole book to other devices; else {VARIABLE}.",
)  # fmt: skip
@click.option("--book", metavar="URL", default=None, help="Database of the book, instead of your own.")
@click.option("--browser", is_flag=True, help="Open the browser too.")
def command(
    port: int | None,
    host: str | None,
    share: bool,
    passphrase_file: Path | None,
    book: str | None,
    browser: bool,
) -> None:
    """Open the book of jobs in a browser. Only this computer can reach it, unless it is shared.

    With --share another device comes in by a one-time code and reaches Startup of one job only.
    """
    from heatledger.book.errors import BookError
    from heatledger.web.serve import ServeError, serve
    from heatledger.web.settings import Settings

    plain = Settings()
    settings = Settings(
        book_url=book, host=host or plain.host, port=port or plain.port, port_given=port is not None,
        share=share, passphrase=_passphrase(passphrase_file),
    )  # fmt: skip
    try:
        serve(settings, open_browser=browser, tell=_tell)
    except ServeError as fault:
        say(f"{fault.what}\n{fault.mend}")
        end(WRONG_USE)
    except BookError as fault:
        say(f"{fault.what}\n{fault.mend}")
        end(TO_MEND)
    end(0)


def _passphrase(file: Path | None) -> str:
    """The passphrase of the file, else of the environment; empty when there is none."""
    if file is None:
        return os.environ.get(VARIABLE, "").strip()
    try:
        lines = file.read_text("utf-8-sig").splitlines()
    except OSError as fault:
        say(f"The passphrase could not be read from {file}: {fault.strerror or fault}.")
    except UnicodeDecodeError:
        say(f"{file} is no text. Put the passphrase on the first line of a text file.")
    else:
        if lines and lines[0].strip():
            return lines[0].strip()
        say(f"{file} has nothing on its first line. Put the passphrase there.")
    end(WRONG_USE)


def _tell(line: str) -> None:
    put(line)
    sys.stdout.flush()

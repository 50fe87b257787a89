"""Opens a job file, and refuses one that cannot be a job before time is spent on it."""

from __future__ import annotations

from pathlib import Path

from heatledger.job.errors import JobError, JobErrors
from heatledger.job.parsing import LARGEST


def file_text(path: Path) -> str:
    """Text of a job file; refuses what is absent, too large or not UTF-8, without reading it all."""

    def refuse(code: str, message: str, mend: str) -> JobErrors:
        return JobErrors([JobError(code, "", 0, message, mend)], path.name)

    try:
        with path.open("rb") as file:
            data = file.read(LARGEST + 1)
    except FileNotFoundError:
        raise refuse("file-not-found", f"There is no file {path}.", _near_files(path)) from None
    except (OSError, ValueError) as why:
        words = getattr(why, "strerror", "") or str(why)
        raise refuse(
            "file-unreadable", f"{path} cannot be read: {words}.", "Name a job file that you may read."
        ) from None
    if len(data) > LARGEST:
        raise refuse(
            "too-large",
            "The file holds more than 2 MB, far more than a job needs.",
            "Name the job file itself; pictures and plans are kept beside it.",
        )
    try:
        return data.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as why:
        line = data[: why.start].count(b"\n") + 1
        raise JobErrors(
            [
                JobError(
                    "wrong-encoding",
                    "",
                    line,
                    "The file is not UTF-8 text.",
                    "Save it as UTF-8 (the encoding is chosen where the editor saves the file).",
                )
            ],
            path.name,
        ) from None


def _near_files(path: Path) -> str:
    from difflib import get_close_matches

    try:
        names = [each.name for each in path.parent.iterdir() if each.suffix in (".yaml", ".yml")]
    except OSError:
        return "Check the folder and the spelling."
    near = get_close_matches(path.name, names, 3, 0.5)
    return f"Near it: {', '.join(near)}." if near else "Check the folder and the spelling."

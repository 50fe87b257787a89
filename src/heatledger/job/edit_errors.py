"""Why an edit of a job cannot be made."""

from __future__ import annotations


class EditError(ValueError):
    """An edit that has no place in the job: ``what`` is wrong at ``path``, and how to ``mend`` it."""

    def __init__(self, path: str, what: str, mend: str = "") -> None:
        super().__init__(f"{what} {mend}".strip())
        self.path = path
        self.what = what
        self.mend = mend

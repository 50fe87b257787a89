"""What is worked out behind an answer: the figures of jobs that nobody has opened yet."""

from __future__ import annotations

import logging
from collections.abc import Iterable
from functools import partial

from fastapi import Request

from heatledger.book.errors import BookError
from heatledger.job.errors import JobErrors
from heatledger.web.desks import Desks
from heatledger.web.keeping import keep


def work_out(request: Request, ids: Iterable[str]) -> bool:
    """Have the figures of jobs worked out and kept behind the answer; whether any of them is to come.

    Each is asked for once; one that cannot be read is not waited for.
    """
    desks: Desks = request.app.state.desks
    begun: set[str] = desks.__dict__.setdefault("begun", set())
    unreadable: set[str] = desks.__dict__.setdefault("unreadable", set())
    wanted = list(ids)
    for id in wanted:
        if id not in begun:
            begun.add(id)
            desks.later(partial(_keep_one, desks, id, unreadable))
    return any(id not in unreadable for id in wanted)


def _keep_one(desks: Desks, id: str, unreadable: set[str]) -> None:
    try:
        keep(desks.book, id, desks.open(id).fresh())
    except (JobErrors, BookError):
        unreadable.add(id)
    except Exception:
        # Nobody waits for this answer, so a fault of ours would be lost, and the list would wait for ever.
        logging.getLogger("heatledger").exception("the figures of %s could not be worked out", id)
        unreadable.add(id)

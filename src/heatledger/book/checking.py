"""Reads the whole book through and says what is not as it was written."""

from __future__ import annotations

from collections import defaultdict

from sqlalchemy import Connection, select, text

from heatledger.book import tables as t
from heatledger.book.faults import damaged
from heatledger.book.figures import unpacked
from heatledger.book.records import Checked
from heatledger.book.store import Store
from heatledger.book.tables import Unreadable, digest_of

_SAID_AT_MOST = 5


def check_store(store: Store) -> Checked:
    """How many jobs and revisions there are, each read and found whole. Raises BookDamaged."""
    with store.reading() as connection:
        faults = _of_engine(connection) if store.path is not None else []
        jobs, revisions, more = _of_history(connection)
        faults += more + _of_figures(connection)
    if faults:
        rest = len(faults) - _SAID_AT_MOST
        more_words = f"; and {rest} more" if rest > 0 else ""
        raise damaged(store.place, "; ".join(faults[:_SAID_AT_MOST]) + more_words)
    return Checked(jobs, revisions)


def _of_engine(connection: Connection) -> list[str]:
    said = [str(each) for each in connection.execute(text("PRAGMA integrity_check")).scalars()]
    loose = connection.execute(text("PRAGMA foreign_key_check")).all()
    faults = [] if said == ["ok"] else said
    return faults + ([f"{len(loose)} rows belong to nothing"] if loose else [])


def _of_history(connection: Connection) -> tuple[int, int, list[str]]:
    faults: list[str] = []
    numbers: dict[str, list[int]] = defaultdict(list)
    columns = (t.revision.c.job_id, t.revision.c.number, t.revision.c.parent, t.revision.c.digest)
    order = select(*columns, t.revision.c.text).order_by(t.revision.c.job_id, t.revision.c.number)
    with connection.execute(order, execution_options={"yield_per": 50}) as rows:
        try:
            for row in rows:
                where = f"revision {row.number} of {row.job_id}"
                if digest_of(row.text) != row.digest:
                    faults.append(f"the text of {where} is not what was written")
                if row.parent is not None and row.parent not in numbers[row.job_id]:
                    faults.append(f"{where} follows a revision that is not there")
                numbers[row.job_id].append(row.number)
        except Unreadable:  # the rows behind it cannot be reached; what was found so far is said
            faults.append("the text of a revision cannot be unpacked")
    jobs = connection.execute(select(t.job.c.id, t.job.c.head, t.job.c.latest)).all()
    for each in jobs:
        if faults:
            break
        if numbers[each.id] != list(range(1, each.latest + 1)) or each.head not in numbers[each.id]:
            faults.append(f"revisions of {each.id} are missing")
    return len(jobs), sum(map(len, numbers.values())), faults


def _of_figures(connection: Connection) -> list[str]:
    columns = (t.kept.c.job_id, t.kept.c.number, t.kept.c.si, t.figure_list.c.content)
    both = select(*columns).join(t.figure_list, t.figure_list.c.digest == t.kept.c.list_digest)
    faults = []
    with connection.execute(both, execution_options={"yield_per": 50}) as rows:
        for row in rows:
            try:
                unpacked(row.content, row.si)
            except Unreadable:
                faults.append(f"the figures of revision {row.number} of {row.job_id} cannot be read")
    return faults

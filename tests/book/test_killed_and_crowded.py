"""Claim: a program killed in mid-save loses nothing it was told is kept; several at once do not get in each
other's way."""

from __future__ import annotations

import json
import os
import random
import signal
import threading

import pytest

from heatledger.book.book import Book
from heatledger.book.errors import MovedOn
from heatledger.book.opening import open_book
from tests.book.helping import begun, child, edited

KILLS, SAVERS, EACH = 5, 3, 20
pytestmark = pytest.mark.slow

# Saves again and again; says the number of a revision once it is told that it is kept.
SAVES_IN_A_LOOP = """
import hashlib, sys
from heatledger.book.opening import open_book
from heatledger.book.records import Kept
book = open_book(sys.argv[1])
job, text = sys.argv[2], lambda number: "".join(
    hashlib.sha256(f"{number} {i}".encode()).hexdigest() + "\\n" for i in range(1500))
last = book.head(job)
figures = {f"rooms/{i}/loss": (i * 1.1, "heat rate") for i in range(2000)}
while True:
    last = book.save(job, text(last.number + 1), "n", "a", "loop", "child", last.number)
    print(last.number, hashlib.sha256(last.text.encode()).hexdigest(), flush=True)
    book.keep(job, last.number, Kept("1", {}, figures))
"""

SAVES_BESIDE_OTHERS = """
import json, sys
from heatledger.book.errors import MovedOn
from heatledger.book.opening import open_book
book = open_book(sys.argv[1], patience=60)
job, who, times = sys.argv[2], sys.argv[3], int(sys.argv[4])
own = book.add_job("own\\n", "Same name", "", "begun", who).job_id
got = []
while len(got) < times:
    base = book.head(job).number
    try:
        got.append(book.save(job, f"{who} {len(got)}\\n", "n", "a", "s", who, base).number)
    except MovedOn:
        pass
print(json.dumps([own, got]))
"""


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="this system has no kill that cannot be caught")
def test_kill_in_mid_save_loses_nothing_that_was_kept(book: Book, url: str) -> None:
    import hashlib

    job, kept, chance = begun(book).job_id, {}, random.Random(20)
    for _ in range(KILLS):
        program = child(SAVES_IN_A_LOOP, url, job)
        assert program.stdout is not None and program.stderr is not None
        for left in range(chance.randint(1, 4), -1, -1):
            line = program.stdout.readline()
            assert line, program.stderr.read()
            number, digest = line.split()
            kept[int(number)] = digest
            if not left:
                threading.Event().wait(chance.uniform(0, 0.02))
        os.kill(program.pid, signal.SIGKILL)
        said, _ = program.communicate()
        kept |= {int(number): digest for number, digest in (each.split() for each in said.splitlines())}
        assert program.returncode == -signal.SIGKILL
    fresh = open_book(url)
    try:
        assert len(kept) > KILLS
        for number, digest in kept.items():
            text = fresh.revision(job, number).text
            assert hashlib.sha256(text.encode()).hexdigest() == digest
        head = fresh.head(job)
        assert head.number >= max(kept)
        assert fresh.check().revisions == head.number
        assert edited(fresh, head, "after\n").number == head.number + 1
    finally:
        fresh.close()


def test_three_programs_at_once_give_out_numbers_without_gap(book: Book, url: str) -> None:
    job = begun(book).job_id
    programs = [child(SAVES_BESIDE_OTHERS, url, job, f"who {i}", str(EACH)) for i in range(SAVERS)]
    numbers, own = [], []
    for program in programs:
        said, faults = program.communicate(timeout=300)
        assert program.returncode == 0, faults
        id, got = json.loads(said)
        assert got == sorted(got)
        own.append(id)
        numbers += got
    assert sorted(numbers) == list(range(2, SAVERS * EACH + 2))
    assert sorted(own) == ["same-name", "same-name-2", "same-name-3"]
    lines = book.revisions(job)
    assert [each.parent for each in lines] == [None, *range(1, SAVERS * EACH + 1)]
    assert book.check().jobs == SAVERS + 1


def test_three_programs_that_open_a_new_book_at_once_make_one(url: str) -> None:
    opens = "import sys; from heatledger.book.opening import open_book; print(open_book(sys.argv[1]).jobs())"
    programs = [child(opens, url) for _ in range(SAVERS)]
    for program in programs:
        said, faults = program.communicate(timeout=300)
        assert (program.returncode, said) == (0, "[]\n"), faults


def test_threads_of_one_program_share_a_book(book: Book) -> None:
    job, numbers, faults = begun(book).job_id, [], []

    def saves(who: str) -> None:
        try:
            done = 0
            while done < 10:
                try:
                    made = book.save(job, f"{who} {done}\n", "n", "a", "s", who, book.job(job).head)
                except MovedOn:
                    continue
                numbers.append(made.number)
                done += 1
        except Exception as fault:
            faults.append(fault)

    threads = [threading.Thread(target=saves, args=(f"thread {i}",)) for i in range(6)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert not faults
    assert sorted(numbers) == list(range(2, 62))

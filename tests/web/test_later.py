"""What can wait is done in a quiet moment, in order, and never left undone."""

from __future__ import annotations

from threading import Event

from heatledger.web.later import Later


def test_what_was_put_off_is_done_in_order_when_the_app_closes() -> None:
    done: list[int] = []
    later = Later(quiet=60)
    for number in range(4):
        later.put(lambda number=number: done.append(number))  # type: ignore[misc]
    assert done == []
    later.close()
    assert done == [0, 1, 2, 3]


def test_work_begins_by_itself_when_nothing_is_asked_for() -> None:
    begun = Event()
    later = Later(quiet=0.01)
    later.put(begun.set)
    assert begun.wait(30)
    later.close()


def test_more_than_may_wait_is_not_waited_for() -> None:
    begun = Event()
    later = Later(quiet=60, most_waiting=2)
    later.put(begun.set)
    later.put(lambda: None)
    later.asked()
    for _ in range(2):
        later.put(lambda: None)
    later.rest()
    assert begun.is_set()
    later.close()


def test_after_a_rest_work_waits_for_quiet_again() -> None:
    done: list[str] = []
    later = Later(quiet=60)
    later.put(lambda: done.append("first"))
    later.rest()
    later.put(lambda: done.append("second"))
    assert done == ["first"]
    later.close()
    assert done == ["first", "second"]

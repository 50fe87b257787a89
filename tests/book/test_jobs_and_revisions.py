"""Claim: a book gives back every revision letter for letter, and tells who changed what, when."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from heatledger import __version__
from heatledger.book.book import Book
from heatledger.book.errors import BookError, MovedOn, NoSuchJob, NothingToUndo
from heatledger.book.records import Kept
from tests.book.helping import TEXT, begun, edited

BOTH = settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])


def test_a_new_book_is_empty(book: Book) -> None:
    assert book.jobs() == []
    assert book.check().jobs == 0


def test_a_job_begins_with_its_first_revision(book: Book) -> None:
    before = datetime.now(UTC)
    made = begun(book)
    assert (made.number, made.parent, made.said, made.by, made.version) == (
        1,
        None,
        "Begun",
        "Ann",
        __version__,
    )
    assert before <= made.at <= datetime.now(UTC)
    assert book.head(made.job_id) == made
    entry = book.job(made.job_id)
    assert (entry.id, entry.name, entry.address) == ("kiln-lane", "Kiln Lane", "4 Kiln Lane")
    assert (entry.head, entry.latest, entry.file, entry.summary, entry.put_away) == (1, 1, "", {}, False)


def test_jobs_of_one_name_have_ids_of_their_own(book: Book) -> None:
    ids = [
        begun(book, name=name).job_id for name in ("Kiln Lane", "Kiln Lane", "kiln lane", "Ærø 7", "", "…")
    ]
    assert ids == ["kiln-lane", "kiln-lane-2", "kiln-lane-3", "r-7", "job", "job-2"]


def test_every_revision_stays_and_is_listed(book: Book) -> None:
    first = begun(book)
    second = edited(book, first, TEXT + "built: 1926\n")
    third = edited(book, second, TEXT)
    assert [each.number for each in book.revisions(first.job_id)] == [1, 2, 3]
    assert [each.parent for each in book.revisions(first.job_id)] == [None, 1, 2]
    assert book.revision(first.job_id, 2) == second
    assert book.revision(first.job_id, 2).text == TEXT + "built: 1926\n"
    assert book.head(first.job_id) == third


def test_the_name_of_a_job_is_that_of_the_revision_it_stands_at(book: Book) -> None:
    first = begun(book)
    second = book.save(first.job_id, TEXT, "Kiln Lane 4", "Elsewhere", "Name", "Ben", 1)
    assert (book.job(first.job_id).name, book.job(first.job_id).address) == ("Kiln Lane 4", "Elsewhere")
    book.undo(first.job_id, second.number)
    assert (book.job(first.job_id).name, book.job(first.job_id).address) == ("Kiln Lane", "4 Kiln Lane")


def test_the_job_touched_last_comes_first(book: Book) -> None:
    one, two = begun(book, name="One"), begun(book, name="Two")
    assert [each.name for each in book.jobs()] == ["Two", "One"]
    book.save(one.job_id, TEXT, "One", "", "Edit", "Ann", 1)
    assert [each.id for each in book.jobs()] == [one.job_id, two.job_id]


def test_an_edit_on_a_stale_page_is_refused_and_changes_nothing(book: Book) -> None:
    first = begun(book)
    second = edited(book, first, TEXT + "built: 1926\n")
    with pytest.raises(MovedOn) as refused:
        edited(book, first, TEXT + "built: 1930\n")
    assert refused.value.head == second.number
    assert "revision 2, by Ben" in refused.value.what
    assert "again" in refused.value.mend
    assert book.head(first.job_id) == second
    assert len(book.revisions(first.job_id)) == 2
    for move in (book.undo, book.redo):
        with pytest.raises(MovedOn):
            move(first.job_id, first.number)
    with pytest.raises(MovedOn):
        book.go_to(first.job_id, 1, 1)


def test_undo_and_redo_say_when_there_is_nothing(book: Book) -> None:
    first = begun(book)
    assert not book.can_undo(first.job_id) and not book.can_redo(first.job_id)
    with pytest.raises(NothingToUndo, match="nothing to undo"):
        book.undo(first.job_id, 1)
    with pytest.raises(NothingToUndo, match="nothing to redo"):
        book.redo(first.job_id, 1)


def test_an_edit_after_undo_begins_a_branch_and_loses_nothing(book: Book) -> None:
    first = begun(book)
    second = edited(book, first, "second\n")
    assert book.undo(first.job_id, second.number) == first
    third = edited(book, first, "third\n")
    assert (third.number, third.parent) == (3, 1)
    assert book.undo(first.job_id, 3).number == 1
    assert book.redo(first.job_id, 1).number == 3
    assert book.go_to(first.job_id, 2, 3).text == "second\n"
    assert book.undo(first.job_id, 2).number == 1
    assert book.redo(first.job_id, 1).number == 2


def test_going_far_back_can_be_redone_step_by_step(book: Book) -> None:
    last = begun(book)
    for number in range(2, 6):
        last = edited(book, last, f"text {number}\n")
    assert book.go_to(last.job_id, 1, 5).number == 1
    assert [book.redo(last.job_id, at).number for at in range(1, 5)] == [2, 3, 4, 5]


def test_what_is_not_there_is_said(book: Book) -> None:
    first = begun(book)
    for ask in (
        book.job,
        book.head,
        book.revisions,
        book.can_undo,
        book.can_redo,
        book.put_away,
        book.file_digest,
    ):
        with pytest.raises(NoSuchJob, match="no job 'nowhere'"):
            ask("nowhere")
    with pytest.raises(NoSuchJob):
        book.save("nowhere", TEXT, "", "", "", "", 1)
    with pytest.raises(NoSuchJob, match="no revision 7"):
        book.revision(first.job_id, 7)
    with pytest.raises(NoSuchJob, match="no revision 7"):
        book.go_to(first.job_id, 7, 1)
    with pytest.raises(NoSuchJob, match="no revision 7"):
        book.keep(first.job_id, 7, Kept("1", {}, {}))


def test_a_job_put_away_is_out_of_the_list_and_whole(book: Book) -> None:
    first = begun(book)
    book.put_away(first.job_id)
    assert book.jobs() == []
    assert [each.id for each in book.jobs(put_away=True)] == [first.job_id]
    assert book.head(first.job_id) == first
    book.take_out(first.job_id)
    assert [each.put_away for each in book.jobs()] == [False]


@BOTH
@given(text=st.text(st.characters()), said=st.text(max_size=60))
def test_text_comes_back_letter_for_letter(book: Book, text: str, said: str) -> None:
    made = book.add_job(text, said, "", said, said)
    assert book.head(made.job_id) == made
    assert book.head(made.job_id).text == text


def test_a_large_job_comes_back_whole(book: Book) -> None:
    text = "".join(f"row-{i}: {i * i}\n" for i in range(100_000))
    assert book.head(begun(book, text).job_id).text == text


def test_wrong_entries_are_kept_until_they_are_mended(book: Book) -> None:
    id = begun(book).job_id
    book.set_wrong(id, "rooms/den/length", "12 fx", "`12 fx` is no length.", "Write 12' 6\".", "Ann")
    book.set_wrong(id, "site/outdoor", "co\0ld", "No temperature.", "Write 5 F.", "Ben")
    assert [each.path for each in book.wrong(id)] == ["rooms/den/length", "site/outdoor"]
    assert book.wrong(id)[1].typed == "co␀ld"
    book.set_wrong(id, "rooms/den/length", "12 fy", "`12 fy` is no length.", "Write 12' 6\".", "Ann")
    assert [each.typed for each in book.wrong(id)] == ["co␀ld", "12 fy"]
    book.clear_wrong(id, "site/outdoor")
    book.clear_wrong(id, "never/there")
    assert [(each.path, each.by) for each in book.wrong(id)] == [("rooms/den/length", "Ann")]
    with pytest.raises(NoSuchJob):
        book.set_wrong("nowhere", "a", "b", "c", "d", "e")
    with pytest.raises(BookError, match="too long"):
        book.set_wrong(id, "a" * 5000, "b", "c", "d", "e")


FIGURES = st.dictionaries(
    st.text(min_size=1),
    st.tuples(st.floats(allow_nan=False), st.sampled_from(["heat rate", "area", "length"])),
)


@BOTH
@given(figures=FIGURES)
def test_kept_figures_come_back_to_the_last_bit(book: Book, figures: dict[str, tuple[float, str]]) -> None:
    made = begun(book)
    kept = Kept("0.0.9", {"loss": 10.5, "open": ["a", None]}, figures)
    book.keep(made.job_id, 1, kept)
    assert book.kept(made.job_id, 1) == kept
    assert book.job(made.job_id).summary == kept.summary


def test_a_missing_figure_stays_missing_and_kept_again_replaces(book: Book) -> None:
    made = begun(book)
    assert book.kept(made.job_id, 1) is None
    book.keep(made.job_id, 1, Kept("1", {"at": 1}, {"house/loss": (float("nan"), "heat rate")}))
    found = book.kept(made.job_id, 1)
    assert found is not None and found.figures["house/loss"][0] != found.figures["house/loss"][0]
    again = Kept("2", {"at": 2}, {"house/loss": (3.0, "heat rate")})
    book.keep(made.job_id, 1, again)
    assert book.kept(made.job_id, 1) == again
    edited(book, made, "more\n")
    assert book.job(made.job_id).summary == {}
    assert book.kept(made.job_id, 2) is None
    assert book.check().revisions == 2


def test_a_job_says_when_the_revision_it_stands_at_was_made(book: Book) -> None:
    first = begun(book)
    second = edited(book, first, TEXT + "# one more\n")
    assert book.job(first.job_id).head_at == second.at
    book.undo(first.job_id, second.number)
    entry = book.job(first.job_id)
    assert entry.head_at == first.at < entry.touched


def test_figures_are_kept_with_the_very_revision_only(book: Book) -> None:
    first = begun(book)
    kept = Kept("1", {}, {"house/loss": (1.0, "heat rate")})
    with pytest.raises(NoSuchJob):
        book.keep(first.job_id, 1, kept, first.at.replace(year=2001))
    assert book.kept(first.job_id, 1) is None
    book.keep(first.job_id, 1, kept, first.at)
    assert book.kept(first.job_id, 1) == kept


@pytest.mark.parametrize("number", [0, -1, 2**31, 10**30])
def test_a_number_that_no_database_holds_is_no_revision(book: Book, number: int) -> None:
    first = begun(book)
    with pytest.raises(NoSuchJob):
        book.revision(first.job_id, number)
    with pytest.raises(NoSuchJob):
        book.go_to(first.job_id, number, 1)

"""Claim: any row of edits, undos and redos leaves the book as a plain tree kept in memory."""

from __future__ import annotations

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from heatledger.book.book import Book
from heatledger.book.errors import MovedOn, NothingToUndo
from tests.book.helping import begun

RUNS = settings(max_examples=10, stateful_step_count=20, deadline=None)


class Tree:
    """The plain model: texts, parents and where redo leads, by number; number 1 at index 1."""

    def __init__(self, text: str) -> None:
        self.texts: dict[int, str] = {1: text}
        self.parents: dict[int, int | None] = {1: None}
        self.redo: dict[int, int] = {}
        self.head = 1

    def save(self, text: str) -> None:
        number = len(self.texts) + 1
        self.texts[number], self.parents[number], self.head = text, self.head, number

    def undo(self) -> bool:
        parent = self.parents[self.head]
        if parent is not None:
            self.redo[parent], self.head = self.head, parent
        return parent is not None

    def go_to(self, number: int) -> None:
        here: int | None = self.head
        line = []
        while here is not None:
            line.append(here)
            here = self.parents[here]
        if number in line:
            while self.head != number:
                self.undo()
        self.head = number


class Moves(RuleBasedStateMachine):
    """Edits one job of a book and the model alike."""

    def __init__(self, book: Book) -> None:
        super().__init__()
        self.book = book
        self.id = begun(book, "text 1\n").job_id
        self.tree = Tree("text 1\n")

    @rule(text=st.text(max_size=200))
    def save(self, text: str) -> None:
        base, latest = self.tree.head, len(self.tree.texts)
        made = self.book.save(self.id, text, "", "", "said", "Ann", base)
        self.tree.save(text)
        assert (made.number, made.parent, made.text) == (latest + 1, base, text)

    @rule(stale=st.integers(0, 30))
    def save_on_another_base(self, stale: int) -> None:
        if stale != self.tree.head:
            with pytest.raises(MovedOn) as refused:
                self.book.save(self.id, "lost\n", "", "", "", "", stale)
            assert refused.value.head == self.tree.head

    @rule()
    def undo(self) -> None:
        before = self.tree.head
        try:
            self.book.undo(self.id, before)
        except NothingToUndo:
            assert self.tree.parents[before] is None
        else:
            assert self.tree.undo()

    @rule()
    def redo(self) -> None:
        before = self.tree.head
        try:
            found = self.book.redo(self.id, before)
        except NothingToUndo:
            assert before not in self.tree.redo
        else:
            assert found.number == self.tree.redo[before]
            self.tree.head = found.number

    @precondition(lambda self: len(self.tree.texts) > 1)
    @rule(data=st.data())
    def go_to(self, data: st.DataObject) -> None:
        number = data.draw(st.sampled_from(sorted(self.tree.texts)))
        self.book.go_to(self.id, number, self.tree.head)
        self.tree.go_to(number)

    @invariant()
    def the_book_stands_where_the_model_stands(self) -> None:
        head, tree = self.book.head(self.id), self.tree
        assert (head.number, head.text) == (tree.head, tree.texts[tree.head])
        assert self.book.can_undo(self.id) == (tree.parents[tree.head] is not None)
        assert self.book.can_redo(self.id) == (tree.head in tree.redo)

    def teardown(self) -> None:
        """Nothing was lost on the way."""
        lines = self.book.revisions(self.id)
        assert {each.number: each.parent for each in lines} == self.tree.parents
        for number, text in self.tree.texts.items():
            assert self.book.revision(self.id, number).text == text


def test_moves_agree_with_a_plain_tree(book: Book) -> None:
    run_state_machine_as_test(lambda: Moves(book), settings=RUNS)
    assert book.check().jobs > 1

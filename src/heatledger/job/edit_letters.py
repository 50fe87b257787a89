"""Where each entry of a job stands in its text: its letters, its rows, and the comments that belong to it."""

from __future__ import annotations

from collections.abc import Sequence

from heatledger.job.edit_errors import EditError
from heatledger.job.edit_trees import Steps, node_at
from heatledger.job.edit_writing import DEEPER
from heatledger.job.reparse import parsed
from heatledger.job.text import Listing, Mapping, Node, Scalar

Span = tuple[int, int]
MARK = "\ufeff"
"""A byte order mark, which some editors put in front."""
_BLOCKS = ("|", ">")


class Letters:
    """The text of a job without a mark in front, its tree, and the places of its entries."""

    def __init__(self, text: str) -> None:
        self.text = text.removeprefix(MARK)
        self.tree = parsed(self.text).tree
        self.eol = "\r\n" if "\r\n" in self.text else "\n"

    def at(self, steps: Sequence[str]) -> Node | None:
        """What stands at the end of the steps."""
        return node_at(self.tree, steps)

    # rows

    def row_start(self, i: int) -> int:
        """Where the row of a letter begins."""
        return self.text.rfind("\n", 0, i) + 1

    def row_end(self, i: int) -> int:
        """Where the row of a letter ends, without its line end."""
        stop = self.text.find("\n", i)
        if stop < 0:
            return len(self.text)
        return stop - 1 if stop > i and self.text[stop - 1] == "\r" else stop

    def next_row(self, i: int) -> int:
        """Where the row below begins."""
        stop = self.text.find("\n", i)
        return len(self.text) if stop < 0 else stop + 1

    def indent(self, i: int) -> int:
        """Spaces in front of the first letter of a row."""
        start = self.row_start(i)
        row = self.text[start : self.row_end(start)]
        return len(row) - len(row.lstrip(" "))

    # nodes

    def end(self, node: Node, key_start: int = 0) -> int:
        """Where the last letter of a value stands. ``key_start`` is that of its key."""
        if isinstance(node, Scalar):
            return self._end_of_block(node, key_start) if node.style in _BLOCKS else node.end
        if node.flow:
            return node.end
        if isinstance(node, Mapping):
            return max(self.end(each, node.key_starts[key]) for key, each in node.entries.items())
        return max((self.end(each, start_of(each)) for each in node.items), default=node.start)

    def _end_of_block(self, node: Scalar, key_start: int) -> int:
        """A text over several rows ends at its last row that is not blank."""
        column = self.indent(key_start)
        end = self.row_end(node.start)
        row = self.next_row(node.start)
        while row < len(self.text):
            stop = self.row_end(row)
            filled = self.text[row:stop].strip(" ")
            if filled and self.indent(row) <= column:
                break
            end = stop if filled else end
            row = self.next_row(row)
        return end

    def key_start(self, parent: Mapping | Listing, index: int) -> int:
        """Where a child begins: its key, its hyphen, or in brackets its value."""
        if isinstance(parent, Mapping):
            return list(parent.key_starts.values())[index]
        first = start_of(parent.items[index])
        return first if parent.flow else self.text.rfind("-", 0, first)

    def slots(self, parent: Mapping | Listing) -> list[Span]:
        """The letters of each child in order: in braces its key and value, else its rows with the comments
        directly above it and those indented below it, without the last line end."""
        inside = list(parent.entries.values()) if isinstance(parent, Mapping) else parent.items
        found = []
        for index, node in enumerate(inside):
            start = self.key_start(parent, index)
            end = self.end(node, start)
            found.append((start, end) if parent.flow else self.rows_of(start, end))
        return found

    def rows_of(self, start: int, end: int) -> Span:
        """Whole rows from a key to the last letter of its value, with the comments that belong to them."""
        column = start - self.row_start(start)
        return self._comments_above(start, column), self.tail(end, column)

    def stands_alone(self, start: int) -> bool:
        """True when nothing but spaces stands before a key in its row."""
        return not self.text[self.row_start(start) : start].strip(" ")

    def _comments_above(self, start: int, column: int) -> int:
        if not self.stands_alone(start):
            return start
        top = self.row_start(start)
        while top > 0:
            above = self.row_start(top - 1)
            row = self.text[above : self.row_end(above)]
            if not row.lstrip(" ").startswith("#") or self.indent(above) != column:
                break
            top = above
        return top

    def tail(self, end: int, column: int) -> int:
        """The end of the row, or of the last comment below that is indented deeper than the key."""
        last = self.row_end(end)
        row = self.next_row(end)
        while row < len(self.text):
            stop = self.row_end(row)
            filled = self.text[row:stop].strip(" ")
            if filled and not (filled.startswith("#") and self.indent(row) > column):
                break
            last = stop if filled else last
            row = self.next_row(row)
        return last

    # places for what is new

    def column_inside(self, parent: Mapping | Listing) -> int:
        """Indent of the children of a parent in rows."""
        start = self.key_start(parent, 0)
        return start - self.row_start(start)

    def behind_empty(self, steps: Steps) -> tuple[int, int]:
        """Where rows can be put under a key with nothing behind it, and their indent."""
        parent = self.at(steps[:-1])
        if not isinstance(parent, Mapping) or parent.flow:
            raise EditError("/".join(steps), f"Nothing can be put under `{'/'.join(steps)}`.")
        start = parent.key_starts[steps[-1]]
        column = start - self.row_start(start)
        return self.tail(self.end(parent.entries[steps[-1]], start), column), column + DEEPER


def start_of(node: Node) -> int:
    """Where the first letter of a value stands."""
    return node.start

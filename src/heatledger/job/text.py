"""From the text of a job file to a tree of what was typed, each piece with its line and its place.

Every scalar stays the text that was typed: a YAML reader of its own would make ``1_000`` a thousand
and ``no`` a false. Aliases, tags and second documents are refused, and so is a file too large or too
deep to be a job, before time is spent on it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from heatledger.job.errors import JobError, JobErrors

LARGEST = 2_000_000
"""Characters or bytes beyond which a file is not read. A house of fifty rooms takes about 100,000."""
DEEPEST = 24
"""Levels of nesting. A job needs eight."""

_STRANGE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufeff\ufffe\uffff]")
_OPEN_QUOTE = re.compile(r"""[:{,\[] +(?:"[^"]*|'[^']*)\Z""")


@dataclass(slots=True)
class Scalar:
    """One value as typed. ``start`` and ``end`` are its span in the text of the file."""

    text: str
    line: int = 0
    start: int = 0
    end: int = 0
    style: str = ""
    """Empty for plain text, else the quote or block mark it was written with."""
    replaced: str = ""
    """What stood here before a what-if."""
    by: str = ""
    """The what-if that put it here."""

    @property
    def is_empty(self) -> bool:
        """True when a key has nothing after its colon."""
        return not self.text and not self.style


@dataclass(slots=True)
class Mapping:
    """Keys and values in the order of the file."""

    line: int = 0
    start: int = 0
    end: int = 0
    flow: bool = False
    entries: dict[str, Node] = field(default_factory=dict)
    key_lines: dict[str, int] = field(default_factory=dict)
    key_starts: dict[str, int] = field(default_factory=dict)


@dataclass(slots=True)
class Listing:
    """A list of values."""

    line: int = 0
    items: list[Node] = field(default_factory=list)


Node = Scalar | Mapping | Listing


def tree_of(text: str, file_name: str = "") -> Mapping:
    """The tree of a job's text. What is no tree at all is refused with one error; keys given twice
    and the like are gathered."""

    def refuse(code: str, line: int, message: str, mend: str) -> JobErrors:
        return JobErrors([JobError(code, "", line, message, mend)], file_name)

    if len(text) > LARGEST:
        raise refuse(
            "too-large",
            0,
            "The text holds more than 2 MB, far more than a job needs.",
            "Give the text of one job.",
        )
    text = text.removeprefix("\ufeff")
    strange = _STRANGE.search(text)
    if strange:
        raise refuse(
            "not-text",
            text.count("\n", 0, strange.start()) + 1,
            f"The character U+{ord(strange[0]):04X} is not text that can be read.",
            "Delete it, or save the job again as plain text.",
        )
    from heatledger.job.quick import quick_tree

    tree: Node | None = quick_tree(text)
    if tree is None:
        tree = full_tree(text, file_name)
    if tree is None or (isinstance(tree, Scalar) and tree.is_empty):
        raise refuse(
            "empty-file",
            1,
            "The file holds no job.",
            "Begin with `format: 1`; `heatledger new` writes a job to start from.",
        )
    if not isinstance(tree, Mapping):
        raise refuse(
            "not-a-mapping",
            tree.line,
            "The file does not begin with `key: value` lines.",
            "Begin with `format: 1`; `heatledger new` writes a job to start from.",
        )
    return tree


def full_tree(text: str, file_name: str = "") -> Node | None:
    """The tree as the full YAML reader sees it; None for a text without any."""
    builder = _Builder(file_name)
    tree = builder.build(text)
    if builder.errors:
        raise JobErrors(builder.errors, file_name)
    return tree


class _Builder:
    """Builds the tree from the events of the YAML parser, with a stack, never by recursion."""

    def __init__(self, file_name: str) -> None:
        self.file_name = file_name
        self.errors: list[JobError] = []
        self.stack: list[Any] = []
        self.keys: list[Scalar | None] = []
        self.trail: list[str] = []
        self.root: Node | None = None

    def refuse(self, code: str, line: int, message: str, mend: str) -> JobErrors:
        return JobErrors([*self.errors, JobError(code, "", line, message, mend)], self.file_name)

    def build(self, text: str) -> Node | None:
        from ruamel.yaml import YAML
        from ruamel.yaml.error import MarkedYAMLError, YAMLError

        try:
            for event in YAML(typ="safe", pure=True).parse(text):
                self.take(event, type(event).__name__)
        except MarkedYAMLError as why:
            raise self.not_yaml(text, why) from None
        except (YAMLError, ValueError, AssertionError, IndexError, AttributeError, TypeError) as why:
            raise self.refuse(
                "not-yaml",
                0,
                f"The file cannot be read as YAML: {str(why)[:120]}.",
                "Compare it with the job that `heatledger new` writes.",
            ) from None
        return self.root

    def take(self, event: Any, kind: str) -> None:
        mark = event.start_mark
        line = mark.line + 1
        if kind == "AliasEvent" or getattr(event, "anchor", None):
            raise self.refuse(
                "alias",
                line,
                f"Names for repeats (&{event.anchor}, *{event.anchor}) are not read.",
                "Write the value out where it is needed.",
            )
        if getattr(event, "tag", None) not in (None, "!"):
            raise self.refuse(
                "tag",
                line,
                f"The tag {event.tag} is not read.",
                "Leave the tag out: every value is read as typed.",
            )
        if kind == "ScalarEvent":
            style = event.style if event.style in ("'", '"', "|", ">") else ""
            self.put(Scalar(event.value, line, mark.index, event.end_mark.index, style))
        elif kind == "MappingStartEvent":
            self.open(Mapping(line, mark.index, 0, bool(event.flow_style)))
        elif kind == "SequenceStartEvent":
            self.open(Listing(line))
        elif kind in ("MappingEndEvent", "SequenceEndEvent"):
            done = self.stack.pop()
            self.keys.pop()
            self.trail.pop()
            if isinstance(done, Mapping) and done.flow:
                done.end = event.end_mark.index
        elif kind == "DocumentStartEvent" and self.root is not None:
            raise self.refuse(
                "second-document", line, "A second document begins here (---).", "Keep one job in one file."
            )

    def open(self, node: Any) -> None:
        if len(self.stack) >= DEEPEST:
            raise self.refuse(
                "too-deep",
                node.line,
                f"The file nests deeper than {DEEPEST} levels.",
                "A job needs no more than eight: look for a bracket not closed.",
            )
        key = self.keys[-1] if self.keys else None
        self.put(node)
        self.trail.append(key.text if key else "")
        self.stack.append(node)
        self.keys.append(None)

    def put(self, node: Node) -> None:
        if not self.stack:
            self.root = node
            return
        top = self.stack[-1]
        if isinstance(top, Listing):
            top.items.append(node)
            return
        key = self.keys[-1]
        if key is None:
            if not isinstance(node, Scalar) or node.is_empty or node.style in ("|", ">"):
                raise self.refuse(
                    "key-not-plain", node.line, "A key must be one plain word.", "Write `key: value`."
                )
            self.keys[-1] = node
            return
        self.keys[-1] = None
        if key.text in top.entries:
            self.errors.append(
                JobError(
                    "duplicate-key",
                    "/".join([*filter(None, self.trail), key.text]),
                    key.line,
                    f"`{key.text}` is given twice; the first stands in line {top.key_lines[key.text]}.",
                    "Keep one of the two, or give the second a key of its own.",
                )
            )
            return
        top.entries[key.text] = node
        top.key_lines[key.text] = key.line
        top.key_starts[key.text] = key.start

    def not_yaml(self, text: str, why: Any) -> JobErrors:
        mark = why.problem_mark or why.context_mark
        line = mark.line + 1 if mark else 0
        problem = str(why.problem or why.context or "")
        rows = text.split("\n")
        row = rows[line - 1] if 0 < line <= len(rows) else ""
        if "\\t" in problem or row[: len(row) - len(row.lstrip())].count("\t"):
            return self.refuse(
                "tab-indent",
                line,
                "A line is indented with a tab.",
                "Indent with spaces, two for each level.",
            )
        quoted = why.context_mark.line + 1 if why.context_mark and "quoted" in str(why.context) else 0
        quoted = quoted or next((i for i, each in enumerate(rows[:line], 1) if _OPEN_QUOTE.search(each)), 0)
        if quoted:
            return self.refuse(
                "unclosed-quote",
                quoted,
                "A value begins with a quote that is not closed.",
                "Feet and inches need no quotes: write  length: 12' 6\"",
            )
        return self.refuse(
            "not-yaml",
            line,
            f"The file cannot be read as YAML here: {problem}.",
            "Check the indent, the colon with a space after it, and the brackets.",
        )


def walk(tree: Node, path: str) -> Node | None:
    """The node at a path of the job, or None."""
    node: Node = tree
    for step in path.split("/") if path else ():
        if isinstance(node, Mapping) and step in node.entries:
            node = node.entries[step]
        elif isinstance(node, Listing) and step.isdigit() and int(step) < len(node.items):
            node = node.items[int(step)]
        else:
            return None
    return node


def line_of(tree: Mapping, path: str) -> int:
    """Line of the entry at ``path``, or of the nearest parent that stands in the file."""
    node: Node = tree
    line = tree.line
    for step in path.split("/") if path else ():
        if isinstance(node, Mapping) and step not in node.entries and "size" in node.entries:
            return node.key_lines.get("size", line) or line
        if isinstance(node, Mapping) and step in node.entries:
            line = node.key_lines.get(step, 0) or line
            node = node.entries[step]
        elif isinstance(node, Listing) and step.isdigit() and int(step) < len(node.items):
            node = node.items[int(step)]
            line = node.line or line
        else:
            break
    return line


def plain(node: Node) -> Any:
    """The node as nested dicts and lists of the texts typed."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Mapping):
        return {key: plain(each) for key, each in node.entries.items()}
    return [plain(each) for each in node.items]


def node_of(value: Any, line: int = 0) -> Node:
    """A tree from nested dicts, lists and texts (as a finding's mend or a program gives them)."""
    if isinstance(value, Scalar | Mapping | Listing):
        return value
    if isinstance(value, dict):
        entries = {str(key): node_of(each, line) for key, each in value.items()}
        return Mapping(line, entries=entries, key_lines=dict.fromkeys(entries, line))
    if isinstance(value, list | tuple):
        return Listing(line, [node_of(each, line) for each in value])
    if isinstance(value, bool):
        return Scalar("yes" if value else "no", line)
    return Scalar(str(value), line)


def scalars(node: Node) -> Iterator[Scalar]:
    """Every scalar below a node, in order."""
    if isinstance(node, Scalar):
        yield node
    elif isinstance(node, Mapping):
        for each in node.entries.values():
            yield from scalars(each)
    else:
        for each in node.items:
            yield from scalars(each)

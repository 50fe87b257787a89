"""The full YAML reader: the tree from the events of the parser, and words for whatever is wrong.

Aliases, tags and second documents are refused at the first one, and so is what nests too deep to be
a job, so that no file can make the reader work long.
"""

from __future__ import annotations

import re
from typing import Any

from heatledger.job.errors import MOST, JobError, JobErrors
from heatledger.job.text import DEEPEST, Listing, Mapping, Node, Scalar, is_rest_of_number

MOST_EVENTS = 50_000
"""Keys, values and brackets beyond which a file is no job. A house of fifty rooms has about 10,000."""

_COLON = re.compile(r"\s*:")
_OPEN_QUOTE = re.compile(r"""[:{,\[] +(?:"[^"]*|'[^']*)\Z""")


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
        self.text = ""
        self.taken = 0

    def refuse(self, code: str, line: int, message: str, mend: str) -> JobErrors:
        return JobErrors([*self.errors, JobError(code, "", line, message, mend)], self.file_name)

    def build(self, text: str) -> Node | None:
        from ruamel.yaml import YAML
        from ruamel.yaml.error import MarkedYAMLError, YAMLError

        self.text = text
        try:
            for event in YAML(typ="safe", pure=True).parse(text):
                self.take(event, type(event).__name__)
                self.taken += 1
                if self.taken > MOST_EVENTS:
                    line = event.start_mark.line + 1
                    message = "The file holds far more entries than a job needs."
                    raise self.refuse("too-large", line, message, "Name the job file itself.")
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
            self.open(Listing(line, start=mark.index, flow=bool(event.flow_style)))
        elif kind in ("MappingEndEvent", "SequenceEndEvent"):
            done = self.stack.pop()
            self.keys.pop()
            self.trail.pop()
            if done.flow:
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
        if isinstance(node, Scalar) and node.is_empty:
            # The parser marks an empty value behind the comment; its place is behind the colon.
            colon = _COLON.match(self.text, key.end)
            node.line, node.start = key.line, colon.end() if colon else key.end
            node.end = node.start
        if key.text in top.entries and top.flow and is_rest_of_number(key.text, node):
            # Two numbers that commas have cut can end alike; each rest keeps a place of its own.
            while key.text in top.entries:
                key.text += " "
        if key.text in top.entries and len(self.errors) < MOST:
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

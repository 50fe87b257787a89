"""From the text of a job file to the tree of what was typed.

Every scalar stays the text that was typed: a YAML reader of its own would make ``1_000`` a thousand
and ``no`` a false. A text too large to be a job is refused before time is spent on it.
"""

from __future__ import annotations

import re

from heatledger.job.errors import JobError, JobErrors
from heatledger.job.quick import quick_tree
from heatledger.job.text import Mapping, Node, Scalar
from heatledger.job.yaml_events import full_tree

LARGEST = 2_000_000
"""Characters or bytes beyond which a file is not read. A house of fifty rooms takes about 100,000."""
STRANGE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufeff\ufffe\uffff]")
"""Characters that are no text: controls, halves of pairs, marks."""


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
    strange = STRANGE.search(text)
    if strange:
        raise refuse(
            "not-text",
            text.count("\n", 0, strange.start()) + 1,
            f"The character U+{ord(strange[0]):04X} is not text that can be read.",
            "Delete it, or save the job again as plain text.",
        )
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

"""The text of a job as a copy of its own begins with it."""

from __future__ import annotations

from heatledger.book.records import Revision
from heatledger.job.edits import EditError, set_entry
from heatledger.job.errors import JobErrors


def copy_of(revision: Revision) -> tuple[str, str, str]:
    """Text, name and address of a copy: the same job under a name that tells the two apart."""
    name = f"{revision_name(revision)}, copy"
    try:
        text = set_entry(revision.text, "name", name)
    except (EditError, JobErrors):  # a text that cannot be read any more is copied as it is
        return revision.text, name, ""
    return text, name, _value(text, "address")


def revision_name(revision: Revision) -> str:
    """What the job is called in a revision."""
    return _value(revision.text, "name") or revision.job_id


def _value(text: str, key: str) -> str:
    from heatledger.job.parsing import tree_of
    from heatledger.job.text import Scalar, walk

    try:
        node = walk(tree_of(text), key)
    except JobErrors:
        return ""
    return node.text.strip() if isinstance(node, Scalar) else ""

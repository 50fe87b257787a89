"""Reads a job's tree: mappings, ids, texts, choices. Gathers every error, stops at none."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

from heatledger.job.errors import MOST, JobError
from heatledger.job.fields import Field, Shape
from heatledger.job.known import DEFAULT
from heatledger.job.model import KNOWN
from heatledger.job.text import Mapping, Node, Scalar, is_rest_of_number, line_of
from heatledger.job.trade_words import MOST_OFFERED, meant_by, or_

ID = re.compile(r"[a-z0-9][a-z0-9-]*\Z")
YES = ("yes", "true", "y", "on")
NO = ("no", "false", "n", "off")
LONGEST_MESSAGE = 600
_VALUE_KEYS = ("is", "known", "within", "because")


@dataclass(frozen=True, slots=True)
class Typed:
    """A value as typed, and what was said of it."""

    scalar: Scalar
    known: str
    within: Scalar | None = None
    because: str = ""


class Entries:
    """Reads the entries of one tree that are no quantities, and keeps the errors."""

    def __init__(self, tree: Mapping) -> None:
        self.tree = tree
        self.errors: list[JobError] = []

    def error(self, code: str, path: str, message: str, mend: str = "") -> None:
        """Keep an error; its line is that of the path, or of the nearest parent in the file."""
        if len(self.errors) >= MOST:
            return
        line = line_of(self.tree, path) if path else 0
        if len(message) > LONGEST_MESSAGE:
            message = message[:LONGEST_MESSAGE] + " ..."
        self.errors.append(JobError(code, path, line, message, mend[:LONGEST_MESSAGE]))

    def mapping(self, node: Node | None, path: str, what: str) -> Mapping:
        """The node as a mapping; an empty one when there is nothing, an error when it is a value."""
        if node is None or (isinstance(node, Scalar) and node.is_empty):
            return Mapping()
        if isinstance(node, Mapping):
            return node
        read_as = f"`{node.text}`" if isinstance(node, Scalar) else "a list"
        self.error(
            "not-a-mapping",
            path,
            f"Lines of `key: value` are expected for {what}; read was {read_as}.",
            "Indent the keys below it, or write them in braces: {key: value}.",
        )
        return Mapping()

    def things(self, node: Node | None, path: str, what: str) -> dict[str, Node]:
        """The things of a mapping by id; a key that is no id is an error, yet its thing is read."""
        mapping = self.mapping(node, path, what)
        found: dict[str, Node] = {}
        for key, each in mapping.entries.items():
            if key == "known":
                continue
            if not ID.match(key):
                better = re.sub(r"[^a-z0-9]+", "-", key.lower()).strip("-") or "a-name"
                self.error(
                    "bad-id",
                    f"{path}/{key}",
                    f"`{key}` cannot be the id of one of the {what}.",
                    f"Ids are small letters, digits and hyphens: `{better}`, and  name: {key}",
                )
            found[key] = each
        return found

    def known(self, mapping: Mapping, path: str, inherited: str) -> str:
        """How well the values of a mapping are known, when they do not say themselves."""
        node = mapping.entries.get("known")
        if not isinstance(node, Scalar) or node.is_empty:
            return inherited
        if node.text in KNOWN:
            return node.text
        self.error(
            "unknown-known",
            f"{path}/known" if path else "known",
            f"`{node.text}` does not say how well it is known.",
            offer(node.text, KNOWN),
        )
        return inherited

    def check_keys(self, shape: Shape, mapping: Mapping, path: str) -> set[str]:
        """Errors for unknown keys; returns the keys whose value a comma has cut in two."""
        cut: set[str] = set()
        before = ""
        for key, node in mapping.entries.items():
            if len(self.errors) >= MOST:
                break
            if key not in shape.by_key:
                here = f"{path}/{key}" if path else key
                if before and mapping.flow and is_rest_of_number(key, node):
                    if before not in shape.by_key:
                        # The third piece of one number: its first comma has been told of.
                        continue
                    whole = ",".join([text_of(mapping.entries[before]), *_pieces(mapping, key)])
                    self.error(
                        "stray-comma",
                        f"{path}/{before}" if path else before,
                        f"Inside braces a comma ends the value, so `{before}: {whole}` was cut in two.",
                        _without_comma(before, whole),
                    )
                    cut.add(before)
                else:
                    self.error(
                        "unknown-key",
                        here,
                        f"There is no `{key}` in {with_article(shape.name)}.",
                        offer_key(key, shape),
                    )
            before = key
        return cut

    def typed(self, node: Node, path: str, inherited: str) -> Typed | None:
        """The text of a value, given plain or as ``{is: ..., known: ..., within: ..., because: ...}``."""
        if isinstance(node, Scalar):
            return Typed(node, inherited)
        if not isinstance(node, Mapping):
            self.error(
                "not-a-value", path, "One value is expected here; read was a list.", "Write one value."
            )
            return None
        for key in node.entries:
            if key not in _VALUE_KEYS:
                self.error(
                    "not-a-value",
                    path,
                    f"One value is expected here; read was a mapping with `{key}`.",
                    "Write the value alone, or {is: value, known: measured, within: 5 %, because: reason}.",
                )
                return None
        known = self.known(node, path, inherited)
        value = node.entries.get("is")
        within, because = node.entries.get("within"), node.entries.get("because")
        if value is not None and not isinstance(value, Scalar):
            self.error("not-a-value", f"{path}/is", "One value is expected after `is`.", "Write one value.")
            return None
        if within is not None and not isinstance(within, Scalar):
            self.error(
                "not-a-value",
                f"{path}/within",
                "One value is expected after `within`.",
                "Write a percentage or a quantity.",
            )
            within = None
        return Typed(value or Scalar("", node.line), known, within, text_of(because) if because else "")

    def text(self, node: Node, path: str) -> str:
        """A text; empty when it cannot be read."""
        typed = self.typed(node, path, DEFAULT)
        return typed.scalar.text.strip() if typed else ""

    def choice(self, field: Field, node: Node, path: str) -> str:
        """One of a few words; the code of the error is ``unknown-`` and the key."""
        text = self.text(node, path)
        by_small = {each.lower(): each for each in field.choices}
        if text.lower() in by_small:
            return by_small[text.lower()]
        if text:
            self.error(
                f"unknown-{field.key}",
                path,
                f"`{text}` is not one of the words for {field.words}.",
                offer(text, field.choices),
            )
        else:
            known = ", ".join(field.choices)
            self.error("not-a-value", path, f"One word is expected for {field.words}; none was read.",
                       f"It can be: {known}.")  # fmt: skip
        return ""

    def yes_no(self, node: Node, path: str) -> bool | None:
        """Yes or no; None when it cannot be read."""
        text = self.text(node, path).lower()
        if text in YES or text in NO:
            return text in YES
        self.error("not-yes-or-no", path, f"Yes or no is expected; read was `{text}`.", "Write yes or no.")
        return None


def text_of(node: Node) -> str:
    """The text of a single value; empty for anything else."""
    return node.text if isinstance(node, Scalar) else ""


def offer(given: str, choices: Iterable[str]) -> str:
    """The nearest spelling, or what there is to choose from: five at most, and how many more."""
    known = [str(each) for each in choices]
    near = get_close_matches(given.lower()[:80], [each.lower() for each in known], 1, 0.6)
    if near:
        return f"Did you mean `{next(each for each in known if each.lower() == near[0])}`?"
    if not known:
        return "None are given in this job yet."
    if len(known) <= MOST_OFFERED:
        return f"It can be: {', '.join(known)}."
    # The nearest come first; what is left keeps the order of its table.
    near = get_close_matches(given.lower()[:80], [each.lower() for each in known], MOST_OFFERED, 0.3)
    known.sort(key=lambda each: near.index(each.lower()) if each.lower() in near else len(near))
    return f"It can be: {', '.join(known[:MOST_OFFERED])}, and {len(known) - MOST_OFFERED} more."


def offer_key(given: str, shape: Shape) -> str:
    """The key that a word of the trade stands for, else the nearest spelling among the keys of a shape."""
    meant = meant_by(shape.name, given)
    if meant:
        return f"Did you mean {or_(meant)}?"
    return offer(given, [each for each in shape.by_key if each != "known"])


def _pieces(mapping: Mapping, first: str) -> list[str]:
    """The pieces of a number cut by commas, from ``first`` on."""
    keys = list(mapping.entries)
    found = []
    for key in keys[keys.index(first) :]:
        node = mapping.entries[key]
        if not is_rest_of_number(key, node):
            break
        found.append(key.strip())
    return found


def _without_comma(key: str, whole: str) -> str:
    """Both readings of a number that a comma has cut in two, the likelier one first."""
    if whole.count(",") > 1:
        return f"Leave the commas out: `{key}: {whole.replace(',', '')}`"
    plain, decimal = (f"`{key}: {whole.replace(',', mark)}`" for mark in ("", "."))
    if re.search(r",\d{3}(?!\d)", whole):
        return f"Write {plain} if the comma parts the thousands, or {decimal} if it is a decimal point."
    return f"Write {decimal} if the comma is a decimal point, or {plain} if it is a slip."


def with_article(noun: str) -> str:
    """A noun behind a or an."""
    return f"{'an' if noun[:1] in 'aeio' or noun.startswith('un') else 'a'} {noun}"


def in_words(id: str) -> str:
    """The name of a thing that has none: its id as words."""
    return id.replace("-", " ").capitalize()

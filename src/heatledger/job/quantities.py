"""Reads the quantities of a job's tree into leaf figures.

A quantity that cannot be read becomes a figure without a value, so that one slip gives one error and
not a train of them.
"""

from __future__ import annotations

import re
from math import isfinite
from typing import TYPE_CHECKING, Any

from heatledger.job.fields import Field, Shape
from heatledger.job.known import HalfRange, half_range, range_name
from heatledger.job.reading import Entries, Typed, text_of, with_article
from heatledger.job.text import Mapping, Node, plain, walk
from heatledger.job.trade_words import mend_of_resistance
from heatledger.ledger import dimensions as d
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure, Leaf, LeafKind, leaf, missing
from heatledger.ledger.notation import NotationError, Reading, read, read_pair, read_percent
from heatledger.ledger.presets import US, Preset

if TYPE_CHECKING:
    from heatledger.job.again import Again

CODES_OF_NOTATION = {
    "below-absolute-zero": "below-absolute-zero", "comma": "comma", "no-unit": "no-unit",
    "not-a-pair": "size-needs-two", "not-finite": "infinite", "not-whole": "not-whole",
    "two-readings": "two-readings", "unknown-unit": "unknown-unit", "wrong-unit": "wrong-unit",
}  # fmt: skip
"""Code of a job error for each code of the notation; ``unreadable`` for the rest."""

LONGEST_BARE, LONGEST_BARE_OPENING = 60.0, 20.0
"""Feet or meters above which a size without units is asked for them: it may be meant in inches."""

_NOT_NUMBERS = re.compile(r"[+-]?\.?(nan|inf|infinity)\b", re.IGNORECASE)


class Reader(Entries):
    """Reads one tree. ``units`` read a bare number, ``ranges`` are the job's own half-ranges."""

    def __init__(self, tree: Mapping) -> None:
        super().__init__(tree)
        self.units: Preset = US
        self.ranges: dict[str, dict[str, HalfRange]] = {}
        self.again: Again | None = None
        """An earlier job of which what is unchanged is taken over."""

    def fields(self, shape: Shape, node: Node | None, path: str, inherited: str) -> dict[str, Any]:
        """Every single value of a mapping by its key; None where it is absent. ``known`` is what holds here,
        ``raw`` the texts typed, ``sides`` the two lengths of a size."""
        mapping = self.mapping(node, path, with_article(shape.name))
        known = self.known(mapping, path, inherited)
        cut = self.check_keys(shape, mapping, path)
        values: dict[str, Any] = {"known": known, "raw": self.raw(mapping, path), "node": mapping}
        for key, each in shape.by_key.items():
            if key == "known" or each.kind in ("shape", "map", "list", "any"):
                continue
            here = f"{path}/{key}" if path else key
            entry = mapping.entries.get(key)
            if key in cut:
                lacking = each.dimension if each.kind != "size" else None
                values[key] = missing(lacking, here, each.words) if lacking else None
            elif entry is None:
                values[key] = None
            elif each.kind == "quantity" or each.kind == "whole":
                values[key] = self.quantity(each, entry, here, known)
            elif each.kind == "size":
                values[key] = self.typed(entry, here, known)
            elif each.kind == "choice":
                values[key] = self.choice(each, entry, here)
            elif each.kind == "yes-no":
                values[key] = self.yes_no(entry, here)
            else:
                values[key] = self.text(entry, here)
        return values

    def raw(self, mapping: Mapping, path: str) -> dict[str, Any]:
        """A mapping as nested texts."""
        if self.again is not None and not path:
            return self.again.raw(mapping)
        return {key: plain(each) for key, each in mapping.entries.items()}

    def quantity(self, field: Field, node: Node, path: str, inherited: str) -> Figure:
        """A quantity as a leaf; without a value when it is empty or cannot be read."""
        dimension = field.dimension or d.RATIO
        typed = self.typed(node, path, inherited)
        if typed is None or typed.scalar.is_empty:
            return missing(dimension, path, field.words)
        reading = self.reading(typed.scalar.text, dimension, path)
        if reading is None or not self.allowed(field, reading, path):
            return missing(dimension, path, field.words)
        return self.leaf(reading, dimension, path, field.words, typed, field.range)

    def reading(self, text: str, dimension: Dimension, path: str, bare: bool = True) -> Reading | None:
        """The text read as a quantity, or None and an error."""
        if _NOT_NUMBERS.match(text.strip()):
            nan = "nan" in text.lower()
            self.error(
                "not-a-number" if nan else "infinite",
                path,
                f"`{text}` is not {with_article(dimension.name)}.",
                "Leave the value empty when it is not known yet.",
            )
            return None
        try:
            return read(text, dimension, self.units, bare=bare)
        except NotationError as why:
            self.notation_error(why, text, path)
            return None

    def notation_error(self, why: NotationError, text: str, path: str) -> None:
        """Keep what the notation could not read."""
        offers = " or ".join(f"`{each}`" for each in why.offers)
        mend = self._resistance_mend(text, path) or (f"Write {offers}." if offers else "")
        self.error(
            CODES_OF_NOTATION.get(why.code, "unreadable"),
            path,
            f"`{text.strip()[:80]}`: {_sentence(why.message)}",
            mend,
        )

    def _resistance_mend(self, text: str, path: str) -> str:
        """How to mend an R-value given as the U-value of a construction; empty for anything else."""
        steps = path.split("/")
        if steps[0] != "constructions" or steps[-1] != "u_value":
            return ""
        try:
            readable: tuple[str, ...] = (read(text, d.RESISTANCE, self.units, bare=False).text,)
        except NotationError as why:
            readable = why.offers if why.code == "two-readings" else ()
        kind = walk(self.tree, "/".join([*steps[:2], "kind"]))
        return mend_of_resistance(text, readable, text_of(kind) if kind else "") if readable else ""

    def allowed(self, field: Field, reading: Reading, path: str) -> bool:
        """True when the value can be, else an error: not below zero, whole, within what there is on earth."""
        value, text = reading.value, reading.text
        if not isfinite(value):
            self.error(
                "infinite", path, f"`{text}` is larger than any {field.words}.", "Write the value again."
            )
            return False
        if field.dimension is d.TEMPERATURE and value < 0:
            self.error(
                "below-absolute-zero",
                path,
                f"`{text}` is colder than anything can be.",
                "Check the number and the unit.",
            )
            return False
        if field.least != "any" and value < 0:
            self.error(
                "negative",
                path,
                f"The {field.words} cannot be less than zero; read was `{text}`.",
                "Write it without the minus sign.",
            )
            return False
        if field.least == "above zero" and value == 0:
            self.error(
                "zero", path, f"The {field.words} cannot be zero.", "Leave it empty when it is not known yet."
            )
            return False
        if field.kind == "whole" and value != int(value):
            self.error(
                "not-whole", path, f"A whole number is expected for the {field.words}; read was `{text}`."
            )
            return False
        return True

    def leaf(
        self, reading: Reading, dimension: Dimension, path: str, words: str, typed: Typed, range: str = ""
    ) -> Figure:
        """A leaf figure of the job, with how well it is known."""
        half, half_words = self.half(reading.value, dimension, path, typed, range)
        scalar = typed.scalar
        beside = (typed.because,) if typed.because else ()
        if scalar.by:
            beside = (*beside, f"from the what-if {scalar.by}")
        return leaf(
            reading.value,
            dimension,
            Leaf(
                LeafKind.JOB,
                path,
                words,
                reading.text,
                reading.unit,
                reading.typed_value,
                reading.places,
                typed.known,
                half,
                half_words,
                None,
                beside,
                scalar.replaced,
            ),
        )

    def half(
        self, value: float, dimension: Dimension, path: str, typed: Typed, range: str = ""
    ) -> tuple[float, str]:
        """Half-range in SI and its words: the entry's own ``within``, else the table's."""
        if typed.within is None or typed.within.is_empty:
            return half_range(range or range_name(dimension), typed.known, value, self.ranges)
        given = self.half_given(typed.within.text, dimension, f"{path}/within")
        return (given.of(value), f"{given.words}, as the job says") if given else (0.0, "")

    def half_given(self, text: str, dimension: Dimension, path: str) -> HalfRange | None:
        """A half-range as typed: a percentage, or a quantity of the kind it belongs to."""
        if "%" in text:
            if dimension is d.TEMPERATURE:
                self.error(
                    "within-of-temperature",
                    path,
                    f"`{text}` of a temperature means nothing.",
                    "Write degrees: within: 2 °F",
                )
                return None
            share = self.percent(text, path, 100)
            return None if share is None else HalfRange(text, share=share)
        kind = d.TEMPERATURE_DIFFERENCE if dimension is d.TEMPERATURE else dimension
        reading = self.reading(text, kind, path)
        if reading is None or not self.allowed(
            Field("within", "quantity", "half-range", kind, "zero"), reading, path
        ):
            return None
        return HalfRange(text, width=float(reading.value))

    def percent(self, text: str, path: str, most: float) -> float | None:
        """A percentage from zero to ``most`` as a share, or None and an error."""
        try:
            share = read_percent(text)
        except NotationError as why:
            mend = f"Write {' or '.join(why.offers)}." if why.offers else "Write a percentage: 10 %"
            self.error("percent-unreadable", path, f"`{text.strip()[:80]}`: {_sentence(why.message)}", mend)
            return None
        if not 0 <= share <= most / 100:
            self.error(
                "percent-out-of-range",
                path,
                f"`{text}` lies outside 0 to {most:g} %.",
                "Write a percentage in that range.",
            )
            return None
        return share

    def sides(
        self, typed: Typed | None, path: str, names: tuple[str, str]
    ) -> tuple[Figure | None, Figure | None]:
        """The two lengths of a size as leaves ``path/name``; both None when there is no size."""
        if typed is None:
            return None, None
        blank = tuple(missing(d.LENGTH, f"{path}/{each}", each) for each in names)
        if typed.scalar.is_empty:
            return blank[0], blank[1]
        here = f"{path}/size"
        if _NOT_NUMBERS.match(typed.scalar.text.strip()):
            self.reading(typed.scalar.text, d.LENGTH, here)
            return blank[0], blank[1]
        try:
            is_opening = names == ("width", "height")
            pair = read_pair(
                typed.scalar.text, self.units, LONGEST_BARE_OPENING if is_opening else LONGEST_BARE
            )
        except NotationError as why:
            self.notation_error(why, typed.scalar.text, here)
            return blank[0], blank[1]
        field = Field("size", "size", "size", d.LENGTH)
        # Both sides are looked at, so that both are told of.
        checked = [self.allowed(field, each, here) for each in pair]
        if not all(checked):
            return blank[0], blank[1]
        own = [
            self.leaf(each, d.LENGTH, f"{path}/{name}", name, typed)
            for each, name in zip(pair, names, strict=True)
        ]
        return own[0], own[1]


def _sentence(message: str) -> str:
    return message + ("" if message.endswith((".", "?")) else ".")

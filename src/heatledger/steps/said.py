"""Words with figures in them: a sentence that a paper or a terminal fills in for its reader."""

from __future__ import annotations

from dataclasses import dataclass

from heatledger.ledger.figures import Figure, LedgerError

SLOT = "{}"


@dataclass(frozen=True, eq=False)
class Said:
    """A sentence with a slot for each figure, in order; the reader's units are put in when it is shown.

    Ratios are meant as percentages. A figure without a value is shown as one that is not known yet.
    Raises ``LedgerError`` when slots and figures do not pair.
    """

    text: str
    figures: tuple[Figure, ...] = ()

    def __post_init__(self) -> None:
        if self.text.count(SLOT) != len(self.figures):
            raise LedgerError(
                f"{self.text!r} has {self.text.count(SLOT)} slots for {len(self.figures)} figures"
            )


def say(text: str, *figures: Figure) -> Said:
    """A sentence and the figures of its slots."""
    return Said(text, figures)


def plain(name: str) -> str:
    """A name as it may stand in a sentence, without marks that would be taken for a slot."""
    return name.replace("{", "(").replace("}", ")")


@dataclass(frozen=True, eq=False)
class CheckStep:
    """One step of a checklist: what to do, when it has passed, and what could hurt someone.

    ``applies`` is False for a step that this job has no use for. ``caution`` is empty where there is none.
    """

    id: str
    title: str
    do: Said
    pass_: Said
    caution: str
    applies: bool

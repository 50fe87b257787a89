"""Which sheet a finding belongs to, so that each paper says what is open on its own subject."""

from __future__ import annotations

from heatledger.ledger.findings import Finding, NotChecked, Weight
from heatledger.steps.design import Design

HEAT_LOSS_SHEET, EMITTERS_SHEET, PIPING_SHEET, BOILER_SHEET, CONTROLS_SHEET, STARTUP_SHEET = range(2, 8)
SHEETS = {
    2: "Heat loss", 3: "Emitters", 4: "Piping", 5: "Boiler room", 6: "Controls", 7: "Startup",
}  # fmt: skip

# The subject of a check is the module that it stands in; checks of the house and of its bills are the rest.
_SUBJECTS = (
    ("emitter", EMITTERS_SHEET), ("radiator", EMITTERS_SHEET), ("piping", PIPING_SHEET),
    ("pumping", PIPING_SHEET), ("boiler", BOILER_SHEET), ("pressure", BOILER_SHEET), ("water", BOILER_SHEET),
    ("control", CONTROLS_SHEET), ("startup", STARTUP_SHEET),
)  # fmt: skip


def sheet_of(id: str) -> int:
    """The sheet that a kind of finding belongs to."""
    from heatledger.steps.review import KINDS

    kind = KINDS.get(id)
    subject = kind.check.__module__.rpartition(".")[2] if kind else ""
    return next((sheet for start, sheet in _SUBJECTS if subject.startswith(start)), HEAT_LOSS_SHEET)


def findings_of(design: Design, *sheets: int) -> list[Finding]:
    """The findings on these sheets, in their order; all of them where none is named."""
    return [each for each in design.findings if not sheets or sheet_of(each.id) in sheets]


def not_checked_of(design: Design, *sheets: int) -> list[NotChecked]:
    """What could not be checked on these sheets; all of it where none is named."""
    return [each for each in design.not_checked if not sheets or sheet_of(each.id) in sheets]


def is_draft(design: Design) -> bool:
    """Whether something must be fixed that nobody has decided on."""
    return any(each.weight is Weight.MUST_FIX and each.decided is None for each in design.findings)

"""Which sheet a finding belongs to, so that each paper says what is open on its own subject."""

from __future__ import annotations

from functools import cache

from heatledger.ledger.findings import Finding, NotChecked, Weight
from heatledger.steps.design import Design
from heatledger.steps.may_run import poison_of

HEAT_LOSS_SHEET, EMITTERS_SHEET, PIPING_SHEET, BOILER_SHEET, CONTROLS_SHEET, STARTUP_SHEET = range(2, 8)
SHEETS = {
    2: "Heat loss", 3: "Emitters", 4: "Piping", 5: "Boiler room", 6: "Controls", 7: "Startup",
}  # fmt: skip

# The subject of a check is the module that it stands in. Every module has its line here, by itself: a new
# one must not fall to a sheet unseen.
SUBJECTS = {
    HEAT_LOSS_SHEET: (
        "temperatures", "standing", "sizes", "slips", "shapes", "depths", "materials", "extremes", "glass",
        "beyond", "leakage", "rooms", "envelope_gaps", "whole", "plans", "bill_findings",
    ),
    EMITTERS_SHEET: ("emitter_findings", "emitter_walls", "loop_findings", "radiator_findings"),
    PIPING_SHEET: ("unsolved", "piping", "runs", "pumping", "pumps_and_zones"),
    BOILER_SHEET: ("boiler", "firing", "pressure", "guards"),
    CONTROLS_SHEET: ("control_findings", "zone_findings"),
    STARTUP_SHEET: ("startup_findings", "fire_findings"),
}  # fmt: skip
SHEET_OF_SUBJECT = {name: sheet for sheet, names in SUBJECTS.items() for name in names}


@cache
def sheet_of(id: str) -> int:
    """The sheet that a kind of finding belongs to; the first one for a kind of no known subject."""
    from heatledger.steps.review import KINDS

    kind = KINDS.get(id)
    subject = kind.check.__module__.rpartition(".")[2] if kind else ""
    return SHEET_OF_SUBJECT.get(subject, HEAT_LOSS_SHEET)


def findings_of(design: Design, *sheets: int) -> list[Finding]:
    """The findings on these sheets by their weight, then in their order; all where none is named."""
    found = [each for each in design.findings if not sheets or sheet_of(each.id) in sheets]
    return sorted(found, key=lambda each: list(Weight).index(each.weight)) if sheets else found


def not_checked_of(design: Design, *sheets: int) -> list[NotChecked]:
    """What could not be checked on these sheets; all of it where none is named."""
    return [each for each in design.not_checked if not sheets or sheet_of(each.id) in sheets]


def must_fix(design: Design) -> list[Finding]:
    """What must be fixed and is still open, on the whole design."""
    return [each for each in design.findings if each.weight is Weight.MUST_FIX and each.decided is None]


def poison(design: Design) -> tuple[str, ...]:
    """What readings say of flue gas in the house or of too much carbon monoxide; no decision settles it."""
    return poison_of(design.job)


def is_draft(design: Design) -> bool:
    """Whether something must be fixed that nobody has decided on, or readings report poison."""
    return bool(must_fix(design) or poison(design))

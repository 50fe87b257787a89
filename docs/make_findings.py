"""Makes the page of the findings from the code: ``python docs/make_findings.py``."""

from __future__ import annotations

import sys
from pathlib import Path

from heatledger.ledger.dimensions import RATIO
from heatledger.ledger.presets import METRIC, US
from heatledger.ledger.show import show, show_percent
from heatledger.steps.review import GROUPS, KINDS
from heatledger.steps.review.kinds import Kind, Limit, usual

PAGE = Path(__file__).resolve().parent / "look-up" / "findings.md"
MADE = "<!-- Made from the code by docs/make_findings.py. Edit the code, then run it again. -->"
HEAD = """# Findings

What a careful senior designer says on reading a design. A finding says where, what, why, how to mend it,
on whose word, and how much it weighs: *must fix*, *decide* or *note*. A way to mend it that says what to
change can be tried as a what-if.

Every threshold can be changed in the job, under the name that stands beside it:

    limits:
      mostly-guesses: 60 %

A finding that needs a value the job does not have is silent, and is listed as not checked. One that
follows from another is folded under it, and one that stands in more than three rooms is said once. To keep
a finding and say why, write a decision under its name, or under its name and place:

    decisions:
      feet-meters-crossed@rooms/hall/ceiling_height:
        is: the hall is open to the roof
        because: measured on the first visit
        by: J. Ondry

Findings that could hurt someone carry their caution. Local code and licensed practice govern.
"""


def amount(limit: Limit) -> str:
    """A threshold in both systems."""
    value = usual(limit)
    if limit.dimension is RATIO:
        return show_percent(value, 0 if value >= 0.01 else 1)
    us, metric = (show(value, each, limit.dimension) for each in (US, METRIC))
    return us if us == metric else f"{us} ({metric})"


def section(kind: Kind) -> str:
    """One finding's part of the page."""
    amounts = [amount(each) for each in kind.limits]
    lines = [f"## {kind.id}", "", f"*{kind.weight.value.capitalize()}.* {kind.fires.format(*amounts)}", ""]
    lines += [f"- **Why:** {kind.why}.", f"- **To mend:** {kind.mend}"]
    said = ", ".join(each for each in (kind.citation.key, kind.citation.place) if each)
    lines.append(f"- **Source:** {said}; {kind.citation.standing.value}.")
    for each, text in zip(kind.limits, amounts, strict=True):
        lines.append(f"- **Threshold:** `{each.name}`, {each.words}: {text}; {each.standing}.")
    return "\n".join([*lines, ""])


def page() -> str:
    """The whole page, in the order of the trade."""
    lines = [MADE, HEAD]
    for group in GROUPS:
        title = (group.__doc__ or "").splitlines()[0].rstrip(".").removeprefix("Findings on ")
        lines += [f"**{title[:1].upper()}{title[1:]}:**"]
        own = [each for each in KINDS.values() if each.check.__module__ == group.__name__]
        lines += [", ".join(f"[{each.id}](#{each.id})" for each in own), ""]
    lines += [section(each) for each in KINDS.values()]
    return "\n".join(lines)


def main() -> int:
    """Write the page when it changed, and say so."""
    if not PAGE.exists() or PAGE.read_text(encoding="utf-8") != page():
        PAGE.write_text(page(), encoding="utf-8", newline="\n")
        print(f"written: docs/look-up/{PAGE.name}")
    return 0


if __name__ == "__main__":
    sys.exit(main())

"""The page of the findings and the list in the code are equal."""

from __future__ import annotations

import re
import sys

from heatledger.ledger.sources import bibliography
from heatledger.steps.review import KINDS
from tests.house_rules.tree import ROOT, text

sys.path.insert(0, str(ROOT / "docs"))
import make_findings

PAGE = ROOT / "docs" / "look-up" / "findings.md"


def test_the_page_is_current() -> None:
    assert text(PAGE) == make_findings.page(), "Run: python docs/make_findings.py"


def test_the_page_has_one_section_a_finding() -> None:
    assert re.findall(r"^## (\S+)$", text(PAGE), re.MULTILINE) == list(KINDS)


def test_every_section_says_all_there_is_to_say() -> None:
    for kind in KINDS.values():
        section = make_findings.section(kind)
        for word in (
            "Why:",
            "To mend:",
            "Source:",
            kind.weight.value.capitalize(),
            kind.citation.standing.value,
        ):
            assert word in section, kind.id
        assert section.count("Threshold:") == len(kind.limits)
        assert "{" not in section
        assert all(
            f"{{{i}}}" in kind.fires or i > 0 or kind.id == "skylight-as-window"
            for i in range(len(kind.limits))
        )


def test_sources_are_in_the_bibliography() -> None:
    keys = {each.citation.key for each in KINDS.values()} - {""}
    assert keys <= set(bibliography())

"""The sources a paper rests on, each with the places used and their standing."""

from __future__ import annotations

from collections.abc import Iterable

from heatledger.ledger.figures import Figure, Leaf
from heatledger.ledger.findings import Finding
from heatledger.ledger.formulas import Formula
from heatledger.ledger.sources import Citation, Standing, bibliography
from heatledger.ledger.symbols import Const, walk
from heatledger.papers import heat_loss_data as data
from heatledger.papers.addresses import Stage
from heatledger.papers.workings_data import SourceUse


def references(
    stages: Iterable[Stage], findings: Iterable[Finding], more: Iterable[Citation] = ()
) -> tuple[data.Reference, ...]:
    """Works in the order they are met, then practice, judgment and what is derived here.

    Those behind every figure and entry of some stages, behind findings, and ``more`` that a paper names.
    """
    uses: dict[str, list[SourceUse]] = {}
    groups = [each for stage in stages for each in (*stage.groups, *stage.given)]
    for figure in [each for group in groups for each in (*group.blocks, *group.lines)]:
        for citation in citations_of(figure):
            add(uses, citation)
    for citation in (*(each.citation for each in findings), *more):
        add(uses, citation)
    works = bibliography()
    named = [key for key in uses if key]
    lines = [
        data.Reference(f"{key}: {works[key].title}", works[key].used_for, by_standing(uses[key]))
        for key in named
        if key in works
    ]
    if "" in uses:
        lines.append(
            data.Reference(
                "No published source",
                f"Common practice, {Standing.JUDGMENT.value} and arithmetic.",
                by_standing(uses[""]),
            )
        )
    return tuple(lines)


def by_standing(uses: list[SourceUse]) -> tuple[SourceUse, ...]:
    """The places used, gathered under the word of their standing."""
    places: dict[str, list[str]] = {}
    for each in uses:
        places.setdefault(each.standing, []).append(each.text)
    return tuple(SourceUse("; ".join(texts), standing) for standing, texts in places.items())


def citations_of(figure: Figure) -> list[Citation]:
    """Every use of a source behind one figure."""
    origin = figure.origin
    if isinstance(origin, Formula):
        constants = [each.citation for each in walk(origin.expression) if isinstance(each, Const)]
        return [origin.citation, *constants]
    if isinstance(origin, Leaf) and origin.citation is not None:
        return [origin.citation]
    return []


def add(uses: dict[str, list[SourceUse]], citation: Citation) -> None:
    """Note one use of a source, once."""
    use = SourceUse(citation.place or "as a whole", citation.standing.value)
    if use not in uses.setdefault(citation.key, []):
        uses[citation.key].append(use)

"""The margin of a working: the sources of its formula and of each constant, with their standing."""

from __future__ import annotations

from html import escape

from heatledger.ledger.html_parts import standing_mark
from heatledger.ledger.sources import Citation, bibliography

Sources = tuple[tuple[str, Citation], ...]


def margin(sources: Sources) -> str:
    """The sources of a working; constants of one source stand together, and a work is named in full once."""
    if not sources:
        return ""
    cited: dict[Citation, list[str]] = {}
    for words, citation in sources:
        cited.setdefault(citation, []).append(words)
    named: set[str] = set()
    items = []
    for citation, cited_for in cited.items():
        items.append(_one(citation, [each for each in cited_for if each], citation.key not in named))
        named.add(citation.key)
    return f'<aside class="margin" aria-label="Sources">{"".join(items)}</aside>'


def _one(citation: Citation, words: list[str], in_full: bool) -> str:
    what = f"<b>{escape(_listed(words))}</b><br>" if words else ""
    work = bibliography().get(citation.key) if citation.key and in_full else None
    title = f'<br><span class="work">{escape(work.title)}</span>' if work else ""
    standing = f'<span class="standing">{escape(citation.standing.value)}</span>'
    place = "" if str(citation) == citation.standing.value else f": {escape(str(citation))}"
    return f"<p>{standing_mark(citation.standing)}{what}{standing}{place}{title}</p>"


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"

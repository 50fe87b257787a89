"""Pages made from the tables of the job file and of the catalog; ``make_docs.py`` writes them."""

from __future__ import annotations

from heatledger.catalog.listing import listing
from heatledger.job.fields import Field, Shape
from heatledger.job.shapes import JOB
from heatledger.ledger.presets import METRIC, US

KINDS = {
    "text": "text",
    "yes-no": "yes or no",
    "choice": "one word",
    "whole": "whole number",
    "size": "two lengths",
    "shape": "entries of its own",
    "map": "things by id",
    "list": "a list",
    "any": "as written",
}


def job_file_page(made: str) -> str:
    """Every key of the job file, part by part."""
    lines = [
        made,
        "# The job file",
        "",
        "Every key of format 1. Only `format` and `units` must be there; what else is needed and not given",
        "is listed as missing by `heatledger check`. A value may be written alone or as",
        "`{is: R-11, known: told, within: 15 %, because: ...}`. Things stand under an id of your choice",
        "(small letters, digits, hyphens). Lengths and temperatures are read in the notation of the trade:",
        "`12' 6 1/2\"`, `3810 mm`, `-2 °F`, `R-19`, `34,000 Btu/h`.",
        "",
    ]
    seen: list[Shape] = []
    queue = [JOB]
    while queue:
        shape = queue.pop(0)
        if shape in seen:
            continue
        seen.append(shape)
        lines += [f"## The {shape.name}", "", "| key | is | for example |", "|---|---|---|"]
        lines += [f"| `{each.key}` | {_is(each)} | {_example(each)} |" for each in shape.fields]
        lines.append("")
        queue += [each.shape for each in shape.fields if each.shape is not None]
    return "\n".join(lines)


def _is(field: Field) -> str:
    if field.choices:
        return f"{field.words}: {', '.join(field.choices)}"
    if field.dimension is not None and field.kind == "quantity":
        units = {preset.shown(field.dimension).unit.text for preset in (US, METRIC)} - {"1"}
        if not units:
            return f"{field.words}, as a number or in %"
        return f"{field.words}, such as in {' or '.join(sorted(units))}"
    if field.shape is not None:
        return f"{field.words} (see: the {field.shape.name})"
    return f"{field.words}; {KINDS[field.kind]}"


def _example(field: Field) -> str:
    return f"`{field.example}`" if field.example else ""


def catalog_page(made: str) -> str:
    """Every row of the catalog, group by group."""
    lines = [
        made,
        "# The catalog",
        "",
        "Values stand as the source prints them. A job takes a construction, whole with its films, by its",
        "name: `{kind: wall, catalog: frame-wall-2x4-r-11}`; an emitter likewise: `catalog: fin-tube-plain`,",
        "or `{catalog: column-3-38, sections: 9}`. A tube is named as the trade says it: `copper-m-3/4`,",
        "`3/4 in copper M` and `16x2 PEX` are all read. Fittings are counted by kind:",
        "`{90-ell: 4, coupling: 2}`. A size that a table of fittings has not takes the row with the nearest",
        "bore, and its working says so.",
        "Baseboard and panel radiators are made up: put the rating of your own in the job.",
        "In the terminal: `heatledger catalog window`, `heatledger catalog copper`.",
        "",
    ]
    rows = listing()
    for group in dict.fromkeys(row.group for row in rows):
        lines += [f"## {group}", ""]
        lines += ["| name in a job | what it is | value | source |", "|---|---|---|---|"]
        for row in rows:
            if row.group == group:
                source = f"{row.citation}; {row.citation.standing.value}"
                lines.append(f"| `{row.key}` | {row.name} | {row.value} | {source} |")
        lines.append("")
    return "\n".join(lines)

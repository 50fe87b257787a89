"""The material list: what a crew must have on site, as a paper, as CSV and as a workbook. No prices."""

from __future__ import annotations

from itertools import groupby

from heatledger.papers import blocks as b
from heatledger.papers.compile import Prepared
from heatledger.papers.material_files import as_csv, as_workbook
from heatledger.papers.material_lines import TENTHS, material_lines
from heatledger.papers.material_plant import PIECES, MaterialLine
from heatledger.papers.paper import paper_prepared
from heatledger.papers.printing import Printing
from heatledger.papers.replacement_paper import applies as replaced
from heatledger.steps.design import Design
from heatledger.studies.materials import PACKS, WASTE, tube_lots

TITLE = "Material list"
INTRO = (
    "Quantities that follow from the design, without prices. Tube has 10 % put on for cutting, bends and "
    "mistakes, and is rounded up to whole coils or lengths. Count again on site before you order: what "
    "stands here is only what the job names."
)
STAYS = (
    "The plant is replaced: the radiators stay, and so do the pipes, of which the job names none. Listed is "
    "only what a new boiler asks for, without prices. Circulators, tank and valves are judged on site."
)


def applies(design: Design) -> bool:
    """Due once the job names an emitter or a circuit."""
    return bool(design.job.system.emitters or design.job.system.circuits)


def filled(printing: Printing, sheet: str) -> Prepared:
    """The list as a paper, filled for a sheet."""
    return paper_prepared(material_paper(printing), sheet)


def beside(printing: Printing) -> dict[str, bytes]:
    """The same list as CSV and XLSX."""
    lines = material_lines(printing)
    head = printing.head(TITLE)
    return {"csv": as_csv(head, lines), "xlsx": as_workbook(head, lines)}


def material_paper(printing: Printing, lines: list[MaterialLine] | None = None) -> b.Paper:
    """The list, then every piece of tube as it is cut."""
    lines = material_lines(printing) if lines is None else lines
    intro = STAYS if replaced(printing.design) else INTRO
    blocks: list[b.Block] = [b.Paragraph(intro), _list(lines)]
    cuts = _cuts(printing)
    if cuts is not None:
        blocks += [b.Heading("Tube, piece by piece"), cuts]
    sources = printing.sources("material", more=(WASTE, PACKS) if cuts is not None else ())
    blocks += [printing.caution("Parts must carry the listing that the local code asks for."), sources]
    return b.Paper(printing.head(TITLE), tuple(blocks))


def _list(lines: list[MaterialLine]) -> b.Table:
    columns = (
        b.Column("", width="14pt"), b.Column("What", width="1.5fr"), b.Column("Size", width="1fr"),
        b.Column("How much", "right"), b.Column("Where, and how", width="1.6fr"),
    )  # fmt: skip
    rows: list[b.Row] = []
    for group, found in groupby(lines, key=lambda each: each.group):
        rows.append(b.Row((b.Cell(group, span=5),), "group"))
        rows += [_row(each) for each in found]
    return b.Table(
        columns, tuple(rows), "The box is for what is on site. A rule stands for a number to fill in."
    )


def _row(line: MaterialLine) -> b.Row:
    how = ": ".join(each for each in (line.where, line.note) if each)
    unit = "" if line.unit != PIECES or not line.text else " pc"
    return b.Row((
        b.Cell((b.Run("", box=True),)), b.Cell(line.item), b.Cell(line.size or " "),
        b.Cell(f"{line.text}{unit}", line.key), b.Cell((b.Run(how, "small"),) if how else " "),
    ))  # fmt: skip


def _cuts(printing: Printing) -> b.Table | None:
    """The pieces of each size of tube under the name of the tube, with their sum and what to buy."""
    lots = tube_lots(printing.design)
    if not lots:
        return None
    columns = (
        b.Column("Circuit", width="1fr"), b.Column("Piece", width="1.6fr"), b.Column("Length in place",
        "right"),
        b.Column("Cut at", "right", "70pt"),
    )  # fmt: skip
    rows: list[b.Row] = []
    for lot in lots:
        rows.append(b.Row((b.Cell(lot.tube, span=4),), "group"))
        for each in lot.cuts:
            key = printing.found.key(each.length)
            rows.append(b.Row((b.Cell(each.owner), b.Cell(each.what), b.Cell(printing.show(each.length), key),
                               b.Cell(""))))  # fmt: skip
        for said, figure, places in (
            ("Together", lot.length, None),
            ("With 10 % for waste", lot.to_buy, TENTHS),
        ):
            rows.append(b.Row((
                b.Cell(said, strong=True, span=2),
                b.Cell(printing.show(figure, places), printing.found.key(figure), strong=True), b.NOTHING,
            )))  # fmt: skip
    return b.Table(columns, tuple(rows))

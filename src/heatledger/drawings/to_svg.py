"""A drawing written as SVG: the only place that knows colors, line widths and type sizes.

Every color stands as an attribute of its shape: a variable draws nothing on paper, and a page that takes
no styles from inside itself would leave a style sheet out. Text names its family, which papers and pages
carry with them.
"""

from __future__ import annotations

from functools import cache, lru_cache
from html import escape
from itertools import groupby

from heatledger.drawings.shapes import Disc, Drawing, Path, Point, Shape, Words, stable

INK, INK2, PAPER = "#1F1D1A", "#534D45", "#FFFFFF"
SANS = "'Ledger Sans',sans-serif"
SUPPLY, RETURN, HAIR = "#AE4128", "#2A5E8E", "#DCD3C1"
WATER, SHORT, OPEN_BAND = "#F6E1D8", "#85194A", "#E4D9BE"
ON_SCREEN = 1.44
"""Pixels for a point on a screen, so that the smallest letters stand at 12 pixels and more."""

GROUNDS = {
    "walls": ("#D6C49D", "#8A7146"),
    "windows": ("#E3E9DE", "#8FA08F"),
    "doors": ("#6A5B42", "#6A5B42"),
    "ceiling": ("#D8D2C5", "#847B6B"),
    "floor": ("#B9C2A2", "#4F5E3A"),
    "air": ("#F7EFD3", "#C9A94F"),
}

LOOKS = {
    "edge": f"fill:none;stroke:{INK2};stroke-width:0.7",
    "plain": f"fill:{PAPER};stroke:{INK2};stroke-width:0.7",
    "ink": f"fill:{INK}",
    "rule": f"fill:none;stroke:{INK};stroke-width:0.9",
    "tick": f"fill:none;stroke:{INK};stroke-width:0.6",
    "mark": f"fill:none;stroke:{INK};stroke-width:2",
    "mark-thin": f"fill:none;stroke:{INK};stroke-width:0.9",
    "ring": f"fill:{PAPER};stroke:{INK};stroke-width:1.1",
    "band": f"fill:{OPEN_BAND}",
    "built": "fill:none;stroke:#3A352E;stroke-width:2.6;stroke-linejoin:miter",
    "built-thin": "fill:none;stroke:#3A352E;stroke-width:1.6",
    "solid": "fill:#3A352E",
    "opening": f"fill:{PAPER};stroke:#3A352E;stroke-width:0.9",
    "earth": f"fill:none;stroke:{INK2};stroke-width:0.6",
    "insulation": f"fill:none;stroke:{INK2};stroke-width:0.9;stroke-dasharray:2.5 1.5",
    "small": f"font-size:8.5px;fill:{INK2}",
    "text": f"font-size:9px;fill:{INK}",
    "quiet": f"font-size:9px;fill:{INK2}",
    "bold": f"font-size:9px;font-weight:600;fill:{INK}",
    "letter": f"font-size:8.5px;font-weight:600;fill:{INK}",
    "said-supply": f"font-size:9px;font-weight:600;fill:{SUPPLY}",
    "said-return": f"font-size:9px;font-weight:600;fill:{RETURN}",
    "hair": f"fill:none;stroke:{HAIR};stroke-width:0.5",
    "supply": f"fill:none;stroke:{SUPPLY};stroke-width:1.6;stroke-linejoin:miter",
    "return": f"fill:none;stroke:{RETURN};stroke-width:1.6;stroke-dasharray:6 2.6",
    "supply-run": f"fill:none;stroke:{SUPPLY};stroke-width:1.1",
    "return-run": f"fill:none;stroke:{RETURN};stroke-width:1.1;stroke-dasharray:4 1.8",
    "manifold-supply": f"fill:{SUPPLY};stroke:{SUPPLY};stroke-width:0.9",
    "manifold-return": f"fill:{PAPER};stroke:{RETURN};stroke-width:1.1",
    "flow-supply": f"fill:{SUPPLY}",
    "flow-return": f"fill:{RETURN}",
    "cold": f"fill:none;stroke:{INK};stroke-width:0.5",
    "discharge": f"fill:none;stroke:{INK};stroke-width:0.8;stroke-dasharray:5 1.6 1 1.6",
    "symbol": f"fill:{PAPER};stroke:{INK};stroke-width:0.85;stroke-linejoin:round",
    "symbol-line": f"fill:none;stroke:{INK};stroke-width:0.85;stroke-linejoin:round",
    "symbol-solid": f"fill:{INK};stroke:{INK};stroke-width:0.85;stroke-linejoin:round",
    "symbol-heavy": f"fill:{PAPER};stroke:{INK};stroke-width:1.3",
    "ring-supply": f"fill:{PAPER};stroke:{SUPPLY};stroke-width:1.1",
    "water": f"fill:{WATER}",
    "curve": f"fill:none;stroke:{INK};stroke-width:1.6",
    "curve-thin": f"fill:none;stroke:{INK};stroke-width:0.9",
    "dashed-thin": f"fill:none;stroke:{INK};stroke-width:0.8;stroke-dasharray:4 2",
    "curve-dashed": f"fill:none;stroke:{INK};stroke-width:0.9;stroke-dasharray:5 2.4",
    "curve-dotted": f"fill:none;stroke:{INK};stroke-width:1;stroke-dasharray:1 2.2",
    "fins": f"fill:none;stroke:{INK2};stroke-width:0.6",
    "wall-end": f"fill:none;stroke:{INK2};stroke-width:0.7",
    "shortage": f"fill:none;stroke:{SHORT};stroke-width:1.2;stroke-dasharray:3 2",
    "outside": f"fill:{SHORT}",
    "known-measured": f"fill:none;stroke:{INK2};stroke-width:0.8",
    "known-plans": f"fill:none;stroke:{INK2};stroke-width:0.8;stroke-dasharray:3.2 1.6",
    "known-assumed": f"fill:none;stroke:{INK2};stroke-width:0.9;stroke-dasharray:0.9 1.5",
    "dotted": f"fill:none;stroke:{INK2};stroke-width:0.8;stroke-dasharray:0.9 2",
    "dot-floor": f"fill:{GROUNDS['floor'][1]}",
    **{f"ground-{cause}": f"fill:{ground}" for cause, (ground, _) in GROUNDS.items()},
    **{
        f"hatch-{cause}": f"fill:none;stroke:{stroke};stroke-width:0.7"
        for cause, (_, stroke) in GROUNDS.items()
    },
}


@lru_cache(maxsize=128)
def to_svg(drawing: Drawing, id: str = "", scale: float = 1.0) -> str:
    """The drawing as one SVG text, the same for the same drawing on every machine.

    ``id`` names it on a page, and title and words after it; ``scale`` is how large a point is shown.
    """
    unknown = sorted({shape.look for shape in drawing.shapes if shape.look not in LOOKS})
    if unknown:
        raise ValueError(f"no look is given for the class {unknown[0]!r}")
    width, height = stable(drawing.width), stable(drawing.height)
    shown = f'width="{stable(drawing.width * scale)}" height="{stable(drawing.height * scale)}"'
    own, title, words = "", "", ""
    if id:
        own = f' id="{escape(id)}" aria-labelledby="{escape(id)}-title {escape(id)}-words"'
        title, words = f' id="{escape(id)}-title"', f' id="{escape(id)}-words"'
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg"{own} {shown} viewBox="0 0 {width} {height}" role="img" '
        f'font-family="{SANS}">',
        f"<title{title}>{escape(drawing.title)}</title><desc{words}>{escape(drawing.words)}</desc>",
        *_elements(drawing.shapes),
        "</svg>",
    ]
    return "\n".join(parts)


@cache
def attributes(look: str) -> str:
    """A look as attributes of a shape."""
    pairs = (each.partition(":") for each in LOOKS[look].split(";"))
    return " ".join(f'{name}="{value.removesuffix("px")}"' for name, _, value in pairs)


def _elements(shapes: tuple[Shape, ...]) -> list[str]:
    """One element for each run of strokes or dots of one look, so that a hatch is a single path."""
    runs = groupby(shapes, key=_kind)
    found: list[str] = []
    for (kind, look, closed), run in runs:
        if kind is Words:
            inner = [_words(shape) for shape in run if isinstance(shape, Words)]
        elif closed:
            inner = [f'<path d="{_steps(shape)}"/>' for shape in run]
        else:
            inner = [f'<path d="{"".join([_steps(shape) for shape in run])}"/>']
        if len(inner) == 1:
            name, _, rest = inner[0].partition(" ")
            found.append(f"{name} {attributes(look)} {rest}")
        else:
            found += [f"<g {attributes(look)}>", *inner, "</g>"]
    return found


def _kind(shape: Shape) -> tuple[type, str, bool]:
    """What neighbors have in common that are written together."""
    return shape.__class__, shape.look, shape.__class__ is Path and shape.closed


def _steps(shape: Shape) -> str:
    if isinstance(shape, Path):
        if len(shape.points) == 2 and not shape.closed:
            return _stroke(*shape.points)
        steps = " ".join(f"{stable(x)} {stable(y)}" for x, y in shape.points)
        return f"M{steps}{'Z' if shape.closed else ''}"
    if isinstance(shape, Disc):
        (x, y), radius = shape.center, stable(shape.radius)
        across = stable(2 * shape.radius)
        start = f"M{stable(x - shape.radius)} {stable(y)}"
        return f"{start}a{radius} {radius} 0 1 0 {across} 0a{radius} {radius} 0 1 0 -{across} 0Z"
    raise TypeError(f"{type(shape).__name__} is no line")


def _stroke(start: Point, end: Point) -> str:
    """A straight stroke; an upright or level one in the short form, since hatches have hundreds."""
    ax, ay, bx, by = stable(start[0]), stable(start[1]), stable(end[0]), stable(end[1])
    rest = f"V{by}" if ax == bx else f"H{bx}" if ay == by else f" {bx} {by}"
    return f"M{ax} {ay}{rest}"


def _words(shape: Words) -> str:
    (x, y), text = shape.at, escape(shape.text)
    anchor = "" if shape.anchor == "start" else f' text-anchor="{shape.anchor}"'
    return f'<text x="{stable(x)}" y="{stable(y)}"{anchor}>{text}</text>'

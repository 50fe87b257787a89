"""How much room a line of text takes, before any face has set it."""

from __future__ import annotations

from heatledger.drawings.shapes import Drawing, Words

SIZES = {
    "small": 8.5, "text": 9.0, "quiet": 9.0, "bold": 9.0, "letter": 8.5,
    "said-supply": 9.0, "said-return": 9.0,
}  # fmt: skip
"""Type sizes of the looks in points, as ``to_svg`` sets them."""

# Shares of the type size, a little over what the text face takes.
_NARROW, _SLIM, _WIDE = "iljI|.,:;'′’", 'ftr()[]/-−·″" ', "mwMWGOQ%&@—"
_SHARES = {**dict.fromkeys(_NARROW, 0.29), **dict.fromkeys(_SLIM, 0.36), **dict.fromkeys(_WIDE, 0.84)}

TOLD_BY = 3
"""So many letters at the end of a cut text are too few to tell it from another."""

Box = tuple[float, float, float, float]


def text_width(text: str, size: float = SIZES["small"]) -> float:
    """The width of a line in points, estimated from its letters and rather too much than too little."""
    return sum(_SHARES.get(each, 0.62 if each.isupper() else 0.53) for each in text) * size


def fitted(text: str, room: float, size: float = SIZES["small"]) -> str:
    """The text, cut with three dots where ``room`` (points) does not hold it."""
    if text_width(text, size) <= room:
        return text
    while text and text_width(f"{text}…", size) > room:
        text = text[:-1]
    return f"{text.rstrip(' ,')}…" if text else ""


def fitted_apart(texts: list[str], room: float, size: float = SIZES["small"]) -> list[str]:
    """Texts cut to a room; those that begin as another does keep their ends instead of their beginnings."""
    cut = [fitted(each, room, size) for each in texts]
    return [
        _tail(text, texts, room, size) if short != text and _begin_alike(text, short, texts) else short
        for text, short in zip(texts, cut, strict=True)
    ]


def _begin_alike(text: str, short: str, texts: list[str]) -> bool:
    """Whether what is left of a text would hardly tell it from another."""
    stem = short[: max(len(short) - TOLD_BY, 1)]
    return any(each != text and each.startswith(stem) for each in texts)


def _tail(text: str, texts: list[str], room: float, size: float) -> str:
    """The end of a text, from a whole word on where that tells it from the others as well."""
    end = text
    while end and text_width(f"…{end}", size) > room:
        end = end[1:]
    whole = end.partition(" ")[2]
    inside_a_word = text[: len(text) - len(end)][-1:] not in ("", " ")
    if inside_a_word and whole and not any(each != text and each.endswith(whole) for each in texts):
        end = whole
    return f"…{end.lstrip(' ,')}" if end else ""


def lines_of(text: str, room: float, most: int = 2, size: float = SIZES["small"]) -> list[str]:
    """The text broken between words into at most ``most`` lines; the last is cut if it must be."""
    lines: list[str] = []
    for word in text.split():
        if lines and text_width(f"{lines[-1]} {word}", size) <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    if len(lines) > most:
        lines = [*lines[: most - 1], " ".join(lines[most - 1 :])]
    return [fitted(each, room, size) for each in lines]


def text_box(words: Words) -> Box:
    """Left, top, right and bottom of a line of text, from the top of its capitals to its descenders."""
    size = SIZES[words.look]
    wide = text_width(words.text, size)
    x, y = words.at
    left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[words.anchor]
    return left, y - 0.72 * size, left + wide, y + 0.21 * size


def text_boxes(drawing: Drawing) -> list[tuple[str, Box]]:
    """Every text of a drawing with the box that it fills."""
    return [(each.text, text_box(each)) for each in drawing.shapes if isinstance(each, Words)]

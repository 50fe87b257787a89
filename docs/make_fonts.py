"""Cut the typefaces of the screens: small WOFF2 files with the letters and signs that the app shows.

    make fonts

runs this in an environment of its own (it needs fontTools and brotli, which the project does not). The full
typefaces come from two npm packages, fetched by ``npm pack``; what was cut is noted in ``fonts.toml`` beside
the files, so that a test can hold every sign of the app against it.
"""

from __future__ import annotations

import hashlib
import subprocess
import sys
import tarfile
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from fontTools import subset
from fontTools.ttLib import TTFont

FONTS = Path(__file__).resolve().parents[1] / "src" / "heatledger" / "web" / "static" / "fonts"
VERSION = "0.4.1"
LARGEST_IN_ALL = 150_000
"""Bytes: a first visit over a slow line must not wait for letters."""

FEATURES = ["ccmp", "locl", "kern", "liga", "tnum", "lnum", "pnum", "frac", "numr", "dnom", "case", "mark"]
LATIN = [*range(0x20, 0x7F), *range(0xA0, 0x100)]
LATIN_OF_NAMES = range(0x100, 0x180)
"""Letters that names of people and places take; the display face does without them."""

SIGNS = (
    "¼½¾⅓⅔⅛⅜⅝⅞⁄′″×÷−±·°√≤≥≠≈∞∑∆∕∙⋅⌀"
    "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻₀₁₂₃₄₅₆₇₈₉"
    "αβεηθκλμπρσφψΔΣΩ"
    "←↑→↓▲△▼▽■□●○◆✓✗℃℉€™–—‘’‚“”„†‡•…‰"
    "\u2007\u2009\u200a\u2010\u2011\u202f"
)


class Cut(NamedTuple):
    """One file: what it is cut from, and what it is called."""

    package: str
    source: str
    family: str
    style: str
    weight: int
    letters_of_names: bool = False

    @property
    def name(self) -> str:
        """The name of the file."""
        return f"{self.family}-{self.style}.woff2".replace(" ", "")


SANS, SERIF = "source-sans-3", "source-serif-4"
CUTS = (
    Cut(SANS, "400Regular/SourceSans3_400Regular.ttf", "Ledger Sans", "Regular", 400, True),
    Cut(SANS, "500Medium/SourceSans3_500Medium.ttf", "Ledger Sans", "Medium", 500),
    Cut(SANS, "600SemiBold/SourceSans3_600SemiBold.ttf", "Ledger Sans", "SemiBold", 600, True),
    Cut(SERIF, "500Medium/SourceSerif4_500Medium.ttf", "Ledger Serif", "Medium", 500),
    Cut(SERIF, "600SemiBold/SourceSerif4_600SemiBold.ttf", "Ledger Serif", "SemiBold", 600),
    Cut(SERIF, "400Regular_Italic/SourceSerif4_400Regular_Italic.ttf", "Ledger Serif", "Italic", 400),
)


def fetch(package: str, folder: Path) -> Path:
    """The unpacked npm package of one typeface, below ``folder``."""
    full = f"@expo-google-fonts/{package}@{VERSION}"
    packed = subprocess.run(
        ["npm", "pack", "--silent", full], cwd=folder, check=True, capture_output=True, text=True
    )
    with tarfile.open(folder / packed.stdout.split()[-1]) as archive:
        archive.extractall(folder / package, filter="data")
    return folder / package / "package"


def rename(font: TTFont, cut: Cut) -> None:
    """Give the changed font a name of its own; the notices of the licence stay."""
    names = font["name"]
    notices = {0, 7, 13, 14}
    names.names = [each for each in names.names if each.nameID in notices and each.platformID == 3]
    postscript = f"{cut.family}-{cut.style}".replace(" ", "")
    full = f"{cut.family} {cut.style}"
    said = {1: full, 2: "Regular", 3: postscript, 4: full, 6: postscript, 16: cut.family, 17: cut.style}
    for number, words in said.items():
        names.setName(words, number, 3, 1, 0x409)


def make(cut: Cut, source: Path) -> set[int]:
    """Write one file; the characters it holds."""
    options = subset.Options()
    options.flavor, options.hinting, options.layout_features = "woff2", False, FEATURES
    options.name_IDs, options.notdef_outline = ["*"], True
    font = TTFont(source, recalcTimestamp=False)
    cutter = subset.Subsetter(options)
    wanted = {*LATIN, *map(ord, SIGNS), *(LATIN_OF_NAMES if cut.letters_of_names else ())}
    cutter.populate(unicodes=wanted)
    cutter.subset(font)
    rename(font, cut)
    font.flavor = "woff2"
    font.save(FONTS / cut.name)
    return set(font.getBestCmap())


def note(held: dict[Cut, set[int]]) -> Iterator[str]:
    """The lines of ``fonts.toml``."""
    yield "# Made by docs/make_fonts.py. What each file holds, so that a test can ask without opening it."
    for cut, characters in held.items():
        yield ""
        yield f'["{cut.name}"]'
        yield f'family = "{cut.family}"'
        yield f"weight = {cut.weight}"
        yield f'style = "{"italic" if cut.style == "Italic" else "normal"}"'
        yield f'cut_from = "{Path(cut.source).name} of @expo-google-fonts/{cut.package} {VERSION}"'
        yield f'sha256 = "{hashlib.sha256((FONTS / cut.name).read_bytes()).hexdigest()}"'
        yield "characters = ["
        yield from (f'  "{first:04X}-{last:04X}",' for first, last in ranges(characters))
        yield "]"


def ranges(characters: set[int]) -> Iterator[tuple[int, int]]:
    """Runs of neighbors, first and last."""
    waiting = sorted(characters)
    while waiting:
        first = last = waiting.pop(0)
        while waiting and waiting[0] == last + 1:
            last = waiting.pop(0)
        yield first, last


def main() -> int:
    """Cut all; 1 when they are too large together."""
    with tempfile.TemporaryDirectory() as folder:
        packages = {each: fetch(each, Path(folder)) for each in (SANS, SERIF)}
        held = {each: make(each, packages[each.package] / each.source) for each in CUTS}
    (FONTS / "fonts.toml").write_text("\n".join(note(held)) + "\n", encoding="utf-8", newline="\n")
    size = sum((FONTS / each.name).stat().st_size for each in CUTS)
    print(f"{len(CUTS)} files, {size / 1000:.0f} kB")
    if size > LARGEST_IN_ALL:
        print(f"That is over {LARGEST_IN_ALL / 1000:.0f} kB: leave out a weight or some letters.")
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())

"""Cut the lettering of drawings out of whole fonts, and write down how wide each letter is.

    python tools/letters.py FOLDER

FOLDER holds DejaVuSans.ttf and DejaVuSans-Bold.ttf, version 2.37, as their makers publish them. Written are the two
small fonts and their licence in src/boxwright/render/fonts, and the advances in src/boxwright/drawing/advances.py.
Hints, kerning and ligatures are left out: a line of text is then as wide as its advances say, in every writer.
Needs fontTools, which the test extra brings.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

PACKAGE = Path(__file__).resolve().parents[1] / "src" / "boxwright"
FACES = {"REGULAR": "DejaVuSans.ttf", "BOLD": "DejaVuSans-Bold.ttf"}
LICENCE_NAME = 13
"""The entry of a font's table of names that holds the licence."""

BLOCKS = (
    (0x20, 0x7E),  # Latin
    (0xA0, 0x17F),  # Latin-1, Latin extended A
    (0x218, 0x21B),  # Romanian
    (0x2C6, 0x2DD),  # free-standing accents
    (0x370, 0x3FF),  # Greek
    (0x400, 0x4FF),  # Cyrillic
    (0x1E80, 0x1E85),  # Welsh
    (0x1E9E, 0x1EF9),  # capital sharp s, Vietnamese
    (0x2010, 0x2027),  # dashes, quotation marks, bullets
    (0x2030, 0x203A),  # per mille, primes
    (0x2044, 0x2044),  # fraction bar
    (0x2070, 0x208E),  # superscripts, subscripts
    (0x20AC, 0x20AC),
    (0x2116, 0x2116),
    (0x2122, 0x2126),
    (0x2150, 0x215F),  # fractions
    (0x2190, 0x2199),  # arrows
    (0x21D0, 0x21D4),
    (0x2200, 0x222B),  # mathematical
    (0x2248, 0x2248),
    (0x2260, 0x2265),
    (0x22A5, 0x22A5),
    (0x2300, 0x2300),  # diameter
    (0x25A0, 0x25CF),  # squares, triangles, circles
    (0x2605, 0x2606),
    (0x2610, 0x2612),  # boxes to tick
    (0x26A0, 0x26A0),  # warning
    (0x2713, 0x2718),  # ticks, crosses
    (0xFFFD, 0xFFFD),  # what cannot be shown
)


def cut_font(whole: Path) -> TTFont:
    """Return a font with the blocks above and nothing that moves a letter."""
    options = subset.Options(
        layout_features=[],
        hinting=False,
        legacy_kern=False,
        notdef_outline=True,
        glyph_names=False,
        name_IDs=[0, 1, 2, 3, 4, 5, 6],
        name_languages=[0x409],
        recalc_timestamp=False,
        drop_tables=["FFTM", "GDEF", "GPOS", "GSUB", "MATH", "kern", "gasp", "DSIG"],
    )
    font = TTFont(whole, recalcTimestamp=False)
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=[code for first, last in BLOCKS for code in range(first, last + 1)])
    cutter.subset(font)
    return font


def runs(advances: dict[int, int]) -> Iterator[tuple[int, list[int]]]:
    """Yield the first code of each unbroken run of characters, with their advances."""
    start, run = -1, list[int]()
    for code in sorted(advances):
        if code != start + len(run):
            if run:
                yield start, run
            start, run = code, []
        run.append(advances[code])
    if run:
        yield start, run


def advances_of(font: TTFont) -> dict[int, int]:
    """Return how far each character moves the pen, in the units of the font."""
    return {code: font["hmtx"][glyph][0] for code, glyph in font.getBestCmap().items()}


def wrapped(numbers: list[int]) -> Iterator[str]:
    """Yield lines of code that hold the numbers."""
    line = "       "
    for number in numbers:
        word = f" {number},"
        if len(line) + len(word) > 120:
            yield line
            line = "       "
        line += word
    yield line


def module_text(fonts: dict[str, TTFont]) -> str:
    """Return the text of the module of advances."""
    lines = [
        '"""How far each character moves the pen: written by tools/letters.py from the fonts in render/fonts.',
        "",
        "A run of characters is given by the code of its first one. Units: UNITS to the height of the font (em).",
        '"""',
        "",
        "from __future__ import annotations",
        "",
        "# fmt: off",
        f"UNITS = {fonts['REGULAR']['head'].unitsPerEm}",
        f"CAP_HEIGHT = {fonts['REGULAR']['glyf'][fonts['REGULAR'].getBestCmap()[ord('H')]].yMax}",
    ]
    for name, font in fonts.items():
        lines.append(f"{name}: dict[int, tuple[int, ...]] = {{")
        for start, run in runs(advances_of(font)):
            lines.append(f"    0x{start:X}: (")
            lines += wrapped(run)
            lines.append("    ),")
        lines.append("}")
    return "\n".join(lines) + "\n"


def main() -> None:
    """Write the fonts, their licence and the table of advances."""
    source, target = Path(sys.argv[1]), PACKAGE / "render" / "fonts"
    target.mkdir(exist_ok=True)
    fonts = {name: cut_font(source / file) for name, file in FACES.items()}
    for name, font in fonts.items():
        font.save(target / FACES[name])
    licence = TTFont(source / FACES["REGULAR"])["name"].getDebugName(LICENCE_NAME)
    lines = (line.rstrip() for line in licence.replace("\r\n", "\n").strip().split("\n"))
    (target / "LICENSE.txt").write_text("\n".join(lines) + "\n", encoding="utf-8")
    (PACKAGE / "drawing" / "advances.py").write_text(module_text(fonts), encoding="utf-8")


if __name__ == "__main__":
    main()

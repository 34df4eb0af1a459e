"""A PDF read back by another library: its sizes, its words, its bar; and a PNG whose points are counted."""

from __future__ import annotations

import dataclasses
import io
import os
import re
import struct
import subprocess
import sys
import zlib

import pypdf
import pytest

from boxwright.render.extra import MissingExtra
from boxwright.render.pdf import pdf_of
from boxwright.render.png import png_of
from boxwright.render.typeset import _fonts
from tests.houserules.tree import ROOT
from tests.render.by_hand import BAR, POISON, page, words

POINT = 25.4 / 72.0  # mm, the unit of a PDF file: ISO 32000, from memory
UPRIGHT = dataclasses.replace(page(2, 3), width=210.0, height=297.0, title="Upright")


def read(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


@pytest.fixture(scope="module")
def book() -> pypdf.PdfReader:
    third = dataclasses.replace(page(3, 3), title="Third")
    return read(pdf_of([page(1, 3), UPRIGHT, third], title="All sheets of a rig"))


def lines(reader: pypdf.PdfReader, number: int) -> list[tuple[float, float, float, float]]:
    """Return the straight lines of a page in millimetres from its lower left corner."""
    found = []
    matrix, start = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), (0.0, 0.0)

    def on_paper(x: float, y: float) -> tuple[float, float]:
        a, b, c, d, e, f = matrix
        return (a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT

    saved = []
    content = pypdf.generic.ContentStream(reader.pages[number].get_contents(), reader)
    for operands, operator in content.operations:
        values = [float(one) for one in operands if isinstance(one, (int, float))]
        if operator == b"q":
            saved.append(matrix)
        elif operator == b"Q":
            matrix = saved.pop()
        elif operator == b"cm":
            a, b, c, d, e, f = matrix
            g, h, i, j, k, m = values
            matrix = (
                a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * m + e, b * k + d * m + f,
            )  # fmt: skip
        elif operator == b"m":
            start = on_paper(*values)
        elif operator == b"l":
            end = on_paper(*values)
            found.append((*start, *end))
            start = end
    return found


def test_each_page_has_its_own_size_and_stands_in_the_contents(book: pypdf.PdfReader) -> None:
    sizes = [(float(one.mediabox.width) * POINT, float(one.mediabox.height) * POINT) for one in book.pages]
    for found, wanted in zip(sizes, [(279.4, 215.9), (210.0, 297.0), (279.4, 215.9)], strict=True):
        assert found == pytest.approx(wanted, abs=0.05)
    assert [one.title for one in book.outline] == ["Left wall from outside", "Upright", "Third"]
    assert book.metadata.title == "All sheets of a rig"


def test_every_word_can_be_found(book: pypdf.PdfReader) -> None:
    found = book.pages[0].extract_text()
    for one in page().words:
        assert one.text.replace("木", "\N{REPLACEMENT CHARACTER}") in found
    assert found.count(page().title) == 1


def test_the_bar_of_100_mm_is_100_mm(book: pypdf.PdfReader) -> None:
    bar = [one for one in lines(book, 0) if one[1] == pytest.approx(215.9 - BAR[0][1], abs=0.01)]
    (found,) = (one for one in bar if one[1] == pytest.approx(one[3]) and one[2] - one[0] > 50.0)
    assert found[2] - found[0] == pytest.approx(100.0, abs=0.02)
    assert found[0] == pytest.approx(BAR[0][0], abs=0.02)


def test_only_our_fonts_are_in_it_and_they_are_whole_enough_to_print(book: pypdf.PdfReader) -> None:
    fonts = [one.get_object() for leaf in book.pages for one in leaf["/Resources"]["/Font"].values()]
    names = {str(font["/BaseFont"]).partition("+")[2] for font in fonts}
    assert {re.sub(r"-Identity.*", "", name) for name in names} == {"DejaVuSans", "DejaVuSans-Bold"}
    for font in fonts:
        (inner,) = font["/DescendantFonts"]
        described = inner.get_object()["/FontDescriptor"]
        assert {"/FontFile2", "/FontFile3"} & set(described)


@pytest.mark.parametrize(
    "text", [POISON, "\x00\x1b\ud800\u202e\ufffe", '#panic("no")', "]]></svg><svg>", "&#0;&amp;", "= Head\n- item"]
)
def test_nothing_a_rig_says_is_a_program_or_markup(text: str) -> None:
    odd = dataclasses.replace(page(), title=text, name=text, words=(words((30.0, 30.0), f"a{text}z", text),))
    found = read(pdf_of([odd], title=text)).pages[0].extract_text()
    assert found.startswith("a") and found.endswith("z")
    for word in re.findall(r"[!-~]+", text):
        assert word in found


def test_no_page_is_no_file() -> None:
    with pytest.raises(ValueError, match="at least one page"):
        pdf_of([])


PROGRAM = """
import hashlib
from boxwright.render import dxf, pdf, png, svg
from tests.render.by_hand import page
whole = [svg.svg_of(page()).encode(), pdf.pdf_of([page()]), png.png_of(page(), 72.0), dxf.dxf_of(page())]
print(*(hashlib.sha256(one).hexdigest() for one in whole))
"""


def test_every_writer_gives_the_same_bytes_whatever_the_order_of_sets_and_the_clock() -> None:
    answers = []
    for seed, zone in (("0", "UTC"), ("4711", "Pacific/Auckland")):
        environment = {**os.environ, "PYTHONHASHSEED": seed, "TZ": zone}
        run = subprocess.run(
            [sys.executable, "-c", PROGRAM], cwd=ROOT, env=environment, capture_output=True, text=True, check=True
        )
        answers.append(run.stdout.split())
    assert len(answers[0]) == 4
    assert answers[0] == answers[1]


@pytest.mark.parametrize("writer", ["pdf", "png"])
def test_without_typst_it_says_what_is_missing(writer: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    _fonts.cache_clear()
    with pytest.raises(MissingExtra) as raised:
        pdf_of([page()]) if writer == "pdf" else png_of(page())
    assert (raised.value.extra, raised.value.package) == ("book", "typst")


def rows(picture: bytes) -> tuple[list[list[bool]], int]:
    """Return which points of a PNG are dark, row by row, and how many points it says go to the metre.

    Read by hand from the file's own chunks: 8 bits, RGBA or RGB, the five filters of ISO/IEC 15948 (from memory).
    """
    assert picture[:8] == b"\x89PNG\r\n\x1a\n"
    chunks, place = {}, 8
    while place < len(picture):
        (length,) = struct.unpack(">I", picture[place : place + 4])
        name, content = picture[place + 4 : place + 8], picture[place + 8 : place + 8 + length]
        (check,) = struct.unpack(">I", picture[place + 8 + length : place + 12 + length])
        assert zlib.crc32(name + content) == check
        chunks[name] = chunks.get(name, b"") + content
        place += 12 + length
    wide, high, depth, colour = struct.unpack(">IIBB", chunks[b"IHDR"][:10])
    assert depth == 8
    size = {2: 3, 6: 4}[colour]
    data, before, dark = zlib.decompress(chunks[b"IDAT"]), bytearray(wide * size), []
    for number in range(high):
        start = number * (wide * size + 1)
        kind, line = data[start], bytearray(data[start + 1 : start + 1 + wide * size])
        for at in range(wide * size):
            left = line[at - size] if at >= size else 0
            up, corner = before[at], before[at - size] if at >= size else 0
            guess = left + up - corner
            nearest = min((left, up, corner), key=lambda one, guess=guess: abs(guess - one))
            line[at] = (line[at] + (0, left, up, (left + up) // 2, nearest)[kind]) % 256
        before = line
        dark.append([line[at] < 128 for at in range(0, wide * size, size)])
    assert chunks[b"pHYs"][8:] == b"\x01"
    return dark, struct.unpack(">II", chunks[b"pHYs"][:8])[0]


def test_the_bar_of_100_mm_counted_in_points_of_the_picture() -> None:
    dpi = 300.0
    bar_only = dataclasses.replace(
        page(), width=120.0, height=20.0, words=(), curves=(),
        strokes=tuple(
            dataclasses.replace(one, points=tuple((x - 30.0, y - 190.0) for x, y in one.points))
            for one in page().strokes if one.belongs == "border" and one.line == "visible"
        ),
    )  # fmt: skip
    dark, to_the_metre = rows(png_of(bar_only, dpi))
    assert to_the_metre == round(dpi / 0.0254)
    assert (len(dark[0]), len(dark)) == (round(120.0 / 25.4 * dpi), round(20.0 / 25.4 * dpi))
    # Above the bar only its two ends are dark: from the middle of one to the middle of the other.
    ends = [place for place, is_dark in enumerate(dark[round(9.0 / 25.4 * dpi)]) if is_dark]
    first = [one for one in ends if one < len(dark[0]) / 2]
    last = [one for one in ends if one > len(dark[0]) / 2]
    between = sum(last) / len(last) - sum(first) / len(first)
    assert between / to_the_metre * 1000.0 == pytest.approx(100.0, abs=0.2)
    # The line itself is 0.35 mm, of which a point is 0.085.
    assert len(first) * 1000.0 / to_the_metre == pytest.approx(0.35, abs=0.09)


def test_a_picture_of_no_points_is_refused() -> None:
    for dpi in (0.0, -1.0, float("nan")):
        with pytest.raises(ValueError, match="points to the inch"):
            png_of(page(), dpi)

"""An SVG read back by an XML parser: what stands in it is what the page holds, where the page holds it."""

from __future__ import annotations

import dataclasses
import math
import re
import xml.etree.ElementTree as ET
from itertools import pairwise
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.drawing.letters import EM, printable, text_width
from boxwright.drawing.mark import LineKind
from boxwright.drawing.page import Belongs, Curve, Page
from boxwright.render.svg import arc_path, escaped, number, plain_svg_of, svg_of
from tests.render.by_hand import BAR, LONG, POISON, SCALE, STUDS, page, words

NS = "{http://www.w3.org/2000/svg}"
ISO_128 = {0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0}  # line widths of ISO 128-2, from memory
ANY_TEXT = st.text(st.characters(codec=None, exclude_categories=()))


def read(text: str) -> ET.Element:
    return ET.fromstring(text.encode("utf-8"))


def points(path: str) -> list[tuple[float, float]]:
    """Return the points of a path of straight lines."""
    assert re.fullmatch(r"(?:[ML]-?[\d.]+ -?[\d.]+|Z)+", path), path
    return [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", path)]


def about(root: ET.Element, of: str) -> list[ET.Element]:
    return [one for one in root.iter(f"{NS}path") if one.get("data-of") == of]


def test_the_file_is_as_large_as_the_paper_and_counts_in_millimetres() -> None:
    root = read(svg_of(page(3, 7)))
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("279.4mm", "215.9mm", "0 0 279.4 215.9")
    assert (root.get("data-sheet"), root.get("data-page"), root.get("data-pages")) == ("left-outside", "3", "7")
    assert root.find(f"{NS}title").text == "Left wall from outside"


def test_every_point_of_every_stroke_stands_where_the_page_has_it_and_in_its_order() -> None:
    sample = page()
    drawn = [one for one in read(svg_of(sample)).iter(f"{NS}path") if "A" not in one.get("d")]
    found = [(one.get("data-of"), *point) for one in drawn for point in points(one.get("d"))]
    wanted = [(one.of, *point) for one in sample.strokes for point in one.points]
    assert len(found) == len(wanted) > 80
    for mine, theirs in zip(found, wanted, strict=True):
        assert mine[0] == theirs[0]
        assert mine[1:] == pytest.approx(theirs[1:], abs=0.0005)


def test_lengths_taken_from_the_file_are_those_of_the_wall() -> None:
    root = read(svg_of(page()))
    (outline,) = (one for one in about(root, "frame/walls/left") if "bw-of-view" in one.get("class"))
    corners = points(outline.get("d"))
    assert (corners[1][0] - corners[0][0]) / SCALE == pytest.approx(LONG * 1000.0, abs=0.1)
    for place, x in enumerate(STUDS):
        (stud,) = about(root, f"frame/walls/left/studs/{place}")
        across = [one[0] for one in points(stud.get("d"))]
        assert ((min(across) + max(across)) / 2 - corners[0][0]) / SCALE == pytest.approx(x * 1000.0, abs=0.1)
    # A dimension says what it measures.
    line, *heads = about(root, "openings/window/width")
    (left, _), (right, _) = points(line.get("d"))[-2:]
    assert len(heads) == 2
    (said,) = (one.text for one in root.iter(f"{NS}text") if one.get("data-of") == "openings/window/width")
    assert (right - left) / SCALE == pytest.approx(float(said), abs=0.1)
    assert math.dist(*BAR) == 100.0
    assert points(about(root, "")[1].get("d"))[:2] == list(BAR)


def test_every_mark_says_what_it_is_about_and_has_a_style() -> None:
    sample = page()
    root = read(svg_of(sample))
    rules = set(re.findall(r"\.(bw-[a-z-]+)\{", root.find(f"{NS}style").text))
    marks = [*root.iter(f"{NS}path"), *root.iter(f"{NS}text")]
    assert {one.get("data-of") for one in marks} == {
        printable(one.of) for one in (*sample.strokes, *sample.curves, *sample.words)
    }
    for mark in marks:
        styles = {one for one in mark.get("class").split() if not one.startswith("bw-of-")}
        assert styles and styles <= rules
    assert {f"bw-{kind}" for kind in get_args(LineKind)} <= rules
    for one in get_args(Belongs):
        assert any(f"bw-of-{one}" in mark.get("class").split() for mark in marks)


def test_lines_are_of_the_series_of_the_standard_and_wide_ones_twice_the_narrow() -> None:
    style = read(svg_of(page())).find(f"{NS}style").text
    widths = {kind: float(wide) for kind, wide in re.findall(r"\.bw-([a-z]+)\{stroke:.*?stroke-width:([\d.]+)", style)}
    assert set(widths) == set(get_args(LineKind))
    assert set(widths.values()) <= ISO_128
    assert widths["visible"] / widths["dimension"] == pytest.approx(2.0, abs=0.06)
    assert widths["cut"] / widths["visible"] == pytest.approx(2.0, abs=0.06)


def test_it_prints_black_on_white_unless_it_is_restyled() -> None:
    style = svg_of(page()).split("<style>")[1].split("</style>")[0]
    while "var(" in style:
        style = re.sub(r"var\(--[a-z-]+,([^()]*)\)", r"\1", style)
    plain = plain_svg_of(page()).split("<style>")[1].split("</style>")[0]
    colours = r"(?:fill|stroke):([^;}]+)"
    assert set(re.findall(colours, style)) == {"#000", "#fff", "none"}
    assert style == plain


def test_words_stand_at_their_place_in_their_height_and_keep_their_width() -> None:
    sample = page()
    found = list(read(svg_of(sample)).iter(f"{NS}text"))
    for one, text in zip(sample.words, found, strict=True):
        assert (float(text.get("x")), float(text.get("y"))) == pytest.approx(one.at, abs=0.0005)
        assert float(text.get("font-size")) == pytest.approx(one.height * EM, abs=0.0005)
        assert float(text.get("textLength")) == pytest.approx(text_width(one.text, one.height, one.is_bold), abs=0.0005)
        turned = f"rotate(-90 {number(one.at[0])} {number(one.at[1])})" if one.is_turned else None
        assert text.get("transform") == turned
        assert ("bw-b" in text.get("class").split()) == one.is_bold
        assert text.text == one.text
    assert POISON in [one.text for one in found]


@given(ANY_TEXT)
def test_any_text_at_all_is_text_and_never_markup(text: str) -> None:
    odd = dataclasses.replace(page(), name=text, title=text, words=(words((10.0, 10.0), "a" + text, text),))
    root = read(svg_of(odd))
    assert root.get("data-sheet") == printable(text)
    assert (root.find(f"{NS}title").text or "") == printable(text)
    (found,) = root.iter(f"{NS}text")
    assert (found.text, found.get("data-of")) == (printable("a" + text), printable(text))
    assert not set(escaped(text)) & set("<>\"'")


def test_a_text_of_nothing_is_not_written() -> None:
    empty = dataclasses.replace(page(), words=(words((1.0, 1.0), "  ", "x"), words((1.0, 1.0), "", "x")))
    assert "<text" not in svg_of(empty)


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.0, "0"), (-0.0, "0"), (-0.0004, "0"), (12.0, "12"), (0.12345, "0.123"), (1234567.8, "1234567.8"), (1e-9, "0")],
)
def test_a_number_is_written_in_one_way(value: float, text: str) -> None:
    assert number(value) == text


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_no_number_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="cannot hold"):
        number(value)


@pytest.mark.parametrize(
    ("start", "sweep"),
    [(0.0, 2 * math.pi), (0.3, 1.0), (2.0, -0.5), (1.0, 4.0), (0.5, -5.0), (0.0, 9.0), (1.0, math.pi)],
)
def test_an_arc_runs_on_its_circle_from_its_start_through_its_sweep(start: float, sweep: float) -> None:
    path = arc_path(Curve((50.0, 60.0), 7.0, start, sweep, "visible", "x", "view"))
    ends = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)(?=A|$)", path)]
    turns = re.findall(r"A7 7 0 0 ([01]) ", path)
    angles = [math.atan2(60.0 - y, x - 50.0) for x, y in ends]
    for x, y in ends:
        assert math.dist((x, y), (50.0, 60.0)) == pytest.approx(7.0, abs=0.002)
    assert math.remainder(angles[0] - start, 2 * math.pi) == pytest.approx(0.0, abs=0.001)
    # On paper, where y runs down, the turn 0 is against the clock. Each piece is at most half a circle.
    assert set(turns) == {"0" if sweep > 0 else "1"}
    sign = 1.0 if sweep > 0 else -1.0
    swept = sum((sign * (b - a)) % (2 * math.pi) for a, b in pairwise(angles))
    assert swept == pytest.approx(min(abs(sweep), 2 * math.pi), abs=0.002)


def test_hatching_of_one_thing_is_one_element_and_solids_stay_apart() -> None:
    root = read(svg_of(page()))
    hatch = [one for one in about(root, "openings/window") if one.get("class") == "bw-l bw-dimension bw-of-view"]
    assert [one.get("d").count("M") for one in hatch] == [9]
    solids = [one for one in root.iter(f"{NS}path") if "bw-fill-ink" in one.get("class")]
    assert [one.get("d").count("M") for one in solids] == [1, 1]


def test_the_same_page_gives_the_same_text() -> None:
    first, again = svg_of(page()), svg_of(page())
    assert first == again
    assert isinstance(page(), Page) and first.endswith("</svg>\n")

"""A DXF file read back from its bytes and audited: real size, real dimensions, a layer for each kind of line."""

from __future__ import annotations

import dataclasses
import io
import sys
from collections import Counter
from functools import cache

import pytest
from ezdxf import recover
from hypothesis import given, settings
from hypothesis import strategies as st

from boxwright.drawing.layout import laid_out
from boxwright.drawing.letters import printable
from boxwright.drawing.page import Page, PlacedDimension, PlacedView
from boxwright.drawing.paper import A4, LETTER, WIDTH_OF, dashes
from boxwright.render.dxf import APPLICATION, LAYER_OF, dxf_of, line_words, paragraph_words
from boxwright.render.extra import MissingExtra
from tests.drawing import sample as laid
from tests.render.by_hand import HIGH, HOLE, LONG, POISON, SCALE, SCREW, STUDS, page, words


def read(sheet: Page):
    """Return a page as an independent reader finds it; what it had to mend fails the test."""
    doc, audit = recover.read(io.BytesIO(dxf_of(sheet)))
    assert (audit.errors, audit.fixes) == ([], [])
    return doc


@cache
def by_hand():
    return read(page())


def about(entity) -> str:
    return "".join(tag.value for tag in entity.get_xdata(APPLICATION)).replace("^ ", "^").replace("\u2009", "")


def found(kind: str, of: str) -> list:
    return [one for one in by_hand().modelspace().query(kind) if about(one) == of]


def test_it_counts_in_millimetres_and_is_as_large_as_the_paper_over_the_scale() -> None:
    doc = by_hand()
    assert (doc.dxfversion, doc.header["$INSUNITS"], doc.header["$MEASUREMENT"]) == ("AC1024", 4, 1)
    low, high = doc.header["$EXTMIN"], doc.header["$EXTMAX"]
    assert (high[0] - low[0], high[1] - low[1]) == pytest.approx((279.4 / SCALE, 215.9 / SCALE))
    (frame,) = (one for one in doc.modelspace().query("LWPOLYLINE") if one.dxf.layer == "BORDER")
    corners = [point[:2] for point in frame.get_points()]
    assert corners[1][0] - corners[0][0] == pytest.approx((269.4 - 20.0) / SCALE, abs=0.1)


def test_the_wall_is_real_size_and_its_zero_is_zero() -> None:
    (wall,) = (one for one in found("LWPOLYLINE", "frame/walls/left") if one.dxf.layer == "CUT")
    corners = [point[:2] for point in wall.get_points()]
    wanted = [(0.0, 0.0), (LONG * 1000, 0.0), (LONG * 1000, HIGH * 1000), (0.0, HIGH * 1000)]
    for mine, theirs in zip(corners, wanted, strict=True):
        assert mine == pytest.approx(theirs, abs=0.1)
    assert wall.closed
    for place, x in enumerate(STUDS):
        (stud,) = found("LWPOLYLINE", f"frame/walls/left/studs/{place}")
        across = [point[0] for point in stud.get_points()]
        assert (min(across) + max(across)) / 2 == pytest.approx(x * 1000, abs=0.1)
        assert stud.dxf.layer == ("VISIBLE" if place % 2 else "HIDDEN")
    (screw,) = found("CIRCLE", "parts/bench/screws/0")
    assert tuple(screw.dxf.center)[:2] == pytest.approx((SCREW[0] * 1000, SCREW[1] * 1000), abs=0.1)
    assert screw.dxf.radius == pytest.approx(2.0 / SCALE)


def test_arcs_run_against_the_clock_between_the_same_ends() -> None:
    swing, back = found("ARC", "openings/window/swing")
    assert (swing.dxf.start_angle, swing.dxf.end_angle) == pytest.approx((45.0, 135.0))
    # Drawn with the clock from 90 through 225: against it, from -135 to 90.
    assert (back.dxf.start_angle % 360.0, back.dxf.end_angle % 360.0) == pytest.approx((225.0, 90.0))


def test_nothing_of_the_page_is_missing_or_drawn_twice() -> None:
    sample = page()
    counts = Counter(one.dxftype() for one in by_hand().modelspace())
    strokes = [one for one in sample.strokes if one.belongs != "dimension"]
    lines = sum(len(one.points) == 2 for one in strokes)
    texts = [one for one in sample.words if one.belongs != "dimension"]
    assert counts == {
        "LINE": lines,
        "LWPOLYLINE": len(strokes) - lines,
        "CIRCLE": 1,
        "ARC": 2,
        "TEXT": len(texts),
        "DIMENSION": len(sample.dimensions),
    }


def test_dimensions_measure_and_say_the_words_of_the_page() -> None:
    dimensions = {about(one): one for one in by_hand().modelspace().query("DIMENSION")}
    wide, high = dimensions["openings/window/width"], dimensions["frame/walls/left/height"]
    assert wide.get_measurement() == pytest.approx((HOLE[2] - HOLE[0]) * 1000, abs=0.1)
    assert high.get_measurement() == pytest.approx(HIGH * 1000, abs=0.1)
    assert (wide.dxf.text, high.dxf.text) == ("500", "1 200")
    for place in (0, 2):
        running = dimensions[f"frame/walls/left/studs/{place}/x"]
        assert running.dimtype == 6  # ordinate
        assert running.get_measurement().x == pytest.approx(STUDS[place] * 1000, abs=0.1)
        assert float(running.dxf.text.strip('"')) == pytest.approx(STUDS[place] / 0.0254, abs=0.5)


def test_the_text_of_a_dimension_stands_where_the_page_has_it() -> None:
    (wide,) = (one for one in by_hand().modelspace().query("DIMENSION") if about(one) == "openings/window/width")
    (text,) = (one for one in page().words if one.text == "500")
    (said,) = (one for one in wide.virtual_entities() if one.dxftype() == "MTEXT")
    middle = (text.box.left + text.box.right) / 2 - 40.0, 150.0 - (text.box.top + text.box.bottom) / 2
    assert tuple(said.dxf.insert)[:2] == pytest.approx([one / SCALE for one in middle], abs=0.1)
    assert said.dxf.char_height == pytest.approx(text.height / SCALE)


def test_texts_are_of_the_height_and_at_the_place_of_the_page() -> None:
    sample = [one for one in page().words if one.belongs != "dimension"]
    for wanted, text in zip(sample, by_hand().modelspace().query("TEXT"), strict=True):
        assert about(text) == wanted.of
        assert text.dxf.height == pytest.approx(wanted.height / SCALE)
        x, y = wanted.at
        assert tuple(text.dxf.insert)[:2] == pytest.approx(((x - 40.0) / SCALE, (150.0 - y) / SCALE), abs=0.1)
        assert text.dxf.layer == "TEXT"
        style = by_hand().styles.get(text.dxf.style)
        assert style.dxf.font == ("DejaVuSans-Bold.ttf" if wanted.is_bold else "DejaVuSans.ttf")


def test_every_kind_of_line_has_its_layer_its_width_and_its_dashes() -> None:
    doc = by_hand()
    for kind, name in LAYER_OF.items():
        layer = doc.layers.get(name)
        assert layer.dxf.lineweight == round(100 * WIDTH_OF[kind])
        if not dashes(kind):
            assert layer.dxf.linetype.upper() == "CONTINUOUS"
            continue
        steps = [tag.value for tag in doc.linetypes.get(layer.dxf.linetype).pattern_tags.tags if tag.code == 49]
        assert tuple(abs(one) for one in steps) == pytest.approx(dashes(kind))
        assert [one < 0 for one in steps] == [place % 2 == 1 for place in range(len(steps))]
    assert doc.header["$LTSCALE"] == pytest.approx(1 / SCALE)
    assert {one.dxf.layer for one in doc.modelspace()} == {*LAYER_OF.values(), "BORDER", "TABLE", "TEXT", "DIMENSIONS"}
    for one in doc.modelspace():
        if one.dxf.layer in ("BORDER", "TABLE") and one.dxftype() != "TEXT":
            assert one.dxf.lineweight in {round(100 * wide) for wide in WIDTH_OF.values()}


def test_every_entity_says_what_it_is_about() -> None:
    sample = page()
    paths = {one.of for one in (*sample.strokes, *sample.curves, *sample.words, *sample.dimensions)}
    assert {about(one) for one in by_hand().modelspace()} == paths


def test_a_path_of_any_length_is_carried_in_pieces() -> None:
    of = "parts/" + "ä木^x" * 200
    long = dataclasses.replace(page(), strokes=(dataclasses.replace(page().strokes[1], of=of),), words=(), curves=())
    (line,) = (one for one in read(long).modelspace().query("LINE") if one.dxf.layer == "BORDER")
    assert about(line) == of
    assert len(line.get_xdata(APPLICATION)) > 4
    assert all(len(tag.value.encode()) <= 255 for tag in line.get_xdata(APPLICATION))


def test_what_is_solid_is_a_solid_hatch() -> None:
    square = dataclasses.replace(page().strokes[0], fill="ink", of="parts/weight")
    doc = read(dataclasses.replace(page(), strokes=(square,)))
    (hatch,) = doc.modelspace().query("HATCH")
    assert (hatch.dxf.solid_fill, about(hatch)) == (1, "parts/weight")
    assert len(hatch.paths.paths[0].vertices) == 4


def test_words_of_a_dimension_that_no_real_one_says_are_kept_and_others_not_said_twice() -> None:
    extra = words((50.0, 80.0), "see the key", "openings/window/width", "dimension")
    doc = read(dataclasses.replace(page(), words=(*page().words, extra)))
    texts = [one.dxf.text for one in doc.modelspace().query("TEXT")]
    assert "see the key" in texts
    assert "500" not in texts


@pytest.mark.parametrize("text", [POISON, "%%d %%%%c 100%%", "\\U+00e9 \\M+1", "a^Jb ^.", "\\P{\\H3x;}", "\x00\n\t"])
def test_no_text_is_read_as_a_code_of_the_format(text: str) -> None:
    one = dataclasses.replace(page(), words=(words((30.0, 30.0), "a" + text, text),))
    (said,) = read(one).modelspace().query("TEXT")
    # Codes are taken apart by a thin space, which is all that may differ.
    assert said.plain_text().replace("\u2009", "") == printable("a" + text)
    assert about(said) == printable(text)


@pytest.mark.parametrize("text", [POISON, "<>", "[]", "", " ", "1/2\\P{x}", "%%c12", "^I", "\\U+0041"])
def test_a_dimension_says_its_words_and_nothing_of_its_own(text: str) -> None:
    start, end = (40.0, 150.0), (90.0, 150.0)
    placed = PlacedDimension(start, end, (40.0, 170.0), text, "parts/x", "below", is_running=False)
    doc = read(dataclasses.replace(page(), dimensions=(placed,)))
    (dimension,) = doc.modelspace().query("DIMENSION")
    assert dimension.get_measurement() == pytest.approx(1000.0)
    drawn = [one.plain_text() for one in dimension.virtual_entities() if one.dxftype() == "MTEXT"]
    assert "".join(drawn).replace("\u2009", "").strip() == printable(text).strip()
    assert dimension.dxf.text not in ("", "<>")


@given(st.text(max_size=40))
@settings(max_examples=200)
def test_no_code_is_left_in_a_text(text: str) -> None:
    said = line_words(text)
    assert "%%" not in said and "\\U+" not in said and "\n" not in said
    assert "<>" not in paragraph_words(text) and paragraph_words(text)


def test_views_of_one_page_share_a_scale() -> None:
    other = PlacedView("detail", (100.0, 60.0), 1 / 5)
    with pytest.raises(ValueError, match="share one scale"):
        dxf_of(dataclasses.replace(page(), views=(*page().views, other)))


def test_a_page_without_a_view_is_drawn_at_the_size_of_the_paper() -> None:
    doc = read(dataclasses.replace(page(), views=(), dimensions=()))
    assert tuple(doc.header["$EXTMIN"])[:2] == pytest.approx((0.0, 0.0))
    assert tuple(doc.header["$EXTMAX"])[:2] == pytest.approx((279.4, 215.9))


@pytest.mark.parametrize("paper", [LETTER, A4], ids=["letter", "a4"])
def test_sheets_as_they_are_laid_out_are_clean_and_measure_what_the_sheet_measures(paper) -> None:
    sheet = laid.sheet()
    marks = [one for view in sheet.views for one in view.marks if type(one).__name__ == "Dimension"]
    measured = []
    for one in laid_out(sheet, paper, laid.TITLE):
        for dimension in read(one).modelspace().query("DIMENSION"):
            value = dimension.get_measurement()
            if not isinstance(value, float):
                value = value.x if dimension.dxf.dimtype & 64 else value.y
            measured.append((about(dimension), abs(value)))
    wanted = []
    for one in marks:
        axis = 0 if one.side in ("above", "below") else 1
        wanted.append((one.of, 1000.0 * abs(one.end[axis] - one.start[axis])))
    assert len(measured) == len(wanted) > 10
    for mine, theirs in zip(sorted(measured), sorted(wanted), strict=True):
        assert mine[0] == theirs[0]
        assert mine[1] == pytest.approx(theirs[1], abs=0.1)


def test_the_file_holds_no_day_and_no_chance() -> None:
    first = dxf_of(page())
    assert first == dxf_of(page())
    lines = [one.strip() for one in first.decode("utf-8").splitlines()]
    said = {lines[place]: lines[place + 2] for place in range(len(lines) - 2) if lines[place].startswith("$")}
    assert {said["$TDCREATE"], said["$TDUPDATE"]} == {"2451544.5"}
    assert set(said["$VERSIONGUID"] + said["$FINGERPRINTGUID"]) == set("{}0-")


def test_without_ezdxf_it_says_what_is_missing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    with pytest.raises(MissingExtra) as raised:
        dxf_of(page())
    assert (raised.value.extra, raised.value.package) == ("book", "ezdxf")

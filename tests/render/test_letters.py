"""The table of advances is that of the fonts, and what cannot be printed is taken out of a text the same way always."""

from __future__ import annotations

import unicodedata

import pytest
from fontTools.ttLib import TTFont
from hypothesis import example, given
from hypothesis import strategies as st

from boxwright.drawing.letters import DEPTH, EM, RISE, UNKNOWN, can_be_shown, printable, text_width
from boxwright.render.lettering import FONTS, font_path

EVERYTHING = st.text(st.characters(codec=None, exclude_categories=()))


@pytest.fixture(scope="module", params=[False, True], ids=["regular", "bold"])
def face(request: pytest.FixtureRequest) -> tuple[bool, TTFont]:
    return request.param, TTFont(font_path(request.param))


def test_the_table_holds_the_advances_of_the_font(face: tuple[bool, TTFont]) -> None:
    is_bold, font = face
    units = font["head"].unitsPerEm
    codes = font.getBestCmap()
    assert len(codes) > 850
    for code, glyph in codes.items():
        assert can_be_shown(chr(code), is_bold)
        if printable(chr(code)) == chr(code):
            # A font of size EM has capitals of height 1.
            assert text_width(chr(code), 1.0, is_bold) == pytest.approx(font["hmtx"][glyph][0] / units * EM, abs=1e-12)


def test_heights_are_those_of_the_font(face: tuple[bool, TTFont]) -> None:
    _, font = face
    glyphs, codes, units = font["glyf"], font.getBestCmap(), font["head"].unitsPerEm
    assert glyphs[codes[ord("H")]].yMax / units * EM == pytest.approx(1.0, abs=1e-12)
    for one in (chr(code) for code in range(0x20, 0x180)):
        if one in " \xa0" or unicodedata.category(one) in ("Cc", "Cf"):
            continue
        glyph = glyphs[codes[ord(one)]]
        assert -glyph.yMin / units * EM <= DEPTH, one
        assert glyph.yMax / units * EM <= RISE, one


def test_nothing_in_the_font_moves_a_letter(face: tuple[bool, TTFont]) -> None:
    assert not {"kern", "GPOS", "GSUB"} & set(face[1].keys())


def test_the_signs_of_the_trade_are_in_the_font(face: tuple[bool, TTFont]) -> None:
    wanted = "ÄÖÜäöüßéèçñłőžşğ ΩΔφµ ЖШЙё ½¼¾⅛⅜⅝⅞⅓⅔ ←→↑↓↔ ☐☑☒✓✗ ⌀°′″×±≤≥≈−–— “”‘’ •… ▲▼■□●○ ⚠ ²³ №€£"
    assert [one for one in wanted if not can_be_shown(one, face[0])] == []


def test_the_licence_travels_with_the_fonts_and_all_of_it_is_small() -> None:
    text = (FONTS / "LICENSE.txt").read_text(encoding="utf-8")
    assert text.count("Permission is hereby granted, free of charge") == 2
    assert sum(path.stat().st_size for path in FONTS.iterdir()) <= 250_000


def test_a_character_that_the_font_lacks_counts_as_a_full_square(face: tuple[bool, TTFont]) -> None:
    is_bold, font = face
    assert not can_be_shown("木", is_bold)
    assert text_width("木", 2.5, is_bold) == pytest.approx(2.5 * EM)
    # What a printed page shows in its place is narrower.
    assert font["hmtx"][".notdef"][0] <= font["head"].unitsPerEm


def test_a_text_is_put_on_one_line_and_its_poison_shown() -> None:
    assert printable("a\tb\r\nc\u2028d") == "a b  c d"
    assert printable("x\x00y\x1b[31m\ud800") == f"x{UNKNOWN}y{UNKNOWN}[31m{UNKNOWN}"
    assert printable("gap\u202e5.1\u202c") == "gap5.1"  # what turns the order of reading is gone
    assert printable("e\u0301") == "é"
    assert printable("\ufffe\uffff") == UNKNOWN * 2


@given(EVERYTHING)
@example("\x1c\x85\u2029")
@example("a\u0301\u00ad\u0301")
def test_what_is_printable_can_be_written_and_stays_as_it_is(text: str) -> None:
    once = printable(text)
    once.encode("utf-8")
    assert printable(once) == once
    assert not any(unicodedata.category(one) in ("Cc", "Cf", "Cs", "Co", "Cn") for one in once)
    assert text_width(text, 1.0) == text_width(once, 1.0)

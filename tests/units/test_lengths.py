"""All spellings of one length read alike."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.units import CannotRead, HeaderUnits, read_exact, read_pair, read_size

INCHES = HeaderUnits(length="in")
MILLIMETRES = HeaderUnits(length="mm", words="UK")
NOTHING = HeaderUnits()

INCH = 0.0254  # m, exact: international yard and pound agreement of 1959, 0.9144 m / 36 (from memory)


@pytest.mark.parametrize(
    "text",
    ["5ft 3-1/2in", "63-1/2in", "5' 3-1/2\"", "5-3-1/2", "5 ft 3 1/2 in", "5\u2032 3\u00bd\u2033",
     "5\u2019 3 1/2\u201d",
     "63.5 in", "63 1/2", "63+1/2", "5ft3.5in", "5'-3 1/2\"", "5' 3 1/2", "1612.9 mm", "1.6129 m", "161.29 cm",
     "1612,9 mm", "5 feet 3-1/2 inches", "63-1/2''", " 63  1/2 "],
)  # fmt: skip
def test_spellings_of_63_and_a_half_inches(text: str) -> None:
    assert read_exact(text, "length", INCHES) == 63.5 * INCH


@pytest.mark.parametrize(
    ("text", "inches"),
    [("77 3/4", 77.75), ('77-3/4"', 77.75), ("6' 5 3/4\"", 77.75), ("6-5-3/4", 77.75), ("6ft5.75in", 77.75),
     ("30+1/2", 30.5), ("1/2", 0.5), ("14'", 168.0), ("5' 11\"", 71.0), ("-9 1/2", -9.5), ("-1' 6\"", -18.0),
     ("0", 0.0), ("1 1/2 ft", 18.0), ("3/8 in", 0.375)],
)  # fmt: skip
def test_what_a_builder_types(text: str, inches: float) -> None:
    assert read_exact(text, "length", INCHES) == pytest.approx(inches * INCH, rel=1e-15, abs=1e-15)


def test_metric_and_decimal_comma() -> None:
    assert read_exact("1974 mm", "length", INCHES) == read_exact("1.974 m", "length", INCHES) == 1.974
    assert read_exact("1974", "length", MILLIMETRES) == 1.974
    assert read_exact("1,5 m", "length", INCHES) == 1.5
    assert read_exact("0,125 m", "length", INCHES) == 0.125
    assert read_exact("1,725.5 mm", "length", MILLIMETRES) == 1.7255
    assert read_exact("1.725,5 mm", "length", MILLIMETRES) == 1.7255
    assert read_exact("1,725 mm", "length", MILLIMETRES) == 1.725


@given(feet=st.integers(0, 40), sixteenths=st.integers(0, 191))
def test_every_spelling_reads_alike(feet: int, sixteenths: int) -> None:
    inches = Fraction(sixteenths, 16)
    total = feet * 12 + inches
    whole, part = divmod(inches, 1)
    typed = f"{whole} {part}" if part else f"{whole}"
    joined = f"{whole}-{part}" if part else f"{whole}"
    spellings = [
        f"{feet}ft {joined}in", f"{feet}' {typed}\"", f"{feet} ft {typed} in", f"{feet}' {joined}\"",
        f"{feet}\u2032 {typed}\u2033", f"{feet}ft{float(inches)}in", f"{float(total)}", f"{float(total)} in",
        f"{total.numerator}/{total.denominator} inches",
    ]  # fmt: skip
    if part:
        spellings += [f"{feet}-{whole}-{part}", f"{total // 1}-{total % 1}in", f"{total // 1}+{total % 1}"]
    expected = float(total * Fraction(254, 10000))
    assert {read_exact(text, "length", INCHES) for text in spellings} == {expected}


@pytest.mark.parametrize("text", ["5", "77 3/4"])
def test_a_bare_number_without_a_header_says_how_to_write_it(text: str) -> None:
    with pytest.raises(CannotRead) as refusal:
        read_exact(text, "length", NOTHING)
    assert "or give length: in in the units line" in str(refusal.value)
    assert f'"{text} in" or "{text} mm"' in str(refusal.value)


def test_the_unit_its_key_names_goes_before_the_header() -> None:
    assert read_exact("2", "length", INCHES, bare="mm") == 0.002


@pytest.mark.parametrize(
    "text",
    ["5-6", "5 7/4", "1/0", "6' 5' 4", "1/2/3", "--5", "5 6", "2026-05-02", "1,72,5", "5 lb", "5 in in x", "1..2",
     "about 4", "4 +-1", "unknown", "", "45 in2"],
)  # fmt: skip
def test_what_is_no_single_length(text: str) -> None:
    with pytest.raises(CannotRead):
        read_exact(text, "length", INCHES)


def test_a_comma_that_could_be_either_names_both_readings() -> None:
    with pytest.raises(CannotRead, match=r'write it as "1725 m" or "1.725 m"'):
        read_exact("1,725 m", "length", INCHES)
    with pytest.raises(CannotRead, match=r'"1725 mm" or "1.725 mm"'):
        read_exact("1,725 mm", "length", HeaderUnits(words="EU"))


def test_sizes_are_length_width_height() -> None:
    assert read_size("9 x 20 x 9", INCHES) == pytest.approx((0.2286, 0.508, 0.2286))
    assert read_size("28 x 16 x 10 1/2", INCHES) == pytest.approx((0.7112, 0.4064, 0.2667))
    assert read_size("1900 x 620 x 40 mm", INCHES) == (1.9, 0.62, 0.04)
    assert read_size("1900\u00d7620 * 40", MILLIMETRES) == (1.9, 0.62, 0.04)
    assert read_size("2 ft X 18 in x 30 cm", MILLIMETRES) == pytest.approx((0.6096, 0.4572, 0.3))
    assert read_pair("1 x 1 1/2", INCHES) == pytest.approx((0.0254, 0.0381))


@pytest.mark.parametrize("text", ["9 x 20", "9 x 20 x 9 x 2", "9 x wide x 9", "9 20 9", "", "9 x -20 x 9", "x x x"])
def test_what_is_no_size(text: str) -> None:
    with pytest.raises(CannotRead):
        read_size(text, INCHES)
    with pytest.raises(CannotRead, match="width x depth"):
        read_pair("1 x 2 x 3", INCHES)


@pytest.mark.parametrize("text", ["9e99 x 320 x 5", "50001 x 320 x 5", "5 x 320 x 50.1 m"])
def test_a_size_beyond_any_trailer_is_refused(text: str) -> None:
    with pytest.raises(CannotRead, match="none of them more than 50 m"):
        read_size(text, MILLIMETRES)


def test_a_size_of_fifty_metres_is_still_one() -> None:
    assert read_size("50000 x 320 x 5", MILLIMETRES) == pytest.approx((50.0, 0.32, 0.005))

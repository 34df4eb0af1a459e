"""Doubtful numbers: the grammar of DESIGN 5 and the forgiveness of NEEDS 12."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.units import QUANTITIES, Band, CannotRead, HeaderUnits, read_band, read_exact
from boxwright.units.quantity import quantity_named

POUNDS = HeaderUnits(length="in", weight="lb", temperature="F", volume="gal", wire="AWG", money="USD")
KILOS = HeaderUnits(length="mm", weight="kg", temperature="C", volume="l", wire="mm2", money="GBP", words="UK")


@pytest.mark.parametrize("text", ["40..55", "40 .. 55", "40...55", "55..40", "40\u202655", "40 to 55", "40..55 kg",
                                  "40 kg..55", "40 kg..55 kg"])  # fmt: skip
def test_two_dots_are_an_interval(text: str) -> None:
    assert read_band(text, "mass", KILOS) == Band(47.5, 40.0, 55.0, spread="interval")


@pytest.mark.parametrize(
    "text", ["45 +-5", "45+-5", "45 \u00b1 5", "45 +/- 5", "45 kg +- 5", "45 +-5 kg", "45 kg +-5 kg"]
)
def test_plus_minus_is_sigma(text: str) -> None:
    assert read_band(text, "mass", KILOS) == Band(45.0, 40.0, 50.0, spread="sigma")


def test_plus_minus_in_per_cent_and_other_units() -> None:
    assert read_band("50 kg +-10 %", "mass", KILOS) == Band(50.0, 45.0, 55.0, spread="sigma")
    assert read_band("1 m +-5 mm", "length", KILOS) == Band(1.0, 0.995, 1.005, spread="sigma")
    warm = read_band("20 C +-5", "temperature", POUNDS)
    assert (warm.best, warm.low, warm.high) == pytest.approx((293.15, 288.15, 298.15))


@pytest.mark.parametrize("text", ["about 45", "~45", "approx 45", "About 45 kg", "around 45", "ca. 45", "ca 45"])
def test_about_is_a_fifth_and_assumed(text: str) -> None:
    assert read_band(text, "mass", KILOS) == Band(45.0, 36.0, 54.0, spread="interval", assumed=True)


def test_about_takes_the_share_of_the_kind() -> None:
    assert read_band("about 50", "mass", KILOS, about_share=0.1) == Band(
        50.0, 45.0, 55.0, spread="interval", assumed=True
    )
    behind = read_band("about -50", "length", KILOS)
    assert (behind.low, behind.best, behind.high) == pytest.approx((-0.060, -0.050, -0.040))
    cool = read_band("about 0 C", "temperature", POUNDS)
    assert cool.low < 273.15 < cool.high


def test_about_nothing_says_to_write_a_span() -> None:
    with pytest.raises(CannotRead, match="a share of nothing is no doubt"):
        read_band("about 0", "length", KILOS)


@pytest.mark.parametrize("text", ["unknown", "Unknown", "?", "", "   ", "0", "0 kg", "0.0", "0..0", "about 0"])
def test_a_mass_of_nothing_is_unknown(text: str) -> None:
    assert read_band(text, "mass", KILOS) == Band(0.0, 0.0, math.inf, known=False)


def test_a_length_of_nothing_is_nothing() -> None:
    assert read_band("0", "length", KILOS) == Band(0.0, 0.0, 0.0)
    assert read_exact("0", "length", KILOS) == 0.0


@pytest.mark.parametrize("name", QUANTITIES)
def test_unknown_has_no_upper_end(name: str) -> None:
    band = read_band("unknown", name, KILOS)
    lowest = -math.inf if name in ("length", "money", "angle", "temperature coefficient", "force") else 0.0
    assert band == Band(0.0, lowest, math.inf, known=False)


def test_an_exact_number_has_no_doubt() -> None:
    assert read_band("45 kg", "mass", POUNDS) == Band(45.0, 45.0, 45.0)
    assert read_band("45 kg", "mass", POUNDS).standard_uncertainty == 0.0


def test_spans_of_other_units() -> None:
    fuel = read_band("0.03..0.065 gal/h", "fuel flow", POUNDS)
    gallon = 231 * 0.0254**3  # NIST SP 811 B.8: 231 cubic inches, from memory
    assert (fuel.low, fuel.high) == pytest.approx((0.03 * gallon / 3600, 0.065 * gallon / 3600))
    tall = read_band("5' 3..5' 6\"", "length", POUNDS)
    assert (tall.low, tall.high) == pytest.approx((63 * 0.0254, 66 * 0.0254))
    cold = read_band("-10..5 F", "temperature", KILOS)
    assert (cold.low, cold.high) == pytest.approx((249.817, 258.150), abs=0.001)
    assert read_band("$160..$200", "money", POUNDS) == Band(180.0, 160.0, 200.0, spread="interval")
    wire = read_band("12 AWG..10", "wire", POUNDS)
    assert wire.low < 4e-6 < wire.high


@pytest.mark.parametrize(
    "text",
    ["-3", "-3 lb", "-5..5", "5 +- -2", "45..", "..45", "45 +-", "+-5", "40..50..60", "45..heavy",
     "about heavy", "about 40..50", "8 stone", "1e999", "45 +-5 in"],
)  # fmt: skip
def test_what_is_no_mass(text: str) -> None:
    with pytest.raises(CannotRead):
        read_band(text, "mass", POUNDS)


@given(st.floats(0.1, 1e5), st.floats(0.1, 1e5))
def test_spans_are_read_in_order(first: float, last: float) -> None:
    band = read_band(f"{first!r}..{last!r}", "mass", KILOS)
    assert (band.low, band.high) == (min(first, last), max(first, last))
    assert band.low <= band.best <= band.high
    assert band.standard_uncertainty == pytest.approx((band.high - band.low) / math.sqrt(12.0))


def test_standard_uncertainty_of_a_stated_half_width() -> None:
    # 1.96 is the 97.5 % quantile of the normal distribution: JCGM 100:2008 table G.1, from memory.
    assert read_band("45 +-1.96", "mass", KILOS).standard_uncertainty == pytest.approx(1.0, rel=1e-4)


@given(st.text(max_size=260), st.sampled_from([*QUANTITIES, "weight", "hours", "U"]))
def test_no_text_raises_anything_but_cannot_read(text: str, name: str) -> None:
    for header in (POUNDS, KILOS, HeaderUnits()):
        for reader in (read_exact, read_band):
            try:
                got = reader(text, name, header)
            except CannotRead as refusal:
                assert refusal.write and len(str(refusal)) < 400
            else:
                assert isinstance(got, (float, Band))


PIECES = st.lists(
    st.sampled_from(
        ["1", "0", "5", "3/4", "/", "0/0", "-", "+", "+-", "..", ".", ",", "1,725", " ", "about ", "~", "unknown", "x",
         "in", "ft", "'", '"', "lb", "oz", "kg", "%", "K", "C", "F", "m2", "W/m2K", "AWG", "#", "$", "USD", "gal", "h",
         "min", "e3", "e999", "\u00bd", "\u00b1", "\u00b0", "9" * 60, "stone", "Btu6", "lb6", "(", "*", "per", "day"]
    ),
    max_size=12,
).map("".join)  # fmt: skip


@given(PIECES, st.sampled_from(QUANTITIES))
def test_no_mixture_of_pieces_raises_anything_but_cannot_read(text: str, name: str) -> None:
    for reader in (read_exact, read_band):
        try:
            got = reader(text, name, POUNDS)
        except CannotRead:
            continue
        band = got if isinstance(got, Band) else Band(got, got, got)
        assert not any(math.isnan(number) for number in (band.best, band.low, band.high))
        assert band.low <= band.best <= band.high or not band.known
        if not quantity_named(name).may_be_negative:
            assert band.low >= 0.0


def test_a_long_text_is_no_number() -> None:
    with pytest.raises(CannotRead, match="over 200 characters"):
        read_exact("1" * 201, "length", POUNDS)
    assert read_exact("1" + "0" * 100 + " mm", "length", POUNDS) == pytest.approx(1e97)


def test_a_doubt_wider_than_its_number_reaches_down_to_zero_and_no_further():
    assert read_band("0.4 +-0.5 kg", "mass", KILOS) == Band(0.4, 0.0, 0.9, spread="interval")

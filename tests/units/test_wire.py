"""Wire sizes: gauges against printed tables, and the sane ranges."""

from __future__ import annotations

import pytest

from boxwright.units import CannotRead, HeaderUnits, gauge_area, gauge_name, nearest_gauge, read_exact, show

GAUGE = HeaderUnits(wire="AWG")
METRIC = HeaderUnits(wire="mm2", words="UK")

# ASTM B258 diameters in inches, and circular mils of NEC chapter 9 table 8: both from memory, printed to these digits.
DIAMETERS = {18: 0.0403, 16: 0.0508, 14: 0.0641, 12: 0.0808, 10: 0.1019, 8: 0.1285, 6: 0.1620, 4: 0.2043, 2: 0.2576}
CIRCULAR_MILS = {12: 6530, 10: 10380, 8: 16510, 6: 26240, 4: 41740, 2: 66360, 0: 105600, -1: 133100, -3: 211600}
SQUARE_MIL = 0.7853981633974483e-6 * 0.0254**2  # m2 of a circle of one thousandth of an inch


@pytest.mark.parametrize(("gauge", "inches"), DIAMETERS.items())
def test_diameters(gauge: int, inches: float) -> None:
    assert (gauge_area(gauge) * 4 / 3.141592653589793) ** 0.5 / 0.0254 == pytest.approx(inches, abs=0.00006)


@pytest.mark.parametrize(("gauge", "mils"), CIRCULAR_MILS.items())
def test_circular_mils(gauge: int, mils: int) -> None:
    assert gauge_area(gauge) / SQUARE_MIL == pytest.approx(mils, rel=0.001)


@pytest.mark.parametrize("text", ["12", "12 AWG", "12awg", "12ga", "12 gauge", "#12", "#12 AWG"])
def test_spellings_of_a_gauge(text: str) -> None:
    assert read_exact(text, "wire", GAUGE) == gauge_area(12)


@pytest.mark.parametrize(
    ("text", "gauge"), [("1/0", 0), ("2/0 AWG", -1), ("4/0", -3), ("0000", -3), ("0", 0), ("00", -1)]
)
def test_aught_gauges(text: str, gauge: int) -> None:
    assert read_exact(text, "wire", HeaderUnits()) == gauge_area(gauge)


def test_square_millimetres() -> None:
    assert read_exact("2.5", "wire", METRIC) == 2.5e-6
    assert read_exact("0,75", "wire", METRIC) == 0.75e-6
    assert read_exact("4mm2", "wire", GAUGE) == read_exact("4 mm\u00b2", "wire", GAUGE) == 4e-6
    assert read_exact("16", "wire", METRIC) == 16e-6


@pytest.mark.parametrize(
    ("text", "header", "says"),
    [
        ("35", GAUGE, '"35 mm2" or a gauge of 22 to 4/0 AWG (35 AWG would be 0.016 mm2)'),
        ("300", METRIC, "a cross-section of 0.2 to 200 mm2 or a gauge of 22 to 4/0 AWG (300 mm2 would be thicker"),
        ("0.1", METRIC, "a cross-section of 0.2 to 200 mm2"),
        ("2.5", GAUGE, '"2.5 mm2"'),
        ("12", HeaderUnits(), '"12 AWG" or "12 mm2", or give wire: AWG in the units line'),
        ("20A", GAUGE, '"12 AWG" or "4 mm2"'),
        ("thick", GAUGE, '"12 AWG" or "4 mm2"'),
        ("5/0", GAUGE, "22 to 4/0 AWG"),
    ],
)
def test_out_of_range_names_both_readings(text: str, header: HeaderUnits, says: str) -> None:
    with pytest.raises(CannotRead) as refusal:
        read_exact(text, "wire", header)
    assert says in str(refusal.value)


@pytest.mark.parametrize("gauge", range(-3, 23))
def test_a_gauge_is_found_again_and_shown(gauge: int) -> None:
    assert nearest_gauge(gauge_area(gauge) * 1.04) == gauge
    shown = show(gauge_area(gauge), "wire", GAUGE)
    assert shown == f"{gauge_name(gauge)} AWG"
    assert read_exact(shown, "wire", METRIC) == gauge_area(gauge)


def test_a_metric_wire_is_shown_as_it_is() -> None:
    assert show(4e-6, "wire", GAUGE) == "4 mm2"
    assert show(gauge_area(12), "wire", METRIC) == "3.31 mm2"

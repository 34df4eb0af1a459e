"""Numbers are shown in the user's units, and what is shown reads back as the same number."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.units import QUANTITIES, Band, HeaderUnits, read_band, read_exact, show, show_band, shown_unit
from boxwright.units.quantity import quantity_named

US = HeaderUnits(length="in", weight="lb", temperature="F", volume="gal", wire="AWG", money="USD")
UK = HeaderUnits(length="mm", weight="kg", temperature="C", volume="l", wire="mm2", money="GBP", words="UK")
FEET = HeaderUnits(length="ft", weight="lb")
EU = HeaderUnits(length="cm", weight="kg", words="EU")


@pytest.mark.parametrize(
    ("value", "quantity", "header", "text"),
    [
        (1.6129, "length", US, "63.5 in"),
        (1.9749, "m", UK, "1975 mm"),
        (277.6, "mass", US, "612 lb"),
        (1456.0, "kg", US, "3,210 lb"),
        (1456.0, "kg", UK, "1,456 kg"),
        (1456.0, "kg", EU, "1456 kg"),
        (3.2, "mass", US, "7.1 lb"),
        (4.53, "mass", US, "10 lb"),
        (18.7, "mass", UK, "19 kg"),
        (1.6129, "length", HeaderUnits(length="furlong"), "63.5 in"),
        (1.6129, "length", HeaderUnits(length="kg", words="UK"), "1613 mm"),
        (0.14225, "ratio", US, "14.2 %"),
        (0.35, "", UK, "35 %"),
        (266.4833, "temperature", US, "20 F"),
        (293.65, "K", UK, "20.5 C"),
        (10.0, "temperature difference", US, "18 F"),
        (-4.5, "temperature difference", UK, "-4.5 C"),
        (0.0757082, "volume", US, "20 gal"),
        (0.02, "m**3", UK, "20 l"),
        (160.0, "money", US, "160 USD"),
        (1250.5, "money", UK, "1,250.50 GBP"),
        (344737.9, "Pa", US, "50 psi"),
        (260000.0, "Pa", UK, "2.6 bar"),
        (0.2359737, "flow", US, "500 cfm"),
        (22.352, "speed", US, "50 mph"),
        (22.352, "m/s", HeaderUnits(words="AU"), "80.5 km/h"),
        (52.75279, "W/K", US, "100 Btu/h per F"),
        (36.0, "W/K", UK, "36 W/K"),
        (36.0, "heat loss", HeaderUnits(temperature="C"), "36 W/K"),
        (1000.0, "heat flow", HeaderUnits(temperature="C"), "1,000 W"),
        (1000.0, "heat flow", HeaderUnits(temperature="F"), "3,412 Btu/h"),
        (36.0, "heat loss", HeaderUnits(temperature="F", words="UK"), "68.2 Btu/h per F"),
        (5.678263, "W/m2K", US, "1 Btu/h ft2 F"),
        (0.0288456, "conductivity", US, "0.2 Btu in/h ft2 F"),
        (0.12, "conductivity", UK, "0.12 W/mK"),
        (2.8, "transmittance", UK, "2.8 W/m2K"),
        (-0.0028, "1/K", US, "-0.28 %/C"),
        (1234.5, "N m", US, "1,234 N m"),
        (0.0, "length", US, "0 in"),
        (-0.00001, "mass", US, "0 lb"),
        (math.inf, "mass", US, "unknown"),
    ],
)
def test_show(value: float, quantity: str, header: HeaderUnits, text: str) -> None:
    assert show(value, quantity, header) == text


@pytest.mark.parametrize(
    ("metres", "header", "text"),
    [
        (63.5 * 0.0254, US, "63 1/2 in"),
        (63.03 * 0.0254, US, "63 in"),
        (0.04 * 0.0254, US, "1/16 in"),
        (-0.5 * 0.0254, US, "-1/2 in"),
        (-0.01 * 0.0254, US, "0 in"),
        (15.99 * 0.0254, US, "16 in"),
        (63.5 * 0.0254, FEET, "5' 3 1/2\""),
        (71.99 * 0.0254, FEET, "6' 0\""),
        (1.9744, UK, "1974 mm"),
        (1.9744, EU, "197.4 cm"),
        (-0.0002, UK, "0 mm"),
    ],
)
def test_show_cuts(metres: float, header: HeaderUnits, text: str) -> None:
    assert show(metres, "length", header, cuts=True) == text


@pytest.mark.parametrize(
    ("band", "text"),
    [
        (Band(612, 612, 612), "612 kg"),
        (Band(612, 567, 657, spread="sigma"), "612 +- 45 kg"),
        (Band(612, 611.9, 612.1, spread="sigma"), "612 kg"),
        (Band(612, 611.6, 612.4, spread="sigma"), "612 kg"),
        (Band(612, 611.4, 612.6, spread="sigma"), "612 +- 0.6 kg"),
        (Band(117.5, 95, 140, spread="interval"), "95 to 140 kg"),
        (Band(20, 0, 40, spread="fill"), "0 to 40 kg"),
        (Band(40, 32, 48, spread="interval", assumed=True), "32 to 48 kg, assumed"),
        (Band(0, 0, math.inf, known=False), "unknown"),
        (Band(1456, 1456, math.inf, known=False), "at least 1,456 kg"),
    ],
)
def test_show_band(band: Band, text: str) -> None:
    assert show_band(band, "mass", UK) == text


def test_show_band_of_other_quantities() -> None:
    assert show_band(Band(0.142, 0.122, 0.162, spread="sigma"), "ratio", US) == "14.2 +- 2 %"
    assert show_band(read_band("20 +-3", "temperature", US), "K", US) == "20 +- 3 F"
    assert show_band(read_band("unknown", "length", US), "m", US) == "unknown"
    assert show_band(Band(0.0, -1.0, math.inf, known=False), "m", UK) == "at least -1000 mm"
    assert show_band(Band(0.0, -math.inf, 1.0, known=False), "m", UK) == "at most 1000 mm"
    assert show_band(Band(160.0, 150.0, 170.0, spread="sigma"), "money", US) == "160 +- 10 USD"


@pytest.mark.parametrize("header", [US, UK])
def test_a_comma_that_could_be_a_decimal_one_is_not_shown(header: HeaderUnits) -> None:
    assert show(1.0, "volume", replace(header, volume="l")) == "1000 l"
    assert show(12.345, "volume", replace(header, volume="l")) == "12345 l"
    assert show(1456.0, "mass", UK) == "1,456 kg"


@given(
    st.sampled_from([name for name in QUANTITIES if name != "wire"]), st.floats(0.01, 1e5), st.sampled_from([US, UK])
)
def test_what_is_shown_reads_back(name: str, value: float, header: HeaderUnits) -> None:
    value = value + 200.0 if name == "temperature" else value
    again = read_exact(show(value, name, header), name, header)
    shown_whole = name in ("mass", "temperature", "length")
    step = 0.01 if name == "money" else shown_unit(name, header)[1].difference_to_si(1.0 if shown_whole else 0.01)
    assert again == pytest.approx(value, rel=0.006, abs=step)


@given(st.floats(1.0, 1e4), st.floats(0.0, 0.5), st.sampled_from(["sigma", "interval"]))
def test_a_band_shown_reads_back(best: float, share: float, spread: str) -> None:
    text = show_band(Band(best, best * (1 - share), best * (1 + share), spread=spread), "mass", US)  # type: ignore[arg-type]
    again = read_band(text, "mass", US)
    assert (again.low, again.high) == pytest.approx((best * (1 - share), best * (1 + share)), rel=0.02, abs=1.0)


@given(st.floats(-300.0, 300.0))
def test_cuts_are_within_half_a_sixteenth(inches: float) -> None:
    again = read_exact(show(inches * 0.0254, "length", US, cuts=True), "length", US)
    assert abs(again / 0.0254 - inches) <= 1 / 32 + 1e-9


@pytest.mark.parametrize("name", [name for name in QUANTITIES if name not in ("wire", "money")])
def test_every_quantity_has_a_unit_to_be_shown_in(name: str) -> None:
    for header in (US, UK, HeaderUnits(), HeaderUnits(words="EU")):
        _, scale = shown_unit(name, header)
        assert scale.dimension == quantity_named(name).dimension

"""Every factor against an independent unit registry (pint 0.25, its own definition file), and against SP 811."""

from __future__ import annotations

import math

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.units import QUANTITIES, HeaderUnits, read_any, read_exact, unit_scale
from boxwright.units.quantity import quantity_named
from boxwright.units.scale import _DERIVED

REGISTRY = pint.UnitRegistry()
IN_PINT = {
    "in": "inch", "ft": "foot", "yd": "yard", "mi": "mile", "g": "gram", "t": "metric_ton", "lb": "pound",
    "oz": "ounce", "min": "minute", "h": "hour", "day": "day", "l": "liter", "ml": "milliliter", "usgal": "gallon",
    "impgal": "imperial_gallon", "lbf": "force_pound", "kgf": "force_kilogram", "psi": "force_pound/inch**2",
    "psf": "force_pound/foot**2", "Btu": "Btu_it", "hp": "horsepower", "cfm": "foot**3/minute", "mph": "mile/hour",
    "%": "percent", "C": "delta_degC", "F": "delta_degF", "Ah": "ampere*hour", "mAh": "milliampere*hour",
    "mohm": "milliohm", "VA": "volt*ampere", "ms": "millisecond",
}  # fmt: skip
SYMBOLS = [row[0] for row in _DERIVED]


@pytest.mark.parametrize("symbol", SYMBOLS)
def test_factor_of_every_symbol(symbol: str) -> None:
    theirs = REGISTRY.Quantity(1.0, IN_PINT.get(symbol, symbol)).to_base_units()
    scale = unit_scale(symbol)
    assert scale is not None
    assert scale.difference_to_si(1.0) == pytest.approx(theirs.magnitude, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "quantity", "si"),
    [  # NIST SP 811 (2008) appendix B.8, the figures as printed there, from memory
        ("1 ft", "length", 0.3048),
        ("1 lb", "mass", 0.45359237),
        ("1 oz", "mass", 2.834952e-2),
        ("1 US gal", "volume", 3.785412e-3),
        ("1 imp gal", "volume", 4.54609e-3),
        ("1 psi", "pressure", 6.894757e3),
        ("1 bar", "pressure", 1e5),
        ("1 cfm", "flow", 4.719474e-4),
        ("1 sq in", "area", 6.4516e-4),
        ("1 sq ft", "area", 9.290304e-2),
        ("1 hp", "power", 7.456999e2),
        ("1 BTU/h", "power", 2.930711e-1),
        ("1 kWh", "energy", 3.6e6),
        ("1 mph", "speed", 4.4704e-1),
        ("1 km/h", "speed", 2.777778e-1),
        ("1 lbf", "force", 4.448222),
        ("1 Btu/h ft2 F", "transmittance", 5.678263),
        ("1 Btu/h per F", "heat loss", 5.678263 * 9.290304e-2),  # its U value over its square foot
        ("1 Btu in/h ft2 F", "conductivity", 1.442279e-1),
        ("68 F", "temperature", 293.15),
        ("-40 F", "temperature", 233.15),
        ("-40 C", "temperature", 233.15),
        ("180 deg", "angle", math.pi),
    ],
)
def test_factors_as_the_guide_prints_them(text: str, quantity: str, si: float) -> None:
    assert read_exact(text, quantity, HeaderUnits()) == pytest.approx(si, rel=2e-7)


@pytest.mark.parametrize(
    ("text", "quantity", "si"),
    [
        ("14 kg", "mass", 14.0), ("31 lbs", "mass", 14.06136347), ("31#", "mass", 14.06136347), ("2 t", "mass", 2000.0),
        ("12 lb 4 oz", "mass", 5.5565065325), ("1,725 lb", "mass", 782.44683825), ("1 1/2 kg", "mass", 1.5),
        ("0.70 kWh/m2", "irradiation", 2.52e6), ("4.8 kWh/m2/day", "irradiation", 1.728e7),
        ("2.8 W/m2K", "U", 2.8), ("2.8 W/(m2 K)", "U", 2.8), ("2.8 W/m\u00b2\u00b7K", "U", 2.8),
        ("-0.28 %/C", "temperature coefficient", -0.0028),
        ("0.0039 1/K", "temperature coefficient", 0.0039), ("6", "hours", 21600.0), ("2 h/day", "hours", 7200.0),
        ("2 h a day", "time", 7200.0), ("30 min", "hours", 1800.0), ("1 h 30 min", "time", 5400.0),
        ("35 %", "ratio", 0.35), ("0.35", "ratio", 0.35), ("1/4", "ratio", 0.25), ("200 Ah", "charge", 720000.0),
        ("100 cm2", "area", 0.01), ("90 m3/h", "flow", 0.025), ("0.36 l/h", "fuel flow", 1e-7),
        ("14 mohm", "resistance", 0.014), ("14 m\u03a9", "resistance", 0.014), ("2.6 bar", "pressure", 2.6e5),
        ("8 W", "power", 8.0), ("2 kw", "power", 2000.0), ("12.8 volts", "voltage", 12.8), ("20 amps", "current", 20.0),
        ("20 \u00b0C", "temperature", 293.15), ("20 degC", "temperature", 293.15),
        ("68 degrees F", "temperature", 293.15),
        ("150 N/m", "stiffness", 150.0), ("849.76 kg m2", "inertia", 849.76), ("1.7e-8 ohm m", "resistivity", 1.7e-8),
        ("$1,250.50", "money", 1250.5), ("160 USD", "money", 160.0), ("1.250,50 \u20ac", "money", 1250.5),
    ],
)  # fmt: skip
def test_units_of_the_trade(text: str, quantity: str, si: float) -> None:
    assert read_exact(text, quantity, HeaderUnits()) == pytest.approx(si, rel=1e-12)


@pytest.mark.parametrize(
    ("words", "cubic_metres"), [("US", 3.785411784e-3), ("CA", 3.785411784e-3), ("UK", 4.54609e-3), ("AU", 4.54609e-3)]
)
def test_whose_gallon(words: str, cubic_metres: float) -> None:
    header = HeaderUnits(volume="gal", words=words)
    assert read_exact("1", "volume", header) == pytest.approx(cubic_metres)
    assert read_exact("1 gal/h", "fuel flow", header) == pytest.approx(cubic_metres / 3600.0)
    assert read_exact("1 UK gal", "volume", header) == pytest.approx(4.54609e-3)
    assert read_exact("1 U.S. gallon", "volume", header) == pytest.approx(3.785411784e-3)


def test_a_wrong_capital_is_never_a_thousandfold() -> None:
    for wrong in ("5 MW", "5 Mohm", "5 mJ", "5 mPa"):
        scale = unit_scale(wrong.split()[1])
        assert scale is None, wrong


@pytest.mark.parametrize("unit", ["", "xyz", "m7", "/", "m//s" * 20, "lb" * 30, "mN", "AWG", "W/m2Q"])
def test_what_is_no_unit(unit: str) -> None:
    assert unit_scale(unit) is None


def test_any_unit_of_either_sign() -> None:
    assert read_any("-45.956 kg") == -45.956
    assert read_any("8.409 kN") == pytest.approx(8409.0)
    assert read_any("0.14225") == 0.14225
    assert read_any("25 C", difference=True) == 25.0
    assert read_any("25 C") == 298.15
    assert read_any("1.2", "m2K/W") == 1.2
    assert read_any("2/0 AWG") == read_any("2/0", "AWG") == pytest.approx(6.743e-5, rel=1e-4)


@given(st.sampled_from([name for name in QUANTITIES if name not in ("wire", "money")]), st.floats(1e-6, 1e6))
def test_what_is_written_is_read_back(name: str, value: float) -> None:
    kind = quantity_named(name)
    for unit in kind.offered:
        scale = unit_scale(unit)
        assert scale is not None
        text = f"{scale.from_si(value + 1000.0)!r} {unit}"
        assert read_exact(text, name, HeaderUnits()) == pytest.approx(value + 1000.0, rel=1e-9)

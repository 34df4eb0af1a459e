"""How heat's keys may be written."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from boxwright.disciplines.heat.parts import ClimateFacet, Facet
from boxwright.rig.validate import validate
from boxwright.units import HeaderUnits

HEADER = {"header": HeaderUnits(length="in", temperature="F", volume="gal")}
US_GALLON = 231 * 0.0254**3
"""Cubic metres, NIST SP 811 (from memory)."""


def heater(written: Any) -> Any:
    return Facet.model_validate({"heater": written}, context=HEADER).heater


def test_a_span_of_operation_has_two_keys() -> None:
    read = heater({"of": "diesel", "lowest": "900 W", "highest": "2 kW", "burn": {"highest": "0.065 gal/h"}})
    assert (read.lowest.best, read.highest.best) == (900.0, 2000.0)
    assert read.burn.highest.best == pytest.approx(0.065 * US_GALLON / 3600.0)
    assert read.burn.lowest is None


def test_a_heater_alone_is_its_greatest_heat_and_one_burn_is_at_both_ends() -> None:
    assert heater("2000 W").highest.best == 2000.0 and heater("2000 W").lowest is None
    burn = heater({"burn": "0.05 gal/h"}).burn
    assert burn.lowest == burn.highest and burn.lowest.best == pytest.approx(0.05 * US_GALLON / 3600.0)


def test_the_way_of_the_fuel_keeps_its_order() -> None:
    assert heater({"path": ["tank", "pump", "heater"]}).path == ("tank", "pump", "heater")


def test_a_place_has_a_climate_by_month() -> None:
    climate = ClimateFacet.model_validate(
        {"coldest_design": "14", "january": {"low": "32", "sun": "2.5 kWh/m2", "wind": "18 mph"}}, context=HEADER
    )
    assert climate.coldest_design is not None and climate.coldest_design.best == pytest.approx(263.15)
    january = climate.january
    assert january is not None and january.low is not None and january.sun is not None and january.wind is not None
    assert january.low.best == pytest.approx(273.15)
    assert january.sun.best == pytest.approx(9.0e6)
    assert january.wind.best == pytest.approx(8.04672)  # 1 mph = 0.44704 m/s, NIST SP 811 (from memory)
    assert climate.july is None


@pytest.mark.parametrize(
    ("written", "words"),
    [("hot", 'cannot read the power "hot"; write it as'), ({"burn": "2 gal"}, 'cannot read the fuel burnt "2 gal"')],
)
def test_what_cannot_be_read_is_said(written: Any, words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        heater(written)
    assert words in str(caught.value)


@pytest.mark.parametrize("night", ["-56 C", "41 C", "-60..-20 C", "-300 F"])
def test_a_night_nobody_camps_in_is_refused_where_it_is_written(night: str) -> None:
    with pytest.raises(ValidationError, match="no night colder than -55 C or milder than 40 C"):
        ClimateFacet.model_validate({"coldest_design": night}, context=HEADER)


@pytest.mark.parametrize("night", ["-55 C", "40 C", "-50..-20 C", "unknown"])
def test_a_night_as_cold_as_it_gets_somewhere_is_read(night: str) -> None:
    assert ClimateFacet.model_validate({"coldest_design": night}, context=HEADER).coldest_design is not None


@pytest.mark.parametrize("wanted", ["-1 C", "41 C", "30..50 C"])
def test_a_room_nobody_sleeps_in_is_no_setting(wanted: str) -> None:
    with pytest.raises(ValidationError, match="no room is held below 0 C or above 40 C"):
        heater({"holds": wanted})
    assert heater({"holds": "62"}).holds.best == pytest.approx(289.817, abs=0.001)


def test_how_long_a_filling_lasts_is_in_hours() -> None:
    assert heater({"lasts": "20 h"}).lasts.best == heater({"lasts": "20"}).lasts.best == 72000.0


@pytest.mark.parametrize("written", ["2000", "2,000", "about 2000", "1800..2200", "890"])
def test_a_height_above_the_sea_without_its_unit_is_asked_for_it(written: str) -> None:
    """In a rig of millimetres 2000 would lie two metres above the sea, and every burner get all of its air."""
    read, wrong = validate(ClimateFacet, {"height": written}, "places[alp]", HeaderUnits(length="mm"))
    assert [one.path for one in wrong] == ["places[alp].height"] and f"{written} m" in wrong[0].says
    assert read is None or read.height is None or not read.height.known


@pytest.mark.parametrize("written", ["2000 m", "6,562 ft", "about 2000 m", "1900..2100 m", "0", "unknown", "0 m"])
def test_a_height_with_its_unit_or_none_at_all_is_read(written: str) -> None:
    read, wrong = validate(ClimateFacet, {"height": written}, "places[alp]", HeaderUnits(length="mm"))
    assert wrong == [] and read is not None and read.height is not None
    if read.height.known and written != "0" and written != "0 m":
        assert read.height.best == pytest.approx(2000.0, rel=0.001)

"""Up high what burns gets less air, in hard cold diesel thickens: the night of such a place is told with that."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.disciplines.heat.burner import warmth_of
from boxwright.disciplines.heat.parts import MONTHS, Heater, PlannedHeater
from boxwright.disciplines.heat.result import Runs, StandingHeater
from boxwright.disciplines.heat.sheets import grids_of
from boxwright.model.place import Place
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band, HeaderUnits, exactly
from tests.disciplines.heat.test_findings import edited, worked

NOWHERE = Place(exactly(0.0), exactly(0.0), exactly(0.0), (0.1, 0.1, 0.1))


def at_height(adjusts: bool | None, height: Band | None, runs: Runs = "burns") -> Band:
    """Return what a heater of 2 kW gives at its highest setting at a height."""
    heater = Heater(highest=exactly(2000.0), lowest=exactly(900.0), adjusts=adjusts)
    planned = PlannedHeater("parts[heater]", "heater", NOWHERE, heater)
    return warmth_of(StandingHeater(planned, True, runs, "out", "out", None, None, None), height).highest


def test_what_burns_gives_less_and_what_runs_on_electricity_does_not() -> None:
    """At 2000 m there is 0.7846 of the air of the sea: the table of the standard atmosphere."""
    high, thinner = exactly(2000.0), 0.7846 * 2000.0
    assert at_height(True, high).best == at_height(True, high).high == pytest.approx(thinner, abs=1.0)
    assert at_height(None, high).best == at_height(False, high).low == pytest.approx(thinner, abs=1.0)
    assert at_height(None, high).high == at_height(False, high).best == 2000.0
    assert at_height(False, high).high == 2000.0
    for same in (at_height(True, None), at_height(None, Band(0.0, 0.0, 9e9, known=False))):
        assert same == exactly(2000.0)
    assert at_height(True, high, "electric") == exactly(2000.0)


def test_a_height_in_doubt_is_a_heat_in_doubt() -> None:
    doubt = at_height(True, Band(1000.0, 500.0, 2000.0))
    assert doubt.low < doubt.best < doubt.high < 2000.0
    assert doubt.high == pytest.approx(0.9421 * 2000.0, abs=1.0)
    assert doubt.low == pytest.approx(0.7846 * 2000.0, abs=1.0)


def test_the_night_of_a_place_up_high_has_less_heat_and_the_sheet_says_so() -> None:
    text = edited(("height: 0 m", "height: 3000 m"))
    slot = next(one for one in study(read_rig(text).rig, date(2026, 6, 1)).slots if one.use == "sleep")
    assert slot.heat is not None
    (night,) = slot.heat.held
    assert night.warmth is not None
    assert night.warmth.highest.best == pytest.approx(0.6919 * 4000.0, abs=2.0)
    rows = [row for grid in grids_of(slot.heat, HeaderUnits()) for row in grid.rows]
    (row,) = [row for row in rows if row[0].startswith("at meadow")]
    assert row == ("at meadow, 9,843 ft", "gives up to 2,768 to 4,000 W", "gets 69 % of the air it gets by the sea")


def test_the_months_of_a_place_are_twelve_from_january_on() -> None:
    assert len(MONTHS) == 12 and (MONTHS[0], MONTHS[-1]) == ("january", "december")


@pytest.mark.parametrize(("up_to", "kind"), [("1000..2000 m", "unknown"), ("1000 m", "limit"), ("2000 m", "")])
def test_a_leaflet_read_in_doubt_is_held_by_its_lower_height(up_to: str, kind: str) -> None:
    text = edited(("height: 0 m", "height: 1500 m"), ("up_to: 1500 m", f"up_to: {up_to}"))
    found = study(read_rig(text).rig, date(2026, 6, 1)).findings("sleep")
    assert [one.kind for one in found if one.code == "heat/too-high"] == ([kind] if kind else [])


@pytest.mark.parametrize(
    ("thickens", "night", "kind", "holds"),
    [
        ("", "1 C", "", False),
        ("", "-1 C", "unknown", False),
        ("", "-20 C", "unknown", False),
        ("", "-21 C", "unknown", True),
        ("unknown", "-30 C", "unknown", True),
        ("-20 C", "-20 C", "", False),
        ("-20 C", "-21 C", "limit", False),
        ("-30..-20 C", "-25 C", "unknown", True),
        ("-30..-20 C", "-31 C", "limit", False),
        ("-20 C", "-25..-15 C", "unknown", True),
        ("-40 C", "-30 C", "", False),
    ],
)
def test_diesel_that_thickens_on_a_cold_night(thickens: str, night: str, kind: str, holds: bool) -> None:
    """Summer diesel flows down to 0 C, the last winter diesel of mild climates to -20 C: EN 590, from memory."""
    written = f"thickens: {thickens}, " if thickens else ""
    text = edited(("thickens: -20 C, ", written), ("coldest_design: -5 C", f"coldest_design: {night}"))
    found = [one for one in worked(text, "sleep") if one.code == "heat/fuel-thickens"]
    assert [one.kind for one in found] == ([kind] if kind else [])
    for one in found:
        assert not one.could_stop and (one.kind == "limit" or one.could_limit == holds)
        assert one.margin is not None and one.margin < 0.0


@pytest.mark.parametrize("fuel", ["petrol", "propane", "kerosene", "electric"])
def test_only_diesel_thickens_and_only_where_it_lies_in_the_cold(fuel: str) -> None:
    cold = ("coldest_design: -5 C", "coldest_design: -30 C")
    told = worked(edited(cold, ("heater: {of: diesel", f"heater: {{of: {fuel}")), "sleep")
    assert "heat/fuel-thickens" not in {one.code for one in told}
    path = "[fuel, valve at tank, filter below floor, pump at 30 deg below floor z -100, line 2 mm bore, heater]"
    inside = (path, "[fuel, valve inside, pump inside z 10, line inside 2 mm bore, heater]")
    tank = ("x: -800, side: centre, z: 0", "x: 3000, side: left+100, z: 100")
    for edits, is_told in (((inside, tank), False), ((inside,), True), ((tank,), True)):
        told = worked(edited(cold, *edits), "sleep")
        assert ("heat/fuel-thickens" in {one.code for one in told}) is is_told


@pytest.mark.parametrize(
    ("nights", "asked"),
    [(("-5 C", "-8 C", "-3 C"), ["hill1"]), (("-5 C", "-30 C", "-25 C"), ["hill1", "hill2"]), (("1 C", "2 C"), [])],
)
def test_the_diesel_of_mild_cold_is_asked_once_of_the_coldest_place(nights: tuple[str, ...], asked: list[str]) -> None:
    hills = "".join(f"\n  hill{at}: {{coldest_design: {one}, height: 0 m}}" for at, one in enumerate(nights))
    meadow = "  meadow: {coldest_design: -5 C, height: 0 m, hottest_design: 22 C}"
    told = worked(edited(("thickens: -20 C, ", ""), (meadow, hills.lstrip("\n"))), "sleep")
    found = [one.because[1] for one in told if one.code == "heat/fuel-thickens"]
    assert found == [f"places[{one}]" for one in asked]

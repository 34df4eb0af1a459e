"""Up high what burns gets less air: it gives less, and the night of such a place is worked out with that."""

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
from tests.disciplines.heat.test_findings import edited

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

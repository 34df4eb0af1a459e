"""The sheet of air: its tables, its chart, and what it warns of."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from boxwright.disciplines.air.result import Result
from boxwright.disciplines.air.sheets import APART, CAUTION, charts_of, grids_of, sheets
from boxwright.disciplines.air.solve import offers, solve
from boxwright.exchange import Night
from boxwright.units import HeaderUnits, exactly
from tests.disciplines.air.test_damp import LEFT, METRIC, STUDS, night
from tests.disciplines.air.test_vents import hole, room, standing, vent

WINDOW = replace(STUDS, of="openings[window]", what="window window", factor=exactly(0.6))
NEAR = replace(STUDS, what="on the bows, roof", factor=exactly(0.4))


def worked(*nights: Night, sleepers: int = 2) -> Result:
    own = room(vent("low", 0.01), vent("high", 0.01), vent("leaf", None, "door"))
    names = standing("low", "leaf", perhaps=("high",))
    holes = (hole("low", 0.1), hole("high", 1.8), hole("leaf", 0.0, 1.0))
    offered = offers(own, names, holes, 1.0, sleepers, "sleep")
    return solve(own, offered, (), (LEFT,), nights, sleepers, "sleep", ("US",), date(2026, 1, 1))


def of_three() -> Night:
    given = night(-10.0, 0.05)
    return replace(given, cold=(STUDS, NEAR, WINDOW), water=tuple((one[0], one[0] / 2.0, 0.0) for one in given.water))


def test_the_sheet_warns_and_says_how_long_gear_takes_to_dry() -> None:
    (sheet,) = sheets(worked(of_three()), METRIC)
    assert sheet.notes[0] == CAUTION and "A litre of water in wet gear takes" in sheet.notes[1]
    assert [one.name for one in sheet.views] == ["Humidity of a night at P, with heater"]
    assert sheets(replace(worked(), vents=(), breathing=None, mild=None), METRIC) == ()


def test_its_tables_hold_what_stays_open_what_is_breathed_and_the_wettest_of_each_kind() -> None:
    vents, breathed, hours, wet = grids_of(worked(of_three()), HeaderUnits(length="mm", temperature="C"))
    assert [(row[0], row[3]) for row in vents.rows] == [("low", "stays open"), ("high", "half done")]
    assert breathed.title == "The air of 2 asleep, by warmth alone"
    assert [row[0] for row in hours.rows] == ["20 h", "23 h", "2 h"]
    assert [(row[0], row[2]) for row in wet.rows] == [
        ("the studs, left wall", "50 g/m2"),
        ("the bows, roof", "25 g/m2"),
    ]
    assert wet.of == ("walls[left]", "walls[left]")


def test_doors_are_listed_where_nobody_sleeps() -> None:
    assert [row[0] for row in grids_of(worked(sleepers=0), METRIC)[0].rows] == ["low", "high", "leaf"]


def test_the_chart_draws_what_drips_first_and_what_is_well_apart_from_it() -> None:
    (chart,) = charts_of(worked(of_three()))
    assert [one.label for one in chart.bounds] == ["drips: the studs", "drips: window"]
    assert chart.bounds[1].at - chart.bounds[0].at > APART
    assert all(one == 60.0 or abs(one - 60.0) < 0.5 for one in chart.series[0].best)


def test_the_hours_of_a_night_are_those_of_the_clock_as_in_the_charts_of_heat() -> None:
    result = worked(of_three())
    (chart,) = charts_of(result)
    assert chart.labels[:4] == ("20 h", "", "", "23 h")
    assert chart.labels[6] == "2 h"
    assert chart.series[0].texts[4] == "0 h, the room: 60 %"

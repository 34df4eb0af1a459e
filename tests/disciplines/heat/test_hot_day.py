"""A hot day: what it is taken to be where it is written and where not, and what the room makes of it each way."""

from __future__ import annotations

from dataclasses import replace
from math import radians
from typing import Any

import pytest

from boxwright.disciplines.heat import day
from boxwright.disciplines.heat.climate import clear_hour
from boxwright.disciplines.heat.coating import Coat
from boxwright.disciplines.heat.cold_hours import Inside
from boxwright.disciplines.heat.day import (
    BEDTIME,
    Airing,
    Asked,
    DayRun,
    Way,
    cold_asked,
    day_if_hotter,
    day_of,
    ways_of,
)
from boxwright.disciplines.heat.hot import BEGINS, HOT, HotDay, _dew_point, hot_days, weather_of
from boxwright.disciplines.heat.hot_room import hot_room
from boxwright.disciplines.heat.method import box_through_time
from boxwright.disciplines.heat.method.boxed import _saturated
from boxwright.disciplines.heat.parts import ClimateFacet, Month, Section, a_day
from boxwright.disciplines.heat.shell import shell_of
from boxwright.disciplines.heat.year_room import ROOMS
from boxwright.exchange import Airflow, Layup, LayupLayer, Moisture
from boxwright.units import Band, exactly

NORTH = radians(36.0)
NOBODY: tuple[Moisture, ...] = ()
SIDES = {
    "left": (0.0, -1.0, 0.0),
    "right": (0.0, 1.0, 0.0),
    "front": (-1.0, 0.0, 0.0),
    "rear": (1.0, 0.0, 0.0),
    "roof": (0.0, 0.0, 1.0),
    "floor": (0.0, 0.0, -1.0),
}


def the_day(north: float | None = NORTH, **written: object) -> HotDay:
    """Return the hot day of a place of which this is written."""
    own = Section((("here", ClimateFacet(**written)),), (), (("here", north),) if north is not None else ())
    (found,) = hot_days(own)
    return found


def test_the_hottest_month_tells_the_day_and_what_is_written_of_the_day_comes_first() -> None:
    july = Month(low=exactly(293.15), high=exactly(304.15))
    found = the_day(june=Month(high=exactly(300.15)), july=july)
    # The fifteenth of July is the 196th day of the year.
    assert (found.day, found.is_written) == (195, False)
    assert (found.hottest.low, found.hottest.best, found.hottest.high) == (307.15, 309.15, 310.15)
    assert (found.swing.best, found.swing.low, found.swing.high) == (11.0, 6.0, 13.0)
    written = the_day(july=july, hottest_design=exactly(309.0))
    assert (written.hottest, written.is_written) == (exactly(309.0), True)


def test_where_no_month_is_written_midsummer_is_that_of_its_half_of_the_earth() -> None:
    assert the_day(hottest_design=exactly(309.0)).day == 195
    assert the_day(-NORTH, hottest_design=exactly(309.0)).day == 14
    nowhere = the_day(None, hottest_design=exactly(309.0))
    assert nowhere.latitude.low < NORTH < nowhere.latitude.best < nowhere.latitude.high


def test_a_place_that_says_nothing_of_heat_has_no_hot_day() -> None:
    own = Section((("here", ClimateFacet(coldest_design=exactly(260.0), january=Month(low=exactly(270.0)))),))
    assert hot_days(own) == ()


@pytest.mark.parametrize("kelvin", [272.0, 329.0])
def test_a_day_that_no_station_has_read_is_refused(kelvin: float) -> None:
    assert a_day(exactly(300.0)) == exactly(300.0)
    with pytest.raises(ValueError, match="is worked out; write it as"):
        a_day(exactly(kelvin))


def test_the_day_is_hottest_in_the_afternoon_and_its_night_cools_by_its_swing() -> None:
    hot = replace(the_day(hottest_design=exactly(309.0)), swing=exactly(10.0))
    air = weather_of(hot, "best").outside[:24]
    assert max(air) == pytest.approx(309.0) and air.index(max(air)) == 15 - BEGINS
    assert min(air) == pytest.approx(299.0)
    assert weather_of(hot, "best").dew_point[0] < 299.0


def test_the_hot_end_of_a_day_is_hotter_sunnier_and_stiller() -> None:
    hot = the_day(july=Month(high=exactly(304.15)))
    low, best, high = (weather_of(hot, end) for end in ("low", "best", "high"))
    for column in ("outside", "level_sun"):
        sums = [sum(getattr(one, column)) for one in (low, best, high)]
        assert sums[0] < sums[1] < sums[2]
    assert low.wind[0] > best.wind[0] > high.wind[0]
    assert min(low.outside) < min(best.outside) < min(high.outside), "the hot end cools least by night"


def test_no_sun_shines_by_night() -> None:
    assert clear_hour((NORTH, 0.0, 0.0), 195 * 24, 1.0) == (0.0, 0.0, 0.0)


def test_air_drips_at_its_dew_point() -> None:
    for kelvin in (265.0, 285.0, 300.0):
        assert _dew_point(_saturated(kelvin, 101325.0)) == pytest.approx(kelvin, abs=1e-6)


def plane(wall: str, colour: str) -> Layup:
    """Return 8 m2 of a wall framed in steel every 16 in, with foam between and a lining over it."""
    layers = (
        LayupLayer(f"walls.{wall}", "foam", "XPS", exactly(0.0381), "bays", True),
        LayupLayer(f"walls.{wall}", "liner", "ply", exactly(0.00635), "all", True),
    )
    skin = "ply 3/4" if wall == "floor" else f"{colour} aluminium 0.040"
    return Layup(
        f"walls[{wall}]", wall, "", exactly(8.0), SIDES[wall], exactly(20.0), exactly(0.0), exactly(0.4064),
        exactly(0.0254), exactly(0.0381), exactly(0.00165), "tube", "steel", exactly(0.001), skin, layers,
    )  # fmt: skip


def inside(colour: str = "brown", opened: float = 0.0) -> Inside:
    shell = shell_of(tuple(plane(wall, colour) for wall in SIDES), ())
    return Inside(shell, flow(opened), 17.0, 2.0, 8.0)


def flow(opened: float, fan: float = 0.0) -> Airflow:
    return Airflow("trailer", exactly(0.006), exactly(0.0), exactly(0.0), 0.0, exactly(fan), exactly(opened))


HOTTEST = the_day(july=Month(low=exactly(293.15), high=exactly(304.15)))
AIRING = Airing(flow(0.1, 0.2), flow(0.6, 0.2), exactly(1500.0))


def ran(way: Way, room: Inside | None = None, people: tuple[Moisture, ...] = NOBODY, airing: Airing = AIRING) -> DayRun:
    return day_of(room or inside(), HOTTEST, airing, people, way)


def test_each_way_to_air_the_room_is_cooler_than_the_one_before_it_and_no_cooler_than_outside() -> None:
    shut, opened, doors = (ran(way) for way in ("shut", "opened", "doors"))
    assert shut.warmest.best > opened.warmest.best > doors.warmest.best > HOTTEST.hottest.best - 0.5
    assert shut.warmest.high > opened.warmest.high > doors.warmest.high
    assert ran("fans").bedtime.best < opened.bedtime.best
    for one in (shut, opened, doors):
        assert one.warmest.low < one.warmest.best < one.warmest.high
        assert all(low <= best <= high for low, best, high in zip(one.low, one.air, one.high, strict=True))


def test_a_fan_never_blows_in_air_that_is_hotter_than_the_room() -> None:
    opened, fans = ran("opened"), ran("fans")
    assert all(with_fan <= without + 0.05 for with_fan, without in zip(fans.air, opened.air, strict=True))


def test_a_fan_of_which_nothing_is_written_moves_nothing_and_is_no_way() -> None:
    unknown = replace(flow(0.1), fan=Band(0.0, 0.0, float("inf"), known=False))
    airing = Airing(unknown, unknown)
    assert ways_of(airing) == ("shut", "opened")
    assert ran("fans", airing=airing).air == ran("opened", airing=airing).air
    assert ways_of(AIRING) == ("shut", "opened", "fans", "doors", "cooled")
    assert ways_of(Airing(flow(0.0), flow(0.0))) == ("shut",)


def test_a_cooler_that_is_strong_enough_holds_its_setting_and_what_it_takes_is_told() -> None:
    asked = cold_asked(inside(), HOTTEST, AIRING, NOBODY)
    assert max(asked.air) == pytest.approx(ROOMS["cooled to"], abs=0.01)
    assert 0.0 < asked.cooling.low < asked.cooling.best < asked.cooling.high
    weak = ran("cooled", airing=replace(AIRING, cold=exactly(0.3 * asked.cooling.best)))
    assert weak.cooling.best == pytest.approx(0.3 * asked.cooling.best)
    assert ROOMS["cooled to"] < weak.warmest.best < ran("shut").warmest.best
    # As much cold is made by one twice as strong, in half the time; one that is far too weak never stops.
    whole, twice = (ran("cooled", airing=replace(AIRING, cold=exactly(one))) for one in (8000.0, 16000.0))
    assert whole.runs_for.best == pytest.approx(2.0 * twice.runs_for.best, rel=0.01) != 0.0
    assert ran("cooled", airing=replace(AIRING, cold=exactly(1.0))).runs_for.high == pytest.approx(86400.0)


def test_people_in_the_room_make_it_hotter_by_day_at_the_hot_end_only() -> None:
    two = (Moisture("people", exactly(2e-5), exactly(150.0), "asleep"),)
    alone, crowded = ran("shut"), ran("shut", people=two)
    afternoon = 15 - BEGINS
    assert crowded.high[afternoon] > alone.high[afternoon] + 0.5
    assert crowded.bedtime.best > alone.bedtime.best + 0.2


def test_bedtime_is_the_evening_hour_and_too_warm_hours_are_counted_over_their_limit() -> None:
    shut = ran("shut")
    assert shut.bedtime.best == pytest.approx(shut.air[BEDTIME - BEGINS])
    assert shut.too_warm.low <= shut.too_warm.best <= shut.too_warm.high <= 24.0
    assert shut.air[(shut.at - BEGINS) % 24] == max(shut.air)


def test_what_helps_is_run_and_paint_that_is_white_is_not_offered_again() -> None:
    room = hot_room(inside("brown"), HOTTEST, AIRING, NOBODY)
    assert [one.what for one in room.tried] == ["white roof", "white all over", "shade"]
    shut = room.runs[0].warmest.best
    by = {one.what: shut - one.shut.warmest.best for one in room.tried}
    assert by["white all over"] > by["white roof"] > 0.3 and by["shade"] > 0.3
    assert room.aired.way in ("opened", "fans"), "nobody leaves with the doors open"
    white = hot_room(inside("white"), HOTTEST, AIRING, NOBODY)
    assert [one.what for one in white.tried] == ["shade"]
    assert white.runs[0].warmest.best < shut


def test_a_shade_takes_the_sky_as_well_as_the_sun() -> None:
    """A roof that takes no sun at all is no cooler below a shade than its own night sky made it."""
    room = inside("white")
    dark = replace(room.shell, faces=tuple(
        replace(one, coat=Coat("white", exactly(0.0), one.coat.emittance)) for one in room.shell.faces
    ))  # fmt: skip
    sunless = hot_room(replace(room, shell=dark), HOTTEST, AIRING, NOBODY)
    (shade,) = sunless.tried
    assert min(shade.shut.air) > min(sunless.runs[0].air)


def test_what_of_a_fan_passes_is_less_than_is_written() -> None:
    assert 0.0 < HOT["a fan"].low < HOT["a fan"].best < HOT["a fan"].high <= 1.0


def test_a_fan_whose_flow_is_in_doubt_moves_least_at_the_hot_end() -> None:
    """What it moves at least is what the hottest day has, and never more for being written with a wider band."""
    sure, doubtful = flow(0.1, 0.2), replace(flow(0.1), fan=Band(0.2, 0.02, 0.38))
    exact, wide = (ran("fans", airing=Airing(one, one)) for one in (sure, doubtful))
    assert wide.bedtime.high > exact.bedtime.high + 0.05
    assert wide.air == exact.air


@pytest.mark.parametrize("asked", ["warmest", "bedtime"])
@pytest.mark.parametrize("way", ["shut", "opened"])
def test_a_day_that_may_be_cooler_is_no_day_that_is_hotter(way: Way, asked: Asked) -> None:
    """Held against the whole day: its least end decides, wherever among its runs that stands."""
    airing = Airing(inside().airflow, inside().airflow)
    whole = day_of(inside(), HOTTEST, airing, (), way)
    low = (whole.warmest if asked == "warmest" else whole.bedtime).low
    assert day_if_hotter(inside(), HOTTEST, airing, (), way, asked, low - 0.001) == whole
    assert day_if_hotter(inside(), HOTTEST, airing, (), way, asked, low) is None


def test_a_day_that_may_be_cooler_is_told_by_the_runs_of_a_mild_day(monkeypatch: pytest.MonkeyPatch) -> None:
    """Those come first: of all runs no others are needed, however little cooler the coolest of them is."""
    airing, runs = Airing(inside().airflow, inside().airflow), []
    whole = day_of(inside(), HOTTEST, airing, (), "shut")

    def counted(*given: Any) -> Any:
        runs.append(given)
        return box_through_time(*given)

    monkeypatch.setattr(day, "box_through_time", counted)
    assert day_if_hotter(inside(), HOTTEST, airing, (), "shut", "warmest", whole.warmest.low) is None
    assert 0 < len(runs) <= sum(one.day == "low" for one in day.SETS) < len(day.SETS)

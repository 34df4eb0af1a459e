"""Times as loggers write them: read where only one meaning is possible, else told in a builder's words."""

from __future__ import annotations

from datetime import datetime, timedelta, timezone

import pytest

from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.rig.compose import read_rig
from boxwright.rig.logged import read_logged
from boxwright.rig.logger_times import Times, day_named, times_of
from boxwright.rig.rig import home_of
from boxwright.rig.weather import read_weather
from boxwright.units import exactly


def read(*written: str, home: str = "") -> Times:
    return times_of(enumerate(written, 2), home)


@pytest.mark.parametrize(
    ("written", "hour", "minute"),
    [
        ("1/13/2026 12:05 AM", 0, 5), ("1/13/2026 12:05:09 pm", 12, 5), ("01/13/26 1:05 P.M.", 13, 5),
        ("1/13/2026 13:05", 13, 5), ("13.1.2026 0:05", 0, 5), ("13-01-2026 13:05:00", 13, 5),
        ("2026/01/13 13:05", 13, 5), ("2026-01-13 13:05", 13, 5), ("2026-01-13T13:05:30", 13, 5),
        ("13/1/2026, 11:05 PM", 23, 5), ("2026/1/13 1:05:00.250 AM", 1, 5),
    ],
)  # fmt: skip
def test_a_date_with_one_meaning_is_read_whatever_the_country(written: str, hour: int, minute: int) -> None:
    for home in ("", "US", "UK", "CA"):
        found = read(written, home=home)
        assert found.wrong == ()
        assert found.moments[2].replace(second=0, microsecond=0) == datetime(2026, 1, 13, hour, minute)


def test_a_zone_behind_it_is_kept() -> None:
    for written, hours in (
        ("1/13/2026 6:00 AM -05:00", -5.0),
        ("13.1.2026 06:00 +0330", 3.5),
        ("1/13/2026 06:00Z", 0.0),
    ):
        zone = timezone(timedelta(hours=hours))
        assert read(written).moments[2] == datetime(2026, 1, 13, 6, tzinfo=zone)


def test_what_may_be_either_is_read_as_at_home_and_asked_where_nobody_can_tell() -> None:
    either = "3/4/2026 6:00"
    assert read(either, home="US").moments[2] == datetime(2026, 3, 4, 6)
    assert read(either, home="UK").moments[2] == datetime(2026, 4, 3, 6)
    for home in ("", "CA"):
        found = read(either, home=home)
        assert found.moments == {}
        ((line, says),) = found.wrong
        assert line == 2 and '"3/4/2026 6:00" may be March 4 or April 3; write it as 2026-01-05 06:00' in says


def test_all_dates_of_a_file_tell_together_which_is_the_month() -> None:
    for home in ("", "US", "UK"):
        later = read("12/1/2026 6:00", "13/1/2026 6:00", home=home)
        assert [one.month for one in later.moments.values()] == [1, 1], "there is no thirteenth month"
        night = read("3/4/2026 23:50", "4/4/2026 00:00", home=home)
        assert night.moments[3] == datetime(2026, 4, 4) and night.moments[2].month == 4, "and no month between readings"
        night = read("4/3/2026 23:50", "4/4/2026 00:00", home=home)
        assert night.moments[2] == datetime(2026, 4, 3, 23, 50)
    both = read("13/1/2026 6:00", "1/13/2026 6:00", home="US")
    assert both.moments == {} and "some of its dates have the day first and some the month" in both.wrong[0][1]


@pytest.mark.parametrize(
    ("written", "says"),
    [
        ("yesterday", '"yesterday" is no time of a reading; write 2026-01-05 06:00'),
        ("1/13/2026 13:05 PM", "has no time of a day"),
        ("1/13/2026 0:05 AM", "has no time of a day"),
        ("1/13/2026 24:00", "has no time of a day"),
        ("2/30/2026 6:00", "is no day of a year with the month first"),
        ("", "is no time of a reading"),
    ],
)
def test_what_is_no_time_is_told_in_plain_words(written: str, says: str) -> None:
    found = read(written, home="US")
    assert found.moments == {} and found.wrong[0][0] == 2 and says in found.wrong[0][1]


def test_a_year_of_two_digits_is_last_or_it_is_asked() -> None:
    days = [f"26/01/{day:02d} 06:00" for day in range(5, 10)]
    assert "has no year of four digits" in read(*days).wrong[0][1]
    assert len(read(*(f"1/{day}/26 6:00" for day in range(11, 15))).moments) == 4


def test_a_day_is_said_as_at_home() -> None:
    assert (day_named(6, 27, "US"), day_named(6, 27, "UK"), day_named(6, 27, "")) == ("June 27", "27 June", "27 June")
    rig = read_rig("boxwright: 1\nrig: x\n").rig
    assert home_of(rig.header) == ""
    assert home_of(read_rig("boxwright: 1\nrig: x\ncountries: [US-NC, CA-BC]\n").rig.header) == "US"


def days(head: str, row: str, form: str) -> str:
    """Return two days of readings each hour, the second half of them warmer."""
    begin = datetime(2026, 1, 12)
    stamps = [begin + timedelta(hours=hour) for hour in range(48)]
    return head + "\n" + "\n".join(row.format(one.strftime(form), at) for at, one in enumerate(stamps)) + "\n"


def hours_of(content: bytes, home: str = "US") -> WeatherHours:
    hours, problems = read_weather(content, "log.csv", home=home)
    assert hours is not None, [one.says for one in problems]
    return hours


def test_a_logger_of_any_make_is_read_alike() -> None:
    """The same two days as ISO, as a US logger has them, with decimal commas, by tabs, in UTF-16."""
    plain = hours_of(days("time,outside (C)", "{},{}.5", "%Y-%m-%d %H:%M").encode())
    assert len(plain.outside) == 48 and plain.outside[0] == pytest.approx(273.65) and plain.begins == (11, 0)
    for text in (
        days("time,outside (C)", "{},{}.5", "%m/%d/%Y %I:%M %p"),
        days("time;outside (C)", "{};{},5", "%d.%m.%Y %H:%M"),
        days("time\toutside (C)", "{}\t{}.5", "%Y-%m-%d %H:%M"),
    ):
        for coded in (text.encode(), text.encode("utf-8-sig"), text.encode("utf-16")):
            assert hours_of(coded) == plain


def test_times_without_a_zone_are_those_of_the_place_and_told_once() -> None:
    _, problems = read_weather(days("time,outside (C)", "{},{}", "%Y-%m-%d %H:%M").encode(), "log.csv")
    assert [(one.kind, one.says) for one in problems] == [
        ("note", "the times of log.csv have no zone; they were taken for the clock of the place, all year the same")
    ]


@pytest.mark.parametrize(
    ("text", "line", "says"),
    [
        ("time;outside (C)\n12.1.2026 6:00;1.234,5\n", 2, '"1.234,5" is no number'),
        ("time,outside (C)\n2026-01-12 06:00,4,5\n2026-01-12 07:00,warm\n", 3, '"warm" is no number'),
        ("time,outside (C)\n3/4/2026 6:00,4\n", 2, "may be March 4 or April 3"),
        ('time,pressure (Pa),outside (C)\n2026-01-12 06:00,"101,325",4\n', 2, '"101,325" is no number'),
        ("time,outside (C)\n2026-01-12 06:00\n", 2, "a column is missing at its end"),
        ("outside (C),time\n4\n", 2, "it has no time"),
    ],
)
def test_what_a_logger_wrote_wrong_is_told_with_its_line(text: str, line: int, says: str) -> None:
    hours, problems = read_weather(text.encode(), "log.csv")
    assert hours is None
    assert [one.line for one in problems if says in one.says] == [line], [one.says for one in problems]


def test_a_logged_night_is_read_by_the_same_words() -> None:
    rows = [f"{'4' if at < 24 else '5'}/3/2026 {(20 + at // 6) % 24}:{at % 6}0;10,5;-3,5" for at in range(48)]
    night, problems = read_logged("\n".join(["time;inside (C);outside (C)", *rows]).encode("utf-16"), "n.csv",
                                  exactly(500.0))  # fmt: skip
    assert night is not None, [one.says for one in problems]
    assert night.times[-1] == 47 * 600.0 and night.inside[0] == pytest.approx(283.65)
    single = [one.replace("5/3/2026", "4/3/2026") for one in rows[:24]]
    table = "\n".join(["time;inside (C);outside (C)", *single]).encode()
    night, problems = read_logged(table, "n.csv", exactly(500.0))
    assert night is None and len(problems) == 1 and "may be April 3 or March 4" in problems[0].says
    night, _ = read_logged(table, "n.csv", exactly(500.0), "UK")
    assert night is not None

"""Weather files: three public forms and a logger's table read; every mistake in one is said with its line."""

from __future__ import annotations

from math import degrees
from pathlib import Path

import pytest

from boxwright.rig.weather import LARGEST, open_weather, read_weather
from boxwright.rig.weather_forms import TMY3, rows_of

HEAD = b"LOCATION,Anywhere,NC,USA,made up,000000,36.0,-80.0,-5.0,273.0\n" + b"OTHER\n" * 7
DAYS_IN = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def line(month: int, day: int, hour: int, warm: str = "4.0") -> bytes:
    """Return an hour as an EPW file has it."""
    parts = ["1999", str(month), str(day), str(hour), "60", "?", warm, "1.0", "80", "98000", "0", "0", "300", "50",
             "10", "45", "0", "0", "0", "0", "180", "2.5", "5", "5"]  # fmt: skip
    return ",".join(parts).encode()


def year() -> list[bytes]:
    """Return the hours of a year."""
    return [
        line(month, day, hour)
        for month, days in enumerate(DAYS_IN, 1)
        for day in range(1, days + 1)
        for hour in range(1, 25)
    ]


def read(lines: list[bytes], fill: bool = False):  # type: ignore[no-untyped-def]
    return read_weather(HEAD + b"\n".join(lines) + b"\n", "made.epw", fill)


def test_a_year_is_read() -> None:
    hours, problems = read(year())
    assert problems == ()
    assert hours is not None
    assert len(hours.outside) == 8760
    assert (hours.outside[0], hours.pressure[5], hours.wind[9]) == (277.15, 98000.0, 2.5)
    assert (hours.level_sun[1], hours.straight_sun[1], hours.sky_light[1], hours.cloud[1]) == (50.0, 10.0, 45.0, 5.0)
    assert (degrees(hours.latitude), degrees(hours.longitude), hours.ahead, hours.altitude) == (
        pytest.approx(36.0), pytest.approx(-80.0), -18000.0, 273.0,
    )  # fmt: skip


def says(lines: list[bytes], fill: bool = False) -> list[tuple[int, str]]:
    """Return the problems of a year of which nothing could be read."""
    hours, problems = read(lines, fill)
    assert hours is None
    return [(one.line, one.says) for one in problems if one.kind == "problem"]


def test_a_file_cut_short_is_said() -> None:
    assert says(year()[:5000]) == [(5008, "made.epw ends after 5000 of 8760 hours; it is cut short")]
    cut = year()[:100]
    cut[-1] = cut[-1][:30]
    assert says(cut)[0][0] == 108
    assert "columns, not 23" in says(cut)[0][1]


def test_a_gap_is_said_and_filled_only_where_that_is_asked() -> None:
    gap = year()
    gap[9] = line(1, 1, 10, "10.0")
    del gap[10:12]
    ((number, text),) = says(gap)
    assert number == 18, "and not once more for every column"
    assert "the weather is missing for 2 hours after hour 10" in text
    hours, problems = read(gap, fill=True)
    assert hours is not None
    assert hours.filled == (10, 11)
    assert hours.outside[9:13] == pytest.approx((283.15, 281.15, 279.15, 277.15))
    assert [(one.kind, one.says) for one in problems] == [
        ("note", "2 hours of made.epw were missing and stand between their neighbours now")
    ]
    marked = year()
    marked[10] = line(1, 1, 11, "99.9")
    assert "outside is missing for an hour" in says(marked)[0][1]


def test_a_long_gap_is_never_filled() -> None:
    gap = year()
    del gap[10:20]
    assert "it is too long to be filled" in says(gap, fill=True)[0][1]


def test_a_29_february_is_left_out_and_told() -> None:
    leap = year()
    leap[59 * 24 : 59 * 24] = [line(2, 29, hour) for hour in range(1, 25)]
    hours, problems = read(leap)
    assert hours is not None and len(hours.outside) == 8760
    assert [(one.kind, one.line) for one in problems] == [("note", 9 + 59 * 24)]


def test_hours_in_another_order_are_said() -> None:
    shuffled = year()
    shuffled[100], shuffled[200] = shuffled[200], shuffled[100]
    assert says(shuffled)[0] == (
        110, "hour 6 of 5 January comes after a later hour, or twice; put the hours in order, each once",
    )  # fmt: skip
    late = year()
    assert "hour 1 of 1 February; a typical year begins" in says(late[744:] + late[:744])[0][1]


def test_many_mistakes_are_told_as_a_dozen_and_the_rest() -> None:
    wrong = [b"x" * 40 for _ in range(100)]
    told = says(wrong)
    assert len(told) == 13
    assert told[-1][1] == "88 more like these; mend the first ones"


def test_fahrenheit_in_a_column_of_celsius_is_said() -> None:
    hot = year()
    hot[5000] = line(7, 28, 9, "88.0")
    assert says(hot)[0] == (5009, "88 C in hour 9 of 28 July; if it is Fahrenheit, say so in the heading: (F)")


def test_a_text_in_latin_1_is_read_and_told() -> None:
    hours, problems = read_weather(HEAD.replace(b"Anywhere", b"Chapec\xf3") + b"\n".join(year()), "l.epw")
    assert hours is not None and hours.place == "Chapecó"
    assert [one.kind for one in problems] == ["note"]


def test_a_file_too_large_or_not_there_is_not_read(tmp_path: Path) -> None:
    large = tmp_path / "large.epw"
    with large.open("wb") as file:
        file.truncate(LARGEST * 16)
    assert open_weather(large).problems[0].says.startswith("large.epw has 512 MB")
    assert "cannot be opened" in open_weather(tmp_path / "none.epw").problems[0].says
    for content in (b"", b"\x00\xff\xfe", b"LOCATION,\n", b"hello\nworld\n"):
        hours, problems = read_weather(content, "odd")
        assert hours is None and problems


LOG = """time,outside (F),wind (mph),remark
2026-01-05T06:00-05:00,32,10,
2026-01-05T06:30-05:00,50,10,
2026-01-05T08:00-04:00,68,0,
2026-01-05T08:10-05:00,68,0,
"""


def test_a_logger_is_read_by_the_hour_in_one_zone() -> None:
    hours, problems = read_weather(LOG.encode(), "log.csv")
    assert hours is not None
    assert hours.outside == pytest.approx((278.15, 293.15, 293.15))
    assert hours.begins == (4, 6)
    assert hours.ahead == -18000.0
    assert [one.kind for one in problems] == ["note"]


@pytest.mark.parametrize("nothing", ["", "nan", "NaN", "-999", "-9999.0", "n/a"])
def test_what_a_logger_did_not_read_is_a_gap_and_no_temperature(nothing: str) -> None:
    """Of three hours the middle one has no reading: a gap of one hour, filled where that is asked."""
    log = f"time,outside (F)\n2026-01-05T06:00-05:00,50\n2026-01-05T07:00-05:00,{nothing}\n2026-01-05T08:00-05:00,68\n"
    hours, problems = read_weather(log.encode(), "log.csv")
    assert hours is None
    assert ["outside is missing for an hour" in one.says for one in problems] == [True]
    hours, _ = read_weather(log.encode(), "log.csv", fill=True)
    assert hours is not None and hours.outside == pytest.approx((283.15, 288.15, 293.15))
    assert hours.filled == (1,)


@pytest.mark.parametrize(
    ("was", "becomes", "expected"),
    [
        ("outside (F)", "outside", "has no unit known for it; write outside (C)"),
        ("time,", "clock,", "expected an EPW file"),
        ("T06:30-05:00", "T06:30", "its time has no zone"),
        ("50", "warm", "is not a reading"),
        ("outside (F)", "inside (F)", "has no temperature outside"),
    ],
)
def test_a_mistake_of_a_logger_is_said(was: str, becomes: str, expected: str) -> None:
    hours, problems = read_weather(LOG.replace(was, becomes).encode(), "log.csv")
    assert hours is None
    assert any(expected in one.says for one in problems)


def test_a_typical_year_with_a_column_left_out_is_read_without_it() -> None:
    """A few hours as a TMY3 file has them, its wind struck out."""
    names = ["Date (MM/DD/YYYY)", "Time (HH:MM)", *TMY3]
    for struck in TMY3:
        kept = [name for name in names if name != struck]
        rows = [",".join(kept)]
        for hour in range(1, 25):
            values = dict.fromkeys(TMY3, "10") | {names[0]: "01/01/1999", names[1]: f"{hour:02d}:00"}
            rows.append(",".join(values[name] for name in kept))
        text = '703165,"SAND POINT",AK,-9.0,55.317,-160.517,7\n' + "\n".join(rows) + "\n"
        found = rows_of(text, "made.csv", "US")
        assert found.problems == () and len(found.rows) == 24
        assert {row.values[TMY3[struck][0]] for row in found.rows} == {None}

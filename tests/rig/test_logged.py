"""The table of a logger of one night: read with or without a column of heat; every mistake in one has its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from boxwright.rig.logged import open_logged, read_logged
from boxwright.rig.weather import LARGEST
from boxwright.units import Band, exactly

HEAD = "time,inside (F),outside (F),heat (W)\n"


def table(count: int = 20, head: str = HEAD) -> str:
    """Return readings each ten minutes from six in the evening on."""
    rows = [
        f"2026-01-05 {18 + at // 6:02d}:{at % 6 * 10:02d},{50 + at},14,{1000 if at < 10 else 0}" for at in range(count)
    ]
    return head + "\n".join(rows) + "\n"


def test_a_table_is_read_in_si_by_the_time_since_its_first_reading() -> None:
    night, problems = read_logged(table().encode(), "n.csv", None)
    assert problems == () and night is not None
    assert night.times[:3] == (0.0, 600.0, 1200.0)
    assert night.inside[0] == pytest.approx(283.15) and night.outside[0] == pytest.approx(263.15)
    assert night.heat[9:11] == (1000.0, 0.0)
    assert night.doubt == pytest.approx(0.03)


def test_what_is_typed_stands_for_a_column_that_is_not_there() -> None:
    lines = [line.rpartition(",")[0] for line in table(head=HEAD).splitlines()]
    content = ("\n".join(lines) + "\n").encode()
    night, _ = read_logged(content, "n.csv", Band(1000.0, 900.0, 1100.0, spread="interval"))
    assert night is not None and set(night.heat) == {1000.0} and night.doubt == pytest.approx(0.1)
    night, problems = read_logged(content, "n.csv", None)
    assert night is None and "does not say what heat ran" in problems[0].says
    night, _ = read_logged(table().encode(), "n.csv", exactly(500.0))
    assert night is not None and night.heat[0] == 1000.0, "the file's own column comes first"


@pytest.mark.parametrize(
    ("was", "becomes", "line", "says"),
    [
        ("inside (F)", "inside", 1, "has no unit known for it; write inside (C)"),
        ("outside (F),", "shed (F),", 1, "has no column of outside"),
        ("heat (W)", "heat (BTU/h)", 1, "has no unit known for it; write heat (W)"),
        ("18:30,53", "18:30,warm", 5, "is not a reading"),
        ("18:30,53", "18:30,953", 5, "512 C inside; if it is Fahrenheit"),
        ("18:30,53,14,1000", "18:30,53", 5, "is not a reading"),
        ("18:30,53,14,1000", "18:30,53,14,-5", 5, "a heat is 0 or more watts"),
        ("18:30,53,14,1000", "18:30,53,14,nan", 5, "a heat is 0 or more watts"),
        ("18:30", "17:30", 5, "comes after a later time, or twice"),
        ("18:30", "18:20", 5, "comes after a later time, or twice"),
        ("2026-01-05 18:30", "05/01/2026 18:30", 5, "is not a reading"),
        ("2026-01-05 18:30", "2026-01-05T18:30-05:00", 5, "some times have a zone and some have none"),
    ],
)
def test_a_mistake_is_said_with_its_line(was: str, becomes: str, line: int, says: str) -> None:
    content = table()
    assert was in content
    night, problems = read_logged(content.replace(was, becomes).encode(), "n.csv", None)
    assert night is None
    assert [one.line for one in problems if says in one.says] == [line], [one.says for one in problems]


def test_a_gap_is_said_and_never_filled() -> None:
    lines = table(30).splitlines()
    night, problems = read_logged("\n".join([*lines[:6], *lines[14:]]).encode(), "n.csv", None)
    assert night is None
    assert problems[0].line == 7 and "1.5 hours are missing" in problems[0].says


def test_text_in_latin_1_a_column_of_its_own_and_a_short_file_are_told() -> None:
    content = table().replace("heat (W)", "heat (W),caf\xe9").encode("latin-1")
    night, problems = read_logged(content, "n.csv", None)
    assert night is not None and [one.kind for one in problems] == ["note", "note"]
    night, problems = read_logged(table(5).encode(), "n.csv", None)
    assert night is None and "has 5 readings" in problems[0].says


@pytest.mark.parametrize(
    "content", [b"", b"\x00\xff\xfe", b"hello\nworld\n", b"time,inside (F)\n", b'"' + b"x" * 200_000]
)
def test_what_is_no_table_is_told_and_never_breaks(content: bytes) -> None:
    night, problems = read_logged(content, "odd", None)
    assert night is None and problems


def test_many_mistakes_are_told_as_a_few_and_the_rest() -> None:
    content = HEAD + "x,y,z,w\n" * 50
    _, problems = read_logged(content.encode(), "n.csv", None)
    assert len(problems) == 7 and problems[-1].says == "44 more like these"


def test_a_file_too_large_or_not_there_is_not_read(tmp_path: Path) -> None:
    large = tmp_path / "large.csv"
    with large.open("wb") as file:
        file.truncate(LARGEST * 16)
    assert open_logged(large, None).problems[0].says.startswith("large.csv has 512 MB")
    assert "cannot be opened" in open_logged(tmp_path / "none.csv", None).problems[0].says

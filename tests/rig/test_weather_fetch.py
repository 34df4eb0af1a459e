"""A typical year from the internet: a stored answer goes through the library that asks, becomes a file, and is read."""

from __future__ import annotations

import json
from math import cos, degrees, pi
from pathlib import Path
from typing import Any

import pytest

pytest.importorskip("pvlib", reason="pvlib is not installed: no year can be asked for")

from boxwright.rig.weather import open_weather
from boxwright.rig.weather_fetch import NotFetched, dew_point, epw_text, fetched_text

MONTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def stored(hours: int = 8760) -> dict[str, Any]:
    """Return an answer in the form of the service, its numbers made up: warmest at 20 h of universal time."""
    rows = []
    for at in range(hours):
        day, clock = divmod(at, 24)
        month = next(number for number in range(12) if day < sum(MONTHS[: number + 1]))
        rows.append({
            "time(UTC)": f"{2005 + month}{month + 1:02d}{day - sum(MONTHS[:month]) + 1:02d}:{clock:02d}00",
            "T2m": 10.0 + 5.0 * cos(2.0 * pi * (clock - 20) / 24.0), "RH": 60.0, "G(h)": 300.0 if 13 <= clock <= 22
            else 0.0, "Gb(n)": 100.0, "Gd(h)": 50.0, "IR(h)": 300.0, "WS10m": 3.2, "WD10m": 180.0, "SP": 98000.0,
        })  # fmt: skip
    return {
        "inputs": {"location": {"latitude": 36.07, "longitude": -79.79, "elevation": 240.0}},
        "outputs": {"months_selected": [], "tmy_hourly": rows},
        "meta": {"inputs": {}, "outputs": {}},
    }


class Answer:
    """What a service sends back."""

    def __init__(self, said: dict[str, Any], ok: bool = True) -> None:
        self.ok, self.said = ok, said

    def json(self) -> dict[str, Any]:
        return json.loads(json.dumps(self.said))  # type: ignore[no-any-return]


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[Any]:
    """Answer whoever asks from what is put in here; a mistake is raised."""
    answers: list[Any] = []

    def get(*_: object, **__: object) -> Answer:
        answer = answers.pop(0)
        if isinstance(answer, Exception):
            raise answer
        assert isinstance(answer, Answer)
        return answer

    monkeypatch.setattr("requests.get", get)
    return answers


def test_a_year_that_came_back_is_written_in_the_time_of_the_place_and_read(asked: list[Any], tmp_path: Path) -> None:
    asked.append(Answer(stored()))
    (tmp_path / "g.epw").write_text(fetched_text("Greensboro, NC", 36.07, -79.79), encoding="utf-8")
    hours, problems = open_weather(tmp_path / "g.epw")
    assert hours is not None and problems == ()
    assert len(hours.outside) == 8760 and hours.ahead == -5 * 3600.0
    assert degrees(hours.latitude) == pytest.approx(36.07, abs=1e-3) and hours.altitude == 240.0
    # Twenty hours of universal time is fifteen there.
    first = hours.outside[:24]
    assert first.index(max(first)) == 15 and max(first) == pytest.approx(288.15, abs=0.06)
    assert hours.level_sun[7] == 0.0 and hours.level_sun[8] == 300.0 and hours.level_sun[17] == 300.0
    assert hours.wind[0] == 3.2 and hours.pressure[0] == 98000.0 and hours.cloud == ()


def test_the_dew_point_is_that_of_a_psychrometric_library() -> None:
    psychrolib = pytest.importorskip("psychrolib", reason="psychrolib is not installed")
    psychrolib.SetUnitSystem(psychrolib.SI)
    for warm, humid in ((20.0, 0.5), (35.0, 0.7), (5.0, 0.9)):
        assert dew_point(warm, humid) == pytest.approx(psychrolib.GetTDewPointFromRelHum(warm, humid), abs=0.15)


@pytest.mark.parametrize(
    ("answer", "says"),
    [
        (OSError("no way out"), "no way out"),
        (Answer({"message": "Location over the sea."}, ok=False), "Location over the sea"),
        (Answer(stored(100)), "100 hours came back"),
        (Answer({"unlike": 1}), "no year came back"),
    ],
)
def test_what_does_not_come_back_is_told(asked: list[Any], answer: object, says: str) -> None:
    asked.append(answer)
    with pytest.raises(NotFetched, match=says):
        fetched_text("Here", 36.07, -79.79)


def test_a_year_that_is_read_and_written_again_is_the_same(tmp_path: Path) -> None:
    import pvlib

    read = open_weather(Path(pvlib.__file__).parent / "data" / "723170TYA.CSV").hours
    assert read is not None
    (tmp_path / "again.epw").write_text(epw_text(read), encoding="utf-8")
    again = open_weather(tmp_path / "again.epw").hours
    assert again is not None
    assert again.outside == pytest.approx(read.outside, abs=0.051)
    assert again.level_sun == pytest.approx(read.level_sun, abs=0.51)
    assert again.cloud == read.cloud

"""The box through time against a general building simulator, on its stored hours (benchmarks/energyplus/run.py).

Same shells, same weather, same films. What is known to differ, and why: `benchmarks/energyplus/README.md`.
"""

from __future__ import annotations

import csv
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

pytest.importorskip("pvlib", reason="pvlib is not installed: its two typical years are not at hand")
pytest.importorskip("numba", reason="numba is not installed: no year is compiled")

import numpy as np
import pvlib

from boxwright.disciplines.heat.climate import around
from boxwright.disciplines.heat.method import Box, Heater, Hours, Panes
from boxwright.disciplines.heat.method.network import _march
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.model.compiled import compiled
from boxwright.rig.weather import open_weather
from tests.disciplines.heat.rooms import NO_COLD, faces, hours, room
from tests.disciplines.heat.years import marched
from tests.lanes import every_so_many

STORED = Path(__file__).resolve().parents[2] / "benchmarks" / "energyplus"
FILES = {"greensboro": "723170TYA.CSV", "sand-point": "703165TY.csv"}
SHELLS = ("plain", "windows", "heavy-floor", "dark-roof")
LONG, WIDE, HIGH = 4.2672, 2.032, 1.9812
FACINGS = ((-1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, 1.0))
"""South, east, north, west, up, as in the stored models."""
AREAS = (LONG * HIGH, WIDE * HIGH, LONG * HIGH, WIDE * HIGH, LONG * WIDE, LONG * WIDE)
CONVECTION = (3.076, 3.076, 3.076, 3.076, 4.040, 0.948)
"""W/m2K inside: still air on walls, under a cold roof, over a cold floor, the simulator's simple values."""
HEIGHTS = (0.5 * HIGH,) * 4 + (HIGH, 0.0)
FOAM, LINING, BOARDS, STONE = 0.0381 / 0.04, 0.00635 / 0.12, 0.018 / 0.12, 0.05 / 1.4
GLASS = 0.9 * 0.5


@cache
def weather(year: str) -> WeatherHours:
    """Return a typical year."""
    found = open_weather(Path(pvlib.__file__).parent / "data" / FILES[year]).hours
    assert found is not None
    return found


def box(shell: str, heated: bool, pressure: float) -> Box:
    """Return a stored shell as a box. All faces are cold, so that radiation between them brings nothing to them.

    One film stands for all of them, the mean of what air gives to each: radiation holds their insides at about one
    temperature.
    """
    film = sum(area * each for area, each in zip(AREAS, CONVECTION, strict=True)) / sum(AREAS)
    window = shell == "windows"
    each = []
    for number, area in enumerate(AREAS):
        clear = area - (GLASS if window and number in (0, 2) else 0.0)
        lining, heat = (LINING, 0.00635 * 500.0 * 1600.0)
        if number == 5:
            lining, heat = (
                (STONE, 0.05 * 2200.0 * 900.0) if shell == "heavy-floor" else (BOARDS, 0.018 * 500.0 * 1600.0)
            )
        each.append(
            {
                "area": clear, "film": 8.23, "film_wind": 3.33 * (HEIGHTS[number] / 10.0) ** 0.14,
                "behind": (FOAM + 0.5 * lining) / clear, "inward": clear / (0.5 * lining + 1.0 / film),
                "capacity": clear * (heat + 0.5 * 0.0381 * 30.0 * 1400.0),
                "absorptance": 0.9 if shell == "dark-roof" and number == 4 else 0.25,
                "direction": number if number < 5 else -1,
                "catches": 0.6 if number == 5 else 0.4 * area / sum(AREAS[:5]),
            }
        )  # fmt: skip
    panes = Panes((2.8 * GLASS,) * 2, (0.65 * GLASS,) * 2, (0, 2)) if window else Panes((), (), ())
    whole = room(air=LONG * WIDE * HIGH * 1.2 * 1006.0, to_air=0.0, pressure=pressure)
    return Box(whole, faces(*each), panes, NO_COLD, Heater(0.0, 1e6 if heated else 0.0, True, 0.0))


def use(year: str) -> Hours:
    """Return the hours of a year: 150 W in the room, one air change, 18 C.

    The simulator runs its temperatures straight from stamp to stamp, so an hour has the mean of its two ends.
    """
    one = weather(year)
    columns = around(one, FACINGS, 0.2, 101325.0)
    outside = tuple(0.5 * (before + after) for before, after in pairwise((one.outside[-1], *one.outside)))
    return hours(
        8760, outside=outside, wind=columns.wind, sun=columns.sun, humidity=columns.humidity, warm=291.15, gains=150.0,
        fan=LONG * WIDE * HIGH / 3600.0,
    )  # fmt: skip


def stored(year: str, shell: str) -> np.ndarray:
    """Return heat (W) and temperature left alone (C) of each hour as the simulator had them."""
    with (STORED / f"{year}-{shell}.csv").open(encoding="utf-8") as file:
        return np.array([[float(one) for one in row] for row in list(csv.reader(file))[1:]])


def worked(year: str, shell: str) -> tuple[float, np.ndarray]:
    """Return the heat of a year (kWh) and the temperatures (C) of each hour left alone."""
    pressure = sum(weather(year).pressure) / 8760
    heat, free = (
        marched(compiled(_march), box(shell, heated, pressure), use(year), 288.15, 0.005, 4, 240)
        for heated in (True, False)
    )
    return float(heat[:-1, 2].sum()) / 1000.0, free[:-1, 0] - 273.15


@pytest.mark.parametrize(("year", "shell"), every_so_many(((year, shell) for year in FILES for shell in SHELLS), 3))
def test_a_year_comes_out_as_in_the_simulator(year: str, shell: str) -> None:
    heat, free = worked(year, shell)
    theirs = stored(year, shell)
    assert heat == pytest.approx(theirs[:, 0].sum() / 1000.0, rel=0.08)
    assert float(np.sqrt(((free - theirs[:, 1]) ** 2).mean())) < 1.5

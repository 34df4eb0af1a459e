"""Which end of what is not known a night is run at, and the numbers of practice it takes where nobody wrote one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from boxwright.disciplines.air.findings.damp import A_COLD_NIGHT as ALSO_COLD
from boxwright.disciplines.heat.as_built import ENDS, End
from boxwright.disciplines.heat.battery import Hung, taken_of
from boxwright.disciplines.heat.cold_hours import OFF, Inside, Outdoors, Warmth, hours_of
from boxwright.disciplines.heat.holes import UNITS
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.method import Box
from boxwright.disciplines.heat.night import _heater
from boxwright.disciplines.heat.room import NIGHT, room_of
from boxwright.disciplines.heat.shell import shell_of
from boxwright.disciplines.heat.telling import A_COLD_NIGHT, A_HOT_DAY
from boxwright.exchange import Airflow, ElectricLoad
from boxwright.finding import Finding
from boxwright.units import Band, exactly
from tests.disciplines.heat.test_findings import edited, studied, worked
from tests.disciplines.heat.walls import FOAM, LINER, STRIP, wall

FLOWS = Airflow(
    "trailer", Band(0.01, 0.005, 0.02), Band(0.008, 0.004, 0.016), Band(1.5, 1.0, 2.0), 0.3, exactly(0.0), exactly(0.0)
)
SHELL = replace(shell_of((wall(FOAM, STRIP, LINER),), ()), furnishing=exactly(1e5))
ROOM = Inside(SHELL, FLOWS, 16.0, 2.0, 8.0)
UNSAID = Outdoors("places[field]", "field", exactly(268.15), NIGHT["swing"], NIGHT["wind"])


def boxed(end: End) -> Box:
    return room_of(ROOM.shell, FLOWS, ROOM.volume, ROOM.height, ROOM.floor, end, OFF)


@pytest.mark.parametrize("of", [
    lambda box: box.room.vents, lambda box: box.room.leak, lambda box: box.room.rise, lambda box: box.faces.inward[0],
    lambda box: -box.room.moist,
])  # fmt: skip
def test_most_is_lost_at_the_high_end(of: Callable[[Box], float]) -> None:
    low, best, high = (of(boxed(end)) for end in ENDS)
    assert low < best < high


def test_the_film_inside_is_that_of_its_end() -> None:
    """By hand: of ten square metres of face, with the film of moving air of 0.357 (0.25 to 0.40) m2K/W."""
    (face,) = ROOM.shell.faces
    for end, film in zip(ENDS, (0.40, 0.357, 0.25), strict=True):
        inward = boxed(end).faces.inward[0]
        assert face.area.best / inward - film == pytest.approx(face.inward - 0.357)


@pytest.mark.parametrize(
    ("end", "swing", "share", "times"), [("best", 9, 0.85, 2), ("low", 14, 1.0, 4), ("high", 5, 0.7, 1)]
)
def test_what_nobody_wrote_of_a_night_is_what_practice_has(end: End, swing: int, share: float, times: int) -> None:
    """By hand: at -5 C air holds 2.476 g of water a kg over ice (401.8 Pa); sixteen cubic metres of it are 19.2 kg."""
    hours = hours_of(UNSAID, (), None, end)
    assert max(hours.outside) - min(hours.outside) == pytest.approx(swing)
    assert hours.humidity[0] == pytest.approx(share * 2.476e-3, rel=5e-3)
    assert boxed(end).room.moist == pytest.approx(times * 19.2)
    assert boxed(end).room.coupling == pytest.approx(8.0 * 8.0), "8 W/K of each of eight square metres of floor"


@pytest.mark.parametrize("end", ENDS)
def test_no_heater_gives_more_at_its_lowest_than_at_its_highest(end: End) -> None:
    crossed = Warmth("", "", Band(900.0, 500.0, 2500.0), Band(2000.0, 0.0, 2200.0), 290.0, False, True)
    heater = _heater(crossed, end)
    assert heater.lowest <= heater.highest
    assert _heater(crossed, "high").highest == 0.0 == _heater(crossed, "high").lowest


def test_the_night_in_which_heaters_may_take_most_is_the_one_told() -> None:
    def load(when: str, joule: Band) -> ElectricLoad:
        return ElectricLoad("parts[a]", "cell", when, exactly(1.0), joule, exactly(1.0), exactly(1.0))

    nothing = exactly(0.0)
    hung = Hung("parts[cell]", "cell", nothing, None, ("parts[a]",), nothing, nothing, "", False)
    loads = (load("sure", Band(8.0, 7.0, 9.0)), load("doubtful", Band(6.0, 1.0, 20.0)))
    assert [one.when for one in taken_of(hung, loads)] == ["doubtful"]
    assert taken_of(hung, ()) == ()


def said(code: str, *edits: tuple[str, str]) -> list[Finding]:
    return [one for one in worked(edited(*edits), "sleep") if one.code == code]


@pytest.mark.parametrize(("height", "kind"), [
    ("1300..1500 m", ""), ("1300..1600 m", "unknown"), ("1450..1600 m", "unknown"), ("1510..1600 m", "limit"),
])  # fmt: skip
def test_a_place_is_too_high_for_certain_where_all_of_its_doubt_is(height: str, kind: str) -> None:
    """The leaflet of the small rig's heater lets it burn up to 1500 m."""
    found = said("heat/too-high", ("height: 0 m", f"height: {height}"))
    assert [one.kind for one in found] == ([kind] if kind else [])


def test_the_fuel_is_that_of_the_night_that_takes_most() -> None:
    peak = ("hottest_design: 22 C}", "hottest_design: 22 C}\n  peak: {coldest_design: -25 C, height: 0 m}")
    (found,) = said("heat/fuel-for-the-night", ("volume: 10", "volume: 1"), peak)
    assert "in the coldest night at peak" in found.says


@pytest.mark.parametrize(("lowest", "may_limit"), [("900 W", True), ("600 W", False)])
def test_a_night_that_may_get_too_warm_to_bear_may_limit(lowest: str, may_limit: bool) -> None:
    """Left at its lowest the room is 17 C most likely, and 30 C at the most, or 22 C."""
    (found,) = said("heat/too-warm-at-lowest", ("switches: yes, ", ""), ("lowest: 900 W", f"lowest: {lowest}"))
    assert (found.kind, found.could_limit) == ("unknown", may_limit)


def test_films_and_doors_are_as_the_tables_have_them() -> None:
    """ISO 6946 from memory: 0.13 sideways, 0.10 upward, 0.17 downward, 0.04 outside; doors as makers give them."""
    assert [columns("films")[name][0] for name in ("wall", "roof", "floor", "outside")] == [0.13, 0.10, 0.17, 0.04]
    assert tuple(UNITS["door"]) == (2.5, 1.2, 4.5)


@pytest.mark.parametrize("name", ["hill", "zenith"])
def test_of_several_places_the_one_where_a_heater_makes_it_warmest_is_told(name: str) -> None:
    """At -25 C the room stays bearable at 900 W, at 15 C it does not, whichever of both is written first."""
    cold, plain = ("coldest_design: -5 C", "coldest_design: -25 C"), ("switches: yes, ", "")
    (alone,) = said("heat/too-warm-at-lowest", cold, plain)
    mild = ("places:\n", f"places:\n  {name}: {{coldest_design: 15 C, height: 0 m, hottest_design: 22 C}}\n")
    behind = ("hottest_design: 22 C}", f"hottest_design: 22 C}}\n  {name}: {{coldest_design: 15 C, height: 0 m}}")
    for written in (mild, behind):
        (both,) = said("heat/too-warm-at-lowest", cold, plain, written)
        assert (alone.could_limit, both.could_limit) == (False, True)
        assert f"in the night at {name}, running on" in both.says


@pytest.mark.parametrize(("width", "height", "most"), [
    ("800", "unknown", 0.8 * 2.0), ("unknown", "600", 4.2 * 0.6), ("unknown", "unknown", 4.2 * 2.0),
])  # fmt: skip
def test_a_hole_of_which_one_side_is_known_is_at_most_that_as_long_as_its_wall(
    width: str, height: str, most: float
) -> None:
    """By hand: the left wall is 4200 mm long and 2000 mm high."""
    text = edited(("width: 800, z: 700, height: 600", f"width: {width}, z: 700, height: {height}"))
    (slot,) = [one for one in studied(text).asked_slots("sleep", "night") if one.heat is not None][:1]
    (area,) = [one.area for one in slot.heat.openings if one.name == "window"] if slot.heat is not None else ()
    assert (area.known, area.low, area.high) == (False, 0.0, pytest.approx(most))


@pytest.mark.parametrize("kelvin", [A_COLD_NIGHT, A_HOT_DAY])
def test_examples_of_a_place_are_whole_in_either_degrees(kelvin: float) -> None:
    for degrees in (kelvin - 273.15, (kelvin - 273.15) * 1.8 + 32.0):
        assert degrees == pytest.approx(round(degrees), abs=1e-9)
    assert A_COLD_NIGHT == ALSO_COLD

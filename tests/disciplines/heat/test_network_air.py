"""The box through time: how much air, sun, wind and water each opening, pane, film and cold place lets through."""

from __future__ import annotations

from math import hypot, sqrt

import pytest

from boxwright.disciplines.air.method import humidity_ratio, leaked, risen, wall_saturation_pressure
from boxwright.disciplines.heat.method import Box, Cold, Course, Heater, Panes, box_through_time
from tests.disciplines.heat.rooms import NO_COLD, NO_HEATER, NO_PANES, demo, faces, hours, room

HELD = Heater(0.0, 1e5, True, 0.0)
BRINGS = 1006.0 * 101325.0 / (287.042 * 273.15)


def held(whole: dict[str, float], **use: float) -> Course:
    """Return a room held at 20 C from the start, at freezing outside, with these openings; its walls pass 1e-9 W/K."""
    box = Box(room(air=1e3, **whole), faces({"inward": 1e-9}), NO_PANES, NO_COLD, HELD)
    return box_through_time(box, hours(3, warm=293.15, **use), (293.15, 0.004), 1)


def test_cracks_and_vents_and_a_fan_bring_what_their_own_formulas_say() -> None:
    crack = leaked(0.01, 0.0145, 0.0174, 20.0, 3.0)
    vent = risen(0.02, 0.65, 1.5, 293.15, 273.15)
    blown = 0.65 * 0.02 * sqrt(0.3 * 3.0**2)
    cracks = {"leak": 0.01, "stack": 0.0145, "leak_wind": 0.0174}
    vents = {"vents": 0.02, "rise": 1.5, "vent_wind": 0.3}
    assert held(cracks, wind=3.0).flow[-1] == pytest.approx(crack)
    assert held(vents, wind=0.0).flow[-1] == pytest.approx(vent)
    assert held(vents, wind=3.0).flow[-1] == pytest.approx(hypot(vent, blown))
    both = held(cracks | vents, wind=3.0, fan=0.01)
    assert both.flow[-1] == pytest.approx(hypot(crack + hypot(vent, blown), 0.01))
    assert both.heat[-1] == pytest.approx(both.flow[-1] * BRINGS * 20.0, rel=1e-6)


def test_all_that_can_be_opened_is_not_more_than_its_area_passes() -> None:
    box = Box(
        room(air=1e3, opened=0.03, rise=1.5, open_above=283.15), faces({"inward": 1e-9}), NO_PANES, NO_COLD, NO_HEATER
    )
    found = box_through_time(box, hours(300, gains=5000.0), (293.15, 0.004), 4)
    # Steady: what passes by warmth carries just the 5000 W.
    assert found.flow[-1] == pytest.approx(risen(0.03, 0.65, 1.5, found.air[-1], 273.15), rel=1e-3)
    assert found.flow[-1] * BRINGS * (found.air[-1] - 273.15) == pytest.approx(5000.0, rel=1e-3)


def test_wind_cools_what_the_sun_warms() -> None:
    roof = {"area": 4.0, "film": 10.0, "film_wind": 3.0, "inward": 1e-9, "absorptance": 0.5, "direction": 0}
    box = Box(room(air=1e5), faces(roof), Panes((10.0,), (0.0,), (-1,)), NO_COLD, NO_HEATER)
    for wind in (0.0, 5.0):
        found = box_through_time(box, hours(2, sun=((800.0,),) * 2, wind=wind), (273.15, 0.004))
        assert found.faces[-1][0] - 273.15 == pytest.approx(0.5 * 800.0 / (10.0 + 3.0 * wind), rel=1e-6)


def test_sun_through_a_pane_warms_the_room_by_its_area() -> None:
    box = Box(room(air=1e4), faces({"inward": 1e-9}), Panes((10.0,), (0.6,), (2,)), NO_COLD, NO_HEATER)
    found = box_through_time(box, hours(20, sun=((0.0, 0.0, 500.0),) * 20), (273.15, 0.004))
    assert found.air[-1] - 273.15 == pytest.approx(0.6 * 500.0 / 10.0, rel=1e-6)


@pytest.mark.parametrize("outside", [263.15, 278.15])
def test_water_settles_as_fast_as_its_film_lets_it(outside: float) -> None:
    box = demo(0.85, 0.25, HELD)
    # So much air takes part that its humidity hardly moves in an hour.
    box = box._replace(room=box.room._replace(moist=1e7), cold=Cold((0.3,), (2.0,), (2.5,), (-1,)))
    found = box_through_time(box, hours(2, outside=outside, warm=293.15), (293.15, 0.010))
    surface = wall_saturation_pressure(outside + 0.3 * (found.air[-1] - outside))
    rate = 2.5 * 2.0 / 1006.0 * (0.010 - humidity_ratio(surface, 101325.0))
    assert rate > 0.0
    assert found.settled[1][0] - found.settled[0][0] == pytest.approx(3600.0 * rate, rel=1e-3)


def test_a_cold_place_under_the_sky_is_colder_than_one_by_the_air() -> None:
    box = demo(0.85, 0.25, HELD)
    box = box._replace(cold=Cold((0.5, 0.5), (1.0, 1.0), (2.5, 2.5), (-1, 1)))
    found = box_through_time(box, hours(3, warm=293.15, sky=253.15, vapour=1e-4), (293.15, 0.008))
    assert found.settled[-1][1] > found.settled[-1][0] > 0.0

"""What makes the air damp: people, dinner, wet gear, each by its hours, and what a night makes of it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.air.given_off import given_off
from boxwright.disciplines.air.parts import PlannedDamp
from boxwright.disciplines.heat.cold_hours import Outdoors, given_by_hour
from boxwright.disciplines.heat.night import night_of
from boxwright.exchange import Moisture
from boxwright.units import Band, exactly
from tests.disciplines.air.test_findings import edited, worked
from tests.disciplines.heat.test_burning import warmed

HOUR = 3600.0
YES = {"parts[stove]": "yes", "parts[oilskins]": "yes"}
UNKNOWN = Band(0.0, 0.0, float("inf"), known=False)


def stove(cooks: Band | None, is_flame: bool = False) -> PlannedDamp:
    return PlannedDamp("parts[stove]", "stove", cooks, is_flame, None)


def gear(wet: Band) -> PlannedDamp:
    return PlannedDamp("parts[oilskins]", "oilskins", None, False, wet)


def grams(one: Moisture) -> tuple[int, int, int]:
    """Return the water something gives off in all its hours: best, low, high."""
    water, lasts = one.kg_per_second, one.lasts * HOUR * 1e3
    best, low, high = (round(end * lasts) for end in (water.best, water.low, water.high))
    return best, low, high


def test_two_people_give_off_what_the_table_says_through_the_night() -> None:
    (people,) = given_off((), {}, 2)
    assert grams(people) == (1200, 960, 1440)
    assert people.is_on(20) and people.is_on(7) and not people.is_on(8) and not people.is_on(19)
    assert given_off((stove(exactly(HOUR)),), YES, 0) == ()


def test_dinner_for_four_is_the_570_g_of_the_table_and_a_flame_adds_its_own_water() -> None:
    _, dinner = given_off((stove(exactly(HOUR)),), YES, 4)
    assert grams(dinner) == (570, 280, 1140)
    _, on_gas = given_off((stove(exactly(HOUR), is_flame=True),), YES, 4)
    # By hand: 1.5 kWh of propane at 127 g, 0.5 at 98, 3 at 127.
    assert grams(on_gas) == (570 + 190, 280 + 49, 1140 + 381)
    assert on_gas.is_on(18) and on_gas.is_on(19) and not on_gas.is_on(20) and not on_gas.is_on(17)


def test_a_flame_of_which_nobody_wrote_how_long_it_cooks_may_cook() -> None:
    _, perhaps = given_off((stove(UNKNOWN, is_flame=True),), YES, 2)
    best, low, high = grams(perhaps)
    assert (best, low) == (0, 0) and high == 570 + 381
    _, never = given_off((stove(exactly(0.0), is_flame=True),), YES, 2)
    assert grams(never) == (0, 0, 0)


def test_wet_gear_dries_by_a_share_and_takes_its_heat_from_the_room() -> None:
    _, wet = given_off((gear(exactly(2.0)),), YES, 1)
    assert grams(wet) == (1000, 400, 2000)
    # By hand: a kilogram of water takes 2454 kJ, over fourteen hours 48.7 W.
    assert wet.watt.best == pytest.approx(-48.7, abs=0.05)
    assert wet.watt.low == pytest.approx(2.0 * wet.watt.best) and wet.watt.low < wet.watt.high < 0.0
    _, unknown = given_off((gear(UNKNOWN),), YES, 1)
    assert grams(unknown) == (500, 0, 3000)


def test_what_stands_perhaps_gives_off_nothing_at_the_low_end_and_what_does_not_stand_nothing() -> None:
    perhaps = {"parts[oilskins]": "perhaps"}
    _, wet = given_off((gear(exactly(2.0)),), perhaps, 1)
    assert grams(wet) == (1000, 0, 2000)
    assert len(given_off((gear(exactly(2.0)),), {}, 1)) == 1


def test_each_source_counts_in_its_own_hours() -> None:
    damp = given_off((stove(exactly(HOUR)), gear(exactly(1.4 * 3.6))), YES, 2)
    clocks = (17, 18, 20, 7, 8)
    _, water = given_by_hour(damp, clocks, "best")
    people, dinner, dried = (one.kg_per_second.best for one in damp)
    assert water == pytest.approx((0.0, dinner + dried, people + dried, people + dried, 0.0))
    heat, _ = given_by_hour(damp, clocks, "high")
    assert heat[1] == pytest.approx(damp[1].watt.low + damp[2].watt.low), "most is lost where most dries"


def test_what_cooks_warms_the_room_by_its_fire_less_what_boils_away() -> None:
    """By hand: 1.5 kW for an hour of two, less 285 g at 2454 kJ/kg; 0.5 kW less 570 g; 3 kW less 140 g."""
    _, dinner = given_off((stove(exactly(HOUR), is_flame=True),), YES, 2)
    boiled = [grams * 2454.0 / 7200.0 for grams in (285.0, 570.0, 140.0)]
    by_hand = (750.0 - boiled[0], 250.0 - boiled[1], 1500.0 - boiled[2])
    assert (dinner.watt.best, dinner.watt.low, dinner.watt.high) == pytest.approx(by_hand)
    _, perhaps = given_off((stove(exactly(HOUR), is_flame=True),), {"parts[stove]": "perhaps"}, 2)
    assert perhaps.watt.low == 0.0 and perhaps.watt.high == dinner.watt.high
    _, unsaid = given_off((stove(UNKNOWN, is_flame=True),), YES, 2)
    assert (unsaid.watt.low, unsaid.watt.best, unsaid.watt.high) == pytest.approx((0.0, 0.0, by_hand[2]))


def test_dinner_does_not_warm_the_room_as_it_is_coldest_outside() -> None:
    """What is cooked at six in the evening is nothing at six in the morning, when a night is held or not."""
    room = warmed().inside
    night = Outdoors("", "a night", exactly(263.15), exactly(5.0), exactly(0.0))
    with_dinner = given_off((stove(exactly(HOUR), is_flame=True),), YES, 2)
    assert night_of(room, night, None, with_dinner).gains == night_of(room, night, None, with_dinner[:1]).gains
    assert max(night_of(room, night, None, with_dinner).night.air) >= max(
        night_of(room, night, None, with_dinner[:1]).night.air
    )


def test_how_warm_a_heater_makes_it_is_told_without_the_dinner() -> None:
    (held,) = warmed().held
    assert held.warmth is not None
    night = Outdoors("", "a night", exactly(273.15), exactly(5.0), exactly(0.0))
    cooked = given_off((stove(exactly(HOUR), is_flame=True),), YES, 2)
    fixed = replace(held.warmth, switches=False)
    both = [night_of(warmed().inside, night, fixed, one) for one in (cooked, cooked[:1])]
    assert both[0].warmest == both[1].warmest
    assert max(both[0].night.air) > max(both[1].night.air), "the evening itself is warmer for it"


def test_those_who_work_give_off_more_by_day_alone() -> None:
    (people,) = given_off((stove(exactly(HOUR)), gear(exactly(2.0))), YES, 0, 2)
    (asleep,) = given_off((), {}, 2)
    assert people.is_on(8) and people.is_on(15) and not people.is_on(16) and not people.is_on(7)
    assert people.kg_per_second.best > asleep.kg_per_second.best and people.watt.best > asleep.watt.best


COLD = ("coldest_design: 14 C", "coldest_design: -10 C")
BOX = "locker: {x: 2400, side: left, z: 0, size: 400 x 300 x 300, weight: 5, stage: shell, done: yesWET}"


def settled(*edits: tuple[str, str]) -> float:
    """Return the water that settles at most on the wettest place of the small rig in a cold night."""
    return max((one.number or 0.0) for one in worked(edited(COLD, *edits), "sleep") if one.code == "air/condensation")


def test_wet_gear_in_the_room_makes_a_cold_night_wetter() -> None:
    dry = settled(("# one more", BOX.replace("WET", "")))
    assert settled(("# one more", BOX.replace("WET", ", wet: 4"))) > 1.2 * dry
    assert settled(("# one more", BOX.replace("WET", ", cooks: 1 h"))) > dry

"""The fuel of a year, a month and a trip by what the rig says its heater burns. By hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from boxwright.book.year import years_of
from boxwright.disciplines.heat.burner import warmth_of
from boxwright.disciplines.heat.burning import Burning, Rates, burning_of, fuel_of_night
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.disciplines.heat.year import Year
from boxwright.disciplines.heat.year_fuel import difference_in_words
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band, HeaderUnits, exactly
from tests.disciplines.heat.test_burning import AN_HOUR, COUNTED, LITRE, warmed
from tests.disciplines.heat.test_findings import edited
from tests.disciplines.heat.test_year import DAYS, NOBODY, heater, inside, weather, year
from tests.disciplines.heat.test_year import plainly as plainly

SAID = "burn: {lowest: 0.113 l/h, highest: 0.5 l/h}"
A_LITRE_AN_HOUR = LITRE / AN_HOUR
HOURS = 24 * DAYS


def rates(lowest: Band, highest: Band, least: float = 300.0, most: float = 2000.0) -> Rates:
    """Return what is burnt at both settings (l/h)."""
    flows = (
        replace(one, best=one.best * A_LITRE_AN_HOUR, low=one.low * A_LITRE_AN_HOUR, high=one.high * A_LITRE_AN_HOUR)
        for one in (lowest, highest)
    )
    return Rates(exactly(least), exactly(most), *flows)


def burnt_by(one: StandingHeater) -> Burning:
    return burning_of(one, warmth_of(one))


def of_pump(*edits: tuple[str, str]) -> StandingHeater:
    (found,) = warmed(*edits).heaters
    return found


def test_a_year_flat_out_burns_what_was_counted_flat_out_and_so_do_its_trips_and_months() -> None:
    """500 W are too little in every hour: 0.25 (0.2 to 0.3) l/h through twelve days is 72 l (57.6 to 86.4)."""
    counted = Burning("diesel", (rates(Band(0.1, 0.05, 0.2), Band(0.25, 0.2, 0.3), 100.0, 500.0),), True)
    found = year(inside(0.0), weather(263.15), heater(100.0, 500.0), burning=counted)
    assert found.banded[4].low == pytest.approx(HOURS)
    for fuel, hours in ((found.fuel, HOURS), *((trip.fuel, 24 * trip.days) for trip in found.trips)):
        assert fuel is not None
        assert (fuel.best, fuel.low, fuel.high) == pytest.approx(
            (0.25 * hours * LITRE, 0.2 * hours * LITRE, 0.3 * hours * LITRE)
        )
    for end in ("best", "low", "high"):
        assert sum(getattr(one, end) for one in found.fuel_by_month) == pytest.approx(getattr(found.fuel, end))
    assert [place for place, one in enumerate(found.fuel_by_month) if one.best > 0.0] == [2, 3]


def test_between_its_settings_it_burns_straight_with_the_heat_and_the_most_is_where_most_is_lost() -> None:
    """Each hour asks for between 300 and 2000 W: 0.1 l/h and 0.0001 l/h for each W more than 300."""
    counted = Burning("diesel", (rates(exactly(0.1), exactly(0.27)),), True)
    found = year(inside(leak=0.0), weather(swing=0.0), heater(), burning=counted)
    assert found.fuel is not None and found.banded[3].best == pytest.approx(HOURS)
    for end in ("best", "low", "high"):
        mean = getattr(found.energy, end) / (HOURS * AN_HOUR)
        assert 300.0 < mean < 2000.0
        by_hand = (0.1 + 0.0001 * (mean - 300.0)) * HOURS * LITRE
        assert getattr(found.fuel, end) == pytest.approx(by_hand, rel=1e-6)
    assert found.fuel.low < found.fuel.best < found.fuel.high


def test_fuel_goes_by_the_heat_of_each_hour_and_not_by_that_of_the_mean() -> None:
    """A heater that burns nearly nothing up to 500 W and much over it burns more in a swing than in its mean."""
    kinked = rates(exactly(0.001), exactly(1.0), 500.0, 2000.0)
    found = year(inside(), weather(swing=20.0), heater(500.0), burning=Burning("diesel", (kinked,), True))
    assert found.fuel is not None
    at_the_mean = kinked.burnt(found.energy.best / (HOURS * AN_HOUR), "best") * HOURS * AN_HOUR
    assert found.fuel.best > 1.2 * at_the_mean


def test_what_it_is_said_to_burn_widens_the_fuel_of_a_year_on_both_sides_and_its_best_stays() -> None:
    plain = year(inside(), weather(), heater())
    much, little = rates(exactly(0.2), exactly(0.8)), rates(exactly(0.001), exactly(0.002))
    for said, is_more in ((much, True), (little, False)):
        found = year(inside(), weather(), heater(), burning=Burning("diesel", (said,)))
        pairs = [(found.fuel, plain.fuel), *zip(found.fuel_by_month[2:4], plain.fuel_by_month[2:4], strict=True)]
        pairs += [(one.fuel, other.fuel) for one, other in zip(found.trips, plain.trips, strict=True)]
        for fuel, table in pairs:
            assert fuel is not None and table is not None
            assert fuel.best == table.best
            if is_more:
                assert fuel.low == table.low and fuel.high > 1.5 * table.high
            else:
                assert fuel.high == table.high and fuel.low < 0.5 * table.low


def of_the_file(*edits: tuple[str, str], height: float | None = 0.0) -> Year:
    """Return the twelve days of the small rig so high (m), as a year of it is worked out."""
    slots = study(read_rig(edited(*edits)).rig, date(2026, 6, 1)).slots
    days = replace(weather(263.15), altitude=height)
    (found,) = years_of(next(one for one in slots if one.use == "sleep"), days, NOBODY)
    return found


def test_a_year_whose_height_nobody_wrote_reaches_from_the_sea_to_high_up() -> None:
    """A heater that is too weak gives all it has: at 3000 m, 0.69 of the air by the sea, as much less at most."""
    weak = ("highest: 4000 W", "highest: 900 W"), ("lowest: 900 W", "lowest: 300 W")
    sea, high, unsaid = (of_the_file(*weak, height=height) for height in (0.0, 3000.0, None))
    assert sea.energy.high > high.energy.low * 1.2
    assert unsaid.energy.low <= high.energy.low * 1.001 and unsaid.energy.high >= sea.energy.low * 0.999
    assert unsaid.coldest.low <= high.coldest.low + 0.1 and not unsaid.too_cold.known


def test_a_pump_counted_in_the_file_is_what_the_year_of_the_file_burns() -> None:
    """0.04 ml a stroke and ten times as much: ten times the fuel, and of the stated burn nothing is left."""
    little, much = (of_the_file(("holds: 17 C", COUNTED.replace("0.04", each))) for each in ("0.04", "0.4"))
    assert little.fuel is not None and much.fuel is not None
    assert much.energy == little.energy and much.energy.best > 0.0
    assert much.fuel.best == pytest.approx(10.0 * little.fuel.best)
    assert much.fuel.low == pytest.approx(10.0 * little.fuel.low)
    said = of_the_file((SAID, "burn: {lowest: 1.13 l/h, highest: 5.0 l/h}"))
    assert said.fuel is not None and said.fuel.high > 5.0 * little.fuel.high


def test_up_high_a_year_has_less_heat_and_flat_out_as_much_fuel() -> None:
    """At 2000 m there is 0.7846 of the air of the sea: the table of the standard atmosphere, as by night."""
    counted = COUNTED.replace("holds: 17 C", "holds: 30 C")
    weak = ("highest: 4000 W", "highest: 900 W"), ("holds: 17 C", counted), ("thickens:", "adjusts: no, thickens:")
    by_the_sea, up_high = (of_the_file(*weak, height=one) for one in (0.0, 2000.0))
    assert by_the_sea.need.low == by_the_sea.need.high == 900.0
    assert up_high.need.low == pytest.approx(0.7846 * 900.0, abs=1.0) and up_high.need.high == 900.0
    assert by_the_sea.fuel is not None and up_high.fuel is not None
    assert up_high.fuel.high >= by_the_sea.fuel.high > 0.0
    assert up_high.coldest.low < by_the_sea.coldest.low


def test_up_high_it_burns_as_much_less_as_it_gives_where_it_takes_less_fuel_and_perhaps_where_nobody_knows() -> None:
    """4000 W of 0.5 l/h by the sea; at 2000 m 0.7846 of both, and where it is not adjusted the whole half litre."""
    share = 0.7846
    for adjusts, best, high in (("yes", share, share), ("unknown", share, 1.0), ("no", 1.0, 1.0)):
        found = of_pump(("thickens:", f"adjusts: {adjusts}, thickens:"))
        (up_high,) = burning_of(found, warmth_of(found, exactly(2000.0))).rates
        ends = (up_high.burnt(4000.0 * best, "best"), up_high.burnt(4000.0 * share + 1.0, "high"))
        assert ends == pytest.approx((0.5 * best * A_LITRE_AN_HOUR, 0.5 * high * A_LITRE_AN_HOUR), rel=1e-3), adjusts
        by_the_sea = difference_in_words(burnt_by(found), exactly(3.6e9), HeaderUnits())
        assert difference_in_words(Burning("diesel", (up_high,)), exactly(3.6e9), HeaderUnits()) == by_the_sea == ()


def test_a_setting_of_which_only_one_thing_is_written_makes_as_much_of_its_fuel_as_the_other() -> None:
    """900 W on the lowest and 4000 W on the highest setting."""
    for written, flows in (
        ("burn: {highest: 0.8 l/h}", (0.18, 0.8)), ("burn: {lowest: 0.18 l/h}", (0.18, 0.8)),
    ):  # fmt: skip
        (found,) = burnt_by(of_pump((SAID, written))).rates
        assert (found.lowest.best, found.highest.best) == pytest.approx(tuple(one * A_LITRE_AN_HOUR for one in flows))
        assert not burnt_by(of_pump((SAID, written))).is_counted
    half = burning_of(
        of_pump((SAID + ", ", ""), ("holds: 17 C", "counted: {highest: 200, each: 0.04 ml}, holds: 17 C")), None
    )
    assert not half.is_counted, "of one setting nobody counted"


def test_a_lowest_heat_nobody_wrote_is_anything_up_to_the_highest() -> None:
    """4000 W burn 0.5 l/h, and 0.113 l/h makes anything of nothing to 4000 W; at 2000 W by the highest 0.25 l/h."""
    (found,) = burnt_by(of_pump(("lowest: 900 W, ", ""))).rates
    likely, least, most = (found.burnt(2000.0, end) / A_LITRE_AN_HOUR for end in ("best", "low", "high"))  # type: ignore[arg-type]
    assert (likely, least, most) == pytest.approx((0.25, 0.113 / 2.0, 0.113 + 0.387 / 2.0))
    assert found.burnt(0.0, "high") == 0.0


def test_a_setting_known_between_ends_burns_most_where_it_gives_least() -> None:
    """1000 W of a highest setting of 1600 to 2000 W and 0.2 l/h, with nothing at its lowest: 0.1 to 0.125 l/h."""
    found = Rates(exactly(0.0), Band(1800.0, 1600.0, 2000.0), exactly(0.0), exactly(0.2))
    assert (found.burnt(1000.0, "low"), found.burnt(1000.0, "high")) == pytest.approx((0.1, 0.125))
    assert found.burnt(1900.0, "high") == 0.2, "flat out it burns no more"


def test_a_filling_said_to_last_shorter_than_flat_out_or_longer_than_at_the_lowest_is_taken_at_its_word() -> None:
    """10 l over 10 h is 1 l/h, more than 4000 W by the table; over 500 h 0.02 l/h, less than 900 W; 50 h lies between.

    4000 W / 0.75 / 36.09 MJ/l is 0.532 l/h, 900 W / 0.85 / 36.09 MJ/l 0.1056 l/h.
    """
    for hours, expected in (("10 h", 0.5), ("500 h", 0.02 * 2000.0 / 900.0), ("50 h", None)):
        found = burnt_by(of_pump((SAID, f"lasts: {hours}"))).rates
        assert len(found) == (expected is not None), hours
        for one in found:
            assert one.whence == "hours"
            assert one.burnt(2000.0, "best") / A_LITRE_AN_HOUR == pytest.approx(expected)
    beside = burnt_by(of_pump((SAID, f"{SAID}, lasts: 10 h")))
    assert [one.whence for one in beside.rates] == ["said", "hours"]
    counted = burnt_by(of_pump(("holds: 17 C", f"lasts: 10 h, {COUNTED}")))
    assert counted.is_counted and [one.whence for one in counted.rates] == ["counted"]


def test_the_fuel_of_a_night_reaches_to_what_a_filling_is_said_to_last() -> None:
    """2000 W through twelve hours: half of the 1 l/h flat out of 10 l in 10 h is 6 l."""
    plain, said = (warmed((f"{SAID}, ", one)) for one in ("", "lasts: 10 h, "))
    energy = exactly(2000.0 * 12 * AN_HOUR)
    by_heat, by_both = (fuel_of_night(replace(one.held[0], energy=energy), one.heaters[0]) for one in (plain, said))
    assert by_heat is not None and by_both is not None
    assert (by_both.best, by_both.low) == (by_heat.best, by_heat.low)
    assert by_heat.high < 4.0 * LITRE and by_both.high == pytest.approx(6.0 * LITRE)


def test_a_heater_that_perhaps_does_not_stand_burns_nothing_where_it_gives_nothing() -> None:
    found = of_pump()
    perhaps = burning_of(replace(found, is_certain=False), warmth_of(replace(found, is_certain=False)))
    (rates,) = perhaps.rates
    assert rates.burnt(0.0, "high") == 0.0
    (sure,) = burnt_by(found).rates
    assert rates.burnt(2000.0, "high") == pytest.approx(sure.burnt(2000.0, "high"))


def test_what_it_makes_of_its_fuel_is_told_where_such_heaters_make_more_or_less() -> None:
    """300 W of 0.0374 l/h and 2000 W of 0.2494 l/h are 80 % of 36.09 MJ/l; of twice and half the fuel 40 and 160 %.

    3.6e9 J are 124.7 l by the table, 117.4 and 133 l at its ends.
    """
    energy, metric = exactly(3.6e9), HeaderUnits(volume="L")
    by_table = (300.0 / 0.8 / 36.09e9 / A_LITRE_AN_HOUR, 2000.0 / 0.8 / 36.09e9 / A_LITRE_AN_HOUR)
    for times, share in ((1.0, ""), (2.0, "40 %"), (0.5, "160 %")):
        burnt = rates(*(exactly(one * times) for one in by_table))
        said = difference_in_words(Burning("diesel", (burnt,)), energy, metric)
        if not share:
            assert said == ()
            continue
        assert said == (
            f"Its heat is {share} of what is in the diesel it is said to burn, where such heaters give 75 to 85 %:"
            " the ends of its fuel hold both.",
        )
        counted = Burning("diesel", (burnt._replace(whence="counted"),), True)
        (told,) = difference_in_words(counted, energy, metric)
        assert "its pump was counted to move" in told and told.endswith("it would burn 125 L (117 to 133).")
        by_hours = Burning("diesel", (burnt._replace(whence="hours"),))
        assert "a filling holds that lasts as long as is said" in difference_in_words(by_hours, energy, metric)[0]
    uneven = rates(exactly(by_table[0]), exactly(2.0 * by_table[1]))
    assert difference_in_words(Burning("diesel", (uneven,)), energy, metric)[0].startswith("Its heat is 40 to 80 % of")
    assert difference_in_words(Burning("spirit", (uneven,)), energy, metric) == ()

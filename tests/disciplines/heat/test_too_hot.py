"""How hot it gets for those asleep and at work: the same runs as the page of a hot day, judged by who is in it."""

from __future__ import annotations

import pytest

from boxwright.disciplines.heat.cold_hours import Inside
from boxwright.disciplines.heat.day import Airing, day_of, hot_end_of
from boxwright.disciplines.heat.hot import hot_days
from boxwright.disciplines.heat.result import ColdWork, HotHours
from boxwright.exchange import Moisture
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import Slot
from tests.disciplines.heat.test_findings import RIG, studied

AT_WORK = ("people: [owner], for: [sleep, leave]", "people: [owner], for: [sleep, leave, work]")
HOT = ("hottest_design: 22 C", "hottest_design: 38 C")
COOLER = (
    "  # one more",
    "  cooler: {x: 3000, side: left, z: 900, size: 300 x 300 x 300, weight: 20, stage: shell, done: yes, cools: {of: window, heat: 3000 W, hatch: window, fed_by: mains, drains: below floor}}",  # noqa: E501
)
COLD = 273.15
CODES = ("heat/too-hot", "heat/hot-not-known", "heat/left-in-heat")


def edited(*edits: tuple[str, str]) -> str:
    """Return the small rig with some pieces of its text replaced."""
    text = RIG
    for old, new in edits:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return text


def slot_of(use: str, *edits: tuple[str, str]) -> Slot:
    """Return the slot of the small rig as it stands today."""
    return studied(edited(*edits)).asked_slots(use, "night")[0]


def hot_of(use: str, *edits: tuple[str, str]) -> HotHours:
    """Return the hottest day of those in the small rig."""
    slot = slot_of(use, *edits)
    assert slot.heat is not None and slot.heat.hot is not None
    return slot.heat.hot


def told(use: str, *edits: tuple[str, str]) -> list[Finding]:
    """Return what is said of the hot day of the small rig in a use."""
    return [one for one in slot_of(use, *edits).findings if one.code in CODES]


def test_the_day_is_the_one_the_page_shows() -> None:
    found, slot = hot_of("sleep", HOT), slot_of("sleep", HOT)
    assert slot.heat is not None
    (hot,) = hot_days(read_rig(edited(HOT)).rig.heat)
    inside = slot.heat.inside
    people = tuple(one for one in slot.heat.moisture if one.of == "people")
    assert found.run == day_of(inside, hot, Airing(inside.airflow, inside.airflow), people, "opened")
    assert (found.when, found.warm) == ("bedtime", found.run.bedtime)


def test_nobody_is_in_it_when_it_is_left() -> None:
    slot = slot_of("leave", HOT)
    assert slot.heat is not None and slot.heat.hot is None and told("leave", HOT) == []


def test_at_work_its_hottest_hour_counts_and_doors_may_stand_open() -> None:
    asleep, awake = hot_of("sleep", HOT, AT_WORK), hot_of("work", HOT, AT_WORK)
    assert awake.when == "work" and awake.warm == awake.run.warmest
    assert awake.warm.best > asleep.warm.best > 25.0 + COLD
    (found,) = told("work", HOT, AT_WORK)
    assert found.uses == ("work",) and found.kind == "unknown" and " at work" in found.says
    (worse,) = told("work", ("hottest_design: 22 C", "hottest_design: 46 C"), AT_WORK)
    assert worse.kind == "limit"
    assert told("work", AT_WORK) == []
    (asked,) = told("work", (", hottest_design: 22 C", ""), AT_WORK)
    assert (asked.code, asked.uses) == ("heat/hot-not-known", ("work",))


def test_the_hottest_of_the_places_is_judged() -> None:
    two = (
        "hottest_design: 22 C}",
        "hottest_design: 22 C}\n  desert: {coldest_design: 5 C, height: 0 m, hottest_design: 45 C}",
    )
    (found,) = told("sleep", two)
    assert found.where == "places[desert]" and found.kind == "limit"


@pytest.mark.parametrize("other", ["10..54 C", "20..50 C"])
def test_a_day_that_is_surely_too_hot_is_told_before_one_that_may_get_hotter(other: str) -> None:
    sure = ("hottest_design: 22 C", "hottest_design: 46 C")
    hill = ("places:\n", f"places:\n  hill: {{coldest_design: -5 C, height: 0 m, hottest_design: {other}}}\n")
    (both,), (alone,), (doubtful,) = (
        [one for one in told("sleep", *edits) if one.code == "heat/too-hot"]
        for edits in ((sure, hill), (sure,), (hill,))
    )
    assert (both.kind, both.where, both.number) == (alone.kind, alone.where, alone.number)
    assert (both.kind, both.where, doubtful.kind) == ("limit", "places[meadow]", "unknown")


def test_a_milder_place_with_less_of_a_night_and_of_wind_is_the_hotter_one() -> None:
    """A day one kelvin cooler whose night hardly cools, without wind, leaves the room warmer as people go to bed."""
    mild = "hottest_design: 36 C, july: {low: 30 C, high: 33 C, wind: 0 m/s}}"
    sharp = "hottest_design: 37 C, july: {low: 10 C, high: 33 C, wind: 8 m/s}}"
    two = ("hottest_design: 22 C}", f"{sharp}\n  hollow: {{coldest_design: 5 C, height: 0 m, {mild}")
    found = hot_of("sleep", two)
    assert found.hot.place == "hollow"
    assert found.warm.high > hot_of("sleep", ("hottest_design: 22 C}", sharp)).warm.high


def test_two_runs_of_a_day_come_near_the_hot_end_of_all_of_them() -> None:
    found = hot_of("sleep", HOT)
    inside, people = _room(slot_of("sleep", HOT))
    evening, noon = hot_end_of(inside, found.hot, Airing(inside.airflow, inside.airflow), people, found.run.way)
    assert 0.0 <= found.run.bedtime.high - evening < 0.5
    assert 0.0 <= found.run.warmest.high - noon < 0.5


def _room(slot: Slot) -> tuple[Inside, tuple[Moisture, ...]]:
    assert slot.heat is not None
    return slot.heat.inside, tuple(one for one in slot.heat.moisture if one.of == "people")


def test_bedtime_counts_for_those_who_sleep_though_its_noon_is_the_milder_one() -> None:
    """Without wind 36 C day and night leave it warmer in the evening than 39 C with a cool night, but not by day."""
    mild = "hottest_design: 36 C, july: {low: 32.9 C, high: 33 C, wind: 0 m/s}}"
    sharp = "hottest_design: 39 C, july: {low: -5 C, high: 33 C, wind: 0 m/s}}"
    both = ("hottest_design: 22 C}", f"{sharp}\n  hollow: {{coldest_design: 5 C, height: 0 m, {mild}")
    alone = hot_of("sleep", ("hottest_design: 22 C}", sharp)).run
    found = hot_of("sleep", both)
    assert found.hot.place == "hollow"
    assert found.run.bedtime.high > alone.bedtime.high and found.run.warmest.high < alone.warmest.high


def test_a_cooler_that_is_fed_by_nothing_or_breathes_in_the_room_cools_nothing() -> None:
    hot = ("hottest_design: 22 C", "hottest_design: 44 C")
    bare = hot_of("sleep", hot)
    for word in ("fed_by: mains", "hatch: window"):
        edit = COOLER[1].replace(word, word.partition(":")[0] + (": none" if "hatch" in word else ": nowhere"))
        assert hot_of("sleep", hot, (COOLER[0], edit)).warm == bare.warm
    asked = hot_of("sleep", hot, (COOLER[0], COOLER[1].replace("fed_by: mains, ", "")))
    assert asked.warm.high >= bare.warm.low and asked.warm.high > hot_of("sleep", hot, COOLER).warm.high
    weak = COOLER[1].replace("3000 W", "800 W")
    (said,) = told("sleep", ("hottest_design: 22 C", "hottest_design: 48 C"), (COOLER[0], weak))
    assert "shut and cooled by a cable from outside, the room is" in said.says


def test_a_cooler_that_stands_counts_and_one_that_perhaps_does_counts_for_nothing_sure() -> None:
    hot = ("hottest_design: 22 C", "hottest_design: 44 C")
    cooled = hot_of("sleep", hot, COOLER)
    assert cooled.run.way == "cooled" and cooled.warm.high < hot_of("sleep", hot).warm.low
    perhaps = hot_of("sleep", hot, (COOLER[0], COOLER[1].replace("done: yes", "done: part")))
    assert perhaps.warm.high > cooled.warm.high


@pytest.mark.parametrize(
    ("written", "kind"), [("27 C", ""), ("34 C", "advice"), ("40 C", "unknown"), ("46 C", "limit")]
)
def test_the_hotter_the_day_the_more_is_said(written: str, kind: str) -> None:
    found = told("sleep", ("hottest_design: 22 C", f"hottest_design: {written}"))
    assert [one.kind for one in found] == ([kind] if kind else [])
    if kind == "unknown":
        assert "nobody wrote" not in found[0].says, "all is written: it is as wide as such days are"


def waits(written: str, hot: str, *edits: tuple[str, str]) -> list[tuple[str, str]]:
    """Return what is said of a trailer that is left with a dog in it, or perhaps."""
    dog = ("  owner: {weight: 80", f"  rex: {{weight: 25, waits: {written}}}\n  owner: {{weight: 80")
    found = told("leave", dog, ("hottest_design: 22 C", f"hottest_design: {hot}"), *edits)
    return [(one.code.removeprefix("heat/"), one.kind) for one in found]


def test_who_waits_in_it_while_it_is_left_is_held_against_the_hottest_hour_of_every_place() -> None:
    """Shut it comes to about what it is outside most likely; with sun on a skin of no known colour 13 K above."""
    asked, stopped = [("left-in-heat", "unknown")], [("left-in-heat", "limit")]
    assert waits("yes", "15 C") == waits("no", "45 C") == []
    assert waits("yes", "22 C") == waits("unknown", "45 C") == asked
    assert waits("yes", "30 C") == waits("yes", "45 C") == stopped
    mild = ("places:\n", "places:\n  hill: {coldest_design: -5 C, height: 0 m, hottest_design: 15 C}\n")
    wide = (mild[0], mild[1].replace("15 C", "0..46 C"))
    assert waits("yes", "30 C", mild) == waits("yes", "30 C", wide) == stopped
    assert waits("yes", "15 C", (mild[0], mild[1].replace(", hottest_design: 15 C", ""))) == [
        ("hot-not-known", "unknown")
    ]
    assert waits("yes", "45 C", COOLER) == stopped, "what cools it may stop unseen"


def test_the_more_wait_in_it_the_hotter_it_gets() -> None:
    """60 W of each, by day too: one of them warms the shut room by a part of a kelvin, four by more."""
    one = ("  owner: {weight: 80", "  rex: {weight: 25, waits: yes}\n  owner: {weight: 80")
    four = (one[0], "".join(f"  rex{n}: {{weight: 25, waits: yes}}\n" for n in range(4)) + one[0])
    few, many = (hot_of("leave", edit).warm for edit in (one, four))
    assert few.best + 1.0 < many.best < few.best + 10.0 and few.low <= many.low and few.high < many.high


def test_where_nobody_waits_or_somebody_is_in_it_it_is_not_asked() -> None:
    dog = ("  owner: {weight: 80", "  rex: {weight: 25, waits: yes}\n  owner: {weight: 80")
    hot = ("hottest_design: 22 C", "hottest_design: 45 C")
    assert told("leave", hot) == []
    assert [one.code for one in told("sleep", dog, hot)] == ["heat/too-hot"]


def test_of_places_that_are_surely_too_hot_the_hottest_is_told_before_one_that_may_be_hotter() -> None:
    first = "places:\n  meadow"
    more = "places:\n"
    for name, hottest in (("a", "20..55 C"), ("b", "44 C"), ("c", "48 C")):
        more += f"  {name}: {{coldest_design: -5 C, height: 0 m, hottest_design: {hottest}}}\n"
    (said,) = told("sleep", (first, f"{more}  meadow"))
    assert (said.kind, said.where) == ("limit", "places[c]")


def test_a_cooler_that_stands_perhaps_is_not_relied_on_where_an_open_window_is_surely_cooler() -> None:
    perhaps = (COOLER[0], COOLER[1].replace("done: yes, ", ""))
    assert hot_of("sleep", HOT, perhaps).warm.high <= hot_of("sleep", HOT).warm.high + 0.01


def test_a_day_that_a_cooler_may_keep_cool_enough_is_not_surely_too_hot() -> None:
    """Aired alone 46 C outside is surely too hot; 1000 W of cold keep it at 26 C, and so the doubtful day is told."""
    sure = ("hottest_design: 22 C", "hottest_design: 46 C")
    hill = ("places:\n", "places:\n  hill: {coldest_design: -5 C, height: 0 m, hottest_design: 10..54 C}\n")
    weak = (COOLER[0], COOLER[1].replace("3000 W", "1000 W"))
    (aired,) = [one for one in told("sleep", sure, hill) if one.code == "heat/too-hot"]
    (cooled,) = [one for one in told("sleep", sure, hill, weak) if one.code == "heat/too-hot"]
    assert (aired.kind, aired.where) == ("limit", "places[meadow]")
    assert (cooled.kind, cooled.where) == ("unknown", "places[hill]")


def test_the_cold_of_work_is_that_of_its_hours_and_no_heater_counts_that_is_not_surely_fed() -> None:
    """By hand: -5 C at six that swings 9 K is -4.4 C at eight by its cosine, the coldest hour of work."""
    bare = ("weight: 4, stage: shell, done: yes, heater", "weight: 4, stage: later, heater")
    (cold,) = cold_of(AT_WORK, bare)
    assert (cold.heater, cold.outdoors.place) == ("", "meadow")
    assert -4.4 + COLD < cold.cold.best < -3.0 + COLD
    wanted = 17.0 + COLD
    (lit,) = cold_of(AT_WORK)
    assert lit.heater == "parts[heater]" and lit.cold.low > wanted - 0.5
    electric = ("of: diesel, lowest: 900 W, highest: 4000 W", "of: electric, lowest: 100 W, highest: 150 W")
    loose, blown = ("from: battery, to: heater", "from: battery, to: bed"), ("fuse: 15 A", "fuse: unknown")
    dry = ("{cargo: all, tanks: {fuel: full}, parked", "{cargo: all, tanks: {fuel: unknown}, parked")
    for unsure in (electric, loose, blown, dry):
        (perhaps,) = cold_of(AT_WORK, unsure)
        assert perhaps.cold.low == pytest.approx(cold.cold.low, abs=0.5), unsure


@pytest.mark.parametrize("use", ["work", "leave"])
def test_a_cold_that_is_sure_is_told_before_one_that_may_be_worse_and_a_cool_room_at_work_alone(use: str) -> None:
    """A room of 14 C is too cold for nobody who waits, and cool for one who works in it."""
    code = {"work": "heat/cold-at-work", "leave": "heat/left-in-cold"}[use]
    who = (AT_WORK, ("weight: 4, stage: shell, done: yes, heater", "weight: 4, stage: later, heater"),
           ("  owner: {weight: 80", "  rex: {weight: 25, waits: yes}\n  owner: {weight: 80"))  # fmt: skip
    hill = ("places:\n", "places:\n  hill: {coldest_design: -10..40 C, height: 0 m, hottest_design: 22 C}\n")
    (both,) = [one for one in slot_of(use, *who, hill).findings if one.code == code]
    assert (both.kind, "at meadow" in both.says) == ("limit", True)
    alone = ("meadow: {coldest_design: -5 C", "meadow: {coldest_design: 14 C")
    (doubtful,) = [one for one in slot_of(use, *who, hill, alone).findings if one.code == code]
    assert (doubtful.kind, "at hill" in doubtful.says) == ("unknown", True)
    cool = [one.kind for one in slot_of(use, *who, alone).findings if one.code == code]
    assert cool == (["advice"] if use == "work" else [])


def cold_of(*edits: tuple[str, str]) -> tuple[ColdWork, ...]:
    """Return the coldest days of those who work in the small rig."""
    slot = slot_of("work", *edits)
    assert slot.heat is not None
    return slot.heat.cold_work


@pytest.mark.parametrize(("skin", "is_said"), [("white aluminium 1.0", False), ("aluminium 1.0", True)])
def test_the_colour_is_said_to_be_missing_only_where_it_is(skin: str, is_said: bool) -> None:
    """The floor looks down: that it has no colour widens nothing."""
    (found,) = told("sleep", ("hottest_design: 22 C", "hottest_design: 34..44 C"), ("white aluminium 1.0", skin))
    assert found.kind == "unknown" and ("the colour of the skin" in found.act + found.says) is is_said


def test_of_the_ways_on_a_day_that_is_surely_too_hot_the_one_that_leaves_it_coolest_is_told() -> None:
    """A weak cooler in 52 C: shut and cooled it is too hot too, and less so than aired."""
    first, hot = "places:\n  meadow", "coldest_design: -5 C, height: 0 m, hottest_design:"
    more = f"places:\n  a: {{{hot} 20..55 C}}\n  c: {{{hot} 52 C}}\n  meadow"
    weak = (COOLER[0], COOLER[1].replace("3000 W", "300 W"))
    found, aired = hot_of("sleep", (first, more), weak), hot_of("sleep", (first, more))
    assert (found.hot.place, found.run.way) == ("c", "cooled")
    assert aired.hot.place == "c" and found.warm.high < aired.warm.high


FAN = (
    "  # one more",
    "  cell: {x: 100, side: left, z: 0, size: 300 x 200 x 200, weight: 20, stage: shell, done: yes, battery: {volts: 12, Ah: 100}}",  # noqa: E501
)
WIRE = "wires:\n  blower: {from: cell, to: window, length: 2000, gauge: 2.5 mm2, fuse: 10 A, stage: shell%s}\n"


@pytest.mark.parametrize(("wire", "is_unfed"), [("", True), (WIRE % "", True), (WIRE % ", done: yes", False)])
def test_a_fan_to_which_no_wire_surely_stands_may_not_run(wire: str, is_unfed: bool) -> None:
    fan = ("unit: {weight: 10, U: 2.8 W/m2K, swing", "fan: {flow: 500 m3/h}, unit: {weight: 10, U: 2.8 W/m2K, swing")
    wired = ("stages:\n", f"{wire}stages:\n")
    hot = ("hottest_design: 22 C", "hottest_design: 40 C")
    found = hot_of("sleep", hot, FAN, fan, wired)
    assert found.run.way == "fans"
    assert found.unfed == (("window",) if is_unfed else ())
    sure = hot_of("sleep", hot, FAN, fan, ("stages:\n", f"{WIRE % ', done: yes'}stages:\n"))
    assert (found.warm.high > sure.warm.high + 0.1) is is_unfed
    assert found.warm.low == pytest.approx(sure.warm.low)
    asked = [one.says + one.act for one in told("sleep", hot, FAN, fan, wired) if one.kind == "unknown"]
    assert any("by which wire window runs" in words for words in asked) is is_unfed

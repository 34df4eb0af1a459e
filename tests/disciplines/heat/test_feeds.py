"""What feeds a heater: followed by its wires to a battery or to outside, as far as all of it stands."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.heat.battery import (
    Hung,
    at_dusk,
    drawn_beside,
    hung_on,
    in_a_night,
    taken_of,
    together,
    whole_of,
)
from boxwright.disciplines.heat.burner import warmth_of
from boxwright.disciplines.heat.electricity import lasts
from boxwright.disciplines.heat.feeds import (
    NO_FEED,
    Feed,
    Limit,
    Wanted,
    enough,
    feed_of,
    narrowest,
    takes_electricity,
    usable,
    wanted_by,
)
from boxwright.disciplines.heat.parts import Heater, PlannedDraw, PlannedHeater, PlannedLead, PlannedSource, Section
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.exchange import ElectricLoad
from boxwright.finding import Finding
from boxwright.model.place import ANYWHERE, Place
from boxwright.rig.compose import read_rig
from boxwright.units import Band, exactly
from tests.disciplines.heat.test_findings import RIG, studied

WATT_HOUR = 3600.0
NOWHERE = Place(ANYWHERE, ANYWHERE, ANYWHERE, (0.0, 0.0, 0.0))
SOURCES = (
    PlannedSource("parts[panel]", "panel"),
    PlannedSource("parts[cell]", "cell", exactly(1000.0 * WATT_HOUR), "LiFePO4"),
    PlannedSource("openings[cable]", "cable", is_opening=True),
)
LEADS = (
    PlannedLead("wires[warm]", "warm", "panel", "stove"),
    PlannedLead("wires[main]", "main", "cell", "panel"),
    PlannedLead("wires[shore]", "shore", "cable", "panel"),
)
ALL = {one.of: "yes" for one in (*SOURCES, *LEADS)}


def fed(fed_by: str = "", there: dict[str, str] | None = None, leads: tuple[PlannedLead, ...] = LEADS) -> Feed:
    """Return what feeds a stove of a small plan: a panel, which a battery and a cable from outside feed."""
    planned = PlannedHeater("parts[stove]", "stove", NOWHERE, Heater(of="diesel", fed_by=fed_by))
    return feed_of(planned, Section(sources=SOURCES, leads=leads), ALL if there is None else there)


def test_wires_are_followed_to_the_battery() -> None:
    found = fed()
    assert (found.way, found.ends, found.stands, found.battery) == (("panel", "cell"), "battery", "yes", "parts[cell]")


@pytest.mark.parametrize("of", ["parts[panel]", "parts[cell]", "wires[warm]", "wires[main]"])
@pytest.mark.parametrize("word", ["perhaps", "no"])
def test_a_way_stands_no_better_than_the_worst_of_it(of: str, word: str) -> None:
    only = LEADS[:2]
    there = {path: stands for path, stands in ALL.items() if path != of} | ({of: word} if word != "no" else {})
    found = fed(there=there, leads=only)
    name = of.partition("[")[2].rstrip("]")
    assert (found.stands, found.lacking_of) == (word, of)
    assert found.lacking == (f"the wire {name}" if of.startswith("wires") else name)


def test_a_way_that_stands_goes_before_one_that_does_not() -> None:
    without = {path: stands for path, stands in ALL.items() if path != "parts[cell]"}
    found = fed(there=without)
    assert (found.way, found.ends, found.stands) == (("panel", "cable"), "outside", "yes")


def test_what_is_written_goes_before_the_wires_and_is_asked_about_where_no_wire_comes_from_it() -> None:
    assert fed("cable").way == ("panel", "cable") and fed("cable").is_crossed is False
    alone = fed("cable", leads=LEADS[:2])
    assert alone.ends == "outside" and alone.is_crossed
    assert fed("cell").ends == "battery"
    assert fed("panel").way == ("panel", "cell")


def test_a_name_of_nothing_feeds_nothing_and_a_common_word_is_a_cable_from_outside() -> None:
    lost = fed("batery")
    assert (lost.ends, lost.stands, lost.lacking) == ("nowhere", "no", "batery")
    assert fed("Mains").ends == "outside"
    assert fed(leads=()).ends == "unsaid"
    assert fed(leads=(PlannedLead("wires[warm]", "warm", "pannel", "stove"),)).ends == "nowhere"
    assert fed(leads=LEADS[:1]).ends == "unfed"


def test_wires_in_a_ring_come_to_an_end() -> None:
    ring = (*LEADS[:1], PlannedLead("wires[back]", "back", "other", "panel"))
    rung = (*ring, PlannedLead("wires[on]", "on", "panel", "other"))
    planned = PlannedHeater("parts[stove]", "stove", NOWHERE, Heater())
    own = Section(sources=(*SOURCES, PlannedSource("parts[other]", "other")), leads=rung)
    assert feed_of(planned, own, ALL).ends == "unfed"


@pytest.mark.parametrize(
    ("made_of", "shares"),
    [
        ("LiFePO4", (0.8, 0.6, 1.0)),
        ("lithium", (0.8, 0.6, 1.0)),
        ("AGM", (0.45, 0.3, 0.8)),
        ("", (0.45, 0.3, 1.0)),
        ("unknown", (0.45, 0.3, 1.0)),
    ],
)
def test_a_full_battery_gives_a_share_of_its_label(made_of: str, shares: tuple[float, float, float]) -> None:
    """By hand: of a kilowatt hour; one of a kind nobody wrote may be either."""
    given = usable(PlannedSource("parts[cell]", "cell", exactly(1000.0), made_of))
    assert given is not None
    assert (given.best, given.low, given.high) == pytest.approx(tuple(1000.0 * share for share in shares))


def test_how_long_it_lasts_crosses_the_ends() -> None:
    """By hand: 500, 300 or 600 Wh against 1000, 500 or 2000 Wh of twelve hours; no longer than the night."""
    found = lasts(Band(500.0, 300.0, 600.0), Band(1000.0, 500.0, 2000.0))
    hours = tuple(one / 3600.0 for one in (found.best, found.low, found.high))
    assert hours == pytest.approx((6.0, 1.8, 12.0))
    assert lasts(Band(500.0, 300.0, 600.0), Band(300.0, 100.0, 300.0)).low == 12.0 * 3600.0


def test_what_else_draws_counts_from_nothing_to_all_that_is_written() -> None:
    """By hand: 2 A of 14.4 V at a third for twelve hours, and three lamps of 5 W for four hours."""
    fridge = PlannedDraw("parts[fridge]", "fridge", exactly(2.0), None, 1, None, exactly(1.0 / 3.0))
    lamps = PlannedDraw("parts[lamps]", "lamps", None, exactly(5.0), 3, exactly(4.0 * 3600.0), None)
    absent = PlannedDraw("parts[kettle]", "kettle", None, exactly(1000.0), 1, None, None)
    brakes = PlannedDraw("parts[brakes]", "brakes", exactly(10.0), None, 1, None, None)
    wired = (PlannedSource("parts[fridge]", "fridge"), PlannedSource("parts[brakes]", "brakes"))
    leads = (*LEADS, PlannedLead("wires[a]", "a", "panel", "fridge"), PlannedLead("wires[b]", "b", "cable", "brakes"))
    own = Section(draws=(fridge, lamps, absent, brakes), sources=(*SOURCES, *wired), leads=leads)
    found = drawn_beside(
        SOURCES[1], own, {**ALL, "parts[fridge]": "yes", "parts[lamps]": "perhaps", "parts[brakes]": "yes"}
    )
    assert found.low == 0.0, "what a cable from elsewhere feeds takes nothing of the battery"
    assert found.high / WATT_HOUR == pytest.approx(2.0 * 14.4 / 3.0 * 12.0 + 3 * 5.0 * 4.0)
    assert found.best / WATT_HOUR == pytest.approx(2.0 * 12.8 / 3.0 * 12.0 + 3 * 5.0 * 2.0), (
        "half of its hours by night"
    )
    spare = PlannedSource("parts[spare]", "spare", exactly(1.0))
    assert drawn_beside(spare, own, {"parts[fridge]": "yes", **ALL}).high == 0.0, "its wires lead to another battery"


def test_what_runs_by_a_duty_runs_all_night_and_what_has_neither_may_be_off() -> None:
    """By hand: 10 W at half for twelve hours are 60 Wh; ten hours of a day are five of its night, ten at the most."""
    ten = exactly(10.0)
    by_duty = in_a_night(PlannedDraw("", "", None, ten, 1, None, exactly(0.5)))
    assert (by_duty.low, by_duty.best / WATT_HOUR, by_duty.high / WATT_HOUR) == pytest.approx((0.0, 60.0, 60.0))
    by_hours = in_a_night(PlannedDraw("", "", None, ten, 2, exactly(10.0 * 3600.0), None))
    assert (by_hours.low, by_hours.best / WATT_HOUR, by_hours.high / WATT_HOUR) == pytest.approx((0.0, 100.0, 200.0))
    bare = in_a_night(PlannedDraw("", "", None, ten, 1, None, None))
    assert (bare.best, bare.high / WATT_HOUR) == pytest.approx((0.0, 120.0))
    assert in_a_night(PlannedDraw("", "", None, None, 1, None, None)).high == 0.0


def test_what_a_battery_lacks_of_full_is_gone_from_what_it_gives() -> None:
    """By hand: of 100 of which 80 (60 to 100) are given, 70 at its label's; a lead one 45 (30 to 80) of 100."""
    rated = exactly(100.0)
    part = at_dusk(Band(80.0, 60.0, 100.0), rated, Band(0.7, 0.5, 0.9))
    assert (part.best, part.low, part.high) == pytest.approx((50.0, 10.0, 90.0))
    lead = at_dusk(Band(45.0, 30.0, 80.0), rated, exactly(0.5))
    assert (lead.best, lead.low, lead.high) == pytest.approx((0.0, 0.0, 50.0))
    assert at_dusk(Band(80.0, 60.0, 100.0), rated, None).low == 60.0
    assert not at_dusk(Band(0.0, 0.0, 1.0, known=False), None, exactly(0.5)).known


def test_a_charger_counts_where_a_cable_from_outside_feeds_it_and_the_sun_does_not() -> None:
    """By hand: 10 A at 12.8 V for twelve hours are 1536 Wh."""
    mains = PlannedSource("parts[charger]", "charger", charges=exactly(10.0), charged_from="cable")
    sun = PlannedSource("parts[regulator]", "regulator", charges=exactly(30.0), charged_from="glass")
    glass = PlannedSource("parts[glass]", "glass", is_panel=True)
    into = tuple(PlannedLead(f"wires[{one.name}]", one.name, one.name, "cell") for one in (mains, sun))
    shone = PlannedLead("wires[glass]", "glass", "glass", "regulator")

    def hung(*sources: PlannedSource, without: str = "") -> tuple[str, int, bool]:
        own = Section(sources=(*SOURCES, *sources), leads=(*LEADS[:2], *into, shone))
        there = dict.fromkeys([one.of for one in own.sources] + [one.of for one in own.leads], "yes")
        there.pop(without, None)
        (one,) = hung_on(own, there, (("parts[stove]", fed(leads=LEADS[:2])),), {})
        return one.charger, round(one.charged.high / WATT_HOUR), one.has_sun

    assert hung(mains, sun, glass) == ("charger", 1536, True)
    assert hung(sun, glass) == ("", 0, True)
    assert hung() == ("", 0, False)
    assert hung(mains, without="wires[charger]") == ("", 0, False), "its wire to the battery is not there"
    assert hung(mains, without="openings[cable]") == ("", 0, False), "what its cable comes in by is not there"
    assert hung(mains, without="parts[charger]") == ("", 0, False)


def test_what_hangs_on_a_battery_is_added_up() -> None:
    """By hand: two heaters of 5 (2 to 9) and 6 (3 to 8), and what else draws of 1 (0 to 4)."""
    nothing = exactly(0.0)
    loads = tuple(
        ElectricLoad(of, "cell", "field", nothing, joule, nothing, nothing)
        for of, joule in (("a", Band(5.0, 2.0, 9.0)), ("b", Band(6.0, 3.0, 8.0)))
    )
    need = together(loads)
    assert (need.best, need.low, need.high) == (11.0, 2.0, 17.0), "at the least one runs, and the one that takes least"
    hung = Hung("cell", "cell", nothing, None, ("a", "b"), Band(1.0, 0.0, 4.0), nothing, "", False)
    whole = whole_of(hung, loads)
    assert (whole.best, whole.low, whole.high) == (12.0, 2.0, 21.0)


def test_a_name_that_goes_on_behind_a_blank_is_the_thing() -> None:
    plain, told = heater_of(("from: battery, to: heater", "from: battery x2, to: heater plug"))[0], heater_of()[0]
    assert plain.feed == told.feed


def test_a_wire_from_a_common_word_for_outside_is_a_cable_from_there() -> None:
    lead = PlannedLead("wires[warm]", "warm", "shore", "stove", exactly(15.0), exactly(200.0))
    found = feed_of(PlannedHeater("parts[stove]", "stove", NOWHERE, Heater()), Section(leads=(lead,)), {lead.of: "yes"})
    assert (found.way, found.ends, found.stands, found.most) == (("shore",), "outside", "yes", exactly(3000.0))


def test_the_narrowest_of_a_way_is_what_it_gives() -> None:
    """By hand: 16 A of a cable from outside are 1600 W at the least, the inverter gives 200; 9 A at 12.8 V are 115."""
    leads = (LEADS[0], replace(LEADS[2], amps=exactly(16.0)))
    own = Section(sources=(replace(SOURCES[0], gives=exactly(200.0)), *SOURCES[1:]), leads=leads)
    found = feed_of(PlannedHeater("parts[stove]", "stove", NOWHERE, Heater()), own, ALL)
    assert found.most == exactly(200.0)
    assert wanted_by("burns", Heater(start=exactly(9.0), draw=exactly(1.2))).by(Feed((), "battery")) == exactly(115.2)
    assert wanted_by("electric", Heater(highest=exactly(500.0))).by(found) == exactly(500.0)
    each = [enough(Wanted(one), found) for one in (exactly(200.1), exactly(200.0), Band(150.0, 100.0, 201.0), None)]
    assert each == ["no", "yes", "perhaps", "yes"]
    told = narrowest(Wanted(exactly(1e6)), found)
    assert told is not None and told.name == "panel"


def heater_of(*edits: tuple[str, str]) -> tuple[StandingHeater, float]:
    """Return the heater of the small rig as edited, and the coldest its room may get."""
    text = RIG
    for old, new in edits:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    (slot,) = [one for one in studied(text).asked_slots("sleep", "night") if one.heat is not None and one.heat.held][:1]
    assert slot.heat is not None
    return slot.heat.heaters[0], slot.heat.held[0].coldest.low


def test_a_heater_whose_battery_is_not_in_yet_may_warm_nothing() -> None:
    told, held = heater_of()
    assert told.feed.way == ("battery",) and told.is_fed
    later, cold = heater_of(("weight: 12, stage: shell, done: yes, battery:", "weight: 12, stage: later, battery:"))
    assert not later.is_fed and cold < held - 5.0
    unwired, same = heater_of(
        ("{from: battery, to: heater", "{from: battery, to: bed"), ("draw: 1.2 A, start: 9 A", "draw: 0 A, start: 0 A")
    )
    assert not unwired.takes_electricity and same == held


def said_of_battery(*edits: tuple[str, str]) -> list[Finding]:
    """Return what is said of the battery of the small rig: its heater takes 115 to 758 Wh, 227 most likely."""
    text = RIG
    for old, new in edits:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return [one for one in studied(text).findings("sleep") if one.code == "heat/battery-for-the-night"]


@pytest.mark.parametrize(("charge", "kind"), [("20", "limit"), ("60", "unknown"), ("100", "")])
def test_a_battery_is_short_perhaps_short_or_enough(charge: str, kind: str) -> None:
    """By hand: 20 Ah give 205 Wh most likely, 256 at the most; 60 Ah 614, 461 at the least; 100 Ah 768 at the least."""
    found = said_of_battery(("Ah: 100}", f"Ah: {charge}}}"))
    assert [one.kind for one in found] == ([kind] if kind else [])


def test_what_else_draws_may_be_too_much_beside_a_heater_that_alone_is_not() -> None:
    lamp = "  lamp: {x: 1000, side: left, z: 1500, size: 100 x 100 x 100, weight: 1, stage: shell, done: yes, draw: %s}"
    (found,) = said_of_battery(("  # one more", lamp % "20 W"))
    assert found.kind == "unknown" and "enough for it alone, perhaps not with what else" in found.says
    assert "up to 240 Wh" in found.says and found.act.startswith("Switch off")
    assert said_of_battery(("  # one more", lamp % "0.5 W")) == []


def test_a_wire_to_a_heater_says_that_it_takes_electricity() -> None:
    later = ("weight: 12, stage: shell, done: yes, battery:", "weight: 12, stage: later, battery:")
    unsaid, cold = heater_of(("draw: 1.2 A, start: 9 A, ", ""), later)
    assert unsaid.takes_electricity and not unsaid.is_fed and cold < heater_of()[1] - 5.0


def test_a_tank_that_is_named_and_not_there_is_not_replaced_by_another() -> None:
    assert heater_of()[0].tank is not None
    assert heater_of(("path: [fuel, ", "path: [feul, "))[0].tank is None
    assert heater_of(("path: [fuel, ", "path: [tank, "))[0].tank is not None
    assert heater_of(("path: [fuel, valve", "path: [valve"))[0].tank is not None


def test_a_certain_stop_stays_whatever_a_second_place_may_take() -> None:
    """By hand: at -25 C it runs nearly all night, 189 Wh, and 16 Ah give 164; at the other place 0 to 758 Wh."""
    cold, short = ("coldest_design: -5 C", "coldest_design: -25 C"), ("Ah: 100}", "Ah: 16, max_amps: 16}")
    hill = ("places:\n", "places:\n  hill: {coldest_design: 5..39 C, height: 0 m}\n")
    (alone,), (both,) = said_of_battery(short, cold), said_of_battery(short, cold, hill)
    assert alone.kind == both.kind == "limit" and "at meadow" in both.says
    (doubtful,) = said_of_battery(short, ("  meadow: {coldest_design: -5 C", "  meadow: {coldest_design: 5..39 C"))
    assert doubtful.kind == "unknown"


def test_an_inverter_takes_of_a_battery_what_it_loses_and_what_it_wants_for_itself() -> None:
    """By hand: of 875 (850 to 900) W of every 1000; 10 W for twelve hours are 120 Wh, 25 W that nobody wrote 300."""
    box = PlannedSource("parts[box]", "box", gives=exactly(2000.0), idle=exactly(10.0))
    spare = PlannedSource("parts[spare]", "spare", gives=exactly(100.0))
    lamp = PlannedSource("parts[lamp]", "lamp")
    runs = (("cell", "box"), ("box", "stove"), ("cell", "spare"), ("spare", "lamp"))
    leads = tuple(PlannedLead(f"wires[{end}]", end, start, end) for start, end in runs)
    draws = (PlannedDraw("parts[lamp]", "lamp", None, exactly(9.0), 1, exactly(24.0 * 3600.0), None),)
    own = Section(sources=(SOURCES[1], box, spare, lamp), leads=leads, draws=draws)
    there = dict.fromkeys([one.of for one in own.sources] + [one.of for one in leads], "yes")
    feed = feed_of(PlannedHeater("parts[stove]", "stove", NOWHERE, Heater()), own, there)
    assert (feed.way, feed.inverters, feed.share.low, feed.share.high) == (("box", "cell"), ("parts[box]",), 0.85, 0.9)
    (hung,) = hung_on(own, there, (("parts[stove]", feed),), {})
    assert hung.idling == ("box", "spare")
    assert hung.besides.best / WATT_HOUR == pytest.approx(120.0 + 9.0 * 12.0 / 0.875), "the spare one may be off"
    assert hung.besides.high / WATT_HOUR == pytest.approx(120.0 + 300.0 + 9.0 * 12.0 / 0.85)
    load = ElectricLoad(
        "parts[stove]", "box", "field", exactly(0.0), Band(850.0, 90.0, 1700.0), exactly(0.0), exactly(0.0)
    )
    (taken,) = taken_of(hung, (load,))
    assert (taken.joule.low, taken.joule.high) == pytest.approx((100.0, 2000.0))
    assert taken.joule.best == pytest.approx(850.0 / 0.875)
    drawing = replace(own, draws=(*draws, PlannedDraw("parts[box]", "box", None, exactly(1.0), 1, None, None)))
    assert hung_on(drawing, there, (("parts[stove]", feed),), {})[0].idling == ("spare",)


def test_what_an_inverter_draws_by_its_amperes_is_of_its_own_volts() -> None:
    """By hand: 2 A of 230 V all night are 5520 Wh behind the inverter, 6494 Wh of the battery at the most."""
    box = PlannedSource("parts[box]", "box", gives=exactly(2000.0))
    kettle = PlannedSource("parts[kettle]", "kettle")
    leads = (
        PlannedLead("wires[a]", "a", "cell", "box"),
        PlannedLead("wires[b]", "b", "box", "kettle", volts=exactly(230.0)),
    )
    draws = (PlannedDraw("parts[kettle]", "kettle", exactly(2.0), None, 1, None, exactly(1.0)),)
    own = Section(sources=(SOURCES[1], box, kettle), leads=leads, draws=draws)
    there = dict.fromkeys([one.of for one in own.sources] + [one.of for one in leads], "yes")
    found = drawn_beside(SOURCES[1], own, there)
    assert (found.best / WATT_HOUR, found.high / WATT_HOUR) == pytest.approx((5520.0 / 0.875, 5520.0 / 0.85))
    of_24 = replace(SOURCES[1], volts=exactly(25.6))
    bare = replace(own, sources=(of_24, kettle), leads=())
    assert drawn_beside(of_24, bare, there).best / WATT_HOUR == pytest.approx(2.0 * 25.6 * 12.0)


def test_a_heater_behind_an_inverter_takes_more_of_its_battery_and_says_so() -> None:
    at = "x: 500, side: left+100, z: 100, size: 300 x 200 x 100, weight: 3, stage: shell, done: yes"
    box = ("  # one more", f"  box: {{{at}, inverter: {{watts: 2000, idle: 8 W}}}}")
    electric = ("of: diesel, lowest: 900 W, highest: 4000 W", "of: electric, lowest: 500 W, highest: 1500 W")
    ways = (("to: heater, route", "to: box, route"), ("fuse: 15 A", "fuse: 200 A"), ("wires:\n", "wires:\n  ac: {from:"
            " box, to: heater, done: yes}\n"))  # fmt: skip
    (direct,) = said_of_battery(electric, ("fuse: 15 A", "fuse: 200 A"))
    (behind,) = said_of_battery(electric, box, *ways)
    assert behind.limit is not None and direct.limit is not None
    assert behind.limit == pytest.approx(direct.limit / 0.85 + 8.0 * 12.0 * WATT_HOUR)
    assert "what its inverter loses counted in" in behind.says and "what box takes for itself" in behind.says
    assert "inverter" not in direct.says


SECOND = (
    "  second: {x: 2000, side: right-300, z: 100, size: 350 x 150 x 150, weight: 4, stage: shell, done: yes, heater:"
    " {of: diesel, lowest: 900 W, highest: 4000 W, switches: yes, draw: 1.2 A, start: 9 A, fed_by: battery}}"
)


def test_two_heaters_on_one_battery_are_judged_together() -> None:
    """By hand: each takes 758 Wh at the most; 100 Ah give 768 Wh at the least, 200 Ah 1536 Wh."""
    (found,) = said_of_battery(("  # one more", SECOND))
    assert found.kind == "unknown" and "heater and second together take" in found.says
    assert {"parts[heater]", "parts[second]", "parts[battery]"} <= set(found.because)
    assert said_of_battery(("  # one more", SECOND), ("Ah: 100}", "Ah: 200}")) == []
    assert together(()).high == 0.0


def test_a_fridge_beside_a_heater_is_counted_as_it_runs() -> None:
    """By hand: 4 A at 12.8 V and a half for twelve hours are 307 Wh, beside 227 of the heater; 60 Ah give 614."""
    fridge = (
        "  fridge: {x: 1000, side: left, z: 0, size: 100 x 100 x 100, weight: 1, stage: shell, done: yes, draw: %s}"
    )
    (found,) = said_of_battery(("  # one more", fridge % "4 A, duty: 0.5"), ("Ah: 100}", "Ah: 50}"))
    assert found.kind == "limit", found.says
    (less,) = said_of_battery(("  # one more", fridge % "4 A, duty: 0.5"), ("Ah: 100}", "Ah: 60}"))
    assert less.kind == "unknown", less.says


@pytest.mark.parametrize(("charge", "kind", "says"), [
    ("full", "", ""), ("3/4", "unknown", "battery, 75 % full as it begins"), ("30 %", "limit", "30 % full"),
    ("unknown", "unknown", "0 to 100 % full"), ("", "unknown", "0 to 100 % full"),
    ("", "unknown", "; nobody wrote how full battery is"),
    ("none", "limit", "0 % full"), ("40..60 %", "unknown", "40 to 60 % full"),
])  # fmt: skip
def test_a_battery_that_is_not_full_at_dusk_gives_less(charge: str, kind: str, says: str) -> None:
    """By hand: 1280 Wh give 1024 (768 to 1280) full; a quarter less leaves 704 (448 to 960) of the 227 to 758."""
    found = said_of_battery(
        ("tanks: {fuel: full}, parked", f"charge: {{battery: {charge}}}, tanks: {{fuel: full}}, parked")
    )
    assert [one.kind for one in found] == ([kind] if kind else [])
    assert all(says in one.says for one in found)


def test_a_name_of_no_battery_and_an_unreadable_charge_are_mistakes() -> None:
    wrong = RIG.replace(
        "tanks: {fuel: full}, parked", "charge: {batery: 60 %, battery: lots}, tanks: {fuel: full}, parked"
    )
    told = [problem.says for problem in read_rig(wrong).problems]
    assert any("batery" in one and "battery" in one for one in told) and any("lots" in one for one in told), told


@pytest.mark.parametrize(("fuse", "kinds"), [("15 A", []), ("9 A", []), ("8 A", ["limit"]), ("8..10 A", ["unknown"])])
def test_a_fuse_that_a_start_blows_leaves_the_room_cold(fuse: str, kinds: list[str]) -> None:
    edit = ("fuse: 15 A, stage: shell, done: yes", f"fuse: {fuse}, stage: shell, done: yes")
    told = studied(RIG.replace(*edit)).findings("sleep")
    assert [one.kind for one in told if one.code == "heat/feed-too-small"] == kinds
    heater, cold = heater_of(edit)
    assert heater.is_fed is not bool(kinds) and (cold < heater_of()[1] - 5.0) is bool(kinds)


CHARGER = (
    "  # one more",
    "  charger: {x: 100, side: left+400, z: 100, size: 200 x 100 x 100, weight: 3, stage: shell, done: yes, charger:"
    " {from: mains, amps: 20}}",
)
TO_BATTERY = ("wires:\n", "wires:\n  charge: {from: charger, to: battery, fuse: 30 A, stage: shell, done: yes}\n")


def test_what_a_charger_may_make_good_is_asked_and_what_it_may_not_is_a_limit() -> None:
    """By hand: 20 A at 12.8 V for twelve hours are 3072 Wh, far more than the 227 that 8 Ah do not give."""
    short = ("Ah: 100}", "Ah: 8}")
    (alone,) = said_of_battery(short)
    (mended,) = said_of_battery(short, CHARGER, TO_BATTERY)
    assert (alone.kind, mended.kind) == ("limit", "unknown")
    assert "charger may give it 3,072 Wh more while a cable from outside feeds it, and nobody wrote" in mended.says
    (weak,) = said_of_battery(short, (CHARGER[0], CHARGER[1].replace("amps: 20", "amps: 0.5")), TO_BATTERY)
    assert weak.kind == "limit"


def test_an_electric_heater_gives_no_more_than_its_way_and_a_burner_has_its_heat_of_its_fuel() -> None:
    narrow = Feed(("box",), "outside", limits=(Limit("parts[box]", "box", "inverter", exactly(1000.0)),))
    heater = Heater(highest=exactly(4000.0), lowest=exactly(300.0), start=exactly(200.0), draw=exactly(100.0))
    planned = PlannedHeater("parts[stove]", "stove", NOWHERE, heater)
    by_wire = StandingHeater(planned, True, "electric", "out", "out", None, None, None, feed=narrow)
    burner = StandingHeater(planned, True, "burns", "out", "out", None, None, None, feed=narrow)
    highest = [warmth_of(one).highest for one in (by_wire, burner)]
    assert [(one.best, one.low, one.high) for one in highest] == [(0.0, 0.0, 1000.0), (0.0, 0.0, 4000.0)]


@pytest.mark.parametrize(
    ("path", "draws", "wants"),
    [
        (("fuel", "pump below floor", "stove"), None, True),
        (("fuel", "hand pump", "stove"), None, False),
        (("fuel", "valve at tank", "stove"), None, False),
        (("fuel", "pump below floor", "stove"), exactly(0.0), False),
        ((), None, True),
        ((), exactly(0.0), False),
    ],
)
def test_a_heater_with_a_pump_on_the_way_of_its_fuel_wants_electricity(
    path: tuple[str, ...], draws: Band | None, wants: bool
) -> None:
    facet = Heater(of="diesel", path=path, draw=draws)
    assert takes_electricity("burns", facet, NO_FEED, burns_by_itself=False) is wants
    assert takes_electricity("burns", facet, NO_FEED, burns_by_itself=True) is (wants and bool(path))

"""Whether what feeds a heater or a cooler gives on what it takes: by hand, and on the small rig with a piece changed.

An inverter gives on 85 to 90 % of what it takes (common practice, no source); volts times amperes are watts.
"""

from __future__ import annotations

from dataclasses import replace
from math import inf

import pytest

from boxwright.disciplines.heat.battery import drawn_beside
from boxwright.disciplines.heat.burner import warmth_of
from boxwright.disciplines.heat.feeds import (
    MAINS,
    VOLTS,
    Feed,
    Limit,
    Wanted,
    bus_of,
    enough,
    fed,
    feed_of_cooler,
    narrowest,
)
from boxwright.disciplines.heat.parts import (
    Cooler,
    Heater,
    PlannedCooler,
    PlannedDraw,
    PlannedHeater,
    PlannedLead,
    PlannedSource,
    Section,
)
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.finding import Finding
from boxwright.model.place import ANYWHERE, Place
from boxwright.units import Band, exactly
from tests.disciplines.heat.test_cooling import AC
from tests.disciplines.heat.test_feeds import heater_of
from tests.disciplines.heat.test_findings import edited, worked

Edit = tuple[str, str]
FUSE, OWN = "fuse: 15 A", "draw: 1.2 A, start: 9 A"
STRONG: Edit = ("Ah: 100}", "Ah: 100, max_amps: 500 A}")
TO_BOX: Edit = ("to: heater, route", "to: box, route")
INLET: Edit = (
    "  vent-high:",
    "  inlet: {wall: left, x: 2000, width: 80, z: 300, height: 80, stage: shell, cut: yes, done: yes,"
    " unit: {weight: 1}}\n  vent-high:",
)


def electric(fed_by: str = "") -> Edit:
    """Return the heater of the small rig as an electric one of 1500 W."""
    feed = f"fed_by: {fed_by}, " if fed_by else ""
    return "of: diesel, lowest: 900 W, highest: 4000 W", f"of: electric, {feed}lowest: 500 W, highest: 1500 W"


def box(inverter: str) -> Edit:
    at = "x: 500, side: left+100, z: 100, size: 300 x 200 x 100, weight: 3, stage: shell, done: yes"
    return "  # one more", f"  box: {{{at}, {inverter}}}"


def wired(*written: str) -> Edit:
    return "wires:\n", "wires:\n" + "".join(f"  way{n}: {{{one}, done: yes}}\n" for n, one in enumerate(written))


def told(code: str, *edits: Edit, use: str = "sleep") -> list[Finding]:
    return [one for one in worked(edited(*edits), use) if one.code == f"heat/{code}"]


def kinds(*edits: Edit) -> list[str]:
    return [one.kind for one in told("feed-too-small", *edits)]


@pytest.mark.parametrize(
    ("fuse", "expected"), [("10 A", []), ("9 A", []), ("8 A", ["limit"]), ("8..10 A", ["unknown"])]
)
def test_what_is_written_to_feed_it_goes_by_the_wire_from_there(fuse: str, expected: list[str]) -> None:
    assert kinds((OWN, f"{OWN}, fed_by: battery"), (FUSE, f"fuse: {fuse}")) == expected


@pytest.mark.parametrize("word", ["mains", "shore", "Site"])
def test_a_common_word_for_outside_goes_by_the_cable_from_there(word: str) -> None:
    cable = wired("from: inlet, to: heater, breaker: 6 A, volts: 230")
    (found,) = told("feed-too-small", electric(word), INLET, cable)
    assert found.kind == "limit" and "heater takes 1,500 W, and the wire way0 gives 1,380 W" in found.says
    assert told("feed-stands", electric(word), INLET, cable) == []


@pytest.mark.parametrize(
    "fuse", ["unknown", "banana", "", "{kind: blade, at: battery}", "{amps: unknown}", "15 A, breaker: unknown",
             "15 A, breaker: ", "15 A, breaker: lots"],
)  # fmt: skip
def test_a_fuse_that_nobody_can_read_is_asked_and_is_not_without_limit(fuse: str) -> None:
    (found,) = told("feed-too-small", (FUSE, f"fuse: {fuse}"))
    assert found.kind == "unknown" and "nobody wrote how large the fuse or breaker of the wire warm is" in found.says
    assert found.act.endswith("and write it there: fuse: 15 A")


def test_the_weaker_of_fuse_and_breaker_counts_even_where_the_other_is_not_known() -> None:
    assert kinds((FUSE, "fuse: none")) == []
    assert kinds((FUSE, "fuse: 15 A, breaker: 8 A")) == ["limit"]
    assert kinds((FUSE, "fuse: 8 A, breaker: 15 A")) == ["limit"]
    assert kinds((FUSE, "fuse: 9 A, breaker: 9 A")) == []
    (found,) = told("feed-too-small", (FUSE, "fuse: 8 A, breaker: unknown"))
    assert found.kind == "limit" and "the wire warm gives no more than 102 W" in found.says
    assert kinds((FUSE, "fuse: 10 A, breaker: 8..9.5 A")) == ["unknown"]


@pytest.mark.parametrize("inverter", ["inverter: unknown", "inverter: banana", "inverter: ", "inverter: {idle: 8 W}",
                                      "inverter: banana, draw: 1 W"])  # fmt: skip
def test_an_inverter_that_nobody_can_read_is_asked_and_is_not_without_limit(inverter: str) -> None:
    (found,) = told("feed-too-small", electric("box"), box(inverter), TO_BOX, (FUSE, "fuse: 200 A"))
    assert found.kind == "unknown" and found.says == "heater takes 1,500 W, and nobody wrote what box gives"


@pytest.mark.parametrize(("most", "expected"), [("9 A", []), ("8 A", ["limit"]), ("unknown", ["unknown"])])
def test_a_battery_gives_no_more_than_its_label_says(most: str, expected: list[str]) -> None:
    assert kinds(("Ah: 100}", f"Ah: 100, max_amps: {most}}}")) == expected
    assert kinds(("Ah: 100}", f"Ah: 100, max_amps: {most}}}, count: 2")) == (expected if most == "unknown" else [])


@pytest.mark.parametrize(("label", "expected"), [
    ("kind: LiFePO4, volts: 12.8, Ah: 18", []), ("kind: LiFePO4, volts: 12.8, Ah: 17", ["unknown"]),
    ("kind: AGM, volts: 12, Ah: 45", []), ("kind: AGM, volts: 12, Ah: 44", ["unknown"]),
    ("volts: 12, Ah: 44", ["unknown"]), ("kind: AGM, volts: 12, Ah: 40..50", ["unknown"]),
    ("kind: LiFePO4, volts: 12.8, Ah: unknown", []), ("kind: LiFePO4, volts: 12.8, Ah: 17, max_amps: 9", []),
])  # fmt: skip
def test_a_battery_of_which_nobody_wrote_its_amperes_is_asked_for_them_where_they_may_not_do(
    label: str, expected: list[str]
) -> None:
    """By hand: half of 18 Ah of lithium and a fifth of 45 Ah of lead are the 9 A of a start (common practice)."""
    found = told("feed-too-small", ("kind: LiFePO4, volts: 12.8, Ah: 100", label))
    assert [one.kind for one in found] == expected
    for one in found:
        assert "takes 115 W, and nobody wrote what battery gives without a break" in one.says
        assert one.act.endswith("write max_amps: 100 under battery")


def test_an_inverter_asks_what_its_battery_gives_and_what_it_loses_is_counted_in() -> None:
    """By hand: half of 280 Ah are 140 A of 12.8 V, 1523 W behind an inverter at the least; of 270 Ah 1469 W."""
    for hours, expected in ((280, []), (270, ["unknown"])):
        label = ("Ah: 100}", f"Ah: {hours}}}")
        assert kinds(electric("box"), box("inverter: 2000 W"), TO_BOX, (FUSE, "fuse: 200 A"), label) == expected
    bank = (
        "battery: {kind: LiFePO4, volts: 12.8, Ah: 100}",
        "count: 3, battery: {kind: LiFePO4, volts: 12.8, Ah: 100}",
    )
    assert kinds(electric("box"), box("inverter: 2000 W"), TO_BOX, (FUSE, "fuse: 200 A"), bank) == []


@pytest.mark.parametrize(("amps", "expected"), [("130 A", ["limit"]), ("135 A", ["unknown"]), ("138 A", [])])
@pytest.mark.parametrize("of_battery", [False, True])
def test_what_lies_before_an_inverter_carries_what_the_inverter_loses(
    amps: str, expected: list[str], of_battery: bool
) -> None:
    """By hand: of 130, 135 and 138 A at 12.8 V it gives 1414 to 1498, 1469 to 1555 and 1501 to 1590 W of 1500."""
    fuse = (FUSE, f"fuse: {'200 A' if of_battery else amps}")
    label = ("Ah: 100}", f"Ah: 100, max_amps: {amps if of_battery else '300 A'}}}")
    found = told("feed-too-small", electric("box"), box("inverter: 2000 W"), TO_BOX, fuse, label)
    assert [one.kind for one in found] == expected
    assert all("what an inverter loses taken off" in one.says for one in found)


@pytest.mark.parametrize(("breaker", "expected"), [
    ("16 A", []), ("10 A", ["unknown"]), ("6 A", ["limit"]), ("10 A, volts: 230", []), ("10 A, volts: 120", ["limit"]),
])  # fmt: skip
def test_a_cable_from_outside_is_no_bus_of_a_battery(breaker: str, expected: list[str]) -> None:
    """By hand: of 100 to 240 V 16 A are 1600 W at the least, 10 A 1000 to 2400 W, 6 A 1440 W at the most."""
    cable = wired(f"from: inlet, to: heater, breaker: {breaker}")
    found = told("feed-too-small", electric("inlet"), INLET, cable)
    assert [one.kind for one in found] == expected
    if expected == ["unknown"]:
        assert found[0].says.endswith("for nobody wrote of how many volts it is") and "volts: 230" in found[0].act


def test_the_volts_of_a_wire_are_those_of_what_it_comes_from() -> None:
    """By hand: behind a wire of 230 V a fuse of 7 A is of 1610 W, before the inverter one of 150 A of 12.8 V."""
    panel = box("rcd: unknown")
    way = wired("from: inlet, to: box, breaker: 16 A, volts: 230", "from: box, to: heater, breaker: 7 A")
    assert kinds(electric("box"), panel, INLET, way) == []
    less = wired("from: inlet, to: box, breaker: 16 A, volts: 230", "from: box, to: heater, breaker: 6 A")
    assert kinds(electric("box"), panel, INLET, less) == ["limit"]


@pytest.mark.parametrize(("volts", "batteries"), [
    (12.0, 1), (12.8, 1), (13.2, 1), (24.0, 2), (25.6, 2), (36.0, 3), (48.0, 4), (51.2, 4), (6.0, 1),
])  # fmt: skip
def test_a_bus_is_of_as_many_batteries_of_twelve_volts_as_its_label_says(volts: float, batteries: int) -> None:
    found = bus_of(exactly(volts))
    assert (found.best, found.low, found.high) == pytest.approx(
        (VOLTS.best * batteries, VOLTS.low * batteries, VOLTS.high * batteries)
    )
    assert bus_of(exactly(120.0)) == exactly(120.0) and MAINS.low == 100.0


@pytest.mark.parametrize(("volts", "fuse", "expected"), [
    ("12.8", "10 A", ["limit"]), ("25.6", "10 A", ["limit"]), ("51.2", "10 A", []), ("51.2", "9 A", ["limit"]),
    ("unknown", "10 A", ["limit"]),
])  # fmt: skip
def test_an_electric_heater_is_held_against_the_volts_of_its_battery(
    volts: str, fuse: str, expected: list[str]
) -> None:
    """By hand: 10 A are 128, 256 and 512 W, 9 A of 51.2 V 461 W, of 500."""
    heater = ("of: diesel, lowest: 900 W, highest: 4000 W", "of: electric, lowest: 100 W, highest: 500 W")
    assert kinds(heater, ("volts: 12.8", f"volts: {volts}"), (FUSE, f"fuse: {fuse}")) == expected


@pytest.mark.parametrize("volts", ["12.8", "25.6", "48", "unknown"])
def test_amperes_are_held_against_amperes_whatever_the_volts(volts: str) -> None:
    for fuse, expected in (("9 A", []), ("8 A", ["limit"])):
        assert kinds(("volts: 12.8", f"volts: {volts}"), (FUSE, f"fuse: {fuse}")) == expected


def test_a_heater_of_24_volts_takes_twice_as_much_of_a_battery() -> None:
    """By hand: the small rig's heater takes 227 Wh most likely and 758 at the most of 12 V; of 24 V 454 and 1517."""
    (twelve,) = told("battery-for-the-night", ("Ah: 100}", "Ah: 8}"))
    (both,) = told("battery-for-the-night", ("volts: 12.8, Ah: 100}", "volts: 25.6, Ah: 4}"))
    assert (both.number, both.limit) == pytest.approx((twelve.number, 2.0 * (twelve.limit or 0.0)))


def test_what_is_perhaps_too_small_is_asked_and_is_no_limit_of_the_warmth() -> None:
    asked = (FUSE, "fuse: 8..10 A")
    assert kinds(asked) == ["unknown"]
    assert [one.kind for one in told("held", asked)] == ["unknown"]
    assert [one.kind for one in told("held", (FUSE, "fuse: 8 A"))] == ["limit"]
    assert heater_of(asked)[1] < heater_of()[1] - 5.0, "at the worst it warms nothing"


def test_a_way_that_gives_enough_goes_before_one_that_does_not() -> None:
    small, large = ("from: box, to: heater", "from: inlet, to: heater, breaker: 16 A, volts: 230")
    edits = (electric(), INLET, TO_BOX, (FUSE, "fuse: 200 A"), STRONG)
    for inverter, way in (("1000 W", ("inlet",)), ("1600 W", ("box", "battery"))):
        heater, _ = heater_of(*edits, box(f"inverter: {inverter}"), wired(small, large))
        assert heater.feed.way == way and heater.enough == "yes"
    heater, _ = heater_of(*edits, box("inverter: 1000 W"), wired(small, large.replace("16 A", "5 A")))
    assert heater.feed.way == ("box", "battery") and heater.enough == "no"


@pytest.mark.parametrize("word", ["shore", "inlet"])
@pytest.mark.parametrize("is_wired", [False, True])
def test_what_is_advised_of_a_cable_from_outside_ends_the_question(word: str, is_wired: bool) -> None:
    edits: tuple[Edit, ...] = (electric(word), INLET)
    plain = f"from: {word}, to: heater"
    asked = told("feed-too-small", *edits, *([wired(plain)] if is_wired else []))
    (found,) = asked
    assert found.kind == "unknown" and f"nobody wrote what {word} gives" in found.says
    if is_wired:
        assert found.act.endswith("on the wire way0: breaker: 16 A, volts: 230")
        followed = ("wires:\n", f"wires:\n  way0: {{{plain}, done: yes, breaker: 16 A, volts: 230}}\n")
    else:
        line = found.act[found.act.index("{") :]
        followed = ("wires:\n", f"wires:\n  way0: {line}\n")
    assert told("feed-too-small", *edits, followed) == told("feed-stands", *edits, followed) == []


def test_what_is_advised_where_it_gives_too_little_ends_it() -> None:
    edits = (box("inverter: 1000 W"), TO_BOX, (FUSE, "fuse: 200 A"))
    (found,) = told("feed-too-small", electric("box"), *edits)
    assert "Feed heater by a cable from outside and write its wire with its breaker" in found.act
    cable = wired("from: shore, to: heater, breaker: 16 A, volts: 230")
    assert kinds(electric("shore"), *edits, cable) == []
    outside = wired("from: shore, to: heater, breaker: 6 A, volts: 230")
    (less,) = told("feed-too-small", electric("shore"), outside)
    assert less.act.startswith("Run heater on a lower setting") and "by a cable from outside" not in less.act
    lower = (electric()[0], electric("shore")[1].replace("highest: 1500 W", "highest: 1300 W"))
    assert kinds(lower, outside) == []


def test_what_is_advised_of_a_heater_that_burns_is_a_wire_made_for_it() -> None:
    (found,) = told("feed-too-small", (FUSE, "fuse: 8 A"))
    assert found.act == "Fit a wire and a fuse made for what heater takes; never put a larger fuse on the same wire"
    assert kinds((FUSE, "fuse: 10 A")) == []
    (doubtful,) = told("feed-too-small", (FUSE, "fuse: about 9 A"))
    assert doubtful.act.startswith("Read what is printed on the fuse or breaker of the wire warm")
    (weak,) = told("feed-too-small", ("Ah: 100}", "Ah: 100, max_amps: 8 A}"))
    assert weak.act == "Fit a battery made for what heater takes"


CHARGER: Edit = (
    "  # one more",
    "  charger: {x: 100, side: left+400, z: 100, size: 200 x 100 x 100, weight: 3, stage: shell, done: yes, charger:"
    " {from: mains, amps: 20}}",
)
TO_BATTERY: Edit = ("wires:\n", "wires:\n  charge: {from: charger, to: battery, fuse: 30 A, stage: shell, done: yes}\n")


def test_plugged_in_all_night_a_charger_feeds_a_heater_past_its_small_battery() -> None:
    """What is advised ends it, and neither a charger that gives less nor one that is not there is taken for enough."""
    short, own = ("Ah: 100}", "Ah: 8}"), (OWN, f"{OWN}, fed_by: charger")
    (asked,) = told("battery-for-the-night", short, CHARGER, TO_BATTERY)
    assert asked.kind == "unknown" and "write fed_by: charger of heater" in asked.act
    every = [one for one in worked(edited(short, CHARGER, TO_BATTERY, own), "sleep") if one.kind != "advice"]
    assert [one.code for one in every if one.code in ("heat/battery-for-the-night", "heat/feed-stands")] == []
    heater, _ = heater_of(short, CHARGER, TO_BATTERY, own)
    assert heater.feed.way == ("battery", "charger", "mains") and heater.is_fed
    assert [one.name for one in heater.feed.limits] == ["mains", "charger", "the wire charge", "the wire warm"]
    tired = ("Ah: 100}", "Ah: 8, max_amps: 8 A}")
    assert told("feed-too-small", tired, CHARGER, TO_BATTERY, own) == [], "the charger gives it past the battery"
    weak = (CHARGER[0], CHARGER[1].replace("amps: 20", "amps: 5"))
    assert [one.kind for one in told("feed-too-small", short, weak, TO_BATTERY, own)] == ["limit"]
    later = (CHARGER[0], CHARGER[1].replace("stage: shell, done: yes", "stage: later"))
    assert [one.kind for one in told("feed-stands", short, later, TO_BATTERY, own)] == ["limit"]
    unwired = ("wires:\n", "wires:\n  charge: {from: charger, to: bed, fuse: 30 A, stage: shell, done: yes}\n")
    (crossed,) = told("feed-stands", short, CHARGER, unwired, own)
    assert crossed.kind == "unknown" and "no wire to it comes from there" in crossed.says


def test_what_a_charger_is_charged_from_feeds_what_it_feeds() -> None:
    charger = PlannedSource("parts[charger]", "charger", charges=exactly(30.0), charged_from="cable")
    own, there = plan(CABLE, charger, runs=(lead("charger", "stove", 10.0),))
    assert (fed("stove", "", own, there).way, fed("stove", "", own, there).ends) == (("charger", "cable"), "outside")
    for nothing, ends in (("", "unfed"), ("unknown", "unfed"), ("sun", "nowhere"), ("charger", "unfed")):
        own, there = plan(CABLE, replace(charger, charged_from=nothing), runs=(lead("charger", "stove", 10.0),))
        assert fed("stove", "", own, there).ends == ends


@pytest.mark.parametrize(("gives", "fuse", "by", "taken"), [
    ("3000 W", "400 A", "", 0), ("2999 W", "400 A", "box", 100), ("2000 W", "400 A", "box", 150),
    ("4000 W", "200 A", "the wire warm", 138), ("2900 W", "265 A", "the wire warm", 104),
])  # fmt: skip
def test_two_heaters_that_one_thing_feeds_are_advised_to_run_one_at_a_time(
    gives: str, fuse: str, by: str, taken: int
) -> None:
    """By hand: 1500 W each; of 200 A at 12.8 V an inverter gives on 2176 W at the least, of 265 A 2883, of 400 4352."""
    second = "x: 2000, side: right-300, z: 100, size: 350 x 150 x 150, weight: 4, stage: shell, done: yes"
    heater = "heater: {of: electric, fed_by: box, lowest: 500 W, highest: 1500 W, switches: yes}"
    both = (box("")[0], f"{box(f'inverter: {gives}')[1]}\n  second: {{{second}, {heater}}}")
    found = told("feed-too-small", electric("box"), both, TO_BOX, (FUSE, f"fuse: {fuse}"), STRONG)
    assert [(one.kind, one.act) for one in found] == (
        [("advice", "Run one of heater and second at a time")] if by else []
    )
    assert all(f"each have enough of {by} alone; at once they may take {taken} %" in one.says for one in found)
    wide = (electric()[0], electric("box")[1].replace("highest: 1500 W", "highest: 1200..1600 W"))
    more = [one.kind for one in told("feed-too-small", wide, both, TO_BOX, (FUSE, "fuse: 400 A"), STRONG)]
    assert ("advice" in more) == (gives != "4000 W"), "at the most they take 3100 W"


COOLER = "of: window, heat: 1500 W, hatch: window, passes: 2000 cm2, drains: below floor"


@pytest.mark.parametrize(("rest", "cable", "kind", "says"), [
    ("fed_by: inlet, draw: 3 A", "breaker: 16 A, volts: 230", "", ""),
    ("fed_by: inlet, draw: 3 A", "breaker: 16 A", "", ""),
    ("draw: 3 A", "breaker: 2 A, volts: 230", "fix", "ac takes 690 W, and the wire way0 gives 460 W"),
    ("fed_by: shore, draw: 3 A", "breaker: 2..4 A, volts: 230", "unknown", "460 to 920 W without a break: perhaps"),
    ("fed_by: inlet, draw: 3 A", "volts: 230", "unknown", "ac takes 690 W, and nobody wrote what inlet gives"),
    ("fed_by: inlet, draw: 3 A", "breaker: unknown", "unknown", "how large the fuse or breaker of the wire way0 is"),
    ("fed_by: inlet", "breaker: 16 A, volts: 230", "unknown", "nobody wrote what ac takes of electricity"),
])  # fmt: skip
def test_a_cooler_is_held_against_what_feeds_it(rest: str, cable: str, kind: str, says: str) -> None:
    edits = (("# one more", AC.replace("CASE", f"{COOLER}, {rest}")), INLET, wired(f"from: inlet, to: ac, {cable}"))
    found = told("cooler-feed", *edits)
    assert [one.kind for one in found] == ([kind] if kind else []), [one.says for one in found]
    assert all(says in one.says for one in found)
    if "nobody wrote what inlet" in says:
        assert found[0].act.endswith("on the wire way0: breaker: 16 A, volts: 230")


@pytest.mark.parametrize("rest", ["draw: 3 A", "note: bare"])
def test_what_a_hot_day_counts_on_and_nobody_wrote_keeps_the_answer_back(rest: str) -> None:
    strong = COOLER.replace("1500", "3000").replace("2000", "4000")
    ac = ("# one more", AC.replace("CASE", f"{strong}, fed_by: mains, {rest}").replace(", note: bare", ""))
    (mild,), (hot,) = told("cooler-feed", ac), told("cooler-feed", ac, ("hottest_design: 22 C", "hottest_design: 44 C"))
    assert (mild.kind, mild.could_limit, hot.kind, hot.could_limit) == ("unknown", False, "unknown", True)


def plan(*things: PlannedSource, runs: tuple[PlannedLead, ...]) -> tuple[Section, dict[str, str]]:
    """Return a plan of some things and wires that all stand."""
    own = Section(sources=things, leads=runs)
    return own, dict.fromkeys([one.of for one in (*things, *runs)], "yes")


def lead(start: str, end: str, amps: float | None = None, volts: float | None = None) -> PlannedLead:
    name = f"{start}-{end}"
    given = tuple(None if one is None else exactly(one) for one in (amps, volts))
    return PlannedLead(f"wires[{name}]", name, start, end, *given)


CELL = PlannedSource("parts[cell]", "cell", exactly(3.6e6), "LiFePO4", volts=exactly(12.8))
CABLE = PlannedSource("openings[cable]", "cable", is_opening=True)
BOX = PlannedSource("parts[box]", "box", gives=exactly(2000.0))


def test_amperes_behind_an_inverter_are_not_those_before_it() -> None:
    """By hand: 5 A of 230 V are 1150 W; 10 A of 12.8 V through an inverter 109 to 115 W."""
    own, there = plan(CELL, BOX, runs=(lead("cell", "box", 10.0), lead("box", "ac", volts=230.0)))
    feed = feed_of_cooler(PlannedCooler("parts[ac]", "ac", Cooler(draw=exactly(5.0))), own, there)
    assert feed.most is not None and (feed.most.low, feed.most.high) == pytest.approx((108.8, 115.2))
    assert enough(Wanted(amps=exactly(5.0)), feed) == "no"
    narrow = narrowest(Wanted(amps=exactly(5.0)), feed)
    assert narrow is not None and narrow.is_before_inverter and narrow.name == "the wire cell-box"


@pytest.mark.parametrize("volts", [None, 230.0])
def test_amperes_behind_an_inverter_whose_volts_nobody_wrote_are_no_better(volts: float | None) -> None:
    own, there = plan(CELL, BOX, runs=(lead("cell", "box", 10.0), lead("box", "ac", volts=volts)))
    assert enough(Wanted(amps=exactly(5.0)), fed("ac", "", own, there)) == "no"


def test_an_inverter_passes_on_what_comes_from_outside() -> None:
    own, there = plan(CABLE, BOX, runs=(lead("cable", "box", 16.0, 230.0), lead("box", "ac", 10.0)))
    feed = fed("ac", "", own, there)
    assert (feed.share, feed.inverters, feed.volts) == (exactly(1.0), (), exactly(230.0))
    assert [one.gives.best for one in feed.limits] == [3680.0, 2000.0, 2300.0]


def test_behind_a_charger_is_a_bus_of_a_battery_and_no_more_than_it_gives() -> None:
    """By hand: 30 A of 12.8 V are 384 W, a fuse of 10 A there 128 W, and not 1200 W as of a cable."""
    charger = PlannedSource("parts[charger]", "charger", charges=exactly(30.0))
    own, there = plan(CABLE, charger, runs=(lead("cable", "charger", 16.0, 230.0), lead("charger", "stove", 10.0)))
    feed = fed("stove", "", own, there)
    assert [(one.kind, one.gives.best) for one in feed.limits] == [
        ("wire", 3680.0), ("charger", pytest.approx(384.0)), ("wire", pytest.approx(128.0)),
    ]  # fmt: skip
    assert enough(Wanted(amps=exactly(11.0)), feed) == "no" and enough(Wanted(amps=exactly(9.0)), feed) == "yes"


def test_amperes_behind_a_charger_are_not_those_of_its_cable() -> None:
    charger = PlannedSource("parts[charger]", "charger", charges=exactly(30.0))
    own, there = plan(CABLE, charger, runs=(lead("cable", "charger", 16.0, 230.0), lead("charger", "stove", 20.0)))
    assert enough(Wanted(amps=exactly(18.0)), fed("stove", "", own, there)) == "yes"


def test_of_two_things_that_are_perhaps_too_small_the_smaller_is_told() -> None:
    limits = tuple(Limit("", name, "wire", Band(100.0, low, 200.0)) for name, low in (("a", 50.0), ("b", 20.0)))
    told = narrowest(Wanted(exactly(120.0)), Feed(("x",), "battery", limits=limits))
    assert told is not None and told.name == "b"
    assert narrowest(Wanted(exactly(10.0)), Feed(("x",), "battery", limits=limits)) is None


def test_a_way_that_perhaps_stands_and_gives_enough_goes_before_one_that_stands_and_is_too_small() -> None:
    own, there = plan(CELL, CABLE, runs=(lead("cell", "stove", 1.0), lead("cable", "stove", 10.0)))
    there["openings[cable]"] = "perhaps"
    assert fed("stove", "", own, there, Wanted(exactly(500.0))).way == ("cable",)
    assert fed("stove", "", own, there, Wanted(exactly(5.0))).way == ("cell",)


@pytest.mark.parametrize(("is_certain", "best"), [(True, 1500.0), (False, 0.0)])
def test_what_perhaps_stands_and_is_perhaps_fed_most_likely_warms_nothing(is_certain: bool, best: float) -> None:
    unread = Feed(("box",), "battery", limits=(Limit("", "box", "inverter", Band(0.0, 0.0, inf, known=False)),))
    nowhere = Place(ANYWHERE, ANYWHERE, ANYWHERE, (0.0, 0.0, 0.0))
    planned = PlannedHeater("parts[stove]", "stove", nowhere, Heater(highest=exactly(1500.0)))
    heat = warmth_of(
        StandingHeater(planned, is_certain, "electric", "out", "out", None, None, None, feed=unread)
    ).highest
    assert (heat.best, heat.low, heat.high) == (best, 0.0, 1500.0)


def test_what_two_ways_feed_takes_as_much_as_by_the_one_of_higher_volts() -> None:
    """By hand: 2 A of 230 V for twelve hours through an inverter, and not of 12.8 V."""
    runs = (lead("cell", "box"), lead("box", "fridge", volts=230.0), lead("cell", "fridge"))
    own, there = plan(CELL, BOX, PlannedSource("parts[fridge]", "fridge"), runs=runs)
    drawn = PlannedDraw("parts[fridge]", "fridge", exactly(2.0), None, 1, None, exactly(1.0))
    found = drawn_beside(CELL, replace(own, draws=(drawn,)), there)
    assert found.high / 3600.0 == pytest.approx(2.0 * 230.0 * 12.0 / 0.85)


def test_a_cooler_whose_fuse_nobody_can_read_keeps_back_what_the_hot_day_says_and_not_more() -> None:
    strong = COOLER.replace("1500", "3000").replace("2000", "4000")
    ac = ("# one more", AC.replace("CASE", f"{strong}, draw: 3 A"))
    hot, cable = ("hottest_design: 22 C", "hottest_design: 44 C"), wired("from: shore, to: ac, breaker: unknown")
    (found,) = told("cooler-feed", ac, hot, cable)
    assert (found.kind, found.could_limit) == ("unknown", False)
    assert told("too-hot", ac, hot, cable) != []
    other = AC.replace("ac:", "  second:").replace("x: 2000", "x: 2500")
    two = ("# one more", f"{ac[1]}\n{other.replace('CASE', f'{strong}, draw: 3 A')}")
    both = wired("from: shore, to: ac, breaker: unknown", "from: shore, to: second, breaker: 16 A, volts: 230")
    (beside,) = told("cooler-feed", two, hot, both)
    assert (beside.where, beside.could_limit) == ("parts[ac]", False), "what cools for sure does not hang on it"

"""What a cable from outside gives: a supply of which nobody wrote the size, and a plug of the trailer for what is lent.

50 A at 120/240 V is the largest usual service of a trailer, 16 A at 230 V one plug of a site (common practice, no
source); volts times amperes are watts.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.heat.battery import drained_by
from boxwright.disciplines.heat.feeds import feed_of_cooler, wanted_by_cooler
from boxwright.disciplines.heat.parts import Cooler, PlannedCooler, PlannedDraw, PlannedLead, PlannedSource
from boxwright.disciplines.heat.plugs import plugged_in
from boxwright.units import Band, exactly
from tests.disciplines.heat.test_cooling import AC
from tests.disciplines.heat.test_feed_limits import (
    BOX,
    CABLE,
    CELL,
    FUSE,
    INLET,
    STRONG,
    TO_BOX,
    box,
    electric,
    lead,
    plan,
    told,
    wired,
)
from tests.disciplines.heat.test_feeds import heater_of
from tests.disciplines.heat.test_findings import edited, studied


@pytest.mark.parametrize(
    ("fed_by", "watts", "kind", "says"),
    [
        ("mains", 15_000, "limit", "mains gives no more than 12,000 W, what the largest usual supply gives"),
        ("mains", 12_000, "unknown", "nobody wrote what mains gives"),
        ("mains", 3_700, "unknown", "nobody wrote what mains gives"),
        ("mains", 3_600, "", ""),
        ("inlet", 15_000, "limit", "inlet gives no more than 12,000 W"),
        ("inlet-16A", 4_000, "limit", "inlet-16A gives no more than 3,840 W, by its name"),
        ("inlet-16A", 3_800, "unknown", "nobody wrote what inlet-16A gives"),
        ("inlet-63A", 15_000, "limit", "12,000 W, what the largest usual supply gives"),
    ],
)
def test_what_no_usual_supply_carries_is_said_on_a_warm_night_too(
    fed_by: str, watts: int, kind: str, says: str
) -> None:
    """By hand: 16 A of 240 V are 3840 W, 50 A of 240 V 12,000 W; one plug of a site carries 3680 W."""
    warm = ("coldest_design: -5 C", "coldest_design: 20 C")
    heater = (electric()[0], f"of: electric, fed_by: {fed_by}, lowest: 500 W, highest: {watts} W, switches: yes")
    named = (INLET[0], INLET[1].replace("  inlet:", f"  {fed_by if 'inlet' in fed_by else 'inlet'}:"))
    switches = ("holds: 17 C, switches: yes", "holds: 17 C")
    found = told("feed-too-small", warm, heater, switches, named)
    assert [one.kind for one in found] == ([kind] if kind else [])
    assert all(says in one.says for one in found)


def test_a_breaker_larger_than_any_usual_supply_makes_it_no_larger() -> None:
    """By hand: 70 A of 230 V are 16,100 W, and 50 A of 240 V, the largest usual supply, 12,000."""
    cable = wired("from: mains, to: heater, breaker: 70 A, volts: 230")
    for watts, expected in ((15_000, ["limit"]), (11_000, [])):
        heater = (electric()[0], f"of: electric, fed_by: mains, lowest: 500 W, highest: {watts} W")
        found = told("feed-too-small", heater, cable)
        assert [one.kind for one in found] == expected
        assert all("no more than 12,000 W" in one.says for one in found)


def test_a_breaker_further_on_tells_nothing_of_what_the_site_gives() -> None:
    """The night is then as cold as without the heater at the worst, and what is asked for ends it."""
    panel, site = box("rcd: unknown"), "from: inlet, to: box, volts: 230"
    on = "from: box, to: heater, breaker: 16 A"
    (found,) = told("feed-too-small", electric(), panel, INLET, wired(site, on), ("  warm: {from", "  worn: {from"),
                    ("to: heater, route", "to: bed, route"))  # fmt: skip
    assert found.kind == "unknown" and "nobody wrote what inlet gives" in found.says
    edits = (electric("inlet"), panel, INLET)
    (own_first,) = told("feed-too-small", *edits, wired("from: inlet, to: box", "from: box, to: heater, breaker: 10 A"))
    assert own_first.kind == "unknown" and "the wire way1 gives" in own_first.says
    bare, sized = heater_of(*edits, wired(site, on)), heater_of(*edits, wired(f"{site}, breaker: 16 A", on))
    assert not bare[0].is_fed and sized[0].is_fed and bare[1] < sized[1] - 3.0


PANEL = PlannedSource("parts[panel]", "panel")
CHARGER_OF_30 = PlannedSource("parts[charger]", "charger", charges=exactly(30.0))


@pytest.mark.parametrize(
    ("runs", "named", "gives"),
    [
        ((lead("cable", "panel", 30.0, 120.0), lead("panel", "outlets", 10.0)), "the wire panel-outlets", 1200.0),
        ((lead("cable", "panel", 8.0, 120.0), lead("panel", "outlets", 20.0)), "the wire cable-panel", 960.0),
        (
            (lead("cable", "panel", 30.0, 120.0), lead("panel", "outlets", 10.0), lead("panel", "charger", 20.0)),
            "the wire panel-outlets",
            1200.0,
        ),
        (
            (lead("cable", "panel", 30.0, 120.0), lead("panel", "outlets", 10.0), lead("panel", "desk", 15.0)),
            "the wire panel-desk",
            1800.0,
        ),
        ((lead("cable", "panel", 30.0, 120.0), lead("panel", "charger", 20.0)), "the wire panel-charger", 2400.0),
        ((lead("cable", "panel", 30.0, 120.0), lead("panel", "box"), lead("box", "outlets")), "box", 2000.0),
        ((lead("mains", "outlets", 10.0, 120.0),), "the wire mains-outlets", 1200.0),
        ((lead("cable", "panel", volts=120.0), lead("panel", "outlets")), "", 0.0),
        ((lead("cell", "box", 10.0), lead("box", "outlets", 1.0, 120.0)), "", 0.0),
    ],
)
def test_a_plug_of_the_trailer_carries_what_the_weakest_on_its_way_from_outside_lets_through(
    runs: tuple[PlannedLead, ...], named: str, gives: float
) -> None:
    """By hand: of 120 V 30 A are 3600 W, 20 A 2400, 15 A 1800, 10 A 1200 and 8 A 960."""
    own, _ = plan(CELL, CABLE, PANEL, CHARGER_OF_30, BOX, runs=runs)
    found = plugged_in(own)
    assert (found.name, found.gives.low) == (named, gives) if found is not None else named == ""


SPLIT = PlannedCooler("parts[ac]", "ac", Cooler(of="split", draw=exactly(5.0)))
BEHIND = (lead("cell", "box"), lead("box", "ac", volts=24.0))


@pytest.mark.parametrize(("runs", "most"), [((lead("cell", "ac"),), 720.0), (BEHIND, 1694.1)])
def test_a_battery_is_held_against_the_hours_its_cooler_runs_on_a_hot_day(
    runs: tuple[PlannedLead, ...], most: float
) -> None:
    """By hand: 5 A for ten hours are 720 Wh of 14.4 V, of 28.8 V behind an inverter 1440 / 0.85; 600 Wh are sure."""
    own, there = plan(CELL, BOX, runs=runs)
    cooled = ((SPLIT, feed_of_cooler(SPLIT, own, there)),)
    (found,) = drained_by(own, there, cooled, {}, exactly(36000.0))
    assert (found.takes.high / 3600.0, found.holds.low / 3600.0) == pytest.approx((most, 600.0), abs=0.1)
    assert drained_by(own, there, cooled, {}, exactly(3600.0)) == ()
    assert drained_by(own, there, cooled, {}, Band(3600.0, 0.0, 36000.0)) != (), "at the most it takes all"
    (low,) = drained_by(own, there, cooled, {"cell": Band(0.4, 0.4, 0.4)}, exactly(3600.0))
    assert low.holds.low == 0.0
    lamp = PlannedDraw("parts[lamp]", "lamp", None, exactly(30.0), 1, exactly(20.0 * 3600.0), None)
    beside = replace(own, draws=(lamp, PlannedDraw("parts[ac]", "ac", None, exactly(9e9), 1, None, None)))
    lit = {**there, "parts[lamp]": "yes", "parts[ac]": "yes"}
    (besides,) = drained_by(beside, lit, cooled, {}, exactly(3600.0))
    assert besides.besides.high / 3600.0 == pytest.approx(600.0), "its own draw is not counted twice"
    unread = replace(own, draws=(replace(lamp, watts=None),))
    assert drained_by(unread, lit, cooled, {}, exactly(3600.0))[0].unsaid == ("lamp",)


def test_a_cooler_whose_battery_may_be_empty_by_noon_cools_nothing_for_sure() -> None:
    """By hand: 60 A of 12.8 V are 768 W; of 3000 Ah 23 kWh are sure, of 100 Ah 0.77."""
    hot = ("hottest_design: 22 C", "hottest_design: 44 C")
    cools = "cools: {of: split, heat: 4000 W, fed_by: battery, draw: 60 A, drains: below floor}"
    ac = ("# one more", AC.replace("cools: {CASE}", cools))
    warms = []
    for hours in (3000, 100):
        slot = studied(edited(ac, hot, ("Ah: 100}", f"Ah: {hours}, max_amps: 100}}"))).asked_slots("sleep", "night")[0]
        assert slot.heat is not None and slot.heat.hot is not None
        warms.append(slot.heat.hot.warm.high)
        assert slot.heat.coolers[0].works == ("yes" if hours == 3000 else "perhaps")
    assert warms[0] + 3.0 < warms[1]


def cooled(*coolers: str, breaker: str = "16 A") -> list[str]:
    """Return what is said of what feeds coolers of the small rig that hang on one wire of 120 V."""
    each = [AC.replace("ac:", f"ac{number}:").replace("{CASE}", f"{{{one}}}") for number, one in enumerate(coolers)]
    edits = (("# one more", "\n  ".join(each)), box("rcd: unknown"), ("hottest_design: 22 C", "hottest_design: 44 C"))
    way = wired(f"from: mains, to: box, breaker: {breaker}, volts: 120")
    return [
        one.says for one in told("cooler-feed", *edits[:1], edits[2], way, ("parts:\n", f"parts:\n{edits[1][1]}\n"))
    ]


WINDOW = "of: split, heat: 2000 W, drains: below floor, fed_by: box, draw: "


@pytest.mark.parametrize(
    ("coolers", "breaker", "says"),
    [
        ((f"{WINDOW}6 A",), "16 A", ()),
        ((f"{WINDOW}2 A",), "16 A", ("takes 240 W and is written to take 2,000 W out of the room",)),
        ((f"{WINDOW}2.8 A",), "16 A", ()),
        ((f"{WINDOW}0 A",), "16 A", ("takes 0 W and is written to take 2,000 W",)),
        (
            (f"{WINDOW}9 A", f"{WINDOW}9 A"),
            "16 A",
            ("ac0 takes 1,080 W, and ac1 takes of the same", "ac1 takes 1,080 W"),
        ),
        ((f"{WINDOW}8 A", f"{WINDOW}8 A"), "16 A", ()),
        ((f"{WINDOW}9 A",), "unknown", ("nobody wrote how large the fuse or breaker of the wire way0 is",)),
    ],
)
def test_a_cooler_counts_no_more_than_its_plate_and_its_wire_can_be(
    coolers: tuple[str, ...], breaker: str, says: tuple[str, ...]
) -> None:
    """By hand: six watts of cold of each of 2 A at 120 V are 1440 W, of 2.8 A 2016; two of 9 A are 18 A of 16."""
    found = cooled(*coolers, breaker=breaker)
    assert len(found) == len(says) and all(word in one for word, one in zip(says, found, strict=True))


def test_two_heaters_or_coolers_of_one_line_may_run_at_once() -> None:
    """By hand: two of 1500 W are 3000 W, and 16 A of 230 V are 3680, 10 A 2300; two starts of 9 A are 18 A of 15."""
    two = ("x: 2600, side: left+100, z: 100, size: 350 x 150 x 150, weight: 4,",
           "x: 2600, side: left+100, z: 100, size: 350 x 150 x 150, weight: 4, count: 2,")  # fmt: skip
    for breaker, kinds in (("16 A", []), ("10 A", ["unknown"])):
        cable = wired(f"from: mains, to: heater, breaker: {breaker}, volts: 230")
        assert [one.kind for one in told("feed-too-small", electric("mains"), two, cable)] == kinds
    assert [one.kind for one in told("feed-too-small", two)] == ["unknown"]
    assert told("feed-too-small", two, ("fuse: 15 A", "fuse: 18 A")) == []
    ways = wired("from: box, to: heater", "from: inlet, to: heater, breaker: 16 A, volts: 230")
    both = (electric(), INLET, TO_BOX, (FUSE, "fuse: 200 A"), STRONG, box("inverter: 2000 W"), ways)
    assert heater_of(*both)[0].feed.way == ("box", "battery")
    assert heater_of(*both, two)[0].feed.way == ("inlet",), "the inverter carries one alone"
    pair = Cooler(of="split", draw=exactly(5.0))
    assert wanted_by_cooler(pair, 2).amps == Band(5.0, 5.0, 10.0, spread="interval")

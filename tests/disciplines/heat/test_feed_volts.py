"""Whether a heater is made for what feeds it: one of the mains gives nothing of a battery with no inverter between.

By hand: what a resistance gives goes with the square of the volts, so 12.8 V of 230 V are 0.3 % of its heat.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from boxwright.disciplines.heat.burner import fuel_named, runs_on, warmth_of
from boxwright.disciplines.heat.feeds import Current, Wanted, current_of, enough, fed, suits
from boxwright.disciplines.heat.parts import PlannedLead, PlannedSource, Section
from boxwright.units import exactly
from tests.disciplines.heat.test_feed_limits import FUSE, STRONG, TO_BOX, box, told
from tests.disciplines.heat.test_feeds import heater_of

DIESEL = "of: diesel, lowest: 900 W, highest: 4000 W"
CELL = PlannedSource("parts[cell]", "cell", exactly(3.6e6), "LiFePO4", volts=exactly(12.8))
BOX = PlannedSource("parts[box]", "box", gives=exactly(2000.0))
SUPPLY = PlannedSource("parts[supply]", "supply", charged_from="cable", charges=exactly(30.0))
CABLE = PlannedSource("openings[cable]", "cable", is_opening=True)
SOURCES = (CELL, BOX, SUPPLY, CABLE)


def electric(word: str, feed: str = "") -> tuple[str, str]:
    return DIESEL, f"of: {word}, {feed}lowest: 500 W, highest: 1500 W"


@pytest.mark.parametrize(
    ("word", "runs", "current"),
    [
        ("electric", "electric", "unsaid"),
        ("12 V", "electric", "battery"),
        ("12v", "electric", "battery"),
        ("electric 24 V DC", "electric", "battery"),
        ("48 volts", "electric", "battery"),
        ("electric 24 VDC", "electric", "battery"),
        ("electric 120 VAC", "electric", "mains"),
        ("mains", "electric", "mains"),
        ("shore power", "electric", "mains"),
        ("Electric, 120 V", "electric", "mains"),
        ("230V", "electric", "mains"),
        ("electric 110 volt ac", "electric", "mains"),
        ("kerosene 120 V", "burns", "mains"),
        ("diesel, 12 V", "burns", "battery"),
        ("power", "unknown", "unsaid"),
        ("ambient magic 12 V", "unknown", "battery"),
        ("", "unknown", "unsaid"),
    ],
)
def test_words_for_what_a_heater_runs_on_and_of_how_many_volts_it_is(word: str, runs: str, current: str) -> None:
    assert (runs_on(word), current_of(word)) == (runs, current)
    assert (fuel_named(word) != "") == (runs == "burns")


@pytest.mark.parametrize(
    ("way", "volts", "expected"),
    [
        (("cell",), None, {"mains": "no", "unsaid": "perhaps", "battery": "yes"}),
        (("cell",), 230.0, {"mains": "no", "unsaid": "perhaps", "battery": "yes"}),
        (("cell", "box"), None, {"mains": "yes", "unsaid": "yes", "battery": "perhaps"}),
        (("cable",), None, {"mains": "yes", "unsaid": "yes", "battery": "perhaps"}),
        (("cable", "supply"), None, {"mains": "no", "unsaid": "perhaps", "battery": "yes"}),
        ((), None, {"mains": "yes", "unsaid": "yes", "battery": "yes"}),
    ],
)
def test_what_a_way_brings_suits_what_is_made_for_it(
    way: tuple[str, ...], volts: float | None, expected: dict[Current, str]
) -> None:
    ends = (*way, "stove") if way else ()
    leads = tuple(
        PlannedLead(f"wires[{n}]", str(n), one, other, volts=exactly(volts) if volts is not None else None)
        for n, (one, other) in enumerate(pairwise(ends))
    )
    there = {one.of: "yes" for one in (*SOURCES, *leads)}
    found = fed("stove", "", Section(sources=SOURCES, leads=leads), there)
    assert {one: suits(Wanted(current=one), found) for one in expected} == expected
    assert suits(Wanted(), found) == "yes"


def test_of_two_ways_the_one_it_is_made_for_feeds_it() -> None:
    leads = (PlannedLead("wires[a]", "a", "cell", "stove"), PlannedLead("wires[b]", "b", "cable", "stove"))
    there = {one.of: "yes" for one in (*SOURCES, *leads)}
    own = Section(sources=SOURCES, leads=leads)
    ends = {one: fed("stove", "", own, there, Wanted(current=one)).ends for one in ("mains", "battery")}
    assert ends == {"mains": "outside", "battery": "battery"}


@pytest.mark.parametrize(
    ("word", "least", "likely"), [("230 V", 0.0, 0.0), ("electric", 0.0, 1500.0), ("12 V", 1500.0, 1500.0)]
)
def test_a_heater_of_the_mains_on_a_battery_warms_nothing_for_sure(word: str, least: float, likely: float) -> None:
    heater, _ = heater_of(electric(word), STRONG, (FUSE, "fuse: 200 A"))
    given = warmth_of(heater).highest
    assert (given.low, given.best, given.high) == (least, likely, 1500.0)
    assert heater.is_fed == (word == "12 V") and enough(heater.wanted, heater.feed) == "yes"


def test_behind_an_inverter_it_is_not_asked_and_a_wire_of_230_v_makes_no_mains() -> None:
    fuse = (FUSE, "fuse: 200 A")
    assert told("feed-volts", electric("mains"), box("inverter: 2000 W"), TO_BOX, fuse, STRONG,
                ("wires:\n", "wires:\n  on: {from: box, to: heater, volts: 230, done: yes}\n")) == []  # fmt: skip
    (found,) = told("feed-volts", electric("mains"), (FUSE, "fuse: 200 A, volts: 230"), STRONG)
    assert found.kind == "limit"


def test_a_burner_of_a_battery_that_is_fed_by_the_mains_is_asked_until_its_volts_are_written() -> None:
    lost = ("{from: battery, to: heater", "{from: battery, to: bed")
    (found,) = told("feed-volts", (DIESEL, DIESEL.replace("diesel", "diesel, fed_by: mains")), lost)
    assert found.kind == "unknown" and found.could_limit and "it may burn out" in found.says
    assert found.act.endswith("write of: diesel 120 V, or 230 V")
    assert told("feed-volts", (DIESEL, DIESEL.replace("diesel", "diesel 120 V, fed_by: mains")), lost) == []


AC = "ac: {x: 2000, side: left, z: 1200, size: 400 x 400 x 300, weight: 20, stage: shell, done: yes, cools: {of: %s}}"
WARM_SIDE = "heat: 1500 W, hatch: window, passes: 2000 cm2, fed_by: battery, draw: 40 A, drains: below floor"


@pytest.mark.parametrize(
    ("of", "kind"),
    [("window", "unknown"), ("portable", "unknown"), ("window 230 V", "fix"), ("window 12 V", ""), ("roof 12 V", "")],
)
def test_a_cooler_of_a_house_on_a_battery_is_asked_its_volts(of: str, kind: str) -> None:
    found = told("cooler-feed", ("# one more", AC % f"{of}, {WARM_SIDE}"), STRONG, (FUSE, "fuse: 200 A"))
    assert [one.kind for one in found] == ([kind] if kind else [])
    assert all("ac is fed by battery" in one.says and "may cool nothing" in one.says for one in found)

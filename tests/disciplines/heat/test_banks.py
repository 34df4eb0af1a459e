"""Batteries that wires join: one bank, as they stand; volts add up in series, ampere hours in parallel, by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.heat.battery import banked, drained_by, hung_on
from boxwright.disciplines.heat.feeds import fed, feed_of_cooler
from boxwright.disciplines.heat.parts import Cooler, PlannedCooler, PlannedJoin, PlannedSource, Section
from boxwright.disciplines.heat.telling import full_in_words
from boxwright.units import Band, exactly
from tests.disciplines.heat.test_feed_limits import kinds, lead, plan
from tests.disciplines.heat.test_feeds import heater_of
from tests.disciplines.heat.test_findings import edited, studied

WATT_HOUR = 3600.0


def cell(name: str, volts: float = 12.8, hours: float = 100.0, amps: float | None = 100.0) -> PlannedSource:
    most = exactly(amps) if amps is not None else None
    held = exactly(volts * hours * WATT_HOUR)
    return PlannedSource(f"parts[{name}]", name, held, "LiFePO4", volts=exactly(volts), most_amps=most)


def bank_of(
    *cells: PlannedSource, joins: tuple[str, ...], stands: str = "yes", wire: str = "yes"
) -> tuple[Section, dict[str, str], PlannedSource]:
    """Return a plan in which each battery is joined to the next and the last feeds a stove, and the bank they make."""
    own, there = plan(*cells, runs=(lead(cells[-1].name, "stove"),))
    pairs = zip(cells, cells[1:], joins, strict=False)
    joined = tuple(PlannedJoin(f"wires[{a.name}{b.name}]", a.name, b.name, how) for a, b, how in pairs)
    there |= {cells[-1].of: stands} | {one.of: wire for one in joined}
    there = {of: one for of, one in there.items() if one != "no"}
    found = banked(replace(own, joins=joined), there)
    return found, there, found.sources[0]


@pytest.mark.parametrize(
    ("cells", "joins", "volts", "hours", "amps"),
    [
        ((cell("a"), cell("b")), ("series",), 25.6, 100.0, 100.0),
        ((cell("a"), cell("b")), ("parallel",), 12.8, 200.0, 200.0),
        ((cell("a"), cell("b", hours=60.0, amps=50.0)), ("series",), 25.6, 60.0, 50.0),
        ((cell("a"), cell("b", hours=60.0, amps=50.0)), ("parallel",), 12.8, 160.0, 150.0),
        ((cell("a"), cell("b"), cell("c"), cell("d")), ("series", "parallel", "series"), 25.6, 200.0, 200.0),
        ((cell("a"), cell("b"), cell("c"), cell("d")), ("series", "series", "series"), 51.2, 100.0, 100.0),
    ],
)
def test_a_bank_holds_and_gives_what_its_batteries_do_together(
    cells: tuple[PlannedSource, ...], joins: tuple[str, ...], volts: float, hours: float, amps: float
) -> None:
    own, there, bank = bank_of(*cells, joins=joins)
    assert bank.volts is not None and bank.rated is not None and bank.most_amps is not None
    assert (bank.volts.best, bank.most_amps.low) == pytest.approx((volts, amps))
    assert bank.rated.best / WATT_HOUR == pytest.approx(volts * hours)
    feed = fed("stove", "", own, there)
    assert (feed.battery, feed.stands, feed.way[-1]) == ("parts[a]", "yes", "a")
    assert fed("stove", cells[-1].name, own, there).battery == "parts[a]"


@pytest.mark.parametrize(
    ("cells", "joins", "stands", "wire", "high"),
    [
        ((cell("a"), cell("b")), ("series",), "perhaps", "yes", 2560.0),
        ((cell("a"), cell("b")), ("parallel",), "yes", "perhaps", 2560.0),
        ((cell("a"), cell("b")), ("unknown",), "yes", "yes", 2560.0),
        ((cell("a"), cell("b", volts=25.6)), ("parallel",), "yes", "yes", 3840.0),
        ((cell("a"), cell("b")), ("series",), "no", "yes", 1280.0),
        ((cell("a"), cell("b")), ("series",), "yes", "no", 1280.0),
    ],
)
def test_a_bank_that_nobody_can_tell_holds_no_more_for_sure_than_one_battery(
    cells: tuple[PlannedSource, ...], joins: tuple[str, ...], stands: str, wire: str, high: float
) -> None:
    _, _, bank = bank_of(*cells, joins=joins, stands=stands, wire=wire)
    assert bank.rated is not None and bank.volts == exactly(12.8) and bank.most_amps == exactly(100.0)
    assert (bank.rated.low / WATT_HOUR, bank.rated.high / WATT_HOUR) == pytest.approx((1280.0, high))


def test_a_bank_of_which_one_label_is_not_whole_holds_nobody_knows_how_much() -> None:
    unread = replace(cell("b"), rated=Band(0.0, 0.0, float("inf"), known=False), volts=None, most_amps=None)
    for how in ("series", "parallel"):
        _, _, bank = bank_of(cell("a"), unread, joins=(how,))
        assert bank.rated is not None and not bank.rated.known and bank.most_amps is None


def test_a_bank_that_perhaps_is_none_may_be_as_weak_as_its_weakest() -> None:
    """By hand: 20 Ah of 12.8 V are 256 Wh: in series with 100 Ah both give out as they do."""
    _, _, bank = bank_of(cell("a"), cell("b", hours=20.0, amps=10.0), joins=("series",), stands="perhaps")
    assert bank.rated is not None and bank.rated.low / WATT_HOUR == pytest.approx(256.0)
    assert bank.most_amps == exactly(10.0)


def test_a_bank_is_as_full_as_its_emptiest_battery_and_as_weak_as_its_weakest_kind() -> None:
    own, there, bank = bank_of(cell("a"), replace(cell("b"), made_of="AGM"), joins=("parallel",))
    assert bank.made_of == "AGM" and bank.joined == ("b",)
    feeds = (("parts[stove]", fed("stove", "", own, there)),)
    full, empty = Band(1.0, 1.0, 1.0), Band(0.2, 0.2, 0.2)
    (hung,) = hung_on(own, there, feeds, {"a": full, "b": empty})
    assert hung.charge == empty
    split = PlannedCooler("parts[ac]", "ac", Cooler(of="split", draw=exactly(5.0), fed_by="b"))
    on = ((split, feed_of_cooler(split, own, there)),)
    (drained,) = drained_by(own, there, on, {"a": full, "b": empty}, exactly(86400.0))
    assert drained.charge == empty and drained.name == "a"


def test_what_charges_one_battery_of_a_bank_charges_all_of_it() -> None:
    charger = PlannedSource("parts[charger]", "charger", charges=exactly(20.0), charged_from="mains")
    own, there = plan(cell("a"), cell("b"), charger, runs=(lead("b", "stove"), lead("charger", "b")))
    there["wires[ab]"] = "yes"
    whole = banked(replace(own, joins=(PlannedJoin("wires[ab]", "a", "b", "parallel"),)), there)
    (hung,) = hung_on(whole, there, (("parts[stove]", fed("stove", "", whole, there)),), {})
    assert hung.charger == "charger"


def test_a_second_battery_carries_what_one_alone_does_not_as_long_as_it_stands() -> None:
    """By hand: 50 A of 12.8 V are 640 W, and twice that of two, of 1000."""
    heater = ("of: diesel, lowest: 900 W, highest: 4000 W", "of: electric, lowest: 100 W, highest: 1000 W")
    label, fuse = ("Ah: 100}", "Ah: 100, max_amps: 50}"), ("fuse: 15 A", "fuse: 200 A")
    second = "x: 500, side: left+100, z: 100, size: 300 x 200 x 200, weight: 12, stage: shell, done: yes"
    other = ("  # one more", f"  other: {{{second}, battery: {{kind: LiFePO4, volts: 12.8, Ah: 100, max_amps: 50}}}}")
    assert kinds(heater, label, fuse, other) == ["limit"]
    for rest, expected in (
        ("joins: series, stage: shell, done: yes", []),
        ("joins: parallel, stage: shell, done: yes", []),
        ("joins: nowise, stage: shell, done: yes", ["limit"]),
        ("joins: series, stage: later", ["limit"]),
    ):
        join = ("wires:\n", f"wires:\n  both: {{from: battery, to: other, {rest}}}\n")
        assert kinds(heater, label, fuse, other, join) == expected, rest


def test_a_headline_tells_how_full_the_emptiest_of_a_bank_is() -> None:
    second = "x: 500, side: left+100, z: 100, size: 300 x 200 x 200, weight: 12, stage: shell, done: yes"
    other = ("  # one more", f"  other: {{{second}, battery: {{kind: LiFePO4, volts: 12.8, Ah: 100}}}}")
    join = ("wires:\n", "wires:\n  both: {from: battery, to: other, joins: parallel, stage: shell, done: yes}\n")
    charge = ("tanks: {fuel: full}, parked", "tanks: {fuel: full}, charge: {battery: full, other: 70 %}, parked")
    heater, _ = heater_of(other, join, charge)
    assert heater.feed.battery == "parts[battery]"
    slot = studied(edited(other, join, charge)).asked_slots("sleep", "night")[0]
    assert slot.heat is not None and slot.heat.held[0].warmth is not None
    assert full_in_words(slot.heat.held[0].warmth.charge) == "70 % full"

"""Small rigs in which something clashes, strikes or blocks are told of just that; those with room say nothing.

Each is asked mirrored too, and comes to the same. The room is 4000 x 2000 x 2000 mm, the bunk 700 wide at its left.
"""

from __future__ import annotations

import pytest

from boxwright.finding import Use
from tests.disciplines.layout.small_rigs import CARGO, DONE, HEAVY, mirrored, rig_of, told
from tests.disciplines.layout.small_rigs import thing as p

INWARD = "swing: {hinge: front, opens: in, to: 90 deg}"
SLID = "slides: {to: front, by: 700, runs: inside}"
CUT = "cut: yes, done: yes, stage: all"
WINDOW = f"win: {{wall: left, x: %s, width: 400, z: 900, height: 400, {CUT}, unit: {{weight: 4, swing: %s}}}}\n"
OUT = "{hinge: top, opens: out, to: 60 deg}"
HATCH = f"hatch: {{wall: roof, x: 2600, width: 500, across: 500, side: left+300, {CUT}, swing: %s}}\n"
UP = "{hinge: front, opens: up, to: 90 deg}"
BILGE = HATCH.replace("hatch: {wall: roof", "bilge: {wall: floor") % "{hinge: left, opens: up, to: 90 deg}"
LID = f"{DONE}, swing: {{hinge: right, opens: up, to: 90 deg}}"
FRIDGE = f"{DONE}, swing: {{hinge: front, opens: left, to: 90 deg}}"
SLIDE = f"{DONE}, slides: {{to: left, by: 600}}"
WORKED_AT = f"{DONE}, keep_clear: {{front: 700, width: 700}}"
BOAT = "boat: {x: 2100, side: right, z: 0, size: 1000 x 400 x 400, weight: 5, kind: cargo, "
BOAT += "blocks: [{size: 1000 x 400 x 100}, {x: 400, size: 100 x 400 x 400}]}\n"
CAB = p("cab", 2100, "right", 0, "400 x 500 x 900")
ON_CAB = "kettle: {rides_on: cab, x: 2300, side: right-%s, z: %s, size: 150 x 150 x 200, weight: 1, kind: cargo}\n"
ON_BUNK = "{rides_on: bunk, x: %s, side: left+100, z: 650, size: %s, weight: 1, kind: cargo}\n"
AWNING = f"{DONE}, out: {{reach: 1500, pitch: %s deg, feet: ground}}"
BOXES = "boxes: {side: right, z: 0, size: 300 x 300 x 300, at: [2300, %s], weight: 5, stage: all, done: yes}\n"
RACKS = "racks: {side: right, z: 0, size: 500 x 300 x 300, at: [%s], weight: 5, stage: all, done: yes, "
RACKS += "blocks: [{size: 100 x 300 x 300}, {x: 400, size: 100 x 300 x 300}]}\n"
PILLOW = "pillow: {x: 2500, side: right, z: 0, size: 250 x 300 x 120, weight: 1, kind: cargo, when_sleeping: "
PILLOW += "{x: 150, side: left+100, z: %s}}\n"
STRIKES, SPACE, BED = "opening-strikes", "one-space", "sleeping-place"

TROUBLE: tuple[tuple[str, Use, str, str, dict[str, str]], ...] = (
    ("two cabinets", "tow", "fix", SPACE, {"parts": CAB + p("b", 2300, "right-200", 0, "250 x 400 x 800")}),
    ("a crate in a folded bunk", "tow", "fix", SPACE, {"parts": p("a", 1000, "left", 0, "400 x 250 x 700", CARGO)}),
    ("a rod in a boat", "tow", "fix", SPACE, {"parts": BOAT + p("rod", 2550, "right-100", 150, "400 x 50 x 50")}),
    ("two things outside", "tow", "fix", SPACE, {"parts": p("spare", -700, "centre", 0, "600 x 600 x 200") + p(
        "can", -500, "centre", 100, "200 x 300 x 400")}),
    ("a bag where a table stands at night", "sleep", "fix", SPACE, {"parts": p(
        "table", 3300, "centre", 400, "300 x 300 x 30", f"{DONE}, when_sleeping: {{x: 2200, side: right-100, z: 0}}"
    ) + p("bag", 2300, "right-200", 0, "300 x 300 x 300", CARGO)}),
    ("a pole through the canopy", "work", "fix", SPACE, {"parts": p(
        "awning", 600, "right+100", 1900, "1500 x 100 x 100", AWNING % 10
    ) + p("pole", 1000, "right+800", 1000, "50 x 50 x 900")}),
    ("a bunk folded about its free edge", "tow", "fix", SPACE, {
        "bunk": "folds: up, folded_depth: 120, hinge: {edge: right}",
        "parts": p("post", 500, "left+600", 700, "50 x 50 x 600")}),
    ("a cabinet through the wall", "tow", "fix", "through-shell", {"parts": p(
        "a", 2100, "right+90", 0, "300 x 400 x 800")}),
    ("a plug through the skin", "tow", "fix", "through-shell", {"parts": p(
        "plug", 2200, "right+60", 500, "100 x 100 x 100")}),
    ("a tank through the floor", "tow", "fix", "through-shell", {"parts": p(
        "tank", 1000, "right", -100, "300 x 400 x 300")}),
    ("a rack through the roof", "tow", "fix", "through-shell", {"parts": p(
        "rack", 1000, "centre", 1900, "700 x 900 x 200")}),
    ("boxes in one another", "tow", "fix", SPACE, {"parts": BOXES % 2450}),
    # two legs 400 apart each: set in one another by 200 they are free, the first and the third want one space
    ("racks of which the next but one meets", "tow", "fix", SPACE, {"parts": RACKS % "2000, 2200, 2400"}),
    ("racks written the other way round", "tow", "fix", SPACE, {"parts": RACKS % "2400, 2200, 2000"}),
    ("a crate by night in the bunk", "sleep", "stop", BED, {"parts": p(
        "a", 2500, "right", 0, "300 x 300 x 300", f"{CARGO}, when_sleeping: {{x: 900, side: left+200, z: 560}}")}),
    ("a crate by night on the bunk", "sleep", "stop", BED, {"parts": p(
        "a", 2500, "right", 0, "300 x 300 x 300", f"{CARGO}, when_sleeping: {{x: 900, side: left+200, z: 650}}")}),
    ("a pillow by night over the bunk", "sleep", "stop", BED, {"parts": PILLOW % 700}),
    ("a door in", "sleep", "fix", STRIKES, {"door": INWARD, "parts": p("a", 2900, "right-400", 0, "300 x 200 x 800")}),
    ("a door in, on a cot", "sleep", "fix", STRIKES, {"door": INWARD, "parts": p(
        "cot", 2700, "right-350", 0, "900 x 500 x 300")}),
    ("a door out", "sleep", "fix", STRIKES, {"parts": p("box", 2200, "right+300", 200, "300 x 200 x 300")}),
    ("a fridge pulled out", "sleep", "fix", STRIKES, {"parts": p(
        "fridge", 2200, "right", 0, "400 x 500 x 500", SLIDE) + p("post", 2250, "right-900", 0, "60 x 60 x 900")}),
    ("a fridge opened", "sleep", "fix", STRIKES, {"parts": p("fridge", 2100, "right", 0, "400 x 500 x 500", FRIDGE) + p(
        "post", 2400, "right-600", 0, "50 x 50 x 900")}),
    ("a lid under a shelf", "sleep", "fix", STRIKES, {"parts": p("chest", 2100, "right", 0, "400 x 500 x 500", LID) + p(
        "shelf", 2100, "right", 800, "400 x 300 x 30")}),
    ("a lid under the ceiling", "work", "fix", STRIKES, {"parts": p(
        "chest", 2100, "right", 0, "400 x 500 x 1700", LID)}),
    ("a tray into the wall", "work", "fix", STRIKES, {"parts": p(
        "tray", 2100, "right-300", 500, "400 x 500 x 50", f"{DONE}, slides: {{to: right, by: 400}}")}),
    ("a ramp on a rack", "work", "fix", STRIKES, {"parts": p("rack", 4300, "centre-200", -100, "200 x 400 x 300")}),
    ("a window on a ladder", "work", "fix", STRIKES, {"openings": WINDOW % (2600, OUT), "parts": p(
        "ladder", 2700, "left-300", 900, "50 x 50 x 300")}),
    ("a window in, on a shelf", "work", "fix", STRIKES, {
        "openings": WINDOW % (2600, "{hinge: top, opens: in, to: 90 deg}"),
        "parts": p("shelf", 2700, "left+100", 950, "200 x 150 x 30")}),
    ("a hatch under a rack", "work", "fix", STRIKES, {"openings": HATCH % UP, "parts": p(
        "rack", 2900, "left+300", "bows+300", "50 x 900 x 50")}),
    ("a hatch in, on a lamp", "work", "fix", STRIKES, {
        "openings": HATCH % "{hinge: left, opens: in, to: 20 deg}",
        "parts": p("lamp", 2700, "left+600", 1850, "100 x 100 x 100")}),
    ("a hatch in the floor", "work", "fix", STRIKES, {"openings": BILGE, "parts": p(
        "box", 2700, "left+400", 0, "200 x 200 x 200")}),
    ("a sliding door", "work", "fix", STRIKES, {"door": SLID, "parts": p("a", 2000, "right", 400, "120 x 120 x 400")}),
    ("a window of unwritten turn", "work", "unknown", STRIKES, {
        "openings": WINDOW % (2600, "{hinge: top, opens: in}"), "parts": p("a", 2700, "left", 1450, "99 x 99 x 30")}),
    ("drawers nobody wrote", "work", "unknown", STRIKES, {"parts": p(
        "cab", 2100, "right", 0, "400 x 500 x 900", f"{DONE}, carcass: {{ply: 12, drawers: [150, 200]}}"
    ) + p("stool", 2150, "right-600", 500, "200 x 200 x 350")}),
    ("a bunk on a cabinet", "sleep", "stop", BED, {"parts": p("a", 1000, "left+400", 0, "400 x 250 x 700")}),
    ("a bunk on a crate", "sleep", "stop", BED, {"parts": p("a", 1000, "left+400", 0, "400 x 250 x 700", CARGO)}),
    ("a lamp in its way", "sleep", "stop", BED, {"parts": p("lamp", 1000, "left+150", 1150, "100 x 100 x 100")}),
    ("a crate on it", "sleep", "stop", BED, {"parts": "crate: " + ON_BUNK % (900, "400 x 400 x 300")}),
    ("a shelf low over it", "sleep", "stop", BED, {
        "bunk": "mattress: 1900 x 700 x 100", "parts": p("shelf", 900, "left", 900, "600 x 400 x 30")}),
    ("a crate under its leg", "sleep", "stop", BED, {
        "bunk": "folds: up, folded_depth: 120, hinge: {edge: left}, "
        "legs: {at: [400, 1600], side: +325, size: 50 x 50 x 600}",
        "parts": p("crate", 380, "left+300", 0, "200 x 200 x 300", CARGO)}),
    ("a panel built up", "tow", "fix", "kept-clear", {"parts": p(
        "panel", 2200, "right", 900, "300 x 120 x 400", WORKED_AT) + p("a", 2100, "right-500", 0, "400 x 300 x 900")}),
    ("a shelf over a burner", "tow", "fix", "kept-clear", {"parts": p(
        "burner", 2200, "right", 800, "300 x 300 x 100", f"{DONE}, keep_clear: {{above: 500}}"
    ) + p("shelf", 2200, "right", 1200, "300 x 300 x 30")}),
    ("a heater at the wall", "tow", "fix", "gap-small", {"parts": p(
        "heater", 2200, "right-50", 0, "300 x 200 x 200", f"{DONE}, keep_clear: 100")}),
    ("a kettle over the edge", "tow", "fix", "held-by-nothing", {"parts": CAB + ON_CAB % (440, 900)}),
    ("a kettle in the air", "tow", "fix", "held-by-nothing", {"parts": CAB + ON_CAB % (200, 1000)}),
    ("a case too wide", "tow", "fix", "sticks-out", {"parts": CAB + (
        "case: {inside: cab, x: 2120, side: right-20, z: 20, size: 300 x 600 x 300, weight: 3, kind: cargo}\n")}),
    ("a pallet too wide", "tow", "advice", "way-in", {"parts": p("a", 2200, "centre", 0, "800 x 1500 x 700", HEAVY)}),
    ("an engine behind a beam", "tow", "advice", "way-in", {"parts": p(
        "engine", 2200, "centre", 0, "600 x 500 x 700", HEAVY) + p("beam", 3400, "centre", 0, "100 x 2000 x 150")}),
    ("a window behind the bunk", "tow", "advice", "window-covered", {"openings": WINDOW % (800, OUT)}),
    ("a bunk hinged in front", "sleep", "unknown", "opening-unsaid", {
        "bunk": "folds: up, folded_depth: 120, hinge: {edge: front}"}),
    ("a door of no swing", "work", "unknown", "opening-unsaid", {"door": "note: shut"}),
    ("a bunk of unknown depth", "tow", "unknown", "opening-unsaid", {
        "bunk": "folds: up, folded_depth: unknown, hinge: {edge: left}"}),
    ("a bag of no size", "tow", "unknown", "place-unknown", {"parts": p("bag", 2200, "right", 0, "unknown", CARGO)}),
)  # fmt: skip

CLEAR: tuple[tuple[str, Use, dict[str, str]], ...] = (
    ("as it is", "sleep", {}),
    ("cabinets side by side", "tow", {"parts": CAB + p("b", 2500, "right", 0, "50 x 400 x 800")}),
    ("let into the lining", "tow", {"parts": p("a", 2100, "right+8", 0, "300 x 400 x 800")}),
    ("a door in with room", "sleep", {"door": INWARD, "parts": p("a", 3310, "right", 0, "300 x 200 x 800")}),
    ("cargo inside of a door that opens out", "sleep", {"parts": p("a", 2600, "right-10", 0, "300 x 200 x 99", CARGO)}),
    ("a fridge pulled out", "sleep", {"parts": p("fridge", 2100, "right", 0, "400 x 500 x 500", SLIDE) + p(
        "a", 2100, "left", 0, "380 x 800 x 900")}),
    ("a lid under a higher shelf", "sleep", {"parts": p("chest", 2100, "right", 0, "400 x 500 x 500", LID) + p(
        "shelf", 2100, "right", 1010, "400 x 300 x 30")}),
    ("a crate under the bunk", "sleep", {"parts": p("a", 1000, "left+100", 0, "400 x 250 x 590", CARGO)}),
    ("a lamp at its head", "sleep", {"parts": p("lamp", 2010, "left", 1000, "99 x 99 x 99")}),
    ("a pillow, and a bag at the foot", "sleep", {
        "parts": "pillow: " + ON_BUNK % (150, "300 x 500 x 120") + "bag: " + ON_BUNK % (1900, "90 x 400 x 300")}),
    ("a hatch before a rack", "work", {"openings": HATCH % UP, "parts": p(
        "rack", 3200, "left+300", "bows+300", "50 x 900 x 50")}),
    ("a fixed skylight", "work", {"openings": HATCH % "{opens: no}", "parts": p(
        "panel", 2500, "left+200", "bows+40", "900 x 900 x 40")}),
    ("a sliding door", "work", {"door": SLID, "parts": p("can", 1700, "right", 400, "120 x 120 x 400")}),
    ("a panel with room", "tow", {"parts": p("panel", 2200, "right", 900, "300 x 120 x 400", WORKED_AT) + p(
        "a", 3000, "right-900", 0, "400 x 300 x 900")}),
    ("a heater off the wall", "tow", {"parts": p(
        "heater", 2200, "right-110", 0, "300 x 200 x 200", f"{DONE}, keep_clear: 100")}),
    ("a kettle at the edge", "tow", {"parts": CAB + ON_CAB % (410, 900)}),
    ("an engine rolled under a beam", "tow", {"parts": p("engine", 2200, "centre", 0, "600 x 500 x 700", HEAVY) + p(
        "beam", 3400, "centre", 750, "100 x 2000 x 150")}),
    ("a rod over a boat", "tow", {"parts": BOAT + p("rod", 2650, "right-100", 150, "400 x 50 x 50")}),
    ("a tray up to the wall", "work", {"parts": p(
        "tray", 2100, "right-300", 500, "400 x 500 x 50", f"{DONE}, slides: {{to: right, by: 290}}")}),
    ("boxes side by side", "tow", {"parts": BOXES % 2600}),
    ("racks set in one another", "tow", {"parts": RACKS % "2000, 2150, 2300"}),
    ("a pillow by night on the bunk", "sleep", {"parts": PILLOW % 650}),
    ("a pillow by night on the mattress", "sleep", {
        "bunk": "folds: up, folded_depth: 250, hinge: {edge: left}, mattress: 1900 x 700 x 100",
        "parts": PILLOW % 750}),
    ("a pillow of the cabinet by night on the bunk", "sleep", {"parts": CAB + PILLOW.replace(
        "{x: 2500, side: right, z: 0", "{inside: cab, x: 2150, side: right-50, z: 100") % 650}),
    ("a window beside the bunk", "tow", {"openings": WINDOW % (2100, OUT)}),
)  # fmt: skip


@pytest.mark.parametrize(("use", "kind", "code", "more"), [pytest.param(*one[1:], id=one[0]) for one in TROUBLE])
def test_what_clashes_strikes_or_blocks_is_told_and_mirrored_alike(
    use: Use, kind: str, code: str, more: dict[str, str]
) -> None:
    text = rig_of(**more)
    found = told(text, use)
    assert {(one, rule) for one, rule, _ in found if one != "advice" or kind == "advice"} == {(kind, code)}
    assert told(mirrored(text), use) == found


@pytest.mark.parametrize(("use", "more"), [pytest.param(*one[1:], id=one[0]) for one in CLEAR])
def test_what_has_room_says_nothing_and_neither_mirrored(use: Use, more: dict[str, str]) -> None:
    text = rig_of(**more)
    assert told(text, use) == told(mirrored(text), use) == frozenset()

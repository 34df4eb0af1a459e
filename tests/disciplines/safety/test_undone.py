"""What a half-done thing leaves behind, and what is hot beside a bed: limits from both sides, in every use."""

from __future__ import annotations

import pytest

from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.study.verdict import touches
from tests.disciplines.safety.test_findings import JUDGED_ON, edited, worked
from tests.disciplines.safety.test_ways import result

MORE = "  # one more"
LOADS = "loads:\n  road"
NIGHT = "for: [sleep, leave]"
BATTERY = "  battery: {x: 100, side: left, z: 0, size: 300 x 200 x 200, weight: 20, stage: %s, done: %s}\n"
LAMP = "  lamp: {x: 2500, side: centre, z: 1500, size: 100 x 100 x 50, weight: 1, stage: %s, done: %s}"
WIRE = "wires:\n  light: {from: %s, to: %s, gauge: 2.5 mm2, stage: shell, done: %s%s}\nloads:\n  road"
INLET = "  vent: {wall: left, x: 3000, width: 100, z: 100, height: 100, stage: shell, cut: yes, done: yes"
FLOOR = "wall: floor, x: 2600, side: right, width: 100, across: 100"
HEATER = "  heater: {x: %s, side: left, z: 0, size: 300 x 200 x 200, weight: 5, stage: shell, done: %s, %s}"
DIESEL = "heater: {of: diesel}"


def said(code: str, *edits: tuple[str, str], use: str = "sleep") -> list[Finding]:
    """Return what one rule says of the small rig with some edits, in one use."""
    text = edited(*edits, (NIGHT, "for: [sleep, leave, work]"))
    assert read_rig(text).problems == ()
    return [one for one in worked(text, use) if one.code == f"safety/{code}"]


def strung(
    source: str = "battery", end: str = "lamp", done: str = "yes", rest: str = "",
    battery: tuple[str, str] = ("shell", "yes"), lamp: tuple[str, str] = ("later", "no"),
) -> tuple[tuple[str, str], ...]:  # fmt: skip
    """Return the edits that string a wire from a battery to a lamp."""
    return (MORE, BATTERY % battery + LAMP % lamp), (LOADS, WIRE % (source, end, done, rest))


@pytest.mark.parametrize("use", ["sleep", "leave", "work"])
def test_a_bare_end_that_is_fed_stops_whoever_sleeps_works_or_walks_away(use: str) -> None:
    (one,) = said("live-end", *strung(), use=use)
    assert (one.kind, one.uses) == ("stop", (use,))
    assert touches(one, use)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("edits", "kinds"),
    [
        (strung(rest=", ends: capped"), []),
        (strung(rest=", ends: taped"), ["stop"]),
        (strung(battery=("later", "no")), []),
        (strung(lamp=("shell", "yes")), []),
        (strung(end="left x1500 z500"), ["stop"]),
        (strung(lamp=("shell", "part")), ["unknown"]),
        (strung(battery=("shell", "part")), ["unknown"]),
        (strung(done="part"), ["unknown"]),
        (strung(done="part", lamp=("shell", "yes")), ["unknown"]),
        (strung(done="no"), []),
        (strung(source="somewhere"), ["unknown"]),
        (strung(source="vent"), ["limit"]),
    ],
)
def test_an_end_is_live_where_it_is_fed_and_not_surely_joined(
    edits: tuple[tuple[str, str], ...], kinds: list[str]
) -> None:
    found = [one for one in worked(edited(*edits), "sleep") if one.code == "safety/live-end"]
    assert [one.kind for one in found] == kinds
    assert all(one.protects is (one.kind != "limit") for one in found)


@pytest.mark.parametrize(
    ("rest", "kind", "words"),
    [
        (", fuse: 10 A", "limit", "its fuse stays out until it is capped"),
        (", fuse: none", "stop", "bare, it sparks and burns"),
        (", fuse: unknown", "stop", "bare, it sparks and burns"),
        (", fuse: 10 A, volts: 120", "stop", "bare, it kills"),
        (", breaker: 15 A, volts: 230", "stop", "bare, it kills"),
        ("", "stop", "bare, it sparks and burns"),
    ],
)
def test_a_fuse_to_take_out_limits_and_the_mains_kill(rest: str, kind: str, words: str) -> None:
    (one,) = said("live-end", *strung(rest=rest))
    assert one.kind == kind
    assert words in one.says


def test_what_comes_by_a_cable_from_outside_is_dead_until_it_is_plugged_in() -> None:
    (one,) = said("live-end", *strung(source="vent"))
    assert "nothing may be plugged in at vent until it is capped" in one.says


@pytest.mark.parametrize(
    ("use", "wall", "kind", "words"),
    [
        ("sleep", "", "fix", "in the skin, with a bare edge"),
        ("sleep", FLOOR, "limit", "in the floor, for a foot in the dark"),
        ("work", FLOOR, "limit", "in the floor, for a foot in the dark"),
        ("leave", FLOOR, "fix", "in the floor, for rain, vermin and hands"),
        ("leave", "", "fix", "in the skin, for rain, vermin and hands"),
    ],
)
def test_a_hole_is_told_by_where_it_is_and_who_is_there(use: str, wall: str, kind: str, words: str) -> None:
    half = INLET.replace("done: yes", "done: part")
    if wall:
        half = half.replace("wall: left, x: 3000, width: 100, z: 100, height: 100", wall)
    (one,) = said("open-hole", (INLET, half), use=use)
    assert (one.kind, one.uses) == (kind, (use,))
    assert words in one.says


@pytest.mark.parametrize("use", ["sleep", "leave", "work"])
def test_half_a_shelf_is_told_in_every_use_but_on_the_road(use: str) -> None:
    shelf = "  shelf: {x: 3000, side: left, z: 900, size: 400 x 200 x 20, weight: 2, stage: shell, done: part}"
    (one,) = said("half-done", (MORE, shelf), use=use)
    assert (one.kind, one.uses) == ("fix", (use,))
    slots = study(read_rig(edited((MORE, shelf))).rig, JUDGED_ON).asked_slots("tow")
    assert not any(one.code == "safety/half-done" for slot in slots for one in slot.findings)


def test_in_the_plan_nothing_is_half_done() -> None:
    shelf = "  shelf: {x: 3000, side: left, z: 900, size: 400 x 200 x 20, weight: 2, stage: shell, done: part}"
    found = study(read_rig(edited((MORE, shelf))).rig, JUDGED_ON, stage=0, ticked=False).findings("sleep")
    assert not any(one.code == "safety/half-done" for one in found)


@pytest.mark.parametrize(("wants", "kinds"), [("424", []), ("425", ["stop"]), ("300..425", ["stop"])])
def test_a_bed_is_as_far_from_what_is_hot_as_its_leaflet_wants(wants: str, kinds: list[str]) -> None:
    """By hand: 100 mm along the trailer, 400 mm across it and 100 mm in height are 424.3 mm."""
    found = said("hot-surface", (MORE, HEATER % ("100", "yes", f"{DIESEL}, keep_clear: {wants}")))
    assert [one.kind for one in found] == kinds
    assert all(one.number == pytest.approx(0.42426, abs=1e-4) and one.margin is not None and one.margin < 0.0
               for one in found)  # fmt: skip


@pytest.mark.parametrize(
    ("x", "done", "own", "kinds"),
    [
        ("100", "yes", DIESEL, ["unknown"]),
        ("100", "part", DIESEL, ["unknown"]),
        ("100", "no", DIESEL, []),
        ("100", "yes", "heater: {of: electric}", ["unknown"]),
        ("100", "yes", "burns: wood", ["unknown"]),
        ("100", "part", f"{DIESEL}, keep_clear: 425", ["stop"]),
        ("unknown", "yes", f"{DIESEL}, keep_clear: 50", ["unknown"]),
        ("-500", "yes", DIESEL, []),
        ("3316", "yes", DIESEL, []),
        ("3300", "yes", DIESEL, ["unknown"]),
    ],
)
def test_what_is_hot_within_a_metre_is_asked_what_it_wants(x: str, done: str, own: str, kinds: list[str]) -> None:
    """By hand: the bed ends at 2400 mm; 412 mm over and across leave 911 mm along it of one metre."""
    found = said("hot-surface", (MORE, HEATER % (x, done, own)))
    assert [one.kind for one in found] == kinds
    assert all(one.protects for one in found)


@pytest.mark.parametrize("own", [DIESEL, "heater: {of: electric}", "burns: wood"])
@pytest.mark.parametrize("engine", ["yes", "unknown", "no"])
def test_what_burns_stays_hot_whether_or_not_it_makes_electricity_too(own: str, engine: str) -> None:
    found = said("hot-surface", (MORE, HEATER % ("100", "yes", f"{own}, generator: {engine}, keep_clear: 425")))
    assert [one.kind for one in found] == ["stop"]
    asked = said("gas-alarm", (MORE, HEATER % ("100", "yes", f"burns: butane, generator: {engine}")))
    assert [one.kind for one in asked] == [
        one.kind for one in said("gas-alarm", (MORE, HEATER % ("100", "yes", "burns: butane")))
    ]
    assert asked


def test_what_is_hot_is_kept_apart_from_what_only_burns() -> None:
    electric = result((MORE, HEATER % ("100", "yes", "heater: {of: electric}")))
    assert [one.kept.name for one in electric.hot] == ["heater"] and electric.flames == ()


@pytest.mark.parametrize(("x", "is_told"), [("4200", False), ("4199", True), ("unknown", False)])
def test_an_alarm_is_judged_beside_a_flame_that_is_inside_alone(x: str, is_told: bool) -> None:
    """The room ends at 4200 mm: what begins there is outside, and the alarm at 2600 mm is 1.5 m from it either way."""
    flame = HEATER % (x, "yes", f"{DIESEL}, keep_clear: 100")
    near = ("warner: {x: 2600", "warner: {x: 3600")
    found = said("alarm-place", (MORE, flame), near)
    told = [one.says for one in found if one.where == "parts[warner]"]
    usual = "to the side of heater; usual is 1000 mm to 3000 mm (EN 50292, as leaflets of alarms quote it)"
    assert bool(told) is is_told and all(one.endswith(usual) for one in told)


@pytest.mark.parametrize(("wants", "kinds"), [("424", []), ("425", ["stop"])])
def test_what_hangs_over_a_bed_is_as_far_as_what_stands_under_it(wants: str, kinds: list[str]) -> None:
    """By hand: as below, 100 mm over the bed, whose top is at 600 mm."""
    hung = HEATER.replace("z: 0", "z: 700") % ("100", "yes", f"{DIESEL}, keep_clear: {wants}")
    assert [one.kind for one in said("hot-surface", (MORE, hung))] == kinds


@pytest.mark.parametrize(
    ("hinge", "turn", "left"),
    [("front", 30, (0.25, 1.7)), ("top", 30, (0.6, 0.8)), ("bottom", 60, (0.6, 0.8)), ("both sides", 60, (0.25, 1.7))],
)
def test_a_leaf_leaves_what_is_clear_beside_it(hinge: str, turn: int, left: tuple[float, float]) -> None:
    """By hand: half of 700 x 1800 mm, less 100 mm of frame: one leaf at 30 degrees, two or a ramp at 60, leave half."""
    swings = f"swing: {{hinge: {hinge}, opens: out, to: {turn} deg}}}}"
    swing = ("swing: {hinge: front, opens: out, to: 90 deg}}", swings)
    clear = result(swing).exits[0].clear
    assert clear is not None
    assert tuple(side.best for side in clear) == pytest.approx(left)


@pytest.mark.parametrize(
    ("turn", "ends", "is_lost"),
    [("20..90", (0.139, 0.6), False), ("20", (0.139, 0.139), True), ("20..30", (0.139, 0.25), True)],
)
def test_a_leaf_that_may_open_wide_is_asked_about_and_not_lost(
    turn: str, ends: tuple[float, float], is_lost: bool
) -> None:
    """By hand: 700 sin 20 = 239 mm, at 90 degrees all of it, each less 100 mm of frame; 300 let one out."""
    swing = ("swing: {hinge: front, opens: out, to: 90 deg}}", f"swing: {{hinge: front, opens: out, to: {turn} deg}}}}")
    door = result(swing).exits[0]
    assert door.clear is not None
    assert (door.clear[0].low, door.clear[0].high) == pytest.approx(ends, abs=0.001)
    assert door.is_too_small is is_lost
    assert door.may_be_too_small

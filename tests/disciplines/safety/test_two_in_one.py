"""What is two things at once: two ways out in one place, an engine with an alarm, a wire fed from its far end."""

from __future__ import annotations

import pytest

from boxwright.disciplines.layout.bodies import standing_bodies
from boxwright.disciplines.layout.tonight import beds_tonight, up_or_down
from boxwright.rig.compose import read_rig
from tests.disciplines.layout.small_rigs import mirrored
from tests.disciplines.safety.test_findings import RIG, edited, worked

DOOR = next(line for line in RIG.splitlines() if line.startswith("  door:"))
WARNER = next(line for line in RIG.splitlines() if line.startswith("  warner:"))
WINDOW = next(line for line in RIG.splitlines() if line.startswith("  window:"))
RAMP = (
    "  ramp: {wall: rear, side: centre, width: 1800, z: 0, height: 1900, stage: shell, cut: yes, done: yes, "
    "release: inside, swing: {hinge: bottom, opens: out, to: 90 deg}}"
)
WICKET = (
    "  wicket: {wall: rear, side: %s, width: 700, z: 50, height: 1700, stage: shell, cut: yes, done: yes, "
    "release: inside, swing: {hinge: left, opens: out, to: 90 deg}}"
)
DONE = "weight: 5, stage: shell, done: yes"
BATTERY = f"  cell: {{x: 100, side: left, z: 0, size: 300 x 200 x 200, {DONE}, battery: {{volts: 12, Ah: 100}}}}"
LAMP = "  lamp: {x: 2500, side: centre, z: 1500, size: 100 x 100 x 50, weight: 1, stage: %s}"
IN = "shell, done: yes"
THING = "  {name}: {{x: {x}, side: left, z: 0, size: 300 x 200 x 300, {more}}}"


def told(text: str, code: str, use: str = "sleep") -> list[tuple[str, str, str]]:
    """Return kind, place and words of what one rule says."""
    return [(one.kind, one.where, one.says) for one in worked(text, use) if one.code == f"safety/{code}"]


def with_thing(name: str, more: str = DONE, x: object = 3000) -> str:
    """Return the small rig with one more thing."""
    return edited(("  # one more", THING.format(name=name, x=x, more=more)))


def test_a_door_in_a_ramp_is_no_second_way_out() -> None:
    text = edited((DOOR, f"{RAMP}\n{WICKET % 'centre'}"), (WINDOW, ""))
    ((kind, where, says),) = told(text, "two-ways-out")
    assert (kind, where) == ("stop", "openings[wicket]")
    assert "the only way out of bed is ramp" in says
    assert says.endswith("wicket is in the same place of the rear wall as ramp, and one fire shuts both")


@pytest.mark.parametrize(("apart", "are_two"), [(0, True), (5, True), (-5, False), (-600, False)])
def test_openings_side_by_side_are_two_and_those_that_overlap_are_one(apart: int, are_two: bool) -> None:
    """Laid out by hand: the window of the rig ends at 1400 mm, the other begins ``apart`` behind that."""
    other = WINDOW.replace("  window:", "  other:").replace("x: 600", f"x: {1400 + apart}")
    text = edited((WINDOW, f"{WINDOW}\n{other}"), (DOOR, ""))
    assert (told(text, "two-ways-out") == []) is are_two


def test_openings_over_each_other_or_in_two_walls_are_two() -> None:
    over = WINDOW.replace("  window:", "  other:").replace("z: 700", "z: 1300")
    across = WINDOW.replace("  window:", "  other:").replace("wall: left", "wall: right")
    for other in (over, across):
        assert told(edited((WINDOW, f"{WINDOW}\n{other}"), (DOOR, "")), "two-ways-out") == []


@pytest.mark.parametrize("written", ["now: screwed shut with ply", "now: unknown", "now: leaf is at the joiner's"])
def test_a_ticked_way_out_of_which_something_else_is_written_is_asked(written: str) -> None:
    text = edited((WINDOW, WINDOW.replace("done: yes", f"done: yes, {written}")))
    ((kind, where, says),) = told(text, "opens-from-inside")
    assert (kind, where) == ("unknown", "openings[window]")
    assert f"beside it is written {written}" in says


@pytest.mark.parametrize("written", ["now: shut", "now: Fitted", "now: in place", "now: closed"])
def test_what_goes_with_a_tick_is_not_asked(written: str) -> None:
    assert worked(edited((WINDOW, WINDOW.replace("done: yes", f"done: yes, {written}"))), "sleep") == ()


def test_a_way_out_that_is_ticked_and_not_cut_is_asked_and_no_release_makes_up_for_it() -> None:
    uncut = DOOR.replace("cut: yes", "cut: no")
    ((kind, where, says),) = told(edited((DOOR, uncut)), "opens-from-inside")
    assert (kind, where) == ("unknown", "openings[door]")
    assert "beside it is written cut: no" in says
    latch = (
        "  latch: {x: 3000, side: left, z: 0, size: 50 x 50 x 50, weight: 1, stage: shell, done: yes, release: door}"
    )
    text = edited((DOOR, uncut.replace("inside", "none")), ("  # one more", latch))
    assert [kind for kind, _, _ in told(text, "opens-from-inside")] == ["stop"]


@pytest.mark.parametrize(
    ("marks", "kind"),
    [
        ("cut: no", "unknown"),
        ("by: builder, cut: no", "unknown"),
        ("by: builder, now: boarded up", "unknown"),
        ("by: builder", ""),
        ("stage: later, cut: no", ""),
    ],
)
def test_a_door_that_is_there_from_the_first_and_is_not_cut_is_asked(marks: str, kind: str) -> None:
    """One that goes in later is not in, and no more is asked of it."""
    text = edited((DOOR, DOOR.replace("stage: shell, cut: yes, done: yes", marks)))
    assert [one for one, _, _ in told(text, "opens-from-inside")] == ([kind] if kind else [])


def test_whoever_works_is_asked_about_the_one_door_that_may_not_open() -> None:
    at_work = ("for: [sleep, leave]", "for: [sleep, leave, work]")
    plain = edited((WINDOW, ""), at_work)
    assert told(plain, "way-out-at-work", "work") == []
    text = plain.replace(DOOR, DOOR.replace("done: yes", "done: yes, now: screwed shut"))
    ((kind, where, says),) = told(text, "way-out-at-work", "work")
    assert (kind, where) == ("unknown", "openings[door]")
    assert "door counts as a way out, and beside it is written now: screwed shut" in says


@pytest.mark.parametrize("besides", ["alarm: CO, expires: 2032-01", "release: door", "puts_out: ABC, expires: 2032-01"])
def test_an_engine_stays_one_whatever_else_it_is(besides: str) -> None:
    text = with_thing("quiet-box", f"{DONE}, generator: yes, {besides}")
    assert [(kind, where) for kind, where, _ in told(text, "generator-near")] == [("stop", "parts[quiet-box]")]


def test_a_heater_that_warns_stays_hot() -> None:
    heater = f"{DONE}, alarm: CO, expires: 2032-01, heater: {{lowest: 900 W, highest: 2000 W, of: diesel}}"
    text = with_thing("burner", heater, x=2500)
    assert [(kind, where) for kind, where, _ in told(text, "hot-surface")] == [("unknown", "parts[burner]")]
    assert [where for _, where, _ in told(text, "alarm-place")] == ["parts[warner]", "parts[burner]"]


def test_the_name_of_an_alarm_makes_no_flame_or_engine_of_it() -> None:
    for name in ("stove-alarm", "generator-alarm"):
        text = with_thing(name, f"{DONE}, alarm: CO, expires: 2032-01")
        assert {code for code in ("hot-surface", "generator-near", "gas-alarm") if told(text, code)} == set()


def wired(wire: str, lamp: str = "later", more: str = "") -> str:
    """Return the small rig with a battery, a lamp and one wire."""
    wires = f"wires:\n  light: {{{wire}, stage: shell, done: yes}}\nloads:\n  road"
    return edited(("  # one more", f"{BATTERY}\n{LAMP % lamp}{more}"), ("loads:\n  road", wires))


def test_a_wire_written_from_its_far_end_is_live_all_the_same() -> None:
    for wire in ("from: cell, to: lamp", "from: lamp, to: cell"):
        ((kind, where, says),) = told(wired(wire), "live-end")
        assert (kind, where) == ("stop", "wires[light]")
        assert says.startswith("wire light is fed from cell and its end at lamp is joined to nothing")
        assert told(wired(wire, lamp=IN), "live-end") == []
        assert told(wired(f"{wire}, ends: capped"), "live-end") == []


def test_a_charger_that_is_not_in_yet_leaves_a_wire_fed_by_its_battery() -> None:
    charger = (
        "\n  filler: {x: 500, side: left, z: 0, size: 100 x 100 x 100, weight: 1, stage: later, charger: {amps: 10}}"
    )
    ((kind, _, says),) = told(wired("from: filler, to: cell", more=charger), "live-end")
    assert kind == "stop"
    assert "fed from cell and its end at filler" in says


def test_a_panel_feeds_a_wire_by_day_and_an_inlet_one_that_is_plugged_in() -> None:
    small = "size: 100 x 100 x 100, weight: 1, stage"
    sun = f"\n  sun: {{x: 500, side: left, z: 0, {small}: shell, done: yes, panel: {{watts: 100}}}}"
    control = f"\n  box: {{x: 900, side: left, z: 0, {small}: later, charger: {{amps: 10}}}}"
    ((kind, _, says),) = told(wired("from: box, to: sun", more=sun + control), "live-end")
    assert kind == "stop"
    assert "is fed from sun and its end at box" in says
    ((kind, _, says),) = told(wired("from: box, to: vent, volts: 230", more=sun + control), "live-end")
    assert kind == "limit"
    assert "nothing may be plugged in at vent" in says
    assert told(wired("from: box, to: vent, volts: 12", more=sun + control), "live-end") == []


def test_a_wire_of_which_nobody_wrote_where_it_starts_is_not_called_live_for_that() -> None:
    assert told(wired("to: cell", lamp=IN), "live-end") == []


def test_a_wire_that_may_be_fed_from_both_its_ends_is_asked_once() -> None:
    two = BATTERY.replace("cell", "other").replace("x: 100", "x: 500")
    text = wired("from: cell, to: other", more=f"\n{two}").replace(
        "stage: shell, done: yes}\nloads", "stage: shell}\nloads"
    )
    assert [(kind, where) for kind, where, _ in told(text, "live-end")] == [("unknown", "wires[light]")]


@pytest.mark.parametrize(("at", "kind"), [("", "limit"), (", at: cell", "limit"), (", at: lamp", "stop")])
def test_only_a_fuse_that_is_not_at_the_open_end_makes_it_dead(at: str, kind: str) -> None:
    for wire in ("from: cell, to: lamp", "from: lamp, to: cell"):
        assert [one for one, _, _ in told(wired(f"{wire}, fuse: {{amps: 10{at}}}"), "live-end")] == [kind]


@pytest.mark.parametrize(
    "name", ["petrol-can", "jerrycan", "gas-bottle", "jerry-can-2", "propane-tank", "petrol", "lpg-bottle"]
)
def test_a_can_or_a_bottle_is_known_by_its_name(name: str) -> None:
    for use in ("sleep", "leave"):
        ((kind, where, says),) = told(with_thing(name), "fuel-inside", use)
        assert (kind, where) == ("unknown", f"parts[{name}]")
        assert "by its name" in says
        assert told(with_thing(name, x=-900), "fuel-inside", use) == []
    assert [kind for kind, _, _ in told(with_thing(name, x="unknown"), "fuel-inside")] == ["unknown"]
    assert told(with_thing(name, f"{DONE}, tank: {{of: water, volume: 5}}"), "fuel-inside") == []


@pytest.mark.parametrize("name", ["gas-bottle-locker", "jerrycan-rack", "petrol-funnel", "can-opener"])
def test_what_only_holds_a_can_is_none(name: str) -> None:
    assert told(with_thing(name), "fuel-inside") == []


def test_what_is_out_of_date_beside_one_that_is_not_is_put_right_and_stops_nothing() -> None:
    old = f"{DONE}, expires: 2020-01"
    for key, kind in (
        ("alarm: CO", "fix"),
        ("alarm: gas", "stop"),
        ("alarm: [CO, gas]", "stop"),
        ("puts_out: A", "fix"),
    ):
        found = told(with_thing("spare", f"{old}, {key}"), "out-of-date")
        assert [(one, where) for one, where, _ in found] == [(kind, "parts[spare]")], key
    last_day = with_thing("spare", f"{old}, alarm: CO").replace("expires: 2032-01", "expires: 2026-06-01")
    assert [one for one, _, _ in told(last_day, "out-of-date")] == ["fix"]  # good to the end of the day it is judged on
    perhaps = with_thing("spare", f"{old}, alarm: CO").replace(
        "done: yes, alarm: CO, expires: 2032-01", "alarm: CO, expires: 2032-01"
    )
    assert [one for one, where, _ in told(perhaps, "out-of-date") if where == "parts[spare]"] == ["stop"]
    undated = with_thing("spare", f"{old}, alarm: CO").replace("alarm: CO, expires: 2032-01", "alarm: CO")
    assert "stop" in [kind for kind, _, _ in told(undated, "out-of-date")]


@pytest.mark.parametrize(("crate", "kind"), [("out: [crate], ", "unknown"), ("", "")])
def test_an_alarm_on_what_is_left_outside_is_asked(crate: str, kind: str) -> None:
    place = "rides_on: crate, x: +0, side: +0, z: +400"
    carrier = "  crate: {x: 2600, side: left, z: 0, size: 400 x 400 x 400, weight: 5, kind: cargo}"
    text = edited(
        (WARNER, f"{carrier}\n{WARNER.replace('x: 2600, wall: left, z: 1400', place)}"),
        ("night: {cargo: all, ", f"night: {{cargo: all, {crate}"),
    )
    assert [one for one, _, _ in told(text, "co-alarm")] == ([kind] if kind else [])


@pytest.mark.parametrize(
    ("place", "kind"),
    [
        ("x: 2600, wall: left, z: 1400", ""),
        ("x: -300..300, wall: left, z: 1400", "unknown"),
        ("x: 4000..4600, wall: left, z: 1400", "unknown"),
        ("x: 2600, side: centre, z: 1400..2300", "unknown"),
        ("x: 2600, side: centre, z: -400..900", "unknown"),
        ("x: 4300, wall: left, z: 1400", "stop"),
        ("x: -200, side: left, z: 1400", "stop"),
    ],
)
def test_an_alarm_that_may_hang_outside_is_asked_whichever_wall_it_may_be_beyond(place: str, kind: str) -> None:
    """The room is 4200 mm long and 2000 mm high, the alarm 120 mm long."""
    text = edited((WARNER, WARNER.replace("x: 2600, wall: left, z: 1400", place)))
    assert [one for one, _, _ in told(text, "co-alarm")] == ([kind] if kind else [])


@pytest.mark.parametrize(("more", "kinds"), [(DONE, []), ("weight: 5, kind: cargo", ["fix"])])
def test_of_two_ways_to_a_door_the_wider_one_counts(more: str, kinds: list[str]) -> None:
    """A board a foot high from wall to wall: nobody walks through, and what is built in is climbed over."""
    board = f"  board: {{x: 2600, side: left, z: 0, size: 40 x 2000 x 300, {more}}}"
    assert [kind for kind, _, _ in told(edited(("  # one more", board)), "way-blocked")] == kinds


BENCH = "  bench: {x: 2600, side: %s, z: %s, size: 1600 x 400 x 500, %s}"


@pytest.mark.parametrize(
    ("z", "more", "kinds"),
    [
        ("0", DONE, []),
        ("0..60", DONE, []),
        ("0..150", DONE, ["unknown"]),  # as high as 650, and 600 is climbed
        ("150", DONE, ["fix"]),
        ("0", "weight: 5, kind: cargo", ["fix"]),
        ("0", DONE.replace("yes", "part"), ["unknown"]),
    ],
)
def test_a_door_behind_a_bench_is_a_way_out_as_far_as_one_climbs(z: str, more: str, kinds: list[str]) -> None:
    """The door is in the right wall, and the bench before all of it."""
    text = edited(("  # one more", BENCH % ("right", z, more)))
    for there in (text, mirrored(text)):
        assert [kind for kind, _, _ in told(there, "way-blocked")] == kinds


FLAP = "  flap: {x: %s, side: %s, z: %s, size: %s, folds: up, folded_depth: 60, hinge: {edge: %s}, %s}"


@pytest.mark.parametrize(
    ("place", "more", "way", "kinds"),
    [
        # down it is before the door, up beside it under the window of nobody's wall
        ((2600, "right", 700, "1600 x 900 x 30", "right"), DONE, "door", ["unknown"]),
        ((2600, "right", 700, "1600 x 900 x 30", "right"), f"{DONE}, when_sleeping: out", "door", []),
        # what is written of the night holds
        ((2600, "right", 700, "1600 x 900 x 30", "right"),
         f"{DONE}, when_sleeping: {{x: 2600, side: right, z: 700}}", "door", ["fix"]),
        # down it leaves the window free, up it is before it
        ((500, "left", 150, "1000 x 900 x 30", "left"), DONE, "window", ["unknown"]),
        ((1700, "left", 150, "1000 x 900 x 30", "left"), DONE, "window", []),
    ],
)  # fmt: skip
def test_a_flap_that_nobody_sleeps_on_may_be_up_or_down_at_night(
    place: tuple[object, ...], more: str, way: str, kinds: list[str]
) -> None:
    text = edited(("  # one more", FLAP % (*place, more)), ("bed: {x: 500, side: centre", "bed: {x: 500, side: right"))
    for there in (text, mirrored(text)):
        found = [(kind, where) for kind, where, _ in told(there, "way-blocked")]
        assert found == [(kind, f"openings[{way}]") for kind in kinds]


def test_a_leaf_is_down_that_is_slept_on_or_carries_the_bed_or_may_be_one() -> None:
    flap = FLAP % (500, "left", 150, "1000 x 900 x 30", "left", DONE)
    pad = f"  pad: {{rides_on: flap, x: +0, side: +0, z: +30, size: 900 x 800 x 50, {DONE}}}"
    more = "  guest: {weight: 60, height: 1600}"
    for sleeps, people, is_loose in (("bed", "", True), ("flap", "", False), ("pad", "", False), ("bed", more, False)):
        text = edited(("  # one more", f"{flap}\n{pad}"), ("sleeps: bed}", f"sleeps: {sleeps}}}\n{people}"))
        if people:
            text = text.replace("people: [owner]", "people: [owner, guest]")
        rig = read_rig(text).rig
        there = tuple((one.of, "yes") for one in rig.layout.fitted)
        beds = beds_tonight(rig.layout.fitted, dict(there), rig.people)
        bodies = standing_bodies(rig.layout.fitted, there, "night")  # type: ignore[arg-type]
        found = up_or_down(bodies, rig.layout.fitted, beds, rig.people)
        assert (found != bodies) is is_loose, sleeps
        if is_loose:
            assert [one.stands for one in found if one.name == "pad"] == ["perhaps", "perhaps"], "it goes with the flap"

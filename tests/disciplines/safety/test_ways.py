"""Ways out beyond the trios: what counts as one, what opens it, who lies where, and what petrol and dates do."""

from __future__ import annotations

import math
import random
from dataclasses import replace
from datetime import date

import pytest

from boxwright.disciplines.layout.hole_left import widest_left
from boxwright.disciplines.safety.findings import RULES, two_ways_out, way_blocked
from boxwright.disciplines.safety.result import Result
from boxwright.disciplines.safety.sourced import law_of, word_means
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band, HeaderUnits
from tests.disciplines.safety.test_findings import JUDGED_ON, edited, worked

DOOR = "stage: shell, cut: yes, done: yes, release: inside, swing"
MORE = "  # one more"


def kinds(*edits: tuple[str, str], use: str = "sleep") -> set[tuple[str, str, str]]:
    """Return kind, code and place of all that safety says of the small rig with some edits."""
    return {(one.kind, one.code.removeprefix("safety/"), one.where) for one in worked(edited(*edits), use)}


def stops(*edits: tuple[str, str]) -> set[tuple[str, str]]:
    """Return the code and place of all that forbids sleeping in the small rig with some edits."""
    return {(code, where) for kind, code, where in kinds(*edits) if kind == "stop"}


def result(*edits: tuple[str, str], use: str = "sleep") -> Result:
    """Return what safety knows of the small rig with some edits."""
    (slot,) = [one for one in study(read_rig(edited(*edits)).rig, JUDGED_ON, ticked=True).slots if one.use == use]
    assert slot.safety is not None
    return slot.safety


@pytest.mark.parametrize("word", ["key", "tool"])
def test_a_door_that_takes_a_key_or_a_tool_shuts_people_in(word: str) -> None:
    found = stops((DOOR, DOOR.replace("inside", word)))
    assert found == {("opens-from-inside", "openings[door]"), ("two-ways-out", "openings[door]")}


@pytest.mark.parametrize(
    ("ticked", "kind"), [("done: yes", ""), ("done: part", "stop"), ("done: no", "stop"), ("cut: yes", "stop")]
)
def test_a_way_out_that_stands_perhaps_counts_as_absent(ticked: str, kind: str) -> None:
    old = "stage: shell, cut: yes, done: yes, egress"
    found = kinds((old, f"stage: shell, {ticked}, egress"))
    assert {one for one, code, _ in found if code == "two-ways-out"} == ({kind} if kind else set())


def test_a_third_way_makes_up_for_one_that_is_lost() -> None:
    ramp = "  ramp: {wall: rear, side: centre, width: 1500, z: 0, height: 1800, stage: shell, cut: yes, done: yes, "
    ramp += "release: inside, swing: {hinge: bottom, opens: out, to: 90 deg}}\n  vent:"
    lost = (DOOR, DOOR.replace("inside", "none"))
    assert ("two-ways-out", "openings[door]") in stops(lost)
    assert stops(lost, ("  vent:", ramp)) == {("opens-from-inside", "openings[door]")}
    assert [one.number for one in result(("  vent:", ramp)).exits] == [1, 2, 3]


def test_what_nobody_means_to_leave_by_is_no_way_out() -> None:
    assert len(result().exits) == 2
    unmeant = ("release: inside, swing: {hinge: front", "release: none, egress: no, swing: {hinge: front")
    assert stops(unmeant) == {("two-ways-out", "parts[bed]")}


def test_a_leaf_too_small_for_anybody_is_no_way_out() -> None:
    flap = "  flap: {wall: left, x: 3300, width: %s, z: 100, height: 400, stage: shell, cut: yes, done: yes, "
    flap += "swing: {hinge: top, opens: out, to: 90 deg}}\n  vent:"
    assert len(result(("  vent:", flap % "299")).exits) == 2
    assert len(result(("  vent:", flap % "301")).exits) == 3


def test_petrol_endangers_where_it_stands_perhaps_and_where_it_stands_nobody_knows() -> None:
    inside = ("can: {x: -500", "can: {x: 100")
    assert kinds(inside) == {("stop", "fuel-inside", "parts[can]")}
    half = ("weight: 2, stage: shell, done: yes", "weight: 2, stage: shell, done: part")
    assert ("unknown", "fuel-inside", "parts[can]") in kinds(inside, half)
    assert ("unknown", "fuel-inside", "parts[can]") in kinds(("can: {x: -500", "can: {x: unknown"))
    assert kinds(inside, ("of: petrol", "of: diesel")) == set()
    # An empty can holds vapour: it stops nobody, and is told of. One that held diesel is not.
    empty = ("night: {cargo: all, tanks: {can: full}", "night: {cargo: all, tanks: {can: empty}")
    assert kinds(inside, empty) == {("advice", "fuel-inside", "parts[can]")}
    assert kinds(inside, empty, ("of: petrol", "of: diesel")) == set()
    assert kinds(inside, use="leave") == {("stop", "fuel-inside", "parts[can]")}


def test_petrol_half_through_the_front_wall_is_inside() -> None:
    assert kinds(("can: {x: -500", "can: {x: -150")) == {("stop", "fuel-inside", "parts[can]")}


@pytest.mark.parametrize(("x", "said"), [("1519", True), ("1521", False), ("3519", False), ("3521", True)])
def test_the_co_alarm_hangs_one_to_three_metres_from_a_flame(x: str, said: bool) -> None:
    """The stove ends at 400 mm below; seen from above the alarm is at the same side, so that only x counts."""
    stove = f"{MORE}\n  stove: {{x: 100, side: left, z: 0, size: 420 x 300 x 100, weight: 5, stage: shell, done: yes, "
    found = kinds((MORE, f"{stove}burns: wood}}"), ("warner: {x: 2600", f"warner: {{x: {x}"))
    assert (("advice", "alarm-place", "parts[warner]") in found) is said


def test_an_electric_heater_is_no_flame() -> None:
    stove = "  stove: {x: 900, side: centre, z: 0, size: 300 x 300 x 100, weight: 5, stage: shell, done: yes, "
    stove += "burns: %s}"
    assert result((MORE, stove % "electric")).flames == ()
    assert [one.kept.burns for one in result((MORE, stove % "wood")).flames] == ["wood"]


def test_who_has_no_bed_yet_lies_on_a_stand_in() -> None:
    cot = "  cot: {x: 600, side: centre, z: 0, size: 1900 x 600 x 300, weight: 5, stage: shell, done: yes, "
    cot += "until: shell, when_sleeping: {x: 600, side: centre, z: 0}}"
    later = ("weight: 60, stage: shell, done: yes", "weight: 60, stage: later")
    assert ("unknown", "who-sleeps-where", "people[owner]") in kinds(later)
    assert kinds(later, (MORE, cot)) == set()
    (bed,) = result(later, (MORE, cot)).beds
    assert (bed.of, bed.sleepers) == ("parts[cot]", ("owner",))
    assert {one.of for one in result(later, (MORE, cot)).aisles or ()} == {"parts[cot]"}


GUEST = (
    ("sleeps: bed}", "sleeps: bed}\n  guest: {weight: 70, height: 1650, sleeps: bed}"),
    ("people: [owner]", "people: [owner, guest]"),
)
LATER = ("weight: 60, stage: shell, done: yes", "weight: 60, stage: later")
COT = "size: 1900 x 600 x 300, weight: 5, stage: shell, done: %s, until: shell"


def test_two_cots_on_one_line_are_one_place_and_the_other_is_asked_for() -> None:
    cots = f"  cots: {{x: 600, side: left, z: 0, {COT % 'yes'}, count: 2, when_sleeping: {{x: 600, side: left, z: 0}}}}"
    asked = ("unknown", "who-sleeps-where", "parts[cots]")
    assert asked in kinds(LATER, (MORE, cots), *GUEST)
    assert asked not in kinds(LATER, (MORE, cots))
    # Two who share one wide bed have their place.
    assert not any(code == "who-sleeps-where" for _, code, _ in kinds(*GUEST))
    two = ("weight: 60, stage: shell, done: yes", "weight: 60, stage: shell, done: yes, count: 2")
    assert ("unknown", "who-sleeps-where", "parts[bed]") in kinds(two, *GUEST)


def test_of_two_stand_ins_each_sleeper_has_one() -> None:
    cots = "\n".join(
        f"  {name}: {{x: 600, side: {side}, z: 0, {COT % 'yes'}, when_sleeping: {{x: 600, side: {side}, z: 0}}}}"
        for name, side in (("cot-left", "left"), ("cot-right", "right"))
    )
    found = result(LATER, (MORE, cots), *GUEST)
    assert [(one.name, one.sleepers) for one in found.beds] == [("cot-left", ("owner",)), ("cot-right", ("guest",))]
    assert {(one.of, one.sleepers) for one in found.aisles or ()} == {
        ("parts[cot-left]", ("owner",)),
        ("parts[cot-right]", ("guest",)),
    }
    assert not any(code == "who-sleeps-where" for _, code, _ in kinds(LATER, (MORE, cots), *GUEST))


def test_a_stand_in_that_is_there_perhaps_is_no_bed() -> None:
    cot = f"  cot: {{x: 600, side: left, z: 0, {COT % 'part'}, when_sleeping: {{x: 600, side: left, z: 0}}}}"
    assert ("unknown", "who-sleeps-where", "people[owner]") in kinds(LATER, (MORE, cot))


def test_only_the_home_country_rules_how_it_is_built() -> None:
    assert law_of(("US-NC", "UK"), date(2026, 6, 1)).is_known
    assert not law_of(("UK", "US-NC"), date(2026, 6, 1)).is_known
    assert not law_of((), date(2026, 6, 1)).is_known
    assert law_of(("US",), date(2026, 6, 1)).country == "US"


def test_what_a_part_is_by_a_word_of_its_name() -> None:
    assert word_means("fire-extinguisher") == "extinguisher"
    assert word_means("generator-2000") == "generator"
    assert word_means("stove") == word_means("stove-pipe-shelf") == "flame"
    assert word_means("hobby-horse") == word_means("lights") == ""
    assert (word_means("gas-bottle"), word_means("gas-bottle-box")) == ("fuel", "holder")


def test_nothing_is_said_for_the_road() -> None:
    assert all(list(rule(result(("can: {x: -500", "can: {x: 100"), use="tow"), None)) == [] for rule in RULES)  # type: ignore[arg-type]


@pytest.mark.parametrize(("x", "limit"), [("1519", 1.0), ("3521", 3.0)])
def test_the_limit_that_is_passed_is_the_one_that_is_told(x: str, limit: float) -> None:
    stove = f"{MORE}\n  stove: {{x: 100, side: left, z: 0, size: 420 x 300 x 100, weight: 5, stage: shell, done: yes, "
    said = worked(edited((MORE, f"{stove}burns: wood}}"), ("warner: {x: 2600", f"warner: {{x: {x}")), "sleep")
    assert [one.limit for one in said if one.code == "safety/alarm-place"] == [limit]


def test_an_alarm_of_gas_hangs_near_the_floor() -> None:
    low, high = (f"wall: left, z: {z}" for z in ("300", "310"))
    gas = ("alarm: CO, ", "alarm: [CO, gas], ")
    assert ("advice", "alarm-place", "parts[warner]") not in kinds(gas, ("wall: left, z: 1400", low))
    assert ("advice", "alarm-place", "parts[warner]") in kinds(gas, ("wall: left, z: 1400", high))


@pytest.mark.parametrize(
    ("old", "new", "act", "minutes", "why"),
    [
        (DOOR, DOOR.replace("inside", "none"), "Make door open from inside", 120, "door does not open from inside"),
        (DOOR, DOOR.replace("inside", "key"), "Make door open from inside", 120, "door opens with a key only"),
        (DOOR, DOOR.replace("done: yes", "done: part"), "Look whether door is in", 2, "door is not ticked"),
        (DOOR, DOOR.replace("done: yes", "done: no"), "Build in door", 120, "door is not in"),
        (MORE, "  chest: {x: 3200, side: right, z: 0, size: 900 x 300 x 1500, weight: 30, stage: shell, done: yes}",
         "Clear the way to door", 10, "the way to door is shut by chest"),
    ],
)  # fmt: skip
def test_what_is_lost_of_two_ways_out_says_why_and_what_to_do(
    old: str, new: str, act: str, minutes: int, why: str
) -> None:
    (one,) = [one for one in worked(edited((old, new)), "sleep") if one.code == "safety/two-ways-out"]
    assert one.act.startswith(act) and one.minutes == minutes
    assert why in one.says


@pytest.mark.parametrize(
    ("clear", "counts"),
    [("{width: 150, height: 150}", False), ("{width: 200, height: 500}", False), ("{width: 500, height: 299}", False),
     ("{width: 301, height: 500}", True)],
)  # fmt: skip
def test_what_nobody_gets_through_is_no_way_out(clear: str, counts: bool) -> None:
    found = kinds(("clear: {width: 700, height: 500}", f"clear: {clear}"))
    assert (("stop", "two-ways-out", "openings[window]") in found) is not counts


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("smoke: {x: 2000, side: centre", "smoke: {x: -400, side: centre", "smoke-alarm"),
        ("warner: {x: 2600, wall: left, z: 1400", "warner: {inside: bed, x: +10, side: +10, z: +10", "co-alarm"),
        ("extinguisher: {x: 3000, wall: right", "extinguisher: {x: 3000, side: right+400", "extinguisher"),
    ],
)
def test_what_hangs_outside_or_is_shut_in_protects_nobody(old: str, new: str, code: str) -> None:
    assert ("stop", code) in {(kind, one) for kind, one, _ in kinds((old, new))}
    assert not any(one == code for _, one, _ in kinds())


BIN = "  bin: {x: %s, side: right+%s, z: 0, size: 300 x 300 x 400, weight: 3, stage: shell, done: yes}"


def test_a_door_that_strikes_something_before_anybody_gets_through_is_no_way_out() -> None:
    struck = kinds((MORE, BIN % (3650, 330)))
    assert ("stop", "two-ways-out", "openings[door]") in struck
    assert ("stop", "two-ways-out", "openings[door]") not in kinds((MORE, BIN % (3300, 1100)))
    tight = kinds((MORE, BIN % (3300, 600)))
    assert ("unknown", "way-blocked", "openings[door]") in tight
    assert ("stop", "two-ways-out", "openings[door]") not in tight


def test_a_window_that_opens_a_hands_breadth_is_no_way_out() -> None:
    roll = "  roll: {x: 500, side: left-300, z: 1150, size: 1000 x 200 x 200, weight: 10, stage: shell, done: yes}"
    assert ("stop", "two-ways-out", "openings[window]") in kinds((MORE, roll))


def test_what_a_struck_leaf_leaves_is_what_is_clear_between_it_and_the_edge_it_shuts_against() -> None:
    for far in (400, 600, 850):
        more = (MORE, BIN % (3650, far))
        (door,) = [one for one in result(more).exits if one.way.name == "door"]
        slots = study(read_rig(edited(more)).rig, JUDGED_ON, ticked=True).slots
        (slot,) = [one for one in slots if one.use == "sleep"]
        assert slot.layout is not None
        (hit,) = [one for one in slot.layout.struck if one.of == "openings[door]"]
        assert door.struck is not None and door.struck.to == "parts[bin]"
        # Own arithmetic: at 30 degrees half of 700 mm is clear, less 40 mm for how thick the leaf may be.
        clear = 0.7 * math.sin(min(hit.reached, math.pi / 2.0))
        assert (door.struck.metre.low, door.struck.metre.high) == pytest.approx((clear - 0.04, clear))


WINDOW = "  window: {wall: left, x: 600, width: 800, z: 700, height: 600, stage: shell, cut: yes, done: yes, "
HATCH = "  hatch: {wall: roof, x: 900, width: 600, across: 600, side: centre, stage: shell, cut: yes, done: yes, "


@pytest.mark.parametrize(
    ("more", "kind"),
    [
        ("", ""),
        ("solar: {x: 700, side: centre, z: 2080, size: 1200 x 1000 x 40", "stop"),
        ("shelf: {x: 800, side: centre, z: 1900, size: 900 x 1000 x 40", "stop"),
        ("shelf: {x: 1400, side: centre, z: 1900, size: 900 x 1000 x 40", ""),
        ("board: {x: 1100, side: centre, z: 1200, size: 200 x 200 x 40", ""),
    ],
)
def test_what_lies_over_a_hatch_or_close_under_it_shuts_it(more: str, kind: str) -> None:
    line = f"  {more}, weight: 20, stage: shell, done: yes}}" if more else MORE
    text = edited((MORE, line)).replace(WINDOW, HATCH)
    assert "  hatch:" in text
    found = {(one.kind, one.code, one.where) for one in worked(text, "sleep")}
    assert {one for one, code, _ in found if code == "safety/two-ways-out"} == ({kind} if kind else set())


NIGHT = "night: {cargo: all, tanks: {can: full}"


def test_a_can_that_may_be_full_is_not_empty() -> None:
    inside = ("can: {x: -500", "can: {x: 100")
    assert ("stop", "fuel-inside", "parts[can]") in kinds(inside, (NIGHT, "night: {cargo: all"))


@pytest.mark.parametrize(("x", "is_inside"), [("-500..-100", True), ("-500..-320", False)])
def test_a_can_that_may_reach_into_the_room_is_inside(x: str, is_inside: bool) -> None:
    """Its 300 mm end at the front wall when it begins at -300 mm; at best both are outside."""
    found = kinds(("can: {x: -500", f"can: {{x: {x}"))
    assert (("stop", "fuel-inside", "parts[can]") in found) is is_inside


def test_the_frame_of_a_bare_leaf_takes_its_share_of_the_hole() -> None:
    # The table has 100 mm for a frame, both sides together; the hole is 700 x 1800 mm.
    (door,) = [one for one in result().exits if one.way.name == "door"]
    assert door.clear is not None
    for side, left in zip(door.clear, (0.6, 1.7), strict=True):
        assert (side.low, side.best, side.high) == pytest.approx((left, left, left))
    narrow = ("x: 3300, width: 700", "x: 3300, width: %s")
    assert ("stop", "two-ways-out", "openings[door]") in kinds((narrow[0], narrow[1] % "399"))
    assert ("stop", "two-ways-out", "openings[door]") not in kinds((narrow[0], narrow[1] % "401"))


@pytest.mark.parametrize(("low", "high", "counts"), [(0.1, 0.299, False), (0.1, 0.301, True), (0.299, 0.6, True)])
def test_only_a_way_that_is_narrow_at_its_widest_is_shut(low: float, high: float, counts: bool) -> None:
    found = result()
    aisles = tuple(
        replace(one, width=Band((low + high) / 2.0, low, high)) if one.leads_to == "openings[door]" else one
        for one in found.aisles or ()
    )
    tight = replace(found, aisles=aisles)
    assert ([one.kind for one in two_ways_out(tight, HeaderUnits())] == []) is counts
    (asked,) = way_blocked(tight, HeaderUnits())
    assert asked.kind == ("unknown" if counts else "fix")


@pytest.mark.parametrize("fluid", ["methylated spirit", "white gas", "Gasoline", "isobutane", "two-stroke"])
def test_fuel_whose_vapour_lights_in_a_room_stops(fluid: str) -> None:
    found = kinds(("can: {x: -500", "can: {x: 100"), ("of: petrol", f"of: {fluid}"))
    assert ("stop", "fuel-inside", "parts[can]") in found


@pytest.mark.parametrize(("x", "told"), [(340, True), (400, False)])
def test_a_way_past_the_other_is_told_towards_the_front_as_towards_the_rear(x: int, told: bool) -> None:
    """The trio of past-the-other turned end for end: 660 mm and 600 mm from the bed, where 24 in are the limit."""
    found = kinds(
        ("door: {wall: right, x: 3300, width", "door: {wall: front, side: centre-500, width"),
        ("window: {wall: left, x: 600", f"window: {{wall: left, x: {x}"),
        ("bed: {x: 500", "bed: {x: 1800"),
        (MORE, "  chest: {x: 200, side: right, z: 0, size: 1000 x 1000 x 1500, weight: 30, stage: shell, done: yes}"),
    )
    assert (("advice", "past-the-other", "openings[door]") in found) is told


UNDER = "  %s: {x: %s, side: centre, z: %s, size: %s, weight: 20, stage: shell, done: %s}"


def told_of_hatch(*lines: str) -> tuple[set[str], set[str]]:
    """Return the kinds of what is said of two ways out, and of the way being blocked, where the second is a hatch."""
    text = edited((MORE, "\n".join(lines))).replace(WINDOW, HATCH)
    found = [(one.code.removeprefix("safety/"), one.kind) for one in worked(text, "sleep")]
    return tuple({kind for code, kind in found if code == wanted} for wanted in ("two-ways-out", "way-blocked"))  # type: ignore[return-value]


def test_two_things_that_leave_half_a_hatch_each_leave_nothing_together() -> None:
    """The hatch goes from 900 to 1500 mm; each panel leaves 310 mm of it, both together 20 mm."""
    front, rear = (UNDER % (name, x, 2080, "590 x 1000 x 40", "yes") for name, x in (("ahead", 600), ("behind", 1210)))
    assert told_of_hatch(front) == told_of_hatch(rear) == (set(), {"unknown"})
    assert told_of_hatch(front, rear) == ({"stop"}, set())


def test_what_is_over_a_hatch_perhaps_is_asked_about() -> None:
    assert told_of_hatch(UNDER % ("solar", 700, 2080, "1200 x 1000 x 40", "part")) == (set(), {"unknown"})
    assert told_of_hatch(UNDER % ("solar", "700..1900", 2080, "1200 x 1000 x 40", "yes")) == (set(), {"unknown"})
    assert told_of_hatch(UNDER % ("solar", "1500..1900", 2080, "1200 x 1000 x 40", "yes")) == (set(), set())


def test_close_under_a_hatch_is_six_hundred_millimetres_and_the_bed_one_stands_on_is_none() -> None:
    """The ceiling is 2000 mm over the floor."""
    assert told_of_hatch(UNDER % ("shelf", 800, 1361, "900 x 1000 x 40", "yes"))[0] == {"stop"}
    assert told_of_hatch(UNDER % ("shelf", 800, 1359, "900 x 1000 x 40", "yes"))[0] == set()
    high = edited(("z: 300, size: 1900 x 800 x 300", "z: 1200, size: 1900 x 800 x 300")).replace(WINDOW, HATCH)
    assert not any(one.code == "safety/two-ways-out" for one in worked(high, "sleep"))


@pytest.mark.parametrize(("side", "kind"), [("left-250", "stop"), ("left-799", "stop"), ("left-801", "")])
def test_what_stands_close_outside_a_window_shuts_it(side: str, kind: str) -> None:
    rack = f"  rack: {{x: 500, side: {side}, z: 400, size: 1200 x 200 x 1000, weight: 40, stage: shell, done: yes}}"
    still = ("unit: {weight: 10, swing: {hinge: top, opens: out, to: 80 deg}}", "unit: {weight: 10}")
    found = {one for one, code, _ in kinds((MORE, rack), still) if code == "two-ways-out"}
    assert found == ({kind} if kind else set())


def test_by_hand_and_by_trying_every_square_what_things_leave_of_a_hole() -> None:
    hole = (0.0, 6.0), (0.0, 4.0)
    assert widest_left(hole, []) == 4.0
    assert widest_left(hole, [((2.0, 9.0), (-1.0, 9.0))]) == 2.0
    assert widest_left(hole, [((-1.0, 9.0), (1.0, 2.0))]) == 2.0
    assert widest_left(hole, [((-1.0, 9.0), (-1.0, 9.0))]) == 0.0
    chance = random.Random(7)
    for _ in range(200):
        things = []
        for _ in range(chance.randint(1, 4)):
            x, y = chance.randint(-2, 5), chance.randint(-2, 3)
            things.append(((float(x), float(x + chance.randint(1, 4))), (float(y), float(y + chance.randint(1, 4)))))
        squares = [
            float(side)
            for side in range(1, 5)
            for x in range(7 - side)
            for y in range(5 - side)
            if not any(a[0] < x + side and a[1] > x and b[0] < y + side and b[1] > y for a, b in things)
        ]
        assert widest_left(hole, things) == max(squares, default=0.0)


def test_of_two_things_in_the_way_of_a_leaf_the_nearer_tells_and_one_that_may_be_struck_asks() -> None:
    near, far = BIN % (3650, 400), (BIN % (3300, 600)).replace("bin:", "far-bin:")
    # One that may be struck sooner does not take the place of one that surely is.
    perhaps = near.replace("bin:", "early-bin:").replace("x: 3650", "x: 3600..5000")
    for lines in (f"{near}\n{far}", f"{far}\n{near}", f"{perhaps}\n{near}"):
        (door,) = [one for one in result((MORE, lines)).exits if one.way.name == "door"]
        assert door.struck is not None and door.struck.to == "parts[bin]" and door.is_held_shut
    doubtful = kinds((MORE, BIN % ("3650..5000", 400)))
    assert ("stop", "two-ways-out", "openings[door]") not in doubtful
    assert ("unknown", "way-blocked", "openings[door]") in doubtful


def test_of_two_leaves_the_other_may_open_and_is_to_be_tried() -> None:
    """A pair of leaves of 350 mm each: where one is held shut the other half of the hole, 350 mm, may be left."""
    both = ("swing: {hinge: front, opens: out", "swing: {hinge: both sides, opens: out")
    found = result(both, (MORE, BIN % (3310, 400)))
    (door,) = [one for one in found.exits if one.way.name == "door"]
    assert door.struck is not None and door.struck.metre.high >= 0.35 > door.struck.metre.low and door.counts
    assert ("unknown", "way-blocked", "openings[door]") in kinds(both, (MORE, BIN % (3310, 400)))


def test_a_measure_that_is_not_sure_to_be_too_small_still_counts() -> None:
    found = kinds(("clear: {width: 700, height: 500}", "clear: {width: 200..400, height: 500}"))
    assert ("stop", "two-ways-out", "openings[window]") not in found


@pytest.mark.parametrize(
    ("line", "hatch"),
    [
        (UNDER % ("solar", "640..1160", 2080, "560 x 1000 x 40", "yes"), "x: 900"),  # its middle place leaves 40 mm
        (UNDER % ("solar", 900, 2080, "600 x 1000 x 40", "yes"), "x: 600..1200"),  # over the hatch's middle place
        (UNDER % ("shelf", 800, "1100..1500", "900 x 1000 x 40", "yes"), "x: 900"),  # 660 mm under it at best
        (UNDER % ("shelf", 800, "1300..1500", "900 x 1000 x 40", "yes"), "x: 900"),  # 560 mm under it at best
    ],
)
def test_where_it_is_not_known_what_is_before_a_hatch_is_asked_about(line: str, hatch: str) -> None:
    text = edited((MORE, line)).replace(WINDOW, HATCH.replace("x: 900", hatch))
    found = {(one.code, one.kind) for one in worked(text, "sleep")}
    assert ("safety/way-blocked", "unknown") in found
    assert not any(code == "safety/two-ways-out" for code, _ in found)


def test_where_it_is_not_known_how_far_outside_it_stands_is_asked_about() -> None:
    rack = "  rack: {x: 500, side: left-%s, z: 400, size: 1200 x 200 x 1000, weight: 40, stage: shell, done: yes}"
    still = ("unit: {weight: 10, swing: {hinge: top, opens: out, to: 80 deg}}", "unit: {weight: 10}")
    # At best 850 mm and 750 mm beyond the wall, 200 mm of it its own depth; 600 mm is the limit.
    for far in ("750..950", "700..900"):
        assert kinds((MORE, rack % far), still) == {("unknown", "way-blocked", "openings[window]")}
    assert kinds((MORE, rack % "810..950"), still) == set()


def test_a_release_that_is_planned_is_what_is_to_be_fitted() -> None:
    latch = "  latch: {x: 3300, wall: right, z: 900, size: 50 x 50 x 50, weight: 1, stage: later, release: door}"
    for word in ("none", "key"):
        found = worked(edited((DOOR, DOOR.replace("inside", word)), (MORE, latch)), "sleep")
        acts = {one.code: one.act for one in found}
        assert acts["safety/opens-from-inside"] == "Fit latch, so that door opens from inside"
        assert acts["safety/two-ways-out"] == "Fit latch, so that door opens from inside"
    bare = {one.code: one.act for one in worked(edited((DOOR, DOOR.replace("inside", "none"))), "sleep")}
    assert bare["safety/opens-from-inside"] == "Fit a release inside door"


@pytest.mark.parametrize(("z", "is_said"), [("1143", False), ("1145", True)])
def test_an_extinguisher_hangs_where_everybody_reaches_it(z: str, is_said: bool) -> None:
    """Its box is 380 mm high and 5 ft are 1524 mm, over a floor that nothing raises: its foot may be at 1144 mm."""
    found = worked(edited(("wall: right, z: 600", f"wall: right, z: {z}")), "sleep")
    assert [one.number for one in found if "not everybody reaches" in one.says] == (
        [pytest.approx(1.525)] if is_said else []
    )


@pytest.mark.parametrize(
    ("word", "opens"), [("yes", "inside"), ("Inside", "inside"), ("no", "none"), ("outside", "none")]
)
def test_what_opens_a_way_may_be_written_in_more_than_one_word(word: str, opens: str) -> None:
    door = result((DOOR, DOOR.replace("inside", word))).exits[0]
    assert door.opens == opens


def test_of_an_alarm_that_may_hang_outside_the_place_is_asked_for_and_of_one_without_a_tick_the_tick() -> None:
    for edit, lever, act in (
        (("smoke: {x: 2000", "smoke: {x: -900..2000"), "parts[smoke].x", "Measure where smoke hangs"),
        (("x 40, weight: 1, stage: shell, done: yes", "x 40, weight: 1, stage: shell"), "parts[smoke].done",
         "Look whether smoke hangs"),
    ):  # fmt: skip
        (one,) = [one for one in worked(edited(edit), "sleep") if one.code == "safety/smoke-alarm"]
        assert (one.lever, one.kind) == (lever, "unknown") and one.act.startswith(act)
    for edit, lever in (
        (("extinguisher: {x: 3000", "extinguisher: {x: -900..3000"), "parts[extinguisher].x"),
        (("weight: 3, stage: shell, done: yes", "weight: 3, stage: shell"), "parts[extinguisher].done"),
    ):
        (one,) = [one for one in worked(edited(edit), "sleep") if one.code == "safety/extinguisher"]
        assert (one.lever, one.protects) == (lever, True)

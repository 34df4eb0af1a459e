"""A ramp that is stopped on its way down lets out only over its free edge: so high, and no more than is clear over it.

By hand, in millimetres: the ramp closes a hole 1800 high from the deck, and lies flat at 90 deg. Stopped at an angle it
stands 1800 cos of it over the sill, and leaves the rest of the hole.
"""

from __future__ import annotations

from math import cos, radians

import pytest

from boxwright.disciplines.safety.result import Exit
from boxwright.disciplines.safety.telling import length, some_of
from boxwright.units import HeaderUnits
from tests.disciplines.safety.test_findings import edited, worked
from tests.disciplines.safety.test_ways import MORE, kinds, result

RAMP = "  ramp: {wall: rear, side: centre, width: 1500, z: 0, height: 1800, stage: shell, cut: yes, done: yes, "
RAMP += "release: inside, swing: {hinge: bottom, opens: out, to: %s}}\n  vent:"
BOX = "  box: {x: %s, side: centre, z: %s, size: 300 x 900 x 300, weight: 3, stage: shell, done: yes}"


def ramp_of(*edits: tuple[str, str], to: str = "90 deg") -> Exit:
    (found,) = [one for one in result(("  vent:", RAMP % to), *edits).exits if one.way.name == "ramp"]
    return found


def test_a_ramp_that_lies_flat_lets_out_over_its_sill() -> None:
    ramp = ramp_of()
    assert ramp.clear is not None and ramp.sill is not None
    assert (ramp.clear[1].low, ramp.sill.high) == (pytest.approx(1.7), pytest.approx(0.0))  # less 100 of a frame


@pytest.mark.parametrize("to", [30, 56, 69])
def test_one_that_is_written_to_open_less_is_climbed_over(to: int) -> None:
    ramp = ramp_of(to=f"{to} deg")
    assert ramp.clear is not None and ramp.sill is not None
    stands = 1.8 * cos(radians(to))
    assert ramp.sill.high == pytest.approx(stands)
    assert ramp.clear[1].low == pytest.approx(1.8 - stands - 0.1)  # less 100 of a frame


def test_one_that_strikes_something_lets_out_by_what_that_leaves() -> None:
    ramp = ramp_of((MORE, BOX % (5100, 300)))
    assert ramp.struck is not None and ramp.struck.side == "height"
    assert ramp.left is not None and ramp.sill is not None
    left = ramp.struck.metre.best
    assert 0.3 < left < 1.2
    assert ramp.left[1].best == pytest.approx(left)
    assert ramp.sill.best == pytest.approx(1.8 - left)
    assert ramp.left[0].best == pytest.approx(1.4), "its width is as it was"


def test_where_the_thing_may_stand_aside_the_whole_hole_may_be_left() -> None:
    ramp = ramp_of((MORE, BOX % ("5100..7500", 300)))
    assert ramp.left is not None and ramp.sill is not None
    assert ramp.left[1].low < ramp.left[1].high == pytest.approx(1.7)
    assert ramp.sill.low == pytest.approx(0.0) and ramp.sill.high > 0.5


@pytest.mark.parametrize(("to", "is_told"), [("60 deg", False), ("45 deg", True), ("45..90 deg", True)])
def test_what_stands_so_high_is_told_as_a_sill(to: str, is_told: bool) -> None:
    """44 in are 1118: 1800 cos 60 = 900, 1800 cos 45 = 1273."""
    assert (("advice", "high-sill", "openings[ramp]") in kinds(("  vent:", RAMP % to))) is is_told


def test_a_leaf_hinged_at_its_side_or_top_raises_no_sill() -> None:
    for hinge in ("left", "top"):
        edit = (RAMP % "45 deg").replace("hinge: bottom", f"hinge: {hinge}")
        (found,) = [one for one in result(("  vent:", edit)).exits if one.way.name == "ramp"]
        assert found.sill is not None and found.sill.high == pytest.approx(0.0)


def test_what_a_struck_leaf_may_leave_is_asked_once() -> None:
    """At 4700 it stops the ramp so early that little may be left, and what is in its way is named."""
    found = kinds(("  vent:", RAMP % "90 deg"), (MORE, BOX % ("4700..7500", 300)))
    asked = {code for kind, code, where in found if where == "openings[ramp]" and kind == "unknown"}
    assert asked == {"way-blocked"}


def test_less_than_a_mark_of_a_tape_is_told_as_nothing() -> None:
    units = HeaderUnits(length="mm")
    assert [some_of(metres, units) for metres in (0.0, 0.0000357, 0.0004, 0.0006)] == ["nothing"] * 3 + ["1 mm"]
    assert length(0.7641, units) == "764 mm"


@pytest.mark.parametrize(("z", "says"), [("1200", "starts 1200 mm"), ("900..1200", "may start 1200 mm")])
def test_a_sill_in_doubt_is_told_as_high_as_it_may_be(z: str, says: str) -> None:
    """44 in are 1118: at 1050, its middle, nobody would speak."""
    found = worked(edited(("x: 600, width: 800, z: 700", f"x: 600, width: 800, z: {z}")), "sleep")
    assert [one.says.partition(" over the floor")[0] for one in found if one.code == "safety/high-sill"] == [
        f"window {says}"
    ]


def test_no_more_is_clear_than_the_hole_whatever_is_written() -> None:
    clear = ("clear: {width: 700, height: 500}", "clear: {width: 600..950, height: 500}")
    (window,) = [one for one in result(clear).exits if one.way.name == "window"]
    assert window.clear is not None
    assert (window.clear[0].low, window.clear[0].high) == (pytest.approx(0.6), pytest.approx(0.8))


def test_a_window_that_something_may_stop_is_asked_about_once() -> None:
    """A box outside, under the leaf of 600 that is hinged at its top, may leave little of it."""
    box = "  box: {x: 600, side: left-%s, z: 700, size: 800 x 100 x 300, weight: 3, stage: shell, done: yes}"
    found = {code for _, code, where in kinds((MORE, box % "160..900")) if where == "openings[window]"}
    assert found == {"way-blocked"}

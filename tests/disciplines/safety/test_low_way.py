"""A way out over or under something: its headroom counts as its width does."""

from __future__ import annotations

import pytest

from boxwright.disciplines.safety.solve import is_shut, least_of
from boxwright.exchange import Aisle
from boxwright.units import Band, exactly
from tests.disciplines.safety.test_ways import kinds, stops


def test_a_bed_across_its_own_window_leaves_one_way_out() -> None:
    """The window lies from 700 to 1300 mm; a bed of 100 mm at 1150 mm leaves 50 mm of it over the sleeper."""
    edit = ("side: centre, z: 300, size: 1900 x 800 x 300", "side: left, z: 1150, size: 1900 x 800 x 100")
    assert ("fix", "way-blocked", "openings[window]") in kinds(edit)
    assert "two-ways-out" in {code for code, _ in stops(edit)}
    low = ("side: centre, z: 300, size: 1900 x 800 x 300", "side: left, z: 300, size: 1900 x 800 x 300")
    assert not stops(low), "lower down the same bed leaves the window free"


@pytest.mark.parametrize(
    ("width", "height", "is_surely_shut"),
    [
        (exactly(0.6), exactly(0.05), True),
        (exactly(0.2), exactly(0.9), True),
        (exactly(0.6), exactly(0.5), False),
        (Band(0.22, 0.20, 0.25), Band(0.4, 0.10, 0.60), True),
        (Band(0.5, 0.10, 0.90), Band(0.22, 0.20, 0.25), True),
        (Band(0.5, 0.10, 0.90), Band(0.5, 0.10, 0.90), False),
        (exactly(0.6), Band(0.0, 0.0, 9.0, known=False), False),
    ],
)
def test_a_way_is_shut_where_either_side_of_it_surely_is_too_little(
    width: Band, height: Band, is_surely_shut: bool
) -> None:
    way = Aisle("parts[bed]", "openings[window]", width, height, (), (), (), (), ())
    assert is_shut(way) is is_surely_shut
    least = least_of(way)
    assert least.low <= width.low and least.best <= width.best and least.high <= width.high, "never better than width"


def test_headroom_nobody_knows_may_be_none_at_all() -> None:
    way = Aisle("parts[bed]", "openings[window]", exactly(0.6), Band(0.0, 0.0, 9.0, known=False), (), (), (), (), ())
    assert (least_of(way).low, least_of(way).high, least_of(way).known) == (0.0, 0.6, True)


def test_a_hatch_is_reached_from_a_bed_under_it_alone() -> None:
    window = "wall: left, x: 600, width: 800, z: 700, height: 600"
    hatch = "wall: roof, x: {}, width: 600, across: 600, side: centre"
    high = ("bed: {x: 500, side: centre, z: 300", "bed: {x: 500, side: centre, z: 550")
    asked = ("unknown", "hatch-out-of-reach", "openings[window]")
    # by hand: the bed ends at 2400, and 300 of the hole are to be over it
    for x, is_asked in ((800, False), (2090, False), (2110, True), (2350, True), (2450, True), (3400, True)):
        assert (asked in kinds((window, hatch.format(x)), high)) is is_asked, x


@pytest.mark.parametrize(("thick", "is_asked"), [(150, True), (250, False)])
def test_who_stands_on_a_mattress_is_that_much_nearer_to_a_hatch(thick: int, is_asked: bool) -> None:
    """By hand: the bed ends 1400 mm under the ceiling, and 1200 mm are near enough."""
    roof = (
        "wall: left, x: 600, width: 800, z: 700, height: 600",
        "wall: roof, x: 800, width: 600, across: 600, side: centre",
    )
    bed = ("size: 1900 x 800 x 300, weight: 60", f"size: 1900 x 800 x 300, mattress: 1900 x 800 x {thick}, weight: 60")
    codes = {code for _, code, _ in kinds(roof, bed)}
    assert ("hatch-out-of-reach" in codes) is is_asked


ROOF = ("wall: left, x: 600, width: 800, z: 700, height: 600", "wall: roof, x: 800, width: 600, across: 600, side: %s")
HIGH = "bed: {x: 500, side: centre, z: 300"


@pytest.mark.parametrize(
    ("bed", "hatch", "is_asked"),
    [
        ("x: 500, side: centre, z: 500", "centre", False),  # 800 to 2000 are 1200
        ("x: 500, side: centre, z: 490", "centre", True),
        ("x: 500, side: centre, z: 480..700", "centre", True),
        ("x: 500, side: centre, z: 500..700", "centre", False),
        ("x: 100..1500, side: centre, z: 550", "centre", True),
        ("x: 100..1090, side: centre, z: 550", "centre", False),  # from 1090 on: 310 of the hole to 1400
        ("x: 100..1110, side: centre, z: 550", "centre", True),
        ("x: 500, side: left, z: 550", "centre", True),  # it ends 200 left of the middle, 100 under the hole
        ("x: 500, side: left+190, z: 550", "centre", True),  # 290 of it
        ("x: 500, side: left+210, z: 550", "centre", False),
    ],
)
def test_a_bed_is_surely_under_a_hatch_only_wherever_it_may_be(bed: str, hatch: str, is_asked: bool) -> None:
    asked = ("unknown", "hatch-out-of-reach", "openings[window]")
    found = kinds((ROOF[0], ROOF[1] % hatch), (HIGH, f"bed: {{{bed}"))
    assert (asked in found) is is_asked


def test_a_hatch_of_which_nobody_knows_where_it_is_and_a_bed_that_is_perhaps_there_are_asked() -> None:
    asked = ("unknown", "hatch-out-of-reach", "openings[window]")
    high = (HIGH, HIGH.replace("z: 300", "z: 550"))
    roof = (ROOF[0], ROOF[1] % "centre")
    assert asked not in kinds(roof, high)
    assert asked in kinds((ROOF[0], (ROOF[1] % "centre").replace("x: 800", "x: 800..3000")), high)
    assert asked not in kinds((ROOF[0], (ROOF[1] % "centre").replace("x: 800", "x: 800..1000")), high)
    assert asked in kinds(roof, high, ("weight: 60, stage: shell, done: yes", "weight: 60, stage: shell, done: part"))

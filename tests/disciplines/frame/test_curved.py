"""Openings under a roof that is not flat: where the wall ends, and where nothing lies flat any more."""

from __future__ import annotations

from math import sqrt

import pytest

from boxwright.disciplines.frame.findings import findings
from boxwright.disciplines.frame.result import Roof
from boxwright.disciplines.frame.walls import reach_at, top_at
from boxwright.finding import Finding
from boxwright.units import HeaderUnits
from tests.disciplines.frame.small import framed, rig_text, window

INCHES = HeaderUnits(length="in", weight="lb")
INCH = 0.0254
SIDE = "window: {wall: left, x: 49, width: 14, z: 50, height: HEIGHT, cut: no}"
ROUND, ARCH = ", shape: rounded, radius: 6}", ", shape: arched, rise: 6}"


def under(roof: str, opening: str) -> str:
    return rig_text((opening,)).replace("every: 16, first: 0}\n  skin", f"every: 16, first: 0{roof}\n  skin")


def said(text: str) -> list[Finding]:
    return [one for one in findings(framed(text), INCHES) if one.code == "frame/opening-outside-wall"]


@pytest.mark.parametrize(("height", "by"), [("22", 0.0), ("24", 2.0), ("22, flange: 1 1/2", 1.5)])
def test_an_opening_of_a_side_wall_ends_with_its_flange_below_a_rounded_eave(height: str, by: float) -> None:
    text = under(ROUND, SIDE.replace("HEIGHT", height))
    assert window(framed(text)).curved == pytest.approx(by * INCH)
    assert [one.kind for one in said(text)] == ["fix"] * bool(by)


def test_a_hole_in_the_roof_keeps_off_the_rounded_eave() -> None:
    fan = "window: {wall: roof, x: 49 1/2, width: 14, across: 14, side: PLACE, cut: no}"
    assert said(under(ROUND, fan.replace("PLACE", "centre"))) == []
    (found,) = said(under(ROUND, fan.replace("PLACE", "studs-left+3")))
    assert found.number == pytest.approx(3.0 * INCH) and "toward the middle" in found.act


@pytest.mark.parametrize("roof", [ROUND, ARCH])
def test_the_upper_corner_of_an_opening_in_an_end_wall_stays_under_the_bow(roof: str) -> None:
    door = "window: {wall: rear, side: PLACE, width: 20, z: 40, height: 37, cut: no}"
    assert said(under(roof, door.replace("PLACE", "centre"))) == []
    (found,) = said(under(roof, door.replace("PLACE", "studs-left+1")))
    assert found.kind == "fix" and "above the bow" in found.says


def test_a_flat_roof_leaves_the_wall_as_it_is() -> None:
    assert said(under("}", SIDE.replace("HEIGHT", "27"))) == []


def test_the_bow_of_a_circle_segment_by_hand() -> None:
    """A half width of 3 and a rise of 1 lie on a circle of radius 5 (hand arithmetic: 3-4-5)."""
    roof = Roof("arched", 2.0, 1.0, 0.0)
    assert top_at(roof, 3.0, 3.0) == pytest.approx(1.0)
    assert top_at(roof, 3.0, 0.0) == pytest.approx(2.0)
    assert top_at(roof, 3.0, 1.4) == pytest.approx(2.0 - 5.0 + sqrt(25.0 - 1.4**2))


@pytest.mark.parametrize("roof", [Roof("arched", 2.0, 0.3, 0.0), Roof("rounded", 2.0, 0.0, 0.4)])
def test_reach_and_height_are_each_the_other_backwards(roof: Roof) -> None:
    for up in (1.75, 1.9, 2.0):
        assert top_at(roof, 1.0, reach_at(roof, 1.0, up)) == pytest.approx(up)

"""What is still to come in passes a door that is there by then, or it is told."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.findings import findings
from boxwright.units import HeaderUnits
from tests.disciplines.frame.small import framed, rig_text

INCHES = HeaderUnits(length="in", weight="lb")
DOOR = "door: {wall: rear, side: centre, width: 30, z: 0, height: 60, by: trailer builder, cut: yes}"
CRATE = "crate: {x: 40, side: centre, z: 10, size: SIZE, weight: 50, stage: shell, done: no}"


def said(size: str, *openings: str, crate: str = CRATE) -> list[str]:
    text = rig_text(openings, (crate.replace("SIZE", size),))
    return [one.says for one in findings(framed(text), INCHES) if one.code == "frame/cannot-be-carried-in"]


@pytest.mark.parametrize(("size", "count"), [("70 x 29 x 59", 0), ("29 x 59 x 70", 0), ("70 x 40 x 36", 1)])
def test_the_smallest_cross_section_is_carried_through_whatever_way_the_part_lies(size: str, count: int) -> None:
    assert len(said(size, DOOR)) == count


def test_a_larger_opening_lets_it_in_and_a_window_in_its_frame_does_not() -> None:
    wide = "gap: {wall: left, x: 50, width: 45, z: 10, height: 50, cut: yes}"
    assert said("70 x 40 x 36", DOOR, wide) == []
    assert len(said("70 x 40 x 36", DOOR, wide.replace("cut: yes", "cut: yes, unit: {weight: 9}"))) == 1


def test_what_is_in_or_outside_or_nobody_said_a_door_of_is_not_told() -> None:
    assert said("70 x 40 x 36", DOOR, crate=CRATE.replace("done: no", "done: yes")) == []
    assert said("70 x 40 x 36", DOOR, crate=CRATE.replace("z: 10", "z: 80")) == []
    assert said("70 x 40 x 36") == []

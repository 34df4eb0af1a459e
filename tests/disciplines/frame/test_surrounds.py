"""Jambs, header and sill of what the trailer's builder frames: where they stand, what they bear, what meets them."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.result import Member, Result
from tests.disciplines.frame.small import framed, hung, rig_text, window

INCH = 0.0254
DOOR = "window: {wall: left, x: 50, width: 32, z: 10, height: 50, by: trailer builder, cut: yes}"
OWN = DOOR.replace(", by: trailer builder, cut: yes", ", cut: no")


def around(result: Result) -> dict[str, Member]:
    return {one.name: one for one in result.members if one.of == "openings[window]"}


def test_a_door_of_the_builder_has_jambs_header_and_sill_beside_its_edges() -> None:
    found = around(framed(rig_text((DOOR,))))
    assert {name: round(one.at.best / INCH, 6) for name, one in found.items()} == {
        "window front jamb": 49.5, "window rear jamb": 82.5, "window header": 60.5, "window sill": 9.5,
    }  # fmt: skip
    assert all(not one.is_built and one.planned is not None for one in found.values())
    assert found["window header"].runs == "along" and found["window front jamb"].runs == "up"


def test_an_opening_of_the_owner_has_none_before_somebody_frames_it() -> None:
    assert around(framed(rig_text((OWN,)))) == {}


def test_a_small_hole_between_two_studs_has_none() -> None:
    assert around(framed(rig_text((DOOR.replace("width: 32", "width: 10"),)))) == {}


def test_a_stud_beside_a_door_is_its_jamb() -> None:
    found = around(framed(rig_text((DOOR.replace("x: 50", "x: 48 1/2"),))))  # L3 stands at 48, 1 in wide
    assert "window front jamb" not in found and "window rear jamb" in found


def test_a_header_bears_the_studs_that_are_cut_and_those_that_were_left_out_by_hand() -> None:
    """From 49 1/2 to 82 1/2: 33 in; the studs at 64 and 80 are 14 1/2 and 30 1/2 from the front jamb."""
    for measured in ((), ("left: {date: 2026-01-01, what: seen, studs: left, values: {4: removed}}",)):
        header = window(framed(rig_text((DOOR,), (), measured))).header
        assert header is not None
        assert header.span == pytest.approx(33.0 * INCH)
        assert header.offsets == pytest.approx((14.5 * INCH, 30.5 * INCH))
        assert header.shares[0] == pytest.approx((18.5 + 2.5) / 33.0)
        assert sum(header.shares) == pytest.approx(2.0)


def test_a_tape_of_an_edge_moves_its_jamb() -> None:
    read = ("door: {date: 2026-01-01, what: tape, opening: window, values: {front: 50 1/2}}",)
    jamb = around(framed(rig_text((DOOR,), (), read)))["window front jamb"]
    assert jamb.is_built and jamb.at.best == pytest.approx(50.0 * INCH)


def test_a_screw_beside_a_door_catches_its_jamb() -> None:
    screws = "screws: {size: 1/4 in, into: studs, at: [49 1/2, 82 1/2]}"
    flap = f"flap: {{x: 45, wall: left, z: 40, size: 40 x 2 x 4, {screws}}}"
    found = hung(framed(rig_text((DOOR,), (flap,))))
    assert [one.catches for one in found.points] == ["window front jamb", "window rear jamb"]
    assert not any(one.catches for one in hung(framed(rig_text((OWN,), (flap,)))).points)


def test_another_opening_keeps_clear_of_a_jamb() -> None:
    other = "vent: {wall: left, x: 82 1/2, width: 6, z: 20, height: 6, cut: no}"
    result = framed(rig_text((DOOR, other)))
    assert [one.name for one in window(result, "vent").members_cut] == ["window rear jamb"]

"""Screws from inside and from outside, into members and into backing, and what is asked where nothing is said."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.findings import findings
from boxwright.disciplines.frame.result import Result
from boxwright.units import HeaderUnits
from tests.disciplines.frame.small import framed, hung, rig_text

INCH = 0.0254
INCHES = HeaderUnits(length="in")
LINER = "walls:\n  left:\n    layers:\n      liner: {of: ply, thick: 1/4, weight: 40, stage: shell}\nopenings:"


def part(side: str, screws: str, more: str = "", z: str = "30") -> str:
    return f"shelf: {{x: 10, side: {side}, z: {z}, size: 40 x 6 x 6, weight: 9, stage: shell, screws: {screws}{more}}}"


def lined(*parts: str) -> Result:
    return framed(rig_text(parts=parts).replace("openings:", LINER))


def said(result: Result, code: str) -> list[str]:
    return [one.says for one in findings(result, INCHES) if one.code == f"frame/{code}"]


def test_from_inside_a_screw_goes_through_the_lining_into_the_tube() -> None:
    """By hand: 1/4 in liner, 0.0598 in wall and three threads of 1.8 mm; 1/4 + 1 1/2 less 1/4 in to the skin."""
    reach = hung(lined(part("left", "{size: 1/4 in, at: [16, 32]}"))).reach
    assert reach is not None
    assert reach.least.best == pytest.approx((0.25 + 0.0598) * INCH + 3 * 0.0018, abs=5e-5)
    assert reach.most.best == pytest.approx(1.5 * INCH, abs=1e-5)


def test_from_outside_it_goes_through_the_skin_and_not_through_the_lining() -> None:
    hinge = hung(lined(part("left-8", "{size: 1/4 in, at: [16, 32]}")))
    assert hinge.is_outside and [one.catches for one in hinge.points] == ["L1", "L2"]
    assert hinge.reach is not None
    assert hinge.reach.least.best == pytest.approx((0.040 + 0.0598) * INCH + 3 * 0.0018, abs=5e-5)
    assert hinge.reach.most.best == pytest.approx((0.040 + 1.5 + 0.25) * INCH)


def test_into_a_backing_it_goes_through_all_of_it() -> None:
    board = (
        "board: {x: 8, side: studs-left-3/4, z: 28, size: 50 x 3/4 x 12, weight: 4, stage: shell, kind: backing, "
        "backs: shelf}"
    )
    hinge = hung(lined(board, part("left", "{size: 1/4 in, at: [20, 40], into: board}")))
    assert [one.catches for one in hinge.points] == ["board", "board"]
    assert hinge.reach is not None and hinge.reach.least.best == pytest.approx(INCH)


def test_the_lengths_that_are_told_are_themselves_right() -> None:
    """What is told is rounded to its safe side, so that the screw one buys by it is never told to be wrong."""
    bare = lined(part("left", "{size: 1/4 in, at: [16, 32]}"))
    assert said(bare, "screw-length") == ["no length is written of the screws of shelf; from 9/16 in to 1 1/2 in suits"]
    for length, verdict in (("1/2", "too short"), ("9/16", "fits"), ("1 1/2", "fits"), ("1 9/16", "too long")):
        reach = hung(lined(part("left", f"{{size: 1/4 in, at: [16, 32], length: {length}}}"))).reach
        assert reach is not None and reach.verdict == verdict


def test_what_nobody_can_place_is_asked() -> None:
    """In the middle of the room, into nothing that is known, and on a wall without a place: each says so."""
    assert said(lined(part("centre", "{size: 1/4 in, at: [16]}")), "fastener-unplaced") == [
        "nobody can say on which wall the screws of shelf are"
    ]
    assert said(lined(part("left", "{size: 1/4 in, at: [20], into: the old shelf}")), "fastener-unplaced") == [
        "nobody can say what the screws of shelf bite into on the left wall"
    ]
    assert said(lined(part("left", "{size: 1/4 in, count: 4}")), "fastener-unplaced") == [
        "nobody wrote where the screws of shelf go on the left wall"
    ]


def test_a_backing_behind_what_misses_is_named() -> None:
    board = (
        "board: {x: 8, side: studs-left-3/4, z: 28, size: 50 x 3/4 x 12, weight: 4, stage: shell, kind: backing, "
        "backs: shelf}"
    )
    screws = part("left", "{size: 1/4 in, at: [16, 24, 32, 48], into: studs}")
    (told,) = [one for one in findings(lined(board, screws), INCHES) if one.code == "frame/fastener-misses"]
    assert "board" in told.act
    (bare,) = [one for one in findings(lined(screws), INCHES) if one.code == "frame/fastener-misses"]
    assert "board" not in bare.act


def test_a_wall_of_unknown_members_is_asked_once_and_not_called_a_miss() -> None:
    text = rig_text(parts=(part("left", "{size: 1/4 in, at: [16]}"),)).replace(
        "every: 16, first: 0}\n  bows", "face: 1}\n  bows"
    )
    told = findings(framed(text), INCHES)
    assert [(one.code, one.kind) for one in told if one.where == "frame.studs"] == [
        ("frame/members-unknown", "unknown")
    ]
    assert said(framed(text), "fastener-misses") == []

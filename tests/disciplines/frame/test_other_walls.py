"""Hinges and screws on front, rear, roof and floor: judged against the members there, counted as a tape counts them."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.findings import findings
from boxwright.finding import Finding
from boxwright.units import HeaderUnits
from tests.disciplines.frame.small import framed, hung, rig_text

INCHES = HeaderUnits(length="in", weight="lb")
INCH = 0.0254
TAPED = ("rear: {date: 2026-01-01, what: tape, studs: rear, values: {0: 0, 1: 16, 2: 31, 3: 48, 4: 64, 5: 80}}",)
BOX = "box: {x: 150, wall: WALL, side: studs-left+10, z: 40, size: 10 x 50 x 6, screws: {size: 1/4 in, at: AT}}"
PLATE = "box: {x: 20, side: centre, z: Z, size: 60 x 8 x 1, weight: 9, screws: {size: 1/4 in, into: INTO, at: AT}}"


def on(wall: str, at: str, measured: tuple[str, ...] = TAPED) -> str:
    return rig_text((), (BOX.replace("WALL", wall).replace("AT", at),), measured)


def flat(into: str, at: str, z: str) -> str:
    text = rig_text((), (PLATE.replace("INTO", into).replace("AT", at).replace("Z", z),))
    return text.replace("  skin", "  floor: {cross_members: 16, first: 0, face: 2}\n  skin")


def said(text: str, code: str = "frame/fastener-misses") -> list[Finding]:
    return [one for one in findings(framed(text), INCHES) if one.code == code]


def test_screws_of_the_rear_wall_are_counted_from_its_left_stud_face() -> None:
    assert [one.catches for one in hung(framed(on("rear", "[16, 31, 48]"))).points] == ["B1", "B2", "B3"]
    (found,) = said(on("rear", "[16, 32, 48]"))
    assert found.kind == "fix"
    assert "rear wall at 32 in: B2 is 1 in left of 32 in" in found.says and "from 32 in to 31 in" in found.act


def test_a_wall_of_which_nothing_is_written_is_asked_about_and_never_passed() -> None:
    assert [one.kind for one in said(on("rear", "[16, 32]", ()))] == ["unknown"]


@pytest.mark.parametrize(("into", "z"), [("cross-members", "0"), ("floor", "0"), ("bows", "77"), ("roof", "77")])
def test_screws_of_floor_and_roof_meet_their_members(into: str, z: str) -> None:
    good, bad = flat(into, "[32, 48]", z), flat(into, "[32, 40]", z)
    assert all(point.catches for point in hung(framed(good)).points)
    assert [one.kind for one in said(bad)] == ["fix"]


def test_a_screw_whose_own_place_is_a_span_is_asked_about() -> None:
    firm = ("left: {date: 2026-01-01, what: tape, within: 0, studs: left, values: {2: 32, 3: 48}}",)
    shelf = "box: {x: 20, wall: left, z: 40, size: 40 x 8 x 1, weight: 9, screws: {size: 1/4 in, at: AT}}"
    assert said(rig_text((), (shelf.replace("AT", "[32, 48]"),), firm)) == []
    assert [one.kind for one in said(rig_text((), (shelf.replace("AT", "[31..33, 48]"),), firm))] == ["unknown"]


def test_an_opening_of_the_rear_wall_moves_left_or_right_and_is_told_as_a_tape_reads_it() -> None:
    hole = "window: {wall: rear, side: studs-left+26, width: 12, z: 30, height: 20, cut: no}"
    (found,) = said(rig_text((hole,), (), TAPED), "frame/opening-cuts-member")
    assert "from 26 in to 38 in cuts the stud B2 at 31 in" in found.says
    assert "to the left" in found.says and "rearward" not in found.says

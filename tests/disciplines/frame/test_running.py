"""Screws and hinges against wires and pipes in their wall: by the written route, with the doubt of it."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.findings import findings
from boxwright.finding import Finding
from boxwright.units import HeaderUnits
from tests.disciplines.frame.small import framed, rig_text

INCHES = HeaderUnits(length="in", weight="lb")
INCH = 0.0254
SHELF = "shelf: {x: 20, wall: left, z: 40, size: 40 x 8 x 2, weight: 9, screws: {size: 1/4 in, into: studs, at: [32]}}"
BARE = SHELF.replace(", at: [32]", "")


def said(route: str, part: str = SHELF, section: str = "wires") -> list[Finding]:
    run = f"  lamp: {{from: shelf, to: shelf, gauge: 14, stage: shell{route}}}\n"
    text = rig_text((), (part,)).replace("stages:\n", f"{section}:\n{run}stages:\n")
    return [one for one in findings(framed(text), INCHES) if one.code == "frame/fastener-near-wire"]


@pytest.mark.parametrize(
    ("route", "kinds"),
    [
        (", route: left x10 z41 > x50", ["fix"]),  # the screws lie at 41: the middle of what is screwed on
        (", route: left x10 z43 > x50", ["unknown"]),  # 2 in away, and a wire may be 2 in from its route
        (", route: left x10 z45 > x50", []),
        (", route: left x34 z41 > x50", ["unknown"]),  # begins 2 in short of the screw
        (", route: left x44 z41 > x50", []),
        (", route: right x10 z41 > x50", []),
        (", route: left z41", ["unknown"]),  # how far along, no route says
        (", route: left x10 > x50", ["unknown"]),  # how high, no route says
        ("", ["unknown"]),
    ],
)
def test_a_screw_is_told_of_a_wire_as_near_as_the_route_can_say(route: str, kinds: list[str]) -> None:
    assert [one.kind for one in said(route)] == kinds


def test_the_distance_is_that_to_the_run_by_hand() -> None:
    (found,) = said(", route: left x10 z41 1/2 > x50")
    assert found.number == pytest.approx(0.5 * INCH)


def test_a_pipe_counts_as_a_wire_does() -> None:
    (found,) = said(", bore: 1/2, route: left x10 z41 > x50", section="pipes")
    assert found.kind == "fix"


def test_screws_without_places_are_only_asked_about() -> None:
    assert [one.kind for one in said(", route: left x10 z41 > x50", BARE)] == ["unknown"]
    assert said(", route: left x10 z60 > x50", BARE) == []

"""What is inside a cabinet fits between its boards; what nobody weighed is rolled in.

The cabinet is 500 x 500 x 900 mm of 12 mm ply, against the right wall.
"""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import DONE, TODAY, mirrored, rig_of, thing, told

PLY = ", carcass: {ply: 12}"


def said(parts: str, code: str, openings: str = "") -> list[tuple[str, str]]:
    """Return kind and place of what is said on the road, the same of the mirrored rig."""
    text = rig_of(parts, openings)
    found = told(text, "tow")
    assert told(mirrored(text), "tow") == found
    return sorted((kind, where) for kind, one, where in found if one == code)


def kinds(cabinet: str, size: str, place: str) -> list[str]:
    more = thing("cab", 2100, "right", 0, "500 x 500 x 900", DONE + cabinet)
    more += f"box: {{inside: cab, {place}size: {size}, weight: 5, kind: cargo}}\n"
    return [kind for kind, _ in said(more, "sticks-out")]


@pytest.mark.parametrize(
    ("cabinet", "size", "found"),
    [
        ("", "500 x 300 x 300", []),
        (PLY, "500 x 300 x 300", ["fix"]),  # 476 are between its sides
        (PLY, "480 x 300 x 300", []),  # by less than the play
        (PLY, "482 x 300 x 300", ["fix"]),
        (PLY, "300 x 500 x 300", []),  # nobody wrote a back or a front
        (", carcass: {ply: 12, back: 6}", "300 x 500 x 300", ["fix"]),
        (", carcass: {ply: 12, doors: 1}", "300 x 500 x 300", ["fix"]),
        (", carcass: {ply: 12, back: 6, doors: 1}", "300 x 482 x 300", []),
        (PLY, "300 x 300 x 890", ["fix"]),
        (PLY, "300 x 300 x 880", []),
        (", carcass: {doors: 1}", "500 x 500 x 900", []),  # nobody wrote how thick its boards are
    ],
)
def test_what_is_in_a_cabinet_fits_between_its_boards(cabinet: str, size: str, found: list[str]) -> None:
    place = "x: 2100, side: right, z: 0, "
    assert kinds(cabinet, size, place) == found
    anywhere = ["unknown"] if found else []
    assert kinds(cabinet, size, "") == anywhere, "where nobody wrote its place it may be turned"


@pytest.mark.parametrize(
    ("size", "found"),
    [
        ("850 x 300 x 300", ["unknown"]),  # it stands upright
        ("600 x 300 x 300", ["unknown"]),
        ("1130 x 300 x 300", ["fix"]),  # from corner to corner it is 1126
        ("600 x 482 x 480", ["unknown"]),  # as long as 900 one way, 480 thick
        ("600 x 490 x 490", ["fix"]),
        ("300 x 300 x 850", []),
    ],
)
def test_what_nobody_wrote_the_place_of_may_go_in_held_another_way(size: str, found: list[str]) -> None:
    assert kinds(PLY, size, "") == found
    if found == ["unknown"]:
        assert kinds(PLY, size, "x: 2100, ") == ["fix"], "how it lies is written"


def test_in_a_corner_as_much_is_taken_as_surely_is() -> None:
    for size, found in (("476 x 300 x 300", []), ("500 x 300 x 300", []), ("1200 x 300 x 300", ["fix"])):
        more = thing("cab", 0, "right", 0, "500 x 500 x 900", DONE + PLY)
        more += f"box: {{inside: cab, size: {size}, weight: 5, kind: cargo}}\n"
        assert [kind for kind, _ in said(more, "sticks-out")] == found


PALLET = "pallet: {x: 2200, side: centre, z: 0, size: 1000 x %s x 500, weight: %s, kind: cargo}\n"


@pytest.mark.parametrize(
    ("wide", "weight", "ramp", "words"),
    [
        (1500, "90", "1400", "cannot be rolled in from the rear: ramp is 100 mm too narrow"),
        (1500, "30..60", "1400", "cannot be rolled in"),
        (1500, "unknown", "1400", "cannot be rolled in"),
        (1500, "30", "1400", ""),
        (1500, "90", "1450..1600", "perhaps cannot be rolled in from the rear: ramp may be 50 mm too narrow"),
        (1500, "90", "1400..1450", "cannot be rolled in"),
        (1500, "90", "1510..1600", ""),
    ],
)
def test_what_is_rolled_in_is_held_against_the_least_its_ramp_may_be(
    wide: int, weight: str, ramp: str, words: str
) -> None:
    text = rig_of(PALLET % (wide, weight)).replace(
        "width: 1400, z: 0, height: 1800", f"width: {ramp}, z: 0, height: 1800"
    )
    for one in (text, mirrored(text)):
        says = {said.says for said in study(read_rig(one).rig, TODAY).findings("tow") if said.code == "layout/way-in"}
        assert bool(says) == bool(words)
        assert all(words in told for told in says)

"""Which way a face looks: by its wall, by the nearest one, by its flat side; else both ways are asked about.

Laid out by hand. The room is 160 x 80 in, the right wall at 40 in of the middle; by it the door, and a wheel box from
84 to 114 in.
"""

from __future__ import annotations

import pytest

from tests.disciplines.layout.knots import told, words

IN = "weight: 2, stage: lined, done: yes"
CLEAR = "keep_clear: {front: 30, width: 12}"
MAINS = "  mains: {x: %s, side: %s%s, z: 40, size: %s, %s, %s}\n"
BOX = "  bin: {x: %s, side: %s, z: 0, size: 12 x 12 x 60, %s}\n"


def found(mains: tuple[str, ...], box: tuple[str, str], more: str = CLEAR) -> list[tuple[str, str]]:
    """Return what is said of the bin before the panel."""
    x, side, wall, size = mains
    text = MAINS % (x, side, wall, size, IN, more) + BOX % (*box, IN)
    return [one for one in told("layout/kept-clear", (), text, use="leave") if "bin" in one[1] or "mains" in one[1]]


@pytest.mark.parametrize(
    ("mains", "box", "said"),
    [
        # flat against the right wall in the front corner: it looks to the left, where the bin is 12 in off
        (("0", "right", "", "12 x 4 x 16"), ("0", "right-16"), [("fix", "parts[bin]")]),
        (("0", "right-2", "", "12 x 4 x 16"), ("0", "right-18"), [("fix", "parts[bin]")]),
        # the same with the bin behind it along the trailer: not before it
        (("0", "right", "", "12 x 4 x 16"), ("13", "right"), []),
        # as deep as it is wide: nobody knows
        (("0", "right", "", "8 x 8 x 16"), ("0", "right-20"), [("unknown", "parts[bin]")]),
        (("0", "right", "", "8 x 8 x 16"), ("20", "right"), [("unknown", "parts[bin]")]),
        (("0", "right", ", wall: right", "8 x 8 x 16"), ("0", "right-20"), [("fix", "parts[bin]")]),
        (("0", "right", ", wall: right", "8 x 8 x 16"), ("20", "right"), []),
        (("0", "right", ", wall: front", "8 x 8 x 16"), ("20", "right"), [("fix", "parts[bin]")]),
        # clearly nearer to the front
        (("0", "right-4", "", "8 x 8 x 16"), ("20", "right-2"), [("fix", "parts[bin]")]),
    ],
)
def test_in_a_corner_a_thing_looks_away_from_its_wall_or_its_flat_side(
    mains: tuple[str, ...], box: tuple[str, str], said: list[tuple[str, str]]
) -> None:
    assert found(mains, box) == said


def test_what_may_look_either_way_is_answered_with_its_wall() -> None:
    text = MAINS % ("0", "right", "", "8 x 8 x 16", IN, CLEAR) + BOX % ("0", "right-20", IN)
    assert "bin may stand in the 30 in that mains wants clear before it" in words(
        "layout/kept-clear", (), text, "leave"
    )


@pytest.mark.parametrize("side", ["centre-20", "centre+20"])
def test_in_the_very_middle_both_sides_are_asked_about(side: str) -> None:
    panel = MAINS % ("60", "centre", "", "8 x 8 x 16", IN, CLEAR)
    bin_ = BOX % ("58", side, IN)
    assert ("unknown", "parts[bin]") in told("layout/kept-clear", (), panel + bin_, use="leave")


@pytest.mark.parametrize("stool", [("26", "right"), ("0", "right-26")])
def test_the_doors_of_a_cabinet_in_a_corner_are_asked_about_either_way(stool: tuple[str, str]) -> None:
    """A cabinet of 20 x 20 in: each stool is 6 in before one of its faces, and half its door is 10 in wide."""
    cab = f"  cupboard: {{x: 0, side: right, z: 0, size: 20 x 20 x 30, {IN}, carcass: {{ply: 1/2, doors: 1}}}}\n"
    text = cab + BOX.replace("bin", "stool") % (*stool, IN)
    assert ("unknown", "parts[cupboard]") in told("layout/opening-strikes", (), text)


@pytest.mark.parametrize(("wall", "kinds"), [("", ["unknown"]), (", wall: front", ["fix"]), (", wall: right", [])])
def test_the_width_before_what_may_look_either_way_is_asked_about(wall: str, kinds: list[str]) -> None:
    """100 in are wanted: along the trailer there are 160, across it 80."""
    text = MAINS % ("0", "right", wall, "8 x 8 x 16", IN, "keep_clear: {front: 1, width: 100}")
    assert [kind for kind, where in told("layout/kept-clear", (), text, "leave") if "mains" in where] == kinds


@pytest.mark.parametrize(("wall", "kinds"), [("", ["unknown"]), (", wall: front", ["fix"]), (", wall: right", [])])
def test_a_flap_that_may_open_either_way_is_asked_about(wall: str, kinds: list[str]) -> None:
    """A flap of 20 x 20 in hinged below, with a stool 6 in behind it along the trailer."""
    place = f"{{x: 0, side: right, z: 0, size: 20 x 20 x 30, {IN}{wall}, swing: {{hinge: bottom, opens: out}}}}"
    flap = f"  cupboard: {place}\n"
    text = flap + BOX.replace("bin", "stool") % ("26", "right", IN)
    away = (("door: {wall: right, x: 20", "door: {wall: right, x: 60"), ("step: {x: 22", "step: {x: 62"))
    assert [kind for kind, where in told("layout/opening-strikes", away, text) if "cupboard" in where] == kinds

"""A leaf that opens past a half turn: round the corner of the shell, stopped by its wall or the ground, over a hole.

By hand, in millimetres: the shell is 4080 by 2080 outside, from -40 to 4040 and 1040 to each side; its deck is 300 over
the ground. A pair of leaves in the rear wall, hinged 40 from each corner, folds round to lie along both sides.
"""

from __future__ import annotations

from math import atan2, pi

import pytest

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.laid_back import past_half
from boxwright.disciplines.layout.parts import Facet
from boxwright.disciplines.layout.sweeps import NEVER, Turn
from boxwright.rig.compose import read_rig
from tests.disciplines.layout.small_rigs import mirrored, rig_of, thing, told

STRIKES, OVER = "opening-strikes", "leaf-over"
HOLE = "width: {}, z: 0, height: 1800, by: builder, cut: yes, release: inside, swing: {{hinge: {}, opens: out, to: {}}}"
VENT = "vent: {wall: right, x: %s, width: 200, z: 1000, height: 100, by: builder, cut: yes}"


def said(openings: str = "", parts: str = "", to: str = "270 deg", wide: int = 2000) -> dict[str, list[str]]:
    text = rig_of(parts, openings)
    was = HOLE.format(1400, "bottom", "90 deg")
    assert was in text and "x: 2600, width: 700" in text
    text = text.replace(was, HOLE.format(wide, "both sides", to)).replace("x: 2600, width: 700", "x: 900, width: 700")
    found = told(text, "sleep")
    assert told(mirrored(text), "sleep") == found
    return {code: sorted(kind for kind, one, where in found if one == code and where == "openings[ramp]")
            for code in (STRIKES, OVER)}  # fmt: skip


@pytest.mark.parametrize(
    ("x", "to", "kinds"),
    [
        (3500, "270 deg", ["limit"]),  # a leaf of 1000 lies from 4000 back to 3000
        (2900, "270 deg", ["limit"]),
        (2780, "270 deg", []),
        (3500, "180 deg", []),
        (3500, "90 deg", []),
        (3500, "180..270 deg", ["unknown"]),
        (3500, "260 deg", ["limit"]),  # 10 degrees off: within 150 of the wall as far as 150 / sin 10 = 864
        (2900, "260 deg", []),
        (2900, "250..270 deg", ["unknown"]),
    ],
)
def test_doors_folded_round_the_corner_lie_over_what_is_in_the_side(x: int, to: str, kinds: list[str]) -> None:
    assert said(VENT % x, to=to)[OVER] == kinds


@pytest.mark.parametrize(
    ("lamp", "to", "kinds"),
    [
        ((3600, "right+80", 900, "100 x 40 x 100"), "270 deg", ["fix"]),
        ((2700, "right+80", 900, "100 x 40 x 100"), "270 deg", []),
        ((3600, "right+80", 900, "100 x 40 x 100"), "180 deg", []),
        ((3600, "right+80", 1900, "100 x 40 x 100"), "270 deg", []),  # over the leaf
        ((3600, "right+80", 900, "100 x 40 x 100"), "200..270 deg", ["unknown"]),
        ((3600, "right+80", 900, "100 x 40 x 100"), "180..200 deg", []),
        ((3600, "right+80", 900, "100 x 40 x 100"), "180..270 deg", ["unknown"]),
    ],
)
def test_doors_folded_round_the_corner_strike_what_stands_off_the_side(
    lamp: tuple[int, str, int, str], to: str, kinds: list[str]
) -> None:
    x, side, z, size = lamp
    assert said(parts=thing("lamp", x, side, z, size), to=to)[STRIKES] == kinds


def test_a_door_hinged_far_from_the_corner_has_its_wall_in_the_way() -> None:
    assert said(to="270 deg", wide=1400)[STRIKES] == ["unknown"]
    assert said(to="180 deg", wide=1400)[STRIKES] == []
    assert said(VENT % 3500, to="270 deg", wide=1400)[OVER] == []


@pytest.mark.parametrize(
    ("to", "kinds"),
    [("90 deg", []), ("99 deg", []), ("110 deg", ["fix"]), ("95..105 deg", ["unknown"]), ("270 deg", ["fix"])],
)
def test_a_ramp_comes_down_no_farther_than_the_ground(to: str, kinds: list[str]) -> None:
    """A ramp of 1800 on a deck 300 over the ground: 90 + asin(300 / 1800) = 99.6 degrees."""
    found = told(
        rig_of().replace("hinge: bottom, opens: out, to: 90 deg", f"hinge: bottom, opens: out, to: {to}"), "sleep"
    )
    assert [kind for kind, code, where in found if code == STRIKES and where == "openings[ramp]"] == kinds


SHELL = Block((-0.04, -1.04, 0.0), (4.04, 1.04, 2.2))
LEAF = Turn((1, 1.0), (0, 1.0), (-1.0, 4.04), ((0.0, 0.8), (0.0, 0.0)), (0.0, 1.8), pi, pi)


def test_the_second_half_turns_about_the_corner_and_counts_on_from_the_first() -> None:
    second = past_half(LEAF, SHELL, (1.5 * pi, 1.5 * pi, 1.5 * pi))
    assert second is not None
    assert (second.hinge, second.turn, second.begins) == ((-1.04, 4.04), pi / 2.0, pi)
    flat = Block((3.5, -1.2, 0.0), (3.6, -1.04, 1.0))  # 540 to 440 before the corner, 160 off the side
    assert second.meets(flat) == pytest.approx(pi + atan2(440, 160), abs=5e-3)  # its rear corner, less a touch
    assert second.meets(Block((3.0, -1.2, 0.0), (3.1, -1.04, 1.0))) == NEVER
    assert LEAF.meets(flat) == NEVER


@pytest.mark.parametrize("most", [pi, 0.9 * pi])
def test_no_second_half_where_it_turns_no_farther_or_no_corner_is_near(most: float) -> None:
    assert past_half(LEAF, SHELL, (most, most, most)) is None
    assert past_half(LEAF, Block((-0.04, -1.2, 0.0), (4.04, 1.2, 2.2)), (1.5 * pi, 1.5 * pi, 1.5 * pi)) is None
    assert past_half(LEAF, None, (1.5 * pi, 1.5 * pi, 1.5 * pi)) is None


@pytest.mark.parametrize(
    ("x", "to", "kinds"),
    [
        (1950, "180 deg", ["limit"]),  # the door of 700 at 2600 lies forward over 1900 to 2600
        (1650, "180 deg", []),
        (3350, "180 deg", []),
        (1950, "100..180 deg", ["unknown"]),
        (1950, "160 deg", []),  # 20 degrees off: within 150 of the wall as far as 439
        (2300, "160 deg", ["limit"]),
    ],
)
def test_a_door_laid_back_lies_over_its_own_wall_on_the_side_of_its_hinge(x: int, to: str, kinds: list[str]) -> None:
    text = rig_of(openings=VENT % x, door=f"swing: {{hinge: front, opens: out, to: {to}}}")
    found = told(text, "sleep")
    assert told(mirrored(text), "sleep") == found
    assert [kind for kind, code, where in found if code == OVER and where == "openings[door]"] == kinds


def test_a_pair_that_goes_on_round_the_corner_does_not_stand_against_its_own_wall() -> None:
    """Leaves of 200 beside a hole of 400: at a half turn they would lie over a vent at 950 from the middle."""
    rear = "slot: {wall: rear, side: right-5, width: 60, z: 1000, height: 100, by: builder, cut: yes}"
    for to, kinds in (("180 deg", ["limit"]), ("270 deg", []), ("170..190 deg", ["unknown"])):
        text = rig_of(openings=rear).replace(HOLE.format(1400, "bottom", "90 deg"), HOLE.format(1800, "both sides", to))
        text = text.replace("x: 2600, width: 700", "x: 900, width: 700")
        assert text != rig_of(openings=rear)
        found = told(text, "sleep")
        assert [kind for kind, code, where in found if code == OVER and where == "openings[ramp]"] == kinds, to


@pytest.mark.parametrize(
    ("to", "kinds"), [("170 deg", []), ("180 deg", []), ("190 deg", ["unknown"]), ("260 deg", ["unknown"])]
)
def test_a_leaf_that_opens_inward_may_have_its_own_wall_in_its_way(to: str, kinds: list[str]) -> None:
    text = rig_of("", "")
    was = "swing: {hinge: front, opens: out"
    assert was in text
    start = text.index(was)
    end = text.index("}", start)
    text = f"{text[:start]}swing: {{hinge: front, opens: in, to: {to}{text[end:]}"
    found = told(text, "sleep")
    assert told(mirrored(text), "sleep") == found
    assert [kind for kind, code, _ in found if code == STRIKES] == kinds


@pytest.mark.parametrize("to", ["-90 deg", "400 deg"])
def test_an_angle_no_leaf_turns_by_is_a_mistake_and_not_taken(to: str) -> None:
    text = f"boxwright: 1\nopenings:\n  flap: {{wall: rear, swing: {{hinge: left, opens: out, to: {to}}}}}\n"
    reading = read_rig(text)
    assert any("a leaf turns by 0 to 360 deg" in one.says for one in reading.problems)
    facet = reading.rig.openings[0].facet("layout")
    assert isinstance(facet, Facet) and facet.swing is not None and facet.swing.to is None

"""``where`` and ``compare`` from a user's seat: spots and openings whose answer is plain in the file."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from boxwright.cli.asked import Question
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import text_of
from boxwright.cli.side_by_side import compare
from boxwright.cli.where import where
from boxwright.disciplines.frame.passing import carried
from boxwright.disciplines.power.routes import legs_of
from boxwright.units import HeaderUnits

RIGS = Path(__file__).parents[2] / "rigs"
WHIMBREL = Question(str(RIGS / "whimbrel.yaml"))
TODAY = date(2026, 5, 2)
INCHES = HeaderUnits(length="in")
INCH = 0.0254


def said(wall: str, *place: str) -> str:
    return " ".join(text_of(line) for line in where(WHIMBREL, wall, place, TODAY, 200)[0])


def test_a_taped_stud_is_metal_and_says_that_it_was_taped() -> None:
    words = said("left", "x=112 3/8", "z=20")
    assert "Metal: L7 is behind it (as taped)" in words
    assert "L8, its middle 15 5/8 in away" in words  # taped at 128


def test_a_stud_nobody_taped_is_said_to_be_as_ordered() -> None:
    assert "Metal: R5 is behind it (as ordered, not taped)" in said("right", "x=80", "z=20")


def test_the_edge_of_a_stud_is_no_metal_for_certain() -> None:
    assert "Perhaps the edge of R5" in said("right", "x=80.5", "z=20")


def test_a_removed_stud_is_no_metal() -> None:
    assert "No metal: bay right 1-3" in said("right", "x=32", "z=74")


def test_a_spot_of_a_window_is_the_window_and_a_bay_has_its_own_layers() -> None:
    assert "There is an opening: window-left" in said("left", "x=100", "z=40")
    assert "foam 1 in of XPS" in said("left", "x=72", "z=50")
    assert "foam 1 1/2 in of XPS" in said("left", "x=88", "z=50")


def test_a_wire_is_named_where_its_route_runs_and_nowhere_else() -> None:
    assert "solar at 74 in" in said("right", "x=60", "z=74")
    assert "solar at" not in said("right", "x=60", "z=40")
    assert "No route is written of loom-trunk" in said("right", "x=60", "z=40")


@pytest.mark.parametrize("place", [("q=3",), ("x=72",), ("x=seventy", "z=1"), ()])
def test_a_spot_that_cannot_be_read_says_how_it_is_written(place: tuple[str, ...]) -> None:
    with pytest.raises(NothingAsked):
        where(WHIMBREL, "left", place, TODAY, 80)


def test_a_wall_that_is_none_is_refused() -> None:
    with pytest.raises(NothingAsked, match="no wall"):
        where(WHIMBREL, "up", ("x=1", "z=1"), TODAY, 80)


def test_a_route_gives_its_stretches() -> None:
    heater = legs_of("front z24 > left z8 > x40", INCHES)
    assert [(leg.wall, round(leg.up / INCH, 6) if leg.up else None) for leg in heater] == [("front", 24), ("left", 8)]
    assert (heater[1].low, round(heater[1].high / INCH, 6)) == (0.0, 40.0)
    shore = legs_of("left x150 z22 > front z40", INCHES)
    assert (shore[0].low, round(shore[0].high / INCH, 6)) == (0.0, 150.0)
    assert legs_of("inside front-cabinet", INCHES) == ()


def test_a_stretch_whose_end_is_not_written_may_be_anywhere_on_its_wall() -> None:
    leg = legs_of("roof x84 > gland > right z74 > floor x2", INCHES)[1]
    assert leg.wall == "right"
    assert leg.low == float("-inf") and leg.high == float("inf")


def test_two_openings_stand_side_by_side_with_what_each_cuts() -> None:
    words = "\n".join(text_of(line) for line in compare(WHIMBREL, "window-left", "window-right", TODAY, 200)[0])
    row = next(line for line in words.splitlines() if "members cut" in line)
    assert row.split()[-2:] == ["none", "R7"]
    assert "left 6-7" in words and "right 6-7, right 7-8" in words


def test_an_edit_of_an_opening_is_compared_and_the_file_is_not_touched() -> None:
    before = (RIGS / "whimbrel.yaml").read_bytes()
    page = compare(WHIMBREL, "window-right", "window-right.width=14", TODAY, 200)[0]
    words = "\n".join(text_of(line) for line in page)
    assert "24 in x 18 in" in words and "14 in x 18 in" in words
    assert (RIGS / "whimbrel.yaml").read_bytes() == before


def test_an_opening_nobody_wrote_is_refused_with_a_guess() -> None:
    with pytest.raises(NothingAsked, match="window"):
        compare(WHIMBREL, "window-lift", "window-right", TODAY, 80)


NOSED = """boxwright: 1
rig: Plover
units: {length: in, weight: lb}
countries: [US-NC]
today: {stage: shell, date: 2026-05-02}
trailer:
  body: {length: 160, width: 80, height: 78}
frame:
  studs: {tube: 1 x 1 1/2 x 16 ga, every: 16, first: 0}
  bows: {tube: 1 x 1 1/2 x 16 ga, every: 16, shape: arched, rise: 6}
  nose: {length: 24, tip: 16}
  skin: aluminium 0.040
  intrusions:
    wheel-box: {what: wheel box, wall: left, x: 66, z: 0, length: 60, height: 9, depth: 8}
stages:
  shell: {what: shell}
"""


def at_nose(folder: Path, wall: str, *place: str) -> str:
    path = folder / "nosed.yaml"
    path.write_text(NOSED, encoding="utf-8")
    return " ".join(text_of(line) for line in where(Question(str(path)), wall, place, TODAY, 200)[0])


def test_a_slanted_wall_is_read_by_x_or_across_and_counted_from_its_corner(tmp_path: Path) -> None:
    """By hand: 24 back and 32 across is 40 in of wall (3-4-5), so 12 ahead is half of it, and so is 16 in from left."""
    for place in ("x=-12", "side=studs-left+16"):
        words = at_nose(tmp_path, "nose-left", place, "z=30")
        assert "from its corner of the body 20 in" in words and "outside" not in words
        assert "20 in from its corner of the body" in words


def test_at_a_tip_a_tape_is_hooked_to_the_tip(tmp_path: Path) -> None:
    words = at_nose(tmp_path, "front", "side=centre", "z=30")
    assert "8 in from the left corner of the tip" in words and "finished left wall" not in words
    assert "10 in from the corner where the nose begins" in at_nose(tmp_path, "left", "x=10", "z=30")


def test_a_wheel_box_is_told_and_the_wall_ends_under_its_bow(tmp_path: Path) -> None:
    assert "wheel-box stands before the wall" in at_nose(tmp_path, "left", "x=80", "z=5")
    assert "wheel-box" not in at_nose(tmp_path, "left", "x=80", "z=15")
    assert "outside the wall" in at_nose(tmp_path, "rear", "side=studs-left+2", "z=76")
    assert "outside the wall" not in at_nose(tmp_path, "rear", "side=centre", "z=76")


def test_a_pipe_is_named_where_its_route_runs() -> None:
    assert "fresh-to-pump (a pipe) at 26 in" in said("left", "x=60", "z=26")
    assert "fresh-to-pump" not in said("left", "x=60", "z=60").split("No route")[0]


def test_end_walls_are_counted_from_their_left_stud_face(tmp_path: Path) -> None:
    rear = at_nose(tmp_path, "rear", "side=studs-left+10", "z=30")
    assert "rear wall, from the left stud face 10 in, z 30 in" in rear
    assert "x 60 in, from the left stud face 10 in" in at_nose(tmp_path, "roof", "x=60", "side=studs-left+10")


def test_what_passes_needs_a_quarter_inch_to_move_in() -> None:
    """A thing 20 x 10 in through a hole of just that size, and through one a quarter inch larger."""
    inch = 0.0254
    for more, passes in ((0.0, False), (0.24, False), (0.26, True)):
        hole = ((20.0 + more) * inch, (10.0 + more) * inch)
        assert carried("", "box", (20 * inch, 10 * inch, 40 * inch), hole).passes is passes


def test_a_difference_that_shows_as_nothing_is_not_told() -> None:
    lines = compare(WHIMBREL, "window-right", "window-right.width=14", TODAY, 200)[0]
    page = "\n".join(text_of(line) for line in lines)
    assert "weighs 0 lb" not in page and "-0" not in page
    assert "with 1/4 in to move in" in page and "leaves open nobody wrote" in page
    moved = "\n".join(text_of(line) for line in compare(WHIMBREL, "window-left", "window-left.x=92", TODAY, 200)[0])
    assert "on the ball" in moved and "0 lb more on the whole" not in moved

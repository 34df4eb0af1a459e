"""Several beds in a change-over: each may have a way out of its own, and nobody folds up the bed he lies in."""

from __future__ import annotations

from boxwright.book.changeover import ChangeOver
from boxwright.book.changeover_words import exit_changes, leaving_words
from boxwright.book.poses import pose_sheets
from boxwright.book.sheets import sheets_of
from boxwright.drawing import Symbol, Text
from tests.book.test_changeover_card import MINI, told, worked

DOOR = "  door: {wall: right, x: 10,"
RAMP = (
    "  ramp: {wall: rear, side: centre, width: 60, z: 0, height: 70, cut: yes, RELEASE"
    "swing: {hinge: bottom, opens: out, to: 100 deg}}\n"
)
LOCKER = "  locker: {x: 45, side: left, z: 0, size: 10 x 40 x 77, weight: 80}\n"
WALL = "  wall: {x: 45, side: left, z: 0, size: 2 x WIDE x 78, weight: 80}\n"
COT = "  cot: {x: 14, side: left, z: 20, size: 30 x 24 x 4, weight: 20FOLDS}\n"
FOLDS = ", folds: up, folded_depth: 5, hinge: {edge: left}"


def two_beds(
    wide: int = 78, release: str = "release: inside, ", folds: str = FOLDS, door: str = "inside"
) -> ChangeOver:
    """Return the change-over of a room with a wall in its midst, a bed and an opening on either side of it."""
    return told(written(wide, release, folds, door))


def written(wide: int = 78, release: str = "release: inside, ", folds: str = FOLDS, door: str = "inside") -> str:
    """Return the text of that room."""
    text = MINI.replace("release: inside", f"release: {door}").replace(DOOR, RAMP.replace("RELEASE", release) + DOOR)
    text = text.replace(LOCKER, WALL.replace("WIDE", str(wide)) + COT.replace("FOLDS", folds))
    text = text.replace("sleeps: bed}}", "sleeps: bed}, two: {weight: 90, height: 50, sleeps: cot}}")
    return text.replace("people: [one]", "people: [one, two]")


def words(one: ChangeOver) -> list[str]:
    return list(leaving_words(one, worked(MINI)[0].header.units))


def test_each_bed_gets_out_by_its_own_opening() -> None:
    one = two_beds()
    assert one.out is not None and one.out.word == "found" and one.out.steps == ()
    assert [way[:2] for way in one.out.ways] == [("bed", "ramp"), ("cot", "door")]
    assert {exit.name: (exit.word, exit.not_from) for exit in one.out.exits} == {
        "door": ("free", ("bed",)),
        "ramp": ("free", ("cot",)),
    }
    assert {"From cot NOT by ramp.", "From bed NOT by door."} <= set(words(one))
    down = next(step for step in one.there.steps if step.name == "cot")
    assert exit_changes(one.there.before, down.exits).endswith("from bed NOT by door; from cot NOT by ramp")


def test_with_a_gap_beside_the_wall_both_get_out_by_the_door() -> None:
    one = two_beds(wide=54)
    assert one.out is not None and ("door", ()) in {(exit.name, exit.not_from) for exit in one.out.exits}
    assert {way[1] for way in one.out.ways} == {"door"}


def test_who_is_shut_in_is_named_though_others_get_out() -> None:
    for folds in (FOLDS, ""):
        one = two_beds(release="release: none, ", folds=folds)
        assert one.out is not None and (one.out.word, one.out.shut_in) == ("blocked", ("bed",))
        assert words(one)[0] == "Out in two minutes: NO. Nobody gets out of bed, whatever else is moved."


def test_nobody_folds_up_the_bed_he_lies_in_to_be_counted_as_out() -> None:
    one = two_beds(door="none")
    assert one.out is not None and (one.out.word, one.out.shut_in) == ("blocked", ("cot",))


def test_who_may_get_out_by_what_is_to_be_tried_is_not_said_to_be_shut_in() -> None:
    one = two_beds(release="")
    assert one.out is not None and (one.out.word, one.out.shut_in) == ("untried", ("bed",))
    assert "To be tried or measured before it counts: ramp NOT TRIED YET." in words(one)


def test_the_plan_of_the_ways_out_names_the_bed_a_way_is_shut_from() -> None:
    rig, slot = worked(written())
    (sheet,) = [one for one in pose_sheets(rig, slot, rig.header.units) if one.name == "exits"]
    marks = [mark for view in sheet.views for mark in view.marks]
    said = {mark.words for mark in marks if isinstance(mark, Text)}
    assert {"0 in only from bed: wall", "0 in only from cot: bed, wall"} <= said
    assert not [mark for mark in marks if isinstance(mark, Symbol) and mark.kind == "fault"]
    (grid,) = sheet.grids
    assert grid.columns[-1] == "In the way" and "Over" not in grid.columns


def test_the_card_for_the_door_names_the_bed_too() -> None:
    rig, slot = worked(written())
    (card,) = [one for one in sheets_of(rig, slot, (), (), "", rig.header.units) if one.name == "door-card"]
    rows = {row[1]: row[2] for grid in card.grids for row in grid.rows if len(row) == 3}
    assert rows["door, right wall"] == "opens out, NOT from bed"
    assert rows["ramp, rear wall"] == "opens out, NOT from cot"

"""Change-overs of the demo rigs: what moves, what blocks, who gets out, and the card that is printed of it."""

from __future__ import annotations

from datetime import date
from functools import cache

import pytest

from boxwright.book.changeover import ChangeOver, change_over
from boxwright.book.changeover_card import card, changeover_sheets, has_card
from boxwright.book.changeover_ends import ends_of
from boxwright.book.changeover_setting import Making
from boxwright.book.changeover_words import asked_words, because, exit_words, headline, leaving_words, step_words
from boxwright.book.sheets import SLOW, title_of
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.changeover import Changed, Freed, Leaving
from boxwright.disciplines.layout.changeover_numbers import SQUEEZE
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.disciplines.layout.changeover_search import MOST_WAYS
from boxwright.disciplines.layout.changeover_told import PROBED_WAYS, changed
from boxwright.disciplines.safety.sheets import sheets as door_cards
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.drawing.layout import pages_of
from boxwright.drawing.paper import PAPERS
from boxwright.drawing.sheet import TO_TICK
from boxwright.finding import listed
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot, study
from tests.houserules.tree import ROOT

RIGS = ROOT / "rigs"


def worked(text: str, stage: str = "") -> tuple[Rig, Slot]:
    """Return a rig and a slot of it at a stage as planned, or today as ticked."""
    rig = read_rig(text).rig
    number = rig.stage_number(stage) if stage else None
    found = study(rig, date(2026, 5, 2), stage=number, use="tow", ticked=not stage)
    slots = [one for one in found.slots if one.number == found.number and not one.is_for_ticket]
    return rig, next(one for one in slots if one.is_ticked is not bool(stage))


def written(name: str) -> str:
    return (RIGS / f"{name}.yaml").read_text(encoding="utf-8")


def told(text: str, stage: str = "") -> ChangeOver:
    rig, slot = worked(text, stage)
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    return change_over(rig, slot, start, goal)


@cache
def demo(name: str, stage: str = "") -> ChangeOver:
    return told(written(name), stage)


def edited(name: str, old: str, new: str) -> str:
    text = written(name)
    assert old in text
    return text.replace(old, new)


def moves(one: Changed) -> list[str]:
    return [f"{step.word} {step.name}" for step in one.steps]


def test_the_outboard_is_in_the_way_of_the_bunk_and_it_is_said() -> None:
    there = demo("whimbrel", "finish").there
    assert there.word == "without"
    assert {("bunk", "outboard"), ("bunk", "outboard-stand")} <= set(there.meets)
    assert there.leave_out == ("outboard", "outboard-stand")
    done = moves(there)
    assert done.index("carry out outboard") < done.index("carry out outboard-stand") < done.index("let down bunk")
    assert done.index("carry out launch-wheels") < done.index("carry out boat")


def test_without_the_outboard_the_night_is_come_to_as_it_is_written() -> None:
    text = edited(
        "whimbrel",
        "out: [boat, boat-floor, launch-wheels",
        "out: [outboard, outboard-stand, boat, boat-floor, launch-wheels",
    )
    one = told(text, "finish")
    assert one.there.word == one.back.word == "found"
    assert one.there.cost == one.back.cost == demo("whimbrel", "finish").there.cost


def test_a_step_that_blocks_an_exit_is_named() -> None:
    back = demo("whimbrel", "finish").back
    at = {step.name: {one.name: one for one in step.exits} for step in back.steps}
    assert at["boat-floor"]["ramp"].word == "free"
    assert (at["outboard-stand"]["ramp"].word, at["outboard-stand"]["ramp"].by) == ("blocked", ("outboard-stand",))


def test_somebody_on_the_floor_is_held_up_by_what_stands_there() -> None:
    """Crates 0.7 m wide stand in the middle of a room 1.29 m wide, right before the rear door: 0.3 m on each side."""
    before = {one.name: one for one in demo("dunlin", "finish").there.before}
    assert (before["rear"].word, before["rear"].by) == ("blocked", ("bowls-crates",))
    after = {step.name: {one.name: one.word for one in step.exits} for step in demo("dunlin", "finish").there.steps}
    assert after["rear"]["rear"] == "free" and after["bowls-crates"]["rear"] == "free"


def test_out_goes_by_the_exit_that_is_quickest_not_by_the_nearest() -> None:
    out = demo("dunlin", "shelves").out
    assert out is not None and out.seconds is not None
    ((bed, name, far),) = out.ways
    assert (bed, name) == ("bench-bed", "rear")
    # by hand: from the middle of the bed (x 1300) to the rear wall (x 2500) is 1.2 m at the least
    assert 1.2 < far < 2.5
    # 20 s to rise, half a metre a second, 10 s for the door, 5 s for the one who goes through; the hatch takes 20 s
    assert out.seconds == pytest.approx(20.0 + far / 0.5 + 10.0 + 5.0)
    assert out.seconds < 45.0


def test_a_ramp_that_nothing_opens_from_inside_is_no_exit_while_it_is_shut() -> None:
    before = {one.name: one.word for one in demo("whimbrel", "finish").there.before}
    assert before == {"side-door": "free", "ramp": "shut", "window-right": "unknown"}
    release = "release-ramp:    {x: 160, side: centre, z: 40, size: 6 x 8 x 4, weight: 4, stage: "
    text = edited("whimbrel", f"{release}unplanned", f"{release}safe")
    out = told(text, "finish").out
    assert out is not None
    assert {one.name: one.word for one in out.exits}["ramp"] != "shut"


def test_everybody_is_out_of_the_bunk_in_two_minutes() -> None:
    out = demo("whimbrel", "finish").out
    assert out is not None and out.seconds is not None
    assert (out.word, out.steps, out.ways[0][:2]) == ("found", (), ("bunk", "side-door"))
    far = out.ways[0][2]
    assert 2.0 < far < 5.0
    # by hand: 20 s to rise, the way at half a metre a second, 10 s for the door, 5 s for each of the two
    assert out.seconds == pytest.approx(20.0 + far / 0.5 + 10.0 + 2 * 5.0)


def test_a_bunk_that_folds_about_nothing_is_asked_for() -> None:
    text = edited("whimbrel", "hinge: {edge: left, length: 76", "hinge: {length: 76")
    one = told(text, "finish")
    assert any("about which edge bunk folds" in says for says in one.asks)
    assert any("about which edge bunk folds" in says for says in asked_words(one))


MINI = """
boxwright: 1
rig: Mini
units: {length: in, weight: lb}
countries: [US-NC]
class: cargo
people: {one: {weight: 150, height: 66, sleeps: bed}}
trailer:
  body: {length: 120, width: 78, height: 78}
  coupler_x: -40
  axles: {kind: leaf, x: [70], gawr: [3500]}
  gvwr: 3500
openings:
  door: {wall: right, x: 10, width: 30, z: 0, height: 72, cut: yes, release: inside,
    swing: {hinge: front, opens: out, to: 170 deg}}
parts:
  bed:    {x: 80, side: left, z: 10, size: 36 x 70 x 10, weight: 50}
  chest:  {x: 60, side: left+2, z: 0, size: 16 x 16 x 16, weight: 20, kind: cargo}
  locker: {x: 45, side: left, z: 0, size: 10 x 40 x 77, weight: 80}
loads:
  road:  {cargo: all, for: [tow]}
  sleep: {cargo: none, parked: yes, people: [one], for: [sleep]}
"""


def mini(old: str = "", new: str = "") -> ChangeOver:
    """Return the change-over of a room with a bed, a chest that goes out for the night and a locker it goes past."""
    assert old in MINI
    return told(MINI.replace(old, new) if old else MINI, "")


def test_a_room_worked_out_by_hand() -> None:
    one = mini()
    assert moves(one.there) == ["open door", "carry out chest", "shut door"]
    assert moves(one.back) == ["open door", "carry in chest", "shut door"]
    # a door's 10 s, 40 s to carry, 10 s
    assert one.there.cost == one.back.cost == 60.0
    assert not one.asks and [exit.word for exit in one.there.before] == ["free"]


def test_a_locker_that_leaves_no_way_by_is_said() -> None:
    one = mini("size: 10 x 40 x 77", "size: 10 x 70 x 77")
    assert one.there.word == "blocked"
    assert one.there.meets == (("chest", "what is built in"),)
    assert one.out is not None and one.out.word == "blocked"
    assert (one.out.exits[0].word, one.out.exits[0].by) == ("blocked", ("locker",))


def test_a_band_across_the_way_is_asked_for_not_taken_as_clear() -> None:
    one = mini("locker: {x: 45, side: left,", "locker: {x: 45, side: left+0..30,")
    assert one.there.word != "found"
    assert any("where exactly locker stands: measure it" in says for says in one.asks)


def test_a_thing_without_a_place_is_asked_for() -> None:
    for old, new in (("locker: {x: 45", "locker: {x: unknown"), ("chest:  {x: 60", "chest:  {x: unknown")):
        asks = mini(old, new).asks
        assert len(asks) == 1 and f"where {old.split(':')[0]} stands" in asks[0]


def test_a_door_without_a_swing_is_asked_for_and_nothing_goes_through_it() -> None:
    one = mini(",\n    swing: {hinge: front, opens: out, to: 170 deg}", "")
    assert [says for says in one.asks if "how door opens" in says] == list(one.asks)
    assert (one.there.word, one.there.meets, one.there.steps) == ("unknown", (), ())


def test_a_door_of_which_nobody_says_that_it_opens_from_inside_is_not_taken_as_free() -> None:
    one = mini("release: inside,\n    ", "")
    assert [exit.word for exit in one.there.before] == ["unknown"]
    assert one.out is not None and one.out.word != "found"


@pytest.mark.parametrize(
    ("old", "new", "word", "says"),
    [
        (", to: 170 deg", "", "unmeasured", "To be tried or measured before it counts: door NOT MEASURED."),
        ("opens: out, to: 170 deg", "opens: never", "fixed", "Not counted as ways out: door DOES NOT OPEN."),
        ("release: inside", "release: none", "shut", "Not counted as ways out: door NOT FROM INSIDE."),
    ],
)
def test_a_door_that_does_not_open_or_that_nobody_measured_never_reads_as_free(
    old: str, new: str, word: str, says: str
) -> None:
    one = mini(old, new)
    assert one.out is not None and one.out.word == ("untried" if word == "unmeasured" else "blocked")
    assert {exit.word for exit in (*one.there.before, *one.out.exits)} == {word}
    assert says in list(leaving_words(one, worked(MINI)[0].header.units))


def test_what_stands_in_the_way_out_of_bed_is_cleared_first_and_that_takes_its_time() -> None:
    free = mini()
    crates = "  crates: {x: 64, side: left, z: 0, size: 14 x 76 x 60, weight: 20, kind: cargo}"
    text = MINI.replace("  chest:", f"{crates}\n  chest:").replace("cargo: none", "cargo: [crates]")
    text = text.replace("chest:  {x: 60", "chest:  {x: 20").replace("locker: {x: 45", "locker: {x: 2")
    one = told(text, "")
    assert one.out is not None and free.out is not None
    assert [exit.by for exit in one.out.exits] == [("crates",)]
    assert (one.out.word, [f"{step.word} {step.name}" for step in one.out.steps]) == (
        "found", ["set aside crates", "open door", "carry out crates"],
    )  # fmt: skip
    # by hand: nobody opens the door who is behind the crates. 20 s to rise, twice 40 s to carry, 10 s for the door, the
    # way, 5 s to go through a door that is open by then
    assert one.out.seconds == pytest.approx(20.0 + 2 * 40.0 + 10.0 + one.out.ways[0][2] / 0.5 + 5.0)
    assert free.out.seconds == pytest.approx(20.0 + free.out.ways[0][2] / 0.5 + 10.0 + 5.0)


def test_in_stand_in_beds_the_way_out_is_told_as_well() -> None:
    out = demo("whimbrel", "liners").out
    assert out is not None and (out.word, out.ways[0][:2]) == ("found", ("cots", "side-door"))


def test_a_way_between_too_narrow_and_wide_enough_is_tight_and_told_to_be_tried() -> None:
    """By hand: the room is 78 in wide, so a locker of 67, 64 or 58 in leaves 11, 14 or 20."""
    for wide, word in ((67, "blocked"), (64, "tight"), (58, "free")):
        out = mini("size: 10 x 40 x 77", f"size: 10 x {wide} x 77").out
        assert out is not None and out.exits[0].word == word
    assert exit_words(Freed("o", "door", "tight", ("locker",))) == "door tight at locker: try it"


def test_the_words_are_of_one_or_of_more() -> None:
    asks = " ".join(asked_words(demo("dunlin", "finish")))
    assert "than the one that sleeps here" in asks
    assert "than the 2 that sleep here" in " ".join(asked_words(demo("whimbrel", "finish")))
    assert "put cots into the other place" in [step_words(step) for step in demo("whimbrel", "liners").there.steps]


def test_too_narrow_for_anybody_is_what_it_is_where_the_ways_out_are_judged() -> None:
    assert LENGTHS["squeeze"] == SQUEEZE
    assert ROOM["pass"] == LENGTHS["pass"]


def test_hands_follow_the_weight() -> None:
    hands = {step.name: step.hands for step in demo("whimbrel", "finish").there.steps}
    # 84 lb, 112 lb, 36 lb, unknown; half of 144 lb hangs on the hinge
    assert (hands["outboard"], hands["boat"], hands["boat-floor"], hands["launch-wheels"]) == (2, 3, 1, 2)
    assert hands["bunk"] == 2
    assert demo("whimbrel", "finish").unweighed == ("launch-wheels",)


def test_the_crates_are_in_the_way_of_the_bed_and_go_first() -> None:
    there = demo("dunlin", "finish").there
    assert ("bench-bed", "bowls-crates") in there.meets
    assert (there.word, there.leave_out) == ("without", ("bowls-crates",))
    done = moves(there)
    assert done.index("carry out bowls-crates") < done.index("let down bench-bed")
    # its tip draws an arc of 621.3 mm under a shelf 620 mm above its hinge
    assert there.grazes == (("bench-bed", "shelf-right"),)


def test_a_lamp_in_the_arc_of_the_bunk_is_what_blocks() -> None:
    lamp = "  lamp: {x: 100, side: left+30, z: floor+50, size: 6 x 6 x 6, weight: 1, stage: galley}"
    text = edited("whimbrel", "  toilet: ", f"{lamp}\n  toilet: ")
    one = told(text, "finish")
    assert one.there.word == "blocked"
    assert ("bunk", "lamp") in one.there.meets
    # half a metre farther out the bunk goes under it: its tip is 48 in from the hinge
    far = text.replace("lamp: {x: 100, side: left+30, z: floor+50", "lamp: {x: 100, side: left+30, z: floor+70")
    assert ("bunk", "lamp") not in told(far, "finish").there.meets


def test_the_road_is_that_which_holds_what_the_night_needs_and_the_least_besides() -> None:
    for name, road in (("whimbrel", "departure"), ("dunlin", "to-market")):
        rig = read_rig(written(name)).rig
        start, _ = ends_of(rig)
        assert start is not None and start.load.name == road
    assert ends_of(read_rig(written("gannet")).rig)[1] is None


@pytest.mark.parametrize(("name", "stage"), [("whimbrel", "finish"), ("whimbrel", ""), ("dunlin", "finish")])
def test_the_card_is_one_page_with_every_move(name: str, stage: str) -> None:
    rig, slot = worked(written(name), stage)
    (sheet,) = changeover_sheets(rig, slot, rig.header.units)
    paper = PAPERS["letter" if name == "whimbrel" else "a4"]
    assert len(pages_of([sheet], paper, title_of(rig, "", "2026-05-02", rig.header.units))) == 1
    one = demo(name, stage)
    moves_of_card = sheet.grids[1].rows
    assert sum(cell == TO_TICK for row in moves_of_card for cell in row) == len(one.there.steps) + len(one.back.steps)
    assert has_card(rig, slot) and sheet.name in SLOW


def test_there_is_no_card_without_a_night() -> None:
    rig, slot = worked(written("gannet"))
    assert not has_card(rig, slot)
    assert changeover_sheets(rig, slot, rig.header.units) == ()


def test_what_is_not_found_is_never_called_impossible() -> None:
    words = headline(Changed("not-found", states=200), "travel", "night")
    assert "gave up after 200 states" in words and "not known" in words
    none = headline(Changed("blocked", states=4), "travel", "night")
    assert "none was found, nor with a few things left outside" in none
    assert [*because(Changed("blocked", states=4))] == ["All 4 states that can be reached were looked at."]


@pytest.mark.parametrize(
    ("release", "says"),
    [
        ("none", "NOT FROM INSIDE"),
        ("key", "ONLY WITH A KEY"),
        ("tool", "ONLY WITH A TOOL"),
        ("spring", "NOT TRIED YET"),
    ],
)
def test_an_exit_is_told_in_the_words_of_the_card_for_the_door(release: str, says: str) -> None:
    rig, slot = worked(MINI.replace("release: inside", f"release: {release}"), "")
    assert slot.safety is not None
    (ways,) = (
        grid for grid in door_cards(slot.safety, ("US",), (), rig.header.units)[0].grids if grid.title == "Ways out"
    )
    (said,) = {
        one.word: exit_words(one) for one in mini("release: inside", f"release: {release}").there.before
    }.values()
    assert (ways.rows[0][2], said) == (says, f"door {says}")


def test_an_opening_that_nobody_ticked_is_no_way_out() -> None:
    """The window belongs to the stage that is under way, and nobody wrote whether it is cut."""
    text = edited("whimbrel", "stage: roof, cut: no, egress", "stage: roof, release: inside, egress")
    before = {one.name: exit_words(one) for one in told(text).there.before}
    assert before["window-right"] == "window-right NOT IN YET"
    as_planned = {one.name: one.word for one in told(text, "liners").there.before}
    assert as_planned["window-right"] != "perhaps"


def test_an_exit_is_told_by_what_is_known_of_it() -> None:
    assert exit_words(Freed("o", "door", "free")) == "door free"
    assert exit_words(Freed("o", "door", "blocked", ("a", "b", "c"))) == "door BLOCKED by a, b and c"
    assert listed(()) == ""


@pytest.mark.parametrize(("seconds", "says"), [(120.0, "Out in two minutes: from"), (121.0, "Out in two minutes: NO.")])
def test_more_than_two_minutes_is_a_no(seconds: float, says: str) -> None:
    one = demo("whimbrel", "finish")
    out = Leaving("found", (), (("bunk", "door", 3.0),), seconds)
    made = ChangeOver(one.start, one.goal, one.stage, one.there, one.back, out, 2)
    rig = read_rig(written("whimbrel")).rig
    assert next(iter(leaving_words(made, rig.header.units))).startswith(says)
    assert card(made, rig.header.units).grids[0].rows[0][1].startswith(says)


@pytest.mark.parametrize(("stage", "words"), [("finish", {"blocked", "not-found"}), ("", {"found"})])
def test_the_hardest_change_over_is_given_up_or_found_within_so_many_ways(stage: str, words: set[str]) -> None:
    """A ramp of which nobody wrote how it opens leaves a side door that little goes through: the hardest case known."""
    rig, slot = worked(edited("whimbrel", ", swing: {hinge: bottom", ", was: {hinge: bottom"), stage)
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    board = Board(Making(rig, slot, start, goal).setting(1.0))
    there = changed(board, board.state(is_goal=False), board.state(is_goal=True))[0]
    assert there.word in words
    # beside the searches each thing is looked at once alone: can it pass an opening at all
    assert board.ways <= MOST_WAYS + PROBED_WAYS


def test_equal_text_gives_an_equal_answer() -> None:
    assert told(written("dunlin"), "finish") == demo("dunlin", "finish")

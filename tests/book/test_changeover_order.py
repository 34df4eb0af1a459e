"""The order of hands of a change-over: of orders that cost the same, the bed is down last and up first."""

from __future__ import annotations

import pytest

from tests.book.test_changeover_card import MINI, demo, moves, told

BED = "bed:    {x: 80, side: left, z: 10, size: 36 x 70 x 10, weight: 50}"
BUNK = "bed: {x: 80, side: left, z: 20, size: 36 x 50 x 6, weight: 50, folds: up, folded_depth: 6, hinge: {edge: left}}"
UNDER = "  bag: {x: 90, side: left+4, z: 0, size: 12 x 12 x 12, weight: 9, kind: cargo}\n"
COT = (
    "  cot: {x: 14, side: left, z: 20, size: 30 x 24 x 4, weight: 9, folds: up, folded_depth: 4, hinge: {edge: left}}\n"
)
TO_BED = "  quilt: {x: 46, side: right-2, z: 0, size: 20 x 20 x 8, weight: 9, kind: cargo, when_sleeping: {AT}}\n"
ON_BED = "x: 85, side: left+10, z: 26"
PILLOW = "  pillow: {rides_on: bed, x: +2, side: left+2, z: +6, size: 12 x 12 x 4, weight: 2, kind: cargoOWN}\n"
BOX = "  box: {x: 4, side: left, z: 0, size: 12 x 12 x 12, weight: 70, kind: cargo, AWAY}\n"
AWAY = "when_sleeping: {x: 20, side: left, z: 0}"


def folding(*more: str, night: str = "none") -> str:
    """Return the room with a bed that folds up against the wall, and the chest that goes out."""
    text = MINI.replace(BED, BUNK).replace("  chest:", "".join(more) + "  chest:")
    return text.replace("cargo: none", f"cargo: {night}")


def test_the_bed_is_let_down_when_all_is_out_and_folded_up_before_all_comes_in() -> None:
    """Nothing is in its way; let down first it would cost the same, and one would creep under it for the bag."""
    one = told(folding(UNDER))
    there, back = moves(one.there), moves(one.back)
    assert there[-1] == "let down bed" and "carry out bag" in there and there[-2] == "shut door"
    assert back[0] == "fold up bed" and "carry in bag" in back
    # by hand: the bed at 60 s for one pair of hands, the door twice, two things at 40 s
    assert one.there.cost == one.back.cost == 60.0 + 10.0 + 40.0 + 40.0 + 10.0


def test_two_beds_keep_their_order() -> None:
    text = folding(COT, UNDER).replace("sleeps: bed}}", "sleeps: bed}, two: {weight: 130, height: 64, sleeps: cot}}")
    one = told(text.replace("people: [one]", "people: [one, two]"))
    assert moves(one.there)[-2:] == ["let down bed", "let down cot"]
    assert {*moves(one.back)[:2]} == {"fold up bed", "fold up cot"}


def test_what_lies_on_the_bed_at_night_comes_after_it() -> None:
    one = told(folding(TO_BED.replace("AT", ON_BED), UNDER, night="[quilt]"))
    there, back = moves(one.there), moves(one.back)
    assert there[-2:] == ["let down bed", "shift quilt"]
    assert back[:2] == ["shift quilt", "fold up bed"]


def test_what_is_brought_in_to_lie_on_it_comes_while_the_door_is_still_open() -> None:
    text = folding(TO_BED.replace("AT", ON_BED), UNDER, night="[quilt]")
    one = told(text.replace("road:  {cargo: all", "road:  {cargo: [bag, chest]"))
    there, back = moves(one.there), moves(one.back)
    assert there[-3:] == ["let down bed", "carry in quilt", "shut door"]
    assert back[:3] == ["open door", "carry out quilt", "fold up bed"]


def test_what_is_dearer_to_move_than_the_bed_waits_for_it_all_the_same() -> None:
    """Two carry the box, at 80 s for one pair of hands: a search that takes the dearest first takes it first."""
    one = told(folding(BOX.replace("AWAY", AWAY), UNDER, night="[box]"))
    assert moves(one.there)[-1] == "let down bed"
    assert moves(one.back)[0] == "fold up bed"
    one = told(folding(BOX.replace("AWAY", AWAY), TO_BED.replace("AT", ON_BED), night="[box, quilt]"))
    assert moves(one.there)[-2:] == ["let down bed", "shift quilt"]
    assert moves(one.back)[:2] == ["shift quilt", "fold up bed"]


@pytest.mark.parametrize("stage", ["bunk", "finish"])
def test_the_anchor_is_carried_out_from_where_the_bunk_is_not_yet(stage: str) -> None:
    done = moves(demo("whimbrel", stage).there)
    assert done.index("carry out anchor-and-line") < done.index("let down bunk")
    assert moves(demo("whimbrel", stage).back)[0] == "fold up bunk"


def test_tables_and_gazebo_go_out_before_the_bench_is_a_bed() -> None:
    assert moves(demo("dunlin", "shelves").there)[-1] == "let down bench-bed"


@pytest.mark.parametrize(("own", "word"), [(", when_sleeping: {x: 4, side: left, z: 0}", "shift pillow"), ("", "")])
def test_what_rides_on_the_folded_bed_goes_to_its_own_place_or_down_with_it(own: str, word: str) -> None:
    pillow = (
        f"  pillow: {{rides_on: bed, x: +2, side: left+2, z: +6, size: 12 x 12 x 4, weight: 2, kind: cargo{own}}}\n"
    )
    one = told(folding(pillow, night="[pillow]").replace("folded_depth: 6", "folded_depth: 12"))
    there, back = moves(one.there), moves(one.back)
    assert one.there.word == one.back.word == "found"
    assert ("shift pillow" in there, "shift pillow" in back) == (bool(word), bool(word))
    assert dict(one.there.meanwhile).get("pillow") == ("night" if word else None)
    if word:
        assert there.index("shift pillow") < there.index("let down bed")
        assert back.index("fold up bed") < back.index("shift pillow")

"""What moves is as much in doubt as what stands: where it may strike something, that is asked and never passed over."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.clearing import Clearings
from boxwright.disciplines.layout.meeting import lines_of, roots_of
from boxwright.disciplines.layout.pairs import pairs_of
from boxwright.disciplines.layout.sweeps import Mover, Slip, struck_by
from tests.disciplines.layout.knots import Edits, said, told
from tests.disciplines.layout.layouts import ROOM, body

POST = "  post: {x: %s, side: %s, z: %s, size: 4 x 4 x %s, weight: 1, stage: lined, done: yes}\n"


def strikes(edits: Edits, more: str, code: str = "layout/opening-strikes") -> list[tuple[str, str]]:
    return told(code, edits, more)


@pytest.mark.parametrize(
    ("edit", "sure", "post", "who"),
    [
        # in its sliding place from 63.5 in to 83.5 in the fridge meets a post at 82 in, at its best it does not
        (("fridge: {x: 60", "fridge: {x: 56.5..63.5"), "fridge: {x: 63.5", POST % (82, "left+56", 9.2, 8), "fridge"),
        (("by: 12", "by: 12..40"), "by: 40", POST % (66, "right-46", 0, 20), "fridge"),
        (("door: {wall: right, x: 20", "door: {wall: right, x: 10..30"), "door: {wall: right, x: 30",
         POST % (49, "right-1", 20, 20), "door"),
    ],
)  # fmt: skip
def test_what_moves_is_asked_for_where_its_own_doubt_lets_it_strike(
    edit: tuple[str, str], sure: str, post: str, who: str
) -> None:
    of = f"openings[{who}]" if who == "door" else f"parts[{who}]"
    assert strikes((), post) == []
    assert strikes((edit,), post) == [("unknown", of)]
    assert strikes(((edit[0], sure),), post) == [("fix", of)]


def test_a_bed_in_doubt_is_asked_for_where_it_comes_down() -> None:
    lamp = ("lamp: {x: 40, side: left+4, z: 60", "lamp: {x: 24, side: left+4, z: 50")
    code = "layout/sleeping-place"
    assert strikes((lamp,), "", code) == []
    assert strikes((lamp, ("bed: {x: 30", "bed: {x: 25..35")), "", code) == [("unknown", "parts[lamp]")]
    assert strikes((lamp, ("bed: {x: 30", "bed: {x: 25")), "", code) == [("stop", "parts[lamp]")]


def test_an_awning_is_asked_for_as_far_as_it_may_come_out() -> None:
    bin_at = "  bin: {x: 80, side: right+36, z: 62, size: 6 x 6 x 10, weight: 1, stage: lined, done: yes}\n"
    written = "reach: 60, pitch: 10 deg, feet: ground, height: 82 3/8"

    def met(reach: str, pitch: str = "10 deg") -> list[str]:
        found = said(((written, f"reach: {reach}, pitch: {pitch}, feet: ground"),), bin_at)
        about = [one for one in found if "parts[bin]" in {one.where, *one.because}]
        return [one.kind for one in about if one.code == "layout/one-space"]

    assert (met("20"), met("10..40"), met("40")) == ([], ["unknown"], ["fix"])
    assert (met("39..60"), met("40", "9..11 deg")) == (["fix"], ["fix"]), "however far it comes out"
    # a steeper one passes before it, a flatter one over it
    assert (met("40", "60 deg"), met("40", "0 deg"), met("40", "0..30 deg")) == ([], [], ["unknown"])


def test_a_slide_in_doubt_is_sure_of_what_it_meets_at_its_best_and_asks_of_the_rest() -> None:
    slide = Mover("parts[tray]", "tray", "slide", (Slip(Block((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), 0, 0.5, 0.9),), 0.5)
    near, far, beyond = (body(name, (x, 0.2, 0.2), (0.1, 0.1, 0.1)) for name, x in
                         (("near", 1.3), ("far", 1.7), ("beyond", 2.0)))  # fmt: skip
    found = {one.name: sure for _, one, sure in struck_by(slide, (near, far, beyond), frozenset())}
    assert found == {"near": "sure", "far": "perhaps"}
    off = replace(slide, doubt=(0.2, 0.0, 0.0))
    assert {one.name for _, one, _ in struck_by(off, (near, far, beyond), frozenset())} == {"near", "far", "beyond"}


def test_nothing_is_pushed_to_where_something_may_slide() -> None:
    one, other = body("one", (2.0, -1.2, 0.0), (0.5, 2.4, 0.5)), body("other", (2.4, -1.2, 0.0), (0.5, 2.4, 0.5))
    slip = Slip(Block((0.9, -1.2, 0.0), (1.0, 1.2, 0.5)), 0, 0.4, 0.95)
    moving = Mover("parts[tray]", "tray", "slide", (slip,), 0.4)
    bodies = (one, other)
    alone = Clearings(bodies, roots_of(bodies), (), (), (), ROOM).by(one.of)
    assert alone is not None and alone.by == pytest.approx(-0.1)
    past = Clearings(bodies, roots_of(bodies), (moving,), (), (), ROOM).by(one.of)
    assert past is not None and past.by > 0.0


def test_what_only_grazes_at_its_best_is_asked_for_where_it_may_be_deeper() -> None:
    one, other = body("one", (0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), body("other", (0.997, 0.0, 0.0), (1.0, 1.0, 1.0))
    assert [pair.rank for pair in pairs_of((one, other), lines_of((one, other)))] == [2]
    off = replace(other, doubt=(0.02, 0.0, 0.0))
    (found,) = pairs_of((one, off), lines_of((one, off)))
    assert (found.rank, round(found.depth, 6)) == (1, 0.023)
    slide = Mover("parts[tray]", "tray", "slide", (Slip(Block((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), 0, 0.5, 0.5),), 0.5)
    edge = body("edge", (1.2, 0.997, 0.0), (0.1, 0.5, 0.5))
    assert [sure for *_, sure in struck_by(slide, (edge,), frozenset())] == ["grazes"]
    doubtful = replace(edge, doubt=(0.0, 0.02, 0.0))
    assert [sure for *_, sure in struck_by(slide, (doubtful,), frozenset())] == ["perhaps"]


@pytest.mark.parametrize(("other_way", "ranks"), [((0.6, 1.6), [0]), ((1.2, 2.2), [1])])
def test_what_stands_in_one_way_or_another_is_in_a_thing_for_certain_only_in_each(
    other_way: tuple[float, float], ranks: list[int]
) -> None:
    """A post from 0.9 to 1, and a sheet that ends at 1.5 at one end of its doubt."""
    post = body("post", (0.9, 0.0, 0.0), (0.1, 0.1, 0.1))
    ends = [(Block((low, -1.0, 0.05), (high, 1.0, 0.06)),) for low, high in ((0.5, 1.5), other_way)]
    hull = Block((0.5, -1.0, 0.05), (2.2, 1.0, 0.06))
    sheet = replace(post, of="parts[sheet]", name="sheet", blocks=(hull,), is_scattered=True, either=tuple(ends))
    for things in ((post, sheet), (sheet, post)):
        assert [pair.rank for pair in pairs_of(things, lines_of(things))] == ranks
        unwritten = tuple(replace(one, either=()) for one in things)
        assert [pair.rank for pair in pairs_of(unwritten, lines_of(unwritten))] == [1]

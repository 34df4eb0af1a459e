"""What lies on a bed that folds up fits behind it or is told, or asked for, and comes off before the bed is moved.

By hand: the bunk of the small rig is 50 mm thick and stands out 120 mm, so that 70 mm are left behind it.
"""

from __future__ import annotations

import pytest

from boxwright.book.changeover import ChangeOver, change_over
from boxwright.book.changeover_ends import ends_of
from boxwright.finding import Use
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import BUNK, TODAY, mirrored, rig_of

CODE = "layout/sticks-out"
LIES = "{name}: {{rides_on: bunk, x: +100, side: left+50, z: {z}, size: 600 x 400 x {high}, weight: 5, kind: cargo}}\n"
TIN = LIES.format(name="tin", z=650, high=75)


def lies(name: str, high: int, z: int = 650) -> str:
    return LIES.format(name=name, z=z, high=high)


def folded(text: str, use: Use = "tow") -> list[tuple[str, str, str]]:
    """Return kind, place and words of what is said of things that go up with a bed."""
    found = study(read_rig(text).rig, TODAY).findings(use)
    return [(str(one.kind), one.where, one.says) for one in found if one.code == CODE]


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(
    ("parts", "depth", "kind"),
    [
        (TIN, "120", None),  # by no more than the play
        (lies("tin", 76), "120", "fix"),
        (lies("crate", 400), "120", "fix"),
        (lies("tin", 73), "100..120", "unknown"),  # within the play of the most
        (lies("tin", 76), "100..120", "fix"),
        (lies("crate", 400), "60..500", "unknown"),
        (lies("crate", 400), "60..120", "fix"),
        (lies("crate", 400), "450", None),
        (lies("crate", 400), "unknown", "unknown"),
        (lies("pillow", 140), "120", None),  # pressed to half of it
        (lies("pillow", 150), "120", "unknown"),
        (lies("pillow", 400), "120", "unknown"),  # never said for certain
        (TIN + lies("lid", 20, 725), "120", "fix"),  # 95 mm over the bunk, on the tin
    ],
)
def test_what_lies_on_a_bed_fits_behind_it_or_is_told(parts: str, depth: str, kind: str | None, turned: bool) -> None:
    text = rig_of(parts, bunk=BUNK.replace("folded_depth: 120", f"folded_depth: {depth}"))
    text = mirrored(text) if turned else text
    assert [one for one, _, _ in folded(text)] == ([kind] if kind else [])
    assert folded(text, "sleep") == []


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(
    ("mattress", "depth", "kind"),
    [
        (140, "120", None),  # pressed to half of it
        (150, "120", "unknown"),
        (150, "125..130", None),
        (150, "100..130", "unknown"),
        (30, "unknown", "unknown"),
        (30, "", "unknown"),
    ],
)
def test_the_mattress_of_a_bed_goes_up_with_it_or_is_asked_about(
    mattress: int, depth: str, kind: str | None, turned: bool
) -> None:
    bunk = BUNK.replace("folded_depth: 120, ", f"folded_depth: {depth}, " if depth else "")
    text = rig_of("", bunk=f"{bunk}, mattress: 1900 x 700 x {mattress}")
    text = mirrored(text) if turned else text
    assert [(one, where) for one, where, _ in folded(text)] == ([(kind, "parts[bunk]")] if kind else [])
    assert folded(text, "sleep") == []


def test_the_mattress_of_the_change_over_is_asked_about_by_its_name() -> None:
    rig = read_rig(rig_of("", bunk=f"{BUNK}, mattress: 1900 x 700 x 150")).rig
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    asks = change_over(rig, study(rig, TODAY).slots[0], start, goal).asks
    assert "whether its mattress goes up with bunk: try it, and write folded_depth" in asks


def test_a_bed_of_which_nobody_wrote_how_far_it_stands_out_is_asked_about() -> None:
    ((kind, where, says),) = folded(rig_of(TIN, bunk=BUNK.replace("folded_depth: 120, ", "")))
    assert (kind, where) == ("unknown", "parts[tin]")
    assert "nobody wrote how far that stands out" in says


def test_the_words_name_what_is_wanted_and_what_is_left() -> None:
    ((_, where, says),) = folded(rig_of(lies("crate", 400)))
    assert where == "parts[crate]"
    assert says == "crate does not go up with bunk: it is 400 mm high, and 70 mm is left behind the leaf"


def changed(parts: str) -> ChangeOver:
    rig = read_rig(rig_of(parts)).rig
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    return change_over(rig, study(rig, TODAY).slots[0], start, goal)


def test_what_does_not_go_up_with_a_bed_is_taken_off_before_that_is_moved() -> None:
    found = changed(lies("crate", 400))
    names = [(one.name, one.word) for one in found.there.steps]
    assert names.index(("crate", "carry out")) < names.index(("bunk", "let down"))
    assert (found.back.word, found.back.leave_out) == ("without", ("crate",))
    assert [one.name for one in found.back.steps if one.word == "fold up"] == ["bunk"]


def test_what_goes_up_with_a_bed_stays_on_it_and_what_may_is_asked() -> None:
    assert {one.name for one in changed(TIN).there.steps} == {"bunk"}
    found = changed(lies("pillow", 150))
    assert {one.name for one in found.there.steps} == {"bunk"}
    assert any("whether pillow goes up with bunk" in one for one in found.asks)


@pytest.mark.parametrize("use", ["tow", "sleep"])
@pytest.mark.parametrize("at", ["rides_on: bunk, x: +100, side: left+50, z: 650", "x: 3000, side: left, z: floor"])
@pytest.mark.parametrize(
    ("size", "kinds"),
    [
        ("300 x 200 x 50", []),
        ("300 x 200 x 200", ["fix"]),
        ("520 x 200 x 50", ["fix"]),  # from corner to corner it is 504
        ("500 x 200 x 50", ["unknown"]),
        ("300 x 320 x 50", ["unknown"]),  # turned it goes in
    ],
)
def test_what_is_too_large_for_its_box_is_told_wherever_that_rides(
    size: str, kinds: list[str], at: str, use: Use
) -> None:
    box = f"box: {{{at}, size: 400 x 300 x 60, weight: 2, kind: cargo}}\n"
    text = rig_of(f"{box}thing: {{inside: box, size: {size}, weight: 1, kind: cargo}}\n")
    for one in (text, mirrored(text)):
        assert [kind for kind, where, _ in folded(one, use) if where == "parts[thing]"] == kinds


ENDS = "near: {{x: {near}, side: left+450, z: 0, size: 100 x 40 x 900, weight: 5, stage: all, done: yes}}\n"
ENDS += "far: {{x: {far}, side: left+450, z: 0, size: 100 x 40 x 900, weight: 5, stage: all, done: yes}}\n"
RAIL = "rail: {{x: 900, side: left+450, z: 600, size: {long} x 40 x 60, weight: 5, stage: all, done: yes}}\n"
POST = "post: {{x: 900, side: left+{side}, z: 0, size: 100 x 40 x 900, weight: 5, {more}}}\n"
BUILT = "stage: all, done: yes"


def hinged(text: str) -> list[tuple[str, str]]:
    """Return kind and place of what is said of an edge a bed is hinged on at no wall."""
    found = study(read_rig(text).rig, TODAY).findings("sleep")
    return [(str(one.kind), one.where) for one in found if "folds about nothing" in one.says]


ASKED = [("unknown", "parts[bunk]")]


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(
    ("side", "edge", "parts", "expected"),
    [
        ("left", "left", "", []),
        ("left+150", "left", "", []),  # on blocks before the studs
        ("left+160", "left", "", ASKED),
        ("left+500", "left", "", ASKED),
        ("left", "right", "", ASKED),  # the edge in the middle of the room
        ("left+500", "left", POST.format(side=450, more=BUILT), ASKED),  # one post in the middle holds neither end
        ("left+500", "left", ENDS.format(near=400, far=1260), []),  # 960 of 1900, from the first to the last
        ("left+500", "left", ENDS.format(near=400, far=1240), ASKED),  # 940
        ("left+500", "left", RAIL.format(long=960), []),
        ("left+500", "left", RAIL.format(long=10), ASKED),  # a hook
        ("left+500", "left", POST.format(side=100, more=BUILT), ASKED),
        ("left+500", "left", POST.format(side=450, more="kind: cargo"), ASKED),
        ("left+100..300", "left", "", ASKED),
    ],
)
def test_a_bed_hinged_at_no_wall_is_asked_about(
    side: str, edge: str, parts: str, expected: list[tuple[str, str]], turned: bool
) -> None:
    text = rig_of(parts, bunk=BUNK.replace("edge: left", f"edge: {edge}"))
    text = text.replace("bunk: {x: 100, side: left,", f"bunk: {{x: 100, side: {side},")
    assert hinged(mirrored(text) if turned else text) == expected
    if not turned:
        start, goal = ends_of(rig := read_rig(text).rig)
        assert start is not None and goal is not None
        asks = change_over(rig, study(rig, TODAY).slots[0], start, goal).asks
        assert any("what bunk is hinged to" in one for one in asks) == bool(expected)

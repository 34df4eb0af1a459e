"""A change-over and safety say the same of the same night: what is a way out, from which bed, and what is to be tried.

Neither may import the other, so that each has its own; what counts as a way out is safety's to say.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from random import Random

import pytest

from boxwright.book.changeover_ends import ends_of
from boxwright.book.changeover_setting import Making
from boxwright.disciplines.layout.changeover import Freed
from boxwright.disciplines.layout.changeover_exits import exits_at
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.disciplines.safety.result import Exit
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot, study
from tests.disciplines.layout.small_rigs import CARGO, DONE, rig_of, thing
from tests.houserules.tree import ROOT

JUDGED_ON = date(2026, 6, 1)
ASKS = {"way-blocked", "clear-opening", "opens-from-inside", "hatch-out-of-reach"}
"""The rules of safety that ask about one way out."""
TO_BE_TRIED = {"tight", "unknown", "unmeasured"}
SWINGS = (
    "swing: {hinge: front, opens: out, to: 90 deg}",
    "swing: {hinge: top, opens: out, to: 80 deg}",
    "swing: {hinge: rear, opens: out, to: 40 deg}",
    "swing: {hinge: front, opens: in, to: 90 deg}",
    "swing: {opens: no}",
    "slides: {to: rear, by: 500}",
    "egress: yes",
)


def nights(rig: Rig) -> Iterator[Slot]:
    """Yield a rig in its night at every stage, as planned and as ticked."""
    _, goal = ends_of(rig)
    for number in range(len(rig.stages_in_order)):
        for is_ticked in (False, True):
            slots = study(rig, JUDGED_ON, stage=number, use="sleep", ticked=is_ticked).slots
            yield from (one for one in slots if goal is not None and one.use == "sleep" and one.load == goal.load.name)


def told_apart(rig: Rig, slot: Slot) -> list[tuple[str, str, str, str]]:
    """Return what they say differently of an opening: its name, the change-over's word, from where, what it says."""
    start, goal = ends_of(rig)
    assert start is not None and goal is not None and slot.safety is not None
    board = Board(Making(rig, slot, start, goal).setting(1.0))
    words = {one.of: one for one in exits_at(board, board.state(is_goal=True))}
    beds = [one.name for one in slot.safety.beds] or ["the floor"]
    found = []
    for one in slot.safety.exits:
        if one.there == "no":
            continue
        freed, name = words.pop(one.way.of, None), one.way.name
        word = freed.word if freed is not None else "left out"
        is_lost = not one.counts or one.way_shut_by is not None
        if is_lost == (word in {"free", *TO_BE_TRIED}) or freed is None:
            found.append((name, word, "", "lost" if is_lost else "counts"))
            continue
        found += [(name, word, bed, "free" if freed.lets_out(bed) else "not free")
                  for bed in beds if freed.lets_out(bed) != _is_sure(slot, one, bed, is_lost)]  # fmt: skip
    return found + [(one.name, one.word, "", "no way out") for one in words.values()]


def _is_sure(slot: Slot, one: Exit, bed: str, is_lost: bool) -> bool:
    """Return whether safety counts a way out from a bed and asks nothing of it there."""
    asked = [
        found.says
        for found in slot.findings
        if found.where == one.way.of and found.code.removeprefix("safety/") in ASKS and found.kind != "limit"
    ]
    of_here = [says for says in asked if f"from {bed} to" in says or ("the way from" not in says)]
    return not is_lost and bed not in one.not_from and not of_here


def written(seed: int) -> str:
    """Return a small rig with a hatch, a window, a flap, things in the way and a second bed, drawn by chance."""
    draw = Random(seed)
    c = draw.choice
    holes = ""
    for name, walls, odds in (
        ("hatch", ["roof"], 0.8),
        ("window", ["left", "front", "rear"], 0.5),
        ("flap", ["right"], 0.3),
    ):
        if draw.random() > odds:
            continue
        wall = c(walls)
        place = f"x: {c([150, 400, 900, 2500, '200..600', 'unknown'])}, "
        across = c([310, 400, 460, 500, 600])
        if wall in {"front", "rear"}:
            place = f"side: {c(['centre', 'left+100', 'right-100'])}, "
        if wall == "roof":
            place += f"side: {c(['left+50', 'left+200', 'centre', 'right-200'])}, across: {across}"
        else:
            place += f"z: {c([300, 700, 1000, 'unknown'])}, height: {across}"
        how = c(SWINGS) + c(["", "", ", clear: {width: 480, height: 480}", ", clear: {width: 350, height: 440}"])
        release = c(["release: inside"] * 4 + ["release: key", "release: none", "release: handle", "note: bare"])
        ticked = c(["cut: yes, done: yes"] * 4 + ["cut: no, done: no", "done: part", "cut: yes"])
        width = c([250, 310, 400, 460, 500, 600, "400..500", "unknown"])
        holes += f"{name}: {{wall: {wall}, {place}, width: {width}, stage: all, {ticked}, {release}, {how}}}\n"
    parts = "".join(
        thing(f"thing-{number}", draw.randrange(0, 3600, 50), c(["left", "right", "centre", "left+300"]),
              c([0, 0, 300, 700, 1850]), f"{c([200, 600])} x {c([200, 500, 900])} x {c([100, 400, 900, 1500])}",
              c([DONE, CARGO, "weight: 5, stage: all, done: part"]))
        for number in range(draw.randint(0, 4))
    )  # fmt: skip
    if draw.random() < 0.3:
        parts += thing("panel", draw.randrange(0, 2500, 100), c(["left", "centre"]), "bows+30", "900 x 500 x 40")
    bed = c(["kind: bed", "kind: bed, mattress: 1900 x 700 x 80", "folds: up, folded_depth: 120, hinge: {edge: left}"])
    text = rig_of(parts, holes, bunk=bed)
    text = text.replace(
        "x: 100, side: left, z: 600", f"x: 100, side: {c(['left', 'right'])}, z: {c([300, 760, 800, 900])}"
    )
    return text.replace("cut: yes, release: inside", f"cut: yes, release: {c(['none', 'key', 'inside', 'inside'])}", 1)


@pytest.mark.parametrize("name", ["whimbrel", "dunlin", "gannet"])
def test_of_the_demo_rigs_they_say_the_same_at_every_stage(name: str) -> None:
    rig = read_rig((ROOT / "rigs" / f"{name}.yaml").read_text(encoding="utf-8")).rig
    slots = tuple(nights(rig))
    assert (not slots) == (name == "gannet")  # nobody sleeps in Gannet
    assert [(slot.stage, slot.is_ticked, apart) for slot in slots for apart in told_apart(rig, slot)] == []


@pytest.mark.parametrize("seed", range(48))
def test_of_rigs_drawn_by_chance_they_say_the_same(seed: int) -> None:
    rig = read_rig(written(seed)).rig
    slots = tuple(nights(rig))
    assert len(slots) == 2
    assert [(slot.is_ticked, apart) for slot in slots for apart in told_apart(rig, slot)] == []


HATCH = "hatch: {wall: roof, x: 500, side: left+100, width: 500, across: 500, stage: all, cut: yes, done: yes, "
HATCH += "release: inside, swing: {hinge: front, opens: up, to: 90 deg}, clear: {width: 460, height: 460}}"
NO_DOORS = ("by: builder, cut: yes, release: inside", "by: builder, cut: yes, release: none")
UP = ("z: 600, size: 1900", "z: 800, size: 1900")


def hatch_of(text: str) -> tuple[Freed, list[tuple[str, str, str, str]]]:
    """Return the hatch at the end of a change-over, and what safety says differently."""
    rig = read_rig(text).rig
    slot = next(iter(nights(rig)))
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    board = Board(Making(rig, slot, start, goal).setting(1.0))
    (found,) = [one for one in exits_at(board, board.state(is_goal=True)) if one.name == "hatch"]
    return found, told_apart(rig, slot)


@pytest.mark.parametrize(
    ("more", "edit", "word"),
    [
        ("", ("", ""), "free"),
        ("", ("z: 800, size: 1900", "z: 600, size: 1900"), "unknown"),  # 1.35 m under the roof, and 1.2 counts
        (thing("panel", 100, "left", "bows+30", "440 x 900 x 40"), ("", ""), "unknown"),  # 40 mm of it are covered
        (thing("panel", 100, "left", "bows+30", "400 x 900 x 40"), ("", ""), "free"),
        (thing("panel", 100, "left", "bows+30", "700 x 900 x 40"), ("", ""), "blocked"),  # 200 mm are left
        ("", ("width: 500, across: 500", "width: 400, across: 500"), "tight"),
        ("", ("width: 460, height: 460}}", "width: 540, height: 460}}"), "unmeasured"),  # more than the hole
        (
            "",
            (
                "release: inside, swing: {hinge: front, opens: up",
                "release: inside, egress: unknown, swing: {hinge: front, opens: up",
            ),
            "unknown",
        ),
    ],
)
def test_a_hatch_over_a_bed_is_a_way_out_where_safety_counts_it(more: str, edit: tuple[str, str], word: str) -> None:
    text = rig_of(more, HATCH, bunk="kind: bed").replace(*NO_DOORS).replace(*UP)
    assert edit[0] in text
    found, apart = hatch_of(text.replace(*edit))
    assert (found.word, apart) == (word, [])


WINDOW = "window: {wall: left, x: 500, z: 700, width: 600, height: %s, stage: all, cut: yes, done: yes, "
WINDOW += "release: inside, swing: {hinge: top, opens: out, to: 90 deg}, clear: {width: 550, height: %s}}"


CLEAR = "clear: {width: 550, height: 550}"


def ends_as(text: str) -> dict[str, str]:
    """Return what is said of each way out at the end of a change-over; safety has to say the same."""
    rig = read_rig(text).rig
    slot = next(iter(nights(rig)))
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    board = Board(Making(rig, slot, start, goal).setting(1.0))
    assert told_apart(rig, slot) == []
    return {one.name: one.word for one in exits_at(board, board.state(is_goal=True))}


@pytest.mark.parametrize(("height", "word"), [(600, "free"), (590, "tight"), (450, "tight"), (440, "blocked")])
def test_a_bed_before_a_window_takes_off_its_height_in_both(height: int, word: str) -> None:
    """The bed ends at 850 mm, 150 over the sill; what is left has to be 450 mm, and 300 mm at least."""
    text = rig_of(openings=WINDOW % (height, height - 20), bunk="kind: bed")
    assert ends_as(text.replace("z: 600, size: 1900", "z: 800, size: 1900"))["window"] == word


def test_nobody_can_say_how_one_gets_up_to_a_hatch_from_the_floor() -> None:
    """Where nobody's bed stands a way out in the roof is asked about as where a bed is not under it."""
    text = rig_of(openings=HATCH).replace("weight: 25, stage: all, done: yes", "weight: 25, stage: later")
    text = text.replace("  all: {what: all}", "  all: {what: all}\n  later: {what: the bunk}")
    found, apart = hatch_of(text)
    assert (found.word, apart) == ("unknown", [])


@pytest.mark.parametrize(
    ("gap", "word"), [(451, "free"), (450, "free"), (449, "tight"), (300, "tight"), (299, "blocked")]
)
def test_a_way_just_as_wide_as_is_wanted_is_wide_enough_in_both(gap: int, word: str) -> None:
    """A way is wide enough from 450 mm on, and none under 300 mm."""
    half = (2000 - gap) / 2.0
    parts = thing("left-side", 2000, "left", 0, f"300 x {half} x 1900")
    parts += thing("right-side", 2000, "right", 0, f"300 x {half} x 1900")
    assert ends_as(rig_of(parts, bunk="kind: bed"))["ramp"] == word


def test_a_way_is_free_only_wherever_an_opening_in_doubt_may_be() -> None:
    """At its first end the window is all over the bed, at its last 400 mm of it are before a cupboard."""
    window = WINDOW.replace("x: 500", "x: 1000..1900") % (600, 550)
    text = rig_of(thing("cupboard", 2100, "left", 0, "600 x 300 x 1900"), window, bunk="kind: bed")
    assert ends_as(text)["window"] == "tight"
    assert ends_as(text.replace("x: 1000..1900", "x: 1000..1100"))["window"] == "free"


def test_a_hole_nobody_gets_through_is_no_way_out_of_either() -> None:
    window = (WINDOW % (600, 550)).replace("width: 600", "width: 250, egress: yes")
    text = rig_of(openings=f"{window.partition(', swing')[0]}}}")
    assert ends_as(text)["window"] == "blocked"
    says = [
        one.says for one in study(read_rig(text).rig, JUDGED_ON).findings("sleep") if one.where == "openings[window]"
    ]
    assert any("window leaves 250 mm x 600 mm to get through: nobody gets out by it" in one for one in says)


@pytest.mark.parametrize(("x", "word"), [(3390, "free"), (3450, "unknown")])
def test_what_stands_out_past_the_skin_may_stop_a_leaf_that_opens_outward(x: int, word: str) -> None:
    """The room ends at 4000 mm, the skin at 4040 at most: a crate of 600 mm that ends at 4050 is through the ramp."""
    text = rig_of(thing("crate", x, "left+300", 300, "600 x 500 x 400"), bunk="kind: bed")
    assert ends_as(text)["ramp"] == word

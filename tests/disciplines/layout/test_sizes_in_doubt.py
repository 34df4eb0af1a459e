"""A size that is written as a range is no mistake: the thing is as large and as small as it may be, and is asked about.

By hand, in mm, in the small rig: a crate at x = 1000 that is 300 to 500 long surely fills 1000 to 1300, and perhaps to
1500.
"""

from __future__ import annotations

from functools import cache

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import CARGO, DONE, TODAY, mirrored, rig_of, thing

BED = "bunk: {x: 100, side: left, z: 600, size: 1900 x 700 x 50"


@cache
def told(text: str, use: str = "sleep") -> frozenset[tuple[str, str, str]]:
    """Return kind, code and place of all that is said, and that nothing of it is taken as a mistake."""
    read = read_rig(text)
    assert [one.says for one in read.problems if one.kind == "problem"] == []
    return frozenset((str(one.kind), one.code, one.where) for one in study(read.rig, TODAY).findings(use))


def of(code: str, text: str, use: str = "sleep") -> list[tuple[str, str]]:
    """Return kind and place of what one rule says."""
    return sorted((kind, where) for kind, found, where in told(text, use) if found == code)


CRATE = thing("crate", 1000, "right", 0, "%s x 300 x 300")


@pytest.mark.parametrize("is_mirrored", [False, True])
@pytest.mark.parametrize(
    ("size", "x", "kinds"),
    [
        ("300..500", 1100, ["fix"]),
        ("300..500", 1450, ["unknown"]),
        ("300..500", 1520, []),
        ("400", 1450, []),
        ("about 400", 1450, ["unknown"]),  # 320 to 480
        ("400 +-30", 1450, []),
        ("400 +-60", 1450, ["unknown"]),
    ],
)
def test_things_that_may_be_in_each_other(size: str, x: int, kinds: list[str], is_mirrored: bool) -> None:
    text = rig_of(CRATE % size + thing("bin", x, "right", 0, "200 x 300 x 300"))
    found = of("layout/one-space", mirrored(text) if is_mirrored else text)
    assert [kind for kind, _ in found] == kinds


@pytest.mark.parametrize("size", ["300..500 x 300 x 300", "300 x 300..500 x 300", "300 x 300 x 300..500"])
def test_each_side_may_be_in_doubt(size: str) -> None:
    """The shelf begins 420 behind the crate's front, 420 from the wall or 420 up: 400 are the best of 300 to 500."""
    shelves = {
        0: thing("shelf", 1420, "right", 0, "200 x 300 x 300"),
        1: thing("shelf", 1000, "right-420", 0, "300 x 200 x 300"),
        2: thing("shelf", 1000, "right", 420, "300 x 300 x 20"),
    }
    axis = next(axis for axis, side in enumerate(size.split(" x ")) if ".." in side)
    crate = thing("crate", 1000, "right", 0, size)
    for other, shelf in shelves.items():
        kinds = [kind for kind, _ in of("layout/one-space", rig_of(crate + shelf))]
        assert kinds == (["unknown"] if other == axis else [])


@pytest.mark.parametrize("size", ["unknown x 300 x 300", "300 x ? x 300", "unknown"])
def test_a_side_nobody_knows_is_a_size_nobody_knows(size: str) -> None:
    written = f'"{size}"' if "?" in size else size
    assert of("layout/place-unknown", rig_of(thing("crate", 1000, "right", 0, written))) == [
        ("unknown", "parts[crate]")
    ]


@pytest.mark.parametrize(
    ("size", "kinds"), [("1750..1900", []), ("1700..1900", ["unknown"]), ("1600..1700", ["advice"])]
)
def test_a_bed_that_may_be_too_short_is_asked_about(size: str, kinds: list[str]) -> None:
    """Who is 1650 tall wants 1750 (common practice, no source)."""
    text = rig_of().replace(BED, BED.replace("1900 x", f"{size} x"))
    assert [kind for kind, _ in of("layout/bed-short", text)] == kinds


@pytest.mark.parametrize(
    ("size", "kinds"), [("700", []), ("680..720", []), ("600..800", ["unknown"]), ("800", ["fix"])]
)
def test_a_bed_of_which_the_width_is_in_doubt_stands_as_high_as_that_when_it_is_up(size: str, kinds: list[str]) -> None:
    """Its underside is 600 up: folded it ends at 1300, at 1400 at most; the shelf begins at 1350."""
    text = rig_of(thing("shelf", 500, "left", 1350, "300 x 200 x 20")).replace(BED, BED.replace("700", size))
    assert [kind for kind, _ in of("layout/one-space", text, "tow")] == kinds


@pytest.mark.parametrize(
    ("x", "kinds"), [("1200", []), ("1100..1300", []), ("1000..1400", ["unknown"]), ("1350", ["fix"])]
)
def test_what_rides_on_a_thing_is_where_that_is_wherever_that_may_be(x: str, kinds: list[str]) -> None:
    """The kettle is 200 long on a table of 400, 100 behind its front: at 1300 where the table is at best at 1200."""
    table = thing("table", x, "right", 0, "400 x 300 x 500")
    kettle = f"kettle: {{rides_on: table, x: +100, side: +0, z: +500, size: 200 x 200 x 200, {CARGO}}}\n"
    hook = thing("hook", 1620, "right-100", 550, "100 x 200 x 100", DONE)
    found = of("layout/one-space", rig_of(table + kettle + hook))
    assert [kind for kind, _ in found] == kinds


@pytest.mark.parametrize(("hook", "kinds"), [(1310, []), (1290, ["fix"])])
def test_what_rides_on_a_thing_of_which_the_size_is_in_doubt_is_where_it_is_written(
    hook: int, kinds: list[str]
) -> None:
    table = thing("table", 1000, "right", 0, "300..500 x 300 x 500")
    kettle = f"kettle: {{rides_on: table, x: +100, side: +0, z: +500, size: 200 x 200 x 200, {CARGO}}}\n"
    text = rig_of(table + kettle + thing("hook", hook, "right-100", 550, "100 x 200 x 100"))
    assert [kind for kind, _ in of("layout/one-space", text)] == kinds


@pytest.mark.parametrize(("size", "kinds"), [("400", []), ("300..500", ["unknown"]), ("unknown", [])])
def test_a_size_at_night_may_be_in_doubt_as_well(size: str, kinds: list[str]) -> None:
    """At night it stands at x = 2100 and the bin at 2550: it may end at 2600. Unknown is as large as by day."""
    night = f"when_sleeping: {{x: 2100, side: right, z: 0, size: {size} x 300 x 300}}"
    crate = thing("crate", 1000, "right", 0, "400 x 300 x 300", f"{DONE}, {night}")
    text = rig_of(crate + thing("bin", 2550, "right", 0, "200 x 300 x 300"))
    assert [kind for kind, _ in of("layout/one-space", text)] == kinds


@pytest.mark.parametrize("key", ["swing", "slides"])
def test_unknown_is_a_way_to_open_that_is_asked_about(key: str) -> None:
    text = rig_of(thing("chest", 1000, "right", 0, "300 x 300 x 300", f"{DONE}, {key}: unknown"))
    found = of("layout/opening-unsaid", text)
    assert found == [("unknown", "parts[chest]")]
    says = [one.says for one in study(read_rig(text).rig, TODAY).findings("sleep") if one.where == "parts[chest]"]
    words = {"swing": "it is not written how chest opens", "slides": "it is not known which way chest slides out"}
    assert any(one.startswith(words[key]) for one in says)


@pytest.mark.parametrize("leaf", ["swing: unknown", "slides: unknown", "unit: {weight: 9, swing: unknown}"])
def test_so_is_that_of_an_opening_and_nothing_is_known_to_be_clear_of_it(leaf: str) -> None:
    text = rig_of(door=leaf)
    assert ("unknown", "openings[door]") in of("layout/opening-unsaid", text)
    assert ("unknown", "openings[door]") in of("safety/clear-opening", text)


def test_a_camera_nobody_knows_the_sight_of() -> None:
    text = rig_of(thing("camera", 3990, "centre", 2200, "50 x 50 x 50", f"{DONE}, sees: unknown"))
    assert of("layout/opening-unsaid", text, "tow") == [("unknown", "parts[camera]")]


@pytest.mark.parametrize(
    ("size", "kinds"),
    [("400", []), ("1300", ["fix"]), ("1150..1250", ["fix"]), ("1010..1290", ["unknown"]), ("1000..1400", ["unknown"])],
)
def test_what_may_go_through_the_wall_at_each_end_of_its_size_is_not_let_pass(size: str, kinds: list[str]) -> None:
    """At its best it begins 100 to the left of the middle, and the studs end 1000 to the right of that.

    Of 1150 to 1250 it is 100 through, 50 in doubt; of 1010 to 1290 it is 50 through and 140 in doubt.
    """
    text = rig_of(thing("crate", 1000, "X", 0, f"700 x {size} x 300"))
    best = sum(float(end) for end in size.split("..")) / len(size.split(".."))
    text = text.replace("side: X", f"side: centre+{best / 2.0 - 100.0}" if best > 400 else "side: centre")
    assert [kind for kind, _ in of("layout/through-shell", text)] == kinds

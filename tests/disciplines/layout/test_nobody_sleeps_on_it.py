"""A leaf that folds and on which nobody sleeps shuts no bed; a bed for one may be too narrow as well.

By hand, in mm: the flap of the small rig is hinged at the right wall, 700 up and 500 deep, and a crate stands under it
from 600 to 900 up, so that the flap strikes it as it comes down.
"""

from __future__ import annotations

from functools import cache

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import DONE, TODAY, mirrored, rig_of, thing

FLAP = thing(
    "flap", 2200, "right", 700, "1700 x 500 x 30", f"{DONE}, folds: up, folded_depth: 60, hinge: {{edge: right}}"
)
CRATE = thing("crate", 2300, "right-100", 600, "200 x 200 x 300")
BUNK = "size: 1900 x 700 x 50"


@cache
def told(text: str, use: str = "sleep") -> frozenset[tuple[str, str, str, str]]:
    """Return kind, code, place and words of what layout says."""
    read = read_rig(text)
    assert [one.says for one in read.problems if one.kind == "problem"] == []
    found = study(read.rig, TODAY).findings(use)
    return frozenset((str(one.kind), one.code, one.where, one.says) for one in found if one.code.startswith("layout/"))


def kinds(code: str, text: str) -> list[tuple[str, str]]:
    return sorted((kind, where) for kind, found, where, _ in told(text) if found == f"layout/{code}")


@pytest.mark.parametrize("is_mirrored", [False, True])
def test_what_a_flap_strikes_is_put_right_and_stops_nobody_from_sleeping(is_mirrored: bool) -> None:
    text = rig_of(FLAP + CRATE)
    text = mirrored(text) if is_mirrored else text
    assert kinds("sleeping-place", text) == []
    assert kinds("opening-strikes", text) == [("fix", "parts[flap]")]
    assert any("flap strikes crate when it comes down" in says for *_, says in told(text))


@pytest.mark.parametrize("sleeps", ["flap", "nothing-there"])
def test_where_somebody_sleeps_on_it_or_nobody_knows_on_what_it_is_a_bed(sleeps: str) -> None:
    text = rig_of(FLAP + CRATE).replace("sleeps: bunk", f"sleeps: {sleeps}") if sleeps == "flap" else ""
    text = text or rig_of(FLAP + CRATE).replace(", sleeps: bunk", "")
    assert kinds("sleeping-place", text) == [("stop", "parts[crate]")]
    assert ("fix", "parts[flap]") not in kinds("opening-strikes", text)


def test_what_stands_in_a_flap_that_is_down_is_told_as_anywhere() -> None:
    inside = thing("crate", 2300, "right-300", 690, "200 x 100 x 300")
    text = rig_of(FLAP.replace(", folds: up, folded_depth: 60, hinge: {edge: right}", "") + inside)
    assert kinds("one-space", text) == [("fix", "parts[crate]")]
    assert kinds("sleeping-place", rig_of(FLAP + inside)) == []


def test_the_bed_beside_it_is_a_bed_still() -> None:
    crate = thing("crate", 500, "left+200", 500, "200 x 200 x 300")
    assert kinds("sleeping-place", rig_of(FLAP + crate)) == [("stop", "parts[crate]")]


@pytest.mark.parametrize(
    ("wide", "kind"),
    [("600", []), ("590", ["advice"]), ("700", []), ("580..640", ["unknown"]), ("500..560", ["advice"])],
)
def test_one_who_sleeps_alone_may_have_a_narrow_bed(wide: str, kind: list[str]) -> None:
    """600 are usual (common practice, no source)."""
    found = [one for one in told(rig_of().replace(BUNK, BUNK.replace("700", wide))) if one[1] == "layout/bed-narrow"]
    assert [one[0] for one in found] == kind
    if kind == ["advice"] and wide == "590":
        assert found[0][2] == "people[owner]" and "owner lies on bunk, 590 mm wide; 600 mm is usual" in found[0][3]


def test_a_flap_that_is_too_long_for_the_room_is_put_right_too() -> None:
    """It begins at x = 2200: 1900 long it ends 100 beyond the rear wall."""
    text = rig_of(FLAP.replace("1700 x", "1900 x"))
    assert ("fix", "parts[flap]") in kinds("opening-strikes", text)
    assert kinds("sleeping-place", text) == []


def test_what_stands_on_such_a_flap_is_not_slept_on() -> None:
    """A jug on it and a shelf at its free edge are in each other; the flap itself passes the shelf as it comes down.

    The near lower corner of the shelf is 440 off the wall and 300 over the hinge: 533 from it; the flap is 500 deep.
    """
    jug = "jug: {rides_on: flap, x: +100, side: +0, z: +30, size: 60 x 60 x 300, weight: 1, stage: all, done: yes}\n"
    text = rig_of(FLAP + jug + thing("shelf", 2250, "right-440", 1000, "200 x 60 x 20"))
    assert kinds("one-space", text) == [("fix", "parts[shelf]")]
    assert kinds("sleeping-place", text) == []

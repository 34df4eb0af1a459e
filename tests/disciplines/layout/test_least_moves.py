"""The least move: up or down for what hangs, never of the bed somebody sleeps on."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import CARGO, DONE, TODAY, mirrored, rig_of, thing

FLAT = "mattress: 1900 x 700 x 50"
CAB = thing("cab", 2000, "left", 0, "600 x 400 x 800", DONE)


def acts(parts: str, code: str, bunk: str = FLAT, use: str = "work") -> set[str]:
    """Return what is to be done about what one rule says, of the rig and of the mirrored one by the same words."""
    found = []
    text = rig_of(parts, bunk=bunk)
    for one in (text, mirrored(text)):
        said = study(read_rig(one).rig, TODAY).findings(use)  # type: ignore[arg-type]
        found.append({(said.act or "").partition(":")[0] for said in said if said.code == f"layout/{code}"})
    assert {act.replace("left", "right") for act in found[0]} == {act.replace("left", "right") for act in found[1]}
    return found[0]


@pytest.mark.parametrize(
    ("z", "high", "act"),
    [
        (790, 300, "Move shelf 10 mm up"),
        (790, 1205, "Move shelf 400 mm to the right"),  # under a ceiling at 2000 it cannot go up
        (1990 - 300, 300, ""),
    ],
)
def test_a_shelf_that_hangs_goes_up_or_down_where_that_is_least(z: int, high: int, act: str) -> None:
    """The cabinet is 400 deep and 800 high; the shelf is 220 deep."""
    assert acts(CAB + thing("shelf", 2000, "left", z, f"600 x 220 x {high}", DONE), "one-space") == (
        {act} if act else set()
    )


def test_over_a_hob_it_goes_as_high_as_is_wanted_and_under_a_duct_down() -> None:
    hob = "hob: {rides_on: cab, x: 2100, side: left+50, z: 800, size: 300 x 300 x 50, keep_clear: {above: 600}, "
    hob += f"{DONE}}}\n"
    shelf = thing("shelf", 2000, "left", 1440, "600 x 300 x 300", DONE)
    assert acts(CAB + hob + shelf, "kept-clear") == {"Move shelf 10 mm up"}
    duct = thing("duct", 1900, "left", 1730, "1000 x 500 x 270", DONE)
    assert acts(shelf + duct, "one-space") == {"Move shelf 10 mm down"}


@pytest.mark.parametrize(
    ("under", "z", "more", "is_lifted"),
    [
        ("", 0, DONE, False),  # on the floor
        (CAB, 800, DONE, False),
        ("", 800, DONE, True),
        ("", 800, CARGO, False),  # it is hung nowhere
    ],
)
def test_what_stands_on_something_is_not_lifted(under: str, z: int, more: str, is_lifted: bool) -> None:
    """A tray of 300 x 300 x 30 goes 200 over a block that is 10 higher than what it stands on."""
    tray = thing("tray", 2400, "left", z, "300 x 300 x 30", more)
    block = thing("block", 2600, "left", 0, f"600 x 600 x {z + 10}", DONE)
    assert ("Move tray 10 mm up" in acts(under + tray + block, "one-space")) is is_lifted


@pytest.mark.parametrize(
    ("parts", "code"),
    [
        (
            thing("fridge", 1000, "right", 600, "400 x 500 x 500", f"{DONE}, slides: {{to: left, by: 820}}"),
            "opening-strikes",
        ),
        (
            thing("panel", 500, "right", 1000, "300 x 100 x 400", f"{DONE}, keep_clear: {{front: 1300, width: 300}}"),
            "kept-clear",
        ),
        (thing("post", 1500, "left+650", 0, "100 x 100 x 1900", DONE), "one-space"),
    ],
)
def test_no_other_thing_is_reason_to_move_the_bed(parts: str, code: str) -> None:
    found = acts(parts, code)
    assert found and not any("Move bunk" in act for act in found)
    nobody = rig_of(parts, bunk=FLAT).replace("sleeps: bunk", "sleeps: cot")
    said = study(read_rig(nobody).rig, TODAY).findings("work")
    assert any("Move bunk" in (one.act or "") for one in said if one.code == f"layout/{code}") or code == "one-space"

"""The ways out of bed as a study works them out: with what the shell itself puts in the way, and with stand-ins."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from boxwright.exchange import Aisle
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

INCH = 0.0254
BUNK = 7
WHIMBREL = (Path(__file__).parents[2] / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8")
WHEEL_BOX = "intrusions: {box: {what: wheel box, wall: right, x: 84, z: 0, length: 60, height: 20, depth: 25}}"


def aisles(text: str) -> dict[str, Aisle]:
    """Return the first way to each opening with the bunk in, by the name of the opening."""
    found = study(read_rig(text).rig, date(2026, 5, 2), stage=BUNK)
    (slot,) = found.asked_slots("sleep")
    assert slot.broken == () and slot.safety is not None and slot.safety.aisles
    return {one.leads_to.partition("[")[2].removesuffix("]"): one for one in reversed(slot.safety.aisles)}


def test_a_way_is_as_wide_as_the_room_leaves_it() -> None:
    found = aisles(WHIMBREL)
    # inside it is 79 in wide; the fridge begins 17 in from the right, the tools end 32 in from the left
    assert found["side-door"].width.best == pytest.approx(30.0 * INCH, abs=2e-4)
    assert found["side-door"].sleepers == ("skipper", "spotter")


def test_what_stands_up_through_the_floor_is_in_the_way_too() -> None:
    text = WHIMBREL.replace("  skin: aluminium 0.040\n", f"  skin: aluminium 0.040\n  {WHEEL_BOX}\n")
    assert text != WHIMBREL
    wide, narrow = aisles(WHIMBREL)["window-right"], aisles(text)["window-right"]
    assert wide.width.best == pytest.approx(24.0 * INCH, abs=2e-4)
    assert narrow.width.best < 6.0 * INCH and narrow.blocked_by == ("frame.intrusions[box]",)


def test_nobody_in_bed_has_no_ways() -> None:
    found = study(read_rig(WHIMBREL).rig, date(2026, 5, 2), stage=BUNK)
    (slot,) = found.asked_slots("leave")
    assert slot.safety is not None and not slot.safety.aisles

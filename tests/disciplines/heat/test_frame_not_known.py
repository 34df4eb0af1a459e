"""What the members of a frame lead out that nobody wrote: never nothing, between none and many."""

from __future__ import annotations

import pytest

from boxwright.disciplines.heat.helps import broken
from boxwright.disciplines.heat.shell import Shell, by_members
from boxwright.rig.compose import read_rig
from boxwright.study.once import Failed
from boxwright.study.warmth import layups_of
from tests.disciplines.heat.test_findings import RIG, studied

STUDS = "  studs: {tube: 25 x 38 x 1.6, face: 25, depth: 38, every: 400, first: 0}\n"
BOWS = "  bows: {tube: 25 x 38 x 1.6, every: 400, first: 0}\n"
FLOOR = "cross_members: 400, "


def shell(text: str) -> Shell:
    """Return the shell of a rig as it stands for the night."""
    slot = studied(text).asked_slots("sleep", "night")[0]
    assert slot.heat is not None
    return slot.heat.inside.shell


@pytest.mark.parametrize("gone", [(STUDS,), (BOWS,), (STUDS, BOWS, FLOOR)])
def test_a_frame_that_nobody_wrote_is_no_frame_that_leads_nothing(gone: tuple[str, ...]) -> None:
    text = RIG
    for piece in gone:
        assert text.count(piece) == 1
        text = text.replace(piece, "")
    written, unsaid = shell(RIG), shell(text)
    assert unsaid.loss.low < written.loss.low and written.loss.high < unsaid.loss.high
    assert unsaid.loss.best == pytest.approx(written.loss.best, rel=0.1)
    planes = [one for one in unsaid.faces if one.what == "plane" and one.planed and one.planed.density.assumed]
    assert all(by_members(one).low == 0.0 for one in planes)
    assert any(by_members(one).best > 0.0 for one in planes)
    # 16 in apart at best, as close as 12 in at the most: common practice, no source
    assert all(one.planed.density.best == pytest.approx(1.0 / 0.4064) for one in planes if one.planed)
    assert all(one.planed.density.high == pytest.approx(1.0 / 0.3048) for one in planes if one.planed)


@pytest.mark.parametrize("row", ["left: 600", "left: {removed: [1, 2, 3, 4, 5, 6, 7, 8, 9]}"])
def test_a_row_that_is_written_is_taken_as_it_is(row: str) -> None:
    whole = "every: 400, first: 0}\n  bows"
    assert RIG.count(whole) == 1
    found = shell(RIG.replace(whole, f"every: 400, first: 0, {row}}}\n  bows"))
    assert not any(one.planed.density.assumed for one in found.faces if one.planed)


def test_one_taped_stud_is_not_all_of_them() -> None:
    taped = f"{RIG}measured:\n  one: {{date: 2026-05-01, what: tape, studs: left, values: {{2: 800}}}}\n"
    assert read_rig(taped).problems == ()
    found = shell(taped.replace(STUDS, ""))
    (left,) = [one for one in found.faces if one.what == "plane" and one.wall == "left"]
    assert left.planed is not None and left.planed.density.assumed


def test_foam_over_members_that_nobody_wrote_is_worked_out_as_over_those_that_are() -> None:
    saved = []
    for text in (RIG, RIG.replace(STUDS, "").replace(BOWS, "")):
        slot = studied(text).asked_slots("sleep", "night")[0]
        assert slot.heat is not None and not isinstance(slot.frame, Failed)
        layups = layups_of(slot.frame, read_rig(text).rig.frame)
        found = broken(slot.heat.inside, slot.heat.moisture, slot.heat.held[0], layups, slot.heat.openings)
        assert found.after is not None
        saved.append(found.before.energy.best - found.after.energy.best)
    assert saved[1] == pytest.approx(saved[0], rel=0.25) and saved[0] > 0.0

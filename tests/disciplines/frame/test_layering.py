"""What lies behind what: thick foam, depth that only a section says, and the order of a bay written by itself."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.layering import buildup_at
from boxwright.disciplines.frame.result import Buildup, Result
from boxwright.disciplines.frame.spot import spot
from boxwright.disciplines.frame.telling import built_at
from boxwright.model.place import Surfaces
from boxwright.rig.compose import read_rig
from tests.disciplines.frame.small import framed, hung, rig_text, window

MM = 0.001
SURFACES = Surfaces(0.0, 4.0, -1.0, 1.0, 0.0, 2.0, 0.0, 4.0, -1.0, 1.0, 2.0)
SQUARE = "tube: 30 mm x 30 mm x 2 mm"
WALL = "foam: {of: XPS, thick: 40 mm, between: studs, stage: shell}, liner: {of: ply, thick: 9 mm, stage: shell}"
OPENING = "window: {wall: left, x: 100, width: 10, z: 30, height: 12, unit: {clamps: {lowest: 42 mm, highest: 50 mm}}}"
SHELF = "shelf: {x: 10, side: left, z: 30, size: 40 x 6 x 6, stage: shell, screws: {size: 1/4 in, at: [16]}}"


def text(layers: str, section: str = SQUARE, more: str = "") -> str:
    written = rig_text(openings=(OPENING,), parts=(SHELF,)).replace("tube: 1 x 1 1/2 x 16 ga", section)
    written = written.replace("aluminium 0.040", "aluminium 2 mm")
    return written.replace("openings:", f"walls:\n  left: {{layers: {{{layers}}}}}\n{more}openings:")


def at(result: Result, bay: str = "", is_member: bool = False) -> Buildup:
    found = buildup_at(result.buildups, "left", bay, is_member)
    assert found is not None
    return found


@pytest.mark.parametrize("section", [SQUARE, SQUARE + ", depth: 30 mm, face: 30 mm"])
def test_foam_thicker_than_the_studs_stands_out_everywhere_it_counts(section: str) -> None:
    """By hand: 2 of skin, 30 of stud, 10 of foam beyond it and 9 of liner are 51 mm, and the plane is at 19."""
    written = text(WALL, section)
    result = framed(written)
    for place in (at(result), at(result, is_member=True)):
        assert place.finished.best == pytest.approx(51 * MM)
        assert place.liner.best == pytest.approx(19 * MM)
    hole = window(result)
    assert [one.fits for one in hole.depth] == ["no"]
    thick = built_at(result, hole)
    assert thick is not None and thick.best == pytest.approx(51 * MM)
    reading = read_rig(written).rig
    shelf = next(one for one in reading.parts if one.name == "shelf")
    half = 40 * 0.0254
    assert shelf.place.y.best - 3 * 0.0254 + half == pytest.approx(19 * MM)
    reach, thin = hung(result).reach, hung(framed(text(WALL.replace("40 mm", "30 mm"), section))).reach
    assert reach is not None and thin is not None
    assert reach.least.best - thin.least.best == pytest.approx(10 * MM)
    assert reach.most.best - thin.most.best == pytest.approx(10 * MM)


def test_foam_that_may_be_thicker_than_the_studs_doubts_the_wall() -> None:
    finished = at(framed(text(WALL.replace("40 mm", "28..36 mm")))).finished
    assert (finished.low, finished.high) == pytest.approx((41 * MM, 47 * MM))


def test_foam_as_deep_as_the_studs_takes_no_room_and_neither_does_foam_of_unknown_thickness() -> None:
    for thick in ("30 mm", "12 mm", "unknown"):
        assert at(framed(text(WALL.replace("40 mm", thick)))).finished.best == pytest.approx(41 * MM)


@pytest.mark.parametrize(
    ("wall", "bay", "expected"),
    [
        ("strip: {of: tape, thick: 1/4, over: studs, stage: shell}, liner: {of: ply, thick: 1/4, stage: shell}",
         "foam: {of: XPS, thick: 1, stage: shell}", ["foam", "liner"]),
        ("strip: {of: tape, thick: 1/4, over: studs, stage: shell}, liner: {of: ply, thick: 1/4, stage: shell}",
         "foam: {of: XPS, thick: 1, between: studs, stage: shell}", ["foam", "liner"]),
        ("liner: {of: ply, thick: 1/4, stage: shell}, wool: {of: wool, thick: 1/2, between: studs, stage: shell}",
         "foam: {of: XPS, thick: 1/2, between: studs, stage: shell}", ["wool", "foam", "liner"]),
        ("foam: {of: XPS, thick: 1, between: studs, stage: shell}, liner: {of: ply, thick: 1/4, stage: shell}",
         "foam: {of: XPS, thick: 1/2, stage: shell}", ["foam", "liner"]),
    ],
)  # fmt: skip
def test_a_bay_reads_from_the_skin_inwards(wall: str, bay: str, expected: list[str]) -> None:
    """Foam lies next to the skin; a strip over studs is not in the open bay, but the liner stands off by it."""
    result = framed(text(wall, more=f"  bay left 4-5: {{layers: {{{bay}}}}}\n"))
    found = at(result, "left 4-5")
    plane = result.wall("left")
    assert plane is not None
    looked = spot(result, plane, 72 * 0.0254, 0.5, SURFACES, ()).buildup
    assert looked is not None and looked.bay == "left 4-5"
    assert [one.name for one in looked.layers] == expected
    assert [one.name for one in found.layers if one.where != "members"] == expected
    assert found.liner.best == pytest.approx(at(result).liner.best)
    strips = [one.name for one in at(result, is_member=True).layers if one.where == "members"]
    assert strips == (["strip"] if "strip" in wall else [])

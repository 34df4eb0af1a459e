"""What heat and air take of the frame: areas by hand from the demo rig's own measures."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from boxwright.exchange import Layup, Opening
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.study.warmth import cut_through, layups_of
from boxwright.units import Band

WHIMBREL = Path(__file__).parents[2] / "rigs" / "whimbrel.yaml"
SQUARE_INCH = 0.0254**2


def _taken(stage: int) -> tuple[dict[str, Layup], dict[str, Opening]]:
    rig = read_rig(WHIMBREL.read_text(encoding="utf-8")).rig
    slot = next(one for one in study(rig, date(2026, 5, 2), stage=stage, use="sleep").slots if not one.is_for_ticket)
    assert slot.frame is not None
    planes = {one.of: one for one in layups_of(slot.frame, rig.frame)}
    holes = {one.name: one for one in cut_through(slot.frame, slot.standing.openings, slot.standing.holes)}
    return planes, holes


def test_the_left_wall_is_what_openings_and_the_odd_bay_leave_of_it() -> None:
    planes, _ = _taken(10)
    bay = planes["walls[bay left 4-5]"]
    taken = 14 * 24 + 3 * 3 + 10 * 4  # the window, the inlet, the low vent: square inches, by hand
    assert bay.area.best == pytest.approx(15 * 78 * SQUARE_INCH)  # one stud face off a bay of 16 in
    assert planes["walls[left]"].area.best == pytest.approx((168 * 78 - taken) * SQUARE_INCH - bay.area.best)
    assert planes["walls[left]"].spacing is not None and planes["walls[left]"].spacing.best == pytest.approx(0.4064)


def test_roof_and_floor_look_up_and_down_and_hold_their_members() -> None:
    planes, _ = _taken(10)
    roof, floor = planes["walls[ceiling]"], planes["walls[floor]"]
    assert (roof.outward, floor.outward) == ((0.0, 0.0, 1.0), (0.0, 0.0, -1.0))
    assert roof.area.best == pytest.approx((168 * 80 - 14.25 * 14.25 - 1) * SQUARE_INCH)
    assert floor.skin is not None and floor.skin.best == pytest.approx(0.75 * 0.0254) and floor.skin_of == "ply 3/4"
    assert [one.material for one in floor.layers] == ["XPS", "ply"]


def test_layers_of_later_stages_are_not_there_yet() -> None:
    bare, foamed = _taken(2)[0]["walls[left]"], _taken(4)[0]["walls[left]"]
    assert bare.layers == ()
    assert [(one.name, one.where) for one in foamed.layers] == [("foam", "bays"), ("strip", "members")]


def test_openings_bring_what_is_written_of_their_unit() -> None:
    _, holes = _taken(10)
    assert holes["window-left"].transmittance is not None and holes["window-left"].transmittance.best == 2.8
    assert holes["ramp"].is_leaf and holes["ramp"].area.best == pytest.approx(74 * 72 * SQUARE_INCH)
    assert holes["ramp"].outward == (1.0, 0.0, 0.0)
    assert not holes["vent-low"].is_leaf and holes["vent-low"].bottom.best == pytest.approx(4 * 0.0254)
    assert holes["roof-fan"].bottom.best == pytest.approx(78 * 0.0254)


def test_half_of_its_outline_is_a_planes_edge_at_least_and_a_bay_has_none() -> None:
    planes, _ = _taken(10)
    assert planes["walls[front]"].edge.best == pytest.approx((80 + 78) * 0.0254)
    assert planes["walls[bay left 4-5]"].edge.best == 0.0


def test_a_wheel_box_is_bare_sheet_on_its_four_sides_over_moving_air() -> None:
    text = WHIMBREL.read_text(encoding="utf-8").replace(
        "  skin: aluminium 0.040\n",
        "  skin: aluminium 0.040\n"
        "  intrusions: {wheel-box-left: {what: wheel box, wall: left, x: 72, length: 56, height: 9, depth: 8}}\n",
    )
    rig = read_rig(text).rig
    slot = next(one for one in study(rig, date(2026, 5, 2), stage=10, use="sleep").slots if not one.is_for_ticket)
    assert slot.frame is not None
    box = next(one for one in layups_of(slot.frame, rig.frame) if "wheel-box-left" in one.of)
    assert box.area.best == pytest.approx((56 * 8 + 56 * 9 + 2 * 8 * 9) * SQUARE_INCH)
    assert (box.wall, box.layers, box.outward) == ("left", (), (0.0, 0.0, -1.0))


def test_a_hole_of_a_known_size_has_its_area_wherever_it_is() -> None:
    """A ramp that nobody placed across is 1.8 by 1.9 m all the same; one without a height may be as high as its wall.

    The room of that rig is 2 m wide and 2 m high.
    """
    text = (WHIMBREL.parent.parent / "tests" / "findings" / "heat" / "rig.yaml").read_text(encoding="utf-8")
    written = "  ramp: {wall: rear, width: 1800, z: 0, height: 1900, stage: shell, cut: yes, done: yes}\n"
    areas = []
    unsized = written.replace("height: 1900, ", "")
    for line in (written, unsized, unsized.replace("width: 1800, ", "")):
        rig = read_rig(text.replace("openings:\n", f"openings:\n{line}")).rig
        slot = study(rig, date(2026, 6, 1)).asked_slots("sleep")[0]
        assert slot.heat is not None
        areas.append(next(one.area for one in slot.heat.openings if one.name == "ramp"))
    assert areas[0].known and areas[0].best == pytest.approx(1.8 * 1.9)
    assert [one.known for one in areas] == [True, False, False]
    assert [(one.best, one.low) for one in areas[1:]] == [(0.0, 0.0)] * 2
    assert [one.high for one in areas[1:]] == pytest.approx([1.8 * 2.0, 2.0 * 2.0])


@pytest.mark.parametrize("what", ["ramp", "pane"])
def test_the_night_of_a_hole_of_unknown_size_is_no_better_than_that_of_any_size(what: str) -> None:
    """Nothing is taken for granted: the worst end of the unknown hole is as bad as the largest hole that fits."""
    text = (WHIMBREL.parent.parent / "tests" / "findings" / "heat" / "rig.yaml").read_text(encoding="utf-8")
    text = text.replace("coldest_design: -5 C", "coldest_design: -45 C")
    assert "-45 C" in text
    unit = ", unit: {weight: 9, U: 5.6 W/m2K}" if what == "pane" else ""

    def nights(height: str) -> tuple[Band, Band, Band]:
        line = f"  {what}: {{wall: rear, width: 1800, {height}stage: shell, cut: yes, done: yes{unit}}}\n"
        rig = read_rig(text.replace("openings:\n", f"openings:\n{line}")).rig
        slot = study(rig, date(2026, 6, 1)).asked_slots("sleep")[0]
        assert slot.heat is not None
        held = slot.heat.held[0]
        assert held.holds_down_to is not None
        return held.coldest, held.loss, held.holds_down_to

    coldest, loss, down_to = nights("")
    for height in ("height: 100, ", "height: 900, ", "height: 2000, "):
        sized = nights(height)
        assert coldest.low <= sized[0].low and sized[0].high <= coldest.high + 1e-9
        assert loss.low <= sized[1].low + 1e-9 and sized[1].high <= loss.high
        assert down_to.low <= sized[2].low + 1e-9 and sized[2].high <= down_to.high
    assert coldest.low < nights("height: 100, ")[0].low - 1.0

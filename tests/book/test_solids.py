"""The rig as solids: each weighs what weight counts, none that weighs is left out, and nothing leaks at night."""

from __future__ import annotations

from typing import Any

import pytest

from boxwright.book.solids import at_stage, model_of
from boxwright.disciplines.frame.solid_skin import UNCUT
from boxwright.render.shape import shapes_of
from tests.render.solid import slot_of, text_of
from tests.render.test_solid import mesh_of

LAST = (("whimbrel", 10), ("dunlin", 5), ("gannet", 10))


def is_at_its_own(of: str, rig: Any) -> bool:
    """Return whether a path is of a thing with no room of its own: within a wall, or the empty trailer."""
    return of == "trailer.empty" or any(one.of == of and one.words.kind in {"backing", "spread"} for one in rig.parts)


@pytest.mark.parametrize(("name", "stage"), LAST)
def test_a_solid_weighs_what_weight_counts_and_none_that_weighs_is_missing(name: str, stage: int) -> None:
    rig, slot = slot_of(text_of(name), stage)
    model = model_of(rig, slot)
    counted = {one.of: one.kg for one in slot.masses if one.what in {"dry", "structure"}}
    stands = {one.of: one.kg for one in at_stage(model)}
    weighed = {of: kg for of, kg in stands.items() if kg is not None}
    assert len(weighed) > 20 and not model.missing
    for of, kg in weighed.items():
        assert [kg.low, kg.high] == pytest.approx([counted[of].low, counted[of].high]), of
    assert [of for of in counted if of not in stands and not is_at_its_own(of, rig)] == []


@pytest.mark.parametrize(("name", "stage"), LAST[:2])
def test_at_night_every_solid_is_closed_and_the_bed_is_down(name: str, stage: int) -> None:
    rig, road = slot_of(text_of(name), stage)
    _, night = slot_of(text_of(name), stage, "sleep")
    bed = f"parts[{'bunk' if name == 'whimbrel' else 'bench-bed'}]"
    found = {one.solid.of: one for one in shapes_of(at_stage(model_of(rig, night)))}
    assert all(mesh_of(one).is_watertight for one in found.values())
    (folded,) = [one for one in shapes_of(at_stage(model_of(rig, road))) if one.solid.of == bed]
    up, down = folded.body.bounding_box(), found[bed].body.bounding_box()
    assert down[4] - down[1] > 3.0 * (up[4] - up[1])  # lying it is far wider across than folded against the wall


def test_who_sleeps_lies_on_the_bed_and_nobody_does_on_the_road() -> None:
    rig, night = slot_of(text_of("dunlin"), 5, "sleep")
    _, road = slot_of(text_of("dunlin"), 5)
    _, before = slot_of(text_of("dunlin"), 3, "sleep")
    found = {one.solid.of: one for one in shapes_of(at_stage(model_of(rig, night)))}
    turner = found["people[turner]"]
    low_x, low_y, low_z, high_x, high_y, _ = turner.body.bounding_box()
    assert high_x - low_x == pytest.approx(1.78)  # as long as is written
    assert high_y - low_y == pytest.approx(0.259 * 1.78)
    assert low_z == pytest.approx(0.43 + 0.04 + 0.06)  # on the leaf and the mattress, by hand
    assert low_x >= 0.35 and high_x <= 0.35 + 1.9 and low_y > 0.0
    assert 60.0 < turner.litres < 140.0 and mesh_of(turner).is_watertight
    for slot in (road, before):
        assert not [one for one in at_stage(model_of(rig, slot)) if one.of.startswith("people[")]


def test_two_lie_side_by_side_and_of_two_cots_with_one_place_only_one_is_known() -> None:
    rig, night = slot_of(text_of("whimbrel"), 10, "sleep")
    found = {one.solid.of: one for one in shapes_of(at_stage(model_of(rig, night)))}
    skipper, spotter = (found[f"people[{name}]"].body.bounding_box() for name in ("skipper", "spotter"))
    assert skipper[4] < spotter[1]  # a gap between them
    _, cots = slot_of(text_of("whimbrel"), 5, "sleep")
    model = model_of(rig, cots)
    asleep = [one.of for one in at_stage(model) if one.of.startswith("people[")]
    assert asleep == ["people[skipper]"]
    # cots from stage 1 to 6, the bunk from 7 on: whatever stage is drawn, all of them are there for the slider
    spans = sorted((one.of, one.stage, one.until, one.stands) for one in model.solids if one.of.startswith("people["))
    assert spans == [
        ("people[skipper]", 1, 6, "yes"), ("people[skipper]", 7, None, "no"), ("people[spotter]", 7, None, "no"),
    ]  # fmt: skip


def test_the_skin_in_an_opening_stands_until_the_opening_does() -> None:
    rig, early = slot_of(text_of("whimbrel"), 1)
    _, late = slot_of(text_of("whimbrel"), 2)
    at_one, at_two = ({one.of: one for one in model_of(rig, slot).solids} for slot in (early, late))
    piece = f"openings[window-left]{UNCUT}"  # the window goes in at stage 2
    assert (at_one[piece].stage, at_one[piece].until) == (0, 1)
    assert (at_one[piece].stands, at_two[piece].stands) == ("yes", "no")
    assert at_one["openings[window-left]"].stands == "no" and at_two["openings[window-left]"].stands == "yes"
    assert f"openings[ramp]{UNCUT}" not in at_one  # it came with the trailer: there never was skin in it

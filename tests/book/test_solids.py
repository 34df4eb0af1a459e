"""The rig as solids: each weighs what weight counts, none that weighs is left out, and nothing leaks at night."""

from __future__ import annotations

from typing import Any

import pytest

from boxwright.book.solids import at_stage, model_of
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

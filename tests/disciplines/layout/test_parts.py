"""How layout's keys may be written."""

from __future__ import annotations

import math
from typing import Any

import pytest
from pydantic import ValidationError

from boxwright.disciplines.layout.bodies import body_of
from boxwright.disciplines.layout.parts import Facet
from boxwright.rig.compose import read_rig
from boxwright.units import HeaderUnits
from tests.disciplines.layout.small_rigs import DONE, rig_of

INCH = 0.0254
"""Metres, international yard and pound agreement of 1959 (from memory)."""


def facet(**keys: Any) -> Facet:
    return Facet.model_validate(keys, context={"header": HeaderUnits(length="in")})


def test_room_alone_is_on_every_side() -> None:
    alone, full = facet(keep_clear="2").keep_clear, facet(keep_clear={"front": "30", "width": "24"}).keep_clear
    assert alone is not None and alone.all_round is not None and alone.front is None
    assert alone.all_round.best == pytest.approx(2 * INCH)
    assert full is not None and full.front is not None and full.width is not None and full.all_round is None
    assert (full.front.best, full.width.best) == pytest.approx((30 * INCH, 24 * INCH))


def test_a_swing_is_in_radians() -> None:
    swing = facet(swing={"hinge": "front", "opens": "out", "to": "170 deg"}).swing
    assert swing is not None and swing.to is not None
    assert swing.to.best == pytest.approx(math.radians(170))
    bare = facet(swing={"to": "90"}).swing
    assert bare is not None and bare.to is not None and bare.to.best == pytest.approx(math.pi / 2)


def test_a_mattress_has_three_sides() -> None:
    assert facet(mattress="75 x 47 x 4").mattress == pytest.approx((75 * INCH, 47 * INCH, 4 * INCH))


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({"mattress": "75"}, "write it as"),
        ({"keep_clear": "some"}, 'cannot read the length "some"; write it as'),
        ({"swing": {"to": "wide"}}, 'cannot read the angle "wide"; write it as'),
    ],
)
def test_what_cannot_be_read_is_said(keys: dict[str, Any], words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        facet(**keys)
    assert words in str(caught.value)


@pytest.mark.parametrize(
    ("blocks", "size"),
    [
        ("[{size: 200 x 300 x 400}]", (0.2, 0.3, 0.4)),
        ("[{x: 50, side: 60, z: 70, size: 200 x 300 x 400}]", (0.25, 0.36, 0.47)),
        ("[{size: 200 x 300 x 400}, {x: 100, size: 300 x 100 x 100}]", (0.4, 0.3, 0.4)),
        ("[{x: 50..80, size: 200 x 300 x 400}]", (0.28, 0.3, 0.4)),
        ("[{x: unknown, size: 200 x 300 x 400}]", None),
    ],
)
def test_what_is_made_up_of_boxes_is_as_large_as_they_are_together(
    blocks: str, size: tuple[float, float, float] | None
) -> None:
    for text in (
        rig_of(f"bike: {{x: 1000, side: left+200, z: 0, blocks: {blocks}, {DONE}}}\n"),
        rig_of(f"bike: {{x: 1000, side: right-200, z: 0, blocks: {blocks}, {DONE}}}\n"),
    ):
        read = read_rig(text)
        (bike,) = [one for one in read.rig.layout.fitted if one.name == "bike"]
        assert bike.is_sized == (size is not None)
        about = [one.says for one in read.problems if "bike" in one.path]
        assert any("no size is written" in one for one in about) == (size is None)
        if size is not None:
            assert bike.place.size == pytest.approx(size)
            low = body_of(bike, "yes", "travel").around.low
            assert low[0] == pytest.approx(1.0 if "x: 50" not in blocks else 1.05)


def test_a_size_that_is_written_stays_and_a_box_that_may_begin_farther_in_reaches_as_far() -> None:
    text = rig_of(
        "bike: {x: 1000, side: left, z: 0, size: 600 x 300 x 400, blocks: [{x: 0..100, size: 200 x 300 x 400}], "
        f"{DONE}}}\n"
    )
    (unknown,) = [one for one in read_rig(text.replace("0..100", "unknown")).rig.layout.fitted if one.name == "bike"]
    assert not unknown.is_sized, "nobody knows where in it its box is"
    (bike,) = [one for one in read_rig(text).rig.layout.fitted if one.name == "bike"]
    assert bike.place.size == pytest.approx((0.6, 0.3, 0.4))
    (block,) = body_of(bike, "yes", "travel").blocks
    assert (block.low[0], block.high[0]) == pytest.approx((1.0, 1.3))

"""How layout's keys may be written."""

from __future__ import annotations

import math
from typing import Any

import pytest
from pydantic import ValidationError

from boxwright.disciplines.layout.parts import Facet
from boxwright.units import HeaderUnits

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

"""How structure's keys may be written."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from boxwright.disciplines.structure.parts import Facet, Strap
from boxwright.units import HeaderUnits

HEADER = {"header": HeaderUnits(length="in", weight="lb")}
POUND, INCH = 0.45359237, 0.0254
"""Kilograms and metres, international yard and pound agreement of 1959 (from memory)."""


def facet(**keys: Any) -> Facet:
    return Facet.model_validate(keys, context=HEADER)


def strap(**keys: Any) -> Strap:
    return Strap.model_validate(keys, context=HEADER)


def test_a_rating_may_be_of_one_ring() -> None:
    one, line = facet(wll="833 each").wll, facet(wll="833").wll
    assert one is not None and one.is_each and one.value.best == pytest.approx(833 * POUND)
    assert line is not None and not line.is_each and line.value.best == pytest.approx(833 * POUND)


def test_an_unknown_tie_is_not_a_missing_one() -> None:
    unknown, none, known = facet(tie="unknown").tie, facet(tie="none").tie, facet(tie={"to": "deck", "wll": "100"}).tie
    assert unknown is not None and unknown.to is None
    assert none is not None and none.to == ()
    assert known is not None and known.to == ("deck",) and known.wll is not None
    assert facet().tie is None


def test_a_strap_hooks_to_what_is_listed() -> None:
    assert strap(over="boat", to=["d-rings-left 2", "d-rings-right 2"]).to == ("d-rings-left 2", "d-rings-right 2")
    assert strap(over="boat", to="unknown").to is None


@pytest.mark.parametrize(
    ("written", "metres"),
    [
        ("1/4 in", 0.25 * INCH),
        ("#10", 0.190 * INCH),  # nominal diameter of a No. 10 screw, ASME B18.6.3 (from memory)
        ("#8", 0.164 * INCH),  # nominal diameter of a No. 8 screw, ASME B18.6.3 (from memory)
        ("M6", 0.006),
    ],
)
def test_a_screw_has_its_thickness(written: str, metres: float) -> None:
    screws = facet(screws={"count": "8", "size": written, "into": "studs"}).screws
    assert screws is not None and screws.size is not None and screws.count == 8
    assert screws.size.best == pytest.approx(metres)


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({"wll": "strong"}, 'cannot read the mass "strong"; write it as'),
        ({"hinge": {"at": ["80", "eighty"]}}, 'cannot read the length "eighty"; write it as'),
        ({"legs": {"size": "3 x 3"}}, "write it as"),
    ],
)
def test_what_cannot_be_read_is_said(keys: dict[str, Any], words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        facet(**keys)
    assert words in str(caught.value)

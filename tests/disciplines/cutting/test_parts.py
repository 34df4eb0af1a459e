"""How cutting's keys may be written."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from boxwright.disciplines.cutting.parts import Facet
from boxwright.units import HeaderUnits


def facet(**keys: Any) -> Facet:
    return Facet.model_validate(keys, context={"header": HeaderUnits(length="mm")})


def test_a_carcass_may_be_its_ply_alone() -> None:
    alone, full = (
        facet(carcass="12").carcass,
        facet(carcass={"ply": "12", "drawers": ["120", "200"], "lid": "yes"}).carcass,
    )
    assert alone is not None and alone.ply is not None and alone.ply.best == pytest.approx(0.012)
    assert alone.shelves == 0 and alone.back is None and alone.lid is None
    assert full is not None and [front.best for front in full.drawers] == pytest.approx([0.12, 0.2])
    assert full.lid is True


def test_sheets_and_bars_are_by_stock() -> None:
    read = facet(sheets={"ply 18": "1", "ply 6": "1/2"}, bars={"tube 25 x 25": ["600", "450"]})
    assert [(stock, amount.best) for stock, amount in read.sheets] == [("ply 18", 1.0), ("ply 6", 0.5)]
    assert [(stock, [one.best for one in pieces]) for stock, pieces in read.bars] == [("tube 25 x 25", [0.6, 0.45])]


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({"sheets": "ply 18"}, 'cannot read the stock "ply 18"; write it as {ply 18: 1}'),
        ({"carcass": {"ply": "thick"}}, 'cannot read the length "thick"; write it as'),
    ],
)
def test_what_cannot_be_read_is_said(keys: dict[str, Any], words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        facet(**keys)
    assert words in str(caught.value)

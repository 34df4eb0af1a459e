"""How air's keys may be written."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from boxwright.disciplines.air.parts import Facet


def test_a_fan_alone_is_its_flow() -> None:
    alone, full = Facet.model_validate({"fan": "500 cfm"}).fan, Facet.model_validate({"fan": {"flow": "90 m3/h"}}).fan
    assert alone is not None and alone.flow is not None
    assert alone.flow.best == pytest.approx(500 * 0.3048**3 / 60)  # 1 ft = 0.3048 m exactly, 1959 (from memory)
    assert full is not None and full.flow is not None and full.flow.best == pytest.approx(0.025)


@pytest.mark.parametrize(("written", "square_metres"), [("18 sq in", 18 * 0.0254**2), ("100 cm2", 0.01)])
def test_a_free_area_carries_its_unit(written: str, square_metres: float) -> None:
    area = Facet.model_validate({"free_area": written}).free_area
    assert area is not None and area.best == pytest.approx(square_metres)


def test_an_area_without_a_unit_is_asked_for_one() -> None:
    with pytest.raises(ValidationError) as caught:
        Facet.model_validate({"free_area": "18"})
    assert 'cannot read the area "18"; write it as' in str(caught.value)

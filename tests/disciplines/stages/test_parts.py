"""How the keys of a stage may be written."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from boxwright.disciplines.stages.parts import StageFacet


def test_a_stage_needs_others_and_takes_hours() -> None:
    stage = StageFacet.model_validate({"needs": "wire", "hours": "12..20", "steps": ["floor deck", "front"]})
    assert stage.needs == ("wire",)
    assert stage.steps == ("floor deck", "front")
    assert stage.hours is not None and (stage.hours.low, stage.hours.high) == (12 * 3600.0, 20 * 3600.0)


def test_hours_that_cannot_be_read_are_said() -> None:
    with pytest.raises(ValidationError) as caught:
        StageFacet.model_validate({"hours": "a weekend"})
    assert 'cannot read the time "a weekend"; write it as' in str(caught.value)

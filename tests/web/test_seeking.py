"""What a change that is offered claims: that something is built is never for a button alone to say."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from boxwright.web.seeking import sought

TEXT = (Path(__file__).parents[2] / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8")
TODAY = date(2026, 11, 28)


@pytest.mark.parametrize(
    ("code", "where", "is_of_the_built"),
    [
        ("safety/release-not-fitted", "parts[release-ramp]", True),
        ("safety/fuel-inside", "parts[boat-fuel]", False),
    ],
)
def test_a_change_that_writes_something_as_built_says_so(code: str, where: str, is_of_the_built: bool) -> None:
    found = sought(TEXT, code, where, "", "night", "sleep", "", TODAY)
    assert found.edits
    assert found.is_of_the_built is is_of_the_built
    assert is_of_the_built == any(value == "yes" for path, value in found.edits if path.endswith(".done"))


def test_a_release_that_is_planned_for_a_later_stage_is_a_plan_to_be_written() -> None:
    found = sought(TEXT, "safety/release-not-fitted", "parts[release-ramp]", "finish", "night", "sleep", "", TODAY)
    assert found.edits == (("parts[release-ramp].stage", "finish"),)
    assert not found.is_of_the_built

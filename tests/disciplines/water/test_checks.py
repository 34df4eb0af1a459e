"""The checks of water's formulas."""

from __future__ import annotations

import pytest

from boxwright.disciplines.water import method
from boxwright.source import Check, load_checks

CHECKS = load_checks("boxwright.disciplines.water")


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.id)
def test_a_source_and_the_formula_agree(check: Check) -> None:
    returned = getattr(method, check.method)(**{given.name: given.value for given in check.given})
    (expected,) = check.expect
    assert abs(returned - expected.value) <= expected.allowed


def test_every_formula_has_a_published_case() -> None:
    assert {check.method for check in CHECKS if check.kind == "published"} == {"fluid_mass"}

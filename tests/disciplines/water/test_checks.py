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


def test_formulas_without_a_published_case_do_not_grow_in_number() -> None:
    without = {check.method for check in CHECKS} - {check.method for check in CHECKS if check.kind == "published"}
    assert without == {"fluid_middle"}

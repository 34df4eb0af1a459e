"""The worked examples of weight's formulas, each run by its id."""

from __future__ import annotations

import pytest

from boxwright.disciplines.weight import method
from boxwright.source import Check, load_checks

CHECKS = load_checks("boxwright.disciplines.weight")
PUBLISHED = 18
"""How many methods have a published case; the number may only rise."""


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.id)
def test_the_formula_gives_what_the_source_says(check: Check) -> None:
    returned = getattr(method, check.method)(**check.arguments())
    results = returned._asdict() if hasattr(returned, "_asdict") else {"result": returned}
    assert bool(check.misses(results)) == bool(check.disputed)


def test_the_methods_with_a_published_case_grow_only() -> None:
    assert len({check.method for check in CHECKS if check.kind == "published" and not check.disputed}) >= PUBLISHED

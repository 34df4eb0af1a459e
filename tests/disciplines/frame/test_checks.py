"""The published checks of the frame's formulas."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame import method
from boxwright.source import Check, load_checks

CHECKS = load_checks("boxwright.disciplines.frame")


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.id)
def test_a_source_and_the_formula_agree(check: Check) -> None:
    returned = getattr(method, check.method)(**{given.name: given.value for given in check.given})
    (expected,) = check.expect
    assert abs(returned - expected.value) <= expected.allowed


def test_layers_and_sections_have_published_cases() -> None:
    published = {check.method for check in CHECKS if check.kind == "published"}
    layers = {"plate_mass", "mean_square", "uniform_length", "tyre_diameter", "mass_per_length"}
    sections = {f"{shape}_{what}" for shape in ("tube", "channel", "angle") for what in ("area", "second_moment")}
    assert published == layers | sections

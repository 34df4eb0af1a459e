"""The R value of a layer, as a label has it: of the United States without a unit, of elsewhere with it."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from boxwright.units import Band

RIG = "boxwright: 1\nwalls: {{left: {{layers: {{foam: {{of: odd, thick: 1 in, resistance: {0}}}}}}}}}\n"


def read(written: str) -> Band | None:
    """Return the R value of the one layer."""
    (layer,) = read_rig(RIG.format(written)).rig.frame.layers
    return layer.layer.resistance


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("R 7.5", 7.5 * 0.1761102),  # ft2 F h/Btu in m2K/W: NIST SP 811
        ("R-7.5", 7.5 * 0.1761102),
        ("R7.5", 7.5 * 0.1761102),
        ("1.3 m2K/W", 1.3),
        ("R 1.3 m2K/W", 1.3),
        ("5 ft2 F h/Btu", 5 * 0.1761102),
    ],
)
def test_a_label_is_read(written: str, value: float) -> None:
    found = read(written)
    assert found is not None and found.best == pytest.approx(value, rel=1e-6)


def test_doubt_is_carried_and_a_bare_number_or_a_word_is_a_problem() -> None:
    between = read("R 6..7.5")
    assert between is not None and between.low < between.high
    for wrong in ("7.5", "good", "R", "2.8 W/m2K"):
        reading = read_rig(RIG.format(wrong))
        assert reading.problems, wrong

"""The section of a member as builders write it."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.tube import read_tube
from boxwright.units import HeaderUnits, exactly, read_any

INCHES, MILLIMETRES = HeaderUnits(length="in"), HeaderUnits(length="mm")


@pytest.mark.parametrize(
    ("written", "units", "shape", "face", "depth", "gauge"),
    [
        ("1 x 1 1/2 x 16 ga", INCHES, "tube", "1 in", "1 1/2 in", "0.0598 in"),
        ("1x1 1/2x16ga", INCHES, "tube", "1 in", "1 1/2 in", "0.0598 in"),
        ("25 x 25 x 1.5", MILLIMETRES, "tube", "25 mm", "25 mm", "1.5 mm"),
        ("40 x 20 x 2", MILLIMETRES, "tube", "40 mm", "20 mm", "2 mm"),
        ("2 x 2 x 1/8 in tube, aluminium", MILLIMETRES, "tube", "2 in", "2 in", "1/8 in"),
        ("channel 1 1/2 x 3 x 11 ga", INCHES, "channel", "1 1/2 in", "3 in", "0.1196 in"),
        ("angle 40 x 40 x 3", MILLIMETRES, "angle", "40 mm", "40 mm", "3 mm"),
        ("hat 50 x 20 x 1.2 mm", INCHES, "hat", "50 mm", "20 mm", "1.2 mm"),
        ("Z 40 x 60 x 2", MILLIMETRES, "zed", "40 mm", "60 mm", "2 mm"),
    ],
)
def test_a_section_is_read(written: str, units: HeaderUnits, shape: str, face: str, depth: str, gauge: str) -> None:
    tube, trouble = read_tube(written, units)
    assert trouble == ""
    assert tube.shape == shape
    sizes = [band.best for band in (tube.face, tube.depth, tube.gauge) if band is not None]
    assert sizes == pytest.approx([read_any(size) for size in (face, depth, gauge)])


def test_face_and_depth_as_written_win_over_the_text() -> None:
    tube, _ = read_tube("25 x 40 x 2", MILLIMETRES, exactly(0.04), exactly(0.025))
    assert (tube.face, tube.depth) == (exactly(0.04), exactly(0.025))


def test_a_tube_lies_between_sharp_and_the_roundest_corners() -> None:
    """Sharp corners, by hand: 1 in square with a wall of 0.065 in is 82.72 lb in 100 ft."""
    tube, _ = read_tube("1 x 1 x 0.065", INCHES)
    assert tube.area is not None and tube.kg_per_metre is not None
    assert tube.area.low < tube.area.best < tube.area.high == pytest.approx(read_any("0.2431 in2"), rel=1e-4)
    assert tube.kg_per_metre.low < read_any("0.8272 lb/ft") < tube.kg_per_metre.high


@pytest.mark.parametrize(
    ("written", "says"), [("1 x 1 x 99 ga", "no gauge 99"), ("1 x wide x 2", "cannot read"), ("about", "")]
)
def test_what_cannot_be_read_is_said_and_the_rest_kept(written: str, says: str) -> None:
    tube, trouble = read_tube(written, INCHES, exactly(0.0254))
    assert says in trouble
    assert tube.face == exactly(0.0254) and tube.area is None


def test_a_wall_thicker_than_half_the_tube_has_no_section() -> None:
    tube, _ = read_tube("10 x 10 x 6", MILLIMETRES)
    assert tube.area is None and tube.inertia_deep is None

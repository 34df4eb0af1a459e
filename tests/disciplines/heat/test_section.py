"""A wall across a stud: the field between its bounds, on finer cells, mirrored, and never better with less foam."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

pytest.importorskip("skfem", reason="scikit-fem is not installed: no field of a section can be worked out")

from boxwright.disciplines.heat.method import SectionField, even_planes, parallel_path, section_field
from boxwright.units import OutOfRange

SKIN, STEEL, AIR, FOAM, PLY = 160.0, 50.0, 0.0562, 0.0288, 0.12
OUTSIDE, INSIDE = (273.15, 0.04), (293.15, 0.13)
WIDTHS = (0.011049, 0.001651, 0.1905)


def wall(foam: float = 0.0381, cover: float = 0.0, finest: float = 0.0003) -> SectionField:
    """Return the field of a framed trailer wall whose studs are as deep as its foam, with foam over them or without."""
    depths = [0.001016, 0.001651, foam - 2 * 0.001651, 0.001651, 0.00635]
    rows = [(SKIN,) * 3, (STEEL, STEEL, FOAM), (AIR, STEEL, FOAM), (STEEL, STEEL, FOAM), (PLY,) * 3]
    if cover:
        depths.insert(4, cover)
        rows.insert(4, (FOAM,) * 3)
    return section_field(WIDTHS, tuple(depths), tuple(rows), OUTSIDE, INSIDE, finest=finest)


def test_cells_of_half_the_size_move_the_transmittance_by_less_than_two_thousandths() -> None:
    assert wall(finest=0.00015).transmittance == pytest.approx(wall().transmittance, rel=2e-3)


@settings(deadline=None, max_examples=15)
@given(st.data())
def test_the_field_lies_between_heat_going_straight_through_and_planes_of_one_temperature(data: st.DataObject) -> None:
    conductivity = st.floats(0.02, 200.0)
    widths = tuple(data.draw(st.lists(st.floats(0.002, 0.1), min_size=2, max_size=4)))
    depths = tuple(data.draw(st.lists(st.floats(0.001, 0.05), min_size=1, max_size=4)))
    rows = tuple(tuple(data.draw(conductivity) for _ in widths) for _ in depths)
    found = section_field(widths, depths, rows, OUTSIDE, INSIDE, finest=0.001)
    films = OUTSIDE[1] + INSIDE[1]
    assert found.transmittance >= parallel_path(widths, depths, rows, films) * (1.0 - 1e-3)
    assert found.transmittance <= even_planes(widths, depths, rows, films) * (1.0 + 1e-3)
    turned = section_field(widths[::-1], depths, tuple(row[::-1] for row in rows), OUTSIDE, INSIDE, finest=0.001)
    assert turned.transmittance == pytest.approx(found.transmittance, rel=1e-9)
    assert min(map(min, found.temperatures)) >= OUTSIDE[0] - 0.05
    assert max(map(max, found.temperatures)) <= INSIDE[0] + 0.05


def test_more_foam_never_loses_more_and_foam_over_the_studs_warms_them() -> None:
    found = [wall(foam).transmittance for foam in (0.0254, 0.0381, 0.0508)]
    assert found == sorted(found, reverse=True)
    assert wall(cover=0.0127).factor > wall().factor + 0.3


def test_a_section_that_does_not_fit_or_of_nothing_is_refused() -> None:
    for depths, rows in (((0.1,), ((1.0, 1.0), (1.0, 1.0))), ((0.1,), ((1.0, 0.0),)), ((0.0,), ((1.0, 1.0),))):
        with pytest.raises(OutOfRange):
            section_field((0.1, 0.1), depths, rows, OUTSIDE, INSIDE)
    with pytest.raises(OutOfRange):
        section_field((0.1,), (0.1,), ((1.0,),), (293.15, 0.04), (293.15, 0.13))

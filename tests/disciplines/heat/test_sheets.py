"""The sheet of heat: the curve and the nights as numbers, the heater's hours, and what is left out where nothing is."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.heat.charts import charts_of
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.sheets import THIN_LINES, grids_of, sheets
from boxwright.drawing import Dimension, Shape
from boxwright.drawing.layout import laid_out
from boxwright.drawing.paper import LETTER, TitleBlock
from boxwright.units import Band
from tests.study.demo import demo, slot_of, studied

US = demo("whimbrel").header.units


@pytest.fixture(scope="module")
def finished() -> Result:
    found = slot_of(studied("whimbrel"), "finish", "night", use="sleep").heat
    assert found is not None
    return found


def test_the_curve_falls_with_the_cold_and_says_no_zero_below_zero(finished: Result) -> None:
    curve = charts_of(finished, US)[0]
    assert "0 F" in curve.labels and "-0 F" not in curve.labels
    for series in curve.series:
        assert list(series.best) == sorted(series.best, reverse=True)
        assert all(low <= best <= high for low, best, high in zip(series.low, series.best, series.high, strict=True))
    flat_out, lowest = curve.series
    assert all(more > less for more, less in zip(flat_out.best, lowest.best, strict=True))


def test_the_hours_of_a_heater_fill_the_night(finished: Result) -> None:
    (grid,) = [one for one in grids_of(finished, US) if one.title.startswith("How the heater runs")]
    assert grid.columns == (
        "Place, heater", "Off", "Cycling", "At its lowest", "Between lowest and flat out", "Flat out"
    )  # fmt: skip
    assert len(grid.rows) == len(finished.held)
    for row in grid.rows:
        assert sum(int(cell.removesuffix(" h")) for cell in row[1:] if cell) == 12


def test_no_cell_of_the_printed_tables_is_left_for_a_pencil(finished: Result) -> None:
    (sheet,) = sheets(finished, US)
    assert all(cell for grid in sheet.grids for row in grid.rows for cell in row)
    assert any(cell == "" for grid in grids_of(finished, US) for row in grid.rows for cell in row)


def test_the_face_by_face_losses_add_up(finished: Result) -> None:
    rows = [row for row in grids_of(finished, US)[0].rows if "all of it" not in row[0] and "of it by" not in row[0]]
    whole = sum(float(row[3].removesuffix(" Btu/h per F")) for row in rows)
    # The printed U value of the guide (NIST SP 811, from memory) over its square foot: 1 Btu/h per F in W/K.
    assert whole * 5.678263 * 9.290304e-2 == pytest.approx(finished.shell.by_air.best, rel=0.01)


def test_without_a_heater_there_is_no_curve_and_without_a_night_no_thin_line(finished: Result) -> None:
    without = replace(finished, heaters=(), held=tuple(replace(one, warmth=None) for one in finished.held))
    assert not [one for one in charts_of(without, US) if one.name.startswith("cold-")]
    assert not [one for one in grids_of(without, US) if one.title.startswith("How the heater runs")]
    (sheet,) = sheets(replace(finished, held=()), US)
    assert THIN_LINES not in sheet.notes and not sheet.views
    assert sheets(replace(finished, volume=Band(0.0, 0.0, 0.0, known=False)), US) == ()


def test_a_chart_has_no_scale_and_a_tone_for_each_doubt(finished: Result) -> None:
    view = next(one for one in sheets(finished, US)[0].views if one.name.startswith("How cold"))
    assert not view.is_to_scale
    told = {one.words for one in view.marks if isinstance(one, Dimension)}
    assert {"flat out", "at its lowest", "wanted"} <= told and not any(", at " in one for one in told)
    assert [one.fill for one in view.marks if isinstance(one, Shape)] == ["doubt", "doubt"]
    title = TitleBlock("Rig", "as planned", "", "2026-05-02", "inches", ("Check.",), True)
    for page in laid_out(sheets(finished, US)[0], LETTER, title):
        words = " ".join(one.text for one in page.words)
        assert "1:" not in words and "to the foot" not in words
        assert "not to scale" in words and "inches" not in words


def test_no_chart_of_a_night_is_printed_lower_than_it_can_be_read(finished: Result) -> None:
    """On letter paper they are drawn half as large, with their words beside them: 65 mm of a night, 30 mm of others."""
    high = {one.title: one.high * 500.0 for one in charts_of(finished, US)}
    nights = [tall for title, tall in high.items() if title.startswith("The coldest night")]
    assert len(nights) == 2 and min(nights) >= 65.0 and min(high.values()) >= 30.0, high

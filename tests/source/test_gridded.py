"""A grid of stored numbers is refused where it says nothing of where it came from, or does not fill its points."""

from __future__ import annotations

import json

import pytest

from boxwright.source import SourceError, read_gridded

WHOLE = {"source": "computed here", "made": "2026-01-01", "grid": {"a": [1, 2], "b": [0.5]}, "off": {"x": 0.1},
         "x": [7, 8], "with": {"library": "1"}}  # fmt: skip


def test_a_grid_is_read_with_its_axes_in_order() -> None:
    found = read_gridded(json.dumps(WHOLE), "tables/g.json")
    assert found.axes == ("a", "b") and found.grid == ((1.0, 2.0), (0.5,))
    assert found.column("x") == (7, 8) and found.off == (("x", 0.1),)


@pytest.mark.parametrize(
    ("changed", "says"),
    [
        ({"source": ""}, "came about"),
        ({"made": ""}, "came about"),
        ({"x": [7]}, "1 numbers for 2 points"),
        ({"grid": {"a": [2, 1], "b": [0.5]}}, "does not rise"),
        ({"grid": {"a": [], "b": [0.5]}}, "does not rise"),
    ],
)
def test_a_grid_that_lacks_something_is_refused(changed: dict[str, object], says: str) -> None:
    with pytest.raises(SourceError, match=says):
        read_gridded(json.dumps({**WHOLE, **changed}), "tables/g.json")

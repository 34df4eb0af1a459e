"""A leaf that slides is drawn shut and slid: 40 mm thick, before the face it runs along, or in the wall."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout.drawn import Leaf
from boxwright.disciplines.layout.moves import swung
from boxwright.drawing import Arc, Line, Shape, Text

RIGHT = Leaf("openings[door]", "door", (2.6, 1.0), (3.3, 1.0), (0.0, 1.0), 1.7, "", "", None, "front", 0.65, "inside")


def shapes(leaf: Leaf) -> list[list[tuple[float, float]]]:
    drawn = [mark.points for mark in swung(leaf) if isinstance(mark, Shape)]
    return [sorted({(round(x, 6), round(y, 6)) for x, y in one}) for one in drawn]


@pytest.mark.parametrize(
    ("runs", "low", "high"), [("inside", 0.96, 1.0), ("outside", 1.0, 1.04), ("in the wall", 0.98, 1.02)]
)
def test_both_places_of_a_leaf_are_drawn_on_the_face_it_runs_along(runs: str, low: float, high: float) -> None:
    leaf = replace(RIGHT, runs=runs)
    assert shapes(leaf) == [
        [(2.6, low), (2.6, high), (3.3, low), (3.3, high)],
        [(1.95, low), (1.95, high), (2.65, low), (2.65, high)],
    ]
    assert [mark.line for mark in swung(leaf) if isinstance(mark, Shape)] == ["visible", "phantom"]


def test_the_arrow_points_from_the_leaf_that_is_shut_to_where_it_is_slid() -> None:
    way, *wings = [mark for mark in swung(RIGHT) if isinstance(mark, Line)]
    assert way.start == pytest.approx((2.95, 0.98)) and way.end == pytest.approx((2.3, 0.98))
    assert [wing.end for wing in wings] == [way.end, way.end]
    assert all(wing.start[0] == pytest.approx(2.36) for wing in wings)
    assert sorted(wing.start[1] for wing in wings) == pytest.approx([0.95, 1.01])
    assert not any(isinstance(mark, Arc) for mark in swung(RIGHT))


@pytest.mark.parametrize(
    ("to", "by", "runs", "texts"),
    [
        ("front", 0.65, "inside", ["door, slid open"]),
        ("front", 0.65, "", ["door, slid open: on which side is not written"]),
        ("front", None, "inside", []),
        ("somewhere", 0.65, "inside", []),
    ],
)
def test_what_is_not_written_is_said_or_not_drawn(to: str, by: float | None, runs: str, texts: list[str]) -> None:
    leaf = replace(RIGHT, slides=to, by=by, runs=runs)
    assert [mark.words for mark in swung(leaf) if isinstance(mark, Text)] == texts
    assert len(shapes(leaf)) == (2 if texts else 1)

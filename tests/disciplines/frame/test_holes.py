"""Openings against their wall: named in words of the trade, taped, doubtful, and where the tape decides."""

from __future__ import annotations

import pytest

from tests.disciplines.frame.small import framed, hung, rig_text, window

INCH = 0.0254


@pytest.mark.parametrize(
    ("wall", "country", "meant"),
    [
        ("curb side", "US-NC", "right"),
        ("street side", "US-NC", "left"),
        ("nearside", "UK", "left"),
        ("offside", "UK", "right"),
        ("ceiling", "UK", "roof"),
    ],
)
def test_an_opening_is_found_by_any_word_for_its_wall(wall: str, country: str, meant: str) -> None:
    line = f"window: {{wall: {wall}, x: 20, width: 10, across: 10, z: 30, height: 20, side: centre, stage: shell}}"
    result = framed(rig_text((line,)).replace("US-NC", country))
    assert window(result).wall == meant


def test_a_hinge_is_found_by_any_word_for_its_edge() -> None:
    line = (
        "bed: {x: 10, side: right, z: 30, size: 80 x 20 x 2, weight: 40, stage: shell, "
        "hinge: {edge: curb side, length: 80, at: [16, 32]}}"
    )
    assert hung(framed(rig_text(parts=(line,)))).wall == "right"

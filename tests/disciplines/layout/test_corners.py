"""Which way a thing in a corner looks: by the wall that is written, by how it lies there, or either way and asked."""

from __future__ import annotations

import pytest

from tests.disciplines.layout.small_rigs import DONE, mirrored, rig_of, thing, told

WANTS = f"{DONE}, keep_clear: {{front: 760, width: 300}}"
TOWARD_LEFT = thing("box", 0, "right-400", 0, "300 x 300 x 1500")
"""It stands 100 to 300 mm before whatever looks to the left out of the corner in front on the right."""
REARWARD = thing("chest", 600, "right", 0, "300 x 300 x 1500")


def said(parts: str, code: str) -> list[tuple[str, str]]:
    """Return the kind and place of what is said, which is the same of the mirrored rig."""
    text = rig_of(parts)
    found = told(text, "work")
    assert told(mirrored(text), "work") == found
    return sorted((kind, where) for kind, one, where in found if one == code)


@pytest.mark.parametrize("x", [0, 5, 30, 1000])
@pytest.mark.parametrize("side", ["right", "right-20"])
def test_a_flat_panel_in_a_corner_looks_away_from_the_wall_it_lies_on(x: int, side: str) -> None:
    before = thing("box", x, "right-400", 0, "300 x 300 x 1500")
    assert said(thing("panel", x, side, 1000, "300 x 100 x 400", WANTS) + before, "kept-clear") == [
        ("fix", "parts[box]")
    ]


def test_at_the_rear_it_does_so_too() -> None:
    panel = thing("panel", "rear-300", "right", 1000, "300 x 100 x 400", WANTS)
    assert said(panel + thing("box", "rear-300", "right-400", 0, "300 x 300 x 1500"), "kept-clear") == [
        ("fix", "parts[box]")
    ]
    across = thing("panel", 0, "right", 1000, "100 x 300 x 400", WANTS)
    assert said(across + TOWARD_LEFT, "kept-clear") == [], "it looks rearward"
    assert said(across + REARWARD, "kept-clear") == [("fix", "parts[chest]")]


@pytest.mark.parametrize(
    ("wall", "before", "found"),
    [
        ("", TOWARD_LEFT, [("unknown", "parts[box]")]),
        ("", REARWARD, [("unknown", "parts[chest]")]),
        ("", TOWARD_LEFT + REARWARD, [("unknown", "parts[box]"), ("unknown", "parts[chest]")]),
        (", wall: right", TOWARD_LEFT, [("fix", "parts[box]")]),
        (", wall: right", REARWARD, []),
        (", wall: front", TOWARD_LEFT, []),
        (", wall: front", REARWARD, [("fix", "parts[chest]")]),
    ],
)
def test_what_may_look_either_way_is_asked_unless_its_wall_is_written(
    wall: str, before: str, found: list[tuple[str, str]]
) -> None:
    panel = thing("panel", 0, "right", 1000, "300 x 300 x 400", WANTS + wall)
    assert said(panel + before, "kept-clear") == found


def test_in_the_very_middle_nobody_knows_which_way_it_looks() -> None:
    for side in ("centre+300", "centre-300"):
        parts = thing("panel", 1500, "centre", 1000, "300 x 100 x 400", WANTS)
        assert said(parts + thing("box", 1500, side, 0, "300 x 300 x 1500"), "kept-clear") == [
            ("unknown", "parts[box]")
        ]


@pytest.mark.parametrize("more", ["doors: 1", "drawers: [600]"])
def test_doors_and_drawers_of_a_cabinet_in_a_corner_are_asked_about_on_both_its_faces(more: str) -> None:
    cabinet = thing("cab", 0, "right", 0, "600 x 400 x 900", f"{DONE}, carcass: {{ply: 12, {more}}}")
    for stool in (
        thing("stool", 100, "right-450", 0, "300 x 300 x 400"),
        thing("stool", 650, "right", 0, "300 x 300 x 400"),
    ):
        assert said(cabinet + stool, "opening-strikes") == [("unknown", "parts[cab]")]
        with_wall = cabinet.replace("carcass", "wall: right, carcass")
        assert len(said(with_wall + stool, "opening-strikes")) == ("450" in stool)


def test_a_door_of_a_thing_in_a_corner_opens_in_the_face_its_hinge_leaves() -> None:
    """Hinged at its front edge it looks to a side; at its top it may look either way, and only asks."""
    stool = thing("stool", 100, "right-450", 0, "300 x 300 x 400")
    for hinge, found in (("front", [("fix", "parts[cab]")]), ("top", [("unknown", "parts[cab]")])):
        swing = f"{DONE}, swing: {{hinge: {hinge}, opens: out, to: 90 deg}}"
        assert said(thing("cab", 0, "right", 0, "600 x 400 x 500", swing) + stool, "opening-strikes") == found


def test_a_width_without_a_depth_is_asked_for() -> None:
    panel = thing("panel", 1000, "right", 1000, "300 x 100 x 400", f"{DONE}, keep_clear: {{width: 760}}")
    assert said(panel, "opening-unsaid") == [("unknown", "parts[panel]")]

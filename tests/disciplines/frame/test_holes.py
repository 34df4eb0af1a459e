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


def plate(x: float) -> str:
    return f"window: {{wall: left, x: {x!r}, width: 14, z: 30, height: 20, stage: shell, cut: no}}"


def taped(**values: object) -> str:
    listed = ", ".join(f"{key.lstrip('_')}: {value}" for key, value in values.items())
    return f"studs: {{date: 2026-01-19, what: tape, studs: left, values: {{{listed}}}}}"


def test_a_stud_beside_its_plan_names_what_was_decided_on_the_plan() -> None:
    """By hand: 97 to 111 is clear of a stud at 112, and runs into one at 111."""
    leaf = (
        "bed: {x: 10, side: left, z: 30, size: 140 x 20 x 2, weight: 40, stage: shell, "
        "hinge: {edge: left, length: 140, at: [16, 112]}, screws: {size: 1/4 in, into: studs}}"
    )
    (moved,) = framed(rig_text((plate(97),), (leaf,), (taped(_7=111),))).faults
    assert (moved.name, moved.moves) == ("L7", ("window", "bed"))
    (beside,) = framed(rig_text((plate(97),), (), (taped(_7="112 3/8"),))).faults
    assert (beside.name, beside.moves) == ("L7", ())


def test_a_taped_edge_that_differs_from_the_file_is_told() -> None:
    read = "edges: {date: 2026-01-19, what: tape, opening: window, values: {front: 98, rear: 111 1/16, bottom: 30}}"
    (fault,) = framed(rig_text((plate(97),), (), (read,))).faults
    assert (fault.other, fault.name) == ("openings[window]", "the front edge of window")
    assert (fault.value, fault.against) == pytest.approx((98 * INCH, 97 * INCH))


def test_studs_that_were_taped_stand_without_a_spacing() -> None:
    text = rig_text((plate(97),), (), (taped(_6=96, _7=111),)).replace(
        "every: 16, first: 0}\n  bows", "face: 1}\n  bows"
    )
    result = framed(text)
    assert [one.name for one in result.members if one.wall == "left" and one.number is not None] == ["L6", "L7"]
    assert [one.name for one in window(result).members_cut] == ["L7"]


def test_studs_of_the_front_wall_are_only_as_sure_as_what_is_written_of_them() -> None:
    unsaid, said = (
        framed(rig_text()),
        framed(rig_text().replace("first: 0}\n  bows", "first: 0, front: {first: 8}}\n  bows")),
    )
    for result, doubt in ((unsaid, 8.0), (said, 0.006 / INCH)):
        front = [one for one in result.members if one.wall == "front" and one.kind == "stud"]
        assert front
        for one in front:
            assert (one.at.high - one.at.low) / 2 == pytest.approx(doubt * INCH)


@pytest.mark.parametrize(
    ("places", "hits"), [("[24, 40]", ()), ("[24, 47]", (("L3", 47.0),)), ("[13, 33]", (("L2", 33.0),))]
)
def test_a_socket_let_into_a_stud_is_told_at_its_place(places: str, hits: tuple[tuple[str, float], ...]) -> None:
    """By hand: boxes 4 in wide on studs 1 in wide at 16 in: 13 ends at 15, short of 15 1/2."""
    line = f"sockets: {{wall: left, z: 20, size: 4 x 1 x 3, at: {places}, weight: 1, stage: shell, recess: 1}}"
    (found,) = framed(rig_text(parts=(line,))).recesses
    assert [(name, pytest.approx(place)) for name, place in found.hits] == [(name, at * INCH) for name, at in hits]


def test_cross_members_have_a_section_and_a_part_without_a_stage_hangs_on_nothing() -> None:
    floor = "floor: {cross_members: 16, tube: channel 1 1/2 x 3 x 11 ga}\n  skin:"
    leaf = "bed: {x: 10, side: left, z: 30, size: 80 x 20 x 2, weight: 40, stage: unplanned, "
    leaf += "hinge: {edge: left, at: [24]}}"
    result = framed(rig_text(parts=(leaf,)).replace("skin:", floor))
    under = result.wall("floor")
    assert under is not None and under.tube.shape == "channel"
    crossed = [one for one in result.members if one.wall == "floor" and one.kind == "cross-member"]
    assert [one.face.best for one in crossed] == [pytest.approx(1.5 * INCH)] * len(crossed)
    assert result.fastenings == ()

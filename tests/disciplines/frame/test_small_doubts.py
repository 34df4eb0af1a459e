"""Small doubts that decide: which of two tapes of a day counts, a board's end, a jamb's opening, a post's stud."""

from __future__ import annotations

import pytest

from tests.disciplines.frame.small import framed, hung, rig_text, window

INCH = 0.0254
BOARD = (
    "board: {x: 8, side: studs-left-3/4, z: 28, size: 50 x 3/4 x 12, weight: 4, stage: shell, kind: backing, "
    "backs: shelf}"
)


def shelf(screws: str, long: float = 40.0) -> str:
    return f"shelf: {{x: 10, side: left, z: 30, size: {long} x 6 x 6, weight: 9, stage: shell, screws: {screws}}}"


def test_of_two_tapes_of_one_day_the_last_in_the_file_counts() -> None:
    tapes = ("a: {date: 2026-01-02, what: tape, studs: left, values: {3: 48}}",
             "b: {date: 2026-01-02, what: tape, studs: left, values: {3: 48 1/8}}")  # fmt: skip
    for first, second, at in ((*tapes, 48.125), (*reversed(tapes), 48.0)):
        (stud,) = [one for one in framed(rig_text(measured=(first, second))).members if one.name == "L3"]
        assert stud.at.best / INCH == pytest.approx(at)


def test_a_removed_stud_in_the_corner_is_not_its_post() -> None:
    text = rig_text().replace("every: 16, first: 0}\n  bows", "every: 16, first: 0, left: {removed: [0]}}\n  bows")
    posts = [one.name for one in framed(text).members if one.kind == "corner post" and one.wall == "left"]
    assert posts == ["L first corner"]
    assert [one for one in framed(rig_text()).members if one.kind == "corner post" and one.wall == "left"] == []


def test_a_screw_whose_place_is_in_doubt_near_the_end_of_its_board_is_not_sure_of_it() -> None:
    """The board ends at 58 in: 57 1/2 keeps the 3/8 in to its end, but not where it may be a quarter inch farther."""
    for at, is_sure in (("57 1/2", True), ("57 1/4..57 3/4", False), ("24..25", True)):
        screws = f"{{size: 1/4 in, at: [{at}], into: board}}"
        (point,) = hung(framed(rig_text(parts=(BOARD, shelf(screws, 50.0))))).points
        assert (point.catches, point.is_certain) == ("board", is_sure)


def test_the_most_that_a_span_catches_is_counted_with_the_edge_at_both_ends() -> None:
    """By hand: 32 1/2 in less 3/8 at each end is short of two spacings of 16, so one or two studs and never three."""
    found = hung(framed(rig_text(parts=(shelf("{size: 1/4 in, at: [16, 32]}", 32.5),))))
    assert (found.caught_low, found.caught_high) == (1, 2)


def test_a_header_bears_only_what_stands_between_its_jambs() -> None:
    """A stud that the edge of the opening just meets is a jamb of it and brings no load down on the header."""
    line = "window: {wall: left, x: 46, width: 20, z: 0, height: 66, by: trailer builder, cut: yes}"
    need = window(framed(rig_text((line,)))).header
    assert need is not None and all(0.0 < one < need.span for one in need.offsets)
    tapes = ("a: {date: 2026-01-02, what: tape, studs: left, values: {3: 46}}",)
    need = window(framed(rig_text((line,), measured=tapes))).header
    assert need is not None and all(0.0 < one < need.span for one in need.offsets)


def test_a_jamb_is_as_doubtful_as_its_opening() -> None:
    for x, more in (("50", 0.0), ("49..51", 1.0)):
        line = f"door: {{wall: left, x: {x}, width: 26, z: 0, height: 66, by: trailer builder}}"
        jambs = [one for one in framed(rig_text((line,))).members if one.kind == "jamb"]
        assert jambs
        for jamb in jambs:
            assert (jamb.at.high - jamb.at.best) / INCH == pytest.approx(6 / 25.4 + more, abs=1e-6)

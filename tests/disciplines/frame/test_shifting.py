"""Fasteners at the height of an opening, and where those that miss are moved to."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise, permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boxwright.disciplines.frame.findings import findings
from boxwright.disciplines.frame.result import Point
from boxwright.disciplines.frame.shifting import moved_of
from boxwright.units import Band, HeaderUnits
from tests.disciplines.frame.small import framed, hung, rig_text, window

INCH = 0.0254
INCHES = HeaderUnits(length="in")


def bed(at: str, z: float = 40.0, side: str = "left", x: float = 10.0, long: float = 100.0) -> str:
    return (
        f"bed: {{x: {x}, side: {side}, z: {z}, size: {long} x 10 x 1, weight: 9, stage: shell, "
        f"hinge: {{edge: left, length: {long}, at: {at}}}, screws: {{size: 1/4 in, into: studs}}}}"
    )


@pytest.mark.parametrize(
    ("opening", "z", "caught"),
    [
        ("window: {wall: left, x: 40, width: 16, z: 30, height: 20, cut: yes}", 40.0, ["L2", "", "L4"]),
        ("window: {wall: left, x: 40, width: 16, z: 30, height: 20, cut: no}", 40.0, ["L2", "", "L4"]),
        ("window: {wall: left, x: 40, width: 16, z: 30, height: 20, cut: yes}", 60.0, ["L2", "L3", "L4"]),
        ("window: {wall: left, x: 40, width: 16, z: 30, height: 20, cut: yes}", 10.0, ["L2", "L3", "L4"]),
        ("window: {wall: left, x: 40, width: 16, z: 30, height: 20, cut: yes}", 50.1, ["L2", "", "L4"]),
        ("door: {wall: left, x: 40, width: 20, z: 0, height: 66, by: trailer builder}", 40.0, ["L2", "", "L4"]),
    ],
)
def test_a_stud_the_saw_took_away_holds_no_hinge(opening: str, z: float, caught: list[str]) -> None:
    """Below and above the opening the stud is there, but for the edge distance to where it was sawn."""
    result = framed(rig_text(openings=(opening,), parts=(bed("[32, 48, 64]", z),)))
    hinge = hung(result)
    assert [one.catches for one in hinge.points] == caught
    # Between 10 and 110 in of the part stand L1 to L6; a jamb of the door takes the place of the stud in it.
    jambs = sum(one.kind == "jamb" for one in result.members_of("left"))
    assert hinge.caught == 6 - caught.count("") + jambs
    told = [one for one in findings(result, INCHES) if (one.code, one.kind) == ("frame/fastener-misses", "fix")]
    assert len(told) == caught.count("")


def test_where_all_metal_is_sawn_away_the_miss_is_told_all_the_same() -> None:
    window_all = "window: {wall: left, x: -1, width: 170, z: 30, height: 20, cut: yes}"
    (told,) = [
        one
        for one in findings(framed(rig_text(openings=(window_all,), parts=(bed("[32]"),))), INCHES)
        if one.code == "frame/fastener-misses"
    ]
    assert "no other is there at that height" in told.says


def test_a_hinge_is_hung_at_the_underside_of_its_leaf() -> None:
    """The leaf is an inch thick: its underside meets the stud that is sawn just above, its middle would not."""
    opening = "window: {wall: left, x: 40, width: 16, z: 30, height: 20, cut: yes}"
    result = framed(rig_text(openings=(opening,), parts=(bed("[48]", 29.6),)))
    assert hung(result).points[0].up == pytest.approx(29.6 * INCH)
    assert hung(framed(rig_text(openings=(opening,), parts=(bed("[48]", 29.4),)))).points[0].catches == "L3"


def test_screws_are_moved_the_shortest_way_together() -> None:
    """By hand: 46 to 48 and 66 to 64 is 4 in; the first must not take the stud the second is beside."""
    hinge = hung(framed(rig_text(parts=(bed("[41, 46, 66]"),))))
    assert [one / INCH for one in hinge.moved] == pytest.approx([32.0, 48.0, 64.0])


def test_what_has_no_metal_near_stays_where_it_is() -> None:
    """Beyond a foot no fastener of a pattern is moved: a strip goes behind it."""
    text = rig_text(parts=(bed("[20, 37, 61]", x=18.0, long=60.0),)).replace("every: 16", "every: 48")
    hinge = hung(framed(text))
    assert [one / INCH for one in hinge.moved] == pytest.approx([20.0, 48.0, 61.0])


places = st.lists(st.integers(0, 90), min_size=1, max_size=4, unique=True)


@settings(deadline=None, max_examples=60)
@given(points=places, studs=places)
def test_no_other_way_of_moving_them_is_better(points: list[int], studs: list[int]) -> None:
    """Against every assignment in order there is: as many as can catch, and of those ways the shortest."""
    result = framed(rig_text(parts=(bed("[32]"),)))
    pattern = next(one for one in result.members if one.name == "L1")
    members = [replace(pattern, name=f"S{at}", at=Band(at * INCH, at * INCH, at * INCH)) for at in sorted(studs)]
    missing = tuple(Point(at * INCH, None, "", "", 0.0, -1.0, True) for at in points)
    edge = Band(0.001, 0.001, 0.001)
    moved = moved_of(missing, members, [], edge, (-1.0, 10.0))

    def cost(places: tuple[float, ...]) -> tuple[int, float]:
        # A point that stays counts as one without metal, however near a stud is.
        gone = [abs(place / INCH - at) for place, at in zip(places, points, strict=True)]
        return sum(one < 1e-6 and at not in studs for one, at in zip(gone, points, strict=True)), sum(gone)

    in_order = sorted(range(len(points)), key=lambda index: points[index])
    options: list[float | None] = [*(float(one) for one in studs), *([None] * len(points))]
    best = (len(points), 0.0)
    for chosen in set(permutations(options, len(points))):
        at = [points[index] if one is None else one for index, one in zip(in_order, chosen, strict=True)]
        gone = [abs(place - points[index]) for index, place in zip(in_order, at, strict=True)]
        is_kept = all(one < other for one, other in pairwise(at))
        if is_kept and max(gone) <= 12.0:
            best = min(best, (sum(one is None for one in chosen), sum(gone)))
    found = cost(moved)
    assert found[1] == pytest.approx(best[1]) and found[0] <= best[0]


def test_places_far_outside_their_part_are_left_where_they_are() -> None:
    hinge = hung(framed(rig_text(parts=(bed("[2, 3, 150]", x=60.0, long=40.0),))))
    assert [one / INCH for one in hinge.moved] == pytest.approx([2.0, 3.0, 150.0])


def test_an_opening_of_the_plan_is_where_it_was_sawn() -> None:
    result = framed(rig_text(openings=("window: {wall: left, x: 40, width: 16, z: 30, height: 20}",)))
    assert window(result).members_cut[0].name == "L3"

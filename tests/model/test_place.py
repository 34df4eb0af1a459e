"""Places: one grammar on every axis, and a mirrored rig comes out mirrored."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.model.place import Place, Surfaces, Written, folded_up, resolve, side_word, turned_with
from boxwright.units import Band, HeaderUnits, exactly

INCHES = HeaderUnits(length="in", weight="lb")
IN = 0.0254  # exact, international yard and pound agreement of 1959 (from memory)
BOX = Surfaces(
    front=0.5 * IN, rear=167.5 * IN, left=-39.5 * IN, right=39.5 * IN, floor=1.5 * IN, ceiling=77.75 * IN,
    studs_front=0.0, studs_rear=168 * IN, studs_left=-40 * IN, studs_right=40 * IN, bows=78 * IN,
)  # fmt: skip


def placed(size=(10 * IN, 4 * IN, 6 * IN), parent=None, surfaces=BOX, **keys):
    place, problems = resolve(Written(**keys), size, surfaces, INCHES, parent)
    assert not problems, problems
    return place


def middle(place):
    return tuple(round(axis.best / IN, 9) for axis in (place.x, place.y, place.z))


def test_bare_numbers_place_the_front_edge_and_the_underside():
    assert middle(placed(x="36", side="centre", z="27")) == (41, 0, 30)


@pytest.mark.parametrize(
    ("side", "expected"),
    [
        ("left+6", -39.5 + 6 + 2),
        ("right-6", 39.5 - 6 - 2),
        ("right+6", 39.5 + 6 - 2),
        ("studs-left", -40 + 2),
        ("studs-left-3/4", -40 - 0.75 + 2),
        ("centre-20", -20),
        ("curb side-6", 39.5 - 6 - 2),
        ("left + 6", -39.5 + 6 + 2),
    ],
)
def test_sides_place_the_edge_they_name(side, expected):
    assert middle(placed(x="0", side=side, z="0"))[1] == pytest.approx(expected)


def test_the_kerb_is_left_where_one_drives_on_the_left():
    assert side_word("nearside", "UK") == "left" == side_word("curb side", "NZ")
    assert side_word("nearside", "EU") == "right" == side_word("offside", "UK")


def test_anchors_on_every_axis():
    assert middle(placed(x="rear-40", side="centre", z="floor+30")) == (167.5 - 40 + 5, 0, 1.5 + 30 + 3)
    assert middle(placed(x="front", side="centre", z="ceiling-6")) == (5.5, 0, 77.75 - 3)
    assert middle(placed(x="mid 80", side="centre", z="deck"))[0] == 80


def test_relative_to_a_parent_and_against_a_wall():
    parent = placed(size=(15 * IN, 46 * IN, 36 * IN), x="front", side="left", z="floor")
    inside = placed(size=(9 * IN, 20 * IN, 9 * IN), x="+3", side="+2", z="+1", parent=parent)
    assert middle(inside) == (0.5 + 3 + 4.5, -39.5 + 2 + 10, 1.5 + 1 + 4.5)
    assert middle(placed(x="50", wall="right", z="40")) == (55, 39.5 - 2, 43)


@pytest.mark.parametrize(
    ("wall", "axis", "expected"),
    [
        ("left", 1, -39.5 + 2),
        ("right", 1, 39.5 - 2),
        ("front", 0, 0.5 + 5),
        ("rear", 0, 167.5 - 5),
        ("floor", 2, 1.5 + 3),
        ("ceiling", 2, 77.75 - 3),
        ("roof", 2, 78 + 3),  # what is on the roof stands on top of the bows
        ("kerb side", 1, 39.5 - 2),
    ],
)
def test_a_thing_on_a_wall_touches_it_from_the_inside_and_the_roof_from_above(wall, axis, expected):
    others = {"x": "20", "side": "centre", "z": "30"}
    del others[("x", "side", "z")[axis]]
    assert middle(placed(wall=wall, **others))[axis] == pytest.approx(expected)


def test_a_wall_leaves_the_axes_along_it_open():
    place = placed(wall="front", side="centre")
    assert place.x.known and not place.z.known


def in_inches(band):
    return tuple(round(edge / IN, 9) for edge in (band.low, band.best, band.high))


def test_a_doubtful_offset_keeps_its_low_end_low():
    minus = placed(x="rear-10..20", side="centre", z="0").x
    assert in_inches(minus) == (167.5 - 20 + 5, 167.5 - 15 + 5, 167.5 - 10 + 5)
    plus = placed(x="front+10..20", side="centre", z="0").x
    assert in_inches(plus) == (0.5 + 10 + 5, 0.5 + 15 + 5, 0.5 + 20 + 5)
    lopsided = placed(x="3", side="right-4 +-1", z="ceiling-10..14")
    assert in_inches(lopsided.y) == (39.5 - 5 - 2, 39.5 - 4 - 2, 39.5 - 3 - 2)
    assert in_inches(lopsided.z) == (77.75 - 14 + 3, 77.75 - 12 + 3, 77.75 - 10 + 3)


@pytest.mark.parametrize("text", ["", "unknown"])
def test_what_is_not_written_of_a_thing_inside_another_is_anywhere_in_it(text):
    parent = placed(size=(20 * IN, 46 * IN, 36 * IN), x="10..14", side="centre", z="5")
    inside = placed(size=(2 * IN, 2 * IN, 2 * IN), x=text, side=text, z=text, parent=parent)
    assert in_inches(inside.x) == (10, 22, 34)  # from the foremost front edge to the rearmost rear edge
    assert in_inches(inside.y) == (-23, 0, 23)
    assert in_inches(inside.z) == (5, 23, 41)
    assert inside.x.known and inside.x.assumed and inside.x.spread == "interval"


def test_a_missing_axis_is_anywhere_and_never_zero():
    place, problems = resolve(Written(side="left", z="0"), (0.1, 0.1, 0.1), BOX, INCHES, None)
    assert not place.x.known and place.x.high == float("inf") and not problems


def test_a_mistyped_side_says_how_to_write_it():
    place, problems = resolve(Written(x="3", side="12", z="0"), (0.1, 0.1, 0.1), BOX, INCHES, None)
    assert not place.y.known
    assert problems[0][0] == "side" and "left+10" in str(problems[0][1])


def test_an_unknown_body_leaves_an_anchored_place_unknown():
    nowhere = Surfaces(*(float("inf"),) * 11)
    place, problems = resolve(Written(x="3", side="left+2", z="0"), (0.1, 0.1, 0.1), nowhere, INCHES, None)
    assert not place.y.known and "body" in str(problems[0][1])


@given(st.integers(-60, 60), st.integers(0, 30), st.sampled_from(["", "studs-"]))
def test_mirrored_words_give_mirrored_places(offset, width, studs):
    size = (0.1, width * IN, 0.1)
    on_left = placed(size=size, x="0", z="0", side=f"{studs}left{offset:+d}")
    on_right = placed(size=size, x="0", z="0", side=f"{studs}right{-offset:+d}")
    assert on_left.y.best == pytest.approx(-on_right.y.best)


def test_a_leaf_folds_up_against_its_wall_with_what_lies_on_it():
    bunk = placed(size=(76 * IN, 48 * IN, 4 * IN), x="78", side="left+1", z="25")
    folded = folded_up(bunk, exactly(9 * IN), BOX)
    assert middle(folded) == (116, -39.5 + 1 + 4.5, 25 + 24)
    assert tuple(round(side / IN, 9) for side in folded.size) == (76, 9, 48)
    bedding = placed(size=(76 * IN, 40 * IN, 6 * IN), x="+0", side="+0", z="+4", parent=bunk)
    assert middle(turned_with(bedding, bunk, folded)) == (116, -39.5 + 1 + 4.5, 25 + 20)
    mirrored = Place(bunk.x, exactly(-bunk.y.best), bunk.z, bunk.size)
    assert folded_up(mirrored, exactly(9 * IN), BOX).y.best == pytest.approx(-folded.y.best)


def test_a_leaf_of_doubtful_depth_stands_folded_as_far_off_its_wall_as_it_may():
    """By hand: hinged at 38.5 in, 9 in deep its face is at 29.5 in; at 12 in it is 3 in farther out, at 7 in 2 less."""
    bunk = placed(size=(76 * IN, 48 * IN, 4 * IN), x="78", side="left+1", z="25..27")
    folded = folded_up(bunk, Band(9 * IN, 7 * IN, 12 * IN), BOX)
    face = [round((end + folded.size[1] / 2) / IN, 6) for end in (folded.y.low, folded.y.best, folded.y.high)]
    assert face == [-31.5, -29.5, -26.5]
    mirrored = folded_up(Place(bunk.x, exactly(-bunk.y.best), bunk.z, bunk.size), Band(9 * IN, 7 * IN, 12 * IN), BOX)
    assert (mirrored.y.low, mirrored.y.high) == pytest.approx((-folded.y.high, -folded.y.low))
    bedding = placed(size=(76 * IN, 40 * IN, 6 * IN), x="+0", side="+0..6", z="+4", parent=bunk)
    up = turned_with(bedding, bunk, folded)
    assert (up.y.low, up.y.high) == (folded.y.low, folded.y.high)
    assert (up.z.high - up.z.best) / IN == pytest.approx(3 + 1), "as far across as up, and as far as the leaf itself"
    askew = Place(bedding.x, Band(0.0, -1 * IN, 5 * IN), bedding.z, bedding.size)
    ends = [
        (round((up.z.best - up.z.low) / IN, 6), round((up.z.high - up.z.best) / IN, 6))
        for up in (
            turned_with(askew, bunk, folded),
            turned_with(askew, bunk, folded_up(bunk, exactly(9 * IN), BOX, "right")),
        )
    ]
    assert ends == [(2, 6), (6, 2)], "farther to the right is higher up a left wall, and lower down a right one"


def test_a_leaf_folds_about_its_own_hinge_wherever_it_stands():
    bunk = placed(size=(76 * IN, 48 * IN, 4 * IN), x="78", side="left+1", z="25")
    folded = folded_up(bunk, exactly(9 * IN), BOX, "right")
    assert middle(folded) == (116, -39.5 + 1 + 48 - 4.5, 25 + 24)
    bedding = placed(size=(76 * IN, 40 * IN, 6 * IN), x="+0", side="+0", z="+4", parent=bunk)
    assert middle(turned_with(bedding, bunk, folded)) == (116, -39.5 + 1 + 48 - 4.5, 25 + 28)


def test_a_leaf_of_unknown_depth_is_nowhere_known_when_folded_and_never_flat():
    bunk = placed(size=(76 * IN, 48 * IN, 4 * IN), x="78", side="left+1", z="25")
    folded = folded_up(bunk, Band(0.0, 0.0, float("inf"), known=False), BOX)
    assert not folded.y.known and folded.size[1] == pytest.approx(4 * IN)
    assert folded.y.high + folded.size[1] / 2 == pytest.approx(bunk.y.best + bunk.size[1] / 2)
    assert not turned_with(bunk, bunk, folded).y.known

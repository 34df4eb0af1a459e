"""The frame as solids: how much each layer and member fills against closed forms, and what weight says of it."""

from __future__ import annotations

import re
from math import fsum

import pytest

from boxwright.book.solids import at_stage, model_of
from boxwright.disciplines.frame.solid_plane import plane_of
from boxwright.disciplines.frame.walls import top_at
from boxwright.render.shape import Shape, shapes_of
from tests.render.solid import shapes, slot_of, text_of

INCH = 0.0254
POUND = 0.45359237
LENGTH, WIDTH, HEIGHT = 168 * INCH, 80 * INCH, 78 * INCH
SINGLE = 2e-5
"""Surfaces have numbers of single precision."""

SMALL = """\
boxwright: 1
rig: Small
units: {{length: in, weight: lb}}
trailer:
  body: {{length: 96, width: 60, height: 72}}
  outside: {{length: 99, width: 63}}
  deck_height: 18
  coupler_x: -48
  axles: {{x: [50], gawr: [3500]}}
  tyres: {{size: ST205/75R15}}
frame:
  studs: {{tube: {tube}, every: 16, first: 0, front: {{every: 15}}, rear: {{every: 15}}}}
  bows: {{tube: 1 x 1 1/2 x 16 ga, every: 16, first: 0{bows}}}
  floor: {{cross_members: 16, depth: 3, deck: ply 3/4}}
  skin: aluminium 0.040
{more}stages: {{shell: {{}}, holes: {{}}, beds: {{}}}}
walls:
  {one}:
    layers:
      foam: {{of: XPS, thick: 1 1/2, between: studs, stage: shell}}
      liner: {{of: ply, thick: 1/4, stage: shell}}
openings:
  hatch: {{wall: {one}, x: 34, width: 12, z: 20, height: 16, stage: holes, unit: {{weight: 5}}}}
parts:
  crate: {{x: 10, side: "{side}", z: 0, size: 20 x 10 x 8, weight: 12, stage: beds}}
"""


def small(one: str = "left", tube: str = "1 x 1 1/2 x 16 ga", bows: str = "", more: str = "") -> tuple[Shape, ...]:
    side = "left+4" if one == "left" else "right-4"
    text = SMALL.format(one=one, side=side, tube=tube, bows=bows, more=more)
    return shapes_of(model_of(*slot_of(text.encode(), stage=2)).solids)


def named(found: tuple[Shape, ...], of: str, name: str = "") -> Shape:
    return next(one for one in found if one.solid.of == of and name in one.solid.name)


def cubic(found: Shape) -> float:
    return found.litres / 1000.0


def holes_in(wall: str) -> float:
    """Return the area of Whimbrel's openings that lie within a wall's lining (m2), by hand from the file."""
    inches = {"left": 14 * 24 + 3 * 3 + 10 * 4, "right": 31 * 72 + 24 * 18 + 9 * 4, "front": 0}[wall]
    return inches * INCH * INCH


@pytest.mark.parametrize("wall", ["left", "right", "front"])
def test_a_liner_fills_its_wall_less_its_openings(wall: str) -> None:
    along = WIDTH if wall == "front" else LENGTH
    found = named(shapes("whimbrel"), f"walls[{wall}].layers[liner]")
    assert cubic(found) == pytest.approx((along * HEIGHT - holes_in(wall)) * 0.25 * INCH, rel=SINGLE)


def test_foam_fills_the_bays_and_a_bay_of_its_own_what_is_written_of_it() -> None:
    found = shapes("whimbrel")
    own, wall = (named(found, f"walls[{one}].layers[foam]") for one in ("bay left 4-5", "left"))
    # as taped, stud 4 stands at 64 and stud 5 at 80 1/8 or so: the bay's clear width times its height and an inch
    wide = cubic(own) / (HEIGHT * INCH)
    assert wide == pytest.approx(15.0 * INCH, abs=0.3 * INCH)
    assert wall.body.min_gap(own.body, 1.0) == pytest.approx(1.0 * INCH, rel=1e-3)  # the stud is between them


def test_strips_lie_on_the_members_and_the_liner_on_the_strips() -> None:
    found = shapes("whimbrel")
    strip, liner = (named(found, f"walls[left].layers[{one}]") for one in ("strip", "liner"))
    assert strip.body.bounding_box()[1] == pytest.approx(-WIDTH / 2.0, rel=1e-5)
    assert strip.body.bounding_box()[4] == pytest.approx(liner.body.bounding_box()[1], rel=1e-5)
    assert liner.body.bounding_box()[4] == pytest.approx(-WIDTH / 2.0 + 0.5 * INCH, rel=1e-5)


@pytest.mark.parametrize(("thick", "from_face"), [(1.0, 0.0), (1.5, 0.0), (2.0, 0.5)])
def test_the_liner_lies_on_the_members_unless_the_foam_stands_out(thick: float, from_face: float) -> None:
    text = SMALL.format(one="left", side="left", tube="1 x 1 1/2 x 16 ga", bows="", more="")
    text = text.replace("{of: XPS, thick: 1 1/2", f"{{of: XPS, thick: {thick}")
    found = shapes_of(model_of(*slot_of(text.encode(), stage=2)).solids)
    foam, liner = (named(found, f"walls[left].layers[{one}]").body.bounding_box() for one in ("foam", "liner"))
    ends = (-31.5 * INCH, (-31.5 + thick) * INCH)  # from the skin inwards
    assert (foam[1], foam[4]) == pytest.approx(ends, rel=1e-5)
    assert liner[1] == pytest.approx((-30 + from_face) * INCH, rel=1e-5)


def test_the_skin_lies_on_the_studs_and_the_bows() -> None:
    found = shapes("whimbrel")
    left, roof = (named(found, "frame.skin", f"skin {one}").body.bounding_box() for one in ("left", "roof"))
    assert (left[1], left[4]) == pytest.approx((-41.54 * INCH, -41.5 * INCH), rel=1e-5)
    assert (roof[2], roof[5]) == pytest.approx((79.5 * INCH, 79.54 * INCH), rel=1e-5)
    assert (left[0], left[3]) == pytest.approx((-1.5 * INCH, 169.5 * INCH), rel=1e-5)  # 171 in outside, as written


def test_a_layer_weighs_of_its_stock_what_weight_says_its_openings_taken_out_of_both() -> None:
    text = re.sub(rb"(liner: .*?), weight: \d+", rb"\1", text_of("whimbrel"))
    found = shapes_of(model_of(*slot_of(text)).solids)
    for wall, along in (("left", LENGTH), ("right", LENGTH), ("front", WIDTH)):
        liner = named(found, f"walls[{wall}].layers[liner]")
        said, drawn = liner.solid.kg, liner.kg
        assert said is not None and drawn is not None and liner.solid.density is not None
        left = along * HEIGHT - holes_in(wall)
        for weighed, own, density in zip((said.best, said.low, said.high), drawn, liner.solid.density, strict=True):
            assert weighed == pytest.approx(left * 0.25 * INCH * density, rel=1e-9)
            assert own == pytest.approx(weighed, rel=SINGLE)


@pytest.mark.parametrize(
    ("of", "pounds"),
    [("walls[left].layers[liner]", 60), ("walls[right].layers[liner]", 50), ("walls[front].layers[liner]", 31),
     ("walls[ceiling].layers[liner]", 67), ("walls[floor].layers[deck]", 135)],
)  # fmt: skip
def test_what_the_owner_weighed_stands_beside_what_the_stock_would_weigh(of: str, pounds: float) -> None:
    found = named(shapes("whimbrel"), of)
    assert found.solid.kg is not None and found.solid.kg.best == pytest.approx(pounds * POUND)
    assert found.kg is not None
    assert found.kg[1] <= pounds * POUND <= found.kg[2]  # ply of the demo lies within the ply of the table


def test_a_stud_weighs_between_round_and_sharp_corners() -> None:
    found = shapes("whimbrel")
    _, slot = slot_of(text_of("whimbrel"))
    assert slot.frame is not None
    wall = slot.frame.wall("left")
    assert wall is not None and wall.tube.area is not None
    stud = named(found, "frame.studs", "L4")
    area = cubic(stud) / HEIGHT
    assert area == pytest.approx(wall.tube.area.high, rel=1e-4)  # drawn with sharp corners
    assert wall.tube.area.low < wall.tube.area.best < wall.tube.area.high


@pytest.mark.parametrize("tube", ["channel 1 x 2 x 11 ga", "angle 1 x 2 x 1/8", "z 1 x 2 x 11 ga", "spruce 1 x 2"])
def test_a_section_of_any_shape_has_the_area_that_is_worked_out_of_it(tube: str) -> None:
    text = SMALL.format(one="left", side="left", tube=tube, bows="", more="").encode()
    rig, slot = slot_of(text, stage=2)
    wall = slot.frame.wall("right") if slot.frame is not None else None
    assert wall is not None and wall.tube.area is not None
    stud = named(shapes_of(model_of(rig, slot).solids), "frame.studs", "R2")
    assert cubic(stud) / (72 * INCH) == pytest.approx(wall.tube.area.best, rel=1e-4)


def test_the_mirrored_rig_mirrors() -> None:
    left = [(found.litres, *_mirrored(found.body.bounding_box())) for found in small("left")]
    right = [(found.litres, *found.body.bounding_box()) for found in small("right")]
    assert len(left) == len(right)
    for mine in left:
        twin = next(place for place, one in enumerate(right) if one == pytest.approx(mine, rel=1e-4, abs=1e-4))
        del right[twin]


def _mirrored(box: tuple[float, ...]) -> tuple[float, ...]:
    return box[0], -box[4], box[2], box[3], -box[1], box[5]


def test_an_arched_roof_is_round_for_bows_skin_and_end_walls() -> None:
    found = small(bows=", shape: arched, rise: 6")
    assert all(str(one.body.status()) == "Error.NoError" for one in found)
    bow = named(found, "frame.bows", "bow 2")
    _, slot = slot_of(SMALL.format(one="left", side="left", tube="1 x 1 1/2 x 16 ga", bows=", shape: arched, rise: 6",
                                   more="").encode(), stage=2)  # fmt: skip
    assert slot.frame is not None
    plane = plane_of(slot.frame.walls[0], 30 * INCH)
    low, high = bow.body.bounding_box()[2], bow.body.bounding_box()[5]
    assert low == pytest.approx(66 * INCH, rel=1e-5)  # 72 in the middle, 6 less at the eaves
    assert high == pytest.approx((72 + 1.5) * INCH, rel=1e-5)
    assert top_at(plane.wall.roof, plane.half, 0.0) == pytest.approx(72 * INCH)
    rear = named(found, "frame.skin", "skin rear")
    assert rear.body.bounding_box()[5] == pytest.approx((72 + 1.5) * INCH, rel=1e-5)
    middle = fsum(top_at(plane.wall.roof, 30 * INCH, (step + 0.5) / 100 * 60 * INCH - 30 * INCH) for step in range(100))
    assert middle / 100 > 69 * INCH
    assert cubic(rear) > 63 * INCH * (66 + 0.75) * INCH * 0.040 * INCH


def test_a_nose_is_closed_by_skin_and_deck() -> None:
    found = small(more="  nose: {length: 24, tip: 12}\n")
    deck = named(found, "frame.floor", "deck")
    area = 96 * 60 + 24 * (60 + 12) / 2.0
    assert cubic(deck) == pytest.approx(area * INCH * INCH * 0.75 * INCH, rel=SINGLE)
    assert deck.body.bounding_box()[0] == pytest.approx(-24 * INCH, rel=1e-5)
    assert {"skin nose-left", "skin nose-right"} <= {one.solid.name for one in found}


def test_the_skin_in_an_opening_stands_until_it_is_cut() -> None:
    text = SMALL.format(one="left", side="left", tube="1 x 1 1/2 x 16 ga", bows="", more="").encode()
    for stage, stands in ((0, True), (1, False), (2, False)):
        paths = {one.of for one in at_stage(model_of(*slot_of(text, stage=stage)))}
        assert ("openings[hatch].uncut" in paths) == stands
        assert ("openings[hatch]" in paths) != stands
        assert ("parts[crate]" in paths) == (stage == 2)
    found = small()
    plug, skin = named(found, "openings[hatch].uncut"), named(found, "frame.skin", "skin left")
    whole = (96 + 3) * (72 + 0.75 + 1.5) * INCH * INCH
    assert cubic(plug) + cubic(skin) == pytest.approx(whole * 0.040 * INCH, rel=1e-4)


def test_what_nobody_wrote_is_said_to_be_taken() -> None:
    found = small()
    assert named(found, "openings[hatch]").solid.taken and not named(found, "parts[crate]").solid.taken
    assert named(found, "frame.floor", "cross-member").solid.taken
    assert named(found, "trailer.coupler_x").solid.taken

"""A leaf that slides into its wall strikes the studs, wires, holes and let-in things in there. By hand, in inches.

The door is the hole from x = 20 to 48 in the right wall, 70 high; studs of 1 stand every 16, those in the hole cut: one
stands at 64, from 63.5 on, so that a leaf slides 15.5 to the rear, and 3.5 to the front to the one at 16.
"""

from __future__ import annotations

from dataclasses import replace
from math import inf

import pytest

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.parts import Closed, Facet, Slide
from boxwright.disciplines.layout.pockets import Within, pocketed
from boxwright.disciplines.layout.result import Struck
from boxwright.model.place import Place, Surfaces
from boxwright.units import Band, exactly
from tests.disciplines.layout.knots import Edits, told, words

STRIKES = "layout/opening-strikes"
SWUNG = "swing: {hinge: front, opens: in, to: 90 deg}"
AWAY = ("fridge: {x: 60", "fridge: {x: 136")


def slid(slides: str) -> Edits:
    return (SWUNG, f"slides: {{{slides}, runs: in the wall}}"), AWAY


@pytest.mark.parametrize(
    ("slides", "kinds"),
    [
        ("to: rear, by: 28", ["fix"]),
        ("to: rear, by: 15", []),
        ("to: rear, by: 15..20", ["unknown"]),  # 15 is short of it
        ("to: rear, by: 16..20", ["fix"]),
        ("to: rear, by: 13..17", ["unknown"]),
        ("to: front, by: 5", ["fix"]),
        ("to: front, by: 3", []),
    ],
)
def test_a_door_slides_into_its_wall_as_far_as_the_first_stud(slides: str, kinds: list[str]) -> None:
    assert told(STRIKES, slid(slides)) == [(kind, "openings[door]") for kind in kinds]


def test_the_stud_is_named_with_how_far_the_door_gets() -> None:
    assert "door strikes stud R4 when it slides open: after 15 1/4 in of 28 in" in words(
        STRIKES, slid("to: rear, by: 28")
    )


HERE = Place(exactly(1.0), exactly(1.0), exactly(1.0), (0.7, 0.0, 1.7))
DOOR = Closed(
    "openings[door]",
    "door",
    "right",
    HERE,
    Facet(slides=Slide.model_construct(to="rear", by=exactly(0.7), runs="in the wall")),
)
ROOM = Surfaces(0.0, 4.0, -0.98, 0.98, 0.0, 1.9, 0.0, 4.0, -1.0, 1.0, 2.0)
OUTER = Block((-0.04, -1.04, 0.0), (4.04, 1.04, 2.1))
FAR = Within("frame.studs", "far", "right", (3.0, 3.03), (0.0, 2.0), is_stud=True)


def found(
    *within: Within, door: Closed = DOOR, closed: tuple[Closed, ...] = ()
) -> list[tuple[str, tuple[str, ...], float]]:
    made: list[Struck] = list(pocketed((door, *closed), (FAR, *within), (), {}, OUTER, ROOM))
    assert all(one.of == door.of and one.is_in_wall and not one.turns for one in made)
    return [(one.sure, one.names, round(one.reached, 6)) for one in made]


def wire(along: tuple[float, float], up: tuple[float, float], is_sure: bool = True, wall: str = "right") -> Within:
    return Within("wires[feed]", "wire feed", wall, along, up, is_sure)


@pytest.mark.parametrize(
    ("one", "expected"),
    [
        (wire((1.5, 1.9), (0.9, 0.904)), [("sure", ("wire feed",), 0.15)]),
        (wire((0.0, 4.0), (0.9, 0.904)), [("sure", ("wire feed",), 0.0)]),
        (wire((2.06, 3.0), (0.9, 0.904)), []),  # beyond 1.35 + 0.7
        (wire((0.0, 1.3), (0.9, 0.904)), []),  # in the hole, as the jambs of it
        (wire((1.5, 1.9), (1.86, 1.864)), []),  # over the leaf
        (wire((1.5, 1.9), (0.9, 0.904), wall="left"), []),
        (wire((-inf, inf), (-inf, inf), is_sure=False), [("perhaps", ("wire feed",), 0.0)]),
        (wire((-inf, inf), (-inf, inf), is_sure=False, wall=""), [("perhaps", ("wire feed",), 0.0)]),
    ],
)
def test_a_wire_in_the_wall_is_struck_where_it_crosses_the_way_of_the_leaf(
    one: Within, expected: list[tuple[str, tuple[str, ...], float]]
) -> None:
    assert found(one) == expected


@pytest.mark.parametrize("wall", ["right", "left"])
def test_the_same_door_to_the_front_and_in_the_other_wall_strikes_alike(wall: str) -> None:
    """The way from 0.65 forward by 0.7 to -0.05: a wire from 0.1 to 0.5 is met after 0.15."""
    slides = Slide.model_construct(to="front", by=exactly(0.7), runs="in the wall")
    door = replace(DOOR, wall=wall, facet=Facet(slides=slides))
    stud = replace(FAR, wall=wall)
    assert found(stud, wire((0.1, 0.5), (0.9, 0.904), wall=wall), door=door) == [("sure", ("wire feed",), 0.15)]
    assert found(stud, wire((1.5, 1.9), (0.9, 0.904), wall=wall), door=door) == []


@pytest.mark.parametrize("wall", ["right", "left"])
@pytest.mark.parametrize("way", ["rear", "front"])
@pytest.mark.parametrize(
    ("middle", "along", "up", "expected"),
    [
        ((-0.02, 0.02), 0.15, 0.9, ("sure", 0.13)),  # wherever it is, it meets it
        ((-0.02, 0.02), 0.69, 0.9, ("perhaps", 0.67)),  # at its best by 10 mm, at its least not
        ((-0.02, 0.02), 0.71, 0.9, ("perhaps", 0.69)),  # at its best not, at its most by 10 mm
        ((-0.02, 0.02), 0.73, 0.9, None),
        ((0.0, 0.0), 0.15, 1.86, None),  # 10 mm over the leaf as it is at best ..
        ((-0.02, 0.02), 0.15, 1.86, ("perhaps", 0.13)),  # .. and in its way at the highest
        ((-0.02, 0.02), 0.15, 1.835, ("perhaps", 0.13)),
    ],
)
def test_a_door_of_which_the_place_is_in_doubt_is_held_against_its_wall_wherever_it_may_be(
    wall: str, way: str, middle: tuple[float, float], along: float, up: float, expected: tuple[str, float] | None
) -> None:
    """The leaf ends at 1.35, or begins at 0.65; a thing 20 mm long begins ``along`` beyond that."""
    doubt = Band(1.0, 1.0 + middle[0], 1.0 + middle[1], spread="interval")
    slides = Slide.model_construct(to=way, by=exactly(0.7), runs="in the wall")
    door = replace(DOOR, wall=wall, facet=Facet(slides=slides), place=replace(HERE, x=doubt, z=doubt))
    ends = (1.35 + along, 1.37 + along) if way == "rear" else (0.63 - along, 0.65 - along)
    hit = found(replace(FAR, wall=wall), wire(ends, (up, up + 0.004), wall=wall), door=door)
    assert [(sure, reached) for sure, _, reached in hit] == ([expected] if expected else [])


def test_another_hole_of_the_wall_is_in_the_way_and_a_wall_of_unknown_studs_is_asked_about() -> None:
    window = Closed("openings[window]", "window", "right", replace(HERE, x=exactly(1.8), size=(0.4, 0.0, 0.4)))
    assert found(closed=(window,)) == [("sure", ("window",), 0.25)]
    vague = replace(window, place=replace(window.place, x=Band(1.8, 1.7, 2.9, spread="interval")))
    assert found(closed=(vague,)) == [("perhaps", ("window",), 0.15)]  # it may begin at 1.5
    assert found(closed=(replace(window, wall="left"),)) == []
    (asked,) = pocketed((DOOR,), (), (), {}, OUTER, ROOM)
    assert (asked.sure, asked.names, asked.reached) == ("perhaps", ("the studs",), 0.0)


def test_a_socket_that_is_let_in_is_struck_and_one_on_the_wall_is_not() -> None:
    socket = "  socket: {x: 55, wall: right, z: 30, size: 3 x 2 x 3, weight: 1, done: yes, stage: lined%s}\n"
    assert told(STRIKES, slid("to: rear, by: 12"), socket % ", recess: 1 1/2") == [("fix", "openings[door]")]
    assert told(STRIKES, slid("to: rear, by: 12"), socket % "") == []
    assert told(STRIKES, slid("to: rear, by: 6"), socket % ", recess: 1 1/2") == []
    assert told(STRIKES, slid("to: rear, by: 12"), socket % ", recess: unknown") == [("unknown", "openings[door]")]


def test_a_window_that_came_as_a_unit_slides_within_its_own_frame() -> None:
    assert found(wire((1.5, 1.9), (0.9, 0.904)), door=replace(DOOR, is_unit=True)) == []

"""Solids as closed surfaces and as a GLB file, against trimesh, which reads it back, and against closed forms."""

from __future__ import annotations

from math import pi
from typing import Any

import numpy
import pytest
import trimesh

from boxwright.drawing.solid import Prism, Solid, disc, oblong, upright
from boxwright.render.glb import glb_of
from boxwright.render.shape import Section, Shape, cut_by, shape_of, shapes_of
from tests.render.solid import glb, model, scene_of, shapes

NAMES = ("whimbrel", "dunlin", "gannet")
EXACT = {"rel": 1e-6}
"""The numbers of a surface are of single precision."""


def shape(*pieces: Prism, cut: tuple[Prism, ...] = ()) -> Shape:
    return shape_of(Solid("parts[a]", "a", "thing", pieces, cut))


def mesh_of(one: Shape) -> Any:
    mesh = one.body.to_mesh()
    return trimesh.Trimesh(mesh.vert_properties[:, :3], mesh.tri_verts, process=False)


def test_a_box_fills_what_its_measures_say() -> None:
    box = shape(upright((1.0, -2.0, 0.5), (3.0, -1.5, 2.0)))
    assert box.litres == pytest.approx(2.0 * 0.5 * 1.5 * 1000.0, **EXACT)
    assert mesh_of(box).bounds.ravel().tolist() == pytest.approx([1.0, -2.0, 0.5, 3.0, -1.5, 2.0], **EXACT)


def test_a_tube_fills_its_wall_only() -> None:
    outline, hollow = oblong((0.0, 0.0), (0.0254, 0.0381)), oblong((0.0015, 0.0015), (0.0239, 0.0366))
    tube = shape(Prism((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), outline, 2.0, (hollow,)))
    area = 0.0254 * 0.0381 - (0.0254 - 0.003) * (0.0381 - 0.003)
    assert tube.litres == pytest.approx(area * 2.0 * 1000.0, **EXACT)
    assert mesh_of(tube).euler_number == 0  # one way through


def test_a_box_less_a_hole_is_the_box_less_the_hole() -> None:
    box = upright((0.0, 0.0, 0.0), (2.0, 1.0, 0.1))
    holed = shape(box, cut=(upright((0.5, 0.2, -1.0), (1.0, 0.6, 1.0)), upright((9.0, 9.0, 9.0), (10.0, 10.0, 10.0))))
    assert holed.litres == pytest.approx((2.0 - 0.5 * 0.4) * 0.1 * 1000.0, **EXACT)
    assert mesh_of(holed).is_watertight


def test_a_wheel_fills_as_much_as_the_round_one() -> None:
    wheel = shape(Prism((0.0, 0.1, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), disc((0.0, 0.0), 0.34, 40), 0.2))
    assert wheel.litres == pytest.approx(pi * 0.34**2 * 0.2 * 1000.0, **EXACT)
    low, high = mesh_of(wheel).bounds
    assert (low[1], high[1]) == pytest.approx((-0.1, 0.1), **EXACT)  # x and z span a plane that looks to the left


def test_boxes_that_overlap_count_once() -> None:
    two = shape(upright((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), upright((0.5, 0.0, 0.0), (1.5, 1.0, 1.0)))
    assert two.litres == pytest.approx(1500.0, **EXACT)


@pytest.mark.parametrize("axis", ["x", "y", "z"])
def test_the_two_sides_of_a_section_are_closed_and_make_the_whole(axis: Any) -> None:
    holed = shape(upright((0.0, 0.0, 0.0), (2.0, 1.0, 0.5)), cut=(upright((0.5, 0.2, -1.0), (1.0, 0.6, 1.0)),))
    at = {"x": 0.7, "y": 0.3, "z": 0.2}[axis]
    sides = [cut_by(holed, Section(axis, at, keeps)) for keeps in ("below", "above")]
    assert sum(one.litres for one in sides) == pytest.approx(holed.litres, **EXACT)
    assert all(mesh_of(one).is_watertight and one.litres > 1.0 for one in sides)
    number = "xyz".index(axis)
    assert mesh_of(sides[0]).bounds[1][number] == pytest.approx(at, **EXACT)
    assert mesh_of(sides[1]).bounds[0][number] == pytest.approx(at, **EXACT)


@pytest.mark.parametrize("name", NAMES)
def test_every_solid_of_a_demo_rig_is_closed_and_turned_outward(name: str) -> None:
    scene = scene_of(glb(name))
    assert len(scene.geometry) == len(shapes(name)) > 60
    leaking = [key for key, one in scene.geometry.items() if not (one.is_watertight and one.is_winding_consistent)]
    assert leaking == []
    assert min(one.volume for one in scene.geometry.values()) > 0.0


@pytest.mark.parametrize("name", NAMES)
def test_the_file_holds_as_much_as_the_solids(name: str) -> None:
    read_back = sum(one.volume for one in scene_of(glb(name)).geometry.values())
    assert read_back == pytest.approx(sum(one.litres for one in shapes(name)) / 1000.0, rel=1e-4)


@pytest.mark.parametrize("name", NAMES)
def test_a_section_leaves_every_solid_closed(name: str) -> None:
    cut = shapes_of(model(name).solids, Section("x", 1.0, "above"))
    assert 0 < len(cut) < len(shapes(name))
    assert all(mesh_of(one).is_watertight for one in cut)
    assert min(mesh_of(one).bounds[0][0] for one in cut) == pytest.approx(1.0, rel=1e-5)


def test_the_file_has_a_node_for_each_path_gathered_by_stage() -> None:
    parents = scene_of(glb("whimbrel")).graph.transforms.parents
    stages = model("whimbrel").stages
    for one in shapes("whimbrel"):
        assert parents[one.solid.of] == f"stage {one.solid.stage} {stages[one.solid.stage]}"
    assert {"frame.studs", "walls[left].layers[foam]", "parts[bunk]", "openings[ramp]"} <= set(parents)


def test_the_file_stands_upright_with_the_rear_to_the_right() -> None:
    scene = scene_of(glb("whimbrel"))
    low, high = scene.bounds  # y is up there: x stays, the rig's z is y, its y is against z
    ours = numpy.array([[one.body.bounding_box()[place] for place in range(6)] for one in shapes("whimbrel")])
    assert [low[0], high[0]] == pytest.approx([ours[:, 0].min(), ours[:, 3].max()], rel=1e-5)
    assert [low[1], high[1]] == pytest.approx([ours[:, 2].min(), ours[:, 5].max()], rel=1e-5)
    assert [low[2], high[2]] == pytest.approx([-ours[:, 4].max(), -ours[:, 1].min()], rel=1e-5)


def test_the_same_rig_gives_the_same_bytes() -> None:
    again = glb_of(shapes_of(model("whimbrel").solids), model("whimbrel").name, model("whimbrel").stages)
    assert again == glb("whimbrel")


def test_a_file_of_nothing_is_a_file() -> None:
    assert scene_of(glb_of((), "", ())).geometry == {}

"""What a square metre of a plane lets through: its layers and members add up to what the loss is worked out with."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from boxwright.disciplines.heat.shell import Face
from boxwright.study.slots import Slot
from boxwright.study.working import numbers, working
from boxwright.units import HeaderUnits
from tests.study.demo import slot_of, studied

SI = HeaderUnits(length="m", weight="kg", temperature="C", volume="l")
AIR_ALONE = 0.397
"""Films of a plane by the air alone, m2K/W: 0.04 outside and 1 / 2.8 inside."""


def finished() -> Slot:
    return slot_of(studied("whimbrel"), "finish", "departure", False)


def planes(slot: Slot) -> Iterator[Face]:
    assert slot.heat is not None
    for face in slot.heat.shell.faces:
        if f"U {face.name}" in numbers(slot):
            yield face


def shown(lines: tuple[str, ...]) -> float:
    return float(lines[-2].split()[1])


def test_each_plane_comes_to_what_its_loss_is_worked_out_with() -> None:
    bare = slot_of(studied("whimbrel"), "safe", "departure", False)
    by_hand = slot_of(studied("dunlin"), "inside", "home-poor", True)
    ways = set()
    for slot in (finished(), bare, by_hand):
        for face in planes(slot):
            lines = working(slot, f"U {face.name}", SI)
            assert face.planed is not None
            ways.add(face.planed.how)
            assert shown(lines) == pytest.approx(face.by_air.best, rel=1e-5), face.name
            sum_of = next(one for one in lines if one.startswith("  ") and (" W/m2K + " in one or " W/m2K * " in one))
            arithmetic, _, told = sum_of.rpartition(" = ")
            value = eval(re.sub(r"W/m2K|W/mK|m/m2", "", arithmetic).strip(), {"__builtins__": {}})
            assert value == pytest.approx(float(told.split()[0]), rel=1e-4)
            assert value == pytest.approx(face.by_air.best, rel=1e-4), face.name
    assert {"stored", "by hand", "layers", "bare"} <= ways


def test_the_layers_of_the_finished_wall_by_hand() -> None:
    """1/(0.397 + 0.0381/0.0288 + 0.00635/0.0515 + 0.00635/0.12) is 0.5274 W/m2K: by hand; the skin is nothing."""
    lines = working(finished(), "U left wall", SI)
    layers = {one.partition(":")[0].strip(): one.partition(": ")[2] for one in lines if "W/m/K" in one}
    assert list(layers) == ["skin", "filling 1", "still air beside the strip", "lining 1"]
    resists = sum(float(one.split()[0]) / float(one.split(", ")[1].split()[0]) for one in layers.values())
    result = next(float(one.split()[1]) for one in lines if one.startswith("  = 0.5"))
    assert 1.0 / (AIR_ALONE + resists) == pytest.approx(result, rel=1e-4)
    assert result == pytest.approx(0.5274, abs=5e-5)


def test_a_layer_nobody_ticked_is_told_to_make_it_a_mean() -> None:
    slot = slot_of(studied("whimbrel"), "liners", "departure", True)
    doubtful = {face.name: working(slot, f"U {face.name}", SI) for face in planes(slot)}
    taken = {name for name, lines in doubtful.items() if any(one.startswith("  taken: the mean") for one in lines)}
    assert "left wall" in taken and "rear wall" not in taken
    for face in planes(slot):
        assert shown(doubtful[face.name]) == pytest.approx(face.by_air.best, rel=1e-5)


def test_an_edge_is_no_plane() -> None:
    assert not [one for one in numbers(finished()) if one.startswith("U edges")]

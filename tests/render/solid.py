"""Solids for the tests: the demo rigs as models, and their pieces as another library reads them back."""

from __future__ import annotations

import io
from functools import cache
from typing import Any

import trimesh

from boxwright.book.solids import Model, model_of
from boxwright.render.glb import glb_of
from boxwright.render.shape import Shape, shapes_of
from boxwright.rig.compose import read_rig
from boxwright.study.slots import Slot, study
from tests.study.demo import RIGS, TODAY


def slot_of(text: bytes, stage: int | None = None, use: str = "tow") -> tuple[Any, Slot]:
    """Return a rig and one of its slots, as planned."""
    rig = read_rig(text).rig
    return rig, study(rig, TODAY, stage=stage, ticked=False).asked_slots(use)[0]


@cache
def text_of(name: str) -> bytes:
    """Return the text of a demo rig."""
    return (RIGS / f"{name}.yaml").read_bytes()


@cache
def model(name: str) -> Model:
    """Return a demo rig as solids, through all of its stages."""
    return model_of(*slot_of(text_of(name)))


@cache
def shapes(name: str) -> tuple[Shape, ...]:
    """Return the solids of a demo rig as closed surfaces."""
    return shapes_of(model(name).solids)


@cache
def glb(name: str) -> bytes:
    """Return a demo rig as a GLB file."""
    return glb_of(shapes(name), model(name).name, model(name).stages)


def scene_of(content: bytes) -> Any:
    """Return a GLB file as trimesh reads it."""
    return trimesh.load(io.BytesIO(content), file_type="glb", process=False)

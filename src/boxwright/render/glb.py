"""Solids as one GLB file: glTF 2.0 in its binary form, one node for each rig path, gathered by stage.

The mesh of each piece shares its corners, so that it is closed for whoever checks it, and has no normals: a reader then
shades each face flat, as the format says (glTF 2.0, 3.7.2.1, from memory). The rig's axes stay within; the root turns
them upright.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Iterable, Mapping
from itertools import groupby
from math import isfinite, sqrt

import numpy

from boxwright.drawing.solid import Solid, Stuff
from boxwright.render.shape import Shape

Node = dict[str, object]
Colour = tuple[float, float, float]
COLOURS: Mapping[Stuff, Colour] = {
    "metal": (0.66, 0.71, 0.74),
    "skin": (0.86, 0.89, 0.90),
    "wood": (0.87, 0.78, 0.62),
    "foam": (0.74, 0.84, 0.90),
    "rubber": (0.42, 0.45, 0.47),
    "glass": (0.62, 0.76, 0.82),
    "thing": (0.90, 0.82, 0.68),
    "water": (0.60, 0.78, 0.88),
    "heat": (0.89, 0.73, 0.65),
    "wire": (0.78, 0.75, 0.82),
    "cargo": (0.80, 0.82, 0.72),
    "gear": (0.25, 0.28, 0.31),
}
"""A calm colour for each stuff, as one sees it (sRGB)."""
_MAGIC, _VERSION = 0x46546C67, 2
_JSON, _BIN = 0x4E4F534A, 0x004E4942
_FLOAT, _WHOLE, _TRIANGLES = 5126, 5125, 4
_CORNERS, _FACES = 34962, 34963
_UPRIGHT = [-sqrt(0.5), 0.0, 0.0, sqrt(0.5)]
"""A quarter turn about x: z up, as the rig has it, becomes y up, as the format has it."""


def glb_of(
    shapes: Iterable[Shape],
    name: str,
    stages: tuple[str, ...],
    more: Mapping[str, Mapping[str, object]] | None = None,
    head: Mapping[str, object] | None = None,
) -> bytes:
    """Return the bytes of a GLB file of some shapes.

    ``more`` holds what the node of a rig path carries along, such as what it weighs in words; ``head`` the same for
    the whole. Each piece says its number among the shapes.
    """
    file = _File(more or {}, list(shapes))
    by_stage = sorted(file.shapes, key=lambda one: (one.solid.stage, one.solid.of))
    tops = []
    for stage, group in groupby(by_stage, key=lambda one: one.solid.stage):
        paths = [file.path(of, list(mine)) for of, mine in groupby(group, key=lambda one: one.solid.of)]
        word = stages[stage] if stage < len(stages) else ""
        extras = {"stage": stage, "word": word}
        tops.append(file.node({"name": f"stage {stage} {word}".strip(), "children": paths, "extras": extras}))
    root = file.node({"name": name or "rig", "rotation": _UPRIGHT, "children": tops})
    return file.written(root, {**(head or {}), "stages": list(stages)})


class _File:
    """What is put down as the file grows: nodes, meshes, materials, and the numbers they point into."""

    def __init__(self, more: Mapping[str, Mapping[str, object]], shapes: list[Shape]) -> None:
        self.shapes = shapes
        self._more = more
        self._places = {id(one): place for place, one in enumerate(shapes)}
        self._nodes: list[Node] = []
        self._meshes: list[Node] = []
        self._accessors: list[Node] = []
        self._views: list[Node] = []
        self._stuffs: dict[Stuff, int] = {}
        self._bytes = bytearray()

    def node(self, node: Node) -> int:
        """Put a node down and return its number."""
        self._nodes.append({key: value for key, value in node.items() if value != []})
        return len(self._nodes) - 1

    def path(self, of: str, shapes: list[Shape]) -> int:
        """Put one rig path down, with its pieces."""
        first = shapes[0].solid
        whole = [one for one in shapes if one.solid.until == first.until] or shapes
        extras: Node = {"of": of, "stage": first.stage, "litres": _round(sum(one.litres for one in whole))}
        kg = next((one.solid.kg for one in shapes if one.solid.kg is not None and one.solid.kg.known), None)
        if kg is not None:
            extras["kg"] = [_round(one) if isfinite(one) else None for one in (kg.best, kg.low, kg.high)]
        stock = [one.kg for one in whole]
        if all(one is not None for one in stock):
            extras["kg_of_stock"] = [_round(sum(one[place] for one in stock if one)) for place in range(3)]
        taken = list(dict.fromkeys(one.solid.taken for one in shapes if one.solid.taken))
        if taken:
            extras["taken"] = taken
        extras |= self._more.get(of, {})
        return self.node({"name": of, "children": [self._piece(one) for one in shapes], "extras": extras})

    def _piece(self, shape: Shape) -> int:
        solid = shape.solid
        mesh = shape.body.to_mesh()
        corners = numpy.ascontiguousarray(mesh.vert_properties[:, :3], dtype="<f4")
        faces = numpy.ascontiguousarray(mesh.tri_verts, dtype="<u4")
        ends = {"min": corners.min(axis=0).tolist(), "max": corners.max(axis=0).tolist()}
        place = self._numbers(corners.tobytes(), _CORNERS, _FLOAT, "VEC3", len(corners), ends)
        order = self._numbers(faces.tobytes(), _FACES, _WHOLE, "SCALAR", faces.size, {})
        primitive = {"attributes": {"POSITION": place}, "indices": order, "material": self._material(solid.stuff)}
        self._meshes.append({"name": solid.name, "primitives": [{**primitive, "mode": _TRIANGLES}]})
        return self.node(
            {
                "name": solid.name,
                "mesh": len(self._meshes) - 1,
                "extras": {**_extras(solid), "piece": self._places[id(shape)]},
            }
        )

    def _numbers(
        self, content: bytes, target: int, kind: int, shape: str, count: int, ends: Mapping[str, list[float]]
    ) -> int:
        # every number is four bytes long, so that the next ones begin where they may
        view: Node = {"buffer": 0, "byteOffset": len(self._bytes), "byteLength": len(content), "target": target}
        self._views.append(view)
        self._bytes += content
        self._accessors.append(
            {"bufferView": len(self._views) - 1, "componentType": kind, "count": count, "type": shape, **ends}
        )
        return len(self._accessors) - 1

    def _material(self, stuff: Stuff) -> int:
        return self._stuffs.setdefault(stuff, len(self._stuffs))

    def written(self, root: int, head: dict[str, object]) -> bytes:
        """Return the whole file."""
        materials = [
            {
                "name": stuff,
                "pbrMetallicRoughness": {
                    "baseColorFactor": [*(round(_linear(one), 5) for one in COLOURS[stuff]), 1.0],
                    "metallicFactor": 0.0,
                    "roughnessFactor": 1.0,
                },
            }
            for stuff in self._stuffs
        ]
        tree: Node = {
            "asset": {"version": "2.0", "generator": "boxwright"},
            "scene": 0,
            "scenes": [{"nodes": [root], "extras": head}],
            "nodes": self._nodes,
        }
        if self._bytes:
            tree |= {"meshes": self._meshes, "materials": materials, "accessors": self._accessors}
            tree |= {"bufferViews": self._views, "buffers": [{"byteLength": len(self._bytes)}]}
        text = json.dumps(tree, separators=(",", ":")).encode()
        chunks = _chunk(_JSON, text, b" ") + (_chunk(_BIN, bytes(self._bytes), b"\0") if self._bytes else b"")
        return struct.pack("<III", _MAGIC, _VERSION, 12 + len(chunks)) + chunks


def _extras(solid: Solid) -> Node:
    found: Node = {"stuff": solid.stuff, "stage": solid.stage, "stands": solid.stands}
    if solid.until is not None:
        found["until"] = solid.until
    if solid.outward is not None:
        found["outward"] = list(solid.outward)
    return found


def _chunk(kind: int, content: bytes, filler: bytes) -> bytes:
    padded = content + filler * (-len(content) % 4)
    return struct.pack("<II", len(padded), kind) + padded


def _linear(seen: float) -> float:
    """Return the light of a colour as one sees it (the curve of sRGB, IEC 61966-2-1, from memory)."""
    return seen / 12.92 if seen <= 0.04045 else float(((seen + 0.055) / 1.055) ** 2.4)


def _round(number: float) -> float:
    return float(f"{number:.6g}")

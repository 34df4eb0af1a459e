"""The solids of the open rig for the page: the whole model as one GLB, a section's cut faces, a file to keep."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from boxwright.book.answer import slot_of
from boxwright.book.solids import Model, at_stage, model_of, said_of
from boxwright.finding import USES, Use
from boxwright.records import dataclass
from boxwright.render.glb import glb_of
from boxwright.render.shape import AXES, Axis, Face, Shape, faces_of, shapes_of
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot as WorkedSlot
from boxwright.units import show
from boxwright.web.figures import asked_slot
from boxwright.web.session import Seen, Session

MILLIMETRES = 1000.0
THERE: dict[Axis, str] = {"x": "at the front stud face", "y": "in the middle", "z": "on top of the deck"}
FROM: dict[Axis, str] = {
    "x": "behind the front stud face",
    "y": "right of the middle",
    "z": "above the deck",
}
BELOW: dict[Axis, str] = {
    "x": "ahead of the front stud face",
    "y": "left of the middle",
    "z": "under the deck",
}


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is shown: a rig in a slot. The pose is that of a use: on the road, at night, at work."""

    rig: Rig
    slot: WorkedSlot
    rev: int


@dataclass(frozen=True, slots=True)
class Built:
    """The solids of what was asked for last."""

    wanted: Wanted
    model: Model
    shapes: tuple[Shape, ...]


class Solids:
    """Builds the solids of the open rig and keeps the last ones, since a section asks for them many times."""

    def __init__(self) -> None:
        self._built: Built | None = None

    def built(self, wanted: Wanted) -> Built:
        """Return the solids of a slot, built once as long as nothing changes."""
        found = self._built
        if found is None or found.wanted.rig is not wanted.rig or found.wanted.slot != wanted.slot:
            model = model_of(wanted.rig, wanted.slot)
            found = self._built = Built(wanted, model, shapes_of(model.solids))
        return found

    def scene(self, wanted: Wanted, lines: dict[str, int]) -> bytes:
        """Return all solids through all stages; each path with its line of the file and what is said of it."""
        found = self.built(wanted)
        said = said_of(found.shapes, wanted.rig.header.units)
        more = {of: {"line": lines.get(of), "says": said.get(of, "")} for of in {one.solid.of for one in found.shapes}}
        head = {"rev": wanted.rev, "number": found.model.number, "is_ticked": found.model.is_ticked,
                "missing": list(found.model.missing)}  # fmt: skip
        return glb_of(found.shapes, found.model.name, found.model.stages, more, head)

    def file(self, wanted: Wanted) -> bytes:
        """Return what stands in the slot as a file to keep."""
        model = self.built(wanted).model
        shapes = shapes_of(at_stage(model))
        said = said_of(shapes, wanted.rig.header.units)
        return glb_of(shapes, model.name, model.stages, {of: {"says": words} for of, words in said.items()})

    def cut(self, wanted: Wanted, axis: Axis, at_mm: float) -> dict[str, Any]:
        """Return the faces where a section cuts the solids, in metres, and its place in words."""
        found = self.built(wanted)
        at = at_mm / MILLIMETRES
        words = show(abs(at), "length", wanted.rig.header.units, cuts=True)
        says = f"{words} {(FROM if at > 0.0 else BELOW)[axis]}" if at else THERE[axis]
        faces = faces_of(found.shapes, axis, at)
        return {
            "rev": wanted.rev,
            "says": says,
            "faces": [_told(one) for one in faces],
        }


def _told(face: Face) -> dict[str, Any]:
    return {"piece": face.piece, "corners": list(face.corners), "outline": list(face.outline)}


def wanted_of(session: Session, seen: Seen, use: str) -> Wanted | None:
    """Return what is to be shown, None where nothing was worked out.

    ``use`` says how things lie and what is aboard; empty: as judged.
    """
    slot = asked_slot(seen)
    if slot is None or slot.frame is None or not slot.frame.walls:
        return None
    pose: Use = next((one for one in USES if one == use), slot.use)
    # what is aboard at night is not what is aboard on the road, so the use brings its own load state with it
    slot = slot_of(seen.study, pose, seen.slot.load) or slot
    return Wanted(seen.reading.rig, replace(slot, use=pose), session.rev)


def is_there(seen: Seen) -> bool:
    """Return whether there is anything solid to show."""
    slot = asked_slot(seen)
    return slot is not None and slot.frame is not None and bool(slot.frame.walls)


def axis_of(word: str) -> Axis | None:
    """Return an axis by its word, None where there is none."""
    return next((one for one in AXES if one == word), None)

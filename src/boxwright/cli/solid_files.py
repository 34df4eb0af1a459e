"""``boxwright draw --format glb``: what stands as one file of solids, whole or cut by a section."""

from __future__ import annotations

import re
from typing import NamedTuple

from boxwright.book.solids import at_stage, model_of, said_of
from boxwright.cli.asked import Answered, slot_of
from boxwright.cli.rig_file import NothingAsked
from boxwright.render.glb import glb_of
from boxwright.render.shape import Axis, Section, shapes_of
from boxwright.units import CannotRead, HeaderUnits, read_exact

AXES: dict[str, Axis] = {"x": "x", "side": "y", "y": "y", "z": "z"}
KEPT = {("x", "front"): "below", ("x", "rear"): "above", ("y", "left"): "below", ("y", "right"): "above",
        ("z", "under"): "below", ("z", "over"): "above"}  # fmt: skip
USUAL: dict[Axis, str] = {"x": "above", "y": "above", "z": "below"}
_WRITTEN = re.compile(r"\s*(?P<axis>x|side|y|z)\s*=\s*(?P<at>[^,]+?)\s*(?:,\s*(?P<kept>[a-z]+)\s*)?", re.IGNORECASE)
HOW = "write it as x=60in, side=0 or z=30; what is kept may follow: x=60in,front"


class Solids(NamedTuple):
    """The file, how many solids it holds, and the names of things that nobody can place."""

    content: bytes
    solids: int
    missing: tuple[str, ...]


def solid_file(answer: Answered, section: str) -> Solids:
    """Return what stands in the slot asked for as a GLB file."""
    asked = read_section(section, answer.units) if section.strip() else None
    slot = slot_of(answer, answer.use)
    rig = answer.reading.rig
    model = model_of(rig, slot) if slot is not None else None
    if model is None or not model.solids:
        raise NothingAsked("there is nothing solid yet: write length, width and height under trailer, body")
    shapes = shapes_of(at_stage(model), asked)
    if not shapes:
        raise NothingAsked(f'nothing is left on that side of the section "{section}"; {HOW}')
    said = {of: {"says": words} for of, words in said_of(shapes, answer.units).items()}
    content = glb_of(shapes, model.name, model.stages, said)
    return Solids(content, len(shapes), model.missing)


def read_section(written: str, units: HeaderUnits) -> Section:
    """Return a section as it is written: an axis, a place on it, and what is kept."""
    found = _WRITTEN.fullmatch(written)
    if found is None:
        raise NothingAsked(f'cannot read the section "{written}"; {HOW}')
    axis = AXES[found["axis"].lower()]
    try:
        at = read_exact(found["at"], "length", units)
    except CannotRead as problem:
        raise NothingAsked(f'cannot read the section "{written}": {problem}') from None
    word = (found["kept"] or "").lower()
    keeps = KEPT.get((axis, word)) if word else USUAL[axis]
    if keeps is None:
        words = " or ".join(kept for of, kept in KEPT if of == axis)
        raise NothingAsked(f'cannot read "{word}" of the section "{written}"; what is kept along it is {words}')
    return Section(axis, at, "below" if keeps == "below" else "above")

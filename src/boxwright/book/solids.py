"""The rig as solids in one slot: the frame's own, and every thing in its pose, each with the stages it stands in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from boxwright.disciplines import frame
from boxwright.disciplines.frame.solid_skin import UNCUT
from boxwright.disciplines.frame.solids import solids as frame_solids
from boxwright.disciplines.frame.sourced import density_of
from boxwright.disciplines.layout.bodies import POSE_OF_USE, WITHOUT_SOLID, Body, body_of
from boxwright.disciplines.layout.sleepers import lying
from boxwright.disciplines.layout.solids import Cabinet
from boxwright.disciplines.layout.solids import solids as thing_solids
from boxwright.disciplines.layout.terraces import Bed
from boxwright.disciplines.layout.tonight import beds_tonight
from boxwright.drawing.solid import Solid, Stuff, upright
from boxwright.model.load import LoadState
from boxwright.model.stage import Marks, stands
from boxwright.model.trailer import Person
from boxwright.records import dataclass
from boxwright.render.shape import Shape
from boxwright.rig.rig import Item, Rig
from boxwright.rig.sections import thickness_in
from boxwright.study.slots import Slot
from boxwright.units import Band, HeaderUnits, show

STUFF_OF_FACET: tuple[tuple[str, Stuff], ...] = (("water", "water"), ("heat", "heat"), ("power", "wire"))
"""What a thing is shown as by who reads something of it; the first that does wins."""

DRAWN = "drawn by shares of the height; which way the head lies is not written"
"""What of a sleeper nobody wrote."""


@dataclass(frozen=True, slots=True)
class Model:
    """All solids of a rig through its stages. ``missing`` are names of things that nobody can place."""

    name: str
    stages: tuple[str, ...]
    number: int
    is_ticked: bool
    solids: tuple[Solid, ...]
    missing: tuple[str, ...]


def model_of(rig: Rig, slot: Slot) -> Model:
    """Return the rig as solids, in the pose of the slot's use and with the cargo of its load state."""
    stages = tuple(one.name for one in rig.stages_in_order)
    if slot.frame is None or slot.box is None or not slot.frame.walls:
        return Model(rig.header.name, stages, slot.number, slot.is_ticked, (), ())
    floor = rig.frame.framing.floor if rig.frame.framing is not None else None
    deck = thickness_in(floor.deck, rig.header.units) if floor is not None else None
    thick = max(deck.best, 0.0) if deck is not None and deck.known else 0.0
    bodies, missing = _bodies(rig, slot)
    marks = {item.of: item.marks for section in (rig.parts, rig.openings) for item in section}
    marks |= {layer.of: layer.marks for layer in rig.layers}
    weighed = _masses(rig)
    planned = {one.of for one in rig.frame.openings if one.of not in marks or marks[one.of].planned}
    found = frame_solids(_as_planned(slot.frame, planned), rig.frame.framing, slot.box, thick)
    found += thing_solids(bodies, {item.of: _stuff(item) for item in rig.parts}, _cabinets(rig), rig.layout.room)
    found += _sleepers(rig, slot)
    staged = tuple(_staged(one, marks.get(one.of.removesuffix(UNCUT)), slot, weighed.get(one.of)) for one in found)
    return Model(rig.header.name, stages, slot.number, slot.is_ticked, tuple(one for one in staged if one), missing)


def at_stage(model: Model) -> tuple[Solid, ...]:
    """Return what stands in the slot the model was made for, perhaps or not."""
    return tuple(one for one in model.solids if one.stands != "no")


def _as_planned(result: frame.Result, planned: set[str]) -> frame.Result:
    """Return the frame with the openings only that the plan ever cuts."""
    return replace(result, holes=tuple(one for one in result.holes if one.of in planned))


def _staged(solid: Solid, marks: Marks | None, slot: Slot, kg: Band | None) -> Solid | None:
    """Return a solid with the stages it stands in; None for what the plan never puts in.

    The piece of skin in an opening stands until the opening does.
    """
    if marks is None:
        return replace(solid, kg=kg)
    answer = stands(marks, slot.number, slot.is_ticked)
    start = marks.stage or 0
    if solid.of.endswith(UNCUT):
        left = {"yes": "no", "perhaps": "perhaps", "no": "yes"}[answer]
        is_ever = start > 0 or left != "no"
        return replace(solid, stage=0, until=start - 1, stands=left) if is_ever else None  # type: ignore[arg-type]
    if not marks.planned:
        return None
    return replace(solid, stage=start, until=marks.until, stands=answer, kg=kg)


def _bodies(rig: Rig, slot: Slot) -> tuple[list[Body], tuple[str, ...]]:
    load = next((one for one in rig.loads if one.name == slot.load), None)
    pose = POSE_OF_USE[slot.use]
    items = {item.of: item for item in rig.parts}
    bodies: list[Body] = []
    missing: list[str] = []
    for one in rig.layout.fitted:
        item = items.get(one.of)
        if item is None or not item.marks.planned or one.kind in WITHOUT_SOLID or not _is_aboard(item, load):
            continue
        if pose == "night" and one.leaves_at_night:
            continue
        body = body_of(one, "yes", pose)
        bodies.append(body)
        if not body.blocks:
            missing.append(body.name)
    return bodies, tuple(missing)


def _sleepers(rig: Rig, slot: Slot) -> tuple[Solid, ...]:
    """Return who sleeps, at night only: on each bed from the stage on at which one lies on it, to the last."""
    if POSE_OF_USE[slot.use] != "night":
        return ()
    load = next((one for one in rig.loads if one.name == slot.load), None)
    people = tuple(one for one in rig.people if load is None or not load.people or one[0] in load.people)
    heights = {name: one.height.best for name, one in people if one.height is not None and one.height.known}
    here = {frame.of: frame.stands for frame in slot.standing.frames}
    now = {(bed.of, name) for bed in beds_tonight(rig.layout.fitted, here, people) for name in bed.sleepers}
    last = max(len(rig.stages_in_order) - 1, 0)
    found = []
    for begin, end, bed in _nights(rig, people, last):
        for name, blocks in lying(bed, heights):
            one = Solid(f"people[{name}]", name, "cargo", tuple(upright(*block) for block in blocks), taken=DRAWN)
            stands_now = here[bed.of] if (bed.of, name) in now else "no"
            found.append(replace(one, stage=begin, until=end if end < last else None, stands=stands_now))
    return tuple(found)


def _nights(rig: Rig, people: tuple[tuple[str, Person], ...], last: int) -> list[tuple[int, int, Bed]]:
    """Return each bed with the first and the last stage, as planned, of a run of them at which the same lie on it."""
    runs: list[tuple[int, int, Bed]] = []
    for number in range(last + 1):
        there = {item.of for item in rig.parts if item.marks.planned and stands(item.marks, number, False) == "yes"}
        for bed in beds_tonight(rig.layout.fitted, there, people):
            place = next((i for i, (_, end, one) in enumerate(runs) if end == number - 1 and one == bed), None)
            if place is None:
                runs.append((number, number, bed))
            else:
                runs[place] = (runs[place][0], number, bed)
    return runs


def _cabinets(rig: Rig) -> dict[str, Cabinet]:
    """Return what is drawn as its boards: what has a carcass and is not written as boxes."""
    ply = density_of("ply")
    density = (ply.best, ply.low, ply.high) if ply is not None else None
    return {one.of: Cabinet(one, density) for one in rig.layout.fitted if one.ply > 0.0 and not one.pieces}


def _is_aboard(item: Item, load: LoadState | None) -> bool:
    return item.words.kind != "cargo" or (load is not None and load.carries(item.name))


def _stuff(item: Item) -> Stuff:
    if item.words.kind == "cargo":
        return "cargo"
    folders = {folder for folder, _ in item.facets}
    return next((stuff for folder, stuff in STUFF_OF_FACET if folder in folders), "thing")


def _masses(rig: Rig) -> dict[str, Band]:
    """Return what each thing, layer and unit weighs when it is in."""
    section = rig.frame
    offered = frame.offers(section.layers, section.openings, rig.trailer, section.framing).masses
    found = {one.of: one.kg for one in offered}
    return found | {item.of: item.mass for item in _alone(rig)}


def _alone(rig: Rig) -> Iterator[Item]:
    """Yield the parts that have a weight of their own: those of the empty trailer are within its."""
    return (item for item in rig.parts if item.mass.known and not item.is_in_empty_weight)


def said_of(shapes: Iterable[Shape], units: HeaderUnits) -> dict[str, str]:
    """Return for each rig path what it weighs, beside what its solid would weigh of the stock it is named as."""
    by_path: dict[str, list[Shape]] = {}
    for one in shapes:
        by_path.setdefault(one.solid.of, []).append(one)
    return {of: "; ".join(found) for of, mine in by_path.items() if (found := list(_said(mine, units)))}


def _said(mine: list[Shape], units: HeaderUnits) -> Iterator[str]:
    kg = next((one.solid.kg for one in mine if one.solid.kg is not None), None)
    if kg is not None:
        yield f"weighs {show(kg.best, 'mass', units)}" if kg.known else "what it weighs is not written"
    stock = [one.kg for one in mine]
    if all(one is not None for one in stock):
        best, low, high = (sum(one[place] for one in stock if one is not None) for place in range(3))
        span = f", {show(low, 'mass', units)} to {show(high, 'mass', units)}" if high > low else ""
        yield f"as drawn, of its stock, {show(best, 'mass', units)}{span}"
    yield from dict.fromkeys(one.solid.taken for one in mine if one.solid.taken)

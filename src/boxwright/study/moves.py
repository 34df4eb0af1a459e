"""What could be moved, and how far by closed form: candidates, none of them proved yet."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import inf
from typing import Literal, NamedTuple

from boxwright.exchange import Mass
from boxwright.finding import Finding
from boxwright.model.part import Frame
from boxwright.records import dataclass
from boxwright.rig.rig import Item, Rig
from boxwright.study.lever import Lever, Pull
from boxwright.study.remedy_words import kept_coupled, legs_lowered, moved, moving
from boxwright.study.rewritten import Offset, rewritten, rounded_shift, taken_apart
from boxwright.study.room import TOUCH, Edges, Room, edges, is_inside, meets, room_of, shifted, solids
from boxwright.study.slots import Slot
from boxwright.study.standing import Standing
from boxwright.units import HeaderUnits

AXIS_KEYS = ("x", "side")
PAIRED = 6
"""How many of the parts that can do most are tried in pairs."""
ACROSS = ("centre", "center", "middle", "mid")
"""Anchors that are no wall."""


class Edit(NamedTuple):
    """One value of the rig file to be written anew. Where the path holds a list, the value is added to it."""

    path: str
    value: str


@dataclass(frozen=True, slots=True)
class Candidate:
    """A change that should clear a finding: what to do in the builder's words, and the edits that say so.

    ``effort`` is weight times distance (kg m); ``leaves`` says that something stays behind or is emptied; ``carried``
    is what weighs how much of that could go in the tow vehicle instead: how many things, and their mass (kg).
    """

    says: str
    edits: tuple[Edit, ...]
    effort: float
    moves: int
    leaves: bool = False
    carried: tuple[int, float] = (0, 0.0)

    @property
    def rank(self) -> tuple[float, int, bool, str]:
        """Return what candidates are ordered by: effort, number of moves, moving before leaving behind."""
        return round(self.effort, 3), self.moves, self.leaves, self.says


@dataclass(frozen=True, slots=True)
class Movable:
    """A part that may be moved along one axis, with all in and on it (kg), as it is written, and its free room."""

    item: Item
    axis: Literal[0, 1]
    kg: float
    offset: Offset
    room: Room

    def moved(self, shift: float, header: HeaderUnits) -> tuple[str, Edit]:
        """Return the move in words, and as the text of its new place."""
        text = rewritten(self.offset, shift)
        key = AXIS_KEYS[self.axis]
        says = moved(self.item.name, shift, self.axis, key, text, header, self.room.is_lifted(shift))
        return says, Edit(f"{self.item.of}.{key}", text)

    def inward(self, sign: float) -> float:
        """Return the farthest round shift one way that meets nothing (m, with its sign)."""
        return self.within(self.room, sign)

    def within(self, room: Room, sign: float) -> float:
        """Return the farthest round shift one way that meets nothing in some room."""
        way = room.way(sign)
        if way in (0.0, inf):
            return 0.0
        far = rounded_shift(self.offset, sign * way)
        if abs(far) <= way + 1e-9:
            return far
        step = abs(rounded_shift(self.offset, sign * (abs(far) + 1e-6)) - far)
        return far - sign * step if abs(far) - step > 0.0 else 0.0


class Rooms:
    """The room of each part in every slot it stands in, today, later, on the road and at night; each found once."""

    def __init__(self, rig: Rig, standings: Iterable[Standing]) -> None:
        self.families = families_of(rig)
        self._surfaces = rig.surfaces
        standings = list({standing.frames: standing for standing in standings}.values())
        boxed: dict[int, dict[tuple[str, Edges], None]] = {}
        for frame in (frame for standing in standings for frame in standing.frames):
            if id(frame) not in boxed:
                boxed[id(frame)] = solids([frame])
        self._solids = [
            ({frame.of for frame in standing.frames}, {box: None for one in standing.frames for box in boxed[id(one)]})
            for standing in standings
        ]
        self._found: dict[tuple[str, int], Room] = {}

    def room(self, of: str, axis: int) -> Room:
        """Return how far a part with all in and on it may go along x (0) or to the side (1)."""
        if (of, axis) not in self._found:
            self._found[of, axis] = self.room_without(of, axis, frozenset())
        return self._found[of, axis]

    def room_without(self, of: str, axis: int, loose: frozenset[str]) -> Room:
        """Return how far a part may go where some others, by path, are out of its way."""
        own: dict[Edges, None] = {}
        others: dict[Edges, None] = {}
        boxes = {box: None for paths, solid in self._solids if of in paths for box in solid}
        for path, box in boxes:
            if path in self.families[of]:
                own[box] = None
            elif path not in loose:
                others[box] = None
        return room_of(own, others, axis, self._surfaces)

    def between(self, of: str, other: str, axis: int) -> tuple[float, float]:
        """Return how far a part may go beyond another along an axis, both ways, before they stand in each other."""
        own: dict[Edges, None] = {}
        others: dict[Edges, None] = {}
        for paths, solid in self._solids:
            if of in paths and other in paths:
                own |= {box: None for path, box in solid if path in self.families[of]}
                others |= {box: None for path, box in solid if path in self.families[other]}
        blocked = room_of(own, others, axis, self._surfaces).blocked
        least = max((high for _, high in blocked if high <= TOUCH), default=-inf)
        return least, min((low for low, _ in blocked if low >= -TOUCH), default=inf)

    def collisions(self, shifts: Mapping[str, tuple[float, float]]) -> set[tuple[str, str]]:
        """Return each part that, moved with all in and on it, would stand in something, with the path of that.

        ``shifts`` are how far parts go along x and to the side. What stands in another already is not counted.
        """
        found: set[tuple[str, str]] = set()
        gone = {member: (of, shift) for of, shift in shifts.items() for member in self.families[of]}
        still = ("", (0.0, 0.0))
        for _, solid in self._solids:
            for path, box in solid:
                if path not in gone:
                    continue
                mover, shift = gone[path]
                for other, wall in solid:
                    with_it, other_shift = gone.get(other, still)
                    if with_it == mover or meets(box, wall):
                        continue
                    if meets(shifted(box, shift), shifted(wall, other_shift)):
                        found.add((mover, with_it or other))
        return found


def movables(rig: Rig, rooms: Rooms, slot: Slot, axis: Literal[0, 1], header: HeaderUnits) -> tuple[Movable, ...]:
    """Return the parts of a slot that may be moved along x (0) or to the side (1), in file order.

    Cargo may be, and what is planned and not built in yet; what hangs on hinges, rides with another part, has its
    exhaust through the floor, or is built against a wall it would be taken off, may not.
    """
    frames = {frame.of: frame for frame in slot.standing.frames}
    found = []
    for item in rig.parts:
        frame = frames.get(item.of)
        offset = taken_apart(getattr(item.words, AXIS_KEYS[axis]), header)
        if frame is None or offset is None or not _is_loose(item, offset) or not _is_exact(frame, axis):
            continue
        family = rooms.families[item.of]
        kg = _weight(family, slot.masses)
        if kg is None or not all(_is_within(frames[of], rig) for of in family if of in frames):
            continue
        found.append(Movable(item, axis, kg, offset, rooms.room(item.of, axis)))
    return tuple(found)


def _is_loose(item: Item, offset: Offset) -> bool:
    words = item.words
    is_flush = offset.is_anchored and offset.figure == 0 and not offset.before.endswith(ACROSS)
    if is_flush and words.kind != "cargo":
        return False
    if words.inside or words.rides_on or words.at or words.folds or words.kind in {"spread", "backing"}:
        return False
    if any(key in {"x", "side"} for key, _ in words.as_built):
        return False
    built = item.facet("structure")
    if built is not None and getattr(built, "hinge", None) is not None:
        return False
    warm = item.facet("heat")
    if warm is not None and getattr(warm, "heater", None) is not None:
        return False
    is_fixed = built is not None and getattr(built, "screws", None) is not None
    return words.done.tick == "no" or words.done.tick == "unmarked" or (words.kind == "cargo" and not is_fixed)


def _is_exact(frame: Frame, axis: int) -> bool:
    band = (frame.place.x, frame.place.y)[axis]
    return band.known and band.low == band.high and frame.stands == "yes"


def _is_within(frame: Frame, rig: Rig) -> bool:
    box = edges(frame.place)
    return box is not None and is_inside(box, rig.surfaces)


def families_of(rig: Rig) -> dict[str, tuple[str, ...]]:
    """Return, for each part, its own path and those of all in or on it, at any depth."""
    parents = {item.name: item.words.inside or item.words.rides_on for item in rig.parts}
    found: dict[str, list[str]] = {item.of: [item.of] for item in rig.parts}
    of = {item.name: item.of for item in rig.parts}
    for item in rig.parts:
        parent, seen = parents[item.name], {item.name}
        while parent in of and parent not in seen:
            seen.add(parent)
            found[of[parent]].append(item.of)
            parent = parents[parent]
    return {path: tuple(members) for path, members in found.items()}


def _weight(family: Iterable[str], masses: Iterable[Mass]) -> float | None:
    """Return what a family weighs in a slot; None where nobody knows."""
    members, kg = set(family), 0.0
    for mass in masses:
        if mass.of in members:
            if not mass.kg.known:
                return None
            kg += mass.kg.best
    return kg or None


def single_moves(
    found: Iterable[Movable], lever: Lever, pull: Pull, need: float, header: HeaderUnits
) -> list[Candidate]:
    """Return each single move that changes the load enough, to the nearest free place at least that far."""
    made = []
    for one in found:
        per = pull.by_moving(one.axis, lever.is_up) * one.kg
        if per == 0.0:
            continue
        shift = one.room.landing(need / per, lambda far, offset=one.offset: rounded_shift(offset, far))  # type: ignore[misc]
        if shift is not None and shift != 0.0:
            says, edit = one.moved(shift, header)
            made.append(Candidate(moving([says]), (edit,), one.kg * abs(shift), 1))
    return made


def pairs(found: Iterable[Movable], lever: Lever, pull: Pull, need: float, header: HeaderUnits) -> list[Candidate]:
    """Return pairs of moves, the first part pushed as far as it goes, the second as far as is still needed."""
    able = []
    for one in found:
        per = pull.by_moving(one.axis, lever.is_up) * one.kg
        far = one.inward(1.0 if per > 0.0 else -1.0) if per else 0.0
        if far:
            able.append((per * far, far, one))
    able.sort(key=lambda row: (-row[0], row[2].item.of))
    made = []
    for index, (gain, far, one) in enumerate(able[:PAIRED]):
        for other_gain, other_far, other in able[index + 1 : PAIRED]:
            if not gain < need <= gain + other_gain:
                continue
            per = pull.by_moving(other.axis, lever.is_up) * other.kg
            shift = rounded_shift(other.offset, (need - gain) / per)
            if abs(shift) > abs(other_far) + 1e-9:
                continue
            says, edit = one.moved(far, header)
            more, second = other.moved(shift, header)
            effort = one.kg * abs(far) + other.kg * abs(shift)
            made.append(Candidate(moving([says, more]), (edit, second), effort, 2))
    return made


def other_standing(finding: Finding, slot: Slot) -> list[Candidate]:
    """Return the other ways to stand at night where the nose may lift: on the rear legs, or still coupled."""
    parked = slot.weight.parked if slot.weight is not None else None
    if finding.code != "weight/tips-up" or parked is None:
        return []
    made = []
    if (
        parked.legs_down is not None
        and parked.legs_are_down is not True
        and parked.legs_down.holds(slot.use).band.low > 0.0
    ):
        made.append(Candidate(legs_lowered(), (Edit(f"loads[{slot.load}].legs", "down"),), 0.0, 0))
    if parked.is_coupled is not True:
        made.append(Candidate(kept_coupled(), (Edit(f"loads[{slot.load}].coupled", "yes"),), 0.0, 1))
    return made

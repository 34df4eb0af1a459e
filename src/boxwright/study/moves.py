"""What could be moved, left behind or pumped out, and how far by closed form: candidates, none of them proved yet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import inf
from typing import Literal, NamedTuple

from boxwright.exchange import Mass
from boxwright.finding import Finding
from boxwright.model.part import Frame
from boxwright.rig.rig import Item, Rig
from boxwright.study.lever import Lever, Pull
from boxwright.study.remedy_words import emptied, kept_coupled, left, legs_lowered, moved, moving
from boxwright.study.rewritten import Offset, rewritten, rounded_shift, taken_apart
from boxwright.study.room import Edges, Room, edges, is_inside, room_of, solids
from boxwright.study.slots import Slot, Study
from boxwright.units import HeaderUnits

AXIS_KEYS = ("x", "side")
PAIRED = 6
"""How many of the parts that can do most are tried in pairs."""
MOST_LEFT = 4
"""How many pieces of cargo may be left behind together; more is another journey, not a fix."""


class Edit(NamedTuple):
    """One value of the rig file to be written anew. Where the path holds a list, the value is added to it."""

    path: str
    value: str


@dataclass(frozen=True, slots=True)
class Candidate:
    """A change that should clear a finding: what to do in the builder's words, and the edits that say so.

    ``effort`` is weight times distance (kg m); ``leaves`` says that something stays behind or is emptied.
    """

    says: str
    edits: tuple[Edit, ...]
    effort: float
    moves: int
    leaves: bool = False

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
        return moved(self.item.name, shift, self.axis, key, text, header), Edit(f"{self.item.of}.{key}", text)

    def inward(self, sign: float) -> float:
        """Return the farthest round shift one way that meets nothing (m, with its sign)."""
        way = self.room.way(sign)
        if way in (0.0, inf):
            return 0.0
        far = rounded_shift(self.offset, sign * way)
        if abs(far) <= way + 1e-9:
            return far
        step = abs(rounded_shift(self.offset, sign * (abs(far) + 1e-6)) - far)
        return far - sign * step if abs(far) - step > 0.0 else 0.0


class Rooms:
    """The room of each part in every slot it stands in, today, later, on the road and at night; each found once."""

    def __init__(self, rig: Rig, study: Study) -> None:
        self.families = _families(rig)
        self._surfaces = rig.surfaces
        standings = {id(slot.standing): slot.standing for slot in study.slots}.values()
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
            own: dict[Edges, None] = {}
            others: dict[Edges, None] = {}
            boxes = {box: None for paths, solid in self._solids if of in paths for box in solid}
            for path, box in boxes:
                (own if path in self.families[of] else others)[box] = None
            self._found[of, axis] = room_of(own, others, axis, self._surfaces)
        return self._found[of, axis]


def movables(rig: Rig, rooms: Rooms, slot: Slot, axis: Literal[0, 1], header: HeaderUnits) -> tuple[Movable, ...]:
    """Return the parts of a slot that may be moved along x (0) or to the side (1), in file order.

    Cargo may be, and what is planned and not built in yet; what hangs on hinges, or rides with another part, may not.
    """
    frames = {frame.of: frame for frame in slot.standing.frames}
    found = []
    for item in rig.parts:
        frame = frames.get(item.of)
        offset = taken_apart(getattr(item.words, AXIS_KEYS[axis]), header)
        if frame is None or offset is None or not _is_loose(item) or not _is_exact(frame, axis):
            continue
        family = rooms.families[item.of]
        kg = _weight(family, slot.masses)
        if kg is None or not all(_is_within(frames[of], rig) for of in family if of in frames):
            continue
        found.append(Movable(item, axis, kg, offset, rooms.room(item.of, axis)))
    return tuple(found)


def _is_loose(item: Item) -> bool:
    words = item.words
    if words.inside or words.rides_on or words.at or words.folds or words.kind in {"spread", "backing"}:
        return False
    if any(key in {"x", "side"} for key, _ in words.as_built):
        return False
    built = item.facet("structure")
    if built is not None and getattr(built, "hinge", None) is not None:
        return False
    is_fixed = built is not None and getattr(built, "screws", None) is not None
    return words.done.tick == "no" or words.done.tick == "unmarked" or (words.kind == "cargo" and not is_fixed)


def _is_exact(frame: Frame, axis: int) -> bool:
    band = (frame.place.x, frame.place.y)[axis]
    return band.known and band.low == band.high and frame.stands == "yes"


def _is_within(frame: Frame, rig: Rig) -> bool:
    box = edges(frame.place)
    return box is not None and is_inside(box, rig.surfaces)


def _families(rig: Rig) -> dict[str, tuple[str, ...]]:
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
    if parked.legs_down is not None and parked.legs_are_down is not True and parked.legs_down.margin.band.low > 0.0:
        made.append(Candidate(legs_lowered(), (Edit(f"loads[{slot.load}].legs", "down"),), 0.0, 0))
    if parked.is_coupled is not True:
        made.append(Candidate(kept_coupled(), (Edit(f"loads[{slot.load}].coupled", "yes"),), 0.0, 1))
    return made


class Range(NamedTuple):
    """How much a load changes in the wanted direction at the very most, and what is then left behind or emptied (kg).

    Of a share, the change is counted in shares of the weight as it was.
    """

    gain: float
    away: float


def whole_range(
    rig: Rig, slot: Slot, lever: Lever, pull: Pull, limit: float, loose: Iterable[Movable], axes: Iterable[int]
) -> Range:
    """Return the most that moving, leaving and emptying can do together; nothing that may be done does more.

    Every part that may be moved, and all cargo, stands at its end stop whatever else is in its way, or it is left
    behind or emptied where that does more. Of a share, ``limit`` decides which: a mass whose own share is below it.
    """
    cargo = {id(mass) for piece in _cargo(rig, slot) for mass in piece.masses}
    families, stops = _families(rig), dict[str, float]()
    for one in loose:
        per = pull.by_moving(one.axis, lever.is_up)
        gain = max(per * one.room.most, per * one.room.least) if per else 0.0
        stops |= dict.fromkeys(families[one.item.of], gain)
    sign, gain, away = (1.0 if lever.is_up else -1.0), 0.0, 0.0
    for mass in slot.masses:
        moved_by = [stops.get(mass.of, 0.0)]
        if id(mass) in cargo and mass.of not in stops:
            moved_by += [_to_the_wall(rig, mass, axis, pull.by_moving(axis, lever.is_up)) for axis in axes]
        best = mass.kg.best * max(moved_by)
        own = pull.per.at((mass.x.best, mass.y.best, mass.z.best)) + _beyond(slot, lever, limit)
        gone = -sign * mass.kg.best * own
        if (id(mass) in cargo or mass.what == "fluid") and gone > best:
            best, away = gone, away + mass.kg.best
        gain += max(0.0, best)
    return Range(gain, away)


def _to_the_wall(rig: Rig, mass: Mass, axis: int, per: float) -> float:
    """Return what a kilogram gives with its middle at one wall or the other."""
    ends = ((rig.surfaces.front, rig.surfaces.rear), (rig.surfaces.left, rig.surfaces.right))[axis]
    here = (mass.x, mass.y)[axis].best
    return max(per * (end - here) for end in ends) if per else 0.0


def _beyond(slot: Slot, lever: Lever, limit: float) -> float:
    """Return how far a share is beyond its limit, for each kilogram of the whole; nothing for a load."""
    if lever.load != "share" or slot.weight is None:
        return 0.0
    return (slot.weight.share.band.best - limit) / slot.weight.gross.band.best


def left_behind(rig: Rig, slot: Slot, lever: Lever, pull: Pull, need: float, header: HeaderUnits) -> list[Candidate]:
    """Return what cargo to leave behind, or which tank to empty, so that the load changes enough.

    Each alone; and the fewest pieces of cargo together, with the one that does most in it or left out.
    """
    sign = 1.0 if lever.is_up else -1.0
    whole = slot.weight.gross.band.best if lever.load == "share" and slot.weight is not None else inf
    able = [(gain, piece) for piece in _cargo(rig, slot) if (gain := _gain(piece.masses, sign, pull, whole)) > 0.0]
    able.sort(key=lambda pair: (-pair[0], pair[1].names))
    made = [_left([piece], slot, rig, header) for gain, piece in able if gain >= need]
    together = {tuple(_fewest(able[start:], need)) for start in range(len(able))} - {()}
    made += [_left(pieces, slot, rig, header) for pieces in sorted(together) if len(pieces) > 1]
    for item in rig.parts:
        fluid = [mass for mass in slot.masses if mass.of == item.of and mass.what == "fluid" and mass.kg.best > 0.0]
        if fluid and _gain(fluid, sign, pull, whole) >= need:
            says = emptied(item.name, sum(mass.kg.best for mass in fluid), header)
            edit = Edit(f"loads[{slot.load}].tanks.{item.name}", "empty")
            made.append(Candidate(says, (edit,), _carried(fluid, rig), 1, True))
    return made


class Piece(NamedTuple):
    """A piece of cargo with all that rides in or on it: their names and masses."""

    names: tuple[str, ...]
    masses: tuple[Mass, ...]


def _cargo(rig: Rig, slot: Slot) -> Iterator[Piece]:
    """Yield every piece of cargo aboard that can be left behind with all in and on it, its weight known."""
    families = _families(rig)
    items = {item.of: item for item in rig.parts}
    for item in rig.parts:
        members = families[item.of]
        masses = tuple(mass for mass in slot.masses if mass.of in members)
        if item.words.kind != "cargo" or not masses or not all(mass.kg.known for mass in masses):
            continue
        aboard = tuple(dict.fromkeys(items[of].name for of in members if any(mass.of == of for mass in masses)))
        if all(items[of].words.kind == "cargo" for of in members):
            yield Piece(aboard, masses)


def _fewest(able: list[tuple[float, Piece]], need: float) -> list[Piece]:
    """Return the pieces that together are enough, those that do most first; none where more than a few would be."""
    taken: list[tuple[float, Piece]] = []
    for gain, piece in able:
        if any(set(piece.names) & set(other.names) for _, other in taken):
            continue
        taken.append((gain, piece))
        short = need - sum(one for one, _ in taken)
        if short <= 0.0:
            spare = [pair for pair in taken if pair[0] <= -short]
            if spare:
                taken.remove(min(spare, key=lambda pair: pair[0]))
            return [piece for _, piece in taken]
        if len(taken) == MOST_LEFT:
            break
    return []


def _left(pieces: Iterable[Piece], slot: Slot, rig: Rig, header: HeaderUnits) -> Candidate:
    """Return the candidate that leaves some cargo behind."""
    pieces = list(pieces)
    names = [name for piece in pieces for name in piece.names]
    masses = [mass for piece in pieces for mass in piece.masses]
    edits = tuple(Edit(f"loads[{slot.load}].out", name) for name in names)
    return Candidate(
        left(names, sum(mass.kg.best for mass in masses), header), edits, _carried(masses, rig), len(pieces), True
    )


def _gain(masses: Iterable[Mass], sign: float, pull: Pull, whole: float) -> float:
    """Return how much the load changes in the wanted direction when some masses are taken out.

    Of a share, ``whole`` is the weight it is a share of, which shrinks with them; of a load it is endless.
    """
    masses = tuple(masses)
    rest = 1.0 - sum(mass.kg.best for mass in masses) / whole
    return -sign / rest * sum(mass.kg.best * pull.per.at((mass.x.best, mass.y.best, mass.z.best)) for mass in masses)


def _carried(masses: Iterable[Mass], rig: Rig) -> float:
    """Return the effort of carrying masses out at the rear end (kg m)."""
    return sum(mass.kg.best * abs(rig.surfaces.rear - mass.x.best) for mass in masses if mass.x.known)

"""What is still to be brought in: how each big thing comes through an opening to its place, at its stage.

A thing is brought in first of its stage: what stands by plan from an earlier one is in its way, with today's stage what
is ticked. Loose things are carried out of the way, so no cargo and no stand-in counts.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from math import hypot, isfinite
from typing import Literal

from boxwright.disciplines.layout.bodies import Block, Body, envelope, standing_bodies
from boxwright.disciplines.layout.bringing_doors import (
    Door,
    Names,
    Ways,
    doors_of,
    hole_of,
    told_hole,
    ways_by,
)
from boxwright.disciplines.layout.bringing_ways import Lane, comes_in, straight_out, way_in
from boxwright.disciplines.layout.changeover import Gate
from boxwright.disciplines.layout.made_up import raised_body
from boxwright.disciplines.layout.meeting import are_near, grown, lines_of
from boxwright.disciplines.layout.parts import Fitted, Lining, Section
from boxwright.disciplines.layout.resting import let_in
from boxwright.disciplines.layout.result import Brought, Hole
from boxwright.disciplines.layout.solve import Hull
from boxwright.disciplines.layout.sourced import LENGTHS, SHEET
from boxwright.disciplines.layout.stopping import is_in_room
from boxwright.disciplines.layout.terraces import is_placed, sides_of
from boxwright.exchange import Vector
from boxwright.model.stage import Marks, stands
from boxwright.records import dataclass

Sure = Literal["yes", "no", "perhaps"]
SURELY: Literal["yes"] = "yes"
MOST_PAST, SEARCH = 10_000, 15
"""Boxes that ways are looked for past before the rest is said to be not looked at; a search looks so often at each."""
CROWD = 60
"""Boxes from which on a search takes longer than by their number: it grows with its square."""
FINE = 1e-3
"""Things that differ by less than this (m) are alike."""


@dataclass(frozen=True, slots=True)
class Obstacle:
    """Something that stands by a stage: its boxes where it is sure to be, and all it may fill."""

    body: Body
    surely: tuple[Block, ...]
    perhaps: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Scene:
    """The room at the beginning of a stage: what stands, what may be a way in, and holes of any kind with their sizes.

    ``unsized`` are openings of unknown size.
    """

    obstacles: tuple[Obstacle, ...]
    doors: tuple[Door, ...]
    holes: tuple[Hole, ...]
    unsized: Names

    @property
    def holders(self) -> frozenset[str]:
        """Return the paths of what ends the way of a leaf."""
        return frozenset(hold.of for door in self.doors for hold in door.holds)

    def holding(self, gates: Iterable[Gate], in_doubt: bool) -> Names:
        """Return what keeps the leaves of some ways in from opening as far as they would."""
        paths = {gate.of for gate in gates}
        return tuple(
            dict.fromkeys(one for door in self.doors if door.closed.of in paths for one in door.holders(in_doubt))
        )


class Bringing:
    """The stages of one rig, each looked at once: what stands when something is brought in at it."""

    def __init__(self, section: Section, hull: Hull, now: int) -> None:
        """Take what layout knows, the shell round the room, and the number of today's stage."""
        assert section.room is not None
        self.now, self.looked_past = now, 0
        self.fixed = tuple(Block(low, high) for _, _, low, high in hull.fixed)
        shell = tuple(map(raised_body, hull.fixed))
        self._raised = {one.of for one in shell}
        one = section.room
        self.room = Block((one.front, one.left, one.floor), (one.rear, one.right, one.ceiling))
        self._section, self._surfaces = section, one
        built = tuple((found.of, SURELY) for found in section.fitted if found.kind != "cargo")
        self._bodies = {body.of: body for body in standing_bodies(section.fitted, built, "travel")}
        self._lines = lines_of(self._bodies.values())
        doors = doors_of(section.closed, (*self._bodies.values(), *shell), hull, one, let_in(section.fitted))
        self._doors = {door.closed.of: door for door in doors}
        self._scenes: dict[int, Scene] = {}
        self._ways: dict[tuple[int, frozenset[str]], Ways] = {}
        self._sheets: dict[tuple[Vector, int], Gate | None] = {}
        self._obstacles: dict[tuple[str, Sure], Obstacle] = {}

    @property
    def is_worn(self) -> bool:
        """Return whether so much was looked past already that the rest is not looked at."""
        return self.looked_past >= MOST_PAST

    def wanted(self) -> Iterator[tuple[Fitted, Body, int]]:
        """Yield what is not known to be in and is to stand inside, with the number of its stage: today's if overdue."""
        for one in self._section.fitted:
            body, marks = self._bodies.get(one.of), one.marks
            if body is None or marks is None or marks.stage is None or marks.follows_load or not marks.planned:
                continue
            if marks.done.tick != "yes" and body.is_sure and is_in_room(body, self._surfaces):
                yield one, body, max(marks.stage, self.now)

    def large(self, one: Fitted, body: Body, stage: int) -> Iterator[tuple[Block, ...]]:
        """Yield the thing, or each piece of a counted one, that does not go everywhere however it is held.

        It is longer than some way in is wide, or bulky on every side.
        """
        least = self.ways(self.scene(stage), body.of).least
        for blocks in [(block,) for block in body.blocks] if len(one.along) > 1 else [body.blocks]:
            size = envelope(blocks).size
            if max(size) > least or min(size) >= LENGTHS["leaf"]:
                yield blocks

    def scene(self, stage: int) -> Scene:
        """Return the room at the beginning of a stage."""
        if stage not in self._scenes:
            self._scenes[stage] = self._looked_at(stage)
        return self._scenes[stage]

    def _looked_at(self, stage: int) -> Scene:
        obstacles = []
        for one in self._section.fitted:
            body = self._bodies.get(one.of)
            there = self._there(one.marks, stage, False) if body is not None else "no"
            if body is None or there == "no" or not body.blocks or one.inside:
                continue
            if one.marks is not None and one.marks.follows_load:
                continue
            if (one.of, there) not in self._obstacles:
                self._obstacles[one.of, there] = _obstacle(body, there)
            obstacles.append(self._obstacles[one.of, there])
        doors, holes, unsized = list[Door](), list[Hole](), list[tuple[str, str]]()
        in_it = {one.body.of for one in obstacles} | self._raised
        surely = {one.body.of for one in obstacles if one.surely} | self._raised
        for hole in self._section.closed:
            there = self._there(hole.marks, stage, True)
            if there == "no":
                continue
            if not is_placed(hole.place) or min(sides_of(hole)) <= 0.0:
                unsized.append((hole.of, hole.name))
                continue
            holes.append(hole_of(hole))
            if hole.of in self._doors:
                doors.append(self._doors[hole.of].at(there == "yes" and not hole.is_doubted, in_it, surely))
        return Scene(tuple(obstacles), tuple(doors), tuple(holes), tuple(unsized))

    def _there(self, marks: Marks | None, stage: int, with_own: bool) -> Sure:
        """Return whether something is there as a stage begins; of openings, those of the stage itself count too."""
        if marks is None:
            return "yes"
        if stage == self.now:
            ticked = stands(marks, stage, True)
            if ticked == "yes" or (marks.stage or 0) < stage:
                return ticked
        is_later = marks.stage is not None and marks.stage >= stage + with_own
        if is_later and (marks.done.tick != "yes" or with_own):
            return "no"
        return stands(marks, stage, False) if marks.done.tick != "yes" or _is_gone(marks, stage) else "yes"

    def ways(self, scene: Scene, of: str = "", gone: str = "") -> Ways:
        """Return the ways in of a stage, as far as what stands by then lets their leaves open.

        What is brought in, what carries it and ``gone`` hold none of them.
        """
        free = frozenset(one for one in scene.holders if one in {of, gone} or of in self._lines.get(one, ()))
        return self._ways_by(scene.doors, free)

    def freed(self, scene: Scene) -> Ways:
        """Return the ways in of a stage with nothing that holds their leaves."""
        return self._ways_by(scene.doors, scene.holders)

    def _ways_by(self, doors: tuple[Door, ...], gone: frozenset[str]) -> Ways:
        key = id(doors), gone  # a scene is kept, and its doors with it
        if key not in self._ways:
            self._ways[key] = ways_by(doors, gone)
        return self._ways[key]

    def lane(self, body: Body, blocks: tuple[Block, ...], scene: Scene, all_of_it: bool, gone: str = "") -> Lane | None:
        """Return a way in past all that may stand there, or past what surely does, by what may be a way in too."""
        stood = self._stood(body, blocks, scene, all_of_it)
        ways = self.ways(scene, body.of, gone)
        return self.lane_past(blocks, ways.sure if all_of_it else (*ways.sure, *ways.perhaps), stood)

    def _stood(self, body: Body, blocks: tuple[Block, ...], scene: Scene, all_of_it: bool) -> list[Block]:
        return [
            block
            for one in self.past(body, scene)
            for block in (one.perhaps if all_of_it else one.surely)
            if not _is_in(blocks, block)
        ]

    def is_barred_by(self, of: str, body: Body, blocks: tuple[Block, ...], scene: Scene) -> bool:
        """Return whether a way is found without one thing that surely stands there."""
        without = replace(scene, obstacles=tuple(one for one in scene.obstacles if one.body.of != of))
        return self.lane(body, blocks, without, False, of) is not None

    def leaf_past(self, body: Body, blocks: tuple[Block, ...], scene: Scene) -> Names:
        """Return the leaf that opens in past which nothing comes, where there is a way without it."""
        ways = self.ways(scene, body.of).every
        lane = self.lane_past(blocks, _without_leaves(ways), self._stood(body, blocks, scene, False))
        return ((lane.gate.of, f"the leaf of {lane.gate.name}, which opens in,"),) if lane is not None else ()

    def leaf_over(self, body: Body, blocks: tuple[Block, ...], scene: Scene) -> Names:
        """Return the leaf that opens in over where a thing will stand, where there is a way once it is shut again."""
        over = (gate for gate in self.ways(scene, body.of).sure if any(_is_in(blocks, one) for one in gate.sweep))
        lane = self.lane_past(blocks, _without_leaves(over), self._stood(body, blocks, scene, True))
        return ((lane.gate.of, f"the leaf of {lane.gate.name}"),) if lane is not None else ()

    def lane_past(self, blocks: tuple[Block, ...], gates: Sequence[Gate], stood: Iterable[Block]) -> Lane | None:
        """Return a way in by some openings past some boxes."""
        through = tuple(gates)
        if not through:
            return None
        solid = (*(block for block in self.fixed if not _is_in(blocks, block)), *stood)
        lane = straight_out(blocks, through, solid, self.room)
        self.looked_past += len(solid)
        if lane is None:
            self._searched(solid)
            lane = way_in(blocks, through, solid, self.room)
        return lane

    def _searched(self, solid: Sequence[Block]) -> None:
        """Count a search past some boxes."""
        self.looked_past += round(SEARCH * len(solid) * max(len(solid) / CROWD, 1.0))

    def takes_in(self, size: Vector, stage: int) -> Gate | None:
        """Return by what a sheet is found to come in to any place as a stage begins; each is looked at once."""
        if (size, stage) not in self._sheets:
            scene = self.scene(stage)
            solid = (*self.fixed, *(block for one in scene.obstacles for block in one.perhaps))
            ways = (gate for gate in self.ways(scene).sure if comes_in(size, (gate,), solid, self.room))
            self._sheets[size, stage] = next(ways, None)
            if self._sheets[size, stage] is None:
                self._searched(solid)
        return self._sheets[size, stage]

    def past(self, body: Body, scene: Scene) -> Iterator[Obstacle]:
        """Yield what a thing is brought past: all but itself and what goes into or onto it; what carries it stands."""
        for one in scene.obstacles:
            if one.body.of != body.of and body.of not in self._lines.get(one.body.of, frozenset()):
                yield one


def _without_leaves(gates: Iterable[Gate]) -> list[Gate]:
    """Return those of some ways in whose leaves stand in the room, as if they did not."""
    return [replace(gate, sweep=()) for gate in gates if gate.sweep]


def has_room(section: Section) -> bool:
    """Return whether the finished room is known, so that anything can be said of a way in."""
    room = section.room
    ends = (room.front, room.rear, room.left, room.right, room.ceiling) if room is not None else ()
    return bool(ends) and all(isfinite(at) for at in ends)


def brought_in(
    section: Section, hull: Hull, stages: tuple[str, ...], now: int, linings: tuple[Lining, ...] = ()
) -> tuple[Brought, ...]:
    """Return what is still to be brought in and is not found to come in, from today's stage ``now`` on.

    ``stages`` are the names of the stages in their order; ``linings`` are fitted in whole sheets.
    """
    if not has_room(section):
        return ()
    bringing = Bringing(section, hull, now)
    found: list[Brought] = []
    if not section.closed:
        return tuple(_with_no_opening(bringing, stages))
    for one, body, stage in sorted(bringing.wanted(), key=lambda wanted: (wanted[2], -max(wanted[1].around.size))):
        judged = (_judged(bringing, one, body, blocks, stage, stages) for blocks in bringing.large(one, body, stage))
        found += [told for told in judged if told is not None][:1]
    found += [told for one in linings if (told := _of_sheets(bringing, one, stages)) is not None]
    return tuple(_alike(found))


def _of_sheets(bringing: Bringing, one: Lining, stages: tuple[str, ...]) -> Brought | None:
    """Return that a lining comes in in no whole sheets, None where they do or it is in."""
    stage = stage_of(bringing, one)
    if stage is None or bringing.is_worn:
        return None
    size = sheet_of(one)
    if bringing.takes_in(size, stage) is not None:
        return None
    scene = bringing.scene(stage)
    tried = tuple(told_hole(gate) for gate in bringing.ways(scene).sure)
    earlier = range(stage - 1, bringing.now - 1, -1)
    before = next((stages[at] for at in earlier if bringing.takes_in(size, at) is not None), "")
    name = stages[stage] if stage < len(stages) else ""
    return Brought(one.of, one.name, size, name, "sheet", tried, before=before)


def stage_of(bringing: Bringing, one: Lining) -> int | None:
    """Return the stage the sheets of a lining are brought in at, today's if overdue; None where they are in."""
    marks = one.marks
    if marks.stage is None or not marks.planned or marks.done.tick == "yes":
        return None
    return max(marks.stage, bringing.now)


def sheet_of(one: Lining) -> Vector:
    """Return the size of a whole sheet of a lining (m)."""
    return SHEET["long"], SHEET["wide"], one.thick


def _with_no_opening(bringing: Bringing, stages: tuple[str, ...]) -> Iterator[Brought]:
    """Yield one answer for all there is to bring in, where the file tells of no opening at all."""
    every = [one for one in bringing.wanted() if max(one[1].around.size) > LENGTHS["leaf"]]
    if every:
        one, body, stage = every[0]
        others = tuple((other.of, other.name) for other, _, _ in every[1:])
        name = stages[stage] if stage < len(stages) else ""
        yield Brought(one.of, one.name, body.around.size, name, "no hole", others=others)


def _judged(
    bringing: Bringing, one: Fitted, body: Body, blocks: tuple[Block, ...], stage: int, stages: tuple[str, ...]
) -> Brought | None:
    scene = bringing.scene(stage)
    name = stages[stage] if stage < len(stages) else ""
    told = Brought(one.of, one.name, envelope(blocks).size, name, "no hole")
    ways, freed = bringing.ways(scene, one.of), bringing.freed(scene)
    if not ways.every:
        doors, after = _later(bringing, one, stage, stages)
        return replace(told, by=scene.unsized, held=scene.holding(freed.every, False), doors=doors, after=after)
    told = replace(told, tried=tuple(told_hole(gate) for gate in ways.every))
    short = least_short(blocks, scene.holes)
    if short is not None and not scene.unsized:
        return replace(
            told, word="large", tried=(short[1],), short=short[0], after=_fits(bringing, blocks, stage, stages)
        )
    if bringing.is_worn:
        return replace(told, word="not looked")
    if bringing.lane(body, blocks, scene, True) is not None:
        return None
    doubtful = tuple(
        (seen.body.of, seen.body.name) for seen in bringing.past(body, scene) if seen.surely != seen.perhaps
    )
    lane = bringing.lane(body, blocks, scene, False) if doubtful or ways.perhaps else None
    if lane is None and (leaf := bringing.leaf_over(body, blocks, scene)):
        return replace(told, word="doubt", by=leaf)
    if lane is not None:
        by = _in_the_way(bringing, body, blocks, lane, scene, True)
        doors = ((lane.gate.of, lane.gate.name),) if lane.gate in ways.perhaps else ()
        held = scene.holding((lane.gate,), True) if doors else ()
        return replace(told, word="doubt", by=by or (() if doors else doubtful), doors=doors, held=held)
    alone = bringing.lane_past(blocks, (*freed.sure, *freed.perhaps), ())
    by = _in_the_way(bringing, body, blocks, alone, scene, False) if alone is not None else ()
    held = scene.holding((alone.gate,), False) if alone is not None else ()
    barring = dict.fromkeys((*by, *held))
    alone_bars = (one for one in barring if not bringing.is_worn and bringing.is_barred_by(one[0], body, blocks, scene))
    by = tuple(alone_bars) or by or held
    by = (*by, *bringing.leaf_past(body, blocks, scene))
    before = _before(bringing, body, blocks, stage)
    return replace(told, word="no way", by=by, before=stages[before] if before is not None else "")


def _fits(bringing: Bringing, blocks: tuple[Block, ...], stage: int, stages: tuple[str, ...]) -> str:
    """Return the name of the first later stage at which a thing may go through some hole; empty for none."""
    later = ((stages[at], bringing.scene(at).holes) for at in range(stage + 1, len(stages)))
    return next((name for name, holes in later if holes and least_short(blocks, holes) is None), "")


def _later(bringing: Bringing, one: Fitted, stage: int, stages: tuple[str, ...]) -> tuple[Names, str]:
    """Return the openings there are at the first later stage that has any, and the name of that stage."""
    for later in range(stage + 1, len(stages)):
        every = bringing.ways(bringing.scene(later), one.of).every
        if every:
            return tuple((gate.of, gate.name) for gate in every), stages[later]
    return (), ""


def _in_the_way(
    bringing: Bringing, body: Body, blocks: tuple[Block, ...], lane: Lane, scene: Scene, all_of_it: bool
) -> Names:
    """Return what stands in a way that would be free without it."""
    return tuple(
        (one.body.of, one.body.name)
        for one in bringing.past(body, scene)
        if any(
            _is_in(lane.swept, block) and not _is_in(blocks, block)
            for block in (one.perhaps if all_of_it else one.surely)
        )
    )


def _before(bringing: Bringing, body: Body, blocks: tuple[Block, ...], stage: int) -> int | None:
    """Return the last stage before its own, from today's on, at which a way is found."""
    for earlier in range(stage - 1, bringing.now - 1, -1):
        if bringing.lane(body, blocks, bringing.scene(earlier), True) is not None:
            return earlier
    return None


def least_short(blocks: Iterable[Block], holes: Sequence[Hole]) -> tuple[float, Hole] | None:
    """Return by how much (m) a thing is too large for the hole that falls short least; None where one may let it in.

    The middle of each of its boxes has to pass the plane of the hole. The section of a box through its middle, however
    it is held, holds a circle as wide as the least of its sides, and is as long as the next at least: so a hole less
    wide than the one, or shorter from corner to corner than the other, lets it through in no way.
    """
    thin, broad = 0.0, 0.0
    for block in blocks:
        low, middle, _ = sorted(block.size)
        thin, broad = max(thin, low), max(broad, middle)
    found = [(max(thin - min(hole.width, hole.height), broad - hypot(hole.width, hole.height)), hole) for hole in holes]
    best = min(found, key=lambda one: one[0], default=None)
    return best if best is not None and best[0] > FINE else None


def _obstacle(body: Body, there: Sure) -> Obstacle:
    is_placed_well = all(isfinite(by) for by in body.doubt)
    more = tuple(grown(block, body.doubt) if is_placed_well else block for block in body.blocks)
    if not body.is_sure or there != "yes":
        return Obstacle(body, (), more)
    less = (_pared(block, body.doubt) for block in body.blocks)
    return Obstacle(body, tuple(block for block in less if min(block.size) > 0.0), more)


def _is_gone(marks: Marks, stage: int) -> bool:
    return marks.until is not None and stage > marks.until


def _is_in(blocks: Iterable[Block], other: Block) -> bool:
    """Return whether a thing and a box are in each other; where both stand so in the end, that is told elsewhere."""
    return any(are_near(one, other) for one in blocks)


def _pared(block: Block, by: Vector) -> Block:
    return grown(block, (-by[0], -by[1], -by[2]))


def _alike(found: Iterable[Brought]) -> Iterator[Brought]:
    """Yield each kind of thing once: those of one size, stage and answer together, and all that nothing is known of."""
    groups: dict[tuple[object, ...], list[Brought]] = {}
    for one in found:
        size = tuple(round(side / FINE) for side in sorted(one.size))
        of_all = one.word in {"no hole", "not looked"}
        key = (one.word, (one.by, one.after) if of_all else (size, one.stage, one.tried, one.before))
        groups.setdefault(key, []).append(one)
    for first, *rest in groups.values():
        by = tuple(dict.fromkeys(pair for one in (first, *rest) for pair in one.by))
        yield replace(first, by=by, others=tuple((one.of, one.name) for one in rest))

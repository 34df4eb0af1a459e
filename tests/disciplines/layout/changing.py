"""Small rooms with things to move, and a search of its own that looks at every state and every centimetre of way."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from dataclasses import replace
from heapq import heappop, heappush
from itertools import product
from random import Random

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.changeover import OPEN, OUTSIDE, SHUT, Gate, Mover, Posed, Setting
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.terraces import Bed
from boxwright.exchange import Vector
from boxwright.model.place import Place, Surfaces
from boxwright.units import exactly

State = tuple[int, ...]
LENGTH, WIDTH, HEIGHT = 8, 4, 3
"""The room in cells: every box lies on whole cells, so that stepping from cell to cell finds every straight way."""
FACES = Surfaces(0.0, LENGTH, 0.0, WIDTH, 0.0, HEIGHT, 0.0, LENGTH, 0.0, WIDTH, HEIGHT)


def block(low: Vector, size: Vector) -> Block:
    """Return a box by its corner and its size."""
    return Block(low, (low[0] + size[0], low[1] + size[1], low[2] + size[2]))


def body(name: str, *blocks: Block) -> Body:
    """Return a thing that stands still."""
    return Body(f"parts[{name}]", name, blocks, (0.0, 0.0, 0.0), True, "yes", "")


def thing(name: str, day: Block, night: Block | None = None, start: int = 0, goal: int = 0, **more: object) -> Mover:
    """Return cargo with one place or two, and outside as its last pose."""
    poses = [Posed("travel", (day,)), *([Posed("night", (night,))] if night else []), Posed(OUTSIDE, ())]
    poses = poses if night else [Posed("place", (day,)), poses[-1]]
    made = Mover(f"parts[{name}]", name, "carry", tuple(poses), start, goal, 40.0, 1, may_leave=True, body=body(name))
    return replace(made, **more)  # type: ignore[arg-type]


def gate(name: str, wall: str, low: Vector, high: Vector, seconds: float = 10.0) -> tuple[Gate, Mover]:
    """Return an opening and what opens it."""
    made = Gate(f"openings[{name}]", name, wall, low, high, "inside", True)  # type: ignore[arg-type]
    poses = (Posed(SHUT, ()), Posed(OPEN, ()))
    return made, Mover(made.of, name, "gate", poses, 0, 0, seconds, 1)


DOOR = gate("door", "right", (0.0, WIDTH, 0.0), (2.0, WIDTH, 2.0))


def setting(*movers: Mover, fixed: tuple[Body, ...] = (), gates: tuple[tuple[Gate, Mover], ...] = (DOOR,)) -> Setting:
    """Return a room with things and its openings."""
    moved = sorted((*movers, *(one for _, one in gates)), key=lambda one: one.name)
    return Setting(FACES, fixed, tuple(moved), tuple(one for one, _ in gates), (), (), ())


def random_setting(seed: int) -> Setting:
    """Return a few things at random in a room with one or two openings, some of them to go elsewhere or out."""
    draw = Random(seed)
    fixed: list[Block] = []
    taken: list[Block] = []

    def free(size: tuple[int, int, int]) -> Block | None:
        for _ in range(60):
            low = (float(draw.randrange(LENGTH - size[0] + 1)), float(draw.randrange(WIDTH - size[1] + 1)), 0.0)
            made = block(low, (float(size[0]), float(size[1]), float(size[2])))
            if not any(meet(made, one) for one in taken):
                taken.append(made)
                return made
        return None

    for _ in range(draw.randint(0, 2)):
        one = free((draw.randint(1, 2), 1, 3))
        fixed += [one] if one else []
    movers = []
    for number in range(draw.randint(2, 4)):
        size = (draw.randint(1, 3), draw.randint(1, 3), draw.randint(1, 3))
        day = free(size)
        if day is None:
            continue
        night = None
        if draw.random() < 0.4:
            night = free(size)
        last = 2 if night else 1
        seconds = float(draw.choice([20, 40, 60]))
        goal = draw.choice([0, last, 1])
        movers.append(thing(f"thing-{number}", day, night, 0, goal, seconds=seconds, lift=float(draw.randint(0, 1))))
    gates = [DOOR]
    if draw.random() < 0.5:
        gates.append(gate("ramp", "rear", (LENGTH, 1.0, 0.0), (LENGTH, 3.0, 2.0), 30.0))
    return setting(*movers, fixed=(body("fixed", *fixed),) if fixed else (), gates=tuple(gates))


def mirrored(one: Setting) -> Setting:
    """Return a setting with left and right changed over, named as before."""

    def turned(made: Block) -> Block:
        (ax, ay, az), (bx, by, bz) = made
        return Block((ax, WIDTH - by, az), (bx, WIDTH - ay, bz))

    def over(mover: Mover) -> Mover:
        poses = tuple(Posed(pose.word, tuple(turned(made) for made in pose.blocks)) for pose in mover.poses)
        return replace(mover, poses=poses)

    def hole(made: Gate) -> Gate:
        low, high = (made.low[0], WIDTH - made.high[1], made.low[2]), (made.high[0], WIDTH - made.low[1], made.high[2])
        walls = {"left": "right", "right": "left"}
        return replace(made, wall=walls.get(made.wall, made.wall), low=low, high=high)  # type: ignore[arg-type]

    fixed = tuple(replace(made, blocks=tuple(turned(piece) for piece in made.blocks)) for made in one.fixed)
    return replace(one, fixed=fixed, movers=tuple(map(over, one.movers)), gates=tuple(map(hole, one.gates)))


# ------------------------------------------------------------------ the other search


def meet(one: Block, other: Block) -> bool:
    """Return whether two boxes fill the same room; written anew, so that it does not share a mistake."""
    (ax, ay, az), (bx, by, bz) = one
    (cx, cy, cz), (dx, dy, dz) = other
    return ax < dx - 0.01 and cx < bx - 0.01 and ay < dy - 0.01 and cy < by - 0.01 and az < dz - 0.01 and cz < bz - 0.01


def standing(one: Setting, state: State, without: int = -1) -> list[Block]:
    """Return every box that stands in a state."""
    found = [piece for made in one.fixed for piece in made.blocks]
    return found + [piece for i, p in enumerate(state) if i != without for piece in one.movers[i].poses[p].blocks]


def is_sound(one: Setting, state: State) -> bool:
    """Return whether nothing overlaps in a state."""
    boxes = standing(one, state)
    return not any(meet(a, b) for i, a in enumerate(boxes) for b in boxes[i + 1 :])


def stepped(one: Setting, box: Block, solid: list[Block], lift: float) -> dict[Vector, bool]:
    """Return every whole-cell shift a box can be stepped to within the room or just outside an opening."""
    found: dict[Vector, bool] = {(0.0, 0.0, 0.0): True}
    waiting = deque(found)
    levels = [float(z) for z in range(int(min(lift, HEIGHT - box.high[2])) + 1)]
    while waiting:
        at = waiting.popleft()
        for axis, way in product((0, 1, 2), (-1.0, 1.0)):
            there = tuple(at[n] + (way if n == axis else 0.0) for n in range(3))
            if there in found or there[2] not in levels:
                continue
            moved = block(tuple(box.low[n] + there[n] for n in range(3)), box.size)  # type: ignore[arg-type]
            if any(meet(moved, other) for other in solid) or not allowed(one, moved):
                continue
            found[there] = True  # type: ignore[index]
            waiting.append(there)  # type: ignore[arg-type]
    return found


def allowed(one: Setting, box: Block) -> bool:
    """Return whether a box is in the room, or in a hole of a wall or beyond it."""
    (ax, ay, az), (bx, by, bz) = box
    if ax >= 0 and ay >= 0 and bx <= LENGTH and by <= WIDTH:
        return True
    for made in one.gates:
        low, high = made.low, made.high
        is_fitting = az >= low[2] and bz <= high[2]
        if made.wall in {"left", "right"}:
            is_out = ay >= -8 and by <= WIDTH + 8 and (by > WIDTH) == (made.wall == "right")
            if is_fitting and ax >= low[0] and bx <= high[0] and is_out:
                return True
        elif is_fitting and ay >= low[1] and by <= high[1] and ax >= 0 and bx <= LENGTH + 8:
            return True
    return False


def is_beyond(made: Gate, box: Block) -> bool:
    """Return whether a box is all outside an opening."""
    if made.wall in {"left", "right"}:
        return box.low[1] >= WIDTH if made.wall == "right" else box.high[1] <= 0
    return box.low[0] >= LENGTH


def goes(one: Setting, i: int, to: int, state: State) -> Iterator[int]:
    """Yield the openings (movers, -1 for none) by which a thing gets from where it is to another pose, unturned."""
    mover = one.movers[i]
    here, there = mover.poses[state[i]], mover.poses[to]
    base = (here.blocks or there.blocks)[0]
    solid = standing(one, state, without=i)
    if there.blocks and any(meet(there.blocks[0], other) for other in solid):
        return
    for j, gated in enumerate(one.movers):
        if gated.kind == "gate" and gated.poses[state[j]].word == OPEN and not (here.blocks and there.blocks):
            made = next(found for found in one.gates if found.of == gated.of)
            reached = stepped(replace(one, gates=(made,)), base, solid, mover.lift)
            if any(is_beyond(made, block(tuple(base.low[n] + by[n] for n in range(3)), base.size)) for by in reached):  # type: ignore[arg-type]
                yield j
    if here.blocks and there.blocks:
        by = tuple(there.blocks[0].low[n] - here.blocks[0].low[n] for n in range(3))
        if by in stepped(replace(one, gates=()), base, solid, mover.lift):
            yield -1


def by_brute_force(one: Setting) -> float | None:
    """Return the least cost of a change-over without turning anything; None where there is none."""
    start = tuple(mover.start for mover in one.movers)
    goal = tuple(mover.goal for mover in one.movers)
    waiting, done = [(0.0, start)], set[State]()
    while waiting:
        cost, state = heappop(waiting)
        if state in done:
            continue
        done.add(state)
        if state == goal:
            return cost
        for i, mover in enumerate(one.movers):
            for to in range(len(mover.poses)):
                if to == state[i]:
                    continue
                if mover.kind == "gate" or any(True for _ in goes(one, i, to, state)):
                    after = (*state[:i], to, *state[i + 1 :])
                    heappush(waiting, (cost + mover.seconds * mover.hands, after))
    return None


def bed_across(low: Vector, size: Vector, sleepers: tuple[str, ...] = ("one",)) -> Bed:
    """Return a bed that stands where it stands."""
    place = Place(*(exactly(low[n] + size[n] / 2.0) for n in range(3)), size)  # type: ignore[arg-type]
    return Bed("parts[bed]", "bed", place, 0.1, sleepers)


def closed(made: Gate) -> Closed:
    """Return an opening as one that somebody gets out through."""
    (ax, ay, az), (bx, by, bz) = made.low, made.high
    place = Place(exactly((ax + bx) / 2), exactly((ay + by) / 2), exactly((az + bz) / 2), (bx - ax, by - ay, bz - az))
    return Closed(made.of, made.name, made.wall, place)

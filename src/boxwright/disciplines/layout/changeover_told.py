"""From a setting to what is told: the change-over in the order of hands, what blocks it, and how everybody gets out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import combinations, pairwise
from math import dist, hypot
from typing import Literal, NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.changeover import (
    OPEN,
    OUT,
    OUTSIDE,
    Changed,
    Freed,
    Leaving,
    Mover,
    Setting,
    Step,
)
from boxwright.disciplines.layout.changeover_numbers import PACE, SECONDS, SQUEEZE
from boxwright.disciplines.layout.changeover_scene import DOWN, Board, State
from boxwright.disciplines.layout.changeover_search import MOST_STATES, MOST_WAYS, Found, cheapest, cheapest_with_apart
from boxwright.disciplines.layout.free_spot import free_spot
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import reach, within
from boxwright.disciplines.layout.terraces import Bed, outline_of, sides_of
from boxwright.disciplines.layout.ways import scene_drawn, way_drawn, ways_out

MOST_TO_LEAVE = 400
"""A search for the way out gives up after so many states."""
MOST_TRIED = 40
"""So many things, or pairs of things, are tried as what must stay outside."""
PROBED = 300
PROBED_WAYS = 150
"""Each of those tries gives up after so many states, and all together after so many ways of things.

They get half as many after a search that was itself cut short.
"""
UNTRIED = frozenset({"unknown", "unmeasured", "tight"})
"""What is said of an exit by which somebody may get out, and which has to be tried or measured first."""
BUILT_IN = "what is built in"
TOO_LARGE = "the frame of every opening, being too large for each"
NO_OPENING = "no opening that things are carried through"


class Told(NamedTuple):
    """A change-over there and back, and out of bed where one of its ends is the night."""

    there: Changed
    back: Changed
    out: Leaving | None


def told(
    setting: Setting, ends_at_night: bool, begins_at_night: bool = False, most: int = MOST_STATES, ways: int = MOST_WAYS
) -> Told:
    """Return the change-over of a setting both ways; what must be left out is left out on the way back too.

    Where a night that is begun from cannot be as it is written, it is begun from as one comes to it.
    """
    board = Board(setting)
    start, goal = board.state(is_goal=False), board.state(is_goal=True)
    if begins_at_night and any(_overlapping(board, start)):
        back, begun = changed(board, goal, start, most, ways)
        if back.word == "without":
            there, _ = changed(board, begun, goal, most, ways, 0)
            if there.word == "found":
                there = replace(there, word="without", leave_out=back.leave_out)
            return Told(there, back, leaving(board, begun) if setting.beds else None)
    there, goal = changed(board, start, goal, most, ways)
    # from where nobody comes to, it need not be known what would have to be left out on the way back
    back, _ = changed(board, goal, start, most, ways, PROBED_WAYS if there.word in {"found", "without"} else 0)
    night = goal if ends_at_night else start if begins_at_night else None
    return Told(there, back, leaving(board, night) if night is not None and setting.beds else None)


def changed(
    board: Board,
    start: State,
    goal: State,
    most: int = MOST_STATES,
    ways: int = MOST_WAYS,
    probed: int = PROBED_WAYS,
) -> tuple[Changed, State]:
    """Return the least change-over from one state to another or what is in its way, and the state it ends in.

    ``probed`` is how many ways may be looked for to say what would have to be left out.
    """
    overlaps = tuple(_overlapping(board, start))
    same = set(overlaps)
    meets = tuple(one for one in _overlapping(board, goal) if one not in same)
    meets = (*meets, *(one for one in _met_on_the_way(board, start, goal) if one not in meets))
    found = Found(None, 0.0, 0, True) if meets else cheapest_with_apart(board, start, goal, most, ways)
    if found.moves is not None:
        return _told(board, start, goal, found, Changed("found", overlaps=overlaps)), goal
    ending = Changed("blocked" if found.is_exhausted else "not-found", states=found.states, overlaps=overlaps)
    ending = replace(ending, meets=meets, before=exits_at(board, start))
    last_way = board.ways + (probed if found.is_exhausted else probed // 2)
    for leave_out in _candidates(board, goal, meets):
        if board.ways >= last_way:
            break
        other = _without(board, goal, leave_out)
        if _met_on_the_way(board, start, other):
            continue
        again = cheapest_with_apart(board, start, other, PROBED, last_way - board.ways)
        if again.moves is not None:
            names = tuple(one.name for one, p, q in zip(board.movers, goal, other, strict=True) if p != q)
            return _told(board, start, other, again, replace(ending, word="without", leave_out=names)), other
    return ending, goal


def leaving(board: Board, start: State) -> Leaving:
    """Return how everybody gets out of bed and out of the trailer in a state."""
    setting = board.setting
    beds = [bed for bed in setting.beds if bed.sleepers]
    exits = exits_at(board, start)
    if not beds or not all(_is_down(board, start, bed) for bed in beds):
        return Leaving("unknown", exits=exits)
    tonight = {bed.of for bed in beds}
    inside = {gate.of for gate in setting.gates if gate.release == "inside"}
    # nobody folds up the bed he lies in, or opens from inside what does not open from there
    stuck = frozenset(
        i for i, one in enumerate(board.movers) if one.of in tonight or (one.kind == "gate" and one.of not in inside)
    )
    untried, shut_in = set[str](), [bed.name for bed in beds]

    def is_done(state: State) -> bool:
        known = exits_at(board, state)
        untried.update({one.word for one in known} & UNTRIED)
        without = [bed.name for bed in beds if not any(one.lets_out(bed.name) for one in known)]
        shut_in[:] = [name for name in shut_in if name in without]
        return not without

    found = cheapest(board, start, start, MOST_TO_LEAVE, MOST_WAYS, is_done, stuck)
    if found.moves is None:
        word: Literal["untried", "blocked", "not-found"]
        word = "untried" if untried else "blocked" if found.is_exhausted else "not-found"
        return Leaving(word, exits=exits, states=found.states, shut_in=tuple(shut_in))
    steps = tuple(_steps(board, start, found))
    state = found.moves[-1][1] if found.moves else start
    ways, onward = _quickest(board, state, beds)
    named = tuple((bed.name, one.name, one.far) for bed, one in zip(beds, ways, strict=True))
    seconds = SECONDS["rise"] + sum(step.seconds for step in steps) + onward
    return Leaving("found", steps, named, seconds, exits, found.states)


# ------------------------------------------------------------------ what is told of a search


def _told(board: Board, start: State, goal: State, found: Found, ending: Changed) -> Changed:
    moved = dict.fromkeys(move.mover for move, _ in found.moves or ())
    meanwhile = tuple(
        (board.movers[i].name, board.movers[i].poses[goal[i]].word) for i in moved if board.movers[i].kind != "gate"
    )
    grazes, before = list[tuple[str, str]](), start
    for move, state in found.moves or ():
        one = board.movers[move.mover]
        if one.kind == "fold":
            grazes += [(one.name, name) for name in board.turn_grazes(move.mover, before)]
        before = state
    return replace(
        ending,
        grazes=tuple(grazes),
        steps=tuple(_steps(board, start, found)),
        before=exits_at(board, start),
        cost=found.cost,
        states=found.states,
        meanwhile=meanwhile,
    )


def _steps(board: Board, start: State, found: Found) -> Iterator[Step]:
    before = start
    for move, state in found.moves or ():
        one = board.movers[move.mover]
        word = _word(one, before[move.mover], move.to)
        by = board.movers[move.gate].name if move.gate >= 0 else ""
        is_tied = one.poses[before[move.mover]].word == "travel" or one.poses[move.to].word == "travel"
        straps = one.straps if is_tied or len(one.poses) == 2 else ()
        seconds = one.seconds + (SECONDS["turn"] if move.is_turned else 0.0)
        yield Step(one.of, one.name, word, by, seconds, one.hands, straps, exits_at(board, state), move.is_turned)
        before = state


def _word(one: Mover, before: int, after: int) -> str:
    if one.kind == "gate":
        return "open" if one.poses[after].word == OPEN else "shut"
    if one.kind == "fold":
        return "let down" if after == DOWN else "fold up"
    if one.kind == "set":
        return "set out" if one.poses[after].word == OUT else "put in"
    if one.poses[after].word == OUTSIDE:
        return "carry out"
    return "carry in" if one.poses[before].word == OUTSIDE else "shift"


# ------------------------------------------------------------------ what blocks


def _overlapping(board: Board, state: State) -> Iterator[tuple[str, str]]:
    """Yield the pairs of names that overlap in a state, those of the first mover first."""
    for i, p in enumerate(state):
        for name in board.meets((i, p), state):
            pair = (board.movers[i].name, name)
            number = next((j for j, one in enumerate(board.movers) if one.name == name), -1)
            if number < 0 or number > i:
                yield pair


def _met_on_the_way(board: Board, start: State, goal: State) -> tuple[tuple[str, str], ...]:
    """Return what a thing that must move meets though nothing that can move is in its way: what is built in."""
    found = []
    for i, one in enumerate(board.movers):
        is_crossing = start[i] != goal[i] and OUTSIDE in (one.poses[start[i]].word, one.poses[goal[i]].word)
        if one.kind == "carry" and is_crossing:
            gates = [number for number, gate in board.gates if gate.carries]
            if not any(board.could_pass(i, number, turned) for number in gates for turned in (False, True)):
                found.append((one.name, _barred_by(board, one)))
        elif one.kind == "fold" and start[i] != goal[i]:
            found += [(one.name, name) for name in board.turn_meets(i, goal[i], _emptied(board, start))]
    return tuple(found)


def _barred_by(board: Board, one: Mover) -> str:
    """Return what a thing meets on every way out of or into the room: frames it is too large for, or a leaf, or more.

    A leaf that opens too little is told where the bare hole would do.
    """
    gates = [gate for _, gate in board.gates if gate.carries]
    if not gates:
        return NO_OPENING
    bare = {hung.opening.of: sides_of(hung.opening) for hung in board.setting.hung}
    held = ""
    for gate in gates:
        along = 1 if gate.wall in {"front", "rear"} else 0
        low, high = board.leaves.hole(gate.of, gate.low, gate.high, ())
        left = high[along] - low[along], high[2] - low[2]
        if _goes_through(one, left):
            return BUILT_IN
        if _goes_through(one, bare.get(gate.of, left)):
            stopper = board.leaves.stopper(gate.of)
            why = f"is stopped by {stopper}" if stopper else "does not open far enough"
            held = f"the leaf of {gate.name}, which {why}"
    return held or TOO_LARGE


def _goes_through(one: Mover, hole: tuple[float, float]) -> bool:
    """Return whether a thing may go through a hole of some size, by its size alone.

    Its middle side has to pass the hole from corner to corner, its least the lesser side of the hole.
    """
    sides = [sorted(block.size) for pose in one.poses for block in pose.blocks]
    return all(side[0] <= min(hole) and side[1] <= hypot(*hole) for side in sides)


def _emptied(board: Board, state: State) -> State:
    """Return a state with everything that can be carried outside."""
    found = list(state)
    for i, one in enumerate(board.movers):
        out = _outside(one)
        if one.kind == "carry" and out is not None:
            found[i] = out
    return tuple(found)


def _outside(one: Mover) -> int | None:
    return next((p for p, pose in enumerate(one.poses) if pose.word == OUTSIDE), None)


def _candidates(board: Board, goal: State, meets: tuple[tuple[str, str], ...]) -> Iterator[tuple[int, ...]]:
    """Yield what could stay outside as well, the fewest first; where things overlap in the end, what parts them."""
    free = [
        i
        for i, one in enumerate(board.movers)
        if one.kind == "carry" and one.may_leave and one.poses[goal[i]].word != OUTSIDE
    ]
    count = 0
    for size in (1, 2, 3):
        for chosen in combinations(free, size):
            other = _without(board, goal, chosen)
            if size > 1 and any(goal[i] == other[i] for i in chosen):
                continue
            names = {board.movers[i].name for i, p in enumerate(other) if p != goal[i]}
            if meets and not all(names & set(pair) for pair in meets):
                continue
            if not meets and size > 2:
                return
            yield chosen
            count += 1
            if count >= MOST_TRIED:
                return


def _without(board: Board, goal: State, chosen: tuple[int, ...]) -> State:
    """Return the goal with some things outside, and with them all that would have nothing left to lie on."""
    found = list(goal)
    for i in chosen:
        found[i] = _outside(board.movers[i]) or found[i]
    for _ in board.movers:
        present = board.present(tuple(found))
        fallen = [j for j, p in enumerate(found) if not board.is_held((j, p), present)]
        if not fallen:
            break
        for j in fallen:
            found[j] = _outside(board.movers[j]) or found[j]
    return tuple(found)


# ------------------------------------------------------------------ exits


def exits_at(board: Board, state: State) -> tuple[Freed, ...]:
    """Return what is known of each exit in a state, from every bed that is down, else from where one can stand."""
    known = board.exits.get(_seen(board, state))
    if known is None:
        known = board.exits[_seen(board, state)] = tuple(_exits(board, state))
    return known


def _seen(board: Board, state: State) -> State:
    """Return a state without what makes no difference to who gets out: doors that open from inside, shut or open."""
    free = {gate.of for gate in board.setting.gates if gate.release == "inside" and not gate.sweep}
    return tuple(0 if one.of in free else p for one, p in zip(board.movers, state, strict=True))


def _exits(board: Board, state: State) -> Iterator[Freed]:
    bodies, setting = _bodies(board, state), board.setting
    down = tuple(bed for bed in setting.beds if _is_down(board, state, bed))
    spot = None if down else free_spot(bodies, setting.faces)
    starts = down or ((spot,) if spot is not None else ())
    gates, beds = {gate.of: gate for gate in setting.gates}, frozenset(bed.of for bed in down)
    for opening in setting.exits:
        release = gates[opening.of].release if opening.of in gates else "unknown"
        number = board.index.get(opening.of)
        if number is not None and board.movers[number].poses[state[number]].word == OPEN:
            release = "inside"
        held = next((one for one in setting.held if one.of == opening.of), None)
        lost = board.leaves.held(opening.of, enumerate(state), beds)
        if release == "not in yet":
            yield Freed(opening.of, opening.name, "perhaps")
        elif held is not None and held.word == "fixed":
            yield held
        elif release in {"none", "key", "tool"}:
            yield Freed(opening.of, opening.name, "shut", () if release == "none" else (release,))
        elif opening.wall == "roof" and (names := _over_and_under(bodies, opening, setting)):
            yield Freed(opening.of, opening.name, "blocked", names)
        elif shut := next((one for one in (held, lost) if one is not None and one.word == "blocked"), None):
            yield shut
        elif not (able := [bed for bed in starts if _gets_out(bodies, bed, opening, setting)]):
            yield _blocked(bodies, starts, opening, setting)
        else:
            is_asked = release != "inside" or (opening.wall == "roof" and not _is_climbed_to(down, opening, setting))
            asked = Freed(opening.of, opening.name, "unknown" if is_asked else "free")
            found = lost or (asked if is_asked else held or asked)
            yield replace(found, not_from=tuple(bed.name for bed in starts if bed not in able))


def _over_and_under(bodies: tuple[Body, ...], opening: Closed, setting: Setting) -> tuple[str, ...]:
    """Return the names of what lies over a hatch, or hangs so close under it that nobody gets between."""
    least = setting.faces.ceiling - ROOM["crawl"]
    around = outline_of(_hole(opening))
    found = (
        body.name
        for body in bodies
        if any(block.high[2] > least and within(outline_of(block), around) is not None for block in body.blocks)
    )
    return tuple(dict.fromkeys(found))


def _is_climbed_to(beds: Iterable[Bed], opening: Closed, setting: Setting) -> bool:
    """Return whether a bed that is down is under a hatch, so near that who stands on it has the shoulders outside."""
    return any(gets_up_from(bed, opening, setting) for bed in beds)


def gets_up_from(bed: Bed, opening: Closed, setting: Setting) -> bool:
    """Return whether enough of a hole is over a bed to get through there, and near it, wherever both may be."""
    top = bed.top - (bed.place.z.best - bed.place.z.low)
    if setting.faces.ceiling - top > ROOM["stoop"]:
        return False
    for axis in (0, 1):
        mine, hole = ((place.x, place.y)[axis] for place in (bed.place, opening.place))
        half, wide = bed.place.size[axis] / 2.0, opening.place.size[axis]
        over = min(
            min(at + wide / 2.0, mine.low + half) - max(at - wide / 2.0, mine.high - half)
            for at in (hole.low, hole.high)
        )
        if over < min(SQUEEZE, wide):
            return False
    return True


def _hole(opening: Closed) -> Block:
    (x, y), (length, width, _) = (opening.place.x.best, opening.place.y.best), opening.place.size
    return Block((x - length / 2.0, y - width / 2.0, 0.0), (x + length / 2.0, y + width / 2.0, 0.0))


def _gets_out(bodies: tuple[Body, ...], bed: Bed, opening: Closed, setting: Setting) -> bool:
    """Return whether somebody gets from a bed to an opening, on foot or climbing on what is built in."""
    for climbs in (False, True):
        scene = scene_drawn(bodies, bed, opening, setting.faces, climbs)
        if reach(scene.without(()), scene.start, (scene.goal,), ROOM["pass"])[0]:
            return True
    return False


def _blocked(bodies: tuple[Body, ...], starts: tuple[Bed, ...], opening: Closed, setting: Setting) -> Freed:
    """Return what blocks an exit or leaves it tight: the fewest things that would have to go."""
    names = {body.of: body.name for body in bodies}
    aisles = ways_out(bodies, starts, (opening,), setting.faces)
    by = (names.get(of, of) for one in aisles if one.width.low < ROOM["pass"] for of in one.blocked_by)
    widest = (max((one.width.high for one in aisles if one.of == bed.of), default=0.0) for bed in starts)
    is_tight = min(widest, default=0.0) >= SQUEEZE
    return Freed(opening.of, opening.name, "tight" if is_tight else "blocked", tuple(dict.fromkeys(by)))


def _bodies(board: Board, state: State) -> tuple[Body, ...]:
    moved = []
    for i, one in enumerate(board.movers):
        if one.body is not None and (blocks := board.blocks((i, state[i]))):
            is_on_bed = one.lies_on and one.poses[state[i]].word == "night"
            over = one.lies_on if is_on_bed else one.body.carried_by
            moved.append(replace(one.body, blocks=blocks, carried_by=over))
    return (*board.setting.fixed, *moved)


def _is_down(board: Board, state: State, bed: Bed) -> bool:
    number = board.index.get(bed.of)
    if number is None:
        return any(one.of == bed.of for one in board.setting.fixed)
    one = board.movers[number]
    return state[number] == DOWN if one.kind == "fold" else one.poses[state[number]].word not in {OUTSIDE, "travel"}


class _Path(NamedTuple):
    """One way from a bed: the exit's name, how far it is (m), and how long opening it and going through it take (s)."""

    name: str
    far: float
    opened: float
    through: float


def _quickest(board: Board, state: State, beds: list[Bed]) -> tuple[tuple[_Path, ...], float]:
    """Return which way each bed takes so that the last is out soonest, and when that is, counted from who is up.

    All go to the exit at once, it is opened, and they go through one after the other, the slowest hole counted for all.
    """
    paths = [tuple(_paths(board, state, bed)) for bed in beds]
    sleepers = sum(len(bed.sleepers) for bed in beds)
    every = {(one.opened, one.through) for some in paths for one in some}
    chosen = []
    for opened in sorted({one for one, _ in every}):
        for through in sorted({one for _, one in every}):
            # among exits no slower than these the nearest is as good as any
            able = [[one for one in some if one.opened <= opened and one.through <= through] for some in paths]
            if all(able):
                ways = tuple(min(some, key=lambda one: (one.far, one.name)) for some in able)
                chosen.append((_soonest(ways, sleepers), tuple((one.far, one.name) for one in ways), ways))
    seconds, _, ways = min(chosen)
    return ways, seconds


def _soonest(ways: tuple[_Path, ...], sleepers: int) -> float:
    far = max(one.far for one in ways)
    return far / PACE + max(one.opened for one in ways) + sleepers * max(one.through for one in ways)


def _paths(board: Board, state: State, bed: Bed) -> Iterator[_Path]:
    """Yield the way from a bed by each free exit."""
    free = {one.of for one in exits_at(board, state) if one.lets_out(bed.name)}
    bodies = _bodies(board, state)
    for opening in board.setting.exits:
        far = _far(bodies, bed, opening, board.setting) if opening.of in free else None
        number = board.index.get(opening.of)
        if far is None or number is None:
            continue
        gate = next(one for one in board.setting.gates if one.of == opening.of)
        mover = board.movers[number]
        is_open = mover.poses[state[number]].word == OPEN
        kind = "through door" if gate.carries else "through window"
        yield _Path(opening.name, far, 0.0 if is_open else mover.seconds, SECONDS[kind])


def _far(bodies: tuple[Body, ...], bed: Bed, opening: Closed, setting: Setting) -> float | None:
    """Return how far (m) it is from the middle of a bed to an exit, on foot if it can be; None where no way leads."""
    for climbs in (False, True):
        path = way_drawn(scene_drawn(bodies, bed, opening, setting.faces, climbs), ROOM["pass"])
        if path:
            middle = (bed.place.x.best, bed.place.y.best)
            return sum(dist(a, b) for a, b in pairwise(path)) + dist(middle, path[0])
    return None

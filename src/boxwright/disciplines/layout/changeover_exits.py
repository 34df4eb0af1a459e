"""What is known of each exit at one moment of a change-over, from every bed that is down, else from free floor."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.changeover import ASIDE, OPEN, OUTSIDE, Freed, Setting
from boxwright.disciplines.layout.changeover_numbers import SQUEEZE
from boxwright.disciplines.layout.changeover_scene import DOWN, UP, Board, State
from boxwright.disciplines.layout.changeover_search import after_a_move
from boxwright.disciplines.layout.free_spot import free_spot
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.terraces import Bed
from boxwright.disciplines.layout.ways import gets_out, is_exit, ways_out
from boxwright.exchange import Aisle

MAY_BE = frozenset({"free", "tight", "unknown", "unmeasured"})
"""What is said of an exit by which somebody may get out."""


def exits_at(board: Board, state: State, is_explained: bool = True) -> tuple[Freed, ...]:
    """Return what is known of each exit in a state, from every bed that is down, else from where one can stand.

    Where it need not be ``is_explained``, what is not free is only said to be blocked, if it is tight as well.
    """
    key = _seen(board, state), is_explained
    if key not in board.exits:
        board.exits[key] = tuple(_either_way(board, state, is_explained))
    return board.exits[key]


def _either_way(board: Board, state: State, is_explained: bool) -> Iterator[Freed]:
    """Yield what is known of each exit: at night a leaf nobody sleeps on may be up or down, whatever was moved."""
    loose = [i for i, one in enumerate(board.movers) if one.is_loose]
    is_night = any(is_down(board, state, bed) for bed in board.setting.beds)
    if not loose or not is_night:
        yield from _exits(board, state, is_explained)
        return
    other = state
    for i in loose:
        other = after_a_move(board, other, i, UP if state[i] == DOWN else DOWN)
    names = tuple(board.movers[i].name for i in loose)
    both = (_exits(board, it, is_explained) for it in (state, other))
    for one, its in zip(*both, strict=True):
        is_same = one.word == its.word and one.not_from == its.not_from
        yield one if is_same or not {one.word, its.word} & MAY_BE else _either(one, its, names)


def _either(one: Freed, its: Freed, names: tuple[str, ...]) -> Freed:
    """Return what is known of an exit that is one or the other, as leaves are up or down."""
    if one.word == its.word:
        return replace(one, not_from=tuple(dict.fromkeys((*one.not_from, *its.not_from))))
    return Freed(one.of, one.name, "unknown", names)


def _seen(board: Board, state: State) -> State:
    """Return a state without what makes no difference to who gets out: doors that open from inside, shut or open."""
    free = {gate.of for gate in board.setting.gates if gate.release == "inside" and not gate.sweep}
    return tuple(0 if one.of in free else p for one, p in zip(board.movers, state, strict=True))


def _exits(board: Board, state: State, is_explained: bool) -> Iterator[Freed]:
    bodies, setting = bodies_at(board, state), board.setting
    down = tuple(bed for bed in setting.beds if is_down(board, state, bed))
    starts = down or floor_at(board, state)
    gates, beds = {gate.of: gate for gate in setting.gates}, frozenset(bed.of for bed in down)
    for opening in setting.exits:
        release = gates[opening.of].release if opening.of in gates else "unknown"
        number = board.index.get(opening.of)
        is_open = number is not None and board.movers[number].poses[state[number]].word == OPEN
        if is_open and release != "not in yet":
            release = "inside"
        held = next((one for one in setting.held if one.of == opening.of), None)
        lost = board.leaves.held(opening.of, enumerate(state), beds)
        if release == "not in yet":
            yield Freed(opening.of, opening.name, "perhaps")
        elif held is not None and held.word in {"fixed", "perhaps", "shut"}:
            yield held
        elif release in {"none", "key", "tool"}:
            yield Freed(opening.of, opening.name, "shut", () if release == "none" else (release,))
        elif shut := next((one for one in (held, lost) if one is not None and one.word == "blocked"), None):
            yield shut
        elif opening.of not in gates or not is_exit(opening):  # where it is or how large, nobody knows
            yield held or Freed(opening.of, opening.name, "unknown")
        elif not (able := [bed for bed in starts if gets_out(bodies, bed, opening, setting.faces)]):
            shut_up = Freed(opening.of, opening.name, "blocked")
            yield _blocked(bodies, starts, opening, setting) if is_explained else shut_up
        else:
            is_asked = release != "inside" or (opening.wall == "roof" and not _is_climbed_to(down, opening, setting))
            asked = Freed(opening.of, opening.name, "unknown" if is_asked else "free")
            found = lost or (asked if is_asked else held or asked)
            yield replace(found, not_from=tuple(bed.name for bed in starts if bed not in able))


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


def _blocked(bodies: tuple[Body, ...], starts: tuple[Bed, ...], opening: Closed, setting: Setting) -> Freed:
    """Return what blocks an exit or leaves it tight: the fewest things that would have to go."""
    names = {body.of: body.name for body in bodies}
    aisles = ways_out(bodies, starts, (opening,), setting.faces)
    narrow = (one for one in aisles if min(one.width.low, one.height.low) < ROOM["pass"])
    by = (names.get(of, of) for one in narrow for of in one.blocked_by)
    widest = {bed.name: max((_most(one) for one in aisles if one.of == bed.of), default=0.0) for bed in starts}
    shut = tuple(name for name, most in widest.items() if most < SQUEEZE)
    is_tight = len(shut) < len(widest)
    found = Freed(opening.of, opening.name, "tight" if is_tight else "blocked", tuple(dict.fromkeys(by)))
    return replace(found, not_from=shut) if is_tight else found


def _most(way: Aisle) -> float:
    """Return the lesser of the width and the headroom a way may have at most."""
    return min(way.width.high, way.height.high)


def floor_at(board: Board, state: State) -> tuple[Bed, ...]:
    """Return the free floor to begin at where no bed is down; nothing where one can stand nowhere."""
    spot = free_spot(bodies_at(board, state), board.setting.faces)
    return (replace(spot, sleepers=board.setting.people or ("somebody",)),) if spot is not None else ()


def bodies_at(board: Board, state: State) -> tuple[Body, ...]:
    """Return everything that stands inside in a state, where it stands then."""
    moved = []
    for i, one in enumerate(board.movers):
        if one.body is not None and (blocks := board.blocks((i, state[i]))):
            word = one.poses[state[i]].word
            is_on_bed = one.lies_on and word == "night"
            over = one.lies_on if is_on_bed else "" if word == ASIDE else one.body.carried_by
            moved.append(replace(one.body, blocks=blocks, carried_by=over))
    return (*board.setting.fixed, *moved)


def is_down(board: Board, state: State, bed: Bed) -> bool:
    """Return whether one can lie on a bed in a state."""
    number = board.index.get(bed.of)
    if number is None:
        return any(one.of == bed.of for one in board.setting.fixed)
    one = board.movers[number]
    return state[number] == DOWN if one.kind == "fold" else one.poses[state[number]].word not in {OUTSIDE, "travel"}

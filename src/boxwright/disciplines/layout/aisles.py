"""How wide the floor is to walk: at work from one way in to another, at night from each bed to a way in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import beside_both, reach, widest
from boxwright.disciplines.layout.people import Fit
from boxwright.disciplines.layout.terraces import UPRIGHT, Bed, Scene, is_placed, levels_of
from boxwright.disciplines.layout.ways import at_one_end, ends_of, is_room, scene_drawn
from boxwright.model.place import Surfaces
from boxwright.units import Band, exactly


def aisle_fits(
    bodies: tuple[Body, ...], beds: tuple[Bed, ...], openings: tuple[Closed, ...], room: Surfaces
) -> Iterator[Fit]:
    """Yield how wide each aisle is on foot, up to the width that is wanted; ``under`` is what makes it narrower.

    At night the widest aisle of a bed counts, for one way in is enough; whether it lets anybody out is not asked here.
    """
    if not is_room(room):
        return
    # what hangs in a cabinet or rides on a bed stands in no aisle of its own
    on_foot = tuple(one for one in bodies if not one.is_inside)
    doors = [one for one in openings if is_walked_through(one, room)]
    for bed in beds:
        if is_placed(bed.place) and doors:
            found = [_in_doubt(on_foot, bed, door, room, ROOM["aisle at night"]) for door in doors]
            yield max(found, key=lambda one: (one.has.best, one.has.low))
    if not beds:
        for first, second in combinations(doors, 2):
            yield _in_doubt(on_foot, first, second, room, ROOM["aisle at work"])


def _in_doubt(bodies: tuple[Body, ...], first: Bed | Closed, to: Closed, room: Surfaces, wanted: float) -> Fit:
    """Return an aisle as everything is written and, where that is wide enough, as narrow as its doubt may make it.

    ``under`` is then what may make it narrower.
    """
    likely = _aisle(bodies, first, to, room, wanted)
    if likely.has.best < likely.wants.best:
        return likely
    worst = at_one_end(bodies, 1.0)
    starts = [replace(first, place=place) for place in ends_of(first.place)]
    ends = [replace(to, place=place) for place in ends_of(to.place)]
    if worst == bodies and len(starts) == len(ends) == 1:
        return likely
    found = (_aisle(worst, start, end, room, wanted) for start in starts for end in ends)
    least = min(found, key=lambda one: one.has.best)
    low = min(least.has.best, likely.has.best)
    return replace(likely, has=Band(likely.has.best, low, likely.has.best, spread="interval"), under=least.under)


def _aisle(bodies: tuple[Body, ...], first: Bed | Closed, to: Closed, room: Surfaces, wanted: float) -> Fit:
    scene = scene_drawn(bodies, first, to, room, False)
    wants = min(wanted, scene.most)
    if _passes(scene, (), wants):
        return Fit(to.of, first.name, "aisle", to.of, to.name, exactly(wants), exactly(wants))
    has = widest(scene.without(()), scene.start, (scene.goal,), wants)[0]
    between = beside_both(scene.things, scene.walls, scene.start, scene.goal, wants)
    alone = (of for of in between if _passes(scene, (of,), wants))
    return Fit(to.of, first.name, "aisle", to.of, to.name, exactly(has), exactly(wants), next(alone, ""))


def _passes(scene: Scene, gone: tuple[str, ...], width: float) -> bool:
    return reach(scene.without(gone), scene.start, (scene.goal,), width)[0]


def is_walked_through(one: Closed, room: Surfaces) -> bool:
    """Return whether one walks through an opening: from the floor up, high enough and wide enough to step through."""
    if one.wall not in UPRIGHT or not is_placed(one.place):
        return False
    low, high = levels_of(one)
    return low <= room.floor + ROOM["step over"] and high - low >= ROOM["stoop"]

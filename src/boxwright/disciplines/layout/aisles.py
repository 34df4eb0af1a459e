"""How wide the floor is to walk: at work from one way in to another, at night from each bed to a way in."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import beside_both, reach, widest
from boxwright.disciplines.layout.people import Fit
from boxwright.disciplines.layout.terraces import UPRIGHT, Bed, Scene, is_placed, levels_of
from boxwright.disciplines.layout.ways import is_room, scene_drawn
from boxwright.model.place import Surfaces
from boxwright.units import exactly


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
            found = [_aisle(on_foot, bed, door, room, ROOM["aisle at night"]) for door in doors]
            yield max(found, key=lambda one: one.has.best)
    if not beds:
        for first, second in combinations(doors, 2):
            yield _aisle(on_foot, first, second, room, ROOM["aisle at work"])


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

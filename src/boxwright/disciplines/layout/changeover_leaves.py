"""What the leaf of an opening leaves of its hole at one moment of a change-over, by what is in its way just then."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from math import inf
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.changeover import ASIDE, Freed, Hung, Setting
from boxwright.disciplines.layout.changeover_numbers import SQUEEZE
from boxwright.disciplines.layout.held_leaves import reach_between
from boxwright.disciplines.layout.hole_left import covered, left_of
from boxwright.disciplines.layout.opened_holes import opened_hole
from boxwright.disciplines.layout.pockets import hits_let_in
from boxwright.disciplines.layout.stopping import is_within, seen_outdoors
from boxwright.disciplines.layout.sweeps import QUARTER, met
from boxwright.disciplines.layout.sweeps import Mover as Sweep
from boxwright.exchange import Vector

Pose = tuple[int, int]
"""A mover and one of its poses, by index; what stands still has no mover and counts on from -1 downwards."""


class _Hit(NamedTuple):
    """What stops a leaf: its name, how far the leaf gets at least and at most (rad, m), and whether it turns.

    What is not sure to stop it lets it go on for ever.
    """

    name: str
    least: float
    most: float
    turns: bool


class Leaves:
    """The leaves of a setting; what each meets of each pose of a thing is looked at once."""

    def __init__(self, setting: Setting) -> None:
        """Put every thing in every pose as it is written, less the doubt it was grown by."""
        self._setting = setting
        self._hung = {one.opening.of: one for one in setting.hung}
        self._bodies: dict[Pose, Body] = {
            (-1 - k, 0): _as_written(one, one.blocks, setting.doubt) for k, one in enumerate(setting.fixed)
        }
        for i, one in enumerate(setting.movers):
            for p, pose in enumerate(one.poses):
                if one.body is not None and pose.blocks:
                    over = "" if pose.word == ASIDE else one.body.carried_by
                    body = replace(one.body, carried_by=over)
                    self._bodies[i, p] = _as_written(body, pose.blocks, setting.doubt, pose.either)
        self._fixed = tuple(pose for pose in self._bodies if pose[0] < 0)
        self._met: dict[tuple[str, Pose], tuple[_Hit, ...]] = {}

    def hole(self, of: str, low: Vector, high: Vector, poses: Iterable[Pose]) -> tuple[Vector, Vector]:
        """Return what is left of a hole with everything in some poses; what may be in the way is."""
        hung = self._hung.get(of)
        reached = min((self._far(hit) for hit in self._hits(hung, poses)), default=inf) if hung is not None else inf
        is_held = hung is not None and reached < inf
        return (
            opened_hole(hung.opening, (reached,), self._setting.hopes) if hung is not None and is_held else (low, high)
        )

    def stopper(self, of: str) -> str:
        """Return the name of what of the shell, or of what stands still, stops a leaf first; empty for nothing."""
        hung = self._hung.get(of)
        hits = [hit for hit in self._hits(hung, ()) if self._far(hit) < inf] if hung is not None else []
        return min(hits, key=self._far).name if hits else ""

    def meets_opening(self, of: str, blocks: tuple[Block, ...]) -> bool | None:
        """Return whether boxes are in the way of a leaf that opens inwards as far as a right angle; None unknown."""
        hung = self._hung.get(of)
        leaves = [leaf for leaf in hung.leaves if not leaf.outside and leaf.turns] if hung is not None else []
        if not leaves:
            return None
        return any(leaf.meets(block) < QUARTER for leaf in leaves for block in blocks)

    def _far(self, hit: _Hit) -> float:
        """Return how far a leaf gets before something, at least or, where the setting hopes, at most."""
        return hit.most if self._setting.hopes else hit.least

    def narrows(self, of: str, others: Iterable[Pose], poses: Iterable[Pose]) -> list[Pose]:
        """Return those of some poses that stop a leaf sooner than the others do."""
        hung = self._hung.get(of)
        if hung is None:
            return []
        reached = min((self._far(hit) for hit in self._hits(hung, others)), default=inf)
        return [pose for pose in poses if any(self._far(hit) < reached for hit in self._of_pose(hung, pose))]

    def held(self, of: str, poses: Iterable[Pose], beds: frozenset[str]) -> Freed | None:
        """Return an exit whose leaf lets nobody, or perhaps nobody, through as things stand; None where it does.

        Whoever leaves by a hatch stands on a bed: what lies on one of ``beds``, and the bed, is no matter there.
        """
        hung = self._hung.get(of)
        if hung is None:
            return None
        poses = tuple(poses)
        found = list(self._lost(hung, poses))
        there = [self._bodies[pose] for pose in (*self._fixed, *poses) if pose in self._bodies]
        there = [one for one in there if not {one.of, one.carried_by} & beds]
        opening, setting = hung.opening, self._setting
        before = covered(opening.wall, opening.place, there, setting.faces, setting.reach)
        if before is not None:
            found.append((before[0].name, before[1].low, before[1].high))
        if not found:
            return None
        name, least, most = min(found, key=lambda one: (one[2] >= SQUEEZE, one[1]))
        if most < SQUEEZE:
            return Freed(opening.of, opening.name, "blocked", (name,))
        return Freed(opening.of, opening.name, "unknown", (name,)) if least < ROOM["pass"] else None

    def _lost(self, hung: Hung, poses: Iterable[Pose]) -> Iterator[tuple[str, float, float]]:
        """Yield what stops a leaf, and the least and the most (m) it then leaves of its span."""
        span = hung.span
        if span is None:
            return
        for hit in self._hits(hung, poses):
            least, _ = left_of(hit.least, hit.turns, True, span, hung.is_pair, hung.is_over)
            _, most = left_of(hit.most, hit.turns, hit.most < inf, span, hung.is_pair, hung.is_over)
            yield hit.name, least, most

    def _hits(self, hung: Hung, poses: Iterable[Pose]) -> Iterator[_Hit]:
        turns = any(leaf.turns for leaf in hung.leaves)
        for name, reached, is_sure in hung.stops:
            yield _Hit(name, reached, reached if is_sure else inf, turns)
        for pose in (*self._fixed, *poses):
            yield from self._of_pose(hung, pose)

    def _of_pose(self, hung: Hung, pose: Pose) -> tuple[_Hit, ...]:
        key = hung.opening.of, pose
        if key not in self._met:
            self._met[key] = tuple(self._struck(hung, self._bodies[pose])) if pose in self._bodies else ()
        return self._met[key]

    def _before(self, leaf: Sweep, body: Body) -> Iterator[Body]:
        """Yield a thing as a leaf may meet it: outside, what is not within, or perhaps stands out past a wall."""
        faces, around = self._setting.faces, self._setting.around
        if not leaf.outside or not is_within(body, faces):
            yield body
        elif around is not None:
            yield from (one for one, where in seen_outdoors((body,), faces, around.outer, {}) if where)

    def _struck(self, hung: Hung, body: Body) -> Iterator[_Hit]:
        for leaf in hung.leaves:
            for one in self._before(leaf, body):
                found = met(leaf, one)
                if found is not None and found[1] != "grazes":
                    is_sure = found[1] == "sure" and one.stands == "yes" and not leaf.is_usual
                    yield _Hit(one.name, *reach_between(leaf, one, is_sure), leaf.turns)
        if self._setting.around is not None:  # what is let into a wall stands where a leaf may slide in it
            for at, _, sure in hits_let_in(hung.opening, self._setting.around._replace(bodies=(body,))):
                yield _Hit(body.name, at, at if sure == "sure" else inf, False)


def _as_written(
    body: Body, blocks: tuple[Block, ...], doubt: float, either: tuple[tuple[Block, ...], ...] = ()
) -> Body:
    """Return a thing in a pose without what its doubt was added to its boxes."""
    x, y, z = (doubt * extent for extent in body.doubt)

    def pared(some: tuple[Block, ...]) -> tuple[Block, ...]:
        if not (x or y or z):
            return some
        return tuple(
            Block((one.low[0] + x, one.low[1] + y, one.low[2]), (one.high[0] - x, one.high[1] - y, one.high[2] - z))
            for one in some
        )

    return replace(body, blocks=pared(blocks), either=tuple(map(pared, either)))

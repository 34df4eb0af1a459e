"""What hides from a camera or a lamp what it is to see: things before it, seen from above at its own height."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import atan2, isfinite, pi

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.meeting import TOUCH, grown
from boxwright.disciplines.layout.parts import Fitted, Sees
from boxwright.disciplines.layout.result import Hidden
from boxwright.disciplines.layout.sourced import LENGTHS, SHARES
from boxwright.disciplines.layout.sweeps import WALLS
from boxwright.exchange import Vector

Eye = tuple[Vector, int, float]
"""Where something looks from (m), along which axis, and which way."""
Span = tuple[float, float]
STRAIGHT = 1e-6
"""Half the angle (rad) of something nobody wrote how wide it sees: it looks straight ahead."""


def is_blind(one: Fitted) -> bool:
    """Return whether something is written to see, and not which way."""
    sees = one.facet.sees if one.facet is not None else None
    return sees is not None and sees.toward not in WALLS


def eye_of(one: Fitted, body: Body) -> Eye | None:
    """Return the middle of the face something looks out of; None where it sees nothing, or nobody knows from where."""
    sees = one.facet.sees if one.facet is not None else None
    if sees is None or sees.toward not in WALLS or not body.blocks:
        return None
    low, high = body.around
    axis, way = WALLS[sees.toward]
    at = [(low[n] + high[n]) / 2.0 for n in range(3)]
    at[axis] = high[axis] if way > 0.0 else low[axis]
    return (at[0], at[1], at[2]), axis, way


def hidden_from(
    fitted: Iterable[Fitted],
    standing: dict[str, Body],
    bodies: Iterable[Body],
    lines: dict[str, frozenset[str]],
    outer: Block,
) -> Iterator[Hidden]:
    """Yield what hides more than a little of what something looks at from outside the shell.

    What carries it, or it carries, hides nothing. From within it looks at the room: that is no matter as one drives.
    """
    bodies = tuple(bodies)
    for one in fitted:
        eye = eye_of(one, standing[one.of])
        sees = one.facet.sees if one.facet is not None else None
        if eye is None or sees is None or _is_within(eye, outer):
            continue
        own = {one.of, *lines.get(one.of, frozenset())}
        others = [body for body in bodies if body.of not in own and one.of not in lines.get(body.of, frozenset())]
        found = _hidden(one, eye, _half(sees), others)
        if found is not None:
            yield found


def _half(sees: Sees) -> float:
    """Return half the angle something sees (rad), at most a right angle to each side."""
    angle = sees.angle
    if angle is None or not angle.known or not isfinite(angle.best):
        return STRAIGHT
    return min(max(angle.best / 2.0, STRAIGHT), pi / 2.0)


def _hidden(one: Fitted, eye: Eye, half: float, others: list[Body]) -> Hidden | None:
    sure, most, by = list[Span](), list[Span](), list[Body]()
    for body in others:
        spans = [span for block in body.blocks if (span := _span(eye, block, half)) is not None]
        grown_by = [grown(block, body.doubt) for block in body.blocks]
        more = [span for block in grown_by if (span := _span(eye, block, half)) is not None]
        if body.is_sure and body.stands == "yes":
            sure += spans
        most += more
        by += [body] if more else []
    shares = [_joined(spans) / (2.0 * half) for spans in (sure, most)]
    if shares[1] <= SHARES["hidden"]:
        return None
    names, toward = tuple(body.name for body in by), one.facet.sees.toward if one.facet and one.facet.sees else ""
    return Hidden(one.of, one.name, toward, shares[0], shares[1], tuple(body.of for body in by), names)


def _span(eye: Eye, block: Block, half: float) -> Span | None:
    """Return between which angles (rad) a box is seen from above, None where it is not seen at this height."""
    at, axis, way = eye
    across = 1 - axis
    if not block.low[2] + TOUCH < at[2] < block.high[2] - TOUCH:
        return None
    ahead = sorted(way * (block[end][axis] - at[axis]) for end in (0, 1))
    if ahead[1] <= TOUCH:
        return None
    near, far = max(ahead[0], TOUCH), ahead[1]
    sides = (block.low[across] - at[across], block.high[across] - at[across])
    angles = [atan2(side, deep) for side in sides for deep in (near, far)]
    low, high = max(min(angles), -half), min(max(angles), half)
    return (low, high) if low < high else None


def _joined(spans: list[Span]) -> float:
    """Return how much some angles cover together (rad)."""
    covered, end = 0.0, -pi
    for low, high in sorted(spans):
        covered += max(high - max(low, end), 0.0)
        end = max(end, high)
    return covered


def _is_within(eye: Eye, outer: Block) -> bool:
    at, axis, _ = eye
    play = LENGTHS["play"]
    return all(
        outer.low[n] + (play if n == axis else 0.0) < at[n] < outer.high[n] - (play if n == axis else 0.0)
        for n in range(3)
    )

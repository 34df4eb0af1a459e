"""Which parts lie so far outside the trailer that a figure must be mistyped, and which are set down out there."""

from __future__ import annotations

from boxwright.disciplines.safety.parts import Facet
from boxwright.disciplines.safety.sourced import word_means
from boxwright.model.load import LoadState
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Trailer
from boxwright.rig.rig import Item
from boxwright.rig.validate import Mistake

FAR_OUT = 1.0
"""How far beyond the trailer's own outline (m) a part may stick out before its place is doubted."""
SET_DOWN = 30.0
"""How far from the trailer's outline (m) a thing that is set down outside may stand; common practice, no source."""
SLACK = 1e-6
"""What lies over the floor by no more (m) does not: the numbers were rounded."""
DECK = 0.0
"""Height of the deck's top (m), from which every height is taken."""

HIGHEST_DECK = 1.0
"""How high the deck is at the most over the ground (m) where nobody wrote it; common practice, no source."""

Limits = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]


def check_far_out(
    parts: tuple[Item, ...], trailer: Trailer, loads: tuple[LoadState, ...], mistakes: list[Mistake]
) -> None:
    """Say which parts lie so far outside the trailer that a figure must be mistyped, and how else it is written."""
    limits = _limits(trailer)
    for part in parts:
        for key in _beyond(part, limits, loads):
            says = f"{part.name} would lie outside the trailer by more than a metre; is {key} mistyped?"
            if _is_set_down(part, loads) and key != "z":
                says = f"{part.name} would stand over {SET_DOWN:.0f} m from the trailer; is {key} mistyped?"
            elif _is_generator(part):
                says = (
                    f"{part.name} would ride outside the trailer by more than a metre; write {key} as where it rides,"
                    f" and when_sleeping: {{{key}: ..}} as where it runs"
                )
            elif part.words.kind == "cargo":
                says += f" If it is set down out there at night, write when_sleeping: {{{key}: ..}}"
            mistakes.append(Mistake(f"{part.of}.{key}", says))


def check_on_the_floor(parts: tuple[Item, ...], surfaces: Surfaces, nose: float, mistakes: list[Mistake]) -> None:
    """Say which parts are written to stand on the floor where none of it is: before, behind or beside the body.

    ``nose`` is how far (m) the floor goes on ahead of the front wall at the most. What lies over the wall in part is
    layout's to tell; what hangs or rides outside has another z.
    """
    along, across = (surfaces.studs_front - nose, surfaces.studs_rear), (surfaces.studs_left, surfaces.studs_right)
    for part in parts:
        words = part.words
        if words.z.strip().lower() not in ("floor", "deck") or words.rides_on or words.inside or words.zone:
            continue
        for axis, (key, (low, high)) in enumerate((("x", along), ("side", across))):
            middle, half = (part.place.x, part.place.y)[axis], part.place.size[axis] / 2.0
            if not middle.known or not (middle.high + half <= low + SLACK or middle.low - half >= high - SLACK):
                continue
            says = f"{part.name} is to stand on the {words.z.strip()}, and none of it is there; write {key} as a place"
            mistakes.append(Mistake(f"{part.of}.{key}", f"{says} in the body, or z as where it hangs outside"))


def far_outside(part: Item, trailer: Trailer, loads: tuple[LoadState, ...]) -> dict[str, float]:
    """Return how far (m) a part lies beyond a metre outside the trailer, by the key of its place; empty if it does not.

    What is not known is not outside.
    """
    return _beyond(part, _limits(trailer), loads)


def ends_of_trailer(trailer: Trailer) -> tuple[float, float]:
    """Return the trailer's coupler and its rear end along x (m), as far as they are known."""
    body, outside = trailer.body.length, trailer.outside
    if trailer.coupler_x is None or body is None or not (trailer.coupler_x.known and body.known):
        return float("-inf"), float("inf")
    front, rear = trailer.coupler_x.best, body.best
    if outside.length_overall is not None and outside.length_overall.known:
        rear = max(rear, front + outside.length_overall.best)
    return front, rear


def _limits(trailer: Trailer) -> Limits:
    """Return how far along each axis a part may lie (m): a metre outside the trailer or under the ground, no end
    where the trailer's own size is unknown."""
    front, rear = ends_of_trailer(trailer)
    width, height = trailer.outside.over_fenders or trailer.outside.width, trailer.outside.height
    side = (width.best / 2.0 if width is not None and width.known else float("inf")) + FAR_OUT
    top = (height.best if height is not None and height.known else float("inf")) + FAR_OUT
    deck = trailer.deck_height
    under = (max(deck.best, deck.high) if deck is not None and deck.known else HIGHEST_DECK) + FAR_OUT
    return (front - FAR_OUT, rear + FAR_OUT), (-side, side), (-under, top)


def _beyond(part: Item, limits: Limits, loads: tuple[LoadState, ...]) -> dict[str, float]:
    place, found = part.place, dict[str, float]()
    for key, middle, (low, high) in zip(("x", "side", "z"), (place.x, place.y, place.z), limits, strict=True):
        if middle.known and not low <= middle.best <= high:
            found[key] = max(low - middle.best, middle.best - high)
    is_near = all(far <= SET_DOWN - FAR_OUT for far in found.values())
    return {} if found and "z" not in found and is_near and _is_set_down(part, loads) else found


def _is_set_down(part: Item, loads: tuple[LoadState, ...]) -> bool:
    """Return whether a part may stand out there: a generator, or what starts under the deck, and is never towed."""
    is_towed = part.words.kind != "cargo" or not loads
    if is_towed or any("tow" in load.uses and load.carries(part.name) for load in loads):
        return False
    z = part.place.z
    return _is_generator(part) or (z.known and z.best - part.place.size[2] / 2.0 < DECK)


def _is_generator(part: Item) -> bool:
    facet = part.facet("safety")
    said = facet.generator if isinstance(facet, Facet) else ""
    return said == "yes" or (said == "" and word_means(part.name) == "generator")

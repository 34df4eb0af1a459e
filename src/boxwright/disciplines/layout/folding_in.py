"""What lies on a bed that folds up: whether it fits between the leaf and its wall, by its own size."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from math import inf

from boxwright.disciplines.layout.bodies import Pose, place_in
from boxwright.disciplines.layout.lying import is_named_bedding
from boxwright.disciplines.layout.meeting import TOUCH
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.result import Certainty, Crammed
from boxwright.disciplines.layout.sourced import LENGTHS, SHARES


def crammed(one: Fitted, leaf: Fitted) -> Crammed | None:
    """Return a thing that is thicker than what its leaf leaves behind it when that is up; None where it fits.

    It stands up off the leaf by its own height, and by what it lies on there. Bedding is pressed together, so that it
    is only asked about. Where nobody wrote how far the leaf stands out, nobody knows what fits.
    """
    if not (one.is_sized and leaf.is_sized):
        return None
    top = one.place.z.best + one.place.size[2] / 2.0 - (leaf.place.z.best + leaf.place.size[2] / 2.0)
    high = max(one.place.size[2], top) if one.place.z.known and leaf.place.z.known else one.place.size[2]
    return _behind(leaf, one.of, one.name, high, is_named_bedding(one.name))


def mattress_crammed(leaf: Fitted) -> Crammed | None:
    """Return the mattress of a leaf where that is thicker, pressed, than what is left behind the leaf when it is up."""
    mattress = leaf.facet.mattress if leaf.facet is not None else None
    if mattress is None or leaf.folded is None or not leaf.is_sized:
        return None
    return _behind(leaf, leaf.of, "its mattress", mattress[2], True)


def _behind(leaf: Fitted, of: str, name: str, high: float, is_bedding: bool) -> Crammed | None:
    """Return what stands ``high`` (m) off a leaf and has no room behind it; None where it fits."""
    depth, thick = leaf.folded_depth, leaf.place.size[2]
    is_known = depth is not None and depth.known
    least, most = (depth.low - thick, depth.high - thick) if depth is not None and is_known else (0.0, inf)
    sure: Certainty = "sure" if high > most + LENGTHS["play"] + TOUCH else "perhaps"
    play = LENGTHS["play"]
    if is_bedding:  # it gives: that is counted already
        high, play, sure = high * SHARES["pressed"], 0.0, "perhaps"
    if high <= least + play + TOUCH:
        return None
    return Crammed(of, name, leaf.of, leaf.name, high, max(least, 0.0), sure, is_known)


def leaf_under(one: Fitted, known: Mapping[str, Fitted]) -> Fitted | None:
    """Return the leaf a thing goes up and down with, None where it lies on none."""
    seen, here = set[str](), one
    while here.of not in seen and here.folded is not None:
        seen.add(here.of)
        over = known.get(here.rides_on or here.inside)
        if over is None or over.folds:
            return over if over is not None and over.folded is not None else None
        here = over
    return None


def every_crammed(fitted: Iterable[Fitted], pose: Pose) -> Iterator[Crammed]:
    """Yield what does not fit behind the leaf it lies on, where that is up; of what is inside another that other."""
    known = {one.of: one for one in fitted}
    for one in known.values():
        if one.folds and one.folded is not None and place_in(one, pose) is one.folded:
            found = mattress_crammed(one)
            if found is not None:
                yield found
        leaf = leaf_under(one, known) if one.rides_on and not one.folds else None
        if leaf is None or any(its.folded is None or place_in(its, pose) is not its.folded for its in (one, leaf)):
            continue
        found = crammed(one, leaf)
        if found is not None:
            yield found

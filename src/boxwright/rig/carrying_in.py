"""What of a plan is still to be carried in whole, with the openings that are there by then."""

from __future__ import annotations

from dataclasses import dataclass, field

from boxwright.disciplines.frame.parts import ToCarryIn
from boxwright.exchange import Vector
from boxwright.model.stage import Marks, stands
from boxwright.rig.rig import Item

Ways = tuple[tuple[str, ...], ...]


@dataclass(slots=True)
class Carried:
    """Remembers what each part came to, so that an edit elsewhere looks at no part again."""

    _given: tuple[Vector | None, Ways] = (None, ())
    _known: dict[str, tuple[Item, ToCarryIn | None]] = field(default_factory=dict)

    def __call__(
        self, parts: tuple[Item, ...], openings: tuple[Item, ...], inside: Vector | None, last_stage: int
    ) -> tuple[ToCarryIn, ...]:
        """Return what is still to be carried in; ``inside`` is how large the box is (m)."""
        given = inside, tuple(_ways_in(stage, openings) for stage in range(last_stage + 1))
        if given != self._given:
            self._given, self._known = given, {}
        found: list[ToCarryIn] = []
        for item in parts:
            had = self._known.get(item.of)
            if had is None or had[0] is not item:
                had = self._known[item.of] = item, _carried(item, *given)
            if had[1] is not None:
                found.append(had[1])
        return tuple(found)


def ever_stands(marks: Marks, last_stage: int) -> bool:
    """Return whether a thing is there at any stage of the plan; one that is unplanned never is."""
    return any(stands(marks, stage, False) != "no" for stage in range(last_stage + 1))


def _carried(item: Item, inside: Vector | None, ways: Ways) -> ToCarryIn | None:
    if not _comes_in(item, inside) or not ever_stands(item.marks, len(ways) - 1):
        return None
    return ToCarryIn(item.of, item.name, item.place.size, ways[item.marks.stage or 0])


def _comes_in(item: Item, inside: Vector | None) -> bool:
    """Return whether a part is still to be carried in whole: a thing of its own that will stand inside the box."""
    words, place = item.words, item.place
    tick, is_planned = item.marks.done.tick, item.marks.stage is not None and words.kind != "cargo"
    if not (tick == "no" or (tick == "unmarked" and is_planned)):
        return False
    if item.is_in_empty_weight or words.inside or words.kind in ("spread", "backing"):
        return False
    if inside is None or not (place.x.known and place.y.known and place.z.known):
        return False
    return 0.0 < place.x.best < inside[0] and abs(place.y.best) < inside[1] / 2.0 and 0.0 < place.z.best < inside[2]


def _ways_in(stage: int, openings: tuple[Item, ...]) -> tuple[str, ...]:
    """Return the openings that are there by plan when what goes in at a stage is carried in."""
    return tuple(one.of for one in openings if stands(one.marks, stage, False) == "yes")

"""The bare trailer's own mass: as written, or what a ticket said of it when it was still (nearly) empty.

Its place along the trailer is never written by anybody. It follows from what the ball carried: the centre of gravity
is where that tongue weight puts it.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from math import isfinite, sqrt

from boxwright.exchange import Box, Mass, Measured
from boxwright.model.part import Frame
from boxwright.model.place import Place
from boxwright.model.trailer import Empty
from boxwright.records import dataclass
from boxwright.rig.rig import Item, Rig
from boxwright.units import COVERAGE, Band, exactly

OF = "trailer.empty"
SIDE_SHARE = 1.0 / 50.0
"""How far the bare trailer's middle may be off its centreline, of its width (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Giver:
    """Who says what the bare trailer weighs: its path, weight and tongue weight (kg), and where it was then.

    ``stage`` is None where the rig file says it of the bare trailer itself, with nothing else in it.
    """

    of: str
    weight: Band
    tongue: Band | None
    stage: int | None = None
    load: str = ""


def giver_of(rig: Rig) -> Giver | None:
    """Return who gives the bare trailer's weight: the file, else the newest ticket of the earliest stage with one."""
    written = rig.trailer.empty
    if written.weight is not None and written.weight.known:
        return Giver(OF, written.weight, written.tongue if written.tongue and written.tongue.known else None)
    tickets: list[tuple[int, Measured]] = []
    for reading in rig.measured:
        stage = rig.stage_number(reading.stage)
        if reading.what == "total" and stage is not None and reading.value.known:
            tickets.append((stage, reading))
    if not tickets:
        return None
    earliest = min(stage for stage, _ in tickets)
    newest = max((one for stage, one in tickets if stage == earliest), key=lambda one: one.on or date.min)
    tongue = next((one.value for one in rig.measured if one.of == newest.of and one.what == "tongue"), None)
    return Giver(newest.of, newest.value, tongue if tongue and tongue.known else None, earliest, newest.load)


def own_frame(empty: Empty, giver: Giver | None, box: Box, others: tuple[Mass, ...]) -> Frame:
    """Return the bare trailer as a mass. ``others`` are the masses that stood on the scale with it.

    Their doubts are not added: what is taken off here is put back wherever they still stand, and cancels. Something
    of unknown weight that stood on the scale stays in the trailer's own mass, and stays listed as unknown itself.
    The trailer is taken as level on the scale.
    """
    if giver is None:
        return _frame(Band(0.0, 0.0, float("inf"), known=False), _somewhere(box), empty, box)
    known = [mass for mass in others if mass.kg.known]
    weight = _less(giver.weight, sum(mass.kg.best for mass in known))
    if weight.best <= 0.0:
        return _frame(Band(0.0, 0.0, float("inf"), known=False), _somewhere(box), empty, box)
    group = _group_x(box)
    if giver.tongue is None or group is None:
        return _frame(weight, _somewhere(box), empty, box)
    lever = group - box.coupler_x.best
    tongue = _less(giver.tongue, sum(mass.kg.best * (group - mass.x.best) / lever for mass in known))
    return _frame(weight, _x_by_tongue(weight, tongue, group, lever), empty, box)


def _less(reading: Band, kg: float) -> Band:
    return replace(reading, best=reading.best - kg, low=reading.low - kg, high=reading.high - kg)


def _group_x(box: Box) -> float | None:
    """Return where the axles act together (m); None where they or the coupler are not placed."""
    places = [axle.x for axle in box.axles]
    if not places or not all(place.known for place in (*places, box.coupler_x)):
        return None
    group = sum(place.best for place in places) / len(places)
    return group if group > box.coupler_x.best else None


def _x_by_tongue(weight: Band, tongue: Band, group: float, lever: float) -> Band:
    """Return where the centre must be for the ball to carry its reading, as uncertain as that reading makes it.

    The doubt of the place is what is left of the tongue's once the weight's part of it is taken off, so that weight
    and place together give the tongue weight back with the doubt it was read with.
    """
    share = tongue.best / weight.best
    middle = group - lever * share
    left = tongue.standard_uncertainty**2 - (share * weight.standard_uncertainty) ** 2
    half_width = COVERAGE * lever / weight.best * sqrt(max(0.0, left))
    if half_width == 0.0:
        return exactly(middle)
    return Band(middle, middle - half_width, middle + half_width, spread="sigma", assumed=tongue.assumed)


def _somewhere(box: Box) -> Band:
    """Return anywhere between the coupler and the rear end: nobody has read what the ball carries."""
    front = box.coupler_x.best if box.coupler_x.known else box.front_x
    middle = (front + box.rear_x) / 2.0
    if not isfinite(middle):
        return Band(0.0, float("-inf"), float("inf"), known=False)
    return Band(middle, front, box.rear_x, known=False, spread="interval")


def _frame(weight: Band, x: Band, empty: Empty, box: Box) -> Frame:
    place = Place(x, _side(box), _height(empty, box), box.outside)
    return Frame("trailer, empty", OF, place, weight, None, "", "", "yes")


def _side(box: Box) -> Band:
    half = box.outside[1] * SIDE_SHARE
    return Band(0.0, -half, half, spread="interval", assumed=True) if half > 0.0 else exactly(0.0)


def _height(empty: Empty, box: Box) -> Band:
    """Return the height of the centre above the deck: as written, else between the wheels and half the box."""
    if empty.cg_z is not None and empty.cg_z.known:
        return empty.cg_z
    low = -box.deck_height.best / 2.0 if box.deck_height.known else 0.0
    high = box.inside[2] / 2.0
    return Band((low + high) / 2.0, low, high, spread="interval", assumed=True)


def readings_for(rig: Rig, giver: Giver | None, stage: int, load: str) -> tuple[Measured, ...]:
    """Return the readings taken at a stage in a load state, without the one the bare trailer's weight came from."""
    return tuple(
        reading
        for reading in rig.measured
        if reading.what != "part"
        and (giver is None or reading.of != giver.of)
        and rig.stage_number(reading.stage) == stage
        and reading.load == load
    )


def weighed_parts(rig: Rig) -> tuple[Measured, ...]:
    """Return the readings of single parts, which hold in every slot, without those that gave the part its weight."""
    readings = tuple(reading for reading in rig.measured if reading.what == "part")
    names = {reading.part for reading in readings}
    written = {item.name for item in rig.parts if item.name in names and _is_written(item)}
    return tuple(reading for reading in readings if reading.part in written)


def _is_written(item: Item) -> bool:
    """Return whether a part's own line says what it weighs, as planned or as built; an unknown says nothing."""
    words, built = item.words, dict(item.words.as_built).get("weight", "")
    is_known = (words.weight is not None and words.weight.value.known) or (words.each is not None and words.each.known)
    return is_known or str(built).strip() not in {"", "unknown"}


def weighed_slots(rig: Rig, giver: Giver | None) -> tuple[tuple[int, str], ...]:
    """Return the stages and load states somebody weighed, other than the bare trailer's own ticket."""
    found: dict[tuple[int, str], None] = {}
    for reading in rig.measured:
        stage = rig.stage_number(reading.stage)
        if reading.what != "part" and stage is not None and (giver is None or reading.of != giver.of):
            found[stage, reading.load] = None
    return tuple(found)

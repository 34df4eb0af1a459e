"""One arrangement for every load state of a stage: each part stands in one place, whatever else comes and goes.

Each limit of each load state is a row: how far it is kept, or what is still needed. A part is one displacement, with
its own weight in each row, as much room as it has, and the least weight times distance in all. Room that two parts
share is taken into account where they would meet. Nothing here is proved: the study of every slot does that.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from math import isfinite
from typing import Literal, NamedTuple

from boxwright.disciplines.towing.findings.plates import rated_on_wheels
from boxwright.disciplines.towing.result import Result as Towed
from boxwright.disciplines.towing.sourced import INCH_COUNTRIES, SHARES
from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.geometry import Loads, loads_of, measures_of
from boxwright.disciplines.weight.linear import Coefficients
from boxwright.disciplines.weight.result import Output, Result
from boxwright.disciplines.weight.sourced import LIMITS
from boxwright.study.bench import AXES, Bench
from boxwright.study.lever import Lever, Pull
from boxwright.study.moves import Candidate, Edit, Movable
from boxwright.study.packing import least_effort
from boxwright.study.remedy_words import moving
from boxwright.study.rewritten import STEPS, rounded_shift
from boxwright.study.slots import Slot
from boxwright.units import Band

A_LITTLE_MORE = 1.1
"""How much farther is gone where rounded moves fall a little short."""
MOST_ROUNDS = 20
"""How often parts that would meet are told so before it is given up."""
SMALL_MOVE = 1e-6
"""A shorter way (m) than this is none."""
SPARE = 1e-9
"""A row short by less than this is met: the solver's own last digits."""


class Row(NamedTuple):
    """One limit of one load state: what a kilogram metre along each axis gives to it, and how much is needed.

    A need below zero is what may be lost.
    """

    load: str
    per_metre: tuple[float, float]
    need: float


class Column(NamedTuple):
    """A part along one axis: how it may be moved, the most it weighs in any load state, and what in each."""

    one: Movable
    kg: float
    in_load: tuple[tuple[str, float], ...]

    def gives(self, row: Row) -> float:
        """Return what one metre of the part gives to a row; nothing where it is not aboard."""
        return row.per_metre[self.one.axis] * dict(self.in_load).get(row.load, 0.0)


def needed(slot: Slot, lever: Lever, pull: Pull, need: float) -> Row:
    """Return the row of a finding: how much its load must change in its load state."""
    return Row(slot.load, (pull.by_moving(0, lever.is_up), pull.by_moving(1, lever.is_up)), need)


def arranged(
    bench: Bench, slots: Sequence[Slot], must: Sequence[Row], axes: Iterable[Literal[0, 1]]
) -> list[Candidate]:
    """Return the arrangement of least effort that meets the needs in all load states and keeps every other limit.

    Moving one part alone is among what is looked at, past things in its way too, so that the arrangement is never
    more work than the best single move that does.
    """
    axes = tuple(dict.fromkeys(axes))
    columns = _columns(bench, slots, axes)
    keep = [row for slot in slots for row in kept(slot, bench.vehicle, 1 in axes)]
    rows = [*must, *(row for row in keep if any(column.gives(row) for column in columns))]
    found = [
        one for one in (_programme(bench, columns, must, rows), *_alone(bench, columns, must, rows)) if one is not None
    ]
    return [min(found, key=lambda one: one.rank)] if found else []


def _columns(bench: Bench, slots: Iterable[Slot], axes: tuple[Literal[0, 1], ...]) -> list[Column]:
    """Return every part that may be moved in some load state, those that weigh most first."""
    found: dict[tuple[str, int], tuple[Movable, dict[str, float]]] = {}
    for slot in slots:
        for one in bench.loose(slot, axes):
            found.setdefault((one.item.of, one.axis), (one, {}))[1][slot.load] = one.kg
    columns = [Column(one, max(weights.values()), tuple(weights.items())) for one, weights in found.values()]
    return sorted(columns, key=lambda column: (-column.kg, column.one.item.of, column.one.axis))


def _programme(bench: Bench, columns: list[Column], must: Sequence[Row], rows: Sequence[Row]) -> Candidate | None:
    """Return the rounded answer of the linear programme, None where the needs cannot be met or two parts would meet."""
    gains = [[column.gives(row) for column in columns] for row in rows]
    # Loose parts are no walls to each other: they may follow one another, and are kept apart where they would meet.
    families = bench.rooms.families
    loose = frozenset(member for column in columns for member in families[column.one.item.of])
    rooms = [bench.rooms.room_without(column.one.item.of, column.one.axis, loose) for column in columns]
    ways = [(one.within(room, -1.0), one.within(room, 1.0)) for (one, _, _), room in zip(columns, rooms, strict=True)]
    for more in (1.0, A_LITTLE_MORE):
        needs = [row.need * more if index < len(must) else row.need for index, row in enumerate(rows)]
        shifts = _without_meeting(bench, columns, ways, gains, needs)
        if shifts is not None and _holds(rows, columns, shifts):
            return _candidate(bench, columns, shifts)
    return None


def _without_meeting(
    bench: Bench,
    columns: list[Column],
    ways: list[tuple[float, float]],
    gains: list[list[float]],
    needs: list[float],
) -> list[float] | None:
    """Return rounded shifts that bring no two parts together: a pair that would meet is kept apart and tried again."""
    gains, needs = list(gains), list(needs)
    of_member = {member: column.one.item.of for column in columns
                 for member in bench.rooms.families[column.one.item.of]}  # fmt: skip
    met: Counter[tuple[str, str]] = Counter()
    for _ in range(MOST_ROUNDS):
        found = least_effort([column.kg for column in columns], ways, gains, needs)
        if found is None:
            return None
        shifts = [_rounded(column, way, shift) for column, way, shift in zip(columns, ways, found, strict=True)]
        meeting = bench.rooms.collisions(_by_part(columns, shifts))
        if not meeting:
            return shifts
        for of, other in sorted({(of, of_member.get(other, "")) for of, other in meeting}):
            first, second = sorted((of, other))
            met[first, second] += 1
            apart = list(_kept_apart(bench, columns, first, second, met[first, second] > 1)) if first else []
            if not apart:
                return None
            gains += [row for row, _ in apart]
            needs += [need for _, need in apart]
    return None


def _rounded(column: Column, way: tuple[float, float], shift: float) -> float:
    """Return a shift as it is written, rounded outwards, and no farther than there is room."""
    if abs(shift) < SMALL_MOVE:
        return 0.0
    return max(way[0], min(way[1], rounded_shift(column.one.offset, shift)))


def _by_part(columns: Iterable[Column], shifts: Iterable[float]) -> dict[str, tuple[float, float]]:
    found: dict[str, tuple[float, float]] = {}
    for column, shift in zip(columns, shifts, strict=True):
        if shift:
            x, y = found.get(column.one.item.of, (0.0, 0.0))
            found[column.one.item.of] = (x + shift, y) if column.one.axis == 0 else (x, y + shift)
    return found


def _kept_apart(
    bench: Bench, columns: list[Column], of: str, other: str, is_strict: bool
) -> Iterator[tuple[list[float], float]]:
    """Yield the rows that keep two parts from taking the same room, along each axis they stand in each other's way.

    ``is_strict`` leaves room for the rounding of both even where they touch now.
    """
    for axis in (0, 1):
        pair = {column.one.item.of: index for index, column in enumerate(columns) if column.one.axis == axis}
        if of not in pair or other not in pair:
            continue
        steps = sum(_step(columns[pair[one]].one) for one in (of, other))
        for end, sign in zip(bench.rooms.between(of, other, axis), (1.0, -1.0), strict=True):
            if isfinite(end):
                row = [0.0] * len(columns)
                row[pair[of]], row[pair[other]] = sign, -sign
                need = sign * end + steps
                yield row, need if is_strict else min(0.0, need)


def _step(one: Movable) -> float:
    return float(STEPS[one.offset.unit]) * one.offset.metres


def _holds(rows: Iterable[Row], columns: list[Column], shifts: list[float]) -> bool:
    """Return whether every row is met by some shifts."""
    return all(
        sum(column.gives(row) * shift for column, shift in zip(columns, shifts, strict=True)) >= row.need - SPARE
        for row in rows
    )


def _alone(bench: Bench, columns: list[Column], must: Sequence[Row], rows: Sequence[Row]) -> Iterator[Candidate]:
    """Yield each single move that meets every need and keeps every limit, to the nearest free place that far."""
    for index, column in enumerate(columns):
        gains = [column.gives(row) for row in must]
        ends = [row.need / gain for row, gain in zip(must, gains, strict=True) if gain]
        if not ends or len(ends) < len(must) or min(ends) * max(ends) <= 0.0:
            continue
        offset = column.one.offset
        far = max(ends, key=abs)
        shift = column.one.room.landing(far, lambda way, offset=offset: rounded_shift(offset, way))  # type: ignore[misc]
        if shift is None:
            continue
        shifts = [shift if other == index else 0.0 for other in range(len(columns))]
        if _holds(rows, columns, shifts):
            yield _candidate(bench, columns, shifts)


def _candidate(bench: Bench, columns: Iterable[Column], shifts: Iterable[float]) -> Candidate:
    says: list[str] = []
    edits: list[Edit] = []
    effort = 0.0
    for column, shift in zip(columns, shifts, strict=True):
        if shift:
            words, edit = column.one.moved(shift, bench.units)
            says.append(words)
            edits.append(edit)
            effort += column.kg * abs(shift)
    return Candidate(moving(says), tuple(edits), effort, len(edits))


def kept(slot: Slot, vehicle: str, with_sides: bool) -> Iterator[Row]:
    """Yield the limits that a load state keeps now, each with what may be lost; of a question, what keeps it one.

    A limit that is broken already has no row: nothing worse can be said of it.
    """
    geometry = measures_of(slot.box, slot.ball_height).best if slot.box is not None else None
    if geometry is None or slot.weight is None or slot.towing is None:
        return
    try:
        loads = loads_of(geometry)
    except method.OutOfRange:
        return
    for output, per, limit, is_least in _limits(slot.weight, slot.towing, loads, vehicle):
        edge, end = (output.permitted_low, output.band.low) if is_least else (output.permitted_high, output.band.high)
        sign = 1.0 if is_least else -1.0
        whole, open_end = sign * (end - limit), sign * (edge - limit)
        if not isfinite(whole):
            whole = open_end - output.half_width
        slack = whole if whole >= 0.0 else open_end
        if slack >= 0.0:
            yield Row(slot.load, (sign * per.per_x, sign * per.per_y), -slack)
    if with_sides:
        left, right = slot.weight.left.band, slot.weight.right.band
        slack = LIMITS["sides"] * slot.weight.on_wheels.band.best - abs(left.best - right.best)
        per = loads.left.plus(loads.right, -1.0)
        heavier = 1.0 if left.best >= right.best else -1.0
        if left.known and right.known and slack >= 0.0:
            yield Row(slot.load, (-heavier * per.per_x, -heavier * per.per_y), -slack)
            # The other side becomes the heavier one only past the middle.
            past = slack + 2.0 * abs(left.best - right.best)
            yield Row(slot.load, (heavier * per.per_x, heavier * per.per_y), -past)


def _limits(
    weight: Result, towed: Towed, loads: Loads, vehicle: str
) -> Iterator[tuple[Output, Coefficients, float, bool]]:
    """Yield each number of weight with what gives to it, its limit, and whether that is a least."""
    yield weight.tongue, loads.tongue, 0.0, True
    gross = weight.gross.band.best
    if towed.home in INCH_COUNTRIES and gross > 0.0:
        per = Coefficients(*(part / gross for part in loads.tongue))
        yield weight.share, per, SHARES["tongue_least_inch"], True
        yield weight.share, per, SHARES["tongue_most_inch"], False
    ratings = [towed.trailer.coupler.nose_max, towed.trailer.jack.rating]
    behind = next((one for one in towed.behind if vehicle in {"", one.name}), None)
    if behind is not None:
        ratings.append(behind.vehicle.tongue)
    given = [one.best for one in ratings if one is not None and one.known]
    if given:
        yield weight.tongue, loads.tongue, min(given), False
    gear = behind.vehicle.people_and_gear if behind is not None else None
    if behind is not None and behind.payload is not None and gear is not None and behind.payload.known and gear.known:
        yield weight.tongue, loads.tongue, behind.payload.best - gear.best, False
    on_wheels: Band | None = rated_on_wheels(towed)
    if on_wheels is not None:
        yield weight.on_wheels, loads.on_wheels, on_wheels.best, False
    rated = towed.trailer.axles.gawr
    for output, axle, limit in zip(weight.axles, loads.axles, rated, strict=False):
        if limit.known:
            yield output, axle, limit.best, False


def axes_of(levers: Iterable[Lever]) -> tuple[Literal[0, 1], ...]:
    """Return the axes along which parts are moved for some loads."""
    return tuple(dict.fromkeys(axis for lever in levers for axis in AXES[lever.load]))

"""The error budget of everything that is linear in masses: one pass over the parts, then a few products per answer.

Every answer is a sum over the parts, ``mass * (per_kg + per_x * x + per_y * y + per_z * z)``, plus a constant, or such
a sum divided by the whole mass. So four sums and one 4 x 4 matrix hold all that its best value and its first-order
uncertainty need, whatever the number of parts. What is open (fills, parts that stand perhaps, unknown weights and
places) is few; its extremes are added straight, part by part, and exactly for quotients too.

The order of the parts never matters: they are sorted, and every sum is rounded once (``math.fsum``).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import field
from math import fsum, inf, sqrt
from typing import NamedTuple

from boxwright.disciplines.weight import method
from boxwright.exchange import Mass, Vector
from boxwright.records import dataclass
from boxwright.units import COVERAGE, Band

Four = tuple[float, float, float, float]


class Coefficients(NamedTuple):
    """What one kilogram, and one kilogram metre on each axis, gives to an answer."""

    per_kg: float
    per_x: float = 0.0
    per_y: float = 0.0
    per_z: float = 0.0
    constant: float = 0.0

    def at(self, place: Vector) -> float:
        """Return what one kilogram at a place gives."""
        return self.per_kg + self.per_x * place[0] + self.per_y * place[1] + self.per_z * place[2]

    def plus(self, other: Coefficients, times: float = 1.0) -> Coefficients:
        """Return the sum of two, the other one taken so many times."""
        return Coefficients(*(a + times * b for a, b in zip(self, other, strict=True)))


class Reach(NamedTuple):
    """An answer before its 95 % half-width is added: best, extremes of what is open, and of what is permitted."""

    best: float
    low: float
    high: float
    permitted_low: float
    permitted_high: float
    variance: float


@dataclass(frozen=True, slots=True)
class Open:
    """A mass that is between two ends, or whose place is: ``why`` is fill, perhaps or unknown.

    Where the place is not open, ``front``, ``back`` and ``place`` are one object.
    """

    of: str
    what: str
    why: str
    best: float
    low: float
    high: float
    place: Vector
    front: Vector
    back: Vector

    def gives(self, coefficients: Coefficients) -> tuple[float, float]:
        """Return the least and the most that one kilogram of it gives to an answer, over its places."""
        if self.front is self.back:
            per = coefficients.at(self.place)
            return per, per
        least = most = coefficients.per_kg
        for per, one, other in zip(coefficients[1:4], self.front, self.back, strict=True):
            ends = (per * one, per * other)
            least, most = least + min(ends), most + max(ends)
        return least, most

    def moves(self, coefficients: Coefficients) -> bool:
        """Return whether what is open of it can move an answer."""
        least, most = self.gives(coefficients)
        return least != most or (self.low != self.high and least != 0.0)


Row = tuple[float, float, float, float, float, float, bool, Open | None]
"""What is open, ready to be added up: its place, its low, best and high, whether it is a fill, itself if wide."""


@dataclass(frozen=True, slots=True)
class Pool:
    """All parts of a slot, added up: mass and moments, the covariance of both, and what is open.

    Its hash is that of the sums: hashing every part again would cost more than adding them up. ``rows`` are what is
    open once more, taken apart once for all that is asked of it.
    """

    masses: tuple[Mass, ...] = field(hash=False)
    sums: Four
    covariance: tuple[float, ...]
    open: tuple[Open, ...] = field(hash=False)
    rows: tuple[Row, ...] = field(hash=False, compare=False)


class Share(NamedTuple):
    """How much of an answer's variance one part is responsible for, and its own half-width (endless if unknown)."""

    of: str
    share: float
    half_width: float


GROSS = Coefficients(1.0)
"""The whole mass, as a sum over the parts."""

PAIRS = tuple((i, j) for i in range(4) for j in range(i, 4))
"""Upper triangle of a 4 x 4 matrix over mass and the moments on x, y, z."""


def rounded(value: float) -> float:
    """Return a value rounded to 1e-9 of itself, so that the last bits of a sum never make two records differ."""
    return float(f"{value:.9e}") + 0.0


def pooled(masses: Iterable[Mass]) -> Pool:
    """Return the parts added up; the order in which they come does not matter."""
    ordered = tuple(sorted(masses, key=lambda mass: (mass.of, mass.what)))
    rows = [(m.kg.best, m.kg.best * m.x.best, m.kg.best * m.y.best, m.kg.best * m.z.best) for m in ordered]
    columns: list[list[float]] = [[] for _ in PAIRS]
    grouped: dict[str, list[Four]] = {}
    for mass in ordered:
        doubt = _kg_doubt(mass.kg)
        if doubt > 0.0:
            vector = (doubt, doubt * mass.x.best, doubt * mass.y.best, doubt * mass.z.best)
            if mass.group:
                grouped.setdefault(mass.group, []).append(vector)
            else:
                _add_square(columns, vector)
        for axis, place in enumerate((mass.x, mass.y, mass.z), start=1):
            if place.known and place.low != place.high:
                columns[PAIRS.index((axis, axis))].append((mass.kg.best * place.standard_uncertainty) ** 2)
    for vectors in grouped.values():
        a, b, c, d = (fsum(column) for column in zip(*vectors, strict=True))
        _add_square(columns, (a, b, c, d))
    m, x, y, z = (fsum(column) for column in zip(*rows, strict=True)) if rows else (0.0, 0.0, 0.0, 0.0)
    found = tuple([o for m in ordered for o in _opened(m)])
    return Pool(ordered, (m, x, y, z), tuple(map(fsum, columns)), found, tuple([_row(one) for one in found]))


def joined(pool: Pool, other: Pool) -> Pool:
    """Return two pools as one; their groups of values that err together stay apart."""
    a, b, c, d = (one + two for one, two in zip(pool.sums, other.sums, strict=True))
    covariance = tuple(one + two for one, two in zip(pool.covariance, other.covariance, strict=True))
    return Pool(pool.masses + other.masses, (a, b, c, d), covariance, pool.open + other.open, pool.rows + other.rows)


def _row(one: Open) -> Row:
    return (*one.place, one.low, one.best, one.high, one.why == "fill", None if one.front is one.back else one)


def _kg_doubt(kg: Band) -> float:
    """Return the standard uncertainty of a mass; none for what is open, which is added straight."""
    return kg.standard_uncertainty if kg.known and kg.low != kg.high else 0.0


def _add_square(columns: list[list[float]], vector: Four) -> None:
    for column, (i, j) in zip(columns, PAIRS, strict=True):
        column.append(vector[i] * vector[j])


def _opened(mass: Mass) -> Iterable[Open]:
    """Yield the mass as an open one, if its weight or its place is."""
    places = (mass.x, mass.y, mass.z)
    is_placed = all(place.known for place in places)
    if not mass.kg.known:
        why, low, high = "unknown", mass.kg.low, mass.kg.high
    elif mass.kg.spread in {"fill", "perhaps"}:
        why, low, high = mass.kg.spread, mass.kg.low, mass.kg.high
    elif not is_placed:
        why, low, high = "unknown", mass.kg.best, mass.kg.best
    else:
        return
    best = front = back = (mass.x.best, mass.y.best, mass.z.best)
    if not (mass.kg.known and is_placed):
        front, back = _corners(places, not mass.kg.known)
    yield Open(mass.of, mass.what, why, mass.kg.best, low, high, best, front, back)


def _corners(places: tuple[Band, Band, Band], is_wide: bool) -> tuple[Vector, Vector]:
    """Return both ends of an open place; ``is_wide`` counts the doubt of a known place too."""
    front, back = (
        tuple(getattr(p, end) if is_wide or not p.known else p.best for p in places) for end in ("low", "high")
    )
    return (*front,), (*back,)  # type: ignore[return-value]


def value(pool: Pool, coefficients: Coefficients) -> float:
    """Return the best value of a sum."""
    per_kg, per_x, per_y, per_z, constant = coefficients
    kg, x, y, z = pool.sums
    return per_kg * kg + per_x * x + per_y * y + per_z * z + constant


def variance(pool: Pool, coefficients: Coefficients) -> float:
    """Return the first-order variance of a sum: weights and places in quadrature, groups added straight before."""
    c = coefficients
    terms = ((1.0 if i == j else 2.0) * c[i] * c[j] * v for (i, j), v in zip(PAIRS, pool.covariance, strict=True))
    return max(0.0, fsum(terms))


def _times(factor: float, mass: float) -> float:
    """Return factor times mass, where nothing of an endless mass is nothing."""
    return 0.0 if factor == 0.0 else factor * mass


def reach_of_sum(pool: Pool, coefficients: Coefficients) -> Reach:
    """Return a sum with the extremes of all that is open added straight."""
    best = value(pool, coefficients)
    down, up, permitted_down, permitted_up = [best], [best], [best], [best]
    per_kg, per_x, per_y, per_z, _ = coefficients
    for x, y, z, low, kg, high, is_fill, wide in pool.rows:
        here = per_kg + per_x * x + per_y * y + per_z * z
        if wide is None:
            # Most of what is open stands at one place and has an end: this is `gives`, without a call for each.
            less, more = here * (low - kg), here * (high - kg)
            down.append(less if less < more else more)
            up.append(more if less < more else less)
        else:
            least, most = wide.gives(coefficients)
            down.append(min(_times(least, low), _times(least, high)) - here * kg)
            up.append(max(_times(most, low), _times(most, high)) - here * kg)
        if is_fill:
            permitted_down.append(down[-1])
            permitted_up.append(up[-1])
    return Reach(best, fsum(down), fsum(up), fsum(permitted_down), fsum(permitted_up), variance(pool, coefficients))


def gradient_of_quotient(pool: Pool, coefficients: Coefficients) -> Coefficients:
    """Return what each kilogram does to a sum divided by the whole mass, at the best values."""
    ratio = value(pool, coefficients) / pool.sums[0]
    slope = coefficients._replace(per_kg=coefficients.per_kg - ratio, constant=0.0)
    return Coefficients(*(part / pool.sums[0] for part in slope))


def reach_of_quotient(pool: Pool, coefficients: Coefficients) -> Reach:
    """Return a sum divided by the whole mass, with its exact extremes over all that is open."""
    best = value(pool, coefficients) / pool.sums[0]
    fills = tuple([row for row in pool.rows if row[6]])
    return Reach(
        best,
        -_highest(pool, Coefficients(*(-part for part in coefficients)), pool.rows),
        _highest(pool, coefficients, pool.rows),
        -_highest(pool, Coefficients(*(-part for part in coefficients)), fills),
        _highest(pool, coefficients, fills),
        variance(pool, gradient_of_quotient(pool, coefficients)),
    )


def _highest(pool: Pool, coefficients: Coefficients, rows: tuple[Row, ...]) -> float:
    """Return the highest quotient over the given open masses; the others stay at their best values."""
    if not rows:
        return value(pool, coefficients) / pool.sums[0]
    per_kg, per_x, per_y, per_z, _ = coefficients
    tops, sums, rest, most = [], [value(pool, coefficients)], [pool.sums[0]], []
    for x, y, z, low, kg, high, _, wide in rows:
        here = per_kg + per_x * x + per_y * y + per_z * z
        top = here if wide is None else wide.gives(coefficients)[1]
        tops.append(top)
        sums.append(top * low - here * kg)
        rest.append(low - kg)
        most.append(high - low)
    below = fsum(rest)
    if below <= 0.0:
        return max(tops)
    return method.highest_share(fsum(sums), below, tuple(tops), tuple(most)).share


def shares(pool: Pool, coefficients: Coefficients, boxes: Iterable[tuple[str, float]] = ()) -> tuple[Share, ...]:
    """Return which parts widen an answer's band most, the widest first; what is unknown comes before all.

    ``coefficients`` is the sum, or the gradient of a quotient. ``boxes`` are doubts of the trailer's own measures:
    a path and the standard uncertainty it gives to the answer. Fills are permitted, and a part that stands perhaps
    needs a look, not a scale: neither is in the list.
    """
    own: dict[str, list[float]] = {}
    grouped: dict[str, list[tuple[str, float]]] = {}
    for mass in pool.masses:
        place = (mass.x.best, mass.y.best, mass.z.best)
        doubt = _kg_doubt(mass.kg) * coefficients.at(place)
        if doubt and mass.group:
            grouped.setdefault(mass.group, []).append((mass.of, doubt))
        elif doubt:
            own.setdefault(mass.of, []).append(doubt**2)
        for per, band in zip(coefficients[1:4], (mass.x, mass.y, mass.z), strict=True):
            if per and band.known and band.low != band.high:
                own.setdefault(mass.of, []).append((per * mass.kg.best * band.standard_uncertainty) ** 2)
    for members in grouped.values():
        together = fsum(doubt for _, doubt in members)
        for of, doubt in members:
            own.setdefault(of, []).append(doubt * together)
    for path, doubt in boxes:
        own.setdefault(path, []).append(doubt**2)
    parts = {of: fsum(terms) for of, terms in own.items()}
    whole = fsum(parts.values())
    found = [Share(of, rounded(part / whole), _half(part)) for of, part in parts.items() if whole > 0.0 and part > 0.0]
    endless = {item.of for item in pool.open if item.why == "unknown" and item.moves(coefficients)}
    found = [share for share in found if share.of not in endless] + [Share(of, 1.0, inf) for of in endless]
    return tuple(sorted(found, key=lambda share: (-share.half_width, share.of)))


def _half(part: float) -> float:
    return rounded(COVERAGE * sqrt(part))

"""Bring planned masses and weighed sums together, by weighted least squares with no mass below zero."""

from __future__ import annotations

from math import log, sqrt
from typing import NamedTuple

from boxwright.units import Kilogram, OutOfRange, Ratio


class Reconciled(NamedTuple):
    """The masses that fit plan and scale best, their standard uncertainties, and how ill the two fitted."""

    masses: tuple[Kilogram, ...]
    uncertainties: tuple[Kilogram, ...]
    misfit: Ratio


def _solved(matrix: list[list[float]], right: list[float]) -> list[float]:
    """Return the solution of a small symmetric positive system, by elimination."""
    size = len(right)
    rows = [[*matrix[i], right[i]] for i in range(size)]
    for pivot in range(size):
        for below in range(pivot + 1, size):
            factor = rows[below][pivot] / rows[pivot][pivot]
            for column in range(pivot, size + 1):
                rows[below][column] -= factor * rows[pivot][column]
    answer = [0.0] * size
    for i in range(size - 1, -1, -1):
        answer[i] = (rows[i][size] - sum(rows[i][j] * answer[j] for j in range(i + 1, size))) / rows[i][i]
    return answer


def _joint_matrix(
    rows: tuple[tuple[float, ...], ...], variances: list[float], readings: list[float]
) -> list[list[float]]:
    """Return the covariance of what the readings should be: by the masses' doubts, and by the scale's."""
    count = len(rows)
    return [
        [
            sum(a * v * b for a, v, b in zip(rows[i], variances, rows[j], strict=True)) + (readings[i] if i == j else 0)
            for j in range(count)
        ]
        for i in range(count)
    ]


def reconcile(
    planned: tuple[Kilogram, ...],
    planned_uncertainties: tuple[Kilogram, ...],
    rows: tuple[tuple[Ratio, ...], ...],
    readings: tuple[Kilogram, ...],
    reading_uncertainties: tuple[Kilogram, ...],
) -> Reconciled:
    """Return the masses that fit planned values and scale readings best, each weighted by its doubt.

    One row of ``rows`` for each reading: how much of each mass that scale feels (1 for the total, the share on the
    ball for the tongue). ``misfit`` is the chi squared of the readings against the plan, with as many degrees of
    freedom as readings: beyond its limit, something is misplaced or not listed, and nothing should be taken over.
    A mass that would fall below zero is held at zero and the others are found again; it is let go where that fits
    better, until neither happens.

    Satisfies: sum(min(0.0, m) for m in result.masses); sum(m * ((m - p) / u**2 - sum(row[i] * (y - sum(c * k
        for c, k in zip(row, result.masses))) / s**2 for row, y, s in zip(rows, readings,
        reading_uncertainties))) for i, (m, p, u) in enumerate(zip(result.masses, planned,
        planned_uncertainties)))
    Valid: uncertainties above zero
    Source: first-principles section 3.3
    Departs: nothing
    Assumes: planned values and readings err independently, each as a normal distribution
    """
    for value in (*planned_uncertainties, *reading_uncertainties):
        OutOfRange.unless_positive("uncertainties", value)
    noise = [value**2 for value in reading_uncertainties]
    given = [value**2 for value in planned_uncertainties]
    gaps = _gaps(rows, readings, list(planned))
    misfit = sum(g * s for g, s in zip(gaps, _solved(_joint_matrix(rows, given, noise), gaps), strict=True))
    held: set[int] = set()
    for _ in range(3 * len(planned) + 1):
        start = [0.0 if i in held else value for i, value in enumerate(planned)]
        variances = [0.0 if i in held else value for i, value in enumerate(given)]
        joint = _joint_matrix(rows, variances, noise)
        pull = _solved(joint, _gaps(rows, readings, start))
        felt = [sum(row[i] * p for row, p in zip(rows, pull, strict=True)) for i in range(len(planned))]
        masses = [m + v * f for m, v, f in zip(start, variances, felt, strict=True)]
        freed = {i for i in held if planned[i] / given[i] + felt[i] > 1e-12}
        lowest = min(range(len(masses)), key=lambda i: masses[i])
        if masses[lowest] < 0.0:
            held.add(lowest)
        elif freed:
            held.discard(min(freed))
        else:
            break
    columns = [[row[i] for row in rows] for i in range(len(planned))]
    spent = [sum(c * s for c, s in zip(column, _solved(joint, column), strict=True)) for column in columns]
    doubts = tuple(sqrt(max(0.0, v - v * v * s)) for v, s in zip(variances, spent, strict=True))
    return Reconciled(tuple(masses), doubts, misfit)


def _gaps(rows: tuple[tuple[float, ...], ...], readings: tuple[float, ...], masses: list[float]) -> list[float]:
    """Return reading minus what the masses give, for each reading."""
    return [y - sum(c * m for c, m in zip(row, masses, strict=True)) for row, y in zip(rows, readings, strict=True)]


def misfit_limit_of_two(confidence: Ratio) -> Ratio:
    """Return the misfit that two readings exceed by chance with one minus the confidence.

    Formula: limit = -2 * log(1 - confidence)
    Valid: two readings (chi squared with two degrees of freedom); confidence above 0 and below 1
    Source: chi-squared-table row 2
    Departs: nothing
    Assumes: normal distributions
    """
    OutOfRange.unless_between("confidence", confidence, 0.0, 1.0 - 1e-12)
    return -2 * log(1 - confidence)

"""Plan against scale: each reading of this slot beside the answer it is of, and what to weigh next."""

from __future__ import annotations

from collections.abc import Mapping
from math import inf

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.answer import answer
from boxwright.disciplines.weight.linear import GROSS, Pool, Share, pooled, reach_of_sum, rounded
from boxwright.disciplines.weight.result import Compared, Output
from boxwright.exchange import Measured
from boxwright.units import COVERAGE

THREE = 3
"""How many parts are named to be weighed next."""


def compared(
    pool: Pool, planned: Mapping[str, tuple[Output, tuple[Share, ...]]], measured: tuple[Measured, ...]
) -> tuple[Compared, ...]:
    """Return every reading whose answer is among the planned ones, or whose part is in the pool.

    ``planned`` maps what a reading is called to the answer and to what widens it. A reading never changes the plan.
    """
    found = []
    for reading in sorted(measured, key=lambda one: (one.of, one.what, one.part)):
        if not reading.value.known:
            continue
        if reading.what == "part":
            part = _part(pool, reading.part)
            if part is not None:
                found.append(_compare(reading, part, ()))
        elif reading.what in planned:
            found.append(_compare(reading, *planned[reading.what]))
    return tuple(found)


def _part(pool: Pool, name: str) -> Output | None:
    """Return what one part weighs by plan, without its contents."""
    of = name if "[" in name else f"parts[{name}]"
    own = pooled(mass for mass in pool.masses if mass.of == of and mass.what == "dry" and mass.kg.known)
    return answer(of, name, "kg", own, GROSS, reach_of_sum(own, GROSS)) if own.masses else None


def _compare(reading: Measured, planned: Output, widened_by: tuple[Share, ...]) -> Compared:
    """Return one reading beside its answer: the gap is what nothing open can explain."""
    low = min(planned.band.best, planned.band.low + planned.half_width)
    high = max(planned.band.best, planned.band.high - planned.half_width)
    value = reading.value.best
    nearest = min(max(value, low), high)
    doubt = COVERAGE * reading.value.standard_uncertainty
    if planned.half_width > 0.0 or doubt > 0.0:
        agreement = method.agreement(nearest, value, planned.half_width, doubt)
    else:
        agreement = 0.0 if value == nearest else inf
    return Compared(
        reading.of,
        reading.what,
        planned.of if reading.what == "part" else "",
        planned,
        reading.value,
        rounded(value - nearest),
        rounded(agreement),
        tuple(share.of for share in widened_by if share.half_width < inf)[:THREE],
        reading.on,
        reading.how,
        reading.plank,
    )

"""The vents, fans, windows and doors of one slot, and the one opening that passes as much as they do together."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from math import inf, isfinite, sqrt
from types import MappingProxyType
from typing import Literal, NamedTuple

from boxwright.disciplines.air import method
from boxwright.disciplines.air.parts import UNKNOWN, PlannedVent, Section
from boxwright.disciplines.air.result import There, Vent
from boxwright.disciplines.air.sourced import CRACKS, SHARES, WIND_SHARE
from boxwright.exchange import Airflow, Opening
from boxwright.units import Band, exactly

End = Literal["low", "best", "high"]
ENDS: tuple[End, ...] = ("low", "best", "high")
MISMEASURED = 1.05
"""A free area and a hole that are each measured by hand may differ by so much. Common practice, no source."""


WHOLE_END = 4.0
"""m2: a hole nobody measured may be as large as the end of a trailer. Common practice, no source."""


class Passage(NamedTuple):
    """One opening (m2) that passes as much as several, and the height (m) that drives it."""

    area: float
    rise: float


def vents_of(
    own: Section,
    standing: tuple[tuple[str, str], ...],
    openings: tuple[Opening, ...],
    covered: Mapping[str, str] = MappingProxyType({}),
) -> tuple[Vent, ...]:
    """Return every vent, fan, window and door of the shell as it stands in a slot; ``covered`` what is before them."""
    holes = {one.of: one for one in openings}
    there: dict[str, There] = {of: "yes" if word == "yes" else "perhaps" for of, word in standing}
    half = own.height.best / 2.0 if own.height.known else _half_of(openings)
    return tuple(
        _vent(one, there.get(one.of, "no"), holes.get(one.of), half, covered.get(one.of, ""))
        for one in own.vents
        if one.is_hole
    )


def _half_of(openings: tuple[Opening, ...]) -> float:
    """Return half the height the openings reach to, where nobody wrote how high the room is."""
    tops = [one.top.best for one in openings if one.top.known]
    return max(tops, default=0.0) / 2.0


def _vent(planned: PlannedVent, there: There, hole: Opening | None, half: float, before: str) -> Vent:
    is_placed = hole is not None and hole.bottom.known and hole.top.known
    middle = (hole.bottom.best + hole.top.best) / 2.0 if hole is not None and is_placed else None
    height = hole.top.best - hole.bottom.best if hole is not None and is_placed else 0.0
    stands: There = "perhaps" if there == "yes" and (planned.is_contradicted or before) else there
    return Vent(
        planned,
        stands,
        _free(planned, hole),
        middle,
        height,
        middle is None or middle < half,
        hole is not None and hole.is_open,
        before if there == "yes" else "",
    )


def _free(planned: PlannedVent, hole: Opening | None) -> Band:
    """Return the area air passes through: as written, else a share of the hole; an unknown one is at most the hole.

    What is written as more than the whole hole contradicts it, and nobody knows which of them is wrong.
    """
    rough = hole.area if hole is not None else UNKNOWN
    written = planned.facet.free_area
    if written is not None and written.known and rough.known and written.high > rough.high * MISMEASURED:
        is_more = written.low > rough.high * MISMEASURED
        return Band(0.0, 0.0, rough.high, known=False) if is_more else _no_more(written, rough.high)
    if written is not None and written.known:
        return written
    if not rough.known:
        return Band(0.0, 0.0, rough.high, known=False)
    if written is not None:
        return Band(0.0, 0.0, rough.best, known=False)
    share = SHARES[planned.kind]
    return Band(
        rough.best * share.best, rough.low * share.low, rough.high * share.high, spread="interval", assumed=True
    )


def _no_more(written: Band, most: float) -> Band:
    return Band(min(written.best, most), written.low, most, spread="interval")


def passing(vent: Vent, end: End) -> float:
    """Return the area of a vent (m2) at one end of what is known: what stands perhaps passes at the high end only."""
    if vent.there == "no" or (vent.there == "perhaps" and end != "high"):
        return 0.0
    area = {"low": vent.free.low, "best": vent.free.best, "high": vent.free.high}[end]
    return area if isfinite(area) else 0.0


def summed(vents: tuple[Vent, ...]) -> Band:
    """Return the free area of some vents together; what stands perhaps is missing but at the high end."""
    low, best, high = (sum(passing(one, end) for one in vents) for end in ENDS)
    is_known = all(one.free.known for one in vents if one.there != "no")
    if low == high:
        return exactly(best) if is_known else Band(best, low, high, known=False)
    return Band(best, low, high, is_known, "perhaps", any(one.free.assumed for one in vents))


def likely(vent: Vent) -> float:
    """Return the area of a vent (m2) that most likely lets warmth out.

    One of unknown free area passes a share of its hole, as one of which nothing is written; one that is ticked passes
    air though something stands before it.
    """
    if vent.there == "no" or (vent.there == "perhaps" and not vent.before):
        return 0.0
    if vent.free.known:
        return vent.free.best
    return vent.free.high * SHARES[vent.planned.kind].best if isfinite(vent.free.high) else 0.0


def passage(vents: tuple[Vent, ...], area_of: Callable[[Vent], float]) -> Passage:
    """Return the one opening that passes as much as the vents do together, by warmth.

    Air comes in low and leaves high, or passes each vent both ways: its lower half in, its upper half out, over half
    its own height. Whichever passes more counts: a pinhole beside a large vent hinders nobody.
    """
    open_ones = [(area, one) for one in vents if (area := area_of(one)) > 0.0]
    if not open_ones:
        return Passage(0.0, 0.0)
    area = sum(area for area, _ in open_ones)
    both_ways = Passage(
        method.in_series(area / 2.0, area / 2.0), sum(area * one.height for area, one in open_ones) / area / 2.0
    )
    low = [(area, one) for area, one in open_ones if one.is_low]
    high = [(area, one) for area, one in open_ones if not one.is_low]
    if not low or not high:
        return both_ways
    inlet, outlet = sum(area for area, _ in low), sum(area for area, _ in high)
    through = Passage(method.in_series(inlet, outlet), max(_mean_height(high) - _mean_height(low), 0.0))
    return max(through, both_ways, key=lambda one: one.area * sqrt(one.rise))


def _mean_height(vents: list[tuple[float, Vent]]) -> float:
    """Return the height of the middle of some vents, each by its area; one without a place counts at the deck."""
    return sum(area * (one.middle or 0.0) for area, one in vents) / sum(area for area, _ in vents)


def airflow_of(vents: tuple[Vent, ...], openings: tuple[Opening, ...], lined: float, asleep: bool) -> Airflow:
    """Return how the air of the room can change. ``lined`` is the share of its planes that has a lining."""
    fixed = tuple(one for one in vents if one.stays_open)
    through = [passage(fixed, partial(passing, end=end)) for end in ENDS]
    most_likely = passage(fixed, likely)
    areas, rises = [one.area for one in through], [one.rise for one in through]
    opened = tuple(one for one in vents if not one.stays_open and (one.planned.kind != "door" or not asleep))
    return Airflow(
        of="trailer",
        leak=leak_of(openings, lined),
        vents=_band(areas),
        rise=_band(rises),
        wind_share=WIND_SHARE,
        fan=_moved(vents),
        fans=tuple(one.planned.name for one in vents if one.planned.facet.fan is not None and one.there != "no"),
        opened=summed(opened),
        likely=(most_likely.area, most_likely.rise) if most_likely != through[1] else None,
    )


def leak_of(openings: tuple[Opening, ...], lined: float) -> Band:
    """Return the area of the cracks at 4 Pa (m2): between that of a bare shell and that of a lined one.

    A hole that is cut and that nothing surely fills may stand open as a whole, as large as it may be.
    """
    bare, tight = CRACKS["bare"], CRACKS["lined"]
    low, best, high = (getattr(bare, end) + (getattr(tight, end) - getattr(bare, end)) * lined for end in ENDS)
    gaping = sum(one.area.high if one.area.known else WHOLE_END for one in openings if one.is_open)
    return Band(best, low, high + gaping, spread="interval", assumed=True)


def _moved(vents: tuple[Vent, ...]) -> Band:
    """Return what the fans move when they run: as written, of those that stand."""
    low = best = high = 0.0
    is_known = True
    for one in vents:
        fan = one.planned.facet.fan
        if fan is None or one.there == "no":
            continue
        if fan.flow is None or not fan.flow.known:
            is_known = False
            continue
        high += fan.flow.high
        if one.there == "yes":
            low, best = low + fan.flow.low, best + fan.flow.best
    return Band(best, low, high, is_known) if is_known else Band(best, low, inf, known=False)


def _band(numbers: list[float]) -> Band:
    low, best, high = numbers
    return exactly(best) if low == high == best else Band(best, min(numbers), max(numbers), spread="perhaps")

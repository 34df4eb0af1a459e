"""Tipping back at rest: the trailer uncoupled, legs up or down, with everybody who may board at its rear end."""

from __future__ import annotations

from collections.abc import Callable
from math import inf

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.answer import Spread, answer
from boxwright.disciplines.weight.geometry import Doubt, Geometry, Measures
from boxwright.disciplines.weight.linear import Coefficients, Pool, joined, pooled, reach_of_sum, value
from boxwright.disciplines.weight.result import Output, Parked, Tip
from boxwright.exchange import Box, Mass
from boxwright.records import dataclass
from boxwright.units import Band, exactly

Formula = Callable[[Geometry, float], Coefficients]


def parked_of(
    box: Box,
    pool: Pool,
    measures: Measures,
    boarding: tuple[Band, ...],
    is_coupled: bool | None,
    legs_are_down: bool | None,
) -> Parked | None:
    """Return how the trailer stands with everybody at its rear end; None where coupler or axles have no place.

    People among the parts are left out first: they are the ones who board.
    """
    if measures.best is None:
        return None
    is_empty = all(mass.what != "people" for mass in pool.masses)
    empty = pool if is_empty else pooled(mass for mass in pool.masses if mass.what != "people")
    aboard = joined(empty, pooled(_person(box, kg) for kg in boarding))
    stands = Stands(box, measures.best, measures.doubts, empty, aboard)
    legs = [band for band in box.legs_x if band.known and band.high < inf]
    rearmost = max(legs, key=lambda leg: leg.best) if legs else None
    jack_x = box.jack_x if box.jack_x.known else box.coupler_x
    return Parked(
        is_coupled,
        legs_are_down,
        _together(boarding),
        _tip(stands, None),
        _tip(stands, rearmost) if rearmost is not None else None,
        stands.answer("ball", "kg", aboard, _nose, box.coupler_x, "trailer.coupler_x"),
        stands.answer("jack", "kg", empty, _nose, jack_x, "trailer.jack.x"),
    )


@dataclass(frozen=True, slots=True)
class Stands:
    """The trailer at rest: its measures, and its parts without people and with all of them at the rear end."""

    box: Box
    best: Geometry
    doubts: tuple[Doubt, ...]
    empty: Pool
    aboard: Pool

    def answer(self, name: str, unit: str, pool: Pool, formula: Formula, other: Band, path: str) -> Output:
        """Return an answer that hangs on the trailer's measures and on one more place along it."""
        best = formula(self.best, other.best)
        spreads = [
            Spread(d.path, d.band, value(pool, formula(d.low, other.best)), value(pool, formula(d.high, other.best)))
            for d in self.doubts
        ]
        if other.low != other.high:
            low, high = (value(pool, formula(self.best, end)) for end in (other.low, other.high))
            spreads.append(Spread(path, other, low, high))
        return answer(self.box.of, name, unit, pool, best, reach_of_sum(pool, best), spreads)


def _person(box: Box, kg: Band) -> Mass:
    """Return somebody who may board as a mass at the rear end; all answer to the section they are written in."""
    here = exactly(box.rear_x)
    return Mass("people", "people", "", kg, here, exactly(0.0), exactly(0.0), (0.0, 0.0, 0.0))


def _together(boarding: tuple[Band, ...]) -> Band:
    best, low, high = (sum(getattr(kg, end) for kg in boarding) for end in ("best", "low", "high"))
    return Band(best, low, high, all(kg.known for kg in boarding), "exact" if low == high else "interval")


def _tip(stands: Stands, leg: Band | None) -> Tip:
    """Return margin and tipping person about the wheels, or about the rearmost leg where it is behind them."""
    rear, pivots = stands.box.rear_x, [g.pivot_x for d in stands.doubts for g in (d.low, d.high)]
    leg_x = leg if leg is not None else exactly(stands.best.pivot_x)
    ends = (leg_x.low, leg_x.high) if leg is not None else ()

    def margin(geometry: Geometry, x: float) -> Coefficients:
        return _about(max(geometry.pivot_x, x if leg is not None else geometry.pivot_x))

    def person(geometry: Geometry, x: float) -> Coefficients:
        pivot = max(geometry.pivot_x, x if leg is not None else geometry.pivot_x)
        at_zero = method.tip_person_mass(1.0, 0.0, pivot, rear)
        return Coefficients(at_zero, method.tip_person_mass(1.0, 1.0, pivot, rear) - at_zero)

    def _about(pivot: float) -> Coefficients:
        at_zero = method.tip_margin(1.0, 0.0, pivot, 0.0, rear)
        return Coefficients(at_zero, method.tip_margin(1.0, 1.0, pivot, 0.0, rear) - at_zero)

    name = "legs up" if leg is None else "legs down"
    has_lever = rear > max((stands.best.pivot_x, *pivots, *ends))
    return Tip(
        leg is not None,
        max((stands.best.pivot_x, leg_x.best)),
        stands.answer(f"margin, {name}", "kg m", stands.aboard, margin, leg_x, "trailer.legs.x"),
        stands.answer(f"margin with nobody in it, {name}", "kg m", stands.empty, margin, leg_x, "trailer.legs.x"),
        stands.answer(f"person, {name}", "kg", stands.empty, person, leg_x, "trailer.legs.x") if has_lever else None,
    )


def _nose(geometry: Geometry, support_x: float) -> Coefficients:
    """Return what a support under the nose carries, level."""
    at_zero = method.jack_mass(1.0, 0.0, geometry.pivot_x, support_x)
    return Coefficients(at_zero, method.jack_mass(1.0, 1.0, geometry.pivot_x, support_x) - at_zero)

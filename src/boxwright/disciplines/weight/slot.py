"""One slot: all parts on one trailer, asked for every load, share and centre."""

from __future__ import annotations

from collections.abc import Callable
from math import inf
from typing import NamedTuple

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.answer import Spread, answer, unanswered
from boxwright.disciplines.weight.comparing import compared
from boxwright.disciplines.weight.geometry import Loads
from boxwright.disciplines.weight.linear import (
    GROSS,
    Coefficients,
    Pool,
    Share,
    gradient_of_quotient,
    reach_of_quotient,
    reach_of_sum,
    rounded,
    shares,
    value,
)
from boxwright.disciplines.weight.result import Output, Parked, Perhaps, Result, Unweighed
from boxwright.exchange import AxleLoad, Balance, Box, Measured
from boxwright.records import dataclass
from boxwright.units import Band

Pick = Callable[[Loads], Coefficients]
FOREMOST = 6
"""How many of the parts that widen the tongue's band are kept."""

CENTRES = (("x", Coefficients(0.0, 1.0)), ("y", Coefficients(0.0, 0.0, 1.0)), ("z", Coefficients(0.0, 0.0, 0.0, 1.0)))


class Varied(NamedTuple):
    """Who carries what with one doubtful measure of the trailer at either end."""

    path: str
    band: Band
    low: Loads
    high: Loads


@dataclass(frozen=True, slots=True)
class Slot:
    """One slot's parts on one trailer; ``loads`` is None where coupler or axles have no place."""

    box: Box
    pool: Pool
    loads: Loads | None
    varied: tuple[Varied, ...]
    missing: tuple[str, ...]
    assumed: tuple[str, ...]
    sides_missing: tuple[str, ...] = ()

    def result(self, parked: Parked | None, measured: tuple[Measured, ...]) -> Result:
        """Return everything weight says of the slot."""
        count = len(self.loads.axles) if self.loads is not None else len(self.box.axles)
        gross, tongue = self.load("gross", _gross), self.tongue()
        axles = tuple(self.load(f"axle {i + 1}", _axle(i)) for i in range(count))
        lefts = tuple(self.side(f"axle {i + 1} left", _axle_left(i)) for i in range(count))
        rights = tuple(self.side(f"axle {i + 1} right", _axle_right(i)) for i in range(count))
        on_wheels = self.load("on wheels", _on_wheels)
        left, right = self.side("left", _left), self.side("right", _right)
        share = self.share()
        x, y, z = (self.centre(axis, coefficients) for axis, coefficients in CENTRES)
        widened = self.widened_by(_tongue)
        readings = [("total", gross, _gross), ("axles", on_wheels, _on_wheels), ("tongue", tongue, _tongue)]
        readings += [("left", left, _left), ("right", right, _right)]
        readings += [(f"axle {i + 1}", axle, _axle(i)) for i, axle in enumerate(axles)]
        wanted = {one.what for one in measured}
        planned = {name: (one, self.widened_by(pick)) for name, one, pick in readings if name in wanted}
        outputs = (gross, tongue, share, on_wheels, x, y, z)
        return Result(
            of=self.box.of,
            running_gear=self.box.running_gear,
            gross=gross,
            tongue=tongue,
            share=share,
            on_wheels=on_wheels,
            axles=axles,
            axles_left=lefts,
            axles_right=rights,
            left=left,
            right=right,
            centre_x=x,
            centre_y=y,
            centre_z=z,
            inertia=self.inertia(),
            tongue_widened_by=widened[:FOREMOST],
            unweighed=self.unweighed(),
            unplaced=self.unplaced(),
            perhaps=self.perhaps(),
            unnamed_tanks=self.unnamed_tanks(),
            assumed=self.assumed,
            parked=parked,
            compared=compared(self.pool, planned, measured),
            balance=Balance(self.box.of, *(one.band for one in outputs)),
            axle_loads=tuple(
                AxleLoad(self.box.of, i + 1, axles[i].band, lefts[i].band, rights[i].band) for i in range(count)
            ),
        )

    def tongue(self) -> Output:
        """Return what the ball carries."""
        return self.load("tongue", _tongue)

    def load(self, name: str, pick: Pick) -> Output:
        """Return who carries what, by a name and by which of the loads it is."""
        if self.loads is None:
            if pick is not _gross:
                return unanswered(self.box.of, name, "kg", self.missing)
            return answer(self.box.of, name, "kg", self.pool, GROSS, reach_of_sum(self.pool, GROSS))
        coefficients = pick(self.loads)
        reach = reach_of_sum(self.pool, coefficients)
        return answer(self.box.of, name, "kg", self.pool, coefficients, reach, self.spreads(pick))

    def side(self, name: str, pick: Pick) -> Output:
        """Return what the wheels of one side carry; not answered where the track is not known."""
        if self.sides_missing:
            return unanswered(self.box.of, name, "kg", self.sides_missing)
        return self.load(name, pick)

    def spreads(self, pick: Pick, divided_by: float = 1.0) -> tuple[Spread, ...]:
        """Return what each doubtful measure of the trailer does to one of the loads."""
        return tuple(
            Spread(one.path, one.band, *(value(self.pool, pick(end)) / divided_by for end in (one.low, one.high)))
            for one in self.varied
        )

    def share(self) -> Output:
        """Return the part of the weight that the ball carries."""
        mass = self.pool.sums[0]
        if self.loads is None or mass <= 0.0:
            return unanswered(self.box.of, "share", "", self.missing or ("trailer.empty",))
        coefficients = _tongue(self.loads)
        slope = gradient_of_quotient(self.pool, coefficients)
        reach = reach_of_quotient(self.pool, coefficients)
        return answer(self.box.of, "share", "", self.pool, slope, reach, self.spreads(_tongue, mass))

    def centre(self, axis: str, coefficients: Coefficients) -> Output:
        """Return where the centre of gravity is along one axis."""
        if self.pool.sums[0] <= 0.0:
            return unanswered(self.box.of, f"centre {axis}", "m", ("trailer.empty",))
        slope = gradient_of_quotient(self.pool, coefficients)
        reach = reach_of_quotient(self.pool, coefficients)
        return answer(self.box.of, f"centre {axis}", "m", self.pool, slope, reach)

    def inertia(self) -> tuple[float, float, float]:
        """Return the moments of inertia about the centre of gravity: roll, pitch, yaw."""
        masses = tuple(mass for mass in self.pool.masses if mass.kg.best > 0.0)
        if not masses:
            return 0.0, 0.0, 0.0
        kilograms = tuple(mass.kg.best for mass in masses)
        moments = [moment / self.pool.sums[0] for moment in self.pool.sums[1:]]
        x = tuple([mass.x.best - moments[0] for mass in masses])
        y = tuple([mass.y.best - moments[1] for mass in masses])
        z = tuple([mass.z.best - moments[2] for mass in masses])
        long, wide, high = zip(*(mass.size for mass in masses), strict=True)
        pairs = ((y, z, wide, high), (x, z, long, high), (x, y, long, wide))
        roll, pitch, yaw = (rounded(method.moment_of_inertia(kilograms, *pair)) for pair in pairs)
        return roll, pitch, yaw

    def widened_by(self, pick: Pick) -> tuple[Share, ...]:
        """Return what widens the band of one of the loads, the widest first."""
        if self.loads is None:
            return ()
        doubts = ((spread.path, spread.standard_uncertainty) for spread in self.spreads(pick))
        return shares(self.pool, pick(self.loads), doubts)

    def unweighed(self) -> tuple[Unweighed, ...]:
        """Return the parts without a weight, and what a kilogram of each does to the tongue weight."""
        tongue = self.loads.tongue if self.loads is not None else Coefficients(0.0)
        found = []
        for item in self.pool.open:
            if item.why == "unknown" and item.high == inf:
                least, most = item.gives(tongue)
                found.append(Unweighed(item.of, item.what, rounded(least), rounded(most)))
        return tuple(found)

    def unplaced(self) -> tuple[str, ...]:
        """Return the parts whose place is not known."""
        masses = self.pool.masses
        return tuple(dict.fromkeys(m.of for m in masses if not (m.x.known and m.y.known and m.z.known)))

    def perhaps(self) -> tuple[Perhaps, ...]:
        """Return the parts that stand perhaps, and what each does to the tongue weight if it is there."""
        tongue = self.loads.tongue if self.loads is not None else Coefficients(0.0)
        return tuple(
            Perhaps(item.of, rounded(item.high), rounded(item.high * tongue.at(item.place)))
            for item in self.pool.open
            if item.why == "perhaps"
        )

    def unnamed_tanks(self) -> tuple[str, ...]:
        """Return the tanks whose fill the load state does not name."""
        return tuple(m.of for m in self.pool.masses if m.kg.spread == "fill" and m.kg.assumed)


def _gross(_: Loads) -> Coefficients:
    return GROSS


def _tongue(loads: Loads) -> Coefficients:
    return loads.tongue


def _on_wheels(loads: Loads) -> Coefficients:
    return loads.on_wheels


def _left(loads: Loads) -> Coefficients:
    return loads.left


def _right(loads: Loads) -> Coefficients:
    return loads.right


def _axle(index: int) -> Pick:
    return lambda loads: loads.axles[index]


def _axle_left(index: int) -> Pick:
    return lambda loads: loads.axles_left[index]


def _axle_right(index: int) -> Pick:
    return lambda loads: loads.axles_right[index]

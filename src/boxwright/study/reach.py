"""How far all that may be done can reach: what is said of a finding that nothing clears."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import inf
from typing import NamedTuple

from boxwright.disciplines.water.parts import StandingTank
from boxwright.exchange import Mass
from boxwright.finding import Finding
from boxwright.rig.rig import Rig
from boxwright.study.bench import AXES, Bench
from boxwright.study.fills import held, may_be_filled
from boxwright.study.left import cargo_of
from boxwright.study.lever import Lever, Pull, break_even, lever_of, pull_of
from boxwright.study.moves import Movable, families_of
from boxwright.study.remedy_words import (
    nothing_found,
    range_looked_over,
    then_weigh,
    then_weigh_all,
    weigh_first,
    with_weight,
)
from boxwright.study.slots import Slot
from boxwright.study.spoken import named
from boxwright.units import HeaderUnits


def said_without(bench: Bench, finding: Finding, lever: Lever, slot: Slot) -> str:
    """Return what is said of a finding without a proved change: a plain no, or what to weigh first.

    Where the ball is too light, it is said what weight at the front wall would be enough, as the last thing to do.
    Nothing is said of a question that no single weight decides, its own ``act`` says what to do; nor where no load
    is outside its limit.
    """
    if finding.kind == "unknown":
        even = break_even(finding, lever, slot)
        return weigh_first(named(even[0].of), even[0].kg, bench.units) if even else ""
    if pull_of(finding, lever, slot) is None:
        return ""
    best = best_reachable(bench, finding, lever, slot)
    says = nothing_found() if best is None else range_looked_over(finding, best, rises(lever), bench.units)
    return with_weight(says, to_add(finding, lever, slot), bench.units)


class Crossing(NamedTuple):
    """A part nobody has weighed, the mass at which it alone crosses the nearest limit (kg), and its rule."""

    of: str
    kg: float
    code: str


def crossings(slots: Iterable[Slot]) -> tuple[Crossing, ...]:
    """Return, for each part nobody has weighed that leaves a rule undecided, where it first crosses a limit."""
    nearest: dict[str, Crossing] = {}
    for slot in slots:
        for finding in slot.findings:
            lever = lever_of(finding, slot) if finding.kind == "unknown" else None
            for one in break_even(finding, lever, slot) if lever is not None else ():
                if one.of not in nearest or one.kg < nearest[one.of].kg:
                    nearest[one.of] = Crossing(one.of, one.kg, finding.code)
    return tuple(sorted(nearest.values(), key=lambda one: (one.kg, one.of)))


def what_decides(finding: Finding, slot: Slot, header: HeaderUnits) -> str:
    """Return what to weigh where a change has left a question, with the number at which its answer turns.

    That is the part nobody has weighed that crosses the limit first by itself; where all is weighed and only in doubt,
    the loaded trailer and the limit itself. Empty where no such number is known.
    """
    lever = lever_of(finding, slot)
    if lever is None or finding.limit is None:
        return ""
    if all(mass.kg.known for mass in slot.masses):
        return then_weigh_all(finding.limit, finding.unit, rises(lever), header)
    even = break_even(finding, lever, slot)
    return then_weigh(named(even[0].of), even[0].kg, header) if even else ""


def best_reachable(bench: Bench, finding: Finding, lever: Lever, slot: Slot) -> float | None:
    """Return the best a number can come to with everything moved, left, emptied or filled, where that is not enough.

    None where it would be enough but for the harm it does elsewhere, and where something nobody has weighed might do.
    The number is that of the worse end of what may happen, as the finding judges it.
    """
    pull = pull_of(finding, lever, slot)
    if pull is None or finding.limit is None or slot.weight is None or not all(mass.kg.known for mass in slot.masses):
        return None
    gain, away = whole_range(
        bench.reading.rig, slot, lever, pull, finding.limit, bench.loose_for(slot, lever), AXES[lever.load]
    )
    short = pull.at_least - gain
    if not short > 0.0:
        return None
    gross = slot.weight.gross.band.best
    short *= gross / (gross - away) if lever.load == "share" else 1.0 / pull.times
    return finding.limit - short if rises(lever) else finding.limit + short


def rises(lever: Lever) -> bool:
    """Return whether a finding's number has to rise: between the sides it always has to fall."""
    return lever.is_up and lever.load != "left"


def to_add(finding: Finding, lever: Lever, slot: Slot) -> float | None:
    """Return the mass (kg) that would make a light ball heavy enough, put down at the front wall; None for the rest."""
    pull = pull_of(finding, lever, slot)
    if pull is None or lever.load not in {"tongue", "share"} or not lever.is_up:
        return None
    gives = pull.per.at((0.0, 0.0, 0.0))
    return pull.wanted / gives if gives > 0.0 else None


class Range(NamedTuple):
    """How much a load changes in the wanted direction at the very most, and what is then aboard no more (kg).

    Of a share, the change is counted in shares of the weight as it was.
    """

    gain: float
    away: float


def whole_range(
    rig: Rig, slot: Slot, lever: Lever, pull: Pull, limit: float, loose: Iterable[Movable], axes: Iterable[int]
) -> Range:
    """Return the most that moving, leaving, emptying and filling can do together; nothing that may be done does more.

    Every part that may be moved, and all cargo, stands at its end stop whatever else is in its way, or it is left
    behind where that does more; every tank is emptied, and one for water filled, where that does more. Of a share,
    ``limit`` decides which: a mass whose own share is below it.
    """
    cargo = {id(mass) for piece in cargo_of(rig, slot) for mass in piece.masses}
    families, stops = families_of(rig), dict[str, float]()
    for one in loose:
        per = pull.by_moving(one.axis, lever.is_up)
        gain = max(0.0, per * one.room.most, per * one.room.least) if per else 0.0
        for member in families[one.item.of]:
            stops[member] = stops.get(member, 0.0) + gain
    sign, gain, away = (1.0 if lever.is_up else -1.0), 0.0, 0.0
    beyond = _beyond(slot, lever, limit)

    def owed(mass: Mass | None) -> float:
        return sign * mass.kg.best * (pull.per.at((mass.x.best, mass.y.best, mass.z.best)) + beyond) if mass else 0.0

    for tank in slot.standing.tanks:
        more, less = _of_a_tank(tank, owed, max(0.0, stops.get(tank.of, 0.0)))
        gain, away = gain + more, away + less
    tanks = {tank.of for tank in slot.standing.tanks}
    for mass in slot.masses:
        if mass.what == "fluid" and mass.of in tanks:
            continue
        moved_by = stops.get(mass.of, 0.0)
        if id(mass) in cargo and mass.of not in stops:
            walls = (_to_the_wall(rig, mass, axis, pull.by_moving(axis, lever.is_up)) for axis in axes)
            moved_by = sum(max(0.0, gain) for gain in walls)
        best = mass.kg.best * moved_by
        if (id(mass) in cargo or mass.what == "fluid") and -owed(mass) > best:
            best, away = -owed(mass), away + mass.kg.best
        gain += max(0.0, best)
    return Range(gain, away)


def _of_a_tank(tank: StandingTank, owed: Callable[[Mass | None], float], moved: float) -> tuple[float, float]:
    """Return what a tank gives at the very most, from the worst it may hold now, and what is then gone from it (kg).

    ``owed`` is what a mass does to the load where it stands, ``moved`` what each kilogram gives with its tank at the
    end stop. A tank for water of nobody knows what size may give anything.
    """
    if may_be_filled(tank) and (tank.tank.volume is None or not tank.tank.volume.known):
        return inf, 0.0
    worst = min(owed(held(tank, end)) for end in (tank.fill.low, tank.fill.high))
    now = held(tank, tank.fill.best)
    found = []
    for level in (tank.fill.low, tank.fill.high, 0.0, *((1.0,) if may_be_filled(tank) else ())):
        mass = held(tank, level)
        kg = mass.kg.best if mass is not None else 0.0
        found.append((owed(mass) + kg * moved - worst, (now.kg.best if now is not None else 0.0) - kg))
    return max(found)


def _to_the_wall(rig: Rig, mass: Mass, axis: int, per: float) -> float:
    """Return what a kilogram gives with its middle at one wall or the other."""
    ends = ((rig.surfaces.front, rig.surfaces.rear), (rig.surfaces.left, rig.surfaces.right))[axis]
    here = (mass.x, mass.y)[axis].best
    return max(per * (end - here) for end in ends) if per else 0.0


def _beyond(slot: Slot, lever: Lever, limit: float) -> float:
    """Return how far a share is beyond its limit, for each kilogram of the whole; nothing for a load."""
    if lever.load != "share" or slot.weight is None:
        return 0.0
    return (slot.weight.share.band.best - limit) / slot.weight.gross.band.best

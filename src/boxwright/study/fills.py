"""What to pump where: a tank carried fuller, less full or empty, or its water taken to another tank.

Only what anybody may let out or carry: water is filled, let out and pumped across; waste water is only emptied, where
that is allowed; fuel is only carried less, and never pumped: the other tank may stand where people sleep. Gas, and what
nobody has named, stay as they are.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import permutations
from math import hypot
from typing import NamedTuple

from boxwright.disciplines import water
from boxwright.disciplines.water.parts import StandingTank
from boxwright.exchange import Mass
from boxwright.rig.rig import Rig
from boxwright.study.lever import Lever, Pull
from boxwright.study.moves import Candidate, Edit
from boxwright.study.remedy_words import filled, pumped
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits, exactly

FILLABLE = frozenset({"water", "fresh water"})
EMPTIED = frozenset({"grey water", "gray water", "black water"})
CARRIED_LESS = frozenset({"diesel", "petrol", "gasoline", "kerosene"})
"""Which fluids may be filled and let out, only emptied, only carried less (common practice, no source)."""
LEVELS = {0.0: "empty", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4", 1.0: "full"}
"""The levels a gauge, or an eye at the tank, tells apart."""
SAME = 1e-6
"""Two fills nearer than this are one."""


class Does(NamedTuple):
    """What the holding of a tank does to a load, counted in the wanted direction, and to the whole weight (kg)."""

    gain: float
    kg: float


def fills(rig: Rig, slot: Slot, lever: Lever, pull: Pull, need: float, header: HeaderUnits) -> list[Candidate]:
    """Return the least change of each tank, and of each two tanks of water, that changes a load enough."""
    weigh = _Scales(slot, lever, pull)
    tanks = tuple(tank for tank in slot.standing.tanks if _may_be_changed(tank))
    made = []
    for tank in tanks:
        levels = sorted((level for level in LEVELS if _may_be_at(tank, level)), key=lambda one: _away(tank, one))
        for is_more in (False, True):
            way = (level for level in levels if (level > tank.fill.best) == is_more)
            level = next((level for level in way if weigh.gain(tank, level) >= need), None)
            if level is not None:
                made.append(_at_level(rig, slot, tank, level, header))
    water_tanks = [tank for tank in tanks if tank.tank.of.lower() in FILLABLE and tank.fill.low == tank.fill.high]
    for source, other in permutations(water_tanks, 2):
        made += _across(slot, source, other, weigh, need, header)
    return made


class _Scales:
    """What the fills of tanks do to one load of a slot."""

    def __init__(self, slot: Slot, lever: Lever, pull: Pull) -> None:
        self.pull, self.sign = pull, 1.0 if lever.is_up else -1.0
        is_share = lever.load == "share" and slot.weight is not None
        self.whole = slot.weight.gross.band.best if is_share and slot.weight is not None else 0.0

    def gain(self, tank: StandingTank, level: float) -> float:
        """Return how much the load changes in the wanted direction from the worst the tank may hold now."""
        now = min((self._held(tank, end) for end in (tank.fill.low, tank.fill.high)), key=lambda one: one.gain)
        return self.of([self._held(tank, level)], [now])

    def of_pumping(self, source: StandingTank, other: StandingTank, to_source: float, to_other: float) -> float:
        """Return how much the load changes when both tanks hold something else."""
        after = [self._held(source, to_source), self._held(other, to_other)]
        return self.of(after, [self._held(source, source.fill.best), self._held(other, other.fill.best)])

    def of(self, after: Iterable[Does], before: Iterable[Does]) -> float:
        """Return how much the load changes from one holding to another; a share's whole grows or shrinks with it."""
        after, before = tuple(after), tuple(before)
        gain = sum(one.gain for one in after) - sum(one.gain for one in before)
        kg = sum(one.kg for one in after) - sum(one.kg for one in before)
        return gain / (1.0 + kg / self.whole) if self.whole else gain

    def _held(self, tank: StandingTank, level: float) -> Does:
        mass = held(tank, level)
        if mass is None:
            return Does(0.0, 0.0)
        per = self.pull.per.at((mass.x.best, mass.y.best, mass.z.best))
        return Does(self.sign * mass.kg.best * per, mass.kg.best)


def held(tank: StandingTank, level: float) -> Mass | None:
    """Return what a tank holds at a level; None for an empty one."""
    return next(iter(water.offers((replace(tank, fill=exactly(level)),)).masses), None)


def _kg(tank: StandingTank, level: float) -> float:
    mass = held(tank, level)
    return mass.kg.best if mass is not None else 0.0


def may_be_filled(tank: StandingTank) -> bool:
    """Return whether anybody may fill a tank: it is there, and for water."""
    return tank.share.low == 1.0 and tank.tank.of.lower() in FILLABLE


def may_be_emptied(tank: StandingTank) -> bool:
    """Return whether a tank may be carried less full, or empty."""
    return tank.tank.of.lower() in FILLABLE | EMPTIED | CARRIED_LESS and tank.share.low == 1.0


def _may_be_changed(tank: StandingTank) -> bool:
    volume, place = tank.tank.volume, tank.place
    is_placed = place.x.known and place.y.known and place.z.known
    return may_be_emptied(tank) and volume is not None and volume.known and is_placed


def _may_be_at(tank: StandingTank, level: float) -> bool:
    if abs(tank.fill.low - level) < SAME and abs(tank.fill.high - level) < SAME:
        return False
    fluid = tank.tank.of.lower()
    if fluid in EMPTIED:
        return level == 0.0
    return fluid in FILLABLE or level <= tank.fill.low


def _away(tank: StandingTank, level: float) -> float:
    return abs(level - tank.fill.best)


def _at_level(rig: Rig, slot: Slot, tank: StandingTank, level: float, header: HeaderUnits) -> Candidate:
    """Return the candidate that carries one tank at another level; the effort is that of carrying it to the door."""
    change = _kg(tank, level) - _kg(tank, tank.fill.best)
    far = abs(rig.surfaces.rear - tank.place.x.best)
    was = text_of(tank.fill.best) if tank.fill.low == tank.fill.high else ""
    says = filled(tank.name, text_of(level), was, change, slot.use == "tow", header)
    return Candidate(says, (_edit(slot, tank, level),), abs(change) * far, 1, change < 0.0)


def _across(
    slot: Slot, source: StandingTank, other: StandingTank, weigh: _Scales, need: float, header: HeaderUnits
) -> Iterator[Candidate]:
    """Yield the least water pumped from one tank to another that changes the load enough."""
    for volume in sorted(_volumes(source, other)):
        to_source = source.fill.best - volume / _capacity(source)
        to_other = other.fill.best + volume / _capacity(other)
        if weigh.of_pumping(source, other, to_source, to_other) < need:
            continue
        says = pumped(source.name, other.name, volume, text_of(to_source), text_of(to_other), header)
        kg = _kg(source, source.fill.best) - _kg(source, to_source)
        far = hypot(source.place.x.best - other.place.x.best, source.place.y.best - other.place.y.best)
        yield Candidate(says, (_edit(slot, source, to_source), _edit(slot, other, to_other)), kg * far, 1)
        return


def _volumes(source: StandingTank, other: StandingTank) -> set[float]:
    """Return the amounts (m3) that leave one of two tanks at a level anybody can read, and overflow none."""
    there, room = source.fill.best * _capacity(source), (1.0 - other.fill.best) * _capacity(other)
    amounts = {there - level * _capacity(source) for level in LEVELS}
    amounts |= {level * _capacity(other) - other.fill.best * _capacity(other) for level in LEVELS}
    return {amount for amount in amounts if SAME < amount <= min(there, room) + 1e-12}


def _capacity(tank: StandingTank) -> float:
    """Return what a tank holds when full (m3)."""
    return tank.tank.volume.best if tank.tank.volume is not None else 0.0


def _edit(slot: Slot, tank: StandingTank, level: float) -> Edit:
    return Edit(f"loads[{slot.load}].tanks.{tank.name}", text_of(level))


def text_of(level: float) -> str:
    """Return a fill as it is written: the level of a gauge, else per cent."""
    word = next((word for one, word in LEVELS.items() if abs(one - level) < SAME), None)
    return word or f"{level * 100.0:.1f}".rstrip("0").rstrip(".") + " %"

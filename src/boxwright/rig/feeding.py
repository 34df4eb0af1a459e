"""What may feed a heater: batteries, inlets and what stands between, the wires of the plan, and what else draws."""

from __future__ import annotations

from collections.abc import Iterator, Set
from typing import Literal, NamedTuple

from boxwright.disciplines.heat.feeds import scaled
from boxwright.disciplines.heat.parts import Facet as HeatFacet
from boxwright.disciplines.heat.parts import PlannedDraw, PlannedJoin, PlannedLead, PlannedSource
from boxwright.disciplines.power.parts import Battery, Draw, Habit, Wire
from boxwright.disciplines.power.parts import Facet as PowerFacet
from boxwright.disciplines.water.parts import Facet as WaterFacet
from boxwright.rig.references import leading
from boxwright.rig.rig import Item
from boxwright.units import Band

UNREAD = Band(0.0, 0.0, float("inf"), known=False)
PROTECTED: tuple[Literal["fuse", "breaker"], ...] = ("fuse", "breaker")
NO_FUSE = frozenset({"none", "no"})


class Feeding(NamedTuple):
    """What heat sees of the plan's electricity, and the names of its tanks."""

    sources: tuple[PlannedSource, ...]
    leads: tuple[PlannedLead, ...]
    draws: tuple[PlannedDraw, ...]
    tanks: tuple[str, ...]
    joins: tuple[PlannedJoin, ...] = ()


def feeding_of(
    items: dict[str, tuple[Item, ...]], habits: tuple[tuple[str, Habit], ...], unread: Set[str] = frozenset()
) -> Feeding:
    """Return what may feed the heaters and coolers of a plan; nothing where it has none.

    ``unread`` are the paths of what stands in the file and could not be read.
    """
    if not any(_is_heater(one) or _is_cooler(one) for one in items["parts"]):
        return Feeding((), (), (), ())
    return feeding_whatever(items, habits, unread)


def feeding_whatever(
    items: dict[str, tuple[Item, ...]], habits: tuple[tuple[str, Habit], ...], unread: Set[str] = frozenset()
) -> Feeding:
    """Return what may feed whatever is plugged into the wires of a plan, such as a heater that is borrowed."""
    heaters = [one for one in items["parts"] if _is_heater(one)]
    things = (*items["parts"], *items["openings"])
    tanks = tuple(one.name for one in things if isinstance(held := one.facet("water"), WaterFacet) and held.tank)
    draws = (*_draws(things, {one.of for one in heaters}), *_habits(habits, things))
    names = frozenset(one.name for one in things)
    leads = tuple(_leads(items["wires"], names, unread))
    return Feeding(tuple(_sources(items, unread)), leads, draws, tanks, tuple(_joins(items["wires"], names)))


def _is_heater(item: Item) -> bool:
    facet = item.facet("heat")
    return isinstance(facet, HeatFacet) and facet.heater is not None


def _is_cooler(item: Item) -> bool:
    facet = item.facet("heat")
    return isinstance(facet, HeatFacet) and facet.cools is not None


def _sources(items: dict[str, tuple[Item, ...]], unread: Set[str]) -> Iterator[PlannedSource]:
    for one in items["parts"]:
        facet = one.facet("power")
        if not isinstance(facet, PowerFacet):
            yield PlannedSource(one.of, one.name)
        elif facet.battery is not None:
            yield _battery(one, facet.battery)
        else:
            charger = facet.charger
            yield PlannedSource(
                one.of,
                one.name,
                gives=_gives(facet, f"{one.of}.inverter" in unread),
                idle=facet.inverter.idle if facet.inverter is not None else None,
                charges=charger.amps if charger is not None else None,
                charged_from=charger.from_.strip() if charger is not None else "",
                is_panel=facet.panel is not None,
            )
    for one in items["openings"]:
        yield PlannedSource(one.of, one.name, is_opening=True)


def _battery(item: Item, battery: Battery) -> PlannedSource:
    """Return a battery by its label; several of one line give as many times what one gives."""
    count, most = item.words.count or 1, battery.max_amps
    most = scaled(most, count) if most is not None and most.known else most
    volts = battery.volts if battery.volts is not None and battery.volts.known else None
    return PlannedSource(item.of, item.name, _rated(battery, count), battery.kind, volts=volts, most_amps=most)


def _gives(facet: PowerFacet, is_unread: bool) -> Band | None:
    """Return what an inverter gives without a break (W); None of what is none, not known where nobody can read it."""
    is_blank = facet.inverter is None and "inverter" in facet.model_fields_set
    if is_unread or is_blank:
        return UNREAD
    if facet.inverter is None:
        return None
    return facet.inverter.watts if facet.inverter.watts is not None else UNREAD


def _rated(battery: Battery, count: int) -> Band:
    """Return what so many batteries of a label hold (J)."""
    volts, charge = battery.volts, battery.amp_hours
    if volts is None or charge is None or not (volts.known and charge.known):
        return UNREAD
    best, low, high = (count * getattr(volts, end) * getattr(charge, end) for end in ("best", "low", "high"))
    return Band(best, low, high, spread="interval")


def _leads(wires: tuple[Item, ...], names: frozenset[str], unread: Set[str]) -> Iterator[PlannedLead]:
    for one in wires:
        wire = one.own
        # What joins two panels or batteries feeds neither.
        if isinstance(wire, Wire) and not wire.joins.strip():
            starts, ends = (leading(names, end.strip()) or end.strip() for end in (wire.from_, wire.to))
            lost = frozenset(
                key for key in PROTECTED if f"{one.of}.{key}" in unread or f"{one.of}.{key}.amps" in unread
            )
            volts = wire.volts if wire.volts is not None and wire.volts.known else None
            yield PlannedLead(one.of, one.name, starts, ends, _lets_through(wire, lost), volts)


def _joins(wires: tuple[Item, ...], names: frozenset[str]) -> Iterator[PlannedJoin]:
    for one in wires:
        wire = one.own
        if isinstance(wire, Wire) and wire.joins.strip():
            starts, ends = (leading(names, end.strip()) or end.strip() for end in (wire.from_, wire.to))
            yield PlannedJoin(one.of, starts, ends, wire.joins.strip().lower())


def _lets_through(wire: Wire, lost: frozenset[str]) -> Band | None:
    """Return what the fuse and the breaker of a wire let through (A), the weaker of both; None where it has neither.

    One that is blank, ``unknown`` or among those ``lost``, for nobody can read it, is no larger than the other.
    """
    rated = []
    for key in PROTECTED:
        one = getattr(wire, key)
        if key in lost or (one is None and key in wire.model_fields_set):
            rated.append(UNREAD)
        elif one is not None and one.kind.strip().lower() not in NO_FUSE:
            rated.append(one.amps if one.amps is not None and one.amps.known else UNREAD)
    if not rated:
        return None
    best, low, high = (min(getattr(one, end) for one in rated) for end in ("best", "low", "high"))
    is_known = all(one.known for one in rated)
    return Band(best, low, high, is_known, "exact" if low == high else "interval")


def _draws(things: tuple[Item, ...], heaters: set[str]) -> Iterator[PlannedDraw]:
    """Return what draws beside the heaters, whose own draw is worked out of their night."""
    for one in things:
        facet = one.facet("power")
        if isinstance(facet, PowerFacet) and facet.draw is not None and one.of not in heaters:
            count = one.words.count or max(len(one.words.at), 1)
            yield _drawn(one.of, one.name, facet.draw, count, facet.hours, facet.duty)


def _habits(habits: tuple[tuple[str, Habit], ...], things: tuple[Item, ...]) -> Iterator[PlannedDraw]:
    paths = {one.name: one.of for one in things}
    for name, habit in habits:
        if habit.draw is not None:
            yield _drawn(paths.get(habit.at.strip(), ""), name, habit.draw, 1, habit.hours, None)


def _drawn(of: str, name: str, draw: Draw, count: int, hours: Band | None, duty: Band | None) -> PlannedDraw:
    return PlannedDraw(of, name, draw.amps, draw.watts, count if draw.is_each else 1, hours, duty)

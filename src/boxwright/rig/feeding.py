"""What may feed a heater: batteries, inlets and what stands between, the wires of the plan, and what else draws."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from boxwright.disciplines.heat.feeds import VOLTS, scaled
from boxwright.disciplines.heat.parts import Facet as HeatFacet
from boxwright.disciplines.heat.parts import PlannedDraw, PlannedLead, PlannedSource
from boxwright.disciplines.power.parts import Battery, Draw, Habit, Wire
from boxwright.disciplines.power.parts import Facet as PowerFacet
from boxwright.disciplines.water.parts import Facet as WaterFacet
from boxwright.rig.references import leading
from boxwright.rig.rig import Item
from boxwright.units import Band

UNREAD = Band(0.0, 0.0, float("inf"), known=False)


class Feeding(NamedTuple):
    """What heat sees of the plan's electricity, and the names of its tanks."""

    sources: tuple[PlannedSource, ...]
    leads: tuple[PlannedLead, ...]
    draws: tuple[PlannedDraw, ...]
    tanks: tuple[str, ...]


def feeding_of(items: dict[str, tuple[Item, ...]], habits: tuple[tuple[str, Habit], ...]) -> Feeding:
    """Return what may feed the heaters and coolers of a plan; nothing where it has none."""
    heaters = [one for one in items["parts"] if _is_heater(one)]
    if not heaters and not any(_is_cooler(one) for one in items["parts"]):
        return Feeding((), (), (), ())
    things = (*items["parts"], *items["openings"])
    tanks = tuple(one.name for one in things if isinstance(held := one.facet("water"), WaterFacet) and held.tank)
    draws = (*_draws(things, {one.of for one in heaters}), *_habits(habits, things))
    names = frozenset(one.name for one in things)
    return Feeding(tuple(_sources(items)), tuple(_leads(items["wires"], names)), draws, tanks)


def _is_heater(item: Item) -> bool:
    facet = item.facet("heat")
    return isinstance(facet, HeatFacet) and facet.heater is not None


def _is_cooler(item: Item) -> bool:
    facet = item.facet("heat")
    return isinstance(facet, HeatFacet) and facet.cools is not None


def _sources(items: dict[str, tuple[Item, ...]]) -> Iterator[PlannedSource]:
    for one in items["parts"]:
        facet = one.facet("power")
        if not isinstance(facet, PowerFacet):
            yield PlannedSource(one.of, one.name)
        elif facet.battery is not None:
            yield PlannedSource(one.of, one.name, _rated(facet.battery, one.words.count or 1), facet.battery.kind)
        else:
            charger = facet.charger
            yield PlannedSource(
                one.of,
                one.name,
                gives=_gives(facet),
                charges=charger.amps if charger is not None else None,
                charged_from=charger.from_.strip() if charger is not None else "",
                is_panel=facet.panel is not None,
            )
    for one in items["openings"]:
        yield PlannedSource(one.of, one.name, is_opening=True)


def _gives(facet: PowerFacet) -> Band | None:
    """Return what an inverter gives without a break (W); None of what is none."""
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


def _leads(wires: tuple[Item, ...], names: frozenset[str]) -> Iterator[PlannedLead]:
    for one in wires:
        wire = one.own
        # What joins two panels or batteries feeds neither.
        if isinstance(wire, Wire) and not wire.joins.strip():
            starts, ends = (leading(names, end.strip()) or end.strip() for end in (wire.from_, wire.to))
            yield PlannedLead(one.of, one.name, starts, ends, _carries(wire))


def _carries(wire: Wire) -> Band | None:
    """Return what the fuse or the breaker of a wire lets through (W), the weaker of both; None where none is written.

    One that has no voltage written is of a 12 V bus.
    """
    volts = wire.volts.best if wire.volts is not None and wire.volts.known else VOLTS.best
    rated = [one.amps for one in (wire.fuse, wire.breaker) if one is not None and one.amps is not None]
    known = [one for one in rated if one.known]
    return scaled(min(known, key=lambda one: one.low), volts) if known else None


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

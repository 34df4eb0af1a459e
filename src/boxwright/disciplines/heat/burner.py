"""A heater as it stands: what it burns, where its exhaust ends, where its air comes from, what it draws from."""

from __future__ import annotations

import re
from dataclasses import replace

from boxwright.disciplines.heat.cold_hours import WANTED, Warmth
from boxwright.disciplines.heat.feeds import NO_FEED, OF_VOLTS, Feed
from boxwright.disciplines.heat.fuel_piece import Where, is_any_store, is_in_doubt, kind_of
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.method import pressure_at, thin_air
from boxwright.disciplines.heat.parts import FuelTank, Heater, Pipe, PlannedHeater
from boxwright.disciplines.heat.result import Runs, StandingHeater, Vented
from boxwright.exchange import Box, Vector
from boxwright.model.place import Place, shifted
from boxwright.units import Band

FUELS = columns("fuel")
SOLID = columns("solid_fuel")
"""What is burnt by weight: J/kg at least and most, and what of it such stoves give."""
GASES = ("propane", "gas", "lpg", "lp gas", "autogas", "butane", "isobutane")
"""Gases of bottles. A litre of each counts as one of propane, which holds least: no night takes more than is told."""
ALCOHOLS = ("alcohol", "spirit", "spirits", "ethanol", "bioethanol", "denatured alcohol", "methylated spirit",
            "methylated spirits", "meths")  # fmt: skip
ALIKE = {"gasoline": "petrol", "paraffin": "kerosene", "heating oil": "diesel"}
ALIKE |= dict.fromkeys(GASES, "propane") | dict.fromkeys(ALCOHOLS, "alcohol")
NO_FAN = frozenset({"wood", "alcohol", "methanol", "coal", "charcoal"})
"""What burns by itself: a heater of it takes no electricity unless somebody wrote that it does."""
ELECTRIC = frozenset({"electric", "electrical", "electricity", "mains", "shore", "grid"})
BESIDE_VOLTS = frozenset({"ac", "dc", "power", "heater", "from", "of", "on", "the"})
"""What may stand beside them, or beside some volts, such as shore power and 230 V AC."""
IN_THE_ROOM = frozenset({"none", "no", "inside", "in", "room", "in the room", "into the room", "unvented", "ventless"})
SIDES = {"left": (1, -1.0), "right": (1, 1.0), "rear": (0, 1.0), "front": (0, -1.0)}
BELOW = frozenset({"below floor", "floor", "below", "under floor", "down"})
TOUCH = 0.001
"""m: what lies this little over the inside of a wall lies against it."""
NOTHING = Band(0.0, 0.0, 0.0, known=False)


def fuel_named(written: str) -> str:
    """Return the fuel a word means; empty where it is none that is known. Volts beside it are of its fan."""
    word = " ".join(OF_VOLTS.sub("", written.lower()).replace(",", " ").split())
    word = ALIKE.get(word, word)
    return word if word in FUELS or word in SOLID else ""


def gas_named(written: str) -> str:
    """Return the gas of bottles that is written, as its word; empty where it is none."""
    word = " ".join(OF_VOLTS.sub("", written.lower()).replace(",", " ").split())
    return word if word in GASES else ""


def runs_on(written: str) -> Runs:
    """Return what a heater is by the word for its fuel."""
    bare, volts = OF_VOLTS.subn(" ", written.lower())
    words = set(re.findall(r"[^\s,]+", bare))
    if words <= ELECTRIC | BESIDE_VOLTS and (volts or words & ELECTRIC):
        return "electric"
    return "burns" if fuel_named(written) else "unknown"


def plain_fuel(written: str) -> str:
    """Return the word for what a heater runs on as other chapters know it: 230 V is electric; else as written."""
    return "electric" if runs_on(written) == "electric" else fuel_named(written) or written


def burns_by_itself(facet: Heater) -> bool:
    """Return whether a heater wants no electricity by what it burns, and none is written."""
    written = [one for one in (facet.draw, facet.start) if one is not None]
    return not written and fuel_named(facet.of) in NO_FAN


def standing_heater(
    planned: PlannedHeater,
    is_certain: bool,
    tanks: tuple[FuelTank, ...],
    box: Box,
    feed: Feed = NO_FEED,
    known: tuple[str, ...] = (),
) -> StandingHeater:
    """Return a heater as it stands in a slot; its tank is the one its path names, else the only one of its fuel.

    ``feed`` is what feeds it with electricity; ``known`` are the names of all tanks of the plan.
    """
    heater = planned.heater
    low, high = _end_of(planned, heater.exhaust, box)
    inlet_low, inlet_high = _end_of(planned, heater.intake, box)
    return StandingHeater(
        planned,
        is_certain,
        runs_on(heater.of),
        _vented(heater.exhaust) if runs_on(heater.of) != "electric" else "unknown",
        _vented(heater.intake),
        low,
        high,
        _tank(planned, tanks, known),
        inlet_low,
        inlet_high,
        feed,
        tank_named(planned, known),
        side_of_the_shell(planned.place, box),
        burns_by_itself(heater),
    )


def side_of_the_shell(place: Place, box: Box) -> Where:
    """Return whether a box lies wholly in the room or wholly out of it; of one in doubt or through a wall, unknown."""
    length, width, height = box.inside
    room = ((0.0, length), (-width / 2.0, width / 2.0), (0.0, height))
    edges = [(place.low_edge(axis), shifted(place.low_edge(axis), place.size[axis])) for axis in range(3)]
    sides = tuple(zip(edges, room, strict=True))
    if any(low.known and (high.high <= start or low.low >= end) for (low, high), (start, end) in sides):
        return "outside"
    if not all(low.known for low, _ in edges):
        return "unknown"
    is_in = all(low.low >= start - TOUCH and high.high <= end + TOUCH for (low, high), (start, end) in sides)
    return "in the room" if is_in else "unknown"


def _vented(pipe: Pipe | None) -> Vented:
    if pipe is None:
        return "unknown"
    out = " ".join(pipe.out.lower().split())
    if out in IN_THE_ROOM:
        return "in the room"
    return "out" if out in SIDES or out in BELOW or out in ("roof", "up") else "unknown"


def _end_of(planned: PlannedHeater, pipe: Pipe | None, box: Box) -> tuple[Vector | None, Vector | None]:
    """Return the corners of the box a pipe may end in: at the outside face, as far along as it is long."""
    if pipe is None or _vented(pipe) != "out":
        return None, None
    out = " ".join(pipe.out.lower().split())
    half = box.outside[1] / 2.0
    reach = pipe.length.high if pipe.length is not None and pipe.length.known else box.outside[0]
    x = planned.place.x
    size = planned.place.size[0] / 2.0
    if pipe.x is not None and pipe.x.known:
        x_low, x_high = pipe.x.low, pipe.x.high
    else:
        x_low, x_high = x.low - size - reach, x.high + size + reach
    y = planned.place.y
    y_low, y_high = y.low - reach, y.high + reach
    if out in SIDES:
        axis, way = SIDES[out]
        if axis == 1:
            y_low = y_high = way * half
        elif way > 0.0:
            x_low = x_high = box.rear_x
        else:
            x_low = x_high = box.front_x
    foot = planned.place.low_edge(2).low
    # It may drop on its way to the skin, but not through the deck: what does is written as below it.
    least = min(foot, max(foot - reach, 0.0))
    z_low, z_high = (-reach, 0.0) if out in BELOW or pipe.below else (least, box.outside[2])
    if pipe.z is not None and pipe.z.known:
        z_low, z_high = pipe.z.low, pipe.z.high
    if out in ("roof", "up"):
        z_low = z_high = box.outside[2]
    return (x_low, y_low, z_low), (x_high, y_high, z_high)


def _tank(planned: PlannedHeater, tanks: tuple[FuelTank, ...], known: tuple[str, ...]) -> FuelTank | None:
    first = tank_named(planned, known)
    named = next((one for one in tanks if one.name == first), None)
    if named is not None or first:
        # A tank that is named and does not stand, or is nowhere, is not replaced by one that happens to.
        return named
    fuel = fuel_named(planned.heater.of)
    alike = [one for one in tanks if fuel and fuel_named(one.fluid) == fuel]
    return alike[0] if len(alike) == 1 else None


def tank_named(planned: PlannedHeater, known: tuple[str, ...]) -> str:
    """Return the name of the tank a heater's path begins with; empty where it begins with another piece of it."""
    first = planned.heater.path[0].strip() if planned.heater.path else ""
    if first in known:
        return first
    if first == planned.name or kind_of(first) not in ("other", "end") or is_any_store(first) or is_in_doubt(first):
        return ""
    return first


def warmth_of(standing: StandingHeater, height: Band | None = None, charge: Band | None = None) -> Warmth:
    """Return what a heater gives; where it stands perhaps it may give nothing, and what nobody wrote is not known.

    ``height`` (m) is how high the place lies above the sea: what burns gives less there. ``charge`` is how full its
    battery is at dusk, None where nobody wrote it.
    """
    heater = standing.planned.heater
    feed = standing.feed if standing.takes_electricity else NO_FEED
    wanted = heater.holds
    is_written = wanted is not None and wanted.known
    highest = heater.highest if heater.highest is not None and heater.highest.known else NOTHING
    unsaid = Band(0.0, 0.0, highest.high, known=False)
    lowest = heater.lowest if heater.lowest is not None and heater.lowest.known else unsaid
    if standing.runs != "electric":
        highest, lowest = (_up_there(one, height, heater.adjusts) for one in (highest, lowest))
    highest, lowest = (_as_fed(one, standing) for one in (highest, lowest))
    return Warmth(
        standing.planned.of,
        standing.planned.name,
        lowest,
        highest,
        wanted.best if is_written and wanted is not None else WANTED,
        not is_written,
        heater.switches,
        fed_by=feed.way[-1] if feed.ends == "battery" else "",
        is_plugged_in=feed.ends == "outside",
        charge=charge if feed.ends == "battery" else None,
    )


def warmth_at_work(standing: StandingHeater, height: Band | None) -> Warmth:
    """Return what a heater gives through a day of work: perhaps nothing where its feed or its fuel is not sure.

    A battery is not held against a day, so that an electric heater of one is not sure.
    """
    warmth, feed = warmth_of(standing, height), standing.feed
    is_fed = not standing.takes_electricity or (feed.is_sure and standing.is_fed)
    if standing.runs == "electric":
        is_lasting = feed.ends == "outside"
    else:
        is_lasting = standing.tank is not None and standing.tank.fill.low > 0.0 and standing.tank.is_certain
    if is_fed and is_lasting:
        return warmth
    highest, lowest = (replace(_perhaps(one), best=one.best) for one in (warmth.highest, warmth.lowest))
    return replace(warmth, highest=highest, lowest=lowest)


def _as_fed(heat: Band, standing: StandingHeater) -> Band:
    """Return what a heater gives of its heat by what feeds it: what blows a fuse warms nothing.

    One that is electric gives at a lower setting perhaps what its way gives on. What is perhaps enough takes nothing
    off what is most likely, for it is asked.
    """
    if standing.is_certain and standing.is_fed:
        return heat
    most = standing.feed.most if standing.runs == "electric" and standing.enough != "yes" else None
    given = heat if most is None else _no_more(heat, most)
    is_there = standing.is_certain and (standing.feed.stands == "yes" or not standing.takes_electricity)
    if not is_there or "no" in (standing.enough, standing.suits):
        return _perhaps(given)
    return replace(_perhaps(given), best=given.best if most is None or most.known else heat.best)


def air_share(height: Band | None) -> Band | None:
    """Return the share of its air a burner gets at a height; None where nobody wrote how high the place lies."""
    if height is None or not height.known:
        return None
    best, low, high = (thin_air(pressure_at(one)) for one in (height.best, height.high, height.low))
    return Band(best, low, high, spread=height.spread)


def _up_there(heat: Band, height: Band | None, adjusts: bool | None) -> Band:
    """Return what a burner gives at a height: as much less as there is less air where it takes less fuel for it.

    One that does not gives as much as below until it soots: it may give less. One of which nobody knows may do either.
    """
    share = air_share(height)
    if share is None or not heat.known:
        return heat
    low, high = heat.low * share.low, heat.high * (share.high if adjusts is True else max(share.high, 1.0))
    best = heat.best * (1.0 if adjusts is False else share.best)
    return Band(best, low, high, spread=heat.spread if low == heat.low and high == heat.high else "interval")


def _no_more(heat: Band, most: Band) -> Band:
    """Return the heat of an electric heater, no more than what feeds it gives on."""
    return Band(min(heat.best, most.best), min(heat.low, most.low), min(heat.high, most.high), heat.known, "interval")


def _perhaps(band: Band) -> Band:
    return Band(0.0, 0.0, band.high, band.known, "perhaps", band.assumed)

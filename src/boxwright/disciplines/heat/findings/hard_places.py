"""Rules of places that are hard on a burner: up high it gets less air than its fuel wants, in hard cold no fuel."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat.burner import air_share, fuel_named, gas_named
from boxwright.disciplines.heat.cold_hours import Outdoors
from boxwright.disciplines.heat.findings.night import MARGINS
from boxwright.disciplines.heat.fuel_way import way_of
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import OWN_RULE, SLEEP, above_sea, between, source_of, warm
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

THIN_AIR = MARGINS["thin air"]
"""m above the sea."""
SUMMER, WINTER = (columns("diesel_flows")[name][0] for name in ("summer diesel", "winter diesel"))
"""K down to which diesel flows as it is sold in summer, and in winter where winters are mild."""

BOILS = {name: row[0] for name, row in columns("gas_boils").items()}
"""K at which each gas of bottles boils."""
COOLS_BY = columns("gas_cools")["drawing"][0]
A_HEIGHT = 300.0
"""m: an example of what is written of a place."""


def height_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how high above the sea a place lies where somebody sleeps by what burns.

    Asks: the height of every place that has a coldest night
    Limit: none
    Source: own-rule
    Lever: height of the place
    """
    if not _burning(result):
        return
    for place in _places(result):
        if place.height is None or not place.height.known:
            yield Finding(
                "heat/height-not-known", place.of, "unknown", f"nobody wrote how high {place.place} lies: up there a"
                " burner gets less air, gives less and soots", source=OWN_RULE, lever=place.of, act="Read its height on"
                f" a map, and write height: {above_sea(A_HEIGHT, shown_in)} of the place", minutes=5,
                could_stop=False, uses=SLEEP, because=(place.of,),
            )  # fmt: skip


def too_high(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where a place lies higher than a burner is set for.

    Asks: the height of the place against the one of the leaflet; where it takes less fuel by itself that is its limit
    Limit: the height of the leaflet; where nobody wrote it 1500 m (common practice: the leaflet rules)
    Source: heater-practice; air by the standard atmosphere
    Lever: up_to and adjusts of the heater
    """
    for one in _burning(result):
        facet, name, where = one.planned.heater, one.planned.name, one.planned.of
        limit = facet.up_to if facet.up_to is not None and facet.up_to.known else None
        for place in _places(result):
            share = air_share(place.height)
            least = limit.low if limit is not None else THIN_AIR
            if place.height is None or share is None or place.height.high <= least:
                continue
            is_sure = limit is not None and place.height.low > limit.high
            high = above_sea(place.height.best, shown_in)
            says = f"at {place.place}, {high} above the sea, {name} gets {share.best * 100:.0f} % of the air it gets by"
            says += " the sea, and " + (
                f"its leaflet lets it burn up to {above_sea(least, shown_in)}"
                if limit is not None
                else "nobody wrote how high its leaflet lets it burn"
            )
            says += ": with fuel for more air it soots, stops and makes carbon monoxide"
            if facet.adjusts is True and limit is None:
                says += ", unless it takes as much less fuel as is written"
            yield Finding(
                "heat/too-high", where, "limit" if is_sure else "unknown", says, place.height.high, least,
                least - place.height.high, "m", source_of("margins", "thin air") if limit is None else OWN_RULE, where,
                act=f"Set {name} for that height as its leaflet says, and write up_to: of the heater; else leave it off"
                " there", minutes=15, could_stop=False, uses=SLEEP, because=(where, place.of),
            )  # fmt: skip


def fuel_thickens(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where a night is colder than the diesel of a heater flows in, or its gas boils in, or ask which that is.

    Asks: the cold at which its diesel thickens, against the coldest night outside of each place; what gas it burns
    Limit: that cold; where nobody wrote it, it is asked below 0 C, and open below -20 C (from memory); of a gas that at
        which it boils, with what a bottle cools while it gives gas
    Source: diesel-recalled, gas-recalled
    Lever: thickens of the heater; the gas of its bottle
    """
    for one in _burning(result):
        if fuel_named(one.planned.heater.of) == "diesel" and not _lies_warm(one, shown_in):
            found = [each for place in _places(result) for each in _thick(one, place, shown_in)]
            holding = [each for each in found if each.could_limit]
            # What holds nothing back is asked once, of the coldest place.
            yield from holding or sorted(found, key=lambda each: each.number or 0.0)[:1]
        for place in _places(result):
            yield from _liquid_gas(one, place, shown_in)


def _liquid_gas(one: StandingHeater, place: Outdoors, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the gas of a bottle stays liquid in a night: what is in the bottle goes before what the heater is."""
    words = (one.tank.fluid if one.tank is not None else "", one.planned.heater.of)
    gases = [gas for word in words if (gas := gas_named(word))]
    gas = next((each for each in gases if each in BOILS), gases[0] if gases else "")
    boils = BOILS.get(gas, BOILS["butane"])
    if not gas or place.coldest.low >= boils + COOLS_BY:
        return
    name, where = one.planned.name, one.planned.of
    says = f"at {place.place} it gets {between(place.coldest, shown_in)} outside, and "
    if gas in BOILS:
        says += f"{gas} boils at {warm(boils, shown_in)} and cools its bottle as it does:"
    else:
        says += f'"{gas}" may be butane, which boils at {warm(boils, shown_in)}:'
    is_sure = gas in BOILS and place.coldest.high < boils
    says += f" in such cold it stays liquid, and {name} goes out" if is_sure else f" {name} may go out for want of gas"
    yield Finding(
        "heat/fuel-thickens", where, "limit" if is_sure else "unknown", says, place.coldest.low, boils + COOLS_BY,
        place.coldest.low - boils - COOLS_BY, "K", source_of("gas_boils", "butane"), where, act="Read on the bottle"
        f" what is in it, and burn propane on such a night: write of: propane of {name} and of its bottle", minutes=5,
        could_stop=False, uses=SLEEP, because=(where, place.of),
    )  # fmt: skip


def _lies_warm(one: StandingHeater, shown_in: HeaderUnits) -> bool:
    """Return whether tank and way of a fuel lie in the room, as far as anybody wrote."""
    lie = [piece.where for piece in way_of(one, shown_in)]
    return one.tank is not None and one.tank.where == "in the room" and set(lie) == {"in the room"}


def _thick(one: StandingHeater, place: Outdoors, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what a night at one place makes of the diesel."""
    name, where, written = one.planned.name, one.planned.of, one.planned.heater.thickens
    flows = written if written is not None and written.known else None
    limit = flows.high if flows is not None else SUMMER
    if place.coldest.low >= limit:
        return
    is_sure = flows is not None and place.coldest.high < flows.low
    says = f"at {place.place} it gets {between(place.coldest, shown_in)} outside, and "
    says += f"the diesel of {name} thickens at {between(flows, shown_in)}" if flows is not None else (
        f"nobody wrote down to what cold the diesel of {name} flows"
    )  # fmt: skip
    source = OWN_RULE if flows is not None else source_of("diesel_flows", "summer diesel")
    act = "Ask whoever sells it down to what cold it flows, fill with what flows on the coldest night before it comes,"
    yield Finding(
        "heat/fuel-thickens", where, "limit" if is_sure else "unknown",
        f"{says}: thick diesel does not pass filter and pump, and the heater goes out", place.coldest.low, limit,
        place.coldest.low - limit, "K", source, where,
        act=f"{act} and write thickens: {warm(WINTER, shown_in)} of the heater", minutes=15, could_stop=False,
        could_limit=flows is not None or place.coldest.low < WINTER, uses=SLEEP, because=(where, place.of),
    )  # fmt: skip


def _burning(result: Result) -> list[StandingHeater]:
    """Return the heaters that burn, or may burn, and warm somebody asleep."""
    asleep = result.heaters if result.use == "sleep" and result.sleepers else ()
    return [one for one in asleep if one.runs != "electric" and one.vented != "in the room"]


def _places(result: Result) -> tuple[Outdoors, ...]:
    return tuple({one.outdoors.of: one.outdoors for one in result.held}.values())


__all__ = ["fuel_thickens", "height_not_known", "too_high"]

"""Sheets of air: what stays open, the humidity of each night beside what drips at it, and what stands wet."""

from __future__ import annotations

from math import isfinite
from typing import TYPE_CHECKING

from boxwright.disciplines.air import method
from boxwright.disciplines.air.findings.damp import ends_of
from boxwright.disciplines.air.hidden import is_hidden, is_skin
from boxwright.disciplines.air.result import DampNight, Result, Vent, WetPlace
from boxwright.disciplines.air.sourced import LITTLE
from boxwright.disciplines.air.telling import (
    area,
    between,
    flow,
    is_over_feet,
    percent,
    ppm,
    ppm_band,
    spread,
    water,
    water_over,
)
from boxwright.exchange import ASLEEP_FROM
from boxwright.units import HeaderUnits, show

if TYPE_CHECKING:
    from boxwright.drawing import Grid, Sheet
    from boxwright.drawing.chart import Bound, Chart

CAUTION = (
    "A tight room, a flame and a blocked vent kill. Alarms first, then the leaflet of the heater and local rules; no"
    " number here makes up for a carbon monoxide alarm."
)
MOST_DRIPPING = 2
"""How many of the places that drip first are drawn across a night."""
APART = 8.0
"""Points of humidity that two lines across a night lie apart, so that their names do not meet."""
MOST_ROWS = 8
"""Kinds of places listed for a night, the wettest first."""
HOUR, LONGEST = 3600.0, 48.0
"""Seconds, and the hours after which nobody waits for gear to dry."""
EVERY = 3
"""Hours between two labels under a night."""
STANDS = {"yes": "stays open", "perhaps": "half done", "no": "not in yet"}


def sheets(result: Result, shown_in: HeaderUnits) -> tuple[Sheet, ...]:
    """Return the sheet of the air of the room; nothing where nobody sleeps and nothing stays open."""
    # What draws is loaded when something is drawn: `check` answers without it.
    from boxwright.drawing import Sheet
    from boxwright.drawing.chart import charted

    grids = grids_of(result, shown_in)
    if not grids:
        return ()
    views = tuple(charted(one) for one in charts_of(result))
    notes = (CAUTION, *(f"{dries_in_words(one)}, at {one.place}." for one in result.nights if one.heater))
    tables = tuple(one.with_no_blanks() for one in grids)
    return (Sheet("air", "Air, humidity and what stands wet", views, notes, tables, stands_up=True),)


def _named(night: DampNight) -> str:
    """Return which night it is: its place, and what warms it."""
    heater = night.heater.partition("[")[2].rstrip("]")
    return f"{night.place}, {f'with {heater}' if heater else 'without a heater'}"


def dries_in_words(night: DampNight) -> str:
    """Return how long wet gear takes to dry in one night."""
    hours = [one.dries / HOUR for one in night.every]
    if min(hours) > LONGEST:
        return "Wet gear does not dry"
    least, most = f"{min(hours):.0f} h", f"{max(hours):.0f} h"
    if max(hours) > LONGEST:
        return f"A litre of water in wet gear takes {least} to leave, or it does not dry"
    lasts = least if least == most else f"{least.removesuffix(' h')} to {most}"
    return f"A litre of water in wet gear takes {lasts} or more to leave"


def grids_of(result: Result, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    """Return the tables: vents, the air people breathe, each night hour by hour, and what stands wet."""
    wet = tuple(grid for night in result.nights for grid in (_hours(night, shown_in), _wet(night, shown_in)) if grid)
    return (*_vents(result, shown_in), *_breathing(result, shown_in), *_damp(result, shown_in), *wet)


def _vents(result: Result, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    from boxwright.drawing import Grid

    shown = (one for one in result.vents if one.planned.kind != "door" or not result.sleepers)
    vents = sorted(shown, key=lambda one: (not one.stays_open, one.middle is None, one.middle or 0.0))
    if not vents:
        return ()
    rows = tuple((one.planned.name, *_of_vent(one, shown_in)) for one in vents)
    columns = ("Opening", "Height", "Free area", "As it is")
    return (Grid("What lets air through", columns, rows, tuple(one.planned.of for one in vents)),)


def _damp(result: Result, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    """Return what gives off vapour beside people, with how much; nothing where people are all there is."""
    from boxwright.drawing import Grid

    if len(result.moisture) < 2:
        return ()
    rows = []
    for one in result.moisture:
        given, lasts = one.kg_per_second, one.lasts * HOUR
        best, low, high = (water(end * lasts, shown_in) for end in (given.best, given.low, given.high))
        name = one.of.partition("[")[2].rstrip("]") or one.of
        until = (one.begins + one.lasts) % 24
        rows.append((f"{name}, {one.when}", spread(best, low, high), f"{one.begins} to {until} h"))
    of = tuple(one.of for one in result.moisture)
    return (Grid("What makes the air damp", ("", "Water", "When"), tuple(rows), of),)


def _of_vent(vent: Vent, shown_in: HeaderUnits) -> tuple[str, str, str]:
    where = "?" if vent.middle is None else show(vent.middle, "length", shown_in)
    side = f"{where}, {'low' if vent.is_low else 'high'}"
    free = area(vent.free, shown_in) + (", reckoned" if vent.free.assumed else "")
    if vent.there == "yes" and not vent.stays_open:
        fan = vent.planned.facet.fan
        moves = f", moves {flow(fan.flow, shown_in)}" if fan is not None and fan.flow is not None else ""
        return side, free, f"can be opened{moves}"
    now = f": {vent.planned.now}" if vent.planned.now and vent.there != "yes" else ""
    return side, free, STANDS[vent.there] + now


def _breathing(result: Result, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    from boxwright.drawing import Grid

    breathing, mild = result.breathing, result.mild
    if breathing is None:
        return ()
    wanted = f"{show(breathing.need, 'flow', shown_in)} wanted"
    by = "the end of a day of work" if result.workers else "morning"
    rows = [
        ("outdoor air, mild and still", flow(breathing.flow, shown_in), wanted),
        (f"carbon dioxide by {by}", ppm_band(breathing.morning), f"{ppm(breathing.morning.best)} most likely"),
    ]
    if not result.workers:
        rows.append(("after a very long night", ppm_band(breathing.steady), "and no more"))
    if mild is not None:
        humid = f"{percent(mild.humidity.low)} to {percent(mild.humidity.high)}"
        wanted = f"{flow(mild.need, shown_in)} keeps it dry"
        rows += [
            ("outdoor air, mild and rainy", flow(mild.flow, shown_in), wanted),
            ("humidity then", humid, f"{percent(mild.humidity.best)} most likely"),
        ]
    who = f"{result.workers} at work, everything shut" if result.workers else f"{result.sleepers} asleep"
    title = f"The air of {who}, by warmth alone"
    return (Grid(title, ("", "", ""), tuple(rows), ("",) * len(rows)),)


def _hours(night: DampNight, shown_in: HeaderUnits) -> Grid:
    from boxwright.drawing import Grid

    columns = ("Hour", "Outside", "Room", "Humidity", "Dew point", "Outdoor air")
    rows = tuple(
        (
            _clock(number),
            show(night.outside[number], "temperature", shown_in),
            show(night.air[number], "temperature", shown_in),
            _humid(night, number),
            show(_dew_point(night.humidity[number], night.air[number]), "temperature", shown_in),
            show(night.flow[number], "flow", shown_in),
        )
        for number in range(0, len(night.air), EVERY)
    )
    return Grid(f"The night at {_named(night)}", columns, rows, ("",) * len(rows))


def _clock(number: int) -> str:
    """Return the hour of the day that an hour of a night begins at, told as in the charts of heat."""
    return f"{(ASLEEP_FROM + number) % 24} h"


def _humid(night: DampNight, number: int) -> str:
    """Return the humidity of an hour with its doubt."""
    found = [one.humidity[number] for one in night.every]
    return spread(*(percent(one) for one in (found[0], min(found), max(found))))


def _dew_point(humidity: float, air: float) -> float:
    """Return the temperature (K) at which the air of the room begins to drip."""
    vapour = humidity * method.saturation_pressure(air)
    return method.dew_point(vapour) if vapour > 0.0 else 0.0


def _wet(night: DampNight, shown_in: HeaderUnits) -> Grid | None:
    """Return what stands wet, the wettest place of each kind; a hidden skin only where it is worth a word."""
    from boxwright.drawing import Grid

    kinds: dict[str, list[WetPlace]] = {}
    for one in sorted(night.wet, key=lambda one: (-one.over, -one.wettest.over)):
        most = one.wettest
        if most.hours > 0 and (most.over >= LITTLE or not is_hidden(one.cold)):
            kinds.setdefault(one.kind, []).append(one)
    first = [(found[0], len(found) - 1) for found in kinds.values()][:MOST_ROWS]
    if not first:
        return None
    columns = ("Place", "Wet", "Most of it", "Coldest", "Drips from", "Kept dry by")
    rows = tuple((one.name + (f" and {more} more" if more else ""), *_of_wet(one, shown_in)) for one, more in first)
    return Grid(f"What stands wet at {_named(night)}", columns, rows, tuple(one.where for one, _ in first))


def _of_wet(wet: WetPlace, shown_in: HeaderUnits) -> tuple[str, ...]:
    if is_hidden(wet.cold):
        keeps = "taped edges of foam" if is_skin(wet.cold) else "a strip under the lining"
    elif isfinite(wet.air):
        costs = f", {show(wet.watt, 'heat flow', shown_in)}" if wet.watt > 0.0 else ""
        keeps = f"{show(wet.air, 'flow', shown_in)}{costs}"
    else:
        keeps = "warmth only"
    over = "ft2" if is_over_feet(shown_in) else "m2"
    frosts = [one.is_frost for one in wet.every]
    frost = ", frost" if all(frosts) else ", frost perhaps" if any(frosts) else ""
    return (
        spread(*(f"{one:.0f} h" for one in ends_of(wet, "hours"))) + frost,
        spread(*(f"{water_over(one, shown_in)}/{over}" for one in ends_of(wet, "over"))),
        between(ends_of(wet, "coldest"), shown_in),
        spread(*(percent(one) for one in ends_of(wet, "limit"))),
        keeps,
    )


def charts_of(result: Result) -> tuple[Chart, ...]:
    """Return the humidity of each night, with what drips at it."""
    return tuple(chart for _, _, chart in humidity_charts(result))


def humidity_charts(result: Result) -> tuple[tuple[str, str, Chart], ...]:
    """Return the same with the place of each, and the rig path of what warms it."""
    return tuple((night.place, night.heater, _chart(night)) for night in result.nights if night.humidity)


def _chart(night: DampNight) -> Chart:
    from boxwright.drawing.chart import Chart, Series

    each = [tuple(100.0 * one for one in humid.humidity) for humid in night.every]
    shares, count = each[0], len(each[0])
    lows, highs = (tuple(end(row) for row in zip(*each, strict=True)) for end in (min, max))
    labels = tuple(_clock(number) if number % EVERY == 0 else "" for number in range(count))
    texts = tuple(f"{_clock(number)}, the room: {_humid(night, number)}" for number in range(count))
    line = Series("the room", shares, lows, highs, texts)
    return Chart(
        name="humidity",
        title=f"Humidity of a night at {_named(night)}",
        form="through",
        unit="% of what the air holds",
        labels=labels,
        series=(line,),
        bounds=_dripping(night),
        of=("",) * count,
        says=f"Humidity of the room through a night at {_named(night)}, and from where on the coldest places drip",
    )


def _dripping(night: DampNight) -> tuple[Bound, ...]:
    """Return from which humidity on the places that drip first do so, each kind of place once."""
    from boxwright.drawing.chart import Bound

    lowest: dict[str, float] = {}
    for one in night.wet:
        if not is_hidden(one.cold):
            lowest[one.kind] = min(one.limit, lowest.get(one.kind, 1.0))
    found: list[Bound] = []
    for kind, limit in sorted(lowest.items(), key=lambda one: one[1]):
        if not found or 100.0 * limit - found[-1].at > APART:
            found.append(Bound(f"drips: {kind}", 100.0 * limit, False))
    return tuple(found[:MOST_DRIPPING])

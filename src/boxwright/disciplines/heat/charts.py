"""The charts of a room's warmth: how cold it may get for each heater, and each night hour by hour."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import accumulate

from boxwright.disciplines.heat.as_built import ENDS, End
from boxwright.disciplines.heat.burning import fuel_of_night
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, HOURS_OF_DAY, hours_of
from boxwright.disciplines.heat.electricity import by_hour
from boxwright.disciplines.heat.feeds import HIGHEST_OF_A_BATTERY, VOLTS
from boxwright.disciplines.heat.method import drifts_to
from boxwright.disciplines.heat.method.network import Course
from boxwright.disciplines.heat.night import HeldNight, runs_of
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.room import at
from boxwright.drawing.chart import LONG, LOW, UNKNOWN, Bound, Chart, Series
from boxwright.exchange import ASLEEP_FROM
from boxwright.records import dataclass
from boxwright.units import Band, HeaderUnits, shown_unit

COLDS = {"F": tuple(range(50, -21, -10)), "C": tuple(range(10, -31, -5))}
"""Outside temperatures of the curve, by the unit they are shown in."""
EVERY = 3
"""Hours between two labels under a night."""
TALL = 0.140
"""m on paper: two stand on a page, and three of the low ones."""
JUDGED = slice(-ASLEEP_HOURS, None)
CLOCKS = tuple((ASLEEP_FROM + number) % HOURS_OF_DAY for number in range(ASLEEP_HOURS + 1))
LABELS = tuple(f"{clock} h" if number % EVERY == 0 else "" for number, clock in enumerate(CLOCKS))
"""What stands under a night, from eight to eight; what is told is the mean of the hour that begins there."""
Ends = dict[End, Course]


@dataclass(frozen=True, slots=True)
class Damp:
    """The chart of a night's humidity, of the place and the heater it is of: worked out where air is."""

    place: str
    heater: str
    chart: Chart


def charts_of(result: Result, shown_in: HeaderUnits, damp: Iterable[Damp] = ()) -> tuple[Chart, ...]:
    """Return how cold it may get for each heater, and each night hour by hour: warmth, damp, fuel and current."""
    by_heater: dict[str, HeldNight] = {}
    for one in result.held:
        if one.warmth is not None and one.warmth.highest.known:
            by_heater.setdefault(one.warmth.of, one)
    colds = tuple(_how_cold(one, shown_in) for one in by_heater.values())
    humid = {(one.place, one.heater): one.chart for one in damp}
    return (*colds, *(chart for one in result.held for chart in night_charts(result, one, shown_in, humid)))


def night_charts(
    result: Result, one: HeldNight, shown_in: HeaderUnits, humid: dict[tuple[str, str], Chart]
) -> tuple[Chart, ...]:
    """Return the charts of one night, over the same hours."""
    runs = runs_of(result.inside, one.outdoors, one.warmth, result.moisture)
    found = [_warmth(one, runs, shown_in)]
    of = one.warmth.of if one.warmth is not None else ""
    heater = next((each for each in result.heaters if each.planned.of == of), None)
    wet = humid.get((one.outdoors.place, of))
    if wet is not None:
        found.append(_humidity(one, wet))
    if heater is not None:
        found += [each for each in (_fuel(one, heater, runs, shown_in), _current(one, heater, result, runs)) if each]
    return tuple(found)


def _degrees(kelvin: float, shown_in: HeaderUnits) -> float:
    return shown_unit("temperature", shown_in)[1].from_si(kelvin)


def _how_cold(one: HeldNight, shown_in: HeaderUnits) -> Chart:
    """Return where the room comes to, by the cold outside, at the heater's lowest and highest setting."""
    warmth = one.warmth
    assert warmth is not None
    unit, scale = shown_unit("temperature", shown_in)
    outside = [scale.to_si(cold) for cold in COLDS.get(unit, COLDS["C"])]
    settings = [("flat out", warmth.highest)] + ([("at its lowest", warmth.lowest)] if warmth.lowest.known else [])
    series = tuple(_drift(one, label, heat, outside, shown_in) for label, heat in settings)
    labels = tuple(f"{round(_degrees(cold, shown_in))} {unit}" for cold in outside)
    return Chart(
        name=f"cold-{warmth.name}",
        title=f"How cold can we go? {warmth.name}, by the cold outside",
        form="through",
        unit=unit,
        labels=labels,
        series=series,
        bounds=(Bound("wanted", _degrees(warmth.wanted, shown_in), False),),
        of=("",) * len(labels),
        says=f"Temperature of the room with {warmth.name} flat out and at its lowest, by the temperature outside",
        is_fitted=True,
        wide=LONG,
        high=TALL,
    )


def _drift(one: HeldNight, label: str, heat: Band, outside: list[float], shown_in: HeaderUnits) -> Series:
    ends = {
        end: tuple(
            _degrees(drifts_to(cold, at(heat, end, False) + at(one.gains, end, False), at(one.loss, end)), shown_in)
            for cold in outside
        )
        for end in ENDS
    }
    unit = shown_unit("temperature", shown_in)[0]
    texts = tuple(
        f"{round(_degrees(cold, shown_in))} {unit} outside, {label}: {ends['best'][place]:.0f} {unit}"
        f" ({ends['high'][place]:.0f} to {ends['low'][place]:.0f})"
        for place, cold in enumerate(outside)
    )
    return Series(label, ends["best"], ends["high"], ends["low"], texts)


def banded(label: str, best: Sequence[float], others: Sequence[Sequence[float]], unit: str, digits: int = 0) -> Series:
    """Return a line of a night with the least and the most of each hour, told as ``62 F (58 to 65)``."""
    every = (best, *others)
    low, high = (tuple(end(row) for row in zip(*every, strict=True)) for end in (min, max))
    texts = []
    for number, value in enumerate(best):
        shown, least, most = (f"{each:.{digits}f}" for each in (value, low[number], high[number]))
        doubt = f" ({least} to {most})" if least != most else ""
        texts.append(f"{CLOCKS[number % len(CLOCKS)]} h, {label}: {shown} {unit}{doubt}")
    missing = len(CLOCKS) - len(texts)
    unknown = (UNKNOWN,) * missing
    return Series(label, (*best, *unknown), (*low, *unknown), (*high, *unknown), (*texts, *("",) * missing))


def _named(one: HeldNight) -> str:
    return f"{one.outdoors.place}{f' with {one.warmth.name}' if one.warmth is not None else ', no heater'}"


def _of_night(
    one: HeldNight,
    name: str,
    title: str,
    unit: str,
    series: tuple[Series, ...],
    says: str,
    bounds: tuple[Bound, ...] = (),
) -> Chart:
    """Return a chart over the hours of a night."""
    return Chart(
        name=f"{name}-{_named(one)}",
        title=title,
        form="through",
        unit=unit,
        labels=LABELS,
        series=series,
        bounds=bounds,
        of=(one.outdoors.of,) * len(LABELS),
        says=says,
        is_fitted=name == "night",
        wide=LONG,
        high=TALL if name == "night" else LOW,
    )


def _warmth(one: HeldNight, runs: Ends, shown_in: HeaderUnits) -> Chart:
    """Return the temperatures of a night, outside and in the room."""
    unit = shown_unit("temperature", shown_in)[0]

    def line(label: str, by_end: dict[End, tuple[float, ...]]) -> Series:
        ends = {end: [_degrees(value, shown_in) for value in kelvins[JUDGED]] for end, kelvins in by_end.items()}
        return banded(label, ends["best"], [ends["low"], ends["high"]], unit)

    outside = {end: hours_of(one.outdoors, (), one.warmth, end).outside for end in ENDS}
    wanted = (Bound("wanted", _degrees(one.warmth.wanted, shown_in), False),) if one.warmth is not None else ()
    return _of_night(
        one,
        "night",
        f"The coldest night at {_named(one)}",
        unit,
        (line("room", {end: run.air for end, run in runs.items()}), line("outside", outside)),
        f"Temperature of the room and outside through the coldest night at {one.outdoors.place}, hour by hour",
        wanted,
    )


def _humidity(one: HeldNight, wet: Chart) -> Chart:
    """Return the humidity of a night, as air has worked it out."""
    (line,) = wet.series
    share = banded("humidity", line.best, [line.low, line.high], "%")
    says = f"Humidity of the room through the coldest night at {_named(one)}: 100 % is all that its air can hold"
    return _of_night(one, "night-damp", f"Humidity at {_named(one)}", "%", (share,), says)


def _fuel(one: HeldNight, heater: StandingHeater, runs: Ends, shown_in: HeaderUnits) -> Chart | None:
    """Return the fuel that is gone by each hour, as the heat of the night asks for it."""
    fuel = fuel_of_night(one, heater)
    if fuel is None:
        return None
    unit, scale = shown_unit("volume", shown_in)
    order = sorted(runs.values(), key=lambda run: sum(run.heat[JUDGED]))
    pairs = ((runs["best"], fuel.best), (order[0], fuel.low), (order[-1], fuel.high))
    best, *ends = ([scale.from_si(total * share) for share in _gone(run)] for run, total in pairs)
    says = f"Fuel that is burnt by each hour of the coldest night at {_named(one)}, in step with the heat it gives"
    line = banded("burnt", best, ends, unit, 2)
    return _of_night(one, "night-fuel", f"Fuel burnt at {_named(one)}", unit, (line,), says)


def _gone(run: Course) -> list[float]:
    """Return which share of the night's heat was given by each hour, from eight to eight."""
    whole = sum(run.heat[JUDGED])
    return [part / whole if whole > 0.0 else 0.0 for part in accumulate(run.heat[JUDGED], initial=0.0)]


def _bus(heater: StandingHeater) -> str:
    """Return what feeds a heater, by its volts: 12 for each battery in a row."""
    volts = heater.feed.volts.best
    if volts > HIGHEST_OF_A_BATTERY:
        return f"a cable of {volts:.0f} V"
    return f"a {12 * round(volts / VOLTS.best)} V battery"


def _current(one: HeldNight, heater: StandingHeater, result: Result, runs: Ends) -> Chart | None:
    """Return what a fuel heater takes of its battery, or the heat an electric one takes, hour by hour."""
    if heater.runs == "electric":
        watts = {end: list(run.heat[JUDGED]) for end, run in runs.items()}
        line = banded("taken", watts["best"], [watts["low"], watts["high"]], "W")
        says = f"What {heater.planned.name} takes of electricity through the coldest night at {one.outdoors.place}"
        return _of_night(one, "night-takes", f"Electricity taken at {_named(one)}", "W", (line,), says)
    taken = by_hour(one, heater, result.volume, runs)
    if not taken:
        return None
    best, *ends = ([getattr(band, end) for band in taken] for end in ("best", "low", "high"))
    says = (
        f"Mean current {heater.planned.name} takes of {_bus(heater)} in each hour of the coldest night at"
        f" {one.outdoors.place}, at most {max(ends[1]):.1f} A; while its pin glows it takes more"
    )
    line = banded("taken", best, ends, "A", 1)
    return _of_night(one, "night-current", f"Current from the battery at {_named(one)}", "A", (line,), says)

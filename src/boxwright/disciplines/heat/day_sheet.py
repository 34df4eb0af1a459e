"""The sheet of a hot day: the room hour by hour each way it is aired or cooled, and what paint and shade make of it."""

from __future__ import annotations

from boxwright.disciplines.heat.as_built import ENDS
from boxwright.disciplines.heat.climate import HOURS_OF_DAY
from boxwright.disciplines.heat.day import BEDTIME, DayRun, Way
from boxwright.disciplines.heat.hot import BEGINS, HotDay, weather_of
from boxwright.disciplines.heat.hot_room import HotRoom, Tried, What
from boxwright.disciplines.heat.telling import IN_WORDS, between, warm
from boxwright.disciplines.heat.year_room import ROOMS
from boxwright.drawing import Grid, Sheet
from boxwright.drawing.chart import LONG, Bound, Chart, Series, charted
from boxwright.units import Band, HeaderUnits, show, show_band, shown_unit

NAME, TITLE = "hot-day", "A hot day of the room"
SHORT: dict[Way, str] = {
    "shut": "shut", "opened": "opened", "fans": "fans", "doors": "doors", "cooled": "cooled"
}  # fmt: skip
CHANGES: dict[What, str] = {
    "white roof": "the roof painted white",
    "white all over": "roof and walls white",
    "shade": "a shade over the roof, air between",
}
EVERY = 3
CAUTION = (
    "Heat kills faster than cold: never leave a child, an animal or anybody who cannot open the door in a shut"
    " trailer, not for minutes. A fan does not cool air that is hotter than skin. Fumes come in by what is opened."
)
WHAT_IT_IS = (
    "Hours are the sun's own: noon is when it stands highest, summer time reads an hour more or so. Behind each number"
    " stand its ends: what is not known of shell, colour, fans, the day, and the way the front looks."
)


def day_sheet(rooms: tuple[HotRoom, ...], shown_in: HeaderUnits) -> Sheet:
    """Return the sheet of hot days, one for each place."""
    views = tuple(charted(chart_of(one, shown_in)) for one in rooms)
    grids = tuple(grid for one in rooms for grid in grids_of(one, shown_in))
    days = tuple(in_words(one.hot, shown_in) for one in rooms)
    return Sheet(NAME, TITLE, views, (*days, WHAT_IT_IS, CAUTION), grids, stands_up=True)


def in_words(hot: HotDay, shown_in: HeaderUnits) -> str:
    """Return what the day of a place is taken to be."""
    said = f"{hot.place}: {between(hot.hottest, shown_in)} outside at its hottest"
    if not hot.is_written:
        said += ", some degrees over the mean of its hottest month (write hottest_design where you know it)"
    night = warm(hot.hottest.best - hot.swing.best, shown_in)
    said += f", {night} before sunrise, {_share(hot.sun)} of a clear day's sun"
    if hot.latitude.low < hot.latitude.high:
        said += ", as far north as nobody wrote (lat)"
    return f"{said}, wind {show_band(_plain(hot.wind), 'speed', shown_in)}."


def grids_of(room: HotRoom, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    """Return the table of the ways to air the room, and of what was tried."""
    over = warm(ROOMS["too warm"], shown_in)
    columns = ("The room", "Hottest", "From", f"Over {over}", f"At {BEDTIME} h")
    rows = [(IN_WORDS[one.way], *_of_run(one, shown_in)) for one in room.runs]
    grids = [Grid(f"A hot day at {room.hot.place}", columns, tuple(rows), ("",) * len(rows))]
    if room.tried:
        aired = SHORT[room.aired.way].capitalize()
        told = [(CHANGES[one.what], *_of_change(room, one, shown_in)) for one in room.tried]
        grids.append(
            Grid("What helps, each run as a day of its own", ("With", "Shut", aired), tuple(told), ("",) * len(told))
        )
    return tuple(grids)


def _of_run(one: DayRun, shown_in: HeaderUnits) -> tuple[str, ...]:
    hours = _count(one.too_warm)
    return between(one.warmest, shown_in), f"{one.at} h", hours, between(one.bedtime, shown_in)


def _of_change(room: HotRoom, one: Tried, shown_in: HeaderUnits) -> tuple[str, ...]:
    shut = next(each for each in room.runs if each.way == "shut")
    pairs = ((shut, one.shut), (room.aired, one.aired))
    return tuple(_less(before, after, shown_in) for before, after in pairs)


def _less(before: DayRun, after: DayRun, shown_in: HeaderUnits) -> str:
    """Return where a change brings the hottest hour, and by how much that is less."""
    less = before.warmest.best - after.warmest.best
    by = show(abs(less), "temperature difference", shown_in)
    return f"{between(after.warmest, shown_in)}, {by} {'less' if less >= 0.0 else 'more'}"


def _count(hours: Band) -> str:
    best, low, high = (f"{one:.0f}" for one in (hours.best, hours.low, hours.high))
    return f"{best} h" if low == high else f"{best} h ({low} to {high})"


def _share(band: Band) -> str:
    return f"{band.best * 100.0:.0f} % ({band.low * 100.0:.0f} to {band.high * 100.0:.0f})"


def _plain(band: Band) -> Band:
    return Band(band.best, band.low, band.high, band.known, band.spread)


def chart_of(room: HotRoom, shown_in: HeaderUnits) -> Chart:
    """Return the day hour by hour: outside, and the room each way."""
    unit, scale = shown_unit("temperature", shown_in)
    hours = [(BEGINS + number) % HOURS_OF_DAY for number in range(HOURS_OF_DAY)]

    def line(label: str, best: tuple[float, ...], low: tuple[float, ...], high: tuple[float, ...]) -> Series:
        middle, least, most = (tuple(scale.from_si(value) for value in kelvins) for kelvins in (best, low, high))
        texts = tuple(
            f"{hour} h, {label}: {one:.0f} {unit} ({foot:.0f} to {top:.0f})"
            for hour, one, foot, top in zip(hours, middle, least, most, strict=True)
        )
        return Series(label, middle, least, most, texts)

    days = [weather_of(room.hot, end).outside[-HOURS_OF_DAY:] for end in ENDS]
    outside = (days[0], *(tuple(end(hour) for hour in zip(*days, strict=True)) for end in (min, max)))
    told = [one for one in room.runs if one.way in ("shut", room.aired.way, "cooled")]
    return Chart(
        name=f"{NAME}-{room.hot.place}",
        title=f"A hot day at {room.hot.place}",
        form="through",
        unit=unit,
        labels=tuple(f"{hour} h" if number % EVERY == 0 else "" for number, hour in enumerate(hours)),
        series=(*(line(SHORT[one.way], one.air, one.low, one.high) for one in told), line("outside", *outside)),
        bounds=(Bound("too warm", scale.from_si(ROOMS["too warm"]), False),),
        of=("",) * HOURS_OF_DAY,
        says=f"Temperature of the room and outside through a hot day at {room.hot.place}",
        is_fitted=True,
        wide=LONG,
    )

"""The sheet of a year: how its heater runs through the hours, the heat of each month, too cold and too warm."""

from __future__ import annotations

from boxwright.disciplines.heat.telling import warm
from boxwright.disciplines.heat.year import Year
from boxwright.disciplines.heat.year_fuel import difference_in_words
from boxwright.disciplines.heat.year_room import ROOMS, YEAR
from boxwright.drawing import Grid, Sheet
from boxwright.drawing.chart import LONG, LOW, Chart, Series, charted
from boxwright.units import Band, HeaderUnits, show, show_band, shown_unit

NAME, TITLE = "year", "A year of the room"
RUNS_AS = ("off", "cycling", "at its lowest", "between lowest and flat out", "flat out")
BELOW_BARS = ("off", "cycling", "lowest", "between", "flat out", "all")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
KILOWATT_HOUR = 3.6e6
NO_SUN = "not known without sun"
ENDS = (
    "Behind each number stand its ends, and round each curve the tone: what is not known of shell, cracks, colour and"
    " the way the front looks. The bars are the most likely hours."
)


def year_sheet(years: tuple[Year, ...], shown_in: HeaderUnits) -> Sheet:
    """Return the sheet of a room's years, one for each heater."""
    views = tuple(charted(one) for year in years for one in charts_of(year, shown_in))
    grids = tuple(_told(year, shown_in) for year in years)
    weather = years[0].weather
    station = ", ".join(dict.fromkeys(one for one in (weather.place, weather.came_from) if one))
    stands = f"It stands on the weather of {station}: {len(weather.outside):,} hours."
    burnt = tuple(
        f"{year.heater}: {one}" for year in years for one in difference_in_words(year.burning, year.energy, shown_in)
    )
    return Sheet(NAME, TITLE, views, (stands, ENDS, *burnt), grids, stands_up=True)


def charts_of(year: Year, shown_in: HeaderUnits) -> tuple[Chart, ...]:
    """Return how the heater of a year runs, and its heat and fuel by month; nothing where there is none."""
    if not year.heater:
        return ()
    heat = _by_month(year, "heat", year.heat_by_month, "kWh", KILOWATT_HOUR)
    if not year.fuel_by_month:
        return _runs(year), heat
    unit, scale = shown_unit("volume", shown_in)
    fuel = _by_month(year, "fuel", year.fuel_by_month, unit, scale.to_si(1.0))
    return _runs(year), heat, fuel


def _runs(year: Year) -> Chart:
    """Return the hours of the year by how the heater runs, each bar on the one before it."""
    spent = [one.best for one in year.banded]
    feet = [sum(spent[:number]) for number in range(len(spent))]
    whole = sum(spent)
    series = Series(
        "hours",
        (*(foot + one for foot, one in zip(feet, spent, strict=True)), whole),
        (*feet, 0.0),
        (*(foot + one for foot, one in zip(feet, spent, strict=True)), whole),
        tuple(f"{one:,.0f} h" for one in (*spent, whole)),
    )
    return Chart(
        name=f"year-hours-{year.heater}",
        title=f"How {year.heater} runs through the year",
        form="fall",
        unit="hours",
        labels=BELOW_BARS,
        series=(series,),
        bounds=(),
        of=("",) * len(BELOW_BARS),
        says=f"Hours of the year {year.heater} is off, cycles, runs at its lowest, between its settings, and flat out",
        wide=LONG,
    )


def _by_month(year: Year, what: str, months: tuple[Band, ...], unit: str, size: float) -> Chart:
    """Return the heat or the fuel of each month; ``size`` is its unit in SI."""
    best, low, high = (tuple(getattr(one, end) / size for one in months) for end in ("best", "low", "high"))
    texts = tuple(
        f"{name}: {most:,.1f} {unit} ({least:,.1f} to {top:,.1f})"
        for name, most, least, top in zip(MONTHS, best, low, high, strict=True)
    )
    return Chart(
        name=f"year-{what}-{year.heater}",
        title=f"{what.capitalize()} of {year.heater} by month",
        form="through",
        unit=unit,
        labels=MONTHS,
        series=(Series(what, best, low, high, texts),),
        bounds=(),
        of=("",) * len(MONTHS),
        says=f"{what.capitalize()} of {year.heater} in each month of the year",
        wide=LONG,
        high=LOW,
    )


def _told(year: Year, shown_in: HeaderUnits) -> Grid:
    """Return the numbers of a year with their ends."""
    hours = zip([f"heater {one}" for one in RUNS_AS], year.banded, strict=True) if year.heater else ()
    below = warm(year.wanted - YEAR["colder than wanted"].best, shown_in)
    rows = [(name, *_hours(one)) for name, one in hours if one.high > 0.0]
    if year.heater:
        rows += [(f"room under {below} while it is set", *_hours(year.too_cold))]
        heat = [f"{one / KILOWATT_HOUR:,.0f}" for one in (year.energy.best, year.energy.low, year.energy.high)]
        rows += [("heat", f"{heat[0]} kWh", f"{heat[1]} to {heat[2]} kWh" if heat[1] != heat[2] else "")]
    if year.hot_at_lowest is not None:
        rows += [("too hot if left at its lowest", *_hours(year.hot_at_lowest))]
    if year.fuel is not None:
        rows += [("fuel", *_ends(year.fuel, "volume", shown_in))]
    rows += [
        (f"room over {warm(ROOMS['too warm'], shown_in)} with all open", *_hours(year.too_warm)),
        ("coldest", *_ends(year.coldest, "temperature", shown_in)),
        ("warmest", *_ends(year.warmest, "temperature", shown_in)),
    ]
    title = f"The year with {year.heater}" if year.heater else "The year without a heater"
    return Grid(title, ("", "Most likely", "Between"), tuple(rows), ("",) * len(rows))


def _hours(band: Band) -> tuple[str, str]:
    if not band.known:
        return NO_SUN, f"{band.low:,.0f} h and more"
    return f"{band.best:,.0f} h", f"{band.low:,.0f} to {band.high:,.0f} h" if band.high > band.low else ""


def _ends(band: Band, quantity: str, shown_in: HeaderUnits) -> tuple[str, str]:
    if not band.known:
        return NO_SUN, f"{show(band.low, quantity, shown_in)} and more"
    plain = Band(band.best, band.low, band.high, band.known, band.spread)
    between = show_band(plain, quantity, shown_in) if band.high > band.low else ""
    return show(band.best, quantity, shown_in), between

"""A typical year asked for on the internet, by an explicit word only, as the text of a file that is read ever after."""

from __future__ import annotations

from datetime import date, timedelta
from math import degrees, exp, log, radians
from typing import Any

from boxwright import HOW_TO_ADD
from boxwright.disciplines.heat.weather import WeatherHours

YEAR, HOURS = 2001, 8760
SERVICE = "PVGIS typical year"
STEEP, WARM = 17.269, 237.3
"""The curve of vapour over water in ISO 13788, as is `heat`'s own."""


class NotFetched(ValueError):
    """Why no year was written, in a sentence."""


def fetched_text(place: str, latitude: float, longitude: float) -> str:
    """Return the typical year of a place (degrees north and east) as the text of an EPW file, asked for just now."""
    try:
        import pvlib
    except ModuleNotFoundError:
        raise NotFetched(f"the extra year asks for it; {HOW_TO_ADD}") from None
    zone = round(longitude / 15.0)
    try:
        table, about = pvlib.iotools.get_pvgis_tmy(latitude, longitude, roll_utc_offset=zone, coerce_year=YEAR)
        return epw_text(hours_of(table, about, place, zone))
    except (OSError, KeyError, ValueError, TypeError) as error:
        says = " ".join(str(error).split())[:160]
        why = says or type(error).__name__
        raise NotFetched(f"no year came back for {place} ({why}); nothing was written") from None


def hours_of(table: Any, about: Any, place: str, zone: int) -> WeatherHours:
    """Return what the service answered as hours in standard time of the place."""
    where = about["inputs"]["location"]
    columns = {name: tuple(float(one) for one in table[name]) for name in (
        "temp_air", "relative_humidity", "ghi", "dni", "dhi", "wind_speed", "pressure"
    )}  # fmt: skip
    if any(len(values) != HOURS for values in columns.values()):
        raise NotFetched(f"{len(table)} hours came back, not {HOURS}")
    air = tuple(one + 273.15 for one in columns["temp_air"])
    damp = zip(columns["temp_air"], columns["relative_humidity"], strict=True)
    return WeatherHours(
        place=place,
        came_from=SERVICE,
        latitude=radians(float(where["latitude"])),
        longitude=radians(float(where["longitude"])),
        altitude=float(where["elevation"]),
        ahead=zone * 3600.0,
        begins=(0, 0),
        outside=air,
        dew_point=tuple(dew_point(warm, humid / 100.0) + 273.15 for warm, humid in damp),
        wind=columns["wind_speed"],
        level_sun=columns["ghi"],
        straight_sun=columns["dni"],
        sky_light=columns["dhi"],
        pressure=columns["pressure"],
    )


def dew_point(warm: float, humid: float) -> float:
    """Return the dew point (C) of air so warm (C) with so large a share of what it can hold, over water."""
    full = STEEP * warm / (WARM + warm) + log(max(humid, 0.01))
    return WARM * full / (STEEP - full)


def epw_text(weather: WeatherHours) -> str:
    """Return a year of hours as the text of an EPW file; a column that is not known has the form's mark for that."""
    place = weather.place.replace(",", " ")
    head = [
        f"LOCATION,{place},-,-,{weather.came_from},000000,{degrees(weather.latitude):.3f},"
        f"{degrees(weather.longitude):.3f},{weather.ahead / 3600.0:.1f},{weather.altitude:.1f}",
        "DESIGN CONDITIONS,0",
        "TYPICAL/EXTREME PERIODS,0",
        "GROUND TEMPERATURES,0",
        "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
        "COMMENTS 1,-",
        "COMMENTS 2,-",
        "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
    ]
    rows = []
    for at in range(len(weather.outside)):
        day = date(YEAR, 1, 1) + timedelta(days=at // 24)
        dry, dew = weather.outside[at] - 273.15, weather.dew_point[at] - 273.15
        humid = min(100.0 * _vapour(dew) / _vapour(dry), 100.0)
        cloud = f"{weather.cloud[at]:.0f}" if weather.cloud else "99"
        rows.append(
            f"{YEAR},{day.month},{day.day},{at % 24 + 1},60,?,{dry:.1f},{dew:.1f},{humid:.0f},"
            f"{weather.pressure[at]:.0f},0,0,9999,{weather.level_sun[at]:.0f},{weather.straight_sun[at]:.0f},"
            f"{weather.sky_light[at]:.0f},999999,999999,999999,9999,180,{weather.wind[at]:.1f},{cloud},{cloud},"
            "9999,99999,9,999999999,0,0.0,0,88,0,0,0"
        )
    return "\n".join([*head, *rows]) + "\n"


def _vapour(celsius: float) -> float:
    return 610.5 * exp(STEEP * celsius / (WARM + celsius))

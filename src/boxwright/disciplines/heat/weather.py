"""The weather of a place hour by hour, whatever file it came from."""

from __future__ import annotations

from boxwright.records import dataclass


@dataclass(frozen=True, slots=True)
class WeatherHours:
    """Hours that follow each other from ``begins`` (day of the year from 0, hour from 0) in standard time of the place.

    ``latitude`` and ``longitude`` in radians, north and east; ``ahead`` is how far (s) its clock is ahead of universal
    time. Temperatures and dew points in K, wind in m/s, sun in W/m2 on level ground, straight from the sun and from the
    sky, cloud in tenths, pressure in Pa; each value is the hour's. A column the file does not have is empty.
    ``altitude`` (m above the sea) is None where nobody wrote it: no logger knows how high it hangs.
    ``filled`` are the places of hours that were missing and were put between their neighbours because that was asked.
    """

    place: str
    came_from: str
    latitude: float
    longitude: float
    altitude: float | None
    ahead: float
    begins: tuple[int, int]
    outside: tuple[float, ...]
    dew_point: tuple[float, ...] = ()
    wind: tuple[float, ...] = ()
    level_sun: tuple[float, ...] = ()
    straight_sun: tuple[float, ...] = ()
    sky_light: tuple[float, ...] = ()
    cloud: tuple[float, ...] = ()
    pressure: tuple[float, ...] = ()
    filled: tuple[int, ...] = ()

    @property
    def has_sun(self) -> bool:
        """Return whether the file tells of any sun; one that has none tells nothing of how warm a room gets."""
        return any(one > 0.0 for one in (*self.level_sun, *self.straight_sun))

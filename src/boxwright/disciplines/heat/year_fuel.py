"""The fuel of a year hour by hour: by energy and efficiency, and by what the heater is said or counted to burn.

As by night: what was counted at both settings is taken alone; what is only said widens what its heat takes.
"""

from __future__ import annotations

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.burner import FUELS
from boxwright.disciplines.heat.burning import Burns, rate_of
from boxwright.disciplines.heat.cold_hours import Warmth
from boxwright.disciplines.heat.method import fuel_burnt
from boxwright.disciplines.heat.room import at
from boxwright.units import Band

HOUR = 3600.0
Hourly = tuple[float, ...]


def fuel_by_hour(heat: Hourly, end: End, warmth: Warmth | None, fuel: str, burns: Burns | None) -> tuple[Hourly, ...]:
    """Return what each hour's heat (W) takes of fuel (m3) at an end of loss, once for each way there is to tell it.

    The first way is the likely one; there is none where nothing burns, or nobody knows what does.
    """
    if warmth is None:
        return ()
    said = _by_rate(heat, end, warmth, burns)
    if burns is not None and burns.is_counted and said:
        return said
    if fuel not in FUELS:
        return said
    content, best, low, high = FUELS[fuel]
    # Where most is lost the heater wastes most.
    efficiency = at(Band(best, low, high), end, False)
    return (tuple(fuel_burnt(one, efficiency, content) * HOUR if one > 0.0 else 0.0 for one in heat), *said)


def _by_rate(heat: Hourly, end: End, warmth: Warmth, burns: Burns | None) -> tuple[Hourly, ...]:
    """Return the fuel of each hour by the rates at both settings; nothing where one of them is not known."""
    if burns is None or burns.lowest is None or burns.highest is None:
        return ()
    if not (warmth.lowest.known and warmth.highest.known) or warmth.highest.best <= 0.0:
        return ()
    highest = at(warmth.highest, end, False)
    lowest = min(at(warmth.lowest, end, False), highest)
    low, high = at(burns.lowest, end), at(burns.highest, end)
    return (tuple(rate_of(one, (lowest, highest), low, high) * HOUR for one in heat),)

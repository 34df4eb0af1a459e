"""The fuel of a year hour by hour: by energy and efficiency, and by what the heater is said or counted to burn.

As by night: what was counted at both settings is taken alone; what is only said widens what its heat takes.
"""

from __future__ import annotations

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.burner import FUELS
from boxwright.disciplines.heat.burning import Burning
from boxwright.disciplines.heat.method import fuel_burnt
from boxwright.disciplines.heat.room import at
from boxwright.units import Band

HOUR = 3600.0
Hourly = tuple[float, ...]


def fuel_by_hour(heat: Hourly, end: End, burning: Burning) -> tuple[Hourly, ...]:
    """Return what each hour's heat (W) takes of fuel (m3) at an end of loss, once for each way there is to tell it.

    The first way is the likely one; there is none where nothing burns, or nobody knows what does.
    """
    said = tuple(tuple(rates.burnt(one, end) * HOUR for one in heat) for rates in burning.rates)
    if burning.is_counted or burning.fuel not in FUELS:
        return said
    content, best, low, high = FUELS[burning.fuel]
    # Where most is lost the heater wastes most.
    efficiency = at(Band(best, low, high), end, False)
    return (tuple(fuel_burnt(one, efficiency, content) * HOUR if one > 0.0 else 0.0 for one in heat), *said)

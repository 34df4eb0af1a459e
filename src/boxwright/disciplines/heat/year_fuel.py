"""The fuel of a year hour by hour: by energy and efficiency, and by what the heater is said or counted to burn.

As by night: what was counted at both settings is taken alone; what is only said widens what its heat takes.
"""

from __future__ import annotations

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.burner import FUELS
from boxwright.disciplines.heat.burning import Burning, Whence, fuel_by_heat
from boxwright.disciplines.heat.method import fuel_burnt
from boxwright.disciplines.heat.room import at
from boxwright.units import Band, HeaderUnits, show

HOUR = 3600.0
Hourly = tuple[float, ...]
BURNT: dict[Whence, str] = {
    "counted": "its pump was counted to move",
    "said": "it is said to burn",
    "hours": "a filling holds that lasts as long as is said",
}


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


def difference_in_words(burning: Burning, energy: Band, shown_in: HeaderUnits) -> tuple[str, ...]:
    """Return what a heater makes of its fuel by all that is said of it, where such heaters make more or less."""
    by_heat = fuel_by_heat(energy, burning.fuel)
    if by_heat is None:
        return ()
    content, _, worst, best = FUELS[burning.fuel]
    table = f"where such heaters give {worst * 100:.0f} to {best * 100:.0f} %"
    then = "the ends of its fuel hold both"
    if burning.is_counted:
        likely, least, most = (show(one, "volume", shown_in) for one in (by_heat.best, by_heat.low, by_heat.high))
        unit = f" {likely.rpartition(' ')[2]}"
        then = f"with that it would burn {likely} ({least.removesuffix(unit)} to {most.removesuffix(unit)})"
    said = []
    for rates in burning.rates:
        settings = ((rates.least, rates.lowest), (rates.most, rates.highest))
        shares = [heat.best / (flow.best * content) for heat, flow in settings if heat.best and flow.best]
        if shares and not worst <= min(shares) <= max(shares) <= best:
            least, most = f"{min(shares) * 100:.0f}", f"{max(shares) * 100:.0f}"
            share = f"{least} %" if least == most else f"{least} to {most} %"
            said.append(f"Its heat is {share} of what is in the {burning.fuel} {BURNT[rates.whence]}, {table}: {then}.")
    return tuple(said)

"""What a heater burns: as its heat takes by efficiency and energy of the fuel, as it is said to, as its pump counts.

What was counted goes before what is said.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Literal, NamedTuple

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.burner import FUELS, fuel_named
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, Warmth
from boxwright.disciplines.heat.method import fuel_burnt
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.parts import Counted, Heater
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.disciplines.heat.room import at
from boxwright.records import dataclass
from boxwright.units import Band

NIGHT = ASLEEP_HOURS * 3600.0
MISCOUNT = 1.0 / 60.0
"""Strokes a second: whoever counts for a minute may count one too many or too few."""


@dataclass(frozen=True, slots=True)
class Burns:
    """What a heater burns at its lowest and highest setting (m3/s), and whether that was counted."""

    lowest: Band | None
    highest: Band | None
    is_counted: bool


Whence = Literal["said", "counted", "hours"]


class Rates(NamedTuple):
    """Heat at the lowest and highest setting (W), what is burnt at each (m3/s), and whence that is known.

    "hours": by how long a filling is said to last.
    """

    least: Band
    most: Band
    lowest: Band
    highest: Band
    whence: Whence = "said"

    def burnt(self, heat: float, end: End) -> float:
        """Return what is burnt for a heat (W): least where the settings give much for little.

        Between the settings it goes straight with the heat; below the lowest the heater goes on and off, and burns as
        much less as it is off. Over the highest there is nothing to burn more with.
        """
        least, most = at(self.least, end, False), at(self.most, end, False)
        low, high = at(self.lowest, end), at(self.highest, end)
        if heat <= 0.0:
            return 0.0
        if heat < least:
            return low * heat / least
        return low + (high - low) * (heat - least) / (most - least) if heat < most else high


class Burning(NamedTuple):
    """What a heater burns: its fuel, empty where nothing burns, and by each thing that is said of it how much.

    ``is_counted``: its pump was counted at both settings, and ``rates`` are of that alone.
    """

    fuel: str = ""
    rates: tuple[Rates, ...] = ()
    is_counted: bool = False


def burns_as_counted(counted: Counted | None) -> Burns | None:
    """Return what a pump moves by the strokes counted; None where nobody counted, or wrote what a stroke moves."""
    if counted is None or counted.each is None or not counted.each.known or counted.each.best <= 0.0:
        return None
    lowest, highest = (_pumped(strokes, counted.each) for strokes in (counted.lowest, counted.highest))
    return Burns(lowest, highest, True) if lowest is not None or highest is not None else None


def _pumped(strokes: Band | None, each: Band) -> Band | None:
    if strokes is None or not strokes.known or strokes.best <= 0.0:
        return None
    least = max(strokes.low - MISCOUNT, 0.0)
    return Band(strokes.best * each.best, least * each.low, (strokes.high + MISCOUNT) * each.high, spread="interval")


def burns_of(heater: Heater) -> Burns | None:
    """Return what a heater burns at its settings: each as counted, else as it is said to."""
    counted, said = burns_as_counted(heater.counted), heater.burn
    if counted is not None and counted.lowest is not None and counted.highest is not None:
        return counted
    if said is None:
        return counted
    lowest = counted.lowest if counted is not None and counted.lowest is not None else _known(said.lowest)
    highest = counted.highest if counted is not None and counted.highest is not None else _known(said.highest)
    return Burns(lowest, highest, False)


def burning_of(heater: StandingHeater, warmth: Warmth | None) -> Burning:
    """Return what a heater burns that gives so much: by what is said, by its pump, by how long a filling lasts."""
    facet, fuel = heater.planned.heater, fuel_named(heater.planned.heater.of)
    if warmth is None or not warmth.highest.known or warmth.highest.high <= 0.0:
        return Burning(fuel)
    least, most = _where_it_runs(warmth.lowest), _where_it_runs(warmth.highest)
    burns = _up_there(burns_of(facet), facet, warmth)
    rates = _rates(least, most, burns) if burns is not None else None
    if burns is not None and rates is not None and burns.is_counted and None not in (burns.lowest, burns.highest):
        return Burning(fuel, (rates._replace(whence="counted"),), True)
    found = (rates, _by_hours(heater, least, most, fuel))
    return Burning(fuel, tuple(one for one in found if one is not None))


def _up_there(burns: Burns | None, facet: Heater, warmth: Warmth) -> Burns | None:
    """Return what is burnt where a heater gives less for thin air: as much less where it takes less fuel for it.

    One of which nobody knows whether it does may burn as much as below.
    """
    below = facet.highest
    if burns is None or below is None or not 0.0 < warmth.highest.best < below.best:
        return burns
    share = warmth.highest.best / below.best

    def less(flow: Band | None) -> Band | None:
        thinner = _times(flow, share) if flow is not None else None
        return replace(thinner, high=flow.high) if flow and thinner and facet.adjusts is not True else thinner

    return Burns(less(burns.lowest), less(burns.highest), burns.is_counted)


def _where_it_runs(heat: Band) -> Band:
    """Return the heat of a setting of a heater that runs: one that perhaps does not stand burns nothing then."""
    if not heat.known or heat.low > 0.0 or heat.high <= 0.0:
        return heat
    best = heat.best if heat.best > 0.0 else heat.high
    return replace(heat, best=best, low=best)


def _rates(least: Band, most: Band, burns: Burns) -> Rates | None:
    """Return the rates by both settings; None where what is burnt is not written of a setting whose heat is.

    A setting of which nobody wrote what it burns, or gives, is taken to make as much of its fuel as the other.
    """
    lowest, highest = burns.lowest, burns.highest
    if not least.known or least.best <= 0.0:
        if highest is None:
            return None
        if lowest is None:
            return Rates(most, most, highest, highest)
        if not least.known:
            share = min(lowest.best / highest.best, 1.0) if highest.best > 0.0 else 1.0
            least = Band(most.best * share, 0.0, most.high, known=False)
        return Rates(least, most, lowest, highest)
    if highest is None and lowest is not None:
        highest = _times(lowest, most.best / least.best)
    if lowest is None and highest is not None:
        lowest = _times(highest, least.best / most.best)
    return Rates(least, most, lowest, highest) if lowest is not None and highest is not None else None


def _by_hours(heater: StandingHeater, least: Band, most: Band, fuel: str) -> Rates | None:
    """Return the rates by which a filling lasts as long as is said; None where it may do so on some setting.

    At which setting it does nobody says: one that lasts shorter than flat out by the table burns that much flat out,
    and one that lasts longer than at the lowest that little at the lowest.
    """
    tank, lasts = heater.tank, heater.planned.heater.lasts
    if fuel not in FUELS or tank is None or not tank.volume.known or lasts is None or not lasts.known:
        return None
    if tank.volume.low <= 0.0 or lasts.low <= 0.0:
        return None
    content, _, worst, best = FUELS[fuel]
    volume = tank.volume
    drawn = Band(volume.best / lasts.best, volume.low / lasts.high, volume.high / lasts.low, spread="interval")
    if drawn.low > fuel_burnt(most.high, worst, content):
        return Rates(most, most, drawn, drawn, "hours")
    if least.known and least.low > 0.0 and drawn.high < fuel_burnt(least.low, best, content):
        return Rates(least, most, drawn, _times(drawn, most.best / least.best), "hours")
    return None


def _times(band: Band, by: float) -> Band:
    return replace(band, best=band.best * by, low=band.low * by, high=band.high * by)


def _known(flow: Band | None) -> Band | None:
    return flow if flow is not None and flow.known else None


def fuel_by_heat(energy: Band, fuel: str) -> Band | None:
    """Return the fuel (m3) of so much heat (J) by efficiency and content; None where nothing of the table burns.

    It is least where least is lost and the heater wastes least.
    """
    if fuel not in FUELS:
        return None
    content, efficiency, worst, best = FUELS[fuel]
    ends = ((energy.best, efficiency), (energy.low, best), (energy.high, worst))
    likely, least, most = (fuel_burnt(max(joule, 0.0), share, content) for joule, share in ends)
    return Band(likely, least, most, spread="interval", assumed=True)


def fuel_of_night(one: HeldNight, heater: StandingHeater) -> Band | None:
    """Return the fuel of a night (m3), by its heat and by what the heater burns.

    What was counted at both settings is taken alone. Else it is by energy and efficiency of the fuel, and by what the
    heater is said to burn, whichever is less and more.
    """
    burning, energy = burning_of(heater, one.warmth), one.energy
    by_rates = [_of_night(rates, energy) for rates in burning.rates]
    by_heat = fuel_by_heat(energy, burning.fuel)
    if burning.is_counted:
        return by_rates[0]
    if by_heat is None or by_heat.high <= 0.0:
        return None
    every = (by_heat, *by_rates)
    return Band(by_heat.best, min(one.low for one in every), max(one.high for one in every), spread="interval")


def _of_night(rates: Rates, energy: Band) -> Band:
    """Return the fuel of a night by the rates at both settings."""
    ends: tuple[tuple[float, End], ...] = ((energy.best, "best"), (energy.low, "low"), (energy.high, "high"))
    likely, least, most = (rates.burnt(heat / NIGHT, end) * NIGHT for heat, end in ends)
    return Band(likely, least, most, spread="interval")

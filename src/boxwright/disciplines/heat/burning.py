"""What a heater burns: as its heat takes by efficiency and energy of the fuel, as it is said to, as its pump counts.

What was counted goes before what is said.
"""

from __future__ import annotations

from boxwright.disciplines.heat.burner import FUELS, fuel_named
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, Warmth
from boxwright.disciplines.heat.method import fuel_burnt
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.parts import Counted, Heater
from boxwright.disciplines.heat.result import StandingHeater
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


def _known(flow: Band | None) -> Band | None:
    return flow if flow is not None and flow.known else None


def fuel_of_night(one: HeldNight, heater: StandingHeater) -> Band | None:
    """Return the fuel of a night (m3), by its heat and by what the heater burns.

    What was counted at both settings is taken alone. Else it is by energy and efficiency of the fuel, and by what the
    heater is said to burn, whichever is less and more.
    """
    facet, energy = heater.planned.heater, one.energy
    burns = burns_of(facet)
    by_rate = [] if burns is None else _by_rate(one.warmth, burns, energy)
    if burns is not None and burns.is_counted and by_rate:
        return Band(by_rate[0], min(by_rate), max(by_rate), spread="interval")
    fuel = fuel_named(facet.of)
    if fuel not in FUELS:
        return None
    content, efficiency, worst, best = FUELS[fuel]
    found = [
        fuel_burnt(heat / NIGHT, share, content) * NIGHT if heat > 0.0 else 0.0
        for heat, share in ((energy.best, efficiency), (energy.low, best), (energy.high, worst))
    ]
    if max(found) <= 0.0:
        return None
    every = [*found, *by_rate]
    return Band(found[0], min(every), max(every), spread="interval")


def _by_rate(warmth: Warmth | None, burns: Burns, energy: Band) -> list[float]:
    """Return the fuel of the night at its best, least and most, by the rates at both settings.

    Between the settings it goes straight with the heat; below the lowest the heater goes on and off, and burns as much
    less as it is off.
    """
    if warmth is None or burns.lowest is None or burns.highest is None:
        return []
    if not (warmth.lowest.known and warmth.highest.known) or warmth.highest.best <= 0.0:
        return []
    ends = (
        (energy.best, burns.lowest.best, burns.highest.best),
        (energy.low, burns.lowest.low, burns.highest.low),
        (energy.high, burns.lowest.high, burns.highest.high),
    )
    settings = (warmth.lowest.best, warmth.highest.best)
    return [rate_of(joule / NIGHT, settings, low, high) * NIGHT for joule, low, high in ends]


def rate_of(heat: float, settings: tuple[float, float], low: float, high: float) -> float:
    """Return what is burnt (m3/s) for so much heat (W), by what is at the lowest and the highest setting."""
    least, most = settings
    if heat < least:
        return low * heat / least
    return low + (high - low) * (heat - least) / (most - least) if most > least else high

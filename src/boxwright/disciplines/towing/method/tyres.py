"""Tyres: what a load index means, what a pressure carries."""

from __future__ import annotations

from boxwright.units import Kilogram, Metre, OutOfRange, Pascal, Ratio


def load_of_index(index: Ratio) -> Kilogram:
    """Return about what a load index stands for: a smooth law through the table, to find slips of the pen in it.

    Units: empirical
    Formula: load = 45 * 10 ** (index / 80)
    Valid: index 0 to 130, within 1.8 % of the table between 60 and 119
    Source: load-index-table LI 60 to 119
    Departs: the table is rounded, this is not; a rating is always taken from the table
    Assumes: nothing
    """
    OutOfRange.unless_between("index", index, 0.0, 130.0)
    return 45 * 10 ** (index / 80)


def pressure_for_load(rated_pressure: Pascal, rated_load: Kilogram, load: Kilogram, exponent: Ratio) -> Pascal:
    """Return the cold pressure for a load below the rated one; never below what the tyre's maker prints.

    Formula: pressure = rated_pressure * (load / rated_load) ** (1 / exponent)
    Valid: a load not above the rated one
    Source: tra-p-metric power of the pressure, inverted
    Departs: the exponent is an argument: 0.5 by the P-metric formula, 1 is the most cautious
    Assumes: nothing
    """
    OutOfRange.unless_positive("rated_load", rated_load)
    OutOfRange.unless_positive("exponent", exponent)
    OutOfRange.unless_between("load", load, 0.0, rated_load)
    return float(rated_pressure * (load / rated_load) ** (1 / exponent))


def load_at_pressure(rated_pressure: Pascal, rated_load: Kilogram, pressure: Pascal, exponent: Ratio) -> Kilogram:
    """Return what a tyre carries at less than the pressure of its rating: ``pressure_for_load`` turned round.

    Formula: load = rated_load * (pressure / rated_pressure) ** exponent
    Valid: a pressure not above that of the rating
    Source: tra-p-metric power of the pressure
    Departs: the exponent is an argument: of a pressure too low, 1 is the most cautious
    Assumes: nothing
    """
    OutOfRange.unless_positive("rated_pressure", rated_pressure)
    OutOfRange.unless_between("pressure", pressure, 0.0, rated_pressure)
    return float(rated_load * (pressure / rated_pressure) ** exponent)


def p_metric_load(pressure: Pascal, section: Metre, aspect: Ratio, rim: Metre) -> Kilogram:
    """Return the load a passenger tyre carries by its size and pressure.

    Units: empirical
    Formula: load = 6.67e-5 * (pressure / 1000) ** 0.5 * (1000 * section * (0.34848 + 0.6497 * aspect)) ** 1.39 *
        (1000 * rim + 1000 * section * (0.34848 + 0.6497 * aspect))
    Valid: P-metric passenger tyres, standard load; section at a rim of 70 % of it
    Source: tra-p-metric formula
    Departs: not rounded to a load index
    Assumes: nothing
    """
    OutOfRange.unless_positive("section", section)
    OutOfRange.unless_positive("pressure", pressure)
    width = 1000 * section * (0.34848 + 0.6497 * aspect)
    return float(6.67e-5 * (pressure / 1000) ** 0.5 * width**1.39 * (1000 * rim + width))


def passenger_tyre_on_trailer(rating: Kilogram, divisor: Ratio) -> Kilogram:
    """Return what a passenger-car tyre counts for on a trailer.

    Formula: counted = rating / divisor
    Valid: tyres marked for passenger cars
    Source: cfr-571-120 S5.1.2
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("divisor", divisor)
    return rating / divisor

"""What the tow vehicle carries and what the whole combination weighs, each load as the mass that weighs as much."""

from __future__ import annotations

from boxwright.units import Kilogram, Metre, OutOfRange, Ratio


def vehicle_mass(own: Kilogram, people_and_gear: Kilogram, tongue: Kilogram) -> Kilogram:
    """Return what rests on the tow vehicle's own wheels while it pulls the trailer.

    Formula: mass = own + people_and_gear + tongue
    Valid: no weight-distribution gear under tension
    Source: first-principles section 1.7
    Departs: nothing
    Assumes: ``own`` is the vehicle as it stands, tank full, nobody in it
    """
    return own + people_and_gear + tongue


def combination_mass(own: Kilogram, people_and_gear: Kilogram, trailer: Kilogram) -> Kilogram:
    """Return what vehicle and trailer weigh together; the load on the ball is part of the trailer and counts once.

    Formula: mass = own + people_and_gear + trailer
    Valid: any trailer
    Source: first-principles section 1.7
    Departs: nothing
    Assumes: nothing
    """
    return own + people_and_gear + trailer


def front_axle_mass(
    empty: Kilogram,
    loads: tuple[Kilogram, ...],
    behind_front_axle: tuple[Metre, ...],
    tongue: Kilogram,
    overhang: Metre,
    wheelbase: Metre,
) -> Kilogram:
    """Return what the tow vehicle's front axle carries, loaded and coupled.

    Formula: front = empty + sum(load * (1 - place / wheelbase) for load, place in zip(loads,
        behind_front_axle)) - tongue * overhang / wheelbase
    Valid: one place for each load; two axles
    Source: first-principles section 1.7
    Departs: nothing
    Assumes: level; no weight-distribution gear
    """
    OutOfRange.unless_positive("wheelbase", wheelbase)
    pairs = zip(loads, behind_front_axle, strict=True)
    return empty + sum(load * (1 - place / wheelbase) for load, place in pairs) - tongue * overhang / wheelbase


def rear_axle_mass(
    empty: Kilogram,
    loads: tuple[Kilogram, ...],
    behind_front_axle: tuple[Metre, ...],
    tongue: Kilogram,
    overhang: Metre,
    wheelbase: Metre,
) -> Kilogram:
    """Return what the tow vehicle's rear axle carries, loaded and coupled.

    Formula: rear = empty + sum(load * place / wheelbase for load, place in zip(loads, behind_front_axle)) +
        tongue * (wheelbase + overhang) / wheelbase
    Valid: one place for each load; two axles
    Source: first-principles section 1.7
    Departs: nothing
    Assumes: level; no weight-distribution gear
    """
    OutOfRange.unless_positive("wheelbase", wheelbase)
    pairs = zip(loads, behind_front_axle, strict=True)
    return empty + sum(load * place / wheelbase for load, place in pairs) + tongue * (wheelbase + overhang) / wheelbase


def share_of_tow_axles(trailer_axles: Kilogram, tow_axles: Kilogram) -> Ratio:
    """Return the trailer's axle loads as a share of the tow vehicle's, which some rules of brakes ask for.

    Formula: share = trailer_axles / tow_axles
    Valid: the tow vehicle's axle loads above zero
    Source: cfr-393-42 paragraph (b)(3)
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("tow_axles", tow_axles)
    return trailer_axles / tow_axles


def heaviest_by_factor(tow_empty: Kilogram, factor: Ratio) -> Kilogram:
    """Return the heaviest trailer that a rule allows as a multiple of the tow vehicle's empty mass.

    Formula: trailer = tow_empty * factor
    Valid: any factor
    Source: de-9-ausnahme mass factor X
    Departs: nothing; the rule caps it further by the registered trailer load
    Assumes: nothing
    """
    return tow_empty * factor

"""What vehicle and trailer do to each other at the ball: the D value they ask of it, what bars move."""

from __future__ import annotations

from math import isfinite

from boxwright.disciplines.towing import method
from boxwright.disciplines.towing.outline import spanned
from boxwright.disciplines.towing.result import Reading, Shifted
from boxwright.disciplines.towing.sourced import ASSUMED
from boxwright.model.trailer import TowVehicle, Trailer
from boxwright.units import Band, Spread


def needed_d_value(vehicle: TowVehicle, trailer: Trailer, gross: Reading) -> Reading | None:
    """Return the D value (N) that a vehicle and the trailer ask of their coupling; None without the vehicle's mass.

    The trailer counts with its plate, or with what it weighs where that is more. Doubt that reaches over the plate is
    asked by the plate's own rule, so it is not asked again here.
    """
    own, plate = vehicle.gvwr, trailer.gvwr
    if own is None or not own.known:
        return None
    mass, permitted, missing = gross.band, gross.permitted_high, gross.missing
    if plate is not None and plate.known:
        best = max(plate.best, gross.best)
        mass = Band(best, plate.low, max(plate.high, best), spread="interval", assumed=plate.assumed)
        permitted, missing = max(plate.best, permitted), ()
    low, high = _force(max(mass.low, 0.0), own.low), _force(mass.high, own.high)
    spread: Spread = "interval" if low < high else "exact"
    band = Band(_force(mass.best, own.best), low, high, isfinite(high), spread, assumed=own.assumed or mass.assumed)
    return Reading(band, band.best, max(band.best, _force(permitted, own.best)), missing)


def _force(trailer_mass: float, tow_mass: float) -> float:
    """Return the D value of two masses, endless for a trailer whose weight has no upper end."""
    if not isfinite(trailer_mass):
        return trailer_mass
    return method.d_value(tow_mass, trailer_mass, ASSUMED["d_value_gravity"])


def shifted_by_bars(vehicle: TowVehicle, tongue: Band, ball_to_axle: Band | None) -> Shifted | None:
    """Return what weight-distribution bars make of the load on the ball; None without bars or where a number lacks."""
    restores = vehicle.bars.restores if vehicle.bars is not None else None

    def moment(share: float, load: float, overhang: float, behind: float) -> float:
        return method.restoring_moment(share, load, overhang, behind)

    def lost(load: float, overhang: float, wheelbase: float, behind: float) -> float:
        return -method.front_axle_change(load, 0.0, overhang, wheelbase, behind)

    def front(share: float, load: float, overhang: float, wheelbase: float, behind: float) -> float:
        return -method.front_axle_change(load, moment(share, load, overhang, behind), overhang, wheelbase, behind)

    def rear(share: float, load: float, overhang: float, wheelbase: float, behind: float) -> float:
        return method.rear_axle_change(load, moment(share, load, overhang, behind), overhang, wheelbase, behind)

    def wheels(share: float, load: float, overhang: float, behind: float) -> float:
        return method.trailer_axle_change(moment(share, load, overhang, behind), behind)

    overhang, wheelbase = vehicle.overhang, vehicle.wheelbase
    slack = spanned(lost, tongue, overhang, wheelbase, ball_to_axle)
    taut = spanned(front, restores, tongue, overhang, wheelbase, ball_to_axle)
    on_rear = spanned(rear, restores, tongue, overhang, wheelbase, ball_to_axle)
    on_wheels = spanned(wheels, restores, tongue, overhang, ball_to_axle)
    if slack is None or taut is None or on_rear is None or on_wheels is None:
        return None
    return Shifted(slack, taut, on_rear, on_wheels)

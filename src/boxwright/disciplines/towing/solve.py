"""What towing works out: each number that a plate, a practice or a law is compared with."""

from __future__ import annotations

from datetime import date
from functools import partial
from math import isfinite

from boxwright.disciplines.towing import method
from boxwright.disciplines.towing.brake_words import read_brakes
from boxwright.disciplines.towing.coupled import needed_d_value, shifted_by_bars
from boxwright.disciplines.towing.law import CLASSES, law_of
from boxwright.disciplines.towing.outline import height_of, length_of, low_points, spanned, width_of
from boxwright.disciplines.towing.parts import Section
from boxwright.disciplines.towing.result import Answer, Behind, Offers, Reading, Result, Weighed, Wheel
from boxwright.disciplines.towing.sourced import AIR_DENSITY, ASSUMED, SHARES
from boxwright.exchange import Box
from boxwright.model.part import Frame
from boxwright.model.trailer import TowVehicle, Trailer
from boxwright.units import Band

__all__ = ["Answer", "Offers", "Result", "Weighed", "offers", "solve"]

CHOCK = "chock"
"""What a part is called that holds a wheel."""


def offers() -> Offers:
    """Return what towing gives the others: nothing."""
    return Offers()


def solve(
    trailer: Trailer,
    tow: tuple[tuple[str, TowVehicle], ...],
    own: Section,
    trailer_class: str,
    countries: tuple[str, ...],
    judged_on: date,
    box: Box,
    weighed: Weighed,
    tongues: tuple[tuple[str, Answer], ...],
    frames: tuple[Frame, ...],
    beds: tuple[str, ...],
) -> Result:
    """Return the trailer of one slot beside its plates, its tow vehicles and the law of its route.

    ``own`` are the owner's own limits; ``weighed`` is weight's result of the slot; ``tongues`` the load on the ball in
    every load state of the stage that is towed in; ``frames`` all that stands; ``beds`` the parts somebody sleeps on.
    """
    trailer_class = trailer_class.strip().lower()
    taken = partial(_taken, frozenset(frame.of for frame in frames if _is_unplaced(frame)))
    gross, tongue = taken(weighed.gross), taken(weighed.tongue)
    sides = (("left", weighed.axles_left), ("right", weighed.axles_right))
    wheels = [Wheel(i, side, taken(one)) for side, answers in sides for i, one in enumerate(answers, 1)]
    braked = _braked_axles(trailer)
    axle_x = _middle(box)
    parked, towing = (_wind(trailer, gross, share) for share in (1.0, SHARES["wheel_unloaded"]))
    return Result(
        of=box.of,
        trailer=trailer,
        trailer_class=trailer_class if trailer_class in CLASSES else "",
        beds=tuple(frame.of for frame in frames if frame.name in beds),
        has_chocks=any(CHOCK in frame.name.lower() for frame in frames),
        judged_on=judged_on,
        law=law_of(countries, judged_on),
        home=countries[0].partition("-")[0].upper() if countries else "",
        gross=gross,
        tongue=tongue,
        share=taken(weighed.share),
        on_wheels=taken(weighed.on_wheels),
        axles=tuple(taken(one) for one in weighed.axles),
        wheels=tuple(sorted(wheels, key=lambda wheel: (wheel.axle, wheel.side))),
        left=taken(weighed.left),
        right=taken(weighed.right),
        centre_z=taken(weighed.centre_z),
        tongues=tuple((load, taken(one)) for load, one in tongues),
        braked_axles=braked,
        tyre_load=_tyre_load(trailer),
        width=width_of(trailer, frames),
        height=height_of(trailer, frames),
        length=length_of(trailer, box, frames),
        rollover=spanned(_rollover, trailer.axles.track, trailer.deck_height, weighed.centre_z.band),
        parked_wind=parked,
        towing_wind=towing,
        fits=own.fits,
        behind=tuple(
            _behind(name, vehicle, trailer, box, frames, gross, tongue, braked, axle_x) for name, vehicle in tow
        ),
    )


def _taken(unplaced: frozenset[str], answer: Answer) -> Reading:
    places = tuple(path for path in answer.unknown if path in unplaced)
    return Reading(answer.band, answer.permitted_low, answer.permitted_high, answer.unknown, places)


def _is_unplaced(frame: Frame) -> bool:
    """Return whether only the place of a part is not known, and what it weighs is."""
    weighs = frame.dry.known and (frame.contents is None or frame.contents.known)
    return weighs and not all(
        axis.known and isfinite(axis.low) and isfinite(axis.high)
        for axis in (frame.place.x, frame.place.y, frame.place.z)
    )


def _braked_axles(trailer: Trailer) -> int | None:
    """Return on how many axles the brakes are: on the only one where nobody wrote it; None where the words are open."""
    said = read_brakes(trailer.brakes.kind)
    if said == "none":
        return 0
    if said != "fitted":
        return None
    has_one_axle = len(trailer.axles.x) == 1 and len(trailer.axles.gawr) < 2
    return 1 if trailer.brakes.axles is None and has_one_axle else trailer.brakes.axles


def _tyre_load(trailer: Trailer) -> Band | None:
    """Return what one tyre carries at the pressure it has: less than its rating where it is pumped less."""
    rating, at, pumped = trailer.tyres.load, trailer.tyres.at, trailer.tyres.pressure
    if rating is None or not rating.known or at is None or pumped is None or not (at.known and pumped.known):
        return rating
    if pumped.best >= at.best:
        return rating
    return spanned(partial(_underinflated, SHARES["underinflated_exponent"]), at, rating, pumped)


def _underinflated(exponent: float, at: float, rating: float, pumped: float) -> float:
    return method.load_at_pressure(at, rating, min(pumped, at), exponent)


def _middle(box: Box) -> Band | None:
    places = [axle.x for axle in box.axles]
    if not places or not all(place.known for place in places):
        return None
    return spanned(lambda *all_x: sum(all_x) / len(all_x), *places)


def _rollover(track: float, deck: float, centre_z: float) -> float:
    return method.rollover_threshold(track, deck + centre_z)


def _wind(trailer: Trailer, gross: Reading, share: float) -> Band | None:
    """Return the side wind that takes a share of the load off the windward wheels."""
    outside = trailer.outside

    def formula(mass: float, track: float, length: float, height: float, deck: float) -> float:
        area = length * (height - deck)
        coefficient = ASSUMED["side_coefficient"]
        return method.unloading_wind(share, mass, track, coefficient, area, (height + deck) / 2.0, AIR_DENSITY)

    # What has no weight yet only adds to it, and a heavier trailer stands longer: the weight known so far is the least.
    least = min(gross.band.low, gross.permitted_low)
    mass = Band(gross.best, least, gross.best, spread="interval")
    return spanned(formula, mass, trailer.axles.track, outside.length, outside.height, trailer.deck_height)


def _behind(
    name: str,
    vehicle: TowVehicle,
    trailer: Trailer,
    box: Box,
    frames: tuple[Frame, ...],
    gross: Reading,
    tongue: Reading,
    braked: int | None,
    axle_x: Band | None,
) -> Behind:
    """Return the trailer behind one tow vehicle."""
    gear, kerb = vehicle.people_and_gear, vehicle.kerb
    own = spanned(lambda empty, aboard: method.vehicle_mass(empty, aboard, 0.0), kerb, gear)
    most = gross.band.high if isfinite(gross.band.high) else max(gross.best, gross.permitted_high)
    trailer_mass = Band(gross.best, gross.band.low, most, spread="interval")
    pitch = spanned(_pitch, vehicle.ball_height, trailer.coupler_height, axle_x, box.coupler_x)
    return Behind(
        of=f"tow[{name}]",
        name=name,
        vehicle=vehicle,
        in_vehicle=tongue.plus(gear) if gear is not None and gear.known else None,
        payload=_payload(vehicle),
        together=gross.plus(own) if own is not None else None,
        pitch=pitch,
        slowing=spanned(partial(_slowing, braked), own, trailer_mass) if braked is not None else None,
        grip=spanned(_grip, own, trailer_mass),
        rear_gain=spanned(_rear_gain, tongue.band, vehicle.overhang, vehicle.wheelbase),
        needed_d_value=needed_d_value(vehicle, trailer, gross),
        shifted=shifted_by_bars(vehicle, tongue.band, spanned(lambda axle, ball: axle - ball, axle_x, box.coupler_x)),
        lowest=low_points(box, frames, pitch, vehicle.overhang),
    )


def _payload(vehicle: TowVehicle) -> Band | None:
    """Return what the vehicle may carry: its payload, or its greatest mass less its own, whichever is less."""
    by_mass = spanned(lambda rated, empty: rated - empty, vehicle.gvwr, vehicle.kerb)
    known = [one for one in (vehicle.payload, by_mass) if one is not None and one.known]
    return min(known, key=lambda one: one.best) if known else vehicle.payload


def _pitch(ball_height: float, level_height: float, axle_x: float, coupler_x: float) -> float:
    return method.nose_pitch(ball_height, level_height, axle_x - coupler_x)


def _slowing(braked: int, own: float, trailer: float) -> float:
    return method.deceleration(own, trailer, ASSUMED["tow_braked"], ASSUMED["trailer_braked"] if braked else 0.0)


def _grip(own: float, trailer: float) -> float:
    """Return the grip a start on the yardstick hill asks of the driven wheels, the ball's load left out."""
    force = method.grade_force(method.combination_mass(own, 0.0, trailer), SHARES["hill_grade"], ASSUMED["rolling"])
    return method.grip_needed(force, ASSUMED["driven_share"] * own * method.STANDARD_GRAVITY)


def _rear_gain(tongue: float, overhang: float, wheelbase: float) -> float:
    return method.rear_axle_change(tongue, 0.0, overhang, wheelbase, wheelbase)

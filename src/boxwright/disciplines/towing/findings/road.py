"""Rules of the road and the parking place: level, what hangs low, overturning, wind, stopping, starting on a hill."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import atan

from boxwright.disciplines.towing.brake_words import read_brakes
from boxwright.disciplines.towing.findings.vehicle import first_of_mass
from boxwright.disciplines.towing.method import STANDARD_GRAVITY, mean_deceleration
from boxwright.disciplines.towing.result import Behind, LowPoint, Result
from boxwright.disciplines.towing.sourced import LENGTHS, SHARES, WINDS, YARDSTICK_DISTANCE, YARDSTICK_SPEED
from boxwright.disciplines.towing.telling import advice, in_words, lacking, missing, name_of, settled_by
from boxwright.finding import Finding, Use
from boxwright.units import HeaderUnits, show, show_band

GEOMETRY = "first-principles"
DRIVEWAY = atan(SHARES["driveway_grade"])
"""The change of grade of a steep driveway, as an angle."""


def coupler_level(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the trailer does not stand level on the vehicle's ball.

    With torsion axles the height of the ball decides what each axle carries.

    Asks: does the ball stand at the height of the level coupler
    Limit: 1 in 50, nose up or down
    Source: towing-practice; first-principles section 7.3
    Lever: another ball mount, with rise or drop
    Methods: nose_pitch
    """
    code = "towing/coupler-level"
    vehicle = behind.vehicle
    if behind.pitch is None:
        where = "trailer.coupler_height" if result.trailer.coupler_height is None else f"{behind.of}.ball_height"
        words = in_words(where, behind.name)
        says = f"nobody can say whether the trailer stands level behind {behind.name}: {words} is not known"
        how = "from the ground to the middle of the ball socket, the trailer level"
        act = f"Measure {words}, {how if where.startswith('trailer') else 'from the ground to its middle'}"
        yield missing(code, where, says, act, False, GEOMETRY)
        return
    pitch, limit = behind.pitch.best, SHARES["level"]
    if abs(pitch) > limit and vehicle.ball_height is not None and result.trailer.coupler_height is not None:
        side = "up" if pitch > 0.0 else "down"
        off = show(abs(vehicle.ball_height.best - result.trailer.coupler_height.best), "m", shown_in)
        says = f"behind {behind.name} the nose points {side}: its ball is {off} off the height of a level coupler"
        act = f"Use a ball mount with {off} of {'drop' if pitch > 0.0 else 'rise'}"
        yield advice(code, behind.of, says, abs(pitch), limit, "", "towing-practice", f"{behind.of}.ball_height", act)


def ground_clearance(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what hangs so low that it touches a kerb, a ramp or the street at the end of a driveway.

    Asks: does everything below the deck clear the ground, the rise behind the axle and the crest ahead of it
    Limit: 0.15 m over the ground; a change of grade of 15 %
    Source: towing-practice; first-principles clearance
    Lever: raise it, move it nearer to the axle, fold it up
    Methods: departure_angle breakover_angle pitched_height
    """
    code = "towing/ground-clearance"
    deck = result.trailer.deck_height
    if deck is None or not deck.known:
        says = "the height of the deck is not written, so nobody can say what hangs too low"
        yield missing(code, "trailer.deck_height", says, "Measure ground to deck, the trailer level", False, GEOMETRY)
        return
    low = min(behind.lowest, key=lambda point: point.height.best, default=None)
    if low is not None and low.height.best < LENGTHS["ground"]:
        says = f"{name_of(low.of)} hangs {show(low.height.best, 'm', shown_in)} over the ground"
        wanted = f"{says}; under {show(LENGTHS['ground'], 'm', shown_in)} it catches on kerbs and ramps"
        yield _hangs_low(code, low, wanted, -low.height.best, -LENGTHS["ground"], "m")
    rear = min(_departing(behind.lowest), key=lambda pair: pair[1], default=None)
    if rear is not None and rear[1] < DRIVEWAY:
        says = f"{name_of(rear[0].of)} touches where the road rises {show(rear[1], 'rad', shown_in)} behind the wheels"
        yield _hangs_low(code, rear[0], says, -rear[1], -DRIVEWAY, "rad")
    front = min(_breaking(behind.lowest), key=lambda pair: pair[1], default=None)
    if front is not None and front[1] < DRIVEWAY:
        angle = show(front[1], "rad", shown_in)
        if front[0].is_least:
            says = f"{name_of(front[0].of)} clears a crest of {angle} at least; how much more, the overhang decides"
            act = f"Measure from the rear axle of {behind.name} to its ball"
            besides = (("Crest it clears at least", angle), ("Crest of a driveway", show(DRIVEWAY, "rad", shown_in)))
            yield replace(missing(code, f"{behind.of}.overhang", says, act, False, GEOMETRY), besides=besides)
        else:
            says = f"{name_of(front[0].of)} touches on a crest of {angle} between tow vehicle and trailer"
            yield _hangs_low(code, front[0], says, -front[1], -DRIVEWAY, "rad")


def _departing(points: tuple[LowPoint, ...]) -> list[tuple[LowPoint, float]]:
    return [(point, point.departure.best) for point in points if point.departure is not None]


def _breaking(points: tuple[LowPoint, ...]) -> list[tuple[LowPoint, float]]:
    return [(point, point.breakover.best) for point in points if point.breakover is not None]


def _hangs_low(code: str, point: LowPoint, says: str, number: float, limit: float, unit: str) -> Finding:
    act = f"Raise {name_of(point.of)}, or take it off for the road"
    found = advice(code, point.of, says, number, limit, unit, "towing-practice", f"{point.of}.z", act)
    # Less is worse here, so the numbers were handed over with their signs turned.
    return replace(found, number=-number, limit=-limit)


def rollover(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the centre of gravity is so high over the track that a fast bend may tip the trailer over.

    Asks: is half the track over the height of the centre of gravity above a yardstick
    Limit: 0.7 of gravity, for a rigid body; springs tip sooner
    Source: static-stability-factor; the yardstick towing-practice
    Lever: heavy things down, off the roof
    Methods: rollover_threshold
    """
    code = "towing/rollover"
    if result.rollover is None:
        yield _measure_track(code, result, "how soon a bend tips it over", ("tow",))
        return
    limit = SHARES["rollover"]
    if result.rollover.best < limit:
        ratio = show_band(result.rollover, "ratio", shown_in)
        says = f"a bend that pulls {ratio} of gravity sideways tips it over; under {show(limit, 'ratio', shown_in)}"
        yield Finding(code, "trailer.axles.track", "advice", f"{says} is top-heavy", result.rollover.best, limit,
                      result.rollover.best - limit, "ratio", "static-stability-factor", "parts",
                      act="Stow heavy things low, and slow down for bends and ramps", uses=("tow",))  # fmt: skip
    elif result.rollover.low < limit:
        ratio = show_band(result.rollover, "ratio", shown_in)
        says = f"how high the weight sits is not known well enough: a bend that pulls {ratio} of gravity tips it over"
        act = "Write how high the empty trailer's weight sits above the deck, as trailer.empty.cg_z"
        found = missing(code, "trailer.empty.cg_z", says, act, False, "static-stability-factor")
        # Whatever comes of it is advice, so it keeps no answer back.
        yield replace(found, could_limit=False)


def wind_parked(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which side wind tips the parked trailer over; the empty shell is the dangerous one.

    Asks: does the side wind that lifts the windward wheels stand above a storm
    Limit: 24.5 m/s, the lower end of Beaufort 10; gusts exceed the forecast's mean
    Source: first-principles section 6.4; the wind beaufort
    Lever: load it, tie it down, turn it nose to the wind
    Methods: unloading_wind
    """
    code = "towing/wind-parked"
    uses: tuple[Use, ...] = ("leave", "sleep")
    if result.parked_wind is None:
        yield _measure_track(code, result, "which wind tips it over", uses)
        return
    limit = WINDS["parked"]
    if result.parked_wind.best < limit:
        wind = show_band(result.parked_wind, "speed", shown_in)
        says = f"a side wind of {wind} lifts its windward wheels; a storm brings {show(limit, 'speed', shown_in)}"
        yield Finding(code, "trailer.outside", "advice", says, result.parked_wind.best, limit,
                      result.parked_wind.best - limit, "m/s", GEOMETRY, "parts",
                      act="Turn its nose to the wind, keep weight in it, put its legs down", uses=uses)  # fmt: skip


def wind_towing(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which side wind takes half the load off the windward wheels on the road.

    Asks: does that wind stand above a gale
    Limit: 17.2 m/s, the lower end of Beaufort 8
    Source: first-principles section 6.4; the wind beaufort
    Lever: wait, or drive slowly
    Methods: unloading_wind
    """
    code = "towing/wind-towing"
    if result.towing_wind is None:
        yield _measure_track(code, result, "which wind pushes it about", ("tow",))
        return
    limit = WINDS["towing"]
    if result.towing_wind.best < limit:
        wind = show_band(result.towing_wind, "speed", shown_in)
        says = f"a side wind of {wind} takes half the load off its windward wheels on the road"
        yield Finding(code, "trailer.outside", "advice", says, result.towing_wind.best, limit,
                      result.towing_wind.best - limit, "m/s", GEOMETRY, "parts",
                      act="Look at the forecast, and wait out gusts above half of that", uses=("tow",))  # fmt: skip


def _measure_track(code: str, result: Result, what: str, uses: tuple[Use, ...]) -> Finding:
    """Return the question for what overturning needs, the first that is missing; a height lacks with its part."""
    trailer = result.trailer
    needed = {
        "trailer.axles.track": trailer.axles.track,
        "trailer.deck_height": trailer.deck_height,
        "trailer.outside.height": trailer.outside.height,
        "trailer.outside.length": trailer.outside.length,
    }
    unwritten = [path for path, band in needed.items() if band is None or not band.known]
    if not unwritten:
        return replace(_height_unknown(code, result, what), uses=uses)
    where, words = unwritten[0], in_words(unwritten[0])
    how = f"Measure {words}, tyre middle to tyre middle" if where.endswith("track") else f"Measure {words}"
    found = missing(code, where, f"nobody can say {what}: {words} is not known", how, False, GEOMETRY)
    return replace(found, uses=uses)


def _height_unknown(code: str, result: Result, what: str) -> Finding:
    """Return the question for what the height of the centre of gravity lacks: of parts, or of the empty trailer."""
    lacks, says = result.centre_z.missing, f"nobody can say {what}: how high the weight sits is not known"
    if not lacks:
        act = "Write how high the empty trailer's weight sits above the deck, as trailer.empty.cg_z"
        return missing(code, "trailer.empty.cg_z", says, act, False, GEOMETRY)
    act = settled_by(result.centre_z)
    if set(lacks) != set(result.centre_z.unplaced):
        act = f"{act}, and measure how high {'it sits' if len(lacks) == 1 else 'they sit'}"
    # Not at the part's own line: there its weight is asked for, and one line asks for one thing.
    found = missing(code, "parts", f"{says} without {lacking(result.centre_z)}", act, False, GEOMETRY)
    return replace(found, because=lacks)


def stopping(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when vehicle and trailer together brake worse than a yardstick.

    Brake forces are taken from the kind of vehicle: three quarters of its own weight, under half of a braked
    trailer's, none of one without brakes.

    Asks: do both together stop from 30 km/h in 7 m
    Limit: the New Zealand yardstick, here for every country
    Source: nz-stop; the brake forces towing-practice
    Lever: brakes on the trailer, a heavier vehicle, a lighter load
    Methods: deceleration mean_deceleration
    """
    code = "towing/stopping"
    if behind.slowing is None:
        where, act = "trailer.brakes.axles", "Count the axles of the trailer with brakes"
        if read_brakes(result.trailer.brakes.kind) in ("nothing", "unclear"):
            where, act = "trailer.brakes", "Look for brakes at each wheel"
        elif result.braked_axles is not None:
            where, act = first_of_mass(behind)
        says = f"nobody can say how {behind.name} stops with it: own weight, what rides in it or brakes are unknown"
        yield missing(code, where, says, act, False, "nz-stop")
        return
    wanted = mean_deceleration(YARDSTICK_SPEED, YARDSTICK_DISTANCE)
    if behind.slowing.low < wanted:
        brakes, yard = (f"{one / STANDARD_GRAVITY:.2f}" for one in (behind.slowing.low, wanted))
        says = f"{behind.name} and trailer together brake at {brakes} of gravity, less than the yardstick of {yard}"
        yield Finding(code, behind.of, "advice", says,
                      behind.slowing.low, wanted, behind.slowing.low - wanted, "m/s2", "nz-stop", "trailer.brakes",
                      act="Keep twice the distance", uses=("tow",))  # fmt: skip


def hill_start(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a start on a steep hill asks more grip of the driven wheels than a wet road gives.

    Half of the vehicle's weight is taken to rest on its driven axle, and the ball's load is left out.

    Asks: does the driven axle pull both up 12 %
    Limit: grip of 0.5
    Source: sae-j2807 for the grade; grip and axle share towing-practice
    Lever: a lighter load, all wheels driven
    Methods: grade_force grip_needed
    """
    code = "towing/hill-start"
    if behind.grip is None:
        says = f"nobody can say whether {behind.name} starts on a hill: its own weight or what rides in it is unknown"
        where, act = first_of_mass(behind)
        yield missing(code, where, says, act, False, "sae-j2807")
        return
    limit = SHARES["hill_grip"]
    if behind.grip.high > limit:
        grade, grip = show(SHARES["hill_grade"], "ratio", shown_in), f"{behind.grip.high:.2f}"
        says = (
            f"to start on {grade} {behind.name} needs a grip of {grip} on its driven wheels; a wet road gives {limit}"
        )
        yield advice(code, behind.of, says, behind.grip.high, limit, "", "sae-j2807", "loads",
                     "Choose the way round the steep hill, or carry less")  # fmt: skip

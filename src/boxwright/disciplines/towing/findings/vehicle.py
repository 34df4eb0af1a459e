"""Rules of the tow vehicle: its ratings, what it carries, and what the whole combination weighs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.towing.result import Behind, Result
from boxwright.disciplines.towing.sourced import ASSUMED
from boxwright.disciplines.towing.telling import OWN_PAPERS, OWN_PLATE, Question, judged, missing, shown, without_rating
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, show, show_band


def no_vehicle(result: Result) -> Iterator[Finding]:
    """Say that no tow vehicle is written, so that its ratings cannot be judged.

    Asks: is there a tow vehicle with its ratings
    Limit: one or more
    Source: own-papers
    Lever: write the vehicle under tow
    """
    if not result.behind:
        says = "no tow vehicle is written, so nobody can say whether one may pull this; write it under tow:"
        yield missing("towing/no-vehicle", "tow", says, "Write the tow vehicle with its ratings", True, OWN_PAPERS)


def tow_rating(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a braked trailer is heavier than the vehicle may pull.

    Asks: is the gross weight within the vehicle's tow rating
    Limit: the tow rating; of a trailer without brakes see unbraked_limit
    Source: own-papers
    Lever: carry less, or a vehicle rated for more
    """
    if result.braked_axles == 0 and behind.vehicle.rating is None:
        return
    asked = Question(
        "towing/tow-rating",
        behind.of,
        "the gross weight",
        f"the tow rating of {behind.name}",
        f"{behind.of}.rating",
        "in its handbook or on its plate",
        source=OWN_PAPERS,
        lever="loads",
        act="Carry less, or use a vehicle rated for more",
    )
    yield from judged(asked, result.gross, behind.vehicle.rating, shown_in)


def unbraked_limit(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a trailer without brakes is heavier than the vehicle may pull without them.

    Where the load of the day is inside but the plate allows more, the vehicle's limit is the greatest load.

    Asks: is the gross weight of an unbraked trailer within the vehicle's limit for one
    Limit: the vehicle's limit for a trailer without brakes
    Source: own-papers
    Lever: carry less, fit brakes, or a vehicle rated for more
    """
    if result.braked_axles != 0:
        return
    limit, plate, code = behind.vehicle.unbraked, result.trailer.gvwr, "towing/unbraked-limit"
    if limit is not None and limit.known and plate is not None and plate.best > limit.best:
        words = f"; it is also less than the plate's {show_band(plate, 'kg', shown_in)}"
    else:
        words = ""
    asked = Question(
        code,
        behind.of,
        "the gross weight, without brakes,",
        f"what {behind.name} may pull unbraked",
        f"{behind.of}.unbraked",
        "in its handbook or registration paper",
        source=OWN_PAPERS,
        lever="loads",
        act="Carry less, fit brakes, or use a vehicle rated for more",
        words=words,
    )
    besides = (("Greatest mass on the plate", show_band(plate, "kg", shown_in)),) if words and plate is not None else ()
    found = [replace(one, besides=besides) for one in judged(asked, result.gross, limit, shown_in)]
    yield from found
    if words and limit is not None and not found:
        most = show(limit.best, "kg", shown_in)
        says = f"behind {behind.name} load no more than {most} in all{words}; now it is {_gross(result, shown_in)}"
        yield Finding(code, behind.of, "limit", says, result.gross.best, limit.best, limit.best - result.gross.best,
                      "kg", OWN_PAPERS, "loads", act=f"Load no more than {most} in all", uses=("tow",),
                      besides=besides)  # fmt: skip


def _gross(result: Result, shown_in: HeaderUnits) -> str:
    return shown(result.gross, "kg", shown_in)


def payload(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when tongue weight, people and gear together are more than the vehicle may carry.

    Asks: are tongue weight, people and gear within the vehicle's payload
    Limit: its payload, or its greatest mass less its own
    Source: own-papers; first-principles section 1.7
    Lever: carry less in the vehicle, or move weight rearward in the trailer
    Methods: vehicle_mass
    """
    code = "towing/payload"
    asked = Question(
        code,
        behind.of,
        "what tongue, people and gear put on it",
        f"the payload of {behind.name}",
        f"{behind.of}.payload",
        "on the door jamb, or from its papers: greatest mass less its own",
        source=OWN_PAPERS,
        lever=f"{behind.of}.people_and_gear",
        act="Carry less in the vehicle, or move weight rearward in the trailer",
    )
    if behind.payload is None or not behind.payload.known:
        yield without_rating(asked, behind.in_vehicle, shown_in)
    elif behind.in_vehicle is None:
        says = f"what rides in {behind.name} is not written, so its payload cannot be judged; write people_and_gear"
        yield missing(code, f"{behind.of}.people_and_gear", says, count_up_gear(behind), True, OWN_PAPERS)
    else:
        yield from judged(asked, behind.in_vehicle, behind.payload, shown_in)


def combination(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when vehicle and trailer together are heavier than the vehicle is rated for.

    Asks: are vehicle, people, gear and trailer within the rating of the whole combination
    Limit: its gross combination rating (train weight)
    Source: own-papers; first-principles section 1.7
    Lever: carry less
    Methods: combination_mass
    """
    code = "towing/combination"
    asked = Question(
        code,
        behind.of,
        "vehicle and trailer together",
        f"the combination rating of {behind.name}",
        f"{behind.of}.gcwr",
        "on its plate or in its handbook (gross combination or train weight)",
        source=OWN_PAPERS,
        lever="loads",
        act="Carry less in vehicle or trailer",
    )
    limit = behind.vehicle.gcwr
    if limit is None or not limit.known:
        yield without_rating(asked, behind.together, shown_in)
    elif behind.together is None:
        where, act = first_of_mass(behind)
        says = f"the own weight of {behind.name} or what rides in it is not written; write kerb and people_and_gear"
        yield missing(code, where, says, act, True, OWN_PAPERS)
    else:
        yield from judged(asked, behind.together, limit, shown_in)


def first_of_mass(behind: Behind) -> tuple[str, str]:
    """Return which of the vehicle's own weight and what rides in it is not known, and what to do about it."""
    kerb = behind.vehicle.kerb
    if kerb is None or not kerb.known:
        return f"{behind.of}.kerb", f"Read the own weight of {behind.name} from its papers, or weigh it empty"
    return f"{behind.of}.people_and_gear", count_up_gear(behind)


def count_up_gear(behind: Behind) -> str:
    """Return what to do where nobody wrote what rides in a vehicle."""
    return f"Weigh, or count up, the people and gear in {behind.name}"


def rear_axle(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what the ball adds to the vehicle's rear axle, where that axle's rating is written.

    Only a scale knows what the axle carries before, so this advises to weigh and never clears the axle.

    Asks: what does the tongue weight add to the rear axle
    Limit: its rating, less what it carries already
    Source: first-principles section 1.6
    Lever: weigh the vehicle's axles, coupled
    Methods: rear_axle_change
    """
    rating, code = behind.vehicle.rear_axle, "towing/rear-axle"
    if rating is None or not rating.known:
        return
    if behind.rear_gain is None:
        says = f"the rear axle of {behind.name} is rated, but its wheelbase or overhang is not written"
        act = f"Measure the wheelbase of {behind.name}, and from its rear axle to the ball"
        yield missing(code, f"{behind.of}.wheelbase", says, act, False, OWN_PAPERS)
        return
    gain = show_band(behind.rear_gain, "kg", shown_in)
    says = f"the ball puts {gain} on the rear axle of {behind.name}, rated {show_band(rating, 'kg', shown_in)}"
    kind_is_over = behind.rear_gain.best > rating.best
    yield Finding(code, behind.of, "stop" if kind_is_over else "advice", f"{says}; weigh that axle coupled and loaded",
                  behind.rear_gain.best, rating.best, rating.best - behind.rear_gain.best, "kg", OWN_PAPERS,
                  f"{behind.of}.rear_axle", act=f"Weigh the rear axle of {behind.name}, coupled and loaded",
                  uses=("tow",))  # fmt: skip


def d_value(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when vehicle and trailer ask more of their coupling than the D value stamped on either half of it.

    The stamp is the owner's own, so too little of it stops. The formula is recalled, though a public worked example
    agrees; so enough of it clears nothing else, and every other rating is judged on its own.

    Asks: is the D value of both masses within the least one stamped on coupling head or tow bar
    Limit: the lesser stamp; a rig file that names none is not asked
    Source: own-plate; the formula un-r55
    Lever: a coupling head or tow bar with a greater D value
    Methods: d_value
    """
    code = "towing/d-value"
    stamps = {
        "trailer.coupler.d_value": ("the D value of the coupler", result.trailer.coupler.d_value),
        f"{behind.of}.d_value": (f"the D value of the tow bar of {behind.name}", behind.vehicle.d_value),
    }
    given = {path: (words, stamp) for path, (words, stamp) in stamps.items() if stamp is not None}
    if not given:
        return
    if behind.needed_d_value is None:
        says = f"the greatest mass of {behind.name} is not written, so the D value it asks for is not known; write gvwr"
        act = f"Read the greatest mass of {behind.name} on its plate"
        yield missing(code, f"{behind.of}.gvwr", says, act, True, OWN_PAPERS)
        return
    asked = Question(code, behind.of, "the D value of both masses", "", "", "on its plate", "N", "kN", lever="",
                     act="Fit a coupling head or tow bar with a greater D value, or use a lighter trailer")  # fmt: skip
    known: list[tuple[Band, Question]] = []
    for path, (words, stamp) in given.items():
        about = replace(asked, limit=words, rating_path=path, lever=path)
        if not stamp.known:
            yield without_rating(about, behind.needed_d_value, shown_in)
        elif _is_misread(stamp, result, behind):
            says = f"{words} is written as {show(stamp.best, 'kN', shown_in)}, more than vehicle and trailer weigh"
            yield missing(code, path, f"{says}; read it again", f"Read {words} again, in kN", True, OWN_PLATE)
        else:
            known.append((stamp, about))
    if known:
        least, about = min(known, key=lambda pair: pair[0].best)
        yield from judged(about, behind.needed_d_value, least, shown_in)


def _is_misread(stamp: Band, result: Result, behind: Behind) -> bool:
    """Return whether a D value is above the weight of both, where no pair of vehicles asks for a quarter of it."""
    own, plate = behind.vehicle.gvwr, result.trailer.gvwr
    trailer = plate.best if plate is not None and plate.known else result.gross.best
    return own is not None and stamp.best > ASSUMED["d_value_gravity"] * (own.best + trailer)

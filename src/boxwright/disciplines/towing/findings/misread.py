"""Rules of figures that cannot be right: plates, stamps, papers and tapes that contradict each other or a unit.

A rating in the wrong unit is the quiet way to a false answer: 7,000 written as kilograms where the stamp says pounds
more than doubles it. A figure is asked about in three cases: two figures cannot both be right; one is far from what
the other lets expect and the answer would turn if it were in pounds; or it is round in kilograms, where stamps are in
pounds, and the answer would turn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import isclose

from boxwright.disciplines.towing import law
from boxwright.disciplines.towing.findings.legal import class_of
from boxwright.disciplines.towing.result import Behind, Reading, Result
from boxwright.disciplines.towing.sourced import (
    BALLS,
    INCH_COUNTRIES,
    LOAD_OF_INDEX,
    MASSES,
    PAIRS,
    POUND,
    SHARES,
    STAMP_STEP,
)
from boxwright.disciplines.towing.telling import OWN_PAPERS, OWN_PLATE, missing, shown
from boxwright.disciplines.towing.tyre_mark import read_tyre_mark
from boxwright.finding import Finding
from boxwright.records import dataclass
from boxwright.units import Band, HeaderUnits, show

STAMPED_IN_POUNDS = INCH_COUNTRIES
"""Where stamps and papers give round pounds, in Canada beside kilograms; there the pounds must fail to be asked."""

_ROUND = 1e-6
"""How near a stamp must be to a whole step to count as round: a weight written in the other unit is not."""


@dataclass(frozen=True, slots=True)
class Stamp:
    """One rating (kg) as a builder types it from a plate, and the load (kg) that must stay within it."""

    path: str
    words: str
    rating: Band | None
    load: float


def rating_implausible(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which figures of the trailer cannot be right, so that one of them was misread or is in another unit.

    Asks: do plate, axles, coupler, ball, tyres, tongue weight and outside measures go together, in one unit
    Limit: the pairs of the table pairs, the coupler's tongue load among them; a coupler within its ball's; a tongue
        weight no more than half the gross weight; a rating round in kilograms that would be too little in pounds
    Source: towing-practice; ball sizes recalled
    Lever: read both again, with their units
    """
    code = "towing/rating-implausible"
    asked: set[str] = set()
    for finding in (*_of_the_trailer(code, result, shown_in), *_in_pounds(code, _stamps(result), result, shown_in)):
        if finding.where not in asked:
            yield finding
        asked.add(finding.where)
    if result.gross.band.low > 0.0 and result.tongue.best > SHARES["tongue_of_gross"] * result.gross.best:
        tongue, gross = shown(result.tongue, "kg", shown_in), shown(result.gross, "kg", shown_in)
        says = f"a tongue weight of {tongue} of {gross} is more than half: a place or a weight was misread"
        yield missing(code, "trailer.axles.x", says, "Measure the places of coupler and axles again", True, OWN_PLATE)
    yield from _outside(code, result, shown_in)


def papers_implausible(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which figures of the tow vehicle cannot be right, so that one of them was misread or is in another unit.

    Asks: do its own weight, greatest mass, payload, combination, tow rating and hitch limit go together, in one unit,
        and does a driver ride in it
    Limit: the pairs of the table pairs; greatest mass over its own and over its payload; combination over both; a
        rating round in kilograms that would be too little in pounds
    Source: towing-practice
    Lever: read its papers again, with their units
    """
    code = "towing/papers-implausible"
    asked: set[str] = set()
    loads = {one.path: one.load for one in _papers(result, behind)}
    found = [
        _apart(code, pair, figure, other, loads.get(figure[0]), OWN_PAPERS, shown_in)
        for pair, figure, other in _pairs_of_papers(result, behind)
    ]
    found += [*_payload_apart(code, behind, shown_in), *_too_little_aboard(code, behind, shown_in)]
    found += _in_pounds(code, _papers(result, behind), result, shown_in)
    for finding in found:
        if finding is not None and finding.where not in asked:
            asked.add(finding.where)
            yield finding


def _pairs_of_papers(
    result: Result, behind: Behind
) -> tuple[tuple[str, tuple[str, str, Band | None], tuple[str, Band | None]], ...]:
    """Return the pairs of a tow vehicle's figures that belong together: the pair, the figure asked about, the other."""
    of, name, vehicle = behind.of, behind.name, behind.vehicle
    own = (f"own weight of {name}", vehicle.kerb)
    most = (f"greatest mass of {name}", vehicle.gvwr)
    towed = (f"tow rating of {name}", vehicle.rating)
    gcwr = (f"{of}.gcwr", f"combination rating of {name}", vehicle.gcwr)
    tongue = "tongue of rating" if result.home in INCH_COUNTRIES else "tongue of rating, metric"
    return (
        ("gvwr of kerb", (f"{of}.gvwr", *most), own),
        ("gcwr of gvwr", gcwr, most),
        ("gcwr of kerb", gcwr, own),
        ("gcwr of rating", gcwr, towed),
        ("rating of kerb", (f"{of}.rating", *towed), own),
        (tongue, (f"{of}.tongue", f"hitch limit of {name}", vehicle.tongue), towed),
        ("rear axle of gvwr", (f"{of}.rear_axle", f"rear axle rating of {name}", vehicle.rear_axle), most),
    )


def _payload_apart(code: str, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield the question where a payload is more than a vehicle of its weight carries: its greatest mass, perhaps.

    A payload that fits between own weight and greatest mass is borne out by both, however large it is.
    """
    vehicle, name = behind.vehicle, behind.name
    payload, kerb, gvwr, gcwr = (_best(one) for one in (vehicle.payload, vehicle.kerb, vehicle.gvwr, vehicle.gcwr))
    if payload is None:
        return
    path, words = f"{behind.of}.payload", f"payload of {name}"
    said = f"the {words} is written as {show(payload, 'kg', shown_in)}"
    act = f"Read the {words} again, with its unit: on the door jamb, or greatest mass less own weight"
    if gvwr is not None and payload >= gvwr:
        says = f"{said}, no less than its greatest mass of {show(gvwr, 'kg', shown_in)}, which counts its own weight in"
        yield missing(code, path, says, act, True, OWN_PAPERS)
    if kerb is not None and gcwr is not None and payload + kerb >= gcwr:
        says = f"{said}; with its own weight of {show(kerb, 'kg', shown_in)} that leaves nothing of the combination"
        says += f" rating of {show(gcwr, 'kg', shown_in)} for a trailer"
        yield missing(code, path, says, act, True, OWN_PAPERS)
    is_borne_out = kerb is not None and gvwr is not None and payload + kerb <= gvwr
    if not is_borne_out:
        own = (f"the own weight of {name}", vehicle.kerb)
        found = _apart(code, "payload of kerb", (path, words, vehicle.payload), own, None, OWN_PAPERS, shown_in)
        if found is not None:
            yield replace(found, act=act)


def _too_little_aboard(code: str, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield the question where what rides in a vehicle weighs less than who drives it."""
    aboard = _best(behind.vehicle.people_and_gear)
    if aboard is not None and aboard < MASSES["driver"]:
        now = show(aboard, "kg", shown_in)
        says = f"what rides in {behind.name} is written as {now}, less than who drives it; write people and gear"
        act = f"Count up the people and gear in {behind.name}, the driver first"
        yield missing(code, f"{behind.of}.people_and_gear", says, act, True, OWN_PAPERS)


def _stamps(result: Result) -> tuple[Stamp, ...]:
    """Return the ratings stamped on the trailer with what each must carry."""
    trailer = result.trailer
    gross = _most(result.gross)
    stamps = [Stamp("trailer.gvwr", "the plate's greatest mass", trailer.gvwr, gross)]
    stamps += [Stamp("trailer.coupler.rating", "the rating of the coupler", trailer.coupler.rating, gross)]
    stamps += [
        Stamp(f"trailer.axles.gawr[{index}]", f"the rating of {_axle(result, index)}", rating, _most(load))
        for index, (rating, load) in enumerate(zip(trailer.axles.gawr, result.axles, strict=False))
    ]
    if trailer.coupler.nose_max is not None:
        on_ball, stamp = _most(result.tongue), trailer.coupler.nose_max
        stamps.append(Stamp("trailer.coupler.tongue_max", "the tongue load stamped on the coupler", stamp, on_ball))
    chains = trailer.chains
    if chains is not None and chains.rating is not None:
        rules = (*result.law.asking(law.EACH_CHAIN, class_of(result)),
                 *result.law.asking(law.CHAINS_TOGETHER, class_of(result)))  # fmt: skip
        if rules:
            share = max(one.rule.limit or 0.0 for one in rules)
            stamps.append(Stamp("trailer.chains.rating", "the rating of a chain", chains.rating, share * gross))
    return tuple(stamps)


def _axle(result: Result, index: int) -> str:
    return "the axle" if len(result.axles) == 1 else f"axle {index + 1}"


def _papers(result: Result, behind: Behind) -> tuple[Stamp, ...]:
    """Return the ratings of a tow vehicle with what each must carry."""
    vehicle, of, name = behind.vehicle, behind.of, behind.name
    gross, together, aboard = _most(result.gross), behind.together, behind.in_vehicle
    stamps = [
        Stamp(f"{of}.rating", f"the tow rating of {name}", vehicle.rating, gross),
        Stamp(f"{of}.tongue", f"the hitch limit of {name}", vehicle.tongue, _most(result.tongue)),
    ]
    if result.braked_axles == 0:
        stamps.append(Stamp(f"{of}.unbraked", f"what {name} may pull unbraked", vehicle.unbraked, gross))
    if together is not None:
        stamps.append(Stamp(f"{of}.gcwr", f"the combination rating of {name}", vehicle.gcwr, _most(together)))
    if aboard is not None:
        stamps.append(Stamp(f"{of}.payload", f"the payload of {name}", vehicle.payload, _most(aboard)))
    return tuple(stamps)


def _most(reading: Reading) -> float:
    """Return the most a number comes to as far as anything is known; what is endless is asked about elsewhere."""
    known = reading.band.high if reading.band.known else reading.best
    return max(reading.best, reading.permitted_high, known)


def _of_the_trailer(code: str, result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield the pairs of the trailer's own figures that cannot both be right."""
    trailer = result.trailer
    ratings = trailer.axles.gawr
    axles = _sum(ratings)
    plate = ("the plate", trailer.gvwr)
    axle_load = sum(_most(one) for one in result.axles)
    tyres = trailer.tyres
    count = tyres.count or 2 * len(ratings)
    on_tyres = _times(tyres.load, float(count))
    worst = max((_most(one.reading) for one in result.wheels), default=0.0)
    nose = "nose of coupler" if result.home in INCH_COUNTRIES else "nose of coupler, metric"
    pairs = (
        ("axles of plate", ("trailer.axles.gawr", "rating of all axles", axles), plate, axle_load),
        ("coupler of plate", ("trailer.coupler.rating", "rating of the coupler", trailer.coupler.rating), plate,
         _most(result.gross)),
        ("tyres of axles", ("trailer.tyres.load", "load of all tyres", on_tyres), ("the rating of all axles", axles),
         worst * count),
        ("tyre of index", ("trailer.tyres.load", "load of one tyre", tyres.load), _by_index(tyres.size), worst),
        ("empty of plate", ("trailer.empty.weight", "weight of the empty trailer", trailer.empty.weight), plate, None),
        (nose, ("trailer.coupler.tongue_max", "tongue load stamped on the coupler", trailer.coupler.nose_max),
         plate if _best(trailer.coupler.rating) is None else ("the coupler's rating", trailer.coupler.rating), None),
    )  # fmt: skip
    for pair, figure, other, load in pairs:
        found = _apart(code, pair, figure, other, load, OWN_PLATE, shown_in)
        if found is not None:
            yield found
    coupler, ball = _best(trailer.coupler.rating), _best(trailer.coupler.ball)
    most = min(BALLS, key=lambda one: abs(one[0] - ball))[1] if ball is not None else None
    if coupler and most and coupler > most:
        stamp, high = show(coupler, "kg", shown_in), show(most, "kg", shown_in)
        says = f"a coupler for {stamp} and its ball do not go together: such a ball is met up to {high}"
        act = "Read the ball size stamped on the coupler again"
        yield missing(code, "trailer.coupler.ball", says, act, True, OWN_PLATE)


def _apart(
    code: str,
    pair: str,
    figure: tuple[str, str, Band | None],
    other: tuple[str, Band | None],
    load: float | None,
    source: str,
    shown_in: HeaderUnits,
) -> Finding | None:
    """Return the question where one figure is too small or too large for the other.

    Far out, both cannot be right. Merely strange, it is asked about only where ``load`` would be too much for the
    figure in pounds.
    """
    path, words, band = figure
    number, against = _best(band), _best(other[1])
    if number is None or against is None or against <= 0.0:
        return None
    least, strange, most = PAIRS[pair]
    share = number / against
    turns = load is not None and number * POUND < load
    if least <= share <= strange or (strange < share <= most and not turns):
        return None
    now, beside = show(number, "kg", shown_in), show(against, "kg", shown_in)
    said = f"the {words} is written as {now} beside {beside} of {other[0]}"
    how = "one of the two was misread" if share < least or not turns else "pounds read as kilograms, perhaps"
    return missing(code, path, f"{said}: {how}", f"Read the {words} again, with its unit", True, source)


def _in_pounds(code: str, stamps: tuple[Stamp, ...], result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield each rating that is round in kilograms, at home where stamps are in pounds, and too little in pounds."""
    if result.home not in STAMPED_IN_POUNDS:
        return
    for one in stamps:
        number = _best(one.rating)
        if number is None or not _is_round(number) or number * POUND >= one.load:
            continue
        pounds, load = show(number * POUND, "kg", shown_in), show(one.load, "kg", shown_in)
        says = f"{one.words} is written as {number:,.0f} kg, a round number of kilograms; if the stamp means pounds "
        says += f"it is {pounds}, less than the {load} it must carry; if it is kilograms, write it as "
        says += f"{number / POUND:.0f} lb"
        act = f"Read {one.words} again, with its unit"
        yield missing(code, one.path, says, act, True, OWN_PLATE)


def _is_round(number: float) -> bool:
    steps = round(number / STAMP_STEP)
    return steps > 0 and isclose(number, steps * STAMP_STEP, rel_tol=_ROUND)


def _outside(code: str, result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield the outside measures that cannot be right: what is called greatest is less than a part of it."""
    outside, trailer = result.trailer.outside, result.trailer
    pairs = (
        ("over_fenders", "width over the fenders", outside.over_fenders, "track of the wheels", trailer.axles.track),
        ("over_fenders", "width over the fenders", outside.over_fenders, "width of the body", outside.width),
        ("height", "height over the ground", outside.height, "height of the deck", trailer.deck_height),
        ("length_overall", "length over all", outside.length_overall, "length of the body", outside.length),
        ("width", "width outside", outside.width, "width inside", trailer.body.width),
        ("length", "length outside", outside.length, "length inside", trailer.body.length),
    )
    said: set[str] = set()
    for key, words, greatest, part_words, part in pairs:
        whole, inner = _best(greatest), _best(part)
        if whole is None or inner is None or whole >= inner or key in said:
            continue
        said.add(key)
        numbers = f"{show(whole, 'm', shown_in)}, less than the {part_words} of {show(inner, 'm', shown_in)}"
        says = f"the {words} is written as {numbers}: one of the two was misread"
        act = f"Measure the {words} again"
        yield missing(code, f"trailer.outside.{key}", says, act, True, OWN_PLATE)


def _best(band: Band | None) -> float | None:
    return band.best if band is not None and band.known else None


def _sum(bands: tuple[Band, ...]) -> Band | None:
    if not bands or not all(one.known for one in bands):
        return None
    return Band(sum(one.best for one in bands), sum(one.low for one in bands), sum(one.high for one in bands))


def _times(band: Band | None, count: float) -> Band | None:
    if band is None or not band.known:
        return None
    return replace(band, best=band.best * count, low=band.low * count, high=band.high * count)


def _by_index(size: str) -> tuple[str, Band | None]:
    """Return the load that the index in a tyre's mark stands for, None where it has none."""
    mark = read_tyre_mark(size)
    load = LOAD_OF_INDEX.get(mark.load_index) if mark is not None and mark.load_index is not None else None
    return "the load index in its size", Band(load, load, load) if load is not None else None

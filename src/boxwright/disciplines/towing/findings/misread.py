"""Rules of figures that cannot be right: plates, stamps, papers and tapes that contradict each other or a unit.

A rating in the wrong unit is the quiet way to a false answer: 7,000 written as kilograms where the stamp says pounds
more than doubles it. A figure is asked about in three cases: two figures cannot both be right; one is far from what
the other lets expect and the answer would turn if it were in pounds; or it is round in kilograms, where stamps are in
pounds, and the answer would turn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import isclose

from boxwright.disciplines.towing import law
from boxwright.disciplines.towing.findings.legal import class_of
from boxwright.disciplines.towing.result import Behind, Reading, Result
from boxwright.disciplines.towing.sourced import BALLS, LOAD_OF_INDEX, PAIRS, POUND, SHARES, STAMP_STEP
from boxwright.disciplines.towing.telling import OWN_PAPERS, OWN_PLATE, missing, shown
from boxwright.disciplines.towing.tyre_mark import read_tyre_mark
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, show

STAMPED_IN_POUNDS = "US"
"""Where stamps and papers give round pounds."""

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
    Limit: the pairs of the table pairs; a coupler within its ball's; a tongue weight no more than half the gross
        weight; a rating round in kilograms that would be too little in pounds
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

    Asks: do its own weight, greatest mass, combination, tow rating and hitch limit go together, in one unit
    Limit: the pairs of the table pairs; greatest mass over its own; combination over both; a rating round in
        kilograms that would be too little in pounds
    Source: towing-practice
    Lever: read its papers again, with their units
    """
    code, of, name, vehicle = "towing/papers-implausible", behind.of, behind.name, behind.vehicle
    asked: set[str] = set()
    own, most = f"own weight of {name}", f"greatest mass of {name}"
    combined, towed = f"combination rating of {name}", f"tow rating of {name}"
    pairs = (
        ("gvwr of kerb", (f"{of}.gvwr", most, vehicle.gvwr), (f"{of}.kerb", own, vehicle.kerb)),
        ("gcwr of gvwr", (f"{of}.gcwr", combined, vehicle.gcwr), (f"{of}.gvwr", most, vehicle.gvwr)),
        ("gcwr of kerb", (f"{of}.gcwr", combined, vehicle.gcwr), (f"{of}.kerb", own, vehicle.kerb)),
        ("gcwr of rating", (f"{of}.gcwr", combined, vehicle.gcwr), (f"{of}.rating", towed, vehicle.rating)),
        ("rating of kerb", (f"{of}.rating", towed, vehicle.rating), (f"{of}.kerb", own, vehicle.kerb)),
        ("tongue of rating", (f"{of}.tongue", f"hitch limit of {name}", vehicle.tongue),
         (f"{of}.rating", towed, vehicle.rating)),
        ("rear axle of gvwr", (f"{of}.rear_axle", f"rear axle rating of {name}", vehicle.rear_axle),
         (f"{of}.gvwr", most, vehicle.gvwr)),
        ("payload of kerb", (f"{of}.payload", f"payload of {name}", vehicle.payload),
         (f"{of}.kerb", own, vehicle.kerb)),
    )  # fmt: skip
    loads = {one.path: one.load for one in _papers(result, behind)}
    for pair, (path, words, rating), (_, other_words, other) in pairs:
        found = _apart(code, pair, (path, words, rating), (other_words, other), loads.get(path), OWN_PAPERS, shown_in)
        if found is not None and path not in asked:
            asked.add(path)
            yield found
    for finding in _in_pounds(code, _papers(result, behind), result, shown_in):
        if finding.where not in asked:
            yield finding


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
    """Return the ratings of a tow vehicle with what each must carry; a payload is printed in both units."""
    vehicle, of, name = behind.vehicle, behind.of, behind.name
    gross, together = _most(result.gross), behind.together
    stamps = [
        Stamp(f"{of}.rating", f"the tow rating of {name}", vehicle.rating, gross),
        Stamp(f"{of}.tongue", f"the hitch limit of {name}", vehicle.tongue, _most(result.tongue)),
    ]
    if result.braked_axles == 0:
        stamps.append(Stamp(f"{of}.unbraked", f"what {name} may pull unbraked", vehicle.unbraked, gross))
    if together is not None:
        stamps.append(Stamp(f"{of}.gcwr", f"the combination rating of {name}", vehicle.gcwr, _most(together)))
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
    pairs = (
        ("axles of plate", ("trailer.axles.gawr", "rating of all axles", axles), plate, axle_load),
        ("coupler of plate", ("trailer.coupler.rating", "rating of the coupler", trailer.coupler.rating), plate,
         _most(result.gross)),
        ("tyres of axles", ("trailer.tyres.load", "load of all tyres", on_tyres), ("the rating of all axles", axles),
         worst * count),
        ("tyre of index", ("trailer.tyres.load", "load of one tyre", tyres.load), _by_index(tyres.size), worst),
        ("empty of plate", ("trailer.empty.weight", "weight of the empty trailer", trailer.empty.weight), plate, None),
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
    if result.home != STAMPED_IN_POUNDS:
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

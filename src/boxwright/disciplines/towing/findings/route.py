"""Rules of the law of the route for the whole trailer: its size, its speed, and places nobody has read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.towing import law
from boxwright.disciplines.towing.findings.legal import class_of, least_and_most
from boxwright.disciplines.towing.result import Extent, Result
from boxwright.disciplines.towing.telling import (
    advice,
    broken,
    in_words,
    leading,
    missing,
    name_of,
    read_how,
    worth_asking,
)
from boxwright.finding import Finding, listed
from boxwright.units import Band, HeaderUnits, show, show_band


def size_on_route(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the trailer is wider, higher or longer than a place of the route allows.

    Asks: are width, height and length with all that sticks out within the strictest of the route
    Limit: the strictest rule, which names itself and the others
    Source: the rule that bites, such as uk-size or nc-20-116
    Lever: move what sticks out
    """
    code, outside = "towing/size-on-route", result.trailer.outside
    body = Extent(outside.length, "") if outside.length is not None else Extent(UNWRITTEN, "")
    measured = (
        (law.WIDTH, "over_fenders", result.width),
        (law.HEIGHT, "height", result.height),
        (law.LENGTH, "length_overall", result.length),
        (law.BODY_LENGTH, "length", body),
    )
    for asks, key, extent in measured:
        rules = list(result.law.asking(asks, class_of(result)))
        where = extent.of or f"trailer.outside.{key}"
        if rules and not extent.band.known:
            says = f"{rules[0].place} limits the {asks}, and {in_words(f'trailer.outside.{key}')} is not written"
            yield missing(code, f"trailer.outside.{key}", says, f"Measure the {asks}", True, rules[0].rule.source)
            continue
        over = [one for one in rules if extent.band.best > (one.rule.limit or 0.0)]
        perhaps = worth_asking([one for one in rules if extent.band.high > (one.rule.limit or 0.0)])
        if over:
            reach = f" by {name_of(extent.of)}" if extent.of else ""
            first = leading(over)
            number = show(extent.band.best, "m", shown_in, cuts=True)
            far = show(extent.band.best - (first.rule.limit or 0.0), "m", shown_in)
            says = f"the {asks} is {number}{reach}, {far} over the {first.rule.limit_text} of {first.place}"
            act = f"Move or take off {name_of(extent.of)}" if extent.of else "Ask for a permit, or take another way"
            yield broken(code, where, says, over, act, extent.band.best, first.rule.limit, "m")
        elif perhaps:
            first = leading(perhaps)
            now, could_stop = show_band(extent.band, "m", shown_in), any(one.rule.kind == "stop" for one in perhaps)
            says = f"the {asks} is {now}, and {first.place} allows {first.rule.limit_text}; the doubt reaches across"
            yield missing(code, where, says, f"Measure the {asks} again", could_stop, first.rule.source)


def owner_limit(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the trailer with all that stands out of it does not fit where its owner must take it.

    Asks: are width, height and length within what a place of the rig file fits
    Limit: the width, height or length written under fits of that place; nothing is taken off for room to steer
    Source: own-measure
    Lever: move or take off what sticks out, or another place
    """
    for name, fits in result.fits:
        measured = (
            ("width", "over_fenders", result.width, fits.width),
            ("height", "height", result.height, fits.height),
            ("length", "length_overall", result.length, fits.length),
        )
        for measure, key, extent, limit in measured:
            if limit is not None:
                yield from _fitted(name, measure, f"trailer.outside.{key}", extent, limit, shown_in)


def _fitted(
    name: str, measure: str, outside: str, extent: Extent, limit: Band, shown_in: HeaderUnits
) -> Iterator[Finding]:
    """Yield what is to be said of one measure of the trailer beside what fits into one place."""
    code, where, band = "towing/owner-limit", f"places[{name}].fits.{measure}", extent.band
    now, most = show_band(band, "m", shown_in), show_band(limit, "m", shown_in)
    reach = f", by {name_of(extent.of)}," if extent.of else ""
    if not limit.known:
        says = f"which {measure} fits {name} is not known"
        yield missing(code, where, says, f"Measure the {measure} that fits {name}", False, OWN_MEASURE)
    elif not band.known:
        says = f"{name} fits a {measure} of {most}, and {in_words(outside)} is not known"
        found = missing(code, where, says, f"Measure the {measure} of the trailer", False, OWN_MEASURE)
        yield replace(found, lever=outside, because=(outside,))
    elif band.best > limit.best:
        says = f"the {measure} of the trailer is {now}{reach} and {name} fits {most}"
        act = f"Move or take off {name_of(extent.of)}" if extent.of else f"Leave the trailer outside {name}"
        lever = extent.of or outside
        yield advice(code, where, says, band.best, limit.best, "m", OWN_MEASURE, lever, act)
    elif band.high > limit.low:
        says = f"the {measure} of the trailer is {now}{reach} and {name} fits {most}; the doubt reaches across"
        yield missing(code, where, says, f"Measure both before you rely on {name}", False, OWN_MEASURE)


OWN_MEASURE = "own-measure"
UNWRITTEN = Band(0.0, float("-inf"), float("inf"), known=False)


def speed_limit(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say how fast a trailer may be towed where the route has a rule for it.

    Asks: how fast may one tow
    Limit: the slowest rule of the route
    Source: uk-brakes, de-9-ausnahme
    Lever: drive no faster
    """
    rules = result.law.asking(law.SPEED, class_of(result))
    if rules and rules[0].rule.limit is not None:
        first = rules[0]
        note = f"; {first.rule.note}" if first.rule.note else ""
        says = f"tow no faster than {first.rule.limit_text} in {first.place}{note} ({read_how(first)})"
        besides = (("The rule says besides", first.rule.note),) if first.rule.note else ()
        yield Finding("towing/speed-limit", "countries", "advice", says, limit=first.rule.limit, unit="m/s",
                      source=first.rule.source, lever="countries", uses=("tow",), besides=besides)  # fmt: skip
    elif not result.law.placed:
        says = "no rule of any place of the route is known to us, so no towing speed either"
        places = listed([*result.law.unheard, *result.law.bare, *result.law.unnamed])
        act = f"Look up the towing speed in {places}" if places else "Write the places of the route"
        yield missing("towing/speed-limit", "countries", says, act, False, "towing-practice")


def no_rule_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say for which places of the route no rule is known here; never the neighbour's is taken.

    Where every axle is braked, a breakaway switch is fitted and two chains each carry the trailer, no rule of brakes
    met so far asks for more, so that the question only limits.

    Asks: is a rule of every place of the route known
    Limit: one or more for each place
    Source: towing-practice
    Lever: look up the place's own rules
    """
    code, trailer = "towing/no-rule-known", result.trailer
    rating = trailer.chains.rating if trailer.chains is not None else None
    count = (trailer.chains.count or 0) if trailer.chains is not None else 0
    _, heaviest = least_and_most(result)
    has_chains = rating is not None and rating.known and count > 1 and rating.best >= heaviest
    has_brakes = bool(result.braked_axles) and result.braked_axles == len(result.axles)
    is_well_fitted = has_brakes and trailer.brakes.breakaway is True and has_chains
    for place in result.law.unheard:
        says = f"no rule known to us for {place}; read its own law on brakes, chains, lamps, size and speed"
        yield missing(code, "countries", says, f"Look up the trailer rules of {place}", True, "towing-practice")
    for place in (*result.law.bare, *result.law.unnamed):
        country = place.partition("-")[0]
        if country in law.STATES_DECIDE:
            known = "no rule of its own on brakes is known to us"
            own = "which State or province is not written" if place == country else known
            says = f"in {place} {own}; brakes, chains and size are its own law there, and only shared rules were used"
            act = f"Look up the trailer rules of {place}"
            yield missing(code, "countries", says, act, not is_well_fitted, "towing-practice")
        else:
            says = f"no rule of {place} itself on brakes is known to us; those {country} shares were used"
            yield Finding(code, "countries", "advice", says, source="towing-practice", lever="countries",
                          act=f"Look up the trailer rules of {place}", uses=("tow",))  # fmt: skip
    if not (result.law.placed or result.law.unheard or result.law.bare or result.law.unnamed):
        says = "no country is written, so no rule of the road was judged; write countries: [US-NC]"
        yield missing(code, "countries", says, "Write the places of the route", True, "towing-practice")

"""Rules of the law of the route for what is fitted: chains and lamps."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from boxwright.disciplines.towing import law
from boxwright.disciplines.towing.findings.legal import class_of, least_and_most
from boxwright.disciplines.towing.lamp_words import ASKED, REFLECTORS, read_lamps
from boxwright.disciplines.towing.law import Placed
from boxwright.disciplines.towing.result import Extent, Result
from boxwright.disciplines.towing.sourced import LAMPS
from boxwright.disciplines.towing.telling import broken, in_words, leading, missing, shown, worth_asking
from boxwright.finding import Finding, listed
from boxwright.units import HeaderUnits, read_any, show, show_band

NO_LINKS = frozenset({"none", "no", "nothing"})
UNKNOWN_LINKS = frozenset({"unknown", "?"})
COUNTS = frozenset({law.CHAIN_COUNT, *law.CHAIN_COUNT_HEAVY})


def chains(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when chains or the secondary cable are missing, too few or too weak.

    Asks: is there a second link, of as many chains and as strong as the route asks
    Limit: the strictest rule of the route
    Source: the rule that bites, such as ne-60-6-246, nh-266-63 or nz-virm
    Lever: another set of chains
    """
    code, where, fitted = "towing/chains", "trailer.chains", result.trailer.chains
    if fitted is None or (fitted.fitted is None and fitted.count is None and not fitted.kind and not fitted.rating):
        says = "nobody wrote which safety chains or secondary cable the trailer has; write chains: or secondary:"
        yield missing(code, where, says, "Look at the chains, and read their stamp", True, "cfr-393-70")
        return
    kind = fitted.kind.strip().lower()
    if kind in UNKNOWN_LINKS:
        says = "nobody knows which safety chains or secondary cable the trailer has; write chains: or secondary:"
        yield missing(code, where, says, "Look at the chains, and read their stamp", True, "cfr-393-70")
        return
    has_none = fitted.fitted is False or kind in NO_LINKS
    count = 0 if has_none else fitted.count if fitted.count is not None else 1
    law_here = result.law
    wanted = [one for one in law_here.asking(law.CHAIN_COUNT, class_of(result)) if (one.rule.limit or 0.0) > count]
    sure, most_gross = least_and_most(result)
    wanted += _too_few(result, count, sure)
    if count == 0:
        wanted += law_here.asking(law.SECONDARY, class_of(result))
    if count == 0 and not result.trailer.brakes.breakaway:
        wanted += law_here.asking(law.SECONDARY_UNLESS_BREAKAWAY, class_of(result))
    if count == 0:  # a rule of their strength is broken by none at all
        wanted += _too_weak(result, 0, 0.0, sure)
    if wanted:
        most = max([1, *(int(one.rule.limit or 1) for one in wanted if one.rule.asks in COUNTS)])
        says = f"{leading(wanted).place} asks for {most} chain{'s' if most > 1 else ''} or the like; {count} fitted"
        yield broken(code, where, says, wanted, "Fit safety chains of the trailer's weight, crossed")
    else:
        yield from _if_heavier(result, where, f"{count} fitted", _too_few(result, count, most_gross), shown_in)
    if count:
        yield from _chain_strength(result, count, shown_in)


def single_chain(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that one chain alone is fitted where nobody read how many the place asks for.

    Asks: are there two chains at home in a State or province, or is one known to be enough there
    Limit: two, crossed under the tongue; a rule of the place that names a number comes first
    Source: towing-practice
    Lever: a second chain
    """
    fitted = result.trailer.chains
    if fitted is None or fitted.count != 1 or (result.trailer.brakes.breakaway and "cable" in fitted.kind.lower()):
        return
    for place in dict.fromkeys(one.place for one in result.law.placed if one.country in law.STATES_DECIDE):
        own = [one for one in result.law.placed if one.place == place and one.rule.asks in COUNTS]
        if not own:
            says = f"one chain is fitted, and nobody here has read how many {place} asks for; two, crossed, is usual"
            yield missing("towing/single-chain", "trailer.chains.count", says,
                          f"Fit a second chain, or read the rule of {place}", True, "towing-practice")  # fmt: skip
            return


def wheel_chocks(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the home of the trailer asks for wheel chocks on board and none is listed.

    Asks: are there chocks among the parts, on a trailer whose plate is over the limit
    Limit: the mass on the plate from which they are asked for
    Source: the rule that bites, such as de-stvzo
    Lever: carry two chocks within reach
    """
    plate = result.trailer.gvwr
    heavy = plate.best if plate is not None and plate.known else result.gross.best
    wanted = [one for one in result.law.asking(law.CHOCKS, class_of(result)) if heavy > (one.rule.limit or 0.0)]
    if wanted and not result.has_chocks:
        says = f"{leading(wanted).place} asks for two wheel chocks within reach, and none is among the parts"
        act = "Carry two wheel chocks in holders, and write them as a part named wheel-chocks"
        yield broken("towing/wheel-chocks", "parts", says, wanted, act)


def _too_few(result: Result, count: int, gross: float) -> list[Placed]:
    """Return the rules that begin at a mass and ask for more chains than there are, for a trailer of a weight (kg)."""
    if result.trailer.brakes.breakaway:
        return []
    reached = [asks for asks in law.CHAIN_COUNT_HEAVY if gross > begins_at(asks)]
    rules = [one for asks in reached for one in result.law.asking(asks, class_of(result))]
    return [one for one in rules if (one.rule.limit or 0.0) > count]


def _if_heavier(
    result: Result, where: str, has: str, reached: list[Placed], shown_in: HeaderUnits
) -> Iterator[Finding]:
    """Yield the question where only the doubt of the weight reaches what a rule of chains asks."""
    rules = worth_asking(reached)
    if not rules:
        return
    first = leading(rules)
    says = f"{has}, and {first.place} asks for more than that if the trailer is as heavy as it may be: "
    could_stop = any(one.rule.kind == "stop" for one in rules)
    yield missing("towing/chains", where, f"{says}{shown(result.gross, 'kg', shown_in)}; weigh it",
                  "Weigh the loaded trailer", could_stop, first.rule.source)  # fmt: skip


def begins_at(asks: str) -> float:
    """Return the mass (kg) from which an asking such as ``number of chains from 2000 kg`` binds."""
    return read_any(asks.partition("from ")[2].partition(",")[0])


def _chain_strength(result: Result, count: int, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield what the rules of strength say to the chains: each, or all together, as a share of the gross weight."""
    code, where = "towing/chains", "trailer.chains"
    fitted = result.trailer.chains
    rating = fitted.rating if fitted is not None else None
    sure, most = least_and_most(result)
    rules = _too_weak(result, count, 0.0, most)
    if not rules:
        return
    if rating is None or not rating.known:
        says = "the strength of the chains is not written, and the route asks for it; write rating: as stamped, each"
        could_stop = any(one.rule.kind == "stop" for one in rules)
        yield missing(code, "trailer.chains.rating", says, "Read the stamp on the chains", could_stop, "sae-j684")
        return
    weak, perhaps = (_too_weak(result, count, rating.best, gross) for gross in (sure, most))
    stamp = show_band(rating, "kg", shown_in)
    has = f"{count} chains of {stamp} each are" if count > 1 else f"one chain of {stamp} is"
    if weak:
        now = f"{show(sure, 'kg', shown_in)} at a permitted fill"
        now = now if sure > result.gross.band.high else shown(result.gross, "kg", shown_in)
        says = f"{has} too weak for {now}: {_strength_asked(leading(weak), sure, shown_in)}"
        yield broken(code, where, says, weak, "Fit chains rated for the trailer's weight")
    else:
        yield from _if_heavier(result, where, f"{has} fitted", perhaps, shown_in)


def _strength_asked(placed: Placed, gross: float, shown_in: HeaderUnits) -> str:
    """Return what a rule of strength asks of chains, as a load: the share of the weight that it names."""
    share = placed.rule.limit or 0.0
    whose = "of all together" if placed.rule.asks.startswith(law.CHAINS_TOGETHER) else "of each"
    what = "a breaking load" if share > 1.0 else "a strength"
    times = f"{share:g} times the weight, " if share != 1.0 else ""
    return f"{placed.place} asks for {what} {whose} of {times}{show(share * gross, 'kg', shown_in)}"


def _too_weak(result: Result, count: int, rating: float, gross: float) -> list[Placed]:
    """Return the rules by which chains of a rating each are too weak for a trailer of a weight (kg)."""
    heavy = gross > begins_at(law.EACH_CHAIN_HEAVY) and not result.trailer.brakes.breakaway
    each = [*result.law.asking(law.EACH_CHAIN, class_of(result))]
    each += result.law.asking(law.EACH_CHAIN_HEAVY, class_of(result)) if heavy else ()
    weak = [one for one in each if rating < (one.rule.limit or 0.0) * gross]
    together = result.law.asking(law.CHAINS_TOGETHER, class_of(result))
    return weak + [one for one in together if count * rating < (one.rule.limit or 0.0) * gross]


def lamps(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which lamps the width, the length or the country asks for and nobody wrote as fitted.

    Asks: are the lamps there that the route asks for, by overall width with fenders and by length
    Limit: the sets of the table lamps
    Source: nhtsa-lamps-letter, lighting-chart, un-r48
    Lever: fit the pair that is missing
    """
    code, where = "towing/lamps", "trailer.lamps"
    if not result.trailer.lamps:
        says = "nobody wrote which lamps are fitted; write lamps: [tail, stop, turn, side, plate]"
        yield missing(code, where, says, "Walk round with the lamps on and write them down", True, "lighting-chart")
        return
    wanted: dict[tuple[str, ...], list[Placed]] = {}
    for placed in result.law.placed:
        lacking = _lacking(result, placed)
        if lacking:
            wanted.setdefault(lacking, []).append(placed)
    _, unclear = read_lamps(result.trailer.lamps)
    if unclear and any(_lacking(result, one, with_doubt=True) for one in result.law.placed):
        yield _not_known(unclear, [one for rules in wanted.values() for one in rules])
        return
    for names, rules in wanted.items():
        width = show(result.width.band.best, "m", shown_in)
        reach = f" at {width} wide" if "width" in rules[0].rule.asks else ""
        says = f"{leading(rules).place} asks for {lamps_listed(names)}{reach}; they are not among those fitted"
        found = broken(code, where, says, rules, f"Fit {lamps_listed(names)}, or write that they are there")
        yield replace(found, besides=(("Overall width", width),) if reach else ())
    for placed in worth_asking(list(result.law.placed)):
        names = _lacking(result, placed, with_doubt=True)
        if names and names not in wanted:
            wanted[names] = [placed]
            says = f"{placed.place} asks for {lamps_listed(names)} if the trailer is as large as it may be"
            yield missing(code, where, says, "Measure width and length again", placed.rule.kind == "stop",
                          placed.rule.source)  # fmt: skip
    yield from _size_for_lamps(result)


def _not_known(unclear: tuple[str, ...], rules: list[Placed]) -> Finding:
    """Return the question for lamps in words nobody here knows, where a rule asks for one that was not read."""
    quoted = listed([f'"{one}"' for one in unclear])
    says = f"no lamp known here is called {quoted}, and the route asks for some that are not written; write them as "
    says += listed(sorted(ASKED))
    could_stop = not rules or any(one.rule.kind == "stop" for one in rules)
    source = leading(rules).rule.source if rules else "lighting-chart"
    return missing("towing/lamps", "trailer.lamps", says, "Walk round with the lamps on and write them down",
                   could_stop, source)  # fmt: skip


def lamps_listed(names: tuple[str, ...]) -> str:
    """Return the lamps a rule asks for, in words; reflectors are none."""
    burning = [one for one in names if one != REFLECTORS]
    if not burning:
        return REFLECTORS
    said = f"{listed(burning)} lamps"
    return said if len(burning) == len(names) else f"{said} and {REFLECTORS}"


def _lacking(result: Result, placed: Placed, with_doubt: bool = False) -> tuple[str, ...]:
    """Return the lamps one rule asks for that are not fitted; none where the rule does not reach the trailer."""
    for begins, called, extent, counts in LAMP_RULES:
        if placed.rule.asks != begins:
            continue
        limit = placed.rule.limit
        if limit is not None and extent is not None:
            band = extent(result).band
            size = band.high if with_doubt else band.best
            if not band.known or size < limit or (size == limit and not counts):
                return ()
        fitted, _ = read_lamps(result.trailer.lamps)
        asked = LAMPS.get(f"{called} {placed.country}", ())
        return tuple(name for name in asked if name not in fitted)
    return ()


LAMP_RULES: tuple[tuple[str, str, Callable[[Result], Extent] | None, bool], ...] = (
    ("basic lamps", "basic", None, True),
    ("width lamps from width", "width", lambda result: result.width, True),
    ("width lamps above width", "width", lambda result: result.width, False),
    ("middle lamps from length", "middle", lambda result: result.length, True),
    ("front position lamps above width", "front", lambda result: result.width, False),
    ("side lamps above width", "side", lambda result: result.width, False),
    ("side lamps above length", "side", lambda result: result.length, False),
)
"""What a rule of lamps asks, the set of the table it calls for, what it measures, whether the limit itself counts."""


def _size_for_lamps(result: Result) -> Iterator[Finding]:
    """Yield the question for a width or length that a rule of lamps needs and nobody wrote."""
    asked = {one.rule.asks for one in result.law.placed}
    for asks, _, extent, _ in LAMP_RULES:
        if extent is not None and asks in asked and not extent(result).band.known:
            what = "over_fenders" if "width" in asks else "length_overall"
            says = f"which lamps are asked for depends on {in_words(f'trailer.outside.{what}')}, which is not written"
            act = "Measure the greatest width, over the fenders" if "width" in asks else "Measure the whole length"
            yield missing("towing/lamps", f"trailer.outside.{what}", says, act, False, "nhtsa-lamps-letter")
            return

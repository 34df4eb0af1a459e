"""Rules of the load on the ball: its share, its ratings, its swing over the load states."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from boxwright.disciplines.towing import law
from boxwright.disciplines.towing.findings.fitted import begins_at
from boxwright.disciplines.towing.findings.legal import class_of
from boxwright.disciplines.towing.law import Placed
from boxwright.disciplines.towing.method import least_rating
from boxwright.disciplines.towing.result import Behind, Result
from boxwright.disciplines.towing.sourced import INCH_COUNTRIES, SHARES
from boxwright.disciplines.towing.telling import (
    OWN_PAPERS,
    OWN_PLATE,
    Question,
    advice,
    is_answered,
    judged,
    legal_kind,
    missing,
    settled_by,
    shown,
    without_rating,
)
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, exactly, show


class Practice(NamedTuple):
    """What is practice for the share of the weight on the ball in some countries: least, most, and its words."""

    least: str
    most: str
    says: str
    source: str


INCH = Practice("tongue_least_inch", "tongue_most_inch", "handbooks of tow vehicles say 10 to 15 %", "vehicle-manuals")
SOUTHERN = Practice("tongue_least_southern", "tongue_most_southern",
                    "about 10 % is practice, 8 to 15 %, and the ratings come first", "southern-tow-advice")  # fmt: skip
METRIC = Practice("tongue_least_metric", "tongue_most_metric", "4 to 7 % is practice, the ratings come first",
                  "recalled")  # fmt: skip
PRACTICE_OF = {"US": INCH, "CA": INCH, "AU": SOUTHERN, "NZ": SOUTHERN, "UK": METRIC, "EU": METRIC}
"""By the home of the trailer; anywhere else nobody here knows what is practice."""


def tongue_share(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the ball carries too small or too great a share of the trailer's weight.

    Practice, not law, so it limits and never stops: too light a ball lets the trailer sway, and the cure until it is
    put right is a slow speed; too heavy a ball takes weight off the vehicle's front wheels. Where the ratings of
    coupling and vehicle cap the share lower, its upper end only advises, and not at all where they hold.

    Asks: is the tongue weight between two shares of the gross weight
    Limit: 10 to 15 % at home in the United States and Canada, 8 to 15 % in Australia and New Zealand, 4 to 7 % in
        Europe; at a home not read here, a question
    Source: vehicle-manuals; southern-tow-advice; in Europe recalled
    Lever: move weight forward or rearward
    """
    practice = PRACTICE_OF.get(result.home)
    asked = Question(
        "towing/tongue-share",
        "trailer.coupler",
        "the share of the weight on the ball",
        "the least share",
        "trailer.coupler_x",
        "with a tape",
        unit="ratio",
        kind="limit",
        source=(practice or METRIC).source,
        lever="parts",
        act="Move weight forward, and drive slowly until it is put right",
        words=f"; {(practice or METRIC).says}, and a light tongue sways: keep the speed down until weight is moved"
        " forward",
        least=True,
        could_stop=False,
    )
    found = list(judged(asked, result.share, exactly(SHARES[(practice or METRIC).least]), shown_in))
    yield from found
    if practice is None:
        if not found:  # less than the least of all is too little anywhere; more is right in one place, not in another
            yield _of_no_known_home(result, shown_in)
        return
    if any(one.kind == "unknown" for one in found):
        return  # one question is enough: the same weighing answers both ends
    heavy = replace(
        asked,
        kind="limit" if practice is INCH else "advice",
        limit="the greatest share",
        act="Move weight rearward",
        words=f"; {practice.says}, and a heavy tongue takes weight off the vehicle's front wheels",
        least=False,
    )
    if practice is INCH or not _do_ratings_hold(result):
        yield from judged(heavy, result.share, exactly(SHARES[practice.most]), shown_in)


def _do_ratings_hold(result: Result) -> bool:
    """Return whether coupler and every tow vehicle are rated for all that the ball may carry."""
    ratings = [result.trailer.coupler.nose_max, *(one.vehicle.tongue for one in result.behind)]
    if not result.behind or not result.tongue.band.known:
        return False
    most = max(result.tongue.band.high, result.tongue.permitted_high)
    return all(one is not None and one.known and most <= one.low for one in ratings)


def _of_no_known_home(result: Result, shown_in: HeaderUnits) -> Finding:
    """Return the question for the share where nobody here knows the home of the trailer, nor what is practice there."""
    home = result.home or "a place that is not written"
    says = f"the ball carries {shown(result.share, 'ratio', shown_in)} of the weight, and what is practice in {home}"
    says += " is not known here: 10 to 15 % in North America, about 10 % in Australia, 4 to 7 % in Europe"
    act = "Write the home of the trailer first under countries, such as US-NC, or look up the share asked for there"
    return missing("towing/tongue-share", "countries", says, act, False, "towing-practice")


def ball_load_too_small(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the ball carries less than a place of the route asks of every trailer.

    Asks: is the load on the ball no less than a share of the gross weight, or than a load that is always enough
    Limit: the lesser of both, by the rule of each place
    Source: the rule that bites, such as de-stvzo
    Lever: move weight forward
    """
    for placed in result.law.asking(law.LEAST_BALL_LOAD, class_of(result)):
        asked = Question(
            "towing/ball-load-too-small",
            "trailer.coupler",
            "the load on the ball",
            f"what {placed.place} asks for at least,",
            "trailer.coupler_x",
            "with a tape",
            kind=legal_kind(placed),
            source=placed.rule.source,
            lever="parts",
            act="Move weight forward",
            least=True,
            is_read=False,
        )
        could_stop = placed.rule.kind == "stop"
        for found in judged(asked, result.tongue, _least_ball_load(result, placed), shown_in):
            yield replace(found, could_stop=could_stop)


def _least_ball_load(result: Result, placed: Placed) -> Band:
    """Return what one rule asks of the ball: a share of the gross weight, and no more than the load that is enough.

    Where the gross weight has no upper end, the load that is enough is the most that can be asked.
    """
    plate, gross = result.trailer.gvwr, result.gross.band
    heavy = plate.best if plate is not None and plate.known else gross.best
    is_heavy = heavy > begins_at(law.ENOUGH_BALL_LOAD_HEAVY)
    asks = law.ENOUGH_BALL_LOAD_HEAVY if is_heavy else law.ENOUGH_BALL_LOAD
    enough = [
        one.rule.limit
        for one in result.law.asking(asks, class_of(result))
        if one.place == placed.place and one.rule.limit is not None
    ]
    share = placed.rule.limit or 0.0
    best, low, high = (min([share * max(end, 0.0), *enough]) for end in (gross.best, gross.low, gross.high))
    return Band(best, low, high, spread="interval" if low < high else "exact")


def tongue_over_rating(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the ball carries more than the least of coupler, hitch, tow vehicle and jack allows.

    Asks: is the tongue weight within the least of the ratings
    Limit: the least of the tow vehicle's, the coupler's own vertical load and the jack's
    Source: directive-92-21 for the least of several; each rating is the part's own
    Lever: move weight rearward, or a stronger part
    Methods: least_rating
    """
    code, trailer = "towing/tongue-over-rating", result.trailer
    ratings: dict[str, tuple[str, Band | None]] = {
        behind.of: (f"the limit of {behind.name}", behind.vehicle.tongue),
        "trailer.coupler.tongue_max": ("the coupler's own vertical limit", trailer.coupler.nose_max),
        "trailer.jack.rating": ("the jack's rating", trailer.jack.rating),
    }
    acts = {
        behind.of: "Move weight rearward, or use a vehicle and hitch rated for more",
        "trailer.coupler.tongue_max": "Move weight rearward, or have a coupler stamped for more fitted",
        "trailer.jack.rating": "Move weight rearward, or fit a jack rated for more",
    }
    given = {where: one for where, one in ratings.items() if one[1] is not None and one[1].known}
    asked = Question(
        code,
        behind.of,
        "the tongue weight",
        f"the limit of {behind.name} for the load on its hitch",
        f"{behind.of}.tongue",
        "in its handbook and on its hitch",
        source=OWN_PAPERS,
        lever="parts",
        act=acts[behind.of],
    )
    if behind.of not in given:
        yield without_rating(asked, result.tongue, shown_in)
    if result.home not in INCH_COUNTRIES and "trailer.coupler.tongue_max" not in given:
        path = "trailer.coupler.tongue_max"
        own = replace(asked, where=path, limit="the coupler's S value", rating_path=path, source=OWN_PLATE,
                      read_it="stamped on the coupling head")  # fmt: skip
        yield without_rating(own, result.tongue, shown_in)
    if given:
        bands = {where: one for where, (_, one) in given.items() if one is not None}
        least = least_rating(tuple(one.best for one in bands.values()))
        where = next(place for place, one in bands.items() if one.best == least)
        source = OWN_PAPERS if where == behind.of else OWN_PLATE
        yield from judged(
            replace(asked, where=where, limit=given[where][0], rating_path=where, source=source, act=acts[where]),
            result.tongue,
            bands[where],
            shown_in,
        )


def tongue_swing(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the tongue weight changes much between the load states.

    Asks: is the greatest less the least tongue weight within a quarter of the mean
    Limit: 25 % of the mean
    Source: towing-practice
    Lever: tanks and heavy cargo nearer to the axles
    """
    code, where = "towing/tongue-swing", "loads"
    states = sorted(((one.best, load) for load, one in result.tongues if is_answered(one)))
    if len(states) < 2 and len(states) == len(result.tongues):
        return  # one state cannot swing
    if len(states) < 2:
        says = "the tongue weight is not known in two load states, so nobody can say how far it swings"
        unanswered = next(one for _, one in result.tongues if not is_answered(one))
        yield missing(code, where, says, settled_by(unanswered), False, "towing-practice")
        return
    (least, light), (most, heavy) = states[0], states[-1]
    mean = sum(one for one, _ in states) / len(states)
    limit = SHARES["tongue_swing"] * abs(mean)
    if most - least > limit:
        besides = tuple((f"Tongue weight, load {load}", show(one, "kg", shown_in)) for one, load in states)
        ends = f"{show(least, 'kg', shown_in)} ({light}) to {show(most, 'kg', shown_in)} ({heavy})"
        says = f"the tongue weight swings from {ends}, more than a quarter of its mean; a state between hides both"
        act = "Put what comes and goes nearer to the axles, or re-pack between the two states"
        found = advice(code, where, says, most - least, limit, "kg", "towing-practice", "parts", act)
        yield replace(found, besides=besides)

"""What is asked before any way out is judged: whose rules hold, what they want looked at, who sleeps where."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.safety.result import Result
from boxwright.disciplines.safety.sourced import TO_LOOK_AT, TOPICS, UNREAD, Law, country_of
from boxwright.disciplines.safety.telling import advice, cited, place_of, question
from boxwright.finding import Finding, listed
from boxwright.units import HeaderUnits


def no_rule_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say for which country of the route nothing is judged by its own rules, and of what.

    Where the home's are not known it asks; where another country's of the route are not, the answer stays limited.

    Asks: is a rule of each country of the route on sleeping in a trailer known, that binds and was read
    Limit: none; a neighbour's rule is never taken for it
    Source: own-rule
    Lever: look the rule up
    """
    law, code = result.law, "safety/no-rule-known"
    if result.use != "sleep":
        return
    if not law.is_known:
        says, act = _not_judged(law, law.country)
        yield question(code, "countries", says, act, 15, "countries", protects=False)
    for country in law.route:
        says, act = _not_judged(law, country)
        made = question(code, "countries", says, act, 15, "countries", protects=False)
        yield replace(made, could_stop=False)


def _not_judged(law: Law, country: str) -> tuple[str, str]:
    """Return what is not judged for a country, and where to ask."""
    names = listed([one for one in law.places if country_of(one) == country]) or "no country"
    topics = listed([TOPICS[asks] for asks in law.unknown(country)])
    says = f"not judged for {names}: {topics}; no rule there that binds is known to us, and no neighbour's was taken"
    document = f"; {UNREAD[country]} is where to look" if country in UNREAD else ""
    return says, f"Ask what is wanted in {names} of a trailer somebody sleeps in{document}"


def to_look_at(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what a country of the route asks that no rig file tells, to be looked at by hand.

    Asks: is what a country asks there, where no key of the file says so
    Limit: as the country asks it; it advises, since nothing here can judge it
    Source: au-qld-caravans, au-door-side, ca-mb-sale
    Lever: look at it
    """
    for rule in result.law.asking(TO_LOOK_AT) if result.use == "sleep" else ():
        says = f"{place_of(rule)} asks that {rule.note} ({cited(rule)}); no rig file says so"
        act = f"Look whether {rule.note}"
        yield advice("safety/to-look-at", "countries", says, act, 5, rule.source, "countries")


def who_sleeps_where(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say who sleeps where nobody knows, so that no way out of there can be judged.

    Asks: does everybody inside at night have a bed that stands, or a stand-in with a place for the night
    Limit: nobody without
    Source: own-rule
    Lever: write who is inside, and on what each of them sleeps
    """
    code = "safety/who-sleeps-where"
    if result.use != "sleep":
        return
    if not (result.beds or result.bedless):
        says = "nobody is named who sleeps inside, so no way out of a bed can be judged"
        act = "Write who is inside under people: of the load state, and on what each sleeps: sleeps: bunk"
        yield question(code, "people", says, act, 2, "people")
        return
    for sleeper in result.bedless:
        where = f"people[{sleeper.name}]"
        if sleeper.bed:
            says = f"{sleeper.name} sleeps on {sleeper.bed}, which does not stand; where until then is not written"
            act = f"Write what {sleeper.name} sleeps on until then, with until: and its place at night, when_sleeping:"
        else:
            says = f"it is not written on what {sleeper.name} sleeps, so no way out from there can be judged"
            act = f"Write on what {sleeper.name} sleeps, such as sleeps: bunk"
        yield question(code, where, says, act, 2, f"{where}.sleeps")
    for bed in result.beds:
        if not bed.is_there:
            says = f"{bed.name} may be there or not, and {listed(bed.sleepers)} is to sleep on it"
            act = f"Look whether {bed.name} is in, and tick it"
            yield question(code, bed.of, says, act, 1, f"{bed.of}.done")
        if bed.pieces > 1 and len(bed.sleepers) > 1:
            says = f"{bed.name} is {bed.pieces} pieces with one place; nobody wrote where the rest stand at night"
            act = f"Write a line for each of {bed.name}, with its own place for the night"
            yield question(code, bed.of, says, act, 5, f"{bed.of}.count")

"""The headline of a night on the page of ``boxwright heat``: held or not, by how much, and what may still undo it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from boxwright.units import show

if TYPE_CHECKING:
    from boxwright.disciplines.heat.cold_hours import Warmth
    from boxwright.disciplines.heat.night import HeldNight
    from boxwright.finding import Finding
    from boxwright.units import HeaderUnits

MOST = 4
"""Rules that are named in a headline; more of them are counted."""


def night_in_words(one: HeldNight, findings: Iterable[Finding], units: HeaderUnits) -> str:
    """Return one night in a sentence: held, too cold or too warm, by how much, and what may undo it."""
    from boxwright.disciplines.heat.bearing import undone_by
    from boxwright.disciplines.heat.findings.night import NEAR
    from boxwright.disciplines.heat.telling import between, warm

    out = one.outdoors
    head = f"{out.place}, {between(out.coldest, units)} outside: "
    if one.warmth is None:
        said = f"{head}no heater that may run with somebody asleep stands, and the room comes to"
        return f"{said} {between(one.coldest, units)}."
    wanted, name = one.warmth.wanted, one.warmth.name
    if not one.warmth.highest.known:
        return f"{head}nobody wrote what {name} gives, so it warms nothing here."
    if out.coldest.low >= wanted:
        return f"{head}as warm as is wanted without any heat."
    short, against = wanted - one.coldest.best, undone_by(one, findings)
    verb = "would hold" if against else "holds"
    if one.coldest.low >= wanted - NEAR:
        answered = f"{name} {verb} {warm(wanted, units)}{_given(one.warmth)}{_or_warmer(one, wanted, units)}"
        answered += _unless(against)
    elif short <= NEAR:
        # Of a hole of which nobody knows the size no size is likelier than another.
        holds = f"{verb} {warm(wanted, units)} most likely" if one.shell.known else f"may hold {warm(wanted, units)}"
        answered = f"{name} {holds}{_given(one.warmth)}; at worst the room comes to"
        answered += f" {warm(one.coldest.low, units)}{_or_warmer(one, wanted, units)}{_unless(against)}"
    else:
        answered = f"{name} does not hold {warm(wanted, units)}: the room comes to {between(one.coldest, units)},"
        answered += f" {show(short, 'temperature difference', units)} short{_nor(against)}"
    said = f"{head}{answered}."
    if one.at_lowest is not None and one.warmth.switches is not True and one.warmth.lowest.best > 0.0:
        says = "too warm" if one.at_lowest.best > wanted else "too cold"
        by = show(abs(one.at_lowest.best - wanted), "temperature difference", units)
        said += f" Left at its lowest it comes to {between(one.at_lowest, units)}: {by} {says}."
    return said


def _given(warmth: Warmth) -> str:
    """Return what a heater cannot do without: its battery full, a cable to outside."""
    from boxwright.disciplines.heat.telling import full_in_words

    if warmth.is_plugged_in:
        return " while it is plugged in outside"
    if not warmth.fed_by:
        return ""
    return f" with {warmth.fed_by} {full_in_words(warmth.charge)} as it gets dark"


def _or_warmer(one: HeldNight, wanted: float, units: HeaderUnits) -> str:
    """Return how much warmer than is wanted the room may get; nothing where that is little."""
    from boxwright.disciplines.heat.helps import TOO_WARM
    from boxwright.disciplines.heat.telling import as_warm_as

    if one.warmth is None or one.warmest.high <= wanted + TOO_WARM:
        return ""
    unsaid = [] if one.warmth.lowest.known else ["what it gives at its lowest"]
    unsaid += ["whether it goes off by itself"] if one.warmth.switches is None else []
    because = f": nobody wrote {' or '.join(unsaid)}" if unsaid else ""
    return f"; the room, left shut, may also get {as_warm_as(one.warmest.high, units)}{because}"


def _unless(against: tuple[Finding, ...]) -> str:
    """Return what stands against it: what it must not run with, what is not as it should be, what is not settled."""
    stops, wrong = ([one for one in against if one.kind == kind] for kind in ("stop", "limit"))
    if stops:
        return f". But it must not run as it is written, see {_named(stops)} below"
    asked = [one for one in against if one not in wrong]
    said = f". But not as it stands, see {_named(wrong)} below" if wrong else ""
    return said + (f". Not settled, see {_named(asked)} below" if asked else "")


def _nor(against: tuple[Finding, ...]) -> str:
    stops = [one for one in against if one.kind == "stop"]
    return f", and it must not run as it is written, see {_named(stops)} below" if stops else ""


def _named(findings: Iterable[Finding]) -> str:
    """Return rules by the words they are explained by."""
    names = [one.code.partition("/")[2] for one in findings]
    told = names if len(names) <= MOST else [*names[: MOST - 1], f"{len(names) - MOST + 1} more"]
    return ", ".join(told[:-1]) + f" and {told[-1]}" if len(told) > 1 else told[0]

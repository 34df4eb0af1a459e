"""Findings that belong to no discipline: what of the file itself keeps a verdict back. Their prefix is ``rig/``."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from typing import NamedTuple

from boxwright.finding import USES, Finding, Use
from boxwright.model.stage import is_as_ticked
from boxwright.rig.head import FORMAT
from boxwright.rig.kept import LEAF_SHUT
from boxwright.rig.keys import OWNER_OF_KEY
from boxwright.rig.rig import Accepted, Rig
from boxwright.study.once import Failed
from boxwright.study.remedy_words import look_and_tick
from boxwright.study.spoken import listed, named
from boxwright.study.standing import PROTECTING, Standing


class Explained(NamedTuple):
    """What a finding of the file asks and where the rule comes from."""

    asks: str
    source: str


OWN_RULE = "own rule of this program: what is not known is never taken as good"

EXPLAINED: dict[str, Explained] = {
    "rig/not-read": Explained(
        "Is there text in the file that could not be read? What it would have said is not in any number.", OWN_RULE
    ),
    "rig/date-is-stale": Explained(
        "Does the file carry a day of its own that is not today? Expiry dates would be judged for the wrong day.",
        OWN_RULE,
    ),
    "rig/tick-is-ahead": Explained(
        "Is a thing ticked for a day that is still to come? Then it is a plan, and nobody can say that it stands.",
        OWN_RULE,
    ),
    "rig/country-is-assumed": Explained(
        "Is it written in which countries the trailer is driven? Rules of the road differ from country to country.",
        OWN_RULE,
    ),
    "rig/later-format": Explained(
        "Is the file of a later format than this program knows? Keys it does not know may change every answer.",
        OWN_RULE,
    ),
    "rig/no-load-state": Explained(
        "Is any load state judged for this use? A use is judged with what is aboard then, or not at all.", OWN_RULE
    ),
    "rig/stands-perhaps": Explained(
        "Is there a thing of a past or present stage without a tick? It may be there or not; both are reckoned with.",
        OWN_RULE,
    ),
    "rig/told-otherwise": Explained(
        "Does a thing count as in place while words beside it say what is there today? An alarm may hang there with a"
        " flat battery.",
        OWN_RULE,
    ),
    "rig/tank-not-named": Explained(
        "Does the load state say how full each tank is? One it does not name is anything from empty to full.", OWN_RULE
    ),
    "could-not-be-worked-out": Explained(
        "Did a calculation break off? That is a fault of this program; the other chapters go on without it.",
        OWN_RULE,
    ),
}
"""Code to what it asks and its source, for ``explain``; the last one has each discipline's folder before it."""

_KEY = re.compile(r"\]\.([^.\[]+)")


def of_the_file(rig: Rig, clock_today: date, judged_on: date) -> tuple[Finding, ...]:
    """Return what the file as a whole keeps back, whatever the slot."""
    dated = (*_date_is_stale(rig, clock_today, judged_on), *_ahead(rig, judged_on))
    return (*_later_format(rig), *_not_read(rig), *dated, *_country(rig))


def _finding(code: str, where: str, kind: str, says: str, act: str, minutes: int, **more: object) -> Finding:
    finding = Finding(code, where, "unknown", says, source=EXPLAINED[code].source, act=act, minutes=minutes, uses=USES)
    return replace(finding, kind=kind, **more)  # type: ignore[arg-type]


def _later_format(rig: Rig) -> Iterable[Finding]:
    if rig.header.format > FORMAT:
        says = f"the file is of format {rig.header.format}, and this program knows formats up to {FORMAT}"
        yield _finding("rig/later-format", "boxwright", "stop", says, "Install a newer Boxwright.", 5)


def _not_read(rig: Rig) -> Iterable[Finding]:
    if not rig.troubled:
        return
    places = [path or "the whole file" for path in rig.troubled]
    some = ", ".join(places[:3]) + (f" and {len(places) - 3} more" if len(places) > 3 else "")
    says = f"the text of {some} could not be read as it stands"
    act = "Put right what is marked as a problem in the file."
    yield _finding("rig/not-read", rig.troubled[0], "unknown", says, act, 2 * len(places), because=rig.troubled)


def may_protect(path: str) -> bool:
    """Return whether unread text could be about fire, an alarm or a way out: such a key, or a whole thing."""
    key = _KEY.search(path)
    if key is not None:
        return OWNER_OF_KEY.get(key[1], "") in PROTECTING
    return path in {"", "parts", "openings"} or path.startswith(("parts[", "openings["))


def _date_is_stale(rig: Rig, clock_today: date, judged_on: date) -> Iterable[Finding]:
    written = rig.header.date_today
    if written is None or rig.header.is_demo or written == clock_today:
        return
    says = f"the file says that today is {written}, and the clock says {clock_today}; it is judged for {judged_on}"
    act = "Take the date out of today: in the file, or write today's."
    yield _finding("rig/date-is-stale", "today.date", "unknown", says, act, 1)


def _ahead(rig: Rig, judged_on: date) -> Iterable[Finding]:
    items = (*rig.parts, *rig.openings, *rig.wires, *rig.straps, *rig.pipes)
    ticks = [(one.of, one.marks.done.on) for one in items] + [(one.of, one.marks.done.on) for one in rig.layers]
    ahead = tuple(of for of, on in ticks if on is not None and on > judged_on)
    if ahead:
        says = f"{listed(ahead)} {'is' if len(ahead) == 1 else 'are'} ticked for a day after {judged_on}"
        act = f"Put the day of {listed(ahead)} right."
        yield _finding("rig/tick-is-ahead", ahead[0], "unknown", says, act, 1, because=ahead)


def _country(rig: Rig) -> Iterable[Finding]:
    if rig.header.is_country_assumed:
        taken = ", ".join(rig.header.countries) or "none"
        says = f"no country is written; the rules taken are those of {taken}"
        act = "Write the countries it is driven in, home first, such as countries: [US-NC, CA-BC]."
        yield _finding("rig/country-is-assumed", "countries", "unknown", says, act, 1)


def no_load_state(use: Use) -> Finding:
    """Return the finding of a use for which no load state is judged."""
    says = f"no load state is judged for {use}"
    act = f"Add {use} to the for: of a load state that tells what is aboard then."
    return _finding("rig/no-load-state", "loads", "unknown", says, act, 3, uses=(use,), use=use)


def of_a_slot(
    rig: Rig, standing: Standing, use: Use, said: tuple[Finding, ...], is_ticked: bool = False
) -> tuple[Finding, ...]:
    """Return what keeps this slot back and no discipline has said: things there perhaps, tanks of unknown fill.

    Where somebody sleeps, what could be fire, an alarm or a way out is already a no.
    """
    found = list(_perhaps(standing, use, said)) + list(_tanks(standing, said))
    if is_ticked:
        found += _told_otherwise(rig, standing, use, said)
    if use == "sleep":
        guarded = _protecting_items(rig) if rig.troubled else frozenset()
        doubtful = tuple(path for path in rig.troubled if may_protect(path) or path.split("]")[0] + "]" in guarded)
        if doubtful:
            named = [path or "the whole file" for path in doubtful]
            some = ", ".join(named[:3]) + (f" and {len(named) - 3} more" if len(named) > 3 else "")
            says = f"the text of {some} could not be read, and it may be about fire, an alarm or a way out"
            act = "Put right what is marked as a problem there."
            found.append(
                _finding("rig/not-read", doubtful[0], "unknown", says, act, 2, because=doubtful, protects=True)
            )
    return tuple(found)


def _protecting_items(rig: Rig) -> frozenset[str]:
    """Return the paths of everything that burns, warns or lets somebody out."""
    items = (*rig.parts, *rig.openings)
    return frozenset(one.of for one in items if any(folder in PROTECTING for folder, _ in one.facets))


def _perhaps(standing: Standing, use: Use, said: tuple[Finding, ...]) -> Iterable[Finding]:
    told = {path for finding in said if finding.code.endswith("/stands-perhaps") for path in finding.because}
    if use == "sleep" and standing.protecting:
        says = f"{listed(standing.protecting)} may be there or not, and it is about fire, an alarm or a way out"
        act = look_and_tick(standing.protecting)
        yield _finding(
            "rig/stands-perhaps", standing.protecting[0], "unknown", says, act, 1,
            because=standing.protecting, protects=True,
        )  # fmt: skip
        told |= set(standing.protecting)
    rest = tuple(path for path in standing.perhaps if path not in told)
    if rest:
        says = f"nobody has ticked whether {listed(rest)} {'is' if len(rest) == 1 else 'are'} there"
        act = look_and_tick(rest)
        yield _finding("rig/stands-perhaps", rest[0], "unknown", says, act, len(rest), because=rest)


def _told_otherwise(rig: Rig, standing: Standing, use: Use, said: tuple[Finding, ...]) -> Iterable[Finding]:
    """Ask about what counts as there while words tell what is there of it today, unless a discipline asks already.

    Nobody reads such words but a person: an alarm may hang there with a flat battery.
    """
    asked = {finding.lever: finding.protects for finding in said if finding.lever.endswith(".now")}
    there = {one.of for one in standing.frames} | {one.of for one in standing.openings}
    there |= {one.of for one in standing.layers} | {of for of, _ in standing.wires}
    there |= {one.of for one in (*rig.straps, *rig.pipes) if one.marks.done.tick == "yes"}
    items = (*rig.parts, *rig.openings, *rig.wires, *rig.straps, *rig.pipes)
    written = [(one.of, one.words.now) for one in items] + [(one.of, one.now) for one in rig.layers]
    guarding = _protecting_items(rig) if use == "sleep" else frozenset()
    for of, now in written:
        is_shut = of.startswith("openings[") and " ".join(now.lower().split()) in LEAF_SHUT
        if is_as_ticked(now) or is_shut or of not in there or of in standing.perhaps:
            continue
        protects = of in guarding
        already = asked.get(f"{of}.now")
        if already or (already is not None and not protects):
            continue
        says = f'{named(of)} counts as in place, and beside it is written what is there today: "{now.strip()}"; whether'
        says += " it serves nobody can say"
        act = f"Look at {named(of)}: where it is whole, take out now: and keep the words under note:, else write"
        yield _finding(
            "rig/told-otherwise", of, "unknown", says, f"{act} done: part", 2, because=(of,), protects=protects
        )


def _tanks(standing: Standing, said: tuple[Finding, ...]) -> Iterable[Finding]:
    named = {path for finding in said for path in (finding.where, *finding.because) if "tank" in finding.code}
    rest = tuple(path for path in standing.unnamed_tanks if path not in named)
    if rest:
        says = f"the load state does not say how full {listed(rest)} {'is' if len(rest) == 1 else 'are'}"
        act = f"Look how full {listed(rest)} is, and write it under tanks: of the load state, such as {{fresh: full}}."
        yield _finding("rig/tank-not-named", rest[0], "unknown", says, act, len(rest), because=rest)


def broken_off(failed: Failed, use: Use) -> Finding:
    """Return the stop that stands in place of a calculation that broke off."""
    says = f"{failed.folder} could not be worked out ({failed.says}); that is a fault of this program"
    return Finding(
        f"{failed.folder}/could-not-be-worked-out", "", "stop", says,
        source=EXPLAINED["could-not-be-worked-out"].source, uses=(use,),
        act="Run boxwright trace on this file and send what it prints, with the file.", minutes=5,
    )  # fmt: skip


def accepted_of(rig: Rig) -> tuple[Accepted, ...]:
    """Return what the owner has accepted: under ``accepted:``, and whatever is said of a thing marked so itself."""
    marked = (item for item in (*rig.parts, *rig.openings, *rig.wires, *rig.straps) if item.words.accepted)
    return rig.accepted + tuple(
        Accepted(f"{item.of}.accepted", "", item.of, item.words.accepted, None, None) for item in marked
    )


def is_accepted(finding: Finding, accepted: tuple[Accepted, ...]) -> bool:
    """Return whether the owner has accepted this finding as it is now. A stop never is.

    A number that was written with the acceptance must still be the same to the three figures that are shown.
    """
    if finding.kind == "stop":
        return False
    for one in accepted:
        is_meant = one.code in {"", finding.code} and one.where in {"", finding.where} and (one.code or one.where)
        if is_meant and _is_unchanged(one, finding):
            return True
    return False


def _is_unchanged(one: Accepted, finding: Finding) -> bool:
    if one.number is None or finding.number is None:
        return one.number is None
    doubt = abs(one.number.best) * 0.005
    return one.number.low - doubt <= finding.number <= one.number.high + doubt

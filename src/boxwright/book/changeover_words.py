"""A change-over in words: each move, what it does to the exits, what blocks, what is asked, how everybody gets out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from boxwright.book.changeover import ChangeOver
from boxwright.disciplines.layout.changeover import Changed, Freed, Leaving, Step
from boxwright.disciplines.layout.changeover_leaving import THE_FLOOR, UNTRIED
from boxwright.disciplines.layout.changeover_numbers import SECONDS
from boxwright.finding import listed
from boxwright.units import HeaderUnits, show

HANDS = {1: "", 2: "two people", 3: "more than two people, or a roll"}
STANDS = {
    "outside": "outside", "place": "in its place inside", "travel": "where it rides", "night": "where it is at night",
    "up": "folded up", "down": "let down", "in": "put in", "out": "set out",
}  # fmt: skip
"""Where a thing stands, by the word of its pose."""
NO_BED = "No bed that somebody sleeps in is there."
NOT_LEAST = " It is not proved that there is none with less work."
MINUTE = 60.0
HOW = (
    "Things are carried level along straight ways, over what they can be lifted over, and turned where there is room "
    "to turn them. Who carries takes no room here, and the ground outside is not looked at. At night steps are out and "
    "canopies set up; leave a canopy in as you like. Seconds, and what how many hands lift, are common practice "
    "without a source."
)


def headline(told: Changed, start: str, goal: str) -> str:
    """Return how a change-over ended, as one sentence."""
    way = f"From {start} to {goal}"
    if told.word == "found":
        return f"{way}: {_counted(told)}.{'' if told.is_least else NOT_LEAST}"
    if told.word == "without":
        return f"{way}: not as it is written. With {listed(told.leave_out)} left outside as well: {_counted(told)}."
    if told.word == "not-found":
        return f"{way}: not known. The search gave up after {told.states} states; there may be one."
    if told.word == "unknown":
        return f"{way}: not known. It hangs on what is asked below."
    return f"{way}: none was found, nor with a few things left outside as well."


def because(told: Changed) -> Iterator[str]:
    """Yield what is in the way, and what overlaps before anything is moved."""
    met: dict[str, list[str]] = {}
    for name, other in told.meets:
        met.setdefault(name, []).append(other)
    for name, others in met.items():
        yield f"{name} meets {listed(others)}."
    for name, other in told.fallen:
        yield f"{name} lies on {other}, which is not there then: give it a place of its own, or leave it outside too."
    for name, other in told.overlaps:
        yield f"{name} and {other} are in one place already before the first move: that is not looked at here."
    for name, other in told.grazes:
        yield f"{name} passes {other} with no more than the play of its hinge: try it by hand."
    if told.word == "blocked" and not (told.meets or told.fallen):
        yield f"All {told.states} states that can be reached were looked at."


def _counted(told: Changed) -> str:
    count = len(told.steps)
    moves = "nothing to move" if not count else "one move" if count == 1 else f"{count} moves"
    return f"{moves}, {minutes(told.cost)} of one pair of hands" if count else moves


def minutes(seconds: float) -> str:
    """Return a time as somebody says it: seconds up to two minutes, else minutes."""
    return f"{seconds:.0f} s" if seconds <= 2.0 * MINUTE else f"{seconds / MINUTE:.0f} min"


def step_words(step: Step) -> str:
    """Return what is done in one step."""
    words = {
        "open": f"open {step.name}",
        "shut": f"shut {step.name}",
        "let down": f"let {step.name} down",
        "fold up": f"fold {step.name} up",
        "carry out": f"carry {step.name} out by {step.by}",
        "carry in": f"carry {step.name} in by {step.by}",
        "set out": f"set {step.name} out",
        "put in": f"put {step.name} in",
        "shift": f"put {step.name} into the other place",
        "set aside": f"set {step.name} aside on free floor",
        "put back": f"put {step.name} in its place",
    }[step.word]
    turned = ", turned on the way" if step.is_turned else ""
    undone = "fasten" if step.is_tied else "undo"
    tied = "strap" if len(step.straps) == 1 else "straps"
    straps = f"; {undone} {tied} {listed(step.straps)}" if step.straps else ""
    return words + turned + straps


def stands_words(told: Changed) -> str:
    """Return where each thing that was moved stands at the end; empty where nothing was."""
    found: dict[str, list[str]] = {}
    for name, word in told.meanwhile:
        found.setdefault(STANDS[word], []).append(name)
    return "; ".join(f"{where}: {listed(names)}" for where, names in found.items())


def hands_words(step: Step) -> str:
    """Return how many people a step wants; empty for one."""
    return HANDS[min(step.hands, 3)]


def exit_changes(before: Iterable[Freed], after: Iterable[Freed]) -> str:
    """Return which exits a step frees or blocks; empty where it changes none."""
    old, after = {one.of: one for one in before}, tuple(after)
    said = [one for one in after if one.of not in old or old[one.of].word != one.word]
    words = [f"{one.name} shut" if one.word == "shut" else exit_words(one) for one in said]
    was = {(name, one.of) for one in old.values() for name in one.not_from}
    beds = {name for one in after for name in one.not_from if (name, one.of) not in was}
    return "; ".join([*words, *_not_from(after, beds)])


def exits_words(exits: Iterable[Freed]) -> str:
    """Return what is known of all exits at one moment, and from which bed not all of them are one."""
    exits = tuple(exits)
    beds = {name for one in exits for name in one.not_from}
    return "; ".join([*(exit_words(one) for one in exits), *_not_from(exits, beds)])


def _not_from(exits: Iterable[Freed], beds: Iterable[str]) -> Iterator[str]:
    """Yield for each of some beds by which exits nobody gets out of it though somebody else does."""
    exits = tuple(exits)
    for bed in sorted(beds):
        yield f"from {bed} NOT by {listed([one.name for one in exits if bed in one.not_from])}"


def exit_words(one: Freed) -> str:
    """Return what is known of one exit, in the words of the card for the door."""
    if one.word == "free":
        return f"{one.name} free"
    if one.word == "shut":
        return f"{one.name} ONLY WITH A {one.by[0].upper()}" if one.by else f"{one.name} NOT FROM INSIDE"
    if one.word == "perhaps":
        return f"{one.name} NOT IN YET"
    if one.word == "unknown":
        return f"{one.name} PERHAPS SHUT BY {listed(one.by)}" if one.by else f"{one.name} NOT TRIED YET"
    if one.word == "unmeasured":
        return f"{one.name} NOT MEASURED"
    if one.word == "fixed":
        return f"{one.name} DOES NOT OPEN"
    if one.word == "tight":
        return f"{one.name} tight" + (f" at {listed(one.by)}" if one.by else "") + ": try it"
    return f"{one.name} BLOCKED" + (f" by {listed(one.by)}" if one.by else "")


def leaving_words(told: ChangeOver, units: HeaderUnits) -> Iterator[str]:
    """Yield how everybody gets out at night, and which exits are none."""
    out = told.out
    if out is None:
        return
    yield f"Out in two minutes: {_out_words(out, units)}"
    if told.there.leave_out:
        yield f"That is with {listed(told.there.leave_out)} left outside: as it is written, the night is not come to."
    if told.there.word == "blocked":
        yield "That is of the night as it is written, though nobody can come to it."
    if told.there.word == "not-found":
        yield "That is of the night as it is written; whether one comes to it is not known."
    if told.there.word == "unknown":
        yield "That is of the night as it is written; whether one comes to it is asked."
    lost = [one for one in out.exits if one.word not in {"free", *UNTRIED}]
    tried = [one for one in out.exits if one.word in UNTRIED]
    for lead, ones in (("Not counted as ways out", lost), ("To be tried or measured before it counts", tried)):
        if ones:
            yield f"{lead}: {'; '.join(exit_words(one) for one in ones)}."
    for says in _not_from(out.exits, {name for one in out.exits for name in one.not_from}):
        yield f"{says[0].upper()}{says[1:]}."


def _out_words(out: Leaving, units: HeaderUnits) -> str:
    """Return how everybody gets out, and how soon the last one is."""
    is_late = out.seconds is not None and out.seconds > SECONDS["two minutes"]
    if out.word == "found":
        return ("NO. " if is_late else "") + _way_words(out, units)
    if out.ways:
        says = _way_words(out, units)
        return f"{'NO' if is_late else 'not known'}. {NO_BED} {says[0].upper()}{says[1:]}"
    if out.word == "unknown":
        return "not known; not every bed that somebody sleeps in is down."
    is_floor = THE_FLOOR in out.shut_in
    lead = f"{NO_BED} " if is_floor else ""
    if out.word == "blocked":
        whom = " from free floor" if is_floor else f" of {listed(out.shut_in)}" if out.shut_in else ""
        return f"NO. {lead}Nobody gets out{whom}, whatever else is moved."
    if out.heavy or out.past:
        move = f"move {listed(out.heavy)}" if out.heavy else ""
        past = f"reach {listed(out.past)} past what stands before it" if out.past else ""
        what = " and ".join(filter(None, (move, past)))
        return f"not known. {lead}It hangs on whether those who sleep here can {what}."
    if out.word == "untried":
        return f"not known. {lead}It hangs on ways out that are to be tried or measured."
    return f"not known. {lead}The search gave up after {out.states} states; there may be a way."


def _way_words(out: Leaving, units: HeaderUnits) -> str:
    assert out.seconds is not None
    first = f"first {'; '.join(step_words(step) for step in out.steps)}; then " if out.steps else ""
    ways = listed([f"from {bed} by {name}, {show(far, 'm', units)}" for bed, name, far in out.ways])
    carried = " Whoever carries takes no room in that." if any(step.is_carried for step in out.steps) else ""
    return f"{first}{ways}: the last is out after {minutes(out.seconds)}.{carried}"


def asked_words(told: ChangeOver) -> Iterator[str]:
    """Yield what is left open."""
    for one in told.asks:
        yield f"Not known {one}. Without it this is only as far as known."
    if told.unweighed:
        yield f"Nobody weighed {listed(told.unweighed)}: two people are counted for each."
    if told.perhaps:
        yield f"Counted as there, though nobody ticked it: {listed(told.perhaps)}."
    most = max((step.hands for one in (told.there, told.back) for step in one.steps), default=0)
    if most > max(told.hands, 1):
        sleep = {0: "one", 1: "the one that sleeps here"}.get(told.hands, f"the {told.hands} that sleep here")
        yield f"Some of it wants more hands than {sleep}: get help, or roll it."

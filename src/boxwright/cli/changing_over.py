"""``boxwright changeover``: what to move from one use to another, in the order of hands, and who gets out meanwhile."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from boxwright import __version__
from boxwright.book.changeover import ChangeOver, change_over
from boxwright.book.changeover_ends import End, ends_of, has_room
from boxwright.book.changeover_words import (
    HOW,
    asked_words,
    because,
    exit_changes,
    exits_words,
    hands_words,
    headline,
    leaving_words,
    minutes,
    stands_words,
    step_words,
)
from boxwright.cli import answers
from boxwright.cli.answers import Json
from boxwright.cli.asked import NAMELESS, Answered, Question, answered
from boxwright.cli.rig_file import NothingAsked, must_be_one_of
from boxwright.cli.screen import Line, Span, Style, clean, hanging, plain, wrapped
from boxwright.disciplines.layout.changeover import Changed, Freed, Leaving, Step
from boxwright.disciplines.layout.changeover_numbers import SECONDS
from boxwright.model.load import LoadState
from boxwright.records import dataclass

GO, ASK, NO = 0, 1, 2
FOUND_STYLES: dict[str, Style] = {
    "found": "go", "without": "stop", "blocked": "stop", "not-found": "unknown", "unknown": "unknown",
}  # fmt: skip
"""The colour of what a search ended with, as the answers of ``check`` have theirs."""
EXIT_STYLES: tuple[tuple[str, Style], ...] = (
    ("blocked", "stop"), ("fixed", "stop"), ("unknown", "unknown"), ("unmeasured", "unknown"), ("perhaps", "unknown"),
    ("tight", "limit"), ("free", "go"),
)  # fmt: skip
"""The colour of what a step does to the exits, the gravest first; one that is shut by hand has none."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A change-over with the answer it comes from."""

    answer: Answered
    found: ChangeOver

    @property
    def exit_code(self) -> int:
        """Return 0 where it can be done as it is written, 1 where something is asked, 2 where it cannot."""
        found = self.found
        out = found.out
        if "without" in _words(found) or "blocked" in _words(found) or (out is not None and out.word == "blocked"):
            return NO
        if out is not None and out.seconds is not None and out.seconds > SECONDS["two minutes"]:
            return NO
        if out is not None and out.exits and {one.word for one in out.exits} <= {"blocked", "fixed"}:
            return NO  # a way that is cleared by hand first is no way out until that is done
        is_open = bool({"not-found", "unknown"} & _words(found)) or (out is not None and out.word != "found")
        is_open = is_open or (out is not None and any(step.is_carried for step in out.steps))
        is_open = is_open or bool(found.there.grazes or found.back.grazes)
        return ASK if is_open or any(asked_words(found)) else GO

    def as_text(self) -> str:
        """Return the answer as JSON, in SI."""
        found = self.found
        return answers.as_text(
            {
                "boxwright": __version__,
                "rig": self.answer.reading.rig.header.name or NAMELESS,
                "stage": found.stage,
                "from": _end(found.start),
                "to": _end(found.goal),
                "there": _changed(found.there),
                "back": _changed(found.back),
                "out": _leaving(found.out),
                "asks": list(asked_words(found)),
            }
        )


def answer_of(question: Question, start: str, goal: str, load: str, today: date) -> Asked:
    """Return the change-over between two words: travel, night, or load states of the file."""
    answer = answered(question, today)
    rig = answer.reading.rig
    ends = ends_of(rig, load)
    if load:
        must_be_one_of(load, [one.name for one in rig.loads], "load state")
    first, last = (_end_of(word, ends, rig.loads) for word in (start, goal))
    if first.load.name == last.load.name:
        raise NothingAsked(f'"{clean(start)}" and "{clean(goal)}" are the same load state; nothing changes')
    slots = [one for one in answer.study.slots if one.number == answer.study.number and not one.is_for_ticket]
    slots = [one for one in slots if one.is_ticked == answer.study.is_ticked] or slots
    slot = next((one for one in slots if one.load == first.load.name), next(iter(slots), None))
    if slot is None or slot.frame is None or not has_room(rig):
        raise NothingAsked("the room inside is not known; write trailer: {body: {length: .., width: .., height: ..}}")
    return Asked(answer, change_over(rig, slot, first, last))


def _end_of(word: str, ends: tuple[End | None, End | None], loads: Iterable[LoadState]) -> End:
    """Return what a word asks for; travel and night go before a load state of that name."""
    states = list(loads)
    named = must_be_one_of(word, list(dict.fromkeys(["travel", "night", *(one.name for one in states)])), "end")
    if named in {"travel", "night"}:
        end = ends[named == "night"]
        if end is None:
            use = "sleep" if named == "night" else "tow"
            raise NothingAsked(
                f"no load state is for {use}; write one: loads: {{{named}: {{cargo: all, for: [{use}]}}}}"
            )
        return end
    state = next(one for one in states if one.name == named)
    return End(named, state, "sleep" if "sleep" in state.uses else "tow")


# ------------------------------------------------------------------ the page


def page(told: Asked, columns: int) -> list[Line]:
    """Return the lines of a change-over: there, back, and out at night."""
    found, units = told.found, told.answer.units
    rig = told.answer.reading.rig.header.name or NAMELESS
    names = [f"{end.word} ({end.load.name})" if end.word != end.load.name else end.word for end in _both(found)]
    lines = [plain(piece, "head") for piece in wrapped(f"{rig}: change-over, stage {found.stage}", columns)]
    for changed, (start, goal) in ((found.there, names), (found.back, reversed(names))):
        style = FOUND_STYLES[changed.word]
        lines += [(), *(plain(piece, style) for piece in wrapped(headline(changed, start, goal), columns))]
        for sentence in because(changed):
            lines += hanging(plain("  "), sentence, columns, "stop" if style == "stop" else "unknown")
        lines += _steps(changed, columns)
    lines += [()] if found.out is not None else []
    for number, sentence in enumerate(leaving_words(found, units)):
        style = out_style(found.out) if number == 0 and found.out is not None else ""
        lines += [plain(piece, style) for piece in wrapped(sentence, columns)]
    for sentence in asked_words(found):
        lines += hanging(plain("? ", "unknown"), sentence, columns)
    return [*lines, (), *(plain(piece, "dim") for piece in wrapped(HOW, columns))]


def exit_style(before: Iterable[Freed], after: Iterable[Freed]) -> Style:
    """Return the colour of what a step changes of the exits: of the gravest of it."""
    old = {one.of: (one.word, one.not_from) for one in before}
    changed = {
        "tight" if one.word == "free" and one.not_from else one.word
        for one in after
        if old.get(one.of) != (one.word, one.not_from)
    }
    return next((style for word, style in EXIT_STYLES if word in changed), "dim")


def out_style(out: Leaving) -> Style:
    """Return the colour of how everybody gets out: in time, too late or not, not known."""
    if out.word == "blocked" or (out.seconds is not None and out.seconds > SECONDS["two minutes"]):
        return "stop"
    return "go" if out.word == "found" and out.seconds is not None else "unknown"


def _both(found: ChangeOver) -> tuple[End, End]:
    return found.start, found.goal


def _steps(changed: Changed, columns: int) -> list[Line]:
    lines: list[Line] = []
    if changed.before:
        lines += hanging(plain("  exits: ", "dim"), exits_words(changed.before), columns, "dim")
    before = changed.before
    for number, step in enumerate(changed.steps, start=1):
        hands = hands_words(step)
        says = f"{step_words(step)} ({minutes(step.seconds)}{', ' if hands else ''}{hands})"
        lines += hanging((Span(f"{number:>3} [ ] "),), says, columns)
        exits = exit_changes(before, step.exits)
        if exits:
            lines += hanging(plain("        "), exits, columns, exit_style(before, step.exits))
        before = step.exits
    if stands := stands_words(changed):
        lines += hanging(plain("  then ", "dim"), f"{stands}.", columns, "dim")
    return lines


# ------------------------------------------------------------------ for programs


def _words(found: ChangeOver) -> set[str]:
    return {found.there.word, found.back.word}


def _end(end: End) -> dict[str, Json]:
    return {"word": end.word, "load": end.load.name, "use": end.use}


def _changed(one: Changed) -> dict[str, Json]:
    return {
        "word": one.word,
        "hand_seconds": one.cost,
        "states": one.states,
        "least": one.is_least,
        "leave_out": list(one.leave_out),
        "meets": [list(pair) for pair in one.meets],
        "overlaps": [list(pair) for pair in one.overlaps],
        "grazes": [list(pair) for pair in one.grazes],
        "fallen": [list(pair) for pair in one.fallen],
        "exits": _exits(one.before),
        "steps": [_step(step) for step in one.steps],
        "stands": dict(one.meanwhile),
    }


def _step(step: Step) -> dict[str, Json]:
    return {
        "where": step.of,
        "word": step.word,
        "by": step.by,
        "turned": step.is_turned,
        "straps": list(step.straps),
        "seconds": step.seconds,
        "hands": step.hands,
        "exits": _exits(step.exits),
    }


def _exits(exits: Iterable[Freed]) -> list[Json]:
    return [{"where": one.of, "word": one.word, "by": list(one.by), "not_from": list(one.not_from)} for one in exits]


def _leaving(out: Leaving | None) -> Json:
    if out is None:
        return None
    return {
        "word": out.word,
        "seconds": answers.number(out.seconds),
        "ways": [{"from": bed, "by": name, "m": far} for bed, name, far in out.ways],
        "steps": [_step(step) for step in out.steps],
        "exits": _exits(out.exits),
        "shut_in": list(out.shut_in),
    }

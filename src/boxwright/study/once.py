"""Each step is run once for the same arguments: the memo that makes an edit cheap and changes no answer.

There is no dependency graph and nothing is ever marked stale. It rests on two things only: a step depends on nothing
but its arguments, and arguments and answers are records that compare by value.
"""

from __future__ import annotations

import traceback
from collections.abc import Callable, Hashable
from dataclasses import field, fields, is_dataclass
from functools import cache
from typing import TypeVar

from boxwright.records import dataclass
from boxwright.study.standing import Remembered

Answer = TypeVar("Answer")
Step = Callable[..., object]
Arguments = tuple[Hashable, ...]

MOST_SLOTS = 500
"""Slots remembered; a session that renames load states for hours must not grow for ever."""

LONG = 30
"""A record with a row longer than this is told from others by the numbers of what it holds."""

MOST_NUMBERS = 60_000
"""Values numbered for the pool before all of them are forgotten together; costs one slower study, no answer."""


@dataclass(frozen=True, slots=True)
class Failed:
    """A step that raised: its folder, its name and what was said. Stands in place of the answer."""

    folder: str
    step: str
    says: str
    traceback: str = field(compare=False, default="")


@dataclass(frozen=True, slots=True)
class Ran:
    """One run of a step, for the trace: where, what, and how long by the caller's clock (s)."""

    slot: Hashable
    step: str
    seconds: float


def folder_of(step: Step) -> str:
    """Return the folder a step belongs to: ``weight`` for a step of that discipline, ``study`` for one of our own."""
    pieces = step.__module__.split(".")
    return pieces[2] if pieces[1:2] == ["disciplines"] else "study"


def name_of(step: Step) -> str:
    """Return the name a step goes by in the trace, such as ``weight.solve``."""
    return f"{folder_of(step)}.{step.__name__}"


class Once:
    """Runs steps, and hands back an earlier answer where the arguments are the same.

    ``enter(slot)`` says which slot the following steps belong to. ``ran`` lists the steps run since it was last
    cleared. ``clock`` is the caller's; without one no time is taken. ``remembered`` belongs to whoever cuts the rig
    to what stands: the frames it made, so that an unchanged part stays the same object.
    """

    def __init__(self, clock: Callable[[], float] | None = None) -> None:
        self.ran: list[str] = []
        self.times: list[Ran] = []
        self.remembered: Remembered = {}
        self._clock = clock
        self._slot: Hashable = None
        self._last: dict[Hashable, dict[Step, tuple[Arguments, object]]] = {}
        self._pool: dict[Step, dict[tuple[int, ...], object]] = {}
        self._numbered: dict[int, tuple[int, Hashable]] = {}
        self._numbers: dict[Hashable, int] = {}

    def enter(self, slot: Hashable) -> None:
        """Say which slot the following steps belong to."""
        self._slot = slot
        if slot not in self._last:
            self._last[slot] = {}
            if len(self._last) > MOST_SLOTS:
                del self._last[next(iter(self._last))]

    def clear(self) -> None:
        """Forget what ran, and no answer."""
        self.ran.clear()
        self.times.clear()

    def __call__(self, step: Callable[..., Answer], *arguments: Hashable) -> Answer | Failed:
        """Return the answer of a step, run only if no slot has its answer to the same arguments.

        An equal answer is handed back as the old object, so that whatever takes it stops at ``is``. A step that takes
        a failed answer is not run and fails with it.
        """
        for argument in arguments:
            if isinstance(argument, Failed):
                return argument
        last = self._last.setdefault(self._slot, {})
        before = last.get(step)
        if before is not None and _are_same(before[0], arguments):
            return before[1]  # type: ignore[return-value]
        answer = self._pooled(step, arguments)
        if before is not None and (before[1] is answer or before[1] == answer):
            answer = before[1]
        last[step] = (arguments, answer)
        return answer

    def _pooled(self, step: Callable[..., Answer], arguments: Arguments) -> Answer | Failed:
        """Return the answer any slot had to equal arguments, else run the step."""
        if len(self._numbered) > MOST_NUMBERS:
            self._numbered, self._numbers, self._pool = {}, {}, {}
        key = tuple([self._number(argument) for argument in arguments])
        answers = self._pool.setdefault(step, {})
        if key in answers:
            return answers[key]  # type: ignore[return-value]
        answer = self._run(step, arguments)
        answers[key] = answer
        if len(answers) > 2 * max(len(self._last), 1):
            del answers[next(iter(answers))]
        return answer

    def _run(self, step: Callable[..., Answer], arguments: Arguments) -> Answer | Failed:
        self.ran.append(name_of(step))
        started = self._clock() if self._clock else 0.0
        answer: Answer | Failed
        try:
            answer = step(*arguments)
        except Exception as error:  # noqa: BLE001 - no exception may cross from a discipline to the user
            answer = Failed(folder_of(step), name_of(step), f"{type(error).__name__}: {error}", traceback.format_exc())
        if self._clock:
            self.times.append(Ran(self._slot, self.ran[-1], self._clock() - started))
        return answer

    def _number(self, value: Hashable) -> int:
        """Return a number that equal values share.

        A record is hashed once in its life, not once for every tuple it stands in: hashing whole tuples of masses
        would cost more than adding them up. The table keeps each value alive, so that its ``id`` stays its own.
        """
        known = self._numbered.get(id(value))
        if known is not None:
            return known[0]
        key: Hashable = value
        if type(value) is tuple:
            # Most of a row of a thousand has its number: it is looked up here, without a call for each.
            get = self._numbered.get
            key = ("tuple", tuple([had[0] if (had := get(id(one))) else self._number(one) for one in value]))
        else:
            # So with a record of such rows: hashed as it is, it would hash every record in them anew.
            held = [getattr(value, name) for name in _compared(type(value))]
            if any(type(one) is tuple and len(one) > LONG for one in held):
                key = (type(value), tuple([self._number(one) for one in held]))
        number = self._numbers.setdefault(key, len(self._numbers))
        self._numbered[id(value)] = (number, value)
        return number


@cache
def _compared(kind: type) -> tuple[str, ...]:
    """Return the fields by which two records of a kind are told apart; none of what is no record."""
    return tuple(one.name for one in fields(kind) if one.compare) if is_dataclass(kind) else ()


def _are_same(before: Arguments, now: Arguments) -> bool:
    """Return whether two rows of arguments are the same, looking into a value only where it is another object."""
    if len(before) != len(now):
        return False
    for one, other in zip(before, now, strict=True):  # noqa: SIM110 - a generator costs more than what it looks at
        if one is not other and one != other:
            return False
    return True

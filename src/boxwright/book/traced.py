"""Which formulas ran for one slot, with the numbers they were given: the slot is worked out once more and watched.

Nothing is kept for this while a rig is worked out: a formula is a plain function of numbers, so what it was given and
what it gave is seen from outside. So every discipline's formulas are seen alike, those built later too.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date
from types import CodeType, FrameType

from boxwright.records import dataclass
from boxwright.rig.rig import Rig
from boxwright.study.once import Once
from boxwright.study.slots import Laid, Slot, slots_of

Number = float | tuple[float, ...]
FORMULAS, RULES = ".method", ".findings"


@dataclass(frozen=True, slots=True)
class Call:
    """One formula run: its discipline and name, what it was given, what it gave by name, and the rule that ran it.

    ``rule`` is empty where no rule ran it itself: then it was run to have a number ready for all of them.
    """

    folder: str
    name: str
    given: tuple[tuple[str, Number], ...]
    gave: tuple[tuple[str, float], ...]
    rule: str


def calls_of(rig: Rig, today: date, slot: Slot, vehicle: str = "", judged_on: date | None = None) -> tuple[Call, ...]:
    """Return the formulas that ran for one slot, in the order they ended; each with its numbers once."""
    laid = Laid(rig, today, Once(), None, judged_on, vehicle)
    asked = (one for one in slots_of(rig, slot.number, slot.load, slot.use, False) if one.is_ticked == slot.is_ticked)
    found: list[Call] = []
    with _watched(found):
        for one in asked:
            laid.slot(one)
    return tuple(dict.fromkeys(found))


@contextmanager
def _watched(found: list[Call]) -> Iterator[None]:
    """Note every formula that runs to its end."""
    before = sys.getprofile()
    sys.setprofile(_watcher(found))
    try:
        yield
    finally:
        sys.setprofile(before)


def _watcher(found: list[Call]) -> Callable[[FrameType, str, object], None]:
    given: dict[int, tuple[tuple[str, Number], ...]] = {}
    rules: list[tuple[int, str]] = []
    kinds: dict[CodeType, str] = {}

    def watch(frame: FrameType, event: str, came: object) -> None:
        if event not in {"call", "return"}:
            return
        code = frame.f_code
        kind = kinds.get(code)
        if kind is None:
            kind = kinds[code] = _kind(frame)
        if kind == "rule":
            if event == "call":
                rules.append((id(frame), code.co_name))
            elif rules and rules[-1][0] == id(frame):
                rules.pop()
        elif kind == "formula":
            if event == "call":
                given[id(frame)] = _numbers(frame)
                return
            folder = str(frame.f_globals["__name__"]).split(".")[2]
            gave = _gave(came)
            if gave:
                rule = rules[-1][1] if rules else ""
                found.append(Call(folder, code.co_name, given.pop(id(frame), ()), gave, rule))

    return watch


def _kind(frame: FrameType) -> str:
    """Return whether a frame is that of a formula, of a rule, or of neither."""
    module, name = str(frame.f_globals.get("__name__", "")), frame.f_code.co_name
    if not module.startswith("boxwright.disciplines.") or name.startswith(("_", "<")):
        return ""
    own = module.split(".", 3)[3] if module.count(".") > 2 else ""
    if own == "method" or own.startswith("method."):
        return "formula"
    return "rule" if own == "findings" or own.startswith("findings.") else ""


def _numbers(frame: FrameType) -> tuple[tuple[str, Number], ...]:
    names = frame.f_code.co_varnames[: frame.f_code.co_argcount + frame.f_code.co_kwonlyargcount]
    values = ((name, frame.f_locals.get(name)) for name in names)
    return tuple((name, value) for name, value in values if _is_number(value))  # type: ignore[misc]


def _is_number(value: object) -> bool:
    if isinstance(value, tuple):
        return bool(value) and all(isinstance(one, float) for one in value)
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def _gave(came: object) -> tuple[tuple[str, float], ...]:
    """Return what a formula gave, by the names of its parts where they are several."""
    named = getattr(came, "_asdict", None)
    pairs = tuple(named().items()) if named is not None else (("", came),)
    return tuple((str(name), float(value)) for name, value in pairs if isinstance(value, float))

"""What a study ran, how often and for how long by the caller's clock, and what broke off."""

from __future__ import annotations

from boxwright.records import dataclass
from boxwright.study.once import Once
from boxwright.study.slots import Study


@dataclass(frozen=True, slots=True)
class Traced:
    """One step: how often it ran, and how long in all (s; 0 where the caller gave no clock)."""

    step: str
    runs: int
    seconds: float


@dataclass(frozen=True, slots=True)
class BrokenOff:
    """A step that raised, the slots it broke off in, and the traceback for whoever mends it."""

    step: str
    says: str
    slots: tuple[str, ...]
    traceback: str


def traced(once: Once) -> tuple[Traced, ...]:
    """Return the steps run since the memo was last cleared, in the order in which they first ran."""
    runs: dict[str, int] = {}
    seconds: dict[str, float] = {}
    for step in once.ran:
        runs[step] = runs.get(step, 0) + 1
    for ran in once.times:
        seconds[ran.step] = seconds.get(ran.step, 0.0) + ran.seconds
    return tuple(Traced(step, count, seconds.get(step, 0.0)) for step, count in runs.items())


def broken_off(study: Study) -> tuple[BrokenOff, ...]:
    """Return what broke off in a study, each fault once."""
    found: dict[tuple[str, str], tuple[str, list[str]]] = {}
    for slot in study.slots:
        name = f"{slot.stage} {'as ticked' if slot.is_ticked else 'as planned'}, {slot.load}, {slot.use}"
        for failed in slot.broken:
            found.setdefault((failed.step, failed.says), (failed.traceback, []))[1].append(name)
    return tuple(BrokenOff(step, says, tuple(slots), text) for (step, says), (text, slots) in found.items())

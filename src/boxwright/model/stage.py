"""Stages, ticks and what stands: the one place that says whether a thing is there."""

from __future__ import annotations

import re
from datetime import date
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator

from boxwright.model.entry import read_day
from boxwright.records import dataclass

Tick = Literal["yes", "part", "no", "unmarked"]
Stands = Literal["yes", "no", "perhaps"]


@dataclass(frozen=True, slots=True)
class Done:
    """The builder's tick on a thing: ``yes`` (with its day, if written), ``part``, ``no``, or no mark at all."""

    tick: Tick = "unmarked"
    on: date | None = None


UNMARKED = Done()


def read_done(given: Any) -> Any:
    """Return the tick written as ``yes 2026-04-18``, ``yes``, ``part``, ``no`` or ``unknown`` (read as no mark)."""
    if given is None:
        return UNMARKED
    if isinstance(given, Done):
        return given
    words = str(given).strip().split(None, 1)
    word = words[0].lower() if words else ""
    ticks: dict[str, Tick] = {"yes": "yes", "true": "yes", "part": "part", "partly": "part", "half": "part"}
    ticks |= {"no": "no", "false": "no", "unknown": "unmarked"}
    if word in ticks:
        return Done(ticks[word], read_day(words[1]) if len(words) > 1 else None)
    if re.fullmatch(r"\d{4}-\d{2}(-\d{2})?", word):
        return Done("yes", read_day(word))
    raise ValueError(f'cannot read the tick "{given}"; write it as yes, yes 2026-04-18, part or no')


DoneMark = Annotated[Done, BeforeValidator(read_done)]
AS_TICKED = frozenset({"", "fitted", "in", "in place", "hung", "works"})
"""What is written under ``now`` of a thing that is as its tick says."""


def is_as_ticked(now: str) -> bool:
    """Return whether the words of what is there today say no more than a tick does; any others may deny it."""
    return " ".join(now.lower().split()) in AS_TICKED


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage of the build, in file order; ``index`` counts from 0."""

    name: str
    index: int
    what: str
    done: Done


@dataclass(frozen=True, slots=True)
class Marks:
    """When a thing is there: stage numbers (``until`` is the last it stands in), and the tick.

    ``stage`` is None for a thing without a stage, which is there from the start; ``planned`` is False for
    ``unplanned`` and ``never``, which never stand. ``follows_load`` marks cargo and stand-ins: without a tick they
    stand by plan, not perhaps.
    """

    stage: int | None
    until: int | None
    done: Done
    planned: bool = True
    follows_load: bool = False


def stands(marks: Marks, stage: int, ticked: bool) -> Stands:
    """Return whether a thing is there at a stage.

    ``ticked`` asks for today as it is: a tick is a fact, half a tick or none on a past or present stage is doubt.
    Without it the answer is the plan: there from its stage to the end of its last. What belongs to no stage and has no
    tick is there from the start, with no doubt.
    """
    by_plan = marks.planned and (marks.stage or 0) <= stage and (marks.until is None or stage <= marks.until)
    if not ticked or (marks.stage is None and marks.done.tick == "unmarked"):
        return "yes" if by_plan else "no"
    is_gone = marks.until is not None and stage > marks.until
    if marks.done.tick == "no" or is_gone:
        return "no"
    if marks.done.tick == "yes":
        return "yes"
    if marks.done.tick == "part":
        return "perhaps"
    if marks.follows_load:
        return "yes" if by_plan else "no"
    return "perhaps" if by_plan else "no"

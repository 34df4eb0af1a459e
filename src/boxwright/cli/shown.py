"""What an answer shows, whether as a page or as JSON: records filled from a study, with no layout in them."""

from __future__ import annotations

from collections.abc import Callable

from boxwright.finding import Finding, Problem, Use, Verdict
from boxwright.records import dataclass
from boxwright.units import Band, HeaderUnits

LineOf = Callable[[str], int | None]
"""Gives the line of the text a rig path stands on, or None where it stands nowhere."""


@dataclass(frozen=True, slots=True)
class State:
    """One row of the weight table: one stage in one load state.

    Loads as masses (kg), the share of the gross on the ball, the centre of gravity (m). ``unlisted`` names what
    stands but whose weight nobody wrote. ``is_ticked`` tells today as ticked from the plan of the stage.
    """

    stage: str
    load: str
    is_ticked: bool
    gross: Band
    tongue: Band
    share: Band
    on_wheels: Band
    axles: tuple[Band, ...]
    left: Band
    right: Band
    centre: tuple[Band, Band, Band]
    unlisted: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Checked:
    """The answer of ``check``. ``planned`` and ``difference`` are empty where plan and ticks answer alike.

    ``worse`` is the verdict of another load state that is worse for the use asked for than the one asked about.
    """

    rig: str
    path: str
    stage: str
    load: str
    date: str
    is_ticked: bool
    asked: Use
    units: HeaderUnits
    problems: tuple[Problem, ...]
    verdicts: tuple[Verdict, ...]
    planned: tuple[Verdict, ...]
    difference: tuple[str, ...]
    state: State | None
    state_planned: State | None
    findings: tuple[Finding, ...]
    accepted: tuple[Finding, ...]
    line_of: LineOf
    worse: Verdict | None = None


@dataclass(frozen=True, slots=True)
class Weighed:
    """The answer of ``weight``. ``compared`` are sentences on tickets and weighed parts, ``parked`` on tip-up.

    ``wheels`` says what each wheel of each axle carries, and the moments of inertia, in the slot asked for.
    """

    rig: str
    path: str
    stage: str
    load: str
    date: str
    units: HeaderUnits
    problems: tuple[Problem, ...]
    ticked: tuple[State, ...]
    planned: tuple[State, ...]
    weigh_next: tuple[str, ...]
    parked: tuple[str, ...]
    compared: tuple[str, ...]
    wheels: tuple[str, ...] = ()

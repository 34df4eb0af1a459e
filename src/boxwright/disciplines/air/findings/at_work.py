"""The rule of fresh air where people work: what a day with everything shut comes to, and that a door mends it."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.air.result import Breathing, Result
from boxwright.disciplines.air.sourced import STALE, TOO_MUCH, source_of
from boxwright.disciplines.air.telling import OWN_RULE, WORK, flow, ppm, ppm_band
from boxwright.finding import Finding, Kind
from boxwright.units import HeaderUnits


def air_at_work(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Judge the air of those who work in it, everything shut that can be.

    Asks: who works in it, how large the room is, what carbon dioxide comes to by the end of a day of work
    Limit: 5000 ppm, of a day of work; 2000 is stale
    Source: co2-at-work, practice
    Lever: an open door or window, larger vents
    """
    if result.use != "work":
        return
    if not result.workers:
        yield _asked(
            "people", "nobody is named who works in it, so nobody can say how long the air lasts",
            "Write who works in it: people: at the top of the file, and people: of the load state", 2,
        )  # fmt: skip
        return
    if result.breathing is None:
        yield _asked(
            "trailer.body", "nobody wrote how large the room is, so nobody can say how the air in it lasts at work",
            "Measure the room, and write body: of the trailer", 5,
        )  # fmt: skip
        return
    yield from _gathered(result, result.breathing, shown_in)


def _gathered(result: Result, breathing: Breathing, shown_in: HeaderUnits) -> Iterator[Finding]:
    day = breathing.morning
    if day.high <= STALE:
        return
    limit, row = (TOO_MUCH, "stop") if day.high > TOO_MUCH else (STALE, "stale")
    kind: Kind = "limit" if day.best > TOO_MUCH else "unknown" if day.high > TOO_MUCH else "advice"
    cooking = ", and something may be cooked on a flame" if result.flames else ""
    says = f"on a mild and still day, everything shut that can be, {flow(breathing.flow, shown_in)} comes in and"
    says += f" {result.workers} work in it{cooking}: carbon dioxide comes to {ppm_band(day)} by the end of a day of"
    over = {"limit": f"over {ppm(limit)}", "unknown": f"perhaps over {ppm(limit)}"}
    says += f" work, {over.get(kind, f'stale from {ppm(limit)} on')}"
    fixed = next((one.planned.of for one in result.vents if one.stays_open), "openings")
    yield Finding(
        "air/air-at-work", fixed, kind, says, day.high, limit, limit - day.high, "1", source_of("gas", row), fixed,
        act="Work with a door or a window open, or make the vents larger, one low and one high", minutes=1,
        could_stop=False, uses=WORK, because=(fixed,),
    )  # fmt: skip


def _asked(where: str, says: str, act: str, minutes: int) -> Finding:
    return Finding(
        "air/air-at-work", where, "unknown", says, source=OWN_RULE, lever=where, act=act, minutes=minutes,
        could_stop=False, uses=WORK, because=(where,),
    )  # fmt: skip

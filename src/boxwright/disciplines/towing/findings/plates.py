"""Rules of the trailer's own plates: gross weight, wheels, axles, coupler."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.towing.result import Result
from boxwright.disciplines.towing.telling import Question, judged
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, show


def gross_over_plate(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the trailer with all in it is heavier than its plate allows.

    Asks: is the gross weight within the greatest mass on the plate, in this load state
    Limit: the plate
    Source: own-plate
    Lever: carry less, or carry it in the tow vehicle
    """
    limit = result.trailer.gvwr
    is_written = limit is not None and limit.known
    room = f"; {show(limit.best - result.gross.band.low, 'kg', shown_in)} of room" if limit and is_written else ""
    asked = Question(
        "towing/gross-over-plate",
        "trailer.gvwr",
        "the gross weight",
        "the plate's greatest mass",
        "trailer.gvwr",
        "on the trailer's plate",
        lever="loads",
        act="Leave something behind, or carry it in the tow vehicle",
    )
    for finding in judged(asked, result.gross, limit, shown_in):
        yield finding if finding.kind == "stop" or not room or not result.gross.missing else _roomy(finding, room)


def _roomy(finding: Finding, room: str) -> Finding:
    """Return a question with what the unweighed may weigh together before the plate is reached."""
    return replace(finding, says=f"{finding.says}{room}")


def wheels_over_axles(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the wheels carry more than all axles are rated for, or than the plate allows on them.

    Asks: is the load on all wheels within the sum of the axle ratings, and within the plate's own figure for it
    Limit: the lesser of both
    Source: own-plate
    Lever: carry less, or shift weight towards the tongue where it has room
    """
    asked = Question(
        "towing/wheels-over-axles",
        "trailer.axles.gawr",
        "the load on the wheels",
        "the axles' rating together",
        "trailer.axles.gawr",
        "on the plate of each axle",
        lever="loads",
        act="Carry less, or shift weight towards the tongue",
    )
    yield from judged(asked, result.on_wheels, rated_on_wheels(result), shown_in)


def rated_on_wheels(result: Result) -> Band | None:
    """Return what all wheels may carry: all axle ratings together or the plate's own figure, whichever is less."""
    axles, on_wheels = result.trailer.axles.gawr, result.trailer.gtm
    whole = None
    if axles and all(one.known for one in axles):
        whole = Band(sum(one.best for one in axles), sum(one.low for one in axles), sum(one.high for one in axles))
    given = [one for one in (whole, on_wheels) if one is not None and one.known]
    return min(given, key=lambda one: one.best, default=None)


def axle_overloaded(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which axle carries more than its rating.

    Asks: is each axle within its own rating, with the coupling at the height it has
    Limit: the axle's plate
    Source: own-plate
    Lever: bring the frame level by the height of the ball, or shift weight
    """
    ratings = result.trailer.axles.gawr
    for index, reading in enumerate(result.axles):
        where = f"trailer.axles.gawr[{index}]"
        name = "the axle" if len(result.axles) == 1 else f"axle {index + 1}"
        asked = Question(
            "towing/axle-overloaded",
            where,
            f"the load on {name}",
            f"the rating of {name}",
            where,
            "on the plate of each axle",
            lever="trailer.coupler_height",
            act="Set the ball so that the frame is level, and weigh each axle",
        )
        yield from judged(asked, reading, ratings[index] if index < len(ratings) else None, shown_in)


def coupler_over_rating(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the trailer is heavier than its coupler is stamped for.

    Asks: is the gross weight within the coupler's rating
    Limit: the stamp on the coupler
    Source: own-plate
    Lever: a stronger coupler, or carry less
    """
    asked = Question(
        "towing/coupler-over-rating",
        "trailer.coupler.rating",
        "the gross weight",
        "the coupler's rating",
        "trailer.coupler.rating",
        "stamped on the coupler",
        lever="trailer.coupler.rating",
        act="Carry less, or have a stronger coupler fitted",
    )
    yield from judged(asked, result.gross, result.trailer.coupler.rating, shown_in)

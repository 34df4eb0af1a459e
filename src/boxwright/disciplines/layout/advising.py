"""What falls short of what people want, and the advice on it with both numbers."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.layout.people import Fit, What
from boxwright.disciplines.layout.result import Result
from boxwright.finding import Finding, Use

SAME = 1e-6
"""Lengths nearer than this are one (m): so little comes of adding them up."""


def short_of(result: Result, what: What) -> Iterator[Fit]:
    """Yield what falls short, as far as both are known."""
    for one in result.fits:
        if one.what == what and one.has.known and one.wants.known and one.has.best < one.wants.best - SAME:
            yield one


def perhaps_short_of(result: Result, what: What) -> Iterator[Fit]:
    """Yield what is as much as is wanted as it is written, and may be less by what of it is in doubt."""
    for one in result.fits:
        is_known = one.what == what and one.has.known and one.wants.known
        if is_known and one.has.low < one.wants.best - SAME <= one.has.best:
            yield one


def advice(code: str, one: Fit, says: str, act: str, source: str, uses: tuple[Use, ...], where: str = "") -> Finding:
    """Return an advice on what falls short, with both numbers, told of its person or opening or of another path."""
    has, wants = one.has.best, one.wants.best
    short = has - wants
    number, limit = (wants, has) if one.what in {"step", "reach", "lit"} else (has, wants)
    because = (one.at, one.under) if one.under else (one.at,)
    where = where or one.of
    return Finding(code, where, "advice", says, number, limit, short, "m", source, act=act, uses=uses, because=because)

"""The times of a logger's table as loggers write them, read where all of them together have only one meaning.

2026-01-05 06:00 is read as it stands, 5.1.2026 with the day first. Of 1/5/2026 the other dates of the file tell which
is the month: none has a thirteenth, and readings follow each other. What is left open the country of the rig tells.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta, timezone, tzinfo
from itertools import pairwise
from typing import Literal, NamedTuple

from boxwright.rig.logger_table import Unlike

Order = Literal["day", "month", "year"]
"""What stands first of a date."""
WRITTEN = re.compile(
    r"^(?P<first>\d{1,4})(?P<mark>[-/.])(?P<second>\d{1,2})(?P=mark)(?P<third>\d{4}|\d{2})[T,]?\s*"
    r"(?P<hour>\d{1,2}):(?P<minute>\d{2})(?::(?P<seconds>\d{2})(?:[.,]\d+)?)?\s*"
    r"(?P<half>[AaPp]\.?[Mm]\.?)?\s*(?P<zone>[Zz]|[+-]\d{2}:?\d{2})?$"
)
WRITE = "2026-01-05 06:00"
APART = timedelta(days=2)
"""Readings that follow each other are no further apart, or the date was read the wrong way round."""
MONTH_FIRST, EITHER_WAY = frozenset({"US"}), frozenset({"", "CA"})
"""Where the month is written first, and where nobody can tell, no country being written or both ways being usual."""
MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
          "December")  # fmt: skip


class Stamp(NamedTuple):
    """A time whose date may be read in more than one way: the line and its text, three numbers, seconds, its zone."""

    line: int
    text: str
    numbers: tuple[int, int, int]
    is_dotted: bool
    seconds: int
    zone: tzinfo | None


class Times(NamedTuple):
    """The moments of lines, and what is wrong with others."""

    moments: dict[int, datetime]
    wrong: tuple[tuple[int, str], ...]


def day_named(month: int, day: int, home: str) -> str:
    """Return a day in words, as it is said at home."""
    return f"{MONTHS[month - 1]} {day}" if home in MONTH_FIRST else f"{day} {MONTHS[month - 1]}"


def times_of(written: Iterable[tuple[int, str]], home: str) -> Times:
    """Return the moments of the lines of a table; ``home`` is the country of the rig, empty where nobody wrote it."""
    moments: dict[int, datetime] = {}
    stamps: list[Stamp] = []
    wrong: list[tuple[int, str]] = []
    for line, text in written:
        try:
            moments[line] = datetime.fromisoformat(text.strip())
        except ValueError:
            try:
                stamps.append(_stamp(line, text.strip()))
            except Unlike as error:
                wrong.append((line, str(error)))
    try:
        order = _order(stamps, home) if stamps else "year"
    except Unlike as error:
        return Times(moments, (*wrong, (stamps[0].line, str(error))))
    for one in stamps:
        try:
            moments[one.line] = _moment(one, order)
        except ValueError:
            wrong.append((one.line, f'"{one.text}" is no day of a year with the {order} first; write {WRITE}'))
    return Times(moments, tuple(sorted(wrong)))


def _stamp(line: int, text: str) -> Stamp:
    found = WRITTEN.match(text)
    if found is None:
        raise Unlike(f'"{text[:30]}" is no time of a reading; write {WRITE}')
    hour, minute, seconds = int(found["hour"]), int(found["minute"]), int(found["seconds"] or 0)
    half = (found["half"] or "").replace(".", "").upper()
    if not (1 <= hour <= 12 if half else hour <= 23) or minute > 59 or seconds > 59:
        raise Unlike(f'"{text}" has no time of a day; write {WRITE}, or 1/5/2026 6:00 AM')
    if half:
        hour = hour % 12 + (12 if half == "PM" else 0)
    numbers = (int(found["first"]), int(found["second"]), int(found["third"]))
    return Stamp(line, text, numbers, found["mark"] == ".", hour * 3600 + minute * 60 + seconds, _zone(found["zone"]))


def _zone(text: str | None) -> tzinfo | None:
    if not text:
        return None
    if text in "Zz":
        return UTC
    hours, minutes = int(text[1:3]), int(text[-2:])
    return timezone(timedelta(hours=hours, minutes=minutes) * (-1 if text[0] == "-" else 1))


def _order(stamps: list[Stamp], home: str) -> Order:
    """Return what stands first of the dates; raises `Unlike` where they may be read either way."""
    lasts = {one.numbers[2] for one in stamps}
    if len(lasts) > 2 and max(lasts) < 100:
        raise Unlike(f'"{stamps[0].text}" has no year of four digits that can be told from the day; write {WRITE}')
    firsts, seconds = max(one.numbers[0] for one in stamps), max(one.numbers[1] for one in stamps)
    if firsts > 31:
        return "year"
    if firsts > 12 and seconds > 12:
        raise Unlike(
            f'some of its dates have the day first and some the month, from "{stamps[0].text}" on; write {WRITE}'
        )
    if firsts > 12 or any(one.is_dotted for one in stamps):
        return "day"
    if seconds > 12:
        return "month"
    either: tuple[Order, Order] = ("day", "month")
    follow = [one for one in either if _follows(stamps, one)]
    if len(follow) == 1:
        return follow[0]
    if home in EITHER_WAY:
        one, other = (stamps[0].numbers[at] for at in (0, 1))
        may_be = f"{day_named(one, other, 'US')} or {day_named(other, one, 'US')}"
        raise Unlike(f'"{stamps[0].text}" may be {may_be}; write it as {WRITE}, or countries: at the head of the rig')
    return "month" if home in MONTH_FIRST else "day"


def _follows(stamps: list[Stamp], order: Order) -> bool:
    """Return whether times read that way follow each other as a logger takes them."""
    try:
        read = [_moment(one, order).replace(tzinfo=None) for one in stamps]
    except ValueError:
        return False
    return all(abs(after - before) <= APART for before, after in pairwise(read))


def _moment(one: Stamp, order: Order) -> datetime:
    first, second, third = one.numbers
    year, month, day = {
        "year": (first, second, third), "month": (third, first, second), "day": (third, second, first)
    }[order]  # fmt: skip
    midnight = datetime(year + 2000 if year < 100 else year, month, day, tzinfo=one.zone)
    return midnight + timedelta(seconds=one.seconds)

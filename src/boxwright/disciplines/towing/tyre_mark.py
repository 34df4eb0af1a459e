"""What the sidewall of a tyre says: its size, load index and speed symbol, and the week it was made."""

from __future__ import annotations

import re
from datetime import date

from boxwright.records import dataclass

_METRIC = re.compile(
    r"(?P<prefix>P|LT|ST)?\s*\d{3}(?:/\d{2,3})?\s*[RBD-]\s*\d{2}(?:\.\d)?\s*C?"
    r"(?:\s*(?P<index>\d{2,3})(?:/(?P<second>\d{2,3}))?\s*(?P<symbol>[A-Z]))?",
    re.IGNORECASE,
)
_INCH = re.compile(
    r"\d{1,2}(?:\.\d{1,2})?(?:\s*[xX]\s*\d{1,2}(?:\.\d{1,2})?)?\s*[R-]\s*\d{1,2}(?:\.\d)?", re.IGNORECASE
)
_CENTURY = 2000


@dataclass(frozen=True, slots=True)
class TyreMark:
    """A size that could be read; a ``P`` before it is for cars, an ``ST`` for trailers.

    ``load_index`` is the lower of two; 0 and an empty symbol stand for not written.
    """

    is_for_passenger_cars: bool
    is_for_trailers: bool
    load_index: int
    speed_symbol: str


def read_tyre_mark(text: str) -> TyreMark | None:
    """Return what a sidewall says (``ST205/75R15``, ``195/50R13C 104/102N``, ``4.80-8``), or None if unreadable."""
    plain = text.strip()
    found = _METRIC.fullmatch(plain)
    if found is None:
        return TyreMark(False, False, 0, "") if _INCH.fullmatch(plain) else None
    indices = [int(one) for one in (found["index"], found["second"]) if one]
    prefix = (found["prefix"] or "").upper()
    return TyreMark(prefix == "P", prefix == "ST", min(indices, default=0), (found["symbol"] or "").upper())


def read_week(text: str, judged_on: date) -> date | None:
    """Return the Monday of the week a tyre was made, from four figures such as ``1325``: week 13 of 2025."""
    plain = text.strip()
    if not re.fullmatch(r"[0-9]{4}", plain):
        return None
    week, year = int(plain[:2]), _CENTURY + int(plain[2:])
    try:
        made = date.fromisocalendar(year, week, 1)
    except ValueError:
        return None
    return made if made <= judged_on else None

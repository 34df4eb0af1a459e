"""What every entry of a rig file is made of: a frozen model whose scalars all arrive as text."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict

YES = frozenset({"yes", "true", "on", "y", "fitted", "inside"})
NO = frozenset({"no", "false", "off", "n", "none"})


class Entry(BaseModel):
    """An entry of the rig file. Frozen, compared by value; an unknown key is an error that names the key.

    Its reader is built when the first such entry is read: a rig has few of the kinds there are, and `check` is quick.
    """

    model_config = ConfigDict(
        frozen=True, extra="forbid", populate_by_name=True, arbitrary_types_allowed=True, defer_build=True
    )


def read_yes_no(given: Any) -> Any:
    """Return True, False or None (``unknown``) for what is written as yes, no or unknown."""
    if given is None or isinstance(given, bool):
        return given
    word = str(given).strip().lower()
    if word in YES:
        return True
    if word in NO:
        return False
    if word in {"unknown", "?"}:
        return None
    raise ValueError(f'cannot read yes or no "{given}"; write it as yes, no or unknown')


def read_names(given: Any) -> Any:
    """Return a tuple of texts for a list, or for one text alone."""
    if isinstance(given, (list, tuple)):
        return tuple(given)
    return (str(given),)


def read_day(given: Any) -> Any:
    """Return the day written as 2026-05-02; 2026-05 is its first day; ``unknown`` is None."""
    if given is None or isinstance(given, date):
        return given
    text = str(given).strip()
    if text == "unknown":
        return None
    pieces = text.split("-")
    try:
        numbers = [int(piece) for piece in pieces]
        if len(pieces[0]) == 4 and len(numbers) in (2, 3):
            return date(*numbers) if len(numbers) == 3 else date(numbers[0], numbers[1], 1)
    except ValueError:
        pass
    raise ValueError(f'cannot read the date "{text}"; write it as year-month-day, such as 2026-05-02')


def read_pairs(given: Any) -> Any:
    """Return the pairs of a map of texts, so that an entry stays hashable; a blank value is the empty text."""
    if not isinstance(given, dict):
        return given
    return tuple((str(key), "" if value is None else str(value)) for key, value in given.items())


YesNo = Annotated[bool | None, BeforeValidator(read_yes_no)]
Names = Annotated[tuple[str, ...], BeforeValidator(read_names)]
Day = Annotated[date | None, BeforeValidator(read_day)]

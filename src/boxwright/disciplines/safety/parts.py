"""Written keys of safety: alarms, expiry dates, ways out and what opens them from inside."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import BeforeValidator, Field

from boxwright.model.entry import Day, Entry, Names
from boxwright.units import CannotRead

ALARMS = frozenset({"CO", "smoke", "gas"})
EGRESS = {"wanted": "wanted", "yes": "yes", "true": "yes", "no": "no", "false": "no", "none": "no"}
EGRESS |= {"unknown": "unknown", "?": "unknown"}


def read_alarms(given: object) -> object:
    """Return what an alarm warns of, each in its one spelling."""
    words = given if isinstance(given, (list, tuple)) else str(given).replace("+", ",").split(",")
    found = []
    for word in (str(each).strip() for each in words):
        name = next((alarm for alarm in ALARMS if alarm.lower() == word.lower()), None)
        if name is None:
            raise CannotRead(word, "what the alarm warns of", "CO, smoke, gas or [CO, smoke]")
        found.append(name)
    return tuple(found)


def read_egress(given: object) -> object:
    """Return whether an opening is meant as a way out: wanted, yes, no or unknown."""
    word = str(given).strip().lower()
    if word not in EGRESS:
        raise CannotRead(str(given), "the way out", "wanted, yes, no or unknown")
    return EGRESS[word]


class Facet(Entry):
    """What safety reads of a part or an opening."""

    expires: Day = Field(None, description="the day or month it is out of date, such as 2031-02")
    alarm: Annotated[Names, BeforeValidator(read_alarms)] = Field(
        (), description="what it warns of: CO, smoke, gas, or [CO, smoke]"
    )
    release: str = Field(
        "",
        description="an opening: inside or none, can it be opened from inside; a part: what it releases, such as ramp",
    )
    egress: Annotated[str, BeforeValidator(read_egress)] = Field(
        "", description="is it meant as a way out: wanted, yes, no"
    )


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class Section:
    """The settings of safety: none yet."""

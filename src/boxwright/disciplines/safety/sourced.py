"""The sourced numbers and words of safety, and the rules of the country the trailer is built for."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from functools import cache, lru_cache

from boxwright.source import Rule, Source, load_rules, load_sources, load_table

PACKAGE = "boxwright.disciplines.safety"

WAYS_OUT = "ways out of a sleeping place"
NOT_PAST = "way past another way out, but for one within"
CLEAR_WIDTH = "clear width of a window to leave by"
CLEAR_HEIGHT = "clear height of a window to leave by"


def _columns(name: str, *wanted: str) -> dict[str, tuple[str | float | None, ...]]:
    table = load_table(PACKAGE, name)
    places = [table.columns.index(one) for one in wanted]
    return {str(row.cells[0]): tuple(row.cells[place] for place in places) for row in table.rows}


LENGTHS: dict[str, float] = {
    name: limit for name, (limit,) in _columns("lengths", "limit").items() if isinstance(limit, float)
}
"""In metres."""
SOURCE_OF_LENGTH: dict[str, str] = {str(row.cells[0]): row.source for row in load_table(PACKAGE, "lengths").rows}
FUELS: dict[str, tuple[bool, str]] = {
    name: (fumes == "yes", str(kind)) for name, (fumes, kind) in _columns("fuels", "fumes", "kind").items()
}
"""Whether a fuel gives off vapour that lights in a room, and whether it is a gas, a liquid, a solid or none."""
WORDS: dict[str, str] = {name: str(what) for name, (what,) in _columns("words", "what").items()}
EMERGENCY: dict[str, str] = {name: str(number) for name, (number,) in _columns("emergency", "number").items()}
"""Whom to call, by country."""


def _parts_of_the_card() -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for part, says in _columns("door_card", "part", "says").values():
        found[str(part)] = (*found.get(str(part), ()), str(says))
    return found


DOOR_CARD: dict[str, tuple[str, ...]] = _parts_of_the_card()
"""What stands on the card at the door, by its part: co, fire, safe."""

_PIECES = re.compile(r"[a-z]+")


def word_means(name: str) -> str:
    """Return what a part is by the words of its name: extinguisher, generator or flame; empty where none tells."""
    pieces = f" {' '.join(_PIECES.findall(name.lower()))} "
    return next((what for word, what in WORDS.items() if f" {word} " in pieces), "")


@dataclass(frozen=True, slots=True)
class Law:
    """The rules of the country at home. ``is_known`` is False where none of it is known here."""

    country: str
    rules: tuple[Rule, ...]

    @property
    def is_known(self) -> bool:
        """Return whether anything is known of that country's rules of sleeping."""
        return bool(self.rules)

    def rule(self, asks: str) -> Rule | None:
        """Return the rule that asks one thing, its State's or province's own before the nation's."""
        found = [one for one in self.rules if one.asks == asks]
        return next((one for one in found if one.where != "national"), found[0] if found else None)


@lru_cache(maxsize=8)
def law_of(countries: tuple[str, ...], judged_on: date) -> Law:
    """Return what binds how a trailer is built: the rules of the first country, never those of a neighbour."""
    if not countries:
        return Law("", ())
    country, _, part = countries[0].upper().partition("-")
    rules = load_rules(PACKAGE, [country])
    return Law(
        country,
        tuple(one for one in rules if one.is_in_force(judged_on) and one.where in ("national", part)),
    )


@cache
def sources_named() -> dict[str, Source]:
    """Return the sources of the rules and tables by their key, read when the first rule speaks."""
    return load_sources(PACKAGE, with_checks=False)

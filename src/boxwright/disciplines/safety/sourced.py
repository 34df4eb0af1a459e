"""The sourced numbers and words of safety, and the rules of the country the trailer is built for."""

from __future__ import annotations

import re
from datetime import date
from functools import cache, lru_cache

from boxwright.records import dataclass
from boxwright.source import Rule, Source, load_rules, load_sources, load_table

PACKAGE = "boxwright.disciplines.safety"

WAYS_OUT = "ways out of a sleeping place"
NOT_PAST = "way past another way out, but for one within"
CLEAR_WIDTH = "clear width of a window to leave by"
CLEAR_HEIGHT = "clear height of a window to leave by"
SMOKE = "smoke alarm where somebody sleeps"
CO = "carbon monoxide alarm where somebody sleeps"
EXTINGUISHER = "extinguisher where somebody sleeps"
TO_LOOK_AT = "to be looked at"
"""A rule of what no rig file says: its note says what to look at."""
TOPICS = {
    WAYS_OUT: "how many ways out",
    CLEAR_WIDTH: "their size",
    SMOKE: "smoke alarms",
    CO: "carbon monoxide alarms",
    EXTINGUISHER: "extinguishers",
}
"""What is asked of every country, and its words."""
BINDING = ("law", "standard")
ONLY_RECALLED = ("from memory", "common practice, no source")
"""How a rule was read that nobody read."""
MEASURED_BY = "US"
"""The country whose measures are taken, and said to be taken, where the home has none that is known."""


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
LAST_WORDS: dict[str, str] = {name: str(what) for name, (what,) in _columns("last_words", "what").items()}
EMERGENCY: dict[str, str] = {name: str(number) for name, (number,) in _columns("emergency", "number").items()}
"""Whom to call, by country."""
UNREAD: dict[str, str] = {name: str(what) for name, (what,) in _columns("unread", "document").items()}
"""A document that exists and was not read, by country: where to look."""


def _parts_of_the_card() -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for part, says in _columns("door_card", "part", "says").values():
        found[str(part)] = (*found.get(str(part), ()), str(says))
    return found


DOOR_CARD: dict[str, tuple[str, ...]] = _parts_of_the_card()
"""What stands on the card at the door, by its part: co, fire, safe."""

_PIECES = re.compile(r"[a-z]+")
WITHOUT_FLAME = frozenset({"electric", "fan"})
"""Words in the name of a heater that say that nothing burns in it."""


def word_means(name: str) -> str:
    """Return what a part is by the words of its name: extinguisher, generator, flame, fuel, holder; empty for none."""
    pieces = f" {' '.join(_PIECES.findall(name.lower()))} "
    found = next((what for word, what in WORDS.items() if f" {word} " in pieces), "")
    if found or WITHOUT_FLAME.intersection(pieces.split()):
        return found
    return next((what for word, what in LAST_WORDS.items() if pieces.endswith(f" {word} ")), "")


ALSO_CALLED = {"GB": "UK"}
"""Countries that go by two letters more than one way."""


def country_of(place: str) -> str:
    """Return the country of a place of the route, such as US of US-NC."""
    country = place.upper().partition("-")[0]
    return ALSO_CALLED.get(country, country)


@dataclass(frozen=True, slots=True)
class Law:
    """The rules of the country at home, and what the other countries of the route ask of whoever sleeps there.

    ``places`` are all of the route as written, home first: US-NC, CA-BC.
    """

    country: str
    rules: tuple[Rule, ...]
    places: tuple[str, ...] = ()

    @property
    def route(self) -> tuple[str, ...]:
        """Return the other countries of the route, in the order written."""
        return tuple(dict.fromkeys(one for one in map(country_of, self.places) if one != self.country))

    @property
    def is_known(self) -> bool:
        """Return whether it is known how many ways out the home wants, from more than advice or memory."""
        return WAYS_OUT not in self.unknown(self.country)

    def unknown(self, country: str) -> tuple[str, ...]:
        """Return what no rule of a country is known of that binds and was read, if only as a quotation."""
        read = (one for one in self.rules if one.binding in BINDING and one.read_as not in ONLY_RECALLED)
        known = {one.asks for one in read if one.country == country}
        return tuple(asks for asks in TOPICS if asks not in known)

    def rule(self, asks: str) -> Rule | None:
        """Return the rule that asks one thing: the home's, its State's or province's own before the nation's."""
        found = [one for one in self.rules if one.asks == asks]
        return min(found, key=lambda one: (one.country != self.country, one.where == "national"), default=None)

    def asking(self, asks: str) -> tuple[Rule, ...]:
        """Return every rule of the route that asks one thing, what binds before what advises."""
        found = (one for one in self.rules if one.asks == asks)
        return tuple(sorted(found, key=lambda one: (one.binding not in BINDING, one.country)))


@lru_cache(maxsize=8)
def law_of(countries: tuple[str, ...], judged_on: date) -> Law:
    """Return what binds: how it is built by the first country alone, how it is slept in by each one of the route."""
    places = tuple(dict.fromkeys((country_of(one), one.upper().partition("-")[2]) for one in countries))
    if not places:
        return Law("", ())
    home = places[0][0]
    rules: dict[tuple[str, str, str], Rule] = {}
    for country, part in places:
        for one in load_rules(PACKAGE, [country]):
            binds = one.applies == "parked" or (one.applies == "built" and (country, part) == places[0])
            if binds and one.is_in_force(judged_on) and one.where in ("national", part):
                rules[(country, one.where, one.id)] = one
    return Law(home, tuple(rules.values()), tuple(dict.fromkeys(one.upper() for one in countries)))


@cache
def sources_named() -> dict[str, Source]:
    """Return the sources of the rules and tables by their key, read when the first rule speaks."""
    return load_sources(PACKAGE, with_checks=False)

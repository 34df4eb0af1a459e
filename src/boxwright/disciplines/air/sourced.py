"""The sourced numbers and words of air, and the rules of the country the trailer is built for."""

from __future__ import annotations

import re
from datetime import date
from functools import cache, lru_cache

from boxwright.source import Rule, Source, load_rules, load_sources, load_table
from boxwright.units import Band

PACKAGE = "boxwright.disciplines.air"

GAS_AIR = "fixed free area where gas burns"
GAS_LOCKER = "vents of a gas locker, as a share of its floor"

_PIECES = re.compile(r"[a-z]+")


def _numbers(name: str, column: str) -> dict[str, float]:
    table = load_table(PACKAGE, name)
    place = table.columns.index(column)
    return {str(row.cells[0]): cell for row in table.rows if isinstance(cell := row.cells[place], float)}


def _bands(name: str) -> dict[str, Band]:
    """Return the bands of a table: what nobody wrote in the rig, so each is marked as assumed."""
    lows, bests, highs = (_numbers(name, column) for column in ("low", "best", "high"))
    return {one: Band(bests[one], lows[one], highs[one], spread="interval", assumed=True) for one in bests}


SHARES: dict[str, Band] = _bands("shares")
"""What of a rough opening lets air through, by the kind of vent."""
CRACKS: dict[str, Band] = _bands("cracks")
"""Leakage area (m2) at 4 Pa, lined and bare."""
CARBON_DIOXIDE: Band = _bands("sleeper")["carbon dioxide"]
"""What one sleeper breathes out, m3/s."""
AT_WORK: Band = _bands("awake")["carbon dioxide"]
"""What somebody awake breathes out, m3/s."""
BREATH, BREATH_AT_WORK = (_bands("breath")[one] for one in ("asleep", "at work"))
"""Water one person gives off, kg/s."""
WARMTH, WARMTH_AT_WORK = (_bands("warmth")[one] for one in ("asleep", "at work"))
"""Heat one person gives off that is felt, W."""
UNWRITTEN: Band = _bands("unwritten")["height of the room"]
"""How high (m) a room is that nobody wrote the height of."""
DINNER: Band = _bands("dinner")["a person"]
"""Water (kg) that goes into the air as dinner is cooked, for each person."""
COOKING: dict[str, Band] = _bands("cooking")
WET_GEAR: dict[str, Band] = _bands("wet-gear")
LATENT = _numbers("latent", "heat")["water at 20 C"]
"""J/kg that drying takes from the room."""
DISCHARGE, WIND_SHARE = (_numbers("coefficients", "value")[one] for one in ("discharge", "wind share"))
STACK = _numbers("driving", "value")["stack"]
STOREY = _numbers("storey", "height")["one"]
OUTDOORS, STALE, TOO_MUCH = (_numbers("gas", "share")[one] for one in ("outdoors", "stale", "stop"))
A_PERSON = _numbers("air", "flow")["a person"]
"""Outdoor air for one person, m3/s."""
WARMER = _numbers("still-night", "warmer")["room over outside"]
NIGHT, WORKDAY = (_numbers("asleep", "time")[one] for one in ("a night", "a day of work"))
MILD, MILD_HUMIDITY, KEPT_AT, WANTED = (
    _numbers("outdoors", column)["mild and wet"] for column in ("temperature", "humidity", "inside", "wanted")
)
FROSTY_HUMIDITY = _numbers("frosty", "humidity")["outdoors"]
FILM, RUNS = (_numbers("wet", "amount")[one] for one in ("a film", "runs"))
DROPS = _numbers("drops", "mass")["worth a word"]
MOULD = _numbers("mould", "humidity")["grows"]
DAMP_WOOD, METER = (_numbers("wood", "share")[one] for one in ("damp", "meter"))
BY_A_FLAME, A_SLEEPER = (_numbers("by-a-flame", "area")[one] for one in ("in all", "a sleeper"))
UNREAD: dict[str, str] = {str(row.cells[0]): str(row.cells[1]) for row in load_table(PACKAGE, "unread").rows}
"""A document that exists and was not read, by country: where to look."""
STILL_AIR = _numbers("permeability", "value")["still air"]
LITTLE, MUCH = (_numbers("settling", "amount")[one] for one in ("little", "much"))
VAPOUR: dict[str, float] = _numbers("vapour", "best")
"""As how many times its own thickness of still air a material holds vapour back."""
AGAINST_NOTHING = 1.0
"""What a material that is not known holds back: no more than still air."""
OF_ITS_FLOOR = _numbers("locker", "share")["of its floor"]
NEAR = _numbers("gas-drop", "length")["over the floor"]
"""How high (m) over the deck a hole may begin that heavy gas falls out by."""
WORDS: dict[str, str] = {str(row.cells[0]): str(row.cells[1]) for row in load_table(PACKAGE, "words").rows}


def source_of(table: str, name: str) -> str:
    """Return the source of one row of a table."""
    return next(row.source for row in load_table(PACKAGE, table).rows if row.cells[0] == name)


def word_means(name: str) -> str:
    """Return what an opening is by the words of its name; empty where none tells."""
    pieces = _PIECES.findall(name.lower())
    return next((WORDS[one] for one in pieces if one in WORDS), "")


@lru_cache(maxsize=64)
def vapour_factor(material: str) -> float:
    """Return as how many times its own thickness of still air a material holds vapour back, by the words for it."""
    words = f" {' '.join(_PIECES.findall(material.lower()))} "
    found = [(len(name), factor) for name, factor in VAPOUR.items() if f" {name} " in words]
    return max(found, default=(0, AGAINST_NOTHING))[1]


@lru_cache(maxsize=8)
def rules_at_home(countries: tuple[str, ...], judged_on: date) -> tuple[Rule, ...]:
    """Return the rules on built-in air of the first country of the route, its State's own among them."""
    if not countries:
        return ()
    country, _, part = countries[0].upper().partition("-")
    found = load_rules(PACKAGE, [{"GB": "UK"}.get(country, country)])
    return tuple(one for one in found if one.is_in_force(judged_on) and one.where in ("national", part))


@cache
def sources_named() -> dict[str, Source]:
    """Return the sources of the rules and tables by their key, read when the first rule speaks."""
    return load_sources(PACKAGE, with_checks=False)

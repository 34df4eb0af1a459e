"""What a piece of the way of the fuel is, by the words an owner writes for it, and on which side of the shell."""

from __future__ import annotations

import re
from typing import Literal

Kind = Literal["valve", "filter", "pump", "line", "joint", "end", "hole", "other"]
Where = Literal["in the room", "outside", "unknown"]

_SHUTS = r"(?:valve|tap|cock|stopcock|shut-?off|isolator)s?"
_KEEPS = "tank|can|jug|bottle|cylinder|reservoir"
_DRAWS = "standpipe|pick-?up"
_KINDS: tuple[tuple[Kind, str], ...] = (
    ("filter", "filter|strainer|separator|trap|bowl"),
    ("pump", "pump|primer|bulb"),
    ("joint", "joint|coupling|coupler|union|tee|t-piece|clip|clamp|connector|connect|fitting|nipple|barb|elbow|plug"),
    ("valve", _SHUTS),
    ("line", "line|hose|tube|tubing|pipe|pipework"),
    ("end", rf"{_KEEPS}|{_DRAWS}|heater|burner|stove|furnace"),
    ("hole", "grommet|gland|bulkhead|hole|plate|sleeve|floor"),
)
_STORES = r"(?:the |a |own |fuel |diesel |petrol |propane |gas |kerosene )*(?:tank|can|bottle|cylinder|jug)s?"

_WHERETO = r"\b(?:to|from|between|before|after|behind|beside|near|at|of|through|into)\b"
"""What follows these words names another piece: a hose to the valve is a hose."""
_NO_VALVE = (
    rf"\b(?:no|not|without|lacks|lacking|missing)\b(?:\s+[\w-]+){{0,2}}?(?:\s+{_SHUTS}\b)+"
    rf"|\b{_SHUTS}\b[^,]*\b(?:none|missing|not (?:fitted|there|yet)|later|to be fitted|to come)\b"
)
_LETS_OUT = rf"\b(?:drain|bleed|check|non-?return|one-?way|relief|foot|anti-?siphon)(?:ing|er)?[ -]?(?:{_SHUTS}|plug)\b"
"""These let something out, or let it through one way: none of them shuts a tank off."""
_VALVE = rf"\b{_SHUTS}\b"
_IN_DOUBT = r"\?|\b(?:unknown|unsure|not (?:sure|known)|maybe|perhaps|probably)\b"

_THE_TRAILER = r"(?:floor|deck|trailer|chassis|frame|body|box|van)"
_OF_THE_ROOM = (
    r"(?:room|box|cabin|trailer|galley|kitchen|living space|bench|cupboard|cabinet|wardrobe|bed|bunk|seat|sofa|dinette"
    r"|sink|counter|table|mattress|shelf)"
)
_BELOW = rf"\b(?:below|under|beneath|underneath)(?: the)? {_THE_TRAILER}\b|\bunder-?floor\b|\bunderslung\b"
_ON_TONGUE = r"\b(?:on|in|inside)(?: the)? (?:tongue|drawbar|a-frame|hitch|frame rail|chassis)(?: box| locker)?\b"
_OUT = r"\b(?:outside|outdoors)\b"
_IN = rf"\b(?:inside|indoors|in(?: the| a)? {_OF_THE_ROOM}|(?:below|under|beneath|behind)(?: the| a)? {_OF_THE_ROOM})\b"


def is_any_store(written: str) -> bool:
    """Return whether a piece is a tank by a common word only, such as ``tank`` or ``gas bottle``: it names none."""
    return re.fullmatch(_STORES, written.strip(), re.IGNORECASE) is not None


def is_store(written: str) -> bool:
    """Return whether a piece is something that holds fuel, by its words: a tank on the way to the burner is one."""
    named = _named(written)
    return _at(named, _KEEPS) is not None and _at(named, _DRAWS) is None


def kind_of(written: str) -> Kind:
    """Return what a piece is: a valve with something that is opened is that; what no word is known for is other."""
    named = _named(written)
    return next((kind for kind, words in _KINDS if _at(named, words) is not None), "other")


def is_driven_pump(written: str) -> bool:
    """Return whether a piece is a pump that runs on electricity; one that a hand works does not."""
    return kind_of(written) == "pump" and not _has(r"\b(?:hand|primer|bulb)\b", written)


def shuts_off(written: str) -> bool:
    """Return whether a piece surely is, or has, a valve that shuts off what comes behind it."""
    return not is_in_doubt(written) and _has(_VALVE, _named(written))


def shuts_itself_off(written: str) -> bool:
    """Return whether a valve stands before what of a piece is opened, as in a valve and filter."""
    named = _named(written)
    opened = next((_at(named, words) for kind, words in _KINDS if kind == kind_of(written)), None)
    valve = _at(named, _SHUTS)
    return shuts_off(written) and valve is not None and (opened is None or valve <= opened)


def has_no_valve(written: str) -> bool:
    """Return whether a piece tells that there is no valve."""
    return _has(_NO_VALVE, written)


def is_in_doubt(written: str) -> bool:
    """Return whether a piece is written as not known."""
    return _has(_IN_DOUBT, written)


def is_below_deck(written: str) -> bool:
    """Return whether a piece is written as below the floor."""
    return _has(_BELOW, written)


def where_of(written: str) -> Where:
    """Return on which side of the shell a piece is written to lie; what is under a bunk is in the room."""
    if is_in_doubt(written) or _has(r"\bnot\b", written):
        return "unknown"
    rest = _without(_ON_TONGUE, _without(_BELOW, written))
    is_out, is_in = rest != written or _has(_OUT, written), _has(_IN, rest)
    if is_in == is_out:
        return "unknown"
    return "in the room" if is_in else "outside"


def _named(written: str) -> str:
    """Return the words of a piece that name it, without those it lies before or behind and what is not there."""
    there = re.sub(_LETS_OUT, "plug", _without(_NO_VALVE, written), flags=re.IGNORECASE)
    return re.split(_WHERETO, there, maxsplit=1, flags=re.IGNORECASE)[0]


def _has(words: str, written: str) -> bool:
    return re.search(words, written, re.IGNORECASE) is not None


def _without(words: str, written: str) -> str:
    return re.sub(words, " ", written, flags=re.IGNORECASE)


def _at(written: str, words: str) -> int | None:
    found = re.search(rf"\b(?:{words})(?:e?s)?\b", written, re.IGNORECASE)
    return found.start() if found is not None else None

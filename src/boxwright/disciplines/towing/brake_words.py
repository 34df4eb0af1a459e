"""What the words for a trailer's brakes say: none, fitted, or nothing that anybody could rely on."""

from __future__ import annotations

import re
from typing import Literal

Said = Literal["nothing", "none", "fitted", "unclear"]

NONE = frozenset({"none", "no", "unbraked", "no brakes", "without", "without brakes", "not braked"})
SURGE = frozenset({"surge", "overrun", "inertia", "override"})
KINDS = SURGE | frozenset("electric hydraulic eoh air vacuum mechanical disc discs disk disks drum drums".split())
_BESIDE = frozenset(
    "brake brakes braked over and with on all both wheel wheels axle axles auto automatic reverse reversing self"
    " adjusting front rear x coupling coupler hitch rod cable operated actuated driver actuator type in inch inches"
    " mm".split()
)
"""Words that may stand beside a kind and change nothing; any other leaves open whether the brakes work."""
_NUMBER = re.compile(r"\d+(?:[./]\d+)?(?:in|mm|v)?")


def read_brakes(text: str) -> Said:
    """Return what a text says: every word must be known, so that "electric, not wired yet" is neither brakes nor none.

    ``nothing`` is an empty text.
    """
    plain = " ".join(text.lower().split())
    if not plain:
        return "nothing"
    if plain in NONE:
        return "none"
    words = _words(plain)
    is_sure = all(word in KINDS or word in _BESIDE or _NUMBER.fullmatch(word) for word in words)
    return "fitted" if is_sure and not KINDS.isdisjoint(words) else "unclear"


def are_surge(text: str) -> bool:
    """Return whether the brakes are worked by the trailer pushing on its coupler."""
    return not SURGE.isdisjoint(_words(text.lower()))


def are_electric(text: str) -> bool:
    """Return whether electricity works the brakes, so that their breakaway switch needs a battery."""
    return "electric" in _words(text.lower())


def _words(plain: str) -> list[str]:
    joined = re.sub(r"\bover[- ](run|ride)\b", r"over\1", plain)
    return [word.strip(".") for word in re.split(r"[^a-z0-9./]+", joined) if word.strip(".")]

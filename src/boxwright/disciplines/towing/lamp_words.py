"""What the words for a trailer's lamps say: which of the lamps that a rule may ask for are fitted."""

from __future__ import annotations

import re
from functools import lru_cache

from boxwright.disciplines.towing.sourced import LAMP_WORDS, LAMPS

REFLECTORS = "reflectors"
"""What rules of lamps ask for that does not burn."""
NONE = frozenset({"none", "no", "nothing"})
IN_DOUBT = frozenset("no not none without missing broken dead yet planned ordered later unknown off".split())
"""A lamp with one of these beside it is none that anybody could rely on."""


def _stems(text: str) -> frozenset[str]:
    return frozenset(word.removesuffix("s") for word in re.findall(r"[a-z]+", text.lower()))


ASKED: dict[str, frozenset[str]] = {name: _stems(name) for names in LAMPS.values() for name in names}
"""Every lamp that some rule asks for, with the words by which it is known, in any order."""


def read_lamps(written: tuple[str, ...]) -> tuple[frozenset[str], tuple[str, ...]]:
    """Return the lamps that are fitted, in the words of the rules, and the texts that say none known here."""
    fitted: set[str] = set()
    unclear: list[str] = []
    for text in written:
        if text.strip().lower() in NONE:
            continue
        said = _said(text)
        fitted |= said or frozenset()
        if said is None:
            unclear.append(text)
    return frozenset(fitted), tuple(unclear)


@lru_cache(maxsize=1_000)
def _said(text: str) -> frozenset[str] | None:
    """Return the lamps one text names, several for a combined one, none for one no rule asks for; None if unclear."""
    words = _stems(text)
    if words & IN_DOUBT:
        return None
    named = {name for name, known_by in ASKED.items() if known_by <= words}
    left = words.difference(*(ASKED[name] for name in named))
    meant = [names for word, names in LAMP_WORDS.items() if word in left]
    if not named and not meant:
        return None
    return frozenset(named.union(*meant))

"""How much room a line of text takes, in the lettering that every writer uses, and what of it can be printed at all.

A text is measured by the advances of its characters: the fonts in render/fonts have no kerning and no ligatures.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from functools import lru_cache

from boxwright.drawing.advances import BOLD, CAP_HEIGHT, REGULAR, UNITS

EM = UNITS / CAP_HEIGHT
"""The size a writer asks the font for, over the height of a capital letter."""

DEPTH = 0.35
"""How far letters go below the baseline, over the height of a capital letter; the deepest is a cedilla."""

RISE = 1.3
"""How far a capital letter with an accent goes above the baseline, over the height of one without."""

UNKNOWN = "\N{REPLACEMENT CHARACTER}"

_BLANK = frozenset("\t\n\v\f\r\x1c\x1d\x1e\x1f\x85\u2028\u2029")
_REMOVED = {"Cf": "", "Cc": UNKNOWN, "Cs": UNKNOWN, "Co": UNKNOWN, "Cn": UNKNOWN}
"""By kind of character: what only steers a screen goes; what no paper can show is shown as missing."""


class _Advances(dict[str, int]):
    """The advance of each character; one that the lettering lacks is a full square."""

    def __missing__(self, character: str) -> int:
        return UNITS


def _by_character(runs: Mapping[int, tuple[int, ...]]) -> _Advances:
    """Return the advance of each character."""
    return _Advances({chr(start + place): width for start, run in runs.items() for place, width in enumerate(run)})


_ADVANCES = (_by_character(REGULAR), _by_character(BOLD))


def printable(text: str) -> str:
    """Return a text as it can stand on paper: one line, nothing that steers a screen or turns what stands beside it.

    Line ends and tabs become spaces, an accent joins its letter, other control characters and half characters become
    the sign for "cannot be shown". Doing it twice changes nothing.
    """
    if text.isascii() and text.isprintable():
        return text
    shown = "".join(" " if one in _BLANK else _REMOVED.get(unicodedata.category(one), one) for one in text)
    return unicodedata.normalize("NFC", shown)


def can_be_shown(character: str, is_bold: bool = False) -> bool:
    """Return whether the lettering has a character."""
    return character in _ADVANCES[is_bold]


@lru_cache(maxsize=20_000)
def text_width(text: str, cap_height: float, is_bold: bool = False) -> float:
    """Return how wide a text is as printed, in the unit of the height of its capital letters.

    A character that the lettering lacks counts as a full square: no other font draws it wider.
    """
    return sum(map(_ADVANCES[is_bold].__getitem__, printable(text))) * cap_height / CAP_HEIGHT

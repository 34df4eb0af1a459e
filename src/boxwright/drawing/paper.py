"""Papers, line widths, letter heights and scales that sheets are laid out with. Millimetres on paper.

The series are the standards' own; which of their members are used here, and for what, is said beside each. All were
written from memory: ISO 128-2 and 128-20 (lines), ISO 3098 (letters), ISO 5455 (scales), ISO 5457 (margins), ISO 7200
(title block).
"""

from __future__ import annotations

from typing import Literal

from boxwright.drawing.mark import LineKind, Size
from boxwright.records import dataclass

PaperName = Literal["letter", "a4"]


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper lying on its long side: mm."""

    name: PaperName
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What stands at the foot of every page: whose rig, as of when, which revision.

    ``units`` says in words what the measures are in; ``is_imperial`` asks for a scale bar in feet.
    """

    rig: str
    subject: str
    revision: str
    on: str
    units: str
    cautions: tuple[str, ...]
    is_imperial: bool = False


LETTER = Paper("letter", 279.4, 215.9)
A4 = Paper("a4", 297.0, 210.0)
PAPERS: dict[PaperName, Paper] = {"letter": LETTER, "a4": A4}

BINDING_EDGE = 20.0
EDGE = 10.0
"""Margins: the left one takes the holes of a folder (ISO 5457 `from memory`)."""

LINE_WIDTHS = (0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0)
"""The series of ISO 128: each is about root two times the one before (`from memory`)."""

LETTER_HEIGHTS = (1.8, 2.5, 3.5, 5.0, 7.0)
"""Heights of capital letters, ISO 3098 (`from memory`). Only cautions and the labels of the title block use 1.8."""

SMALLEST, SMALL, NORMAL, LARGE = LETTER_HEIGHTS[:4]
HEIGHT_OF: dict[Size, float] = {"small": SMALL, "normal": NORMAL, "large": LARGE}

WIDTH_OF: dict[LineKind, float] = {
    "cut": 0.7,
    "visible": 0.35,
    "hidden": 0.25,
    "centre": 0.18,
    "phantom": 0.18,
    "dimension": 0.18,
}
"""Narrow, wide and extra wide as 1 : 2 : 4, the line group 0.35 of construction drawings (ISO 128-23 `from memory`).
Departs: hidden edges take 0.25, the width that group keeps for signs, since studs behind a skin must be found."""

_DASH, _LONG, _GAP = 12.0, 24.0, 3.0
_DOT = 1.0

_PATTERNS: dict[LineKind, tuple[float, ...]] = {
    "hidden": (_DASH, _GAP),
    "centre": (_LONG, _GAP, _DOT, _GAP),
    "phantom": (_LONG, _GAP, _DOT, _GAP, _DOT, _GAP),
}
"""Dashes and gaps in line widths (ISO 128-20 `from memory`: dash 12, long dash 24, gap 3, dot at most a half).
Departs: a dot is as long as the line is wide, since half of that does not print."""

ISO_SCALES = (5.0, 2.0, 1.0, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100, 1 / 200, 1 / 500, 1 / 1000)
"""Scales of ISO 5455 that a trailer can need (`from memory`)."""

USUAL_SCALES = (1 / 2.5, 1 / 15, 1 / 25, 1 / 30, 1 / 40, 1 / 75)
"""Scales between those, that scale rules have too (`common practice, no source`)."""

SCALES = tuple(sorted((*ISO_SCALES, *USUAL_SCALES), reverse=True))

_SIXTEENTHS = 16


def dashes(line: LineKind) -> tuple[float, ...]:
    """Return the dashes and gaps of a kind of line in millimetres; nothing for one that runs through."""
    return tuple(round(one * WIDTH_OF[line], 3) for one in _PATTERNS.get(line, ()))


def scale_words(scale: float, is_imperial: bool = False) -> str:
    """Return a scale as it is written: 1:20, or for a rule in inches, 1:20 (about 5/8 in to the foot)."""
    ratio = f"{scale:g}:1" if scale > 1.0 else f"1:{1 / scale:g}"
    if not is_imperial or scale >= 1.0:
        return ratio
    sixteenths = max(1, round(12.0 * scale * _SIXTEENTHS))
    whole, rest = divmod(sixteenths, _SIXTEENTHS)
    below = _SIXTEENTHS
    while rest and rest % 2 == 0:
        rest, below = rest // 2, below // 2
    inches = " ".join(part for part in (f"{whole}" if whole else "", f"{rest}/{below}" if rest else "") if part)
    is_exact = abs(12.0 * scale * _SIXTEENTHS - sixteenths) < 1e-9
    return f"{ratio} ({'' if is_exact else 'about '}{inches} in to the foot)"

"""A place written anew in the builder's own way: the same anchor, another figure, rounded as a tape is read."""

from __future__ import annotations

import re
from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from boxwright.units import CannotRead, HeaderUnits, read_exact, shown_unit, unit_written

_WRITTEN = re.compile(r"^(mid\s+)?([^\W\d](?:[- ]?[^\W\d])*)?\s*(.*)$", re.DOTALL)
"""Whether the middle is placed; the surface; the figure behind it."""
MINUS = "\u2212"
STEPS = {"in": Fraction(1, 2), "ft": Fraction(1, 24), "mm": Fraction(10), "cm": Fraction(1), "m": Fraction(1, 100)}
"""What a place is rounded to, in each unit of length: half an inch, ten millimetres."""


class Offset(NamedTuple):
    """A written place taken apart: what stands before the figure, the figure, its unit and whether that was bare."""

    before: str
    figure: Fraction
    unit: str
    is_bare: bool
    is_anchored: bool

    @property
    def metres(self) -> float:
        """Return one of the unit in metres."""
        return read_exact(f"1 {self.unit}", "length", HeaderUnits())


def taken_apart(text: str, header: HeaderUnits) -> Offset | None:
    """Return a written place taken apart; None for a doubtful one, one relative to another part, or none at all."""
    text = text.strip()
    found = _WRITTEN.match(text)
    if found is None or not text or text[0] == "+" or ".." in text or "+-" in text:
        return None
    middle, anchor, rest = found[1] or "", found[2] or "", found[3].strip()
    if anchor.lower() in {"about", "unknown"} or (not anchor and not rest):
        return None
    own = unit_written(rest.lstrip("+-" + MINUS)) if rest else ""
    unit = own if own in STEPS else shown_unit("length", header)[0]
    if unit not in STEPS:
        return None
    sign = -1 if rest[:1] in {"-", MINUS} else 1
    digits = rest.lstrip("+-" + MINUS).strip() if rest else ""
    try:
        metres = read_exact(digits, "length", header) if digits else 0.0
        scale = read_exact(f"1 {unit}", "length", header)
    except CannotRead:
        return None
    figure = sign * Fraction(round(metres / scale * 10_000), 10_000)
    return Offset(f"{middle}{anchor}", figure, unit, own not in STEPS, bool(anchor))


def rounded_shift(offset: Offset, shift: float) -> float:
    """Return a shift (m) grown so that the new place is a round figure, never less far than asked."""
    step, exact = STEPS[offset.unit], Fraction(shift / offset.metres) + offset.figure
    count = exact / step
    # A hair below a round figure is that figure: 5.999999 steps are 6, not 7.
    whole = ceil(count - Fraction(1, 10**6)) if shift > 0.0 else floor(count + Fraction(1, 10**6))
    return float(whole * step - offset.figure) * offset.metres


def rewritten(offset: Offset, shift: float) -> str:
    """Return the place as text after a shift (m), with the anchor and the unit it was written with."""
    figure = offset.figure + Fraction(round(shift / offset.metres * 10_000), 10_000)
    unit = "" if offset.is_bare else f" {offset.unit}"
    if not offset.is_anchored:
        return f"{offset.before}{_figure(figure, offset.unit)}{unit}"
    if figure == 0:
        return offset.before
    return f"{offset.before}{'+' if figure > 0 else '-'}{_figure(abs(figure), offset.unit)}{unit}"


def _figure(figure: Fraction, unit: str) -> str:
    """Return a figure as a builder writes it: inches with a fraction, metric with decimals."""
    if unit == "in":
        sixteenths = Fraction(round(abs(figure) * 16), 16)
        whole, part = divmod(sixteenths, 1)
        sign = "-" if figure < 0 and sixteenths else ""
        pieces = [str(whole)] if whole or not part else []
        return sign + " ".join([*pieces, str(part)] if part else pieces)
    text = f"{float(figure):.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text

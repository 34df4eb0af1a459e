"""The words of a refusal: what was read, what was expected, how to write it."""

from __future__ import annotations

import re

from boxwright.units.band import CannotRead, HeaderUnits
from boxwright.units.numeral import DECIMAL, NUMERAL, read_numeral, tidied
from boxwright.units.quantity import DIMENSIONS, Quantity, header_unit
from boxwright.units.scale import unit_scale

INCH_COUNTRIES = frozenset({"US", "CA"})
_INCH_UNITS = frozenset({"in", "lb", "F", "gal", "AWG", "psi", "cfm", "gal/h", "sq in", "mph", "lbf", "Btu/h per F",
                         "ft2 F h/Btu"})  # fmt: skip
_SHOWN = 60
_UNIT = r"([^0-9\s.,+/-].*?)?"
_WHOLE_NUMBER = re.compile(rf"([+-]?\s*{NUMERAL})\s*{_UNIT}", re.S)
_DASHED_SPAN = re.compile(rf"([+-]?{DECIMAL})\s*{_UNIT}\s*-\s*([+-]?{DECIMAL})\s*{_UNIT}", re.S)
_GROUPED = re.compile(rf"([+-]?[0-9]{{1,3}}(?: [0-9]{{3}})+(?:[.,][0-9]+)?)\s*{_UNIT}", re.S)
_DATE = re.compile(r"[0-9]{4}-[0-9]{1,2}(?:-[0-9]{1,2})?")
_STONE = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*(?:st|stones?)\b\.?(?:\s*([0-9]+(?:\.[0-9]+)?)\s*(?:lbs?\.?)?)?", re.I)
_ROUGH = re.compile(r"([0-9]+(?:\.[0-9]+)?)-?ish", re.I)
_TON = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*tons?", re.I)


def refused(text: str, kind: Quantity, header: HeaderUnits, write: str = "", also: str = "") -> CannotRead:
    """Return the error for a text that is not a number of a quantity; ``also`` is a further way to write it."""
    write = write or _known_trap(text, kind) or examples(text, kind, header)
    return CannotRead(shortened(text), kind.said, write + also)


def offered_at_home(kind: Quantity, header: HeaderUnits) -> tuple[str, ...]:
    """Return the units a quantity is offered in; where nobody reads inches, those come last."""
    if header.words in INCH_COUNTRIES:
        return kind.offered
    return tuple(sorted(kind.offered, key=lambda unit: unit in _INCH_UNITS))


def shortened(text: str) -> str:
    """Return a text short enough to be quoted in a sentence, on one line."""
    flat = " ".join(text.split())
    return flat if len(flat) <= _SHOWN else flat[: _SHOWN - 2] + ".."


def examples(text: str, kind: Quantity, header: HeaderUnits) -> str:
    """Return how to write what a text seems to mean: ``"45 lb" or "45 kg"``, ``"45..60 lb"``, or only units.

    A number is offered only where it is all of the text but its unit, and never in a unit that would change it.
    """
    own = header_unit(kind, header)
    units = dict.fromkeys((own, *kind.offered) if own else offered_at_home(kind, header))
    if kind.bare and kind.bare not in ("1", *units):
        units = dict.fromkeys((*units, kind.bare))
    offered = list(units)[:2]
    if not any(letter.isdigit() for letter in text):
        number, unit = "12", ""
    else:
        number, unit = _number_and_unit(tidied(text))
    if not number or (unit and not _measures(unit, None, header)):
        return f"a number{' such as 0.35, or one' if kind.bare == '1' else ''} with its unit, {' or '.join(offered)}"
    if _measures(unit, kind, header):
        return f'"{number} {unit}"'
    shown = [f'"{number} {unit}"' for unit in offered]
    if kind.bare == "1":
        shown.insert(0, '"0.35"')
    return " or ".join(shown)


def dashed_span(plain: str) -> re.Match[str] | None:
    """Return the match of two numbers with a dash between them, which a date is not."""
    return None if _DATE.fullmatch(plain) else _DASHED_SPAN.fullmatch(plain)


def _number_and_unit(plain: str) -> tuple[str, str]:
    """Return the number or span that makes up a text, with two dots and no gaps, and its unit; empty if it is none."""
    span = dashed_span(plain)
    if span:
        first, last = (span[2] or "").strip(), (span[4] or "").strip()
        return (f"{span[1]}..{span[3]}", last or first) if first in ("", last) or not last else ("", "")
    grouped = _GROUPED.fullmatch(plain)
    if grouped:
        return grouped[1].replace(" ", ""), grouped[2] or ""
    whole = _WHOLE_NUMBER.fullmatch(plain)
    if whole and read_numeral(whole[1].lstrip("+- ")):
        return whole[1], whole[2] or ""
    return "", ""


def _measures(unit: str, kind: Quantity | None, header: HeaderUnits) -> bool:
    """Return whether a unit as written is one of a quantity, or of any where none is named."""
    if kind is not None and kind.name in ("wire", "money"):
        return unit.upper() in {one.upper() for one in kind.offered}
    scale = unit_scale(unit, header.words) if unit else None
    return scale is not None and (kind is None or scale.dimension == DIMENSIONS[kind.name])


def _known_trap(text: str, kind: Quantity) -> str:
    """Return how to write a rough number, and a unit that has several meanings or none in the trade: stone, ton."""
    rough = _ROUGH.fullmatch(text.strip())
    if rough:
        return f'"about {rough[1]}"'
    if kind.name != "mass":
        return ""
    stone = _STONE.fullmatch(text.strip())
    if stone:
        pounds = float(stone[1]) * 14.0 + float(stone[2] or 0.0)  # 1 stone = 14 lb, NIST SP 811 B.8, from memory
        return f'"{pounds * 0.45359237:.0f} kg" or "{pounds:.0f} lb"'
    ton = _TON.fullmatch(text.strip())
    if ton:
        size = float(ton[1])  # short ton 2000 lb, long ton 2240 lb: NIST SP 811 B.8, from memory
        return (
            f'"{size * 2000.0:.0f} lb" for the American ton, "{size * 2240.0:.0f} lb" for the long ton '
            f'or "{size:g} t" for the tonne'
        )
    return ""

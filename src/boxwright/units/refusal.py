"""The words of a refusal: what was read, what was expected, how to write it."""

from __future__ import annotations

import re

from boxwright.units.band import CannotRead, HeaderUnits
from boxwright.units.quantity import Quantity, header_unit

_SHOWN = 60
_A_NUMBER = re.compile(r"[0-9]+(?:[.,][0-9]+)*")
_STONE = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*(?:st|stones?)\b\.?(?:\s*([0-9]+(?:\.[0-9]+)?)\s*(?:lbs?\.?)?)?", re.I)
_TON = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*tons?", re.I)


def refused(text: str, kind: Quantity, header: HeaderUnits, write: str = "", also: str = "") -> CannotRead:
    """Return the error for a text that is not a number of a quantity; ``also`` is a further way to write it."""
    write = write or _known_trap(text, kind) or examples(text, kind, header)
    return CannotRead(shortened(text), kind.said, write + also)


def shortened(text: str) -> str:
    """Return a text short enough to be quoted in a sentence, on one line."""
    flat = " ".join(text.split())
    return flat if len(flat) <= _SHOWN else flat[: _SHOWN - 2] + ".."


def examples(text: str, kind: Quantity, header: HeaderUnits) -> str:
    """Return the number found in a text, with the units it may have: ``"45 lb" or "45 kg"``."""
    found = _A_NUMBER.search(text)
    number = found[0] if found else "12"
    own = header_unit(kind, header)
    units = dict.fromkeys((own, *kind.offered) if own else kind.offered)
    if kind.bare and kind.bare not in ("1", *units):
        units = dict.fromkeys((*units, kind.bare))
    shown = [f'"{number} {unit}"' for unit in list(units)[:2]]
    if kind.bare == "1":
        shown.insert(0, '"0.35"')
    return " or ".join(shown)


def _known_trap(text: str, kind: Quantity) -> str:
    """Return how to write a unit that has several meanings or none in the trade: stone, ton."""
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

"""Numbers as a builder types them: ``77 3/4``, ``77-3/4``, ``30+1/2``, ``1/2``, ``1,725``, ``1,5``, ``1e3``.

Nothing is evaluated: a pattern either fits or it does not.
"""

from __future__ import annotations

import re
from typing import NamedTuple

LONGEST = 200
"""A text longer than this is no number (DESIGN 6)."""

_TYPED = {
    "\u2018": "'", "\u2019": "'", "\u201b": "'", "\u2032": "'", "\u02b9": "'", "\u02bc": "'", "\u00b4": "'",
    "\u201c": '"', "\u201d": '"', "\u201f": '"', "\u2033": '"', "\u02ba": '"',
    "\u2212": "-", "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2013": "-", "\u2044": "/", "\u2215": "/",
    "\u00a0": " ", "\u2009": " ", "\u202f": " ", "\u2007": " ", "\u200a": " ", "\t": " ", "\n": " ", "\r": " ",
    "\u00b1": "+-", "\u2026": "..", "\u00d7": "x", "\u00b2": "2", "\u00b3": "3", "\u00ba": "\u00b0",
    "\u2103": "\u00b0C", "\u2109": "\u00b0F", "\u03a9": "ohm", "\u2126": "ohm",
    "\u00bd": " 1/2", "\u00bc": " 1/4", "\u00be": " 3/4", "\u215b": " 1/8", "\u215c": " 3/8", "\u215d": " 5/8",
    "\u215e": " 7/8", "\u2153": " 1/3", "\u2154": " 2/3",
}  # fmt: skip
_TYPED_TABLE = str.maketrans(_TYPED)

DECIMAL = r"(?:[0-9][0-9.,]*[0-9]|[0-9]|[.,][0-9]+)(?:[eE][+-]?[0-9]{1,3}(?![0-9A-Za-z]))?"
NUMERAL = (
    r"(?:[0-9]+(?:\s+|\s*\+\s*|-)[0-9]+\s*/\s*[0-9]+(?![0-9./])"
    r"|[0-9]+\s*/\s*[0-9]+(?![0-9./])"
    r"|" + DECIMAL + r")"
)
"""A number without its sign, as a piece of a larger pattern."""

_MIXED = re.compile(r"(?:([0-9]+)(?:\s+|\s*\+\s*|-))?([0-9]+)\s*/\s*([0-9]+)")
_EXPONENT = re.compile(r"[eE]")
_ENGLISH = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+")
_CONTINENTAL = re.compile(r"[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]+")
_MANY_GROUPS = re.compile(r"[0-9]{1,3}(?:,[0-9]{3}){2,}|[0-9]{1,3}(?:\.[0-9]{3}){2,}")
_ONE_GROUP = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_ONE_COMMA = re.compile(r"[0-9]*,[0-9]+")
_PLAIN = re.compile(r"[0-9]+(?:\.[0-9]+)?|\.[0-9]+")


class Numeral(NamedTuple):
    """A number read from text; ``otherwise`` is its other reading where a comma may be a decimal comma."""

    value: float
    otherwise: float | None = None


def tidied(text: str) -> str:
    """Return a text with smart quotes, prime marks, thin spaces and typed fractions written in plain characters."""
    return re.sub(r" {2,}", " ", text.translate(_TYPED_TABLE).replace("''", '"')).strip()


def read_numeral(text: str) -> Numeral | None:
    """Return the number a text without a sign stands for, or None where it is none."""
    mixed = _MIXED.fullmatch(text)
    if mixed is None:
        return _read_decimal(text)
    whole, top, bottom = mixed.groups()
    if float(bottom) == 0.0 or (whole is not None and float(top) >= float(bottom)):
        return None
    return Numeral(float(whole or 0) + float(top) / float(bottom))


def _read_decimal(text: str) -> Numeral | None:
    mantissa, *power = _EXPONENT.split(text)
    digits, otherwise = mantissa, None
    if _ENGLISH.fullmatch(mantissa):
        digits = mantissa.replace(",", "")
    elif _CONTINENTAL.fullmatch(mantissa):
        digits = mantissa.replace(".", "").replace(",", ".")
    elif _MANY_GROUPS.fullmatch(mantissa):
        digits = mantissa.replace(",", "").replace(".", "")
    elif _ONE_GROUP.fullmatch(mantissa):
        digits, otherwise = mantissa.replace(",", ""), float(mantissa.replace(",", "."))
    elif _ONE_COMMA.fullmatch(mantissa):
        digits = mantissa.replace(",", ".")
    if not _PLAIN.fullmatch(digits):
        return None
    if not power:
        return Numeral(float(digits), otherwise)
    return Numeral(float(f"{digits}e{power[0]}")) if otherwise is None else None

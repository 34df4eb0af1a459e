"""The readers: what a builder types becomes one SI float, a band, or a refusal in words; nothing else is raised."""

from __future__ import annotations

import math
import re
from functools import lru_cache

from boxwright.units.band import Band, CannotRead, HeaderUnits, exactly
from boxwright.units.numeral import LONGEST, tidied
from boxwright.units.quantity import Quantity, quantity_named
from boxwright.units.refusal import dashed_span, examples, refused
from boxwright.units.scale import unit_scale
from boxwright.units.term import read_one, read_term, settled, term_scale, unit_of

ABOUT_SHARE = 0.20
"""What ``about`` means where nothing better is known: 20 % either way (common practice, no source)."""

ABOUT_KELVIN = 3.0
"""What ``about`` means for a temperature, of which a share has no sense (common practice, no source)."""

LARGEST = 50.0
"""No thing in or on a trailer is larger (m): what is was typed in another unit (common practice, no source)."""

_UNKNOWN = frozenset({"", "unknown", "?", "not known"})
_ABOUT = re.compile(r"(?:about\b|approx(?:imately\b|\.|\b)|around\b|roughly\b|circa\b|ca\.|ca\b|~)\s*(.+)", re.I | re.S)
_PLUS_MINUS = re.compile(r"(.+?)\s*(?:\+/?-|-/?\+)\s*(.+)", re.S)
_SPAN = re.compile(r"(.+?)\s*(?:\.{2,3}|\bto\b)\s*(.+)", re.I | re.S)
_LETTERS_AT_END = re.compile(r"[A-Za-z].*$", re.S)
_ANY = Quantity("any", "the number", "1", ())
_NO_HEADER = HeaderUnits()
_TIMES = re.compile(r"\s*[xX*]\s*")


def read_exact(text: str, quantity: str, header: HeaderUnits, bare: str | None = None) -> float:
    """Return the SI value of one number without doubt.

    A number without a unit takes ``bare`` (the unit its key names), else the header's; with neither it is refused.
    """
    return _read_exact(text, quantity, header, bare)


def read_band(
    text: str, quantity: str, header: HeaderUnits, bare: str | None = None, about_share: float | None = None
) -> Band:
    """Return a number with its doubt: ``45``, ``40..55``, ``45 +-5``, ``about 45``, ``unknown``, or nothing written.

    A mass of zero is unknown: nothing weighs nothing. ``about_share`` is the share ``about`` stands for, of the
    stock kind where there is one.
    """
    return _read_band(text, quantity, header, bare, about_share)


def read_size(text: str, header: HeaderUnits) -> tuple[float, float, float]:
    """Return three lengths written as ``9 x 20 x 10 1/2``, each with its own unit or the last one's."""
    how = '"9 x 20 x 10 1/2": length x width x height'
    sizes = _lengths(text, header, 3, how)
    if max(sizes) > LARGEST:
        raise CannotRead(refused(text, quantity_named("length"), header).read, "the size",
                         f"{how}, none of them more than {LARGEST:.0f} m")  # fmt: skip
    return sizes[0], sizes[1], sizes[2]


def read_sides(text: str, header: HeaderUnits) -> tuple[Band, Band, Band]:
    """Return three lengths written as ``20..24 x 18 x about 16``, each with its doubt, or unknown."""
    how, kind = '"9 x 20 x 10 1/2": length x width x height', quantity_named("length")
    pieces = _TIMES.split(_plain(text, kind, header))
    if len(pieces) != 3:
        raise CannotRead(refused(text, kind, header).read, "the size", how)
    unit = _written_unit(pieces[-1], kind) or None
    first, second, third = (_read_band(piece, "length", header, unit, None) for piece in pieces)
    for side in (first, second, third):
        if side.known and not 0.0 <= side.low <= side.high <= LARGEST:
            ends = how if side.low < 0.0 else f"{how}, none of them more than {LARGEST:.0f} m"
            raise CannotRead(refused(text, kind, header).read, "the size", ends)
    return first, second, third


def read_pair(text: str, header: HeaderUnits) -> tuple[float, float]:
    """Return two lengths written as ``1 x 1 1/2``."""
    sizes = _lengths(text, header, 2, '"1 x 1 1/2": width x depth')
    return sizes[0], sizes[1]


@lru_cache(maxsize=4096)
def _read_exact(text: str, quantity: str, header: HeaderUnits, bare: str | None) -> float:
    kind = quantity_named(quantity)
    plain = _plain(text, kind, header)
    doubt = _ABOUT.fullmatch(plain) or _PLUS_MINUS.fullmatch(plain) or _SPAN.fullmatch(plain)
    term = read_term(plain, kind)
    if doubt is None and (term is None or "-" in term.unit):
        doubt = dashed_span(plain)
    if plain.lower() in _UNKNOWN or doubt:
        shown = examples(doubt[1] if doubt else "", kind, header)
        raise refused(text, kind, header, f"one number without doubt, such as {shown}")
    return read_one(plain, kind, header, bare)


@lru_cache(maxsize=4096)
def _read_band(text: str, quantity: str, header: HeaderUnits, bare: str | None, about_share: float | None) -> Band:
    kind = quantity_named(quantity)
    plain = _plain(text, kind, header)
    if plain.lower() in _UNKNOWN:
        return unknown_band(quantity)
    about = _ABOUT.fullmatch(plain)
    band = (
        _about(about[1], kind, header, bare, ABOUT_SHARE if about_share is None else about_share)
        if about
        else _doubtful(plain, kind, header, bare)
    )
    return unknown_band(quantity) if kind.name == "mass" and band.high == 0.0 else band


def unknown_band(quantity: str) -> Band:
    """Return the band of a number that was not given: no upper end, and no lower one where it may be negative."""
    low = -math.inf if quantity_named(quantity).may_be_negative else 0.0
    return Band(0.0, low, math.inf, known=False)


def _plain(text: str, kind: Quantity, header: HeaderUnits) -> str:
    if len(text) > LONGEST:
        raise refused(text, kind, header, f"one number; a text of over {LONGEST} characters is none")
    return tidied(text)


def _doubtful(plain: str, kind: Quantity, header: HeaderUnits, bare: str | None) -> Band:
    around = _PLUS_MINUS.fullmatch(plain)
    if around:
        return _plus_minus(plain, around[1], around[2], kind, header, bare)
    span = _SPAN.fullmatch(plain)
    if span:
        return _span(span[1], span[2], kind, header, bare)
    return exactly(read_one(plain, kind, header, bare))


def _about(written: str, kind: Quantity, header: HeaderUnits, bare: str | None, share: float) -> Band:
    best = read_one(written, kind, header, bare)
    half = ABOUT_KELVIN if kind.name == "temperature" else abs(best) * share
    if half == 0.0 and kind.name != "mass":
        raise refused(f"about {written}", kind, header, 'a span such as "-2..2": a share of nothing is no doubt')
    return Band(best, best - half, best + half, spread="interval", assumed=True)


def _span(first: str, last: str, kind: Quantity, header: HeaderUnits, bare: str | None) -> Band:
    """Return ``40..55 lb``: a unit written at one end counts for both; ``55..40`` is read in order."""
    ends = (
        read_one(first, kind, header, _written_unit(first, kind) or _written_unit(last, kind) or bare),
        read_one(last, kind, header, _written_unit(last, kind) or _written_unit(first, kind) or bare),
    )
    low, high = min(ends), max(ends)
    return Band(low + (high - low) / 2.0, low, high, spread="interval")


def _written_unit(text: str, kind: Quantity) -> str:
    if kind.name == "wire":
        found = _LETTERS_AT_END.search(text)
        return found[0] if found else ""
    term = read_term(text, kind)
    return term.unit if term else ""


def _plus_minus(whole: str, middle: str, half: str, kind: Quantity, header: HeaderUnits, bare: str | None) -> Band:
    """Return ``45 +-5 lb``: half-width at 95 %, in the unit of the middle or a per cent of it."""
    if kind.name == "wire":
        raise refused(whole, kind, header, '"12 AWG..10 AWG": a wire is one size or another')
    best = read_one(middle, kind, header, _written_unit(middle, kind) or _not_percent(half, kind) or bare)
    width = _half_width(whole, middle, half, best, kind, header, bare)
    low, high = best - width, best + width
    if low < 0.0 and not kind.may_be_negative:
        # "0.4 +-0.5 lb" says that it may weigh next to nothing: an interval from zero, for nothing weighs less
        return Band(best, 0.0, high, spread="interval")
    return Band(best, low, high, spread="sigma")


def _not_percent(half: str, kind: Quantity) -> str:
    unit = _written_unit(half, kind)
    return "" if unit == "%" and kind.name != "ratio" else unit


def _half_width(
    whole: str, middle: str, half: str, best: float, kind: Quantity, header: HeaderUnits, bare: str | None
) -> float:
    term, centre = read_term(half, kind), read_term(middle, kind)
    if term is None or centre is None or term.value < 0.0:
        raise refused(whole, kind, header, '"45 +-5" with one unit at the end')
    if term.unit == "%" and kind.name not in ("ratio", "temperature"):
        return abs(best) * term.value / 100.0
    unit = unit_of(term._replace(unit=term.unit or centre.unit), kind, header, bare)
    value = settled(term, unit, whole, kind, header)
    if kind.name == "money":
        return value
    scale = term_scale(unit, kind, header.words)
    width = scale.difference_to_si(value) if scale else math.inf
    if not math.isfinite(width):
        raise refused(whole, kind, header)
    return width


def _lengths(text: str, header: HeaderUnits, count: int, write: str) -> list[float]:
    kind = quantity_named("length")
    pieces = _TIMES.split(_plain(text, kind, header))
    if len(pieces) != count:
        raise CannotRead(refused(text, kind, header).read, "the size", write)
    unit = _written_unit(pieces[-1], kind) or None
    sizes = [read_one(piece, kind, header, unit) for piece in pieces]
    if min(sizes) < 0.0:
        raise CannotRead(refused(text, kind, header).read, "the size", write)
    return sizes


def read_any(text: str, unit: str = "", difference: bool = False) -> float:
    """Return the SI value of a number with any unit, of either sign, as sources and checks write them.

    ``203.415 kg``, ``-0.28 %/C``, ``12 AWG``, ``0.14225``; ``unit`` is that of a bare number. A ``difference`` of
    temperatures leaves the zero point out.
    """
    plain = _plain(text, _ANY, _NO_HEADER)
    if re.search(r"(?i)awg$", f"{plain} {unit}" if re.fullmatch(r"[0-9/]+", plain) else plain):
        return read_one(plain, quantity_named("wire"), _NO_HEADER, "AWG")
    term = read_term(plain, _ANY)
    scale = unit_scale(term.unit or unit or "1") if term else None
    if term is None or scale is None or term.otherwise is not None:
        raise refused(text, _ANY, _NO_HEADER, '"203.4 kg": a number and its unit')
    value = scale.difference_to_si(term.value) if difference else scale.to_si(term.value)
    if not math.isfinite(value):
        raise refused(text, _ANY, _NO_HEADER, "a number of a sensible size")
    return value


def unit_written(text: str) -> str:
    """Return the unit written behind a number, empty where there is none or where the text is no number."""
    plain = _plain(text, _ANY, _NO_HEADER)
    term = read_term(plain, _ANY)
    return term.unit if term else ""

"""A check: what a source says a method gives, in the source's own units, beside the formula it checks.

    [[check]]
    id = "w-rollup-1"                  # may be left out: method-source-place
    method = "tongue_load"             # the function of method.py that is run
    covers = ["pooled_mass"]           # others it runs on the way; may be left out
    source = "<key of a source>"
    place = "chapter 1 table 3"
    kind = "published"                 # published | independent | hand
    given = {axle_x = "4.1 m", items = [["900 kg", "3.6 m"], ["180 kg", "4.1 m"]], gear = "single", doors = 2}
    expect = {tongue = "203.415 kg", share = "0.14225"}     # or one text: expect = "3169.7 Pa"
    within = "0.03 %"                  # or an absolute "0.001 kg", or {tongue = "0.001 kg", share = "0.03 %"}
    units = {items = ["kg", "m"]}      # of bare numbers: one unit, or one for each column of a list of lists
    disputed = "..."                   # where the source's own example disagrees with the formula
    note = "..."                       # why within is wider than the source's rounding, how it was adopted

A text that begins with a digit, a sign or a point must read as a number with a unit; any other text is a word. A
``within`` without a unit is in the unit the expected number is written in; in per cent it is a share of the number,
unless that is itself in per cent. ``published`` counts for the house rule
that every method has one; a check whose source was ``computed here`` is ``hand``, whatever it says.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from typing import Literal

from boxwright.records import dataclass
from boxwright.source.cited import Source, SourceError, refuse_uncited, refuse_unknown_keys, text_of
from boxwright.source.table import is_unit, read_number
from boxwright.units import CannotRead, read_any, unit_written

Value = float | str | bool | tuple["Value", ...]
Kind = Literal["published", "independent", "hand"]
KINDS: tuple[Kind, ...] = ("published", "independent", "hand")

RESULT = "result"
"""The name of an expectation written as one text."""

_FIELDS = frozenset(
    {"id", "method", "covers", "source", "place", "kind", "given", "expect", "within", "units", "disputed", "note"}
)
_NUMERIC = re.compile(r"\s*[-+]?[.,]?[0-9]")


@dataclass(frozen=True, slots=True)
class Given:
    """One argument: its name, how the source writes it, and its SI value (a number, a word, or lists of these)."""

    name: str
    written: str
    value: Value


@dataclass(frozen=True, slots=True)
class Expected:
    """One expectation; ``allowed`` has the shape of ``value`` and is the largest difference of each number, in SI."""

    name: str
    written: str
    value: Value
    allowed: Value


@dataclass(frozen=True, slots=True)
class Check:
    """One worked example of a source for one method."""

    id: str
    method: str
    covers: tuple[str, ...]
    source: str
    place: str
    kind: Kind
    given: tuple[Given, ...]
    expect: tuple[Expected, ...]
    within: str
    disputed: str = ""
    note: str = ""

    def arguments(self) -> dict[str, Value]:
        """Return what to call the method with, by name."""
        return {given.name: given.value for given in self.given}

    def misses(self, results: Mapping[str, object]) -> tuple[str, ...]:
        """Return one sentence for each expectation the results do not meet; none where the check holds.

        ``results`` are by the names of the expectations; a single one is called ``result``.
        """
        says: list[str] = []
        for wanted in self.expect:
            if wanted.name not in results:
                says.append(f"{wanted.name} was not given")
            elif not _is_met(results[wanted.name], wanted.value, wanted.allowed):
                says.append(f"{wanted.name} is {results[wanted.name]!r}, the source says {wanted.written}")
        return tuple(says)


def _is_met(got: object, wanted: Value, allowed: Value) -> bool:
    if isinstance(wanted, tuple):
        if not isinstance(got, (tuple, list)) or not isinstance(allowed, tuple) or len(got) != len(wanted):
            return False
        return all(_is_met(*three) for three in zip(got, wanted, allowed, strict=True))
    if isinstance(wanted, float) and isinstance(allowed, float):
        # A number printed with its last digit rounded sits on the edge of its tolerance: binary dust must not fail it.
        dust = 1e-9 * abs(wanted)
        return isinstance(got, (int, float)) and math.isfinite(got) and abs(got - wanted) <= allowed + dust
    return got == wanted


def read_checks(blocks: object, sources: Mapping[str, Source], file: str) -> tuple[Check, ...]:
    """Return the ``[[check]]`` blocks of a file; an id may stand once."""
    if not isinstance(blocks, list):
        raise SourceError(file, "check", "checks are blocks of their own: [[check]]")
    checks = tuple(_read_check(block, number, sources, file) for number, block in enumerate(blocks, 1))
    ids: set[str] = set()
    for check in checks:
        if check.id in ids:
            raise SourceError(file, f"check {check.id}", "the id stands twice")
        ids.add(check.id)
    return checks


def _read_check(block: object, number: int, sources: Mapping[str, Source], file: str) -> Check:
    if not isinstance(block, dict):
        raise SourceError(file, f"check {number}", "a check is a block of its own: [[check]]")
    entry = f"check {block.get('id') or number}"
    refuse_unknown_keys(block, _FIELDS, file, entry)
    texts = {
        name: text_of(block, name, file, entry) for name in ("id", "method", "source", "place", "disputed", "note")
    }
    missing = [name for name in ("method", "source", "place", "given", "expect", "within", "kind") if name not in block]
    if missing:
        raise SourceError(file, entry, f"has no {', no '.join(missing)}")
    refuse_uncited(texts["source"], sources, file, entry)
    kind = text_of(block, "kind", file, entry)
    if kind not in KINDS:
        raise SourceError(file, entry, f'kind = "{kind}" is not one of {", ".join(KINDS)}')
    units = _read_units(block.get("units", {}), file, entry)
    covers = block.get("covers", [])
    if not isinstance(covers, list) or not all(isinstance(name, str) for name in covers):
        raise SourceError(file, entry, 'covers is a list of names: covers = ["pooled_mass"]')
    given, expect = _read_given(block["given"], units, file, entry), block["expect"]
    return Check(
        id=texts["id"] or _own_id(texts),
        method=texts["method"],
        covers=tuple(covers),
        source=texts["source"],
        place=texts["place"],
        kind="hand" if sources[texts["source"]].seen == "computed here" else kind,
        given=given,
        expect=_read_expect(expect, block["within"], units, file, entry),
        within=_written(block["within"]),
        disputed=texts["disputed"],
        note=texts["note"],
    )


def _own_id(texts: Mapping[str, str]) -> str:
    words = re.findall(r"[a-z0-9]+", f"{texts['source']} {texts['place']}".lower())
    return "-".join([texts["method"], *words])


def _read_units(given: object, file: str, entry: str) -> dict[str, tuple[str, ...]]:
    if not isinstance(given, dict):
        raise SourceError(file, entry, 'units is {items = ["kg", "m"]}')
    units: dict[str, tuple[str, ...]] = {}
    for name, unit in given.items():
        columns = tuple(unit) if isinstance(unit, list) else (unit,)
        for column in columns:
            if not isinstance(column, str) or not is_unit(column):
                raise SourceError(file, entry, f'units of {name}: the unknown unit "{column}"')
        units[name] = columns
    return units


def _read_given(given: object, units: Mapping[str, tuple[str, ...]], file: str, entry: str) -> tuple[Given, ...]:
    if not isinstance(given, dict):
        raise SourceError(file, entry, "given is {name = value, ...}")
    return tuple(
        Given(name, _written(value), _read_value(value, units.get(name, ()), file, f"{entry} given.{name}"))
        for name, value in given.items()
    )


def _read_expect(
    expect: object, within: object, units: Mapping[str, tuple[str, ...]], file: str, entry: str
) -> tuple[Expected, ...]:
    wanted = expect if isinstance(expect, dict) else {RESULT: expect}
    if not wanted:
        raise SourceError(file, entry, "expects nothing")
    read: list[Expected] = []
    for name, value in wanted.items():
        place = f"{entry} expect.{name}"
        limit = within.get(name) if isinstance(within, dict) else within
        if not isinstance(limit, (str, int, float)) or isinstance(limit, bool):
            raise SourceError(file, place, 'has no within, such as "0.03 %" or "0.001 kg"')
        columns = units.get(name, ())
        allowed = _read_allowed(value, str(limit), columns, file, place)
        read.append(Expected(name, _written(value), _read_value(value, columns, file, place), allowed))
    return tuple(read)


def _read_value(given: object, columns: tuple[str, ...], file: str, entry: str) -> Value:
    """Return a value in SI; ``columns`` are the units of bare numbers, one by one in the innermost lists."""
    if isinstance(given, list):
        return tuple(
            _read_value(item, _columns_of(item, place, columns), file, entry) for place, item in enumerate(given)
        )
    if isinstance(given, bool) or (isinstance(given, str) and not _NUMERIC.match(given)):
        return given
    return read_number(given, columns[0] if columns else "", file, entry)


def _columns_of(item: object, place: int, columns: tuple[str, ...]) -> tuple[str, ...]:
    """Return the units for an item of a list: all for a list in it, its own for a number, the one there is for all."""
    if isinstance(item, list) or len(columns) <= 1:
        return columns
    return columns[place : place + 1]


def _read_allowed(given: object, within: str, columns: tuple[str, ...], file: str, entry: str) -> Value:
    """Return the allowed difference in SI, in the shape of the expected value."""
    if isinstance(given, list):
        return tuple(
            _read_allowed(item, within, _columns_of(item, place, columns), file, entry)
            for place, item in enumerate(given)
        )
    if isinstance(given, bool) or (isinstance(given, str) and not _NUMERIC.match(given)):
        return 0.0
    unit = unit_written(given) if isinstance(given, str) else ""
    own = unit or (columns[0] if columns else "")
    if unit_written(within) == "%" and own != "%":
        return abs(read_number(given, columns[0] if columns else "", file, entry)) * read_any(within)
    try:
        allowed = read_any(within, own, difference=True)
    except CannotRead as error:
        raise SourceError(file, entry, str(error)) from error
    if allowed < 0.0:
        raise SourceError(file, entry, "within is not below zero")
    return allowed


def _written(value: object) -> str:
    """Return a value as the file writes it, for the worked example in the docs."""
    if isinstance(value, list):
        return "[" + ", ".join(_written(item) for item in value) + "]"
    if isinstance(value, dict):
        return ", ".join(f"{name} {_written(item)}" for name, item in value.items())
    return str(value)

"""A rule of a country: what is compared with which limit, where it binds, and how its text was read.

    [[rule]]
    id = "tow-width"                      # our word
    asks = "overall width"                # what is compared
    limit = "<number unit>"               # copied from the document; or required, or forbidden
    kind = "stop"                         # stop | limit | advice
    applies = "driven"                    # driven | parked | built
    binding = "law"                       # law | standard | advice | practice
    source = "<key of a source>"
    in_force = {from = 1998-01-01}        # and until, if known; "unknown" where the document does not say
    read = {on = 2026-11-25, as = "seen"} # or quoted by ..., from memory, common practice, no source
    where = "national"                    # or the state, province or territory
    note = "..."                          # may be left out

All other fields are required. The country is that of the file's name, ``rules_<cc>.toml``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date
from typing import Literal, cast

from boxwright.records import dataclass
from boxwright.source.cited import (
    Source,
    SourceError,
    is_said_how_seen,
    refuse_uncited,
    refuse_unknown_keys,
    text_of,
)
from boxwright.source.table import read_number

Kind = Literal["stop", "limit", "advice"]
Applies = Literal["driven", "parked", "built"]
Binding = Literal["law", "standard", "advice", "practice"]

_CHOICES = {
    "kind": ("stop", "limit", "advice"),
    "applies": ("driven", "parked", "built"),
    "binding": ("law", "standard", "advice", "practice"),
}
_TEXTS = ("id", "asks", "limit", "kind", "applies", "binding", "source", "where")
_FIELDS = frozenset({*_TEXTS, "in_force", "read", "note"})
_WORDS = frozenset({"required", "forbidden"})
_DAY = re.compile(r"([0-9]{4})(?:-([0-9]{2}))?(?:-([0-9]{2}))?")


@dataclass(frozen=True, slots=True)
class Rule:
    """A limit and what it rests on. ``limit`` is SI, None for a rule that is ``required`` or ``forbidden``.

    ``starts`` and ``ends`` are None where the document does not say. ``read_as`` tells how this limit was read.
    """

    id: str
    country: str
    asks: str
    limit: float | None
    limit_text: str
    kind: Kind
    applies: Applies
    binding: Binding
    source: str
    where: str
    starts: date | None
    ends: date | None
    read_on: date
    read_as: str
    note: str = ""

    @property
    def was_read(self) -> bool:
        """Return whether the text itself was read; otherwise the rule can advise but never clear a stop."""
        return self.read_as == "seen"

    def is_in_force(self, day: date) -> bool:
        """Return whether the rule holds on a day; an end or a start nobody knows does not end it."""
        return (self.starts is None or self.starts <= day) and (self.ends is None or day <= self.ends)


def read_rules(blocks: object, country: str, sources: Mapping[str, Source], file: str) -> tuple[Rule, ...]:
    """Return the ``[[rule]]`` blocks of a file; an id may stand once for one place."""
    rules: dict[tuple[str, str], Rule] = {}
    if not isinstance(blocks, list):
        raise SourceError(file, "rule", "rules are blocks of their own: [[rule]]")
    for number, block in enumerate(blocks, 1):
        rule = _read_rule(block, number, country, sources, file)
        key = (rule.where, rule.id)
        if key in rules:
            raise SourceError(file, f"rule {rule.id}", f"stands twice for {rule.where}")
        rules[key] = rule
    return tuple(rules.values())


def _read_rule(block: object, number: int, country: str, sources: Mapping[str, Source], file: str) -> Rule:
    if not isinstance(block, dict):
        raise SourceError(file, f"rule {number}", "a rule is a block of its own: [[rule]]")
    entry = f"rule {block.get('id') or number}"
    refuse_unknown_keys(block, _FIELDS, file, entry)
    texts = {name: text_of(block, name, file, entry) for name in (*_TEXTS, "note")}
    missing = [name for name in (*_TEXTS, "in_force", "read") if not block.get(name)]
    if missing:
        raise SourceError(file, entry, f"has no {', no '.join(missing)}")
    for name, choices in _CHOICES.items():
        if texts[name] not in choices:
            raise SourceError(file, entry, f'{name} = "{texts[name]}" is not one of {", ".join(choices)}')
    refuse_uncited(texts["source"], sources, file, entry)
    starts, ends = _read_span(block["in_force"], file, entry)
    read_on, read_as = _read_reading(block["read"], file, entry)
    limit = texts["limit"]
    return Rule(
        id=texts["id"],
        country=country,
        asks=texts["asks"],
        limit=None if limit in _WORDS else read_number(limit, "", file, f"{entry} limit"),
        limit_text=limit,
        kind=cast(Kind, texts["kind"]),
        applies=cast(Applies, texts["applies"]),
        binding=cast(Binding, texts["binding"]),
        source=texts["source"],
        where=texts["where"],
        starts=starts,
        ends=ends,
        read_on=read_on,
        read_as=read_as,
        note=texts["note"],
    )


def _read_span(given: object, file: str, entry: str) -> tuple[date | None, date | None]:
    if not isinstance(given, dict) or "from" not in given or set(given) - {"from", "until"}:
        raise SourceError(file, entry, "in_force is {from = <date>} with until, if known")
    starts = _read_day(given["from"], file, f"{entry} in_force.from")
    ends = _read_day(given.get("until", "unknown"), file, f"{entry} in_force.until")
    if starts and ends and ends < starts:
        raise SourceError(file, entry, "in_force ends before it starts")
    return starts, ends


def _read_reading(given: object, file: str, entry: str) -> tuple[date, str]:
    if not isinstance(given, dict) or set(given) != {"on", "as"}:
        raise SourceError(file, entry, 'read is {on = <date>, as = "seen"}')
    read_on, read_as = _read_day(given["on"], file, f"{entry} read.on"), given["as"]
    if read_on is None:
        raise SourceError(file, entry, "read.on is the day it was read, not unknown")
    if not isinstance(read_as, str) or not is_said_how_seen(read_as):
        raise SourceError(file, entry, f'read.as = "{read_as}" does not say how it was seen')
    return read_on, read_as


def _read_day(given: object, file: str, entry: str) -> date | None:
    """Return a date, the first day of a month or year, or None for ``unknown``."""
    if given == "unknown":
        return None
    if isinstance(given, date):
        return date(given.year, given.month, given.day)
    found = _DAY.fullmatch(str(given))
    try:
        if found:
            return date(int(found[1]), int(found[2] or 1), int(found[3] or 1))
    except ValueError:
        pass
    raise SourceError(file, entry, f'"{given}" is no date; write it as 2026-11-25, 2026 or unknown')

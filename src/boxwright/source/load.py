"""The loader: every ``*.toml`` of a discipline's ``tables/`` and ``checks/``, from a checkout or an installed wheel.

A file holds ``[source.<key>]`` blocks and any of ``[table.<name>]``, ``[[rule]]``, ``[[check]]``. Sources used by
several files of a discipline stand in its ``tables/sources.toml`` or ``checks/sources.toml``. A source nobody names
is refused.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Mapping
from functools import lru_cache
from importlib.resources import files
from typing import Literal

from boxwright.records import dataclass
from boxwright.source.check import Check, read_checks
from boxwright.source.cited import Source, SourceError, read_sources, refuse_unknown_keys
from boxwright.source.rule import Rule, read_rules
from boxwright.source.table import Table, read_table

SHARED = "sources.toml"
_FIELDS = frozenset({"source", "table", "rule", "check"})
_COUNTRY = re.compile(r"rules_([a-z]{2})\.toml")


@dataclass(frozen=True, slots=True)
class SourceFile:
    """What one file holds."""

    file: str
    sources: tuple[Source, ...]
    tables: tuple[Table, ...] = ()
    rules: tuple[Rule, ...] = ()
    checks: tuple[Check, ...] = ()


def read_source_file(text: str, file: str, shared: Mapping[str, Source] | None = None) -> SourceFile:
    """Return what the text of a file holds, or refuse it; ``shared`` are sources of the same discipline."""
    blocks = _read_toml(text, file)
    refuse_unknown_keys(blocks, _FIELDS, file, "file")
    own = read_sources(_as_blocks(blocks, "source", file), file)
    twice = sorted(set(own) & set(shared or {}))
    if twice:
        raise SourceError(file, f"source.{twice[0]}", "stands in sources.toml as well")
    sources = {**(shared or {}), **own}
    tables = tuple(read_table(name, block, sources, file) for name, block in _as_blocks(blocks, "table", file).items())
    rules = _rules_of(blocks, sources, file)
    checks = read_checks(blocks.get("check", []), sources, file)
    named = {row.source for table in tables for row in table.rows}
    named |= {rule.source for rule in rules} | {check.source for check in checks}
    idle = sorted(set(own) - named)
    if idle and not file.endswith(SHARED):
        raise SourceError(file, f"source.{idle[0]}", "is named by nothing in this file")
    return SourceFile(file, tuple(own.values()), tables, rules, checks)


def _read_toml(text: str, file: str) -> dict[str, object]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise SourceError(file, "file", f"is not TOML: {error}") from error


def _as_blocks(blocks: Mapping[str, object], name: str, file: str) -> Mapping[str, object]:
    given = blocks.get(name, {})
    if not isinstance(given, dict):
        raise SourceError(file, name, f"is written as [{name}.key]")
    return given


def _rules_of(blocks: Mapping[str, object], sources: Mapping[str, Source], file: str) -> tuple[Rule, ...]:
    if "rule" not in blocks:
        return ()
    country = _COUNTRY.fullmatch(file.rpartition("/")[2])
    if country is None:
        raise SourceError(file, "rule", "rules stand in a file named for their country: rules_us.toml")
    return read_rules(blocks["rule"], country[1].upper(), sources, file)


def load(package: str) -> tuple[SourceFile, ...]:
    """Return every file of a discipline's ``tables`` and ``checks``, by the name of its package."""
    loaded = (*_files(package, "tables"), *_files(package, "rules"), *_files(package, "checks"))
    _refuse_twice([(table.name, "table") for one in loaded for table in one.tables], package)
    _refuse_twice([(check.id, "check") for one in loaded for check in one.checks], package)
    return loaded


@lru_cache(maxsize=64)
def _files(package: str, kind: Literal["tables", "rules", "checks"], country: str = "") -> tuple[SourceFile, ...]:
    """Return the files of one kind; rules and checks may name the sources that the tables share.

    Tables are read at every start, rules and checks only by who asks for them, so they are kept apart; the rules of
    one ``country`` without those of the others.
    """
    place = files(package).joinpath("checks" if kind == "checks" else "tables")
    listed = sorted(place.iterdir(), key=lambda entry: entry.name) if place.is_dir() else []
    texts = {
        f"{place.name}/{one.name}": one.read_text("utf-8")
        for one in listed
        if one.name.endswith(".toml") and (kind == "checks" or (kind == "rules") == bool(_COUNTRY.fullmatch(one.name)))
        if not country or one.name == f"rules_{country.lower()}.toml"
    }
    known: dict[str, Source] = {}
    if kind != "tables":
        known |= {source.key: source for one in _shared(package) for source in one.sources}
    own = tuple(
        SourceFile(file, read_source_file(texts.pop(file), file, known).sources)
        for file in [f"{place.name}/{SHARED}"]
        if file in texts
    )
    shared = known | {source.key: source for one in own for source in one.sources}
    found = (*own, *(read_source_file(text, file, shared) for file, text in texts.items()))
    _refuse_hidden(found, kind == "rules")
    return found


def _refuse_hidden(read: tuple[SourceFile, ...], are_rules: bool) -> None:
    """Refuse a source that stands in a file of rules: who tells a rule looks it up without opening them all."""
    for one in read:
        if are_rules and one.sources:
            raise SourceError(one.file, f"source.{one.sources[0].key}", f"the sources of rules stand in {SHARED}")


def _shared(package: str) -> tuple[SourceFile, ...]:
    return tuple(one for one in _files(package, "tables") if one.file.endswith(SHARED))


def _refuse_twice(names: list[tuple[str, str]], package: str) -> None:
    for name, what in names:
        if names.count((name, what)) > 1:
            raise SourceError(package, f"{what} {name}", "stands in two files")


def load_table(package: str, name: str) -> Table:
    """Return one table of a discipline by its name."""
    for one in _files(package, "tables"):
        for table in one.tables:
            if table.name == name:
                return table
    raise SourceError(package, f"table.{name}", "stands in no file")


def load_rules(package: str, countries: Iterable[str] | None = None) -> tuple[Rule, ...]:
    """Return the rules of a discipline, of some countries (``US``) or of every one."""
    wanted = [""] if countries is None else sorted({one for one in countries if one})
    return tuple(rule for country in wanted for one in _files(package, "rules", country) for rule in one.rules)


def load_checks(package: str) -> tuple[Check, ...]:
    """Return the checks of a discipline."""
    return tuple(check for one in load(package) for check in one.checks)


def load_sources(package: str, with_checks: bool = True) -> dict[str, Source]:
    """Return the sources of a discipline by their key; without its checks where only rules and tables are told."""
    found = load(package) if with_checks else _files(package, "tables")
    return {source.key: source for one in found for source in one.sources}

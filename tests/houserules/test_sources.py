"""Rules 5 and 15, and I10: tables and checks can be read, every source is used and says how it was seen.

The loader refuses a row, rule or check without a source and a source without how it was seen; here it is run over
every discipline, and what it cannot see is added: sources named only in docstrings, and sources named nowhere.
"""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from boxwright.source import SourceError, load, load_sources
from tests.houserules.test_docstrings import label
from tests.houserules.test_folders import folders
from tests.houserules.tree import PACKAGE, functions, modules, plant

NEEDS_NO_KEY = ("from memory", "common practice, no source", "nothing")


def sources_in_docstrings(folder: Path) -> dict[str, str]:
    """Return what the methods and rules of a discipline give as their source, by their name."""
    found = {}
    for module in modules(folder):
        for name, node in functions(module):
            text = label(ast.get_docstring(node) or "", "Source")
            if text:
                found[f"{module.place}: {name}"] = text
    return found


def keys_named(text: str) -> set[str]:
    """Return every word of a label that could be the key of a source."""
    return set(re.findall(r"[a-z0-9][a-z0-9._-]*", text))


def unresolved(package: str, folder: Path) -> list[str]:
    """Return the methods and rules whose label names no source of the discipline."""
    known = set(load_sources(package))
    return [
        f"{where}: {text}"
        for where, text in sources_in_docstrings(folder).items()
        if not text.startswith(NEEDS_NO_KEY) and not keys_named(text) & known
    ]


def unused(package: str, folder: Path) -> list[str]:
    """Return the sources of a discipline that no row, rule, check, method or finding names."""
    loaded = load(package)
    named = {row.source for one in loaded for table in one.tables for row in table.rows}
    named |= {entry.source for one in loaded for entry in (*one.rules, *one.checks)}
    for text in sources_in_docstrings(folder).values():
        named |= keys_named(text)
    return sorted(set(load_sources(package)) - named)


@pytest.mark.parametrize("folder", folders(PACKAGE))
def test_tables_and_checks_can_be_read_and_their_sources_resolve(folder: str) -> None:
    package, place = f"boxwright.disciplines.{folder}", PACKAGE / "disciplines" / folder
    assert unresolved(package, place) == []
    assert unused(package, place) == []


SOURCE = '[source.tape-2001]\nwork = "A tape"\nedition = "2001"\nseen = "seen"\n'
ROWS = '[table.ply]\ncolumns = {name = "text", mass = "kg"}\nsource = "tape-2001"\nrows = [["nine", 9]]\n'


def planted(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, files: dict[str, str]) -> Path:
    """Return a discipline of its own that can be imported by its name."""
    for place, text in {"__init__.py": "", **files}.items():
        plant(tmp_path, f"{name}/{place}", text)
    monkeypatch.syspath_prepend(str(tmp_path))
    return tmp_path / name


def test_a_planted_source_that_nobody_names_is_found(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = planted(tmp_path, monkeypatch, "planted_idle", {"tables/sources.toml": SOURCE})
    assert unused("planted_idle", folder) == ["tape-2001"]
    folder = planted(tmp_path, monkeypatch, "planted_busy", {"tables/sources.toml": SOURCE, "tables/ply.toml": ROWS})
    assert unused("planted_busy", folder) == []


def test_a_planted_label_without_a_source_is_found(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    code = '"""Methods."""\ndef f():\n    """Source: tape-2001 page 3"""\ndef g():\n    """Source: tape-1999"""\n'
    files = {"tables/sources.toml": SOURCE, "method.py": code}
    folder = planted(tmp_path, monkeypatch, "planted_label", files)
    assert unresolved("planted_label", folder) == ["method.py: g: tape-1999"]


@pytest.mark.parametrize(
    "text",
    [
        ROWS,
        SOURCE.replace('seen = "seen"', 'seen = "surely"') + ROWS,
        SOURCE.replace('seen = "seen"\n', "") + ROWS,
        SOURCE + ROWS.replace("tape-2001", ""),
        SOURCE + ROWS.replace('"kg"', '"stone"'),
        "not TOML",
    ],
    ids=["source unknown", "how seen not a word of ours", "how seen missing", "row uncited", "unit unknown", "no TOML"],
)
def test_a_planted_table_that_may_not_be_used_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, text: str
) -> None:
    name = tmp_path.name
    planted(tmp_path, monkeypatch, name, {"tables/ply.toml": text})
    with pytest.raises(SourceError):
        load(name)

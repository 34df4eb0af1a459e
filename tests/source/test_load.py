"""Loading a discipline's folders, from wherever the package is installed."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from boxwright.source import SourceError, load, load_checks, load_rules, load_sources, load_table
from boxwright.source.load import _files

SHARED = '[source.book]\nwork = "A book"\nedition = "1st"\nseen = "seen"\n'
TABLE = '[table.sheets]\ncolumns = {name = "text", mass = "kg"}\nsource = "book"\nrows = [["one", 1]]\n'
RULE = """[[rule]]
id = "width"
asks = "width"
limit = "2 m"
kind = "advice"
applies = "driven"
binding = "advice"
source = "book"
in_force = {from = "unknown"}
read = {on = 2026-11-25, as = "from memory"}
where = "national"
"""
CHECK = """[[check]]
id = "one"
method = "double"
source = "book"
place = "page 1"
kind = "hand"
given = {number = "1 kg"}
expect = "2 kg"
within = "0 kg"
"""


@pytest.fixture
def discipline(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    folder = tmp_path / "a_discipline"
    for name in ("tables", "checks"):
        (folder / name).mkdir(parents=True)
    (folder / "__init__.py").write_text("")
    (folder / "tables" / "sources.toml").write_text(SHARED)
    (folder / "tables" / "stock.toml").write_text(TABLE)
    (folder / "tables" / "rules_uk.toml").write_text(RULE)
    (folder / "checks" / "worked.toml").write_text(CHECK)
    (folder / "checks" / "notes.md").write_text("not read")
    monkeypatch.syspath_prepend(str(tmp_path))
    _files.cache_clear()
    yield folder
    _files.cache_clear()
    sys.modules.pop("a_discipline", None)


def test_everything_of_a_discipline(discipline: Path) -> None:
    assert load_table("a_discipline", "sheets").column("mass") == (1.0,)
    assert [(rule.id, rule.country) for rule in load_rules("a_discipline")] == [("width", "UK")]
    assert [check.id for check in load_checks("a_discipline")] == ["one"]
    assert set(load_sources("a_discipline")) == {"book"}
    assert len(load("a_discipline")) == 4


def test_a_table_nobody_wrote(discipline: Path) -> None:
    with pytest.raises(SourceError, match="stands in no file"):
        load_table("a_discipline", "boards")


@pytest.mark.parametrize(
    ("file", "text", "says"),
    [
        ("tables/more.toml", TABLE, "table sheets: stands in two files"),
        ("checks/more.toml", CHECK, "check one: stands in two files"),
        ("checks/more.toml", SHARED + CHECK, "source.book: stands in sources.toml as well"),
        ("checks/more.toml", CHECK.replace('"book"', '"leaflet"'), "checks/more.toml: check one"),
    ],
)
def test_refusals(discipline: Path, file: str, text: str, says: str) -> None:
    (discipline / file).write_text(text)
    with pytest.raises(SourceError) as refusal:
        load("a_discipline")
    assert says in str(refusal.value)


def test_a_discipline_without_numbers_has_none(discipline: Path) -> None:
    for file in [*discipline.glob("tables/*"), *discipline.glob("checks/*")]:
        file.unlink()
    (discipline / "tables").rmdir()
    assert load("a_discipline") == ()


def test_the_rules_of_a_country_are_those_of_its_file_and_no_others() -> None:
    package = "boxwright.disciplines.towing"
    every = load_rules(package)
    for country in {rule.country for rule in every}:
        assert load_rules(package, [country]) == tuple(rule for rule in every if rule.country == country)
    assert set(load_rules(package, ["US", "CA", "US"])) == {rule for rule in every if rule.country in ("US", "CA")}
    assert load_rules(package, ["", "XX", "../us"]) == ()


def test_a_source_hidden_among_rules_is_refused(discipline: Path) -> None:
    own = SHARED.replace("source.book", "source.own")
    (discipline / "tables" / "rules_uk.toml").write_text(own + RULE.replace('"book"', '"own"'))
    with pytest.raises(SourceError, match=r"the sources of rules stand in sources\.toml"):
        load_rules("a_discipline")

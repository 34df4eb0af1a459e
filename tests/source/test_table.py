"""Tables and their sources: SI cells, look-up, and what is refused."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.source import OutsideTable, SourceError, Table, read_source_file

HEAD = """
[source.mill]
work = "A list of sheets"
edition = "not shown"
seen = "seen"

[source.book]
work = "A book"
edition = "3rd"
seen = "quoted by a list of sheets"
"""
TABLE = """
[table.plywood]
columns = {name = "text", thickness = "mm", mass = "kg/m2", factor = "", wire = "AWG", warm = "F"}
key = ["name"]
grid = "thickness"
source = "mill"
rows = [
  ["thin", 6, 3.5, 1, 12, 32],
  {name = "middle", thickness = "3/8 in", mass = "1.2 lb/ft2", source = "book"},
  ["thick", 12, 7, 2, "4 mm2", 212],
]
"""


def only(text: str, head: str = HEAD) -> Table:
    return read_source_file(head + text, "tables/stock.toml").tables[0]


def test_cells_are_si_and_rows_name_their_source() -> None:
    table = only(TABLE)
    assert table.column("thickness") == (0.006, pytest.approx(0.009525), 0.012)
    assert table.column("warm")[0] == 273.15
    middle = table.row("middle")
    assert middle is not None and middle.source == "book"
    assert table.number(middle, "mass") == pytest.approx(
        5.8589, rel=1e-4
    )  # 1 lb/ft2 = 4.882428 kg/m2: SP 811 B.8, from memory
    assert table.number(middle, "factor") is None
    thin = table.row("thin")
    assert thin is not None and thin.source == "mill"
    assert table.number(thin, "wire") == pytest.approx(3.309e-6, rel=1e-3)
    assert table.row("none") is None
    assert hash(table) == hash(only(TABLE))
    with pytest.raises(TypeError, match="column of words"):
        table.number(thin, "name")


def test_between_rows_along_a_straight_line_and_never_outside() -> None:
    table = only(TABLE)
    assert table.between(0.006, "mass") == 3.5
    assert table.between(0.012, "mass") == 7.0
    heavy = table.between(0.009525, "mass")
    assert table.between((0.009525 + 0.012) / 2, "mass") == pytest.approx((heavy + 7.0) / 2)
    for outside in (0.0059, 0.0121, float("nan")):
        with pytest.raises(OutsideTable):
            table.between(outside, "mass")
    with pytest.raises(ValueError, match="without a gap"):
        table.between(0.01, "factor")


@given(st.lists(st.floats(-1e3, 1e3), min_size=2, max_size=8, unique=True), st.floats(0.0, 1.0))
def test_between_stays_between_its_neighbours(grid: list[float], share: float) -> None:
    rows = ", ".join(f"[{x!r}, {x * 2 + 1!r}]" for x in sorted(grid))
    text = f'[table.line]\ncolumns = {{x = "", y = ""}}\ngrid = "x"\nsource = "mill"\nrows = [{rows}]\n'
    at = min(grid) + (max(grid) - min(grid)) * share
    table = only(text, HEAD.split("[source.book]")[0])
    assert table.between(min(at, max(grid)), "y") == pytest.approx(min(at, max(grid)) * 2 + 1, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("was", "becomes", "says"),
    [
        ('source = "mill"\n', "", "row 1: has no source"),
        ('source = "mill"\n', 'source = "mil"\n', 'source "mil" stands neither'),
        ('source = "book"', 'source = "bok"', 'row 2: source "bok"'),
        ('mass = "kg/m2"', 'mass = "kg/sheet"', 'column mass has the unknown unit "kg/sheet"'),
        ('["thick", 12', '["thin", 12', "row 3: the key ('thin',) stands twice"),
        ('["thick", 12', '["thick", 9', "row 3: thickness does not rise"),
        ('["thick", 12', '["thick", ""', "row 3: thickness does not rise"),
        ('["thick", 12, 7, 2,', '["thick", 12, 7,', "row 3: has 5 cells for 6 columns"),
        ('"1.2 lb/ft2"', '"1.2 lb"', '"1.2 lb" is not in a unit like kg/m2'),
        ('"1.2 lb/ft2"', '"heavy"', "cannot read"),
        ('"1.2 lb/ft2"', "true", "True is no number"),
        ('["thick",', "[5,", "must be a text in quotes"),
        ('key = ["name"]', 'key = ["nam"]', "key and grid name columns"),
        ('grid = "thickness"', 'grid = "thicknes"', "key and grid name columns"),
        ('grid = "thickness"', 'grids = "thickness"', "grids is not read here"),
        ('name = "middle"', 'nam = "middle"', "nam is not read here"),
        ("rows = [", "rows = []\nnote = ''\nold = [", "old is not read here"),
    ],
)
def test_refusals_of_a_table(was: str, becomes: str, says: str) -> None:
    assert was in TABLE
    with pytest.raises(SourceError) as refusal:
        only(TABLE.replace(was, becomes, 1))
    assert says in str(refusal.value)
    assert str(refusal.value).startswith("tables/stock.toml: table.plywood")


@pytest.mark.parametrize(
    ("was", "becomes", "says"),
    [
        ('seen = "seen"\n', "", "source.mill: has no seen"),
        ('edition = "not shown"\n', "", "source.mill: has no edition"),
        ('seen = "seen"', 'seen = "yes"', 'seen = "yes" is not one of'),
        ('seen = "seen"', 'seen = "quoted by "', "is not one of"),
        ('seen = "seen"', "seen = 1", "seen must be a text"),
        ("edition = \"3rd\"", "editoin = \"3rd\"", "source.book: editoin is not read here"),
        ("[source.book]", "[source.idle]\nwork = 'x'\nedition = 'x'\nseen = 'seen'\n[source.book]", "source.idle: is"),
        ("[source.mill]", "[source.mill", "is not TOML"),
        ("[source.mill]", "[sources.mill]", "sources is not read here"),
    ],
)  # fmt: skip
def test_refusals_of_a_source(was: str, becomes: str, says: str) -> None:
    with pytest.raises(SourceError) as refusal:
        only(TABLE, HEAD.replace(was, becomes, 1))
    assert says in str(refusal.value)


@pytest.mark.parametrize("seen", ["seen", "from memory", "common practice, no source", "computed here",
                                  "quoted by a text book", "second-hand, in a list"])  # fmt: skip
def test_every_way_of_having_seen_a_source(seen: str) -> None:
    one = read_source_file(HEAD.replace('"seen"', f'"{seen}"') + TABLE, "tables/stock.toml").sources[0]
    assert one.was_read == (seen == "seen")

"""Sourced numbers: tables, rules and checks, each entry with the document it comes from; a file without is refused."""

from boxwright.source.check import RESULT, Check, Expected, Given, Value, read_checks
from boxwright.source.cited import SEEN, Source, SourceError
from boxwright.source.gridded import Gridded, load_gridded, read_gridded
from boxwright.source.load import (
    SourceFile,
    load,
    load_checks,
    load_rules,
    load_sources,
    load_table,
    read_source_file,
)
from boxwright.source.rule import Rule
from boxwright.source.table import OutsideTable, Row, Table

__all__ = [
    "RESULT",
    "SEEN",
    "Check",
    "Expected",
    "Given",
    "Gridded",
    "OutsideTable",
    "Row",
    "Rule",
    "Source",
    "SourceError",
    "SourceFile",
    "Table",
    "Value",
    "load",
    "load_checks",
    "load_gridded",
    "load_rules",
    "load_sources",
    "load_table",
    "read_checks",
    "read_gridded",
    "read_source_file",
]

"""Rig paths in cells and sentences, said as a builder says them; the path itself stays to be looked up."""

from __future__ import annotations

import re
from dataclasses import replace

from boxwright.drawing import Sheet
from boxwright.study.spoken import named

PATH = re.compile(r"\b[a-z_]+\[[^\[\]]+\](?:\.layers\[[^\[\]]+\])?(?:\.[a-z_]+)*")
"""A path of the rig file that names a thing, and perhaps a key of it."""
THING = re.compile(r"^[a-z_]+\[[^\[\]]+\](?:\.layers\[[^\[\]]+\])?")


def said(path: str) -> str:
    """Return a path in words: a thing by its name, a key of it as ``payload of estate``."""
    found = THING.match(path)
    if found is None:
        return path
    keys = path[found.end() :].removeprefix(".").replace("_", " ").split(".")
    name = named(found[0])
    return f"{' '.join(keys)} of {name}" if keys != [""] else name


def in_words(text: str) -> str:
    """Return a text with every path in it said in words."""
    return PATH.sub(lambda found: said(found[0]), text)


def paths_in(text: str) -> dict[str, str]:
    """Return the paths a text names, by the words they are said in."""
    return {said(path): path for path in PATH.findall(text)}


def worded(sheet: Sheet) -> Sheet:
    """Return a sheet whose tables name things as a builder does."""
    if not any("[" in cell for grid in sheet.grids for row in grid.rows for cell in row):
        return sheet
    grids = tuple(
        replace(grid, rows=tuple(tuple(in_words(cell) for cell in row) for row in grid.rows)) for grid in sheet.grids
    )
    return replace(sheet, grids=grids)

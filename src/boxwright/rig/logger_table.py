"""The text of a logger's table, however it was saved: bytes, what parts its columns, numbers with a decimal comma."""

from __future__ import annotations

import codecs
import re

from boxwright.finding import Problem

MARKS = ";\t,"
"""What parts columns, the first that stands in the first line."""
WITH_COMMA = re.compile(r"^[+-]?\d+,\d+$")


class Unlike(ValueError):
    """A line that is not what its form asks for: what was read, and what was expected."""


def decoded(content: bytes, name: str) -> tuple[str, list[Problem]]:
    """Return the text of a file, and a note where it was not plain UTF-8."""
    if content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return content.decode("utf-16", errors="replace"), []
    try:
        return content.decode("utf-8-sig"), []
    except UnicodeDecodeError:
        return content.decode("latin-1"), [Problem(1, 1, name, f"{name} is not UTF-8; it was read as Latin-1", "note")]


def parted_by(text: str) -> str:
    """Return what parts the columns of a table, by its first line."""
    first = text.partition("\n")[0]
    return next((one for one in MARKS if one in first), ",")


def number_of(written: str, parted: str) -> float:
    """Return a number; its comma is a decimal one where columns are parted by something else."""
    text = written.strip()
    if parted != "," and WITH_COMMA.match(text):
        text = text.replace(",", ".")
    try:
        return float(text)
    except ValueError:
        raise Unlike(f'"{text}" is no number') from None

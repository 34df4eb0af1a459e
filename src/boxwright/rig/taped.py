"""Lengths as they were read: what stands under ``measured`` of studs, bows, cross-members, openings and the box."""

from __future__ import annotations

from collections.abc import Mapping

from boxwright.disciplines.frame.receiving import Read
from boxwright.model.entry import read_day
from boxwright.rig.document import Tree
from boxwright.units import CannotRead, HeaderUnits, read_band

KINDS = {"studs": "studs", "bows": "bows", "cross_members": "cross-members", "opening": "opening", "body": "body"}
"""The key that says what was read, and the word it is typed by."""


def lengths_read(tree: Mapping[str, Tree], units: HeaderUnits) -> tuple[Read, ...]:
    """Return every length that was read, in the order of the file; what is no length (``removed``) is left out."""
    entries = tree.get("measured")
    found: list[Read] = []
    for name, entry in entries.items() if isinstance(entries, Mapping) else ():
        if not isinstance(entry, Mapping):
            continue
        for key, kind in KINDS.items():
            subject, values = entry.get(key), entry.get("values")
            if isinstance(subject, str) and isinstance(values, Mapping):
                found += _of_one(f"measured[{name}]", entry, kind, subject, values, units)
    return tuple(found)


def _of_one(
    path: str, entry: Mapping[str, Tree], kind: str, subject: str, values: Mapping[str, Tree], units: HeaderUnits
) -> list[Read]:
    try:
        day = read_day(entry.get("date"))
    except ValueError:
        day = None
    found: list[Read] = []
    for key, text in values.items():
        try:
            band = read_band(str(text), "length", units)
        except CannotRead:
            continue
        if band.known:
            found.append(Read(kind, subject, key, band, day, path))
    return found

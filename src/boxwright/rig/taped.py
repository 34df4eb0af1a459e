"""Lengths as they were read: what stands under ``measured`` of studs, bows, cross-members, openings and the box."""

from __future__ import annotations

from collections.abc import Mapping

from boxwright.disciplines.frame.bands import UNKNOWN
from boxwright.disciplines.frame.tapes import REMOVED, Read
from boxwright.model.entry import read_day
from boxwright.rig.document import Tree
from boxwright.units import Band, CannotRead, HeaderUnits, read_band

KINDS = {"studs": "studs", "bows": "bows", "cross_members": "cross-members", "opening": "opening", "body": "body"}
"""The key that says what was read, and the word it is typed by."""


def lengths_read(tree: Mapping[str, Tree], units: HeaderUnits) -> tuple[Read, ...]:
    """Return every length that was read, in the order of the file; what is no length is left out, but ``removed``."""
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
    how = "seen" if str(entry.get("what", "")).strip().lower() == "seen" else str(entry.get("with", "") or "tape")
    within = length_read(entry.get("within"), units)
    found: list[Read] = []
    for key, text in values.items():
        word = str(text).strip().lower()
        band = UNKNOWN if word == REMOVED else length_read(text, units)
        if band is not None and (band.known or word == REMOVED):
            doubt = within.best if within is not None and within.known else None
            found.append(Read(kind, subject, key, band, day, path, how, doubt, word if word == REMOVED else ""))
    return found


def length_read(text: Tree, units: HeaderUnits) -> Band | None:
    """Return a length, or None where the text is none."""
    try:
        return read_band(str(text), "length", units) if text is not None else None
    except CannotRead:
        return None

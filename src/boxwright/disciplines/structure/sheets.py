"""Drawings of structure: none yet."""

from __future__ import annotations


def sheets() -> tuple[()]:
    """Return the drawings of structure."""
    return ()

"""Drawings of power: none yet."""

from __future__ import annotations


def sheets() -> tuple[()]:
    """Return the drawings of power."""
    return ()

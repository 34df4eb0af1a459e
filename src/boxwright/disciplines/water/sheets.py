"""Drawings of water: none yet."""

from __future__ import annotations


def sheets() -> tuple[()]:
    """Return the drawings of water."""
    return ()

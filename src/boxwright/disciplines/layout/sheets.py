"""Drawings of layout: none yet."""

from __future__ import annotations


def sheets() -> tuple[()]:
    """Return the drawings of layout."""
    return ()

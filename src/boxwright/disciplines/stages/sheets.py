"""Drawings of stages: none yet."""

from __future__ import annotations


def sheets() -> tuple[()]:
    """Return the drawings of stages."""
    return ()

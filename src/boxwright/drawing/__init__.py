"""What every sheet is made of; writers turn it into files and add nothing."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Grid:
    """A table to be shown. Every row has one cell for each column; ``of`` is the rig path each row is about."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    of: tuple[str, ...]

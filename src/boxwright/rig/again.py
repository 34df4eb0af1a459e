"""Pieces of a document that are read again only where what they are read from has changed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, TypeVar

from boxwright.rig.validate import Mistake

Piece = TypeVar("Piece")


@dataclass(slots=True)
class Again:
    """Remembers one reading of each piece, with the mistakes it told."""

    _read: dict[str, tuple[tuple[Any, ...], Any, list[Mistake]]] = field(default_factory=dict)

    def __call__(
        self,
        name: str,
        given: tuple[Any, ...],
        read: Callable[[list[Mistake]], Piece],
        mistakes: list[Mistake],
    ) -> Piece:
        """Return a piece; ``given`` is all that it is read from, and its mistakes are added either way."""
        known = self._read.get(name)
        if known is None or known[0] != given:  # a tuple takes what is the same object for equal at once
            told: list[Mistake] = []
            known = self._read[name] = (given, read(told), told)
        mistakes += known[2]
        piece: Piece = known[1]
        return piece

"""Load states: what is aboard, how full the tanks are, and which uses a state is judged for."""

from __future__ import annotations

from dataclasses import dataclass

from boxwright.finding import Use
from boxwright.units import Band, exactly

UNNAMED = Band(0.5, 0.0, 1.0, spread="fill", assumed=True)
"""A tank the state does not name: anywhere from empty to full."""


@dataclass(frozen=True, slots=True)
class LoadState:
    """One load state. ``cargo`` is None for all, else the names aboard; ``out`` is left behind.

    ``tanks`` maps part names to fills (0..1). ``is_coupled`` and ``legs_are_down`` are None where not written.
    """

    name: str
    cargo: tuple[str, ...] | None
    out: tuple[str, ...]
    tanks: tuple[tuple[str, Band], ...]
    is_parked: bool
    people: tuple[str, ...]
    uses: tuple[Use, ...]
    is_coupled: bool | None = None
    legs_are_down: bool | None = None

    def carries(self, name: str) -> bool:
        """Return whether a cargo part, or a part's contents, is aboard in this state."""
        return name not in self.out and (self.cargo is None or name in self.cargo)

    def fill(self, tank: str) -> Band:
        """Return how full a tank is; `UNNAMED` where the state does not say."""
        if tank in self.out:
            return exactly(0.0)
        return next((fill for name, fill in self.tanks if name == tank), UNNAMED)

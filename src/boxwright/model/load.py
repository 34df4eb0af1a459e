"""Load states: what is aboard, how full the tanks are, and which uses a state is judged for."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Annotated

from pydantic import BeforeValidator, Field

from boxwright.finding import Use
from boxwright.model.entry import Entry, Names, YesNo, read_pairs
from boxwright.records import dataclass
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_band

UNNAMED = Band(0.5, 0.0, 1.0, spread="fill", assumed=True)
"""A tank the state does not name: anywhere from empty to full."""


@dataclass(frozen=True, slots=True)
class LoadState:
    """One load state. ``cargo`` is None for all, else the names aboard; ``out`` is left behind.

    ``tanks`` maps part names to fills (0..1), ``charges`` those of batteries to how full they are at dusk.
    ``is_coupled`` and ``legs_are_down`` are None where not written.
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
    charges: tuple[tuple[str, Band], ...] = ()

    def carries(self, name: str) -> bool:
        """Return whether a cargo part, or a part's contents, is aboard in this state."""
        return name not in self.out and (self.cargo is None or name in self.cargo)

    def fill(self, tank: str) -> Band:
        """Return how full a tank is; `UNNAMED` where the state does not say."""
        if tank in self.out:
            return exactly(0.0)
        return next((fill for name, fill in self.tanks if name == tank), UNNAMED)


class LoadWords(Entry):
    """One load state as written."""

    cargo: Names = Field(("all",), description="all, none, or the names aboard")
    out: Names = Field((), description="what is left behind or already unloaded")
    tanks: Annotated[tuple[tuple[str, str], ...], BeforeValidator(read_pairs)] = Field(
        (), description="how full each tank is, such as {fresh: full, grey: 1/4}"
    )
    charge: Annotated[tuple[tuple[str, str], ...], BeforeValidator(read_pairs)] = Field(
        (), description="how full each battery is as it gets dark, such as {battery: 60 %}; full where it is not named"
    )
    parked: YesNo = Field(None, description="yes where the trailer stands")
    people: Names = Field((), description="who is inside")
    uses: Names = Field((), alias="for", description="what it is judged for: tow, sleep, leave, work")
    coupled: YesNo = Field(None, description="does the trailer stay hitched while it stands")
    legs: str = Field("", description="down or up")
    note: str = ""


FILLS = {"full": 1.0, "empty": 0.0, "none": 0.0, "half": 0.5}


A_SHARE = "full, empty, 3/4 or 40 %"
"""How it is written how full a tank is."""


def read_fill(text: str) -> Band:
    """Return how full a tank is from ``full``, ``empty``, ``3/4``, ``30 %``, ``1/4..1/2``, or ``unknown`` and blank."""
    word = text.strip().lower()
    if word in FILLS:
        return exactly(FILLS[word])
    if word in {"", "unknown", "?"}:
        return UNNAMED
    try:
        fill = read_band(word, "ratio", HeaderUnits())
    except CannotRead:
        raise CannotRead(text, "how full it is", f"{A_SHARE}{_as_a_share(word)}") from None
    if fill.low < 0.0 or fill.high > 1.0:
        raise CannotRead(text, "how full it is", A_SHARE)
    return fill if fill.low == fill.high else replace(fill, spread="fill")


def _as_a_share(word: str) -> str:
    """Return how an amount, such as 0.2 l, is written as a share of what is ten times as large; empty for others.

    What its own tank holds is not known here: the amount must never be taken for per cent.
    """
    found = re.fullmatch(r"([0-9]+(?:\.[0-9]+)?)\s*([a-z][a-z .]*)", word)
    if found is None:
        return ""
    number, unit = found.groups()
    return f"; {number} {unit} in what holds {float(number) * 10.0:g} {unit} is 10 %"

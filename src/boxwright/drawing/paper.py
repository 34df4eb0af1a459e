"""Papers, line widths, letter heights and scales that sheets are laid out with."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

PaperName = Literal["letter", "a4"]


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper lying on its long side: mm."""

    name: PaperName
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What stands at the foot of every page: whose rig, as of when, which revision."""

    rig: str
    subject: str
    revision: str
    on: str
    units: str
    cautions: tuple[str, ...]

"""The records of a look at the frame: what is at one spot of a wall, and two openings side by side."""

from __future__ import annotations

from typing import Literal

from boxwright.disciplines.frame.result import Buildup, MemberKind, Passing, There, WallName
from boxwright.records import dataclass
from boxwright.units import Band


@dataclass(frozen=True, slots=True)
class Near:
    """The nearest member to one side of a spot: how far its centre is from it (m), and whether it was taped."""

    name: str
    kind: MemberKind
    away: Band
    is_built: bool


@dataclass(frozen=True, slots=True)
class Reached:
    """Where a tape can be hooked to find a spot: the surface in words, and the distance from it (m)."""

    surface: str
    distance: Band


@dataclass(frozen=True, slots=True)
class SpotPart:
    """A part at a spot: mounted on the wall there, behind the lining, or standing before it."""

    of: str
    name: str
    how: Literal["behind", "on", "before"]
    gap: float
    there: There


@dataclass(frozen=True, slots=True)
class Spot:
    """What is at one place of a wall.

    ``what``: "opening", "member", "edge" (within the doubt of a member's edge), "bay" or "outside". ``layers`` are from
    the skin inwards. ``not_looked_at`` names what no record of the frame can tell, such as wires. ``intrusions`` names
    wheel boxes and housings that stand before it.
    """

    wall: WallName
    along: float
    up: float
    what: Literal["opening", "member", "edge", "bay", "outside"]
    name: str
    of: str
    buildup: Buildup | None
    before: Near | None
    behind: Near | None
    reached_along: tuple[Reached, ...]
    reached_up: Reached | None
    backing: str
    parts: tuple[SpotPart, ...]
    is_built: bool
    not_looked_at: tuple[str, ...]
    intrusions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ComparedHole:
    """One of two openings, widths or places set side by side."""

    name: str
    wall: WallName
    low: float
    high: float
    bottom: float
    top: float
    wall_left: float
    bays_lost: tuple[str, ...]
    members_cut: tuple[str, ...]
    passing: tuple[Passing, ...]
    weight: Band | None
    cost: Band | None


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two openings side by side, and what passes through the first and no longer through the second."""

    first: ComparedHole
    second: ComparedHole
    no_longer: tuple[str, ...]
    newly: tuple[str, ...]

"""The records the frame gives beside the bare shell of `planes`: openings, fasteners, what tapes say, and the whole.

``along`` and ``up`` are as each wall counts them.
"""

from __future__ import annotations

from datetime import date
from typing import Literal

from boxwright.disciplines.frame.planes import FLAT as FLAT
from boxwright.disciplines.frame.planes import UNSAID as UNSAID
from boxwright.disciplines.frame.planes import Bay as Bay
from boxwright.disciplines.frame.planes import Buildup as Buildup
from boxwright.disciplines.frame.planes import Intrusion as Intrusion
from boxwright.disciplines.frame.planes import LayerPiece as LayerPiece
from boxwright.disciplines.frame.planes import Member as Member
from boxwright.disciplines.frame.planes import MemberKind as MemberKind
from boxwright.disciplines.frame.planes import Nose as Nose
from boxwright.disciplines.frame.planes import Roof as Roof
from boxwright.disciplines.frame.planes import There as There
from boxwright.disciplines.frame.planes import Tube as Tube
from boxwright.disciplines.frame.planes import Wall as Wall
from boxwright.disciplines.frame.planes import WallName as WallName
from boxwright.exchange import Vector
from boxwright.records import dataclass
from boxwright.units import Band


@dataclass(frozen=True, slots=True)
class CutMember:
    """A member that an opening runs through: how far they overlap (m), and whether that is certain.

    ``is_held`` is False where nothing says where the member stands, so that its best place is no value at all.
    """

    of: str
    name: str
    at: Band
    overlap: Band
    is_certain: bool
    is_held: bool = True


@dataclass(frozen=True, slots=True)
class Gap:
    """What is left between an opening's edge and the face of the neighbouring member; below zero it overlaps."""

    to: str
    clear: Band


@dataclass(frozen=True, slots=True)
class Shift:
    """A place where the opening cuts nothing: its low edge along the wall, and how far it moves (m, + is along)."""

    low: float
    by: float
    between: tuple[str, str]


@dataclass(frozen=True, slots=True)
class HeaderNeed:
    """The header over an opening that cuts members.

    ``span`` runs from jamb to jamb. ``offsets`` are the cut members' distances from the first jamb; ``shares`` is how
    many members' worth of roof load each jamb then carries on top of its own.
    """

    span: float
    from_member: str
    to_member: str
    offsets: tuple[float, ...]
    shares: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Passing:
    """Whether a thing goes through an opening. ``tilt`` is how far it must be turned in the opening's plane (rad).

    ``spare`` is how much larger the hole is than the thing needs, in the tighter direction; below zero it is short.
    """

    of: str
    name: str
    size: Vector
    passes: bool
    tilt: float
    spare: float


@dataclass(frozen=True, slots=True)
class CarriedIn:
    """A part still to be carried in that goes through no opening left by then, or nobody can say whether.

    ``best`` is the opening it is least short of; None where its size is not known, or no way in.
    """

    of: str
    name: str
    size: Vector
    best: Passing | None
    through: str


@dataclass(frozen=True, slots=True)
class DepthFit:
    """Whether a unit suits the wall's depth: what it needs at least and at most against what it meets.

    ``what``: "clamps" (lowest to highest wall thickness) or "depth" (room it takes behind the finished face or skin).
    ``standing`` is the wall as it is in this slot, ``finished`` as it will be.
    """

    of: str
    what: Literal["clamps", "depth"]
    lowest: Band | None
    highest: Band | None
    finished: Band
    standing: Band
    filler: Band | None
    fits: Literal["yes", "no", "unknown"]
    fits_standing: Literal["yes", "no", "unknown"]


@dataclass(frozen=True, slots=True)
class Hole:
    """One opening through the skin as rough opening: its edges along and up its wall, and all that hangs on them.

    ``doubt`` is how far its place along the wall may be off (m), as it is written.
    ``is_placed`` is False where an edge is not known; then nothing about members is said. ``flange`` is how far the
    unit's frame covers the skin around it. ``overlaps`` are rig paths of openings and intrusions it runs into.
    ``seal``: what keeps the water out: the word, "unknown", or empty where nobody has been asked yet.
    ``curved`` is how far it, or its flange, reaches into what is round there: an arch, or a rounded eave (m).
    ``reaches`` is how deep its unit goes, from the skin inwards (m).
    """

    of: str
    name: str
    wall: WallName
    low: float
    high: float
    bottom: float
    top: float
    is_placed: bool
    is_cut: bool | None
    is_by_builder: bool
    there: There
    flange: float | None
    swing: tuple[str, str]
    members_cut: tuple[CutMember, ...]
    gap_low: Gap | None
    gap_high: Gap | None
    lower_place: Shift | None
    higher_place: Shift | None
    needs_frame: bool
    header: HeaderNeed | None
    is_outside_wall: bool
    overlaps: tuple[str, ...]
    passing: tuple[Passing, ...]
    depth: tuple[DepthFit, ...]
    seal: str
    sealed_on: date | None
    unit: str
    unit_weight: Band | None
    cost: Band | None
    doubt: float = 0.0
    curved: float = 0.0
    reaches: Band | None = None


@dataclass(frozen=True, slots=True)
class Backing:
    """A strip or board behind the lining that screws bite into: the area of its wall that it covers."""

    of: str
    name: str
    wall: WallName
    low: float
    high: float
    bottom: float
    top: float
    thick: float
    backs: str
    there: There


@dataclass(frozen=True, slots=True)
class Point:
    """One place of a screw or a hinge leaf on a wall, and what it meets there.

    ``catches`` names the member or the backing; empty where it misses. ``nearest`` is the nearest member and ``off``
    how far the point is from its centre (m, + is along). ``room`` is what is left to the edge distance: below zero it
    misses. ``is_certain`` is False where the doubt of the member's place decides.
    """

    at: float
    up: float | None
    catches: str
    nearest: str
    off: float
    room: float
    is_certain: bool


@dataclass(frozen=True, slots=True)
class Slid:
    """A pattern of fasteners moved as one: how far (m, + is along) and how many of its points then catch."""

    by: float
    catches: int


@dataclass(frozen=True, slots=True)
class ScrewReach:
    """How long a screw must be and how long it may be (m), through what lies over the metal, and how long it is."""

    least: Band
    most: Band
    written: Band | None
    through: tuple[LayerPiece, ...]
    verdict: Literal["fits", "too short", "too long", "no length suits", "unknown"]


@dataclass(frozen=True, slots=True)
class Fastening:
    """A hinge, screws or a bracket of one part against the members and backings of its wall.

    ``moved`` is, point by point, the nearest place that catches. ``slides`` are the smallest slides of the whole
    pattern, both ways, that catch most. ``caught_low`` and ``caught_high`` are the fewest and most members that a span
    of this length can catch at any phase, and ``caught`` what it catches here. ``backing`` names a backing behind all
    that catches no member; ``holds_in`` is its thickness where the screws are meant for it. ``is_outside`` says that
    the part hangs on the skin from outside. ``blocked`` are the places that a wheel box or a housing stands before,
    each with its name.
    """

    of: str
    name: str
    part: str
    what: Literal["hinge", "screws"]
    wall: WallName
    edge_distance: Band
    shank: Band | None
    points: tuple[Point, ...]
    moved: tuple[float, ...]
    slides: tuple[Slid, ...]
    span: float
    caught: int
    caught_low: int
    caught_high: int
    backing: str
    reach: ScrewReach | None
    there: There
    asks: str
    holds_in: float | None = None
    is_outside: bool = False
    blocked: tuple[tuple[float, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Recess:
    """A socket, a switch or a lamp let into its wall: how deep it goes, how deep the wall is behind its finished face.

    ``at`` are its places along the wall, ``hits`` the members it would have to be let into, with the place of each.
    """

    of: str
    name: str
    wall: WallName
    at: tuple[float, ...]
    depth: Band
    room: Band
    hits: tuple[tuple[str, float], ...]
    fits: Literal["yes", "no", "unknown"]
    there: There


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of a wire or a pipe in one wall, by its written route: from where to where along it, how high (m).

    ``low`` and ``high`` are infinite where the route does not say how far it runs; ``up`` is None where it says no
    height, and on roof and floor.
    """

    of: str
    name: str
    what: Literal["wire", "pipe"]
    wall: WallName
    low: float
    high: float
    up: float | None


@dataclass(frozen=True, slots=True)
class Crossing:
    """A fastener that a wire or a pipe may run behind: how far from it, with the doubt of the route (m).

    ``at`` is its place along the wall; None where no places of the fasteners are written, and ``away`` is then from
    the whole part. ``run_of``, ``run`` and ``run_what`` are the path, the name and the kind of what runs there.
    """

    of: str
    name: str
    what: Literal["hinge", "screws"]
    wall: WallName
    at: float | None
    run_of: str
    run: str
    run_what: Literal["wire", "pipe"]
    away: Band


@dataclass(frozen=True, slots=True)
class TapeFault:
    """Two readings of one place that differ by more than both tapes may be off, or a reading that cannot be.

    ``what``: "contradicts" (an older reading), "two places", "order" (a stud behind its neighbour), "beyond" (off the
    plan by more than the tolerance of ordering) or "outside" (beyond the wall).
    """

    of: str
    other: str
    what: Literal["contradicts", "two places", "order", "beyond", "outside"]
    name: str
    wall: WallName
    value: float
    against: float
    allowed: float
    moves: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Sized:
    """A measure of the shell: as ordered beside as taped. ``what``: length, width, height, diagonal, ... and where."""

    of: str
    what: str
    place: str
    planned: Band | None
    built: Band | None
    allowed: float


@dataclass(frozen=True, slots=True)
class Result:
    """The whole frame in one slot. Members and bays are in order along their walls; ``faults`` are the tapes' own.

    ``unplaced`` are the rig paths of the measures and of what takes room inside that nobody has written enough of.
    ``runs`` are wires and pipes by their routes, ``unrouted`` the names of those without one.
    ``stuck`` are parts that come in through no opening, or of which nobody can say it.
    """

    of: str
    walls: tuple[Wall, ...]
    members: tuple[Member, ...]
    bays: tuple[Bay, ...]
    roof: Roof
    nose: Nose | None
    intrusions: tuple[Intrusion, ...]
    buildups: tuple[Buildup, ...]
    holes: tuple[Hole, ...]
    backings: tuple[Backing, ...]
    fastenings: tuple[Fastening, ...]
    faults: tuple[TapeFault, ...]
    sized: tuple[Sized, ...]
    unplaced: tuple[str, ...] = ()
    recesses: tuple[Recess, ...] = ()
    runs: tuple[Run, ...] = ()
    unrouted: tuple[str, ...] = ()
    crossings: tuple[Crossing, ...] = ()
    stuck: tuple[CarriedIn, ...] = ()

    def wall(self, name: str) -> Wall | None:
        """Return a wall by its name, or None."""
        return next((one for one in self.walls if one.name == name), None)

    def members_of(self, wall: str) -> tuple[Member, ...]:
        """Return the members of a wall, in order along it."""
        return tuple(one for one in self.members if one.wall == wall)

"""The records the frame gives: members, walls, bays, layers, openings, fasteners, and what is at one spot.

Each wall has two coordinates of its own, in m. ``along`` is x (rearward of the front stud face) on the left and right
walls, on roof and floor; y (right of the centreline, looking forward) on the front and rear walls; and the distance
from the corner of the body on the slanted walls of a nose. ``up`` is z above the deck on a wall, and y on roof and
floor.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from boxwright.exchange import Vector
from boxwright.units import Band

WallName = Literal["left", "right", "front", "rear", "roof", "floor", "nose-left", "nose-right"]
MemberKind = Literal[
    "stud", "corner post", "jamb", "header", "sill", "bow", "cross-member", "main rail", "tongue rail", "plate"
]
There = Literal["yes", "perhaps", "later"]
"""Whether a thing stands in this slot: yes, perhaps (nobody ticked it), or only at a later stage of the plan."""


@dataclass(frozen=True, slots=True)
class Tube:
    """The section of a member as written, read: inward face, depth from the skin inwards, wall thickness (m).

    ``area`` in m2, ``inertia_deep`` about the axis along the wall (bending in and out), ``inertia_wide`` about the
    other, in m4, ``kg_per_metre``; None where the text does not say enough.
    """

    written: str
    shape: Literal["tube", "channel", "angle", "hat", "zed", "solid", "unknown"]
    material: str
    face: Band | None
    depth: Band | None
    gauge: Band | None
    area: Band | None
    inertia_deep: Band | None
    inertia_wide: Band | None
    kg_per_metre: Band | None


UNSAID = Tube("", "unknown", "", None, None, None, None, None, None, None)
"""The section of members of which nothing is written."""


@dataclass(frozen=True, slots=True)
class Wall:
    """One wall, the roof or the floor: its ends along itself, its foot and top, where its stud face stands in plan.

    ``start`` and ``end`` are (x, y) of the stud face at ``low`` and ``high``. ``inward`` is the unit vector (x, y)
    into the room; (0, 0) for roof and floor. ``skin`` is the outer skin's thickness where it is known.
    """

    of: str
    name: WallName
    letter: str
    low: float
    high: float
    foot: float
    top: float
    start: tuple[float, float]
    end: tuple[float, float]
    inward: tuple[float, float]
    tube: Tube
    skin: Band | None
    is_taped: bool
    taped_by: str
    taped_on: date | None


@dataclass(frozen=True, slots=True)
class Member:
    """One stud, bow, cross-member, post, jamb, header, sill or rail.

    ``at`` is where its centre line is held to be, with its doubt: as built where it was taped, else as planned.
    ``runs`` is "up" for a stud (``at`` is along, ``low`` and ``high`` are up) and "along" for a header or a rail (the
    other way round). ``pieces`` is what of it is left between ``low`` and ``high`` where openings cut it. ``of`` is the
    rig path it comes from; ``seen_in`` that of the newest tape entry. ``face`` is its width in the wall's plane.
    """

    of: str
    name: str
    kind: MemberKind
    wall: WallName
    number: int | None
    planned: float | None
    built: Band | None
    at: Band
    is_built: bool
    seen_in: str
    seen_on: date | None
    face: Band
    depth: Band | None
    runs: Literal["up", "along"]
    low: float
    high: float
    pieces: tuple[tuple[float, float], ...]
    is_removed: bool = False
    is_doubled: bool = False
    cut_by: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Roof:
    """The shape of the roof bows. ``rise`` is middle over eaves (m), ``radius`` that of rounded eaves (m)."""

    shape: Literal["flat", "arched", "rounded"]
    height: float
    rise: float
    radius: float


@dataclass(frozen=True, slots=True)
class Nose:
    """A V-nose or tapered front: how far it stands ahead of the front stud face, how wide its tip is (m)."""

    of: str
    length: float
    tip: float


@dataclass(frozen=True, slots=True)
class Intrusion:
    """A part of the shell that takes room inside: a wheel box, a door surround, a spring housing; its two corners."""

    of: str
    name: str
    what: str
    low: Vector
    high: Vector


@dataclass(frozen=True, slots=True)
class Bay:
    """The clear space between two neighbouring members of a wall: its edges along the wall, with their doubt.

    ``name`` is written as under ``walls``: ``left 4-5``; roof bays between bows are ``roof 4-5``.
    """

    of: str
    wall: WallName
    name: str
    first: str
    last: str
    low: Band
    high: Band
    clear: Band
    is_built: bool


@dataclass(frozen=True, slots=True)
class LayerPiece:
    """One layer at one place of a wall, from the skin inwards. ``where``: "all", "bays" or "members" only."""

    of: str
    name: str
    material: str
    thick: Band | None
    where: Literal["all", "bays", "members"]
    there: There


@dataclass(frozen=True, slots=True)
class Buildup:
    """What is behind what at one kind of place of a wall: in its bays, over its members, or in one named bay.

    ``bay`` is empty for the wall as a whole. ``finished`` is from the skin's outer face to the finished face when all
    planned layers are in; ``standing`` the same as it stands in this slot; ``liner`` what of it lies inside the stud
    face when finished. Unknown where a thickness is.
    """

    of: str
    wall: WallName
    bay: str
    place: Literal["bay", "member"]
    layers: tuple[LayerPiece, ...]
    finished: Band
    standing: Band
    liner: Band


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
    the part hangs on the skin from outside.
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

    def wall(self, name: str) -> Wall | None:
        """Return a wall by its name, or None."""
        return next((one for one in self.walls if one.name == name), None)

    def members_of(self, wall: str) -> tuple[Member, ...]:
        """Return the members of a wall, in order along it."""
        return tuple(one for one in self.members if one.wall == wall)

"""The records of the bare shell: its planes, the members in them, the bays between, the layers over them.

Each wall has two coordinates of its own, in m. ``along`` is x (rearward of the front stud face) on the left and right
walls, on roof and floor; y (right of the centreline, looking forward) on the front and rear walls; and the distance
from the corner of the body on the slanted walls of a nose. ``up`` is z above the deck on a wall, and y on roof and
floor.
"""

from __future__ import annotations

from datetime import date
from typing import Literal

from boxwright.exchange import Vector
from boxwright.records import dataclass
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
class Roof:
    """The shape of the roof bows. ``rise`` is middle over eaves (m), ``radius`` that of rounded eaves (m)."""

    shape: Literal["flat", "arched", "rounded"]
    height: float
    rise: float
    radius: float


FLAT = Roof("flat", 0.0, 0.0, 0.0)
"""The roof of a body whose measures nobody wrote."""


@dataclass(frozen=True, slots=True)
class Wall:
    """One wall, the roof or the floor: its ends along itself, its foot and top, where its stud face stands in plan.

    ``start`` and ``end`` are (x, y) of the stud face at ``low`` and ``high``. ``inward`` is the unit vector (x, y)
    into the room; (0, 0) for roof and floor. ``skin`` is the outer skin's thickness where it is known. ``roof`` is the
    roof that ends it above, or that it is.
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
    roof: Roof = FLAT


@dataclass(frozen=True, slots=True)
class Member:
    """One stud, bow, cross-member, post, jamb, header, sill or rail.

    ``at`` is where its centre line is held to be, with its doubt: as built where it was taped, else as planned.
    ``runs`` is "up" for a stud (``at`` is along, ``low`` and ``high`` are up) and "along" for a header or a rail (the
    other way round). ``pieces`` is what of it is left between ``low`` and ``high`` where openings cut it. ``of`` is the
    rig path it comes from; ``seen_in`` that of the newest tape entry. ``face`` is its width in the wall's plane.
    ``is_contested`` says that two tapes contradict each other: ``at`` then covers both, and its best is no value.
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
    is_contested: bool = False

    @property
    def is_held(self) -> bool:
        """Whether its best place is one to go by: ordered or taped, and no other tape against it."""
        return (self.planned is not None or self.is_built) and not self.is_contested


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
    resistance: Band | None = None


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

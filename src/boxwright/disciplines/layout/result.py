"""What layout has worked out of one slot: what is in what, what strikes what, what stands where room is to be kept.

Lengths are metres, angles radians. Every record names the paths of both things it is about.
"""

from __future__ import annotations

from typing import Literal

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.parts import Hazard
from boxwright.disciplines.layout.people import Fit
from boxwright.exchange import Vector
from boxwright.records import dataclass

Axis = Literal[0, 1, 2]
Moving = Literal["leaf", "sash", "lid", "door", "slide", "bed"]
"""What moves: a leaf of an opening, on a hinge or sliding, a lid, a door, a drawer or a bed."""
Certainty = Literal["sure", "perhaps", "grazes"]
"""How sure it is that two things meet: surely, perhaps, or by no more than the play there is between them."""


Whereabouts = Literal["", "in the wall", "past the skin"]
"""What nobody wrote of where a thing is, seen from outside: let into a wall or hung on it; out when the leaf opens."""


@dataclass(frozen=True, slots=True)
class Shift:
    """A move of one thing, with all in and on it, after which it meets nothing: how far along which axis (m).

    It has been tried against everything that stands in the slot.
    """

    of: str
    name: str
    axis: Axis
    by: float


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two things that want one space, standing still: ``depth`` is how far they are in each other, along ``axis`` (m).

    Where it is only ``perhaps``, they are ``depth`` in each other at worst. ``is_bed`` says that one of them is slept
    on: ``bed_name`` is the bed it is slept in, of which it may be no more than what lies on it.
    """

    of: str
    name: str
    other: str
    other_name: str
    depth: float
    axis: Axis
    sure: Certainty
    is_bed: bool
    shift: Shift | None
    bed_name: str = ""


@dataclass(frozen=True, slots=True)
class Struck:
    """Something that moves and what it strikes: ``reached`` is how far it gets, ``whole`` how far it should.

    Both are radians where ``turns``, else metres. ``hits`` are the paths of all it strikes, the first one first.
    ``sure`` is only ``perhaps`` where a place is in doubt, or it is not written how far it opens. ``is_usual`` says
    that nobody wrote how it moves at all, so that it is taken to go as such things mostly do. ``between`` are the ends
    of how far a leaf gets, wherever within its doubt all that is, None of what is no leaf. ``is_in_wall`` says that it
    slides into its wall and strikes what lies in there. ``whereabouts`` is what nobody wrote of where the hits are.
    """

    of: str
    name: str
    what: Moving
    hits: tuple[str, ...]
    names: tuple[str, ...]
    reached: float
    whole: float
    turns: bool
    sure: Certainty
    shift: Shift | None
    is_usual: bool = False
    between: tuple[float, float] | None = None
    is_in_wall: bool = False
    whereabouts: Whereabouts = ""


@dataclass(frozen=True, slots=True)
class Intruder:
    """A thing that stands in room which another wants kept clear; ``gap`` is what is left of ``wanted`` (m).

    ``is_either`` says that nobody knows whether the other looks that way.
    """

    of: str
    name: str
    other: str
    other_name: str
    side: Literal["round", "front", "above"]
    gap: float
    wanted: float
    sure: Certainty
    shift: Shift | None
    is_either: bool = False


@dataclass(frozen=True, slots=True)
class Beside:
    """A thing that gets hot or is worked at, of which nobody wrote what room it wants, and what stands nearest to it.

    ``gap`` is the least there may be between them (m), ``within`` how near is asked about.
    """

    of: str
    name: str
    hazard: Hazard
    near: str
    near_name: str
    gap: float
    within: float


@dataclass(frozen=True, slots=True)
class Stopped:
    """Something that moves and a face of the room that stops it; ``reached`` and ``whole`` as of what is struck."""

    of: str
    name: str
    what: Moving
    face: str
    reached: float
    whole: float
    turns: bool
    sure: Certainty
    is_usual: bool = False


@dataclass(frozen=True, slots=True)
class Together:
    """Something that cannot be opened while another stands open; ``reached`` and ``whole`` as of what is struck.

    Each by itself opens. ``is_usual`` says that nobody wrote how one of them opens.
    """

    of: str
    name: str
    what: Moving
    other: str
    other_name: str
    other_what: Moving
    reached: float
    whole: float
    turns: bool
    sure: Certainty
    is_usual: bool = False


@dataclass(frozen=True, slots=True)
class OverBed:
    """Something that opens in over a bed that is slept on; ``reached`` and ``whole`` as of what is struck.

    What is left of the bed is too little for its sleepers to lie beside it.
    """

    of: str
    name: str
    what: Moving
    bed: str
    bed_name: str
    sleepers: tuple[str, ...]
    reached: float
    whole: float
    turns: bool
    sure: Certainty


@dataclass(frozen=True, slots=True)
class Short:
    """A thing that a face of the room leaves less room than it wants; ``gap`` is what is left of ``wanted`` (m).

    ``wide`` is the width of the room before it; ``is_either`` says that nobody knows whether it looks that way.
    """

    of: str
    name: str
    side: Literal["round", "front", "above", "wide"]
    face: str
    gap: float
    wanted: float
    sure: Certainty
    is_either: bool = False


@dataclass(frozen=True, slots=True)
class Crossing:
    """A thing that goes through a face of the shell where no opening is: how far it is beyond it (m).

    It does so perhaps where it may be let into the wall: it ends in the depth of that, and is no wider than a bay.
    """

    of: str
    name: str
    face: str
    beyond: float
    sure: Certainty = "sure"


@dataclass(frozen=True, slots=True)
class Unheld:
    """A thing that is aboard while what it is inside of, or rides on, is not there, or only perhaps."""

    of: str
    name: str
    carrier: str
    is_inside: bool
    sure: Certainty


@dataclass(frozen=True, slots=True)
class Perched:
    """A thing that rides on another and does not rest on it: how far it is over its top (m), below zero down in it.

    ``over`` is None where nothing is under it at all. ``out`` is how far its middle is beyond the edge of what it rests
    on, where it is.
    """

    of: str
    name: str
    carrier: str
    carrier_name: str
    over: float | None
    sure: Certainty
    out: float = 0.0


@dataclass(frozen=True, slots=True)
class Protruding:
    """A thing that does not fit into what it is inside of: how far it sticks out of it, along which axis (m).

    ``may_turn``: nobody wrote how it lies there, and held another way it may go in.
    """

    of: str
    name: str
    carrier: str
    carrier_name: str
    beyond: float
    axis: Axis
    sure: Certainty
    may_turn: bool = False


@dataclass(frozen=True, slots=True)
class Crammed:
    """A thing on a bed that folds up: how high it stands off the leaf, and how much is left behind it then (m).

    ``is_known`` is False where nobody wrote how far the bed stands out when it is up.
    """

    of: str
    name: str
    leaf: str
    leaf_name: str
    high: float
    left: float
    sure: Certainty
    is_known: bool


@dataclass(frozen=True, slots=True)
class Covered:
    """A window that a folded thing covers: which share of it."""

    of: str
    name: str
    window: str
    window_name: str
    share: float


@dataclass(frozen=True, slots=True)
class Hidden:
    """What hides from a thing what it looks at: which share of its angle surely, which at most, and by what."""

    of: str
    name: str
    toward: str
    share: float
    most: float
    by: tuple[str, ...]
    names: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Overlaid:
    """A leaf that lies over another opening when it is laid open against a wall."""

    of: str
    name: str
    hole: str
    hole_name: str
    sure: Certainty


@dataclass(frozen=True, slots=True)
class Blocked:
    """A heavy thing that has no straight way in from the rear, and what stands in it.

    Where nothing does, no opening of the rear is large enough: ``hole`` is the one that falls least ``short`` (m),
    for certain or, where its size is in doubt, perhaps.
    """

    of: str
    name: str
    by: tuple[str, ...]
    names: tuple[str, ...]
    hole: str = ""
    short: float = 0.0
    is_sure: bool = True


Lacks = Literal["swing", "turn", "fold", "hinge", "slide", "clear", "canopy", "arms", "sight", "depth", "hole"]
"""What nobody wrote of a thing that moves, in a word."""


@dataclass(frozen=True, slots=True)
class Open:
    """What cannot be judged for want of a value: of what, and the question in a word."""

    of: str
    name: str
    what: Lacks


@dataclass(frozen=True, slots=True)
class Taken:
    """A bed that is slept on tonight and what leaves too little of it to lie on: their paths and names."""

    of: str
    name: str
    by: tuple[str, ...]
    names: tuple[str, ...]
    sure: Certainty


@dataclass(frozen=True, slots=True)
class Footless:
    """A canopy of which an arm has its foot, or may have it, in the hole of a wall: there is nothing to hold it.

    ``is_on_wall`` tells whether it is written that its feet are there.
    """

    of: str
    name: str
    hole: str
    hole_name: str
    sure: Certainty
    is_on_wall: bool


@dataclass(frozen=True, slots=True)
class Beyond:
    """A canopy of which an arm is written, or may be, beyond its own ends, and by how much (m)."""

    of: str
    name: str
    by: float
    sure: Certainty


@dataclass(frozen=True, slots=True)
class Canopy:
    """A canopy as it is set up: its outer edge above the ground by its slope and as written (m)."""

    of: str
    name: str
    by_slope: float
    written: float


@dataclass(frozen=True, slots=True)
class Hole:
    """An opening something may be brought in through: its name, how wide and how high it is (m)."""

    of: str
    name: str
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Brought:
    """A big thing that is still to be brought in, at ``stage``, and how that stands; what surely comes in has none.

    ``large``: it goes through no hole however it is held; it is ``short`` (m) too large for ``tried``, the one that
    falls short least. ``no way``: none was found; ``by`` is in the way of the one there is without it. ``doubt``: one
    was found only without ``by``, of which it is not sure that it is there, or by ``doors`` of which it is not sure
    that they open so far, perhaps as ``held`` is in the way of their leaves. ``no hole``: nothing is known to come in
    through, or what is known is ``held`` shut. ``not looked``: there are too many to look at all. ``sheet``: no whole
    sheet of a lining was found to come in. ``before`` is the last earlier stage a way was found at,
    ``after`` the first later one at which ``doors``, or a hole that is large enough, are in, where none is before.
    ``others`` are the paths and names of things that stand just as it does.
    """

    of: str
    name: str
    size: Vector
    stage: str
    word: Literal["large", "no way", "doubt", "no hole", "not looked", "sheet"]
    tried: tuple[Hole, ...] = ()
    short: float = 0.0
    by: tuple[tuple[str, str], ...] = ()
    before: str = ""
    others: tuple[tuple[str, str], ...] = ()
    doors: tuple[tuple[str, str], ...] = ()
    held: tuple[tuple[str, str], ...] = ()
    after: str = ""


@dataclass(frozen=True, slots=True)
class Result:
    """What layout has worked out of one slot.

    ``more`` is how many meetings, ``more_crossings`` how many things through the shell are not told one by one.
    ``has_bed`` says that a bed comes down in it. ``fits`` are the people of the rig, where somebody is inside.
    ``brought`` is what is still to be brought in and does not surely come in, the same whatever the slot. ``loose`` are
    the paths of leaves that fold and on which nobody sleeps: what they strike shuts no bed.
    """

    use: str
    bodies: tuple[Body, ...] = ()
    meetings: tuple[Meeting, ...] = ()
    more: int = 0
    struck: tuple[Struck, ...] = ()
    intruders: tuple[Intruder, ...] = ()
    stopped: tuple[Stopped, ...] = ()
    short: tuple[Short, ...] = ()
    crossings: tuple[Crossing, ...] = ()
    more_crossings: int = 0
    unheld: tuple[Unheld, ...] = ()
    perched: tuple[Perched, ...] = ()
    protruding: tuple[Protruding, ...] = ()
    crammed: tuple[Crammed, ...] = ()
    covered: tuple[Covered, ...] = ()
    blocked: tuple[Blocked, ...] = ()
    set_out: tuple[Body, ...] = ()
    canopies: tuple[Canopy, ...] = ()
    arms: tuple[Footless | Beyond, ...] = ()
    open: tuple[Open, ...] = ()
    unplaced: tuple[tuple[str, str], ...] = ()
    has_bed: bool = False
    fits: tuple[Fit, ...] = ()
    taken: tuple[Taken, ...] = ()
    brought: tuple[Brought, ...] = ()
    hidden: tuple[Hidden, ...] = ()
    together: tuple[Together, ...] = ()
    overlaid: tuple[Overlaid, ...] = ()
    over_beds: tuple[OverBed, ...] = ()
    beside: tuple[Beside, ...] = ()
    loose: frozenset[str] = frozenset()

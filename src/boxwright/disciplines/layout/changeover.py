"""Changing over: what there is to move from one use to another, and what was found, as records.

A thing that moves has poses: where it stands on the road, where it stands at night, outside, aside for a while; a bunk
is up or down; a door is shut or open; a step or a canopy is in or out. Lengths are metres in the rig's datum; seconds
are the work of hands.
"""

from __future__ import annotations

from typing import Literal

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.pockets import Around
from boxwright.disciplines.layout.sweeps import Mover as Sweep
from boxwright.disciplines.layout.terraces import Bed
from boxwright.exchange import Vector
from boxwright.model.place import Surfaces
from boxwright.records import dataclass

OUTSIDE, SHUT, OPEN = "outside", "shut", "open"
IN, OUT = "in", "out"
ASIDE = "aside"
CARRIED = frozenset({"carry out", "carry in", "shift", "set aside", "put back"})
Kind = Literal["carry", "fold", "gate", "set"]
Wall = Literal["front", "rear", "left", "right", "roof"]
Release = Literal["inside", "none", "key", "tool", "unknown", "not in yet"]


@dataclass(frozen=True, slots=True)
class Posed:
    """One pose of a thing: its word, and the boxes it fills then; none outside, or where it does not matter.

    ``either`` are those of them it fills in each way it may stand; empty where it surely fills all of them.
    """

    word: str
    blocks: tuple[Block, ...]
    either: tuple[tuple[Block, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Mover:
    """A thing that can be moved. ``start`` and ``goal`` are indices of its poses.

    ``hands`` is how many people one needs for it, ``seconds`` what one move takes. ``straps`` tie it on the road.
    ``within`` are paths it may overlap, being in them or they in it. ``rides`` is the leaf it goes up and down with:
    then its poses are as the leaf's, and outside. ``lift`` is how far it can be raised by its hands (m).
    ``may_leave``: may it be left outside. ``body`` is the thing itself, whose boxes are those of a pose; ``lies_on`` is
    the bed its place at night is on. ``fits`` is False where it does not go up with the leaf it rides. ``is_loose``: it
    is a leaf nobody sleeps on, which is left up, and of which nobody wrote whether it is up or down at night.
    """

    of: str
    name: str
    kind: Kind
    poses: tuple[Posed, ...]
    start: int
    goal: int
    seconds: float
    hands: int
    straps: tuple[str, ...] = ()
    within: tuple[str, ...] = ()
    carried_by: str = ""
    rides: str = ""
    lift: float = 0.0
    may_leave: bool = False
    body: Body | None = None
    lies_on: str = ""
    fits: bool = True
    is_loose: bool = False


@dataclass(frozen=True, slots=True)
class Gate:
    """An opening of a wall or the roof: the hole from corner to corner of the room's face, and how it opens.

    ``sweep`` is what its leaf may take up inside while it opens inwards, ``stands`` what it fills then. ``carries``:
    may things be carried through it, as through none in the roof.
    """

    of: str
    name: str
    wall: Wall
    low: Vector
    high: Vector
    release: Release
    carries: bool
    sweep: tuple[Block, ...] = ()
    stands: tuple[Block, ...] = ()


@dataclass(frozen=True, slots=True)
class Hung:
    """The leaf of an opening as it opens, to be judged against what stands at each moment.

    ``span`` is how much of its hole (m) it covers while it is shut, along the way it goes; None where nobody knows.
    ``is_pair``: of two leaves; ``is_over``: hinged at its bottom, so that one climbs over it.
    ``stops`` is what of the shell stops it, faces of the room or what lies in its wall: its name, how far the leaf
    gets, and whether that is sure.
    """

    opening: Closed
    leaves: tuple[Sweep, ...]
    span: float | None = None
    is_pair: bool = False
    is_over: bool = False
    stops: tuple[tuple[str, float, bool], ...] = ()


@dataclass(frozen=True, slots=True)
class Setting:
    """All that a change-over is looked for in. ``fixed`` stand still; ``faces`` are those of the finished room.

    ``turns`` are the ways leaves take; a leaf without one is not looked at on its way, and ``asks`` says so.
    ``exits`` are the openings somebody could get out through; ``held`` are those that, whatever stands before them,
    let nobody, or perhaps nobody, through. ``hung`` are the leaves of openings. What stands nearer than ``reach`` (m)
    under a hatch or outside a wall is before its hole. ``around`` is what leaves that slide into their walls may meet
    there, things aside. ``asks`` are sentences on what nobody wrote: with any of them an
    answer is only as far as known. ``doubt`` says how far all boxes are grown by their doubt, 1 for all of it;
    ``hopes`` that holes are as large as their leaves may leave them at most, not at least. ``people`` are the names of
    those who sleep here.
    """

    faces: Surfaces
    fixed: tuple[Body, ...]
    movers: tuple[Mover, ...]
    gates: tuple[Gate, ...]
    turns: tuple[Sweep, ...]
    beds: tuple[Bed, ...]
    exits: tuple[Closed, ...]
    asks: tuple[str, ...] = ()
    held: tuple[Freed, ...] = ()
    hung: tuple[Hung, ...] = ()
    reach: float = 0.0
    doubt: float = 0.0
    around: Around | None = None
    hopes: bool = False
    people: tuple[str, ...] = ()

    @property
    def room(self) -> Block:
        """Return the finished room as a box."""
        one = self.faces
        return Block((one.front, one.left, one.floor), (one.rear, one.right, one.ceiling))


@dataclass(frozen=True, slots=True)
class Freed:
    """What is known of one exit at one moment: is it free, and what is in the way or unknown otherwise.

    ``by`` of one that is shut is the key or tool it wants. ``perhaps``: nobody ticked that it is in, so it does not
    count. ``tight``: too narrow to be counted on, wide enough that somebody may get through; it has to be tried.
    ``fixed``: it is written not to open. ``unmeasured``: it is free, and nobody measured what is clear of it.
    ``not_from`` are the names of beds from which no way leads to it, where one does from another.
    """

    of: str
    name: str
    word: Literal["free", "blocked", "tight", "shut", "perhaps", "unknown", "fixed", "unmeasured"]
    by: tuple[str, ...] = ()
    not_from: tuple[str, ...] = ()

    def lets_out(self, bed: str) -> bool:
        """Return whether it is free from a bed, by its name."""
        return self.word == "free" and bed not in self.not_from


@dataclass(frozen=True, slots=True)
class Step:
    """One move: ``word`` is what is done, ``by`` the opening it goes through; ``exits`` stand as after it.

    ``is_tied``: its straps are fastened by it, not undone.
    """

    of: str
    name: str
    word: str
    by: str
    seconds: float
    hands: int
    straps: tuple[str, ...]
    exits: tuple[Freed, ...] = ()
    is_turned: bool = False
    is_tied: bool = False

    @property
    def is_carried(self) -> bool:
        """Return whether somebody carries something, and wants room to do so that nobody can judge."""
        return self.word in CARRIED


@dataclass(frozen=True, slots=True)
class Changed:
    """What a search found. ``word`` tells how it ended; ``states`` is how many states it looked at.

    ``without``: only without the things of ``leave_out``, which must stay outside as well. ``blocked``: there is none,
    all states were looked at. ``unknown``: there is one only where what is asked turns out well. ``not-found``: none
    within that many states. ``meets`` are pairs of names: what cannot be where it should, or cannot get there, and what
    it meets. ``overlaps`` are pairs that overlap where they stand before the first move, ``grazes`` those that pass
    each other with no more than the play of a hinge. ``fallen`` are pairs of what would lie on nothing in the end, and
    what it lies on before. ``meanwhile`` tells where each thing that moves stands at the end. ``is_least`` is False
    where there may be one with less work.
    """

    word: Literal["found", "without", "blocked", "not-found", "unknown"]
    steps: tuple[Step, ...] = ()
    before: tuple[Freed, ...] = ()
    cost: float = 0.0
    states: int = 0
    meets: tuple[tuple[str, str], ...] = ()
    leave_out: tuple[str, ...] = ()
    overlaps: tuple[tuple[str, str], ...] = ()
    grazes: tuple[tuple[str, str], ...] = ()
    meanwhile: tuple[tuple[str, str], ...] = ()
    fallen: tuple[tuple[str, str], ...] = ()
    is_least: bool = True


@dataclass(frozen=True, slots=True)
class Leaving:
    """How everybody gets out at night: what must move first, and through what; ``seconds`` is None where none can.

    ``ways`` are the beds' names with their exit and how far (m) it is. ``states`` as for a change-over. ``untried``:
    there is one only by exits that are to be tried or measured, or where those who sleep here can move what is too
    ``heavy`` for them, or reach the openings ``past`` what stands before them. ``shut_in`` are the names of beds
    without any. Where nobody's bed stands it is told from the free floor, and is ``unknown`` for who does not lie
    there.
    """

    word: Literal["found", "blocked", "not-found", "unknown", "untried"]
    steps: tuple[Step, ...] = ()
    ways: tuple[tuple[str, str, float], ...] = ()
    seconds: float | None = None
    exits: tuple[Freed, ...] = ()
    states: int = 0
    shut_in: tuple[str, ...] = ()
    heavy: tuple[str, ...] = ()
    past: tuple[str, ...] = ()

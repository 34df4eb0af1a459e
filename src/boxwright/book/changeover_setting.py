"""What a change-over is looked for in: a rig at a stage, cut to what stands at both ends, and all that moves."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from math import inf, isfinite

from boxwright.book.changeover_ends import End
from boxwright.book.changeover_openings import Openings
from boxwright.disciplines import frame
from boxwright.disciplines.layout.bodies import Block, Body, body_of
from boxwright.disciplines.layout.changeover import IN, OUT, OUTSIDE, Kind, Mover, Posed, Setting
from boxwright.disciplines.layout.changeover_numbers import LIFTED, REACHED, SECONDS
from boxwright.disciplines.layout.changeover_told import Told
from boxwright.disciplines.layout.folding_about import hangs_on_nothing
from boxwright.disciplines.layout.folding_in import crammed, leaf_under, mattress_crammed
from boxwright.disciplines.layout.made_up import bodies_in, raised_body
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.setting_out import is_set_out, set_out, stands_out
from boxwright.disciplines.layout.sweeps import Mover as Sweep
from boxwright.disciplines.layout.sweeps import bed_of
from boxwright.disciplines.layout.tonight import beds_tonight, slept_on_by_nobody
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.disciplines.structure.parts import Strap
from boxwright.exchange import Mass
from boxwright.model.trailer import Person
from boxwright.rig.rig import Rig
from boxwright.study.at_night import exits_at_night
from boxwright.study.slots import Slot
from boxwright.study.standing import Standing, cut
from boxwright.units import Band

UNKNOWN = Band(0.0, 0.0, inf, known=False)


class Making:
    """Makes a setting of a rig; keeps what could not be made out."""

    def __init__(self, rig: Rig, slot: Slot, start: End, goal: End) -> None:
        """Cut the rig to what stands at both ends."""
        self._rig, self._slot, self._start, self._goal = rig, slot, start, goal
        self._ends: tuple[Standing, Standing] = (self._cut(start), self._cut(goal))
        frames = {one.of: one for standing in self._ends for one in standing.frames}
        self._stands = {of: one.stands for of, one in frames.items()}
        self._aboard = tuple(frozenset(one.of for one in standing.frames) for standing in self._ends)
        self._fitted = tuple(one for one in rig.layout.fitted if one.of in frames)
        self._by_path = {one.of: one for one in self._fitted}
        self._leaves = {one.of for one in self._fitted if one.folds and one.folded is not None}
        self._straps = _straps(rig)
        night = tuple((one.of, one.stands) for one in self._night().frames)
        bodies = bodies_in(rig.layout.fitted, night, (), "night")
        self._lies_on = {body.of: body.carried_by for body in bodies}
        self._loose = self._left_up(bodies)
        self._asks: list[str] = []
        self._doubtful: list[str] = []
        self._left_in: frozenset[str] = frozenset()
        self._weights = _weights(slot.masses, rig)
        self._openings = Openings(
            rig, slot, self._ends[1], self._stands, exits_at_night(rig, slot, self._night()), self._asks
        )

    @property
    def asks(self) -> tuple[str, ...]:
        """Return what nobody wrote, as sentences."""
        return tuple(dict.fromkeys(self._asks))

    @property
    def doubtful(self) -> tuple[str, ...]:
        """Return the names of what may be a little elsewhere than it is written."""
        return tuple(dict.fromkeys(self._doubtful))

    @property
    def perhaps(self) -> tuple[str, ...]:
        """Return the names of what is there perhaps: nobody ticked it."""
        return tuple(one.name for one in self._fitted if self._stands[one.of] == "perhaps")

    def unweighed(self, movers: Iterable[Mover]) -> tuple[str, ...]:
        """Return the names of things that move and that nobody weighed."""
        return tuple(
            one.name
            for one in movers
            if one.kind == "carry" and one.start != one.goal and not isfinite(self._weights.get(one.of, 0.0))
        )

    def leave_in(self, setting: Setting, found: Told) -> bool:
        """Leave in what meets something when set out, and ask: one sleeps without it too. Return whether any does."""
        names = {one.name: one.of for one in setting.movers if one.kind == "set"}
        met: dict[str, list[str]] = {}
        for pair in (*found.there.meets, *found.there.overlaps, *found.back.meets, *found.back.overlaps):
            for name, other in (pair, pair[::-1]):
                if name in names and other not in met.setdefault(name, []):
                    met[name].append(other)
        self._left_in = frozenset(names[name] for name in met)
        self._asks += [f"where {name} can be set out: it meets {', '.join(met[name])}, and is left in" for name in met]
        return bool(met)

    def unsure(self) -> tuple[str, ...]:
        """Return what is asked where openings may let through more than they surely do."""
        return tuple(dict.fromkeys(self._openings.unsure()))

    def setting(self, doubt: float, hopes: bool = False) -> Setting:
        """Return the setting with everything as large as its doubt makes it (1), or as it is written (0).

        With ``hopes`` each opening lets through what it may at most.
        """
        fixed: list[Body] = []
        movers: list[Mover] = []
        turns: list[Sweep] = []
        for one in self._fitted:
            body = body_of(one, self._stands[one.of], "travel")
            if one.kind in {"spread", "backing"}:
                continue
            if not body.known or not body.blocks:
                self._asks.append(f"where {one.name} stands and how large it is: write its x, side, z and size")
                continue
            if any(body.doubt[:2]):
                self._doubtful.append(one.name)
            mover = self._mover(one, body, doubt)
            if mover is None:
                fixed.append(replace(body, blocks=_grown(body.blocks, body, doubt)))
            else:
                movers.append(mover)
                turns += self._turn(one) if mover.kind == "fold" else []
        gates = tuple(self._openings.gates(hopes))
        movers += [self._openings.mover(gate) for gate in gates]
        movers.sort(key=lambda one: one.name)
        fixed += _wheels(self._slot)
        tonight = {one.of for one in self._night().frames}
        beds = beds_tonight(self._fitted, tonight, self._sleepers())
        exits = self._openings.exits()
        held, hung = tuple(self._openings.held()), tuple(self._openings.hung())
        assert self._rig.layout.room is not None
        return Setting(self._rig.layout.room, tuple(fixed), tuple(movers), gates, tuple(turns), beds, exits, self.asks,
                       held, hung, LENGTHS["before hole"], doubt, self._openings.around(), hopes,
                       tuple(name for name, _ in self._sleepers()))  # fmt: skip

    # ------------------------------------------------------------------ things

    def _cut(self, end: End) -> Standing:
        return cut(self._rig, self._slot.number, self._slot.is_ticked, end.load, end.use)

    def _night(self) -> Standing:
        return self._ends[0 if self._start.use == "sleep" else 1]

    def _sleepers(self) -> tuple[tuple[str, Person], ...]:
        names = (self._start if self._start.use == "sleep" else self._goal).load.people
        return tuple(one for one in self._rig.people if not names or one[0] in names)

    def _mover(self, one: Fitted, body: Body, doubt: float) -> Mover | None:
        """Return a thing as one that moves, None where it stands still."""
        room = self._rig.layout.room
        if room is not None and one.of not in self._left_in and is_set_out(one, body, room):
            return self._set_out(one, body, doubt)
        leaf = self._leaf_under(one)
        too_high = crammed(one, self._by_path[leaf]) if leaf else mattress_crammed(one) if one.folds else None
        if too_high is not None and too_high.sure != "sure":
            goes_up = f"whether {too_high.name} goes up with {too_high.leaf_name}"
            self._asks.append(f"{goes_up}: try it, and write folded_depth")
        is_up = too_high is None or leaf in self._loose
        if is_up and one.asleep is not None and one.asleep != one.place:
            leaf = ""  # it has a place of its own at night, and does not go down with what folds
        is_cargo = one.kind == "cargo"
        is_carried = is_cargo or one.leaves_at_night  # a leaf that is out at night is taken off, not folded
        if one.of in self._leaves and not one.leaves_at_night:
            return self._leaf(one, body)
        if not is_carried and not leaf and (one.asleep is None or one.asleep == one.place):
            return None
        day, night = (body_of(one, self._stands[one.of], pose).blocks for pose in ("travel", "night"))
        if not night:
            self._asks.append(f"where {one.name} is at night: write x, side and z of its when_sleeping")
            night = day
        day, night = (_grown(blocks, body, doubt) for blocks in (day, night))
        words = ("up", "down") if leaf else ("travel", "night")
        poses = [Posed(words[0], day), Posed(words[1], night)] if day != night or leaf else [Posed("place", day)]
        if is_carried:
            poses.append(Posed(OUTSIDE, ()))
        ends = tuple(
            0 if leaf in self._loose else self._pose_at(one, end, poses, number)
            for number, end in enumerate((self._start, self._goal))
        )
        straps = self._straps.get(one.name, ())
        hands = self._hands(one.of)
        return Mover(
            one.of, one.name, "carry", tuple(poses), ends[0], ends[1],
            SECONDS["carry"] + SECONDS["strap"] * len(straps), hands, straps, self._within(one),
            one.inside or one.rides_on, leaf, REACHED["lift one" if hands == 1 else "lift two"], is_cargo, body,
            self._lies_on.get(one.of, ""), too_high is None or too_high.sure != "sure",
        )  # fmt: skip

    def _pose_at(self, one: Fitted, end: End, poses: list[Posed], number: int) -> int:
        is_gone = one.of not in self._aboard[number] or (end.use == "sleep" and one.leaves_at_night)
        if is_gone and poses[-1].word == OUTSIDE:
            return len(poses) - 1
        return 1 if end.use == "sleep" and len(poses) > 1 and poses[1].word != OUTSIDE else 0

    def _left_up(self, bodies: tuple[Body, ...]) -> frozenset[str]:
        """Return the leaves that are left up at night: nobody sleeps on them, nor has anything its place there then."""
        people, there = self._sleepers(), {one.of for one in self._night().frames}
        return slept_on_by_nobody(bodies, self._fitted, beds_tonight(self._fitted, there, people), people)

    def _set_out(self, one: Fitted, body: Body, doubt: float) -> Mover | None:
        """Return what is set out where one stops; None, and it is asked for, where nobody wrote how far it comes."""
        out = set_out(one, body, self._rig.trailer.deck_height or UNKNOWN)
        if out is None:
            self._asks.append(f"how far {one.name} comes out: write its slides by, or its reach and pitch")
            return None
        is_canopy = one.facet is not None and one.facet.out is not None
        ways = stands_out(one, body, self._rig.trailer.deck_height or UNKNOWN) if is_canopy else ()
        either = tuple(_grown(blocks, body, doubt) for blocks in ways)
        poses = Posed(IN, _grown(body.blocks, body, doubt)), Posed(OUT, _grown(out, body, doubt), either)
        return Mover(
            one.of, one.name, "set", poses, int(self._start.use == "sleep"), int(self._goal.use == "sleep"),
            SECONDS["canopy" if is_canopy else "slide"], 1, within=self._within(one), body=body,
        )  # fmt: skip

    def _leaf(self, one: Fitted, body: Body) -> Mover:
        up, down = (body_of(one, self._stands[one.of], pose).blocks for pose in ("travel", "night"))
        kind: Kind = "fold"
        is_loose = one.of in self._loose
        return Mover(
            one.of, one.name, kind, (Posed("up", up), Posed("down", down)),
            int(self._start.use == "sleep" and not is_loose), int(self._goal.use == "sleep" and not is_loose),
            SECONDS["leaf"] + (SECONDS["legs"] if one.legs else 0.0), self._hands(one.of),
            within=self._within(one), body=body, is_loose=is_loose,
        )  # fmt: skip

    def _turn(self, one: Fitted) -> list[Sweep]:
        found = bed_of(one)
        if found is None:
            self._asks.append(f"about which edge {one.name} folds: write its hinge, such as hinge: {{edge: left}}")
            return []
        room, night = self._rig.layout.room, ((other.of, other.stands) for other in self._night().frames)
        if room is not None and hangs_on_nothing(one, found, room, bodies_in(self._fitted, night, (), "night")):
            self._asks.append(f"what {one.name} is hinged to: that edge is at no side wall, and nothing stands there")
        return [found]

    def _leaf_under(self, one: Fitted) -> str:
        """Return the leaf a thing goes up and down with, empty where there is none."""
        leaf = leaf_under(one, self._by_path) if one.of not in self._leaves else None
        return leaf.of if leaf is not None else ""

    def _within(self, one: Fitted) -> tuple[str, ...]:
        found: list[str] = []
        here: Fitted | None = one
        while here is not None and (over := here.inside or here.rides_on) and over not in found:
            found.append(over)
            here = self._by_path.get(over)
        return tuple(found)

    def _hands(self, of: str) -> int:
        heavy = self._weights.get(of, 0.0)
        if of in self._leaves:  # its hinge carries the other half
            heavy /= 2.0
        if not isfinite(heavy):
            return 2
        return 1 if heavy <= LIFTED["one"] else 2 if heavy <= LIFTED["two"] else 3


def _straps(rig: Rig) -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for item in rig.straps:
        if isinstance(item.own, Strap) and item.own.over:
            found[item.own.over] = (*found.get(item.own.over, ()), item.name)
    return found


def _weights(masses: Iterable[Mass], rig: Rig) -> dict[str, float]:
    """Return how heavy each thing may be with what is in it (kg), without end where nobody knows."""
    found: dict[str, float] = {}
    for one in masses:
        found[one.of] = found.get(one.of, 0.0) + (one.kg.high if one.kg.known else float("inf"))
    for item in rig.parts:
        found.setdefault(item.of, item.mass.high if item.mass.known else float("inf"))
    return found


def _grown(blocks: tuple[Block, ...], body: Body, doubt: float) -> tuple[Block, ...]:
    by = (body.doubt[0] * doubt, body.doubt[1] * doubt, body.doubt[2] * doubt)
    if not any(by):
        return blocks
    # what may be a little higher still stands on what it stands on
    return tuple(
        Block((b.low[0] - by[0], b.low[1] - by[1], b.low[2]), (b.high[0] + by[0], b.high[1] + by[1], b.high[2] + by[2]))
        for b in blocks
    )


def _wheels(slot: Slot) -> Iterator[Body]:
    """Yield what stands up through the floor."""
    result: frame.Result | None = slot.frame
    for one in result.intrusions if result is not None else ():
        yield raised_body((one.of, one.name, one.low, one.high))

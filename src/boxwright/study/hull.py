"""What layout takes of the others: the shell round the room, what stands, what is heavy, without weights and layers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import inf, isfinite

from boxwright.disciplines.frame.lining import surfaces
from boxwright.disciplines.frame.parts import Framing, StandingLayer, StandingOpening
from boxwright.disciplines.frame.parts import Layer as LayerWords
from boxwright.disciplines.frame.result import Run
from boxwright.disciplines.frame.shell import Shell
from boxwright.disciplines.layout.bodies import Block, Standing
from boxwright.disciplines.layout.parts import Lining, Section
from boxwright.disciplines.layout.pockets import Within
from boxwright.disciplines.layout.solve import Hull
from boxwright.disciplines.layout.sourced import MASSES, SHEET
from boxwright.exchange import Box
from boxwright.model.part import Frame
from boxwright.rig.rig import Layer


def hull_of(
    bare: Shell,
    box: Box,
    runs: tuple[Run, ...] = (),
    unrouted: tuple[str, ...] = (),
    floor: float | None = None,
) -> Hull:
    """Return the shell round the room: its outer box, what stands up through the floor, and what lies in its walls.

    ``unrouted`` are the names of wires and pipes that may lie in any; ``floor`` how high its floor is by now.
    """
    half = box.outside[1] / 2.0 if box.outside[1] > 0.0 else inf
    outer = Block((box.front_x, -half, 0.0), (box.rear_x, half, box.outside[2] or inf))
    fixed = tuple((one.of, one.name, one.low, one.high) for one in bare.intrusions)
    within = (*_studs(bare), *map(_run, runs), *(Within("", name, "", ALL, ALL, False) for name in unrouted))
    return Hull(outer, fixed, bare.nose is not None, box.deck_height, within, floor)


def floor_of(layers: tuple[StandingLayer, ...], framing: Framing | None) -> float:
    """Return how high the floor is built up over the deck (m) by what stands of it, or perhaps stands."""
    return surfaces(0.0, 0.0, 0.0, tuple((one.wall, one.layer) for one in layers), framing).floor


ALL = (-inf, inf)
"""Anywhere along a wall, at any height."""


def _studs(bare: Shell) -> Iterator[Within]:
    """Yield the studs and posts of the upright walls; those that an opening brings with it are framed for its leaf."""
    for one in bare.members:
        if one.runs == "up" and not one.is_removed and not one.of.startswith("openings["):
            half = one.face.best / 2.0
            for up in one.pieces:
                ends = one.at.low - half, one.at.high + half
                is_sure = one.is_held and one.at.known
                yield Within(one.of, f"{one.kind} {one.name}", one.wall, ends, up, is_sure, is_stud=True)


def _run(one: Run) -> Within:
    """Return a stretch of a wire or a pipe in a wall; sure where its route says how far it runs, and how high."""
    up = (one.up - THIN, one.up + THIN) if one.up is not None else ALL
    is_sure = one.up is not None and isfinite(one.low) and isfinite(one.high)
    return Within(one.of, f"{one.what} {one.name}", one.wall, (one.low, one.high), up, is_sure)


THIN = 0.002
"""Half of how thick a wire or a pipe is taken to be (m), so that it is more than a touch."""


STIFF = ("ply", "osb", "mdf", "hardboard", "chipboard")
"""Words of what is fitted in whole sheets that do not bend round a corner."""


def linings_of(layers: tuple[Layer, ...]) -> tuple[Lining, ...]:
    """Return the layers that are fitted in stiff sheets."""
    found = []
    for one in layers:
        own = one.own
        if isinstance(own, LayerWords) and any(word in own.of.lower() for word in STIFF):
            thick = own.thick.high if own.thick is not None and own.thick.known else SHEET["thick"]
            found.append(Lining(one.of, f"{one.wall} {one.name}", thick, one.marks))
    return tuple(found)


def stood_of(frames: tuple[Frame, ...]) -> tuple[Standing, ...]:
    """Return what stands, by path, so that no new weight makes it new."""
    return tuple((one.of, one.stands) for one in frames)


def built_in_of(section: Section) -> Section:
    """Return what layout knows without the cargo: nothing is brought in past it, as it comes and goes."""
    return replace(section, fitted=tuple(one for one in section.fitted if one.kind != "cargo"))


def openings_of(openings: tuple[StandingOpening, ...]) -> tuple[str, ...]:
    """Return the paths of the openings that stand."""
    return tuple(one.of for one in openings)


def heavy_of(frames: tuple[Frame, ...], section: Section) -> tuple[str, ...]:
    """Return the paths of what, with all in and on it, is too heavy to lift over things, or that nobody weighed."""
    carried = {one.of: one.inside or one.rides_on for one in section.fitted}
    found: dict[str, float] = {}
    for one in frames:
        of, seen = one.of, {one.of}
        while (above := carried.get(of, "")) and above not in seen:
            seen.add(above)
            of = above
        found[of] = found.get(of, 0.0) + (one.dry.high if one.dry.known else inf)
    return tuple(of for of, mass in found.items() if mass > MASSES["rolled"])

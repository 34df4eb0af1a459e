"""What the study of changes must not do: each case here once stood unguarded.

Expected numbers are worked out here by moments about the axles (statics, from memory).
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.model.place import Surfaces
from boxwright.study.left import cargo_of
from boxwright.study.lever import Lever, break_even
from boxwright.study.moves import Edit, movables
from boxwright.study.room import Room, room_of
from boxwright.units import Band
from tests.study.demo import POUND
from tests.study.test_remedy import AXLE, LEVER, REAR_HEAVY, UNWEIGHED, asked, bench, chest, rig_text

CODE = "weight/tongue-lifts"


def loose(text: str, is_doubtful: bool = False) -> set[str]:
    """Return what may be moved along the trailer in the slot whose ball lifts, the chest's place perhaps in doubt."""
    one, _, slot = asked(text, CODE)
    if is_doubtful:
        frames = tuple(
            replace(frame, place=replace(frame.place, x=Band(3.8, 3.7, 3.9, spread="interval")))
            if frame.name == "chest" else frame
            for frame in slot.standing.frames
        )  # fmt: skip
        slot = replace(slot, standing=replace(slot.standing, frames=frames))
    rig = one.reading.rig
    return {found.item.name for found in movables(rig, one.rooms, slot, 0, rig.header.units)}


def test_a_change_that_cannot_be_read_is_no_change() -> None:
    one = bench(REAR_HEAVY)
    assert one.after((Edit("parts[chest].x", "130"),)) is not None
    assert one.after((Edit("parts[chest].x", "somewhere"),)) is None


@pytest.mark.parametrize(("load", "scope"), [("", "road"), (", load: road", None), (", load: night", "road")])
def test_a_change_of_a_load_state_that_stood_on_a_scale_is_looked_at_everywhere(load: str, scope: str | None) -> None:
    ticket = f"measured:\n  ticket: {{date: 2026-04-30, what: ticket, stage: shell, axles: 1725, tongue: 235{load}}}\n"
    one = bench(REAR_HEAVY + ticket)
    assert {one.of for one in one.reading.rig.measured} == {"measured[ticket]"}
    assert one.scope_of((Edit("loads[road].out", "chest"),)).load == scope


def test_what_folds_or_whose_place_is_in_doubt_is_not_moved() -> None:
    assert "chest" in loose(REAR_HEAVY)
    assert "chest" not in loose(REAR_HEAVY, is_doubtful=True)
    folding = chest("x: 135, side: left+2, z: 0, size: 30 x 20 x 20, weight: 900, folds: up, folded_depth: 3")
    assert "chest" not in loose(rig_text(folding))


@pytest.mark.parametrize(("kind", "is_left"), [("stage: shell, kind: cargo", True), ("stage: shell, done: yes", False)])
def test_cargo_with_something_built_into_it_is_not_left_behind(kind: str, is_left: bool) -> None:
    radio = f"  radio: {{inside: chest, x: +2, side: +2, z: +2, size: 5 x 5 x 5, weight: 3, {kind}}}\n"
    one, _, slot = asked(REAR_HEAVY.replace("  can: ", f"{radio}  can: "), CODE)
    pieces = [piece.names for piece in cargo_of(one.reading.rig, slot)]
    assert (("chest", "radio") in pieces) == is_left
    assert not any(names == ("chest",) for names in pieces)


def test_what_a_part_stands_in_already_does_not_hold_it_and_what_is_ahead_does() -> None:
    own = ((0.0, 2.0), (0.0, 1.0), (0.0, 1.0))
    crossed, ahead = ((1.0, 3.0), (0.0, 1.0), (0.0, 1.0)), ((4.0, 5.0), (0.0, 1.0), (0.0, 1.0))
    walls = Surfaces(-1.0, 9.0, -1.0, 2.0, 0.0, 2.0, -1.0, 9.0, -1.0, 2.0, 2.0)
    assert room_of([own], [crossed], 0, walls) == Room(-1.0, 7.0, ())
    assert room_of([own], [crossed, ahead], 0, walls) == Room(-1.0, 7.0, ((2.0, 5.0),))


def test_the_mass_that_crosses_a_share_counts_its_own_weight_too() -> None:
    """At x 150 each pound takes 50/152 off the ball; (T + c m) / (G + m) = s gives m = (T - s G) / (s - c)."""
    _, finding, slot = asked(UNWEIGHED, CODE)
    rule = replace(finding, code="towing/tongue-share", limit=0.10)
    ball = 235.0 + 100.0 * (AXLE - 55.0) / LEVER + 2.0 * (AXLE - 70.5) / LEVER + 1.0 * (AXLE - 42.5) / LEVER
    gross = 1960.0 + 100.0 + 2.0 + 1.0
    mass = (ball - 0.10 * gross) / (0.10 + 50.0 / LEVER)
    (found,) = break_even(rule, Lever("share", True), slot)
    assert found.kg == pytest.approx(mass * POUND, rel=1e-6)
    assert (ball - 50.0 / LEVER * mass) / (gross + mass) == pytest.approx(0.10)

"""Rigs for the tests of the study: the demo rigs, and a small one with nothing against it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path

from pytest import approx

from boxwright.finding import Use, Verdict
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot, Study, study
from boxwright.study.verdict import CHAPTERS, verdict
from boxwright.units import Band

RIGS = Path(__file__).parents[2] / "rigs"
TODAY = date(2026, 5, 2)
POUND = 0.45359237
"""Kilogram in a pound, exact by definition (international pound of 1959, from memory)."""
INCH = 0.0254
"""Metre in an inch, exact by definition (international inch of 1959, from memory)."""

ALL = frozenset(chapter.word for chapter in CHAPTERS)

CLEAN = """\
boxwright: 1
rig: Clean
units: {length: in, weight: lb, volume: gal}
countries: [US-NC]
class: cargo
today: {stage: shell}
people:
  owner: {weight: 170, sleeps: bed}
trailer:
  body: {length: 168, width: 80, height: 78}
  outside: {length: 171, width: 84, over_fenders: 101 1/2, height: 98, length_overall: 226}
  deck_height: 18 1/2
  coupler_x: -52
  coupler_height: 18
  axles: {kind: leaf with equaliser, x: [83, 117], gawr: [3500, 3500], track: 90}
  gvwr: 7000
  empty: {weight: 1960, tongue: 235, cg_z: 22, includes: [smoke, extinguisher, warmer]}
  tyres: {size: ST205/75R15, load: 1820 each, at: 50 psi, date: "1325", count: 4}
  brakes: {kind: electric, axles: 2, breakaway: yes, breakaway_battery: 2026-03-20}
  coupler: {ball: 2 5/16 in, rating: 7000}
  jack: {rating: 2000, x: -40}
  chains: {count: 2, rating: 7000 each}
  lamps: [tail, stop, turn, side, clearance front, clearance rear, identification, plate]
tow:
  pickup: {rating: 9000, tongue: 900, payload: 1450, gcwr: 14500, gvwr: 6900, kerb: 5150, people_and_gear: 560,
           ball_height: 18, wheelbase: 145, overhang: 48, rear_axle: 3900}
stages:
  shell: {what: the shell, done: yes 2026-04-01}
  bunks: {what: bunks}
openings:
  door: {wall: right, x: 100, width: 30, z: 0, height: 72, by: trailer builder, cut: yes, release: inside,
         swing: {hinge: front, opens: out, to: 90 deg}}
  ramp: {wall: rear, side: centre, width: 74, z: 0, height: 72, by: trailer builder, cut: yes, release: inside,
         swing: {hinge: bottom, opens: out, to: 90 deg}}
  vent-low: {wall: left, x: 130, width: 10, z: 4, height: 4, by: trailer builder, cut: yes, free_area: 30 sq in}
  vent-high: {wall: right, x: 20, width: 10, z: 70, height: 4, by: trailer builder, cut: yes, free_area: 30 sq in}
places:
  home: {coldest_design: 72 F, hottest_design: 74 F}
parts:
  bed: {x: 20, side: centre-20, z: 12, size: 70 x 40 x 10, weight: 100, stage: shell, done: yes}
  chest: {x: 60, side: centre-10, z: 0, size: 30 x 20 x 20, weight: 50, stage: shell, kind: cargo}
  can: {x: 66, side: left+9, z: 0, size: 9 x 9 x 12, weight: 2, stage: shell, done: yes, tank: {of: water, volume: 5}}
  alarm: {x: 40, wall: left, z: 60, size: 5 x 2 x 5, weight: 1, expires: 2032-01, stage: shell, done: yes, alarm: CO}
  smoke: {x: 80, side: centre, z: 74, size: 4 x 4 x 1, expires: 2032-01, stage: shell, done: yes, alarm: smoke}
  extinguisher: {x: 92, wall: right, z: 40, size: 5 x 5 x 16, expires: 2031-01, stage: shell, done: yes,
                 puts_out: ABC}
  warmer: {x: 150, wall: left, z: 60, size: 8 x 6 x 10, stage: shell, done: yes,
           heater: {of: electric, lowest: 300 W, highest: 1500 W, switches: yes, fed_by: mains}}
  shelf: {x: 10, side: left, z: 40, size: 40 x 10 x 2, weight: 12, stage: bunks}
loads:
  road: {cargo: all, tanks: {can: full}, for: [tow]}
  night: {cargo: none,
          tanks: {can: full}, parked: yes, coupled: yes, legs: down, people: [owner], for: [sleep, leave, work]}
"""


@cache
def demo(name: str) -> Rig:
    """Return one of the demo rigs."""
    return read_rig((RIGS / f"{name}.yaml").read_bytes()).rig


@cache
def studied(name: str) -> Study:
    """Return a demo rig studied at every stage."""
    return study(demo(name), TODAY, all_stages=True)


def near(band: Band) -> Band:
    """Return a band whose ends compare equal to those that differ in the last bits only."""
    return replace(band, best=approx(band.best), low=approx(band.low), high=approx(band.high))


def clean(old: str = "", new: str = "") -> Rig:
    """Return the small rig, with one piece of its text replaced."""
    assert old in CLEAN
    return read_rig(CLEAN.replace(old, new) if old else CLEAN).rig


def slot_of(found: Study, stage: str, load: str, is_ticked: bool = False, use: str = "") -> Slot:
    """Return one slot of a study."""
    return next(
        slot
        for slot in found.slots
        if (slot.stage, slot.load, slot.is_ticked) == (stage, load, is_ticked) and use in {"", slot.use}
    )


def if_all_judge(found: Study, use: Use) -> Verdict:
    """Return the worst verdict for a use as it would be if the rules of every discipline were built and held."""
    verdicts = [
        verdict(use, slot.load, slot.stage, (*slot.findings, *slot.accepted), ALL) for slot in found.asked_slots(use)
    ]
    return min(verdicts, key=lambda one: ("no", "ask", "limits", "go").index(one.answer))

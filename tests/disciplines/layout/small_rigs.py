"""A small metric rig in which everything has room, with things put into it, and with left and right changed over."""

from __future__ import annotations

import re
from datetime import date
from functools import cache

from boxwright.finding import Use
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

TODAY = date(2026, 6, 1)
BASE = """\
boxwright: 1
rig: Small
units: {length: mm, weight: kg, temperature: C}
countries: [EU-DE]
class: cargo
today: {stage: all}
people:
  owner: {weight: 75, height: 1650, sleeps: bunk}
trailer:
  body: {length: 4000, width: 2000, height: 2000}
  outside: {length: 4080, width: 2080, over_fenders: 2400, height: 2600, length_overall: 5400}
  deck_height: 300
  coupler_x: -1300
  axles: {kind: leaf, x: [2200], gawr: [1800], track: 2200}
  gvwr: 1800
  empty: {weight: 700, tongue: 60, cg_z: 500}
frame:
  studs: {tube: 25 x 40 x 1.5 mm, every: 400, first: 0}
  bows: {tube: 25 x 40 x 1.5 mm, every: 400, first: 0}
openings:
  door: {wall: right, x: 2600, width: 700, z: 0, height: 1700, by: builder, cut: yes, release: inside, DOOR}
  ramp: {wall: rear, side: centre, width: 1400, z: 0, height: 1800, by: builder, cut: yes, release: inside, RAMP}
OPENINGS
parts:
  bunk: {x: 100, side: left, z: 600, size: 1900 x 700 x 50, weight: 25, stage: all, done: yes, BUNK}
PARTS
stages:
  all: {what: all}
loads:
  road: {cargo: all, for: [tow]}
  night: {cargo: all, parked: yes, coupled: yes, people: [owner], for: [sleep, leave, work]}
"""
DOOR = "swing: {hinge: front, opens: out, to: 170 deg}"
RAMP = "swing: {hinge: bottom, opens: out, to: 90 deg}"
BUNK = "folds: up, folded_depth: 120, hinge: {edge: left}"
DONE = "weight: 5, stage: all, done: yes"
CARGO = "weight: 5, kind: cargo"
HEAVY = "weight: 90, kind: cargo"
Told = frozenset[tuple[str, str, str]]
SWAPPED = {"left": "right", "right": "left", "+": "-", "-": "+"}


def thing(name: str, x: object, side: str, z: object, size: str, more: str = DONE) -> str:
    """Return the line of a part."""
    return f"{name}: {{x: {x}, side: {side}, z: {z}, size: {size}, {more}}}\n"


def rig_of(parts: str = "", openings: str = "", door: str = DOOR, bunk: str = BUNK) -> str:
    """Return the text of the small rig with some more parts and openings, one a line."""
    text = BASE.replace("DOOR", door).replace("RAMP", RAMP).replace("BUNK", bunk)
    for key, lines in (("OPENINGS", openings), ("PARTS", parts)):
        text = text.replace(f"{key}\n", "".join(f"  {line.strip()}\n" for line in lines.splitlines() if line.strip()))
    return text


def mirrored(text: str) -> str:
    """Return a rig with left and right changed over: sides with their offsets, hinges, walls and ways."""
    text = re.sub(r"\bcentre([+-])", lambda found: f"centre{SWAPPED[found[1]]}", text)
    side = re.compile(r"\b(left|right)\b([+-](?=[0-9]))?")
    text = side.sub(lambda found: SWAPPED[found[1]] + SWAPPED.get(found[2] or "", ""), text)
    # what is placed from something's own left edge keeps its doubt and its size, and counts from the other one
    owns = re.compile(r"rides_on: |inside: ")
    assert not any(owns.search(line) and "side: +" in line for line in text.splitlines()), "write side from a wall"
    return text


@cache
def told(text: str, use: Use) -> Told:
    """Return kind, code and place of all that layout says of a rig in one use."""
    rig = read_rig(text)
    assert [one.says for one in rig.problems if one.kind == "problem"] == []
    found = study(rig.rig, TODAY).findings(use)
    return frozenset(
        (str(one.kind), one.code.removeprefix("layout/"), one.where) for one in found if one.code.startswith("layout/")
    )

"""A small rig in text, and the frame that is worked out of it: what the tests of the frame have in common."""

from __future__ import annotations

from boxwright.disciplines import structure
from boxwright.disciplines.frame.result import Fastening, Hole, Result
from boxwright.disciplines.frame.shell import shell
from boxwright.disciplines.frame.solve import solve
from boxwright.rig.compose import read_rig

RIG = """boxwright: 1
rig: Plover
units: {length: in, weight: lb}
countries: [US-NC]
today: {stage: shell, date: 2026-05-02}
trailer:
  body: {length: LENGTH, width: 80, height: 78}
  coupler_x: -52
  axles: {kind: leaf with equaliser, x: [83, 117], gawr: [3500, 3500]}
frame:
  studs: {tube: 1 x 1 1/2 x 16 ga, every: 16, first: 0}
  bows: {tube: 1 x 1 1/2 x 16 ga, every: 16, first: 0}
  skin: aluminium 0.040
openings:
OPENINGS
parts:
PARTS
stages:
  shell: {what: shell}
measured:
MEASURED
"""


def rig_text(
    openings: tuple[str, ...] = (), parts: tuple[str, ...] = (), measured: tuple[str, ...] = (), length: float = 160.0
) -> str:
    """Return the small rig with these lines under openings, parts and measured."""
    text = RIG.replace("LENGTH", repr(length))
    for word, lines in (("OPENINGS", openings), ("PARTS", parts), ("MEASURED", measured)):
        text = text.replace(word, "\n".join(f"  {line}" for line in lines))
    return text


def framed(text: str) -> Result:
    """Return the frame of a rig's plan, with nothing standing in it yet."""
    rig = read_rig(text).rig
    fixings = structure.offers(rig.structure.fastened).fixings
    return solve(shell(rig.frame, rig.trailer, fixings), rig.frame, (), (), ())


def window(result: Result, name: str = "window") -> Hole:
    """Return an opening by its name."""
    return next(one for one in result.holes if one.name == name)


def hung(result: Result) -> Fastening:
    """Return the one hinge there is."""
    (found,) = result.fastenings
    return found

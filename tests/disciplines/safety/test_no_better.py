"""No answer for the night gets better when a fact is taken away: not known is at best as good as the worst it may be.

Each case names one fact that safety reads, what it may turn out to be, and ways not to know it. The answers are those
of whole studies, of which only what is built here counts: the text, the room and safety.
"""

from __future__ import annotations

from functools import cache

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.study.verdict import CHAPTERS, WORST_FIRST, verdict, worst
from tests.disciplines.safety.test_findings import JUDGED_ON, RIG

ALL = frozenset(chapter.word for chapter in CHAPTERS)
OF_THE_ROOM = ("safety/", "rig/", "layout/")
STOVE = "stove: {x: 3600, side: left+150, z: 800, size: 300 x 300 x 100, weight: 4, stage: shell, done: yes"
BATTERY = "battery: {x: 100, side: left, z: 0, size: 300 x 200 x 200, weight: 20, stage: shell, done: yes"
LAMP = "lamp: {x: 2800, side: centre, z: 1500, size: 100 x 100 x 50, weight: 1, stage: shell, done: yes"
ENGINE = "generator: {x: 3600, side: left, z: 0, size: 500 x 300 x 400, weight: 20, stage: shell, done: yes"
MORE = f"""\
  {STOVE}, burns: diesel, keep_clear: 260}}
  {ENGINE}, when_sleeping: out}}
  {BATTERY}}}
  {LAMP}}}
  # one more"""
WIRE = "light: {from: battery, to: lamp, gauge: 2.5 mm2, stage: shell, done: yes}"
BASE = RIG.replace("  # one more", MORE).replace("loads:\n  road", f"wires:\n  {WIRE}\nloads:\n  road")
BASE = BASE.replace("warner: {x: 2600", "warner: {x: 2300")
TICK = "stage: shell, done: yes"
DOOR = "height: 1800, stage: shell, cut: yes, done: yes, release: inside, swing: {hinge: front, opens: out, to: 90 deg}"
SWING = "swing: {hinge: front, opens: out, to: 90 deg}}"
WINDOW = "stage: shell, cut: yes, done: yes, egress: wanted, release: inside, clear: {width: 700, height: 500}"


def ticks(thing: str) -> tuple[str, tuple[str, ...], tuple[str, ...]]:
    """Return the case of a tick: what is not ticked, or half, may not be there."""
    return thing, (thing.replace("done: yes", "done: no"),), (
        thing.replace(", done: yes", ""), thing.replace("done: yes", "done: part")
    )  # fmt: skip


FACTS: dict[str, tuple[str, tuple[str, ...], tuple[str, ...]]] = {
    "door width": ("x: 3300, width: 700", ("x: 3300, width: 380",), ("x: 3300", "x: 3300, width: unknown",
                                                                       "x: 3300, width: 380..700")),
    "door height": ("z: 0, height: 1800", ("z: 0, height: 380",), ("z: 0", "z: 0, height: unknown",
                                                                     "z: 0, height: 380..1800")),
    "door z": ("width: 700, z: 0", ("width: 700, z: 150",), ("width: 700", "width: 700, z: unknown")),
    "door x": ("wall: right, x: 3300", ("wall: right, x: 1000",), ("wall: right", "wall: right, x: unknown")),
    "door wall": ("wall: right, x: 3300", ("wall: left, x: 3300",), ("x: 3300",)),
    "door release": (
        DOOR, (DOOR.replace("inside", "none"), DOOR.replace("inside", "key"), DOOR.replace("inside", "tool")),
        (DOOR.replace("release: inside, ", ""), DOOR.replace("inside", "unknown"), DOOR.replace("inside", "why")),
    ),
    "door tick": ticks("height: 1800, stage: shell, cut: yes, done: yes"),
    "door swing": (
        f", {SWING}", (", swing: {hinge: front, opens: in, to: 90 deg}}",
                        ", swing: {hinge: front, opens: out, to: 5 deg}}"),
        ("}", ", swing: {hinge: front}}", ", swing: {hinge: front, opens: out}}", ", swing: {opens: out, to: 90 deg}}",
         ", swing: {hinge: front, to: 90 deg}}", ", swing: {hinge: front, opens: out, to: unknown}}",
         ", swing: {hinge: front, opens: out, to: 5..90 deg}}"),
    ),
    "door meant": (f"inside, {SWING}", (f"inside, egress: no, {SWING}",), (f"inside, egress: unknown, {SWING}",)),
    "window clear": (
        ", clear: {width: 700, height: 500}", (", clear: {width: 200, height: 500}",
                                               ", clear: {width: 700, height: 200}"),
        ("", ", clear: {width: 700}", ", clear: {height: 500}", ", clear: {width: unknown, height: 500}",
         ", clear: {width: 700, height: unknown}", ", clear: {width: 200..700, height: 500}"),
    ),
    "window meant": (WINDOW, (WINDOW.replace("wanted", "no"),), (WINDOW.replace("wanted", "unknown"),)),
    "window release": (
        WINDOW, (WINDOW.replace("inside", "none"), WINDOW.replace("inside", "key")),
        (WINDOW.replace("release: inside, ", ""), WINDOW.replace("inside", "unknown"), WINDOW.replace("inside", "why")),
    ),
    "window tick": ticks(WINDOW),
    "window cut": (WINDOW, (WINDOW.replace("cut: yes, done: yes", "cut: no, done: no"),),
                   (WINDOW.replace("cut: yes, done: yes, ", ""),)),
    "window z": ("width: 800, z: 700", ("width: 800, z: 1300",), ("width: 800", "width: 800, z: unknown")),
    "window x": ("wall: left, x: 600", ("wall: left, x: 3300",), ("wall: left", "wall: left, x: unknown")),
    "smoke tick": ticks(f"size: 120 x 120 x 40, weight: 1, {TICK}"),
    "smoke kind": ("alarm: smoke, ", ("alarm: gas, ",), ("", "alarm: unknown, ")),
    "smoke date": (", expires: 2034-01", (", expires: 2024-01",), ("", ", expires: unknown")),
    "smoke x": ("smoke: {x: 2000", ("smoke: {x: -900",), ("smoke: {x: unknown", "smoke: {", "smoke: {x: -900..2000")),
    "smoke z": ("z: ceiling-60, ", ("z: 2800, ",), ("", "z: unknown, ", "z: 1900..2800, ")),
    "smoke side": ("x: 2000, side: centre", ("x: 2000, side: right+400",), ("x: 2000", "x: 2000, side: unknown")),
    "CO tick": ticks(f"size: 120 x 40 x 80, weight: 1, {TICK}"),
    "CO kind": ("alarm: CO, ", ("alarm: gas, ",), ("", "alarm: unknown, ")),
    "CO date": (", expires: 2032-01", (", expires: 2022-01",), ("", ", expires: unknown")),
    "CO x": ("warner: {x: 2300", ("warner: {x: -900",), ("warner: {x: unknown", "warner: {", "warner: {x: -900..2300")),
    "extinguisher tick": ticks(f"size: 100 x 100 x 380, weight: 3, {TICK}"),
    "extinguisher letters": (", puts_out: ABC", (", puts_out: B", ", puts_out: A"), ("", ", puts_out: unknown")),
    "extinguisher date": (", expires: 2031-01", (", expires: 2021-01",), ("", ", expires: unknown")),
    "extinguisher x": ("extinguisher: {x: 3000", ("extinguisher: {x: -900",),
                       ("extinguisher: {x: unknown", "extinguisher: {", "extinguisher: {x: -900..3000")),
    "extinguisher z": ("wall: right, z: 600", ("wall: right, z: 2800",), ("wall: right", "wall: right, z: unknown")),
    "fuel": ("can: {x: -500, side: centre, z: 0, size: 300 x 200 x 300, weight: 2, stage: shell, done: yes, "
             "tank: {of: petrol", ("can: {x: 100, side: centre, z: 0, size: 300 x 200 x 300, weight: 2, stage: shell, "
             "done: yes, tank: {of: petrol",),
             ("can: {x: 100, side: centre, z: 0, size: 300 x 200 x 300, weight: 2, stage: shell, done: yes, tank: {of: "
              "unknown", "can: {x: 100, side: centre, z: 0, size: 300 x 200 x 300, weight: 2, stage: shell, done: yes, "
              "tank: {of: bottled stuff",
              "can: {x: 100, side: centre, z: 0, size: 300 x 200 x 300, weight: 2, stage: shell, tank: {of: petrol")),
    "fuel x": ("can: {x: -500", ("can: {x: 100",), ("can: {x: unknown", "can: {", "can: {x: -500..100")),
    "fuel full": ("tanks: {can: full}, parked", ("tanks: {can: full}, parked",),
                  ("tanks: {}, parked", "tanks: {can: unknown}, parked", "parked")),
    "bed x": ("bed: {x: 500", ("bed: {x: 2200",), ("bed: {x: unknown", "bed: {")),
    "bed tick": ticks(f"size: 1900 x 800 x 300, weight: 60, {TICK}"),
    "who sleeps on what": (", sleeps: bed", (", sleeps: nowhere",), ("", ", sleeps: unknown")),
    "who is inside": ("people: [owner], ", ("people: [owner], ",), ("", "people: unknown, ")),
    "home": ("countries: [US-NC]", ("countries: [NZ]",), ("countries: []", "countries: [ZZ]", "class: cargo")),
    "flame fuel": (", burns: diesel", (", burns: propane",), ("", ", burns: unknown", ", burns: dung")),
    "flame place": ("stove: {x: 3600, side: left+150", ("stove: {x: 2400, side: left+150",), ("stove: {x: unknown, "
                    "side: left+150", "stove: {side: left+150")),
    "engine at night": (", when_sleeping: out", ("",), (", when_sleeping: unknown", ", when_sleeping: {x: unknown}")),
    "wire end": ("to: lamp", ("to: left x1500 z500",), ("to: unknown", "to: somewhere")),
    "wire tick": (WIRE, (WIRE.replace("to: lamp", "to: left x1500 z500"),), (WIRE.replace(", done: yes", ""),
                                                                           WIRE.replace("done: yes", "done: part"))),
    "lamp tick": ticks(LAMP),
}  # fmt: skip


@cache
def answer(text: str) -> int:
    """Return how good the answer for the night is, 0 for no."""
    slots = [slot for slot in study(read_rig(text).rig, JUDGED_ON).asked_slots("sleep") if slot.is_ticked]
    found = [
        verdict("sleep", one.load, one.stage, [it for it in one.findings if it.code.startswith(OF_THE_ROOM)], ALL)
        for one in slots
    ]
    one = worst(found)
    return WORST_FIRST.index(one.answer) if one is not None else 0


def with_fact(old: str, new: str) -> str:
    """Return the rig with one of its facts written otherwise."""
    assert BASE.count(old) == 1, f"{old!r} stands {BASE.count(old)} times"
    return BASE.replace(old, new)


def test_with_every_fact_known_the_night_is_a_go() -> None:
    assert read_rig(BASE).problems == ()
    assert WORST_FIRST[answer(BASE)] in ("go", "limits")


@pytest.mark.parametrize("name", FACTS)
def test_a_fact_taken_away_is_no_better_than_at_its_worst(name: str) -> None:
    old, values, unknown = FACTS[name]
    at_worst = min(answer(with_fact(old, value)) for value in (*values, old))
    assert {new: answer(with_fact(old, new)) for new in unknown if answer(with_fact(old, new)) > at_worst} == {}


@pytest.mark.parametrize(
    "name", [one for one in FACTS if one not in ("door z", "door wall", "fuel full", "home", "who is inside")]
)
def test_a_fact_at_its_worst_is_told(name: str) -> None:
    """Else the test above would hold of a fact that nobody reads."""
    old, values, _ = FACTS[name]
    said = [worked_codes(with_fact(old, value)) for value in values]
    assert any(one != worked_codes(BASE) for one in said)


@cache
def worked_codes(text: str) -> tuple[str, ...]:
    """Return the codes of all that is said of a rig for the night."""
    found = study(read_rig(text).rig, JUDGED_ON).findings("sleep")
    return tuple(sorted(one.code for one in found if one.code.startswith(OF_THE_ROOM)))

"""Shells that cannot be, as they come to be typed: each is told, nothing breaks off, and it can still be drawn."""

from __future__ import annotations

import random
import re
from datetime import date
from pathlib import Path

import pytest

from boxwright.book.sheets import sheets_of
from boxwright.rig.compose import Reading, read_rig
from boxwright.study.slots import Study, study

RIG = (Path(__file__).parents[2] / "findings" / "frame" / "rig.yaml").read_text(encoding="utf-8")
JUDGED_ON = date(2026, 6, 1)

WINDOW = "x: 98, width: 12, z: 34, height: 20"
HATCH = "x: 130, width: 12, z: 20, height: 12"
BODY = "body: {length: 160, width: 80, height: 78}"
STUDS = "studs: {tube: 1 x 1 1/2 x 16 ga, every: 16, first: 0}"
SKIN = "  skin: aluminium 0.040\n"
MEASURED = "measured:\n"


def reading(old: str, new: str) -> Reading:
    """Return the rig of the trios with one piece of its text replaced."""
    assert RIG.count(old) == 1
    return read_rig(RIG.replace(old, new))


def line_of(text: str) -> int:
    """Return the line of the rig a text stands in, counted from 1."""
    return RIG[: RIG.index(text)].count("\n") + 1


def told(found: Study) -> set[tuple[str, str, str]]:
    """Return what the frame says in any slot: code, kind and where."""
    return {
        (one.code, one.kind, one.where)
        for slot in found.slots
        for one in slot.findings
        if one.code.startswith("frame/")
    }


FOUND = [
    (WINDOW, "x: 98, width: 300, z: 34, height: 20", "frame/opening-outside-wall", "fix", "openings[window]"),
    (WINDOW, "x: 98, width: -12, z: 34, height: 20", "frame/opening-outside-wall", "unknown", "openings[window]"),
    (WINDOW, "x: 98, width: 0, z: 34, height: 20", "frame/opening-outside-wall", "unknown", "openings[window]"),
    (WINDOW, "x: 98, width: 12, z: 34, height: 1e9", "frame/opening-outside-wall", "fix", "openings[window]"),
    (WINDOW, "x: -1e9, width: 12, z: 34, height: 20", "frame/opening-outside-wall", "fix", "openings[window]"),
    (HATCH, "x: 80, width: 30, z: 0, height: 70", "frame/opening-overlaps", "fix", "openings[hatch]"),
    ("5: 80, 6: 96", "5: 80, 6: 80.2", "frame/tape-disagrees", "fix", "measured[studs-left]"),
    ("5: 80,", "5: 99,", "frame/tape-disagrees", "fix", "measured[studs-left]"),
    ("5: 80,", "5: 999,", "frame/tape-disagrees", "fix", "measured[studs-left]"),
    ("5: 80,", "5: 1e9,", "frame/tape-disagrees", "fix", "measured[studs-left]"),
    (
        MEASURED,
        "measured:\n  again: {date: 2026-01-01, what: tape, studs: left, values: {5: 84}}\n",
        "frame/tape-disagrees",
        "fix",
        "measured[studs-left]",
    ),
    (STUDS, f"{STUDS[:-1]}, right: {{extra: [16.5]}}}}", "frame/bay-without-width", "fix", "frame.studs"),
    ("rise: 3", "rise: 78", "frame/roof-lower-than-rise", "fix", "frame.bows.rise"),
    ("rise: 3", "rise: 1e9", "frame/roof-lower-than-rise", "fix", "frame.bows.rise"),
    ("rise: 3", "rise: -3", "frame/roof-lower-than-rise", "unknown", "frame.bows.rise"),
    ("shape: arched, rise: 3", "shape: rounded, radius: 45", "frame/roof-lower-than-rise", "fix", "frame.bows.radius"),
    (f"  {BODY}\n", "", "frame/members-unknown", "unknown", "trailer.body"),
    (BODY, "body: {length: 160, width: unknown, height: 78}", "frame/members-unknown", "unknown", "trailer.body"),
    ("at: [32, 64, 96]", "at: [1e9]", "frame/fastener-misses", "fix", "parts[bed]"),
    ("at: [32, 64, 96]", "at: [-5, 64, 96]", "frame/fastener-misses", "fix", "parts[bed]"),
    ("at: [32, 64, 96]", "at: []", "frame/fastener-unplaced", "advice", "parts[bed]"),
    ("size: 1/4 in, length: 1,", "size: 1e9, length: 1,", "frame/fastener-misses", "fix", "parts[bed]"),
    ("size: 1/4 in, length: 1,", "size: 1/4 in, length: 0,", "frame/screw-length", "fix", "parts[bed]"),
    ("size: 1/4 in, length: 1,", "size: 1/4 in, length: -1,", "frame/screw-length", "fix", "parts[bed]"),
    ("lowest: 1, highest: 1 7/8", "lowest: 2, highest: 1", "frame/unit-depth", "fix", "openings[window]"),
]


@pytest.mark.parametrize(("old", "new", "code", "kind", "where"), FOUND)
def test_a_shell_that_cannot_be_is_found(old: str, new: str, code: str, kind: str, where: str) -> None:
    found = study(reading(old, new).rig, JUDGED_ON)
    assert (code, kind, where) in told(found)
    assert all(slot.broken == () for slot in found.slots)


def of_studs(words: str) -> str:
    return f"{STUDS[:-1]}, left: {{{words}}}}}"


def taped(values: str) -> str:
    return f"measured:\n  t: {{date: 2026-03-01, what: tape, studs: left, values: {values}}}\n"


READ = [
    *((STUDS, STUDS.replace("every: 16", f"every: {word}"), "this spacing") for word in ("0", "-16", "1e-9", "0.5")),
    *((STUDS, STUDS.replace("every: 16", f"every: {word}"), "this spacing") for word in ("1e9", "1e300", "161")),
    *((STUDS, STUDS.replace("every: 16", f"every: {word}"), "cannot read") for word in ("nan", ".inf", "sixteen")),
    *((STUDS, STUDS.replace("first: 0", f"first: {word}"), "the first member") for word in ("-16", "999", "1e9")),
    (STUDS, of_studs("every: 0"), "this spacing"),
    (STUDS, of_studs("last: 1e9"), "the closing member"),
    (STUDS, of_studs("first: 32, last: 16"), "the closing member"),
    (STUDS, of_studs("extra: [-5]"), "would stand beyond its wall"),
    (STUDS, of_studs("removed: [99]"), "of no member"),
    (STUDS, of_studs("doubled: [11]"), "of no member"),
    (STUDS, of_studs("removed: [two]"), '"two" is no number'),
    (STUDS, of_studs("removed: [-1]"), '"-1" is no number'),
    *((SKIN, f"{SKIN}  nose: {{length: {word}}}\n", "a nose needs a length") for word in ("0", "-5")),
    (SKIN, f"{SKIN}  nose: {{tip: 12}}\n", "a nose needs a length"),
    *((SKIN, f"{SKIN}  nose: {{length: 24, tip: {word}}}\n", "the tip of a nose") for word in ("-4", "90")),
    *(("1 x 1 1/2 x 16 ga, every: 16, first: 0}\n  bows", f"{word}, every: 16, first: 0}}\n  bows", "section")
      for word in ("1 x x 16 ga", "16 ga", "x", "1 x 1 x 1 x 1", "0 x 0 x 0", "-1 x 1 x 16 ga", "nan x 1 x 1")),
    *((BODY, BODY.replace("160", word), "a body has a length") for word in ("0", "-160", "1e9", "40 m")),
    (MEASURED, taped("{x: 16}"), '"x" is no number'),
    (MEASURED, taped("{400: 16}"), '"400" is no number'),
    (MEASURED, taped("{3: gone}"), 'cannot read the length "gone"'),
    (MEASURED, taped("{3: nan}"), 'cannot read the length "nan"'),
    (MEASURED, taped("{3: 48}").replace("studs: left", "studs: lefty"), 'no wall "lefty"'),
    ("window: {wall: left", "window: {wall: up", 'no wall "up"'),
    ("window: {wall: left", "window: {wall: nose-left", "no nose-left wall"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "says"), READ)
def test_what_cannot_be_is_a_problem_with_its_line(old: str, new: str, says: str) -> None:
    read = reading(old, new)
    hits = [one for one in read.problems if says in one.says]
    assert hits, [one.says for one in read.problems]
    first = line_of(old)
    assert all(first <= one.line <= first + new.count("\n") for one in hits)
    found = study(read.rig, JUDGED_ON)
    assert all(slot.broken == () for slot in found.slots)


def drawn(old: str, new: str) -> set[str]:
    """Return the names of the sheets of the rig as it stands, with everything that is found against it."""
    rig = reading(old, new).rig
    found = study(rig, JUDGED_ON)
    slot = found.slots[0]
    names = {one.name for one in sheets_of(rig, slot, found.findings(), (), "lined", rig.header.units)}
    assert slot.frame is not None
    assert names >= ({"receiving", "order", "floor"} if slot.frame.walls else {"body"})
    return names


@pytest.mark.parametrize(("old", "new"), [(old, new) for old, new, *_ in FOUND])
def test_a_shell_that_cannot_be_is_drawn_with_what_is_wrong(old: str, new: str) -> None:
    assert "to-mend" in drawn(old, new)


@pytest.mark.parametrize(("old", "new"), [(old, new) for old, new, *_ in READ])
def test_what_cannot_be_is_left_out_of_the_drawing(old: str, new: str) -> None:
    assert drawn(old, new)


def test_a_row_that_cannot_be_is_no_row_and_does_not_pass_an_opening() -> None:
    """A stud every mile cuts nothing: that must not read as clear."""
    bare = RIG[: RIG.index("measured:")]
    for every in ("0", "1e9"):
        text = bare.replace("every: 16, first: 0}\n  bows", f"every: {every}, first: 0}}\n  bows")
        assert ("frame/members-unknown", "unknown", "frame.studs") in told(study(read_rig(text).rig, JUDGED_ON))


def test_a_screw_of_no_thickness_does_not_catch_more_than_one_whose_thickness_nobody_wrote() -> None:
    for size in ("0", "-1"):
        one = reading("at: [32, 64, 96]", "at: [32, 64.4, 96]")
        other = read_rig(RIG.replace("at: [32, 64, 96]", "at: [32, 64.4, 96]").replace("size: 1/4 in", f"size: {size}"))
        for read in (one, other):
            assert ("frame/fastener-misses", "fix", "parts[bed]") in told(study(read.rig, JUDGED_ON))


def test_a_layer_between_studs_as_wide_as_their_spacing_is_of_unknown_weight_and_never_below_nothing() -> None:
    foam = "foam:  {of: XPS, thick: 1 1/2, between: studs, weight: 16,"
    text = RIG.replace(foam, foam.replace(", weight: 16", "")).replace(STUDS, "studs: {face: 1, every: 0.01, first: 0}")
    masses = {one.of: one.kg for slot in study(read_rig(text).rig, JUDGED_ON).slots for one in slot.masses}
    assert not masses["walls[left].layers[foam]"].known
    assert all(kg.low >= 0.0 for kg in masses.values())


def test_a_stud_beyond_the_row_stands_between_its_neighbours_and_is_in_no_wrong_order() -> None:
    found = told(study(reading(STUDS, of_studs("extra: [41]")).rig, JUDGED_ON))
    assert [one for one in found if one[1] == "fix"] == []
    beside = told(study(reading(MEASURED, taped("{11: 41}")).rig, JUDGED_ON))
    assert [one for one in beside if one[1] == "fix"] == []
    on_another = told(study(reading(MEASURED, taped("{11: 48 1/4}")).rig, JUDGED_ON))
    assert ("frame/tape-disagrees", "fix", "measured[t]") in on_another


def test_what_a_hole_in_the_floor_clamps_is_asked_and_not_taken_from_a_floor_of_no_thickness() -> None:
    drain = "hatch: {wall: floor, x: 130, width: 12, side: centre, across: 12, stage: lined, cut: no, "
    drain += "unit: {weight: 3, clamps: {lowest: 1, highest: 2}}}"
    line = RIG[RIG.index("hatch: {") :].split("\n")[0]
    assert ("frame/unit-depth", "unknown", "openings[hatch]") in told(study(reading(line, drain).rig, JUDGED_ON))


NUMBERS = [found.span() for found in re.finditer(r"(?<=[: \[])\d+(?: \d/\d+|\.\d+)?(?=[,}\] ])", RIG)]
SLIPS = ("0", "-1", "1e9", "-1e9", "nan", "unknown", "about 5", "3..900", "1/64", "[1]", "{}", "x", "79.9", "5 ft", "")


@pytest.mark.parametrize("seed", range(40))
def test_whatever_slips_into_a_number_nothing_breaks_off(seed: int) -> None:
    chance = random.Random(seed)
    text = RIG
    for start, end in sorted(chance.sample(NUMBERS, 3), reverse=True):
        text = text[:start] + chance.choice(SLIPS) + text[end:]
    rig = read_rig(text).rig
    found = study(rig, JUDGED_ON)
    for slot in found.slots:
        assert slot.broken == ()
        assert sheets_of(rig, slot, found.findings(), (), "lined", rig.header.units)

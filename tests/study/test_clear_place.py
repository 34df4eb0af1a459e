"""Openings and fasteners moved by the tool's own suggestion: typed behind ``set`` on a copy, then clear at every stage.

The places of studs and the clear gaps between them are worked out here by hand: studs of 1 in every 16 in from 0.
"""

from __future__ import annotations

import shlex
from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.cli.asked import Question, answered
from boxwright.cli.edits import edited
from boxwright.cli.fixes import chapter_with_fixes, does, typed
from boxwright.cli.trying import written
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.bench import Bench
from boxwright.study.moves import Edit
from boxwright.study.remedy import Fix, Remedies, remedies
from boxwright.study.slots import Study, study
from boxwright.units import HeaderUnits
from tests.lanes import examples
from tests.study.demo import CLEAN, INCH, RIGS, TODAY

CUTS, OVERLAPS, OUTSIDE = "frame/opening-cuts-member", "frame/opening-overlaps", "frame/opening-outside-wall"
MISSES = "frame/fastener-misses"
FRAME = """\
frame:
  studs: {tube: 1 x 1 1/2 x 16 ga, face: 1, depth: 1 1/2, every: 16, first: 0}
  bows: {tube: 1 x 1 1/2 x 16 ga, face: 1, every: 16, first: 0}
  skin: aluminium 0.040
"""
TAPED = """\
measured:
  studs: {date: 2026-01-19, what: tape, within: 1/64, studs: left, values: {0: 0, 1: 16, 2: 32, 3: 48, 4: 64, 5: 80, 6: 96, 7: 112, 8: 128, 9: 144, 10: 160}}
"""  # noqa: E501
WINDOW = "window: {wall: left, x: 90, width: 14, z: 36, height: 24, stage: bunks, cut: no, sealant: {of: butyl}}"
BENCH = "x: 10, side: left, z: 20, size: 60 x 20 x 2, weight: 30, stage: bunks"


def rig_text(*openings: str, parts: Iterable[str] = (), measured: str = TAPED) -> str:
    """Return the small rig with a frame, its left studs taped, and some openings and parts more."""
    lines = "".join(f"  {one}\n" for one in openings)
    more = "".join(f"  {one}\n" for one in parts)
    text = CLEAN.replace("loads:\n", f"{more}loads:\n") + FRAME + measured
    return f"{text}openings:\n{lines}" if lines else text


def leaf(at: str, place: str = BENCH, more: str = "") -> str:
    return (
        f"flap: {{{place}, hinge: {{edge: left, length: 60, at: {at}}}, screws: {{size: 1/4 in, into: studs}}{more}}}"
    )


def bench(text: str) -> Bench:
    return Bench(read_rig(text), TODAY)


def sought(text: str, code: str, use: str = "sleep", everything: bool = False) -> Remedies:
    """Return what clears one rule's findings as it stands today."""
    one = bench(text)
    found = remedies(one, one.reading.rig.header.stage_today, True, use=use, everything=everything)
    return Remedies(
        tuple(fix for fix in found.fixes if code in (fix.code, *(cleared for cleared, _, _ in fix.clears))),
        tuple(pair for pair in found.without if pair[0].code == code),
    )


def said(found: Study, code: str, where: str) -> list[Finding]:
    """Return what a rule says of one thing in any slot."""
    return [one for slot in found.slots for one in slot.findings if (one.code, one.where) == (code, where)]


@lru_cache(8)
def everywhere(text: str) -> Study:
    return study(read_rig(text).rig, TODAY, all_stages=True)


def set_on_a_copy(text: str, fix: Fix, folder: Path) -> str:
    """Return a rig's text after a fix was typed behind ``set`` as it is shown."""
    copy = folder / "rig.yaml"
    copy.write_text(text, encoding="utf-8")
    written(Question(str(copy)), shlex.split(typed(fix)), TODAY, 80)
    return copy.read_text(encoding="utf-8")


def set_in_memory(text: str, fix: Fix) -> str:
    """Return a rig's text after a fix, read as it is typed; quicker where a whole demo would be answered anew."""
    return edited(read_rig(text), shlex.split(typed(fix))).reading.document.text


def cured(text: str, code: str, where: str, folder: Path | None, use: str = "sleep") -> tuple[Fix, str]:
    """Return the first change offered and the text with it: nothing of the finding is left in any slot."""
    assert said(everywhere(text), code, where)
    fix = next(one for one in sought(text, code, use).fixes if one.where == where)
    assert fix.is_whole and fix.kind == "fix"
    after = set_on_a_copy(text, fix, folder) if folder is not None else set_in_memory(text, fix)
    assert said(everywhere(after), code, where) == []
    return fix, after


@pytest.mark.parametrize(
    ("place", "value", "says"),
    [
        ("x: 90", "96 9/16", "Move window 6 9/16 in rearward, to 96 9/16: between L6 and L7"),
        ("x: 86", "81 7/16", "Move window 4 9/16 in forward, to 81 7/16: between L5 and L6"),
        ("x: mid 97", "mid 103 9/16", "Move window 6 9/16 in rearward, to mid 103 9/16: between L6 and L7"),
        ("x: rear-78", "rear-71 7/16", "Move window 6 9/16 in rearward, to rear-71 7/16: between L6 and L7"),
        ("x: 2286 mm", "2452 mm", "Move window 6 9/16 in rearward, to 2452 mm: between L6 and L7"),
        ("x: front+90", "front+96 9/16", "Move window 6 9/16 in rearward, to front+96 9/16: between L6 and L7"),
    ],
)
def test_a_window_goes_to_the_nearest_clear_place_written_as_before(
    place: str, value: str, says: str, tmp_path: Path
) -> None:
    """By hand: 14 in is clear from 80 33/64 to 95 31/64, and from 96 33/64 to 111 31/64, each 1/64 in off the stud."""
    fix, _ = cured(rig_text(WINDOW.replace("x: 90", place)), CUTS, "openings[window]", tmp_path)
    assert (fix.edits, fix.says) == ((Edit("openings[window].x", value),), says)


def test_both_sides_are_offered_where_all_is_asked_for_the_nearer_first() -> None:
    found = sought(rig_text(WINDOW), CUTS, everything=True)
    assert [fix.edits[0].value for fix in found.fixes] == ["96 9/16", "81 7/16"]
    assert [fix.effort for fix in found.fixes] == pytest.approx([6.5625 * INCH, 8.5625 * INCH], abs=1e-6)
    assert does(found.fixes[0]) == f"clears {CUTS}"


@pytest.mark.parametrize(
    "changed",
    [
        ("cut: no", "cut: yes"),
        ("cut: no", "cut: yes, done: yes 2026-03-01"),
        ("stage: bunks, cut: no", "stage: shell, done: yes 2026-03-01"),
        ("stage: bunks, cut: no", "stage: shell"),
        ("cut: no", "cut: no, as_built: {x: 90}"),
        ("width: 14", "width: 15 1/4"),
        ("width: 14", "width: 24"),
    ],
)
def test_what_is_cut_or_may_be_or_has_no_clear_place_is_not_moved(changed: tuple[str, str]) -> None:
    text = rig_text(WINDOW.replace(*changed))
    assert said(everywhere(text), CUTS, "openings[window]")
    assert sought(text, CUTS).fixes == ()
    assert sought(text, CUTS, everything=True).fixes == ()


@examples(8, 150)
@given(x=st.integers(0, 16 * 150).map(lambda count: count / 16), width=st.integers(4 * 16, 15 * 16 - 2))
def test_wherever_a_window_that_fits_a_bay_cuts_a_stud_it_is_cured(x: float, width: int) -> None:
    placed = WINDOW.replace("x: 90", f"x: {x}").replace("width: 14", f"width: {width / 16}")
    text = rig_text(placed)
    if not any(one.kind == "fix" for one in said(everywhere(text), CUTS, "openings[window]")):
        return
    one = bench(text)
    found = [fix for fix in remedies(one, 0, True, use="sleep").fixes if fix.code == CUTS]
    assert found
    after = one.after(found[0].edits)
    assert after is not None
    assert not said(study(after.rig, TODAY, all_stages=True), CUTS, "openings[window]")


def test_of_two_openings_in_one_place_the_uncut_one_goes(tmp_path: Path) -> None:
    cut = "vent: {wall: left, x: 98, width: 6, z: 40, height: 6, stage: shell, cut: yes, done: yes 2026-01-02, sealant: {of: butyl}}"  # noqa: E501
    other = WINDOW.replace("x: 90", "x: 100").replace("width: 14", "width: 6")
    fix, after = cured(rig_text(cut, other), OVERLAPS, "openings[window]", tmp_path)
    assert fix.edits == (Edit("openings[window].x", "104"),)
    assert said(everywhere(after), OVERLAPS, "openings[vent]") == []


def test_an_opening_beyond_its_wall_comes_into_it(tmp_path: Path) -> None:
    """By hand: the wall ends at 168, its roof stands at 78; a corner post takes the end of the wall."""
    fix, after = cured(rig_text(WINDOW.replace("x: 90, width: 14, z: 36", "x: 97, width: 14, z: 60")), OUTSIDE,
                       "openings[window]", tmp_path)  # fmt: skip
    assert fix.edits == (Edit("openings[window].z", "54"),)
    assert fix.says == "Move window 6 in down, to z 54: inside the left wall"
    assert said(everywhere(after), CUTS, "openings[window]") == []
    fix, _ = cured(rig_text(WINDOW.replace("x: 90, width: 14, z: 36", "x: 97, width: 14, z: -4")), OUTSIDE,
                   "openings[window]", tmp_path)  # fmt: skip
    assert fix.edits == (Edit("openings[window].z", "0"),)
    ahead = rig_text(WINDOW.replace("x: 90, width: 14", "x: -3, width: 6"))
    fix, _ = cured(ahead, OUTSIDE, "openings[window]", tmp_path)
    assert {code for code, _, _ in fix.clears} == {OUTSIDE, CUTS}
    assert fix.says == "Move window 3 9/16 in rearward, to 9/16: between L0 and L1"


def test_an_opening_in_the_front_wall_moves_to_the_side(tmp_path: Path) -> None:
    """By hand: -1 to 7 cuts the stud at 0; half its face, 1/2 in, and 6 mm that an order may be off, are 0.74 in."""
    row = FRAME.replace("first: 0}\n  bows", "first: 0, front: {every: 16, first: 8}}\n  bows")
    hatch = "hatch: {wall: front, side: centre+3, width: 8, z: 36, height: 10, stage: bunks, cut: no}"
    text = rig_text(hatch).replace(FRAME, row)
    fix, _ = cured(text, CUTS, "openings[hatch]", tmp_path)
    assert fix.edits == (Edit("openings[hatch].side", "centre+4 3/4"),)
    assert fix.says == "Move hatch 1 3/4 in to the right, to centre+4 3/4: between F2 and F3"


def test_a_leaf_of_a_hinge_goes_to_the_stud_that_is_free(tmp_path: Path) -> None:
    """By hand: 39 is 7 in behind the stud at 32, which no other leaf has, and 9 in ahead of that at 48."""
    fix, after = cured(rig_text(parts=[leaf("[16, 39, 64]")]), MISSES, "parts[flap]", tmp_path)
    assert fix.says == "Move the hinge of flap from 39 in to 32 in"
    assert typed(fix) == '"flap.hinge.at[1]=32"'
    assert fix.effort == pytest.approx(7 * INCH, abs=1e-6)
    assert "at: [16, 32, 64]" in after


def test_a_whole_pattern_slides_where_that_is_less(tmp_path: Path) -> None:
    """By hand: 19, 35 and 51 are each 3 in behind a stud; 1/8 in of its face may take a 1/4 in screw."""
    fix, after = cured(rig_text(parts=[leaf("[19, 35, 51]")]), MISSES, "parts[flap]", tmp_path)
    assert fix.says == "Slide the hinge of flap 2 15/16 in forward as one"
    assert [edit.value for edit in fix.edits] == ["16 1/16", "32 1/16", "48 1/16"]
    assert "at: [16 1/16, 32 1/16, 48 1/16]" in after


def test_the_part_goes_with_its_hinge_where_its_ends_would_be_passed(tmp_path: Path) -> None:
    """By hand: 13, 29 and 45 are 3 in ahead of a stud; 2 15/16 in on, the last would be past 47, the end of it."""
    place = BENCH.replace("x: 10", "x: 12").replace("60 x 20", "35 x 20")
    text = rig_text(parts=[leaf("[13, 29, 45]", place, ", legs: {at: [14, 45], side: +18, size: 2 x 2 x 20}")])
    fix, after = cured(text, MISSES, "parts[flap]", tmp_path)
    assert fix.says == "Slide flap with its hinge 2 15/16 in rearward as one (x: 14 15/16)"
    assert "x: 14 15/16" in after and "at: [15 15/16, 31 15/16, 47 15/16]" in after
    assert "legs: {at: [16 15/16, 47 15/16]" in after


def test_a_part_with_no_room_to_go_does_not_go_with_its_hinge() -> None:
    place = BENCH.replace("x: 10", "x: 12").replace("60 x 20", "35 x 20")
    post = "post: {x: 47 1/2, side: left, z: 10, size: 4 x 6 x 30, weight: 5, stage: shell, done: yes 2026-01-02}"
    text = rig_text(parts=[leaf("[13, 29, 45]", place), post])
    assert said(everywhere(text), MISSES, "parts[flap]")
    assert sought(text, MISSES).fixes == ()


def test_screws_of_a_part_and_its_hinge_are_put_right_together(tmp_path: Path) -> None:
    line = leaf("[16, 40, 64]").replace("into: studs", "at: [20, 48], into: studs")
    fix, _ = cured(rig_text(parts=[line]), MISSES, "parts[flap]", tmp_path)
    assert {edit.path for edit in fix.edits} == {"parts[flap].hinge.at[1]", "parts[flap].screws.at[0]"}


def test_where_no_metal_is_free_a_backing_strip_is_said_and_nothing_is_typed() -> None:
    place = BENCH.replace("60 x 20", "30 x 20")
    found = sought(rig_text(parts=[leaf("[16, 24, 32]", place)]), MISSES)
    assert found.fixes == ()
    ((finding, says),) = found.without
    assert finding.code == MISSES
    assert says == "No metal within the ends of flap is free for its fastener at 24 in: put a backing strip there"


@pytest.mark.parametrize("tick", ["done: yes 2026-03-01", "done: part", "as_built: {x: 10}"])
def test_what_is_built_in_is_not_moved(tick: str) -> None:
    text = rig_text(parts=[leaf("[16, 40, 64]").replace("stage: bunks", f"stage: shell, {tick}")])
    assert said(everywhere(text), MISSES, "parts[flap]")
    found = sought(text, MISSES)
    assert (found.fixes, found.without) == ((), ())


def test_a_stud_nobody_taped_leaves_a_question_and_says_what_to_do_about_it() -> None:
    (fix,) = sought(rig_text(parts=[leaf("[16, 40, 64]")], measured=""), MISSES).fixes
    assert not fix.is_whole
    assert fix.then.startswith("then find the edges of ")
    assert does(fix) == f"no cure yet of {MISSES}"


def test_the_page_of_the_frame_shows_the_change_to_type_and_only_its_own(tmp_path: Path) -> None:
    copy = tmp_path / "rig.yaml"
    copy.write_text(rig_text(WINDOW, parts=[leaf("[16, 39, 64]")]), encoding="utf-8")
    shown, lines = chapter_with_fixes(answered(Question(str(copy), use="sleep"), TODAY), "frame", 200, TODAY)
    page = "\n".join("".join(span.text for span in line) for line in lines)
    assert f'boxwright try {copy} "openings[window].x=96 9/16"' in page
    assert f'boxwright try {copy} "flap.hinge.at[1]=32"' in page
    assert "weight/" not in page
    remedy = next(one.remedy for one in shown.findings if one.code == CUTS)
    assert remedy == "Move window 6 9/16 in rearward, to 96 9/16: between L6 and L7"


WHIMBREL = (RIGS / "whimbrel.yaml").read_text(encoding="utf-8")
CUT_WINDOW = "x: 97, width: 14, z: 36, height: 24, stage: roof, cut: yes, done: yes 2026-03-15,"
LEAVES = "at: [80, 96, 104, 128, 144, 152]"


@pytest.mark.nightly
def test_whimbrels_window_and_hinge_are_cured_by_what_is_shown() -> None:
    """The seeded sixth leaf has no stud; without it the other goes to L7 where it was taped, 112 3/8."""
    assert CUT_WINDOW in WHIMBREL and LEAVES in WHIMBREL
    text = WHIMBREL.replace(CUT_WINDOW, "x: 90, width: 14, z: 36, height: 24, stage: roof, cut: no,")
    text = text.replace(LEAVES, "at: [80, 96, 104, 128, 144]")
    window, text = cured(text, CUTS, "openings[window-left]", None, "tow")
    assert window.says == "Move window-left 6 5/8 in rearward, to 96 5/8: between L6 and L7"
    hinge, text = cured(text, MISSES, "parts[bunk]", None)
    assert hinge.edits == (Edit("parts[bunk].hinge.at[2]", "112 3/8"),)
    assert said(everywhere(text), CUTS, "openings[window-left]") == []


def test_whimbrels_own_window_and_hinge_have_no_clear_place() -> None:
    assert sought(WHIMBREL, CUTS, "tow").fixes == ()
    found = sought(WHIMBREL, MISSES)
    assert found.fixes == ()
    ((_, says),) = found.without
    assert says == "No metal within the ends of bunk is free for its fastener at 152 in: screw into backing-bunk there"


def test_a_part_moves_the_same_whatever_units_it_is_shown_in() -> None:
    text = (RIGS.parent / "tests/study/rigs/over-tongue.yaml").read_text(encoding="utf-8")
    found = []
    for shown_in in (None, replace(HeaderUnits(), length="mm", weight="kg")):
        one = Bench(read_rig(text), TODAY, shown_in)
        found.append([fix.edits for fix in remedies(one, one.reading.rig.header.stage_today, True, use="tow").fixes])
    assert found[0] and found[0] == found[1]


def test_a_file_in_inches_is_cured_while_it_is_shown_in_millimetres() -> None:
    text = rig_text(WINDOW)
    metric = replace(HeaderUnits(), length="mm")
    one = Bench(read_rig(text), TODAY, metric)
    fix = next(fix for fix in remedies(one, 0, True, use="sleep").fixes if fix.code == CUTS)
    assert fix.edits == (Edit("openings[window].x", "96 9/16"),)
    assert "167 mm rearward" in fix.says

"""What is written as a way out and cannot be one as written is asked about or told, however many others there are."""

from __future__ import annotations

import pytest

from boxwright.disciplines.safety.sheets import warning_of
from tests.disciplines.safety.test_findings import edited, worked
from tests.disciplines.safety.test_ways import HATCH, MORE, WINDOW, kinds, result

OPENS = "swing: {hinge: top, opens: out, to: 80 deg}"
RAMP = "  ramp: {wall: rear, side: centre, width: 1500, z: 0, height: 1800, stage: shell, cut: yes, done: yes, "
RAMP += "release: inside, swing: {hinge: bottom, opens: out, to: 90 deg}}\n  vent:"


@pytest.mark.parametrize("word", ["no", "fixed"])
def test_a_window_that_does_not_open_is_asked_about_and_is_no_way_out(word: str) -> None:
    found = kinds((OPENS, f"swing: {{opens: {word}}}"))
    assert ("unknown", "opens-from-inside", "openings[window]") in found
    assert ("stop", "two-ways-out", "openings[window]") in found
    assert [warning_of(one) for one in result((OPENS, f"swing: {{opens: {word}}}")).exits] == ["", "DOES NOT OPEN"]


def test_it_is_asked_about_however_many_other_ways_there_are() -> None:
    found = kinds((OPENS, "swing: {opens: no}"), ("  vent:", RAMP))
    assert found == {("unknown", "opens-from-inside", "openings[window]")}


def test_a_fixed_pane_nobody_means_to_leave_by_is_not_asked_about() -> None:
    pane = ("egress: wanted, release: inside, clear: {width: 700, height: 500}, ", "")
    assert kinds((OPENS, "swing: {opens: no}"), pane, ("  vent:", RAMP)) == set()


def test_a_clear_width_larger_than_its_hole_is_asked_about_and_no_more_than_the_hole_is_counted() -> None:
    assert kinds(("clear: {width: 700", "clear: {width: 800")) == set()
    wide = ("clear: {width: 700", "clear: {width: 900")
    assert kinds(wide) == {("unknown", "clear-opening", "openings[window]")}
    (said,) = worked(edited(wide), "sleep")
    assert "cannot leave a width of 900 mm: its hole is 800 mm" in said.says
    clear = result(wide).exits[1].clear
    assert clear is not None and clear[0].high == clear[0].best == pytest.approx(0.8)
    assert kinds(("height: 500}", "height: 601}")) == {("unknown", "clear-opening", "openings[window]")}


@pytest.mark.parametrize(
    ("swing", "leaves", "asked"),
    [
        ("{hinge: top, opens: out, to: 80 deg}", 0.5, False),  # 600 sin 80 are 591
        ("{hinge: top, opens: out, to: 57 deg}", 0.5, False),  # 503
        ("{hinge: top, opens: out, to: 56 deg}", 0.4974, True),
        ("{hinge: top, opens: out, to: 10 deg}", 0.1042, True),
        ("{hinge: top, opens: out, to: 10..80 deg}", 0.5, False),  # as far as it goes it leaves that
        ("{hinge: top, opens: out, to: 5..10 deg}", 0.1042, True),
        ("{hinge: bottom, opens: out, to: 56 deg}", 0.4974, True),
        ("{hinge: top, opens: out, to: unknown}", 0.5, False),
        ("{hinge: top, opens: out, to: 170 deg}", 0.5, False),
    ],
)
def test_what_is_written_to_be_clear_is_no_more_than_its_leaf_leaves(swing: str, leaves: float, asked: bool) -> None:
    """The hole is 800 x 600 mm and 700 x 500 are written; of the height the leaf leaves 600 x the sine."""
    edit = (OPENS, f"swing: {swing}")
    (window,) = [one for one in result(edit).exits if one.way.name == "window"]
    assert window.clear is not None
    assert [side.high for side in window.clear] == pytest.approx([0.7, leaves], abs=1e-4)
    assert (("unknown", "clear-opening", "openings[window]") in kinds(edit)) == asked
    assert window.counts is (leaves >= 0.3)


@pytest.mark.parametrize(
    ("leaf", "leaves"),
    [
        ("swing: {hinge: front, opens: out, to: 30 deg}", 0.4),  # 800 sin 30
        ("swing: {hinge: both sides, opens: out, to: 60 deg}", 0.4),  # 800 (1 - cos 60)
        ("slides: {to: front, by: 380, runs: inside}", 0.38),
    ],
)
def test_of_the_width_as_well(leaf: str, leaves: float) -> None:
    unit = f"unit: {{weight: 10, {OPENS}}}"
    edit = (OPENS, leaf) if leaf.startswith("swing") else (unit, leaf)
    (window,) = [one for one in result(edit).exits if one.way.name == "window"]
    assert window.clear is not None
    assert [side.high for side in window.clear] == pytest.approx([leaves, 0.5], abs=1e-4)
    told = [one.says for one in worked(edited(edit), "sleep") if "cannot leave a width" in one.says]
    assert told and "its leaf as it is written to open leaves no more than" in told[0]


def test_a_third_way_out_that_is_too_small_for_anybody_is_told() -> None:
    small = ("clear: {width: 700", "clear: {width: 250")
    assert kinds(small, ("  vent:", RAMP)) == {("fix", "clear-opening", "openings[window]")}
    assert ("stop", "two-ways-out", "openings[window]") in kinds(small)


def test_a_crate_under_a_third_way_out_in_the_roof_is_told_and_takes_no_question_away() -> None:
    crate = f"{MORE}\n  crate: {{x: 900, side: centre, z: 0, size: 600 x 300 x 1600, weight: 5, "
    crate += "stage: shell, done: yes}"

    def told(*edits: tuple[str, str]) -> set[tuple[str, str]]:
        text = edited(*edits, ("  vent:", RAMP)).replace(WINDOW, HATCH)
        return {(one.code, one.where) for one in worked(text, "sleep")}

    asked = ("safety/hatch-out-of-reach", "openings[hatch]")
    assert asked in told()
    under = told((MORE, crate), ("bed: {x: 500, side: centre", "bed: {x: 500, side: left"))
    assert under >= {asked, ("safety/way-blocked", "openings[hatch]")}


def test_what_nobody_has_measured_is_marked_so_on_the_card() -> None:
    assert [warning_of(one) for one in result().exits] == ["", ""]
    bare = result(("clear: {width: 700, height: 500}, ", "")).exits
    assert [warning_of(one) for one in bare] == ["", "NOT MEASURED"]
    doubtful = result(("clear: {width: 700", "clear: {width: 250..700")).exits
    assert [warning_of(one) for one in doubtful] == ["", "NOT MEASURED"]


BARE = "  flap: {wall: rear, side: centre, width: 900, z: 0, height: 1800, stage: shell, cut: yes, done: yes}\n  vent:"
FLAP = "openings[flap]"


def test_a_doorway_of_which_nobody_wrote_how_it_opens_is_asked_about_and_not_left_out() -> None:
    shut = (OPENS, "swing: {opens: no}")
    assert ("stop", "two-ways-out", "openings[window]") in kinds(shut)
    found = kinds(shut, ("  vent:", BARE))
    assert ("unknown", "opens-from-inside", FLAP) in found
    assert "two-ways-out" not in {code for _, code, _ in found}


@pytest.mark.parametrize("edit", [("width: 900", "width: 440"), ("done: yes", "done: yes, unit: {weight: 9}")])
def test_a_small_hole_and_one_with_a_unit_in_it_are_no_doorways(edit: tuple[str, str]) -> None:
    assert FLAP not in {of for _, _, of in kinds(("  vent:", BARE.replace(*edit)))}

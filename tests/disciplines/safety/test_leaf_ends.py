"""What a leaf that strikes something leaves of a way out, by both ends of where that is; and who reaches a latch."""

from __future__ import annotations

from math import pi

import pytest

from boxwright.disciplines.layout.method import left_beside_leaf
from boxwright.disciplines.safety.method import left_by_leaf
from tests.disciplines.safety.test_ways import BIN, MORE, kinds, result


@pytest.mark.parametrize(
    ("x", "held", "counts"),
    [("3650", True, False), ("3645..3655", True, False), ("3500..3800", False, True), ("3300..4000", False, True)],
)
def test_a_leaf_struck_at_the_best_place_is_held_shut_only_where_it_is_wherever_that_is(
    x: str, held: bool, counts: bool
) -> None:
    """The best place is 3650 in each; where the bin may stand so that one gets out, it is asked and nothing is lost."""
    lines = (MORE, BIN % (x, 450))
    (door,) = [one for one in result(lines).exits if one.way.name == "door"]
    assert door.struck is not None
    assert (door.is_held_shut, door.counts) == (held, counts)
    assert (("stop", "two-ways-out", "openings[door]") in kinds(lines)) == held
    assert (("unknown", "way-blocked", "openings[door]") in kinds(lines)) == (not held)


def test_the_ends_of_what_a_struck_leaf_leaves_hold_every_place_it_may_have() -> None:
    (whole,) = [one for one in result((MORE, BIN % ("3620..3680", 600))).exits if one.way.name == "door"]
    assert whole.struck is not None
    for x in (3620, 3650, 3680):
        (door,) = [one for one in result((MORE, BIN % (x, 600))).exits if one.way.name == "door"]
        assert door.struck is not None
        assert whole.struck.metre.low <= door.struck.metre.best <= whole.struck.metre.high
    assert whole.struck.metre.low < whole.struck.metre.best < whole.struck.metre.high


@pytest.mark.parametrize(
    ("home", "clear", "kind"),
    [
        ("EU-DE", "{width: 449, height: 500}", "limit"),
        ("EU-DE", "{width: 450, height: 500}", ""),
        ("EU-DE", "{width: 700, height: 320}", "limit"),
        ("EU-DE", "{width: 440..600, height: 500}", "limit"),
        ("EU-DE", "{width: 299, height: 500}", ""),  # that stops, as no way out
        ("NZ", "{width: 400, height: 500}", "limit"),
        ("US-NC", "{width: 700, height: 440}", ""),
        ("US-NC", "{width: 449, height: 500}", "advice"),
    ],
)
def test_a_measured_way_out_not_everybody_gets_through_is_told_where_no_rule_gives_a_size(
    home: str, clear: str, kind: str
) -> None:
    """In the United States their own size is held against it; elsewhere 450 mm of practice, that says it is no rule."""
    edits = (("countries: [US-NC]", f"countries: [{home}]"), ("clear: {width: 700, height: 500}", f"clear: {clear}"))
    told = {one for one, code, where in kinds(*edits) if (code, where) == ("clear-opening", "openings[window]")}
    assert told == ({kind} if kind else set())


@pytest.mark.parametrize("to", ["2 deg", "0 deg", "0..3 deg"])
def test_a_door_that_opens_a_crack_leaves_nothing_and_never_less(to: str) -> None:
    """700 sin 2 deg are 24 mm, of which its frame takes more."""
    (door,) = [one for one in result(("to: 90 deg", f"to: {to}")).exits if one.way.name == "door"]
    assert door.clear is not None
    assert [end for band in door.clear[:1] for end in (band.low, band.best, band.high)] == [0.0, 0.0, 0.0]


@pytest.mark.parametrize("turn", [0.0, 0.1, pi / 4.0, pi / 2.0, 2.0, pi])
@pytest.mark.parametrize("span", [0.0, 0.3, 0.7])
def test_safety_and_layout_leave_as_much_beside_a_leaf(span: float, turn: float) -> None:
    """Neither may import the other, so that each has its own."""
    assert left_by_leaf(span, turn) == pytest.approx(left_beside_leaf(span, turn), abs=1e-12)


@pytest.mark.parametrize(
    ("at", "is_told"),
    [
        ("x: 3300, side: right", False),
        ("x: 3300, side: right+100", False),  # let into the wall
        ("x: 3300, side: right+400", True),
        ("x: 5000, side: centre", True),
    ],
)
def test_a_release_that_hangs_outside_opens_nothing_for_whoever_is_inside(at: str, is_told: bool) -> None:
    latch = f"  latch: {{{at}, z: 900, size: 100 x 60 x 60, weight: 1, stage: shell, done: yes, release: door}}"
    edits = (
        ("release: inside, swing: {hinge: front", "release: none, swing: {hinge: front"),
        (MORE, f"{latch}\n{MORE}"),
    )
    (door,) = [one for one in result(*edits).exits if one.way.name == "door"]
    assert (door.opens == "inside") is not is_told
    assert (("stop", "release-not-fitted", "parts[latch]") in kinds(*edits)) is is_told

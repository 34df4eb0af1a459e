"""How people fit, in rooms small enough to be worked out by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.parts import Closed, Facet
from boxwright.disciplines.layout.people import Fit, fits_of, free_over, needs
from boxwright.disciplines.layout.terraces import Bed
from boxwright.model.trailer import Person
from boxwright.units import Band, exactly
from tests.disciplines.layout.test_ways import BED, DOOR, ROOM, box, place

TALL = Person(height=exactly(1.8))
DECK = exactly(0.45)


def fits(
    *bodies: Body,
    person: Person = TALL,
    bed: Bed = BED,
    openings: tuple[Closed, ...] = (DOOR,),
    deck: Band | None = DECK,
) -> dict[str, Fit]:
    """Return how one sleeper fits, by what is asked."""
    return {one.what: one for one in fits_of(bodies, (bed,), openings, (("one", person),), ROOM, deck)}


def test_by_hand_a_sleeper_of_a_metre_eighty_wants_ten_centimetres_more() -> None:
    found = fits()
    assert found["lie"].has == exactly(1.9) and found["lie"].wants.best == pytest.approx(1.9)
    # the mattress ends 0.6 m up under a ceiling of 2.0 m; half the height and a hand's breadth are wanted
    assert found["sit"].has.best == pytest.approx(1.4) and found["sit"].wants.best == pytest.approx(0.52 * 1.8 + 0.05)
    assert found["stand"].has.best == pytest.approx(2.0) and found["stand"].wants.best == pytest.approx(1.85)
    assert found["shoulders"].has == exactly(min(BED.place.size[:2])) and found["shoulders"].wants == exactly(0.6)
    short = fits(bed=replace(BED, lies_on=(0.6, 1.7)))
    assert short["lie"].has == exactly(1.7)


def test_two_in_one_bed_share_its_width() -> None:
    found = fits(bed=replace(BED, sleepers=("one", "one")))
    assert found["shoulders"].has.best == pytest.approx(0.5) and found["shoulders"].wants.best == 0.6


def test_a_shelf_over_part_of_the_bed_leaves_room_to_sit_beside_it() -> None:
    whole = box("shelf", (0.0, -1.0, 1.2), (1.9, 0.0, 1.5))
    part = box("shelf", (0.0, -1.0, 1.2), (1.9, -0.31, 1.5))
    nearly = box("shelf", (0.0, -1.0, 1.2), (1.9, -0.29, 1.5))
    assert fits(whole)["sit"].has.best == pytest.approx(0.6) and fits(whole)["sit"].under == "parts[shelf]"
    assert fits(part)["sit"].has.best == pytest.approx(1.4)
    assert fits(part)["sit"].under == ""
    other_side = box("shelf", (0.0, -0.71, 1.2), (1.9, 0.0, 1.5))
    ends = box("shelf", (0.29, -1.0, 1.2), (1.61, 0.0, 1.5))
    assert fits(other_side)["sit"].has.best == pytest.approx(0.6)
    assert fits(ends)["sit"].has.best == pytest.approx(0.6)
    assert fits(nearly)["sit"].has.best == pytest.approx(0.6)


def test_a_full_floor_leaves_nowhere_to_stand() -> None:
    crate = box("crate", (0.0, -1.0, 0.0), (4.0, 1.0, 0.5))
    assert free_over((crate,), (0.0, -1.0, 4.0, 1.0), 0.0, 0.45, 2.0).height == 0.0
    hung = box("lamp", (0.0, -1.0, 1.7), (4.0, 1.0, 1.75))
    found = free_over((hung,), (0.0, -1.0, 4.0, 1.0), 0.0, 0.45, 2.0)
    assert found.height == pytest.approx(1.7) and found.under == "parts[lamp]"


def test_a_height_nobody_wrote_wants_nothing_known() -> None:
    found = fits(person=Person())
    assert not found["lie"].wants.known and not found["sit"].wants.known and not found["stand"].wants.known
    doubtful = needs("sit", Band(1.8, 1.7, 1.9, spread="interval"))
    assert doubtful.low == pytest.approx(0.52 * 1.7 + 0.05) and doubtful.high == pytest.approx(0.52 * 1.9 + 0.05)


def test_a_bed_whose_height_is_in_doubt_gives_headroom_in_doubt() -> None:
    shaky = replace(BED, place=replace(BED.place, z=Band(0.45, 0.35, 0.65, spread="interval")))
    has = fits(bed=shaky)["sit"].has
    assert (has.low, has.best, has.high) == pytest.approx((1.2, 1.4, 1.5))


def test_the_first_rise_is_from_the_ground_and_a_step_divides_it() -> None:
    assert fits()["step"].has.best == pytest.approx(0.45)
    step = box("step", (3.0, 0.9, -0.28), (3.6, 1.2, -0.2))
    found = fits(step)["step"]
    assert found.has.best == pytest.approx(0.25) and found.under == "parts[step]"
    behind = box("tank", (3.0, 0.2, -0.28), (3.6, 0.9, -0.2))
    beside = box("step", (1.0, 0.9, -0.28), (2.9, 1.2, -0.2))
    beyond = box("step", (3.85, 0.9, -0.28), (4.3, 1.2, -0.2))
    far_out = box("step", (3.0, 1.6, -0.28), (3.6, 1.9, -0.2))
    assert fits(behind, beside, beyond, far_out)["step"].has.best == pytest.approx(0.45)


def test_a_deck_in_doubt_makes_the_lowest_rise_doubtful() -> None:
    has = fits(deck=Band(0.45, 0.4, 0.5, spread="interval"))["step"].has
    assert (has.low, has.best, has.high) == pytest.approx((0.4, 0.45, 0.5))
    assert not fits(deck=None)["step"].has.known


def test_a_ramp_a_window_and_a_hatch_are_not_stepped_into() -> None:
    ramp = replace(DOOR, facet=Facet.model_validate({"swing": {"hinge": "bottom", "opens": "out"}}))
    window = replace(DOOR, place=place((3.0, 1.0, 0.9), (3.8, 1.05, 1.8)))
    low = replace(DOOR, place=place((3.0, 1.0, 0.15), (3.8, 1.05, 1.3)))
    assert "step" not in fits(openings=(ramp, window, low))


def test_by_hand_two_side_by_side_on_the_roof_have_two_squares_in_a_row() -> None:
    assert fits()["roof"].has.best == pytest.approx(2.0) and fits()["roof"].under == ""
    # a panel from 1.5 to 2.5 m leaves 1.5 x 2 m before and behind it: two squares of 1 m across
    panel = box("panel", (1.5, -1.0, 2.05), (2.5, 1.0, 2.1))
    found = fits(panel)["roof"]
    assert found.has.best == pytest.approx(1.0, abs=2e-4) and found.wants.best == pytest.approx(0.6)
    hole = Closed("openings[fan]", "fan", "roof", place((0.5, -0.2, 2.0), (0.9, 0.2, 2.05)))
    assert fits(panel, openings=(hole,))["roof"].has.best == pytest.approx(1.0, abs=2e-4)
    assert fits(panel, openings=(hole,))["roof"].under == ""  # 0.4 m: nobody gets up through it
    hatch = replace(hole, of="openings[hatch]", place=place((0.5, -0.3, 2.0), (1.0, 0.2, 2.05)))
    assert fits(openings=(hatch,))["roof"].under == "openings[hatch]"
    strip = box("panel", (0.0, -0.6, 2.05), (4.0, 1.0, 2.1))  # 0.4 x 4 m is left
    assert fits(strip)["roof"].has.best == pytest.approx(0.4, abs=2e-4)
    both = Closed("openings[fan]", "fan", "roof", place((3.0, -0.2, 2.0), (3.4, 0.2, 2.05)))
    assert fits(panel, box("box", (0.4, -0.4, 2.0), (0.8, 0.4, 2.2)), openings=(both,))["roof"].has.best < 0.85


def test_what_leads_up_to_the_roof_stands_outside_and_is_long_enough() -> None:
    ladder = box("ladder", (1.0, -1.2, -0.1), (1.4, -1.05, 2.1))
    assert fits(ladder)["roof"].under == "parts[ladder]"
    assert fits(box("ladder", (1.0, -1.2, -0.1), (1.4, -1.05, 1.5)))["roof"].under == ""
    assert fits(box("pole", (1.0, -0.9, -0.1), (1.4, -0.8, 2.1)))["roof"].under == ""

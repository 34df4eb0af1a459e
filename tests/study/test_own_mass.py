"""The bare trailer's own mass and place, from the file or from a ticket."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from math import sqrt

import pytest

from boxwright.disciplines import frame, weight
from boxwright.disciplines.weight.solve import pool_of
from boxwright.exchange import Box, Mass, Measured
from boxwright.model.part import Frame
from boxwright.model.trailer import Empty
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.own_mass import Giver, giver_of, own_frame, readings_for, weighed_parts, weighed_slots
from boxwright.study.slots import study
from boxwright.units import COVERAGE, Band, exactly
from tests.study.demo import CLEAN, INCH, POUND, TODAY, clean, demo, near, slot_of, studied

BOX: Box = frame.offers((), (), clean().trailer, None).box
LEVER = (100 + 52) * INCH
UNKNOWN_HEIGHT = Band(0.0, float("-inf"), float("inf"), known=False)


def sigma(best: float, half: float) -> Band:
    return Band(best, best - half, best + half, spread="sigma")


def carried(own: Frame) -> weight.Result:
    level = replace(BOX, coupler_height=exactly(0.46))
    masses = weight.offers((own,), ()).masses
    return weight.solve(level, pool_of(level, masses), exactly(0.46), False, None, None, (), ())


def test_the_file_gives_it() -> None:
    giver = giver_of(clean())
    assert giver == Giver("trailer.empty", near(exactly(1960 * POUND)), near(exactly(235 * POUND)))


@pytest.mark.parametrize(("half", "tongue_half"), [(0.0, 0.0), (9.0, 20.0), (9.0, 1.2), (0.0, 20.0)])
def test_the_ball_carries_what_was_read_with_the_doubt_it_was_read_with(half: float, tongue_half: float) -> None:
    """Written so that statics, which is another piece of code, gives the reading back."""
    giver = Giver("measured[t]", sigma(900.0, half), sigma(110.0, tongue_half))
    own = own_frame(Empty(), giver, BOX, ())
    result = carried(own)
    assert result.gross.band.best == pytest.approx(900.0)
    assert result.tongue.band.best == pytest.approx(110.0)
    assert own.place.x.best == pytest.approx(100 * INCH - LEVER * 110.0 / 900.0)
    by_weight = 110.0 / 900.0 * half
    assert result.tongue.half_width == pytest.approx(max(tongue_half, by_weight), rel=1e-6)


def test_what_stood_on_the_scale_with_it_is_taken_off_again() -> None:
    box_of_tools = Mass("parts[tools]", "dry", "", exactly(60.0), exactly(0.5), exactly(0.0), exactly(0.2), (0, 0, 0))
    own = own_frame(Empty(), Giver("measured[t]", exactly(900.0), exactly(110.0)), BOX, (box_of_tools,))
    assert own.dry.best == pytest.approx(840.0)
    tongue_of_tools = 60.0 * (100 * INCH - 0.5) / LEVER
    assert carried(own).tongue.band.best == pytest.approx(110.0 - tongue_of_tools)


def test_without_a_tongue_reading_the_place_is_anywhere_and_without_any_reading_the_weight_is_unknown() -> None:
    own = own_frame(Empty(), Giver("trailer.empty", exactly(900.0), None), BOX, ())
    assert not own.place.x.known
    assert (own.place.x.low, own.place.x.high) == (BOX.coupler_x.best, BOX.rear_x)
    assert not own_frame(Empty(), None, BOX, ()).dry.known


def test_more_on_the_scale_than_was_read_leaves_the_weight_unknown() -> None:
    lump = Mass("parts[lump]", "dry", "", exactly(950.0), exactly(1.0), exactly(0.0), exactly(0.2), (0, 0, 0))
    assert not own_frame(Empty(), Giver("measured[t]", exactly(900.0), exactly(110.0)), BOX, (lump,)).dry.known


def test_something_of_unknown_weight_on_the_scale_stays_in_the_trailers_own_weight() -> None:
    unknown = Band(0.0, 0.0, float("inf"), known=False)
    lump = Mass("parts[lump]", "dry", "", unknown, exactly(1.0), exactly(0.0), exactly(0.2), (0, 0, 0))
    assert own_frame(Empty(), Giver("measured[t]", exactly(900.0), exactly(110.0)), BOX, (lump,)).dry == exactly(900.0)


def test_the_height_is_as_written_else_between_wheels_and_half_the_box() -> None:
    giver = Giver("trailer.empty", exactly(900.0), exactly(110.0))
    assert own_frame(Empty(cg_z=exactly(0.5)), giver, BOX, ()).place.z == exactly(0.5)
    assumed = own_frame(Empty(), giver, BOX, ()).place.z
    assert (assumed.low, assumed.high) == (pytest.approx(-18.5 / 2 * INCH), pytest.approx(39 * INCH))
    assert assumed.assumed


def test_whimbrel_takes_its_first_ticket() -> None:
    """1725 lb on the axles and 235 lb on the ball, as typed in the file."""
    giver = giver_of(demo("whimbrel"))
    assert giver is not None
    assert (giver.of, giver.stage, giver.load) == ("measured[ticket-empty]", 0, "")
    assert giver.weight.best == pytest.approx((1725 + 235) * POUND)
    slot = slot_of(studied("whimbrel"), "measure", "empty")
    assert slot.weight is not None
    assert slot.weight.gross.band.best == pytest.approx(1960 * POUND)
    assert slot.weight.tongue.band.best == pytest.approx(235 * POUND, rel=2e-3)
    assert slot.weight.compared == ()
    assert studied("whimbrel").own_weight_from == "measured[ticket-empty]"


def test_dunlin_takes_its_weighbridge() -> None:
    slot = slot_of(studied("dunlin"), "collect", "empty")
    assert slot.weight is not None
    assert slot.weight.gross.band.best == pytest.approx(268.0)
    assert slot.weight.tongue.band.best == pytest.approx(31.0, abs=0.2)


def ticket(of: str, what: str, kg: float, on: date | None, stage: str, load: str = "") -> Measured:
    return Measured(f"measured[{of}]", what, sigma(kg, 5.0), on, stage, load, "public scale")


def test_the_newest_ticket_of_the_earliest_stage_gives_and_the_others_are_compared() -> None:
    rig = clean("empty: {weight: 1960, tongue: 235, cg_z: 22, ", "empty: {cg_z: 22, ")
    readings = (
        ticket("b", "total", 900.0, date(2026, 1, 1), "shell"),
        ticket("b", "tongue", 110.0, date(2026, 1, 1), "shell"),
        ticket("c", "total", 905.0, date(2026, 2, 1), "shell"),
        ticket("a", "total", 1000.0, date(2026, 3, 1), "bunks"),
        ticket("d", "tongue", 120.0, date(2026, 3, 1), "shell", "road"),
    )
    rig = replace(rig, measured=readings)
    giver = giver_of(rig)
    assert giver is not None
    assert (giver.of, giver.tongue) == ("measured[c]", None)
    assert [one.of for one in readings_for(rig, giver, 0, "")] == ["measured[b]", "measured[b]"]
    assert weighed_slots(rig, giver) == ((0, ""), (1, ""), (0, "road"))
    assert giver_of(replace(rig, measured=(replace(readings[0], stage=""),))) is None


def test_a_ticket_is_compared_with_the_rig_of_its_own_stage_and_load() -> None:
    """A ticket of an earlier stage brings a slot of that stage, though the study starts at today's."""
    rig = clean("today: {stage: shell}", "today: {stage: bunks}")
    road = 1960 + 100 + 50 + 2 + 1
    water = slot_of(study(rig, TODAY, all_stages=True), "shell", "road").masses
    kg = road * POUND + sum(mass.kg.best for mass in water if mass.what == "fluid")
    rig = replace(rig, measured=(ticket("t", "total", kg + 4.0, TODAY, "shell", "road"),))
    slot = slot_of(study(rig, TODAY), "shell", "road")
    assert not slot.is_ticked
    assert slot.weight is not None
    (one,) = slot.weight.compared
    assert one.planned.band.best == pytest.approx(kg)
    assert one.gap == pytest.approx(4.0, abs=1e-6)
    assert one.agreement == pytest.approx(4.0 / 5.0, rel=1e-3)
    assert all(
        not other.weight.compared for other in study(rig, TODAY).slots if other.weight and other.stage == "bunks"
    )


def test_a_ticket_of_today_is_compared_with_the_ticks() -> None:
    rig = replace(clean(), measured=(ticket("t", "total", 1000.0, TODAY, "shell", "road"),))
    found = study(rig, TODAY)
    ticked, planned = slot_of(found, "shell", "road", True).weight, slot_of(found, "shell", "road", False).weight
    assert ticked is not None and planned is not None
    assert len(ticked.compared) == 1
    assert planned.compared == ()


def test_the_standard_uncertainty_left_for_the_place_is_what_the_weight_does_not_explain() -> None:
    own = own_frame(Empty(), Giver("t", sigma(900.0, 9.0), sigma(110.0, 20.0)), BOX, ())
    u_tongue, u_weight = 20.0 / COVERAGE, 9.0 / COVERAGE
    left = sqrt(u_tongue**2 - (110.0 / 900.0 * u_weight) ** 2)
    assert own.place.x.standard_uncertainty == pytest.approx(LEVER / 900.0 * left)


def disagreeing(on: date = TODAY) -> Rig:
    """Return the small rig at its second stage, with a ticket of its first one that the list cannot explain."""
    rig = clean("today: {stage: shell}", "today: {stage: bunks}")
    return replace(rig, measured=(ticket("t", "total", 1200.0, on, "shell", "road"),))


def test_a_ticket_that_disagrees_is_said_wherever_the_trailer_is_towed() -> None:
    found = study(disagreeing(), TODAY)
    told = {slot.use: [one.code for one in slot.findings] for slot in found.asked_slots()}
    assert "weight/ticket-disagrees" in told["tow"]
    assert "weight/ticket-disagrees" in found.answer("tow").because  # type: ignore[union-attr]
    assert all("weight/ticket-disagrees" not in told[use] for use in ("sleep", "leave", "work"))
    assert {one.stage for one in found.findings("tow")} == {"bunks"}


def test_the_slot_of_a_ticket_answers_no_question_of_its_own() -> None:
    found = study(disagreeing(), TODAY)
    assert [(slot.stage, slot.load) for slot in found.slots if slot.is_for_ticket] == [("shell", "road")]
    assert {slot.stage for slot in (*found.asked_slots(), *found.planned())} == {"bunks"}
    rig = replace(clean(), measured=(ticket("t", "total", 960.0, TODAY, "shell"),))
    found = study(rig, TODAY)
    assert [slot.load for slot in found.slots if slot.is_for_ticket] == ["weighed empty"]
    assert "weighed empty" not in {slot.load for slot in found.asked_slots()}
    assert found.differences == ()


def test_a_slot_comes_out_the_same_whatever_is_asked_for_beside_it() -> None:
    rig = disagreeing()
    whole = study(rig, TODAY, all_stages=True)
    for alone in study(rig, TODAY, stage=1, load="road").slots:
        if not alone.is_for_ticket:
            assert alone == slot_of(whole, alone.stage, alone.load, alone.is_ticked, alone.use)


def test_a_ticket_that_disagrees_is_said_once_in_its_own_slot() -> None:
    slot = slot_of(study(disagreeing(), TODAY, all_stages=True), "shell", "road")
    assert [one.code for one in slot.findings].count("weight/ticket-disagrees") == 1


def test_what_is_taken_off_moves_both_ends_of_the_reading_down_with_its_middle() -> None:
    """60 kg off a ticket of 900 +- 9 kg leaves 831 to 849 kg: own arithmetic."""
    tools = Mass("parts[tools]", "dry", "", exactly(60.0), exactly(0.5), exactly(0.0), exactly(0.2), (0, 0, 0))
    own = own_frame(Empty(), Giver("measured[t]", sigma(900.0, 9.0), None), BOX, (tools,))
    assert (own.dry.low, own.dry.best, own.dry.high) == pytest.approx((831.0, 840.0, 849.0))


SCALE = "measured:\n  shelf-scale: {date: 2026-04-02, what: scale, part: shelf, weight: 15}\n"


@pytest.mark.parametrize(
    ("written", "pounds", "is_compared"),
    [
        ("weight: 12", 12.0, True),
        ("weight: unknown", 15.0, False),
        ("weight: unknown, as_built: {weight: 14}", 14.0, True),
        ("weight: 12, as_built: {weight: unknown}", 12.0, True),
        ("as_built: {weight: unknown}", 15.0, False),
    ],
)
def test_a_weighing_is_better_than_unknown_and_is_compared_with_what_is_known(
    written: str, pounds: float, is_compared: bool
) -> None:
    rig = read_rig(CLEAN.replace("40 x 10 x 2, weight: 12", f"40 x 10 x 2, {written}") + SCALE).rig
    (shelf,) = (item for item in rig.parts if item.name == "shelf")
    assert shelf.mass.known and shelf.mass.best == pytest.approx(pounds * POUND)
    assert bool(weighed_parts(rig)) is is_compared

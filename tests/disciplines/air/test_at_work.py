"""The air of those who work in it: their own breath, a flame that cooks, everything shut; and a height nobody wrote."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.air.breathing import breathed, breathed_at_work, flow_between, mild_night, stack_of
from boxwright.disciplines.air.parts import PlannedDamp
from boxwright.disciplines.air.solve import offers
from boxwright.exchange import Airflow
from boxwright.finding import Finding
from boxwright.units import Band, exactly
from tests.disciplines.air.test_findings import edited, worked
from tests.disciplines.air.test_vents import hole, room, standing, vent

CM2, HOUR = 1e-4, 3600.0
UNKNOWN = Band(0.0, 0.0, float("inf"), known=False)
AT_WORK = ("people: [owner], for: [sleep, leave]", "people: [owner], for: [sleep, leave, work]")
STOVE = (
    "  # one more",
    "  stove: {x: 3000, side: left, z: 900, size: 300 x 300 x 100, weight: 4, stage: shell, done: yes, burns: propane, cooks: 1 h}",  # noqa: E501
)
NO_VENTS = (
    (
        "cut: yes, done: yes, free_area: 200 cm2, unit: {weight: 1}}\n  vent-high",
        "cut: yes, done: yes, free_area: 0 cm2, unit: {weight: 1}}\n  vent-high",
    ),
    ("free_area: 200 cm2, unit: {weight: 1}}\nstages", "free_area: 0 cm2, unit: {weight: 1}}\nstages"),
)


def air_of() -> Airflow:
    """Return the air of a room with a low and a high vent of 116 cm2."""
    own = room(vent("low", 116 * CM2), vent("high", 116 * CM2))
    return offers(own, standing("low", "high"), (hole("low", 0.1), hole("high", 1.8)), 1.0, 2, "work").airflow


def test_somebody_at_work_breathes_out_more_than_asleep() -> None:
    own, air = room(), air_of()
    work, sleep = breathed_at_work(own, air, 2, {}), breathed(own, air, 2)
    assert work is not None and sleep is not None
    # By hand: 20 against 11 l/h a person, over the same air for as long.
    share = (work.morning.best - 0.00042) / (sleep.morning.best - 0.00042)
    assert share == pytest.approx(20.0 / 11.0)
    assert work.need == sleep.need
    assert breathed_at_work(own, air, 0, {}) is None
    assert breathed_at_work(replace(own, volume=UNKNOWN), air, 1, {}) is None


def test_a_flame_that_cooks_an_hour_counts_in_the_mean_of_the_day() -> None:
    """By hand: 1.5 kW of propane for an hour makes 190.5 l, over eight hours as much as 1.19 people at work."""
    stove = PlannedDamp("parts[stove]", "stove", exactly(HOUR), True, None)
    own, air, yes = replace(room(), damp=(stove,)), air_of(), {"parts[stove]": "yes"}
    alone, cooked = breathed_at_work(own, air, 2, {}), breathed_at_work(own, air, 2, yes)
    assert alone is not None and cooked is not None
    more = (cooked.morning.best - 0.00042) / (alone.morning.best - 0.00042)
    assert more == pytest.approx((40.0 + 190.5 / 8.0) / 40.0)
    perhaps = breathed_at_work(own, air, 2, {"parts[stove]": "perhaps"})
    assert perhaps is not None
    assert (perhaps.morning.low, perhaps.morning.high) == (alone.morning.low, cooked.morning.high)
    unsaid = breathed_at_work(replace(own, damp=(replace(stove, cooks=UNKNOWN),)), air, 2, yes)
    assert unsaid is not None
    assert (unsaid.morning.best, unsaid.morning.high) == (alone.morning.best, cooked.morning.high)


def test_a_height_nobody_wrote_is_anything_a_trailer_may_have() -> None:
    """By hand: 0.0145 for a storey of 2.5 m, so 0.0058, 0.01102 and 0.01334 for 1.0, 1.9 and 2.3 m."""
    stacks = [stack_of(UNKNOWN, end) for end in ("low", "best", "high")]
    assert stacks == pytest.approx([0.0058, 0.01102, 0.01334])
    assert stack_of(exactly(2.0), "low") == stack_of(exactly(2.0), "high") == pytest.approx(0.0116)
    air = replace(air_of(), vents=exactly(0.0))
    told, asked = (flow_between(air, one, 288.15, 291.15) for one in (exactly(1.9), UNKNOWN))
    assert asked.low < told.low and asked.high > told.high and asked.best == pytest.approx(told.best)
    mild = mild_night(replace(room(), height=UNKNOWN), air, 1)
    assert mild is not None and not mild.has_height


def test_a_mild_day_of_work_wants_more_air_than_such_a_night() -> None:
    own, air = room(), air_of()
    night, day = mild_night(own, air, 1), mild_night(own, air, 0, 1)
    assert night is not None and day is not None
    assert day.need.best / night.need.best == pytest.approx(80.0 / 50.0)
    assert day.humidity.best > night.humidity.best
    assert mild_night(own, air, 0) is None


def fresh(*edits: tuple[str, str]) -> list[Finding]:
    """Return what is said of the air of the small rig at work."""
    return [one for one in worked(edited(AT_WORK, *edits), "work") if one.code == "air/air-at-work"]


def test_at_work_a_room_with_enough_air_is_not_spoken_of() -> None:
    assert fresh() == []


def test_at_work_a_shut_room_with_a_flame_is_told_to_be_opened() -> None:
    (shut,) = fresh(*NO_VENTS)
    assert (shut.kind, shut.uses) == ("unknown", ("work",)) and "perhaps over 5,000 ppm" in shut.says
    (cooking,) = fresh(*NO_VENTS, STOVE)
    assert cooking.kind == "limit" and "1 work in it" in cooking.says and "over 5,000 ppm" in cooking.says
    assert "Work with a door or a window open" in cooking.act
    assert cooking.number is not None and shut.number is not None and cooking.number > shut.number


def test_at_work_nobody_named_and_a_room_without_size_are_asked_about() -> None:
    (unnamed,) = fresh(("people: [owner], for: [sleep, leave, work]", "people: none, for: [sleep, leave, work]"))
    assert (unnamed.kind, unnamed.where) == ("unknown", "people") and "who works in it" in unnamed.says
    (sizeless,) = fresh(("body: {length: 4200, width: 2000, height: 2000}", "body: {length: 4200, width: 2000}"))
    assert (sizeless.kind, sizeless.where) == ("unknown", "trailer.body")


def test_a_mild_night_in_a_room_without_a_written_height_asks_for_it() -> None:
    text = edited(
        ("body: {length: 4200, width: 2000, height: 2000}", "body: {length: 4200, width: 2000}"),
        (
            "cut: yes, done: yes, free_area: 200 cm2, unit: {weight: 1}}\n  vent-high",
            "cut: yes, done: yes, free_area: 90 cm2, unit: {weight: 1}}\n  vent-high",
        ),
    )
    (found,) = [one for one in worked(text, "sleep") if one.code == "air/mild-wet"]
    assert found.kind == "unknown" and "nobody wrote how high the room is" in found.says
    assert "trailer.body" in found.because and "trailer.body.height" in found.act


def test_a_room_higher_than_a_storey_draws_no_more_than_one() -> None:
    """0.0145 for a storey of 2.5 m, and for any room that is higher; 1.25 m draw half of it."""
    assert stack_of(exactly(3.5)) == stack_of(exactly(2.5)) == pytest.approx(0.0145)
    assert stack_of(exactly(1.25)) == pytest.approx(0.00725)

"""Weight-distribution bars: where they put the load, what they may not hide, and where they do harm."""

from __future__ import annotations

import pytest
from hypothesis import given as drawn
from hypothesis import strategies as st

from boxwright.disciplines.towing.result import Shifted
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from tests.findings.towing.held import BASE, edited, result_of, said_of
from tests.study.demo import POUND, RIGS

TONGUE = 480.0 * POUND
"""What the small rig has on its ball."""


def bars(edits: dict[str, object]) -> list[Finding]:
    return [one for one in said_of(edits) if one.code == "towing/bars"]


def shifted(restores: str) -> Shifted:
    found = result_of(edited(BASE, {"tow.pickup.bars": {"restores": restores}})).behind[0].shifted
    assert found is not None
    return found


@drawn(st.integers(0, 100))
def test_bars_make_no_weight_and_keep_every_moment(percent: int) -> None:
    """Statics: forces add to the ball's load; about the ball, 190 and 50 in to the axles, 152 in to the trailer's."""
    moved = shifted(f"{percent} %")
    front, rear, wheels = -moved.front.best, moved.rear.best, moved.wheels.best
    assert front + rear + wheels == pytest.approx(TONGUE)
    assert front * 190.0 + rear * 50.0 == pytest.approx(wheels * 152.0, abs=1e-6)
    assert moved.front.best == pytest.approx(moved.front_slack.best * (1.0 - percent / 100.0), abs=1e-9)
    assert moved.front_slack.best == pytest.approx(TONGUE * 50.0 / 140.0)


def test_the_loads_are_told_by_numbers() -> None:
    """Half of 480 * 50 / 140 = 171 lb is 86 lb; by the sum of forces and moments the wheels get 59, the rear 506 lb."""
    (found,) = bars({"tow.pickup.bars": {"restores": "50 %"}})
    assert found.kind == "advice" and all(f"{one} lb" in found.says for one in (86, 171, 506, 59))
    assert "raise no rating" in found.says and "three weighings" in found.act


def test_taut_bars_hide_no_overload() -> None:
    tight = {"tow.pickup.payload": "1030 lb", "tow.pickup.tongue": "470 lb"}
    without = {one.code for one in said_of(tight) if one.kind == "stop"}
    assert without == {"towing/payload", "towing/tongue-over-rating"}
    taut = said_of({**tight, "tow.pickup.bars": {"restores": "100 %"}})
    assert {one.code for one in taut if one.kind == "stop"} == without


def test_what_only_the_bars_put_on_the_wheels_stops() -> None:
    """3,520 lb on wheels rated 3,540 lb; 59 lb more are too many."""
    rated = {"trailer.gvwr": "4100 lb", "trailer.axles.gawr": ["1770 lb", "1770 lb"]}
    assert [one for one in said_of(rated) if one.kind == "stop"] == []
    found = [one for one in bars({**rated, "tow.pickup.bars": {"restores": "50 %"}}) if one.kind == "stop"]
    assert [one.where for one in found] == ["tow[pickup]"] and "bars taut" in found[0].says


def test_bars_with_surge_brakes_ask_what_the_maker_allows() -> None:
    edits = {"trailer.brakes.kind": "surge", "tow.pickup.bars": "yes"}
    (asked,) = (one for one in bars(edits) if "surge" in one.says)
    assert asked.where == "tow[pickup].bars" and "maker" in asked.says and asked.kind == "unknown"
    assert not [one for one in bars({**edits, "trailer.brakes.kind": "electric"}) if "surge" in one.says]
    assert bars({**edits, "tow.pickup.bars": "no"}) == []


@pytest.mark.parametrize(
    ("edits", "where"),
    [
        ({"tow.pickup.wheelbase": ""}, "tow[pickup].wheelbase"),
        ({"tow.pickup.overhang": ""}, "tow[pickup].overhang"),
        ({"tongue": "unknown"}, "trailer.coupler"),
        ({"tow.pickup.bars": "unknown"}, "tow[pickup].bars"),
    ],
)
def test_what_is_missing_is_asked_for_and_can_stop_nothing(edits: dict[str, object], where: str) -> None:
    (found,) = bars({"tow.pickup.bars": {"restores": "50 %"}, **edits})
    assert (found.kind, found.where, found.could_stop) == ("unknown", where, False)


def test_the_rig_file_carries_bars_and_refuses_more_than_all() -> None:
    text = (RIGS / "dunlin.yaml").read_text(encoding="utf-8")
    for written, problems in (("{restores: 50 %}", 0), ("yes", 0), ("no", 0), ("{restores: 50}", 1)):
        reading = read_rig(text.replace("rating: 1500, unbraked", f"bars: {written}, rating: 1500, unbraked"))
        assert len(reading.problems) - len(read_rig(text).problems) == problems, written


def test_a_rating_of_the_tow_vehicle_that_cannot_be_read_is_said_and_troubles_the_answer() -> None:
    text = (RIGS / "dunlin.yaml").read_text(encoding="utf-8")
    reading = read_rig(text.replace("rating: 1500, unbraked", "rating: 8 stone, unbraked"))
    assert [one.path for one in reading.problems] == ["tow[estate].rating"]
    assert "tow[estate].rating" in reading.rig.troubled

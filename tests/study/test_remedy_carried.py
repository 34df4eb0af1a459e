"""What is left behind: enough to stop a breach, and carried in the tow vehicle only where that was proved."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.cli.asked import Question
from boxwright.cli.fixes import tried_as
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.bench import adds_nothing, is_kept, stands
from boxwright.study.moves import Edit
from boxwright.study.remedy import Fix, remedies
from boxwright.study.slots import Slot, study
from tests.study.demo import RIGS as DEMOS
from tests.study.demo import TODAY
from tests.study.test_remedy import applied, asked, bench
from tests.study.test_wrong_rigs import text_of

UNBRAKED = text_of("unbraked")
CODE = "towing/unbraked-limit"


def first(text: str, load: str = "away") -> Fix:
    return remedies(bench(text), 0, True, use="tow", load=load).fixes[0]


def test_a_trailer_too_heavy_for_a_vehicle_without_brakes_is_lightened_though_the_plate_allows_more() -> None:
    fix = first(UNBRAKED)
    assert fix.edits == (Edit("loads[away].out", "crates"),)  # 673 kg less 70 is 603; less 60 it would be 613, farther
    assert fix.is_whole and (CODE, "tow[estate]", "away") in fix.clears
    (slot,) = study(read_rig(applied(UNBRAKED, fix.edits)).rig, TODAY, stage=0, load="away").asked_slots("tow")
    left = [one for one in slot.findings if one.code == CODE]
    # The vehicle's limit is still the most that may be loaded: that is said, and it is kept.
    assert [(one.kind, is_kept(one)) for one in left] == [("limit", True)]


def test_of_a_limit_that_is_kept_nothing_stands_but_of_a_lesser_breach_it_does() -> None:
    _, finding, slot = asked(UNBRAKED, CODE)
    assert finding.kind == "stop" and finding.margin is not None and not is_kept(finding)

    def slot_with(*findings: Finding) -> Slot:
        return replace(slot, findings=findings, accepted=())

    kept = replace(finding, kind="limit", margin=1.0)
    breach = replace(finding, kind="limit", margin=-1.0)
    question = replace(finding, kind="unknown", margin=1.0)
    assert not stands(finding, slot_with(kept))
    assert stands(finding, slot_with(breach))
    assert stands(kept, slot_with(kept))
    assert adds_nothing(slot_with(question), slot_with(kept))
    assert not adds_nothing(slot_with(question), slot_with(breach))
    assert not adds_nothing(slot_with(), slot_with(kept))


@pytest.mark.parametrize(
    ("papers", "says"),
    [  # behind it ride 170 kg and about 41 kg on the ball; with 70 kg more about 281 kg
        ("payload: 480", "Leave crates behind, or carry it in estate (70 kg)"),
        ("payload: 270", "Leave crates behind (70 kg)"),
        ("payload: 260..300", "Leave crates behind (70 kg)"),
        ("payload: unknown", "Leave crates behind (70 kg)"),
    ],
)
def test_carrying_in_the_tow_vehicle_is_said_only_where_all_its_ratings_hold(papers: str, says: str) -> None:
    text = UNBRAKED.replace("payload: 480", papers)
    if papers != "payload: 480":
        text = text.replace("gvwr: 1950, ", "").replace("kerb: 1470, ", "")
    assert first(text).says == says


def test_the_combination_bars_carrying_too() -> None:
    # With the crates in the trailer or in the car, 673 + 1,470 + 170 kg are 2,313, over 2,300; left behind, 2,243.
    text = UNBRAKED.replace("gcwr: 3450", "gcwr: 2300")
    assert first(text).says == "Leave crates behind (70 kg)"


def test_without_a_tow_vehicle_or_what_rides_in_it_nothing_is_carried_there() -> None:
    one = bench(UNBRAKED.replace("people_and_gear: 170, ", ""))
    (slot,) = (slot for slot in one.stage_before(0, True) if slot.load == "away")
    assert not one.may_carry(one.reading, slot, 1.0)
    other = bench(UNBRAKED)
    (slot,) = (slot for slot in other.stage_before(0, True) if slot.load == "away")
    assert other.may_carry(other.reading, slot, 1.0)
    assert not other.may_carry(other.reading, slot, 1000.0)
    assert other.towed_by == "estate"


def test_the_command_printed_shows_the_load_state_the_change_is_for() -> None:
    command = tried_as(first(UNBRAKED), Question("rig.yaml"))
    assert command == 'boxwright try rig.yaml "add crates to loads[away].out" --load away'


def test_the_demo_that_is_too_heavy_without_brakes_is_told_what_to_leave_at_home() -> None:
    one = bench((DEMOS / "dunlin.yaml").read_text(encoding="utf-8"))
    stage = one.reading.rig.header.stage_today
    fix = remedies(one, stage, True, use="tow", load="home-poor").fixes[0]
    assert fix.code == CODE and fix.is_whole
    # Nobody wrote its payload: that anything may be carried in the car is not proved and not said.
    assert fix.says.startswith("Leave ") and "or carry" not in fix.says

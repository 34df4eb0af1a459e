"""A verdict is never `go` while something it rests on is not known (I14). The list only grows.

Every test starts from a rig that is a `go` once the disciplines that are not built yet are taken to have judged, and
changes one thing.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from boxwright.cli.compared import parked_sentences
from boxwright.disciplines import weight
from boxwright.finding import USES, Use
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Accepted
from boxwright.study import flow
from boxwright.study.slots import study
from boxwright.study.verdict import RESTS_ON, verdict
from boxwright.units import exactly
from tests.study.demo import ALL, CLEAN, TODAY, clean, if_all_judge, slot_of

HALF_A_BED = ("stage: shell, done: yes}\n  chest", "stage: shell, done: part}\n  chest")


@pytest.mark.parametrize("use", USES)
def test_the_rig_they_start_from_is_a_go(use: Use) -> None:
    assert if_all_judge(study(clean(), TODAY), use).answer == "go"


@pytest.mark.parametrize("use", USES)
def test_never_go_when_a_part_was_dropped(use: Use) -> None:
    found = study(clean("weight: 12, ", "weight: 12 stones, "), TODAY)
    one = if_all_judge(found, use)
    assert one.answer == "ask"
    assert "rig/not-read" in one.because
    assert "parts[shelf].weight" in one.says[0]


@pytest.mark.parametrize(("use", "answer"), [("tow", "ask"), ("sleep", "no"), ("leave", "ask"), ("work", "ask")])
def test_never_go_when_a_piece_is_stale(use: Use, answer: str) -> None:
    """The editor shows a piece as it was last read; the study is told that its text cannot be read any more.

    A whole piece may have held an alarm or an exit, so that nobody sleeps on it.
    """
    one = if_all_judge(study(replace(clean(), troubled=("parts[shelf]",)), TODAY), use)
    assert (one.answer, one.because) == (answer, ("rig/not-read",))


def test_unread_text_of_an_alarm_forbids_sleeping_and_that_of_a_weight_asks() -> None:
    for path, answer in (("parts[alarm].alarm", "no"), ("parts[alarm].weight", "no"), ("parts[bed].weight", "ask")):
        assert if_all_judge(study(replace(clean(), troubled=(path,)), TODAY), "sleep").answer == answer
    broken = study(clean("alarm: CO}", "alarm: CX}"), TODAY)
    assert if_all_judge(broken, "sleep").answer == "no"
    assert if_all_judge(broken, "tow").answer == "ask"


@pytest.mark.parametrize("use", USES)
def test_never_go_when_the_date_is_stale(use: Use) -> None:
    dated = "today: {stage: shell, date: 2026-05-01}"
    one = if_all_judge(study(clean("today: {stage: shell}", dated), TODAY), use)
    assert (one.answer, one.because) == ("ask", ("rig/date-is-stale",))
    assert if_all_judge(study(clean("today: {stage: shell}", dated), date(2026, 5, 1)), use).answer == "go"


def test_a_demo_is_judged_for_its_own_day_and_anything_for_the_day_asked_for() -> None:
    dated = clean("today: {stage: shell}", "demo: true\ntoday: {stage: shell, date: 2026-05-01}")
    assert study(dated, TODAY).judged_on == date(2026, 5, 1)
    assert if_all_judge(study(dated, TODAY), "tow").answer == "go"
    assert study(dated, TODAY, judged_on=date(2026, 6, 1)).judged_on == date(2026, 6, 1)
    assert study(clean(), TODAY).judged_on == TODAY


@pytest.mark.parametrize("use", USES)
def test_never_go_when_a_part_stands_perhaps(use: Use) -> None:
    """Whoever is to sleep on half a bed may lie elsewhere, with another way out: of that a no is said."""
    one = if_all_judge(study(clean(*HALF_A_BED), TODAY), use)
    assert one.answer == ("no" if use == "sleep" else "ask")
    code = "weight/stands-perhaps" if use == "tow" else "rig/stands-perhaps"
    assert set(one.because) == {code} | ({"safety/who-sleeps-where"} if use == "sleep" else set())


def test_never_sleep_when_an_alarm_is_there_perhaps() -> None:
    found = study(clean("done: yes, alarm: CO", "done: part, alarm: CO"), TODAY)
    assert if_all_judge(found, "sleep").answer == "no"
    assert if_all_judge(found, "leave").answer == "ask"


@pytest.mark.parametrize("written", ["", "tanks: {can: }, "])
@pytest.mark.parametrize("use", USES)
def test_never_go_when_a_tank_is_unnamed(use: Use, written: str) -> None:
    one = if_all_judge(study(read_rig(CLEAN.replace("tanks: {can: full}, ", written)).rig, TODAY), use)
    assert one.answer == "ask"
    assert one.because == (("weight/tank-unnamed",) if use == "tow" else ("rig/tank-not-named",))


@pytest.mark.parametrize("use", USES)
def test_never_go_when_the_country_is_a_default(use: Use) -> None:
    one = if_all_judge(study(clean("countries: [US-NC]\n", ""), TODAY), use)
    assert one.answer == "ask"
    assert one.because[0] == "rig/country-is-assumed"


@pytest.mark.parametrize(("use", "folder"), [(use, folder) for use in USES for folder in RESTS_ON[use]])
def test_never_go_when_a_discipline_has_not_judged(use: Use, folder: str) -> None:
    slot = study(clean(), TODAY).asked_slots(use)[0]
    one = verdict(use, slot.load, slot.stage, slot.findings, ALL - {folder})
    assert (one.answer, one.because) == ("no", (f"not-judged/{folder}",))


@pytest.mark.parametrize("use", USES)
def test_never_go_when_the_file_is_of_a_later_format(use: Use) -> None:
    one = if_all_judge(study(clean("boxwright: 1", "boxwright: 2"), TODAY), use)
    assert one.answer == "no"
    assert one.because[0] == "rig/later-format"


def test_never_go_when_an_unknown_could_stop() -> None:
    one = if_all_judge(study(clean("size: 70 x 40 x 10, weight: 100", "size: 70 x 40 x 10"), TODAY), "tow")
    assert one.answer == "ask"
    assert "weight/weight-unknown" in one.because
    assert one.questions[0].endswith("min)")


def test_never_go_when_a_band_crosses() -> None:
    """A tongue weight that is well above zero at best and below it at the bad end of its band."""
    one = if_all_judge(study(clean("tongue: 235", "tongue: 230..240"), TODAY), "tow")
    assert one.answer == "go"
    one = if_all_judge(study(clean("tongue: 235", "tongue: -400..440"), TODAY), "tow")
    assert one.answer == "ask"
    assert "weight/tongue-lifts" in one.because


@pytest.mark.parametrize("use", USES)
def test_never_go_when_an_exception_was_raised(use: Use, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object) -> weight.Result:
        raise ZeroDivisionError("no axle")

    broken.__module__ = weight.solve.__module__
    monkeypatch.setattr(flow.weight, "solve", broken)
    found = study(clean(), TODAY)
    one = if_all_judge(found, use)
    assert one.answer == "no"
    assert one.because == ("weight/could-not-be-worked-out",)
    assert found.slots[0].masses
    assert "no axle" in found.slots[0].broken[0].traceback


@pytest.mark.parametrize("use", USES)
def test_never_go_when_no_load_state_is_judged_for_the_use(use: Use) -> None:
    rest = tuple(replace(state, uses=tuple(one for one in state.uses if one != use)) for state in clean().loads)
    found = study(replace(clean(), loads=rest), TODAY)
    one = found.answer(use)
    assert one is not None
    assert one.answer == "no"
    assert "rig/no-load-state" in one.because
    assert found.asked_slots(use) == ()
    assert next(iter(found.without_load)).use == use


def test_never_go_because_the_owner_has_accepted_it() -> None:
    """An acceptance sets a finding apart and clears no verdict; a stop cannot be accepted."""
    rig = clean(*HALF_A_BED)
    code = "weight/stands-perhaps"
    number = next(one.number for one in slot_of(study(rig, TODAY), "shell", "road", True).findings if one.code == code)
    assert number is not None
    accepted = replace(rig, accepted=(Accepted("accepted[1]", code, "", "I know", TODAY, exactly(number)),))
    slot = slot_of(study(accepted, TODAY), "shell", "road", True)
    assert [finding.code for finding in slot.accepted] == [code]
    assert if_all_judge(study(accepted, TODAY), "tow").answer == "ask"
    moved = replace(rig, accepted=(Accepted("accepted[1]", code, "", "I know", TODAY, exactly(number * 1.02)),))
    assert slot_of(study(moved, TODAY), "shell", "road", True).accepted == ()


def test_a_part_marked_accepted_takes_what_is_said_of_it_apart() -> None:
    rig = clean("size: 70 x 40 x 10, weight: 100", "size: 70 x 40 x 10, accepted: scale is broken until May")
    slot = slot_of(study(rig, TODAY), "shell", "road", True)
    assert {finding.where for finding in slot.accepted} == {"parts[bed]"}
    assert if_all_judge(study(rig, TODAY), "tow").answer == "ask"


def test_the_clock_may_be_ahead_or_behind() -> None:
    dated = clean("today: {stage: shell}", f"today: {{stage: shell, date: {TODAY + timedelta(days=1)}}}")
    assert if_all_judge(study(dated, TODAY), "tow").because == ("rig/date-is-stale",)


def test_never_sleep_when_nobody_knows_who_boards() -> None:
    """Uncoupled on its wheels it may tip back; how easily depends on people nobody has named or weighed."""
    loose = CLEAN.replace("coupled: yes, legs: down", "coupled: no, legs: up")
    nobody = loose.replace("people:\n  owner: {weight: 170, sleeps: bed}\n", "").replace("people: [owner], ", "")
    for text, answer in ((nobody, "no"), (loose.replace("weight: 170, ", ""), "ask")):
        one = if_all_judge(study(read_rig(text).rig, TODAY), "sleep")
        assert one.answer == answer and "weight/tips-up" in one.because, one


def test_a_state_somebody_sleeps_in_stands_parked_though_nobody_wrote_so() -> None:
    heavy = CLEAN.replace("coupled: yes, legs: down", "coupled: no, legs: up").replace("parked: yes, ", "")
    heavy = heavy.replace("weight: 170", "weight: 2500")
    assert if_all_judge(study(read_rig(heavy).rig, TODAY), "sleep").answer == "no"


@pytest.mark.parametrize("use", USES)
def test_never_go_when_a_tick_is_dated_in_the_future(use: Use) -> None:
    ticked = "weight: 100, stage: shell, done: yes"
    one = if_all_judge(study(clean(ticked, f"{ticked} 2026-05-03"), TODAY), use)
    assert (one.answer, one.because) == ("ask", ("rig/tick-is-ahead",))
    assert if_all_judge(study(clean(ticked, f"{ticked} 2026-05-02"), TODAY), use).answer == "go"


RAMP = "height: 72, by: trailer builder, cut: yes, release: inside,\n         swing: {hinge: bottom"
CAN = "tank: {of: water, volume: 5}"


@pytest.mark.parametrize(
    ("old", "new", "answer", "code"),
    [
        (RAMP, RAMP.replace("inside", "none"), "no", "safety/two-ways-out"),
        (RAMP, RAMP.replace("inside", "unknown"), "no", "safety/opens-from-inside"),
        ("expires: 2032-01, stage: shell, done: yes, alarm: CO", "stage: shell, done: yes, alarm: CO", "no",
         "safety/out-of-date"),
        ("expires: 2031-01", "expires: 2026-05-01", "no", "safety/out-of-date"),
        ("done: yes, alarm: smoke", "done: no, alarm: smoke", "no", "safety/smoke-alarm"),
        ("alarm: CO}", "alarm: gas}", "no", "safety/co-alarm"),
        (CAN, CAN.replace("water", "petrol"), "no", "safety/fuel-inside"),
        (CAN, CAN.replace("water", "unknown"), "no", "safety/fuel-inside"),
        ("puts_out: ABC", "note: red", "no", "safety/extinguisher"),
        ("people: [owner], ", "", "no", "safety/who-sleeps-where"),
        ("countries: [US-NC]", "countries: [NZ, US-NC]", "ask", "safety/no-rule-known"),
    ],
)  # fmt: skip
def test_never_sleep_when_somebody_could_be_shut_in_or_not_warned(old: str, new: str, answer: str, code: str) -> None:
    one = if_all_judge(study(clean(old, new), TODAY), "sleep")
    assert one.answer == answer
    assert code in one.because


@pytest.mark.parametrize(("fluid", "answer"), [("petrol", "no"), ("propane", "no"), ("diesel", "go"), ("water", "go")])
def test_never_leave_it_with_what_gives_off_vapour_inside(fluid: str, answer: str) -> None:
    assert if_all_judge(study(clean(CAN, CAN.replace("water", fluid)), TODAY), "leave").answer == answer


LOW = "vent-low: {wall: left, x: 130, width: 10, z: 4, height: 4, by: trailer builder, cut: yes, "
HIGH = "vent-high: {wall: right, x: 20, width: 10, z: 70, height: 4, by: trailer builder, cut: yes, "
FREE = "free_area: 30 sq in}"


LATER_LOW = LOW.replace("by: trailer builder, cut: yes", "stage: bunks, cut: no") + FREE
LATER_HIGH = HIGH.replace("by: trailer builder, cut: yes", "stage: bunks, cut: no") + FREE
HALF_LOW = LOW.replace("by: trailer builder, cut: yes", "stage: shell, done: part, cut: yes") + FREE


@pytest.mark.parametrize("low", [LATER_LOW, HALF_LOW, f"{LOW}free_area: 0.5 sq in}}"])
def test_never_sleep_where_nothing_stays_open(low: str) -> None:
    """Of two vents that are not in, half done, or no larger than a nail's hole, none lets anybody sleep."""
    text = CLEAN.replace(f"{LOW}{FREE}", low).replace(f"{HIGH}{FREE}", LATER_HIGH)
    assert text.count(low) == text.count(LATER_HIGH) == 1
    one = if_all_judge(study(read_rig(text).rig, TODAY), "sleep")
    assert one.answer == "no" and "air/fresh-air" in one.because, one


def test_never_sleep_beside_a_flame_without_air_low_and_high() -> None:
    """Where no rule of the country was read the figure is borrowed: enough of it is a limit, never a go."""
    cooker = "  cooker: {x: 130, side: left, z: 30, size: 14 x 12 x 4, weight: 8, stage: shell, done: yes,\n"
    cooker += "           burns: wood}\n"
    text = CLEAN.replace("  warmer:", f"{cooker}  warmer:")
    aired, shut = text, text.replace(f"{HIGH}{FREE}", LATER_HIGH)
    answers = [if_all_judge(study(read_rig(one).rig, TODAY), "sleep") for one in (aired, shut)]
    assert [one.answer for one in answers] == ["limits", "no"]
    assert all("air/air-by-a-flame" in one.because for one in answers)
    at_work = [if_all_judge(study(read_rig(one).rig, TODAY), "work") for one in (aired, shut)]
    assert [one.answer for one in at_work] == ["limits", "limits"]
    assert set(at_work[1].because) == {"air/air-by-a-flame", "air/air-at-work"}
    assert any("only with a door open" in one for one in at_work[1].says)


TOLD = "rig/told-otherwise"


@pytest.mark.parametrize(("use", "answer"), [("tow", "ask"), ("sleep", "no"), ("leave", "ask"), ("work", "ask")])
def test_never_go_on_what_is_ticked_while_words_say_what_is_there_today(use: Use, answer: str) -> None:
    """An alarm hangs there with a flat battery: the tick alone tells nothing of it."""
    one = if_all_judge(study(clean("done: yes, alarm: CO", "done: yes, now: battery flat, alarm: CO"), TODAY), use)
    assert (one.answer, one.because) == (answer, (TOLD,))
    assert "alarm" in one.says[0] and '"battery flat"' in one.says[0]
    fitted = study(clean("done: yes, alarm: CO", "done: yes, now: Hung, alarm: CO"), TODAY)
    assert if_all_judge(fitted, use).answer == "go"


@pytest.mark.parametrize(("now", "answer"), [("screwed shut", "no"), ("shut", "go")])
def test_never_sleep_behind_a_door_of_which_words_say_what_is_there_today(now: str, answer: str) -> None:
    """The door and the ramp have no tick; they are whole all the same unless words say else."""
    shut = clean("z: 0, height: 72, by: trailer builder, cut: yes", f"z: 0, height: 72, now: {now}, cut: yes")
    one = if_all_judge(study(shut, TODAY), "sleep")
    asked = ("safety/opens-from-inside",) if answer == "no" else ()  # once, by the chapter of the ways out
    assert (one.answer, one.because) == (answer, asked)


def test_what_is_half_done_is_not_asked_for_twice() -> None:
    half = study(clean("done: yes, alarm: CO", "done: part, now: battery flat, alarm: CO"), TODAY)
    assert TOLD not in if_all_judge(half, "sleep").because


@pytest.mark.parametrize("passes", ["unknown", "0..30 sq in", "0.3..30 sq in", "300 sq in"])
def test_never_sleep_by_vents_of_which_nobody_can_say_what_passes_them(passes: str) -> None:
    """One that nobody measured may pass nothing, and 40 square inches of hole pass no 300."""
    one = if_all_judge(study(clean("30 sq in", passes), TODAY), "sleep")
    assert one.answer == "no"
    assert "air/fresh-air" in one.because


TAIL_HEAVY = CLEAN.replace("weight: 50, stage: shell, kind: cargo", "weight: 1300, stage: shell, kind: cargo").replace(
    "chest: {x: 60", "chest: {x: 130"
).replace("cargo: none", "cargo: all")  # fmt: skip


@pytest.mark.parametrize(
    ("stands", "answer"),
    [
        ("coupled: no, legs: up", "no"),
        ("coupled: no, legs: down", "ask"),  # nobody wrote where the legs are
        ("legs: up", "ask"),
        ("coupled: yes, legs: up", "go"),
    ],
)
@pytest.mark.parametrize("use", ["leave", "work"])
def test_never_go_where_it_tips_back_by_itself(use: Use, stands: str, answer: str) -> None:
    """A nose of 235 lb 152 in before the wheels holds 1,300 lb 45 in behind them no more (statics)."""
    text = TAIL_HEAVY.replace("coupled: yes, legs: down", stands)
    assert text.count("1300, stage") == text.count("chest: {x: 130") == text.count(stands) == 1
    one = if_all_judge(study(read_rig(text).rig, TODAY), use)
    assert one.answer == answer, one.because
    assert ("weight/tips-up" in one.because) == (answer != "go")


def test_what_tips_back_only_under_people_may_be_left() -> None:
    text = TAIL_HEAVY.replace("1300, stage", "900, stage").replace("coupled: yes, legs: down", "coupled: no, legs: up")
    found = study(read_rig(text).rig, TODAY)
    assert if_all_judge(found, "work").because == ("weight/tips-up",)
    assert if_all_judge(found, "leave").answer == "go"
    told = " ".join(parked_sentences(found.slots, clean().header.units))
    assert "night (work), uncoupled, legs up: the nose LIFTS with everybody at the rear" in told
    assert "night (leave), uncoupled, legs up: the nose stays down with nobody in it" in told

"""Nobody sleeps by a heater of whose fumes a thing is not known: each missing fact is a no, none makes it better."""

from __future__ import annotations

from functools import cache

import pytest

from boxwright.finding import Use, Verdict
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.study.verdict import WORST_FIRST
from tests.study.demo import CLEAN, TODAY, clean, if_all_judge

ELECTRIC = "heater: {of: electric, lowest: 300 W, highest: 1500 W, switches: yes, fed_by: mains}"
PATH = "path: [tank, valve at tank, filter below floor, pump below floor at 30 deg, line 2 mm bore, warmer], reach: yes"
EXHAUST = "exhaust: {out: left, below: floor, length: 20, x: 110, falls: yes, longest: 78, clear: 3}"
INTAKE = "intake: {out: below floor, x: 150, length: 10}"
WATT = "lowest: 300 W, highest: 1500 W, plate: 120 F"
DIESEL = f"heater: {{of: diesel, {WATT}, switches: yes, {PATH}, {EXHAUST}, {INTAKE}}}"
FUEL = "  fuel: {x: -30, side: centre, z: 0, size: 14 x 8 x 10, weight: 4, stage: shell, done: yes, tank: {of: diesel, volume: 3}}\n"  # noqa: E501


@cache
def by(heater: str, *edits: tuple[str, str], use: Use = "sleep") -> Verdict:
    """Return whether somebody may sleep by a heater that is written so, or leave it."""
    text = CLEAN.replace("tanks: {can: full}", "tanks: {can: full, fuel: full}")
    for old, new in ((ELECTRIC, heater), ("  shelf:", f"{FUEL}  shelf:"), *edits):
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return if_all_judge(study(read_rig(text).rig, TODAY), use)


def test_the_heater_they_start_from_may_be_slept_by() -> None:
    assert by(DIESEL).answer in ("go", "limits", "ask")


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        (f", {EXHAUST}", "", "heat/exhaust"),
        (EXHAUST, "exhaust: {below: floor}", "heat/exhaust"),
        (EXHAUST, "exhaust: {out: somewhere}", "heat/exhaust"),
        (EXHAUST, "exhaust: unknown", "heat/exhaust"),
        (EXHAUST, "exhaust: none", "heat/unvented"),
        (EXHAUST, "exhaust: in the room", "heat/unvented"),
        (EXHAUST, "exhaust: {out: below floor, length: 20, x: 60}", ""),
        (EXHAUST, "exhaust: {out: left, below: floor, length: 20, x: 128}", "heat/exhaust-near-opening"),
        (EXHAUST, "exhaust: {out: left}", "heat/exhaust-near-opening"),
        (EXHAUST, "exhaust: {out: left, length: 20, x: unknown}", "heat/exhaust-near-opening"),
        ("falls: yes, ", "", "heat/exhaust-falls"),
        ("falls: yes", "falls: unknown", "heat/exhaust-falls"),
        ("falls: yes", "falls: no", "heat/exhaust-falls"),
        ("longest: 78", "longest: unknown", "heat/exhaust-length"),
        ("longest: 78, ", "", "heat/exhaust-length"),
        ("longest: 78", "longest: 15..78", "heat/exhaust-length"),
        ("x: 110", "x: 20", "heat/exhaust-length"),
        ("x: 110", "x: 900", "heat/exhaust-length"),
        ("length: 20, x: 110", "length: -20, x: 20", "heat/exhaust-length"),
        (", clear: 3", "", "heat/exhaust-clear"),
        ("clear: 3", "clear: 1..3", "heat/exhaust-clear"),
        (INTAKE, "intake: {out: below floor}", "heat/exhaust-near-intake"),
        (INTAKE, "intake: {out: left, below: floor, x: 120, length: 10}", "heat/exhaust-near-intake"),
        (", plate: 120 F", ", plate: 150..200", ""),
        (f", {INTAKE}", "", "heat/combustion-air"),
        (INTAKE, "intake: none", "heat/combustion-air"),
        (INTAKE, "intake: unknown", "heat/combustion-air"),
        ("of: diesel", "of: propane", ""),
        ("of: diesel", "of: unknown", ""),
        ("of: diesel, ", "", ""),
        (EXHAUST, "exhaust: {out: left, below: floor, length: 20, x: 60, z: unknown}", ""),
        (f"of: diesel, {WATT}, switches: yes, {PATH}, {EXHAUST}, {INTAKE}", f"of: wood, {WATT}", "heat/exhaust"),
        (
            f"of: diesel, {WATT}, switches: yes, {PATH}, {EXHAUST}, {INTAKE}",
            f"of: ambient magic, {WATT}",
            "heat/exhaust",
        ),
        (f"of: diesel, {WATT}, switches: yes, {PATH}, {EXHAUST}, {INTAKE}", WATT, "heat/exhaust"),
    ],
)
def test_a_missing_fact_of_its_fumes_is_a_no_and_none_makes_it_better(old: str, new: str, code: str) -> None:
    assert DIESEL.count(old) == 1
    found, whole = by(DIESEL.replace(old, new)), by(DIESEL)
    assert WORST_FIRST.index(found.answer) <= WORST_FIRST.index(whole.answer), (found.answer, found.because)
    if code:
        assert (found.answer, code in found.because) == ("no", True), found.because


@pytest.mark.parametrize(
    ("old", "new", "answer", "code"),
    [
        (f", {EXHAUST}", "", "ask", "heat/exhaust"),
        (EXHAUST, "exhaust: {below: floor}", "ask", "heat/exhaust"),
        (EXHAUST, "exhaust: none", "limits", "heat/unvented"),
        ("x: 110", "x: 128", "ask", "heat/exhaust-near-opening"),
        ("falls: yes", "falls: no", "limits", "heat/exhaust-falls"),
        ("longest: 78", "longest: unknown", "ask", "heat/exhaust-length"),
        ("clear: 3", "clear: unknown", "ask", "heat/exhaust-clear"),
        ("plate: 120 F", "plate: unknown", "ask", "heat/hot-plate"),
        (INTAKE, "intake: unknown", "ask", "heat/combustion-air"),
        (INTAKE, "intake: none", "limits", "heat/combustion-air"),
        (INTAKE, "intake: {out: left, below: floor, x: 120, length: 10}", "ask", "heat/exhaust-near-intake"),
        ("of: diesel", "of: unknown", "ask", "heat/fuel-not-known"),
    ],
)
def test_nobody_works_beside_a_burner_of_which_a_fact_of_its_fumes_is_missing(
    old: str, new: str, answer: str, code: str
) -> None:
    """Carbon monoxide takes who is awake too; awake they may open a door, so it limits or asks and is no no."""
    assert (DIESEL.count(old), by(DIESEL, use="work").answer) == (1, "go")
    found = by(DIESEL.replace(old, new), use="work")
    assert code in found.because, found.because
    assert found.answer == answer, found.because


@pytest.mark.parametrize("path", ["path: unknown, reach: yes, ", "reach: yes, ", ""])
def test_a_way_of_fuel_that_nobody_wrote_makes_no_warmer_work(path: str) -> None:
    """What its pump is fed by is not written either way: a heater of which less is known warms no surer."""
    cold = ("coldest_design: 72 F", "coldest_design: 45 F")
    whole, less = by(DIESEL, cold, use="work"), by(DIESEL.replace(f"{PATH}, ", path), cold, use="work")
    assert whole.because == less.because == ("heat/cold-at-work",)
    assert whole.answer == less.answer == "limits"


def test_nobody_works_beside_a_burner_without_an_alarm_for_its_gas() -> None:
    no_alarm = ("alarm: CO}", "alarm: smoke}")
    found = by(DIESEL, no_alarm, use="work")
    assert (found.answer, found.because) == ("limits", ("safety/co-alarm",))
    assert by(DIESEL, ("done: yes, alarm: CO}", "alarm: CO}"), use="work").answer == "ask"
    assert by(ELECTRIC, no_alarm, use="work").answer == "go"


@pytest.mark.parametrize(("date", "answer"), [("2020-01", "limits"), ("unknown", "ask"), ("2032-01", "go")])
def test_nobody_works_beside_a_burner_by_an_alarm_that_is_out_of_date(date: str, answer: str) -> None:
    old = ("weight: 1, expires: 2032-01, stage: shell, done: yes, alarm: CO}",
           f"weight: 1, expires: {date}, stage: shell, done: yes, alarm: CO}}")  # fmt: skip
    found = by(DIESEL, old, use="work")
    assert (found.answer, found.because) == (answer, () if answer == "go" else ("safety/out-of-date",))
    assert by(ELECTRIC, old, use="work").answer == "go"


ENGINE = (
    "  engine: {x: 120, side: centre, z: 0, size: 20 x 12 x 16, weight: 40, stage: shell, done: yes, generator: yes}\n"
)


def test_nobody_works_with_an_engine_in_the_room() -> None:
    within = by(ELECTRIC, ("  chest:", f"{ENGINE}  chest:"), use="work")
    assert (within.answer, within.because) == ("limits", ("safety/generator-near",))
    outside = by(ELECTRIC, ("  chest:", f"{ENGINE.replace('x: 120', 'x: -45')}  chest:"), use="work")
    assert "safety/generator-near" not in outside.because


ANY_PUMP = "pump below floor at 30 deg, line 2 mm bore, warmer]"


@pytest.mark.parametrize("use", ["sleep", "leave"])
@pytest.mark.parametrize(
    ("path", "worst"),
    [
        (f"[fuel, filter inside z 2, valve, {ANY_PUMP}", "no"),
        (f"[fuel, filter in the room z 2, {ANY_PUMP}", "no"),
        (f"[fuel, filter inside, {ANY_PUMP}", "ask"),
        (f"[fuel, filter below floor, {ANY_PUMP}", "ask"),
        (f"[fuel, valve?, filter below floor, {ANY_PUMP}", "ask"),
        ("[fuel, warmer]", "ask"),
        ("unknown", "ask"),
        ("[]", "ask"),
        (f"[fuel, valve at tank, filter inside z 2, {ANY_PUMP}", "limits"),
        (f"[fuel, valve at tank, filter, {ANY_PUMP}", "limits"),
        (
            "[fuel, valve at tank, filter below floor, pump under the bunk z 2 at 30 deg, line 2 mm bore, warmer]",
            "limits",
        ),
        (f"[fuel, valve at tank, filter below floor, {ANY_PUMP}", ""),
        (f"[fuel, filter below floor, valve, {ANY_PUMP}", ""),
    ],
)
def test_what_may_let_its_fuel_into_the_room_is_no_go_for_who_sleeps_in_it_or_leaves_it(
    use: Use, path: str, worst: str
) -> None:
    """Its tank hangs before the wall, higher than the burner; nobody wrote how high above the sea anybody sleeps."""
    found = by(
        DIESEL.replace(PATH, f"path: {path}, reach: yes"),
        ("centre, z: 0, size: 14", "centre, z: 60, size: 14"),
        use=use,
    )
    assert found.answer == (worst or ("limits" if use == "sleep" else "go")), (found.answer, found.because)
    assert bool({"heat/fuel-drains-in", "heat/fuel-valve"} & set(found.because)) == bool(worst)


def test_what_burns_in_the_room_is_a_no_even_where_nobody_ticked_it() -> None:
    unvented = DIESEL.replace(EXHAUST, "exhaust: none")
    half = ("size: 8 x 6 x 10, stage: shell, done: yes,", "size: 8 x 6 x 10, stage: shell, done: part,")
    assert by(unvented, half).answer == "no"
    assert "heat/unvented" in by(unvented, half).because


def test_a_burner_without_an_alarm_for_its_gas_is_a_no() -> None:
    found = by(DIESEL, ("alarm: CO}", "alarm: gas}"))
    assert found.answer == "no"


def test_without_the_measures_of_the_room_no_night_is_clear() -> None:
    found = if_all_judge(
        study(clean("body: {length: 168, width: 80, height: 78}", "body: {length: 168}"), TODAY), "sleep"
    )
    assert found.answer in ("no", "ask", "limits")


def test_without_a_written_night_it_is_a_limit_until_one_is_written() -> None:
    found = if_all_judge(study(clean("coldest_design: 72 F, ", ""), TODAY), "sleep")
    assert (found.answer, found.because) == ("limits", ("heat/night-not-known",))


@pytest.mark.parametrize("use", ["sleep", "work"])
def test_without_a_written_hot_day_it_is_a_limit_until_one_is_written(use: Use) -> None:
    found = if_all_judge(study(clean(", hottest_design: 74 F", ""), TODAY), use)
    assert (found.answer, found.because) == ("limits", ("heat/hot-not-known",))


@pytest.mark.parametrize(("use", "who"), [("work", ""), ("leave", "  rex: {weight: 30, waits: yes}\n")])
@pytest.mark.parametrize("coldest", ["unknown", "10 F", "40..70 F"])
def test_never_go_to_work_or_leave_somebody_in_a_cold_that_nobody_wrote_or_that_is_too_cold(
    use: Use, who: str, coldest: str
) -> None:
    """By a heater on a bare mains, whose site may give too little; with no water that could freeze."""
    edits = (("people:\n", f"people:\n{who}"), ("coldest_design: 72 F", f"coldest_design: {coldest}"),
             ("tank: {of: water, volume: 5}", "tank: {of: diesel, volume: 5}"))  # fmt: skip
    text = CLEAN
    for old, new in edits:
        text = text.replace(old, new)
    found = if_all_judge(study(read_rig(text).rig, TODAY), use)
    code = "night-not-known" if coldest == "unknown" else "cold-at-work" if use == "work" else "left-in-cold"
    assert found.answer != "go" and f"heat/{code}" in found.because


@pytest.mark.parametrize(
    ("lacks", "code"), [("hottest_design: 74 F", "night-not-known"), ("coldest_design: 72 F", "hot-not-known")]
)
def test_never_go_to_a_second_place_of_which_nobody_wrote_how_cold_or_hot_it_gets(lacks: str, code: str) -> None:
    """One place that is written whole says nothing of another."""
    found = by(ELECTRIC, ("places:\n  home:", f"places:\n  peak: {{height: 2500 ft, {lacks}}}\n  home:"))
    assert found.answer in ("limits", "ask") and f"heat/{code}" in found.because


@pytest.mark.parametrize("use", ["sleep", "work"])
def test_never_go_in_a_heat_that_no_fan_helps_against(use: Use) -> None:
    found = if_all_judge(study(clean("hottest_design: 74 F", "hottest_design: 115 F"), TODAY), use)
    assert found.answer == "limits" and "heat/too-hot" in found.because


def test_never_go_by_a_heater_whose_feed_is_not_there_or_lasts_no_night() -> None:
    assert "heat/feed-stands" in by(ELECTRIC.replace("fed_by: mains", "fed_by: inlet")).because
    cell = "  cell: {x: 60, side: left, z: 20, size: 8 x 6 x 6, weight: 20, stage: %s, battery: {kind: LiFePO4, volts: 12.8, Ah: 20}%s}\n  shelf:"  # noqa: E501
    by_cell = ELECTRIC.replace("fed_by: mains", "fed_by: cell")
    for filled in (("bunks", ""), ("shell", "")):
        found = by(by_cell, ("  shelf:", cell % filled))
        assert found.answer in ("limits", "ask", "no") and "heat/feed-stands" in found.because
    straight = by(by_cell.replace("of: electric", "of: 120 V"), ("  shelf:", cell % ("shell", ", done: yes")))
    assert straight.answer != "go" and "heat/feed-volts" in straight.because
    small = by(by_cell, ("places:\n  home: {coldest_design: 72 F", "places:\n  home: {coldest_design: 20 F"),
               ("  shelf:", cell % ("shell", ", done: yes")))  # fmt: skip
    assert small.answer != "go" and "heat/battery-for-the-night" in small.because


@pytest.mark.parametrize("word", ["mains", "120 V", "electric 230 V", "shore power"])
def test_a_heater_of_the_mains_by_any_word_burns_nothing(word: str) -> None:
    """No flame, no gas alarm, no air beside it: the answer is the one of an electric heater."""
    assert by(ELECTRIC.replace("of: electric", f"of: {word}")) == by(ELECTRIC)


def test_that_an_electric_heater_has_no_exhaust_makes_it_none_to_be_kept_out_of_a_bedroom() -> None:
    assert by(ELECTRIC.replace("switches: yes", "switches: yes, exhaust: none")) == by(ELECTRIC)


@pytest.mark.parametrize("watts", [5_000, 15_000])
def test_never_go_by_a_heater_that_a_plug_of_a_site_may_not_carry(watts: int) -> None:
    """Even where no night asks for its heat: 12,000 W is the largest usual supply (common practice, no source)."""
    found = by(ELECTRIC.replace("highest: 1500 W", f"highest: {watts} W"))
    assert (found.answer, found.because) == ("limits", ("heat/feed-too-small",))


@pytest.mark.parametrize(("gives", "is_short"), [("1499 W", True), ("{idle: 8 W}", True), ("1500 W", False)])
def test_never_go_by_a_heater_that_its_inverter_cannot_carry(gives: str, is_short: bool) -> None:
    inverter = "  box: {x: 50, side: left, z: 20, size: 8 x 6 x 6, weight: 3, stage: shell, done: yes, inverter: %s}\n"
    found = by(ELECTRIC.replace("fed_by: mains", "fed_by: box"), ("  shelf:", inverter % gives + "  shelf:"))
    assert ("heat/feed-too-small" in found.because) == is_short
    assert found.answer != "go"


@pytest.mark.parametrize(
    ("part", "habit", "is_asked"),
    [
        ("draw: unknown, ", "", True),
        ("draw: 1 W, hours: 1, ", "", False),
        ("", "  kettle: {draw: unknown}\n", True),
        ("", "  kettle: {draw: 900 A, hours: 20}\n", True),
        ("", "  kettle: {at: sockets, draw: 1 W, hours: 1}\n", False),
    ],
)
def test_never_go_by_a_battery_of_which_nobody_knows_what_else_it_feeds(part: str, habit: str, is_asked: bool) -> None:
    cell = "  cell: {x: 60, side: left, z: 2, size: 8 x 6 x 6, weight: 20, stage: shell, done: yes, battery: {kind: LiFePO4, volts: 12.8, Ah: 4000}}\n"  # noqa: E501
    at = "x: 130, side: left, z: 60, size: 2 x 2 x 2, weight: 1, stage: shell, done: yes"
    changes = [("  shelf:", f"{cell}  fan: {{{at}, {part}note: small}}\n  shelf:")]
    changes += [("places:\n", f"habits:\n{habit}places:\n")] if habit else []
    found = by(ELECTRIC.replace("fed_by: mains", "fed_by: cell").replace("of: electric", "of: 12 V"), *changes)
    assert ("heat/battery-for-the-night" in found.because) == is_asked
    assert (found.answer == "go") != is_asked


@pytest.mark.parametrize("written", ["", "lowest: 300 W, ", "switches: no, "])
def test_never_go_when_nobody_wrote_how_a_heater_holds_back(written: str) -> None:
    """Not knowing its lowest heat, or whether it goes off by itself, the room may get hot while somebody sleeps."""
    one = by(f"heater: {{of: electric, {written}highest: 1500 W}}")
    assert one.answer in ("limits", "ask") and "heat/too-warm-at-lowest" in one.because


def test_never_go_when_nobody_wrote_what_a_heater_burns() -> None:
    found = by(DIESEL.replace("of: diesel, ", ""))
    assert found.answer in ("ask", "no") and "heat/fuel-not-known" in found.because


def test_the_end_of_an_exhaust_below_a_window_is_judged_by_its_height() -> None:
    """With its place and height written it is near or it is not; without the height that stays a question."""
    low = EXHAUST.replace("x: 110", "x: 128, z: -40")
    assert "heat/exhaust-near-opening" not in by(DIESEL.replace(EXHAUST, low)).because
    near = EXHAUST.replace("x: 110", "x: 128, z: -4")
    assert "heat/exhaust-near-opening" in by(DIESEL.replace(EXHAUST, near)).because


@pytest.mark.parametrize(
    ("written", "code"),
    [
        ("highest: 1500 W, lowest: 1500 W, switches: no", "heat/too-warm-at-lowest"),
        ("highest: 1500 W, lowest: 50..1500 W, switches: no", "heat/too-warm-at-lowest"),
        ("highest: 1500 W, lowest: 300 W, switches: yes, plate: 300 F", "heat/hot-plate"),
        ("highest: 1500 W, lowest: 300 W, switches: yes, plate: 100..300 F", "heat/hot-plate"),
        ("highest: 1500 W, lowest: 300 W, switches: yes, plate: unknown", "heat/hot-plate"),
    ],
)
def test_never_go_by_an_electric_heater_that_runs_on_or_scorches_what_it_stands_on(written: str, code: str) -> None:
    """One that cannot go off by itself makes an oven of a mild night: that it is known makes it no better."""
    found = by(f"heater: {{of: electric, {written}, fed_by: mains}}")
    assert found.answer != "go"
    assert code in found.because
    assert (
        by("heater: {of: electric, highest: 1500 W, lowest: 300 W, switches: yes, plate: 120 F, fed_by: mains}").answer
        == "go"
    )

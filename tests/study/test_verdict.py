"""The four answers, from findings alone; how findings arise from a rig is tested in test_never_go.py."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.finding import USES, Finding, Use
from boxwright.study.verdict import CHAPTERS, JUDGED, RESTS_ON, touches, verdict, worst

ALL = frozenset(chapter.word for chapter in CHAPTERS)
UNKNOWN = Finding(
    "weight/weight-unknown", "parts[boat]", "unknown", "nobody weighed the boat", act="Weigh it.", minutes=5
)


def answer(*findings: Finding, use: Use = "tow", judged: frozenset[str] = ALL) -> str:
    return verdict(use, "departure", "liners", findings, judged).answer


def test_there_are_twelve_chapters_and_every_use_rests_on_some_of_them() -> None:
    assert len(ALL) == 12
    assert all(set(RESTS_ON[use]) <= ALL and RESTS_ON[use] for use in USES)


@pytest.mark.parametrize("use", USES)
def test_go_exists_and_says_which_disciplines_held(use: Use) -> None:
    one = verdict(use, "departure", "liners", (), ALL)
    assert (one.answer, one.because, one.questions, one.act) == ("go", (), (), "")
    assert one.says == ("judged and holding: " + ", ".join(RESTS_ON[use]),)


def test_advice_and_fixes_leave_a_go() -> None:
    assert answer(replace(UNKNOWN, kind="advice"), replace(UNKNOWN, kind="fix")) == "go"


def test_a_stop_is_no_and_is_named_first() -> None:
    stop = Finding("weight/tongue-lifts", "trailer", "stop", "the nose lifts", act="Move the boat forward.", minutes=10)
    one = verdict("tow", "departure", "liners", (UNKNOWN, stop), ALL)
    assert one.answer == "no"
    assert one.because == ("weight/tongue-lifts", "weight/weight-unknown")
    assert one.act == "Move the boat forward."
    assert one.questions == ("Weigh it. (5 min)",)


def test_a_smallest_change_is_the_first_thing_to_do() -> None:
    stop = Finding("weight/tongue-lifts", "trailer", "stop", "lifts", act="Move it.", remedy="Move the boat 300 mm.")
    assert verdict("tow", "departure", "liners", (stop,), ALL).act == "Move the boat 300 mm."


def test_an_unknown_that_could_stop_asks() -> None:
    assert answer(UNKNOWN) == "ask"


def test_an_unknown_that_can_only_limit_limits() -> None:
    one = verdict("tow", "departure", "liners", (replace(UNKNOWN, could_stop=False),), ALL)
    assert one.answer == "limits"
    assert one.says == ("until measured: nobody weighed the boat",)
    assert one.questions == ()


def test_an_unknown_that_can_only_be_something_to_put_right_keeps_nothing_back() -> None:
    assert answer(replace(UNKNOWN, could_stop=False, could_limit=False)) == "go"
    assert answer(replace(UNKNOWN, could_limit=False)) == "ask"
    assert answer(replace(UNKNOWN, code="safety/x", could_limit=False, protects=True), use="sleep") == "no"


def test_a_limit_limits_and_says_its_number() -> None:
    limit = Finding("towing/speed", "trailer.tyres", "limit", "no more than 65 mph")
    one = verdict("tow", "departure", "liners", (limit,), ALL)
    assert (one.answer, one.says) == ("limits", ("no more than 65 mph",))


def test_an_unknown_that_protects_is_a_no() -> None:
    assert answer(replace(UNKNOWN, code="safety/co-alarm", protects=True), use="sleep") == "no"


def test_a_discipline_that_has_not_judged_is_a_no_that_names_it() -> None:
    one = verdict("sleep", "night", "liners", (), ALL - {"heat", "air"})
    assert one.answer == "no"
    assert one.because == ("not-judged/air", "not-judged/heat")
    assert one.says == ("not judged: air, heat",)


def test_a_use_that_rests_on_a_discipline_not_built_yet_is_a_no() -> None:
    assert "weight" in JUDGED
    for use in USES:
        if not set(RESTS_ON[use]) <= JUDGED:
            one = verdict(use, "night", "liners", ())
            assert one.answer == "no"
            assert one.because == tuple(f"not-judged/{folder}" for folder in RESTS_ON[use] if folder not in JUDGED)


def test_a_finding_bears_on_the_uses_it_names_else_on_those_that_rest_on_its_discipline() -> None:
    assert touches(UNKNOWN, "tow") and touches(UNKNOWN, "sleep")
    assert not touches(UNKNOWN, "leave")
    assert not touches(replace(UNKNOWN, uses=("tow",)), "sleep")
    assert touches(replace(UNKNOWN, uses=("leave",)), "leave")
    assert all(touches(replace(UNKNOWN, code="rig/not-read"), use) for use in USES)


def test_at_most_three_questions_and_the_one_that_flips_most_comes_first() -> None:
    paths = ("parts[d]", "parts[b]", "parts[a]", "parts[c]", "parts[e]")
    asking = [replace(UNKNOWN, where=path, act=f"Weigh {path}.") for path in sorted(paths)]
    order = replace(UNKNOWN, code="weight/weigh-these-next", kind="advice", because=paths)
    one = verdict("tow", "departure", "liners", (*asking, order), ALL)
    assert one.questions == ("Weigh parts[d]. (5 min)", "Weigh parts[b]. (5 min)", "Weigh parts[a]. (5 min)")


def test_the_same_question_is_asked_once() -> None:
    one = verdict("tow", "departure", "liners", (UNKNOWN, replace(UNKNOWN, where="parts[bed]")), ALL)
    assert one.questions == ("Weigh it. (5 min)",)


def test_the_worst_of_some_verdicts_is_the_first_of_the_worst() -> None:
    go = verdict("tow", "empty", "liners", (), ALL)
    asks = [verdict("tow", load, "liners", (UNKNOWN,), ALL) for load in ("departure", "going-home")]
    assert worst([go, *asks]) is asks[0]
    assert worst([]) is None


def test_a_cause_that_more_than_one_rule_tells_of_is_said_once_and_no_rule_is_dropped() -> None:
    def of(code: str, says: str, *because: str) -> Finding:
        return Finding(
            f"safety/{code}", because[0], "stop", says, protects=True, uses=("sleep",), because=because, act="Do it."
        )

    few = of("two-ways-out", "one way out", "openings[ramp]", "openings[window]", "parts[bed]")
    shut = of("opens-from-inside", "ramp is shut", "openings[ramp]")
    release = of("release-not-fitted", "no release", "parts[release]", "openings[ramp]")
    other = of("opens-from-inside", "door wants a key", "openings[door]")
    fuel = of("fuel-inside", "petrol inside", "parts[can]")
    one = verdict("sleep", "night", "liners", (few, shut, release, other, fuel), ALL)
    assert one.says == (
        "one way out; of the same cause: opens-from-inside, release-not-fitted",
        "door wants a key",
        "petrol inside",
    )
    assert one.because == tuple(one.code for one in (few, shut, release, fuel))
    # Without the rule that counts them, what opens it tells the cause; what only hinders is never taken with it.
    assert verdict("sleep", "night", "liners", (release, shut), ALL).says == (
        "ramp is shut; of the same cause: release-not-fitted",
    )
    assert len(verdict("sleep", "night", "liners", (few, replace(shut, protects=False)), ALL).says) == 2

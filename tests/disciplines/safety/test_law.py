"""Which country's rules judge a place to sleep: the home's how it is built, each one's of the route how it is used."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.disciplines.safety.sourced import EMERGENCY, TOPICS, WAYS_OUT, country_of, law_of
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.source import load_rules
from boxwright.study.slots import study
from tests.disciplines.safety.test_findings import JUDGED_ON, edited, worked
from tests.disciplines.safety.test_ways import kinds

HOME = "countries: [US-NC]"
PACKAGE = "boxwright.disciplines.safety"
COUNTRIES = ("US", "CA", "UK", "EU", "AU", "NZ")
NO_SMOKE = ("done: yes, alarm: smoke", "done: no, alarm: smoke")
NO_RELEASE = ("done: yes, egress: wanted, release: inside", "done: yes, egress: wanted, release: none")


def said(countries: str, code: str, *edits: tuple[str, str]) -> list[Finding]:
    """Return what one rule says of the small rig at home in a place, with some edits."""
    text = edited((HOME, f"countries: [{countries}]"), *edits)
    return [one for one in worked(text, "sleep") if one.code == f"safety/{code}"]


@pytest.mark.parametrize("home", [one for one in COUNTRIES if one != "US"])
def test_only_where_a_rule_binds_is_a_country_judged_by_it(home: str) -> None:
    """Advice and what nobody read are no rule: two ways out are then wanted by the own rule, which asks."""
    (one,) = said(home, "no-rule-known")
    assert one.says.startswith(f"not judged for {home}: how many ways out")
    assert (one.kind, one.could_stop) == ("unknown", True)
    (ways,) = said(home, "two-ways-out", NO_RELEASE)
    assert (ways.kind, ways.protects) == ("unknown", True)
    assert "NFPA" not in ways.says and not ways.source.startswith("nfpa")


def test_at_home_in_the_united_states_a_rule_is_known_and_stops() -> None:
    assert said("US-NC", "no-rule-known") == []
    (ways,) = said("US-NC", "two-ways-out", NO_RELEASE)
    assert (ways.kind, ways.source) == ("stop", "nfpa-1192")


def test_a_home_nobody_wrote_is_asked_for_before_any_rule_is_taken() -> None:
    found = study(read_rig(edited((f"{HOME}\n", ""))).rig, JUDGED_ON).findings("sleep")
    (one,) = [one for one in found if one.code == "rig/country-is-assumed"]
    assert one.kind == "unknown" and one.could_stop
    assert not law_of((), JUDGED_ON).rules


def test_another_country_of_the_route_limits_and_each_is_named_once() -> None:
    found = said("US-NC, CA-BC, US-AK, CA-YT, EU-FR", "no-rule-known")
    assert [one.says.partition(":")[0] for one in found] == [
        "not judged for CA-BC and CA-YT", "not judged for EU-FR"
    ]  # fmt: skip
    assert [(one.could_stop, one.could_limit, one.protects) for one in found] == [(False, True, False)] * 2


def test_a_neighbours_rule_of_building_is_never_taken() -> None:
    for home in ("UK", "CA-BC", "NZ", "EU-FR"):
        rules = law_of((home, "US-NC", "AU-NSW"), JUDGED_ON).rules
        assert not any(one.country == "US" for one in rules)
        assert all(one.applies == "parked" or one.country == home[:2] for one in rules)


def test_what_is_asked_of_whoever_sleeps_there_is_told_of_the_whole_route() -> None:
    (there,) = said("US-NC, AU-NSW", "smoke-alarm", NO_SMOKE)
    assert there.kind == "stop"
    assert "AU-NSW asks for one, on or near the ceiling" in there.says and "seen" in there.says
    (home,) = said("US-NC", "smoke-alarm", NO_SMOKE)
    assert "asks for one" not in home.says
    (advised,) = said("UK", "smoke-alarm", NO_SMOKE)
    assert "UK advises one, tested every week" in advised.says


@pytest.mark.parametrize(("place", "is_there"), [("AU-NSW", True), ("AU-QLD", False), ("AU", False), ("NZ", False)])
def test_a_states_rule_holds_in_that_state_alone(place: str, is_there: bool) -> None:
    assert any(one.id == "au-nsw-smoke" for one in law_of((place,), JUDGED_ON).rules) is is_there


@pytest.mark.parametrize(("day", "is_there"), [(date(2024, 6, 30), False), (date(2024, 7, 1), True)])
def test_a_rule_holds_from_its_day(day: date, is_there: bool) -> None:
    assert any(one.id == "au-qld-smoke" for one in law_of(("AU-QLD",), day).rules) is is_there


@pytest.mark.parametrize(
    ("code", "edit"),
    [
        ("generator-near", ("  # one more", "  generator: {x: 5000, side: centre, z: 0, size: 500 x 300 x 400,"
         " weight: 20, stage: shell, done: yes}")),
        ("extinguisher-reach", ("extinguisher: {x: 3000", "extinguisher: {x: 2000")),
        ("high-sill", ("x: 600, width: 800, z: 700", "x: 600, width: 800, z: 1200")),
    ],
)  # fmt: skip
def test_a_measure_of_the_united_states_is_called_so_elsewhere(code: str, edit: tuple[str, str]) -> None:
    (there,) = said("UK", code, edit)
    assert "a measure of the United States, for want of one of UK" in there.says
    (home,) = said("US-NC", code, edit)
    assert "United States" not in home.says


def test_the_two_letters_of_a_country_may_be_written_both_ways() -> None:
    assert country_of("GB-SCT") == country_of("uk") == "UK"
    assert {one.id for one in law_of(("GB",), JUDGED_ON).rules} == {one.id for one in law_of(("UK",), JUDGED_ON).rules}


def test_each_country_is_told_whom_to_call() -> None:
    """From public pages for travellers: the numbers are those of the pages, read for the table."""
    assert EMERGENCY == {"US": "911", "CA": "911", "EU": "112", "UK": "999 or 112", "AU": "000", "NZ": "111"}


def test_what_is_only_advised_or_recalled_never_counts_as_a_known_rule() -> None:
    for country in COUNTRIES:
        law = law_of((country,), JUDGED_ON)
        for rule in load_rules(PACKAGE, [country]):
            if rule.asks in TOPICS and rule.binding in ("advice", "practice"):
                assert rule.asks in law.unknown(country), rule.id
    assert law_of(("US",), JUDGED_ON).is_known
    assert WAYS_OUT in law_of(("NZ",), JUDGED_ON).unknown("NZ")


def test_the_homes_own_rule_goes_before_what_another_country_advises() -> None:
    here, there = law_of(("US-NC", "NZ"), JUDGED_ON).rule(WAYS_OUT), law_of(("UK", "NZ"), JUDGED_ON).rule(WAYS_OUT)
    assert here is not None and (here.country, here.kind) == ("US", "stop")
    assert there is not None and (there.country, there.kind) == ("NZ", "advice")


def test_what_binds_is_told_before_what_advises() -> None:
    found = law_of(("UK", "NZ", "AU-NSW", "CA-ON"), JUDGED_ON).asking("smoke alarm where somebody sleeps")
    assert [one.country for one in found] == ["AU", "CA", "NZ", "UK"]


def test_how_it_is_built_is_a_matter_of_the_home_alone_not_of_another_province_of_its_country() -> None:
    assert any(one.id == "ca-mb-sold" for one in law_of(("CA-MB", "CA-BC"), JUDGED_ON).rules)
    assert not any(one.id == "ca-mb-sold" for one in law_of(("CA-BC", "CA-MB"), JUDGED_ON).rules)


def test_a_way_past_what_is_no_way_out_goes_past_nothing() -> None:
    """As its trio has it; but the window opens from inside no longer, and a hatch is the other way out."""
    chest = "  chest: {x: 3000, side: right, z: 0, size: 1000 x 1000 x 1500, weight: 30, stage: shell, done: yes}"
    past = (
        ("door: {wall: right, x: 3300, width", "door: {wall: rear, side: centre-500, width"),
        ("window: {wall: left, x: 600", "window: {wall: left, x: 3060"),
        ("  # one more", chest),
    )
    assert ("advice", "past-the-other", "openings[door]") in kinds(*past)
    shut = ("egress: wanted, release: inside", "egress: wanted, release: none")
    assert ("advice", "past-the-other", "openings[door]") not in kinds(*past, shut)

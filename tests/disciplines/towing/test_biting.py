"""What towing says just beyond and just inside: each case here once stood unguarded, several with a false go behind."""

from __future__ import annotations

from math import sqrt
from typing import Any

import pytest

from boxwright.disciplines.towing.result import Reading
from boxwright.disciplines.towing.sourced import PACKAGE, WINDS
from boxwright.disciplines.towing.telling import Question, judged
from boxwright.finding import Finding
from boxwright.source import load_table
from boxwright.units import Band
from tests.findings.towing.held import BASE, INCHES, edited, result_of, said_of

UNBRAKED = {"trailer.brakes": {"kind": "none"}, "tow.pickup.unbraked": "9000 lb"}


def said(code: str, edits: dict[str, Any]) -> list[Finding]:
    return [one for one in said_of(edits) if one.code == f"towing/{code}"]


def kinds(code: str, edits: dict[str, Any]) -> list[str]:
    return [one.kind for one in said(code, edits)]


def test_the_doubt_of_a_least_limit_counts_against_the_number() -> None:
    """103 is over 100, but the limit may be 105."""
    asked = Question("towing/x", "trailer.gvwr", "it", "the least", "trailer.gvwr", "there", least=True)
    band, limit = Band(110, 103, 120, spread="interval"), Band(100, 95, 105, spread="interval")
    assert [one.kind for one in judged(asked, Reading(band, 110, 110), limit, INCHES)] == ["unknown"]


@pytest.mark.parametrize("word", ["none", "no", "unbraked", " No ", "Unbraked"])
def test_every_word_for_no_brakes_is_no_brakes(word: str) -> None:
    """Nebraska: a cabin trailer of 3,000 lb or more has brakes."""
    edits = {**UNBRAKED, "trailer.brakes": {"kind": word}, "class": "camper"}
    assert result_of(edited(BASE, edits)).braked_axles == 0
    assert kinds("brakes-required", edits) == ["stop"]


@pytest.mark.parametrize("gross", ["900 +-45 lb", "900 lb filled 855 lb to 900 lb"])
def test_a_side_wind_counts_the_lightest_the_trailer_may_be(gross: str) -> None:
    """The wind that unloads the wheels goes with the root of the weight: the formula of section 6.4."""
    found, light = (result_of(edited(BASE, {"gross": one, "tongue": "110 lb"})) for one in (gross, "855 lb"))
    for mine, its in ((found.parked_wind, light.parked_wind), (found.towing_wind, light.towing_wind)):
        assert mine is not None and its is not None
        assert mine.low == pytest.approx(its.best)
        assert mine.best == pytest.approx(its.best * sqrt(900 / 855))


@pytest.mark.parametrize(("gvwr", "found"), [("6191 lb", []), ("6189 lb", ["stop"])])
def test_a_payload_worked_out_is_the_greatest_mass_less_the_own(gvwr: str, found: list[str]) -> None:
    """By hand: 5,150 lb of its own, 480 lb on the ball and 560 lb of people and gear make 6,190 lb."""
    assert kinds("payload", {"tow.pickup.payload": "", "tow.pickup.gvwr": gvwr}) == found


@pytest.mark.parametrize(("full", "found"), [("2999 lb", []), ("3001 lb", ["stop"])])
def test_a_permitted_fill_over_the_limit_of_an_unbraked_trailer_stops(full: str, found: list[str]) -> None:
    edits = {**UNBRAKED, "class": "camper", "gross": f"2900 lb filled 2800 lb to {full}", "tongue": "350 lb"}
    assert kinds("brakes-required", edits) == found
    assert all("it weighs 3,001 lb at a permitted fill" in one.says and (one.margin or 0.0) < 0.0
               for one in said("brakes-required", edits))  # fmt: skip


@pytest.mark.parametrize(
    ("kind", "tested", "found"),
    [
        ("electric", "", ["unknown"]), ("Electric drum", "2025-06-01", ["advice"]), ("electric", "2026-03-20", []),
        ("hydraulic", "", []),
    ],
)  # fmt: skip
def test_electric_brakes_have_a_breakaway_battery_to_test(kind: str, tested: str, found: list[str]) -> None:
    edits = {"trailer.brakes.kind": kind, "trailer.brakes.breakaway_battery": tested}
    assert kinds("breakaway", edits) == found
    assert {one.where for one in said("breakaway", edits)} <= {"trailer.brakes.breakaway_battery"}


def test_chains_that_are_not_fitted_do_not_count() -> None:
    """Quebec, read: a second link, unless a breakaway brake stops the trailer; two chains in the shed are none."""
    edits = {"countries": ["CA-QC"], "trailer.brakes.breakaway": "no", "gross": "1500 kg", "tongue": "150 kg"}
    shed = {"fitted": "no", "count": "2", "rating": "7500 lb"}
    assert kinds("chains", {**edits, "trailer.chains": {**shed, "fitted": "yes"}}) == []
    assert "stop" in kinds("chains", {**edits, "trailer.chains": shed})


def test_chains_carry_the_trailer_at_its_greatest_permitted_fill() -> None:
    """North Carolina, quoted: together the gross weight; two of 2,100 lb hold 4,200 lb."""
    edits = {"countries": ["US-NC"], "trailer.chains.rating": "2100 lb"}
    inside, over = (said("chains", {**edits, "gross": f"4000 lb filled 3900 lb to {full}"}) for full in FILLS)
    assert not [one for one in inside if one.kind != "advice"]
    (found,) = (one for one in over if one.kind != "advice")
    assert found.kind == "unknown" and found.could_stop and "4,300 lb at a permitted fill" in found.says


FILLS = ("4190 lb", "4300 lb")


def test_a_breakaway_brake_spares_the_chains_of_twice_the_weight() -> None:
    """New Zealand, read: only a trailer over 2,000 kg without one has chains that break at twice its weight."""
    edits = {"countries": ["NZ"], "gross": "2200 kg", "tongue": "200 kg"}
    weak = {**edits, "trailer.chains": {"count": "2", "rating": "4300 kg"}}
    assert kinds("chains", weak) == []
    assert kinds("chains", {**weak, "trailer.brakes.breakaway": "no"}) == ["stop"]


@pytest.mark.parametrize(("width", "found"), [("2550 mm", []), ("2550.1 mm", ["stop"])])
def test_a_trailer_as_wide_as_allowed_is_allowed(width: str, found: list[str]) -> None:
    """France, read: 2.55 m."""
    assert kinds("size-on-route", {"countries": ["EU-FR"], "trailer.outside.over_fenders": width}) == found


@pytest.mark.parametrize(
    ("chains", "gross", "could_stop"),
    [
        ({"count": "2", "rating": "4000 lb"}, "4000 lb", False),
        ({"count": "1", "rating": "7500 lb"}, "4000 lb", True),
        ({"count": "2", "rating": "3999 lb"}, "4000 lb", True),
        ({"count": "2", "rating": "4100 lb"}, "4000 +-150 lb", True),
        ({"count": "2", "rating": "4100 lb"}, "4000 lb filled 3800 lb to 4200 lb", True),
        ({"count": "2", "rating": "6900 lb"}, "at least 4000 lb", True),
        ({"count": "2", "rating": "7000 lb"}, "at least 4000 lb", False),
    ],
)
def test_a_place_without_rules_only_limits_where_each_of_two_chains_carries_all(
    chains: dict[str, str], gross: str, could_stop: bool
) -> None:
    """The plate is 7,000 lb: what is heavier than it, the plate stops."""
    (found,) = said("no-rule-known", {"countries": ["US-VT"], "trailer.chains": chains, "gross": gross})
    assert found.kind == "unknown" and found.could_stop == could_stop


def test_a_speed_nobody_knows_stops_nobody() -> None:
    (found,) = said("speed-limit", {"countries": ["JP"]})
    assert found.kind == "unknown" and not found.could_stop


@pytest.mark.parametrize(("symbol", "found"), [("G", ["advice"]), ("J", [])])
def test_the_fastest_road_of_a_route_is_what_a_tyre_must_stand(symbol: str, found: list[str]) -> None:
    """80 km/h in Germany, 60 mph in the United Kingdom (96.6 km/h); G is 90 km/h and J 100 km/h, from memory."""
    edits = {"countries": ["EU-DE", "UK"], "trailer.tyres.size": f"155/70R13 75{symbol}"}
    assert kinds("tyre-code", edits) == found


def test_what_is_wrong_with_the_trailer_is_said_once_however_many_vehicles_there_are() -> None:
    """The jack is the trailer's own, whichever vehicle is hitched."""
    edits = {"tow.other": BASE["tow"]["pickup"], "trailer.jack.rating": "400 lb"}
    assert [(one.kind, one.where) for one in said("tongue-over-rating", edits)] == [("stop", "trailer.jack.rating")]


def test_storm_and_gale_begin_where_the_scale_of_winds_says() -> None:
    """v = 0.836 B^1.5 m/s half a force below the force, the scale's own formula (from memory): forces 10 and 8."""
    assert {row.source for row in load_table(PACKAGE, "winds").rows} == {"beaufort"}
    for name, force in (("parked", 10), ("towing", 8)):
        assert WINDS[name] == pytest.approx(0.836 * (force - 0.5) ** 1.5, abs=0.05)


def test_braking_is_assumed_as_the_worked_example_reckons_it() -> None:
    """Section 6.1, by hand (check t-stop-1): 2,400 kg at 0.75 and 2,200 kg at 0.45. The shares are common practice."""
    edits = {"tow.pickup.kerb": "2390 kg", "tow.pickup.people_and_gear": "10 kg", "gross": "2200 kg"}
    slowing = result_of(edited(BASE, edits)).behind[0].slowing
    assert slowing is not None and slowing.best == pytest.approx(5.9479, abs=0.001)
    bare = result_of(edited(BASE, {**edits, **UNBRAKED, "gross": "1400 kg"})).behind[0].slowing
    assert bare is not None and bare.best == pytest.approx(4.6453, abs=0.001)
    assert _source("trailer_braked") == "towing-practice"


def test_a_side_wind_is_assumed_to_press_as_the_worked_example_reckons_it() -> None:
    """Section 6.4, by hand (check t-windtip-2): 2,200 kg, 2 m of track, 15 m2 at 1.6 m, coefficient 1.2."""
    outside = {"length": "7.5 m", "width": "84 in", "over_fenders": "101 in", "height": "2.6 m"}
    edits = {"gross": "2200 kg", "trailer.axles.track": "2 m", "trailer.deck_height": "0.6 m"}
    wind = result_of(edited(BASE, {**edits, "trailer.outside": outside})).parked_wind
    assert wind is not None and wind.best == pytest.approx(34.972, abs=0.01)
    assert _source("side_coefficient") == "towing-practice"


def _source(name: str) -> str:
    return next(row.source for row in load_table(PACKAGE, "assumed").rows if row.cells[0] == name)


@pytest.mark.parametrize(
    ("code", "edits", "asks", "silent"),
    [
        ("chains", {"countries": ["US-NH"], "trailer.chains.rating": "4100 lb"}, "4000 +-200 lb", "4000 +-50 lb"),
        ("chains", {"countries": ["NZ"], "trailer.brakes.breakaway": "no",
                    "trailer.chains": {"count": "2", "rating": "4010 kg"}}, "1990 +-20 kg", "1990 +-5 kg"),
        ("chains", {"countries": ["NZ"], "trailer.brakes.breakaway": "no",
                    "trailer.chains": {"count": "1", "rating": "5000 kg"}}, "1990 +-20 kg", "1990 +-5 kg"),
        ("brakes-required", {"countries": ["AU"], "trailer.brakes.axles": "1"}, "1990 +-20 kg", "1990 +-5 kg"),
        ("brakes-required", {"countries": ["AU"], "trailer.brakes.axles": ""}, "1990 +-20 kg", "1990 +-5 kg"),
        ("brakes-required", {"countries": ["US-TX"], "trailer.brakes.kind": "surge"}, "14990 +-20 lb", "14990 +-5 lb"),
        ("size-on-route", {"countries": ["EU-FR"]}, "2549 +-5 mm", "2549 +-1 mm"),
        ("lamps", {"trailer.outside.width": "78 in", "trailer.lamps": ["tail", "stop", "turn", "side", "plate"]},
         "2030 +-5 mm", "2030 +-1 mm"),
    ],
)  # fmt: skip
def test_a_doubt_that_reaches_a_rule_asks(code: str, edits: dict[str, Any], asks: str, silent: str) -> None:
    """Each of these was silent before: a rule that begins at a number looked at the best value alone."""
    key = "trailer.outside.over_fenders" if "mm" in asks else "gross"
    (found,) = said(code, {**edits, key: asks})
    assert found.kind == "unknown" and found.could_stop
    assert said(code, {**edits, key: silent}) == []


def test_a_doubt_of_what_would_only_be_advice_asks_nothing() -> None:
    """Each chain for all is a standard's practice in Texas: a breach advises, so a doubt must not weigh more."""
    edits = {"countries": ["US-TX"], "trailer.chains.rating": "4100 lb"}
    assert kinds("chains", {**edits, "gross": "4200 lb"}) == ["advice"]
    assert kinds("chains", {**edits, "gross": "4000 +-200 lb"}) == []


def test_a_doubt_that_reaches_the_rule_of_a_breakaway_switch_asks() -> None:
    """Australia: over 2,000 kg. Below it only the danger is told."""
    edits = {"countries": ["AU"], "trailer.brakes.breakaway": "no"}
    assert kinds("breakaway", {**edits, "gross": "1990 +-5 kg"}) == ["advice"]
    (found,) = said("breakaway", {**edits, "gross": "1990 +-20 kg"})
    assert found.kind == "unknown" and found.could_stop and "over 2000 kg" in found.says


def test_a_rule_of_the_plate_is_told_and_reckoned_by_the_plate() -> None:
    """France, read: 751 kg on the plate, whatever is loaded; once for each place and limit."""
    edits = {**UNBRAKED, "trailer.gvwr": "751 kg", "gross": "500 kg", "tongue": "50 kg", "tow.pickup.kerb": "1400 kg"}
    (found,) = said("brakes-required", {**edits, "countries": ["EU-FR"]})
    assert "its plate says 751 kg" in found.says.replace("1,656 lb", "751 kg") and "it weighs" not in found.says
    assert found.number == pytest.approx(751.0) and found.margin == pytest.approx((found.limit or 0.0) - 751.0)
    assert "also EU-FR 0.50" not in found.says and found.says.count("0.50") == 1


def test_a_text_that_was_seen_is_not_said_to_be_unread() -> None:
    edits = {**UNBRAKED, "trailer.gvwr": "750 kg", "gross": "500 kg", "tongue": "50 kg", "tow.pickup.kerb": "1380 kg"}
    (found,) = said("brakes-required", {**edits, "countries": ["UK", "EU-FR"]})
    assert "was not read here" not in found.says and "too little to stop by" in found.says


def test_a_width_just_over_shows_the_digits_that_make_it_so() -> None:
    (found,) = said("size-on-route", {"countries": ["US-NC"], "trailer.outside.over_fenders": "102.5 in"})
    assert found.says.startswith("the overall width is 102 1/2 in, 0.5 in over the 102 in of US-NC")


LACKING: tuple[tuple[str, str], ...] = (
    ("trailer.axles.track", "the track of the axles"), ("trailer.coupler_height", "the height of the coupler"),
    ("trailer.outside.height", "the height over all"), ("tow.pickup.ball_height", "the height of the ball of pickup"),
    ("centre_z", "how high the weight sits"),
)  # fmt: skip


@pytest.mark.parametrize(("path", "words"), LACKING)
def test_a_measure_nobody_wrote_is_named_in_words_and_its_path_stays_where_it_is_written(path: str, words: str) -> None:
    found = [one for one in said_of({path: ""}) if " is not known" in one.says]
    assert found and all("trailer." not in one.says and "tow[" not in one.says for one in found)
    assert any(words in one.says and one.lever == one.where for one in found)

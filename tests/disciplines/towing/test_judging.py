"""How a number is held against its limit: ends of a band, permitted fills, what is unknown (DESIGN 12)."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from hypothesis import given as drawn
from hypothesis import strategies as st

from boxwright.disciplines.towing.findings import findings, tongue_swing, walk_round
from boxwright.disciplines.towing.result import Reading
from boxwright.disciplines.towing.telling import Question, judged
from boxwright.finding import Finding
from boxwright.units import Band, exactly
from tests.findings.towing.held import BASE, INCHES, edited, result_of, said_of

ASKED = Question("towing/x", "trailer.gvwr", "it", "the plate", "trailer.gvwr", "there")
LEAST = Question("towing/x", "trailer.gvwr", "it", "the least", "trailer.gvwr", "there", least=True)
INF = float("inf")


def kinds(asked: Question, reading: Reading, limit: Band | None) -> list[str]:
    return [one.kind for one in judged(asked, reading, limit, INCHES)]


def read(best: float, low: float, high: float, known: bool = True, permitted: tuple[float, float] = (0, 0)) -> Reading:
    missing = () if known else ("parts[crate]",)
    band = Band(best, low, high, known=known, spread="interval")
    return Reading(band, permitted[0] or best, permitted[1] or best, missing)


def test_only_a_whole_band_inside_holds() -> None:
    limit = exactly(100.0)
    assert kinds(ASKED, read(90, 80, 99), limit) == []
    assert kinds(ASKED, read(90, 80, 101), limit) == ["unknown"]
    assert kinds(ASKED, read(101, 95, 110), limit) == ["stop"]
    assert kinds(ASKED, read(90, 80, 99, permitted=(70, 105)), limit) == ["stop"]
    assert kinds(ASKED, read(90, 90, INF, known=False), limit) == ["unknown"]
    assert kinds(ASKED, read(101, 101, INF, known=False), limit) == ["stop"]
    assert kinds(ASKED, read(90, -INF, 99, known=False), limit) == []
    assert kinds(ASKED, read(0, -INF, INF, known=False), limit) == ["unknown"]
    assert kinds(ASKED, read(90, 80, 99), None) == ["unknown"]
    assert kinds(ASKED, read(90, 80, 99), Band(100, 95, 105, spread="interval")) == ["unknown"]


def test_the_same_turned_round() -> None:
    limit = exactly(100.0)
    assert kinds(LEAST, read(110, 101, 120), limit) == []
    assert kinds(LEAST, read(110, 99, 120), limit) == ["unknown"]
    assert kinds(LEAST, read(99, 90, 105), limit) == ["stop"]
    assert kinds(LEAST, read(110, 101, 120, permitted=(95, 120)), limit) == ["stop"]
    assert kinds(LEAST, read(0, -INF, INF, known=False), limit) == ["unknown"]


def test_a_question_names_what_to_weigh_and_what_it_may_weigh() -> None:
    (found,) = (one for one in said_of({"gross": "at least 6900 lb", "tongue": "unknown"}) if "gross-over" in one.code)
    assert found.kind == "unknown" and found.could_stop
    assert found.because == ("parts[crate]",) and found.act == "Weigh crate" and "100 lb of room" in found.says


def of_weight(said: tuple[Finding, ...]) -> set[str]:
    return {one.code for one in said if one.kind == "stop"}


@drawn(st.floats(500.0, 9000.0), st.floats(0.0, 2000.0))
def test_more_weight_never_turns_a_stop_into_none(gross: float, more: float) -> None:
    """The share on the ball stays 12 %; the stops of the lighter trailer stay with the heavier one."""
    light, heavy = (
        of_weight(said_of({"gross": f"{one:.3f} lb", "tongue": f"{0.12 * one:.3f} lb"}))
        for one in (gross, gross + more)
    )
    assert light <= heavy


@drawn(st.integers(20, 80))
def test_a_mirrored_load_gives_the_mirrored_answer(percent: int) -> None:
    one, other = (
        [(f.code, f.kind, f.number) for f in said_of({"left": f"{share} %"})] for share in (percent, 100 - percent)
    )
    assert [found[:2] for found in one] == [found[:2] for found in other]
    assert all(abs((a[2] or 0.0) - (b[2] or 0.0)) < 1e-6 for a, b in zip(one, other, strict=True))


def test_what_stops_behind_another_vehicle_is_advice_unless_it_is_asked_for() -> None:
    small = {**BASE["tow"]["pickup"], "tongue": "300 lb"}
    edits = {"tow.small": small}
    advised = [one for one in said_of(edits) if one.where == "tow[small]"]
    assert [(one.code, one.kind) for one in advised] == [("towing/tongue-over-rating", "advice")]
    asked = [one for one in said_of(edits, "small") if one.where == "tow[small]"]
    assert [(one.code, one.kind) for one in asked] == [("towing/tongue-over-rating", "stop")]


def test_the_least_rating_names_itself() -> None:
    """480 lb on the ball: the jack's 400 lb is less than the vehicle's 450 lb."""
    edits = {"tow.pickup.tongue": "450 lb", "trailer.jack.rating": "400 lb"}
    (found,) = (one for one in said_of(edits) if one.code == "towing/tongue-over-rating")
    assert found.kind == "stop" and found.where == "trailer.jack.rating" and "the jack" in found.says


def test_an_unbraked_trailer_under_the_vehicles_limit_is_limited_to_it() -> None:
    edits = {"trailer.brakes": {"kind": "none"}, "tow.pickup.unbraked": "4100 lb"}
    (found,) = (one for one in said_of(edits) if one.code == "towing/unbraked-limit")
    assert found.kind == "limit" and found.margin is not None and found.margin > 0.0 and "4,100 lb" in found.says


def test_too_heavy_a_tongue_is_a_limit_as_well_and_elsewhere_advice() -> None:
    (found,) = (one for one in said_of({"tongue": "620 lb"}) if one.code == "towing/tongue-share")
    assert found.kind == "limit" and "greatest" in found.says
    (found,) = (one for one in said_of({"tongue": "620 lb", "countries": ["UK"]}) if one.code == "towing/tongue-share")
    assert found.kind == "advice"


def shares(edits: dict[str, Any]) -> list[tuple[str, str, str]]:
    return [(one.kind, one.where, one.act) for one in said_of(edits) if one.code == "towing/tongue-share"]


FORWARD = "Move weight forward, and drive slowly until it is put right"
UK: dict[str, Any] = {"countries": ["UK"], "gross": "700 kg"}
RATED = {"trailer.coupler.tongue_max": "75 kg", "tow.pickup.tongue": "75 kg"}


def test_too_light_a_tongue_limits_everywhere() -> None:
    assert shares({**UK, "tongue": "27 kg"}) == [("limit", "trailer.coupler", FORWARD)]
    assert shares({**UK, "tongue": "29 kg"}) == []


def test_a_heavy_tongue_within_every_rating_is_no_fault_where_the_ratings_decide() -> None:
    """75 kg of 700 kg is over 7 %, and ball, coupler and vehicle are made for it."""
    assert shares({**UK, **RATED, "tongue": "75 kg"}) == []
    for less in ({"trailer.coupler.tongue_max": "74 kg"}, {"tow.pickup.tongue": "74 kg"},
                 {"trailer.coupler.tongue_max": ""}, {"trailer.coupler.tongue_max": "70..80 kg"},
                 {"tow.small": {"tongue": "50 kg"}}):  # fmt: skip
        assert shares({**UK, **RATED, "tongue": "75 kg", **less}) == [
            ("advice", "trailer.coupler", "Move weight rearward")
        ], less
    assert shares({**UK, **RATED, "tongue": "72 kg", "countries": ["US-NE"]}) == []
    assert [kind for kind, *_ in shares({**RATED, "gross": "400 kg", "tongue": "75 kg"})] == ["limit"]
    filled = {**UK, **RATED, "gross": "700 kg", "tongue": "70 kg filled 60 kg to 80 kg"}
    assert [kind for kind, *_ in shares(filled)] == ["advice"]


def test_in_australia_and_new_zealand_a_tenth_is_practice() -> None:
    for place in ("AU-NSW", "NZ"):
        at_home = {"countries": [place], "gross": "1000 kg"}
        assert [kind for kind, *_ in shares({**at_home, "tongue": "79 kg"})] == ["limit"]
        assert shares({**at_home, "tongue": "81 kg"}) == shares({**at_home, "tongue": "149 kg"}) == []
        assert [kind for kind, *_ in shares({**at_home, "tongue": "151 kg"})] == ["advice"]


def test_where_nobody_knows_the_home_the_share_is_a_question() -> None:
    for home in (["NORTH CAROLINA", "US"], []):
        ((kind, where, act),) = shares({"countries": home, "tongue": "480 lb"})
        assert (kind, where) == ("unknown", "countries") and act.startswith("Write the home of the trailer first")
        assert [kind for kind, *_ in shares({"countries": home, "tongue": "150 lb"})] == ["limit"]


def test_how_far_a_share_is_out_has_no_digits_that_no_scale_tells() -> None:
    for tongue, far in (("604 lb", "by 0.1 %"), ("600.1 lb", "by less than 0.1 %")):
        (found,) = (one for one in said_of({"tongue": tongue}) if one.code == "towing/tongue-share")
        assert f"greatest share of 15 % {far};" in found.says


def test_the_act_of_a_weak_jack_or_coupler_names_it() -> None:
    for path, act in (("trailer.jack.rating", "fit a jack rated for more"),
                      ("trailer.coupler.tongue_max", "have a coupler stamped for more fitted"),
                      ("tow.pickup.tongue", "use a vehicle and hitch rated for more")):  # fmt: skip
        (found,) = (one for one in said_of({path: "450 lb"}) if one.code == "towing/tongue-over-rating")
        assert found.kind == "stop" and found.act == f"Move weight rearward, or {act}"


def test_a_rating_in_doubt_is_read_again_and_not_weighed() -> None:
    edits = {"trailer.coupler.rating": "3900..5500 lb"}
    (found,) = (one for one in said_of(edits) if one.code == "towing/coupler-over-rating")
    assert (found.kind, found.could_stop, found.lever) == ("unknown", True, "trailer.coupler.rating")
    assert found.act == "Read the coupler's rating stamped on the coupler again" and "read it again" in found.says
    heavier = {**edits, "gross": "4600 +-200 lb", "tongue": "550 lb"}
    (found,) = (one for one in said_of(heavier) if one.code == "towing/coupler-over-rating")
    assert found.act == "Weigh the loaded trailer: axles and tongue"


def test_a_least_load_that_hangs_on_the_weight_is_weighed() -> None:
    edits = {"countries": ["EU-DE"], "gross": "500 +-60 kg", "tongue": "21 kg"}
    (found,) = (one for one in said_of(edits) if one.code == "towing/ball-load-too-small")
    assert found.act == "Weigh the loaded trailer: axles and tongue"


def test_a_result_is_a_record_and_equal_input_gives_an_equal_one() -> None:
    one, other = result_of(edited(BASE, {})), result_of(edited(BASE, {}))
    assert one == other and hash(one) == hash(other)
    assert findings(one, INCHES) == findings(other, INCHES)


def test_the_walk_round_ticks_crosses_and_leaves_open() -> None:
    marks = {line.name: line.mark for line in walk_round(said_of({}))}
    assert list(marks)[:2] == ["papers", "vehicle"] and len(marks) == 15
    assert marks["inside"] == "by hand" and set(marks.values()) == {"ticked", "by hand"}
    crossed = {line.name: line for line in walk_round(said_of({"trailer.chains.count": "1", "trailer.tyres.load": ""}))}
    assert crossed["chains"].mark == "crossed" and "chains" in crossed["chains"].because[0]
    assert crossed["tyres"].mark == "open"


def test_the_walk_round_names_only_rules_there_are() -> None:
    from boxwright.disciplines.towing.sourced import WALK
    from boxwright.study.rig_findings import EXPLAINED
    from tests.docs.test_tables import finding_codes

    in_lines = {code for _, _, codes in WALK for code in codes}
    assert in_lines <= finding_codes() | EXPLAINED.keys()
    of_towing = {one for one in finding_codes() if one.startswith("towing/")} - {"towing/walk-round"}
    assert of_towing <= in_lines, "a fault that stands in no line leaves the walk blank"
    assert "rig/not-read" in in_lines


def test_a_fault_found_crosses_or_opens_a_line_of_the_walk() -> None:
    """Each of these once left every box blank."""
    faulty: tuple[dict[str, Any], ...] = (
        {"trailer.tyres.pressure": "40 psi"}, {"trailer.chains.count": "1", "countries": ["US-TX"]},
        {"tow.pickup.kerb": "515 lb"}, {"tow": {}}, {"tongue": "20 kg", "countries": ["EU-DE"]},
        {"countries": ["EU-DE"]}, {"tow.pickup.kerb": ""},
    )  # fmt: skip
    for edits in faulty:
        said = [one for one in said_of(edits) if one.kind not in ("advice",)]
        against = {words for line in walk_round(tuple(said)) for words in line.because}
        assert said and {one.says for one in said} == against


def test_nothing_is_ticked_where_towing_broke_off() -> None:
    broke = Finding("towing/could-not-be-worked-out", "towing", "stop", "towing broke off")
    assert {line.mark for line in walk_round((broke,))} == {"crossed", "by hand"}


def test_a_tongue_of_more_than_half_the_weight_was_misread() -> None:
    found = [one.where for one in said_of({"tongue": "2100 lb"}) if one.code == "towing/rating-implausible"]
    assert found == ["trailer.axles.x"]
    assert not [one for one in said_of({"tongue": "1900 lb"}) if one.code == "towing/rating-implausible"]


def test_a_small_ball_and_a_heavy_stamp_contradict_each_other() -> None:
    edits = {"trailer.coupler.ball": "1 7/8 in"}
    found = [one.where for one in said_of(edits) if one.code == "towing/rating-implausible"]
    assert found == ["trailer.coupler.ball"]
    metric = {"trailer.coupler.ball": "50 mm", "trailer.coupler.rating": "3500 kg", "countries": ["EU-DE"]}
    assert not [one for one in said_of(metric) if one.code == "towing/rating-implausible"]


def test_a_ball_too_high_points_the_nose_up_and_wants_drop() -> None:
    high, low = (
        next(one for one in said_of({"tow.pickup.ball_height": at}) if one.code == "towing/coupler-level")
        for at in ("23 in", "15 in")
    )
    assert "points up" in high.says and high.act.endswith("4 in of drop")
    assert "points down" in low.says and low.act.endswith("4 in of rise")


def test_a_low_thing_ahead_of_the_axle_touches_on_a_crest() -> None:
    """At 8.4 in the tank clears a crest of atan(8.4/53) + atan(8.4/132) = 12.7 degrees; at 2.5 in 3.8 degrees."""
    tank = {"front": "30 in", "left": "0 in", "size": "10 in x 20 in x 4 in"}
    low = said_of({"parts": {"tank": {**tank, "under": "-16 in"}}})
    assert any("crest" in one.says and one.kind == "advice" for one in low)
    assert not any("crest" in one.says for one in said_of({"parts": {"tank": {**tank, "under": "-10.1 in"}}}))
    asked = said_of({"parts": {"tank": {**tank, "under": "-12 in"}}, "tow.pickup.overhang": ""})
    assert [one.where for one in asked if one.kind == "unknown"] == ["tow[pickup].overhang"]


def test_a_tongue_that_lifts_by_the_same_in_every_state_does_not_swing() -> None:
    for other, found in ((-101.0, []), (-140.0, ["advice"])):
        tongues = tuple((load, read(one, one, one)) for load, one in (("empty", -100.0), ("away", other)))
        lifted = replace(result_of(edited(BASE, {})), tongues=tongues)
        assert [one.kind for one in tongue_swing(lifted, INCHES)] == found

"""What may not be passed over in silence: brakes nobody can name, no link at all, a country nobody knows."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from tests.findings.towing.held import BASE, edited, result_of, said_of


def kinds(edits: dict[str, object], code: str) -> set[str]:
    return {one.kind for one in said_of(edits) if one.code == code}


@pytest.mark.parametrize("kind", ["unknown", "elektric", "some"])
def test_brakes_of_a_kind_nobody_knows_are_asked_about(kind: str) -> None:
    asked = [one for one in said_of({"trailer.brakes.kind": kind}) if one.code == "towing/brakes-required"]
    assert any(one.kind == "unknown" and one.could_stop for one in asked)


NOT_YET = [
    "electric, not wired yet", "none yet, electric ordered", "none (electric planned)", "surge (seized, parked)",
    "no electric", "electric in the shed", "brakes",
]  # fmt: skip


@pytest.mark.parametrize("kind", NOT_YET)
@pytest.mark.parametrize("rest", [{}, {"axles": 2, "breakaway": True}])
def test_brakes_that_may_not_work_count_neither_as_brakes_nor_as_none(kind: str, rest: dict[str, object]) -> None:
    edits = {"trailer.brakes": {"kind": kind, **rest}, "class": "camper"}
    assert result_of(edited(BASE, edits)).braked_axles is None
    said = [one for one in said_of(edits) if one.code == "towing/brakes-required"]
    assert [(one.kind, one.could_stop, one.where) for one in said] == [("unknown", True, "trailer.brakes")]
    assert "neither as brakes nor as none" in said[0].says


@pytest.mark.parametrize(
    "kind",
    ["Electric", "electric over hydraulic", "surge, disc", "over-run", "auto-reverse overrun", "hydraulic drum brakes",
     "electric drums 10 x 2 1/4 in on both axles", "electric 12V"],
)  # fmt: skip
def test_ordinary_words_for_brakes_are_brakes(kind: str) -> None:
    edits = {"trailer.brakes.kind": kind}
    assert result_of(edited(BASE, edits)).braked_axles == 2
    assert "brakes-required" not in {one.code.partition("/")[2] for one in said_of(edits)}


def test_brakes_on_a_single_axle_can_only_be_on_that_one() -> None:
    axle = {"x": ["100 in"], "gawr": ["7000 lb"]}
    single, pair = ({"trailer.brakes.axles": "", "trailer.axles": one} for one in (axle, BASE["trailer"]["axles"]))
    assert result_of(edited(BASE, single)).braked_axles == 1
    assert result_of(edited(BASE, pair)).braked_axles is None


def test_brakes_of_a_kind_and_on_no_axle_contradict_each_other() -> None:
    edits = {"trailer.brakes.axles": "0", "tow.pickup.unbraked": "9000 lb", "class": "camper"}
    said = [(one.kind, one.where) for one in said_of(edits) if one.code == "towing/brakes-required"]
    assert said == [("unknown", "trailer.brakes.axles"), ("stop", "trailer.brakes")]


@pytest.mark.parametrize("kind", ["no brakes", "without brakes", "unbraked"])
def test_words_for_no_brakes_are_no_brakes(kind: str) -> None:
    said = [(one.code, one.kind, one.where) for one in said_of({"trailer.brakes": {"kind": kind}})]
    assert said == [(one.code, one.kind, one.where) for one in said_of({"trailer.brakes": {"kind": "none"}})]
    assert said


def test_surge_brakes_are_known_however_they_are_spelt() -> None:
    for kind in ("surge", "over-run", "overrun", "inertia"):
        assert not any("not known here" in one.says for one in said_of({"trailer.brakes.kind": kind}))


@pytest.mark.parametrize("chains", [{"fitted": "no"}, {"kind": "none"}])
def test_no_link_at_all_breaks_a_rule_of_the_strength_of_chains(chains: dict[str, str]) -> None:
    found = [one for one in said_of({"trailer.chains": chains, "countries": ["US-NC"]}) if one.code == "towing/chains"]
    assert found and all(one.kind in {"stop", "unknown"} and one.could_stop for one in found)


def test_a_link_of_unknown_kind_is_asked_about() -> None:
    found = [one for one in said_of({"trailer.chains": {"kind": "unknown"}}) if one.code == "towing/chains"]
    assert [(one.kind, one.could_stop) for one in found] == [("unknown", True)]


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("GB", ("UK",)),
        ("DE", ("EU-DE",)),
        ("[FR, UK]", ("EU-FR", "UK")),
        ("Atlantis", ("ATLANTIS",)),
        ("US-NC", ("US-NC",)),
    ],
)
def test_a_country_is_never_replaced_by_another(written: str, read: tuple[str, ...]) -> None:
    rig = read_rig(f"boxwright: 1\ncountries: {written}\n").rig
    assert rig.header.countries == read
    assert not rig.header.is_country_assumed


def test_the_width_of_the_box_is_only_the_least_where_fenders_are_not_measured() -> None:
    found = said_of({"trailer.outside.over_fenders": ""})
    asked = [one for one in found if one.code == "towing/size-on-route"]
    assert [(one.kind, one.could_stop) for one in asked] == [("unknown", True)]


def test_a_breakaway_battery_is_not_believed_tested_on_a_day_to_come() -> None:
    found = said_of({"trailer.brakes.breakaway_battery": "2027-03-20"})
    assert {one.kind for one in found if one.code == "towing/breakaway"} == {"unknown"}


def test_taut_bars_with_surge_brakes_are_a_question_that_can_stop() -> None:
    found = said_of({"trailer.brakes.kind": "surge", "tow.pickup.bars": {"restores": "50 %"}})
    asked = [one for one in found if one.code == "towing/bars" and one.kind == "unknown"]
    assert asked and asked[0].could_stop

"""What a question of towing tells a person to do names the thing that is meant.

An act stands alone on the page of what to do next, without the sentence it came from.
"""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from boxwright.cli.asked import Question, answered
from boxwright.disciplines.towing.findings import rollover
from boxwright.disciplines.towing.result import Reading
from boxwright.finding import Finding
from tests.findings.towing.held import BASE, INCHES, edited, result_of, said_of
from tests.findings.towing.test_trios import TRIOS
from tests.study.demo import RIGS, TODAY

BARE = {"kerb": "", "people_and_gear": "", "payload": "", "gcwr": "", "rear_axle": "3000 lb", "wheelbase": "",
        "overhang": "", "ball_height": "", "d_value": "20 kN"}  # fmt: skip
LACKING: list[dict[str, Any]] = [
    *[case["lacks"]["set"] for case in TRIOS.values()],
    {f"tow.pickup.{key}": value for key, value in BARE.items()},
    {"tow.pickup.bars": {"restores": "unknown"}},
    {"tow.pickup.bars": {"restores": "50 %"}, "tow.pickup.wheelbase": ""},
    {"tow.pickup.bars": {"restores": "50 %"}, "tow.pickup.overhang": ""},
    {"tow.pickup.bars": "unknown"},
    {"trailer.coupler_height": ""},
    {"trailer.axles.gawr": ["1600 kg", "900 lb"]},
    {"trailer.tyres.load": "", "trailer.tyres.size": ""},
    {"trailer.tyres.pressure": "50 bar"},
    {"tongue": "unknown", "loads": {}},
    {"tongue": "unknown", "loads": {"empty": "unknown"}},
    {"gross": "at least 4000 lb"},
    {"centre_z": ""},
    {"countries": ["MX"]},
    {"countries": []},
]  # fmt: skip


def questions(edits: dict[str, Any]) -> list[Finding]:
    return [one for one in said_of(edits) if one.kind == "unknown"]


@pytest.mark.parametrize("edits", LACKING, ids=str)
def test_an_act_has_no_path_and_no_word_for_a_thing_named_elsewhere(edits: dict[str, Any]) -> None:
    assert questions(edits) or edits == TRIOS["wheel-chocks"]["lacks"]["set"]
    for one in questions(edits):
        told = re.sub(r" as [\w.]+$| such as .*", "", one.act)
        assert told and not re.search(r"\w\.\w+|\w\[|\bparts\b", told), one
        assert not re.match(r"(Read|Measure|Weigh|Look up) (its|it|the vehicle's|them|both)\b", told), one
        if one.where.startswith("tow[") and "trailer" not in told and not told.startswith("Weigh crate"):
            assert "pickup" in told or "axles" in told, one


def test_what_lacks_a_place_is_measured_and_what_lacks_a_weight_is_weighed() -> None:
    by_code = {one.code: one for one in questions({"tongue": "unknown", "loads": {"empty": "unknown"}})}
    for code in ("tongue-share", "tongue-over-rating", "payload", "tongue-swing"):
        assert by_code[f"towing/{code}"].act == "Measure the place of the axles"
    assert "the place of the axles has no number" in by_code["towing/tongue-share"].says
    weighed = {one.act for one in questions({"gross": "at least 4000 lb"})}
    assert "Weigh crate" in weighed


def test_of_a_vehicle_what_is_not_written_is_asked_for_and_not_what_is() -> None:
    found = [one for one in questions({"tow.pickup.people_and_gear": ""}) if one.where.startswith("tow[")]
    assert {one.code for one in found} >= {"towing/combination", "towing/stopping", "towing/hill-start"}
    assert {one.where for one in found} == {"tow[pickup].people_and_gear"}
    assert {one.act for one in found} == {"Weigh, or count up, the people and gear in pickup"}


def test_two_vehicles_are_two_acts() -> None:
    """One act for both would be ticked off after the first."""
    both = {"tow.pickup.kerb": "", "tow.van": {"rating": "9000 lb", "gcwr": "15000 lb", "people_and_gear": "200 lb"}}
    for vehicle, other in (("pickup", "van"), ("van", "pickup")):
        acts = {one.act for one in said_of(both, vehicle) if one.where == f"tow[{vehicle}].kerb"}
        assert acts and all(vehicle in act and other not in act for act in acts)


def test_brakes_nobody_wrote_are_looked_for_and_no_paper_is_read_for_them() -> None:
    (found,) = [one for one in questions({"trailer.brakes": {}}) if one.code == "towing/stopping"]
    assert found.where == "trailer.brakes" and found.act == "Look for brakes at each wheel"


def test_a_part_that_was_weighed_is_asked_for_its_place_alone() -> None:
    result = result_of(edited(BASE, {"centre_z": ""}))
    lost = Reading(result.centre_z.band, 0.0, 0.0, ("parts[rack]",), ("parts[rack]",))
    unweighed = replace(lost, missing=("parts[rack]", "parts[crate]"))
    acts = []
    for centre_z in (lost, unweighed):
        (found,) = rollover(replace(result, centre_z=centre_z), INCHES)
        acts.append(found.act)
    assert acts[0] == "Measure where rack stands"
    assert acts[1] == "Measure where rack stands, and weigh crate, and measure how high they sit"


def test_a_heavy_part_without_a_place_is_not_to_be_weighed_again(tmp_path: Path) -> None:
    chairs = "  deck-chairs:     {x: 128, wall: right, z: 40, size: 20 x 6 x 28, weight: unknown,"
    text = (RIGS / "whimbrel.yaml").read_text()
    assert chairs in text
    path = tmp_path / "rig.yaml"
    path.write_text(text.replace(chairs, "  anvil: {x: unknown, side: centre, z: 0, size: 20 x 20 x 20, weight: 900,"))
    slots = answered(Question(str(path)), TODAY).study.slots
    acts = {one.act for slot in slots for one in slot.findings if "towing/" in one.code and "anvil" in one.act}
    assert "Measure where anvil stands" in acts and not any("eigh anvil" in act for act in acts)

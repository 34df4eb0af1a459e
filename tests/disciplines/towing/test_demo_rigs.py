"""The demo rigs told by towing: the seeded faults by their path, and the stories of the rigs.

Towing is fed as the study will feed it; what weight says of the demos is proved in tests/study.
"""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path

from boxwright.disciplines.towing.findings import findings
from boxwright.disciplines.towing.solve import solve
from boxwright.finding import Finding
from tests.study.demo import demo, slot_of, studied

SEEDED = Path(__file__).parents[3] / "rigs" / "seeded.toml"


@cache
def said(name: str, stage: str, load: str, vehicle: str = "") -> tuple[Finding, ...]:
    rig, found = demo(name), studied(name)
    slot = slot_of(found, stage, load, use="tow")
    assert slot.box is not None and slot.weight is not None
    tongues = tuple(
        (one.load, one.weight.tongue)
        for one in found.slots
        if one.weight is not None and (one.stage, one.use, one.is_ticked) == (stage, "tow", False)
    )
    beds = tuple(person.sleeps for _, person in rig.people)
    header = rig.header
    result = solve(
        rig.trailer, rig.tow, rig.towing, header.trailer_class, header.countries, found.judged_on, slot.box,
        slot.weight, tongues, slot.standing.frames, beds,
    )  # fmt: skip
    return findings(result, header.units, vehicle)


def seeded(rig: str) -> list[tuple[str, str]]:
    faults = tomllib.loads(SEEDED.read_text(encoding="utf-8"))["fault"]
    return [(one["path"], one["kind"]) for one in faults if one["rig"] == rig and one["discipline"] == "towing"]


def stops(said_of: tuple[Finding, ...]) -> set[tuple[str, str, str]]:
    return {(one.code, one.where, one.kind) for one in said_of if one.kind == "stop"}


def test_the_borrowed_pickup_is_too_small_for_the_finished_tongue_and_nothing_else_stops() -> None:
    assert seeded("whimbrel") == [("tow[borrowed]", "stop")]
    found = stops(said("whimbrel", "finish", "departure", "borrowed"))
    assert found == {("towing/tongue-over-rating", "tow[borrowed]", "stop")}
    assert stops(said("whimbrel", "finish", "departure")) == set()
    advised = [one for one in said("whimbrel", "finish", "departure") if one.where == "tow[borrowed]"]
    assert [one.kind for one in advised] == ["advice"] and "480 lb" in advised[0].says


def test_the_estate_may_not_pull_the_loaded_trailer_without_brakes_and_nothing_else_stops() -> None:
    assert seeded("dunlin") == [("tow[estate]", "stop")]
    assert stops(said("dunlin", "inside", "home-poor")) == {("towing/unbraked-limit", "tow[estate]", "stop")}
    (limited,) = (one for one in said("dunlin", "inside", "empty") if one.code == "towing/unbraked-limit")
    assert limited.kind == "limit" and limited.where == "tow[estate]" and "750 kg" in limited.says


def test_the_trip_home_with_timber_straddles_the_plate() -> None:
    (found,) = (one for one in said("dunlin", "inside", "home-poor") if one.code == "towing/gross-over-plate")
    assert found.kind == "unknown" and found.could_stop


def test_with_the_crates_sold_the_nose_load_passes_the_cars_limit() -> None:
    (found,) = (one for one in said("dunlin", "inside", "home-sold") if one.code == "towing/tongue-over-rating")
    assert (found.kind, found.where) == ("stop", "tow[estate]")


def test_the_mudguards_of_the_small_trailer_ask_for_front_lamps_by_a_rule_that_was_not_read() -> None:
    (found,) = (one for one in said("dunlin", "inside", "empty") if one.code == "towing/lamps")
    assert found.kind == "advice" and "front position" in found.says and "1790 mm" in found.says


def test_a_light_ball_before_the_battery_is_in_limits() -> None:
    """With the boat aboard, foam in and the battery not, the ball carries under a tenth."""
    kinds = {one.kind for one in said("whimbrel", "foam", "departure") if one.code == "towing/tongue-share"}
    assert kinds == {"limit"}


def test_a_stage_with_the_bunk_in_shows_what_a_camper_is_asked_for() -> None:
    (found,) = (one for one in said("whimbrel", "bunk", "departure") if one.code == "towing/class-change")
    assert found.kind == "advice" and "1000 lb" in found.says
    assert not [one for one in said("whimbrel", "liners", "departure") if one.code == "towing/class-change"]

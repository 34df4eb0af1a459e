"""A figure in the wrong unit, or one that contradicts another, never leaves a go; an ordinary rig is not bothered."""

from __future__ import annotations

from typing import Any

import pytest

from .held import said_of

CODES = {"towing/rating-implausible", "towing/papers-implausible"}

# Each is the small rig with one figure a builder really mistypes: the stamp's number with the other unit behind it, a
# nought too many, two figures exchanged.
WRONG: list[dict[str, Any]] = [
    {"trailer.coupler.rating": "3500 kg", "gross": "6900 lb", "trailer.gvwr": "9900 lb",
     "trailer.axles.gawr": ["5200 lb", "5200 lb"]},
    {"trailer.axles.gawr": ["1750 kg", "1750 kg"], "gross": "6900 lb", "tongue": "690 lb"},
    {"trailer.tyres.load": "1820 kg", "gross": "6900 lb", "left": "60 %"},
    {"trailer.tyres.load": "18200 lb"},
    {"trailer.gvwr": "70000 lb"},
    {"trailer.coupler.rating": "70000 lb"},
    {"trailer.chains.rating": "3500 kg", "gross": "6900 lb", "countries": ["US-NC"]},
    {"trailer.outside.over_fenders": "80 in"},
    {"trailer.outside.height": "17 in"},
    {"trailer.outside.length_overall": "160 in"},
    {"tow.pickup.rating": "90000 lb"},
    {"tow.pickup.rating": "3500 kg", "gross": "6900 lb"},
    {"tow.pickup.tongue": "9000 lb"},
    {"tow.pickup.tongue": "400 kg", "tongue": "480 lb"},
    {"tow.pickup.gcwr": "150000 lb"},
    {"tow.pickup.gcwr": "5000 lb", "gross": "10 lb"},
    {"tow.pickup.kerb": "515 lb"},
    {"tow.pickup.gvwr": "5000 lb"},
    {"tow.pickup.payload": "16000 lb"},
]  # fmt: skip

# Ordinary: a strong coupler on a light trailer, axles plated down, a heavy pickup, figures typed in kilograms by who
# converted them, a metric coupler at home in a metric country.
ORDINARY: list[dict[str, Any]] = [
    {},
    {"trailer.coupler.rating": "14000 lb", "trailer.gvwr": "7000 lb"},
    {"trailer.gvwr": "2990 lb", "gross": "2800 lb", "tongue": "300 lb", "trailer.axles.gawr": ["3500 lb", "3500 lb"]},
    {"trailer.gvwr": "3175 kg", "trailer.coupler.rating": "3175 kg"},
    {"tow.pickup.rating": "22000 lb", "tow.pickup.gcwr": "30000 lb", "tow.pickup.kerb": "7800 lb",
     "tow.pickup.gvwr": "12000 lb", "tow.pickup.tongue": "2200 lb", "tow.pickup.payload": "4000 lb"},
    {"trailer.tyres.load": "2540 lb"},
    {"countries": ["EU-DE"], "trailer.coupler.rating": "3500 kg", "gross": "6900 lb"},
]  # fmt: skip


def asked(edits: dict[str, Any]) -> list[tuple[str, bool]]:
    return [(one.where, one.could_stop) for one in said_of(edits) if one.code in CODES and one.kind == "unknown"]


@pytest.mark.parametrize("edits", WRONG, ids=lambda edits: next(iter(edits)))
def test_a_figure_that_cannot_be_right_is_a_question_that_can_stop(edits: dict[str, Any]) -> None:
    found = asked(edits)
    assert found
    assert all(could_stop for _, could_stop in found)


@pytest.mark.parametrize("edits", ORDINARY, ids=str)
def test_an_ordinary_rig_is_asked_nothing(edits: dict[str, Any]) -> None:
    assert asked(edits) == []


def test_a_round_number_of_kilograms_is_no_matter_where_pounds_would_hold_too() -> None:
    edits = {"trailer.coupler.rating": "3500 kg", "trailer.gvwr": "3500 lb", "gross": "3400 lb", "tongue": "400 lb"}
    assert "trailer.coupler.rating" not in [where for where, _ in asked(edits)]
    heavier = asked({**edits, "gross": "3501 lb"})
    assert "trailer.coupler.rating" in [where for where, _ in heavier]


def test_what_was_stamped_in_kilograms_is_believed_once_it_is_written_in_pounds() -> None:
    edits = {"trailer.coupler.rating": "7716 lb", "gross": "6900 lb"}
    assert asked(edits) == []


PAYLOADS: list[tuple[dict[str, Any], list[str]]] = [
    ({"kerb": "5100 lb", "gcwr": "15000 lb", "payload": "7000 lb"}, ["payload"]),
    ({"kerb": "5100 lb", "gvwr": "7000 lb", "payload": "7000 lb"}, ["payload"]),
    ({"gvwr": "7000 lb", "payload": "7000 lb"}, ["payload"]),
    ({"kerb": "5100 lb", "gcwr": "9000 lb", "rating": "8500 lb", "payload": "4000 lb"}, ["payload"]),
    ({"kerb": "5100 lb", "payload": "1000 kg", "people_and_gear": "600 lb"}, ["payload"]),
    ({"kerb": "5100 lb", "payload": "1300 kg", "people_and_gear": "500 lb"}, []),
    ({"kerb": "1470 kg", "gcwr": "7606 lb", "rating": "5000 lb", "payload": "1950 kg"}, ["payload"]),
    ({"kerb": "1500 kg", "gcwr": "13000 lb", "gvwr": "6614 lb", "rating": "6600 lb", "payload": "1450 kg"}, []),
    ({"kerb": "1500 kg", "gcwr": "13000 lb", "rating": "6600 lb", "payload": "1450 kg"}, ["payload"]),
    ({"people_and_gear": "50 lb"}, ["people_and_gear"]),
    ({"people_and_gear": "100 lb"}, []),
]  # fmt: skip


@pytest.mark.parametrize(("written", "about"), PAYLOADS, ids=str)
def test_a_payload_that_is_another_figure_is_asked_about(written: dict[str, str], about: list[str]) -> None:
    """The greatest mass typed as payload; kilograms behind a number of pounds; a vehicle nobody drives."""
    found = asked({"tow.pickup": {"tongue": "900 lb", "rating": "9000 lb", **written}})
    assert found == [(f"tow[pickup].{key}", True) for key in about]


@pytest.mark.parametrize(
    ("place", "nose", "rating", "hitch", "about"),
    [
        ("UK", "750 kg", "750 kg", "75 kg", ["trailer.coupler.tongue_max"]),
        ("UK", "750 kg", "2700 kg", "75 kg", ["trailer.coupler.tongue_max"]),
        ("UK", "75 kg", "750 kg", "75 kg", []),
        ("UK", "100 kg", "750 kg", "75 kg", []),
        ("UK", "75 kg", "750 kg", "750 kg", ["tow[pickup].tongue"]),
        ("AU", "200 kg", "2000 kg", "350 kg", []),
        ("US-NE", "7000 lb", "7000 lb", "900 lb", ["trailer.coupler.tongue_max"]),
        ("US-NE", "1050 lb", "7000 lb", "900 lb", []),
        ("US-NE", "3000 lb", "", "900 lb", ["trailer.coupler.tongue_max"]),
    ],
)
def test_a_tongue_load_that_is_the_rating_is_asked_about(
    place: str, nose: str, rating: str, hitch: str, about: list[str]
) -> None:
    """The S value typed with a nought too many, on the coupler or for the hitch, which a fifth of it shows."""
    car = {"rating": "2500 kg", "kerb": "1900 kg", "gcwr": "10600 lb", "people_and_gear": "170 kg", "tongue": hitch}
    trailer = {"trailer.gvwr": "750 kg", "trailer.axles.gawr": ["750 kg"], "trailer.tyres.load": "387 kg"}
    edits = {**trailer, "trailer.tyres.count": "2"} if place == "UK" else {}
    found = asked({**edits, "countries": [place], "trailer.coupler.tongue_max": nose, "trailer.coupler.rating": rating,
                   "gross": "700 kg", "tongue": "50 kg", "tow.pickup": car})  # fmt: skip
    assert found == [(path, True) for path in about]


def test_round_kilograms_are_asked_about_in_canada_where_the_pounds_would_fail() -> None:
    """A plate there gives both units."""
    edits = {"countries": ["CA-BC"], "trailer.coupler.rating": "3500 kg", "trailer.gvwr": "3175 kg"}
    assert asked({**edits, "gross": "3400 lb", "tongue": "400 lb"}) == []
    assert asked({**edits, "gross": "3600 lb", "tongue": "400 lb"}) == [("trailer.coupler.rating", True)]

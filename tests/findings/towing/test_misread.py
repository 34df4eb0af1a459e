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

"""Each rule looks at the end of a number that can harm: the fullest fill, the softest tyre, the lesser rating."""

from __future__ import annotations

from typing import Any

import pytest

from tests.findings.towing.held import BASE, edited, result_of, said_of

MISREAD = {"towing/rating-implausible", "towing/papers-implausible"}
NO_BRAKES: dict[str, Any] = {"trailer.brakes": {"kind": "none"}}


def asked(edits: dict[str, Any]) -> list[str]:
    return [one.where for one in said_of(edits) if one.code in MISREAD]


@pytest.mark.parametrize(
    ("path", "edits", "holds", "fails"),
    [
        ("trailer.coupler.rating", {"trailer.coupler.rating": "3500 kg", "trailer.gvwr": "3500 lb", "tongue": "400 lb"},
         {"gross": "3400 lb filled 3300 lb to 3499 lb"}, {"gross": "3400 lb filled 3300 lb to 3501 lb"}),
        ("trailer.chains.rating", {"trailer.chains.rating": "3500 kg", "countries": ["US-NC"], "tongue": "400 lb"},
         {"gross": "3400 lb"}, {"gross": "3600 lb"}),
        ("trailer.coupler.tongue_max", {"trailer.coupler.tongue_max": "500 kg"},
         {"tongue": "480 lb filled 470 lb to 499 lb"}, {"tongue": "480 lb filled 470 lb to 510 lb"}),
        ("tow[pickup].unbraked", {"tow.pickup.unbraked": "3500 kg"}, {}, NO_BRAKES),
        ("tow[pickup].unbraked", {"tow.pickup.unbraked": "4500 kg", **NO_BRAKES}, {}, {"gross": "4600 lb"}),
        ("tow[pickup].payload", {"tow.pickup.payload": "1000 kg", "tow.pickup.people_and_gear": "500 lb"},
         {"tongue": "480 lb filled 470 lb to 499 lb"}, {"tongue": "480 lb filled 470 lb to 501 lb"}),
    ],
)  # fmt: skip
def test_round_kilograms_are_held_against_the_most_they_must_carry(
    path: str, edits: dict[str, Any], holds: dict[str, Any], fails: dict[str, Any]
) -> None:
    """The same figure in pounds is just enough, then just too little; a vehicle's unbraked limit counts unbraked."""
    assert path not in asked({**edits, **holds})
    assert path in asked({**edits, **fails})


def test_two_tyres_stand_on_an_axle_where_nobody_counted_them() -> None:
    assert asked({"trailer.tyres.count": "", "trailer.tyres.load": "1740 lb"}) == []
    assert asked({"trailer.tyres.count": "", "trailer.tyres.load": "870 lb"}) == ["trailer.tyres.load"]


@pytest.mark.parametrize(
    ("pressure", "found"),
    [("48 +-2 psi", []), ("48 +-4 psi", ["limit"]), ("50..52 psi", []), ("50..54 psi", ["limit"])],
)
def test_the_softest_and_the_hardest_a_tyre_may_be_counts(pressure: str, found: list[str]) -> None:
    """Of 50 psi 45 are enough, and 52.5 not too many."""
    said = said_of({"trailer.tyres.pressure": pressure})
    assert [one.kind for one in said if one.code == "towing/tyre-pressure"] == found


def test_a_trailer_tyre_carries_no_load_at_the_pressure_of_a_car() -> None:
    def kinds(edits: dict[str, Any]) -> list[tuple[str, str, bool]]:
        found = [one for one in said_of(edits) if one.code == "towing/tyre-pressure"]
        return [(one.kind, one.where, one.could_stop) for one in found]

    soft = {"trailer.tyres.at": "26 psi", "trailer.tyres.pressure": "26 psi"}
    assert kinds(soft) == [("unknown", "trailer.tyres.at", True)]
    assert kinds({**soft, "trailer.tyres.size": "155/70R13 75N"}) == []
    assert kinds({"trailer.tyres.at": "35 psi", "trailer.tyres.pressure": "35 psi"}) == []


@pytest.mark.parametrize(
    ("payload", "gvwr", "found"),
    [("1600 lb", "6191 lb", []), ("1600 lb", "6189 lb", ["stop"]), ("1039 lb", "7000 lb", ["stop"]),
     ("1041 lb", "7000 lb", [])],
)  # fmt: skip
def test_the_lesser_of_a_payload_and_what_the_masses_leave_counts(payload: str, gvwr: str, found: list[str]) -> None:
    """By hand: 480 lb on the ball and 560 lb aboard are 1,040 lb; 5,150 lb of its own."""
    said = said_of({"tow.pickup.payload": payload, "tow.pickup.gvwr": gvwr})
    assert [one.kind for one in said if one.code == "towing/payload"] == found


def test_a_stop_is_reckoned_with_the_fullest_trailer_though_something_has_no_weight() -> None:
    open_ended, full = (
        result_of(edited(BASE, {"gross": gross})).behind[0].slowing
        for gross in ("at least 4000 lb filled 3900 lb to 6000 lb", "6000 lb")
    )
    assert open_ended is not None and full is not None
    assert open_ended.low == pytest.approx(full.low) and open_ended.best > full.best

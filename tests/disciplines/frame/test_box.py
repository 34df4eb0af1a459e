"""The trailer as a body on wheels, and the units in its openings."""

from __future__ import annotations

from math import inf
from typing import Any

import pytest

from boxwright.disciplines.frame.box import box_of, read_tyre, running_gear
from boxwright.disciplines.frame.parts import Opening, StandingOpening
from boxwright.disciplines.frame.solve import offers
from boxwright.model.place import Place
from boxwright.model.trailer import Trailer
from boxwright.units import Band, HeaderUnits, exactly

INCH, POUND = 0.0254, 0.45359237
"""Metres and kilograms, international yard and pound agreement of 1959 (from memory)."""
HEADER = {"header": HeaderUnits(length="in", weight="lb")}
PLACE = Place(exactly(2.0), exactly(-1.0), exactly(1.2), (0.4, 0.0, 0.6))
WHOLE, PERHAPS = exactly(1.0), Band(0.5, 0.0, 1.0, spread="perhaps")


def trailer(**keys: Any) -> Trailer:
    return Trailer.model_validate(keys, context=HEADER)


WHIMBREL: dict[str, Any] = {
    "body": {"length": "168", "width": "80", "height": "78"},
    "outside": {"length": "171", "width": "84", "over_fenders": "101 1/2", "height": "98"},
    "deck_height": "18 1/2",
    "coupler_x": "-52",
    "axles": {"kind": "leaf with equaliser", "x": ["83", "117"], "gawr": ["3500", "3400"]},
    "tyres": {"size": "ST205/75R15"},
}


@pytest.mark.parametrize(
    ("marking", "size"),
    [
        ("ST205/75R15", (0.205, 0.75, 15 * INCH)),
        ("155/70R13", (0.155, 0.70, 13 * INCH)),
        ("195/55 R 10C", (0.195, 0.55, 10 * INCH)),
        ("ST 225/75 D 15", (0.225, 0.75, 15 * INCH)),
    ],
)
def test_a_tyre_is_read_from_its_sidewall(marking: str, size: tuple[float, float, float]) -> None:
    assert read_tyre(marking) == pytest.approx(size)


@pytest.mark.parametrize("marking", ["", "4.80-8", "big ones", "185R14C", "20/7"])
def test_another_kind_of_marking_is_not_guessed(marking: str) -> None:
    assert read_tyre(marking) is None


@pytest.mark.parametrize(
    ("kind", "axles", "gear"),
    [
        ("leaf with equaliser", 2, "equalised"),
        ("leaf", 2, "equalised"),
        ("equalised", 2, "equalised"),
        ("rubber torsion", 2, "independent"),
        ("torsion", 2, "independent"),
        ("independent", 3, "independent"),
        ("", 2, "independent"),
        ("leaf with equaliser", 1, "single"),
        ("rubber torsion", 1, "single"),
        ("", 0, "single"),
    ],
)
def test_the_running_gear_is_read_from_its_kind(kind: str, axles: int, gear: str) -> None:
    assert running_gear(kind, axles) == gear


def test_the_box_is_the_trailer_as_written() -> None:
    box = box_of(trailer(**WHIMBREL))
    assert box.inside == pytest.approx((168 * INCH, 80 * INCH, 78 * INCH))
    assert box.outside == pytest.approx((171 * INCH, 84 * INCH, 98 * INCH))
    assert (box.front_x, box.rear_x) == pytest.approx((-1.5 * INCH, 169.5 * INCH))
    assert box.coupler_x.best == pytest.approx(-52 * INCH)
    assert [axle.x.best for axle in box.axles] == pytest.approx([83 * INCH, 117 * INCH])
    rated = [axle.rated_mass.best for axle in box.axles if axle.rated_mass is not None]
    assert rated == pytest.approx([3500 * POUND, 3400 * POUND])
    assert box.running_gear == "equalised"
    assert not box.coupler_height.known and not box.axle_rate.known and not box.jack_x.known


def test_one_rating_is_that_of_every_axle() -> None:
    box = box_of(trailer(axles={"x": ["83", "117"], "gawr": ["3500"]}))
    assert [axle.rated_mass for axle in box.axles] == [box.axles[0].rated_mass] * 2
    assert box.axles[0].rated_mass is not None


def test_a_track_nobody_measured_lies_between_the_box_and_the_fenders() -> None:
    track = box_of(trailer(**WHIMBREL)).track
    assert track.low == pytest.approx(84 * INCH + 0.205)
    assert track.high == pytest.approx(101.5 * INCH - 0.205)
    assert (track.best, track.known) == (pytest.approx((track.low + track.high) / 2), True)
    assert track.spread == "interval" and track.assumed


def test_wheels_under_the_box_leave_a_track_inside_it() -> None:
    track = box_of(trailer(outside={"width": "102", "over_fenders": "102"}, tyres={"size": "ST225/75R15"})).track
    assert track.known and track.low < track.high < 102 * INCH
    unsized = box_of(trailer(outside={"width": "102"})).track
    assert unsized.known and unsized.low < track.low and unsized.high > track.high


def test_a_measured_track_is_kept() -> None:
    axles = {**WHIMBREL["axles"], "track": "92"}
    assert box_of(trailer(**{**WHIMBREL, "axles": axles})).track == exactly(pytest.approx(92 * INCH))


def test_the_wheels_middle_is_a_little_under_half_the_tyre() -> None:
    radius = box_of(trailer(**WHIMBREL)).wheel_radius
    free = (15 * 25.4 + 2 * 0.75 * 205) / 2000  # the marking's own arithmetic
    assert radius.high == pytest.approx(free) and 0.9 * free < radius.low < radius.best < free
    assert radius.assumed


def test_what_nobody_wrote_stays_unknown() -> None:
    box = box_of(Trailer())
    bands = (box.track, box.wheel_radius, box.coupler_x, box.deck_height)
    assert all(not band.known and band.low == -inf and band.high == inf for band in bands)
    assert box.inside == (0.0, 0.0, 0.0) and box.axles == ()


def opening(**keys: Any) -> Opening:
    return Opening.model_validate(keys, context=HEADER)


def test_a_unit_weighs_at_its_opening_and_a_hole_weighs_nothing() -> None:
    window = StandingOpening("openings[window]", opening(unit={"weight": "11"}), PLACE, WHOLE)
    hole = StandingOpening("openings[door]", opening(width="31"), PLACE, WHOLE)
    (mass,) = offers((), (window, hole), trailer(**WHIMBREL)).masses
    assert (mass.of, mass.kg.best) == ("openings[window]", pytest.approx(11 * POUND))
    assert (mass.x, mass.y, mass.z, mass.size) == (PLACE.x, PLACE.y, PLACE.z, PLACE.size)


def test_a_unit_nobody_weighed_is_unknown_and_one_that_stands_perhaps_is_nothing_to_all() -> None:
    unweighed = StandingOpening("openings[a]", opening(unit={"depth": "3"}), PLACE, WHOLE)
    perhaps = StandingOpening("openings[b]", opening(unit={"weight": "2"}), PLACE, PERHAPS)
    first, second = offers((), (unweighed, perhaps), Trailer()).masses
    assert not first.kg.known and first.kg.high == inf
    assert (second.kg.low, second.kg.high) == (0.0, pytest.approx(2 * POUND))
    assert second.kg.spread == "perhaps"

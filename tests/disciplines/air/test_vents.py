"""Vents of one slot: which count, and the one opening that passes as much as they do together; areas by hand."""

from __future__ import annotations

from dataclasses import replace
from math import inf, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.air.breathing import breathed, flow_between, mild_night
from boxwright.disciplines.air.parts import Facet, Fan, PlannedVent, Section, VentKind
from boxwright.disciplines.air.solve import lined_share, offers
from boxwright.disciplines.air.vents import airflow_of, vents_of
from boxwright.exchange import Layup, LayupLayer, Opening
from boxwright.model.place import Place
from boxwright.units import Band, exactly

NOWHERE = Place(exactly(0.0), exactly(0.0), exactly(0.0), (0.1, 0.1, 0.1))
CM2 = 1e-4


def hole(name: str, bottom: float, area: float = 0.02, **more: object) -> Opening:
    """Return a hole of a hand's height in the left wall."""
    plain = Opening(
        of=f"openings[{name}]", name=name, wall="left", area=exactly(area), bottom=exactly(bottom),
        top=exactly(bottom + 0.1), outward=(0.0, -1.0, 0.0), transmittance=None, has_unit=True, is_leaf=False,
        is_certain=True, is_open=False,
    )  # fmt: skip
    return replace(plain, **more)  # type: ignore[arg-type]


def vent(name: str, free: float | None = None, kind: VentKind = "vent", fan: Fan | None = None) -> PlannedVent:
    """Return a vent of the plan with so much free area."""
    area = None if free is None else exactly(free)
    return PlannedVent(f"openings[{name}]", name, NOWHERE, Facet(free_area=area, fan=fan), kind)


def room(*vents: PlannedVent) -> Section:
    """Return the plan of a room 4 m by 2 m by 2 m with these vents."""
    return Section(vents=vents, volume=exactly(16.0), height=exactly(2.0))


def standing(*names: str, perhaps: tuple[str, ...] = ()) -> tuple[tuple[str, str], ...]:
    """Return how vents stand."""
    yes = tuple((f"openings[{name}]", "yes") for name in names)
    return (*yes, *((f"openings[{name}]", "perhaps") for name in perhaps))


def test_a_low_and_a_high_vent_pass_as_much_as_one_in_series_over_the_height_between_them() -> None:
    own = room(vent("low", 100 * CM2), vent("high", 100 * CM2))
    airflow = offers(own, standing("low", "high"), (hole("low", 0.1), hole("high", 1.8)), 1.0, 2, "sleep").airflow
    assert airflow.vents.best == pytest.approx(100 * CM2 / sqrt(2)) and airflow.vents.low == airflow.vents.high
    assert airflow.rise.best == pytest.approx(1.7) and airflow.rise.low == airflow.rise.high


def test_an_open_hole_leaks_as_much_as_it_may_be_large_and_one_nobody_measured_as_much_as_an_end() -> None:
    def leak(area: Band) -> Band:
        gaping = (replace(hole("door", 0.0, is_open=True, is_certain=False), area=area),)
        return offers(room(), (), gaping, 1.0, 2, "sleep").airflow.leak

    shut = offers(room(), (), (), 1.0, 2, "sleep").airflow.leak
    assert leak(exactly(0.5)).high == pytest.approx(shut.high + 0.5)
    assert leak(Band(0.5, 0.1, 1.5)).high == pytest.approx(shut.high + 1.5)
    assert leak(Band(0.0, 0.0, inf, known=False)).high == pytest.approx(shut.high + 4.0)
    assert (leak(exactly(0.5)).low, leak(exactly(0.5)).best) == (shut.low, shut.best)


def test_what_is_written_over_the_size_of_its_hole_counts_no_more_than_the_hole() -> None:
    """200 cm2 of hole: 100 to 900 cm2 of free area is 100 to 200, most likely 200."""
    wide = replace(vent("low", 0.0), facet=Facet(free_area=Band(500 * CM2, 100 * CM2, 900 * CM2)))
    airflow = offers(room(wide), standing("low"), (hole("low", 0.1),), 1.0, 2, "sleep").airflow
    whole = offers(room(vent("low", 200 * CM2)), standing("low"), (hole("low", 0.1),), 1.0, 2, "sleep").airflow
    assert airflow.vents.high == airflow.vents.best == whole.vents.best
    assert airflow.vents.low == pytest.approx(whole.vents.best / 2.0)


def test_the_mild_night_is_driest_with_the_most_air_and_dampest_with_the_least() -> None:
    own = room(vent("low"), vent("high"))
    holes = (hole("low", 0.1), hole("high", 1.8))
    airflow = offers(own, standing("low", "high"), holes, 1.0, 2, "sleep").airflow
    mild = mild_night(own, airflow, 2)
    assert mild is not None and mild.flow.low < mild.flow.high
    # Less vapour and more air at one end, more vapour and less air at the other: both widen what it comes to.
    few = mild_night(own, replace(airflow, vents=exactly(airflow.vents.best), leak=exactly(airflow.leak.best)), 2)
    assert few is not None and mild.humidity.low < few.humidity.low and few.humidity.high < mild.humidity.high


def test_vents_at_one_height_pass_both_ways_over_half_their_own() -> None:
    own = room(vent("one", 100 * CM2))
    airflow = offers(own, standing("one"), (hole("one", 0.1),), 1.0, 2, "sleep").airflow
    assert airflow.vents.best == pytest.approx(50 * CM2 / sqrt(2))
    assert airflow.rise.best == pytest.approx(0.05)


def test_a_vent_that_stands_perhaps_passes_at_the_high_end_only_and_its_hole_leaks() -> None:
    own = room(vent("low", 100 * CM2), vent("high", 100 * CM2))
    gaping = (hole("low", 0.1), hole("high", 1.8, is_open=True, is_certain=False))
    offered = offers(own, standing("low", perhaps=("high",)), gaping, 1.0, 2, "sleep")
    sure = offers(room(vent("low", 100 * CM2)), standing("low"), gaping[:1], 1.0, 2, "sleep")
    assert offered.airflow.vents.low == offered.airflow.vents.best == sure.airflow.vents.best
    assert offered.airflow.vents.high == pytest.approx(100 * CM2 / sqrt(2))
    assert offered.airflow.leak.high == pytest.approx(150 * CM2 + 0.02)
    assert offered.airflow.leak.best == pytest.approx(100 * CM2)


def test_what_nobody_wrote_is_a_share_of_the_hole_and_what_is_unknown_is_nothing_to_all_of_it() -> None:
    unsaid = offers(room(vent("one")), standing("one"), (hole("one", 0.1),), 1.0, 2, "sleep").vents[0].free
    assert (unsaid.low, unsaid.best, unsaid.high) == (0.2 * 0.02, 0.4 * 0.02, 0.6 * 0.02) and unsaid.assumed
    doubt = replace(vent("one"), facet=Facet(free_area=Band(0.0, 0.0, inf, known=False)))
    unknown = offers(room(doubt), standing("one"), (hole("one", 0.1),), 1.0, 2, "sleep").vents[0].free
    assert (unknown.low, unknown.best, unknown.high, unknown.known) == (0.0, 0.0, 0.02, False)


def test_a_lid_a_window_and_a_door_are_opened_and_stay_open_for_nobody() -> None:
    own = room(vent("lid", None, "fan", Fan(flow=exactly(0.1), lid="by hand")), vent("sash", None, "window"),
               vent("leaf", None, "door"))  # fmt: skip
    holes = (hole("lid", 1.9), hole("sash", 0.9), hole("leaf", 0.0, 1.0))
    asleep = offers(own, standing("lid", "sash", "leaf"), holes, 1.0, 2, "sleep").airflow
    awake = offers(own, standing("lid", "sash", "leaf"), holes, 1.0, 0, "work").airflow
    assert asleep.vents == exactly(0.0) and asleep.fan == exactly(0.1)
    assert asleep.opened.best == pytest.approx(0.6 * 0.02 + 0.5 * 0.02)
    assert awake.opened.best == pytest.approx(asleep.opened.best + 1.0)
    lidless = replace(own.vents[0], facet=Facet(fan=Fan(lid="none")))
    assert offers(room(lidless), standing("lid"), holes, 1.0, 2, "sleep").vents[0].stays_open


def test_a_fan_nobody_wrote_the_flow_of_is_no_number() -> None:
    own = room(vent("lid", None, "fan", Fan()))
    assert not offers(own, standing("lid"), (hole("lid", 1.9),), 1.0, 2, "sleep").airflow.fan.known


def test_a_bare_shell_leaks_more_than_a_lined_one() -> None:
    half = offers(room(), (), (), 0.5, 0, "leave").airflow.leak
    bare = offers(room(), (), (), 0.0, 0, "leave").airflow.leak
    assert (bare.low, bare.best, bare.high) == pytest.approx((50 * CM2, 150 * CM2, 400 * CM2))
    assert half.best == pytest.approx(125 * CM2)


def test_a_lining_counts_where_it_is_ticked() -> None:
    lining = LayupLayer("walls[left].layers[liner]", "liner", "ply", exactly(0.006), "all", True)
    left = Layup("walls[left]", "left", "", exactly(8.0), (0.0, -1.0, 0.0), exactly(0.0), exactly(0.0), None, None,
                 None, None, "", "", None, "", (lining,))  # fmt: skip
    floor = replace(left, of="walls[floor]", wall="floor", layers=())
    doubtful = replace(left, of="walls[right]", wall="right", layers=(replace(lining, is_certain=False),))
    assert lined_share((left, doubtful, floor)) == 0.5
    assert lined_share(()) == 0.0


def test_carbon_dioxide_of_two_sleepers_by_hand() -> None:
    own = room(vent("low", 116 * CM2), vent("high", 116 * CM2))
    offered = offers(own, standing("low", "high"), (hole("low", 0.1), hole("high", 1.8)), 1.0, 2, "sleep")
    breathing = breathed(own, offered.airflow, 2)
    assert breathing is not None
    # cracks 100 cm2 at 3 K: 0.01 * sqrt(0.0145 * 0.8 * 3); vents 0.65 * 0.0082 * sqrt(2 g 1.7 * 3 / 291.15)
    assert breathing.flow.best == pytest.approx(0.001866 + 0.65 * 0.008202 * 0.58613, rel=2e-3)
    assert breathing.steady.best == pytest.approx(0.00042 + 22.0 / 3.6e6 / breathing.flow.best, rel=1e-9)
    assert breathing.morning.low < breathing.morning.best < breathing.morning.high
    assert breathing.morning.best < breathing.steady.best
    assert breathing.need == pytest.approx(30 * 0.000471947, rel=1e-5)
    assert breathed(own, offered.airflow, 0) is None
    assert breathed(replace(own, volume=Band(0.0, 0.0, inf, known=False)), offered.airflow, 2) is None


@given(first=st.floats(0.0, 400.0), more=st.floats(0.0, 400.0), sleepers=st.integers(1, 4), high=st.booleans())
def test_more_vent_never_makes_the_air_staler_or_the_room_damper(
    first: float, more: float, sleepers: int, high: bool
) -> None:
    holes = (hole("low", 0.1), hole("high", 1.8))

    def worked(low: float, top: float) -> tuple[Band, Band, Band]:
        own = room(vent("low", low * CM2), vent("high", top * CM2))
        airflow = offers(own, standing("low", "high"), holes, 1.0, sleepers, "sleep").airflow
        breathing, mild = breathed(own, airflow, sleepers), mild_night(own, airflow, sleepers)
        assert breathing is not None and mild is not None
        return breathing.morning, mild.humidity, flow_between(airflow, own.height, 283.15, 291.15)

    little = worked(0.0 if high else first, first if high else 0.0)
    much = worked(more if high else first, first if high else more)
    for end in ("low", "best", "high"):
        assert getattr(much[0], end) <= getattr(little[0], end)
        assert getattr(much[1], end) <= getattr(little[1], end)
        assert getattr(much[2], end) >= getattr(little[2], end)


@given(low=st.floats(0.0, 400.0), high=st.floats(0.0, 400.0), sleepers=st.integers(1, 4))
def test_the_ends_of_a_band_stand_in_order(low: float, high: float, sleepers: int) -> None:
    own = room(vent("low", low * CM2), vent("high", high * CM2))
    names = standing("low", perhaps=("high",))
    airflow = offers(own, names, (hole("low", 0.1), hole("high", 1.8)), 0.3, sleepers, "sleep").airflow
    breathing = breathed(own, airflow, sleepers)
    assert breathing is not None
    for band in (airflow.leak, airflow.opened, airflow.fan, breathing.flow, breathing.morning):
        assert band.low <= band.best <= band.high


def test_a_vent_in_doubt_is_shut_for_who_breathes_and_most_likely_open_for_who_wants_it_warm() -> None:
    """By hand: of 200 cm2 of hole a vent passes 0.4; two of 80 cm2 in series pass as much as one of 80 / sqrt 2."""
    holes = (hole("low", 0.1), hole("high", 1.8))
    unknown = Facet(free_area=Band(0.0, 0.0, inf, known=False))
    doubtful = [replace(vent(name), facet=unknown) for name in ("low", "high")]
    airflow = offers(room(*doubtful), standing("low", "high"), holes, 1.0, 2, "sleep").airflow
    assert (airflow.vents.low, airflow.vents.best) == (0.0, 0.0)
    assert airflow.likely == pytest.approx((80 * CM2 / sqrt(2), 1.7))
    over = [vent(name, 900 * CM2) for name in ("low", "high")]
    assert offers(room(*over), standing("low", "high"), holes, 1.0, 2, "sleep").airflow.likely == airflow.likely
    known = room(vent("low", 100 * CM2), vent("high", 100 * CM2))
    before = vents_of(known, standing("low", "high"), holes, {"openings[low]": "ladder"})
    behind = airflow_of(before, holes, 1.0, True)
    assert behind.vents.best < behind.vents.high
    assert behind.likely == pytest.approx((100 * CM2 / sqrt(2), 1.7)), "what is ticked passes air behind a ladder"
    half_done = offers(known, standing("low", perhaps=("high",)), holes, 1.0, 2, "sleep").airflow
    sure = offers(known, standing("low", "high"), holes, 1.0, 2, "sleep").airflow
    assert half_done.likely is None and sure.likely is None, "nothing told but the best of both"
    nowhere = replace(hole("low", 0.1), area=Band(0.0, 0.0, inf, known=False))
    assert offers(room(vent("low")), standing("low"), (nowhere,), 1.0, 2, "sleep").airflow.likely is None

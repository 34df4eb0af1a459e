"""Where the weight goes: statics that must hold for any parts, and what is said where something is missing."""

from __future__ import annotations

from dataclasses import replace
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.result import Output, Result
from boxwright.exchange import Axle, Mass, Measured
from boxwright.units import Band, exactly
from tests.disciplines.weight.rigs import (
    LEVEL,
    PLACES,
    SHELL,
    UNKNOWN_MASS,
    UNKNOWN_PLACE,
    Gear,
    box_of,
    fill,
    gears,
    interval,
    mass,
    parts,
    perhaps,
    sigma,
    solved,
)

CLOSE = 1e-8
RAISES = st.floats(-0.03, 0.03).map(lambda raised: exactly(0.45 + raised))


def best(output: Output) -> float:
    return output.band.best


def outputs(result: Result) -> tuple[Output, ...]:
    own = (result.gross, result.tongue, result.share, result.on_wheels, result.left, result.right)
    return (*own, *result.axles, *result.axles_left, *result.axles_right)


@given(parts(), gears, RAISES)
def test_ball_and_wheels_carry_the_weight_and_the_sides_what_the_wheels_do(
    masses: tuple[Mass, ...], gear: Gear, ball: Band
) -> None:
    found = solved(*masses, box=box_of(gear), ball=ball)
    assert best(found.gross) == pytest.approx(sum(one.kg.best for one in masses), rel=CLOSE)
    assert best(found.tongue) + best(found.on_wheels) == pytest.approx(best(found.gross), rel=CLOSE)
    assert sum(map(best, found.axles)) == pytest.approx(best(found.on_wheels), rel=CLOSE)
    assert best(found.left) + best(found.right) == pytest.approx(best(found.on_wheels), rel=CLOSE)
    for axle, left, right in zip(found.axles, found.axles_left, found.axles_right, strict=True):
        assert best(left) + best(right) == pytest.approx(best(axle), rel=CLOSE)
    assert best(found.share) == pytest.approx(best(found.tongue) / best(found.gross), rel=CLOSE)


@given(parts(), gears)
def test_moments_about_the_ball_balance(masses: tuple[Mass, ...], gear: Gear) -> None:
    """Own check of equilibrium, with the level trailer's levers: nothing of it is taken from the formulas."""
    found = solved(*masses, box=box_of(gear))
    weight = sum(one.kg.best * (one.x.best + 1.3) for one in masses)
    held = sum(best(axle) * (x + 1.3) for axle, x in zip(found.axles, PLACES[gear], strict=True))
    assert held == pytest.approx(weight, rel=CLOSE)
    roll = sum(one.kg.best * one.y.best for one in masses)
    assert (best(found.right) - best(found.left)) * 1.9 / 2.0 == pytest.approx(roll, rel=CLOSE, abs=1e-6)


@given(parts(), gears)
def test_the_mirrored_rig_has_its_sides_swapped(masses: tuple[Mass, ...], gear: Gear) -> None:
    mirrored = tuple(
        replace(one, y=replace(one.y, best=-one.y.best, low=-one.y.high, high=-one.y.low)) for one in masses
    )
    one, other = solved(*masses, box=box_of(gear)), solved(*mirrored, box=box_of(gear))
    assert best(other.left) == pytest.approx(best(one.right), rel=CLOSE)
    assert other.left.band.low == pytest.approx(one.right.band.low, rel=CLOSE)
    assert best(other.centre_y) == pytest.approx(-best(one.centre_y), abs=CLOSE)
    for output, same in zip((other.tongue, *other.axles), (one.tongue, *one.axles), strict=True):
        assert output.band == same.band
    assert other.inertia == pytest.approx(one.inertia, rel=CLOSE)


@given(parts(), st.floats(-1.0, 4.0), gears)
def test_moving_a_part_never_changes_the_total_and_loads_the_ball_when_it_goes_forward(
    masses: tuple[Mass, ...], x: float, gear: Gear
) -> None:
    moved = (*masses[:-1], replace(masses[-1], x=exactly(x)))
    before, after = solved(*masses, box=box_of(gear)), solved(*moved, box=box_of(gear))
    assert after.gross == before.gross
    forward = masses[-1].x.best - x
    change = best(after.tongue) - best(before.tongue)
    assert abs(change) < 1e-6 or (change > 0.0) == (forward > 0.0)


@given(parts())
def test_the_centre_lies_in_the_hull_of_the_parts(masses: tuple[Mass, ...]) -> None:
    found = solved(*masses)
    for centre, places in (
        (found.centre_x, [one.x.best for one in masses]),
        (found.centre_y, [one.y.best for one in masses]),
        (found.centre_z, [one.z.best for one in masses]),
    ):
        assert min(places) - CLOSE <= best(centre) <= max(places) + CLOSE
        assert min(places) - CLOSE <= centre.permitted_low <= centre.permitted_high <= max(places) + CLOSE


@given(parts(), gears)
def test_every_band_holds_its_best_value_and_its_permitted_extremes(masses: tuple[Mass, ...], gear: Gear) -> None:
    for one in outputs(solved(*masses, box=box_of(gear))):
        assert one.band.low <= one.permitted_low <= one.band.best <= one.permitted_high <= one.band.high
        assert one.band.known and one.unknown == ()


@given(parts())
def test_more_doubt_never_narrows_an_answer(masses: tuple[Mass, ...]) -> None:
    doubtful = replace(masses[0], kg=sigma(900.0, 90.0))
    certain, wider = solved(*masses), solved(doubtful, *masses[1:])
    for one, other in zip(outputs(certain), outputs(wider), strict=True):
        assert other.half_width >= one.half_width - CLOSE


@given(parts(), st.permutations(range(9)))
def test_the_order_of_the_parts_does_not_show_in_the_result(masses: tuple[Mass, ...], order: list[int]) -> None:
    mixed = [masses[i] for i in order if i < len(masses)]
    assert solved(*mixed, parked=True, boarding=(exactly(80.0),)) == solved(
        *masses, parked=True, boarding=(exactly(80.0),)
    )


def test_a_higher_ball_takes_weight_off_a_single_axle_trailer_and_loads_a_torsion_tandem() -> None:
    high = exactly(0.50)
    single, raised = solved(SHELL, box=box_of("single")), solved(SHELL, box=box_of("single"), ball=high)
    assert best(raised.tongue) < best(single.tongue)
    level, up = solved(SHELL, box=box_of("independent")), solved(SHELL, box=box_of("independent"), ball=high)
    assert best(up.tongue) > best(level.tongue)
    assert best(level.axles[0]) == pytest.approx(best(level.axles[1]))
    assert best(up.axles[0]) < best(level.axles[0]) < best(up.axles[1])


def test_an_axle_lifted_off_the_ground_carries_nothing_and_the_other_all() -> None:
    found = solved(mass("shell", 300.0, 2.2), box=box_of("independent"), ball=exactly(0.75))
    assert best(found.axles[0]) == 0.0
    assert best(found.axles_left[0]) == best(found.axles_right[0]) == 0.0
    lever = 2.9 + 1.3
    pitch = method.ball_pitch(0.30, lever, 0.11)
    alone = method.pitched_tongue_mass(300.0, 2.9 - 2.2, 0.4 - (0.34 - 0.47), lever, 0.11, pitch)
    assert best(found.tongue) == pytest.approx(alone, rel=CLOSE)
    assert best(found.axles[1]) == pytest.approx(300.0 - alone, rel=CLOSE)


def test_a_part_without_weight_leaves_the_answer_open_and_is_named() -> None:
    found = solved(SHELL, mass("boat", UNKNOWN_MASS, 3.9))
    assert found.tongue.unknown == found.gross.unknown == ("parts[boat]",)
    assert not found.tongue.band.known
    assert found.tongue.band.low == -inf
    assert found.tongue.band.high == pytest.approx(best(solved(SHELL).tongue))
    assert (found.gross.band.low, found.gross.band.high) == (900.0, inf)
    (only,) = found.unweighed
    assert (only.of, only.tongue_low, only.tongue_high) == ("parts[boat]", only.tongue_high, only.tongue_low)
    assert only.tongue_low == pytest.approx((2.5 - 3.9) / 3.8, abs=1e-6)


def test_a_part_without_place_is_somewhere_between_ball_and_rear_wall() -> None:
    found = solved(SHELL, mass("lost", 38.0, UNKNOWN_PLACE))
    assert found.unplaced == ("parts[lost]",)
    assert found.gross.band == exactly(938.0)
    swing = 38.0 * (4.2 + 1.3) / 3.8
    assert found.tongue.band.high - found.tongue.band.low == pytest.approx(swing)
    assert found.tongue.band.high == pytest.approx(best(solved(SHELL).tongue) + 38.0)


def test_open_parts_are_told_apart() -> None:
    found = solved(SHELL, mass("maybe", perhaps(40.0), 0.6), mass("tank", replace(fill(30.0, 60.0), assumed=True), 1.0))
    assert [(one.of, one.kg) for one in found.perhaps] == [("parts[maybe]", 40.0)]
    assert found.perhaps[0].tongue == pytest.approx(40.0 * (2.5 - 0.6) / 3.8, rel=1e-6)
    assert found.unnamed_tanks == ("parts[tank]",)
    assert found.gross.band == Band(950.0, 900.0, 1000.0, spread="interval")
    assert (found.gross.permitted_low, found.gross.permitted_high) == (920.0, 980.0)


def test_without_coupler_or_axles_only_gross_and_centre_are_known() -> None:
    for change, missing in (
        ({"coupler_x": UNKNOWN_PLACE}, "trailer.coupler_x"),
        ({"axles": ()}, "trailer.axles.x"),
        ({"axles": (Axle(UNKNOWN_PLACE, None),)}, "trailer.axles.x"),
    ):
        found = solved(SHELL, box=box_of(**change), parked=True)
        assert best(found.gross) == 900.0
        assert best(found.centre_x) == pytest.approx(2.2)
        for output in (found.tongue, found.share, found.on_wheels, found.left, *found.axles):
            assert output.unknown == (missing,)
            assert (output.band.known, output.band.low, output.band.high) == (False, -inf, inf)
        assert found.parked is None


def test_an_axle_ahead_of_the_coupler_is_no_trailer() -> None:
    found = solved(SHELL, box=box_of("single", axles=(Axle(exactly(-2.0), None),)))
    assert found.tongue.unknown == ("trailer.axles.x",)


def test_measures_nobody_took_are_assumed_wide_and_named() -> None:
    blind = box_of(
        "independent",
        coupler_height=UNKNOWN_PLACE,
        axle_rate=UNKNOWN_PLACE,
        track=UNKNOWN_PLACE,
        wheel_radius=UNKNOWN_PLACE,
    )
    found, known = solved(SHELL, box=blind), solved(SHELL, box=box_of("independent"))
    assert set(found.assumed) == {"trailer.coupler_height", "trailer.axles.rate", "trailer.axles.track"}
    assert found.axles[0].band.assumed and not known.axles[0].band.assumed
    assert known.assumed == ()
    assert found.axles[0].half_width > 50.0 > known.axles[0].half_width
    assert "trailer.coupler_height" in {one.of for one in found.tongue_widened_by}
    assert solved(SHELL, box=box_of("independent"), ball=UNKNOWN_PLACE).assumed == ("tow.ball_height",)


def test_a_doubtful_axle_place_widens_the_tongue() -> None:
    doubtful = box_of("single", axles=(Axle(sigma(2.5, 0.02), None),))
    found = solved(SHELL, box=doubtful)
    ends = [best(solved(SHELL, box=box_of("single", axles=(Axle(exactly(x), None),))).tongue) for x in (2.48, 2.52)]
    assert found.tongue.half_width == pytest.approx((ends[1] - ends[0]) / 2.0, rel=1e-6)
    assert found.tongue_widened_by[0].of == "trailer.axles.x[0]"


def test_inertia_is_about_the_centre_and_by_hand_for_two_parts() -> None:
    """Two equal cuboids 2 m apart lengthwise: yaw is 2 (m 1^2 + m (l^2 + w^2) / 12), own arithmetic."""
    found = solved(mass("a", 60.0, 1.0), mass("b", 60.0, 3.0))
    own = 60.0 * (0.5**2 + 0.4**2) / 12.0
    assert found.inertia[2] == pytest.approx(2.0 * (60.0 + own))
    assert found.inertia[0] == pytest.approx(2.0 * 60.0 * (0.4**2 + 0.3**2) / 12.0)


def test_nothing_at_all_weighs_nothing_and_says_so() -> None:
    found = solved()
    assert found.gross.band == exactly(0.0)
    assert not found.share.band.known and not found.centre_x.band.known
    assert found.inertia == (0.0, 0.0, 0.0)


def test_the_exchange_records_carry_the_same_bands() -> None:
    found = solved(SHELL, mass("battery", interval(20.0, 24.0), 0.3, -0.4))
    assert found.balance.tongue == found.tongue.band
    assert found.balance.centre_z == found.centre_z.band
    assert [(one.axle, one.kg, one.left) for one in found.axle_loads] == [
        (i + 1, axle.band, left.band) for i, (axle, left) in enumerate(zip(found.axles, found.axles_left, strict=True))
    ]
    assert hash(found) == hash(solved(SHELL, mass("battery", interval(20.0, 24.0), 0.3, -0.4)))


def test_level_is_where_the_ball_is_as_high_as_the_coupler() -> None:
    level = solved(SHELL, ball=LEVEL)
    assert best(level.tongue) == pytest.approx(900.0 * (2.5 - 2.2) / 3.8)


def test_the_doubts_of_two_heights_add_straight_and_an_interval_counts_by_the_root_of_three() -> None:
    """The ball 10 mm and the coupler 10 mm in doubt are 20 mm of raise; 1.96 / sqrt 3 of what the ends differ by."""
    ball, coupler = interval(0.44, 0.46), interval(0.44, 0.46)
    found = solved(SHELL, box=box_of("independent", coupler_height=coupler), ball=ball)
    ends = [best(solved(SHELL, box=box_of("independent"), ball=exactly(0.45 + by)).axles[0]) for by in (-0.02, 0.02)]
    half = abs(ends[1] - ends[0]) / 2.0
    assert found.axles[0].half_width == pytest.approx(half * 1.959964 / 3.0**0.5, rel=1e-5)


def test_the_share_has_the_doubt_of_the_trailers_measures_over_its_mass() -> None:
    doubtful = box_of("single", axles=(Axle(sigma(2.5, 0.02), None),))
    found = solved(SHELL, box=doubtful)
    assert found.share.half_width == pytest.approx(found.tongue.half_width / 900.0, rel=1e-6)


def test_a_part_without_place_is_not_outside_the_walls() -> None:
    lost = replace(mass("lost", 38.0, 2.2), y=UNKNOWN_PLACE)
    found = solved(SHELL, lost)
    assert found.right.band.high - best(found.right) == pytest.approx(38.0 * 1.05 / 1.9)


def test_pitch_inertia_takes_length_and_height() -> None:
    """One cuboid 0.5 m long, 0.4 m wide, 0.3 m high: own arithmetic."""
    found = solved(mass("a", 60.0, 1.0))
    assert found.inertia[1] == pytest.approx(60.0 * (0.5**2 + 0.3**2) / 12.0)


def test_without_a_track_only_the_sides_are_open() -> None:
    trackless = box_of("single", track=UNKNOWN_PLACE, outside=(0.0, 0.0, 0.0))
    result = solved(mass("crate", 500.0, x=1.0), box=trackless)
    assert result.tongue.band.known and result.axles[0].band.known
    assert result.left.unknown == ("trailer.axles.track",) and not result.left.band.known


def test_a_reading_is_excused_only_by_the_open_part_of_the_plan_and_not_by_its_own_doubt() -> None:
    """A shell of 900 +- 30 kg against 850 kg is 50 kg short, at either end of the plan: own arithmetic."""
    doubtful = replace(SHELL, kg=sigma(900.0, 30.0))
    gaps = []
    for kg in (850.0, 890.0, 910.0, 950.0):
        reading = Measured("measured[t]", "total", exactly(kg), None, "shell", "road", "public scale")
        (one,) = solved(doubtful, measured=(reading,)).compared
        gaps.append(one.gap)
    assert gaps == pytest.approx([-50.0, -10.0, 10.0, 50.0])
    open_tank = mass("tank", fill(50.0, 60.0), 0.8)
    below = Measured("measured[t]", "total", exactly(895.0), None, "shell", "road", "public scale")
    (one,) = solved(doubtful, open_tank, measured=(below,)).compared
    assert one.gap == pytest.approx(-5.0)

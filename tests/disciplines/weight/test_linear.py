"""The error budget: against simulation, against enumeration of every corner, and what it must not depend on."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from math import inf, isfinite, sqrt
from random import Random
from statistics import fmean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.weight.linear import (
    Coefficients,
    gradient_of_quotient,
    joined,
    pooled,
    reach_of_quotient,
    reach_of_sum,
    rounded,
    shares,
)
from boxwright.exchange import Mass
from boxwright.units import COVERAGE, Band, exactly
from tests.disciplines.weight.rigs import SHELL, UNKNOWN_MASS, fill, interval, mass, parts, perhaps, sigma

TONGUE = Coefficients(0.65, -0.26, 0.0, -0.01, 12.0)
SHARE = TONGUE._replace(constant=0.0)


def at(masses: tuple[Mass, ...], kilograms: tuple[float, ...], coefficients: Coefficients, is_share: bool) -> float:
    """Return an answer worked out anew, part by part."""
    place = [coefficients.at((one.x.best, one.y.best, one.z.best)) for one in masses]
    total = sum(c * kg for c, kg in zip(place, kilograms, strict=True)) + coefficients.constant
    return total / sum(kilograms) if is_share else total


@given(parts())
def test_extremes_are_those_of_every_corner_of_what_is_open(masses: tuple[Mass, ...]) -> None:
    pool = pooled(masses)
    wide = [(m.kg.low, m.kg.high) if m.kg.spread in {"fill", "perhaps"} else (m.kg.best,) for m in masses]
    fills = [(m.kg.low, m.kg.high) if m.kg.spread == "fill" else (m.kg.best,) for m in masses]
    for is_share, reach in ((False, reach_of_sum(pool, TONGUE)), (True, reach_of_quotient(pool, SHARE))):
        coefficients = SHARE if is_share else TONGUE
        every = [at(masses, corner, coefficients, is_share) for corner in product(*wide)]
        some = [at(masses, corner, coefficients, is_share) for corner in product(*fills)]
        best = at(masses, tuple(m.kg.best for m in masses), coefficients, is_share)
        wanted = (best, min(every), max(every), min(some), max(some))
        assert reach[:5] == pytest.approx(wanted, rel=1e-9, abs=1e-9)


def test_the_variance_is_that_of_a_simulation() -> None:
    """20,000 seeded draws: a standard deviation errs by 1 / sqrt(2 n) = 0.5 %, and four of these are allowed."""
    masses = (
        SHELL,
        mass("battery", sigma(21.0, 3.0), 0.4, -0.5),
        mass("bunk", interval(50.0, 80.0), sigma(2.8, 0.2), 0.6, group="guess"),
        mass("galley", interval(25.0, 45.0), 0.9, -0.7, group="guess"),
        mass("boat", 60.0, interval(3.0, 3.6)),
    )
    random = Random(20261125)
    sums, ratios = [], []
    for _ in range(20_000):
        together = random.gauss(0.0, 1.0)
        drawn = []
        for one in masses:
            error = together if one.group else random.gauss(0.0, 1.0)
            x = one.x.best + one.x.standard_uncertainty * random.gauss(0.0, 1.0)
            kg = one.kg.best + one.kg.standard_uncertainty * error
            drawn.append((kg, x, one.y.best, one.z.best))
        total = sum(kg * TONGUE.at((x, y, z)) for kg, x, y, z in drawn)
        sums.append(total + TONGUE.constant)
        ratios.append(total / sum(kg for kg, *_ in drawn))
    pool = pooled(masses)
    tongue, share = reach_of_sum(pool, TONGUE), reach_of_quotient(pool, SHARE)
    assert stdev(sums) == pytest.approx(sqrt(tongue.variance), rel=0.02)
    assert stdev(ratios) == pytest.approx(sqrt(share.variance), rel=0.02)
    assert fmean(sums) == pytest.approx(tongue.best, abs=4 * sqrt(tongue.variance / len(sums)))
    assert fmean(ratios) == pytest.approx(share.best, abs=4 * sqrt(share.variance / len(sums)))


@given(parts(), st.randoms(use_true_random=False))
def test_the_order_of_the_parts_never_matters(masses: tuple[Mass, ...], random: Random) -> None:
    mixed = list(masses)
    random.shuffle(mixed)
    assert pooled(mixed) == pooled(masses)


@given(parts(), parts())
def test_two_pools_joined_are_one_pool_of_all(some: tuple[Mass, ...], others: tuple[Mass, ...]) -> None:
    renamed = tuple(replace(one, of=f"z-{one.of}", group=f"z-{one.group}" if one.group else "") for one in others)
    together, whole = joined(pooled(some), pooled(renamed)), pooled((*some, *renamed))
    assert together.sums == pytest.approx(whole.sums)
    assert together.covariance == pytest.approx(whole.covariance)
    assert together.open == whole.open


def test_values_of_one_group_add_straight_with_their_signs() -> None:
    ahead, behind = interval(40.0, 60.0), interval(40.0, 60.0)
    coefficients = Coefficients(1.0, -0.5)
    apart = pooled((mass("a", ahead, 0.0), mass("b", behind, 4.0)))
    grouped = pooled((mass("a", ahead, 0.0, group="g"), mass("b", behind, 4.0, group="g")))
    one = 10.0 / sqrt(3.0)
    assert reach_of_sum(apart, coefficients).variance == pytest.approx(2.0 * one**2)
    assert reach_of_sum(grouped, coefficients).variance == pytest.approx(0.0, abs=1e-9)
    assert reach_of_sum(grouped, Coefficients(1.0)).variance == pytest.approx((2.0 * one) ** 2)


def test_an_unknown_weight_opens_the_side_it_can_push_only() -> None:
    ahead, behind = mass("a", UNKNOWN_MASS, 0.5), mass("b", UNKNOWN_MASS, 3.9)
    for unknown, low, high in ((ahead, True, False), (behind, False, True)):
        reach = reach_of_sum(pooled((SHELL, unknown)), TONGUE)
        assert (isfinite(reach.low), isfinite(reach.high)) == (low, high)
        share = reach_of_quotient(pooled((SHELL, unknown)), SHARE)
        limit = SHARE.at((unknown.x.best, 0.0, unknown.z.best))
        assert (share.high if unknown is ahead else share.low) == pytest.approx(limit)
        assert share.best == pytest.approx(SHARE.at((SHELL.x.best, 0.0, SHELL.z.best)))
    nowhere = replace(ahead, x=Band(2.5, -1.0, 4.0, known=False))
    reach = reach_of_sum(pooled((SHELL, nowhere)), TONGUE)
    assert (reach.low, reach.high) == (-inf, inf)


def test_an_unknown_place_is_worth_its_two_ends() -> None:
    lost = replace(mass("lost", 30.0, 0.0), x=Band(1.0, 0.0, 4.0, known=False))
    reach = reach_of_sum(pooled((SHELL, lost)), Coefficients(1.0, -0.25))
    assert (reach.best - reach.low, reach.high - reach.best) == pytest.approx((30 * 0.25 * 3.0, 30 * 0.25))
    assert reach_of_sum(pooled((SHELL, lost)), Coefficients(1.0)).low == 930.0


def test_shares_name_the_widest_first_and_add_up_to_one() -> None:
    pool = pooled(
        (
            SHELL,
            mass("far", sigma(40.0, 8.0), -0.5),
            mass("near", sigma(40.0, 8.0), 2.4),
            mass("tank", fill(20.0, 60.0), 0.1),
            mass("maybe", perhaps(50.0), 0.1),
        )
    )
    found = shares(pool, TONGUE, [("trailer.coupler_x", 0.5)])
    assert [one.of for one in found] == ["parts[far]", "trailer.coupler_x", "parts[near]"]
    assert sum(one.share for one in found) == pytest.approx(1.0)
    assert found[0].half_width == pytest.approx(8.0 * TONGUE.at((-0.5, 0.0, 0.4)), rel=1e-6)
    assert shares(pooled((SHELL, mass("lost", UNKNOWN_MASS, 0.5))), TONGUE)[0].half_width == inf


def test_shares_of_a_quotient_are_those_of_its_gradient() -> None:
    pool = pooled((SHELL, mass("far", sigma(40.0, 8.0), -0.5), mass("near", sigma(40.0, 8.0), 2.4)))
    slope = gradient_of_quotient(pool, SHARE)
    together = sum((one.half_width / COVERAGE) ** 2 for one in shares(pool, slope))
    assert together == pytest.approx(reach_of_quotient(pool, SHARE).variance, rel=1e-6)


def test_parts_of_one_group_share_what_they_widen_together() -> None:
    """Two like parts that err together: variance (2 u)^2, half of it each; own arithmetic."""
    pair = (mass("a", interval(40.0, 60.0), 0.0, group="g"), mass("b", interval(40.0, 60.0), 0.0, group="g"))
    pool = pooled((SHELL, *pair, mass("c", interval(40.0, 60.0), 0.0)))
    found = {one.of: one.share for one in shares(pool, Coefficients(1.0))}
    assert found == pytest.approx({"parts[a]": 0.4, "parts[b]": 0.4, "parts[c]": 0.2})


def test_a_pool_of_fills_alone_has_the_shares_of_its_places_as_ends() -> None:
    reach = reach_of_quotient(pooled((mass("a", fill(5.0, 10.0), 0.0), mass("b", fill(5.0, 10.0), 4.0))), SHARE)
    assert (reach.low, reach.high) == pytest.approx((SHARE.at((4.0, 0.0, 0.4)), SHARE.at((0.0, 0.0, 0.4))))


@pytest.mark.parametrize("value", [0.0, -0.0, 1.0 / 3.0, -123456.789012345, inf])
def test_rounding_is_to_a_billionth_and_keeps_no_minus_zero(value: float) -> None:
    assert rounded(value) == pytest.approx(value, rel=1e-9)
    assert str(rounded(value)) != "-0.0"
    assert rounded(value) == rounded(value * (1.0 + 1e-14))


def test_exact_parts_leave_no_doubt() -> None:
    reach = reach_of_sum(pooled((SHELL, mass("a", exactly(10.0), 1.0))), TONGUE)
    assert reach.variance == 0.0
    assert reach.low == reach.best == reach.high

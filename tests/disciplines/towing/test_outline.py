"""What sticks out and what hangs low: outlines and angles, against plain trigonometry worked beside them."""

from __future__ import annotations

from math import atan, radians

import pytest

from tests.findings.towing.held import BASE, edited, result_of

LADDER = {"front": "127 in", "left": "-56 in", "under": "-6 in", "size": "18 in x 6 in x 88 in"}
PANEL = {"front": "4 in", "left": "-13 in", "under": "82 in", "size": "59 in x 26 in x 2 in"}
BOX_BEHIND = {"front": "170 in", "left": "-10 in", "under": "10 in", "size": "20 in x 20 in x 10 in"}
INCH = 0.0254


def test_width_height_and_length_take_what_reaches_furthest() -> None:
    bare = result_of(edited(BASE, {}))
    assert (bare.width.band.best, bare.height.band.best) == (pytest.approx(101 * INCH), pytest.approx(98 * INCH))
    full = result_of(edited(BASE, {"parts": {"ladder": LADDER, "panel": PANEL, "box": BOX_BEHIND}}))
    # the ladder's outer edge stands 56 in left of the centre, the fender 50.5 in: 5.5 in more
    assert (full.width.band.best, full.width.of) == (pytest.approx(106.5 * INCH), "parts[ladder]")
    # 18.5 in to the deck, 84 in to the panel's top
    assert (full.height.band.best, full.height.of) == (pytest.approx(102.5 * INCH), "parts[panel]")
    # the tail stands 226 in behind the coupler at -52 in, so at 174 in; the box ends at 190 in
    assert (full.length.band.best, full.length.of) == (pytest.approx(242 * INCH), "parts[box]")


def test_a_mirrored_part_gives_the_same_width() -> None:
    right = {**LADDER, "left": "50 in"}
    one, other = (result_of(edited(BASE, {"parts": {"ladder": part}})) for part in (LADDER, right))
    assert one.width == other.width


def test_angles_behind_and_ahead_of_the_axles() -> None:
    step = {"front": "150 in", "left": "0 in", "under": "-10.5 in", "size": "10 in x 20 in x 4 in"}
    tank = {"front": "30 in", "left": "0 in", "under": "-8.5 in", "size": "10 in x 20 in x 4 in"}
    (behind,) = result_of(edited(BASE, {"parts": {"step": step, "tank": tank}})).behind
    low = {point.of: point for point in behind.lowest}
    # 8 in high, its rear edge 43 in behind the rear axle at 117 in
    departure = low["parts[step]"].departure
    assert departure is not None and departure.best == pytest.approx(atan(8 / 43))
    # 10 in high, 53 in ahead of the front axle at 83 in, 132 in behind the tow wheel at -52 - 50 in
    breakover = low["parts[tank]"].breakover
    assert breakover is not None and breakover.best == pytest.approx(atan(10 / 53) + atan(10 / 132))
    assert low["parts[step]"].breakover is None and low["parts[tank]"].departure is None
    assert not low["parts[tank]"].is_least


def test_without_the_overhang_the_crest_is_a_least() -> None:
    tank = {"front": "30 in", "left": "0 in", "under": "-8.5 in", "size": "10 in x 20 in x 4 in"}
    (behind,) = result_of(edited(BASE, {"parts": {"tank": tank}, "tow.pickup.overhang": ""})).behind
    (point,) = behind.lowest
    assert point.is_least and point.breakover is not None and point.breakover.best == pytest.approx(atan(10 / 53))


def test_a_high_ball_lowers_what_hangs_behind() -> None:
    """Ball 3 in high over 152 in to the axles' middle at 100 in: 60 in behind it loses 1.184 in."""
    step = {"front": "150 in", "left": "0 in", "under": "-10.5 in", "size": "10 in x 20 in x 4 in"}
    (behind,) = result_of(edited(BASE, {"parts": {"step": step}, "tow.pickup.ball_height": "22 in"})).behind
    pitch = 3 / (152**2 - 3**2) ** 0.5
    assert behind.pitch is not None and behind.pitch.best == pytest.approx(pitch)
    assert behind.lowest[0].height.best == pytest.approx((8 - 60 * pitch) * INCH)
    assert radians(0.0) < pitch

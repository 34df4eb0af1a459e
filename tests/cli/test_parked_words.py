"""How the nose lifts is told without a number that could be taken for a safe weight."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.test_fresh_air import WHIMBREL, said


@pytest.mark.parametrize(
    ("use", "told"),
    [("sleep", "at the latest, and perhaps with far less"), ("leave", "stays down with nobody in it")],
)
def test_an_upper_end_is_no_safe_weight(capsys: pytest.CaptureFixture[str], use: str, told: str) -> None:
    _, shown = said(capsys, "weight", WHIMBREL)
    line = " ".join(shown.split()).partition(f"night ({use}), uncoupled, legs up:")[2].partition("night (")[0]
    assert told in line
    assert "at most" not in line


BARE = """\
boxwright: 1
rig: Wren
units: {length: mm, weight: kg}
countries: [UK]
today: {stage: shell}
people: {ann: {weight: unknown}}
trailer:
  body: {length: 3600, width: 1700, height: 1850}
  coupler_x: -1300
  axles: {x: [2100], gawr: [1300], track: 1900}
  empty: {weight: unknown, tongue: unknown}
stages: {shell: {}}
loads: {night: {parked: yes, for: [tow, sleep]}}
"""


def weighed(capsys: pytest.CaptureFixture[str], tmp_path: Path, *changes: tuple[str, str]) -> str:
    text = BARE
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path = tmp_path / "wren.yaml"
    path.write_text(text)
    return said(capsys, "weight", str(path))[1].partition("EACH WHEEL")[2]


KNOWN = ("empty: {weight: unknown, tongue: unknown}", "empty: {weight: 450, tongue: 45}")
OUTSIDE = ("  coupler_x", "  outside: {length: 3700, width: 1800, height: 2400}\n  coupler_x")


def test_a_trailer_without_a_weight_is_not_said_to_lift_or_to_have_no_inertia(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    shown = weighed(capsys, tmp_path)
    assert "nobody can say whether the nose stays down" in shown and "LIFTS" not in shown
    assert "while no number is known of people and the empty trailer" in shown
    assert "roll, pitch and yaw: unknown while the empty trailer has no weight" in shown


def test_a_trailer_without_an_outside_has_no_inertia_told(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    shown = weighed(capsys, tmp_path, KNOWN)
    assert "unknown while the outside of the trailer has no length, width or height" in shown
    assert "by what is known the nose stays down" in shown


def test_inertia_is_told_in_the_units_of_the_file(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A cuboid of 450 kg, 3.7 m by 1.8 m: 450 / 12 (3.7^2 + 1.8^2) = 634.9 kg m2 in yaw, 15,066 lb ft2."""
    assert "yaw 635 kg m2" in weighed(capsys, tmp_path, KNOWN, OUTSIDE)
    assert "yaw 15,066 lb ft2" in said(capsys, "weight", str(tmp_path / "wren.yaml"), "--units", "us")[1]

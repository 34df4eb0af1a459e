"""A way out over or under something: its headroom counts as its width does."""

from __future__ import annotations

from tests.disciplines.safety.test_ways import kinds, stops


def test_a_bed_across_its_own_window_leaves_one_way_out() -> None:
    """The window lies from 700 to 1300 mm; a bed of 100 mm at 1150 mm leaves 50 mm of it over the sleeper."""
    edit = ("side: centre, z: 300, size: 1900 x 800 x 300", "side: left, z: 1150, size: 1900 x 800 x 100")
    assert ("fix", "way-blocked", "openings[window]") in kinds(edit)
    assert "two-ways-out" in {code for code, _ in stops(edit)}
    low = ("side: centre, z: 300, size: 1900 x 800 x 300", "side: left, z: 300, size: 1900 x 800 x 300")
    assert not stops(low), "lower down the same bed leaves the window free"

"""How a heater is fitted: a hole below its own foot is its plate's, beside the exhaust or above it none is clear."""

from __future__ import annotations

import pytest

from boxwright.finding import Finding
from tests.disciplines.heat.test_findings import edited, worked

SIDE = "out: right, below: floor, length: 500, x: 1800"
BELOW = "out: below floor, length: 500, x: 1800"


def with_hole(x: int, side: str, exhaust: str = SIDE, done: str = "yes") -> tuple[Finding, ...]:
    """Return what is said of fumes below the floor with a hole of 60 mm in it."""
    place = f"wall: floor, x: {x}, width: 60, across: 60, side: {side}"
    hole = f"  drain: {{{place}, stage: shell, cut: yes, done: {done}}}"
    found = worked(edited((SIDE, exhaust), ("  vent-low:", f"{hole}\n  vent-low:")), "sleep")
    return tuple(one for one in found if one.code == "heat/exhaust-under-floor")


def test_the_hole_below_the_heater_is_that_of_its_own_plate() -> None:
    # The heater stands from 2600 mm to 2950 mm along, 100 mm to 250 mm from the left studs.
    assert [one.kind for one in with_hole(2700, "left+150", BELOW)] == ["fix"]
    assert [one.kind for one in with_hole(2450, "left+150", BELOW)] == ["stop"]
    assert [one.kind for one in with_hole(2700, "left+400", BELOW)] == ["stop"]


def test_without_a_hole_fumes_below_the_floor_are_to_be_led_out() -> None:
    (found,) = [one for one in worked(edited((SIDE, BELOW)), "sleep") if one.code == "heat/exhaust-under-floor"]
    assert (found.kind, found.protects) == ("fix", False)


@pytest.mark.parametrize(("x", "side", "told"), [(1800, "right-100", True), (1800, "right-800", False)])
def test_a_hole_in_the_floor_beside_the_end_of_the_exhaust_is_asked_about(x: int, side: str, told: bool) -> None:
    """It ends at the right skin, 1050 mm from the middle, up to 500 mm below the deck: 90 mm and 790 mm by hand."""
    found = with_hole(x, side)
    assert [(one.kind, one.protects) for one in found] == ([("unknown", True)] if told else [])


def test_a_hole_that_is_half_filled_is_never_clear() -> None:
    (found,) = with_hole(3400, "centre", BELOW, "part")
    assert found.kind in ("stop", "unknown") and found.protects


def frozen(cold: str, z: str, fill: str = "full", *, x: str = "1000", other: str = "") -> list[tuple[str, str]]:
    """Return what is said of water where the trailer is left, with a tank as high as that and filled so."""
    return [(one.kind, one.where) for one in frosts(cold, z, fill, x=x, other=other)]


def frosts(cold: str, z: str, fill: str = "full", *, x: str = "1000", other: str = "") -> list[Finding]:
    """Return those findings themselves; ``other`` is what is written of a second place."""
    tank = f"x: {x}, side: centre, z: {z}, size: 500 x 500 x 150, weight: 4, stage: shell, done: yes"
    hill = f"  hill: {{{other}}}\n" if other else ""
    text = edited(
        ("  meadow: {coldest_design: -5 C", f"{hill}  meadow: {{coldest_design: {cold}"),
        ("  # one more", f"  jug: {{{tank}, tank: {{of: water, volume: 20}}}}"),
        ("night: {cargo: all, tanks: {fuel: full}", f"night: {{cargo: all, tanks: {{fuel: full, jug: {fill}}}"),
    )
    return [one for one in worked(text, "leave") if one.code == "heat/frost"]


def test_water_freezes_below_the_floor_and_inside_and_an_empty_tank_never() -> None:
    assert frozen("-0.5 C", "-200") == [("limit", "parts[jug]")]
    # Under a clear sky the room comes down to about what it is outside.
    assert frozen("3 C", "100") == frozen("3 C", "-200") == []
    assert frozen("-10 C", "100") == [("limit", "parts[jug]")]
    assert frozen("-10 C", "-200", "empty") == []
    assert frozen("1 +-2 C", "-200") == [("unknown", "parts[jug]")]


def test_a_tank_on_the_tongue_is_as_cold_as_outside_and_one_of_which_nobody_knows_where_it_is_may_be() -> None:
    assert frozen("-0.5 C", "0", x="-800") == [("limit", "parts[jug]")]
    assert frozen("1.5..6 C", "100") == frozen("1.5..6 C", "-200") == []
    lost = frozen("-2..8 C", "unknown")
    assert lost == [("unknown", "parts[jug]")]


def test_every_place_is_asked_how_cold_it_gets_and_the_one_where_it_surely_freezes_is_told() -> None:
    """One place that is written says nothing of another, and a doubtful one takes nothing off a certain one."""
    unsaid = ("unknown", "places[hill]")
    assert frozen("5 C", "100", other="height: 800 m") == [unsaid]
    assert frozen("-10 C", "100", other="height: 800 m") == [unsaid, ("limit", "parts[jug]")]
    (sure,) = frosts("-10 C", "100", other="coldest_design: -20..30 C")
    assert (sure.kind, sure.where) == ("limit", "parts[jug]") and "at meadow" in sure.says
    assert frozen("12 C", "100", other="coldest_design: -20..30 C") == [("unknown", "parts[jug]")]
    assert frozen("12 C", "100", "empty", other="height: 800 m") == []
    assert frozen("12 C", "100", other="coldest_design: unknown") == [unsaid]


def test_without_the_measures_of_the_body_frost_is_asked_by_them_and_not_by_the_place() -> None:
    tank = "x: 1000, side: centre, z: 100, size: 500 x 500 x 150, weight: 4, stage: shell, done: yes"
    text = edited(
        ("body: {length: 4200, width: 2000, height: 2000}", "body: {length: 4200, width: 2000}"),
        ("  # one more", f"  jug: {{{tank}, tank: {{of: water, volume: 20}}}}"),
        ("night: {cargo: all, tanks: {fuel: full}", "night: {cargo: all, tanks: {fuel: full, jug: full}"),
    )
    (found,) = [one for one in worked(text, "leave") if one.code == "heat/frost"]
    assert found.kind == "unknown" and "of the body are not all written" in found.says

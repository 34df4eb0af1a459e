"""The way of a fuel as owners write it: what a piece is, where it lies, how high, and whether it runs when opened."""

from __future__ import annotations

from math import pi

import pytest

from boxwright.disciplines.heat.burner_sheet import burner_grids
from boxwright.disciplines.heat.findings import findings
from boxwright.disciplines.heat.fuel_way import way_of
from boxwright.finding import Finding
from boxwright.units import HeaderUnits
from tests.disciplines.heat.test_burning import warmed

PATH = "[fuel, valve at tank, filter below floor, pump at 30 deg below floor z -100, line 2 mm bore, heater]"
MM = HeaderUnits(length="mm")


def way(path: str, units: HeaderUnits = MM) -> dict[str, tuple[object, ...]]:
    """Return what is read of each piece of a way."""
    (heater,) = warmed((PATH, path)).heaters
    return {
        one.written: (one.kind, one.where, one.level.best if one.level.known else None, one.is_shut_off, one.runs)
        for one in way_of(heater, units)
    }


def test_the_pieces_in_their_order_without_tank_and_burner() -> None:
    assert way(PATH) == {
        "valve at tank": ("valve", "outside", 0.0, True, True),
        "filter below floor": ("filter", "outside", None, True, None),
        "pump at 30 deg below floor z -100": ("pump", "outside", pytest.approx(-0.1), True, True),
        "line 2 mm bore": ("line", "unknown", None, True, None),
    }


@pytest.mark.parametrize(
    ("piece", "level", "where"),
    [
        ("filter z 4 in below floor", 0.1016, "outside"),
        ("filter z 4 in the room", 0.004, "in the room"),
        ("filter in the room z 40 cm", 0.4, "in the room"),
        ("filter z -20 outside", -0.02, "outside"),
        ("filter z somewhere inside", None, "in the room"),
        ("Filter Inside", None, "in the room"),
        ("filter", None, "unknown"),
    ],
)
def test_places_and_heights_as_they_are_written(piece: str, level: float | None, where: str) -> None:
    kind, lies, height, shut, _ = way(f"[fuel, {piece}, heater]")[piece]
    assert (kind, lies, shut) == ("filter", where, False)
    assert height == (pytest.approx(level) if level is not None else None)


@pytest.mark.parametrize(
    ("place", "where"),
    [
        ("x: -800, side: centre, z: 0", "outside"),
        ("x: -300, side: centre, z: 0", "unknown"),
        ("x: 500, side: left+100, z: 40", "in the room"),
        ("x: 0, side: left, z: 0", "in the room"),
        ("x: 500, side: left-300, z: 0", "outside"),
        ("x: 4300, side: centre, z: 0", "outside"),
        ("x: 500, side: centre, z: -300", "outside"),
        ("x: 500..5000, side: centre, z: 0", "unknown"),
        ("x: unknown, side: centre, z: 0", "unknown"),
    ],
)
def test_what_is_at_the_tank_lies_on_the_side_of_the_shell_where_the_tank_stands(place: str, where: str) -> None:
    (heater,) = warmed(("x: -800, side: centre, z: 0", place)).heaters
    valve = next(one for one in way_of(heater, MM) if one.kind == "valve")
    assert valve.where == where


def told(code: str, *edits: tuple[str, str]) -> list[Finding]:
    """Return what one rule says of the small rig, edited."""
    return [one for one in findings(warmed(*edits), MM) if one.code == code]


def test_a_pump_pushes_as_high_as_the_burner_may_stand_over_where_it_may_hang() -> None:
    """2 m is what such pumps push: a burner at 100 to 2600 mm over a pump 100 mm below the deck may stand 2.7 m up."""
    stands = "z: 100, size: 350 x 150 x 150"
    assert not told("heat/pump-lift", (stands, stands.replace("100, s", "100..1200, s")))
    (said,) = told("heat/pump-lift", (stands, stands.replace("100, s", "100..2600, s")))
    assert "2700 mm" in said.says


def test_a_bore_in_doubt_is_told_by_the_end_that_is_out_of_bounds() -> None:
    (narrow,) = told("heat/line-bore", ("line 2 mm bore", "line 1..3 mm bore"))
    assert "1 mm" in narrow.says and "holds back" in narrow.says
    assert narrow.margin == pytest.approx(-0.0005), "1 mm of the 1.5 mm such pumps want"
    (wide,) = told("heat/line-bore", ("line 2 mm bore", "line 2..6 mm bore"))
    assert "6 mm" in wide.says and "bubbles" in wide.says and wide.margin == pytest.approx(-0.001)


def test_the_angle_and_the_bore() -> None:
    (heater,) = warmed((PATH, "[fuel, pump at 30 deg, line 1/8 in bore, heater]")).heaters
    pump, line = way_of(heater, MM)
    assert pump.angle == pytest.approx(30.0 * pi / 180.0)
    assert line.bore is not None and line.bore.best == pytest.approx(0.003175)


def test_what_is_higher_than_a_full_tank_does_not_run() -> None:
    """Its foot is on the deck, it is 250 mm high."""
    found = way("[fuel, filter inside z 249, joint inside z 250, heater]")
    assert [one[-1] for one in found.values()] == [True, False]


def test_the_sheet_tells_what_runs_out_where() -> None:
    (heater,) = warmed(
        (PATH, "[fuel, filter inside z 200, valve z 150, joint inside z 10, pump below floor z -9, heater]")
    ).heaters
    (grid,) = [one for one in burner_grids(heater, (), (), MM) if one.title.startswith("The way")]
    assert [(row[0].split()[0], row[3]) for row in grid.rows] == [
        ("filter", "the tank, by its siphon, into the room"),
        ("valve", ""),
        ("joint", "what is in the line, its valve shut, into the room"),
        ("pump", "what is in the line, its valve shut, on the ground"),
    ]


@pytest.mark.parametrize(
    ("level", "runs"),
    [
        ("z 310", False),  # over a full tank, whose top is at 300 at the most
        ("z 290..320", None),
        ("z 305..330", False),
        ("z 190", True),  # under its top at the least
        ("z 150..230", None),
        ("z 180..210", None),
    ],
)
def test_what_is_opened_runs_or_not_by_the_ends_of_tank_and_piece(level: str, runs: bool | None) -> None:
    """The tank is 200 to 300 high and stands on the deck: its top is anywhere between."""
    (heater,) = warmed(
        (PATH, f"[fuel, filter in the room {level}, heater]"),
        ("side: centre, z: 0, size: 400 x 200 x 250", "side: centre, z: -50..50, size: 400 x 200 x 250"),
    ).heaters
    assert heater.tank is not None
    assert (heater.tank.high.low, heater.tank.high.high) == pytest.approx((0.2, 0.3))
    (piece,) = way_of(heater, MM)
    assert piece.runs is runs

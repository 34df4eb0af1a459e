"""The way of a fuel as owners write it: what a piece is, where it lies, how high, and whether it runs when opened."""

from __future__ import annotations

from math import pi

import pytest

from boxwright.disciplines.heat.burner_sheet import burner_grids
from boxwright.disciplines.heat.findings import findings
from boxwright.disciplines.heat.fuel_piece import kind_of, shuts_off, where_of
from boxwright.disciplines.heat.fuel_way import way_of
from boxwright.finding import Finding
from boxwright.units import HeaderUnits
from tests.disciplines.heat.test_burning import warmed
from tests.disciplines.heat.test_findings import edited, worked

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


@pytest.mark.parametrize("span", ["1..3 mm", "1 to 3 mm", "1-3 mm", "1 mm to 3 mm", "1 or 3 mm", "bore 1..3 mm"])
def test_a_bore_in_doubt_is_asked_by_the_end_that_is_out_of_bounds(span: str) -> None:
    line = f"line {span}" if "bore" in span else f"line {span} bore"
    (narrow,) = told("heat/line-bore", ("line 2 mm bore", line))
    assert "may have a bore of 1 mm to 3 mm" in narrow.says and "holds back" in narrow.says
    assert narrow.kind == "unknown"
    assert narrow.margin == pytest.approx(-0.0005), "1 mm of the 1.5 mm such pumps want"


def test_a_bore_is_told_as_too_wide_only_where_all_of_it_is() -> None:
    (wide,) = told("heat/line-bore", ("line 2 mm bore", "line 2..6 mm bore"))
    assert "6 mm" in wide.says and "bubbles" in wide.says and wide.margin == pytest.approx(-0.001)
    (sure,) = told("heat/line-bore", ("line 2 mm bore", "line 6..8 mm bore"))
    assert (wide.kind, sure.kind) == ("unknown", "fix") and "has a bore of 6 mm to 8 mm" in sure.says
    (none,) = told("heat/line-bore", ("line 2 mm bore", "line unknown bore"))
    assert none.says.startswith("nobody wrote the bore")


def test_a_lift_over_a_span_is_asked_where_an_end_of_it_is_too_high_and_told_where_both_are() -> None:
    """The foot of the tank is on the deck; 500 mm is what such pumps draw up (from memory)."""
    hangs = "pump at 30 deg below floor z -100"
    (asked,) = told("heat/pump-lift", (hangs, "pump at 30 deg outside z 400 to 700"))
    assert (asked.kind, asked.margin) == ("unknown", pytest.approx(-0.2)) and "perhaps" in asked.says
    (sure,) = told("heat/pump-lift", (hangs, "pump at 30 deg outside z 600..700"))
    assert sure.kind == "fix" and "600 mm to 700 mm" in sure.says
    (long,) = told("heat/pump-lift", (hangs, "pump at 30 deg below floor z -2000..-100"))
    assert (long.kind, long.margin) == ("unknown", pytest.approx(-0.1)), "up to a burner at 100 mm"
    (deep,) = told(
        "heat/pump-lift",
        (hangs, "pump at 30 deg below floor"),
        ("x: -800, side: centre, z: 0", "x: -800, side: centre, z: -600"),
    )
    assert deep.kind == "unknown", "it may hang as low as the tank"


@pytest.mark.parametrize(
    ("angle", "kind"),
    [
        ("at 20..60 deg", "unknown"),
        ("at 20 to 60 deg", "unknown"),
        ("at 20-60 deg", "unknown"),
        ("at 40..60 deg", "fix"),
        ("at 20..30 deg", ""),
        ("at -30 deg", "fix"),
        ("at 30 deg outlet down", "fix"),
        ("at 30 deg outlet up", ""),
        ("at some deg", "unknown"),
    ],
)
def test_the_angle_of_a_pump_by_both_its_ends(angle: str, kind: str) -> None:
    said = told("heat/pump-angle", ("pump at 30 deg below", f"pump {angle} below"))
    assert [one.kind for one in said] == ([kind] if kind else [])


def test_the_angle_and_the_bore() -> None:
    (heater,) = warmed((PATH, "[fuel, pump at 30 deg, line 2 m long 1/8 in bore, heater]")).heaters
    pump, line = way_of(heater, MM)
    assert pump.angle is not None and pump.angle.best == pytest.approx(30.0 * pi / 180.0)
    assert line.bore is not None and line.bore.best == pytest.approx(0.003175)


@pytest.mark.parametrize(
    ("piece", "kind", "where", "shuts"),
    [
        ("hose to valve", "line", "unknown", False),
        ("line from filter to pump 2 mm bore", "line", "unknown", False),
        ("hose clip inside", "joint", "in the room", False),
        ("fuel line filter inside", "filter", "in the room", False),
        ("pickup through top of tank", "end", "unknown", False),
        ("in-line filter below floor", "filter", "outside", False),
        ("valve at tank", "valve", "unknown", True),
        ("shut-off valve", "valve", "unknown", True),
        ("valve?", "valve", "unknown", False),
        ("valve unknown", "valve", "unknown", False),
        ("check valve inside", "joint", "in the room", False),
        ("drain tap in the room", "joint", "in the room", False),
        ("filter without a valve inside", "filter", "in the room", False),
        ("valve and filter under the bunk", "filter", "in the room", True),
        ("pump under the bed", "pump", "in the room", False),
        ("pump under bench", "pump", "in the room", False),
        ("pump behind the galley", "pump", "in the room", False),
        ("pump beneath the trailer", "pump", "outside", False),
        ("pump under the floor", "pump", "outside", False),
        ("pump inside the tongue box", "pump", "outside", False),
        ("pump not inside", "pump", "unknown", False),
        ("sediment bowl in the cabin", "filter", "in the room", False),
        ("primer bulb inside", "pump", "in the room", False),
        ("quick connect inside", "joint", "in the room", False),
        ("no valve", "other", "unknown", False),
        ("no shut-off valve", "other", "unknown", False),
        ("valve not fitted", "other", "unknown", False),
    ],
)
def test_what_a_piece_is_by_the_words_of_its_owner(piece: str, kind: str, where: str, shuts: bool) -> None:
    assert (kind_of(piece), where_of(piece), shuts_off(piece)) == (kind, where, shuts)


ASKS, LIMITS = ("unknown", True, True), ("unknown", False, True)
INSIDE = "filter inside z 200"
HIGHER = ("x: -800, side: centre, z: 0", "x: -800, side: centre, z: 400")
LOWER = ("x: -800, side: centre, z: 0", "x: -800, side: centre, z: -400")
EMPTY = ("tanks: {fuel: full}, parked", "tanks: {fuel: empty}, parked")


@pytest.mark.parametrize(
    ("path", "held"),
    [
        ("[fuel, filter inside z 200, valve, pump below floor, heater]", "stop"),
        ("[fuel, filter inside z 200, pump below floor, heater]", "stop"),
        ("[fuel, valve at tank, joint below floor, pump below floor, heater]", None),
        ("[fuel, check valve at tank, filter inside z 200, pump below floor, heater]", "stop"),
        ("[fuel, valve at tank, filter inside z 200, pump below floor, heater]", "limit"),
        ("[fuel, valve at tank, filter below floor, pump in the room z 200, heater]", "limit"),
        ("[fuel, filter inside, pump below floor, heater]", ASKS),
        ("[fuel, valve at tank, filter inside, pump below floor, heater]", LIMITS),
        ("[fuel, valve at tank, filter, pump below floor, heater]", LIMITS),
        ("[fuel, filter, pump below floor, heater]", ASKS),
        ("[fuel, valve?, filter, pump below floor, heater]", ASKS),
        ("[fuel, filter z 300, pump below floor, heater]", None),
        ("[fuel, valve at tank, something inside, pump below floor, heater]", LIMITS),
        ("[fuel, day tank under the bunk z 200, pump below floor, heater]", "stop"),
        ("[fuel, valve and filter under the bunk z 200, pump below floor, heater]", "limit"),
        ("[fuel, filter with tap inside z 200, pump below floor, heater]", "stop"),
        ("[fuel, unknown, heater]", ASKS),
        ("[fuel, standpipe in tank, valve at tank, pump below floor, heater]", None),
        ("[fuel, valve at tank, pump below floor, unknown]", ASKS),
        ("[fuel, no valve, filter below floor, pump below floor, heater]", None),
        ("[fuel, heater]", ASKS),
        ("[]", ASKS),
        ("unknown", ASKS),
    ],
)
def test_what_may_let_fuel_into_the_room_holds_back(path: str, held: str | tuple[str, bool, bool] | None) -> None:
    """The tank stands on the deck outside and is 250 mm high."""
    found = told("heat/fuel-drains-in", (PATH, path))
    if held is None:
        assert found == []
        return
    (said,) = found
    got = (said.kind, said.could_stop, said.could_limit) if said.kind == "unknown" else said.kind
    assert got == held
    assert said.uses == (), "it bears on who sleeps in it and on the trailer that is left"


BED = ("x: -800, side: centre, z: 0", "x: 3000, side: left+100, z: 0")


@pytest.mark.parametrize(
    ("edits", "held"),
    [
        ((), None),
        ((BED,), "limit"),
        ((BED, ("tanks: {fuel: full}, parked", "tanks: {fuel: empty}, parked")), None),
        ((BED, ("weight: 2, stage: shell, done: yes, tank", "weight: 2, stage: shell, tank")), LIMITS),
        (((BED[0], "x: unknown, side: centre, z: 0"),), LIMITS),
        (((BED[0], "x: -800, side: centre, z: unknown"),), None),
        (((PATH, PATH.replace("fuel", "fule")),), LIMITS),
        (((PATH, "[tank on the tongue, valve at tank, pump below floor, heater]"),), None),
        (((PATH, "[tank under the bunk, valve at tank, pump below floor, heater]"),), "limit"),
        (((PATH, "[own tank, heater]"),), "limit"),
        (
            (
                (PATH, "[own tank, heater]"),
                ("heater: {x: 2600, side: left+100, z: 100", "heater: {x: -600, side: centre, z: 100"),
            ),
            None,
        ),
        (((PATH, "[fuel, valve at tank, day tank in the room z 500, pump below floor, heater]"),), "limit"),
    ],
)
def test_a_tank_in_the_room_is_a_limit_and_one_anywhere_is_asked(
    edits: tuple[tuple[str, str], ...], held: str | tuple[str, bool, bool] | None
) -> None:
    """What is spilt as it is filled, or leaks of it, runs out there: nothing shuts off a tank itself."""
    found = told("heat/fuel-drains-in", *edits)
    if held is None:
        assert found == []
        return
    (said,) = found
    got = (said.kind, said.could_stop, said.could_limit) if said.kind == "unknown" else said.kind
    assert got == held


@pytest.mark.parametrize(
    "path",
    ["fuel > valve at tank > filter inside z 200 > heater", "fuel -> valve at tank, filter inside z 200, heater"],
)
def test_a_way_in_one_line_is_read_piece_by_piece(path: str) -> None:
    assert list(way(f'"{path}"')) == ["valve at tank", "filter inside z 200"]


def test_what_nobody_knows_the_fuel_of_is_judged_by_its_way_if_it_has_one() -> None:
    unknown = ("heater: {of: diesel", "heater: {of: gas oil")
    (said,) = told("heat/fuel-drains-in", unknown, ("valve at tank, filter below floor", INSIDE))
    assert said.kind == "stop"
    assert told("heat/fuel-drains-in", unknown, (PATH, "[]")) == []


def test_what_burns_spirit_is_asked_for_its_way_too() -> None:
    (said,) = told("heat/fuel-drains-in", ("heater: {of: diesel", "heater: {of: spirit"), (PATH, "[]"))
    assert said.could_stop


def test_a_tank_that_is_empty_or_a_heater_that_perhaps_stands_is_no_stop() -> None:
    (empty,) = told("heat/fuel-drains-in", ("valve at tank, filter below floor", INSIDE), EMPTY)
    assert empty.kind == "fix" and "empty" in empty.says
    half = ("weight: 4, stage: shell, done: yes, heater", "weight: 4, stage: shell, heater")
    (perhaps,) = told("heat/fuel-drains-in", ("valve at tank, filter below floor", INSIDE), half)
    assert (perhaps.kind, perhaps.could_stop) == ("unknown", True)


def test_the_piece_that_holds_most_back_is_told() -> None:
    (said,) = told(
        "heat/fuel-drains-in", ("valve at tank, filter below floor", "joint, filter inside z 200, valve, pump inside")
    )
    assert said.kind == "stop" and "filter inside" in said.says
    (said,) = told(
        "heat/fuel-drains-in", ("valve at tank, filter below floor", "filter inside z 200, valve, joint inside")
    )
    assert said.kind == "stop"
    (said,) = told("heat/fuel-drains-in", ("valve at tank, filter below floor", "joint, valve, filter inside z 200"))
    assert (said.kind, said.could_stop) == ("unknown", True) and "joint" in said.says


@pytest.mark.parametrize(
    ("pieces", "edit", "held"),
    [
        ("filter below floor", None, ASKS),
        ("filter below floor", HIGHER, ASKS),
        ("filter below floor", LOWER, "fix"),
        ("filter below floor", EMPTY, "fix"),
        ("no valve, filter below floor", HIGHER, "stop"),
        ("no valve, filter below floor", LOWER, "fix"),
        ("valve?, filter below floor", HIGHER, ASKS),
        ("valve later, filter below floor", HIGHER, "stop"),
        ("filter below floor, valve", HIGHER, "fix"),
    ],
)
def test_a_way_without_a_valve_is_asked_where_its_tank_may_stand_over_the_burner(
    pieces: str, edit: tuple[str, str] | None, held: str | tuple[str, bool, bool]
) -> None:
    """The burner's foot is 100 mm over the deck, the tank 250 mm high."""
    edits = [] if edit is None else [edit]
    (said,) = told("heat/fuel-valve", ("valve at tank, filter below floor", pieces), *edits)
    got = (said.kind, said.could_stop, said.could_limit) if said.kind == "unknown" else said.kind
    assert got == held
    assert ("behind the filter" in said.says) == pieces.endswith("valve")


def test_a_burner_outside_and_a_heater_of_gas_or_electric_drain_nothing_into_the_room() -> None:
    box = ("heater: {x: 2600, side: left+100, z: 100", "heater: {x: -600, side: centre, z: 100")
    (said,) = told("heat/fuel-valve", ("valve at tank, filter below floor", "filter below floor"), box)
    assert said.kind == "fix"
    for fuel in ("propane", "electric", "wood"):
        kinds = ((PATH, "[bottle on the tongue, hose, heater]"), ("heater: {of: diesel", f"heater: {{of: {fuel}"))
        found = findings(warmed(*kinds), MM)
        assert not [one for one in found if one.code in ("heat/fuel-valve", "heat/fuel-drains-in", "heat/pump-lift")]


def test_a_way_without_a_pump_is_asked_unless_the_tank_stands_over_the_burner() -> None:
    pump = ("pump at 30 deg below floor z -100, ", "")
    (said,) = told("heat/pump-lift", pump)
    assert (said.kind, said.could_stop, said.could_limit) == LIMITS
    assert told("heat/pump-lift", pump, HIGHER) == []


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


PUMP = "pump at 30 deg below floor z -100"


@pytest.mark.parametrize(
    ("old", "new", "held"),
    [
        (PUMP, "pump at 30 deg in the room z 300", "limit"),
        (PUMP, "pump at 30 deg in the room z 200", "limit"),
        (PUMP, "pump at 30 deg below floor z -100, joint in the room z 300", "limit"),
        (PUMP, "pump at 30 deg z 300", LIMITS),
        ("filter below floor", "filter in the room z 300", None),
    ],
)
def test_from_the_pump_on_what_is_higher_than_the_fuel_leaks_into_the_room(
    old: str, new: str, held: str | tuple[str, bool, bool] | None
) -> None:
    """The top of the tank is 250 mm above the deck: what is higher siphons nothing, and a pump pushes fuel there."""
    found = told("heat/fuel-drains-in", (old, new))
    assert [(one.kind, one.could_stop, one.could_limit) if one.kind == "unknown" else one.kind for one in found] == (
        [held] if held is not None else []
    )


@pytest.mark.parametrize(
    ("path", "held"),
    [
        ("[]", ASKS),
        ("[bottle, hose, heater]", ASKS),
        ("[bottle in the room, hose, heater]", "stop"),
        ("[bottle on the tongue, hose, heater]", None),
        ("[fuel, hose, heater]", None),
    ],
)
@pytest.mark.parametrize("use", ["sleep", "leave"])
def test_where_the_bottle_of_a_heater_of_gas_stands_is_asked(
    use: str, path: str, held: str | tuple[str, bool, bool] | None
) -> None:
    """A tank that is a part of the file is judged where fuel is stored."""
    fluid = ("tank: {of: diesel", "tank: {of: propane" if path.startswith("[fuel") else "tank: {of: water")
    gas = (PATH, path), ("heater: {of: diesel", "heater: {of: propane"), fluid
    found = [one for one in worked(edited(*gas), use) if one.code == "heat/fuel-drains-in"]
    assert [(one.kind, one.could_stop, one.could_limit) if one.kind == "unknown" else one.kind for one in found] == (
        [held] if held is not None else []
    )


@pytest.mark.parametrize("path", [PATH, "[]"])
def test_nobody_leaves_a_heater_of_which_nobody_wrote_what_it_burns(path: str) -> None:
    for of in ("heater: {", "heater: {of: gas oil, "):
        nothing = ("heater: {of: diesel, ", of), (PATH, path)
        found = [one for one in worked(edited(*nothing), "leave") if one.code == "heat/fuel-not-known"]
        assert [(one.kind, one.could_stop, one.uses) for one in found] == [("unknown", True, ("leave",))]
    electric = ("heater: {of: diesel, ", "heater: {of: 12 V, "), (PATH, path)
    assert "heat/fuel-not-known" not in {one.code for one in worked(edited(*electric), "leave")}


@pytest.mark.parametrize(("reach", "kind"), [("reach: no", "limit"), ("reach: unknown", "unknown")])
def test_what_no_hand_reaches_of_the_fuel_holds_both_answers_back(reach: str, kind: str) -> None:
    (found,) = told("heat/fuel-reach", ("reach: yes", reach))
    assert (found.kind, found.could_limit, found.uses) == (kind, True, ())

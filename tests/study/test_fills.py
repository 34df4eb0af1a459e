"""What to pump where: the level of each tank by hand, only where the fluid may be let out or carried.

Expected levels are worked out here by moments about the axles (statics, from memory). A gallon is 231 cubic inches,
exact by definition (from memory), and water weighs 998 kg/m3 as in the table of fluids.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.rig.compose import read_rig
from boxwright.study.fills import CARRIED_LESS, EMPTIED, FILLABLE
from boxwright.study.moves import Edit
from boxwright.study.remedy import Fix
from tests.lanes import examples
from tests.study.test_remedy import AXLE, LEVER, WATER, applied, codes, rig_text, sought

GALLON = WATER / 5.0
"""What a gallon of water weighs (lb)."""
OTHERS = 235.0 + (100.0 * 45.0 + 50.0 * 25.0 + 57.5 + 2.0 * 29.5) / LEVER
"""What the ball carries of bed, chest, alarm, empty can and bare trailer (lb)."""


def with_tanks(road: str, *lines: str) -> str:
    """Return the small rig with more parts, and the fills of its road state."""
    parts = "".join(f"  {line}\n" for line in lines)
    fills = ("tanks: {can: empty}, for: [tow]", f"tanks: {road}, for: [tow]")
    return rig_text(("  can: ", f"{parts}  can: "), fills)


def tank(name: str, middle: float, gallons: float, of: str = "water", side: str = "centre", weight: float = 1.0) -> str:
    """Return a tank of a foot cube with its middle at a place."""
    return (f"{name}: {{x: mid {middle:g}, side: {side}, z: 0, size: 12 x 12 x 12, weight: {weight:g}, stage: shell,"
            f" done: yes, tank: {{of: {of}, volume: {gallons:g}}}}}")  # fmt: skip


def tank_fixes(text: str, code: str) -> list[Fix]:
    """Return the changes of fills alone among all that clear a rule."""
    _, found = sought(text, code, everything=True)
    return [fix for fix in found.fixes if all(".tanks." in edit.path for edit in fix.edits)]


REAR = "ballast: {x: 135, side: centre, z: 20, size: 30 x 20 x 20, weight: %s, stage: shell, done: yes}"


def test_a_tank_ahead_of_the_axles_is_filled_to_the_first_level_that_is_enough() -> None:
    text = with_tanks("{can: empty, fore: empty}", REAR % 900, tank("fore", 20.0, 40.0))
    short = 900.0 * 50.0 / LEVER - OTHERS - 1.0 * (AXLE - 20.0) / LEVER
    level = short * LEVER / (AXLE - 20.0) / (40.0 * GALLON)
    assert 0.0 < level < 0.25
    (fix,) = tank_fixes(text, "weight/tongue-lifts")
    assert fix.edits == (Edit("loads[road].tanks.fore", "1/4"),)
    assert fix.says == f"Carry fore at 1/4 instead of empty (fore: 1/4, {10.0 * GALLON:.0f} lb more)"
    assert not fix.leaves


def test_a_tank_is_carried_less_full_where_the_trailer_is_over_its_plate() -> None:
    text = with_tanks("{can: empty, mid: full}", "ballast: {x: mid 85, side: centre, z: 20, size: 30 x 20 x 20,"
                      " weight: 3900, stage: shell, done: yes}", tank("mid", 85.0, 160.0))  # fmt: skip
    over = 1960.0 + 100.0 + 50.0 + 2.0 + 1.0 + 1.0 + 3900.0 + 160.0 * GALLON - 7000.0
    assert 0.5 < 1.0 - over / (160.0 * GALLON) < 0.75
    first = tank_fixes(text, "towing/gross-over-plate")[0]
    assert first.edits == (Edit("loads[road].tanks.mid", "1/2"),)
    assert first.says == f"Carry mid at 1/2 instead of full (mid: 1/2, {80.0 * GALLON:.0f} lb less)"
    assert first.leaves
    assert ("towing/gross-over-plate", "stop") in codes(applied(text, (Edit("loads[road].tanks.mid", "3/4"),)))


def test_a_tank_at_one_side_is_let_out_where_that_side_is_heavy() -> None:
    text = with_tanks("{can: empty, port: full}", tank("port", 90.0, 60.0, side="left"))
    # The tank's middle is 34 in from the centreline, the track 90 in: each pound there is a difference of 68/90.
    carried, wheels = 60.0 * GALLON, 2150.0
    assert carried * 68.0 / 90.0 > 0.05 * (wheels + carried)
    fix = tank_fixes(text, "weight/sides-differ")[0]
    assert fix.edits[0].path == "loads[road].tanks.port"
    assert "weight/sides-differ" not in {code for code, _ in codes(applied(text, fix.edits))}


def test_water_is_pumped_forward_where_no_more_may_be_aboard() -> None:
    lines = (REAR % 900, tank("fore", 10.0, 20.0), tank("aft", 150.0, 20.0))
    text = with_tanks("{can: empty, fore: empty, aft: full}", *lines).replace("gvwr: 7000", "gvwr: 3192")
    # The ball lacks what the ballast takes off it; each gallon pumped 140 in forward gives 140/152 of its weight.
    held = OTHERS + (90.0 - 50.0 - 20.0 * GALLON * 50.0) / LEVER
    needed = (900.0 * 50.0 / LEVER - held) / (140.0 / LEVER * GALLON)
    assert 10.0 < needed < 15.0
    across = [fix for fix in tank_fixes(text, "weight/tongue-lifts") if len(fix.edits) == 2]
    assert across[0].edits == (Edit("loads[road].tanks.aft", "1/4"), Edit("loads[road].tanks.fore", "3/4"))
    assert across[0].says == "Pump 15 gal from aft into fore (aft: 1/4, fore: 3/4)"
    assert not across[0].leaves


def test_water_from_a_big_tank_into_a_small_one_stays_as_much() -> None:
    lines = (REAR % 600, tank("fore", 10.0, 16.0), tank("aft", 150.0, 60.0))
    text = with_tanks("{can: empty, fore: 1/4, aft: full}", *lines)
    two = [fix.edits for fix in tank_fixes(text, "weight/tongue-lifts") if len(fix.edits) == 2]
    # Twelve gallons fill the small one, and 48 of 60 stay in the big one.
    assert (Edit("loads[road].tanks.aft", "80 %"), Edit("loads[road].tanks.fore", "full")) in two


@pytest.mark.parametrize("of", [*sorted(EMPTIED | CARRIED_LESS), "propane", "antifreeze", "something"])
def test_only_water_is_filled_and_only_what_may_be_let_out_is(of: str) -> None:
    fore = with_tanks("{can: empty, fore: empty}", REAR % 900, tank("fore", 20.0, 40.0, of))
    assert not tank_fixes(fore, "weight/tongue-lifts")
    two = with_tanks("{can: empty, fore: empty, aft: full}", REAR % 700, tank("fore", 20.0, 40.0, of),
                     tank("aft", 155.0, 40.0, of))  # fmt: skip
    fixes = tank_fixes(two, "weight/tongue-lifts")
    assert all(len(fix.edits) == 1 and fix.edits[0].path.endswith(".aft") for fix in fixes)
    assert {fix.edits[0].value for fix in fixes} <= (
        {"empty"} if of in EMPTIED else {"empty", "1/4", "1/2", "3/4"} if of in CARRIED_LESS else set()
    )
    assert bool(fixes) == (of in EMPTIED | CARRIED_LESS)


def test_a_tank_whose_level_nobody_wrote_is_written_down() -> None:
    text = with_tanks("{can: empty}", REAR % 700, tank("aft", 155.0, 20.0))
    said = {code: kind for code, kind in codes(text) if code == "weight/tongue-lifts"}
    assert said == {"weight/tongue-lifts": "stop"}, "a level it may have lifts the ball"
    fix = tank_fixes(text, "weight/tongue-lifts")[0]
    assert fix.edits[0].path == "loads[road].tanks.aft"
    assert fix.says.startswith("Carry aft ") and "where its level is not said now" in fix.says


def test_a_load_state_that_names_no_tank_gets_its_first() -> None:
    text = with_tanks("{can: empty}", REAR % 700, tank("aft", 155.0, 20.0))
    text = text.replace("road: {cargo: all, tanks: {can: empty}, for", "road: {cargo: all, for")
    first, *_ = (fix for fix in tank_fixes(text, "weight/tongue-lifts") if fix.edits[0].path.endswith(".aft"))
    assert f"road: {{cargo: all, for: [tow], tanks: {{aft: {first.edits[0].value}}}}}" in applied(text, first.edits)


def test_fuel_nobody_wrote_the_level_of_is_only_emptied() -> None:
    text = with_tanks("{can: empty}", REAR % 700, tank("aft", 155.0, 20.0, "diesel"))
    edits = [fix.edits[0] for fix in tank_fixes(text, "weight/tongue-lifts")]
    assert [edit.value for edit in edits if edit.path == "loads[road].tanks.aft"] == ["empty"]


@examples(10, 150)
@given(
    ballast=st.integers(600, 1100),
    of=st.sampled_from(sorted(FILLABLE | EMPTIED | CARRIED_LESS)),
    fore=st.sampled_from(["empty", "1/4", "full"]),
    aft=st.sampled_from(["empty", "30 %", "full"]),
)
def test_every_change_of_fills_clears_its_finding_and_touches_fills_alone(
    ballast: int, of: str, fore: str, aft: str
) -> None:
    text = with_tanks(f"{{can: empty, fore: {fore}, aft: {aft}}}", REAR % ballast, tank("fore", 15.0, 30.0),
                      tank("aft", 155.0, 30.0, of))  # fmt: skip
    for fix in tank_fixes(text, "weight/tongue-lifts"):
        changed = applied(text, fix.edits)
        assert "weight/tongue-lifts" not in {code for code, _ in codes(changed)}
        before, after = (read_rig(one).rig for one in (text, changed))
        assert before.parts == after.parts
        assert [one for one in before.loads if one.name != "road"] == [one for one in after.loads if one.name != "road"]
        assert all(edit.path.startswith("loads[road].tanks.") for edit in fix.edits)

"""Each end, sign and limit of the night that a slip could turn round without a larger test noticing. By hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.heat.as_built import as_built
from boxwright.disciplines.heat.burner import standing_heater, warmth_of
from boxwright.disciplines.heat.cold import hole_place
from boxwright.disciplines.heat.cold_hours import OFF, hours_of
from boxwright.disciplines.heat.holes import filled
from boxwright.disciplines.heat.parts import Heater, Pipe, PlannedHeater
from boxwright.disciplines.heat.plane import AIR_FILM, house_film, through_of
from boxwright.disciplines.heat.room import room_of
from boxwright.disciplines.heat.shell import shell_of
from boxwright.disciplines.heat.stored import TABLE
from boxwright.exchange import Box, Opening
from boxwright.model.place import Place
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band, exactly
from tests.disciplines.heat.test_findings import JUDGED_ON, RIG, edited, worked
from tests.disciplines.heat.test_night import LARGE, STEADY, STILL
from tests.disciplines.heat.walls import FOAM, LINER, wall

AT = Place(exactly(2.0), exactly(-0.9), exactly(0.2), (0.4, 0.2, 0.2))
HOLE = Opening("openings[w]", "w", "left", exactly(0.5), exactly(0.7), exactly(1.3), (0.0, -1.0, 0.0),
               Band(2.8, 2.0, 4.0), True, False, True, False)  # fmt: skip


def test_the_sky_of_a_night_is_that_of_a_dew_point_below_the_coldest_hour() -> None:
    """-5 C, dew at -7 C: 0.711 - 0.56 * 0.07 + 0.73 * 0.0049 = 0.6754; its fourth root times 268.15 K is 243.1 K."""
    sky = hours_of(STEADY, (), LARGE, "best").sky[0]
    assert sky == pytest.approx(268.15 * 0.675377**0.25, abs=0.01)


def test_where_most_is_lost_least_heat_is_held() -> None:
    floor = wall(FOAM, of="walls[floor]", name="floor")
    shell = shell_of((wall(FOAM, replace(LINER, is_certain=False)), floor), ())
    low, best, high = (room_of(shell, STILL, 16.0, 2.0, 8.0, end, OFF) for end in ("low", "best", "high"))
    held = [sum(one.faces.capacity) for one in (low, best, high)]
    assert held[0] > held[1] > held[2]
    assert low.room.furnishing > best.room.furnishing > high.room.furnishing
    assert low.room.moist > best.room.moist > high.room.moist


def test_a_skin_of_a_colour_nobody_knows_radiates_more_where_more_is_lost() -> None:
    shell = shell_of((replace(wall(FOAM, LINER), skin_of="sheet"),), ())
    found = [room_of(shell, STILL, 16.0, 2.0, 8.0, end, OFF).faces.emittance[0] for end in ("low", "best", "high")]
    assert found[0] < found[1] < found[2]


def test_the_error_of_the_stored_sections_takes_away_at_the_low_end_and_adds_at_the_high_one() -> None:
    layup = wall(FOAM, LINER)
    built = as_built(layup, "best", AIR_FILM, True)
    low, best, high = (through_of(built, end) for end in ("low", "best", "high"))
    assert best.how == "stored" and TABLE.off[0] > 0.0 and TABLE.off[1] > 0.0
    assert high.member - best.member > TABLE.off[0] * best.bay * built.across.spacing
    assert best.member - low.member > 0.9 * TABLE.off[0] * best.bay * built.across.spacing
    assert high.flux / best.flux == pytest.approx(1.0 + TABLE.off[1])
    assert low.flux / best.flux == pytest.approx(1.0 - TABLE.off[1])


def test_the_mass_of_a_face_lies_in_the_middle_of_its_lining() -> None:
    """A quarter inch of ply at 0.12 W/mK: 0.0529 m2K/W, half of it to the room."""
    whole = next(one for one in shell_of((wall(FOAM, LINER),), ()).faces if one.what == "plane")
    assert whole.inward - AIR_FILM == pytest.approx(0.00635 / 0.12 / 2.0, rel=1e-3)


def test_what_lets_more_through_is_colder_at_its_low_end() -> None:
    film, place = house_film("left"), hole_place(HOLE, filled(HOLE))
    assert place.factor.best == pytest.approx(1.0 - film * 2.8)
    assert place.factor.low == pytest.approx(1.0 - film * 4.0)
    assert place.factor.high == pytest.approx(1.0 - film * 2.0)


@pytest.fixture(scope="module")
def body() -> Box:
    """Return the body of the small rig: 4.2 m long inside, 2.1 m wide outside."""
    found = next(one.box for one in study(read_rig(RIG).rig, JUDGED_ON).slots if one.use == "sleep")
    assert found is not None
    return found


def planned(**more: object) -> PlannedHeater:
    """Return a heater near the left wall, with what is given of it."""
    plain: dict[str, object] = {"of": "diesel", "lowest": exactly(900.0), "highest": exactly(2000.0)}
    return PlannedHeater("parts[heater]", "heater", AT, Heater(**(plain | more)))


def test_a_heater_that_stands_perhaps_gives_nothing_at_best_and_all_at_most(body: Box) -> None:
    warmth = warmth_of(standing_heater(planned(), False, (), body))
    for heat, most in ((warmth.lowest, 900.0), (warmth.highest, 2000.0)):
        assert (heat.low, heat.best, heat.high) == (0.0, 0.0, most)


def test_an_exhaust_ends_no_farther_than_its_pipe_is_long_at_most(body: Box) -> None:
    pipe = Pipe(out="left", length=Band(0.5, 0.4, 0.7))
    one = standing_heater(planned(exhaust=pipe), True, (), body)
    assert one.ends_low is not None and one.ends_high is not None
    assert one.ends_low[0] == pytest.approx(2.0 - 0.2 - 0.7) and one.ends_high[0] == pytest.approx(2.0 + 0.2 + 0.7)
    assert one.ends_low[1] == one.ends_high[1] == pytest.approx(-1.05)
    unsaid = standing_heater(planned(exhaust=Pipe(out="left")), True, (), body)
    assert unsaid.ends_low is not None
    assert unsaid.ends_low[0] == pytest.approx(2.0 - 0.2 - 4.3), "as long as the trailer where nobody wrote it"
    at = standing_heater(planned(exhaust=Pipe(out="left", x=exactly(1.0), z=exactly(-0.1))), True, (), body)
    assert at.ends_low == at.ends_high == pytest.approx((1.0, -1.05, -0.1))


UNVENTED = ("exhaust: {out: right, below: floor, length: 500, x: 1800, falls: yes, longest: 2000, clear: 60}",
            "exhaust: none")  # fmt: skip


def codes(*edits: tuple[str, str]) -> set[tuple[str, str]]:
    """Return kind and code of what heat says of a night in the small rig, edited."""
    return {(one.kind, one.code) for one in worked(edited(*edits), "sleep")}


def test_a_flame_in_the_room_is_refused_where_somebody_sleeps_and_where_nobody_says_who() -> None:
    assert ("stop", "heat/unvented") in codes(UNVENTED)
    nobody = ("legs: down, people: [owner]", "legs: down, people: []")
    assert ("stop", "heat/unvented") in codes(UNVENTED, nobody)


def test_the_plate_in_the_floor_that_a_heater_stands_on_is_no_opening_its_fumes_come_in_by() -> None:
    place = "wall: floor, x: 1800, width: 60, across: 60, side: right-100"
    plate = f"  plate: {{{place}, stage: shell, cut: yes, done: yes}}\nstages"
    assert "heat/exhaust-near-opening" not in {code for _, code in codes(("\nstages", "\n" + plate))}


def test_fuel_is_judged_by_the_most_that_may_be_burnt_and_the_least_that_is_there() -> None:
    """The small rig's tank holds 10 l; what the night takes at most, a fifth to spare, decides."""
    (told,) = (one for one in worked(edited(("volume: 10}}", "volume: 0.5}}")), "sleep") if "fuel-for" in one.code)
    assert told.limit is not None
    most = told.limit * 1e3
    for litres, is_told in ((most * 0.99, True), (most * 1.01, False)):
        found = worked(edited(("volume: 10}}", f"volume: {litres:.4f}}}}}")), "sleep")
        assert any("fuel-for" in one.code for one in found) == is_told
    doubtful = worked(edited(("volume: 10}}", f"volume: {most * 0.9:.4f}..{most * 3.0:.4f}}}}}")), "sleep")
    assert any("fuel-for" in one.code for one in doubtful)


@pytest.mark.parametrize("power", ["5000 W", "9000 W", "20 kW"])
def test_a_heater_far_too_strong_leaves_the_air_worked_out(power: str) -> None:
    """What nobody wrote the lowest setting of may make any room an oven: the air is judged all the same."""
    strong = RIG.replace("lowest: 900 W, highest: 4000 W, burn: {lowest: 0.113 l/h, highest: 0.5 l/h}, holds: 17 C,",
                         f"highest: {power},")  # fmt: skip
    assert strong != RIG
    for slot in study(read_rig(strong.replace(" switches: yes,", "")).rig, JUDGED_ON).slots:
        if slot.use == "sleep":
            assert not slot.broken
            assert slot.air is not None


def test_a_flame_in_the_room_is_a_limit_where_somebody_works() -> None:
    at_work = ("for: [sleep, leave]", "for: [sleep, leave, work]")
    found = {(one.kind, one.code, one.uses) for one in worked(edited(UNVENTED, at_work), "work")}
    assert ("limit", "heat/unvented", ("work",)) in found
    assert all(one.code != "heat/unvented" for one in worked(edited(at_work), "work"))

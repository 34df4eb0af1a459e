"""The numbers of the sheet on heat that no formula's worked example holds: tables, walls a little otherwise, bounds.

Each test names its source. What of that sheet is held by nothing of ours, since nothing here uses it: the ranges of
ASHRAE 140 (their weather is not at hand), limits of carbon monoxide for work and the public, alarm times of UL 2034,
what propane is to a nose or a spark, the size of a room's air conditioner by its floor, carbon monoxide in the exhaust
of a heater by UN regulation 122, and a map of ground warmth. That a night without heat tells only how long warmth lasts
(cal.identifiability) is held on our own code by the tests of a logged night.
"""

from __future__ import annotations

from typing import Any

import pytest

from boxwright.disciplines.air.method import dew_point, saturation_pressure, surface_temperature
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.method import drifts_to, held_outside, sol_air
from boxwright.source import load_checks, load_table

AIR, HEAT = "boxwright.disciplines.air", "boxwright.disciplines.heat"
ZERO = 273.15
R_IN_FEET = 0.1761101838
"""m2K/W of one h ft2 F/Btu, by the definitions of the units."""
CFM = 0.3048**3 / 60.0


def table(package: str, name: str) -> dict[str, tuple[float, ...]]:
    return {str(row.cells[0]): tuple(map(_number, row.cells[1:])) for row in load_table(package, name).rows}


def _number(cell: object) -> float:
    assert isinstance(cell, (int, float))
    return float(cell)


def section(of: str) -> dict[str, Any]:
    """Return what the field of a wall of the sheet is given."""
    return dict(next(one for one in load_checks(HEAT) if one.id == of).arguments())


def solved(given: dict[str, Any]) -> tuple[float, float]:
    pytest.importorskip("skfem", reason="scikit-fem is not installed: no field is solved")
    from boxwright.disciplines.heat.method import section_field

    found = section_field(**given)
    return found.transmittance, found.factor


def middle_of_the_stud(given: dict[str, Any]) -> float:
    from boxwright.disciplines.heat.method import section_field

    (kelvin,) = section_field(**given, asked=((0.0, sum(given["depths"])),)).asked
    outside, inside = given["outside"][0], given["inside"][0]
    return float((kelvin - outside) / (inside - outside))


def with_conductivity(given: dict[str, Any], was: float, becomes: float) -> dict[str, Any]:
    rows = tuple(tuple(becomes if one == was else one for one in row) for row in given["conductivities"])
    assert rows != given["conductivities"]
    return given | {"conductivities": rows}


@pytest.mark.parametrize(
    ("was", "becomes", "transmittance", "factor"),
    [
        (0.12, 0.10, 1.0733, 0.4112),
        (0.12, 0.15, 1.1575, 0.3507),
        (0.0288, 0.026, 1.0612, 0.3808),
        (0.0288, 0.036, 1.2328, 0.3853),
        (50.0, 40.0, 1.1043, 0.3901),
        (50.0, 60.0, 1.1157, 0.3766),
    ],
)
def test_a_wall_of_other_stuff(was: float, becomes: float, transmittance: float, factor: float) -> None:
    """wall.sensitivity of the sheet, computed there by other code: ply, foam and steel one at a time, 1 % and 0.01."""
    found = solved(with_conductivity(section("wall.S16"), was, becomes))
    assert found[0] == pytest.approx(transmittance, rel=0.01)
    assert found[1] == pytest.approx(factor, abs=0.01)


def test_half_a_millimetre_of_air_between_stud_and_lining() -> None:
    """wall.sensitivity of the sheet: still air of 0.025 W/mK at the stud, foam up to the lining beside it."""
    given = section("wall.S16")
    rows, depths = given["conductivities"], given["depths"]
    gap = (0.025, 0.025, rows[0 + 1][2])
    found = solved(given | {
        "depths": (*depths[:-1], 0.0005, depths[-1]), "conductivities": (*rows[:-1], gap, rows[-1]),
    })  # fmt: skip
    assert found[0] == pytest.approx(1.0471, rel=0.01)
    assert found[1] == pytest.approx(0.4465, abs=0.01)


@pytest.mark.parametrize(
    ("of", "transmittance", "factor"),
    [
        ("wall.S16", 1.1099, 0.3823),
        ("wall.strip_quarter", 0.8531, 0.681),
        ("wall.break_half_inch", 0.6323, 0.8267),
        ("wall.bare", 1.1786, 0.1305),
    ],
)
def test_finite_volumes_find_what_finite_elements_do(of: str, transmittance: float, factor: float) -> None:
    """wall.fv_crosscheck of the sheet: cells of 8,300 to 12,700 and no elements, 0.2 % between both.

    The factor is that of the middle of the stud. Of a bare one the coldest is at its web, 0.1255, and that is ours.
    """
    given = section(of)
    found = solved(given)
    assert found[0] == pytest.approx(transmittance, rel=0.002)
    middle = middle_of_the_stud(given)
    assert middle == pytest.approx(factor, abs=0.001)
    assert found[1] <= middle + 1e-9 and found[1] == pytest.approx(0.1255 if of == "wall.bare" else middle, abs=0.0005)


@pytest.mark.parametrize(("factor", "outside"), [(0.3821, 7.064), (0.6807, -5.033)])
def test_from_which_cold_on_a_stud_is_wet(factor: float, outside: float) -> None:
    """wall.cond_threshold of the sheet: 20 C and 60 % inside, so dew at 12.007 C; by its own formula, 0.1 K."""
    dew = dew_point(0.6 * saturation_pressure(ZERO + 20.0))
    assert dew - ZERO == pytest.approx(12.007, abs=0.05)
    surface = surface_temperature(factor, ZERO + 20.0, ZERO + outside)
    assert surface == pytest.approx(dew, abs=0.1 * (1.0 - factor))


def test_what_a_low_setting_just_holds() -> None:
    """heater.ua_window of the sheet: 0.8 and 1.0 kW, 20 C inside, -5 and 5 C outside."""
    for watt, outside, loss in ((800.0, -5.0, 32.0), (1000.0, -5.0, 40.0), (800.0, 5.0, 53.33), (1000.0, 5.0, 66.67)):
        assert held_outside(ZERO + 20.0, watt, loss) - ZERO == pytest.approx(outside, abs=0.01)
        assert drifts_to(ZERO + outside, watt, loss) - ZERO == pytest.approx(20.0, abs=0.01)


def test_films_are_near_those_of_the_handbook() -> None:
    """wall.films: ASHRAE Handbook Fundamentals 2021, chapter 26 table 10, in h ft2 F/Btu (seen second-hand).

    Ours are those of ISO 6946 (from memory), which differ by less than a tenth; outside the handbook's two winds.
    """
    films = table(HEAT, "films")
    for name, handbook in (("roof", 0.61), ("wall", 0.68), ("floor", 0.92)):
        assert films[name][0] == pytest.approx(handbook * R_IN_FEET, rel=0.1)
    best, low, high = films["outside"]
    assert low == pytest.approx(0.17 * R_IN_FEET, rel=0.05) and low < 0.25 * R_IN_FEET < high
    assert best == pytest.approx(0.25 * R_IN_FEET, rel=0.1)
    # a wall that hardly radiates: 1.70
    assert films["air alone"][1] < 1.70 * R_IN_FEET < films["air alone"][2]


MISSED = pytest.mark.xfail(strict=True, reason="a named miss: see the docstring")


@pytest.mark.parametrize(
    ("colour", "published"),
    [
        ("white", 0.252), ("black", 0.975), ("galvanised", 0.64), pytest.param("white", 0.248, marks=MISSED),
        pytest.param("mill", 0.15, marks=MISSED), pytest.param("mill", 0.13, marks=MISSED),
    ],
)  # fmt: skip
def test_colours_take_of_the_sun_what_tables_say(colour: str, published: float) -> None:
    """cool.absorptance and its two others: tables of coatings and of sheet (second-hand), 0.05.

    Missed: white epoxy 0.248, ours 0.30 in the middle, for one that is no longer new, so 0.052 off. Bare aluminium
    0.13 and 0.15 are of a new sheet, ours 0.25, for one that has lain outside. Both lie within the ends of ours, 0.24
    to 0.40 and 0.13 to 0.40, which the next test holds; ours take more of the sun, which is the safe side in heat.
    """
    assert table(HEAT, "colours")[colour][0] == pytest.approx(published, abs=0.05)


@pytest.mark.parametrize(
    ("colour", "published"),
    [("white", 0.252), ("white", 0.248), ("black", 0.975), ("galvanised", 0.64), ("mill", 0.15), ("mill", 0.13)],
)
def test_what_tables_say_of_a_colour_lies_between_its_ends(colour: str, published: float) -> None:
    """cool.absorptance and its two others, as above."""
    low, high = table(HEAT, "colours")[colour][1:3]
    assert low <= published <= high


def rise_in_the_sun(colour: str, wind: float) -> float:
    """Return by how much (F) a skin that holds nothing and gives nothing on is warmer than the air in full sun."""
    room, sky = table(HEAT, "room"), 63.0  # W/m2 to a clear sky: common practice, no source
    takes, emits = table(HEAT, "colours")[colour][0], table(HEAT, "colours")[colour][3]
    film = room["film still"][0] + wind * room["film wind"][0]
    return 1.8 * (sol_air(0.0, 1000.0, takes, film, emits * sky / film))


@pytest.mark.xfail(strict=True, reason="a named miss: 49 F for 15 to 30, 179 F for 90; see the docstring")
@pytest.mark.parametrize(("colour", "least", "most"), [("white", 15.0, 30.0), ("black", 90.0, 90.0)])
def test_a_roof_in_the_sun_gets_as_hot_as_was_measured(colour: str, least: float, most: float) -> None:
    """cool.roof_rise: Heat Island Group, rise above the air in full sun without wind, in F; bright to soiled white.

    Missed: published are 15 to 30 F of white and 90 F of black. In still air ours says 49 and 179 F: its film has
    nothing of the draught a hot roof makes of its own, and nothing goes down into the roof. Too hot, the safe side.
    """
    assert least - 0.5 <= rise_in_the_sun(colour, 0.0) <= most + 0.5


def test_a_roof_in_the_sun_without_wind_is_never_cooler_than_was_measured() -> None:
    """cool.roof_rise, what of it ours does meet: no white roof under 30 F over the air, no black one under 90 F."""
    assert rise_in_the_sun("white", 0.0) >= 30.0
    assert rise_in_the_sun("black", 0.0) >= 90.0


def test_air_for_two() -> None:
    """vent.epa: ASHRAE 62.2-2016, 15 cfm a person and not less than 0.35 changes an hour of 17.18 m3: 50.97 m3/h."""
    flow = 2.0 * load_table(AIR, "air").rows[0].cells[1] * 3600.0  # type: ignore[operator]
    assert flow == pytest.approx(50.97033, rel=0.01) and flow > 0.35 * 17.1789
    assert flow == pytest.approx(2.0 * 15.0 * CFM * 3600.0)


def test_what_two_people_breathe_out() -> None:
    """co2.sleep: Indoor Air 31(6), 11.0 l/h asleep, spread 1.4; moist.person: 40 to 60 g/h of vapour, sitting."""
    litres = [one * 3.6e6 for one in load_table(AIR, "sleeper").rows[0].cells[1:]]  # type: ignore[operator]
    assert litres == pytest.approx([11.0 - 1.4, 11.0, 11.0 + 1.4])
    grams = [one * 3.6e6 for one in load_table(AIR, "breath").rows[0].cells[1:]]  # type: ignore[operator]
    assert (grams[0], grams[2]) == pytest.approx((40.0, 60.0)) and 40.0 < 0.44 * 473.2 / 4.0 < 60.0


def test_what_an_open_flame_of_propane_leaves_in_the_room() -> None:
    """heater.unvented: C3H8 + 5 O2 gives 3 CO2 and 4 H2O, 46.35 MJ/kg; by weights of atoms: 127 g and 127 l a kWh."""
    moles = 3.6e6 / 46.35e6 / 0.0440956
    rows = table(AIR, "cooking")
    assert rows["water, g of a kWh"][2] == pytest.approx(moles * 4.0 * 18.0153, rel=0.01)
    assert rows["carbon dioxide, l of a kWh"][1] == pytest.approx(moles * 3.0 * 24.055, rel=0.01)


def test_the_vents_of_a_gas_locker() -> None:
    """safe.gas_locker: 675 IAC 15-2-74, 2 % of a floor of 600 by 400 mm in all: 48 cm2."""
    share = table(AIR, "locker")
    assert next(iter(share.values()))[0] * 0.6 * 0.4 * 1e4 == pytest.approx(48.0)


def test_warmth_drives_air_as_the_tables_say() -> None:
    """inf.basic.cw: EnergyPlus reference, one storey: 0.000145 of warmth; of wind 0.000319 in the open to 0.000032.

    In (l/s)2/cm4 they are a hundredth of ours, in m2/s2.
    """
    assert table(AIR, "driving")["stack"][0] == pytest.approx(0.000145 * 100.0)
    assert 0.000032 * 100.0 <= table(HEAT, "room")["wind"][0] <= 0.000319 * 100.0


def test_no_table_of_ours_is_read_by_another_name() -> None:
    """What a test above reads by hand is what the rooms are worked out with."""
    assert {name: row[0] for name, row in columns("room").items()} == {
        name: row[0] for name, row in table(HEAT, "room").items()
    }

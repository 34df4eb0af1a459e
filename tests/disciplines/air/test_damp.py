"""What stands wet in a night, on nights made by hand; beside an open library of psychrometric functions."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.air.damp import damp_night, hours_of, wood_by_place
from boxwright.disciplines.air.findings import condensation
from boxwright.disciplines.air.parts import WoodReading
from boxwright.disciplines.air.result import DampNight, Result, WetPlace
from boxwright.disciplines.air.solve import offers, solve
from boxwright.exchange import ColdPlace, Layup, LayupLayer, Moisture, Night, NightEnd
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, exactly
from tests.disciplines.air.test_vents import hole, room, standing, vent

psychrolib = pytest.importorskip("psychrolib")
psychrolib.SetUnitSystem(psychrolib.SI)

AIR = 101325.0
METRIC = HeaderUnits(length="mm", weight="kg", temperature="C")
TWO = Moisture("people", exactly(100e-3 / 3600.0), exactly(140.0), "asleep")
STUDS = ColdPlace("walls[left]", "on the studs, left wall", exactly(0.38), exactly(1.0), 7.7, "open")
SKIN = ColdPlace("walls[left]", "skin behind the foam, left wall", exactly(0.05), exactly(8.0), 7.7, "sealed")
FOAM = LayupLayer("walls[left].layers[foam]", "foam", "XPS", exactly(0.0381), "bays", True)
PLY = LayupLayer("walls[left].layers[liner]", "liner", "ply", exactly(0.00635), "all", True)
LEFT = Layup("walls[left]", "left", "", exactly(8.0), (0.0, -1.0, 0.0), exactly(0.0), exactly(0.0), None, None, None,
             None, "", "", None, "", (FOAM, PLY))  # fmt: skip


def humid(celsius: float, humidity: float) -> float:
    return float(psychrolib.GetHumRatioFromRelHum(celsius, humidity, AIR))


def night(outside: float, water: float, cold: ColdPlace = STUDS, humidity: float = 0.6, flow: float = 0.005) -> Night:
    """Return eight hours at 20 C and one humidity, with so much water (kg) on one place from the third hour on."""
    hours = 8
    return Night(
        of="places[P]", place="P", heater="parts[heater]", outside=(outside + 273.15,) * hours, air=(293.15,) * hours,
        humidity=(humid(20.0, humidity),) * hours, heat=(900.0,) * hours, flow=(flow,) * hours, cold=(cold,),
        water=tuple((water if number >= 2 else 0.0,) for number in range(hours)),
    )  # fmt: skip


def worked(given: Night, layups: tuple[Layup, ...] = (LEFT,)) -> tuple[DampNight, WetPlace]:
    found = damp_night(given, (TWO,), layups)
    return found, found.wet[0]


def test_humidity_is_what_the_library_says() -> None:
    damp, _ = worked(night(-10.0, 0.1))
    assert damp.humidity == pytest.approx([0.6] * 8, rel=1e-3)


def test_a_place_is_wet_while_a_film_stands_on_it() -> None:
    _, wet = worked(night(-10.0, 0.1))
    assert (wet.hours, wet.most, wet.over) == (6, 0.1, 0.1)
    assert worked(night(-10.0, 0.004))[1].hours == 0  # 4 g on 1 m2
    assert worked(night(-10.0, 0.006))[1].hours == 6


def test_the_bare_stud_of_the_sheet_is_frozen_and_drips_from_its_limit_on() -> None:
    # The sheet on heat: factor 0.131 at 20 and -10 C is -6.1 C, 16 per cent; factor 0.382 at 0 C is 7.6 C, 45 per cent.
    _, bare = worked(night(-10.0, 0.1, replace(STUDS, factor=exactly(0.131))))
    assert bare.coldest - 273.15 == pytest.approx(-6.1, abs=0.05)
    assert bare.limit == pytest.approx(0.16, abs=0.005) and bare.is_frost
    _, lined = worked(night(0.0, 0.1, replace(STUDS, factor=exactly(0.382))))
    assert lined.limit == pytest.approx(0.45, abs=0.005) and not lined.is_frost
    assert not worked(night(-10.0, 0.0, replace(STUDS, factor=exactly(0.131))))[1].is_frost


def test_mould_counts_the_hours_over_eighty_per_cent_at_the_surface() -> None:
    # 20 C and 60 per cent: 80 per cent at 15.4 C, by the sheet; at 0 C outside that is a factor of 0.77.
    assert worked(night(0.0, 0.0, replace(STUDS, factor=exactly(0.765))))[1].damp_hours == 8
    assert worked(night(0.0, 0.0, replace(STUDS, factor=exactly(0.775))))[1].damp_hours == 0


def test_air_that_keeps_it_dry_carries_off_what_sleepers_give_off() -> None:
    _, wet = worked(night(-10.0, 0.1))
    surface = -10.0 + 0.38 * 30.0
    gained = humid(surface, 1.0) - humid(-10.0, 0.85)
    density = 1.0 / psychrolib.GetMoistAirVolume(20.0, humid(-10.0, 0.85), AIR)
    assert wet.air == pytest.approx(100e-3 / 3600.0 / (density * gained), rel=2e-3)
    assert wet.watt == pytest.approx(density * 1006.0 * (wet.air - 0.005) * 30.0, rel=2e-3)


def test_outdoor_air_is_as_dry_all_night_as_its_coldest_hour_leaves_it() -> None:
    given = night(-10.0, 0.1)
    milder = replace(given, outside=(273.15, *given.outside[1:]))
    assert hours_of(milder).outdoors == pytest.approx([humid(-10.0, 0.85)] * 8, rel=2e-3)


def test_no_air_keeps_a_place_dry_that_is_colder_than_what_comes_in_is_damp() -> None:
    # At 300 K outside and 293 K inside a warm place is colder than the air that comes in.
    given = replace(night(15.0, 0.1, replace(STUDS, factor=exactly(1.0))), outside=(300.0,) * 8)
    assert worked(given)[1].air == inf
    assert worked(night(15.0, 0.1, replace(STUDS, factor=exactly(1.0))))[1].watt == 0.0


def test_the_skin_behind_foam_of_the_sheet_settles_half_a_gram_in_a_night() -> None:
    # The sheet: foam of 150 and ply, 18 C and 60 per cent in, 0 C and 80 out: 47 g/m2 in 30 days of 24 h, 0.5 in 8 h.
    given = replace(
        night(0.0, 9.9, replace(SKIN, factor=exactly(0.001)), 0.6), air=(291.15,) * 8, humidity=(humid(18.0, 0.6),) * 8
    )
    _, wet = worked(given)
    assert wet.over * 1000.0 == pytest.approx(47.0 / 90.0, rel=0.08)
    assert wet.most == pytest.approx(wet.over * 8.0)
    assert wet.hours == 8


def test_a_skin_without_foam_or_a_plane_nobody_knows_tells_nothing() -> None:
    assert worked(night(0.0, 9.9, SKIN), ())[1].most == 0.0
    assert worked(night(0.0, 9.9, SKIN), (replace(LEFT, layers=()),))[1].most == 0.0


def test_a_hidden_place_on_which_nothing_settles_is_wet_in_no_hour() -> None:
    """Air of 20 C and 20 per cent drips below minus 3 C (psychrometric chart), and no skin is under 9 C here."""
    _, dry = worked(night(10.0, 9.9, SKIN, humidity=0.2))
    assert (dry.most, dry.hours) == (0.0, 0)
    _, wet = worked(night(-10.0, 9.9, SKIN))
    assert wet.most > 0.0 and wet.hours == 8


def test_a_member_behind_its_lining_is_reached_by_vapour_through_the_lining_alone() -> None:
    behind = ColdPlace(
        "walls[left]", "behind the lining on the studs, left wall", exactly(0.2), exactly(1.0), 7.7, "behind"
    )
    _, wet = worked(night(-10.0, 9.9, behind))
    _, bare = worked(night(-10.0, 9.9, behind), (replace(LEFT, layers=(FOAM,)),))
    # 20 C and 60 per cent: 1403 Pa; -4 C: 437 Pa over ice; 1.0 m of still air in ply of 6.35 mm: 2e-10 * 966 / 0.9525
    assert wet.over == pytest.approx(2e-10 * (1403.0 - 437.0) / 0.9525 * 8 * 3600.0, rel=0.02)
    assert bare.most == 0.0


def test_foam_nobody_knows_holds_nothing_back() -> None:
    strange = replace(LEFT, layers=(replace(FOAM, material="seaweed"),))
    assert worked(night(0.0, 0.0, SKIN), (strange,))[1].over > 10.0 * worked(night(0.0, 0.0, SKIN))[1].over


@given(factor=st.floats(0.0, 1.0), more=st.floats(0.0, 1.0), outside=st.floats(-30.0, 15.0))
def test_a_warmer_place_needs_no_more_air_and_drips_no_sooner(factor: float, more: float, outside: float) -> None:
    cold, warm = sorted((factor, more))
    less = worked(night(outside, 0.0, replace(STUDS, factor=exactly(cold))))[1]
    best = worked(night(outside, 0.0, replace(STUDS, factor=exactly(warm))))[1]
    assert best.air <= less.air and best.limit >= less.limit and best.damp_hours <= less.damp_hours


def test_a_kilogram_of_water_dries_as_in_the_sheet() -> None:
    # The sheet: 30 m3/h, 18 C and 70 per cent in, 0 C and 80 out: 4.6 h; outside is taken at 85 here.
    given = replace(night(0.0, 0.0, flow=30.0 / 3600.0), air=(291.15,) * 8)
    gained = humid(18.0, 0.7) - humid(0.0, 0.85)
    dries = damp_night(given, (TWO,), ()).dries / 3600.0
    assert dries == pytest.approx(1.0 / (1.21 * 30.0 * gained), rel=0.01)
    assert dries == pytest.approx(4.64, rel=0.05)
    assert damp_night(replace(given, flow=(0.0,) * 8), (TWO,), ()).dries == inf
    assert damp_night(replace(given, outside=(303.0,) * 8), (TWO,), ()).dries == inf


def test_the_newest_reading_of_a_place_stands_beside_the_one_before_it() -> None:
    def reading(name: str, on: date | None, share: float, at: str = "floor") -> WoodReading:
        return WoodReading(f"measured[{name}]", at, on, exactly(share))

    late, early = reading("b", date(2026, 4, 25), 0.23), reading("a", date(2026, 4, 11), 0.19)
    (wood,) = wood_by_place((late, early))
    assert (wood.newest, wood.before) == (late, early)
    assert [one.before for one in wood_by_place((late, reading("c", None, 0.2, "wall")))] == [None, None]
    doubt = replace(early, wood=Band(0.0, 0.0, inf, known=False))
    assert wood_by_place((doubt, late))[0].before is None


def said(given: Night, layups: tuple[Layup, ...] = (LEFT,), shown_in: HeaderUnits | None = None) -> tuple[Finding, ...]:
    own = room(vent("low", 0.01), vent("high", 0.01))
    offered = offers(own, standing("low", "high"), (hole("low", 0.1), hole("high", 1.8)), 1.0, 2, "sleep")
    result: Result = solve(own, offered, (), layups, (given,), 2, "sleep", ("US",), date(2026, 1, 1))
    return tuple(condensation(result, shown_in or METRIC))


def test_what_only_films_is_advice_what_runs_or_freezes_is_put_right() -> None:
    (film,) = said(night(0.0, 0.05))
    assert film.kind == "advice" and film.margin is None
    assert "the studs, left wall: wet 6 h" in film.says and "50 g a square metre" in film.says
    (runs,) = said(night(0.0, 0.15))
    assert runs.kind == "fix" and "running with water 6 h" in runs.says and runs.margin == pytest.approx(-0.05)
    (frost,) = said(night(-20.0, 0.05))
    assert frost.kind == "fix" and "frosted 6 h" in frost.says
    assert said(night(0.0, 0.0)) == ()


def test_a_hidden_skin_is_told_from_a_gram_on_and_is_put_right_from_five() -> None:
    assert said(night(0.0, 0.0, SKIN)) == ()
    bare_foam = (replace(LEFT, layers=(replace(FOAM, material="EPS"),)),)
    (found,) = said(night(-10.0, 0.0, SKIN), bare_foam)
    assert found.kind == "advice" and "loose foam" in found.says
    wool = (replace(LEFT, layers=(replace(FOAM, material="mineral wool"),)),)
    assert [one.kind for one in said(night(-10.0, 0.0, SKIN), wool)] == ["fix"]


def test_it_is_told_where_its_layers_are_written() -> None:
    lined = replace(LEFT, layers=(replace(PLY, of="walls[all].layers[liner]"),))
    assert said(night(0.0, 0.05), (lined,))[0].where == "walls[all]"
    assert said(night(0.0, 0.05, replace(STUDS, of="openings[hatch]")))[0].where == "openings[hatch]"


def test_places_of_a_kind_are_told_once_by_the_wettest() -> None:
    right = replace(STUDS, of="walls[right]", what="on the studs, right wall")
    given = night(0.0, 0.05)
    both = replace(given, cold=(STUDS, right), water=tuple((one[0], one[0] * 1.5) for one in given.water))
    (found,) = said(both)
    assert found.where == "walls" and "the studs, right wall (and left wall): wet" in found.says


def with_ends(given: Night, dry: float, wet: float) -> Night:
    """Return a night with so much water (kg) on its one place in the driest and in the wettest night there may be."""
    humidity = (humid(20.0, 0.4), humid(20.0, 0.9))
    ends = tuple(
        NightEnd(
            given.outside, given.air, (damp,) * 8, humid(-5.0, 0.85), (flow,) * 8,
            tuple((water if number >= 2 else 0.0,) for number in range(8)),
        )
        for damp, flow, water in zip(humidity, (0.02, 0.001), (dry, wet), strict=True)
    )  # fmt: skip
    return replace(given, ends=ends)


def test_what_runs_in_the_wettest_night_alone_is_asked_about() -> None:
    (surely,) = said(with_ends(night(0.0, 0.15), 0.12, 0.3))
    assert surely.kind == "fix" and "running with water 6 h in" in surely.says
    assert "at its wettest 150 g (120 to 300) a square metre" in surely.says and surely.margin == pytest.approx(-0.05)
    in_inches = said(with_ends(night(0.0, 0.15), 0.12, 0.3), shown_in=HeaderUnits(length="in"))[0]
    # By hand: 0.150 kg/m2 x 35.274 oz/kg x 0.092903 m2/ft2 = 0.4916 oz/ft2; 0.12 gives 0.393, 0.3 gives 0.983.
    assert "at its wettest 0.49 oz (0.39 to 0.98) a square foot;" in in_inches.says
    (perhaps,) = said(with_ends(night(0.0, 0.15), 0.0, 0.3))
    assert perhaps.kind == "unknown" and "perhaps running with water 6 h (0 to 6)" in perhaps.says
    assert perhaps.number == pytest.approx(0.3) and perhaps.margin == pytest.approx(-0.2)
    assert not perhaps.could_stop and not perhaps.could_limit
    (hardly,) = said(with_ends(night(0.0, 0.0), 0.0, 0.3))
    assert hardly.kind == "unknown" and "0 h (0 to 6)" in hardly.says
    (film,) = said(with_ends(night(0.0, 0.05), 0.01, 0.09))
    assert film.kind == "advice" and film.margin is None
    assert said(with_ends(night(0.0, 0.0), 0.0, 0.09)) == ()


def test_frost_on_a_place_nobody_knows_the_cold_of_is_asked_about() -> None:
    doubtful = replace(STUDS, factor=Band(0.5, 0.2, 0.8))
    (perhaps,) = said(with_ends(night(-8.0, 0.05, doubtful), 0.02, 0.08))
    assert perhaps.kind == "unknown" and "perhaps frosted" in perhaps.says
    wet = damp_night(with_ends(night(-8.0, 0.05, doubtful), 0.02, 0.08), (TWO,), (LEFT,)).wet[0]
    dry_end, wet_end = wet.ends
    assert dry_end.coldest > wet.coldest > wet_end.coldest and (wet.driest, wet.wettest) == (dry_end, wet_end)
    assert dry_end.limit > wet.limit > wet_end.limit and wet_end.is_frost and not dry_end.is_frost


def test_what_is_hidden_has_its_ends_by_what_stands_before_it() -> None:
    doubtful = replace(LEFT, layers=(replace(FOAM, thick=Band(0.0381, 0.02, 0.05)), replace(PLY, is_certain=False)))
    given = with_ends(night(-10.0, 0.0, SKIN), 0.0, 0.0)
    wet = damp_night(given, (TWO,), (doubtful,)).wet[0]
    dry_end, wet_end = wet.ends
    assert 0.0 < dry_end.over < wet.over < wet_end.over
    alike = damp_night(replace(given, ends=(replace(given.ends[0], humidity=given.humidity),) * 2), (TWO,), (doubtful,))
    assert alike.wet[0].ends[0].over < alike.wet[0].ends[1].over, "of one humidity: by the layers alone"

"""How tanks and pipes may be written, and what is in a tank weighs."""

from __future__ import annotations

from math import inf
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from boxwright.disciplines.water.parts import Facet, Pipe, StandingTank
from boxwright.disciplines.water.solve import offers
from boxwright.exchange import Mass
from boxwright.model.place import Place
from boxwright.units import Band, HeaderUnits, exactly

HEADER = {"header": HeaderUnits(length="in", volume="l")}
PLACE = Place(exactly(1.0), exactly(0.2), exactly(0.5), (0.6, 0.4, 0.2))
WHOLE, PERHAPS = exactly(1.0), Band(0.5, 0.0, 1.0, spread="perhaps")


def standing(tank: Any, fill: Band = WHOLE, share: Band = WHOLE, name: str = "fresh") -> StandingTank:
    read = Facet.model_validate({"tank": tank}, context=HEADER).tank
    assert read is not None
    return StandingTank(f"parts[{name}]", name, PLACE, read, fill, share)


def fluid(tank: Any, fill: Band = WHOLE, share: Band = WHOLE) -> Mass:
    (mass,) = offers((standing(tank, fill, share),)).masses
    return mass


def test_a_tank_alone_is_its_volume() -> None:
    assert standing("20").tank == standing({"volume": "20"}).tank
    assert standing("20 US gal").tank.volume == exactly(
        pytest.approx(20 * 231 * 0.0254**3)
    )  # NIST SP 811 (from memory)


def test_a_pipe_has_two_ends_and_a_bore() -> None:
    pipe = Pipe.model_validate({"from": "sink", "to": "grey", "bore": "1 1/4", "drain": "lowest"}, context=HEADER)
    assert (pipe.from_, pipe.to, pipe.drain) == ("sink", "grey", "lowest")
    assert pipe.bore is not None and pipe.bore.best == pytest.approx(1.25 * 0.0254)


def test_a_volume_that_cannot_be_read_is_said() -> None:
    with pytest.raises(ValidationError) as caught:
        Facet.model_validate({"tank": {"volume": "big"}}, context=HEADER)
    assert 'cannot read the volume "big"; write it as' in str(caught.value)


def test_a_full_tank_weighs_volume_times_density() -> None:
    mass = fluid({"of": "water", "volume": "20"})
    assert mass.kg.best == pytest.approx(20.0, rel=0.01)  # a litre of water is a kilogram, to a per cent (from memory)
    assert mass.kg.low <= mass.kg.best <= mass.kg.high and mass.kg.known and not mass.kg.assumed
    assert (mass.what, mass.of, mass.group) == ("fluid", "parts[fresh]", "density of water")
    assert (mass.x, mass.y, mass.z.best, mass.size) == (PLACE.x, PLACE.y, pytest.approx(0.5), pytest.approx(PLACE.size))


def test_diesel_is_lighter_than_water_and_within_its_standard() -> None:
    kg = fluid({"of": "Diesel", "volume": "10"}).kg
    assert (kg.low, kg.high) == pytest.approx((8.20, 8.45))  # EN 590: 820 to 845 kg/m3 at 15 C, quoted second-hand


def test_half_a_tank_sits_on_its_bottom() -> None:
    half = fluid({"of": "water", "volume": "20"}, fill=exactly(0.5))
    assert half.kg.best == pytest.approx(10.0, rel=0.01)
    assert half.z.best == pytest.approx(0.4 + 0.05) and half.size == pytest.approx((0.6, 0.4, 0.1))


def test_an_open_fill_is_an_extreme_and_a_tank_that_stands_perhaps_a_doubt() -> None:
    anything = Band(0.5, 0.0, 1.0, spread="fill", assumed=True)
    kg = fluid({"of": "water", "volume": "20"}, fill=anything).kg
    assert (kg.low, kg.spread, kg.assumed) == (0.0, "fill", True) and kg.high == pytest.approx(20.0, rel=0.01)
    perhaps = fluid({"of": "water", "volume": "20"}, share=PERHAPS).kg
    assert (perhaps.low, perhaps.spread) == (0.0, "perhaps") and perhaps.high == pytest.approx(20.0, rel=0.01)


def test_an_empty_tank_gives_no_mass() -> None:
    assert offers((standing({"of": "water", "volume": "20"}, fill=exactly(0.0)),)).masses == ()


def test_a_fluid_nobody_named_lies_between_the_lightest_and_the_heaviest_and_is_said() -> None:
    given_out = offers((standing({"volume": "10"}), standing({"of": "water", "volume": "10"}, name="other")))
    unnamed, water = given_out.masses
    assert unnamed.kg.known and unnamed.kg.assumed and unnamed.group == ""
    assert unnamed.kg.low < 5.5 and unnamed.kg.high > water.kg.high


def test_a_tank_without_a_volume_is_unknown_not_nothing() -> None:
    for tank in ({"of": "water"}, {"of": "water", "volume": "unknown"}):
        kg = fluid(tank).kg
        assert not kg.known and kg.high == inf


@given(st.floats(0.01, 1.0), st.floats(0.01, 1.0))
def test_more_in_a_tank_is_never_lighter_nor_lower(one: float, other: float) -> None:
    less, more = (fluid({"of": "water", "volume": "20"}, fill=exactly(fill)) for fill in sorted((one, other)))
    assert less.kg.best <= more.kg.best and less.z.best <= more.z.best

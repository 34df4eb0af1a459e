"""Fuels beside diesel: by what word each is known, what is in it, and what a cold night makes of it.

Lower heating values of a published table (quoted by a public copy of it, 2026-11-29): ethanol 76,330 and methanol
57,250 Btu a US gallon, one Btu 1055.056 J and one gallon 3.785412 l. Boiling points from memory: butane -0.5 C,
isobutane -11.7 C, propane -42.1 C.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.heat.burner import FUELS, SOLID, fuel_named, gas_named
from boxwright.disciplines.heat.burner_sheet import burner_grids
from boxwright.disciplines.heat.burning import fuel_of_night
from boxwright.finding import Finding
from boxwright.units import HeaderUnits, exactly
from tests.disciplines.heat.test_burning import warmed
from tests.disciplines.heat.test_findings import edited, worked

BURN = ", burn: {lowest: 0.113 l/h, highest: 0.5 l/h}"
BTU_A_GALLON = 1055.056 / 3.785412e-3
NIGHT = 12 * 3600.0
FEEDS = "whoever sleeps by it feeds it, or it goes out"


def of(fuel: str, night: str = "-5 C", tank: str = "") -> tuple[tuple[str, str], ...]:
    """Return the edits that make the heater of the small rig burn something else, out of a tank of it."""
    return (
        ("of: diesel, lowest", f"of: {fuel}, lowest"),
        (BURN, ""),
        ("tank: {of: diesel", f"tank: {{of: {tank or fuel}"),
        ("coldest_design: -5 C", f"coldest_design: {night}"),
    )


def told(code: str, *edits: tuple[str, str]) -> list[Finding]:
    return [one for one in worked(edited(*edits), "sleep") if one.code == f"heat/{code}"]


@pytest.mark.parametrize(
    ("word", "fuel"),
    [
        ("Gasoline", "petrol"),
        ("paraffin", "kerosene"),
        ("heating oil", "diesel"),
        ("butane", "propane"),
        ("LPG", "propane"),
        ("spirit", "alcohol"),
        ("Methylated Spirits", "alcohol"),
        ("meths", "alcohol"),
        ("ethanol", "alcohol"),
        ("methanol", "methanol"),
        ("charcoal", "charcoal"),
        ("white spirit", ""),
        ("biodiesel", ""),
    ],
)
def test_a_fuel_by_the_word_an_owner_writes(word: str, fuel: str) -> None:
    assert fuel_named(word) == fuel
    assert fuel == "" or fuel in FUELS or fuel in SOLID
    assert (gas_named(word) != "") == (fuel == "propane")


@pytest.mark.parametrize(("fuel", "published"), [("alcohol", 76_330), ("methanol", 57_250)])
def test_a_litre_holds_what_is_published_of_it(fuel: str, published: float) -> None:
    content, _, worst, best = FUELS[fuel]
    assert content == pytest.approx(published * BTU_A_GALLON, rel=5e-4)
    # What is sold as alcohol may be methanol: burnt as badly as any, that is in its low end.
    assert worst == pytest.approx(0.75 * (57_250 / 76_330 if fuel == "alcohol" else 1.0), abs=5e-3) and best == 0.85


@pytest.mark.parametrize("fuel", ["alcohol", "spirit", "methanol", "kerosene", "lpg"])
def test_a_night_by_any_liquid_or_gas_takes_what_its_energy_says(fuel: str) -> None:
    result = warmed(*of(fuel))
    (heater,), (night,) = result.heaters, result.held
    found = fuel_of_night(replace(night, energy=exactly(1000.0 * NIGHT)), heater)
    content, efficiency, worst, best = FUELS[fuel_named(fuel)]
    assert found is not None
    ends = [1000.0 * NIGHT / share / content for share in (efficiency, best, worst)]
    assert (found.best, found.low, found.high) == pytest.approx(ends)


@pytest.mark.parametrize(
    ("lasts", "kind"),
    [("", "unknown"), ("5 h", "limit"), ("10..14 h", "unknown"), ("12 h", ""), ("unknown", "unknown")],
)
def test_a_fire_that_is_fed_by_hand_holds_back_until_a_filling_lasts_the_night(lasts: str, kind: str) -> None:
    """A night lasts twelve hours."""
    found = told("fuel-for-the-night", *of(f"wood, lasts: {lasts}" if lasts else "wood", tank="water"))
    assert [one.kind for one in found] == ([kind] if kind else [])
    assert all(FEEDS in one.says and one.could_limit and not one.could_stop for one in found)


@pytest.mark.parametrize(
    ("fuel", "night", "kind"),
    [
        ("butane", "-1 C", "limit"),
        ("butane", "0 C", "unknown"),
        ("butane", "9 C", "unknown"),
        ("butane", "10 C", ""),
        ("isobutane", "-12 C", "limit"),
        ("isobutane", "-11 C", "unknown"),
        ("isobutane", "-1 C", ""),
        ("propane", "-32 C", ""),
        ("propane", "-33 C", "unknown"),
        ("propane", "-43 C", "limit"),
        ("lpg", "-5 C", "unknown"),
        ("gas", "10 C", ""),
        ("kerosene", "-30 C", ""),
    ],
)
def test_a_gas_that_stays_liquid_on_a_cold_night(fuel: str, night: str, kind: str) -> None:
    """A bottle that gives gas all night gets some 10 K colder than the air (common practice, no source)."""
    found = told("fuel-thickens", *of(fuel, night, tank="water" if fuel == "gas" else ""))
    assert [one.kind for one in found] == ([kind] if kind else [])
    for one in found:
        assert not one.could_stop and one.could_limit and one.margin is not None and one.margin < 0.0


@pytest.mark.parametrize(("bottle", "kind"), [("butane", "limit"), ("propane", ""), ("lpg", "")])
def test_what_is_in_the_bottle_goes_before_what_its_heater_is_said_to_burn(bottle: str, kind: str) -> None:
    found = told("fuel-thickens", *of("propane", tank=bottle))
    assert [one.kind for one in found] == ([kind] if kind else [])
    by_any = ["unknown"] if bottle == "lpg" else [one.kind for one in found]
    assert [one.kind for one in told("fuel-thickens", *of("gas", tank=bottle))] == by_any


@pytest.mark.parametrize("fuel", ["kerosene", "butane", "alcohol", "meths", "wood", "charcoal", "something new"])
def test_what_burns_into_the_room_is_refused_whatever_it_burns(fuel: str) -> None:
    pipe = "exhaust: {out: right, below: floor, length: 500, x: 1800, falls: yes, longest: 2000, clear: 60}"
    (found,) = told("unvented", *of(fuel, tank="water"), (pipe, "exhaust: none"))
    assert (found.kind, found.protects) == ("stop", True) and "carbon monoxide" in found.says


@pytest.mark.parametrize(("out", "told"), [("roof", "a chimney"), ("right", "nobody wrote whether it falls")])
def test_a_chimney_is_not_asked_whether_it_falls(out: str, told: str) -> None:
    pipe = "exhaust: {out: right, below: floor, length: 500, x: 1800, falls: yes, longest: 2000, clear: 60}"
    result = warmed(*of("wood", tank="water"), (pipe, f"exhaust: {{out: {out}}}"))
    grid, *_ = burner_grids(result.heaters[0], (), result.held, HeaderUnits())
    assert ("exhaust", f"out {out}", told) in grid.rows


@pytest.mark.parametrize(("fuel", "by"), [("diesel", "fed_by: battery"), ("electric", "fed_by: inlet-30A")])
def test_what_a_heater_is_plugged_into_is_asked_by_what_it_is_made_for(fuel: str, by: str) -> None:
    (found,) = told(
        "feed-not-known", *of(fuel, tank="diesel"), ("{from: battery, to: heater", "{from: battery, to: bed")
    )
    assert by in found.act

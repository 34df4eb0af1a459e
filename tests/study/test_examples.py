"""What a builder is told to write stands in the builder's own units, and asks for what is not there."""

from __future__ import annotations

import re
from datetime import date

import pytest

from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

RIG = """\
boxwright: 1
rig: Wren
units: {{{units}}}
countries: [{country}]
today: {{stage: shell}}
people: {{ann: {{weight: unknown, height: unknown}}}}
trailer:
  body: {{length: {length}, width: 67 in, height: 73 in}}
  empty: {{weight: unknown, tongue: unknown}}
stages: {{shell: {{}}}}
parts:
  can: {{x: 10 in, side: left, z: 0, size: 10 in x 10 in x 10 in, weight: 1 kg, stage: shell, tank: {{of: water}}}}
  stove: {{x: 30 in, side: right, z: 0, size: 10 in x 10 in x 10 in, weight: 5 kg, stage: shell, done: yes, {heater}}}
loads: {{night: {{people: [ann], parked: yes, for: [tow, sleep, leave]}}, alone: {{parked: yes, for: [sleep, leave]}}}}
"""
HEATER = "heater: {of: propane, lowest: 900 W, highest: 2000 W}"
US, METRIC = "length: in, weight: lb", "length: mm, weight: kg"
OF_OTHERS = {US: r"\d (C|kg|mm|m|W/m2K)\b", METRIC: r"\d (F|lb|in|ft)\b"}


def found(units: str, country: str, length: str, more: str = "") -> list[Finding]:
    text = RIG.format(heater=HEATER, units=units, country=country, length=length) + more
    shown = study(read_rig(text).rig, date(2026, 6, 1))
    return [one for use in ("tow", "sleep", "leave") for one in shown.findings(use)]


@pytest.mark.parametrize(("units", "country"), [(US, "US-NC"), (METRIC, "UK")])
@pytest.mark.parametrize("length", ["144 in", "unknown"])
def test_every_example_is_in_the_units_of_the_file(units: str, country: str, length: str) -> None:
    acts = [one.act for one in found(units, country, length) if one.act]
    assert [act for act in acts if re.search(OF_OTHERS[units], act)] == []
    assert any("_design: " in act for act in acts) or length == "unknown"


@pytest.mark.parametrize(
    ("units", "country", "long", "high"), [(US, "US-NC", "20 in", "984 ft"), (METRIC, "UK", "508 mm", "300 m")]
)
def test_what_a_heater_lacks_is_asked_in_the_units_of_the_file(units: str, country: str, long: str, high: str) -> None:
    text = "places: {hill: {coldest_design: -5 C}}\n"
    acts = {one.code: one.act or "" for one in found(units, country, "144 in", text)}
    assert f"length: {long}}}" in acts["heat/exhaust"]
    assert f"write height: {high} of the place" in acts["heat/height-not-known"]
    assert "tank: {of: propane" in acts["heat/fuel-for-the-night"]


def test_damp_asks_for_the_room_where_the_room_is_what_lacks() -> None:
    (damp,) = {(one.where, one.act) for one in found(METRIC, "UK", "unknown") if one.code == "air/condensation"}
    assert damp == ("trailer.body", "Measure the body inside, stud face to stud face and deck to bows")
    (damp,) = {(one.where, one.act) for one in found(METRIC, "UK", "144 in") if one.code == "air/condensation"}
    assert damp == ("places", "Write the coldest night of a place you sleep at: coldest_design: -10 C")

"""An alarm warns where what it warns of gets to: smoke rises, the gas of bottles sinks (common practice, no source).

The room of the small rig is 2000 mm high and 4200 mm long. Each of several places of one line is judged for itself.
"""

from __future__ import annotations

import pytest

from tests.disciplines.safety.test_findings import RIG, edited
from tests.disciplines.safety.test_two_in_one import told

SMOKE = next(line for line in RIG.splitlines() if line.startswith("  smoke:"))
WARNER = next(line for line in RIG.splitlines() if line.startswith("  warner:"))
GAS = WARNER.replace("  warner:", "  sniffer:").replace("alarm: CO", "alarm: gas")
STOVE = (
    "  # one more",
    "  stove: {x: 100, side: left, z: 700, size: 300 x 300 x 100, weight: 4, stage: shell, done: yes, burns: butane}",
)


@pytest.mark.parametrize(
    ("z", "kind"),
    [
        ("0", "stop"),
        ("970", "stop"),  # its middle is 990 mm up
        ("990", ""),
        ("ceiling-60", ""),
        ("900..1900", "unknown"),
        ("100..900", "stop"),
    ],
)
def test_an_alarm_for_smoke_in_the_lower_half_of_the_room_is_none(z: str, kind: str) -> None:
    found = told(edited((SMOKE, SMOKE.replace("z: ceiling-60", f"z: {z}"))), "smoke-alarm")
    assert [one for one, _, _ in found] == ([kind] if kind else [])
    assert all("in the lower half of the room, and smoke rises" in says for _, _, says in found)


def test_a_second_alarm_in_its_place_makes_up_for_a_low_one() -> None:
    low = SMOKE.replace("  smoke:", "  other:").replace("z: ceiling-60", "z: 0")
    assert told(edited((SMOKE, f"{low}\n{SMOKE}")), "smoke-alarm") == []


@pytest.mark.parametrize(("z", "kinds"), [("100", []), ("1500", ["unknown"]), ("100..1500", ["unknown"])])
def test_an_alarm_for_gas_in_the_upper_half_of_the_room_is_none(z: str, kinds: list[str]) -> None:
    text = edited((WARNER, WARNER + "\n" + GAS.replace("z: 1400", f"z: {z}")), STOVE)
    assert [one for one, _, _ in told(text, "gas-alarm")] == kinds


@pytest.mark.parametrize(
    ("at", "kind"),
    [
        ("[1000, 3000]", ""),
        ("[-3000, 2000]", ""),
        ("[-3000, 8000]", "stop"),  # the middle of both is in the room, neither of them is
        ("[-1000, -3000]", "stop"),
    ],
)
def test_alarms_in_several_places_are_judged_where_each_hangs(at: str, kind: str) -> None:
    several = WARNER.replace("x: 2600", f"at: {at}")
    found = told(edited((WARNER, several)), "co-alarm")
    assert [one for one, _, _ in found] == ([kind] if kind else [])


def test_each_of_several_alarms_is_held_against_the_flame_and_said_once_where_they_are_alike() -> None:
    several = WARNER.replace("x: 2600", "at: [600, 1600, 4000]")
    text = edited((WARNER, several), STOVE)
    # from the stove's end at 400 mm to the alarm's near end: 140 mm, 1140 mm, 3540 mm
    distances = [says.split(" to the side")[0] for _, _, says in told(text, "alarm-place")]
    assert distances == ["warner hangs 140 mm", "warner hangs 3540 mm"]
    old = several.replace("2032-01", "2020-01")
    assert len(told(edited((WARNER, old)), "out-of-date")) == 1


def test_of_several_extinguishers_the_nearest_is_by_the_way_out() -> None:
    line = next(line for line in RIG.splitlines() if line.startswith("  extinguisher:"))
    assert told(edited((line, line.replace("x: 3000", "at: [300, 3000]"))), "extinguisher-reach") == []
    ((kind, _, says),) = told(edited((line, line.replace("x: 3000", "at: [300, 1900]"))), "extinguisher-reach")
    assert kind == "advice"
    # from its end at 1950 mm to the door's edge at 3300 mm
    assert says.startswith("extinguisher hangs 1350 mm from the nearest way out, door")


@pytest.mark.parametrize(("wall", "kind"), [("roof", "stop"), ("ceiling", "")])
def test_an_alarm_on_the_roof_is_told_how_one_under_it_is_written(wall: str, kind: str) -> None:
    line = SMOKE.replace("side: centre, z: ceiling-60", f"side: centre, wall: {wall}")
    found = told(edited((SMOKE, line)), "smoke-alarm")
    assert [one for one, _, _ in found] == ([kind] if kind else [])
    assert all(
        "smoke lies on the roof, outside the room; what hangs under it is written wall: ceiling" in says
        for *_, says in found
    )
